package outbox

import (
	"context"
	"errors"
	"log/slog"
	"runtime/debug"
	"sync"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
)

const (
	// longestSleep is how long a sender sleeps at most while something waits.
	// Timers stand still while the machine sleeps; the wall clock does not.
	longestSleep = 30 * time.Second
	// atOnce is how many rooms are served between two looks at the book. It is
	// small, so that a post that overtakes is seen soon.
	atOnce = 8
	// longestSend is when a door that does not come back is given up on.
	longestSend = 2 * time.Minute
	// shortestHold is for a platform that asks to wait no time at all.
	shortestHold = time.Second
)

// sender serves one door.
type sender struct {
	db     *store.DB
	door   chat.Door
	log    *slog.Logger
	now    func() time.Time
	chance func() float64
	wake   chan struct{}

	mu sync.Mutex
	// marks are what the book must still be told of rows. While it can't be told,
	// nothing further is sent: what was sent already would be sent again.
	marks []mark
}

// mark tells the book what became of a row.
type mark func(*store.Tx) error

// run serves the door until ctx ends.
func (s *sender) run(ctx context.Context) error {
	for failures := 0; ; {
		err := s.drain(ctx, s.now)
		var next time.Time
		if err == nil {
			failures = 0
			next, err = s.nextTry(ctx)
		}
		switch {
		case errors.Is(err, store.ErrFsync):
			return err
		case ctx.Err() != nil:
			return nil
		case err != nil:
			failures++
			s.log.Error("outbox can't use the book", "error", err)
			next = s.now().Add(min(backoff(failures, s.chance()), longestSleep))
		}
		if !s.sleep(ctx, next) {
			return nil
		}
	}
}

// sleep waits until an instant, a wake-up or the longest sleep, whichever is
// first; a zero instant is never. It reports false when ctx has ended.
func (s *sender) sleep(ctx context.Context, until time.Time) bool {
	var alarm <-chan time.Time
	if !until.IsZero() {
		// Wall times: the monotonic clock stands still while the machine sleeps.
		t := time.NewTimer(min(until.Round(0).Sub(s.now().Round(0)), longestSleep))
		defer t.Stop()
		alarm = t.C
	}
	select {
	case <-ctx.Done():
		return false
	case <-s.wake:
	case <-alarm:
	}
	return true
}

// nextTry is when a row may be tried next; zero when none waits.
func (s *sender) nextTry(ctx context.Context) (next time.Time, err error) {
	err = s.db.View(ctx, func(tx *store.Tx) error {
		next, _, err = tx.NextTry(string(s.door.Name()))
		return err
	})
	return next, err
}

// drain sends until nothing is due by the clock.
func (s *sender) drain(ctx context.Context, clock func() time.Time) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	for {
		if err := s.settle(ctx); err != nil {
			return err
		}
		due, err := s.due(ctx, clock())
		if err != nil || len(due) == 0 {
			return err
		}
		if err := s.round(ctx, clock, due); err != nil {
			return err
		}
	}
}

// due is the next row of each of some rooms.
func (s *sender) due(ctx context.Context, now time.Time) (due []store.Dispatch, err error) {
	err = s.db.View(ctx, func(tx *store.Tx) error {
		due, err = tx.NextParcels(string(s.door.Name()), now, atOnce)
		return err
	})
	return due, err
}

// round sends one row of each room. A sent row is marked at once, and with it
// what was postponed or refused before; the rest is marked at the end.
func (s *sender) round(ctx context.Context, clock func() time.Time, due []store.Dispatch) error {
	for _, d := range due {
		receipt, err := s.send(ctx, d)
		if err != nil && ctx.Err() != nil {
			// Told to end: that the row did not go out is no fault of it.
			return errors.Join(ctx.Err(), s.settle(ctx))
		}
		s.marks = append(s.marks, s.outcome(d, receipt, err, clock()))
		if err == nil {
			if err := s.settle(ctx); err != nil {
				return err
			}
		}
	}
	return s.settle(ctx)
}

// settle tells the book what became of rows. A row that is no longer there to be
// marked, because its member was forgotten or its room closed meanwhile, needs no
// mark. What was sent is marked even when ctx has ended.
func (s *sender) settle(ctx context.Context) error {
	if len(s.marks) == 0 {
		return nil
	}
	err := s.db.Update(context.WithoutCancel(ctx), func(tx *store.Tx) error {
		for _, m := range s.marks {
			if err := m(tx); err != nil && !errors.Is(err, store.ErrNotFound) {
				return err
			}
		}
		return nil
	})
	if err == nil {
		s.marks = nil
	}
	return err
}

// outcome is the mark for what a door said of a row.
func (s *sender) outcome(d store.Dispatch, receipt chat.Receipt, err error, now time.Time) mark {
	var wait chat.RetryAfter
	var refused chat.Refused
	switch {
	case err == nil:
		return func(tx *store.Tx) error { return tx.MarkSent(d.Row, receipt.Post, now) }
	case errors.As(err, &wait):
		until := now.Add(max(wait.Wait, shortestHold))
		s.log.Info("platform asks to wait", "row", d.Row, "room", d.Room, "until", until)
		return func(tx *store.Tx) error { return tx.HoldRoom(d.Room, until) }
	case errors.As(err, &refused):
		s.log.Error("post refused", "row", d.Row, "room", d.Room, "reason", refused.Reason)
		return func(tx *store.Tx) error { return tx.Refuse(d.Row, refused.Reason) }
	}
	until := now.Add(backoff(d.Attempts+1, s.chance()))
	s.log.Warn("post not sent", "row", d.Row, "room", d.Room, "attempt", d.Attempts+1, "until", until, "error", err)
	return func(tx *store.Tx) error { return tx.Postpone(d.Row, until, err.Error()) }
}

// send hands a row to the door.
func (s *sender) send(ctx context.Context, d store.Dispatch) (receipt chat.Receipt, err error) {
	post, err := chat.DecodePost(d.Post)
	if err != nil {
		return chat.Receipt{}, chat.Refused{Reason: "the stored post can't be read: " + err.Error()}
	}
	ctx, cancel := context.WithTimeout(ctx, longestSend)
	defer cancel()
	defer func() {
		// A post that a door breaks on must not stop the posts of others, now and
		// at every start.
		if v := recover(); v != nil {
			s.log.Error("door panicked", "row", d.Row, "panic", v, "stack", string(debug.Stack()))
			err = chat.Refused{Reason: "the door panicked"}
		}
	}()
	return s.door.Send(ctx, chat.Parcel{
		Row:      int64(d.Row),
		Room:     chat.Room{Door: s.door.Name(), ID: d.Address},
		Post:     post,
		Replaces: d.Replaces,
		ReplyTo:  d.ReplyTo,
	})
}
