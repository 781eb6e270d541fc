package phrase

import (
	"slices"
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

var gearGrammar = grammar{
	kind: KindGear,
	examples: []string{
		"gasket leaked",
		"gas ran out",
		"gas ran out 10 min ago",
		"checked the gauge",
		"gasket vent gas ok",
		"new gasket",
		"big pot: gasket leaks",
		"vent is blocked",
	},
	match: matchGear,
}

// String prints what was told so that it parses back.
func (g GearTold) String() string {
	switch e := g.Entry.(type) {
	case kitchen.GearFailed:
		s := failures[0].words[0]
		for _, f := range failures {
			if f.part == e.Part {
				s = f.words[0]
				break
			}
		}
		if g.When != nil {
			s += " " + g.When.String()
		}
		return gearOf(e.Cooker, e.Run) + s
	case kitchen.GearChecked:
		names := make([]string, len(e.Parts))
		for i, p := range e.Parts {
			names[i] = p.String()
		}
		return gearOf(e.Cooker, 0) + "checked the " + strings.Join(names, ", ")
	case kitchen.GaugeReads:
		return Set{Changes: []kitchen.Change{e}}.String()
	}
	panic("gear without words")
}

func gearOf(cooker string, run kitchen.RunNo) string {
	s := Which{Run: run}.before(nil)
	if cooker != "" {
		s += cooker + ": "
	}
	return s
}

// failures are the ways in which parts fail; the first words print one.
var failures = [...]struct {
	part  kitchen.Part
	words []string
}{
	{kitchen.Gasket, []string{
		"gasket leaked", "gasket leaks", "gasket is leaking", "gasket leaking", "gasket failed", "gasket broke", "gasket is broken", "gasket's leaking", "gasket torn", "gasket is torn",
		"leaky gasket", "gasket blew", "seal leaked", "seal leaks", "seal is leaking", "steam from the lid", "lid leaks", "lid is leaking", "leaks at the lid", "leaking at the lid",
		"steam leaking from the lid", "gasket blew out", "gasket is gone", "gasket cracked", "gasket is cracked", "gasket split", "bad gasket", "gasket is bad", "gasket's gone", "lid leaked", "seal failed",
	}},
	{kitchen.Gas, []string{
		"gas ran out", "gas is out", "out of gas", "gas is empty", "gas empty", "ran out of gas", "gas bottle is empty", "gas bottle empty", "bottle is empty", "no gas left", "no more gas",
		"gas is gone", "gas's out", "gas finished", "gas is finished", "gas went out", "empty gas bottle", "propane ran out", "propane is out", "out of propane", "gas bottle ran out", "gas all gone",
		"no gas", "gas died", "the gas is gone", "we're out of gas", "gas out", "bottle ran out",
	}},
	{kitchen.Stove, []string{
		"flame went out", "flame is out", "flame's out", "flame out", "flame blew out", "flame died", "power cut", "power is out", "power's out", "power went out", "power out",
		"stove went out", "stove died", "burner went out", "burner died", "no power", "power failure",
	}},
	{kitchen.Valve, []string{
		"safety valve blew", "safety valve opened", "safety valve popped", "safety valve went off", "safety valve lifted", "plug blew", "plug popped", "safety plug blew",
		"overpressure plug blew", "fuse plug blew", "valve blew", "safety blew", "needle in the red", "needle is in the red", "needle's in the red", "gauge in the red",
		"gauge is in the red", "in the red", "overpressure",
	}},
	{kitchen.Vent, []string{
		"vent is blocked", "vent blocked", "vent clogged", "vent is clogged", "vent pipe blocked", "vent is stuck", "vent stuck", "vent pipe is blocked", "blocked vent", "vent failed", "vent is dirty",
		"clogged vent", "vent pipe is clogged", "vent pipe clogged",
	}},
	{kitchen.Gauge, []string{
		"gauge is stuck", "gauge stuck", "gauge is broken", "gauge broke", "gauge broken", "gauge failed", "gauge is dead", "needle is stuck", "needle stuck", "gauge doesn't move", "gauge is wrong",
		"gauge's stuck", "gauge's broken", "dial is stuck", "gauge is off", "gauge can't be trusted", "gauge dead",
	}},
}

// partWords name the parts.
var partWords = [...]struct {
	part  kitchen.Part
	words []string
}{
	{kitchen.Gasket, []string{"gasket", "seal", "the gasket", "gaskets", "rubber"}},
	{kitchen.Vent, []string{"vent", "vent pipe", "the vent", "vents", "weight and vent"}},
	{kitchen.Gas, []string{"gas", "gas bottle", "the gas", "bottle", "propane", "the bottle", "the gas bottle"}},
	{kitchen.Stove, []string{"stove", "the stove", "burner", "the burner", "power", "the power"}},
	{kitchen.Valve, []string{"safety valve", "the safety valve", "valve", "the valve", "safety plug", "plug", "the plug"}},
	{kitchen.Gauge, []string{"gauge", "dial", "the gauge", "needle", "the dial", "dial gauge", "pressure gauge"}},
}

func gearPart(c cursor) (kitchen.Part, cursor, bool) {
	for _, p := range partWords {
		if d, ok := c.phrase(p.words...); ok {
			return p.part, d, true
		}
	}
	return 0, c, false
}

// partList takes one or more parts: "gasket, vent and gas".
func partList(c cursor) ([]kitchen.Part, cursor, bool) {
	var parts []kitchen.Part
	d := c
	for {
		e := d.over("the", "new", "a")
		if len(parts) > 0 {
			if f := d.parted(); f.i > d.i {
				e = f.over("the", "new", "a")
			}
		}
		p, f, ok := gearPart(e)
		if !ok {
			return parts, d, len(parts) > 0
		}
		if !slices.Contains(parts, p) {
			parts = append(parts, p)
		}
		d = f
	}
}

var (
	checkedWords = []string{
		"checked", "i checked", "we checked", "looked at", "checked on", "tested", "cleaned", "replaced", "changed", "mended", "fixed", "i replaced", "i changed", "we replaced", "renewed",
		"new", "refilled", "swapped", "i fixed", "i cleaned", "put in a new", "got a new", "have a new", "we have a new", "calibrated", "put in a", "put a new", "greased", "oiled",
	}
	fineWords = []string{
		"ok", "okay", "fine", "good", "are ok", "are fine", "are good", "is ok", "is fine", "is good", "checked", "is checked", "are checked", "all ok", "all good", "all fine", "looks good",
		"look good", "looks fine", "look fine", "looks ok", "is new", "replaced", "changed", "is fixed", "fixed", "was checked", "were checked", "is clean", "full", "is full", "clean", "clear", "is clear", "is mended",
		"are all ok", "are all good", "is right", "is fine again", "is ok again", "tested",
	}
)

// matchGear reads what failed, and what was looked at.
func matchGear(c cursor) (Intent, cursor, bool) {
	d := c.over("ok", "the", "oh no", "damn", "argh", "shit", "ugh", "on", "our", "hey")
	w, _, d := leadingRun(d)
	d, _ = d.over("is", "has", "'s", "it's", "its").mark(":,-")
	d = d.over("the", "our", "its", "a", "we're", "we are", "i'm", "im", "i am", "looks like the", "i think the", "has", "have", "had")
	for _, f := range failures {
		if e, ok := d.phrase(f.words...); ok && !d.ofJar() {
			e = e.over("again", "a bit", "a little", "badly", "now", "sorry", "mid run", "somewhat")
			w, e = inWhich(w, e)
			told := GearTold{}
			if m, f, ok := e.when(); ok {
				told.When, e = &m, f
				w, e = inWhich(w, e)
			}
			e.plain = true
			told.Entry = kitchen.GearFailed{Cooker: w.Cooker, Part: f.part, Run: w.Run}
			return told, e, true
		}
	}
	parts, e, ok := checked(d)
	if !ok || w.Run != 0 {
		return nil, c, false
	}
	w, e = inWhich(w, e)
	e.plain = true
	return GearTold{Entry: kitchen.GearChecked{Cooker: w.Cooker, Parts: parts}}, e, true
}

// ofJar reports whether a lid or seal at hand is a jar's: "1 lid leaked", "a seal
// failed". A cooker has one, which nobody counts.
func (c cursor) ofJar() bool {
	_, counted := c.ahead(-1).(Number)
	return (c.word(0) == "lid" || c.word(0) == "seal") && (counted || c.word(-1) == "a")
}

// inWhich reads the cooker or run behind what is told of it.
func inWhich(w Which, c cursor) (Which, cursor) {
	if w != (Which{}) {
		return w, c
	}
	if v, d, ok := trailingRun(c, nil); ok {
		return v, d
	}
	return w, c
}

// checked reads "checked the gauge", "new gasket", "gasket vent gas ok".
func checked(c cursor) ([]kitchen.Part, cursor, bool) {
	if d, ok := c.phrase(checkedWords...); ok {
		parts, d, ok := partList(d)
		if e, more := d.parted().phrase(fineWords...); more && ok {
			d = e
		}
		return parts, d.over("today", "again", "on", "is on", "connected"), ok
	}
	parts, d, ok := partList(c)
	if !ok {
		return nil, c, false
	}
	d, fine := d.over("all", "both").phrase(fineWords...)
	return parts, d.over("today", "again", "now"), fine
}

// gaugeReads reads "gauge reads 1 low", "big pot gauge reads 2 psi high".
func gaugeReads(c cursor) (kitchen.Change, cursor, bool) {
	name, d, named := cookerRef(c.over("the", "our"))
	if !named {
		d, name = c.over("the", "our"), ""
	}
	d, _ = d.over("'s").mark(":,")
	d, ok := d.over("the").phrase("gauge reads", "gauge is", "gauge shows", "gauge's", "gauge", "dial reads", "dial is", "gauge is off by", "gauge reading is", "dial shows", "gauge is reading", "gauge reads about")
	if !ok {
		return nil, c, false
	}
	if e, right := d.phrase("right", "right again", "correct", "true", "spot on", "accurate", "exact", "correct again"); right {
		return kitchen.GaugeReads{Cooker: theCooker(name)}, e, true
	}
	p, d, ok := gauge(d.over("about", "around"))
	if !ok {
		return nil, c, false
	}
	d = d.over("too")
	low := unit.GaugeKPa(p)
	if e, fits := d.phrase("low", "too low", "under", "less", "short", "lower", "below"); fits {
		d = e
	} else if e, fits := d.phrase("high", "too high", "over", "too much", "more", "higher", "above"); fits {
		low, d = -p, e
	} else {
		return nil, c, false
	}
	if named = named && name != ""; !named {
		if w, e, ok := trailingRun(d, nil); ok && w.Run == 0 {
			name, d = w.Cooker, e
		}
	}
	return kitchen.GaugeReads{Cooker: theCooker(name), Low: low}, d, true
}

func gaugeReadsText(g kitchen.GaugeReads) string {
	s := ""
	if g.Cooker != "" {
		s = g.Cooker + " "
	}
	switch {
	case g.Low < 0:
		return s + "gauge reads " + pressureText(-g.Low) + " high"
	case g.Low > 0:
		return s + "gauge reads " + pressureText(g.Low) + " low"
	}
	return s + "gauge reads right"
}
