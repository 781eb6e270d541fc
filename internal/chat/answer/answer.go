package answer

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"runtime/debug"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// Config holds what may be left as it is.
type Config struct {
	// Log receives one line a turn; nil discards.
	Log *slog.Logger
	// Zone is the time zone of a kitchen that hasn't said its own; nil is UTC.
	Zone *time.Location
	// Weekly is the calendar of the digests; without it there are none.
	Weekly Weekly
}

// Answerer answers messages and pings from one book.
type Answerer struct {
	db      *store.DB
	log     *slog.Logger
	zone    *time.Location
	weekly  Weekly
	excused excused
	// settings and sources are the settings and the cultures of each collective.
	settings kept[kitchen.Settings]
	sources  kept[kitchen.Cultures]
}

// New returns the responder of a book.
func New(db *store.DB, c Config) *Answerer {
	a := &Answerer{db: db, log: c.Log, zone: c.Zone, weekly: c.Weekly}
	if a.log == nil {
		a.log = slog.New(slog.DiscardHandler)
	}
	if a.zone == nil {
		a.zone = time.UTC
	}
	return a
}

// Turn handles one message. It returns nil once everything that follows from it
// is committed, also when that is nothing. An error means that nothing was
// written and the message should be offered again.
func (a *Answerer) Turn(ctx context.Context, m chat.Message) error {
	report, err := a.try(ctx, m)
	var bug *panicked
	if errors.As(err, &bug) {
		a.log.Error("turn panicked", "door", m.Room.Door, "panic", fmt.Sprint(bug.value), "stack", string(bug.stack))
		return a.apologise(ctx, m)
	}
	if err != nil {
		return fmt.Errorf("answer: %w", err)
	}
	if report.kind != "" {
		a.log.Info("turn", "door", m.Room.Door, "kind", report.kind, "entries", report.entries)
	}
	return nil
}

// report is what the log says of a turn.
type report struct {
	kind    string
	entries int
}

// panicked carries a bug out of the transaction that it ended.
type panicked struct {
	value any
	stack []byte
}

func (p *panicked) Error() string { return "bug: " + fmt.Sprint(p.value) }

// try is the turn in its transaction. A panic rolls it back and comes out as an
// error.
func (a *Answerer) try(ctx context.Context, m chat.Message) (r report, err error) {
	defer func() {
		if v := recover(); v != nil {
			err = &panicked{value: v, stack: debug.Stack()}
		}
	}()
	err = a.db.Update(ctx, func(tx *store.Tx) error {
		t, err := a.begin(tx, m)
		if err != nil || t == nil {
			return err
		}
		r, err = t.run()
		return err
	})
	return r, err
}

// apologise answers a message that broke the program, so that it is not offered
// for ever.
func (a *Answerer) apologise(ctx context.Context, m chat.Message) error {
	return a.db.Update(ctx, func(tx *store.Tx) error {
		room, err := tx.Room(string(m.Room.Door), m.Room.ID)
		if errors.Is(err, store.ErrNotFound) {
			return nil
		}
		if err != nil {
			return err
		}
		t := a.newTurn(tx, m, room)
		fresh, err := t.claim()
		if err != nil || !fresh {
			return err
		}
		return t.queue(wording.Broken())
	})
}
