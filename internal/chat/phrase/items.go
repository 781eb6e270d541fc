package phrase

import (
	"math"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// draft is an item while it is being read.
type draft struct {
	item    kitchen.Item
	counted bool
	// folded is set while a count and a size stand in one quantity, "6 quarts":
	// six of one quart. A count said later ("2 quart jars x 3") unfolds it.
	folded *Quantity
	// weak is a vessel said in passing ("per bag"), which a count may follow.
	weak bool
	// amount is a mass whose meaning the rest of the item decides: the size of
	// the container, or loose grain.
	amount *Quantity
	basis  kitchen.Basis
	// after is true when the amount or volume stood behind the vessel.
	behind *Quantity
	each   bool
	// share is a per cent of which it wasn't said of what.
	share *Percent
	// routes and grains hold a second one, which an item can't have.
	routes []kitchen.Route
	grains []grain.Kind
	// from and to are the tokens with a meaning: [from, to).
	from, to int
}

func (d *draft) empty() bool {
	return !d.counted && d.item.Container == (kitchen.Container{}) && d.amount == nil
}

func (d *draft) sized() bool { return d.item.Container.Sized() || d.amount != nil }

// items reads what is wanted, one item after another, in any order of words.
type items struct {
	c       cursor
	drafts  []draft
	cur     draft
	parted  bool // a separator stood before the token at hand
	asks    bool // "how much", "what water": it is about amounts
	one     bool // only one item is read
	trouble *Near
}

// gather reads items up to the first word that has no place among them.
func gather(c cursor) items {
	it := items{c: c}
	var first *Near
	for !it.c.done() && it.step() {
		if first == nil {
			first = it.trouble
		}
		it.trouble = nil // what stands behind it is read all the same
	}
	it.trouble = first
	it.close()
	return it
}

// close ends the item at hand.
func (it *items) close() {
	if it.cur.empty() && len(it.drafts) > 0 {
		it.lend()
	} else {
		it.drafts = append(it.drafts, it.cur)
	}
	it.cur = draft{}
}

// lend gives attributes that were said after the last item, apart from it, to
// that item; the others take them from there.
func (it *items) lend() {
	last := &it.drafts[len(it.drafts)-1]
	for _, r := range it.cur.routes {
		last.addRoute(r)
	}
	for _, g := range it.cur.grains {
		last.addGrain(g)
	}
	a, b := &last.item, it.cur.item
	if a.Moisture == 0 && a.Ratio == 0 {
		a.Moisture, a.Ratio = b.Moisture, b.Ratio
	}
	if a.Gypsum == 0 {
		a.Gypsum = b.Gypsum
	}
	if last.share == nil {
		last.share = it.cur.share
	}
	if last.basis == 0 {
		last.basis = it.cur.basis
	}
}

// step takes one token, or a few that belong together.
func (it *items) step() bool {
	if d := it.c.parted(); d.i > it.c.i {
		if !it.more(d) {
			return false
		}
		it.parted, it.c = true, d
		return true
	}
	before := it.c
	if !it.take() {
		return false
	}
	if it.c.used > before.used {
		it.parted = false
		if it.cur.to == 0 {
			it.cur.from = before.i
		}
		it.cur.to = it.c.i
	}
	return true
}

// more reports whether what stands behind a separator can go on with the items.
// The separator is left to the next grammar when it can't.
func (it *items) more(d cursor) bool {
	if startsOther(d) || !it.one && endsOrder(it.c, d) {
		return false
	}
	probe := items{c: d, cur: draft{counted: true, item: kitchen.Item{Container: kitchen.Container{Vessel: kitchen.Jar}}}}
	for !probe.c.done() {
		was := probe.c.used
		if e, ok := probe.c.mark(",+;.!?\n&:()"); ok {
			probe.c = e
			continue
		}
		if !probe.take() {
			return false
		}
		if probe.c.used > was || probe.trouble != nil {
			return true
		}
	}
	return true
}

// endsOrder reports whether a setting begins behind the separator [c, d) that
// would else be read as one more item. Gypsum and ratio belong to the order,
// unless a semicolon parts them from it.
func endsOrder(c, d cursor) bool {
	for i := c.i; i < d.i; i++ {
		if m, ok := c.s.toks[i].(Mark); ok && m.Rune == ';' {
			return anySetting(d, elevation, roomTemperature, holdRule, method, step, ratioRule, gypsum, headspace, timeZone, quarts, pressure,
				cooker, jarFill, yield, bagMeans, storageMoisture, usualGrain)
		}
	}
	return anySetting(d, cooker, jarFill, yield, bagMeans, storageMoisture, usualGrain)
}

func anySetting(c cursor, settings ...setting) bool {
	for _, read := range settings {
		if _, _, ok := read(c); ok {
			return true
		}
	}
	return false
}

// startsOther reports whether another intent plainly begins here, though its
// first word could be filler in a plan.
func startsOther(c cursor) bool {
	_, ok := c.phrase("we're at", "we are at", "room", "elevation", "no", "hold", "the usual", "usual", "same", "why", "help",
		"we cook", "we soak", "we measure")
	return ok
}

func (it *items) take() bool {
	switch t := it.c.token().(type) {
	case Number:
		return it.number(t)
	case Quantity:
		return it.quantity(t)
	case Percent:
		return it.percent(t)
	case VesselWord:
		return it.vessel(t)
	case GrainWord:
		it.fresh(len(it.cur.grains) > 0 && it.cur.grains[0] != t.Grain)
		it.cur.addGrain(t.Grain)
		it.c = it.c.use(1)
		return true
	case RouteWord:
		it.fresh(len(it.cur.routes) > 0 && it.cur.routes[0] != t.Route)
		it.cur.addRoute(t.Route)
		it.c = it.c.use(1)
		return true
	case Unsuited:
		return it.stop(NotSuited, 1)
	case Range:
		return it.bound(t)
	case Unclear:
		if it.cur.empty() && len(it.drafts) == 0 {
			return it.restIsKitchen(1) && it.stop(LeftOver, 1)
		}
		return it.stop(LeftOver, 1)
	case Mark:
		if t.Rune == '(' || t.Rune == ')' || t.Rune == '-' || t.Rune == '/' {
			it.c.i++
			if t.Rune == ')' && it.cur.to == it.c.i-1 {
				it.cur.to++
			}
			return true
		}
	case Word, Name, When, Period, RunRef, Interval:
		return it.filler()
	}
	return false
}

func (it *items) bound(r Range) bool {
	for _, s := range r.Senses {
		if s.Dim == Mass || s.Dim == Volume {
			return it.stop(Bound, 1)
		}
	}
	if len(r.Senses) == 0 && it.restIsKitchen(1) {
		return it.stop(Bound, 1)
	}
	return false
}

// restIsKitchen reports whether the token n places on is a thing to be filled.
func (it *items) restIsKitchen(n int) bool {
	switch it.c.ahead(n).(type) {
	case VesselWord, Quantity, GrainWord:
		return true
	}
	return false
}

// stop notes what stands in the way and goes past it.
func (it *items) stop(t Trouble, n int) bool {
	it.trouble = &Near{Trouble: t, Missed: it.c.s.typed(it.c.i, min(it.c.i+n, len(it.c.s.toks)))}
	it.c = it.c.use(n)
	return true
}

// fresh begins a new item when a separator stood here and the item at hand is
// complete already has what comes now.
func (it *items) fresh(has bool) {
	if has && it.parted && it.cur.counted && (it.cur.sized() || it.cur.item.Container.Vessel != 0) {
		it.close()
	}
}

func (d *draft) addRoute(r kitchen.Route) {
	for _, have := range d.routes {
		if have == r {
			return
		}
	}
	d.routes = append(d.routes, r)
	d.item.Route = d.routes[0]
}

func (d *draft) addGrain(g grain.Kind) {
	for _, have := range d.grains {
		if have == g {
			return
		}
	}
	d.grains = append(d.grains, g)
	d.item.Grain = d.grains[0]
}

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
	if it.cur.counted && it.cur.folded == nil || it.cur.folded != nil && !n.Times && it.opens(1) {
		if it.cur.item.Container.Vessel == 0 && it.cur.amount == nil {
			return false // two counts in a row
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
	it.c = it.c.use(1)
	switch {
	case isGypsum(before) || isGypsum(after):
		it.cur.item.Gypsum = share
	case isMoist(before) || isMoist(after):
		it.cur.item.Moisture = share
	case isRatio(before) || isRatio(after):
		it.cur.item.Ratio = unit.Ratio(share)
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
	case q.Number <= 0, isVolume && !isMass && unit.Litres(volume.Value) < smallestJar:
		return false
	case isVolume && !isMass:
		return it.volume(q, volume)
	case isMass:
		it.mass(q)
		return true
	case it.cur.counted && it.cur.item.Container.Vessel != 0 && !it.cur.sized():
		if s := q.Senses[0]; s.Dim == Length {
			return it.stop(WrongUnit, 1)
		}
	}
	return false
}

// mass takes an amount of grain.
func (it *items) mass(q Quantity) {
	if it.cur.amount != nil || it.cur.item.Container.Weight > 0 || it.cur.item.Container.Volume > 0 && it.parted && !it.eachAhead() {
		it.close()
	}
	it.cur.amount = &q
	if q.Senses[0].Unit == "pounder" && it.cur.item.Container.Vessel == 0 {
		it.cur.item.Container.Vessel = kitchen.Bag
	}
	it.c = it.c.use(1)
}

// eachAhead reports whether "each" or "per jar" follows the quantity at hand.
func (it *items) eachAhead() bool {
	for n := 1; n <= 4; n++ {
		switch it.c.word(n) {
		case "each", "ea", "per", "apiece", "in":
			return true
		}
	}
	return false
}

// volume takes the size of a jar, or count and size in one: "6 quarts".
func (it *items) volume(q Quantity, s Sense) bool {
	_, jars := it.c.ahead(1).(VesselWord)
	if n, half := math.Modf(q.Number); q.Mixed && jars && !it.cur.counted && half > 0 {
		// "3 1/2 gallon jars": nobody has a jar of three and a half gallons.
		it.cur.item.Count, it.cur.counted = int(n), true
		it.cur.item.Container = kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(it.oneOf(s) * half)}
		it.c = it.c.use(1)
		return true
	}
	if !jarUnit(s.Unit) {
		if it.cur.counted && it.cur.item.Container.Vessel != 0 && !it.cur.sized() {
			return it.sizeBehind(q, s)
		}
		return false
	}
	cur := &it.cur
	switch {
	case cur.item.Container.Vessel == kitchen.Bag && cur.counted, cur.sized():
		it.close()
		return it.volume(q, s)
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

// fold reads "6 quarts" as six jars of a quart and "500 ml" as a size.
func (it *items) fold(q Quantity, s Sense) {
	cur := &it.cur
	cur.item.Container = kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(s.Value)}
	if n, ok := whole(q.Number); ok && s.Unit != "ml" && s.Unit != "cl" && s.Unit != "dl" {
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

// sizeBehind takes a size that stands behind the jars. "2 jars (about 4 cups)"
// can mean each or all of them.
func (it *items) sizeBehind(q Quantity, s Sense) bool {
	if n, ok := whole(q.Number); ok && n >= 2 && s.Unit != "ml" && it.c.word(-1) != "of" && !it.eachAhead() {
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

// vessel takes jars, bags, pints.
func (it *items) vessel(v VesselWord) bool {
	cur, c := &it.cur, v.Container
	passing := it.c.word(-1) == "per" || it.c.word(-1) == "each" || it.c.word(-1) == "a" && cur.amount != nil
	have := cur.item.Container
	clash := have.Vessel != 0 && (have.Vessel != c.Vessel || have.Sized() && c.Sized() && !have.Same(c))
	switch {
	case clash && !cur.counted && cur.weak, clash && it.parted && cur.counted:
		it.close()
	case clash:
		return false
	case have.Vessel != 0 && !cur.weak && it.parted && !passing && cur.folded == nil && cur.item.Count != 0 && !c.Sized():
		return false // jars said twice over
	}
	cur.item.Container.Vessel = c.Vessel
	if c.Volume > 0 {
		cur.item.Container.Volume = c.Volume
	}
	cur.weak = passing
	it.c = it.c.use(1)
	return true
}
