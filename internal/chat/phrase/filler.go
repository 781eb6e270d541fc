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
	if d, ok := c.phrase("total", "in total", "altogether", "all together", "together", "in all", "overall"); ok {
		return it.together(d)
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

// together takes "in total": the amount before it may be that of all containers
// of the item, which is asked.
func (it *items) together(d cursor) bool {
	if it.cur.counted && it.cur.sized() && it.cur.amount != nil {
		it.cur.behind = it.cur.amount
	}
	it.c = it.c.skip(d.i - it.c.i)
	return true
}
