package phrase

import (
	"strings"
	"sync"
)

// settled reports whether something said can end here: nothing goes on with it.
func (c cursor) settled() bool {
	d := c.over(tailWords...)
	switch t := d.token().(type) {
	case nil, Mark, RunRef, Tag, When:
		return true
	case Number:
		return t.Ref != nil || d.word(0)[0] == '.'
	case Word:
		switch t.Text {
		case "and", "then", "but", "also", "plus", "so", "n", "because", "cos", "cuz":
			return true
		}
	}
	_, _, timed := d.told()
	return timed
}

// namesUnits reports whether units are named here that can be nothing else.
func (c cursor) namesUnits() bool {
	switch t := c.token().(type) {
	case RunRef, Tag:
		return true
	case Number:
		return t.Ref != nil || c.word(0)[0] == '.'
	}
	return false
}

// tellsUnits says quickly whether something told of units can begin here.
func (c cursor) tellsUnits() bool {
	switch t := c.token().(type) {
	case RunRef, VesselWord, Range, Tag, RouteWord, GrainWord:
		return true
	case Unclear:
		return true
	case Number:
		return !t.Times
	case Quantity:
		_, volume := t.sense(Volume)
		return volume
	case Percent:
		return true
	case When:
		_, _, nth := inTurn(c, Meant{}) // "the 2nd jar of 12"
		return nth
	}
	if c.done() {
		return false
	}
	if unitStarts()[c.word(0)] {
		return true
	}
	_, _, own := c.amongOwn(c.s.names.Units)
	_, _, source := c.amongOwn(c.s.names.Sources)
	return own || source
}

// unitStarts are the words that something told of units can begin with.
var unitStarts = sync.OnceValue(func() map[string]bool {
	starts := set("all the these those our my both everything whole units unit run load batch rest others everyone bags jars grain lid lids filter filters it them they that this in on with for petri quarter half third wedge wedges first second third fourth fifth 1st 2nd 3rd 4th 5th")
	for w := range unitVerbs() {
		starts[w] = true
	}
	for w := range signsShown() {
		starts[w] = true
	}
	for w := range signsInside() {
		starts[w] = true
	}
	for w := range simpleWords() {
		starts[w] = true
	}
	for w := range toneWords() {
		starts[w] = true
	}
	for w := range speciesTable() {
		starts[w] = true
	}
	for w := range weakSpecies() {
		starts[w] = true
	}
	for _, n := range cultureNouns {
		for _, w := range append(n.words[:len(n.words):len(n.words)], n.plurals...) {
			first, _, _ := strings.Cut(w, " ")
			starts[first] = true
		}
	}
	for w := range stateWords {
		starts[w] = true
	}
	return starts
})
