package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"ryebell/internal/kitchen"
)

var morning = time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)

// logOf is a collective with a few entries, one of them struck.
func logOf(t testing.TB, db *DB) (c CollectiveID) {
	t.Helper()
	err := db.Update(context.Background(), func(tx *Tx) (err error) {
		if c, err = tx.NewCollective("growers", morning); err != nil {
			return err
		}
		b := tx.Book(c)
		ana, err := b.AddMember("Ana", kitchen.Steward, morning)
		if err != nil {
			return err
		}
		for i, e := range []kitchen.Entry{
			kitchen.Elevation{Height: 1600}, kitchen.StepIs{Step: 10}, kitchen.Struck{No: 2}, kitchen.RoomTemperature{Temp: 19},
		} {
			_, err := b.Append(Line{
				By: ana, At: morning, Written: morning.Add(time.Duration(i) * time.Second),
				Subject: "kitchen", Entry: e, Said: fmt.Sprintf("said %d", i+1),
			})
			if err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func verify(t testing.TB, db *DB, c CollectiveID) (verdict error) {
	t.Helper()
	err := db.View(context.Background(), func(tx *Tx) error {
		verdict = tx.Book(c).VerifyChain(context.Background())
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return verdict
}

func TestVerifyChainFindsDamage(t *testing.T) {
	for _, tt := range []struct {
		name, damage string
		entry        int // the one that is named
	}{
		{"when it happened", `UPDATE entry SET at_ms = at_ms + 1 WHERE number = 2`, 2},
		{"when it was written", `UPDATE entry SET written_ms = written_ms - 1 WHERE number = 2`, 2},
		{"who", `UPDATE entry SET member = NULL WHERE number = 2`, 2},
		{"where", `UPDATE entry SET room = 7 WHERE number = 2`, 2},
		{"subject", `UPDATE entry SET subject = 'kitchem' WHERE number = 2`, 2},
		{"kind", `UPDATE entry SET kind = 'steq' WHERE number = 2`, 2},
		{"version", `UPDATE entry SET version = 2 WHERE number = 2`, 2},
		{"body", `UPDATE entry SET body = '{"g":11}' WHERE number = 2`, 2},
		{"typed text", `UPDATE entry SET said = 'said 3' WHERE number = 2`, 2},
		{"typed text gone, salt there", `UPDATE entry SET said = NULL WHERE number = 2`, 2},
		{"salt", `UPDATE entry SET salt = x'00' WHERE number = 2`, 2},
		{"digest", `UPDATE entry SET digest = zeroblob(32) WHERE number = 2`, 2},
		{"hash", `UPDATE entry SET hash = zeroblob(32) WHERE number = 2`, 2},
		{"first one missing", `DELETE FROM entry WHERE number = 1`, 1},
		{"one missing", `DELETE FROM entry WHERE number = 2`, 2},
		{"two changed places", `UPDATE entry SET number = CASE number WHEN 1 THEN 102 ELSE 101 END WHERE number IN (1, 2);
			UPDATE entry SET number = number - 100 WHERE number > 100`, 1},
		{"struck mark gone", `UPDATE entry SET struck_by = NULL WHERE number = 2`, 2},
		{"struck mark of another", `UPDATE entry SET struck_by = 4 WHERE number = 2`, 2},
		{"struck mark made up", `UPDATE entry SET struck_by = 4 WHERE number = 1`, 1},
	} {
		t.Run(tt.name, func(t *testing.T) {
			folder := t.TempDir()
			db := open(t, folder)
			c := logOf(t, db)
			if err := verify(t, db, c); err != nil {
				t.Fatalf("a sound log: %v", err)
			}
			spoil(t, db, tt.damage)
			err := verify(t, db, c)
			if !errors.Is(err, ErrDamaged) || !strings.Contains(err.Error(), fmt.Sprintf("entry %d:", tt.entry)) {
				t.Errorf("got %v, want damage in entry %d", err, tt.entry)
			}
		})
	}
}

// A byte that rots in the file, in what an entry holds, is found.
func TestVerifyChainFindsRot(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, FileName)
	db := open(t, folder)
	c := logOf(t, db)
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	sound, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, content := range []string{`{"g":10}`, "said 2"} {
		at := bytes.Index(sound, []byte(content))
		if at < 0 {
			t.Fatalf("the file doesn't hold %s", content)
		}
		for i := at; i < at+len(content); i++ {
			rotten := bytes.Clone(sound)
			rotten[i] ^= 1
			if err := os.WriteFile(path, rotten, 0o600); err != nil {
				t.Fatal(err)
			}
			db := open(t, folder)
			if err := verify(t, db, c); !errors.Is(err, ErrDamaged) || !strings.Contains(err.Error(), "entry 2:") {
				t.Errorf("byte %d of %s: %v", i-at, content, err)
			}
			if err := db.Close(); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// spoil changes rows behind the program's back.
func spoil(t *testing.T, db *DB, script string) {
	t.Helper()
	w := <-db.writer
	defer func() { db.writer <- w }()
	if _, err := w.sql.ExecContext(context.Background(), "PRAGMA foreign_keys = OFF;"+script); err != nil {
		t.Fatal(err)
	}
}

func TestForgottenTextsKeepTheChain(t *testing.T) {
	db := open(t, t.TempDir())
	c := logOf(t, db)
	err := db.Update(context.Background(), func(tx *Tx) error { return tx.Book(c).ForgetMember(1, morning) })
	if err != nil {
		t.Fatal(err)
	}
	if err := verify(t, db, c); err != nil {
		t.Errorf("behind forgetting: %v", err)
	}
	spoil(t, db, `UPDATE entry SET said = 'something' WHERE number = 2`)
	if err := verify(t, db, c); !errors.Is(err, ErrDamaged) {
		t.Errorf("a text put in later: %v, want damage", err)
	}
}

// The form of what is hashed must never change for entries already written; the
// value was worked out by hand with another SHA-256.
func TestHashIsOfTheForm(t *testing.T) {
	k := link{no: 3, by: 2, room: 1, at: 1, written: 2, subject: "kitchen", kind: "step", version: 1, body: []byte(`{"g":10}`)}
	k.digest = digestOf([]byte("salt"), "round to 10 g")
	const want = "e39d1e748bae68bc0fccbd1a801cbc9427d3847c7bd6a6130f0ad1eb7c6fe0e5"
	if got := fmt.Sprintf("%x", k.sum(head{}.hash)); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestClassify(t *testing.T) {
	db := open(t, t.TempDir())
	err := db.View(context.Background(), func(tx *Tx) error {
		_, err := tx.exec(`INSERT INTO note (owner, key, value) VALUES ('a', 'b', x'00')`)
		return err
	})
	if !errors.Is(err, ErrReadOnly) {
		t.Errorf("writing while reading: %v, want ErrReadOnly", err)
	}
	for code, want := range map[int]error{13: ErrFull, 778: ErrFull, 1034: ErrFsync, 1290: ErrFsync, 8: ErrReadOnly, 5: ErrLocked, 517: ErrLocked, 26: ErrForeign, 11: ErrDamaged, 267: ErrDamaged, 787: nil} {
		if got := sentinelOf(code); got != want {
			t.Errorf("code %d is %v, want %v", code, got, want)
		}
	}
}

func TestFullDiskThenSpace(t *testing.T) {
	db := open(t, t.TempDir())
	c := logOf(t, db)
	spoil(t, db, `PRAGMA max_page_count = 1`) // at once raised to the pages there are
	big := func(tx *Tx) error { return tx.SetNote("a", "big", make([]byte, 1<<20)) }
	if err := db.Update(context.Background(), big); !errors.Is(err, ErrFull) {
		t.Errorf("full: %v, want ErrFull", err)
	}
	if err := verify(t, db, c); err != nil {
		t.Errorf("reading a full book: %v", err)
	}
	spoil(t, db, `PRAGMA max_page_count = 1000000`)
	if err := db.Update(context.Background(), big); err != nil {
		t.Errorf("space again: %v", err)
	}
}

func TestLockedByAnother(t *testing.T) {
	folder := t.TempDir()
	db, err := Open(context.Background(), folder, Config{BusyTimeout: time.Millisecond})
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	pool, other, err := connect(context.Background(), writerDSN(folder+"/"+FileName, Config{}))
	if err != nil {
		t.Fatal(err)
	}
	defer pool.Close()
	if _, err := other.exec(`BEGIN IMMEDIATE`); err != nil {
		t.Fatal(err)
	}
	write := func(tx *Tx) error { return tx.SetNote("a", "b", []byte{1}) }
	if err := db.Update(context.Background(), write); !errors.Is(err, ErrLocked) {
		t.Errorf("locked: %v, want ErrLocked", err)
	}
	if _, err := other.exec(`ROLLBACK`); err != nil {
		t.Fatal(err)
	}
	if err := db.Update(context.Background(), write); err != nil {
		t.Errorf("free again: %v", err)
	}
}
