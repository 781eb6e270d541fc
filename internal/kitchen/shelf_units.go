package kitchen

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"ryebell/internal/calc/grain"
)

// ShelfUnit is a unit with what its load tells of its age. Begun is when the load
// began or, of what arrived, from when its age counts; Cool from when it counts as
// cool, which may lie ahead; zero for a load that isn't so far.
type ShelfUnit struct {
	Unit
	Begun, Cool time.Time
	// Arrived is set for a unit that nobody has seen cooked.
	Arrived bool
	// Through is when it is expected grown through; zero for what is usual for its species.
	Through Expected
}

// ShelfPart is what a unit is to whoever looks along the shelf.
type ShelfPart uint8

// The parts, in the order in which they are of use. Still cooling is cooked grain that
// doesn't count as cool yet. Lost is contaminated or dead, and still there.
const (
	ShelfReady ShelfPart = iota + 1
	ShelfGrowing
	ShelfInoculated
	ShelfCooked
	ShelfCooling
	ShelfBlank
	ShelfSuspect
	ShelfLost
)

// ShelfParts lists them all.
func ShelfParts() []ShelfPart {
	return []ShelfPart{ShelfReady, ShelfGrowing, ShelfInoculated, ShelfCooked, ShelfCooling, ShelfBlank, ShelfSuspect, ShelfLost}
}

// String returns the words for logs.
func (p ShelfPart) String() string {
	switch p {
	case ShelfReady:
		return "ready"
	case ShelfGrowing:
		return "growing"
	case ShelfInoculated:
		return "inoculated"
	case ShelfCooked:
		return "cooked"
	case ShelfCooling:
		return "cooling"
	case ShelfBlank:
		return "blank"
	case ShelfSuspect:
		return "suspect"
	case ShelfLost:
		return "lost"
	}
	return "part not said"
}

// Part is the part of the shelf that a unit belongs to; false for one that doesn't
// stand there.
func (u ShelfUnit) Part(now time.Time) (ShelfPart, bool) {
	switch u.State {
	case UnitGrown:
		return ShelfReady, true
	case UnitGrowing:
		return ShelfGrowing, true
	case UnitInoculated:
		return ShelfInoculated, true
	case UnitCooked:
		switch {
		case u.Blank:
			return ShelfBlank, true
		case u.Cool.After(now):
			return ShelfCooling, true
		}
		return ShelfCooked, true
	case UnitSuspect:
		return ShelfSuspect, true
	case UnitContaminated, UnitDead:
		return ShelfLost, true
	case InCook, UnitUsed, UnitDiscarded, UnitGiven, UnitGone:
		return 0, false
	}
	panic("state " + u.State.String())
}

// Aged is from when the age of a unit counts in its part: since it was grown through,
// inoculated or cool, or since somebody saw what is wrong with it.
func (u ShelfUnit) Aged() time.Time {
	switch u.State {
	case UnitGrowing, UnitInoculated:
		return firstTime(u.Inoculated, u.Since, u.Begun)
	case UnitCooked:
		return firstTime(u.Cool, u.Begun)
	case UnitGrown, UnitSuspect, UnitContaminated, UnitDead, InCook, UnitUsed, UnitDiscarded, UnitGiven, UnitGone:
		return firstTime(u.Since, u.Begun)
	}
	panic("state " + u.State.String())
}

func firstTime(times ...time.Time) time.Time {
	for _, t := range times {
		if !t.IsZero() {
			return t
		}
	}
	return time.Time{}
}

// ShelfSpan is what is expected of a unit by estimate: from when to look, and by when
// it should be used, or should have grown through. Both zero when nothing is, as of what
// grows in the cold.
type ShelfSpan struct{ Look, By time.Time }

