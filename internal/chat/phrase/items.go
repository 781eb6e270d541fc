package phrase

import (
	"strings"

	"ryebell/internal/calc/grain"
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
	// tail is what else was said of it in a reply, as typed.
	tail string
}

func (d *draft) empty() bool {
	return !d.counted && d.item.Container == (kitchen.Container{}) && d.amount == nil
}

func (d *draft) sized() bool { return d.item.Container.Sized() || d.amount != nil }

// items reads what is wanted, one item after another, in any order of words.
type items struct {
	c      cursor
	drafts []draft
	cur    draft
	// all is what was said of all items at once, apart from any.
	all     kitchen.Item
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
	if len(it.drafts) == 1 {
		it.drafts[0].fill(it.all)
		it.all = kitchen.Item{}
	}
	return it
}

// fill gives the draft what was said of all items, where it says nothing itself.
func (d *draft) fill(all kitchen.Item) {
	if len(d.grains) == 0 && all.Grain != 0 {
		d.addGrain(all.Grain)
	}
	if len(d.routes) == 0 && all.Route != 0 {
		d.addRoute(all.Route)
	}
}

// leading sets apart a grain and route said before the first item and parted
// from it: "rye, 3 bags and 4 jars" is said of both.
func (it *items) leading() {
	if !it.parted || it.one || len(it.drafts) > 0 || !it.cur.empty() || len(it.cur.grains) > 1 || len(it.cur.routes) > 1 {
		return
	}
	switch it.c.token().(type) {
	case Number, Quantity:
		if it.cur.item.Grain != 0 {
			it.all.Grain, it.cur.item.Grain, it.cur.grains = it.cur.item.Grain, 0, nil
		}
		if it.cur.item.Route != 0 {
			it.all.Route, it.cur.item.Route, it.cur.routes = it.cur.item.Route, 0, nil
		}
		it.cur.from, it.cur.to = 0, 0
	}
}

// ofAll reads "all for agar", "everything millet": grain and route of all items.
func (it *items) ofAll() (cursor, bool) {
	if it.one {
		return it.c, false
	}
	d, ok := it.c.phrase("all", "everything", "both", "all of it", "all of them", "both of them", "each of them")
	if !ok {
		return it.c, false
	}
	grains, routes := it.all.Grain, it.all.Route
	for {
		d = d.over("for", "in", "is", "are", "with", "on", "of", "them", "the", "be", "a", "grain")
		switch t := d.token().(type) {
		case GrainWord:
			grains = t.Grain
		case RouteWord:
			routes = t.Route
		default:
			said := grains != it.all.Grain || routes != it.all.Route
			if said {
				it.all.Grain, it.all.Route = grains, routes
			}
			return d, said
		}
		d = d.use(1)
	}
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
	if a.Moisture == 0 && a.Ratio == 0 && !a.Parched {
		a.Moisture, a.Ratio, a.Parched = b.Moisture, b.Ratio, b.Parched
	}
	if a.Gypsum == 0 && !a.NoGypsum {
		a.Gypsum, a.NoGypsum = b.Gypsum, b.NoGypsum
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
	if it.listMark() {
		it.c.i += 2
		return true
	}
	if d := it.c.parted(); d.i > it.c.i {
		if !it.more(d) {
			return false
		}
		it.parted, it.c = true, d
		return true
	}
	if _, _, _, ok := it.c.sizedPot(); ok {
		return false
	}
	if d, ok := it.ofAll(); ok {
		it.c = d
		return true
	}
	it.leading()
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

// listMark reports whether the number of a list stands here: the "2." in front of
// "2. 3 quarts lc".
func (it *items) listMark() bool {
	n, ok := it.c.token().(Number)
	m, dot := it.c.ahead(1).(Mark)
	if !ok || n.Word || !n.Whole || n.Value < 1 || !dot || m.Rune != '.' && m.Rune != ')' {
		return false
	}
	if before, line := it.c.ahead(-1).(Mark); it.c.i > 0 && (!line || before.Rune != '\n') {
		return false
	}
	switch it.c.ahead(2).(type) {
	case Number, Quantity:
		return n.Extent().End == m.Extent().Start
	}
	return false
}

// more reports whether what stands behind a separator can go on with the items.
// The separator is left to the next grammar when it can't.
func (it *items) more(d cursor) bool {
	if startsOther(d) || !it.one && endsOrder(it.c, d) {
		return false
	}
	if _, ok := (&items{c: d}).ofAll(); ok && !it.one {
		return true
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
	if n, ok := d.token().(Number); ok && !n.Word {
		return false // "3 bags": no setting begins with a count
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
	if c.length("no gypsum") > 0 {
		return false
	}
	_, ok := c.phrase("we're at", "we are at", "room", "elevation", "no", "hold", "the usual", "usual", "same", "why", "help",
		"we cook", "we soak", "we measure", "make it", "make that", "sorry", "actually")
	return ok
}

func (it *items) take() bool {
	if it.measured() {
		return true
	}
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
		if strings.HasSuffix(t.Name, "flour") {
			return false // that is for bread
		}
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
		if cur.amount != nil && it.brims(*cur.amount) {
			cur.amount = nil
		}
	}
	cur.weak = passing
	it.c = it.c.use(1)
	return true
}
