package reminders_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/kitchen"
	"ryebell/internal/reminders"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// kitchenBook is a book with one collective, whose pings are set by hand.
type kitchenBook struct {
	t  failer
	db *store.DB
	id store.CollectiveID

	mu    sync.Mutex
	fired []string // key and how late, in order
	// fails gives what goes wrong with a ping; nil for nothing.
	fails func(key string) error
}

func openBook(t *testing.T) *kitchenBook {
	t.Helper()
	return newBook(t, storetest.Open(t))
}

func newBook(t failer, db *store.DB) *kitchenBook {
	t.Helper()
	b := &kitchenBook{t: t, db: db}
	b.update(func(tx *store.Tx) (err error) {
		b.id, err = tx.NewCollective("kitchen", time.Now())
		return err
	})
	return b
}

func (b *kitchenBook) update(f func(*store.Tx) error) {
	b.t.Helper()
	if err := b.db.Update(context.Background(), f); err != nil {
		b.t.Fatal(err)
	}
}

// want makes the pings under a prefix those that are due at these times, named
// by their place.
func (b *kitchenBook) want(prefix string, now time.Time, dues ...time.Time) {
	b.t.Helper()
	var pings []kitchen.Ping
	for i, due := range dues {
		pings = append(pings, kitchen.Ping{
			Key: fmt.Sprintf("%s%d", prefix, i), Due: due,
			Kind: kitchen.StartNow, Loudness: kitchen.DuePing, About: "kitchen",
		})
	}
	b.update(func(tx *store.Tx) error { return tx.Book(b.id).Reconcile(prefix, pings, now) })
}

func (b *kitchenBook) fire(_ *store.Tx, row store.PingRow, now time.Time) error {
	if row.Collective != b.id {
		return nil // left over from another round of a property
	}
	if b.fails != nil {
		if err := b.fails(row.Key); err != nil {
			return err
		}
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	b.fired = append(b.fired, row.Key+" "+now.Sub(row.Due).String())
	return nil
}

// story is what has fired, and forgets it.
func (b *kitchenBook) story() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	defer func() { b.fired = nil }()
	return strings.Join(b.fired, ", ")
}

// running runs reminders in the bubble until the test ends.
func running(t *testing.T, b *kitchenBook, c reminders.Config) {
	t.Helper()
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan error, 1)
	go func() { done <- reminders.New(b.db, b.fire, c).Run(ctx) }()
	t.Cleanup(func() {
		cancel()
		if err := <-done; err != nil {
			t.Errorf("Run: %v", err)
		}
	})
}

func wantStory(t *testing.T, b *kitchenBook, want string) {
	t.Helper()
	synctest.Wait()
	if got := b.story(); got != want {
		t.Errorf("fired %q, want %q", got, want)
	}
}

func TestRunFiresOnTheDot(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, start := openBook(t), time.Now()
		b.want("run/12/", start, start.Add(90*time.Minute), start.Add(95*time.Minute))
		running(t, b, reminders.Config{})
		time.Sleep(90*time.Minute - time.Millisecond)
		wantStory(t, b, "")
		time.Sleep(time.Millisecond)
		wantStory(t, b, "run/12/0 0s")
		time.Sleep(5 * time.Minute)
		wantStory(t, b, "run/12/1 0s")
		time.Sleep(24 * time.Hour)
		wantStory(t, b, "")
	})
}

// A ping that is put in while Run sleeps for a later one, or for none at all,
// wakes it; one that is withdrawn or moved does not fire.
func TestRunWakesForAnEarlierOne(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, start := openBook(t), time.Now()
		running(t, b, reminders.Config{})
		time.Sleep(time.Hour)
		b.want("run/12/", time.Now(), start.Add(10*time.Hour))
		synctest.Wait()
		b.want("run/13/", time.Now(), start.Add(61*time.Minute))
		time.Sleep(time.Minute)
		wantStory(t, b, "run/13/0 0s")
		b.want("run/14/", time.Now(), start.Add(62*time.Minute))
		b.want("run/14/", time.Now())
		b.want("run/12/", time.Now(), start.Add(11*time.Hour))
		time.Sleep(10*time.Hour - time.Minute)
		wantStory(t, b, "run/12/0 0s")
	})
}

