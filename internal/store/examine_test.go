package store

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestExamineFindsDamage(t *testing.T) {
	for _, tt := range []struct{ name, damage, want string }{
		{"an index that lacks rows", `PRAGMA writable_schema = ON;
			UPDATE sqlite_schema SET sql = replace(sql, 'IS NOT NULL', 'IS NULL') WHERE name = 'entry_inbox';
			PRAGMA schema_version = 99`, "missing from index entry_inbox"},
		{"a reference to nothing", `UPDATE entry SET room = 7 WHERE number = 2`, "entry refers to nothing"},
		{"a changed entry", `UPDATE entry SET at_ms = at_ms + 1 WHERE number = 2`, "collective 1: the book is damaged: entry 2:"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			db := open(t, t.TempDir())
			logOf(t, db)
			if err := db.Examine(context.Background()); err != nil {
				t.Fatalf("a sound book: %v", err)
			}
			spoil(t, db, tt.damage)
			if err := db.Examine(context.Background()); !errors.Is(err, ErrDamaged) || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got %v, want damage with %q", err, tt.want)
			}
		})
	}
}

// A page that was overwritten is damage too, whether it is found by looking for it
// or met by reading.
func TestExamineFindsAnOverwrittenPage(t *testing.T) {
	folder := t.TempDir()
	db := open(t, folder)
	logOf(t, db)
	var root int64
	err := db.View(context.Background(), func(tx *Tx) error {
		return tx.row(`SELECT rootpage FROM sqlite_schema WHERE name = 'entry_subject'`).Scan(&root)
	})
	if err := errors.Join(err, db.Close()); err != nil {
		t.Fatal(err)
	}
	overwrite(t, filepath.Join(folder, FileName), root)
	db = open(t, folder)
	if err := db.Examine(context.Background()); !errors.Is(err, ErrDamaged) {
		t.Errorf("examined: %v, want ErrDamaged", err)
	}
	err = db.View(context.Background(), func(tx *Tx) error { _, err := tx.Book(1).Standing("kitchen"); return err })
	if !errors.Is(err, ErrDamaged) {
		t.Errorf("read: %v, want ErrDamaged", err)
	}
}

// overwrite fills a page of a file with nonsense. Pages count from 1 and have 4096
// bytes.
func overwrite(t *testing.T, path string, page int64) {
	t.Helper()
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	_, err = f.WriteAt(bytes.Repeat([]byte{0xa5}, 4096), (page-1)*4096)
	if err := errors.Join(err, f.Close()); err != nil {
		t.Fatal(err)
	}
}
