package phrase

import (
	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// holdRule reads "hold 5lb bags 150", "hold 150 min for 5 lb bags", "5lb bags
// hold 150".
func holdRule(c cursor) (kitchen.Change, cursor, bool) {
	d, ok := c.over("we", "always").phrase("hold", "hold for", "we hold", "holds", "the hold is", "hold is", "always hold", "hold time for", "hold time",
		"the hold for", "hold time is")
	if !ok {
		return kindHeld(c)
	}
	hold, e, ok := d.over("at", "for").span()
	if !ok {
		return heldFor(d)
	}
	f, ok := e.over("min", "minutes").phrase("for", "on", "with")
	if !ok && e.ends() && c.i == 0 {
		e.near = &Near{Trouble: Incomplete, Example: changeText(kitchen.HoldIs{
			Container: kitchen.Container{Vessel: kitchen.Bag, Weight: unit.Pounds(5)}, Hold: hold,
		})}
		return kitchen.HoldIs{Hold: hold}, e, true
	}
	if !ok {
		return nil, c, false
	}
	k, f, ok := heldKind(f)
	return kitchen.HoldIs{Container: k, Hold: hold}, f, ok && hold > 0
}

// heldFor reads "5lb bags 150 min" behind the word hold.
func heldFor(c cursor) (kitchen.Change, cursor, bool) {
	k, d, ok := heldKind(c)
	if !ok {
		return nil, c, false
	}
	hold, d, ok := d.over("for", "at", "is", ":", "=", "always", "to").span()
	set := kitchen.HoldIs{Container: k, Hold: hold}
	if e, sea := d.phrase("at sea level", "sea level", "for sea level", "at the sea"); sea {
		// A hold is the collective's own, at its own height.
		e.near = &Near{Trouble: LeftOver, Missed: d.s.typed(d.i, e.i), Example: readable(changeText(set), d.s.names.Quarts)}
		d = e
	}
	return set, d, ok && hold > 0
}

// kindHeld reads "5lb bags hold 150 min", "we cook 5lb bags for 150 min".
func kindHeld(c cursor) (kitchen.Change, cursor, bool) {
	d, cooked := c.phrase("we cook", "we always cook", "we sterilise", "we sterilize")
	k, d, ok := heldKind(d)
	if !ok {
		return nil, c, false
	}
	d, ok = d.phrase("hold", "hold for", "are held", "are held for", "get", "for", "are held at")
	if !ok || d.word(-1) == "for" && !cooked && d.word(-2) != "held" && d.word(-2) != "hold" {
		return nil, c, false
	}
	hold, d, ok := d.span()
	return kitchen.HoldIs{Container: k, Hold: hold}, d, ok && hold > 0
}

// heldKind reads what a hold is for: 5 lb bags, quarts, jars, everything.
func heldKind(c cursor) (kitchen.Container, cursor, bool) {
	c = c.over("the", "our", "all the")
	if d, ok := c.phrase("everything", "all", "anything", "all of them"); ok {
		return kitchen.Container{}, d, true
	}
	return c.kind()
}

// kind takes a kind of container without a count: "5 lb bags", "quarts",
// "a quart jar", "jars".
func (c cursor) kind() (kitchen.Container, cursor, bool) {
	if n, ok := c.token().(Number); ok && n.Word && n.Value == 1 {
		c = c.skip(1)
	}
	if v, d, ok := c.vessel(); ok {
		if w, e, more := d.vessel(); more && w.Vessel == v.Vessel && !w.Sized() {
			d = e
		}
		return v, d, true
	}
	q, ok := c.token().(Quantity)
	if !ok || q.Number <= 0 {
		return kitchen.Container{}, c, false
	}
	volume, isVolume := q.sense(Volume)
	mass, isMass := q.sense(Mass)
	d := c.use(1)
	v, e, worded := d.vessel()
	switch {
	case worded && v.Sized():
		return kitchen.Container{}, c, false
	case worded:
		d = e
	case isVolume && !isMass:
		v.Vessel = kitchen.Jar
	case mass.Unit == "pounder":
		v.Vessel = kitchen.Bag
	default:
		return kitchen.Container{}, c, false
	}
	switch {
	case v.Vessel == kitchen.Jar && isVolume && !isMass:
		return kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(volume.Value)}, d, jarUnit(volume.Unit)
	case isMass && !(v.Vessel == kitchen.Jar && isVolume):
		return kitchen.Container{Vessel: v.Vessel, Weight: unit.Grams(mass.Value)}, d, true
	}
	return kitchen.Container{}, c, false
}

