package kitchen

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
)

// When those that grow are asked after (common practice, no source).
const (
	// nothingBy is after how long without growth something is wrong.
	nothingBy = 10 * 24 * time.Hour
	// lookedLately is how long before it is expected grown through a look tells as much
	// as one then would.
	lookedLately = 2 * 24 * time.Hour
	// lookOn is after how long one that is late is looked at again.
	lookOn = 7 * 24 * time.Hour
	// lateToShake is how much is overgrown when a first shake no longer helps.
	lateToShake unit.Fraction = 0.5
	// inoculatedTogether and grownTogether are within what time the units of a load are
	// asked after together.
	inoculatedTogether = 24 * time.Hour
	grownTogether      = 3 * 24 * time.Hour
)

// cohort are units of a load that are asked after together: all that ever belonged
// there, whatever became of them, so that its key stays.
type cohort struct {
	first UnitNo
	since time.Time
	units []UnitNo
}

func (c cohort) key(matter string) string {
	return fmt.Sprintf("%s/%d/%d", matter, c.first, c.since.Unix())
}

// cohorts puts together what is alike and came to something within a time.
func (u Units) cohorts(since func(Unit) time.Time, alike func(a, b Unit) bool, within time.Duration) []cohort {
	all := u.where(func(x Unit) bool { return !since(x).IsZero() })
	at := func(n UnitNo) time.Time { return since(u.All[n-1]) }
	slices.SortStableFunc(all, func(a, b UnitNo) int { return cmp.Or(at(a).Compare(at(b)), cmp.Compare(a, b)) })
	var out []cohort
	for _, n := range all {
		i := slices.IndexFunc(out, func(c cohort) bool {
			return alike(u.All[c.first-1], u.All[n-1]) && at(n).Sub(c.since) <= within
		})
		if i < 0 {
			out = append(out, cohort{first: n, since: at(n), units: []UnitNo{n}})
			continue
		}
		out[i].units = append(out[i].units, n)
	}
	for _, c := range out {
		slices.Sort(c.units)
	}
	return out
}

func growAlike(a, b Unit) bool {
	return growsAs(a.grows()) == growsAs(b.grows()) && a.Route == b.Route && a.Container.Same(b.Container)
}

// grow asks after what grows.
func (u Units) grow(s Settings, past []Grown) []UnitsDue {
	var out []UnitsDue
	for _, c := range u.cohorts(func(x Unit) time.Time { return x.Inoculated }, growAlike, inoculatedTogether) {
		asks := asking{load: u, cohort: c}
		for _, n := range c.units {
			x := u.All[n-1]
			if g, ok := GrowthOf(x, past, s); ok && x.State != UnitSuspect {
				asks.of(x, g)
			}
		}
		out = append(out, asks.due...)
	}
	return out
}

// asking collects what is asked of a cohort: each matter once, when the first of its
// units wants it.
type asking struct {
	load   Units
	cohort cohort
	told   time.Time // when what the unit at hand is asked after was told
	due    []UnitsDue
}

// of asks what one unit wants. Before it is looked at for being through there is no
// need to ask whether it grows.
func (a *asking) of(x Unit, g Growth) {
	put, _ := x.LastStep(SaidInoculated)
	shaken, _ := x.firstShakeStep()
	a.told = latest(a.load.toldAt(put), a.load.toldAt(shaken))
	if !g.Shaken && x.Share < lateToShake {
		a.add("shake", 1, ShakeDue, g.Shake.About, x, g)
	}
	n, through := x.lookFor(g)
	silent := latest(x.Inoculated.Add(nothingBy), g.Shake.To)
	if x.showsNone() && !g.Shaken && through.Sub(silent) > lookedLately {
		a.add("nothing", 1, NothingSeen, silent, x, g)
	}
	a.add("through", n, ThroughDue, through, x, g)
}

// showsNone reports whether nobody has told of growth on the unit: 0 % is none.
func (x Unit) showsNone() bool {
	return x.State == UnitInoculated || x.State == UnitGrowing && x.Share == 0
}

func (a *asking) add(matter string, n int, k PingKind, due time.Time, x Unit, g Growth) {
	d := a.load.daily(a.cohort.key(matter), n, k, afresh(due, a.told), []UnitNo{x.Ref.Unit})
	d.Growth = g
	a.put(d)
}

func (a *asking) put(d UnitsDue) {
	i := slices.IndexFunc(a.due, func(o UnitsDue) bool { return o.Key == d.Key })
	if i < 0 {
		a.due = append(a.due, d)
		return
	}
	a.due[i].Units = append(a.due[i].Units, d.Units...)
	if d.Due.Before(a.due[i].Due) {
		a.due[i].Due = d.Due
	}
	if !d.Keeps.IsZero() && d.Keeps.Before(a.due[i].Keeps) {
		a.due[i].Keeps = d.Keeps
	}
}

