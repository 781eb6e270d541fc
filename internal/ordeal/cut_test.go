package ordeal

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"math/rand/v2"
	"runtime"
	"slices"
	"sort"
	"strings"
	"sync"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
	"ryebell/internal/store/faultfs"
	"ryebell/internal/store/storetest"
)

// often has the log written back every few turns.
var often = store.Config{Readers: 1, LogPages: 48}

// The power may be cut at any moment of the day, and whatever the disk made of
// what was not synced yet: everything answered is there, and the book stands as it
// was behind one of the transactions.
func TestPowerCut(t *testing.T) {
	for _, c := range []struct {
		name   string
		cuts   int
		config store.Config
	}{
		{"as the program runs", 1_000, store.Config{Readers: 1}},
		{"writing back often", 9_000, often},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := record(t, c.config)
			d.boundaries(t)
			start := time.Now()
			r := d.cut(t, c.cuts/slowness)
			t.Logf("%d cuts of %d operations in %v: %d states", r.cuts, d.film.Len(), time.Since(start).Round(time.Millisecond), len(r.seen))
			for _, err := range r.wrong[:min(len(r.wrong), 5)] {
				t.Error(err)
			}
			if len(r.wrong) > 0 {
				t.Errorf("%d of %d cuts did harm", len(r.wrong), r.cuts)
			}
			// The cuts are spread over the transactions.
			if len(r.seen) < min(len(d.states), r.cuts)/2 {
				t.Errorf("%d cuts met %d states of %d", r.cuts, len(r.seen), len(d.states))
			}
		})
	}
}

// The cuts find what is lost where a transaction is not synced at its end: they
// are no use if they find nothing.
func TestPowerCutFindsLoss(t *testing.T) {
	d := record(t, often, "synchronous=NORMAL")
	r := d.cut(t, max(400/slowness, 40))
	lost := 0
	for _, err := range r.wrong {
		if errors.Is(err, errLost) {
			lost++
		} else {
			t.Error(err)
		}
	}
	t.Logf("something answered was lost in %d of %d cuts", lost, r.cuts)
	if lost < r.cuts/4 {
		t.Errorf("without syncs %d of %d cuts lost something", lost, r.cuts)
	}
}

// errLost says that something answered is not in the book.
var errLost = errors.New("was answered and is not in the book")

// day is a day on film.
type day struct {
	film   *faultfs.Film
	told   []ack
	states []state // in order; empty: not known
}

// ack is an answered message, and where on the film it was.
type ack struct {
	at    int
	event string
}

// state is how the book stood from a place on the film on.
type state struct {
	at  int
	sum [sha256.Size]byte
}

// record plays the day on a disk that films it.
func record(t *testing.T, c store.Config, pragmas ...string) *day {
	t.Helper()
	s, _ := rehearsed(t, busy)
	folder := inMemory(t)
	disk := faultfs.Watch(t, folder)
	disk.Set(pragmas...)
	door := &once{Door: sink{}}
	b := startedWith(t, folder, door, s.Start, c)
	film, err := disk.Record()
	if err != nil {
		t.Fatal(err)
	}
	d := &day{film: film}
	for _, do := range s.stages(func(m chat.Message) { d.told = append(d.told, ack{film.Len(), m.Event}) }) {
		if err := do(t.Context(), b); err != nil {
			t.Fatal(err)
		}
	}
	disk.Stop()
	if err := errors.Join(b.db.Close(), door.err()); err != nil {
		t.Fatal(err)
	}
	return d
}

// boundaries finds the states in which the book stood: it changes when a
// transaction is synced.
func (d *day) boundaries(t *testing.T) {
	t.Helper()
	folder, reel := inMemory(t), d.film.Reel()
	for _, at := range append([]int{0}, d.film.Syncs()...) {
		if err := reel.Whole(at, folder); err != nil {
			t.Fatal(err)
		}
		c, err := storetest.Examine(folder)
		if err != nil {
			t.Fatal(err)
		}
		if sum := c.Sum(); len(d.states) == 0 || d.states[len(d.states)-1].sum != sum {
			d.states = append(d.states, state{at, sum})
		}
	}
}

// may reports whether a book may stand so behind a cut: as behind the last
// transaction that was synced, or the one that was being written.
func (d *day) may(at int, sum [sha256.Size]byte) bool {
	if len(d.states) == 0 {
		return true
	}
	next := sort.Search(len(d.states), func(i int) bool { return d.states[i].at > at })
	return d.states[next-1].sum == sum || next < len(d.states) && d.states[next].sum == sum
}

// result is what became of some cuts.
type result struct {
	cuts  int
	wrong []error

	mu   sync.Mutex
	seen map[[sha256.Size]byte]string // books met, with their inbox
}

// cut cuts the power at random moments, spread over the processors.
func (d *day) cut(t *testing.T, n int) *result {
	t.Helper()
	const seed = 2026
	r := &result{cuts: n, seen: map[[sha256.Size]byte]string{}}
	chance := rand.New(rand.NewPCG(seed, 0))
	places := make([]int, n)
	for i := range places {
		places[i] = chance.IntN(d.film.Len() + 1)
	}
	slices.Sort(places) // a reel plays forward
	workers := runtime.GOMAXPROCS(0)
	var wg sync.WaitGroup
	for w := range workers {
		folder := inMemory(t)
		part := places[n*w/workers : n*(w+1)/workers]
		wg.Go(func() {
			reel, chance := d.film.Reel(), rand.New(rand.NewPCG(seed, uint64(w+1)))
			for i, at := range part {
				err := reel.Cut(at, chance, folder)
				if err == nil {
					err = r.look(t.Context(), d, at, folder, i)
				}
				if err != nil {
					r.add(fmt.Errorf("cut at %d of %d: %w", at, d.film.Len(), err))
				}
			}
		})
	}
	wg.Wait()
	return r
}

func (r *result) add(err error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.wrong = append(r.wrong, err)
}

// openEvery is how many cuts pass between two of which the book is opened by the
// program though its contents were met before.
const openEvery = 20

// look examines what a cut has left.
func (r *result) look(ctx context.Context, d *day, at int, folder string, i int) error {
	c, err := storetest.Examine(folder)
	if err != nil {
		return err
	}
	sum := c.Sum()
	r.mu.Lock()
	_, known := r.seen[sum]
	r.seen[sum] = c["inbox"]
	r.mu.Unlock()
	if !known || i%openEvery == 0 {
		if err := sound(ctx, folder); err != nil {
			return err
		}
	}
	for _, a := range d.told {
		if a.at <= at && !strings.Contains(c["inbox"], "|'"+a.event+"'|") {
			return fmt.Errorf("%s %w", a.event, errLost)
		}
	}
	if !d.may(at, sum) {
		return errors.New("the book stands as it never stood")
	}
	return nil
}