// What fell due while the bot was down fires at once when it is up again, the
// longest due first, and only once.
func TestRunFiresLateOnes(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, start := openBook(t), time.Now()
		b.want("run/12/", start, start.Add(time.Minute), start.Add(50*time.Minute), start.Add(2*time.Hour))
		time.Sleep(time.Hour)
		running(t, b, reminders.Config{})
		wantStory(t, b, "run/12/0 59m0s, run/12/1 10m0s")
		time.Sleep(time.Hour)
		wantStory(t, b, "run/12/2 0s")
	})
}

// wantGuard sets one ping that guards a hot cooker.
func (b *kitchenBook) wantGuard(key string, now, due time.Time) {
	b.t.Helper()
	guard := kitchen.Ping{Key: key, Due: due, Kind: kitchen.HoldOver, Loudness: kitchen.GuardPing, About: "run/9"}
	b.update(func(tx *store.Tx) error { return tx.Book(b.id).Reconcile(key, []kitchen.Ping{guard}, now) })
}

// After a downtime what guards a hot cooker comes first, though it fell due last.
func TestGuardsFireFirst(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, start := openBook(t), time.Now()
		b.want("run/12/", start, start.Add(time.Minute), start.Add(2*time.Minute))
		b.wantGuard("run/9/hold-over", start, start.Add(50*time.Minute))
		time.Sleep(time.Hour)
		running(t, b, reminders.Config{})
		wantStory(t, b, "run/9/hold-over 10m0s, run/12/0 59m0s, run/12/1 58m0s")
	})
}

// While a ping can't be fired the others come on time, whatever their loudness.
func TestFailureDelaysNoOther(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, start := openBook(t), time.Now()
		b.fails = func(key string) error {
			if key == "run/12/0" {
				return errors.New("no such run")
			}
			return nil
		}
		b.want("run/12/", start, start.Add(time.Second), start.Add(11*time.Second))
		b.wantGuard("run/9/hold-over", start, start.Add(21*time.Second))
		running(t, b, reminders.Config{})
		time.Sleep(25 * time.Second)
		wantStory(t, b, "run/12/1 0s, run/9/hold-over 0s")
	})
}

// Timers stand still while a machine sleeps. What fell due meanwhile fires within
// half a minute of waking up, though the timer had hours to go.
func TestRunLooksAtTheWallClock(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		b, start := openBook(t), time.Now()
		asleep := make(chan time.Duration, 1)
		asleep <- 0
		now := func() time.Time {
			a := <-asleep
			defer func() { asleep <- a }()
			return time.Now().Add(a)
		}
		b.want("run/12/", start, start.Add(90*time.Minute))
		running(t, b, reminders.Config{Now: now})
		synctest.Wait()
		<-asleep
		asleep <- 8 * time.Hour
		time.Sleep(30 * time.Second)
		wantStory(t, b, "run/12/0 6h30m30s")
	})
}

// A ping that can't be fired holds up no other, neither those that are due with
// it nor those that come later, and is tried again.
func TestRunGoesOnPastAFailure(t *testing.T) {
	for _, c := range []struct {
		name  string
		fails func() error
	}{
		{"error", func() error { return errors.New("no such run") }},
		{"panic", func() error { panic("stage 99") }},
	} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				b, start := openBook(t), time.Now()
				var mended atomic.Bool
				b.fails = func(key string) error {
					if key == "run/12/0" && !mended.Load() {
						return c.fails()
					}
					return nil
				}
				at := func(s int) time.Time { return start.Add(time.Duration(s) * time.Second) }
				b.want("run/12/", start, at(60), at(60), at(67))
				running(t, b, reminders.Config{})
				time.Sleep(67 * time.Second)
				wantStory(t, b, "run/12/1 0s, run/12/2 0s")
				mended.Store(true)
				time.Sleep(30 * time.Second)
				wantStory(t, b, "run/12/0 37s")
			})
		})
	}
}

