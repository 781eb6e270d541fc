package phrase

import (
	"ryebell/internal/kitchen"
)

var tellUnitsGrammar = grammar{
	kind: KindTellUnits,
	examples: []string{
		"12.1-4 oyster lc 10ml",
		"inoculated 12 with blue plate 7",
		"12.1-2 oyster, 12.3 shiitake, 12.4 blank",
		"12.1-5 from 9.3",
		"g2g: 1 quart of 9.3 into 12.1-12.5",
		"12.2 30%",
		"shook 12",
		"12.3 green",
		"nothing on 12.4",
		"12.1 done",
		"12.2 looks fine after all",
		"used 12.1 12.4 on straw",
		"used half of 12.3",
		"gave 12.2 away",
		"threw 12.3",
		"12.3 is gone",
		"moved 12.3 to the top shelf",
		"12.3 has no name",
		"#soak24 on 12",
		"12 is rye lot 3",
		"12.1-2 top layer",
		"12.3 is not green",
	},
	match: matchTellUnits,
}

// unitsTelling is what is told of units while it is read.
type unitsTelling struct {
	parts []UnitsPart
	// before are the units of the part before.
	before Meant
	when   *Moment
	// first is true when the time was said before everything.
	first bool
	// opens is true when nothing was said before it.
	opens bool
	// plain is true once something was told that people don't say to each other.
	plain bool
	// answers is true when a post has just spoken of the units: they need no name.
	answers bool
}

// unitsRead is one thing told, as far as it has been read, and the place behind it.
type unitsRead struct {
	parts []UnitsPart
	when  *Moment
	end   cursor
	sure  bool
	// loose is set where no unit was said.
	loose bool
}

// matchTellUnits reads several things told of units, each with its own.
func matchTellUnits(c cursor) (Intent, cursor, bool) {
	t := unitsTelling{opens: c.firstSaid() == 0}
	t, d := t.timeFirst(c)
	if !d.tellsUnits() {
		return nil, c, false
	}
	t, d = t.allOf(d)
	if len(t.parts) == 0 {
		return t.nearly(c, d)
	}
	d.plain = t.plain
	return TellUnits{Parts: t.parts, When: t.when}, d, true
}

// allOf takes one thing told after another.
func (t unitsTelling) allOf(d cursor) (unitsTelling, cursor) {
	for len(t.parts) < maxSegments {
		e := d
		if len(t.parts) > 0 {
			e = d.parted().over(unitLeads...)
		}
		next, f, ok := t.part(e, e.i > d.i)
		if !ok {
			break
		}
		t, d = next, f
	}
	return t, d
}

// part takes one thing told of units.
func (t unitsTelling) part(c cursor, apart bool) (unitsTelling, cursor, bool) {
	if !c.tellsUnits() && !t.answers || len(t.parts) > 0 && !apart && !c.namesUnits() {
		return t, c, false
	}
	next, d, ok, some := t.onePart(c)
	for most := mostShortened; !ok && some && most > 0; most-- { // "shook 12.2, 12.4 green"
		c.listMost = most
		next, d, ok, _ = t.onePart(c)
	}
	d.listMost = 0
	return next, d, ok
}

// mostShortened is how many units a list names at most that is read shorter.
const mostShortened = 6

// onePart takes one thing told of units; some is false when nothing can begin so.
func (t unitsTelling) onePart(c cursor) (next unitsTelling, d cursor, ok, some bool) {
	var best unitsRead
	for _, read := range [...]func(unitsTelling, cursor) (unitsRead, bool){
		unitsTelling.unitsFirst, unitsTelling.verbFirst, unitsTelling.signFirst, unitsTelling.cultureOnto, unitsTelling.lotOnto, unitsTelling.goesOn, unitsTelling.dashed,
	} {
		if r, ok := read(t, c); ok && r.end.i > best.end.i {
			best = r
		}
	}
	if len(best.parts) == 0 {
		return t, c, false, false
	}
	d = best.end
	if best.when == nil {
		if m, e, ok := d.told(); ok {
			best.when, d = &m, e
		}
	}
	d = d.over(tailWords...)
	if e, eyes := d.mark(":;"); eyes {
		if f, mouth := e.mark("()"); mouth {
			d = f // a sad face
		}
	}
	if best.when == nil {
		if m, e, ok := d.told(); ok {
			best.when, d = &m, e.over(tailWords...)
		}
	}
	if !d.settled() || best.when != nil && t.when != nil || t.otherTime(best) {
		return t, c, false, true
	}
	next = t
	next.parts = append(next.parts[:len(next.parts):len(next.parts)], best.parts...)
	next.before = best.parts[len(best.parts)-1].Of
	if best.when != nil {
		next.when = best.when
	}
	next.plain = next.plain || best.sure && !best.loose
	return next, d, true, true
}

