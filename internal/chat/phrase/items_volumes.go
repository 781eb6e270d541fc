package phrase

import (
	"math"
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// volume takes the size of a jar, or count and size in one: "6 quarts".
func (it *items) volume(q Quantity, s Sense) bool {
	_, jars := it.c.ahead(1).(VesselWord)
	if n, half := math.Modf(q.Number); q.Mixed && jars && !it.cur.counted && half > 0 && n >= 2 {
		// "3 1/2 gallon jars": nobody has a jar of three and a half gallons.
		it.cur.item.Count, it.cur.counted = int(n), true
		it.cur.item.Container = kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(it.oneOf(s) * half)}
		it.c = it.c.use(1)
		return true
	}
	if w := it.c.word(1); w == "water" && it.cur.empty() {
		return false // to drink, or for the pot
	}
	if !jarUnit(s.Unit) {
		v, _ := it.c.ahead(1).(VesselWord)
		switch {
		case !it.cur.counted || it.cur.sized():
			return false
		case it.cur.item.Container.Vessel == 0 && v.Container == (kitchen.Container{Vessel: kitchen.Jar}):
			it.cur.item.Container = kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(s.Value)}
			it.c = it.c.use(1)
			return true
		case it.cur.item.Container.Vessel == kitchen.Bag:
			return it.stop(WrongUnit, 1)
		case it.cur.item.Container.Vessel == kitchen.Jar:
			return it.sizeBehind(q, s)
		}
		return false
	}
	cur := &it.cur
	switch {
	case cur.counted && cur.item.Container.Volume > 0 && (it.total() || it.aside() || it.eachAhead() && !it.counts(q)):
		if !cur.makes(q, Volume) && !it.brims(q) {
			return it.stop(LeftOver, 1)
		}
	case cur.item.Container.Vessel == kitchen.Bag && cur.counted, cur.sized():
		it.close()
		return it.volume(q, s)
	case cur.counted && cur.item.Container.Vessel == 0 && it.several(q, s):
		cur.item.Container = kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(it.oneOf(s))}
		return it.stop(LeftOver, 1) // "6 7 pints": how many?
	case cur.counted && cur.item.Container.Vessel == kitchen.Jar:
		return it.sizeBehind(q, s)
	case cur.counted:
		cur.item.Container = kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(s.Value)}
	default:
		it.fold(q, s)
	}
	it.c = it.c.use(1)
	return true
}

// aside reports whether the amount at hand stands in brackets: it says once more
// what was said, "4 quart jars (946 ml)".
func (it *items) aside() bool {
	_, open := it.c.back("about", "around", "approx", "roughly").mark("(")
	return open
}

// counts reports whether a quantity can be so many jars.
func (it *items) counts(q Quantity) bool {
	n, ok := whole(q.Number)
	return ok && n > 1
}

// several reports whether a count and a size can stand in the quantity at hand:
// "2 quarts" are two jars, "2-quart" is a size, and so is "2 l".
func (c cursor) several() bool {
	q, ok := c.token().(Quantity)
	v, isVolume := q.sense(Volume)
	if n, isWhole := whole(q.Number); !ok || !isVolume || !isWhole || n < 2 || strings.Contains(c.word(0), "-") {
		return false
	}
	_, jars := c.ahead(1).(VesselWord)
	switch v.Unit {
	case "quart", "pint", "gal":
		return true
	case "l":
		return !jars && q.Number > largestLitres
	}
	return false
}

// hyphenated reports whether a hyphen binds the quantity at hand, so that it is a
// size: "2-quart jars".
func (it *items) hyphenated(q Quantity) bool {
	n, ok := whole(q.Number)
	_, jars := it.c.ahead(1).(VesselWord)
	return ok && n > 1 && jars && strings.Contains(it.c.word(0), "-")
}

// largestLitres is the largest jar that is named by its litres, without the word
// jar: "4 2l".
const largestLitres = 5

// several reports whether a quantity behind a count is rather a count itself, or
// parted from it: "6 7 pints", "7+1 quarts".
func (it *items) several(q Quantity, s Sense) bool {
	if it.parted {
		return true
	}
	_, jars := it.c.ahead(1).(VesselWord)
	n, isWhole := whole(q.Number)
	switch s.Unit {
	case "ml", "cl", "dl":
		return false
	case "l":
		return !jars && isWhole && n > largestLitres
	}
	return !jars && isWhole && n > 1
}

// fold reads "6 quarts" as six jars of a quart and "500 ml" as a size.
func (it *items) fold(q Quantity, s Sense) {
	cur := &it.cur
	cur.item.Container = kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(s.Value)}
	if n, ok := whole(q.Number); ok && s.Unit != "ml" && s.Unit != "cl" && s.Unit != "dl" && !it.hyphenated(q) {
		cur.item.Count, cur.counted = n, true
		cur.item.Container.Volume = unit.Litres(it.oneOf(s))
		cur.folded = &q
	}
}

// oneOf is the size of one of a quantity's units: a quart for "6 quarts".
func (it *items) oneOf(s Sense) float64 {
	for i := range measures {
		for _, m := range measures[i].means {
			switch {
			case m.unit != s.Unit || m.dim != s.Dim:
			case m.imperial != nil && it.c.s.names.Quarts == kitchen.Imperial:
				return m.imperial(1)
			default:
				return m.one(1)
			}
		}
	}
	panic("phrase: no unit " + s.Unit)
}

// measured takes a jar whose measure is said for this order alone, whatever the
// collective's is: "4 imperial quarts", "4 jars, 1 US pint each".
func (it *items) measured() bool {
	n, ok := it.c.token().(Number)
	at := 0
	if ok {
		at = 1
	}
	var imperial bool
	switch it.c.word(at) {
	case "imperial", "uk", "british":
		imperial = true
	case "us", "american", "u.s.":
	default:
		return false
	}
	v, sized := it.c.ahead(at + 1).(VesselWord)
	count, isWhole := whole(n.Value)
	size := inMeasure(v.Container.Volume, imperial)
	cur := &it.cur
	jars := cur.counted && !cur.sized() && cur.item.Container.Vessel == kitchen.Jar
	switch {
	case !sized || size == 0 || ok && (!isWhole || count < 1):
		return false
	case jars && (!ok || count == 1):
	case jars || !ok && !cur.counted:
		return false
	case ok:
		if cur.counted || cur.sized() {
			it.close()
		}
		cur.item.Count, cur.counted = count, true
	}
	cur.item.Container = kitchen.Container{Vessel: kitchen.Jar, Volume: size}
	it.c = it.c.use(at + 2)
	return true
}

// sizeBehind takes a size that stands behind the jars. "2 jars (about 4 cups)"
// can mean each or all of them.
func (it *items) sizeBehind(q Quantity, s Sense) bool {
	n, ok := whole(q.Number)
	several := ok && n >= 2 && s.Unit != "ml" && it.c.word(-1) != "of" && !it.eachAhead()
	if it.cur.item.Count != 1 && (several || it.total()) {
		it.cur.behind = &q
	}
	it.cur.item.Container = kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(s.Value)}
	it.c = it.c.use(1)
	return true
}

// jarUnit reports whether jars are named by the unit.
func jarUnit(u string) bool {
	switch u {
	case "cup", "floz", "fl oz", "tsp", "tbsp":
		return false
	}
	return true
}
