package phrase

import (
	"slices"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

var planGrammar = grammar{
	kind: KindPlan,
	examples: []string{
		"3 bags 5lb agar",
		"4 quart jars rye LC + 2 3-lb bags",
		"10 half pints millet g2g",
		"how much for 2 kg rye at 45% moisture?",
		"12 pints + 3 quarts + 1 5lb bag milo g2g",
		"3 bags 5lb agar, hold 180, out by 20:30",
	},
	match: func(c cursor) (Intent, cursor, bool) {
		if _, ok := sharedOut(c); ok {
			return nil, c, false
		}
		if in, d, ok := few(c); ok {
			return in, d, true
		}
		w, d, ok := readWish(c)
		if !ok {
			return nil, c, false
		}
		p := Plan{Order: w.order(), OutBy: w.outBy, StartAt: w.startAt}
		d.near, d.bare = w.near, w.drinks(c)
		d.ask = w.question(func(w wish) string { return w.String() })
		return p, d, true
	},
}

// few reads "a few quarts" and nothing more: how many is for the speaker to say.
func few(c cursor) (Intent, cursor, bool) {
	d, ok := c.over("make", "cook", "need", "i", "we", "want", "do").phrase("a few", "few", "several", "a handful of", "a bunch of", "some", "a couple of")
	if !ok {
		return nil, c, false
	}
	k, d, ok := d.kind()
	if !ok || c.i > 0 || !d.parted().done() {
		return nil, c, false
	}
	p := Plan{Order: kitchen.Order{Items: []kitchen.Item{{Count: 4, Container: k}}}}
	if k.Vessel == kitchen.Bag && !k.Sized() {
		p.Order.Items[0].Container.Weight = unit.Pounds(5)
	} else if !k.Sized() {
		p.Order.Items[0].Container.Volume = unit.USQuarts(1)
	}
	d.near = &Near{Trouble: Incomplete, Got: c.s.typed(c.i, d.i), Example: readable(p.String(), c.s.names.Quarts)}
	return p, d, true
}

// drinks reports whether all that was said is so many pints, litres or gallons,
// as people say of other things, too.
func (w wish) drinks(c cursor) bool {
	if len(w.drafts) != 1 || w.outBy != nil || w.startAt != nil && !w.startAt.WholeDay() || w.cooker != "" || w.hold != 0 || c.i > 0 {
		return false
	}
	d := w.drafts[0]
	if d.folded == nil || d.to-d.from != 1 || len(d.grains)+len(d.routes) > 0 {
		return false
	}
	v, _ := d.folded.sense(Volume)
	return v.Unit != "quart"
}

// String prints the plan so that it parses back.
func (p Plan) String() string { return orderText(p.Order) + outByText(p.OutBy) + startText(p.StartAt) }

// wish is an order while it is being read.
type wish struct {
	drafts []draft
	// all is the grain and route said of all items at once.
	all    kitchen.Item
	cooker string
	hold   time.Duration
	outBy  *Moment
	// startAt is when the cooker would go on.
	startAt *Moment
	near    *Near
	s       *sentence
}

// readWish reads items and what is said of them all: the cooker, the hold, the
// time it must be out.
func readWish(c cursor) (wish, cursor, bool) {
	it := gather(c)
	dryTogether(it.drafts)
	w := wish{drafts: it.drafts, all: it.all, near: it.trouble, s: c.s}
	d := w.extras(it.c)
	// "bags" and nothing else is the beginning of an order.
	begun := c.i == 0 && it.c.filler == 0 && it.c.parted().done()
	if w.near == nil && !slices.ContainsFunc(w.drafts, func(d draft) bool { return d.thing(it.asks) || begun && d.item.Container.Vessel != 0 }) {
		return w, c, false
	}
	for i := range w.drafts {
		if n := w.drafts[i].trouble(c.s); n != nil && w.near == nil {
			w.near = n
		}
	}
	if w.near == nil && len(w.drafts) > maxItems && len(w.order().Items) > maxItems {
		w.near = &Near{Trouble: TooMany, Got: c.s.typed(w.drafts[0].from, w.drafts[maxItems-1].to)}
	}
	if w.near != nil {
		w.near.Topic = w.topic(it.c)
		w.near.Example = readable(w.drafts[0].example(), c.s.names.Quarts)
	}
	return w, d, true
}

// dryTogether makes amounts of loose grain dry where one of them names the grain of
// all: "2 kg + 1 kg rye".
func dryTogether(drafts []draft) {
	named := slices.ContainsFunc(drafts, func(d draft) bool { return d.loose() && d.amount != nil && len(d.grains) > 0 })
	for i := range drafts {
		if d := &drafts[i]; named && d.loose() && d.amount != nil && len(d.grains) == 0 && d.basis == 0 {
			d.basis = kitchen.DryBasis
		}
	}
}

// topic is the subject that is all that was said up to c: "jars".
func (w wish) topic(c cursor) kitchen.Topic {
	if d := w.drafts[0]; len(w.drafts) > 1 || d.to-d.from != 1 || c.filler > 0 || d.counted || d.sized() {
		return 0
	}
	switch w.drafts[0].item.Container.Vessel {
	case kitchen.Jar:
		return kitchen.TopicJars
	case kitchen.Bag:
		return kitchen.TopicBags
	}
	return 0
}

// thing reports whether enough was said to be more than a number in talk: a
// count of jars or bags, or an amount of some grain.
func (d draft) thing(asked bool) bool {
	if asked && d.counted && d.item.Count == 1 && !d.sized() && d.item.Container.Vessel != 0 && len(d.grains)+len(d.routes) == 0 {
		return false // "how much for a bag": what it costs
	}
	if d.counted || d.item.Container.Vessel != 0 {
		return d.counted && (d.item.Container.Vessel != 0 || d.sized()) || d.sized() || d.item.Mass != 0
	}
	return d.amount != nil && (asked || d.item.Grain != 0 || d.item.Route != 0 || d.item.Moisture != 0 || d.item.Ratio != 0 || d.item.Parched ||
		d.share != nil || d.basis != 0)
}

// extras reads what belongs to the whole order.
func (w *wish) extras(c cursor) cursor {
	for {
		d := c.parted().over("with", "a", "and", "in", "on", "the", "at", "of", "it", "must", "be", "needs", "to", "for")
		if name, e, ok := w.inCooker(c, d); ok {
			w.cooker, c = name, e
			continue
		}
		if e, ok := d.phrase("no gypsum", "without gypsum", "without the gypsum"); ok && w.near == nil && len(w.drafts) > 0 && sameBreath(c, d) {
			// It would have to hold for this order alone, which no order can say.
			w.near, c = &Near{Trouble: LeftOver, Missed: c.s.typed(d.i, e.i)}, e
			continue
		}
		if hold, e, ok := holdFor(d); ok && w.hold == 0 {
			w.hold, c = hold, e
			continue
		}
		if m, e, ok := starts(d); ok && w.startAt == nil {
			w.startAt, c = &m, e
			continue
		}
		m, e, ok := deadline(d)
		if !ok {
			m, e, ok = neededBy(d)
		}
		if ok && w.outBy == nil {
			e.bare = c.bare
			w.outBy, c = &m, e
			continue
		}
		if m, e, ok := w.day(c); ok {
			w.startAt, c = &m, e
			continue
		}
		return c
	}
}

// day reads the day behind an order: "tomorrow", "for saturday 10:00". Behind
// something that people also bring or buy it is none of ours.
func (w *wish) day(c cursor) (Moment, cursor, bool) {
	ours := len(w.drafts) == 0 || slices.ContainsFunc(w.drafts, func(d draft) bool { return d.sized() || len(d.grains)+len(d.routes) > 0 })
	d, _ := c.mark(",")
	m, d, ok := d.over("for", "on", "start", "starting").when()
	ahead := m.Day.Said && !m.Now && m.Shift == 0 && m.Day.Shift >= 0 && m.Day.Months >= 0 && !m.Day.Last && (m.Clock != nil || m.WholeDay())
	if !ok || !ours || !ahead || w.startAt != nil || w.outBy != nil {
		return Moment{}, c, false
	}
	return m, d, true
}

// sameBreath reports whether nothing but a comma stands between two places.
func sameBreath(c, d cursor) bool {
	for ; c.i < d.i; c.i++ {
		if m, ok := c.token().(Mark); ok && m.Rune != ',' {
			return false
		}
	}
	return true
}

// inCooker reads the cooker wanted: "in the big pot". After a comma it must say
// "in": another thing can be said of the big pot.
func (w *wish) inCooker(c, d cursor) (string, cursor, bool) {
	name, e, ok := cookerRef(d)
	if !ok || w.cooker != "" {
		return "", c, false
	}
	_, in := d.token().(Name) // a name that the collective gave needs no "in"
	in = in && c.parted().i == c.i
	for n := -1; n >= -2; n-- {
		switch d.word(n) {
		case "in", "on", "with", "using":
			in = true
		}
	}
	return name, e, in
}

// holdFor reads "hold 180", "hold 2h30m".
func holdFor(c cursor) (time.Duration, cursor, bool) {
	d, ok := c.phrase("hold", "hold for", "hold of", "held", "hold it", "hold it for", "hold them for")
	if !ok {
		return 0, c, false
	}
	hold, d, ok := d.span()
	if _, bag := d.token().(VesselWord); bag || d.length("for") > 0 || hold <= 0 {
		return 0, c, false
	}
	return hold, d, ok
}

// span takes a length of time; a bare number counts minutes.
func (c cursor) span() (time.Duration, cursor, bool) {
	switch t := c.token().(type) {
	case Period:
		return t.Length, c.use(1), true
	case Number:
		if t.Whole && t.Value > 0 && t.Value <= 24*60 {
			return time.Duration(t.Value * float64(time.Minute)), c.use(1).maybe("min", "mins", "minutes"), true
		}
	case Quantity:
		if s, ok := t.sense(Duration); ok {
			return time.Duration(s.Value * float64(time.Second)), c.use(1), true
		}
	}
	return 0, c, false
}

// order makes the order. An item that says neither grain nor route takes both
// from the nearest that says any, a later one before an earlier: one that says
// half of it may mean the usual with the other half.
func (w wish) order() kitchen.Order {
	o := kitchen.Order{Cooker: w.cooker, Hold: w.hold}
	for _, d := range w.drafts {
		o.Items = append(o.Items, d.finished())
	}
	silent := make([]bool, len(o.Items))
	for i, it := range o.Items {
		silent[i] = it.Grain == 0 && it.Route == 0
	}
	share(o.Items)
	for i := range o.Items {
		it := &o.Items[i]
		if w.all.Grain != 0 && (silent[i] || it.Grain == 0) {
			it.Grain = w.all.Grain
		}
		if w.all.Route != 0 && (silent[i] || it.Route == 0) {
			it.Route = w.all.Route
		}
	}
	return o.Merged()
}

// share spreads attributes over the items that don't say them.
func share(items []kitchen.Item) {
	if len(items) < 2 {
		return
	}
	spread(items, func(a kitchen.Item) bool { return a.Grain != 0 || a.Route != 0 },
		func(a *kitchen.Item, b kitchen.Item) { a.Grain, a.Route = b.Grain, b.Route })
	spread(items, func(a kitchen.Item) bool { return a.Moisture != 0 || a.Ratio != 0 || a.Parched },
		func(a *kitchen.Item, b kitchen.Item) { a.Moisture, a.Ratio, a.Parched = b.Moisture, b.Ratio, b.Parched })
	spread(items, func(a kitchen.Item) bool { return a.Gypsum != 0 || a.NoGypsum },
		func(a *kitchen.Item, b kitchen.Item) { a.Gypsum, a.NoGypsum = b.Gypsum, b.NoGypsum })
}

// spread gives an attribute to each item that lacks it: from the next that says
// it, or behind the last of those from that one.
func spread(items []kitchen.Item, says func(kitchen.Item) bool, take func(*kitchen.Item, kitchen.Item)) {
	var from kitchen.Item
	for i := len(items) - 1; i >= 0; i-- {
		from = lend(&items[i], from, says, take)
	}
	for i := range items {
		from = lend(&items[i], from, says, take)
	}
}

func lend(it *kitchen.Item, from kitchen.Item, says func(kitchen.Item) bool, take func(*kitchen.Item, kitchen.Item)) kitchen.Item {
	if says(*it) {
		return *it
	}
	take(it, from)
	return from
}

// String prints the wish so that it reads back, with all that is still open.
func (w wish) String() string {
	s := ""
	for i, d := range w.drafts {
		if i > 0 {
			s += " + "
		}
		s += d.String()
	}
	if w.all != (kitchen.Item{}) {
		s += ", all" + attributesText(w.all)
	}
	return s + orderText(kitchen.Order{Cooker: w.cooker, Hold: w.hold}) + outByText(w.outBy) + startText(w.startAt)
}

// question is what the first open item asks; print makes the whole sentence of
// the wish.
func (w wish) question(print func(wish) string) *asking {
	for i, d := range w.drafts {
		q := d.question(w)
		if q == nil {
			continue
		}
		settle := q.settle
		return &asking{gap: q.gap, about: w.s.typed(d.from, d.to), options: q.options, fill: func(reply cursor) (string, cursor, bool) {
			settled, rest, ok := settle(d, reply)
			if !ok || settled.trouble(w.s) != nil {
				return "", reply, false
			}
			settled.tail = rest.left()
			filled := w
			filled.drafts = slices.Clone(w.drafts)
			filled.drafts[i] = settled
			return print(filled), rest.end(), true
		}}
	}
	return nil
}
