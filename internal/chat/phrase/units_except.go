package phrase

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ryebell/internal/kitchen"
)

// butWords stand between a run and what of it isn't meant.
var butWords = []string{
	"except", "except for", "but not", "all but", "all except", "all except for", "apart from", "besides", "without", "minus", "other than", "everything but", "bar", "excluding", "not",
	"all apart from", "all besides", "save", "except unit", "except units",
}

// exceptions reads which units of the one run or of the vessels meant are not: "12
// except .3", "12 all but 3 and 5".
func (c cursor) exceptions(of Meant) ([]kitchen.UnitNo, cursor, bool) {
	if !of.wholeRun() && !(of.Vessel != 0 && len(of.Refs) <= 1) {
		return nil, c, false
	}
	d := c
	if e, ok := d.mark(",("); ok {
		d = e
	}
	d, ok := d.phrase(butWords...)
	if !ok {
		return nil, c, false
	}
	m := meantRead{}
	run, _ := of.oneRun()
	start := kitchen.Ref{Run: max(run, 1), Units: []kitchen.UnitNo{}}
	m.Refs = []kitchen.Ref{start}
	d = d.over("for", "unit", "units", "jar", "bag", "number", "no")
	first := d
	for n := 0; n < mostListed; n++ {
		e, apart := d, n == 0
		if n > 0 {
			e, apart = d.joiner()
		}
		f, ok := m.element(e, apart, Meant{})
		if !ok {
			break
		}
		d = f
	}
	if d.i == first.i || len(m.Refs) != 1 || len(m.Names) > 0 || len(m.Refs[0].Units) == 0 {
		return nil, c, false
	}
	if e, ok := d.mark(")"); ok {
		d = e
	}
	return m.Refs[0].Units, d, true
}

// String prints which units are meant so that it reads back; "it" where none were
// said.
func (m Meant) String() string {
	if m.isZero() {
		return "it"
	}
	var said []string
	run, one := m.oneRun()
	narrowed := m.Rest || m.State != 0 || m.Vessel != 0
	if narrowed {
		said = append(said, m.narrowed())
		if one {
			said[0] += " of " + run.String()
		}
	} else {
		for _, r := range m.Refs {
			said = append(said, r.String())
		}
	}
	switch {
	case len(m.Units) == 1:
		said = append(said, "."+strconv.Itoa(int(m.Units[0])))
	case len(m.Units) > 1:
		said = append(said, "units "+numbersText(m.Units))
	}
	said = append(said, m.Names...)
	if len(m.Except) > 0 {
		said = append(said, "except "+numbersText(m.Except))
	}
	return strings.Join(said, " ")
}

// narrowed prints what is narrowed to a vessel, a state or the rest.
func (m Meant) narrowed() string {
	vessel := "ones"
	if m.Vessel != 0 {
		vessel = m.Vessel.String() + "s"
	}
	switch {
	case m.Rest && m.Vessel != 0:
		return "the other " + vessel
	case m.Rest:
		return "the rest"
	case m.State != 0:
		return "the " + stateWord(m.State) + " " + vessel
	case m.Count > 0:
		return fmt.Sprintf("the %d %s", m.Count, vessel)
	}
	return "the " + vessel
}

func stateWord(s kitchen.UnitState) string {
	for _, w := range [...]string{"suspect", "contaminated", "dead", "growing", "inoculated", "cooked", "finished"} {
		if stateWords[w] == s {
			return w
		}
	}
	return s.String()
}

func numbersText(units []kitchen.UnitNo) string {
	said := make([]string, len(units))
	for i, u := range units {
		said[i] = fmt.Sprint(int(u))
	}
	return strings.Join(said, ", ")
}

// pronouns are words for units that were said before, in the post answered or in the
// same breath.
var pronouns = []string{"it", "them", "these", "those", "that one", "this one", "this", "that", "all of them", "all of it", "both of them", "it all", "them all", "these ones", "those ones", "they", "all"}

// meantOr takes which units are meant, or a pronoun for those said just before.
func (c cursor) meantOr(before Meant) (meantRead, cursor, bool) {
	if m, d, ok := c.meant(before); ok {
		return m, d, true
	}
	if d, ok := c.phrase(pronouns...); ok {
		return meantRead{Meant: before.clone(), sure: !before.isZero(), pronoun: true}, d, true
	}
	return meantRead{}, c, false
}

// clone is a copy that shares no list with it.
func (m Meant) clone() Meant {
	m.Refs, m.Units, m.Names, m.Except = slices.Clone(m.Refs), slices.Clone(m.Units), slices.Clone(m.Names), slices.Clone(m.Except)
	return m
}
