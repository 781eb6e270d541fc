package phrase

import (
	"slices"
	"strconv"
	"strings"

	"ryebell/internal/kitchen"
)

// mostListed is how many units or runs one list names at most: more are no message.
const mostListed = 60

// meantRead is which units were said to be meant, while it is read.
type meantRead struct {
	Meant
	// sure is set by what can be nothing but units of ours; a bare "12" or "the jars"
	// can be anything.
	sure bool
	// all is set for "all of 12".
	all bool
	// pronoun is set for "it", "them".
	pronoun bool
}

// meant takes which units are meant. Of those named just before, as far as they were,
// goes the run of ".3" and "the rest".
func (c cursor) meant(before Meant) (meantRead, cursor, bool) {
	for _, read := range [...]func(cursor, Meant) (meantRead, cursor, bool){theRest, inState, inTurn, theVessels, listed} {
		m, d, ok := read(c, before)
		if !ok {
			continue
		}
		if none, e, but := d.exceptions(m.Meant); but {
			m.Except, d = none, e
		}
		return m, d, true
	}
	return meantRead{}, c, false
}

// oneRun is the run of units that were said, if they are of one.
func (m Meant) oneRun() (kitchen.RunNo, bool) {
	if len(m.Refs) == 0 || slices.ContainsFunc(m.Refs, func(r kitchen.Ref) bool { return r.Run != m.Refs[0].Run }) {
		return 0, false
	}
	return m.Refs[0].Run, true
}

// wholeRun reports whether nothing is meant but all of one run.
func (m Meant) wholeRun() bool {
	return len(m.Refs) == 1 && len(m.Refs[0].Units) == 0 && m.Vessel == 0 && m.State == 0 && !m.Rest
}

// isZero reports whether no units were said.
func (m Meant) isZero() bool {
	return len(m.Refs)+len(m.Units)+len(m.Names)+len(m.Except)+m.Count == 0 && m.Vessel == 0 && !m.Rest && m.State == 0
}

// units is how many are meant, where that was said; 0 where it wasn't.
func (m Meant) units() int {
	n := len(m.Units) + len(m.Names) + m.Count
	for _, r := range m.Refs {
		if len(r.Units) == 0 {
			return m.Count
		}
		n += len(r.Units)
	}
	return n
}

// theRest reads "the rest", "the rest of 12", "the other jars".
func theRest(c cursor, before Meant) (meantRead, cursor, bool) {
	m := meantRead{Meant: Meant{Rest: true}}
	d, ok := c.over("all", "and", "everything").phrase("the rest", "rest", "the others", "the other ones", "others", "everything else", "all the rest", "the remaining ones", "the remaining", "the rest of them",
		"all others", "else", "the other jars", "the other bags", "rest of them")
	if !ok || c.word(0) == "else" {
		return m, c, false
	}
	switch d.word(-1) {
	case "jar", "jars":
		m.Vessel = kitchen.Jar
	case "bag", "bags":
		m.Vessel = kitchen.Bag
	}
	if run, e, of := d.ofRun(); of {
		m.Refs, m.sure = []kitchen.Ref{{Run: run}}, true
		return m, e, true
	}
	if run, one := before.oneRun(); one {
		m.Refs, m.sure = []kitchen.Ref{{Run: run}}, true
	}
	return m, d, true
}

// ofRun reads "of 12", "in run 12", "from #12".
func (c cursor) ofRun() (kitchen.RunNo, cursor, bool) {
	d, ok := c.phrase("of", "in", "from", "of run", "in run", "of the run", "of load", "out of")
	if !ok {
		return 0, c, false
	}
	run, e, ok := d.over("the", "run", "number", "no").run()
	return run, e, ok && !vesselOrMeasure(e.token())
}

// vesselOrMeasure reports whether the number before a token is a count: "12 bags".
func vesselOrMeasure(t Token) bool {
	switch t.(type) {
	case VesselWord, Quantity:
		return true
	}
	return false
}