// method reads "we soak jars", "we measure water for bags".
func method(c cursor) (kitchen.Change, cursor, bool) {
	if m, d, ok := methodOf(c); ok {
		return m, d, true
	}
	how := kitchen.Soaked
	d, ok := c.phrase("we soak", "we always soak", "we soak and simmer", "we simmer", "we soak and drain", "we boil", "i soak", "soak", "we do soak",
		"we simmer and drain", "we drain", "we soak our", "we simmer our")
	if !ok {
		how = kitchen.Measured
		d, ok = c.phrase("we measure water for", "we measure", "we measure the water for", "measured water for", "we weigh water for", "we weigh the water for",
			"measure water for", "we don't soak", "we dont soak", "we dry load", "we don't soak our", "we measure water in")
	}
	if !ok {
		return nil, c, false
	}
	d = d.over("our", "my", "the", "all", "grain for", "grain in")
	if v, e, ok := d.vessel(); ok && !v.Sized() {
		return kitchen.MethodIs{Vessel: v.Vessel, Method: how}, e, true
	}
	if e, ok := d.phrase("everything", "all", "both", "grain", "jars and bags", "bags and jars", "the grain"); ok {
		return kitchen.MethodIs{Method: how}, e, true
	}
	return kitchen.MethodIs{Method: how}, d, c.word(0) == "we" && d.parted().done()
}

// methodOf reads "jars are soaked", "bags get measured water".
func methodOf(c cursor) (kitchen.Change, cursor, bool) {
	v, d, ok := c.over("our", "the", "all").vessel()
	if !ok || v.Sized() {
		return nil, c, false
	}
	if e, ok := d.phrase("are soaked", "get soaked", "are soaked and drained", "are simmered", "are simmered and drained", "are drained"); ok {
		return kitchen.MethodIs{Vessel: v.Vessel, Method: kitchen.Soaked}, e, true
	}
	d, ok = d.phrase("are measured", "get measured water", "are dry loaded", "take measured water")
	return kitchen.MethodIs{Vessel: v.Vessel, Method: kitchen.Measured}, d, ok
}

// step reads "round to 10 g".
func step(c cursor) (kitchen.Change, cursor, bool) {
	d, ok := c.phrase("round to", "round", "rounding", "rounding to", "scale step", "our scale shows", "scale step is", "step", "round up to", "round weights to",
		"round everything to", "round it to", "our scale does", "scale reads to", "our scale reads to", "steps of", "show steps of", "round to the nearest")
	if !ok {
		return nil, c, false
	}
	m, d, ok := d.over("is", "of", "the", "nearest", "to").quantity(Mass)
	return kitchen.StepIs{Step: unit.Grams(m.Value)}, d.over("steps"), ok && m.Value > 0
}

// jarFill reads "a quart jar holds 480 g with us".
func jarFill(c cursor) (kitchen.Change, cursor, bool) {
	c = c.over("our", "the", "my", "one", "each", "all")
	k, d, ok := c.kind()
	if !ok || k.Vessel != kitchen.Jar || k.Weight > 0 || c.several() {
		return nil, c, false // two quart jars, or one of two quarts?
	}
	d, ok = d.phrase("holds", "hold", "takes", "weighs", "take", "fits", "is", "full is", "full weighs", "weigh", "holds about", "take about")
	if !ok {
		return nil, c, false
	}
	m, d, ok := d.over("about", "around", "up to").quantity(Mass)
	if !ok || m.Value <= 0 {
		return nil, c, false
	}
	d = d.over("with us", "here", "wet", "wetted", "of", "grain", "when full", "full", "drained", "for us", "in our kitchen", "wet grain", "each", "apiece")
	fill := kitchen.JarFill{Container: k, Wetted: unit.Grams(m.Value)}
	if k.Volume <= 0 {
		d.ask = fillQuestion(c.s.typed(c.i, d.i), fill)
	}
	return fill, d, true
}

// yield reads "5 kg rye came out at 9.4 after simmering"; the unit of the first
// weight holds for the second.
func yield(c cursor) (kitchen.Change, cursor, bool) {
	q, ok := c.token().(Quantity)
	if !ok || q.Number <= 0 {
		return nil, c, false
	}
	m, ok := q.sense(Mass)
	if !ok {
		return nil, c, false
	}
	d := c.use(1).over("of", "dry", "the", "our")
	g, d := d.maybeGrain()
	d, ok = d.over("dry", "grain").phrase("came out at", "came out", "comes out at", "comes out", "gave", "gives", "became", "becomes", "weighed", "makes", "came to",
		"turned into", "is", "drained to", "came out as")
	if !ok {
		return nil, c, false
	}
	d = d.over("about", "at", "around")
	drained, d, ok := d.secondWeight(q, m)
	if !ok {
		return nil, c, false
	}
	e := d.over("after", "simmering", "soaking", "drained", "wet", "soaked", "and", "draining", "simmered", "when", "once", "a", "soak", "boiling", "cooked")
	if before := d.word(-1); e.i == d.i && c.length("is") > 0 && before == "is" {
		return nil, c, false
	}
	return kitchen.YieldIs{Grain: g, Dry: unit.Grams(m.Value), Drained: unit.Grams(drained)}, e, true
}

