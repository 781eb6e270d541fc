package reminders

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"runtime/debug"
	"time"

	"ryebell/internal/store"
)

const (
	// longestSleep is how long Run sleeps at most while a ping waits. Timers stand
	// still while the machine sleeps; the wall clock does not.
	longestSleep = 30 * time.Second
	// lookahead is how many rows are looked through for the next one, when rows
	// that can't be fired stand before it.
	lookahead = 1000
)

// Fire queues the post for a due row, inside the transaction that marks the row
// as fired. Now is later than the row's due time when the bot was down.
type Fire func(tx *store.Tx, row store.PingRow, now time.Time) error

// Config holds what may be left as it is.
type Config struct {
	// Log takes what went wrong; nil for nowhere.
	Log *slog.Logger
	// Now reads the wall clock, for Run alone; nil for the real one.
	Now func() time.Time
}

// Reminders fires the pings of a book.
type Reminders struct {
	db   *store.DB
	fire Fire
	log  *slog.Logger
	now  func() time.Time
}

// New makes the reminders of a book.
func New(db *store.DB, fire Fire, c Config) *Reminders {
	if c.Log == nil {
		c.Log = slog.New(slog.DiscardHandler)
	}
	if c.Now == nil {
		c.Now = time.Now
	}
	return &Reminders{db: db, fire: fire, log: c.Log, now: c.Now}
}

// Next is when the next ping is due, which may be in the past; false means that
// none waits.
func (r *Reminders) Next(ctx context.Context) (due time.Time, waits bool, err error) {
	err = r.db.View(ctx, func(tx *store.Tx) error {
		due, waits, err = tx.NextDue()
		return err
	})
	if err != nil {
		return time.Time{}, false, fmt.Errorf("read the next ping: %w", err)
	}
	return due, waits, nil
}

// FireDue fires what is due at now, each in a transaction of its own: those that
// guard a hot cooker first, then by loudness, then the longest due. One that fails
// stays due and holds up no other; the error names them all.
func (r *Reminders) FireDue(ctx context.Context, now time.Time) error {
	failed := map[id]error{}
	for {
		row, found, err := r.first(ctx, now, failed)
		if err != nil {
			return errors.Join(err, joined(failed))
		}
		if !found {
			return joined(failed)
		}
		if err := r.fireOne(ctx, row, now); err != nil {
			if ctx.Err() != nil || fatal(err) {
				return err
			}
			failed[idOf(row)] = err
		}
	}
}

// fatal reports whether the process must end: nothing good comes of writing on.
func fatal(err error) bool {
	return errors.Is(err, store.ErrFsync) || errors.Is(err, store.ErrDamaged)
}

// id tells the pings of all collectives apart.
type id struct {
	collective store.CollectiveID
	key        string
}

func idOf(row store.PingRow) id { return id{row.Collective, row.Key} }

func joined(failed map[id]error) error {
	var all []error
	for _, err := range failed {
		all = append(all, err)
	}
	return errors.Join(all...)
}

// first is the row to fire next, beside those that have failed.
func (r *Reminders) first(ctx context.Context, now time.Time, failed map[id]error) (row store.PingRow, found bool, err error) {
	err = r.db.View(ctx, func(tx *store.Tx) error {
		rows, err := tx.DuePings(now, len(failed)+1)
		for _, due := range rows {
			if failed[idOf(due)] == nil {
				row, found = due, true
				break
			}
		}
		return err
	})
	if err != nil {
		return row, false, fmt.Errorf("read due pings: %w", err)
	}
	return row, found, nil
}

// fireOne fires a row, if it still waits as it was read: a message that came in
// between may have withdrawn or moved it.
func (r *Reminders) fireOne(ctx context.Context, read store.PingRow, now time.Time) (err error) {
	defer func() {
		// A ping that trips over a bug must not stop the pings of all others.
		if v := recover(); v != nil {
			r.log.Error("ping panicked", "key", read.Key, "panic", v, "stack", string(debug.Stack()))
			err = fmt.Errorf("fire %s: panic", read.Key)
		}
	}()
	err = r.db.Update(ctx, func(tx *store.Tx) error {
		book := tx.Book(read.Collective)
		rows, err := book.Pings(read.Key)
		if err != nil {
			return err
		}
		// The key itself sorts before all that it is a prefix of.
		if len(rows) == 0 || rows[0] != read {
			return nil
		}
		if err := r.fire(tx, rows[0], now); err != nil {
			return err
		}
		return book.MarkFired(read.Key, now)
	})
	if err != nil {
		return fmt.Errorf("fire %s: %w", read.Key, err)
	}
	return nil
}

// Run fires each ping when it is due, until ctx ends. What fell due before it
// began, or while the machine slept, is fired at once. The error is
// [store.ErrFsync] or [store.ErrDamaged], after which the process must end; all
// others are waited out.
func (r *Reminders) Run(ctx context.Context) error {
	for {
		now := wall(r.now())
		err := r.FireDue(ctx, now)
		var next time.Time
		if err == nil {
			next, _, err = r.Next(ctx)
		}
		switch {
		case fatal(err):
			return err
		case ctx.Err() != nil:
			return nil
		case err != nil:
			r.log.Error("pings not fired", "error", err)
			next = r.nextAfter(ctx, now)
		}
		if !r.sleep(ctx, next) {
			return nil
		}
	}
}

// nextAfter is when to look again after a failure: at the next ping that is not
// due yet, or after the longest sleep.
func (r *Reminders) nextAfter(ctx context.Context, now time.Time) time.Time {
	next := now.Add(longestSleep)
	err := r.db.View(ctx, func(tx *store.Tx) error {
		rows, err := tx.DuePings(next, lookahead)
		for _, row := range rows {
			if row.Due.After(now) && row.Due.Before(next) {
				next = row.Due
			}
		}
		return err
	})
	if err != nil {
		return now.Add(longestSleep)
	}
	return next
}

// sleep waits until an instant, a change of the pings or the longest sleep,
// whichever is first; a zero instant is never. It reports false when ctx has
// ended.
func (r *Reminders) sleep(ctx context.Context, until time.Time) bool {
	var alarm <-chan time.Time
	if !until.IsZero() {
		t := time.NewTimer(min(until.Sub(wall(r.now())), longestSleep))
		defer t.Stop()
		alarm = t.C
	}
	select {
	case <-ctx.Done():
		return false
	case <-r.db.PingsChanged():
	case <-alarm:
	}
	return true
}

// wall is what the clock on the wall shows: Round(0) drops the monotonic clock,
// which stands still while the machine sleeps.
func wall(t time.Time) time.Time { return t.Round(0).UTC() }