// stateWords are the words for units in a state.
var stateWords = map[string]kitchen.UnitState{
	"suspect": kitchen.UnitSuspect, "suspicious": kitchen.UnitSuspect, "doubtful": kitchen.UnitSuspect, "contaminated": kitchen.UnitContaminated, "contam": kitchen.UnitContaminated,
	"dead": kitchen.UnitDead, "growing": kitchen.UnitGrowing, "inoculated": kitchen.UnitInoculated, "cooked": kitchen.UnitCooked, "finished": kitchen.UnitGrown, "ready": kitchen.UnitGrown,
	"colonised": kitchen.UnitGrown, "colonized": kitchen.UnitGrown, "grown": kitchen.UnitGrown, "bad": kitchen.UnitContaminated, "mouldy": kitchen.UnitContaminated, "moldy": kitchen.UnitContaminated,
}

// inState reads "the suspect ones", "all contaminated jars of 12".
func inState(c cursor, before Meant) (meantRead, cursor, bool) {
	var m meantRead
	d := c.over("all", "the", "of", "those", "these", "our")
	state, ok := stateWords[d.word(0)]
	if !ok || d.i == c.i {
		return m, c, false
	}
	m.State = state
	d = d.use(1).maybe("through")
	if v, e, vessel := d.vessel(); vessel && !v.Sized() {
		m.Vessel, d = v.Vessel, e
	} else if e, ones := d.phrase("ones", "units", "one"); ones {
		d = e
	} else {
		return m, c, false
	}
	if run, e, of := d.ofRun(); of {
		m.Refs, d = []kitchen.Ref{{Run: run}}, e
	} else if run, one := before.oneRun(); one {
		m.Refs = []kitchen.Ref{{Run: run}}
	}
	m.sure = len(m.Refs) > 0
	return m, d, true
}

// theVessels reads "the jars", "the three bags", "both bags", "the jars of 12".
func theVessels(c cursor, _ Meant) (meantRead, cursor, bool) {
	var m meantRead
	d := c.over("all", "all of", "the", "these", "those", "our", "my")
	led := d.i > c.i
	if e, both := d.phrase("both"); both {
		m.Count, d, led = 2, e.over("the", "of the"), true
	} else if n, e, ok := d.number(); ok {
		count, isWhole := whole(n)
		if _, bag := e.token().(VesselWord); !bag || !isWhole || count < 1 || count > mostUnits {
			return m, c, false
		}
		m.Count, d = count, e
	}
	v, d, ok := d.vessel()
	if !ok || v.Sized() {
		return m, c, false
	}
	m.Vessel = v.Vessel
	if run, e, of := d.ofRun(); of {
		m.Refs, m.sure = []kitchen.Ref{{Run: run}}, true
		return m, e, true
	}
	if n, isNumber := d.over("no", "nr", "number", "#").token().(Number); isNumber && !n.Word || isRange(d.token()) {
		return m, c, false // bag 2
	}
	return m, d, led
}

// listed reads units and runs one by one: "12.1-4", "12.1, 3 and 5", "12.1 and .2",
// "all of 12", "bag 2", the own names of units.
func listed(c cursor, before Meant) (meantRead, cursor, bool) {
	var m meantRead
	d, all := c.phrase("all of", "everything in", "everything of", "the whole of", "all units of", "every unit of", "all the units of", "whole of", "all the jars and bags of", "the whole", "all in", "whole", "all")
	d = d.over("run", "number", "load", "batch", "the load", "the run")
	if e := d.over("the", "units", "unit"); e.namesUnits() {
		d = e
	}
	if all && (d.word(-1) == "whole" || d.word(-1) == "all") {
		if _, sharp := d.token().(RunRef); !sharp {
			return m, c, false // "all 12" are rather twelve
		}
	}
	m.sure, m.all = all, all
	start := d
	most := mostListed
	if c.listMost > 0 {
		most = c.listMost
	}
	for n := 0; n < most; n++ {
		e, apart := d, d.i == start.i
		if n > 0 {
			e, apart = d.joiner()
		}
		f, ok := m.element(e, apart, before)
		if !ok {
			break
		}
		d = f
	}
	return m, d, d.i > start.i && m.ofOneKind()
}

