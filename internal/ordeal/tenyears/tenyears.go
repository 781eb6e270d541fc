// Package tenyears writes the book of a collective that is busy for years, invented
// but plausible, for tests and measurements: four cookers, twenty people, and for
// every ten years 5,000 runs of 40,000 units in 300,000 entries. The same size and
// seed give the same book, but for what is random in every book.
package tenyears

import (
	"context"
	"math/rand/v2"
	"time"

	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// Size says how long a book goes on, and until when.
type Size struct {
	End  time.Time
	Days int
	Seed uint64
}

// Old is the size of a book of ten years, Young that of one of three months.
func Old(end time.Time) Size   { return Size{End: end, Days: 3650, Seed: 1} }
func Young(end time.Time) Size { return Size{End: end, Days: 91, Seed: 1} }

// The pace of the kitchen, a day.
const (
	runsADay     = 5000.0 / 3650
	culturesADay = 300.0 / 3650
	arrivalsARun = 0.02
)

// Book is what was written, and what can be asked of it.
type Book struct {
	Collective store.CollectiveID
	Room       store.RoomID
	// Loads are the runs and what arrived, Standing the units still there at the end.
	Loads, Units, Standing, Entries int
	// Run is the newest run that is cool.
	Run kitchen.RunNo
	// Culture is one that much grew from, Lot a lot of grain, Parent a unit that others
	// were inoculated from, all of the last months.
	Culture string
	Lot     string
	Parent  kitchen.UnitRef
	// Strays counts what the folds laid aside: none, unless something is wrong here.
	Strays int
}

// Write founds a collective in an empty book and fills it. Its home room is the
// console's room kitchen; its people are those of [People], the first a steward, with
// their names in small letters as accounts of the console.
func Write(ctx context.Context, db *store.DB, size Size) (Book, error) {
	l := &life{
		size: size, chance: rand.New(rand.NewPCG(size.Seed, uint64(size.Days))),
		begun: size.End.AddDate(0, 0, -size.Days).Truncate(24 * time.Hour),
	}
	w := &writer{db: db, life: l}
	if err := w.found(ctx); err != nil {
		return Book{}, err
	}
	l.live()
	if err := w.write(ctx); err != nil {
		return Book{}, err
	}
	return w.book, w.derive(ctx)
}

// People are the names of those who work in the kitchen.
func People() []string {
	return []string{
		"Robin", "Ana", "Jo", "Mik", "Lea", "Sam", "Tove", "Ivo", "Noa", "Kim", "Ben", "Ida", "Ola", "Per", "Uma", "Vic", "Wim", "Yui", "Zoe", "Eli",
	}
}

// told is an entry on its way into the book.
type told struct {
	at, written time.Time
	by          kitchen.MemberNo
	subject     string
	entry       kitchen.Entry
	said        string
	// about is an earlier one whose number the entry holds.
	about *told
	no    kitchen.EntryNo
	load  *load
	// struck is set for one that is taken back.
	struck bool
}

// life is all that happens.
type life struct {
	size     Size
	chance   *rand.Rand
	begun    time.Time
	room     store.RoomID
	cultures []*culture
	loads    []*load
	told     []*told
}

// live invents it all, load by load. What became of a unit is settled once no later
// load can have been inoculated from it, so entries about units come last.
func (l *life) live() {
	l.furnish()
	runs := int(float64(l.size.Days)*runsADay + 0.5)
	for i := range runs {
		at := l.begun.Add(time.Duration((float64(i) + l.chance.Float64()*0.5) / runsADay * float64(day)))
		at = at.Truncate(day).Add(time.Duration(7*60+l.chance.IntN(420)) * time.Minute)
		l.culturesUntil(at)
		if l.likely(arrivalsARun) {
			l.arrive(at.Add(-time.Hour))
		}
		l.cook(at)
	}
	for _, ld := range l.loads {
		l.tellUnits(ld)
	}
}

const day = 24 * time.Hour

func (l *life) likely(p float64) bool { return l.chance.Float64() < p }

// between is a number from lo to hi, hi too.
func (l *life) between(lo, hi int) int { return lo + l.chance.IntN(hi-lo+1) }

func (l *life) somebody() kitchen.MemberNo {
	return kitchen.MemberNo(1 + min(l.chance.IntN(len(People())), l.chance.IntN(len(People()))))
}

// tell puts down an entry. One in twelve is told late.
func (l *life) tell(subject string, at time.Time, by kitchen.MemberNo, said string, e kitchen.Entry) *told {
	t := &told{at: at, written: at, by: by, subject: subject, entry: e, said: said}
	l.told = append(l.told, t)
	return t
}

// late has what was told written up to an hour and a half later, one time in twelve.
func (l *life) late(t *told) {
	if l.likely(1.0 / 12) {
		t.written = t.at.Add(time.Duration(l.between(5, 90)) * time.Minute)
	}
}
