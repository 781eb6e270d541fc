package phrase

import (
	"slices"
	"strings"
	"time"

	"ryebell/internal/kitchen"
)

var correctGrammar = grammar{
	kind: KindCorrect,
	examples: []string{
		"no, 4 bags",
		"sorry 4 bags not 3",
		"make it rye",
		"no, 1500 g",
		"no lc",
		"make that 6 quarts",
		"oats not rye",
		"not agar, g2g",
		"change rye to oats",
		"make the bags 3 lb",
		"oats instead",
	},
	match: matchCorrect,
}

// String prints the correction so that it parses back.
func (k Correct) String() string {
	s := "no," + fixText(k.Item)
	if len(k.Quantity) > 0 {
		s = "no, " + senseText(k.Quantity[0])
	}
	if k.Was != 0 {
		s += " not " + plain(float64(k.Was))
	}
	return s + outByText(k.OutBy)
}

// fixText prints what is set of an item, after a space.
func fixText(it kitchen.Item) string {
	c := it.Container
	switch {
	case it.Count != 0 && c.Vessel == 0 && c.Sized():
		return " " + plain(float64(it.Count)) + " " + massText(c.Weight) + attributesText(it)
	case it.Count != 0 && c == (kitchen.Container{}) && it.Mass == 0:
		return " " + plain(float64(it.Count)) + attributesText(it)
	case it.Count != 0:
		return " " + itemText(it)
	case c.Volume > 0:
		// In millilitres, which are never taken for a count.
		return " " + shortest(c.Volume.Millilitres(), []style{{"ml", nil}}) + " jars" + attributesText(it)
	case c.Vessel != 0:
		return " " + containerText(c) + attributesText(it)
	}
	return attributesText(it)
}

// senseText prints an amount in the unit it was said in.
func senseText(s Sense) string {
	if s.Dim == Duration {
		return durationText(time.Duration(s.Value * float64(time.Second)))
	}
	for i := range measures {
		for _, m := range measures[i].means {
			if m.unit != s.Unit || m.dim != s.Dim || m.unit != measures[i].means[0].unit {
				continue // "oz" alone is no fluid ounce
			}
			name, _, _ := strings.Cut(measures[i].words, " ")
			for _, of := range []func(float64) float64{m.one, m.imperial} {
				if of == nil {
					continue
				}
				if n, ok := exactly(s.Value, (s.Value-of(0))/(of(1)-of(0)), of); ok {
					return n + " " + name
				}
			}
		}
	}
	return plain(s.Value) + " " + s.Unit
}

func matchCorrect(c cursor) (Intent, cursor, bool) {
	d, led := c.phrase("no", "nope", "sorry", "no sorry", "sorry no", "i meant", "i mean", "meant", "make it", "make that", "make them", "make this",
		"actually", "correction", "rather", "it should be", "should be", "it's", "its", "that should be", "i said", "change it to", "change that to", "change to",
		"oops", "oops no", "wait no", "no wait", "sorry i meant", "no i meant", "no i mean", "sorry make it", "no make it", "actually make it",
		"no make that", "make all of them", "instead", "make the",
		"make all the", "make those", "make these", "make all", "switch to", "switch it to", "switch them to")
	if led && d.word(-1) == "it's" || led && d.word(-1) == "its" {
		led = false
		d = c
	}
	if f, was, ok := wrongFirst(c); ok {
		in, g, ok := corrected(c, f, true)
		if k, isCorrect := in.(Correct); isCorrect && k.Was == 0 {
			if k.Item.Count != 0 { // only of a count another can be wrong
				k.Was = was
			}
			in = k
		}
		return in, g, ok
	}
	e := d
	for {
		f, ok := e.mark(",:.-!;")
		if !ok {
			break
		}
		e = f
	}
	return corrected(c, e, led)
}

// wrongFirst goes past what was wrong where that is said first: "not agar, g2g",
// "change rye to oats". A count among it is what was.
func wrongFirst(c cursor) (cursor, int, bool) {
	d, not := c.phrase("not", "it's not", "its not", "no not", "not for", "that's not", "thats not")
	if !not {
		var ok bool
		if d, ok = c.phrase("change", "swap", "replace", "switch", "exchange"); !ok {
			return c, 0, false
		}
	}
	d = d.over("the", "out", "from", "a", "for")
	was, from := 0, d.i
	for used := true; used; {
		used = false
		switch t := d.token().(type) {
		case Number:
			if n, ok := whole(t.Value); ok && was == 0 {
				was, d, used = n, d.use(1), true
			}
		case GrainWord, RouteWord, VesselWord, Quantity:
			d, used = d.use(1), true
		}
	}
	if d.i == from {
		return c, 0, false
	}
	if not {
		e := d.parted()
		return e, was, e.i > d.i && !e.done()
	}
	e, ok := d.phrase("to", "for", "with", "into", "by")
	return e, was, ok
}