// ofOneKind puts units that were said before their run, ".3 and 12.1", into it; false
// where several runs can be theirs.
func (m *meantRead) ofOneKind() bool {
	if len(m.Units) == 0 || len(m.Refs) == 0 {
		return true
	}
	run, one := m.oneRun()
	for _, u := range m.Units {
		m.add(kitchen.Ref{Run: run, Units: []kitchen.UnitNo{u}})
	}
	m.Units = nil
	return one
}

// joiner takes what stands between two units of a list.
func (c cursor) joiner() (cursor, bool) {
	d := c
	for {
		if e, ok := d.mark(",+&/"); ok {
			d = e
		} else if e, ok := d.phrase("and", "n", "plus", "also", "or"); ok && d.word(0) != "or" {
			d = e
		} else {
			return d, d.i > c.i
		}
	}
}

// element takes one of a list. A bare number needs something that parts it from the
// one before.
func (m *meantRead) element(c cursor, apart bool, before Meant) (cursor, bool) {
	if name, d, ok := c.amongOwn(c.s.names.Units); ok {
		m.Names, m.sure = append(m.Names, name), true
		return d, true
	}
	if d, ok := m.vesselNumber(c, before); ok {
		return d, true
	}
	if c.hasRun() && len(m.Units) > 0 {
		return c, false // of which run the ones before are wasn't said
	}
	switch t := c.token().(type) {
	case RunRef:
		m.add(t.Ref)
		m.sure = true
		return c.use(1), true
	case Range, Unclear:
		r, ok := refWritten(c.word(0), m.run(before))
		if !ok || r.Run == 0 || isWritten(c.word(0)) && !apart {
			return c, false
		}
		m.add(r)
		m.sure = true
		return c.use(1), true
	case Number:
		return m.number(c, t, apart, before)
	}
	return c, false
}

// hasRun reports whether a run or a unit stands here by its number, with its run.
func (c cursor) hasRun() bool {
	switch t := c.token().(type) {
	case RunRef:
		return true
	case Number:
		return t.Ref != nil
	}
	return false
}

// isWritten reports whether a range names no run: "5-7".
func isWritten(text string) bool { return !strings.Contains(text, ".") }

func (m *meantRead) number(c cursor, t Number, apart bool, before Meant) (cursor, bool) {
	if t.Word || t.Times || t.Mixed {
		return c, false
	}
	said := c.word(0)
	n, isWhole := whole(t.Value)
	switch {
	case t.Ref != nil:
		m.add(*t.Ref)
		m.sure = true
	case said[0] == '.':
		unit, err := strconv.Atoi(said[1:])
		if err != nil || said[1] == '0' || unit > mostUnits {
			return c, false
		}
		m.addUnit(kitchen.UnitNo(unit), before)
		m.sure = true
	case !isWhole || n < 1 || !apart || pointed(said) || vesselOrMeasure(c.ahead(1)) || c.word(1) == "x" || strings.HasPrefix(said, "0"):
		return c, false
	case len(m.Units) > 0 || len(m.Refs) > 0 && m.Refs[len(m.Refs)-1].Units != nil:
		if n > mostUnits {
			return c, false
		}
		m.addUnit(kitchen.UnitNo(n), before)
	case len(m.Names) > 0 || n > mostRuns:
		return c, false
	default:
		m.add(kitchen.Ref{Run: kitchen.RunNo(n)})
	}
	return c.use(1), true
}

