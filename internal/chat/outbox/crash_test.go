package outbox_test

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/chat"
	"ryebell/internal/chat/outbox"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// A fault is what the platform does with a parcel, or what happens to the program
// on the way.
type fault uint8

const (
	sound fault = iota
	unreachable
	askedToWait
	crashBefore // the program dies before the platform took it
	crashAfter  // the platform took it, and the program dies before it is marked
)

// Whatever fails, and wherever the program dies: every post arrives, in the order
// of its room, and comes again at most once for each crash.
func TestNothingIsLostInCrashes(t *testing.T) {
	db := storetest.Open(t)
	round := 0
	rapid.Check(t, func(t *rapid.T) {
		round++
		name := chat.DoorName(fmt.Sprintf("fake-%d", round))
		c := crashes{t: t, b: newBook(t, db, name, "a", "b"), d: newPlatform(t, name), now: time.Now()}
		c.d.before = c.before
		t.Repeat(map[string]func(*rapid.T){
			"queue":    c.queue,
			"overtake": c.overtake,
			"deliver":  func(t *rapid.T) { c.deliver(rapid.SliceOfN(faults(), 1, 6).Draw(t, "faults")) },
		})
		c.deliver(nil)
		c.check()
	})
}

func faults() *rapid.Generator[fault] {
	return rapid.SampledFrom([]fault{sound, unreachable, askedToWait, crashBefore, crashAfter})
}

type crashes struct {
	t       *rapid.T
	b       *kitchenBook
	d       *platform
	now     time.Time
	faults  []fault
	queued  map[string][]string // room and rank → texts in order
	count   int
	crashed int
	kill    context.CancelFunc // ends the outbox at hand
}

func (c *crashes) queue(t *rapid.T)    { c.put(t, store.InTurn) }
func (c *crashes) overtake(t *rapid.T) { c.put(t, store.Overtakes) }

func (c *crashes) put(t *rapid.T, rank store.Rank) {
	room := rapid.SampledFrom([]string{"a", "b"}).Draw(t, "room")
	c.count++
	text := fmt.Sprintf("%d.%d", rank, c.count)
	c.b.put(store.Parcel{Room: c.b.rooms[room], Rank: rank}, c.now, text)
	if c.queued == nil {
		c.queued = map[string][]string{}
	}
	key := room + text[:1]
	c.queued[key] = append(c.queued[key], text)
}

// before meets the next fault. A crash ends the sending goroutine where it stands
// and its outbox with it, and what they had in memory is gone.
func (c *crashes) before(p chat.Parcel, text string) error {
	if len(c.faults) == 0 {
		return nil
	}
	f := c.faults[0]
	c.faults = c.faults[1:]
	switch f {
	case sound:
		return nil
	case unreachable:
		return errors.New("unreachable")
	case askedToWait:
		return chat.RetryAfter{Wait: time.Minute}
	case crashBefore:
		c.crash()
	case crashAfter:
		c.d.mu.Lock()
		c.d.took = append(c.d.took, taken{p, text, c.now})
		c.d.mu.Unlock()
		c.crash()
	}
	panic(fmt.Sprintf("fault %d", f))
}

func (c *crashes) crash() {
	c.crashed++
	c.kill()
	runtime.Goexit()
}

// deliver goes on, with a new program after each crash, until the faults are used
// up and everything was sent.
func (c *crashes) deliver(faults []fault) {
	c.faults = faults
	for {
		met := len(c.faults)
		var ctx context.Context
		ctx, c.kill = context.WithCancel(context.Background())
		o := outbox.New(c.b.db, []chat.Door{c.d}, outbox.Config{})
		err := o.Deliver(ctx, c.d.Name(), c.now)
		if err != nil && ctx.Err() == nil {
			c.t.Fatalf("deliver: %v", err)
		}
		c.kill()
		c.now = c.now.Add(10 * time.Minute) // longer than any wait
		if len(c.faults) == met {
			break // nothing is left to be sent
		}
	}
}

func (c *crashes) check() {
	first := map[string][]string{}
	repeats := 0
	for i, t := range c.d.took {
		seen := slices.ContainsFunc(c.d.took[:i], func(u taken) bool { return u.Row == t.Row })
		if seen {
			repeats++
			continue
		}
		key := t.Room.ID + t.text[:1]
		first[key] = append(first[key], t.text)
	}
	for key, want := range c.queued {
		if !slices.Equal(first[key], want) {
			c.t.Fatalf("%s: arrived %v, queued %v", key, first[key], want)
		}
	}
	if repeats > c.crashed {
		c.t.Fatalf("%d posts came again in %d crashes", repeats, c.crashed)
	}
}
