package store

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func open(t testing.TB, folder string) *DB {
	t.Helper()
	db, err := Open(context.Background(), folder, Config{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := db.Close(); err != nil {
			t.Error(err)
		}
	})
	return db
}

// execute runs one statement in a transaction of its own.
func execute(t testing.TB, db *DB, query string, args ...any) {
	t.Helper()
	err := db.Update(context.Background(), func(tx *Tx) error {
		_, err := tx.exec(query, args...)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestOpenMakesAPrivateBook(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "what?me#50%", "ryebell")
	db := open(t, folder)
	execute(t, db, `INSERT INTO note (owner, key, value) VALUES ('a', 'b', x'00')`)
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		want := fs.FileMode(0o600)
		if d.IsDir() {
			want = 0o700
		}
		if got := info.Mode().Perm(); got != want {
			t.Errorf("%s has mode %o, want %o", filepath.Base(path), got, want)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(folder, FileName)); err != nil {
		t.Error(err)
	}
}

func TestPragmasHoldOnTheVeryConnections(t *testing.T) {
	db := open(t, t.TempDir())
	for _, tt := range []struct {
		run  func(context.Context, func(*Tx) error) error
		name string
		want map[string]string
	}{
		{db.Update, "writer", map[string]string{
			`PRAGMA synchronous`: "2", `PRAGMA journal_mode`: "wal", `PRAGMA foreign_keys`: "1",
			`PRAGMA busy_timeout`: "5000", `PRAGMA secure_delete`: "2", `PRAGMA application_id`: "1920558434",
		}},
		{db.View, "reader", map[string]string{`PRAGMA query_only`: "1", `PRAGMA busy_timeout`: "5000", `PRAGMA journal_mode`: "wal"}},
	} {
		err := tt.run(context.Background(), func(tx *Tx) error {
			for pragma, want := range tt.want {
				var got string
				if err := tx.row(pragma).Scan(&got); err != nil {
					return err
				}
				if got != want {
					t.Errorf("%s: %s is %s, want %s", tt.name, pragma, got, want)
				}
			}
			if _, err := tx.exec(`SELECT "nope"`); err == nil {
				t.Errorf("%s takes a double-quoted word for a string", tt.name)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}

func TestOpenTwice(t *testing.T) {
	folder := t.TempDir()
	first := open(t, folder)
	for range 2 { // a refused attempt must not loosen the lock
		start := time.Now()
		_, err := Open(context.Background(), folder, Config{})
		if !errors.Is(err, ErrInUse) {
			t.Fatalf("second opening: %v, want ErrInUse", err)
		}
		if took := time.Since(start); took > time.Second {
			t.Errorf("refused after %v", took)
		}
	}
	if err := first.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(folder, FileName+"-wal")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("closing left the write-ahead log: %v", err)
	}
	if again := open(t, folder); again.ID() != first.ID() || again.ID() == "" {
		t.Errorf("the book was called %q and is called %q", first.ID(), again.ID())
	}
}

func TestReaderBesideServer(t *testing.T) {
	folder := t.TempDir()
	if _, err := OpenReader(context.Background(), folder, Config{}); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("reader of no book: %v", err)
	}
	db := open(t, folder)
	execute(t, db, `INSERT INTO note (owner, key, value) VALUES ('a', 'b', x'31')`)
	look := func(when string) {
		r, err := OpenReader(context.Background(), folder, Config{})
		if err != nil {
			t.Fatalf("%s: %v", when, err)
		}
		defer r.Close()
		err = r.View(context.Background(), func(tx *Tx) error {
			v, err := tx.Note("a", "b")
			if string(v) != "1" {
				t.Errorf("%s: note %q", when, v)
			}
			return err
		})
		if err != nil {
			t.Errorf("%s: %v", when, err)
		}
		if err := r.Update(context.Background(), func(*Tx) error { return nil }); !errors.Is(err, ErrReadOnly) {
			t.Errorf("%s: reader writes: %v", when, err)
		}
		if r.ID() != db.ID() {
			t.Errorf("%s: id %q, want %q", when, r.ID(), db.ID())
		}
	}
	look("beside the server")
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	look("alone")
}

func TestRefusedFilesStayUntouched(t *testing.T) {
	for _, tt := range []struct {
		name  string
		spoil func(t *testing.T, path string)
		want  error
	}{
		{"newer", func(t *testing.T, path string) { edit(t, path, `PRAGMA user_version = 4711`) }, ErrNewer},
		{"other program", func(t *testing.T, path string) { edit(t, path, `PRAGMA application_id = 7`) }, ErrForeign},
		{"no program's name", func(t *testing.T, path string) { edit(t, path, `PRAGMA application_id = 0`) }, ErrForeign},
		{"no database", func(t *testing.T, path string) {
			if err := os.WriteFile(path, bytes.Repeat([]byte("not a book\n"), 1000), 0o600); err != nil {
				t.Fatal(err)
			}
		}, ErrForeign},
	} {
		t.Run(tt.name, func(t *testing.T) {
			folder := t.TempDir()
			path := filepath.Join(folder, FileName)
			if err := open(t, folder).Close(); err != nil {
				t.Fatal(err)
			}
			tt.spoil(t, path)
			before, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := Open(context.Background(), folder, Config{}); !errors.Is(err, tt.want) {
				t.Errorf("Open: %v, want %v", err, tt.want)
			}
			if _, err := OpenReader(context.Background(), folder, Config{}); !errors.Is(err, tt.want) {
				t.Errorf("OpenReader: %v, want %v", err, tt.want)
			}
			after, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(before, after) {
				t.Error("the file was changed")
			}
		})
	}
}

// edit runs a statement on a file that nobody has open, in the plain journal
// mode, so that a changed mode would show.
func edit(t *testing.T, path, query string) {
	t.Helper()
	pool, c, err := connect(context.Background(), dsn(path, nil))
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []string{query, `PRAGMA journal_mode = DELETE`} {
		if _, err := c.exec(q); err != nil {
			t.Fatal(err)
		}
	}
	if err := errors.Join(c.close(), pool.Close()); err != nil {
		t.Fatal(err)
	}
}

func TestReaderRefusesAnOlderBook(t *testing.T) {
	folder := t.TempDir()
	if err := open(t, folder).Close(); err != nil {
		t.Fatal(err)
	}
	edit(t, filepath.Join(folder, FileName), `PRAGMA user_version = 0`)
	if _, err := OpenReader(context.Background(), folder, Config{}); !errors.Is(err, ErrOlder) {
		t.Errorf("got %v, want ErrOlder", err)
	}
}

func TestAStepThatFailsLeavesNothing(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, FileName)
	pool, c, err := connect(context.Background(), writerDSN(path, Config{}))
	if err != nil {
		t.Fatal(err)
	}
	if err := step(context.Background(), c, `CREATE TABLE half (a INTEGER) STRICT; CREATE TABLE half (a);`, 1); err == nil {
		t.Error("a broken step went through")
	}
	if version, err := identify(context.Background(), c); version != 0 || err != nil {
		t.Errorf("version %d, %v behind a broken step", version, err)
	}
	if err := errors.Join(c.close(), pool.Close()); err != nil {
		t.Fatal(err)
	}
	open(t, folder)
}
