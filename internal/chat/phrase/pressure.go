package phrase

import (
	"math"
	"slices"
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// gauge reads what a gauge shows: "15 psi", "1 bar", or a bare number where one
// can be nothing else, which counts pounds to the square inch.
func gauge(c cursor) (unit.GaugeKPa, cursor, bool) {
	if p, d, ok := c.quantity(Pressure); ok && p.Value >= 0 {
		return unit.GaugeKPa(p.Value), d, true
	}
	if n, ok := c.token().(Number); ok && (!n.Word || n.Whole && n.Value > 1) && !n.Times && n.Value >= 0 && n.Value <= mostBarePSI {
		return unit.PSI(n.Value), c.use(1), true
	}
	if r, ok := c.token().(Range); ok && (r.Senses == nil || r.Senses[0].Dim == Pressure) {
		d := c.use(1)
		d.near = &Near{Trouble: Bound, Missed: c.s.typed(c.i, c.i+1)}
		if r.Senses != nil {
			return unit.GaugeKPa(r.Lo * r.Senses[0].Value), d, true
		}
		return unit.PSI(r.Lo), d, true
	}
	return 0, c, false
}

const (
	// mostBarePSI is the highest figure without a unit that can be a gauge's.
	mostBarePSI = 30
	// leastCooking is what a number must be to be the pressure and not a
	// temperature or a time: "at 15", and no cooker cooks above mostCooking.
	leastCooking, mostCooking = 5, 16
)

var fallingWords = []string{
	"falling", "and falling", "and dropping", "dropping", "and going down", "going down", "and sinking", "sinking", "and still falling", "still falling",
	"and still dropping", "still dropping", "but falling", "but dropping", "falling fast", "and falling fast",
}

// gaugeTold reads "at 15", "hit 15 psi", "back at 15", "gauge says 14", "at 8 psi
// and falling".
func gaugeTold(c cursor, t telling) (event, cursor, bool) {
	d, at := c.phrase(gaugeAt...)
	e, back := c.phrase(gaugeBack...)
	f, says := c.phrase(gaugeSays...)
	switch {
	case back:
		d = e
	case says && f.i > d.i:
		d, at = f, false
	}
	if p, d, ok := backUpTo(c); ok {
		return event{entry: kitchen.PressureBack{Gauge: p}}, d, true
	}
	bare := !back && !says && !at
	if e, ok := c.phrase("it's", "its"); ok && !at && !back && !says {
		d = e
	}
	_, only := d.phrase("only", "just") // "its only 13": what is too little is a pressure
	only = only && !at && slices.Contains([]string{"it's", "its", "is"}, d.word(-1))
	if r, ok := d.token().(Range); ok && math.IsInf(r.Lo, -1) && strings.HasPrefix(d.word(0), "up") {
		return upTo(r, d)
	}
	p, d, ok := gauge(d.over("about", "abt", "around", "roughly", "just", "nearly", "only"))
	number := unitless(d.ahead(-1))
	if n, bare := d.ahead(-1).(Number); bare && n.Ref != nil && !says && !back {
		return event{}, c, false // "at 12.3" may be a unit of run 12
	}
	n := p.PSI()
	most := float64(mostCooking)
	if at && t.which == (Which{}) && t.units == nil { // "12 at 24.5" is a temperature
		most = mostBarePSI // where a cooker is hot, "at 20" is too much of it
	}
	if !ok || bare && number && !only || number && !says && (n < leastCooking || n > most) {
		return event{}, c, false
	}
	ev := event{loose: number || bare}
	falls, lost := d.parted().phrase(fallingWords...)
	switch {
	case lost:
		ev, d = event{entry: kitchen.PressureLost{Gauge: &p}}, falls
	case p == 0:
		ev.entry = kitchen.AtZero{}
	case back:
		ev.entry = kitchen.PressureBack{Gauge: p}
	case at:
		ev.entry = kitchen.AtPressure{Gauge: p}
	case bare && d.word(0) == "reached":
		ev.entry, d = kitchen.AtPressure{Gauge: p}, d.use(1)
	default:
		ev = event{entry: kitchen.GaugeRead{Gauge: p}, loose: bare}
	}
	return ev, d.maybe("psi", "pounds", "on the gauge", "on the dial"), true
}

// dipTold reads "dropped to 11 for abt 4 min its back now", "lost pressure for 4
// min", "fell to 8 and falling".
func dipTold(c cursor, t telling) (event, cursor, bool) {
	d, to := c.phrase(dipTo...)
	var dip kitchen.Dipped
	if to {
		p, e, ok := gauge(d.over("about", "abt", "around", "roughly", "just", "nearly", "only", "maybe"))
		if !ok {
			return event{}, c, false
		}
		dip.To, d = &p, e
		if f, lost := d.parted().phrase(fallingWords...); lost {
			return event{entry: kitchen.PressureLost{Gauge: &p}}, f, true
		}
	} else if d, to = c.phrase(dipAlone...); !to {
		return event{}, c, false
	}
	toldFor := d.length("for") > 0
	e := d.over("for", "about", "abt", "around", "roughly", "maybe", "some", "only", "just", "a good")
	if e.i > d.i {
		_, bare := e.token().(Number)
		if lasted, f, ok := e.span(); ok && (toldFor || !bare) {
			dip.For, d = lasted, f
		}
	}
	if dip.To == nil && dip.For == 0 {
		return event{}, c, false
	}
	if dip.For != 0 {
		d = recovered(d)
	}
	return event{entry: dip}, d, true
}

// recovered takes "its back now", "back at 15" behind a dip that is over: that it
// came back is what its length says.
func recovered(c cursor) cursor {
	d, ok := c.parted().over("it's", "its", "but", "now", "then", "it", "is", "and", "was").phrase("back", "back now", "back up", "back up now", "up again",
		"back again", "recovered", "came back", "back to normal", "fine now", "came back up")
	if !ok {
		return c
	}
	if e, at := d.phrase("at", "to"); at {
		if _, f, ok := gauge(e); ok && f.near == nil {
			d = f
		} else if f, ok := e.phrase("pressure", "full pressure"); ok {
			d = f
		} else {
			return c
		}
	}
	return d.over("by itself", "on its own", "now", "again")
}

// backUpTo reads "back up to 15", whose end has been read as a bound.
func backUpTo(c cursor) (unit.GaugeKPa, cursor, bool) {
	d, back := c.phrase("back", "is back", "came back", "pressure back", "pressure is back", "went back", "comes back")
	r, bound := d.token().(Range)
	if !back || !bound || !math.IsInf(r.Lo, -1) || !strings.HasPrefix(d.word(0), "up") {
		return 0, c, false
	}
	ev, d, ok := upTo(r, d)
	e, _ := ev.entry.(kitchen.AtPressure)
	return e.Gauge, d, ok
}

// GaugeFigure takes a text of nothing but one bare figure for what a gauge shows. It is
// for a text that answers the question for it: nothing else makes a figure alone that.
func GaugeFigure(text string, names Names) (unit.GaugeKPa, bool) {
	c := cursor{s: read(text, names)}
	c = c.parted().over("it's", "its", "about", "now", "just", "ok", "yes")
	n, d, ok := c.number()
	return unit.PSI(n), ok && unitless(c.token()) && !c.token().(Number).Word && n >= leastCooking && n <= mostBarePSI && d.over("now").parted().done()
}

// unitless reports whether a figure was said without its unit.
func unitless(t Token) bool {
	switch t := t.(type) {
	case Number:
		return true
	case Range:
		return t.Senses == nil
	}
	return false
}

// gaugeAt are words before the pressure that a cooker has reached.
var gaugeAt = []string{
	"at", "hit", "reached", "up to", "made", "up at", "got to", "hits", "at about", "reaches", "at a pressure of", "came up to", "pressure at", "holding at",
	"holding", "pressure hit", "pressure reached", "hitting", "pressure is at", "gauge hit", "gauge reached", "steady at", "stable at",
}

// gaugeBack are words before the pressure that a cooker is back at.
var gaugeBack = []string{
	"back at", "back to", "back up at", "back up to", "is back at", "back on", "back above", "pressure back at", "pressure is back at", "pressure back to",
	"pressure is back to",
}

// gaugeSays are words before what a gauge shows.
var gaugeSays = []string{
	"gauge says", "gauge shows", "gauge at", "gauge reads", "gauge is at", "gauge", "gauge is", "gauge reading", "pressure", "pressure is", "dial says",
	"dial shows", "dial reads", "pressure now", "reading", "gauge on", "gauge now", "dial at", "the gauge says", "gauge still says", "showing", "needle at", "needle on",
}

// dipTo are words before the pressure that a cooker fell to.
var dipTo = []string{
	"dropped to", "fell to", "down to", "dipped to", "sank to", "went down to", "pressure dropped to", "was down to", "drops to", "dropped down to",
	"pressure fell to", "pressure went down to", "pressure down to", "pressure was down to", "down at", "was at", "pressure was at", "dipped down to", "gauge dropped to",
	"gauge fell to", "pressure is down to",
}

// dipAlone are words before the time that the pressure was down.
var dipAlone = []string{
	"dropped", "pressure dropped", "dipped", "pressure was down", "lost pressure", "lost it", "pressure dipped", "pressure fell", "was down", "under pressure loss",
	"pressure was gone", "pressure was off",
}

// upTo reads "up to 15": as a bound it has been read.
func upTo(r Range, c cursor) (event, cursor, bool) {
	p := unit.PSI(r.Hi)
	switch {
	case r.Senses != nil && r.Senses[0].Dim == Pressure:
		p = unit.GaugeKPa(r.Hi * r.Senses[0].Value)
	case r.Senses != nil || r.Hi < leastCooking || r.Hi > mostCooking:
		return event{}, c, false
	}
	return event{entry: kitchen.AtPressure{Gauge: p}, loose: r.Senses == nil}, c.use(1), true
}
