package ordeal

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
)

// wallClock is the clock on the wall of a bubble. It runs with the timers, and can
// be set: by a person, by the network, or by a machine that slept while its timers
// stood still.
type wallClock struct {
	mu    sync.Mutex
	ahead time.Duration
}

func (w *wallClock) now() time.Time {
	w.mu.Lock()
	defer w.mu.Unlock()
	return time.Now().Add(w.ahead)
}

func (w *wallClock) jump(by time.Duration) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.ahead += by
}

// blindness is how long the program may not notice that the clock was set.
const blindness = 30 * time.Second

// Whatever the clock does, each ping comes once, never before the wall shows its
// time, and within half a minute of that or of the jump over it.
func TestClockJumps(t *testing.T) {
	for _, c := range []struct {
		name   string
		before time.Duration // from the jump to the ping; negative: the ping was before
		jump   time.Duration
	}{
		{"a second ahead", time.Hour, time.Second},
		{"a second back", time.Hour, -time.Second},
		{"a second ahead at the last moment", time.Second, time.Second},
		{"a second back at the last moment", 500 * time.Millisecond, -time.Second},
		{"an hour ahead, over the ping", 20 * time.Minute, time.Hour},
		{"an hour ahead, nearly to the ping", time.Hour + 5*time.Second, time.Hour},
		{"an hour back, before the ping", 20 * time.Minute, -time.Hour},
		{"an hour back, behind the ping", -20 * time.Minute, -time.Hour},
		{"a second back, right behind the ping", -time.Millisecond, -time.Second},
		{"a night of sleep, over the ping", 3 * time.Hour, 9 * time.Hour},
		{"a night of sleep before the ping", 16 * time.Hour, 9 * time.Hour},
		{"a year ahead", time.Hour, 365 * 24 * time.Hour},
		{"two days back", time.Hour, -48 * time.Hour},
	} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				w := &waiter{}
				due := w.live(t, "tomorrow")
				time.Sleep(due.Add(-c.before).Sub(w.wall.now()))
				synctest.Wait()
				w.wall.jump(c.jump)
				earliest := due
				if landed := w.wall.now(); c.before >= 0 && landed.After(due) {
					earliest = landed
				}
				time.Sleep(max(due.Sub(w.wall.now()), 0) + blindness)
				w.expect(t, earliest)
				time.Sleep(12 * time.Hour)
				w.expect(t, earliest)
			})
		})
	}
}

// A machine that wakes in 1970 and learns the time a day later was merely late.
func TestClockAtNought(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		w := &waiter{}
		due := w.live(t, "tomorrow")
		time.Sleep(due.Add(-time.Hour).Sub(w.wall.now()))
		nought := time.Unix(0, 0).Sub(w.wall.now())
		w.wall.jump(nought)
		time.Sleep(24 * time.Hour)
		synctest.Wait()
		if got := w.handed(); len(got) != 3 {
			t.Errorf("posts %v in 1970, want the three answers", got)
		}
		w.wall.jump(-nought)
		landed := w.wall.now()
		time.Sleep(blindness)
		w.expect(t, landed)
	})
}

// A post that waits for its platform is not held up for the time by which the clock
// is set back, and neither is what comes behind it.
func TestPostsWaitThroughAJumpBack(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		w := &waiter{away: true}
		w.live(t, "tomorrow")
		time.Sleep(time.Minute)
		w.wall.jump(-time.Hour)
		w.mu.Lock()
		w.away = false
		w.mu.Unlock()
		time.Sleep(6 * time.Minute) // longer than any wait between two tries
		synctest.Wait()
		if got := w.handed(); len(got) != 3 {
			t.Errorf("%d of 3 answers arrived within 6 min", len(got))
		}
	})
}

// waiter is a member who waits for a ping, with the program running by a clock on
// the wall.
type waiter struct {
	wall wallClock

	mu   sync.Mutex
	away bool // the platform
	rows []int64
	at   []time.Time // on the wall
}

func (w *waiter) handed() []int64 {
	w.mu.Lock()
	defer w.mu.Unlock()
	return slices.Clone(w.rows)
}

func (w *waiter) take(p chat.Parcel) error {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.away {
		return errors.New("unreachable")
	}
	w.rows, w.at = append(w.rows, p.Row), append(w.at, w.wall.now())
	return nil
}

// expect wants three answers and one ping, which came soon behind an instant.
func (w *waiter) expect(t *testing.T, earliest time.Time) {
	t.Helper()
	synctest.Wait()
	w.mu.Lock()
	defer w.mu.Unlock()
	if !slices.Equal(w.rows, []int64{1, 2, 3, 4}) {
		t.Fatalf("posts %v arrived, want each of 4 once", w.rows)
	}
	if late := w.at[3].Sub(earliest); late < 0 || late > blindness {
		t.Errorf("the ping came at %v, %v behind %v", w.at[3], late, earliest)
	}
}

// live runs the program until the test ends, asks for a ping and says when it is
// due.
func (w *waiter) live(t *testing.T, day string) time.Time {
	t.Helper()
	db, err := store.Open(t.Context(), t.TempDir(), store.Config{Readers: 2})
	if err != nil {
		t.Fatal(err)
	}
	b := around(db, &once{Door: sink{took: w.take}}, w.wall.now)
	now := w.wall.now().UTC()
	if err := b.found(t.Context(), now); err != nil {
		t.Fatal(err)
	}
	w.run(t, b)
	for i, text := range []string{"4 quart jars rye lc", "out by " + day + " 20:00", "remind me"} {
		if err := b.answerer.Turn(t.Context(), ask(fmt.Sprint("event-", i), "room", text, now)); err != nil {
			t.Fatal(err)
		}
	}
	due, waits, err := b.reminders.Next(t.Context())
	if err != nil || !waits {
		t.Fatalf("no ping waits: %v", err)
	}
	return due
}

// run runs the loops of the program in the bubble.
func (w *waiter) run(t *testing.T, b *bot) {
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan error, 2)
	go func() { done <- b.reminders.Run(ctx) }()
	go func() { done <- b.outbox.Run(ctx) }()
	t.Cleanup(func() {
		cancel()
		if err := errors.Join(<-done, <-done, b.db.Close()); err != nil {
			t.Error(err)
		}
	})
}
