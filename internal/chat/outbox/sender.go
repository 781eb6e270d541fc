package outbox

import (
	"context"
	"errors"
	"log/slog"
	"maps"
	"runtime/debug"
	"slices"
	"sync"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
)

const (
	// longestSleep is how long a sender sleeps at most while something waits.
	// Timers stand still while the machine sleeps; the wall clock does not.
	longestSleep = 30 * time.Second
	// longestSend is when a door that does not come back is given up on.
	longestSend = 2 * time.Minute
	// shortestHold is for a platform that asks to wait no time at all.
	shortestHold = time.Second
)

// berths is how many posts may be on their way through a door at once, each to
// another room. Those for guards are free for posts that overtake, when rooms that
// hang have taken all others.
type berths struct{ all, guards int }

// oneByOne sends in an order that is always the same.
func oneByOne() berths { return berths{all: 1} }

// sideBySide lets rooms go on beside others that hang.
func sideBySide() berths { return berths{all: 8, guards: 4} }

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
	// flying are the rooms that a post is on its way to: the next one for such a
	// room waits until what became of the first is known.
	flying map[store.RoomID]bool
	// landed is closed, and made anew, whenever a post is no longer on its way.
	landed chan struct{}
	// broken is the error after which nothing more may be done with the book.
	broken error
}

// mark tells the book what became of a row.
type mark func(*store.Tx) error

// sky is what is on its way after a launch.
type sky struct {
	flying map[store.RoomID]bool
	landed <-chan struct{}
}

// run serves the door until ctx ends, and what is on its way then has arrived.
func (s *sender) run(ctx context.Context) error {
	var flights sync.WaitGroup
	defer flights.Wait()
	for failures := 0; ; {
		sky, err := s.launch(ctx, &flights, sideBySide(), s.now)
		var next time.Time
		if err == nil {
			failures = 0
			next, err = s.nextTry(ctx, sky)
		}
		switch {
		case fatal(err):
			return err
		case ctx.Err() != nil:
			return nil
		case err != nil:
			failures++
			s.log.Error("outbox can't use the book", "error", err)
			next = s.now().Add(min(backoff(failures, s.chance()), longestSleep))
		}
		if !s.sleep(ctx, next, sky.landed) {
			return nil
		}
	}
}

// fatal reports whether the process must end: nothing good comes of writing on.
func fatal(err error) bool {
	return errors.Is(err, store.ErrFsync) || errors.Is(err, store.ErrDamaged)
}

// sleep waits until an instant, a wake-up, a landing or the longest sleep,
// whichever is first; a zero instant is never. It reports false when ctx has ended.
func (s *sender) sleep(ctx context.Context, until time.Time, landed <-chan struct{}) bool {
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
	case <-landed:
	}
	return true
}

// nextTry is when a row may be tried next; zero when none waits but for a landing.
func (s *sender) nextTry(ctx context.Context, k sky) (next time.Time, err error) {
	// What is due and not on its way waits for a berth.
	full, now := len(k.flying) >= sideBySide().all, s.now()
	among := func(d store.Dispatch) bool { return !k.flying[d.Room] && !(full && !d.Due.After(now)) }
	err = s.db.View(ctx, func(tx *store.Tx) error {
		next, _, err = tx.NextTry(string(s.door.Name()), among)
		return err
	})
	return next, err
}

// drain sends until nothing is due by the clock and nothing on its way.
func (s *sender) drain(ctx context.Context, b berths, clock func() time.Time) error {
	var flights sync.WaitGroup
	defer flights.Wait()
	for {
		sky, err := s.launch(ctx, &flights, b, clock)
		if err != nil || len(sky.flying) == 0 {
			return err
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-sky.landed:
		}
	}
}

// launch sends off what is due by the clock, as far as there are berths, once the
// book knows of everything that has landed.
func (s *sender) launch(ctx context.Context, flights *sync.WaitGroup, b berths, clock func() time.Time) (sky, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if err := s.settle(ctx); err != nil {
		return sky{landed: s.landed}, err
	}
	due, err := s.due(ctx, clock(), b.all+b.guards)
	for _, d := range due {
		free := b.all - len(s.flying)
		if d.Rank == store.Overtakes {
			free += b.guards
		}
		if free > 0 && !s.flying[d.Room] {
			s.flying[d.Room] = true
			flights.Go(func() { s.fly(ctx, d, clock) })
		}
	}
	return sky{maps.Clone(s.flying), s.landed}, err
}

// due is the next row of each of some rooms.
func (s *sender) due(ctx context.Context, now time.Time, limit int) (due []store.Dispatch, err error) {
	err = s.db.View(ctx, func(tx *store.Tx) error {
		due, err = tx.NextParcels(string(s.door.Name()), now, limit)
		return err
	})
	return due, err
}

// fly sends one row and marks what became of it. If the mark can't be written it
// stays in the list, and the next launch tries it before all else.
func (s *sender) fly(ctx context.Context, d store.Dispatch, clock func() time.Time) {
	receipt, err := s.send(ctx, d)
	s.mu.Lock()
	defer s.mu.Unlock()
	// Told to end: that the row did not go out is no fault of it.
	if err == nil || ctx.Err() == nil {
		s.marks = append(s.marks, s.outcome(d, receipt, err, clock()))
		_ = s.settle(ctx)
	}
	delete(s.flying, d.Room)
	close(s.landed)
	s.landed = make(chan struct{})
}

// settle tells the book what became of rows. A row that is no longer there to be
// marked, because its member was forgotten or its room closed meanwhile, needs no
// mark. What was sent is marked even when ctx has ended.
func (s *sender) settle(ctx context.Context) error {
	if s.broken != nil || len(s.marks) == 0 {
		return s.broken
	}
	err := s.db.Update(context.WithoutCancel(ctx), func(tx *store.Tx) error {
		for _, m := range s.marks {
			if err := m(tx); err != nil && !errors.Is(err, store.ErrNotFound) {
				return err
			}
		}
		return nil
	})
	switch {
	case err == nil:
		s.marks = nil
	case fatal(err):
		s.broken = err
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
	if post.Files, err = s.filled(ctx, d.Collective, post.Files); err != nil {
		return chat.Receipt{}, err
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

// filled puts the bytes of photos into the files that name them. One that was
// deleted since the post was written is left out.
func (s *sender) filled(ctx context.Context, of store.CollectiveID, files []chat.File) ([]chat.File, error) {
	if !slices.ContainsFunc(files, func(f chat.File) bool { return f.Kept != 0 }) {
		return files, nil
	}
	var out []chat.File
	err := s.db.View(ctx, func(tx *store.Tx) (err error) {
		out = nil
		for _, f := range files {
			if f.Kept != 0 {
				f.Data, err = tx.Book(of).PhotoBytes(store.PhotoID(f.Kept))
			}
			if errors.Is(err, store.ErrNotFound) {
				continue
			}
			if err != nil {
				return err
			}
			out = append(out, f)
		}
		return nil
	})
	return out, err
}
