package outbox

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"math/rand/v2"
	"sync"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
)

// Config holds what may be left as it is.
type Config struct {
	// Log takes what went wrong on the way; nil for nowhere.
	Log *slog.Logger
	// Now reads the wall clock; nil for the real one.
	Now func() time.Time
	// Chance gives numbers from 0 to 1, by which waits stray; nil for random ones.
	Chance func() float64
}

// Outbox sends what waits in the book through the doors.
type Outbox struct {
	db      *store.DB
	senders []*sender
}

// New makes an outbox for the doors. Rows for other doors wait.
func New(db *store.DB, doors []chat.Door, c Config) *Outbox {
	if c.Log == nil {
		c.Log = slog.New(slog.DiscardHandler)
	}
	if c.Now == nil {
		c.Now = time.Now
	}
	if c.Chance == nil {
		c.Chance = rand.Float64
	}
	o := &Outbox{db: db}
	for _, d := range doors {
		o.senders = append(o.senders, &sender{
			db: db, door: d, now: c.Now, chance: c.Chance,
			log: c.Log.With("door", d.Name()), wake: make(chan struct{}, 1),
			flying: map[store.RoomID]bool{}, landed: make(chan struct{}),
		})
	}
	return o
}

// Run sends until ctx ends, through all doors side by side. A row that is on its
// way then is still marked. The error is [store.ErrFsync] or
// [store.ErrDamaged], after which the process must end; all others are waited out.
func (o *Outbox) Run(ctx context.Context) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	errs := make([]error, len(o.senders))
	var wg sync.WaitGroup
	for i, s := range o.senders {
		wg.Go(func() {
			if errs[i] = s.run(ctx); errs[i] != nil {
				cancel()
			}
		})
	}
	o.passWakes(ctx)
	wg.Wait()
	return errors.Join(errs...)
}

// passWakes wakes every sender whenever posts were queued: the book can't tell
// for which door they are.
func (o *Outbox) passWakes(ctx context.Context) {
	for {
		select {
		case <-ctx.Done():
			return
		case <-o.db.OutboxChanged():
		}
		for _, s := range o.senders {
			select {
			case s.wake <- struct{}{}:
			default: // it has one waiting already
			}
		}
	}
}

// Deliver sends what is due through one door at an instant, one post after the
// other, and returns when nothing is left that is: what failed waits for a later
// one. A rehearsal calls it with its own time. It may be called beside Run. The
// error is one of the book or the context, never one of the platform.
func (o *Outbox) Deliver(ctx context.Context, door chat.DoorName, now time.Time) error {
	for _, s := range o.senders {
		if s.door.Name() == door {
			return s.drain(ctx, oneByOne(), func() time.Time { return now })
		}
	}
	return fmt.Errorf("deliver: no door %q", door)
}

// Flush is Deliver for all doors and rooms side by side: the program calls it
// before it ends, so that what hangs holds up no other.
func (o *Outbox) Flush(ctx context.Context, now time.Time) error {
	errs := make([]error, len(o.senders))
	var wg sync.WaitGroup
	for i, s := range o.senders {
		wg.Go(func() { errs[i] = s.drain(ctx, sideBySide(), func() time.Time { return now }) })
	}
	wg.Wait()
	return errors.Join(errs...)
}
