package phrase

import (
	"fmt"
	"slices"
	"strings"

	"ryebell/internal/kitchen"
)

// leadingRun reads which run or cooker is spoken of: "#12", "12", "12.3", "run
// 12", "the big pot".
func leadingRun(c cursor) (Which, []kitchen.UnitNo, cursor) {
	d := c.over("on", "in", "for", "the", "our", "run", "no")
	if n, e, ok := unitAlone(d); ok {
		return Which{}, []kitchen.UnitNo{n}, e
	}
	switch t := d.token().(type) {
	case RunRef:
		return Which{Run: t.Ref.Run}, t.Ref.Units, d.use(1)
	case Number:
		if t.Ref != nil {
			return Which{Run: t.Ref.Run}, t.Ref.Units, d.use(1)
		}
		if run, e, ok := d.run(); ok {
			return Which{Run: run}, nil, e
		}
	}
	if w, e, ok := pot(d); ok {
		return w, nil, e
	}
	return Which{}, nil, c
}

// unitAlone reads "bag 2", "jar no 3": a unit of a run that isn't named.
func unitAlone(c cursor) (kitchen.UnitNo, cursor, bool) {
	v, isVessel := c.token().(VesselWord)
	if !(isVessel && !v.Container.Sized() || c.word(0) == "unit") {
		return 0, c, false
	}
	d := c.use(1).over("no", "nr", "number", "#")
	n, ok := d.token().(Number)
	no, isWhole := whole(n.Value)
	return kitchen.UnitNo(no), d.use(1), ok && isWhole && !n.Word && no >= 1 && no <= mostUnits
}

// trailingRun reads "on #12", "in the big pot", "of 12"; "call off 12" and "used up
// 12" need no such word.
func trailingRun(c cursor, e kitchen.Entry) (Which, cursor, bool) {
	d := c.over("on", "in", "for", "of", "the", "at", "with", "our", "run", "this is")
	if r, ok := d.token().(RunRef); ok && len(r.Ref.Units) == 0 {
		return Which{Run: r.Ref.Run}, d.use(1), true
	}
	if _, back := e.(kitchen.PressureBack); back && c.word(0) == "in" {
		return Which{}, c, false // "it's back in 10" is in as many minutes
	}
	_, off := e.(kitchen.CalledOff)
	_, gone := e.(kitchen.RunGone)
	if d.i == c.i && !off && !gone {
		return knownPot(c) // "heat off small pot"
	}
	if run, e, ok := d.run(); ok && d.word(-1) != "at" {
		return Which{Run: run}, e, true
	}
	w, d, ok := pot(d)
	return w, d, ok && d.i > c.i
}

// sizes are what people call a cooker that has no name yet.
var sizes = set("big small large little old new other tall red blue green black")

// pot reads the name of a cooker. A noun alone ("the pot") says nothing about
// which.
func pot(c cursor) (Which, cursor, bool) {
	if n, ok := c.token().(Name); ok && n.Of == CookerName {
		return Which{Cooker: n.Text}, c.use(1), true
	}
	if cookerNouns[c.word(0)] {
		return Which{}, c.skip(1), true
	}
	if d, ok := c.phrase("mine", "my run", "my load", "my one"); ok {
		return Which{Mine: true}, d, true
	}
	name, d, ok := cookerRef(c)
	if !ok || !slices.ContainsFunc(c.s.names.Cookers, func(n string) bool { return n == name }) && !(sizes[c.word(0)] && cookerNouns[c.word(1)]) {
		return Which{}, c, false
	}
	return Which{Cooker: name}, d, true
}

// knownPot reads the name of a cooker that the collective has, or "mine".
func knownPot(c cursor) (Which, cursor, bool) {
	w, d, ok := pot(c)
	known := slices.ContainsFunc(c.s.names.Cookers, func(n string) bool { return strings.EqualFold(n, w.Cooker) })
	return w, d, ok && (known || w.Mine)
}

// both reads that something is told of two runs at once.
func both(c cursor) (cursor, bool) {
	return c.over("on", "in", "for").phrase("both", "both pots", "both cookers", "both runs", "both of them", "both the pots", "both loads", "the both", "the two of them")
}

// before prints which run is meant in front of something.
func (w Which) before(units []kitchen.UnitNo) string {
	switch {
	case w.Run != 0:
		return kitchen.Ref{Run: w.Run, Units: units}.String() + " "
	case len(units) > 0:
		return fmt.Sprintf("unit %d ", units[0])
	case w.Cooker != "":
		return w.Cooker + " "
	case w.Mine:
		return "mine: "
	case w.Both:
		return "both: "
	}
	return ""
}

// behind prints which run is meant behind something.
func (w Which) behind(joint string) string {
	switch {
	case w.Run != 0:
		return " " + joint + w.Run.String()
	case w.Cooker != "":
		return " " + joint + "the " + w.Cooker
	case w.Mine:
		return " " + joint + "mine"
	case w.Both:
		return " " + joint + "both"
	}
	return ""
}
