package store_test

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

func ping(key string, due time.Time) kitchen.Ping {
	return kitchen.Ping{Key: key, Due: due, Kind: kitchen.StartNow, Loudness: kitchen.DuePing, About: "start"}
}

// fired is one ping as the rules of Reconcile say it should stand.
type fired struct {
	ping kitchen.Ping
	at   time.Time // zero while it waits
	set  time.Time // when it was put in, or last moved
}

// TestPingsFollowTheModel reconciles random lists under two prefixes, fires what
// is due and moves the clock both ways; the rows must be what the rules say.
func TestPingsFollowTheModel(t *testing.T) {
	db := storetest.Open(t)
	round := 0
	rapid.Check(t, func(rt *rapid.T) {
		round++
		k := found(t, db, fmt.Sprintf("model %d", round))
		model := map[string]fired{}
		now := morning
		update := func(f func(*store.Book) error) {
			err := db.Update(context.Background(), func(tx *store.Tx) error { return f(tx.Book(k.id)) })
			if err != nil {
				rt.Fatal(err)
			}
		}
		rt.Repeat(map[string]func(*rapid.T){
			"reconcile": func(rt *rapid.T) {
				prefix := rapid.SampledFrom([]string{"run/1/", "run/12/"}).Draw(rt, "prefix")
				want := rapid.SliceOfNDistinct(rapid.Custom(func(rt *rapid.T) kitchen.Ping {
					p := ping(prefix+rapid.SampledFrom([]string{"a", "b", "c/1", "~"}).Draw(rt, "key"), morning.Add(time.Duration(rapid.IntRange(-3, 3).Draw(rt, "due"))*time.Hour))
					p.To = kitchen.MemberNo(rapid.IntRange(0, 1).Draw(rt, "to"))
					return p
				}), 0, 4, func(p kitchen.Ping) string { return p.Key }).Draw(rt, "want")
				update(func(b *store.Book) error { return b.Reconcile(prefix, want, now) })
				reconcile(model, prefix, want, now)
			},
			"fire": func(rt *rapid.T) {
				update(func(b *store.Book) error {
					for key, f := range model {
						if f.at.IsZero() && !f.ping.Due.After(now) {
							model[key] = fired{f.ping, now, f.set}
							if err := b.MarkFired(key, now); err != nil {
								return err
							}
						}
					}
					return nil
				})
			},
			"clock": func(rt *rapid.T) {
				now = now.Add(time.Duration(rapid.IntRange(-60, 120).Draw(rt, "minutes")) * time.Minute)
			},
			"": func(rt *rapid.T) {
				got := map[string]fired{}
				err := db.View(context.Background(), func(tx *store.Tx) error {
					rows, err := tx.Book(k.id).Pings("run/")
					for _, r := range rows {
						got[r.Key] = fired{r.Ping, r.Fired, r.Set}
					}
					return err
				})
				if err != nil {
					rt.Fatal(err)
				}
				if d := cmp.Diff(model, got, cmp.AllowUnexported(fired{})); d != "" {
					rt.Fatalf("want -, got +\n%s", d)
				}
			},
		})
	})
}

// reconcile is the rule, as house style says it: missing ones withdrawn, new ones
// put in, sent ones sent until moved ahead.
func reconcile(model map[string]fired, prefix string, want []kitchen.Ping, now time.Time) {
	wanted := map[string]bool{}
	for _, w := range want {
		wanted[w.Key] = true
		old, known := model[w.Key]
		moved := known && !old.ping.Due.Equal(w.Due)
		if moved && w.Due.After(now) {
			old.at = time.Time{}
		}
		if moved || !known {
			old.set = now
		}
		model[w.Key] = fired{w, old.at, old.set}
	}
	maps.DeleteFunc(model, func(key string, f fired) bool {
		return len(key) > len(prefix) && key[:len(prefix)] == prefix && !wanted[key] && f.at.IsZero()
	})
}

// A ping is late by the time that it could have been sent and wasn't.
func TestLate(t *testing.T) {
	at := func(minutes int) time.Time { return morning.Add(time.Duration(minutes) * time.Minute) }
	for _, tt := range []struct {
		name          string
		set, due, now int
		want          time.Duration
	}{
		{"on time", 0, 30, 30, 0},
		{"the bot was down", 0, 30, 50, 20 * time.Minute},
		{"due before it was wanted", 30, 10, 30, 0},
		{"and the bot was down then", 30, 10, 35, 5 * time.Minute},
		{"within the minute of another", 0, 30, 29, 0},
	} {
		row := store.PingRow{Ping: ping("start/1", at(tt.due)), Set: at(tt.set)}
		if got := row.Late(at(tt.now)); got != tt.want {
			t.Errorf("%s: %v late, want %v", tt.name, got, tt.want)
		}
	}
}

func TestDuePings(t *testing.T) {
	db := storetest.Open(t)
	ana, jo := found(t, db, "ana"), found(t, db, "jo")
	put := func(k kitchenOf, want ...kitchen.Ping) {
		storetest.Update(t, db, func(tx *store.Tx) error { return tx.Book(k.id).Reconcile("start/", want, morning) })
	}
	put(ana, ping("start/1", morning.Add(2*time.Minute)), ping("start/2", morning))
	put(jo, ping("start/1", morning.Add(time.Minute)))
	due := func(now time.Time) (keys []string) {
		storetest.View(t, db, func(tx *store.Tx) error {
			rows, err := tx.DuePings(now, 10)
			for _, r := range rows {
				keys = append(keys, fmt.Sprintf("%d %s", r.Collective, r.Key))
			}
			return err
		})
		return keys
	}
	if got, want := due(morning.Add(time.Minute)), []string{"1 start/2", "2 start/1"}; !slices.Equal(got, want) {
		t.Errorf("due after a minute %v, want %v", got, want)
	}
	guard := ping("start/9", morning.Add(time.Hour))
	guard.Loudness = kitchen.GuardPing
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.Book(jo.id).Reconcile("start/9", []kitchen.Ping{guard}, morning) })
	if got, want := due(morning.Add(time.Hour)), []string{"2 start/9", "1 start/2", "2 start/1", "1 start/1"}; !slices.Equal(got, want) {
		t.Errorf("with a guard due last %v, want %v", got, want)
	}
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.Book(jo.id).Reconcile("start/9", nil, morning) })
	storetest.Update(t, db, func(tx *store.Tx) error { return tx.Book(ana.id).MarkFired("start/2", morning) })
	if got, want := due(morning.Add(time.Hour)), []string{"2 start/1", "1 start/1"}; !slices.Equal(got, want) {
		t.Errorf("due after an hour %v, want %v", got, want)
	}
	storetest.View(t, db, func(tx *store.Tx) error {
		next, ok, err := tx.NextDue()
		if !ok || !next.Equal(morning.Add(time.Minute)) {
			t.Errorf("next due %v %v, want 09:01", next, ok)
		}
		return err
	})
	put(ana)
	put(jo)
	storetest.View(t, db, func(tx *store.Tx) error {
		next, ok, err := tx.NextDue()
		if ok {
			t.Errorf("next due %v, want none", next)
		}
		return err
	})
}
