package phrase

import (
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// inoculum is what was said of a culture that is put on units.
type inoculum struct {
	name, species string
	from          kitchen.UnitRef
	route         kitchen.Route
	volume        unit.Litres
	// when is a day that stands behind the number of a culture without a word.
	when *Moment
	// sure is set by what only a culture is said with; a species alone isn't.
	sure bool
	// plates is true when pieces of a plate were said: agar, whatever grows on it.
	plates bool
	// read counts the things said.
	read int
}

// entry is what was said of the units.
func (k inoculum) entry() kitchen.Inoculated {
	e := kitchen.Inoculated{Culture: k.name, From: k.from, Species: k.species, Route: k.route, Volume: k.volume}
	if e.Culture == e.Species && e.From != (kitchen.UnitRef{}) {
		e.Culture = "" // it was taken of a unit, and no culture has that name
	}
	if e.Culture == "" && e.From == (kitchen.UnitRef{}) {
		e.Culture = e.Species
	}
	return e
}

// withWords lead to what was put on.
var withWords = []string{"with", "w", "using", "w /", "with the", "by", "from", "off", "out of", "w/"}

// eachWords say that an amount is for every unit.
var eachWords = []string{"each", "ea", "apiece", "per jar", "per bag", "per unit", "in each", "into each", "every", "every one", "each one", "in every one", "a piece", "a jar", "a bag", "for each", "on each"}

// cultureWords stand between the things said of a culture.
var cultureWords = []string{"some", "of", "the", "a", "an", "my", "our", "about", "abt", "ca", "grain", "culture", "mycelium", "with", "w", "using", "again", "good", "fresh", "old", "new", "from", "off"}

// inoculated takes what was put on: name, species, route and amount in any order.
// Where a culture must stand any name is taken for one.
func (c cursor) inoculated(must bool) (inoculum, cursor, bool) {
	var k inoculum
	d := c
	if e, with := d.phrase(withWords...); with {
		if e.word(-1) != "from" && e.word(-1) != "of" {
			d, must = e, true
		}
	}
	lead := d
	for k.read < maxSegments {
		e := d
		if k.read > 0 {
			e, _ = e.mark(",+/(-")
		}
		f, ok := k.piece(e, must) // "Old Faithful" can be a name
		if !ok {
			f, ok = k.piece(e.over(cultureWords...), must)
		}
		if !ok {
			break
		}
		d = f.over(eachWords...)
		if g, closed := d.mark(")"); closed {
			d = g
		}
	}
	if must && !d.settled() || must && k.read == 0 {
		if name, e, ok := lead.strangeCulture(); ok && e.settled() {
			k = inoculum{name: name, sure: true, read: 1}
			return k, e, true
		}
	}
	k.sure = k.sure || must
	return k, d, k.read > 0
}

// strangeCulture takes a culture of a name that nobody knows yet, as typed.
func (c cursor) strangeCulture() (string, cursor, bool) {
	d := c.over("the", "our", "my", "some", "a")
	e, ok := d.freeWords(mostOfCulture + 1)
	if !ok {
		return "", c, false
	}
	if w, isWord := d.token().(Word); !isWord || w.Class == Pronoun {
		return "", c, false
	}
	for k := d.i; k < e.i; k++ {
		if stageTalk[c.s.said[k]] {
			return "", c, false
		}
	}
	return c.s.loweredWords(d.i, e.i), e, true
}

// stageTalk are words that never stand in the name of a culture.
var stageTalk = set("is was are at in on to heat steam pressure zero done ready care love pleasure gloves mask for this last after before")

// piece takes one thing said of a culture.
func (k *inoculum) piece(c cursor, must bool) (cursor, bool) {
	name, end, known := c.amongOwn(c.s.names.Sources)
	species, sEnd, isSpecies := c.surelySpecies()
	if !isSpecies && (must || c.evidence()) {
		species, sEnd, isSpecies = weakSpecies().take(c)
	}
	switch {
	case known && end.i >= sEnd.i && k.name == "":
		k.name, k.sure = name, true
		if isSpecies && (end.i == sEnd.i || name == species) {
			k.species = species
		}
		k.read++
		return end, true
	case isSpecies && k.species == "" && c.pluralSpecies(sEnd):
		k.species = species
		k.read++
		return sEnd, true
	}
	if what, d, ok := c.numberedCulture(); ok && k.name == "" && len(what.more) == 0 && what.generation == 0 {
		k.name, k.when, k.sure = what.name, what.when, true
		k.read++
		return d, true
	}
	for _, read := range [...]func(*inoculum, cursor) (cursor, bool){(*inoculum).ofPlate, (*inoculum).amount, (*inoculum).source, (*inoculum).way} {
		if d, ok := read(k, c); ok {
			k.read++
			return d, true
		}
	}
	return c, false
}

// pluralSpecies reports whether words for a species stand for a culture: not "oysters
// please".
func (c cursor) pluralSpecies(end cursor) bool {
	_, please := end.phrase("please", "pls", "plz")
	return !please || end.word(-1)[len(end.word(-1))-1] != 's'
}

// evidence reports whether the word at hand is said of a culture: what stands behind it
// tells.
func (c cursor) evidence() bool {
	d := c.use(1)
	switch t := d.token().(type) {
	case RouteWord:
		return true
	case Quantity:
		_, ok := t.sense(Volume)
		return ok
	case Word:
		_, _, _, _, noun := d.cultureNoun()
		return noun && t.Class != Filler
	}
	return false
}

// ofPlate reads "quarter plate each", "half a plate", "2 wedges": on grain from agar.
func (k *inoculum) ofPlate(c cursor) (cursor, bool) {
	d := c
	if _, e, ok := d.partWord(); ok {
		d = e
	} else if n, ok := d.token().(Number); ok && n.Value > 0 {
		d = d.use(1)
	} else if d.word(0) != "wedge" && d.word(0) != "wedges" {
		return c, false
	}
	e, ok := d.over("a", "of a", "of the", "of an", "agar", "small", "big").phrase("plate", "plates", "wedge", "wedges", "dish", "wedge of agar", "wedges of agar", "square", "squares", "chunk", "chunks", "piece of agar", "pieces of agar", "wedges each", "petri", "petri dish")
	if _, numbered := e.token().(Number); !ok || numbered || k.route != 0 && k.route != kitchen.Agar {
		return c, false
	}
	k.route, k.plates, k.sure = kitchen.Agar, true, true
	return e, true
}

func (k *inoculum) amount(c cursor) (cursor, bool) {
	v, d, ok := c.quantity(Volume)
	if q, is := c.token().(Quantity); is {
		if _, warm := q.sense(Temperature); warm {
			return c, false // "50C" on a jar is no fifty cups
		}
	}
	if !ok || k.volume != 0 || v.Value <= 0 {
		return c, false
	}
	k.volume, k.sure = unit.Litres(v.Value), true
	return d, true
}

// source reads "from 9.3", "of #9.3".
func (k *inoculum) source(c cursor) (cursor, bool) {
	d := c
	if e, ok := c.phrase("from", "of", "out of", "off", "from unit", "from bag", "from jar"); ok {
		d = e
	} else if w := c.word(-1); !isRoute(c.ahead(-1)) && w != "of" && w != "with" && w != "w" && w != "using" {
		return c, false
	}
	u, d, ok := d.oneUnit()
	if !ok || k.from != (kitchen.UnitRef{}) {
		return c, false
	}
	k.from, k.sure = u, true
	return d, true
}

func (k *inoculum) way(c cursor) (cursor, bool) {
	r, ok := c.token().(RouteWord)
	if !ok || k.route != 0 && k.route != r.Route {
		return c, false
	}
	k.route = r.Route
	k.sure = k.sure || k.species != "" || k.name != ""
	return c.use(1), true
}

func isRoute(t Token) bool {
	_, ok := t.(RouteWord)
	return ok
}