// vesselNumber reads "bag 2", "unit 3", "bags 2-4", "bag 2 of 12".
func (m *meantRead) vesselNumber(c cursor, before Meant) (cursor, bool) {
	d := c.over("the")
	v, isVessel := d.token().(VesselWord)
	if !(isVessel && !v.Container.Sized() || d.word(0) == "unit" || d.word(0) == "units") {
		return c, false
	}
	d = d.use(1).over("no", "nr", "number", "#")
	var units []kitchen.UnitNo
	switch t := d.token().(type) {
	case Number:
		n, isWhole := whole(t.Value)
		if !isWhole || t.Word || t.Times || n < 1 || n > mostUnits || t.Ref != nil || vesselOrMeasure(d.ahead(1)) {
			return c, false
		}
		units = []kitchen.UnitNo{kitchen.UnitNo(n)}
	case Range:
		r, ok := refWritten("1."+d.word(0), 1)
		if !ok || t.Senses != nil {
			return c, false
		}
		units = r.Units
	default:
		return c, false
	}
	d = d.use(1)
	if run, e, of := d.ofRun(); of && len(m.Units) == 0 {
		m.add(kitchen.Ref{Run: run, Units: units})
		m.sure = true
		return e, true
	}
	for _, u := range units {
		m.addUnit(u, before)
	}
	m.sure = m.sure || len(m.Refs) > 0
	return d, true
}

// run is the run that a bare unit belongs to: that of the unit before it.
func (m *meantRead) run(before Meant) kitchen.RunNo {
	if n := len(m.Refs); n > 0 {
		return m.Refs[n-1].Run
	}
	run, _ := before.oneRun()
	return run
}

func (m *meantRead) addUnit(u kitchen.UnitNo, before Meant) {
	if run := m.run(before); run != 0 {
		m.add(kitchen.Ref{Run: run, Units: []kitchen.UnitNo{u}})
	} else if !slices.Contains(m.Units, u) {
		m.Units = append(m.Units, u)
	}
}

// add puts a reference to the others, to the last of them where that is of the same
// run.
func (m *meantRead) add(r kitchen.Ref) {
	n := len(m.Refs)
	if n == 0 || m.Refs[n-1].Run != r.Run || m.Refs[n-1].Units == nil || r.Units == nil {
		if n == 0 || m.Refs[n-1].Run != r.Run || m.Refs[n-1].Units != nil || r.Units != nil {
			r.Units = slices.Clone(r.Units)
			m.Refs = append(m.Refs, r)
		}
		return
	}
	last := &m.Refs[n-1]
	for _, u := range r.Units {
		if !slices.Contains(last.Units, u) && len(last.Units) < mostUnits {
			last.Units = append(last.Units, u)
		}
	}
}

// refWritten reads 12.1-12.5, 12.1 to 4, .3-5, 5-7, 12.1/2: the run is that of the
// first, else the one said before.
func refWritten(text string, run kitchen.RunNo) (kitchen.Ref, bool) {
	r := kitchen.Ref{Run: run}
	parts := strings.FieldsFunc(text, func(c rune) bool { return c != '.' && (c < '0' || c > '9') })
	if len(parts) < 2 || len(parts) > mostListed {
		return r, false
	}
	for i, p := range parts {
		of, unit, dotted := strings.Cut(p, ".")
		if !dotted {
			of, unit = "", p
		}
		if of != "" {
			if n := atoi(of); i > 0 && kitchen.RunNo(n) != r.Run || n < 1 || n > mostRuns {
				return r, false
			}
			r.Run = kitchen.RunNo(atoi(of))
		}
		u := atoi(unit)
		if unit == "" || unit[0] == '0' || u < 1 || u > mostUnits || strings.Contains(unit, ".") {
			return r, false
		}
		lo := u
		if i == 1 && !strings.Contains(text, "/") {
			lo = int(r.Units[0]) + 1
		}
		if lo > u && i == 1 || len(parts) > 2 && !strings.Contains(text, "/") {
			return r, false
		}
		for ; lo <= u; lo++ {
			r.Units = append(r.Units, kitchen.UnitNo(lo))
		}
	}
	return r, true
}