// secondWeight takes a weight, a bare number being of the unit of the first.
func (c cursor) secondWeight(first Quantity, m Sense) (float64, cursor, bool) {
	if s, d, ok := c.quantity(Mass); ok && s.Value > 0 {
		return s.Value, d, true
	}
	n, d, ok := c.number()
	return n * m.Value / first.Number, d, ok && n > 0
}

func (c cursor) maybeGrain() (grain.Kind, cursor) {
	if g, ok := c.token().(GrainWord); ok {
		return g.Grain, c.use(1)
	}
	return 0, c
}

func grainText(g grain.Kind) string {
	if g == 0 {
		return ""
	}
	return " " + g.String()
}

// driest and wettest bound a number that is taken for water per dry grain.
const driest, wettest = 0.1, 1.5

// ratioRule reads "agar 0.44", "0.42 for lc bags", "ratio 0.43 for rye".
func ratioRule(c cursor) (kitchen.Change, cursor, bool) {
	var r kitchen.RatioIs
	d, named, unit13 := c, false, false // "1.3 lc" is a jar
	for !d.done() {
		switch t := d.token().(type) {
		case RouteWord:
			if r.Route != 0 {
				return nil, c, false
			}
			r.Route, d = t.Route, d.use(1)
			continue
		case GrainWord:
			if r.Grain != 0 {
				return nil, c, false
			}
			r.Grain, d = t.Grain, d.use(1)
			continue
		case VesselWord:
			if r.Vessel != 0 || t.Container.Sized() {
				return nil, c, false
			}
			r.Vessel, d = t.Container.Vessel, d.use(1)
			continue
		case Number:
			if t.Word || t.Whole {
				return ratioIs(c, d, r, named, unit13)
			}
			if r.Ratio != 0 || t.Value < driest || t.Value > wettest {
				return nil, c, false
			}
			r.Ratio, unit13, d = unit.Ratio(t.Value), t.Ref != nil && (d.i == c.i || d.word(-1) == "on" || d.word(-1) == "in"), d.use(1)
			continue
		}
		e, ok := d.phrase("ratio", "water ratio", "water per grain", "water", "hydration")
		if ok {
			named, d = true, e
			continue
		}
		e = d.over("for", "is", "our", "with", "use", "we use", "at", "the", "in", "of", "to", "=", "on")
		if e.i == d.i {
			return ratioIs(c, d, r, named, unit13)
		}
		d = e
	}
	return ratioIs(c, d, r, named, unit13)
}

func ratioIs(c, d cursor, r kitchen.RatioIs, named, unit13 bool) (kitchen.Change, cursor, bool) {
	return r, d, r.Ratio != 0 && (named || !unit13 && (r.Route != 0 || r.Grain != 0))
}

func ratioText(r kitchen.RatioIs) string {
	s := "ratio " + plain(float64(r.Ratio))
	if r.Grain != 0 || r.Route != 0 || r.Vessel != 0 {
		s += " for"
	}
	s += grainText(r.Grain)
	if r.Route != 0 {
		s += " " + routeText(r.Route)
	}
	if r.Vessel != 0 {
		s += " " + r.Vessel.String() + "s"
	}
	return s
}

// usualGrain reads "usual grain is millet".
func usualGrain(c cursor) (kitchen.Change, cursor, bool) {
	d, ok := c.over("our", "the", "my").phrase("usual grain is", "usual grain", "default grain is", "default grain", "grain is", "standard grain is", "usual is",
		"grain is usually", "we use", "we always use", "we usually use", "we mostly use")
	if !ok {
		return nil, c, false
	}
	g, d := d.over("always", "usually", "to", "is").maybeGrain()
	return kitchen.UsualGrain{Grain: g}, d, g != 0
}

// usualOrder reads "the usual is 3 bags 5lb agar".
func usualOrder(c cursor) (kitchen.Change, cursor, bool) {
	d, ok := c.phrase("the usual is", "our usual is", "usual is", "the usual order is", "our usual order is", "the usual means", "make the usual", "the usual:",
		"usual order is", "our usual run is")
	if !ok {
		return nil, c, false
	}
	w, d, ok := readWish(d)
	if !ok || w.outBy != nil || w.startAt != nil {
		return nil, c, false
	}
	d.near = w.near
	d.ask = w.question(func(w wish) string { return "the usual is " + w.String() })
	return kitchen.UsualOrder{Order: w.order()}, d, true
}

