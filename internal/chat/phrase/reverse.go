package phrase

import (
	"math"
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

var reverseGrammar = grammar{
	kind: KindReverse,
	examples: []string{
		"i have 8 kg rye, 3lb bags, lc",
		"got 5kg of oats left what can i make w quarts",
		"how many 5lb bags out of a 25 kilo sack agar",
		"2.2 kg milo in the cupboard, only pints",
		"i have 8 kg rye, 5lb bags, agar, out by tomorrow 20:30",
	},
	match: matchReverse,
}

// String prints the question so that it parses back.
func (r Reverse) String() string { return supplyText(r.Supply) + outByText(r.OutBy) }

func supplyText(s kitchen.Supply) string {
	kinds := make([]string, len(s.Containers))
	for i, c := range s.Containers {
		kinds[i] = containerText(c)
	}
	it := kitchen.Item{Mass: s.Dry, Grain: s.Grain, Route: s.Route}
	return "i have " + strings.TrimSpace(itemText(it)+", "+strings.Join(kinds, " or "))
}

// supplySigns are the words that tell grain at hand from an order.
var supplySigns = []string{
	"i have", "i've got", "ive got", "i got", "got", "we have", "we've got", "weve got", "we got", "there is", "there's",
	"theres", "have", "left", "left over", "leftover", "in the cupboard", "in the house", "in stock", "on hand", "at hand", "out of",
	"how many", "what can i make", "what can we make", "what could i make", "what does that make", "how far does", "from", "only",
	"what will", "i still have", "still have", "sack of", "a sack of", "bag of", "a bag of", "bucket of",
}

// supplyFiller are words that change nothing in it.
var supplyFiller = set(`a an the of for in at to with w w/ some about please pls want can i we me us my our is are be it that here
	make makes fill fills do does get gets from sack sacks bag's dry whole just into is which what would could how many and or
	but as route using use all if put`)

// supplying is grain at hand while it is being read.
type supplying struct {
	c    cursor
	out  kitchen.Supply
	sign bool
	// led is true when it begins with an amount, parted when a separator stood
	// between that and the rest.
	led, parted bool
	// halves is true for "half jars half bags", which is more than one sum.
	halves bool
	halfAt int
	// counted is set once so many jars or bags were said, at countAt: then there
	// is nothing to work out but what goes into each.
	counted bool
	countAt int
	open    kitchen.Vessel
}

// longWinded is more filler than anybody needs to say what is at hand.
const longWinded = 40

func matchReverse(c cursor) (Intent, cursor, bool) {
	if d, ok := sharedOut(c); ok {
		return Reverse{}, d, true
	}
	s := supplying{c: c}
	_, s.led = c.token().(Quantity)
	for !s.c.done() && s.c.filler <= longWinded && s.step() {
	}
	s.sign = s.sign || s.listed()
	if !s.sign || s.out.Dry <= 0 {
		return nil, c, false
	}
	if s.counted {
		return Reverse{s.out, nil}, s.counting(c), true
	}
	if s.halves {
		return Reverse{s.out, nil}, s.half(c), true
	}
	by, d := s.c.maybeOutBy()
	if len(s.out.Containers) == 0 {
		d.ask = s.question(by)
	}
	return Reverse{Supply: s.out, OutBy: by}, d, true
}

// listed reports whether all that was said is an amount and, parted from it,
// several sizes to fill: "8 kg rye, quart jars and 5lb bags". With one size it
// can be an order that lacks its count.
func (s *supplying) listed() bool {
	return s.led && s.parted && len(s.out.Containers) > 1 && s.open == 0 && s.c.done()
}

// half is near, with one half of the grain as an example.
func (s *supplying) half(c cursor) cursor {
	d := s.c
	one := kitchen.Supply{Dry: s.out.Dry / 2, Grain: s.out.Grain, Route: s.out.Route}
	one.Containers = []kitchen.Container{{Vessel: kitchen.Bag, Weight: unit.Pounds(5)}}
	d.near = &Near{Trouble: LeftOver, Missed: tidy(c.s.typed(s.halfAt, d.i)), Got: tidy(c.s.typed(c.i, s.halfAt)), Example: supplyText(one)}
	return d
}

// densest is about the most dry grain that goes into a litre of a jar.
const densest unit.Grams = 700

// counting is near, with the grain shared out over the jars or bags that were
// counted as an example.
func (s *supplying) counting(c cursor) cursor {
	d := s.c
	it := gatherOne(cursor{s: c.s, i: s.countAt})
	one := it.drafts[0].finished()
	d.near = &Near{Trouble: LeftOver, Missed: tidy(c.s.typed(s.countAt, d.i)), Got: tidy(c.s.typed(c.i, s.countAt))}
	if one.Count > 0 && one.Container.Vessel != 0 {
		if one.Container.Vessel == kitchen.Bag {
			one.Container.Weight = 0
		} else if one.Container.Volume == 0 {
			one.Container.Volume = unit.USQuarts(1)
		}
		one.Mass, one.Basis, one.Grain = unit.Grams(math.Round(float64(s.out.Dry)/float64(one.Count)/10)*10), kitchen.DryBasis, s.out.Grain
		if one.Container.Vessel == kitchen.Jar && one.Mass > densest*unit.Grams(one.Container.Volume) {
			one.Mass, one.Basis = 0, 0 // more than they hold
		}
		d.near.Example = readable(itemText(one), c.s.names.Quarts)
	}
	return d
}

// countedHere reports whether so many jars or bags stand at hand.
func (s *supplying) countedHere() bool {
	if s.out.Dry <= 0 || !s.sign {
		return false
	}
	if n, ok := s.c.token().(Number); ok && n.Whole && n.Value >= 1 && !(n.Word && n.Value == 1) {
		if _, _, kind := s.c.use(1).kind(); kind {
			return true
		}
		v, ok := s.c.ahead(1).(VesselWord)
		return ok && v.Container.Vessel != 0
	}
	return s.c.several()
}

// sharedOut reads "use up 8 kg rye in 3 bags", near an order of so much in each.
func sharedOut(c cursor) (cursor, bool) {
	d, verb := c.phrase("use up", "use", "split", "divide", "share", "share out", "spread", "use up the", "use all", "finish", "finish up")
	m, d, ok := d.over("my", "our", "the", "up").quantity(Mass)
	if !ok || m.Value <= 0 {
		return c, false
	}
	it := kitchen.Item{Basis: kitchen.DryBasis}
	it.Grain, d = d.over("of", "dry").maybeGrain()
	e, into := d.phrase("into", "over", "among", "between")
	if !into && verb {
		e, into = d.phrase("in", "on", "for", "to")
	}
	n, e, counted := e.over("just", "exactly").number()
	count, isWhole := whole(n)
	if !into || !counted || !isWhole || count <= 0 {
		return c, false
	}
	k, e, ok := e.kind()
	if !ok {
		return c, false
	}
	if it.Container = k; k.Vessel == kitchen.Bag {
		it.Container.Weight = 0
	} else if k.Volume == 0 {
		it.Container.Volume = unit.USQuarts(1)
	}
	it.Count, it.Mass = count, unit.Grams(math.Round(m.Value/float64(count)/10)*10)
	e.near = &Near{
		Trouble: LeftOver, Got: c.s.typed(c.i, d.i), Missed: c.s.typed(d.i, e.i), Example: readable(itemText(it), c.s.names.Quarts),
	}
	return e, it.Mass > 0
}

func (s *supplying) step() bool {
	if d, ok := s.c.mark(",+;.!?\n&:()-/"); ok {
		s.parted = s.parted || s.out.Dry > 0
		s.c = d
		return true
	}
	if d, ok := s.c.phrase("half", "half in", "half the", "half into"); ok && s.out.Dry > 0 {
		if _, _, vessel := d.kind(); vessel {
			if !s.halves {
				s.halfAt = s.c.i
			}
			s.sign, s.halves, s.c = true, true, d
			return true
		}
	}
	if d, ok := s.c.phrase(supplySigns...); ok {
		s.sign, s.c = true, d
		return true
	}
	if s.countedHere() {
		it := gatherOne(s.c)
		s.countAt, s.counted = s.c.i, true
		s.c.i = max(it.c.i, s.c.i+1)
		return true
	}
	switch t := s.c.token().(type) {
	case Quantity:
		return s.quantity(t)
	case VesselWord:
		return s.vessel(t.Container)
	case GrainWord:
		if s.out.Grain != 0 && s.out.Grain != t.Grain {
			return false
		}
		s.out.Grain, s.c = t.Grain, s.c.use(1)
		return true
	case RouteWord:
		if s.out.Route != 0 && s.out.Route != t.Route {
			return false
		}
		s.out.Route, s.c = t.Route, s.c.use(1)
		return true
	case Number:
		if !t.Word || t.Value != 1 {
			return false
		}
	case Word:
		if t.Class != Filler && !supplyFiller[t.Text] {
			return false
		}
		s.c = s.c.skip(1)
		return true
	}
	if !supplyFiller[s.c.word(0)] {
		return false
	}
	s.c = s.c.skip(1)
	return true
}

// quantity takes the grain at hand, or the size of what it goes into: that one
// has bags or jars behind it, or is a volume.
func (s *supplying) quantity(q Quantity) bool {
	mass, isMass := q.sense(Mass)
	volume, isVolume := q.sense(Volume)
	v, sizes := s.c.ahead(1).(VesselWord)
	switch {
	case isVolume && !isMass && jarUnit(volume.Unit) && q.Number > 0:
		s.out.Containers = append(s.out.Containers, kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(volume.Value)})
		s.c = s.c.use(1)
		if sizes {
			s.c = s.c.use(1)
		}
		return true
	case isMass && mass.Unit == "pounder":
		v.Container.Vessel, sizes = kitchen.Bag, true
		s.c.i--
	case !isMass || mass.Value <= 0:
		return false
	}
	if sizes && !(s.out.Dry == 0 && s.c.word(2) == "of") {
		c := kitchen.Container{Vessel: v.Container.Vessel, Weight: unit.Grams(mass.Value)}
		s.out.Containers = append(s.out.Containers, c)
		s.c = s.c.use(2)
		return true
	}
	if s.out.Dry > 0 {
		return false
	}
	s.out.Dry, s.c = unit.Grams(mass.Value), s.c.use(1)
	return true
}

