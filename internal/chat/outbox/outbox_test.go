package outbox_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/outbox"
	"ryebell/internal/store"
)

const door chat.DoorName = "fake"

func middle() float64 { return 0.5 }

// running runs an outbox in the bubble until the test ends.
func running(t *testing.T, b *kitchenBook, d chat.Door, c outbox.Config) {
	t.Helper()
	if c.Chance == nil {
		c.Chance = middle
	}
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan error, 1)
	go func() { done <- outbox.New(b.db, []chat.Door{d}, c).Run(ctx) }()
	t.Cleanup(func() {
		cancel()
		if err := <-done; err != nil {
			t.Errorf("Run: %v", err)
		}
	})
}

// A room whose platform fails waits longer each time and keeps its order; the
// other room does not notice.
func TestRunBacksOffByRoom(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, d := openBook(t, door, "a", "b"), newPlatform(t, door)
		start := time.Now()
		d.before = func(p chat.Parcel, _ string) error {
			if p.Room.ID == "a" && time.Since(start) < 5*time.Second {
				return errors.New("unreachable")
			}
			return nil
		}
		b.queue("a", start, "a1", "a2")
		b.queue("b", start, "b1", "b2")
		running(t, b, d, outbox.Config{})

		synctest.Wait()
		if got := d.texts("b"); got != "b1 b2" {
			t.Errorf("room b has %q at once, want b1 b2", got)
		}
		// Tries at 0, 1, 3 and 7 seconds.
		time.Sleep(7*time.Second - time.Millisecond)
		synctest.Wait()
		if got := d.texts("a"); got != "" {
			t.Errorf("room a has %q before 7 s", got)
		}
		time.Sleep(time.Millisecond)
		synctest.Wait()
		if got := d.texts("a"); got != "a1 a2" {
			t.Errorf("room a has %q at 7 s, want a1 a2", got)
		}
	})
}

// Run sends in the instant in which the post was queued: it is woken.
func TestRunIsWoken(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, d := openBook(t, door, "a"), newPlatform(t, door)
		running(t, b, d, outbox.Config{})
		for _, text := range []string{"one", "two"} {
			time.Sleep(time.Hour)
			b.queue("a", time.Now(), text)
			synctest.Wait()
			if last := d.last(); last.text != text || !last.at.Equal(time.Now()) {
				t.Fatalf("%s was not sent at once: %+v", text, last)
			}
		}
	})
}

// A room whose platform hangs keeps its own order and nobody else waiting.
func TestHangingRoomHoldsUpNoOther(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, d := openBook(t, door, "a", "b", "c"), newPlatform(t, door)
		hung := make(chan struct{})
		d.before = func(p chat.Parcel, text string) error {
			if text == "a1" {
				<-hung
			}
			return nil
		}
		b.queue("a", time.Now(), "a1", "a2")
		b.queue("b", time.Now(), "b1", "b2")
		running(t, b, d, outbox.Config{})
		synctest.Wait()
		if got := d.texts("b"); got != "b1 b2" {
			t.Errorf("room b has %q while a hangs, want b1 b2", got)
		}
		b.put(store.Parcel{Room: b.rooms["a"], Rank: store.Overtakes}, time.Now(), "guard-a")
		b.put(store.Parcel{Room: b.rooms["c"], Rank: store.Overtakes}, time.Now(), "guard-c")
		synctest.Wait()
		if d.texts("c") != "guard-c" || d.texts("a") != "" {
			t.Errorf("rooms c and a have %q and %q while a hangs, want guard-c and nothing", d.texts("c"), d.texts("a"))
		}
		close(hung)
		synctest.Wait()
		if got := d.texts("a"); got != "a1 guard-a a2" {
			t.Errorf("room a has %q in the end, want a1 guard-a a2", got)
		}
	})
}

// However many rooms hang, at most so many posts are on their way, and a guard post
// of another room still goes. Once one of them comes back the rest goes on.
func TestBerthsAreBounded(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var names []string
		for i := range 20 {
			names = append(names, fmt.Sprintf("hung-%d", i))
		}
		b, d := openBook(t, door, append(names, "quiet", "hot")...), newPlatform(t, door)
		var flying atomic.Int64
		hung := make(chan struct{})
		d.before = func(p chat.Parcel, _ string) error {
			if flying.Add(1); slices.Contains(names, p.Room.ID) {
				<-hung
			}
			flying.Add(-1)
			return nil
		}
		for _, name := range names {
			b.queue(name, time.Now(), "x")
		}
		b.queue("quiet", time.Now(), "q")
		running(t, b, d, outbox.Config{})
		time.Sleep(time.Minute)
		b.put(store.Parcel{Room: b.rooms["hot"], Rank: store.Overtakes}, time.Now(), "guard")
		synctest.Wait()
		if flying.Load() != 8 || d.texts("hot") != "guard" || d.texts("quiet") != "" {
			t.Errorf("%d posts on their way, want 8; rooms hot and quiet have %q and %q, want guard and nothing",
				flying.Load(), d.texts("hot"), d.texts("quiet"))
		}
		close(hung)
		synctest.Wait()
		if got := d.texts("quiet"); got != "q" {
			t.Errorf("room quiet has %q in the end, want q", got)
		}
	})
}

