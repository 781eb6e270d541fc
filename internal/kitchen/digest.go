package kitchen

import (
	"slices"
	"time"
)

// DigestPrefix begins the keys of the digests; the local date is the rest.
const DigestPrefix = "digest/"

// EarliestDigest is the first time of day for a digest: earlier ones are left out,
// or come twice, on the days when clocks are changed.
const EarliestDigest TimeOfDay = 4 * 60

// week is how far a digest looks ahead.
const week = 7

// DigestAt is when the weekly digest comes, Monday 09:00 until somebody says
// otherwise; false when they want none.
func (s Settings) DigestAt() (DigestIs, bool) {
	d := orElse(s.Digest, DigestIs{Day: time.Monday, At: 9 * 60})
	return d, d.At != 0
}

// Stock is a load with its units. Run is what it comes of, zero for one that arrived.
type Stock struct {
	Run   Run
	Units Units
}

// Batch are units of a load that one thing is said of; one at least.
type Batch struct {
	Stock
	These []UnitNo
	// At is when what is said of them is, or was, so of the first.
	At time.Time
}

// Digest is what needs a decision, and nothing else. Each list has the oldest load
// first.
type Digest struct {
	// Since is when the last one came, Now when this one does, in the kitchen's zone.
	Since, Now time.Time
	// Lost went bad, or nothing grew on them, since the last digest, wherever they are now.
	Lost []Batch
	// Bad are contaminated, or nothing grew on them, and still stand on the shelf, Suspect look it.
	Bad, Suspect []Batch
	// Ageing are grown through and have kept as long as they surely do: see [SpawnKept].
	// At is until when they may keep.
	Ageing []Batch
	// Unheld is cooked grain whose hold nobody saw whole; it is in no list below.
	Unheld []Batch
	// Old is cooked grain past its last limit; Unmeasured that of which nobody said that
	// it is cool.
	Old, Unmeasured []Batch
	// Nearing is cooked grain that reaches a limit in the coming week, each load once.
	Nearing []Nearing
}

// Nearing is cooked grain with a limit that it reaches at a time.
type Nearing struct {
	Batch
	Limit PingKind
}

// DigestOf makes the digest of a time, of loads in the order in which they were begun.
// The first one has no since and tells of them all.
func DigestOf(loads []Stock, since, now time.Time) Digest {
	if since.IsZero() {
		for _, l := range loads {
			if heard := l.Units.heardOf(); since.IsZero() || heard.Before(since) {
				since = heard
			}
		}
	}
	d := Digest{Since: since, Now: now}
	for _, l := range loads {
		d.lost(l)
		d.grows(l)
		d.waits(l)
	}
	return d
}

func (d *Digest) until() time.Time { return d.Now.AddDate(0, 0, week) }

// put adds those units of a load that something is so of, and since when.
func put(to *[]Batch, l Stock, is func(Unit) (time.Time, bool)) {
	b := Batch{Stock: l}
	for _, u := range l.Units.All {
		if at, ok := is(u); ok {
			b.These = append(b.These, u.Ref.Unit)
			if b.At.IsZero() || at.Before(b.At) {
				b.At = at
			}
		}
	}
	if len(b.These) > 0 {
		*to = append(*to, b)
	}
}

// in is what is so of the units in a state, since they came to it.
func in(s UnitState) func(Unit) (time.Time, bool) {
	return func(u Unit) (time.Time, bool) { return u.Since, u.State == s }
}

func (d *Digest) lost(l Stock) {
	put(&d.Lost, l, func(u Unit) (time.Time, bool) {
		return u.Loss.At, u.Loss.What != 0 && !u.Loss.At.Before(d.Since) && u.Loss.At.Before(d.Now)
	})
	put(&d.Bad, l, func(u Unit) (time.Time, bool) {
		return u.Since, u.State == UnitContaminated || u.State == UnitDead
	})
	put(&d.Suspect, l, in(UnitSuspect))
}

// grows looks at what is grown through: at what has kept long enough in the room apart
// from what has in the cold.
func (d *Digest) grows(l Stock) {
	for _, where := range []int{keptWarm, keptChilled} {
		put(&d.Ageing, l, func(u Unit) (time.Time, bool) {
			if u.State != UnitGrown {
				return time.Time{}, false
			}
			k := u.keeps()
			return k.until, k.where == where && !k.surely.After(d.Now)
		})
	}
}

// coolBeyondDoubt is how long after it should have been cool nobody is asked any more
// whether a load is: by then it has stood for two weeks.
const coolBeyondDoubt = 14 * 24 * time.Hour

// waits looks at the cooked grain that stands: how old it is and will be, and whether
// it may be used at all.
func (d *Digest) waits(l Stock) {
	since := l.Units.Cool
	if since.IsZero() || since.After(d.Now) {
		return
	}
	waits := func(u Unit) (time.Time, bool) { return since, u.waits() }
	switch {
	case !l.Units.Arrived && !l.Run.heldWhole():
		put(&d.Unheld, l, waits)
		return // how old it is no longer matters
	case l.Run.Stage == StageCooling && d.Now.Sub(since) < coolBeyondDoubt:
		put(&d.Unmeasured, l, waits)
	}
	ages := l.Units.shelf()
	for _, a := range ages {
		noted := shelfTime.On(a.Due.In(d.Now.Location()))
		if noted.After(d.Now) && noted.Before(d.until()) {
			d.Nearing = append(d.Nearing, Nearing{Batch: Batch{Stock: l, These: a.Units, At: a.Due}, Limit: a.Kind})
			break
		}
	}
	if i := slices.IndexFunc(ages, func(a UnitsDue) bool { return a.Kind == ShelvedThreeMonths }); i >= 0 && !ages[i].Due.After(d.Now) {
		put(&d.Old, l, waits)
	}
}

// heldWhole reports whether the hold was seen as long as it should have been.
func (r Run) heldWhole() bool {
	off, ok := r.Ended()
	return ok && off.Outcome == Held
}

// Empty reports whether nothing needs a decision: then there is no digest.
func (d Digest) Empty() bool {
	return len(d.Lost)+len(d.Bad)+len(d.Suspect)+len(d.Ageing)+len(d.Unheld)+len(d.Old)+len(d.Unmeasured)+len(d.Nearing) == 0
}
