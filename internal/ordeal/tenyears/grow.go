package tenyears

import (
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// evening is when people look at a load, so many days after a time: what is told of it
// then comes minutes later, in the order of the moments.
func (ld *load) evening(t time.Time, days int) time.Time {
	return t.Truncate(day).Add(time.Duration(days)*day + 18*time.Hour + time.Duration(int(ld.no)%30)*time.Minute)
}

// moment is what is told at a look, in the order in which it is.
type moment uint8

const (
	shaken moment = iota + 1
	looked
	looksOdd
	looksFine
	grownThrough
	moved
	halfUsed
	isUsed
	isGiven
	isLost
	isBad
	isThrown
)

// inoculate puts cultures, or grown grain, on the units of a cool load some evening.
func (l *life) inoculate(ld *load) {
	at := ld.evening(ld.cool, l.between(0, 2))
	if at.Before(ld.cool.Add(time.Hour)) {
		at = at.Add(day)
	}
	at = at.Add(-time.Hour) // before what is told of an evening
	rest := ld.units
	if len(rest) > 3 && l.likely(0.6) {
		blank := rest[len(rest)-1]
		blank.blank, blank.gone, blank.how = true, ld.evening(at, l.between(10, 16)), thrown
		rest = rest[:len(rest)-1]
		l.about(ld, at.Add(-2*time.Minute), "blank", kitchen.BlankSet{Units: []kitchen.UnitNo{blank.ref.Unit}})
	}
	if l.likely(0.2) {
		for range min(2, len(rest)-1) {
			idle := rest[len(rest)-1]
			idle.gone, idle.how = ld.evening(at, l.between(20, 70)), thrown
			rest = rest[:len(rest)-1]
		}
	}
	for i := 0; len(rest) > 0; i++ {
		n := min(len(rest), l.between(2, 5))
		l.putOn(ld, at.Add(time.Duration(i)*12*time.Minute), rest[:n])
		rest = rest[n:]
	}
}

// putOn puts one thing on units: grown grain where there is some that hasn't been
// carried on too often, else a culture.
func (l *life) putOn(ld *load, at time.Time, units []*glass) {
	g := &group{at: at, members: units}
	generation := 1
	if from := l.grownAt(at); from != nil && l.likely(0.35) {
		g.entry = kitchen.Inoculated{From: from.ref, Species: from.species}
		generation = from.generation + 1
		if !from.parent {
			from.parent, from.gone, from.how = true, at.Add(-time.Minute), used
		}
	} else {
		c := l.cultureAt(at)
		c.units += len(units)
		g.entry = kitchen.Inoculated{Culture: c.Name, Species: c.Species, Route: c.Kind.Route()}
		if c.Kind == kitchen.LiquidBottle {
			g.entry.Volume = 0.01
		}
	}
	for _, u := range units {
		g.entry.Units = append(g.entry.Units, u.ref.Unit)
		u.species, u.generation, u.inoculated = g.entry.Species, generation, at
		l.fate(ld, u)
	}
	ld.groups = append(ld.groups, g)
	l.late(l.about(ld, at, "inoculated", g.entry))
}

// lastGeneration is how often grain is carried on to grain here.
const lastGeneration = 4

// grownAt is a unit that is grown through at a time and not spoken for; nil for none.
func (l *life) grownAt(at time.Time) *glass {
	var there []*glass
	for i := max(0, len(l.loads)-40); i < len(l.loads); i++ {
		for _, u := range l.loads[i].units {
			free := !u.parent && u.half.IsZero() && u.generation < lastGeneration
			if free && !u.through.IsZero() && u.through.Add(day).Before(at) && u.gone.After(at.Add(time.Hour)) {
				there = append(there, u)
			}
		}
	}
	if len(there) == 0 {
		return nil
	}
	return there[l.chance.IntN(len(there))]
}

// fate decides what becomes of a unit that something was put on.
func (l *life) fate(ld *load, u *glass) {
	days := growsIn(u.species) + l.between(-1, 2)
	switch p := l.chance.Float64(); {
	case p < 0.08:
		u.bad, u.sign = ld.evening(u.inoculated, l.between(3, 8)), kitchen.Sign(l.between(int(kitchen.Slimy), int(kitchen.Cobweb)))
		u.gone, u.how = u.bad.Add(time.Duration(l.chance.IntN(3))*day), thrown
		return
	case p < 0.095:
		u.bad, u.sign = ld.evening(u.inoculated, l.between(9, 12)), kitchen.NothingGrew
		u.gone, u.how = u.bad.Add(day), thrown
		return
	case p < 0.135:
		u.odd, u.fine = ld.evening(u.inoculated, days/2), ld.evening(u.inoculated, days/2+1)
	}
	u.through = ld.evening(u.inoculated, days)
	u.gone, u.how = ld.evening(u.through, l.between(1, 6)), used
	switch p := l.chance.Float64(); {
	case p < 0.05:
		u.how = given
	case p < 0.06:
		u.how = lost
	case p < 0.08:
		u.how = thrown
	case p < 0.15 && u.gone.Sub(u.through) >= 3*day:
		u.half = u.gone.Add(-2 * day)
	}
}

// tellUnits tells of all units of a load, moment by moment.
func (l *life) tellUnits(ld *load) {
	var last time.Time
	first := ld.begun
	for _, u := range ld.units {
		if u.gone.After(last) {
			last = u.gone
		}
	}
	for d := 0; ; d++ {
		at := ld.evening(first, d)
		if at.After(last.Add(day)) || at.After(l.size.End) {
			break
		}
		l.look(ld, at, d)
	}
	l.parents(ld)
	l.label(ld)
}

// label puts words on some loads.
func (l *life) label(ld *load) {
	if len(ld.groups) == 0 {
		return
	}
	at := ld.groups[0].at.Add(50 * time.Minute)
	if l.likely(0.3) {
		l.about(ld, at, "to the tent", kitchen.UnitsMoved{Units: ld.groups[0].entry.Units, Place: []string{"tent", "shelf A", "shelf B"}[l.chance.IntN(3)]})
	}
	if l.likely(0.05) {
		l.about(ld, at.Add(time.Minute), "test", kitchen.UnitsTagged{Units: ld.groups[0].entry.Units, Tags: []string{"test", "new lids"}[:l.between(1, 2)]})
	}
	if l.likely(0.02) {
		l.about(ld, at.Add(2*time.Minute), "call it", kitchen.UnitNamed{Unit: ld.groups[0].entry.Units[0], Name: "Bertha"})
	}
}

// parents tells of the units that were put on others.
func (l *life) parents(ld *load) {
	for _, u := range ld.units {
		if u.parent {
			l.about(ld, u.gone, "used", kitchen.UnitsUsed{Units: []kitchen.UnitNo{u.ref.Unit}, On: "grain"})
		}
	}
}

// look is one evening: what is there to tell of each unit.
func (l *life) look(ld *load, at time.Time, d int) {
	seen := map[moment][]*glass{}
	for _, u := range ld.units {
		for _, m := range u.at(at, d+int(ld.no)) {
			seen[m] = append(seen[m], u)
		}
	}
	for m := shaken; m <= isThrown; m++ {
		l.tellOf(ld, at.Add(time.Duration(m)*time.Minute), m, seen[m])
	}
}

// at lists what there is to tell of a unit on an evening.
func (u *glass) at(at time.Time, d int) []moment {
	var out []moment
	on := func(t time.Time, m moment) {
		if t.Equal(at) {
			out = append(out, m)
		}
	}
	if grows := u.grows(at); grows && d%4 == 0 {
		out = append(out, shaken)
	} else if grows && d%2 == 0 {
		out = append(out, looked)
	}
	on(u.odd, looksOdd)
	on(u.fine, looksFine)
	on(u.through, grownThrough)
	on(u.half, halfUsed)
	on(u.bad, isBad)
	if !u.parent {
		on(u.gone, map[end]moment{used: isUsed, given: isGiven, lost: isLost, thrown: isThrown}[u.how])
	}
	return out
}

// grows reports whether the unit is on its way at a time, and nothing is wrong.
func (u *glass) grows(at time.Time) bool {
	until := u.through
	if until.IsZero() {
		until = u.bad
	}
	return !u.inoculated.IsZero() && at.After(u.inoculated.Add(day)) && at.Before(until)
}

// tellOf tells the same of units, together or one by one. One look in a hundred is
// told of the wrong load, and taken back.
func (l *life) tellOf(ld *load, at time.Time, m moment, units []*glass) {
	if len(units) == 0 {
		return
	}
	parts := [][]*glass{units}
	if one := m == isBad || ld.apart && m != isUsed && m != isThrown; one {
		parts = nil
		for i := range units {
			parts = append(parts, units[i:i+1])
		}
	}
	for _, part := range parts {
		t := l.about(ld, at, m.said(), m.entry(at, part))
		l.late(t)
		if m == looked && l.likely(0.01) {
			wrong := l.about(ld, at, "30%", m.entry(at, part))
			wrong.struck = true
			back := l.about(ld, at.Add(time.Minute), "", kitchen.Struck{})
			back.by, back.about = wrong.by, wrong
		}
	}
}

func (m moment) said() string {
	return []string{
		shaken: "shook", looked: "40%", looksOdd: "looks odd", looksFine: "fine", grownThrough: "done", moved: "moved",
		halfUsed: "used half", isUsed: "used", isGiven: "gave away", isLost: "gone", isBad: "bad", isThrown: "threw",
	}[m]
}

func (m moment) entry(at time.Time, units []*glass) kitchen.Entry {
	var nos []kitchen.UnitNo
	for _, u := range units {
		nos = append(nos, u.ref.Unit)
	}
	switch m {
	case shaken:
		return kitchen.Shaken{Units: nos}
	case looked:
		grown := at.Sub(units[0].inoculated).Hours() / 24 / float64(growsIn(units[0].species)+2)
		return kitchen.GrowthSeen{Units: nos, Share: unit.Fraction(min(float64(int(grown*20))/20+0.05, 0.95))}
	case looksOdd:
		return kitchen.SignSeen{Units: nos, Sign: kitchen.LooksOdd}
	case looksFine:
		return kitchen.SignSeen{Units: nos, Sign: kitchen.LooksFine}
	case grownThrough:
		return kitchen.GrownThrough{Units: nos}
	case moved:
		return kitchen.UnitsMoved{Units: nos, Place: "fridge"}
	case halfUsed:
		return kitchen.UnitsUsed{Units: nos, On: "straw", Share: 0.5}
	case isUsed:
		return kitchen.UnitsUsed{Units: nos, On: "straw"}
	case isGiven:
		return kitchen.UnitsGiven{Units: nos, To: "a friend"}
	case isLost:
		return kitchen.UnitsGone{Units: nos}
	case isBad:
		return kitchen.SignSeen{Units: nos, Sign: units[0].sign}
	case isThrown:
		return kitchen.UnitsDiscarded{Units: nos}
	}
	panic("moment not known")
}
