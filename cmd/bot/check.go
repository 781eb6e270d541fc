package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"ryebell/internal/store"
)

// errCheck ends a check that has found something; what it was is printed.
var errCheck = errors.New("something is wrong, see above")

// check says in plain words what is right and what is wrong with the settings
// and the book. It only reads, and works beside a running bot.
func (p program) check(ctx context.Context, c config) error {
	fmt.Fprintln(p.stdout, "settings: fine")
	book := filepath.Join(c.Data, store.FileName)
	info, err := os.Stat(book)
	if errors.Is(err, fs.ErrNotExist) {
		fmt.Fprintf(p.stdout, "book: %s is not there yet; the first start makes it\n", shortened(book, p.env))
		return nil
	}
	if err == nil {
		p.checkMode(book, info)
		err = p.checkBook(ctx, c.Data, book)
	}
	if err != nil {
		fmt.Fprintln(p.stdout, "book:", explain(ofBook(c.Data, err)))
		if errors.Is(err, store.ErrDamaged) {
			fmt.Fprintln(p.stdout, "found:", err)
		}
		return errCheck
	}
	return nil
}

// checkMode warns of a book that others on this machine can read.
func (p program) checkMode(book string, info fs.FileInfo) {
	if runtime.GOOS != "windows" && info.Mode().Perm()&0o077 != 0 {
		fmt.Fprintf(p.stdout, "book: others on this machine can read it: chmod 600 %s\n", shortened(book, p.env))
	}
}

// checkBook opens the book for reading, examines all of it and lists what platforms
// refused.
func (p program) checkBook(ctx context.Context, folder, book string) (err error) {
	db, err := store.OpenReader(ctx, folder, store.Config{})
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	if err := db.Examine(ctx); err != nil {
		return err
	}
	fmt.Fprintf(p.stdout, "book: %s is sound\n", shortened(book, p.env))
	return db.View(ctx, p.checkRefusals)
}

// shownRefusals is how many refused posts a check lists.
const shownRefusals = 5

func (p program) checkRefusals(tx *store.Tx) error {
	rows, err := tx.Refusals(shownRefusals)
	for _, r := range rows {
		fmt.Fprintf(p.stdout, "post %d of %s was refused: %s\n", r.ID, r.Created.Local().Format("2 Jan 2006 15:04"), r.Reason)
	}
	return err
}