// At the end of the program a room that hangs takes no goodbye from the others.
func TestFlushPassesAHangingRoom(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, d := openBook(t, door, "a", "b"), newPlatform(t, door)
		ctx, cancel := context.WithTimeout(t.Context(), 5*time.Second)
		defer cancel()
		d.before = func(p chat.Parcel, _ string) error {
			if p.Room.ID == "a" {
				<-ctx.Done()
				return ctx.Err()
			}
			return nil
		}
		b.queue("a", time.Now(), "a1")
		b.queue("b", time.Now(), "b1", "b2")
		if err := outbox.New(b.db, []chat.Door{d}, outbox.Config{}).Flush(ctx, time.Now()); !errors.Is(err, context.DeadlineExceeded) {
			t.Errorf("Flush: %v", err)
		}
		if got := d.texts("b"); got != "b1 b2" {
			t.Errorf("room b has %q, want b1 b2", got)
		}
	})
}

// A platform that asks to wait gets nothing for that room meanwhile, not even a
// post that overtakes; the other room goes on.
func TestRetryAfterHoldsTheRoom(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, d := openBook(t, door, "a", "b"), newPlatform(t, door)
		start := time.Now()
		var tries atomic.Int64
		d.before = func(p chat.Parcel, _ string) error {
			if p.Room.ID != "a" {
				return nil
			}
			if tries.Add(1); time.Since(start) < 40*time.Second {
				return chat.RetryAfter{Wait: 40 * time.Second}
			}
			return nil
		}
		b.queue("a", start, "a1")
		running(t, b, d, outbox.Config{})
		synctest.Wait()
		b.put(store.Parcel{Room: b.rooms["a"], Rank: store.Overtakes}, time.Now(), "guard")
		b.queue("b", time.Now(), "b1")
		time.Sleep(40*time.Second - time.Millisecond)
		synctest.Wait()
		if tries.Load() != 1 || d.texts("b") != "b1" {
			t.Errorf("%d tries while told to wait, want 1; room b has %q", tries.Load(), d.texts("b"))
		}
		time.Sleep(time.Millisecond)
		synctest.Wait()
		if got := d.texts("a"); got != "guard a1" {
			t.Errorf("after the wait room a has %q, want guard a1", got)
		}
	})
}

func TestRefusedIsSetAside(t *testing.T) {
	for _, c := range []struct {
		name   string
		refuse func() error
		reason string
	}{
		{"refused", func() error { return chat.Refused{Reason: "too long"} }, "too long"},
		{"the door panics", func() error { panic("nil map") }, "the door panicked"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, d := openBook(t, door, "a"), newPlatform(t, door)
			d.before = func(_ chat.Parcel, text string) error {
				if text == "bad" {
					return c.refuse()
				}
				return nil
			}
			now := time.Now()
			b.queue("a", now, "one", "bad", "two")
			deliver(t, b, d, now)
			if got := d.texts("a"); got != "one two" {
				t.Errorf("got %q, want one two", got)
			}
			refusals(t, b, c.reason)
		})
	}
}

func TestUnreadablePostIsSetAside(t *testing.T) {
	b, d := openBook(t, door, "a"), newPlatform(t, door)
	now := time.Now()
	b.update(func(tx *store.Tx) error {
		_, err := tx.Book(b.id).Queue(store.Parcel{Room: b.rooms["a"], Rank: store.InTurn, Post: []byte("{")}, now)
		return err
	})
	b.queue("a", now, "one")
	deliver(t, b, d, now)
	if got := d.texts("a"); got != "one" {
		t.Errorf("got %q, want one", got)
	}
	refusals(t, b, "")
}