// toldAt is when a step was told; zero for one that nobody told of units.
func (u Units) toldAt(s UnitStep) time.Time {
	i := slices.IndexFunc(u.told, func(t unitTold) bool { return t.No == s.No })
	if i < 0 || !s.Seen {
		return time.Time{}
	}
	return u.told[i].Written
}

// afresh is when something is asked. What was due before it was told what is asked after
// comes a day later: the answer said how it stands, not again in that minute.
func afresh(due, told time.Time) time.Time {
	if due.After(told) {
		return due
	}
	return told.AddDate(0, 0, 1)
}

// pacedLook is from where the looks are counted, by days, that go by how far a unit was
// seen grown, so that those are asked after together that go alike.
const pacedLook = 100

// lookFor is when a unit is looked at for being grown through, and the how manieth
// such look it is: when it is expected, by how far it was seen. Where somebody looked
// and saw nothing, at the end of the range, and a week after a look that found it late.
func (x Unit) lookFor(g Growth) (int, time.Time) {
	e := g.Unshaken
	if g.Shaken {
		e = g.Through
	}
	if x.paces() {
		due := latest(e.About, x.Seen.Add(lookedLately))
		return pacedLook + int(due.Sub(x.Inoculated)/(24*time.Hour)), due
	}
	var last time.Time
	late := 0
	for _, s := range x.Steps {
		if s.Kind == SaidGrowth && s.At.After(x.Inoculated) {
			last = s.At
			if !s.At.Before(e.To) {
				late++
			}
		}
	}
	switch {
	case late > 0:
		return 2 + late, last.Add(lookOn)
	case last.Before(e.About.Add(-lookedLately)):
		return 1, e.About
	}
	return 2, e.To
}

// keep asks for a decision when what is grown through has kept as long as it surely
// does where it stands: the lower end of [Species.Warm], or chilled of
// [Species.Fridge].
func (u Units) keep() []UnitsDue {
	alike := func(a, b Unit) bool { return growsAs(a.grows()) == growsAs(b.grows()) }
	var out []UnitsDue
	for _, c := range u.cohorts(Unit.grownSince, alike, grownTogether) {
		asks := asking{load: u, cohort: c}
		for _, n := range c.units {
			x := u.All[n-1]
			if x.State != UnitGrown {
				continue
			}
			k := x.keeps()
			through, _ := x.LastStep(SaidGrownThrough)
			d := u.daily(c.key("keep"), k.where, SpawnKept, afresh(k.surely, u.toldAt(through)), []UnitNo{n})
			d.Growth.Named = x.grows()
			d.Growth.Species, d.Growth.Known = SpeciesNamed(x.grows())
			d.Keeps = k.until
			asks.put(d)
		}
		out = append(out, asks.due...)
	}
	return out
}

// grownSince is when the unit was last called grown through, or came so; zero for one
// that never was.
func (u Unit) grownSince() time.Time {
	for _, s := range slices.Backward(u.Steps) {
		if s.Kind == SaidGrownThrough || s.Kind == SaidArrived && s.To == UnitGrown {
			return s.At
		}
	}
	return time.Time{}
}

// The places that spawn is kept in, as they stand in keys.
const (
	keptWarm = iota + 1
	keptChilled
)

// keeping is how long spawn keeps where it stands: surely until an instant, until
// another at best.
type keeping struct {
	where         int
	surely, until time.Time
}

// keeps says how long a unit that is grown through keeps. It takes the unit's steps.
func (u Unit) keeps() keeping {
	s, _ := SpeciesNamed(u.grows())
	where, days := u.keptIn(s)
	k, from := keeping{where: where}, u.grownSince()
	if moved, ok := u.LastStep(SaidMoved); ok && where == keptChilled {
		from = latest(from, moved.At)
	}
	k.surely, k.until = from.AddDate(0, 0, days.From), from.AddDate(0, 0, days.To)
	return k
}

// KeepsUntil is until when a unit that is grown through keeps at best where it stands.
// It takes the unit's steps.
func (u Unit) KeepsUntil() time.Time { return u.keeps().until }

// keptIn is in which place spawn of a species is kept where the unit stands, and for how
// many days. A species that must not be chilled keeps no longer in the cold.
func (u Unit) keptIn(s Species) (where int, days Days) {
	if Chilled(u.Place) && !s.Has(NeverChill) {
		return keptChilled, s.Fridge
	}
	return keptWarm, s.Warm
}

// coldPlaces are what is part of the names of places where spawn is chilled.
var coldPlaces = []string{"fridge", "refrigerator", "cooler", "chiller", "cold"}

// Chilled reports whether a place, by the collective's own name for it, is a fridge or
// the like.
func Chilled(place string) bool {
	place = strings.ToLower(place)
	return slices.ContainsFunc(coldPlaces, func(w string) bool { return strings.Contains(place, w) })
}
