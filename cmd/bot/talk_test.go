package main

import (
	"context"
	"flag"
	"fmt"
	"log/slog"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat/rehearse"
	"ryebell/internal/chat/rehearse/rehearsetest"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

var update = flag.Bool("update", false, "rewrite what the conversations expect")

// TestTalk plays every conversation. With -update it rewrites what was posted;
// what is said stays.
func TestTalk(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("testdata", "talk", "*.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	if len(files) == 0 {
		t.Fatal("no conversation was found")
	}
	mode := rehearsetest.Check
	if *update {
		mode = rehearsetest.Update
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) {
			t.Parallel()
			rehearsetest.Talk(t, file, mode, newWorld)
		})
	}
}

// newWorld is the program on a book of its own. A turn that breaks shows in the
// test's output.
func newWorld(t testing.TB, door *rehearse.Door) rehearsetest.World {
	t.Helper()
	db := storetest.Open(t)
	log := slog.New(slog.NewTextHandler(t.Output(), &slog.HandlerOptions{Level: slog.LevelWarn}))
	zone := door.Now().Location()
	world, err := stage(t.Context(), db, door, zone, log)
	if err != nil {
		t.Fatal(err)
	}
	w := witness{db: db, zone: zone, start: door.Now()}
	return rehearsetest.World{World: world, Log: w.entries, Due: w.pings}
}

// witness prints what stands in the book of the first collective.
type witness struct {
	db    *store.DB
	zone  *time.Location
	start time.Time
}

func (w witness) book(ctx context.Context, f func(*store.Book) error) error {
	return w.db.View(ctx, func(tx *store.Tx) error {
		all, err := tx.Collectives()
		if err != nil {
			return err
		}
		return f(tx.Book(all[0]))
	})
}

// entries prints one line for each entry: number, when it happened, who said it,
// and its stored form.
func (w witness) entries(ctx context.Context) (text string, err error) {
	err = w.book(ctx, func(b *store.Book) error {
		all, err := b.EntriesAfter(0, 10_000)
		for _, e := range all {
			stored, err := kitchen.Encode(e.Entry)
			if err != nil {
				return err
			}
			text += fmt.Sprintf("%d %s by %d: %s %s %s", e.No, w.clock(e.At), e.By, e.Subject, stored.Kind, stored.Body)
			if e.StruckBy != 0 {
				text += fmt.Sprintf(" (struck by %d)", e.StruckBy)
			}
			text += "\n"
		}
		return err
	})
	return text, err
}

// pings prints one line for each ping that waits, in the order of their times.
func (w witness) pings(ctx context.Context) (string, error) {
	var waiting []store.PingRow
	err := w.book(ctx, func(b *store.Book) error {
		// Every key begins with a letter.
		for first := 'a'; first <= 'z'; first++ {
			rows, err := b.Pings(string(first))
			if err != nil {
				return err
			}
			waiting = append(waiting, rows...)
		}
		return nil
	})
	waiting = slices.DeleteFunc(waiting, func(r store.PingRow) bool { return !r.Fired.IsZero() })
	slices.SortStableFunc(waiting, func(a, b store.PingRow) int { return a.Due.Compare(b.Due) })
	text := ""
	for _, r := range waiting {
		text += fmt.Sprintf("%s %s %s\n", w.clock(r.Due), r.Key, r.Loudness)
	}
	if text == "" {
		text = "(none)\n"
	}
	return text, err
}

func (w witness) clock(at time.Time) string {
	at = at.In(w.zone)
	if at.Format(time.DateOnly) == w.start.Format(time.DateOnly) {
		return at.Format("15:04")
	}
	return at.Format("Mon 2 Jan 15:04")
}

// parts joins what is said in a conversation, and what is posted.
func parts(archive string) (said, posted string) {
	into := new(string)
	for line := range strings.Lines(archive) {
		switch strings.TrimSpace(line) {
		case "-- say --":
			into = &said
		case "-- posts --":
			into = &posted
		default:
			*into += line
		}
	}
	return said, posted
}