// otherTime reports whether a further thing happened at another time: what has a time
// of its own ends the telling, but one evening of inoculating is one.
func (t unitsTelling) otherTime(r unitsRead) bool {
	if len(t.parts) == 0 || t.first {
		return false
	}
	if t.when == nil {
		return r.when != nil
	}
	for _, p := range append(t.parts[:len(t.parts):len(t.parts)], r.parts...) {
		switch p.Entry.(type) {
		case kitchen.Inoculated, kitchen.BlankSet:
			continue
		case kitchen.GrowthSeen, kitchen.Shaken, kitchen.SignSeen, kitchen.GrownThrough, kitchen.UnitsUsed, kitchen.UnitsGiven, kitchen.UnitsDiscarded, kitchen.UnitsGone,
			kitchen.UnitsMoved, kitchen.UnitNamed, kitchen.UnitsTagged, kitchen.UnitsStood, kitchen.LotSaid, kitchen.Arrived:
			return true
		}
		panic(p.Entry)
	}
	return false
}

// told takes when something happened.
func (c cursor) told() (Moment, cursor, bool) {
	if w := c.word(0); w == "from" || w == "since" || w == "around" || w == "about" {
		if _, ok := c.use(1).token().(When); !ok {
			return Moment{}, c, false
		}
	}
	d, _ := c.mark(",")
	if e, was := d.phrase("was", "were", "that was", "it was", "this was"); was {
		if _, timed := e.token().(When); timed {
			d = e
		}
	}
	m, d, ok := moment(d, nil)
	return m, d, ok && !(m.Now && c.word(0) == "now")
}

// unitsFirst reads "12.1-4 oyster", "12.3 is green", "the jars look wet".
func (t unitsTelling) unitsFirst(c cursor) (unitsRead, bool) {
	m, d, ok := c.over("in", "on", "with", "for").meant(t.before)
	if !ok {
		return unitsRead{}, false
	}
	var r unitsRead
	if w, e, timed := d.told(); timed {
		r.when, d = &w, e
	}
	e := d.over("is", "are", "was", "has", "have", "'s", "it's", "its", "now", "=")
	linked := e.i > d.i
	e, colon := e.mark(":,-=")
	_, number := e.token().(Number)
	if colon && number {
		return unitsRead{}, false
	}
	said, e, ok := t.countsOn(e, m)
	if !ok {
		said, e, ok = predicate(e, m)
	}
	if !ok {
		return unitsRead{}, false
	}
	r.when = firstMoment(r.when, said.when)
	if none, f, but := e.exceptions(m.Meant); but {
		said.none, e = none, f
		m.Except = none
		if more, g, other := e.ofThose(m.Meant, none); other {
			said.but, e = append(said.but, more), g
		}
	}
	if said.entry != nil {
		r.parts = append(r.parts, UnitsPart{m.Meant, said.entry})
	}
	r.parts = append(r.parts, said.but...)
	_, shaken := said.entry.(kitchen.Shaken)
	r.sure, r.end = m.sure || said.sure && (len(m.Refs) > 0 || m.Vessel != 0 && !shaken) || linked && m.wholeRun() || len(m.Except) > 0, e
	return r, true
}

// countsOn reads "60" behind "70%": how far others have grown, in the same breath.
func (t unitsTelling) countsOn(c cursor, m meantRead) (unitSaid, cursor, bool) {
	if len(t.parts) == 0 || len(m.Refs) == 0 {
		return unitSaid{}, c, false
	}
	if _, grows := t.parts[len(t.parts)-1].Entry.(kitchen.GrowthSeen); !grows {
		return unitSaid{}, c, false
	}
	share, d, ok := c.over("at", "about", "abt", "around").share(true)
	if !ok || d.parted().i == d.i && !d.done() {
		return unitSaid{}, c, false
	}
	return unitSaid{entry: kitchen.GrowthSeen{Share: share}}, d, true
}

