package store

import (
	"context"
	"crypto/rand"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"strconv"
)

//go:embed migrations/*.sql
var migrations embed.FS

// applicationID stands in the head of the file: "ryeb".
const applicationID = 0x72796562

// ErrOlder says that the book must first be opened for serving by this program,
// which brings it up to date.
var ErrOlder = errors.New("the book was written by an older version of this program")

// steps gives the texts of the migrations in order.
func steps() ([]string, error) {
	names, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		return nil, err
	}
	texts := make([]string, len(names))
	for i, name := range names {
		text, err := migrations.ReadFile(name)
		if err != nil {
			return nil, err
		}
		texts[i] = string(text)
	}
	return texts, nil
}

// migrate brings the file to the newest schema, each step in a transaction of
// its own. The number of steps taken is the user_version of the file.
func migrate(ctx context.Context, c *conn) error {
	todo, err := steps()
	if err != nil {
		return err
	}
	have, err := identify(ctx, c)
	if err != nil {
		return err
	}
	for i := have; i < len(todo); i++ {
		if err := step(ctx, c, todo[i], i+1); err != nil {
			return fmt.Errorf("bring the book to version %d: %w", i+1, classify(err))
		}
	}
	return nil
}

// identify gives the version of the file; 0 is an empty one. It refuses what is
// no book or was written by a newer program.
func identify(ctx context.Context, c *conn) (version int, err error) {
	var app, tables int
	for query, into := range map[string]*int{
		`PRAGMA application_id`: &app, `PRAGMA user_version`: &version, `SELECT count(*) FROM sqlite_schema`: &tables,
	} {
		if err := c.sql.QueryRowContext(ctx, query).Scan(into); err != nil {
			return 0, fmt.Errorf("read the head of the book: %w", classify(err))
		}
	}
	blank := app == 0 && version == 0 && tables == 0
	if app != applicationID && !blank {
		return 0, ErrForeign
	}
	todo, err := steps()
	if err == nil && version > len(todo) {
		err = ErrNewer
	}
	return version, err
}

func step(ctx context.Context, c *conn, text string, version int) error {
	tx := &Tx{conn: c}
	return tx.run(`BEGIN IMMEDIATE`, func(tx *Tx) error {
		text += "PRAGMA application_id = " + strconv.Itoa(applicationID) + ";" +
			"PRAGMA user_version = " + strconv.Itoa(version) + ";"
		if _, err := c.sql.ExecContext(ctx, text); err != nil {
			return err
		}
		if version != 1 {
			return nil
		}
		_, err := tx.exec(`INSERT INTO book (one, id) VALUES (1, :id)`, p("id", rand.Text()))
		return err
	})
}

// checkVersion is for readers, which can't migrate.
func checkVersion(tx *Tx) error {
	have, err := identify(context.Background(), tx.conn)
	if err != nil {
		return err
	}
	todo, err := steps()
	if err != nil {
		return err
	}
	if have < len(todo) {
		return ErrOlder
	}
	return nil
}