// Expected is what is expected of a unit. Cooked grain is looked at after a month,
// bags, which dry out, after three weeks, and used within three months; grown spawn
// keeps one to two weeks in the warm, and in the fridge as long as its species does (all
// common practice, no source).
func (u ShelfUnit) Expected() ShelfSpan {
	from := u.Aged()
	grows, _ := SpeciesNamed(u.species())
	days := func(d Days) ShelfSpan { return ShelfSpan{from.AddDate(0, 0, d.From), from.AddDate(0, 0, d.To)} }
	switch u.State {
	case UnitCooked:
		if u.Container.Vessel == Bag {
			return ShelfSpan{from.AddDate(0, 0, 21), from.AddDate(0, 3, 0)}
		}
		return ShelfSpan{from.AddDate(0, 1, 0), from.AddDate(0, 3, 0)}
	case UnitInoculated, UnitGrowing:
		if u.Rests() {
			return ShelfSpan{}
		}
		if !u.Through.To.IsZero() {
			return ShelfSpan{u.Through.From, u.Through.To}
		}
		takes := grows.growsThrough(u.Container)
		return ShelfSpan{from.Add(takes.From), from.Add(takes.To)}
	case UnitGrown:
		_, kept := u.keptIn(grows)
		return days(kept)
	case UnitSuspect:
		return days(Days{2, 2})
	case UnitContaminated, UnitDead, InCook, UnitUsed, UnitDiscarded, UnitGiven, UnitGone:
		return ShelfSpan{}
	}
	panic("state " + u.State.String())
}

// ShelfGroup are units of one part, species and container, the oldest first.
type ShelfGroup struct {
	Part ShelfPart
	// Species is what grows on them; empty where that wasn't said, and for grain
	// without a culture.
	Species   string
	Container Container
	Units     []ShelfUnit
}

// Oldest is from when the age of its first unit counts.
func (g ShelfGroup) Oldest() time.Time { return g.Units[0].Aged() }

// Shelf is what stands there at a time, each unit in one group: by parts, and in
// each the group with the oldest unit first.
type Shelf struct {
	Groups []ShelfGroup
	Now    time.Time
}

// ShelfOf sorts units into groups; those that don't stand there are passed over.
func ShelfOf(units []ShelfUnit, now time.Time) Shelf {
	s := Shelf{Now: now}
	type kind struct {
		part      ShelfPart
		species   string
		container Container
	}
	at := map[kind]int{}
	for _, u := range units {
		part, ok := u.Part(now)
		if !ok {
			continue
		}
		k := kind{part, strings.ToLower(u.species()), u.Container}
		i, known := at[k]
		if !known {
			i, at[k] = len(s.Groups), len(s.Groups)
			s.Groups = append(s.Groups, ShelfGroup{Part: part, Species: u.species(), Container: u.Container})
		}
		s.Groups[i].Units = append(s.Groups[i].Units, u)
	}
	for _, g := range s.Groups {
		slices.SortFunc(g.Units, byAge)
	}
	slices.SortFunc(s.Groups, func(a, b ShelfGroup) int { return cmp.Or(cmp.Compare(a.Part, b.Part), byAge(a.Units[0], b.Units[0])) })
	return s
}

// byAge puts the older unit first; of one age that of the smaller number.
func byAge(a, b ShelfUnit) int {
	return cmp.Or(a.Aged().Compare(b.Aged()), cmp.Compare(a.Ref.Run, b.Ref.Run), cmp.Compare(a.Ref.Unit, b.Ref.Unit))
}

// species is what grows on a unit; empty for one without a culture.
func (u Unit) species() string {
	if !u.Cultured {
		return ""
	}
	return u.grows()
}

// Count is how many units stand there, in these parts or in all.
func (s Shelf) Count(parts ...ShelfPart) int { return len(s.Units(parts...)) }

// Units are those of these parts, or all, the oldest of each part first.
func (s Shelf) Units(parts ...ShelfPart) []ShelfUnit {
	var out []ShelfUnit
	for _, p := range ShelfParts() {
		if len(parts) > 0 && !slices.Contains(parts, p) {
			continue
		}
		from := len(out)
		for _, g := range s.In(p) {
			out = append(out, g.Units...)
		}
		slices.SortFunc(out[from:], byAge)
	}
	return out
}

// In are the groups of a part.
func (s Shelf) In(p ShelfPart) []ShelfGroup {
	var out []ShelfGroup
	for _, g := range s.Groups {
		if g.Part == p {
			out = append(out, g)
		}
	}
	return out
}

