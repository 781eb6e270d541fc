package ordeal

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// A hot cooker is watched whatever the clock does, at night and when the zone's
// clocks change (Lisbon, 01:00 UTC on 29 March and 25 October 2026): each guard ping
// of a run comes once, never before the wall shows its time, and within half a
// minute of that or of the jump over it. Of those of a chain that were jumped over
// one is enough.
func TestClockJumpsOverAGuard(t *testing.T) {
	spring := time.Date(2026, 3, 28, 23, 30, 0, 0, time.UTC)
	autumn := time.Date(2026, 10, 24, 23, 30, 0, 0, time.UTC)
	for _, c := range []struct {
		name   string
		start  time.Time     // of the hold of 90 min; zero: that of the bubble
		before time.Duration // from the jump to heat off; negative: it was before
		jump   time.Duration
	}{
		{"no jump", time.Time{}, time.Hour, 0},
		{"a second ahead at the last moment", time.Time{}, time.Second, time.Second},
		{"a second back at the last moment", time.Time{}, 500 * time.Millisecond, -time.Second},
		{"a second back, right behind it", time.Time{}, -time.Millisecond, -time.Second},
		{"seven minutes ahead, over it", time.Time{}, time.Minute, 7 * time.Minute},
		{"an hour ahead, over all", time.Time{}, 20 * time.Minute, time.Hour},
		{"an hour ahead, nearly to it", time.Time{}, time.Hour + 5*time.Second, time.Hour},
		{"an hour back, before it", time.Time{}, 20 * time.Minute, -time.Hour},
		{"an hour back, in the midst of the chain", time.Time{}, -7 * time.Minute, -time.Hour},
		{"an hour back, behind the chain", time.Time{}, -20 * time.Minute, -time.Hour},
		{"a night of sleep", time.Time{}, time.Hour, 9 * time.Hour},
		{"a night of sleep in the midst of the chain", time.Time{}, -7 * time.Minute, 9 * time.Hour},
		{"two days back", time.Time{}, time.Hour, -48 * time.Hour},
		{"summer time begins", spring, time.Hour, 0},
		{"summer time ends", autumn, time.Hour, 0},
		{"summer time begins and the clock is set with it", spring, 30 * time.Minute, time.Hour},
		{"summer time ends and the clock is set with it", autumn, 30 * time.Minute, -time.Hour},
		{"a night of sleep over the end of summer time", autumn, time.Hour, 9 * time.Hour},
	} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				g := &guard{}
				if !c.start.IsZero() {
					g.wall.jump(c.start.Sub(g.wall.now()))
				}
				due := g.hold(t)
				time.Sleep(due.Add(-c.before).Sub(g.wall.now()))
				synctest.Wait()
				g.jump(c.jump)
				time.Sleep(max(g.last(t).Sub(g.wall.now()), 0) + time.Hour)
				synctest.Wait()
				posts := len(g.posts)
				g.expect(t)
				time.Sleep(12 * time.Hour)
				synctest.Wait()
				if len(g.posts) != posts {
					t.Errorf("%d posts came later", len(g.posts)-posts)
				}
			})
		})
	}
}

// guard is a cook in front of a hot cooker.
type guard struct {
	waiter
	bot     *bot
	posts   []int64     // of the run, in the order they came
	at      []time.Time // by the timers
	jumped  time.Time   // by the timers: when the clock was set
	by      time.Duration
	started time.Duration // by how much the wall was ahead of the timers before
}