func TestGuardOvertakes(t *testing.T) {
	b, d := openBook(t, door, "a", "b"), newPlatform(t, door)
	now := time.Now()
	b.queue("a", now, "a1", "a2")
	b.queue("b", now, "b1", "b2")
	b.put(store.Parcel{Room: b.rooms["b"], Rank: store.Overtakes}, now, "guard")
	deliver(t, b, d, now)
	if d.took[0].text != "guard" || d.texts("b") != "guard b1 b2" || d.texts("a") != "a1 a2" {
		t.Errorf("first %q, rooms %q and %q", d.took[0].text, d.texts("a"), d.texts("b"))
	}
}

// Of three posts that wait for one place the newest is sent, and it edits what
// stands there.
func TestSlotIsMerged(t *testing.T) {
	b, d := openBook(t, door, "a"), newPlatform(t, door)
	now := time.Now()
	put := func(text string) {
		b.put(store.Parcel{Room: b.rooms["a"], Rank: store.InTurn, Slot: "run/12"}, now, text)
	}
	put("heating")
	deliver(t, b, d, now)
	put("venting")
	put("holding")
	b.queue("a", now, "note")
	put("falling")
	deliver(t, b, d, now)
	if got := d.texts("a"); got != "heating note falling" {
		t.Errorf("got %q, want heating note falling", got)
	}
	if last := d.took[2]; last.Replaces != "post-"+"1" {
		t.Errorf("the last post replaces %q, want post-1", last.Replaces)
	}
}

// Deliver tries each row once and no row that is not due yet.
func TestDeliverTriesOnce(t *testing.T) {
	b, d := openBook(t, door, "a"), newPlatform(t, door)
	tries, now := 0, time.Now()
	d.before = func(chat.Parcel, string) error { tries++; return errors.New("unreachable") }
	b.queue("a", now, "one", "two")
	deliver(t, b, d, now)
	deliver(t, b, d, now.Add(999*time.Millisecond))
	if tries != 1 {
		t.Errorf("%d tries within a second, want 1", tries)
	}
	d.before = nil
	deliver(t, b, d, now.Add(time.Second))
	if got := d.texts("a"); got != "one two" {
		t.Errorf("got %q, want one two", got)
	}
}

// Timers stand still while a machine sleeps. What fell due meanwhile goes out
// within half a minute of waking up, though the timer had minutes to go.
func TestRunLooksAtTheWallClock(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, d := openBook(t, door, "a"), newPlatform(t, door)
		asleep := make(chan time.Duration, 1)
		asleep <- 0
		now := func() time.Time {
			a := <-asleep
			defer func() { asleep <- a }()
			return time.Now().Add(a)
		}
		refuse := true
		d.before = func(chat.Parcel, string) error {
			if refuse {
				refuse = false
				return chat.RetryAfter{Wait: time.Hour}
			}
			return nil
		}
		b.queue("a", now(), "one")
		running(t, b, d, outbox.Config{Now: now})
		synctest.Wait()
		<-asleep
		asleep <- 2 * time.Hour
		time.Sleep(30 * time.Second)
		synctest.Wait()
		if got := d.texts("a"); got != "one" {
			t.Errorf("got %q half a minute after the machine woke up, want one", got)
		}
	})
}

// What the platform took while the program was told to end is still marked.
func TestRunMarksWhatWasOnItsWay(t *testing.T) {
	b, d := openBook(t, door, "a"), newPlatform(t, door)
	ctx, cancel := context.WithCancel(context.Background())
	d.before = func(chat.Parcel, string) error { cancel(); return nil }
	b.queue("a", time.Now(), "one", "two")
	if err := outbox.New(b.db, []chat.Door{d}, outbox.Config{}).Run(ctx); err != nil {
		t.Fatal(err)
	}
	d.before = nil
	deliver(t, b, d, time.Now())
	if got := d.texts("a"); got != "one two" {
		t.Errorf("got %q, want one two", got)
	}
}

func deliver(t *testing.T, b *kitchenBook, d chat.Door, now time.Time) {
	t.Helper()
	o := outbox.New(b.db, []chat.Door{d}, outbox.Config{Chance: middle})
	if err := o.Deliver(t.Context(), d.Name(), now); err != nil {
		t.Fatal(err)
	}
}

// refusals checks that one row was set aside; the reason may be empty for any.
func refusals(t *testing.T, b *kitchenBook, reason string) {
	t.Helper()
	var rows []store.Row
	err := b.db.View(t.Context(), func(tx *store.Tx) (err error) {
		rows, err = tx.Refusals(9)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 1 || reason != "" && rows[0].Reason != reason {
		t.Errorf("set aside: %+v, want one for %q", rows, reason)
	}
}