// First are the units of a part in the order in which they should be used: what keeps
// least long from now is first, and not always the oldest.
func (s Shelf) First(p ShelfPart) []ShelfUnit {
	out := s.Units(p)
	slices.SortStableFunc(out, func(a, b ShelfUnit) int { return a.Expected().By.Compare(b.Expected().By) })
	return out
}

// ShelfDue is what a unit wants of people.
type ShelfDue uint8

// The dues, the most pressing first.
const (
	DueThrowOut ShelfDue = iota + 1
	DueLookAgain
	DueUse
	DueGrown
	DueCheck
)

// String returns the words for logs.
func (d ShelfDue) String() string {
	switch d {
	case DueThrowOut:
		return "throw out"
	case DueLookAgain:
		return "look again"
	case DueUse:
		return "use or throw out"
	case DueGrown:
		return "grown through yet"
	case DueCheck:
		return "check the cooked grain"
	}
	return "nothing due"
}

// Due is what a unit wants at a time; 0 for nothing.
func (u ShelfUnit) Due(now time.Time) ShelfDue {
	part, ok := u.Part(now)
	if !ok {
		return 0
	}
	e := u.Expected()
	switch part {
	case ShelfLost:
		return DueThrowOut
	case ShelfSuspect:
		return DueLookAgain
	case ShelfReady:
		if now.After(e.By) {
			return DueUse
		}
	case ShelfGrowing, ShelfInoculated:
		if !u.Rests() && now.After(e.By) {
			return DueGrown
		}
	case ShelfCooked:
		switch {
		case now.After(e.By):
			return DueUse
		case now.After(e.Look):
			return DueCheck
		}
	case ShelfCooling, ShelfBlank:
	}
	return 0
}

// Dues are the units that want something, by what they want, the oldest first.
func (s Shelf) Dues() map[ShelfDue][]ShelfUnit {
	out := map[ShelfDue][]ShelfUnit{}
	for _, u := range s.Units() {
		if d := u.Due(s.Now); d != 0 {
			out[d] = append(out[d], u)
		}
	}
	return out
}

// ShelfOnly narrows down what is looked for; zero fields let everything through.
type ShelfOnly struct {
	// State is that of the units; Bad lets through what is suspect or lost.
	State UnitState
	Bad   bool
	// Container is a kind of vessel, of a size or of any.
	Container Container
	// Culture is a species or the name of a culture.
	Culture string
	// Grain with Usual, the one that units which say none are of.
	Grain, Usual grain.Kind
	Place        string
}

// Of are those of the units that are looked for.
func (o ShelfOnly) Of(units []ShelfUnit) []ShelfUnit {
	var out []ShelfUnit
	for _, u := range units {
		if o.lets(u) {
			out = append(out, u)
		}
	}
	return out
}

func (o ShelfOnly) lets(u ShelfUnit) bool {
	switch {
	case o.State != 0 && u.State != o.State && (o.State != UnitGrowing || u.State != UnitInoculated):
		return false
	case o.State == UnitCooked && u.Blank:
		return false
	case o.Bad && u.State != UnitSuspect && u.State != UnitContaminated && u.State != UnitDead:
		return false
	case o.Container != (Container{}) && !o.Container.covers(u.Container):
		return false
	case o.Culture != "" && !u.of(o.Culture):
		return false
	case o.Grain != 0 && cmp.Or(u.Grain, o.Usual) != o.Grain:
		return false
	}
	return o.Place == "" || samePlace(o.Place, u.Place)
}

// of reports whether a culture of a name or species is on the unit, or one that is a
// variety of it and grows the same.
func (u Unit) of(culture string) bool {
	return u.Cultured && (sameName(u.Culture, culture) || sameName(u.Species, culture) || sameName(growsAs(u.grows()), culture))
}

// samePlace reports whether two names mean one place: the fridge and fridge.
func samePlace(a, b string) bool {
	short := func(s string) string {
		s = strings.ToLower(strings.TrimSpace(s))
		for _, article := range []string{"the ", "our ", "in ", "on "} {
			s = strings.TrimPrefix(s, article)
		}
		return s
	}
	return short(a) == short(b)
}