// hold has a run reach its pressure, and says when the heat must go off.
func (g *guard) hold(t *testing.T) time.Time {
	t.Helper()
	db, err := store.Open(t.Context(), t.TempDir(), store.Config{Readers: 2})
	if err != nil {
		t.Fatal(err)
	}
	door := &once{Door: sink{took: func(p chat.Parcel) error {
		g.mu.Lock()
		defer g.mu.Unlock()
		g.posts, g.at = append(g.posts, p.Row), append(g.at, time.Now())
		return nil
	}}}
	g.bot = around(db, door, g.wall.now)
	now := g.wall.now().UTC()
	if err := g.bot.found(t.Context(), now); err != nil {
		t.Fatal(err)
	}
	g.run(t, g.bot)
	for i, text := range []string{
		"time zone Europe/Lisbon", "quiet 22-7", "4 quart jars rye lc", "cook it", "at pressure",
	} {
		if err := g.bot.answerer.Turn(t.Context(), ask(fmt.Sprint("event-", i), "room", text, now)); err != nil {
			t.Fatal(err)
		}
	}
	for _, p := range g.pings(t) {
		if p.Key == "run/1/hold-over/1" {
			return p.Due
		}
	}
	t.Fatal("no heat-off ping waits")
	return time.Time{}
}

func (g *guard) jump(by time.Duration) {
	g.started = time.Until(g.wall.now())
	g.jumped, g.by = time.Now(), by
	g.wall.jump(by)
}

// shows is when the wall first shows an instant, by the timers.
func (g *guard) shows(at time.Time) time.Time {
	first := at.Add(-g.started)
	if !first.After(g.jumped) {
		return first
	}
	if first = first.Add(-g.by); first.Before(g.jumped) {
		return g.jumped
	}
	return first
}

// pings lists the guard pings of the run.
func (g *guard) pings(t *testing.T) (all []store.PingRow) {
	t.Helper()
	storetest.View(t, g.bot.db, func(tx *store.Tx) error {
		rows, err := tx.Book(1).Pings("run/1/")
		for _, r := range rows {
			if r.Loudness == kitchen.GuardPing {
				all = append(all, r)
			}
		}
		return err
	})
	return all
}

// last is when the last of them is due.
func (g *guard) last(t *testing.T) time.Time {
	t.Helper()
	byDue := func(a, b store.PingRow) int { return a.Due.Compare(b.Due) }
	return slices.MaxFunc(g.pings(t), byDue).Due
}

// said lists, for each ping, the posts of the first room that say it.
func (g *guard) said(t *testing.T) map[string][]time.Time {
	t.Helper()
	all := map[string][]time.Time{}
	storetest.View(t, g.bot.db, func(tx *store.Tx) error {
		for i, id := range g.posts {
			row, err := tx.Book(1).Row(store.RowID(id))
			if err != nil {
				return err
			}
			if row.Inbox == 0 && strings.HasPrefix(row.About, "run/1/") && row.Room == 1 {
				all[row.About] = append(all[row.About], g.at[i])
			}
		}
		return nil
	})
	return all
}

func (g *guard) expect(t *testing.T) {
	t.Helper()
	said, pings := g.said(t), g.pings(t)
	if len(pings) < 4 {
		t.Errorf("%d guard pings, want at least heat off, twice again and who is there", len(pings))
	}
	for _, p := range pings {
		earliest := g.shows(p.Due)
		soon := func(at time.Time) bool { return !at.Before(earliest) && at.Sub(earliest) <= blindness }
		times := said[p.Key]
		if len(times) == 0 {
			// Jumped over: another one of the chain said it.
			for _, other := range pings {
				times = append(times, said[other.Key]...)
			}
			if !slices.ContainsFunc(times, soon) {
				t.Errorf("%s, shown at %v, was not said; the others at %v", p.Key, earliest, times)
			}
			continue
		}
		if len(times) != 1 || !soon(times[0]) {
			t.Errorf("%s, shown at %v, was said at %v", p.Key, earliest, times)
		}
		if p.Fired.IsZero() {
			t.Errorf("%s was said and still waits", p.Key)
		}
	}
	if times := said["run/1/hold-nearly/1"]; len(times) > 0 {
		t.Errorf("in quiet hours it was said at %v that the hold is nearly over", times)
	}
}
