package phrase

import (
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

var chooseGrammar = grammar{
	kind:     KindChoose,
	examples: []string{"the first", "second", "1", "moisture", "rye", "quart", "500 ml"},
	match:    matchChoose,
}

// String prints the choice so that it parses back.
func (k Choose) String() string {
	if k.Text != "" {
		return k.Text
	}
	if k.Place >= 1 && k.Place <= len(ordinals) {
		return "the " + ordinals[k.Place-1][0]
	}
	return plain(float64(k.Place))
}

// answers are words that can only answer a question.
var answers = set(`moisture ratio water weight volume each together pot jar jars bag bags quart pint litre liter gallon us imperial celsius
	fahrenheit c f am pm morning evening yes dry wet fluid brim hydration`)

// matchChoose reads what is an answer and nothing else: it must be the whole of
// the message.
func matchChoose(c cursor) (Intent, cursor, bool) {
	if c.i > 0 && c.over("the", "a").i == 0 {
		return nil, c, false
	}
	end := c
	end.i = len(c.s.toks)
	end.used = end.i - c.i
	if place, ok := placeOf(c); ok {
		k := Choose{Place: place}
		if _, number := c.over("the", "number", "no", "option").token().(Number); number {
			k.Text = plain(float64(place))
		}
		return k, end, true
	}
	d := c.over("the", "a", "in", "by")
	switch t := d.token().(type) {
	case GrainWord, RouteWord, Percent:
		d = d.use(1)
	case VesselWord:
		if !t.Container.Sized() {
			return nil, c, false // "bags" is the beginning of something
		}
		d = d.use(1)
	case Quantity:
		if d.i > c.i {
			return nil, c, false
		}
		d = d.use(1)
		if v, ok := d.token().(VesselWord); ok {
			if m, mass := t.sense(Mass); v.Container.Sized() || mass && v.Container.Vessel == kitchen.Jar && unit.Grams(m.Value) > heaviestJar {
				return nil, c, false
			}
			d = d.use(1)
		}
	case Number:
		if place, ok := placeOf(d); ok {
			return Choose{Place: place, Text: plain(float64(place))}, end, true
		}
		d = d.use(1)
	case Word:
		if !answers[t.Text] && t.Class != Measuring {
			return nil, c, false
		}
		d = d.use(1).maybe("ratio", "pot", "jars", "jar", "per grain", "gallon", "litre", "liter", "pint", "volume")
	default:
		return nil, c, false
	}
	stop := d.i
	d = d.over("one", "ones", "please", "pls").parted()
	if !d.done() || c.i != 0 {
		return nil, c, false
	}
	from := c.over("the", "a", "in", "by").i
	return Choose{Text: strings.Join(strings.Fields(c.s.typed(from, stop)), " ")}, end, true
}
