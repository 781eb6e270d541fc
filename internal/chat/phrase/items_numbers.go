package phrase

import (
	"math"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// number takes a bare number: a count, or a ratio.
func (it *items) number(n Number) bool {
	if it.ratio(n) {
		return true
	}
	article := n.Word && n.Value == 1
	if article && !it.opens(1) {
		it.c = it.c.skip(1)
		return true
	}
	if !n.Whole {
		if it.opens(1) || it.cur.item.Container.Vessel != 0 {
			return it.stop(NotWhole, 1)
		}
		return false
	}
	count, ok := whole(n.Value)
	if !ok {
		return false
	}
	if it.cur.counted && it.cur.item.Container.Vessel != 0 && !it.cur.sized() && it.opensSized() && it.eachAhead() {
		if count != 1 {
			return it.stop(LeftOver, 2)
		}
		it.c = it.c.skip(1) // "4 jars, 1 half gallon each"
		return true
	}
	if it.sharedOut() {
		it.cur.behind = it.cur.amount
	}
	if it.cur.folded != nil && !it.opens(1) && !(n.Times && it.jarsBefore()) {
		return it.stop(LeftOver, 1) // "3 quarts lc in 5", "7 quarts x 2"
	}
	if it.cur.counted && it.cur.folded == nil || it.cur.folded != nil && !n.Times && it.opens(1) {
		if it.cur.item.Container.Vessel == 0 && it.cur.amount == nil {
			return false // two counts in a row
		}
		if !it.opens(1) {
			return it.stop(LeftOver, 1) // "3 bags 5 agar": of what?
		}
		it.close()
	}
	if it.parted && it.cur.amount != nil && !it.cur.counted && it.cur.item.Container.Vessel == 0 && it.opensSized() {
		it.close() // an amount of loose grain stood before
	}
	it.unfold()
	it.cur.item.Count, it.cur.counted = count, true
	it.c = it.c.use(1)
	return true
}

// sharedOut reports whether the amount before is for as many containers as the
// number at hand says: "10 lb rye in 2 bags" can be the grain of each.
func (it *items) sharedOut() bool {
	if it.cur.amount == nil || it.cur.counted || it.cur.item.Container.Vessel != 0 {
		return false
	}
	switch it.c.word(-1) {
	case "in", "into", "for", "between", "among", "over", "across", "to", "makes", "make", "on":
		_, vessel := it.c.ahead(1).(VesselWord)
		return vessel
	}
	return false
}

// jarsBefore reports whether the size of the item at hand was said of jars:
// "2 quart jars", not "2 quarts".
func (it *items) jarsBefore() bool {
	for n := -1; n >= it.cur.from-it.c.i; n-- {
		if _, ok := it.c.ahead(n).(VesselWord); ok {
			return true
		}
	}
	return false
}

// opens reports whether a container or its size stands n places on, filler
// aside.
func (it *items) opens(n int) bool {
	for ; n < 5; n++ {
		switch t := it.c.ahead(n).(type) {
		case VesselWord, GrainWord:
			return true
		case Quantity:
			_, mass := t.sense(Mass)
			_, volume := t.sense(Volume)
			return mass || volume
		case Word:
			if t.Class != Filler && t.Text != "x" && t.Text != "of" && t.Text != "small" && t.Text != "big" && t.Text != "large" {
				return false
			}
		case Mark:
			if t.Rune != '-' {
				return false
			}
		default:
			return false
		}
	}
	return false
}

// opensSized reports whether the size of a container follows the count at hand.
func (it *items) opensSized() bool {
	switch t := it.c.ahead(1).(type) {
	case Quantity:
		return true
	case VesselWord:
		return t.Container.Sized()
	}
	return false
}

// unfold gives back the size to a quantity that was taken for count and size.
func (it *items) unfold() {
	if q := it.cur.folded; q != nil {
		v, _ := q.sense(Volume)
		it.cur.item.Container.Volume = unit.Litres(v.Value)
		it.cur.folded = nil
	}
}

// ratio takes "ratio 0.44", "0.44 water", "at 0.44".
func (it *items) ratio(n Number) bool {
	if n.Whole || n.Value <= 0 || n.Value >= 2 {
		return false
	}
	before, after := it.c.word(-1), it.c.word(1)
	if before == "ratio" || before == "water" || after == "ratio" || after == "water" || before == "at" && !it.opens(1) {
		it.fresh(it.cur.item.Ratio != 0)
		it.cur.item.Ratio = unit.Ratio(n.Value)
		it.c = it.c.use(1)
		return true
	}
	return false
}

// percent takes gypsum, moisture or a ratio by the word beside it.
func (it *items) percent(p Percent) bool {
	share := unit.Percent(p.Value)
	c := it.c
	before, after := wordBeside(c, -1), wordBeside(c, 1)
	water := before == "water" && !isRatio(c.word(1)) || after == "water" && c.word(2) != "ratio" // of the whole, or of the grain
	it.c = it.c.use(1)
	switch {
	case isGypsum(before) || isGypsum(after):
		it.cur.item.Gypsum = share
	case isMoist(before) || isMoist(after):
		it.cur.item.Moisture, it.cur.item.Parched = share, share <= 0
	case !water && (isRatio(before) || isRatio(after)):
		it.cur.item.Ratio, it.cur.item.Parched = unit.Ratio(share), share <= 0
	default:
		it.cur.share = &p
		return true
	}
	return true
}

// wordBeside is the nearest word in a direction that isn't filler.
func wordBeside(c cursor, step int) string {
	for n := step; n >= -3 && n <= 3; n += step {
		w := c.word(n)
		switch w {
		case "at", "of", "with", "w", "w/", "the", "to", "a", "is", "for", "about", "=":
			continue
		}
		return w
	}
	return ""
}

func isGypsum(w string) bool { return w == "gypsum" }

func isMoist(w string) bool {
	return w == "moisture" || w == "moist" || w == "humidity" || w == "mc"
}

func isRatio(w string) bool { return w == "ratio" || w == "water" || w == "hydration" }

// smallestJar keeps a dose of culture from being taken for a jar.
const smallestJar unit.Litres = 0.05

// quantity takes a mass or a volume; other things have no place in an order.
func (it *items) quantity(q Quantity) bool {
	volume, isVolume := q.sense(Volume)
	_, isMass := q.sense(Mass)
	switch {
	case q.Number <= 0 && isVolume && jarUnit(volume.Unit) && it.cur.empty():
		it.fold(q, volume)
		it.c = it.c.use(1)
		return it.cur.counted
	case q.Number <= 0 && isMass && (!it.cur.empty() || it.restIsKitchen(1)):
		return it.stop(LeftOver, 1)
	case q.Number <= 0, isVolume && !isMass && unit.Litres(volume.Value) < smallestJar:
		return false
	case isVolume && !isMass:
		return it.volume(q, volume)
	case isMass:
		return it.mass(q)
	case it.cur.counted && it.cur.item.Container.Vessel != 0 && !it.cur.sized():
		if s := q.Senses[0]; s.Dim == Length {
			return it.stop(WrongUnit, 1)
		}
	}
	return false
}

// mass takes an amount of grain.
func (it *items) mass(q Quantity) bool {
	switch {
	case it.brims(q):
		it.c = it.c.use(1)
		return true
	case it.unitBefore() && q.isFluid():
		return it.stop(LeftOver, 1) // "1 pint 4 oz"
	case it.cur.counted && it.cur.amount != nil && it.total():
		if !it.cur.makes(q, Mass) {
			return it.stop(LeftOver, 1)
		}
		it.c = it.c.use(1)
		return true
	case it.cur.amount != nil && !it.parted && len(it.cur.grains) == 0, it.cur.amount != nil && !it.parted && it.cur.counted:
		return it.stop(LeftOver, 1) // said twice, or of what?
	}
	if it.cur.amount != nil || it.cur.item.Container.Weight > 0 || it.cur.item.Container.Volume > 0 && it.parted && !it.eachAhead() {
		it.close()
	}
	if _, aside := it.c.back("about", "around", "approx", "roughly", "total").mark("("); aside && it.cur.counted && it.cur.item.Count != 1 && !it.eachAhead() {
		it.cur.behind = &q
	}
	it.cur.amount = &q
	if q.Senses[0].Unit == "pounder" && it.cur.item.Container.Vessel == 0 {
		it.cur.item.Container.Vessel = kitchen.Bag
	}
	it.c = it.c.use(1)
	return true
}

// sameWithin says how far two ways of saying one amount may lie apart: ounces of
// a jar are round figures.
const sameWithin = 0.06

// unitBefore reports whether a volume stands right before, and no jar.
func (it *items) unitBefore() bool {
	switch t := it.c.ahead(-1).(type) {
	case Quantity:
		_, ok := t.sense(Volume)
		return ok
	case VesselWord:
		return t.Container.Sized()
	}
	return false
}

// isFluid reports whether a quantity can be a volume.
func (q Quantity) isFluid() bool {
	_, ok := q.sense(Volume)
	return ok
}

// brims reports whether ounces say once more how much the jar at hand holds: "4
// pint jars, 16 oz".
func (it *items) brims(q Quantity) bool {
	v, fluid := q.sense(Volume)
	have := float64(it.cur.item.Container.Volume)
	return fluid && have > 0 && math.Abs(v.Value-have) <= sameWithin*have
}

// makes reports whether an amount is that of all containers of the item.
func (d *draft) makes(q Quantity, dim Dimension) bool {
	all, ok := q.sense(dim)
	one := float64(d.item.Container.Volume)
	if dim == Mass && d.amount != nil {
		m, _ := d.amount.sense(Mass)
		one = m.Value
	}
	one *= float64(d.item.Count)
	return ok && math.Abs(all.Value-one) <= sameWithin*one
}

// totals are the words for all containers together.
var totals = []string{
	"total", "in total", "altogether", "all together", "together", "in all", "overall", "all in all", "all told", "combined", "sum", "in sum", "for all",
	"for all of them", "among them", "between them",
}

// total reports whether the amount at hand is said of all containers together.
func (it *items) total() bool {
	for _, w := range totals {
		if it.c.use(1).length(w) > 0 {
			return true
		}
	}
	for n := -1; n >= -3; n-- {
		switch it.c.word(n) {
		case "total", "totals", "totalling", "altogether", "makes", "making", "=":
			return true
		case "of", "about", "is", ":":
		default:
			return false
		}
	}
	return false
}

// eachAhead reports whether "each" or "per jar" follows the quantity at hand.
func (it *items) eachAhead() bool {
	for n := 1; n <= 4; n++ {
		switch it.c.word(n) {
		case "each", "ea", "per", "apiece":
			return true
		case "in":
			if w := it.c.word(n + 1); w == "every" || w == "a" || w == "one" || w == "them" {
				return true
			}
		}
	}
	return false
}