// corrected reads what is right. Without a word such as "no" in front it must
// say what was wrong: "oats not rye".
func corrected(c, d cursor, led bool) (Intent, cursor, bool) {
	d = d.over("i", "meant", "mean", "it's", "its", "make", "it", "that", "only", "just", "rather", "with", "to", "use", "using")
	var k Correct
	if by, e, ok := deadline(d); ok && led {
		k.OutBy = &by
		return k, e, true
	}
	if p, ok := d.token().(Period); ok && led && p.Length > 0 {
		k.Quantity = []Sense{{Dim: Duration, Value: p.Length.Seconds(), Unit: "s"}}
		return k, d.use(1), true
	}
	it := gatherOne(d)
	e := it.c
	if led && countless(d, it) {
		e = e.end()
		e.near = &Near{Trouble: NotWhole, Got: c.s.typed(c.i, d.i), Missed: d.left(), Example: "no, 4 bags"}
		return Correct{}, e, true
	}
	if len(it.drafts) != 1 || it.trouble != nil {
		return nil, c, false
	}
	dr := it.drafts[0]
	if len(dr.routes) > 1 || len(dr.grains) > 1 || dr.share != nil || dr.behind != nil || dr.ounces() {
		return nil, c, false
	}
	k.Item = dr.finished()
	if dr.amount != nil && alone(dr) {
		k.Quantity = slices.Clone(dr.amount.Senses)
		k.Item = kitchen.Item{}
	}
	if q, ok := d.token().(Quantity); ok && e.i == d.i {
		k.Quantity, e = slices.Clone(q.Senses), d.use(1)
	}
	if dr.counted && dr.item.Count <= 0 {
		return nil, c, false
	}
	if _, instead := e.phrase("instead"); instead {
		led = true // "oats instead"
	}
	e = e.over("instead", "please", "pls")
	right := e.i
	e, k.Was = notThat(e, dr.counted)
	unsaid := k.Item == (kitchen.Item{}) && len(k.Quantity) == 0
	if unsaid || !led && e.i == right {
		return nil, c, false
	}
	if by, f, ok := deadline(e.parted()); ok {
		k.OutBy, e = &by, f
	}
	return k, e, true
}

// countless reports whether the whole correction at c is a count that none can be:
// "no, 0", "no, -4 bags", "no, half".
func countless(c cursor, it items) bool {
	if d, ok := c.phrase("half", "half of it", "half of that", "half of them", "none", "none of them"); ok {
		return d.over("please", "pls").parted().done()
	}
	n, ok := c.token().(Number)
	if !ok || n.Word && n.Value == 1 {
		return false
	}
	if d := c.use(1).over("of", "that", "please"); !n.Whole && d.parted().done() {
		return true
	}
	return n.Value <= 0 && n.Whole && it.trouble == nil && it.c.parted().done()
}

// alone reports whether an amount and nothing else was said.
func alone(d draft) bool {
	d.amount, d.from, d.to = nil, 0, 0
	return d.empty() && d.basis == 0 && len(d.routes) == 0 && len(d.grains) == 0 && d.item == (kitchen.Item{})
}

// gatherOne reads one item, filler aside. It leaves the separator behind the
// item alone.
func gatherOne(c cursor) items {
	it := items{c: c, one: true}
	end := it.c
	for !it.c.done() && it.trouble == nil && !endsOne(it) {
		if !it.step() || len(it.drafts) > 0 {
			break
		}
		if !it.parted {
			end = it.c
		}
	}
	if len(it.drafts) > 0 { // a second item began
		it.cur = it.drafts[0]
	}
	it.c = end
	it.drafts = []draft{it.cur}
	return it
}

// endsOne reports whether what comes now is no more of the item: a semicolon,
// what is wrong, or an amount of something else.
func endsOne(it items) bool {
	if m, ok := it.c.token().(Mark); ok && m.Rune == ';' {
		return true
	}
	if q, ok := it.c.token().(Quantity); ok && it.cur.empty() && !measurable(q) {
		return true
	}
	n := it.c.parted()
	_, ok := n.phrase("not", "instead", "and not", "rather than")
	return ok
}

func measurable(q Quantity) bool {
	_, mass := q.sense(Mass)
	_, volume := q.sense(Volume)
	return mass || volume
}

// notThat reads what was wrong: "not 3", "not rye", "instead of 3 bags".
func notThat(c cursor, counted bool) (cursor, int) {
	d, ok := c.parted().phrase("not", "instead of", "and not", "rather than")
	if !ok {
		return c, 0
	}
	d = d.over("the", "a", "in")
	was, used := 0, false
	for !d.done() {
		switch t := d.token().(type) {
		case Number:
			n, ok := whole(t.Value)
			if !ok || !counted || used {
				return c, 0
			}
			was = n
		case GrainWord, RouteWord, VesselWord, Quantity:
		default:
			if used {
				return d, was
			}
			return c, 0
		}
		d, used = d.use(1), true
	}
	if !used {
		return c, 0
	}
	return d, was
}