// After a failed sync, or once the file is malformed, nothing is known of the
// book: the process must end.
func TestBrokenBookEndsRun(t *testing.T) {
	for _, broken := range []error{store.ErrFsync, store.ErrDamaged} {
		b := openBook(t)
		b.fails = func(string) error { return broken }
		b.want("run/12/", time.Now(), time.Now(), time.Now())
		if err := reminders.New(b.db, b.fire, reminders.Config{}).Run(t.Context()); !errors.Is(err, broken) {
			t.Errorf("Run: got %v, want %v", err, broken)
		}
	}
}

// What a ping queues and its mark are one transaction: a ping that fails has
// queued nothing.
func TestFireAndMarkAreOne(t *testing.T) {
	b, now := openBook(t), instant(t, "2026-03-02T09:00:00Z")
	b.want("run/12/", now, now)
	fire := func(tx *store.Tx, _ store.PingRow, _ time.Time) error {
		if err := tx.Book(b.id).Rename("fired"); err != nil {
			return err
		}
		return errors.New("no such run")
	}
	if err := reminders.New(b.db, fire, reminders.Config{}).FireDue(t.Context(), now); err == nil {
		t.Error("FireDue told of no failure")
	}
	storetest.View(t, b.db, func(tx *store.Tx) error {
		name, err := tx.Book(b.id).Name()
		if name != "kitchen" {
			t.Errorf("what a failed ping wrote is there: %q", name)
		}
		return err
	})
}

func TestNext(t *testing.T) {
	b, now := openBook(t), instant(t, "2026-03-02T09:00:00Z")
	r := reminders.New(b.db, b.fire, reminders.Config{})
	next := func(want time.Time, waits bool) {
		t.Helper()
		due, ok, err := r.Next(t.Context())
		if err != nil || ok != waits || !due.Equal(want) {
			t.Errorf("Next: got %v, %v, %v, want %v, %v", due, ok, err, want, waits)
		}
	}
	next(time.Time{}, false)
	b.want("run/12/", now, now.Add(time.Hour), now.Add(time.Minute))
	next(now.Add(time.Minute), true)
	if err := r.FireDue(t.Context(), now.Add(59*time.Minute)); err != nil {
		t.Fatal(err)
	}
	next(now.Add(time.Hour), true)
}

// Whenever pings are set and moved, and whenever the bot is down: each that is
// still wanted fires once, not before it is due.
func TestEachFiresOnce(t *testing.T) {
	db := storetest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		b := newBook(t, db)
		r := reminders.New(db, b.fire, reminders.Config{})
		now := instant(t, "2026-03-02T09:00:00Z")
		var dues []time.Time
		for range rapid.IntRange(1, 8).Draw(t, "pings") {
			dues = append(dues, now.Add(time.Duration(rapid.IntRange(0, 600).Draw(t, "due"))*time.Second))
		}
		b.want("run/12/", now, dues...)
		for range rapid.IntRange(1, 12).Draw(t, "looks") {
			now = now.Add(time.Duration(rapid.IntRange(0, 120).Draw(t, "step")) * time.Second)
			if err := r.FireDue(context.Background(), now); err != nil {
				t.Fatal(err)
			}
		}
		var got, want []string
		for _, f := range b.fired {
			key, late, _ := strings.Cut(f, " ")
			if got = append(got, key); strings.HasPrefix(late, "-") {
				t.Fatalf("%s fired early: %s", key, late)
			}
		}
		for i, due := range dues {
			if !due.After(now) {
				want = append(want, fmt.Sprintf("run/12/%d", i))
			}
		}
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Fatalf("fired %v, want %v", got, want)
		}
	})
}
