package phrase

import (
	"strings"

	"ryebell/internal/kitchen"
)

// orderFiller are words that an order may hold and that change nothing in it.
var orderFiller = set(`a an the of for in at to with w w/ x × per each ea apiece some any about like please pls plz thx
	thanks need want wanna making make makes made making do doing plan planning how much many grain grains what which water all
	both them these those go goes fit fits can could should would i i'd id we me us my our ones one is are will be it that
	that's thats up here cook size sized filled fill spawn container containers then than also but and dry wet wetted
	hydrated on brim good using use used`)

// cultures are names that people put on an order. The culture changes nothing
// in the amounts.
var cultures = set(`oyster oysters blue pearl grey gray pink golden yellow king queen shiitake shitake shiitaki shii reishi
	enoki enokitake maitake button cremini chestnut nameko pioppino trumpet lion's lions mane main lm hericium ganoderma
	lingzhi turkey tail wine cap stropharia hen woods eryngii ostreatus djamor agaricus portobello`)

func set(words string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(words) {
		m[w] = true
	}
	return m
}

// filler takes a word that is no part of an item by itself.
func (it *items) filler() bool {
	c, w := it.c, it.c.word(0)
	switch w {
	case "dry":
		it.cur.basis = kitchen.DryBasis
	case "wet", "wetted", "hydrated":
		it.cur.basis = kitchen.Wetted
	case "each", "ea", "apiece", "per":
		it.cur.each = true
	case "how":
		it.asks = it.asks || c.word(1) == "much"
	case "what":
		it.asks = it.asks || c.word(1) == "water"
	}
	if c.length("too many")+c.length("too much") > 0 {
		return false // talk of another thing
	}
	if d, ok := c.phrase(totals...); ok {
		return it.together(d)
	}
	if d := c.maybe("in the kitchen", "in our kitchen"); d.i > c.i {
		it.c = d
		return true
	}
	if w == "or" && it.alternative() {
		if it.one {
			return false
		}
		return it.stop(Bound, it.upToSeparator())
	}
	if d, ok := c.phrase("without gypsum", "no gypsum", "with no gypsum", "without any gypsum", "w/o gypsum", "gypsum free", "but no gypsum",
		"leave out the gypsum", "leave out gypsum", "skip the gypsum", "skip gypsum", "minus gypsum"); ok {
		it.cur.item.NoGypsum, it.c = true, d
		return true
	}
	if d := c.maybe("of them", "in one load", "in one go", "at once", "how long", "hen of the woods"); d.i > c.i {
		it.c = d
		return true
	}
	if d, ok := it.aboutShare(c, w); ok {
		it.c = d
		return true
	}
	if word, ok := c.token().(Word); orderFiller[w] || cultures[w] || ok && word.Class == Filler {
		it.c = c.skip(1)
		return true
	}
	return false
}

// said reports whether the amount just before c is not that of the item, but the
// sum, which was checked.
func (d *draft) said(c cursor) bool {
	q, ok := c.ahead(-1).(Quantity)
	return ok && d.amount != nil && q.Extent() != d.amount.Extent()
}

// aboutShare takes a word such as gypsum or moisture beside the number that it
// explains. Without one it means something that can't be left out.
func (it *items) aboutShare(c cursor, w string) (cursor, bool) {
	if !isGypsum(w) && !isMoist(w) && !isRatio(w) {
		return c, false
	}
	for n := -4; n <= 4; n++ {
		switch t := c.ahead(n).(type) {
		case Percent:
			return c.skip(1), true
		case Number:
			if !t.Whole {
				return c.skip(1), true
			}
		}
	}
	before := c.word(-1)
	return c.skip(1), w == "water" || before == "what" || before == "which" || before == "much"
}

// alternative reports whether the "or" at hand stands between two amounts, one
// of which is not meant: "a pint or a quart", "2 kg or 3 lb".
func (it *items) alternative() bool {
	n := 1
	if w := it.c.word(n); w == "a" || w == "an" || w == "maybe" || w == "even" {
		n++
	}
	return amounting(it.c.ahead(-1)) && amounting(it.c.ahead(n))
}

// amounting reports whether a token says how much or of which size.
func amounting(t Token) bool {
	switch t := t.(type) {
	case Number:
		return true
	case VesselWord:
		return t.Container.Sized()
	case Quantity:
		return measurable(t)
	}
	return false
}

// upToSeparator counts the tokens up to the next separator or word of another
// kind, from an "or" on: what it offers.
func (it *items) upToSeparator() int {
	n := 1
	for amounting(it.c.ahead(n)) || it.c.word(n) == "a" || it.c.word(n) == "an" || it.c.word(n) == "maybe" || it.c.word(n) == "even" {
		n++
	}
	return n
}

// together takes "in total": the amount before it may be that of all containers
// of the item, which is asked.
func (it *items) together(d cursor) bool {
	if it.cur.counted && it.cur.item.Count != 1 && it.cur.sized() && it.cur.amount != nil && !it.cur.said(it.c) {
		it.cur.behind = it.cur.amount
	}
	it.c = it.c.skip(d.i - it.c.i)
	return true
}