// ofThose reads what is said of those that weren't meant: "except .3 abt 60", "except
// .3, which is green".
func (c cursor) ofThose(of Meant, none []kitchen.UnitNo) (UnitsPart, cursor, bool) {
	run, one := of.oneRun()
	if !one {
		return UnitsPart{}, c, false
	}
	those := meantRead{Meant: Meant{Refs: []kitchen.Ref{{Run: run, Units: none}}}, sure: true}
	d, ok := c.phrase("abt", "about", "at", "around", "ca", "with", "only")
	if s, e, share := d.share(ok); share {
		return UnitsPart{those.Meant, kitchen.GrowthSeen{Share: s}}, e.over(grownWords...), true
	}
	d, _ = c.mark(",")
	e, ok := d.phrase("which is", "that is", "that's", "which are", "those are", "which looks", "is", "they're", "which has")
	if !ok {
		return UnitsPart{}, c, false
	}
	said, f, ok := predicate(e, those)
	return UnitsPart{those.Meant, said.entry}, f, ok && said.entry != nil
}

// signFirst reads "ugh trich in 12.3", "nothing on 12.4".
func (t unitsTelling) signFirst(c cursor) (unitsRead, bool) {
	var what kitchen.UnitEntry = kitchen.GrowthSeen{}
	d, ok := c.phrase(noneYet...)
	if !ok {
		var s kitchen.Sign
		s, d, ok = signsInside().take(c)
		what = kitchen.SignSeen{Sign: s}
	}
	if !ok {
		return unitsRead{}, false
	}
	d, ok = d.over("spots", "growing", "showing", "coming up", "again", "all over", "everywhere").phrase("in", "on", "at", "inside", "with", "from", "around", "at the bottom of", "on top of", "in the corner of", "in a corner of", "all over", "in one corner of", "on the side of", "in the bottom of", "under the lid of", "under")
	if !ok {
		return unitsRead{}, false
	}
	m, e, ok := d.meant(t.before)
	if !ok && t.answers {
		m, e, ok = d.meantOr(t.before)
	}
	if !ok {
		return unitsRead{}, false
	}
	return unitsRead{parts: []UnitsPart{{m.Meant, what}}, end: e.noticed(), sure: m.sure}, true
}

// lotOnto reads "rye lot 3 in 12", "bag lot 7 on 12.1-3", "#soak24 on 12".
func (t unitsTelling) lotOnto(c cursor) (unitsRead, bool) {
	var e kitchen.UnitEntry
	tags, d := c.tags()
	if l, f, ok := c.lot(); ok {
		e, d = l, f
	} else if tags != nil {
		e = kitchen.UnitsTagged{Tags: tags}
	} else {
		return unitsRead{}, false
	}
	d, ok := d.phrase("in", "on", "for", "to", "into", "went into", "is in", "with", "at")
	if !ok {
		return unitsRead{}, false
	}
	m, d, ok := d.meant(t.before)
	if !ok {
		return unitsRead{}, false
	}
	return unitsRead{parts: []UnitsPart{{m.Meant, e}}, end: d, sure: m.sure || m.wholeRun()}, true
}

// goesOn reads what is said of the units of the part before, or, at the beginning, of
// those that a reply is about: "smells sour, wet at the bottom".
func (t unitsTelling) goesOn(c cursor) (unitsRead, bool) {
	at := c.over(pronouns...).over("is", "are", "was", "'s", "it's", "its", "they're", "were")
	if len(t.parts) == 0 && !t.opens {
		return unitsRead{}, false
	}
	m := meantRead{Meant: t.before.clone(), sure: !t.before.isZero() || t.answers, pronoun: true}
	said, e, ok := predicate(at, m)
	if !ok || said.entry == nil {
		return unitsRead{}, false
	}
	switch x := said.entry.(type) {
	case kitchen.SignSeen, kitchen.Shaken, kitchen.GrowthSeen:
	case kitchen.UnitsDiscarded, kitchen.UnitsUsed, kitchen.UnitsMoved, kitchen.UnitsGiven, kitchen.GrownThrough, kitchen.UnitsTagged:
		if len(t.parts) == 0 && !t.answers {
			return unitsRead{}, false
		}
	case kitchen.Inoculated, kitchen.BlankSet, kitchen.UnitsGone, kitchen.UnitNamed, kitchen.UnitsStood, kitchen.LotSaid, kitchen.Arrived:
		if !t.answers {
			return unitsRead{}, false
		}
	default:
		panic(x)
	}
	return unitsRead{parts: []UnitsPart{{m.Meant, said.entry}}, end: e, sure: m.sure, loose: m.isZero()}, true
}

// firstSaid is how many tokens stand before the place at hand, leads aside.
func (c cursor) firstSaid() int {
	d := cursor{s: c.s}
	return max(0, c.i-d.over(unitLeads...).i)
}
