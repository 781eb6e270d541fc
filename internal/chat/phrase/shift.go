package phrase

import (
	"strings"

	"ryebell/internal/kitchen"
)

var shiftGrammar = grammar{
	kind:     KindShift,
	examples: []string{"at pressure was 10 min earlier", "it was 10 min earlier", "steam was at 14:05", "no, at 14:05", "#12 heat off was 20 min ago", "i meant 14:05", "at 15 was 14:05"},
	match:    matchShift,
}

// String prints the correction so that it parses back.
func (s ShiftTime) String() string {
	what := "it"
	for _, all := range [...][]told{stages[:], preparing[:]} {
		for _, t := range all {
			if t.kind == s.Kind && what == "it" {
				what = firstOf(t)
			}
		}
	}
	for _, k := range shiftable {
		if k.kind == s.Kind {
			what = k.words[0]
		}
	}
	to := s.To.String()
	if s.FromThere {
		to = spoken(s.To.Shift.Abs()) + " later"
		if s.To.Shift < 0 {
			to = strings.TrimSuffix(to, "later") + "earlier"
		}
	}
	return s.Which.before(nil) + what + " was " + to
}

// shiftable are the names of what was told with a figure.
var shiftable = [...]struct {
	kind  kitchen.Kind
	words []string
}{
	{kitchen.KindTempRead, []string{"the reading", "reading", "that reading", "the temperature", "the measurement"}},
	{kitchen.KindGaugeRead, []string{"the gauge", "gauge reading", "the gauge reading"}},
	{kitchen.KindDipped, []string{"the dip", "the drop", "the pressure drop"}},
	{kitchen.KindPrepBegun, []string{"the soak", "the simmer", "soak"}},
}

// matchShift reads "at pressure was 10 min earlier", "it was at 14:05", "no, 14:05",
// "i meant 14:05".
func matchShift(c cursor) (Intent, cursor, bool) {
	if !c.s.timed {
		return nil, c, false
	}
	var s ShiftTime
	d := c.over("sorry", "no", "actually", "oops", "correction", "ah", "oh", "wait", "i meant", "i mean", "meant", "i meant to say", "i meant to say at", "meant to say")
	led := d.i > c.i
	d = d.parted().over("the")
	w, units, d := leadingRun(d)
	if units != nil {
		return nil, c, false
	}
	s.Which = w
	d, _ = d.mark(":")
	e, named := d, false
	if d.tells() {
		s.Kind, e, named = toldBefore(d)
	}
	for _, k := range shiftable {
		if f, ok := d.phrase(k.words...); ok && f.i > e.i {
			s.Kind, e, named = k.kind, f, true
		}
	}
	if !named {
		e, named = d.phrase("it", "that", "this", "make it", "make that", "it really")
	}
	was := e
	e = e.over("was", "were", "actually", "really", "already", "happened", "began", "started", "must have been", "should be", "should have been", "about", "around", "since", "came")
	m, f, ok := e.when()
	if !ok || m.Shift > 0 && !later(e) || !named && !led {
		return nil, c, false
	}
	if s.Kind != 0 && e.i == was.i && !later(e) && !led {
		return nil, c, false // "steam at 14:05" tells it for the first time
	}
	if s.Kind == 0 && !led && e.i == was.i && d.word(0) != "make" {
		return nil, c, false
	}
	s.To, s.FromThere = m, later(e) && m.Shift != 0
	f = f.over("sorry", "already", "actually", "not now", "really")
	f.plain = s.Kind != 0 || s.FromThere || s.Which != (Which{})
	return s, f, true
}

// toldBefore reads what was told of a run, so that its time can be corrected: a step
// in words, or "at 15", which was behind it.
func toldBefore(c cursor) (kitchen.Kind, cursor, bool) {
	t, d, _, named := stage(c)
	if ev, e, ok := gaugeTold(c, telling{}); ok && e.i > d.i && e.length("was") > 0 {
		return kitchen.KindOf(ev.entry), e, true
	}
	return t.kind, d, named
}

// later reports whether the time at hand counts from another: "10 min earlier".
func later(c cursor) bool {
	w := c.word(0)
	return strings.HasSuffix(w, "earlier") || strings.HasSuffix(w, "later") || strings.HasSuffix(w, "before")
}
