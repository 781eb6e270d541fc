package phrase

import (
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// Remeasured takes a text for the right figure of a reading that was told wrong just
// now, "no, 44C", and gives the sentence that tells it. A figure alone is of the scale
// in which the wrong one was said.
func Remeasured(text string, names Names, run kitchen.RunNo, was unit.Celsius) (string, bool) {
	c := cursor{s: read(text, names)}
	d, led := c.phrase("no", "nope", "sorry", "oops", "i meant", "i mean", "meant", "make it", "make that", "actually", "correction", "rather", "should be",
		"it should be", "that should be", "i said", "wait no", "no wait", "change it to", "change that to", "not")
	if !led {
		return "", false
	}
	d = d.mended()
	end := d
	for !end.done() && end.word(0) != "not" && end.word(0) != "instead" {
		end = end.use(1)
	}
	if n, ok := d.token().(Number); ok && warmish(n) && d.use(1).over("degrees", "please", "now").parted().i >= end.i {
		scale := " C"
		if strings.HasSuffix(temperatureText(was), "F") {
			scale = " F"
		}
		return run.String() + " is " + plain(n.Value) + scale, true
	}
	p := Parse(d.s.typed(d.i, end.i), names)
	if len(p.Intents) != 1 {
		return "", false
	}
	tell, ok := p.Intents[0].(Tell)
	if !ok || !tell.readings() {
		return "", false
	}
	if tell.Which == (Which{}) {
		tell.Which.Run = run
	}
	return tell.String(), true
}

// mended goes past what stands between "no" and what is right.
func (c cursor) mended() cursor {
	for {
		d := c.parted().over("i", "meant", "mean", "it's", "its", "it", "was", "that", "is", "only", "rather", "make", "sorry", "no", "to", "should be", "read", "reads")
		if e, ok := d.mark("-"); ok {
			d = e
		}
		if d.i == c.i {
			return c
		}
		c = d
	}
}

// readings reports whether all that is told is what thermometers showed.
func (t Tell) readings() bool {
	for _, e := range t.Entries {
		if _, ok := e.(kitchen.TempRead); !ok {
			return false
		}
	}
	return len(t.Entries) > 0
}