// gypsum reads "gypsum 1%", "no gypsum".
func gypsum(c cursor) (kitchen.Change, cursor, bool) {
	if d, ok := c.phrase("no gypsum", "without gypsum", "no more gypsum", "gypsum off", "we don't use gypsum", "we dont use gypsum", "gypsum none", "never gypsum",
		"no gypsum please", "gypsum 0", "turn gypsum off", "turn off gypsum", "stop gypsum"); ok {
		return kitchen.GypsumIs{}, d, true
	}
	d := c.over("we", "use", "always", "our", "add", "with", "put", "take")
	if e, ok := d.phrase("gypsum", "gypsum is", "gypsum at", "gypsum always"); ok {
		p, e, ok := e.over("at", "of", "is", ":", "=", "to").percent()
		return kitchen.GypsumIs{Share: unit.Percent(p)}, e.over("always", "from now on", "please"), ok
	}
	p, d, ok := d.percent()
	if !ok {
		return nil, c, false
	}
	d, ok = d.phrase("gypsum", "of gypsum", "gypsum always", "gypsum from now on")
	return kitchen.GypsumIs{Share: unit.Percent(p)}, d, ok
}

// bagMeans reads "5 lb bag means dry", "5 lb is the dry weight".
func bagMeans(c cursor) (kitchen.Change, cursor, bool) {
	d := c.over("our", "the", "a", "for us", "with us")
	kind, e, seen := d.kind()
	if seen {
		d = e
	} else if _, e, ok := d.quantity(Mass); ok {
		d = e
	} else {
		return nil, c, false
	}
	seen = seen && !kind.Sized()
	at := d.over("with us", "here", "weight", "weights", "sizes", "size")
	seen = seen && at.i == d.i
	d, ok := at.phrase("means", "mean", "is", "are", "is the", "are by", "holds", "hold", "is filled with")
	if !ok {
		return nil, c, false
	}
	if _, e, amount := d.over("the").quantity(Mass); amount {
		d = e
	}
	seen = seen && (d.word(-1) == "is" || d.word(-1) == "are")
	d = d.over("the", "by", "of", "in", "always", "grain")
	basis := kitchen.DryBasis
	e, ok = d.phrase("dry", "dry weight", "dry grain", "dry grain weight", "dry weights")
	if !ok {
		basis = kitchen.Wetted
		e, ok = d.phrase("wet", "wetted", "wet weight", "wetted weight", "wet grain", "wetted grain", "wet weights", "hydrated")
	}
	if seen && (e.word(-1) == "wet" || e.word(-1) == "dry") {
		return nil, c, false // "the bags are wet" is how they look
	}
	return kitchen.BagMeans{Basis: basis}, e.over("with us", "here", "for us", "weight", "now"), ok
}

// headspace reads "headspace 25%", "leave 25% headspace".
func headspace(c cursor) (kitchen.Change, cursor, bool) {
	d := c.over("we", "leave", "our", "use", "jars", "have")
	if e, ok := d.phrase("headspace", "headspace is", "head space"); ok {
		p, e, ok := e.over("is", "of", "at", ":", "=", "to").percent()
		return kitchen.HeadspaceIs{Share: unit.Percent(p)}, e.over("in", "jars", "the"), ok
	}
	p, d, ok := d.percent()
	if !ok {
		return nil, c, false
	}
	d, ok = d.phrase("headspace", "head space", "of headspace", "empty", "headspace in jars")
	return kitchen.HeadspaceIs{Share: unit.Percent(p)}, d, ok
}

// storageMoisture reads "our rye is 13% moisture".
func storageMoisture(c cursor) (kitchen.Change, cursor, bool) {
	d := c.over("our", "the", "dry", "my", "stored", "storage")
	g, d := d.maybeGrain()
	if g == 0 {
		e, ok := d.phrase("grain", "all grain", "all grains", "grains")
		if !ok {
			return nil, c, false
		}
		d = e
	}
	d, before := d.over("is", "are", "has", "at", "grain", "stored", "comes", "in", "have", "storage").phrase("moisture", "storage moisture", "moisture is", "moisture of")
	d = d.over("is", "at", "of", "has", "about", "in")
	p, d, ok := d.percent()
	if n, e, number := d.number(); !ok && number && before && n >= 1 && n < 100 {
		p, d, ok = n, e, true // hundredths, as nothing else is said of moisture
	}
	if !ok {
		return nil, c, false
	}
	e, after := d.phrase("moisture", "moist", "water", "storage moisture", "moisture as bought", "humidity", "moisture dry", "moisture in store")
	if after {
		d = e
	}
	return kitchen.StorageMoisture{Grain: g, Moisture: unit.Percent(p)}, d.over("as bought"), before || after
}