func (s *supplying) vessel(c kitchen.Container) bool {
	if c.Sized() {
		s.out.Containers = append(s.out.Containers, c)
	} else if n := len(s.out.Containers); n == 0 || s.out.Containers[n-1].Vessel != c.Vessel {
		s.open = c.Vessel // "quart jars" says it once
	}
	s.c = s.c.use(1)
	return true
}

// question asks what the grain is to go into.
func (s *supplying) question(by *Moment) *asking {
	options := []string{"5 lb bags", "3 lb bags", "1 quart jars", "1 pint jars"}
	if s.open == kitchen.Bag {
		options = []string{"5 lb bags", "3 lb bags", "10 lb bags"}
	}
	if s.open == kitchen.Jar {
		options = []string{"1 quart jars", "1 pint jars", "0.5 gallon jars", "1 litre jars"}
	}
	supply, open := s.out, s.open
	return &asking{gap: WhichSize, about: massText(supply.Dry), options: options, fill: func(reply cursor) (string, cursor, bool) {
		v := open
		if w, ok := reply.ahead(1).(VesselWord); ok {
			v = w.Container.Vessel
		}
		if v == 0 {
			v = kitchen.Bag
			if q, ok := reply.token().(Quantity); !ok || q.Senses[0].Dim == Volume {
				v = kitchen.Jar
			}
		}
		c, rest, ok := sizeOf(reply, v)
		filled := supply
		filled.Containers = []kitchen.Container{c}
		return supplyText(filled) + outByText(by), rest, ok
	}}
}
