package phrase

import (
	"slices"

	"ryebell/internal/kitchen"
)

// placeNouns are where units stand in any kitchen.
var placeNouns = set(`fridge freezer shelf shelves incubator cupboard tent room rack box tub cabinet closet basement cellar garage bench counter drawer table window windowsill
	chamber greenhouse kitchen lab attic shed hallway corridor pantry wardrobe cooler bedroom office bathroom balcony crate`)

// movedSaid reads "in the fridge", "moved to the top shelf".
func movedSaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	d, verb := c.phrase("moved", "put", "placed", "stands", "stand", "lives", "live", "sits", "sit", "standing", "sitting", "stored", "went", "is now", "kept", "back", "goes", "is", "are", "brought", "shifted")
	place, e, ok := d.place(verb && (c.word(0) == "moved" || c.word(0) == "placed"))
	if !ok && d.i == c.i && len(of.Refs)+len(of.Names) > 0 {
		place, e, ok = c.placeAlone()
	}
	if !ok || !of.sure && (of.Vessel != 0 || of.isZero()) {
		return unitSaid{}, c, false
	}
	return unitSaid{entry: kitchen.UnitsMoved{Place: place}, sure: verb}, e, true
}

// placeKinds stand before the noun of a place that is named without "in" or "on".
var placeKinds = set("top bottom middle left right upper lower warm cold big small back front incubation incubating grow growing spare old new")

// placeAlone reads "fridge", "top shelf", and a place by its name, where nothing follows.
func (c cursor) placeAlone() (string, cursor, bool) {
	at := c.over("the", "our", "my")
	name, e, ok := at.amongOwn(c.s.names.Places)
	if !ok {
		e = at
		if placeKinds[e.word(0)] {
			e = e.use(1)
		}
		ok = placeNouns[e.word(0)]
		e = e.use(1)
		name = c.s.loweredWords(at.i, min(e.i, len(c.s.toks)))
	}
	return name, e, ok && (e.done() || e.parted().i > e.i)
}

// place reads "to the top shelf", "in the fridge", "on shelf 2". Where a place must
// stand any words are taken for one.
func (c cursor) place(must bool) (string, cursor, bool) {
	d, ok := c.phrase("to", "in", "into", "on", "onto", "at", "over to", "back to", "back in", "back into", "from the shelf to", "up to", "down to", "back on", "out to", "under", "off to", "inside")
	if !ok {
		return "", c, false
	}
	d = d.over("the", "our", "my")
	if name, e, own := d.amongOwn(c.s.names.Places); own {
		return name, e, true
	}
	e, ok := d.freeWords(mostOfPlace - 1)
	if !ok {
		return "", c, false
	}
	if !must && !d.isPlace() {
		return "", c, false
	}
	if _, word := d.token().(Word); !word {
		return "", c, false
	}
	if !must {
		e = d.placeEnd()
	}
	if d.isPlace() {
		return c.s.saidBetween(d.i, e.i), e, true // in the words that a misspelt one was taken for
	}
	return c.s.loweredWords(d.i, e.i), e, true
}

// isPlace reports whether a place that every kitchen has, or that the collective
// named, stands here.
func (c cursor) isPlace() bool {
	d := c.over("the", "our", "my")
	if _, _, own := d.amongOwn(c.s.names.Places); own {
		return true
	}
	return d.placeEnd().i > d.i
}

// placeEnd is the place behind words that end with a noun for a place: "top shelf",
// "shelf 2".
func (c cursor) placeEnd() cursor {
	d, end := c, c
	for range 4 {
		if _, word := d.token().(Word); !word {
			break
		}
		d = d.use(1)
		if placeNouns[d.word(-1)] {
			end = d
		}
	}
	if end.i == c.i {
		return c
	}
	if n, ok := end.token().(Number); ok && n.Whole && n.Ref == nil && !n.Word {
		end = end.use(1)
	} else if w := end.word(0); len(w) == 1 && w[0] >= 'b' && w[0] <= 'h' {
		end = end.use(1)
	}
	return end
}

// namedSaid reads "is bag A", "is called grandma".
func namedSaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	if len(of.Refs)+len(of.Units)+len(of.Names) > 0 && of.units() != 1 {
		return unitSaid{}, c, false
	}
	if d, none := c.phrase("has no name", "no name", "without a name", "has no name any more"); none && !of.isZero() {
		return unitSaid{entry: kitchen.UnitNamed{}}, d, true
	}
	d, called := c.phrase("called", "is called", "named", "is named", "now called", "is now called")
	if called {
		e, ok := d.freeWords(3)
		_, _, rest := theRest(d, Meant{})
		if _, number := d.token().(Number); !ok || number || rest || len(of.Refs)+len(of.Names) == 0 {
			return unitSaid{}, c, false
		}
		return unitSaid{entry: kitchen.UnitNamed{Name: d.s.typedWords(d.i, e.i)}, sure: true}, e, true
	}
	d = c.over("now", "our", "the")
	name, e, ok := d.vesselName()
	if !ok || len(of.Refs)+len(of.Names) == 0 || !of.sure || c.word(-1) != "is" && c.word(-1) != "=" && c.word(-1) != "now" {
		return unitSaid{}, c, false
	}
	return unitSaid{entry: kitchen.UnitNamed{Name: name}, sure: true}, e, true
}

// vesselName reads "bag A", "jar 7", as typed.
func (c cursor) vesselName() (string, cursor, bool) {
	if v, ok := c.token().(VesselWord); !ok || v.Container.Sized() {
		return "", c, false
	}
	d := c.use(1)
	switch t := d.token().(type) {
	case Word:
		if d.ahead(1) != nil && len(t.Text) > 1 && !d.use(1).settled() {
			return "", c, false
		}
	case Number:
		if t.Ref != nil || !t.Whole {
			return "", c, false
		}
	case Name:
	default:
		return "", c, false
	}
	return c.s.typedWords(c.i, c.i+2), d.use(1), true
}

// taggedSaid reads "#soak24 #newlid".
func taggedSaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	tags, d := c.tags()
	if tags == nil || of.isZero() && !of.pronoun {
		return unitSaid{}, c, false
	}
	return unitSaid{entry: kitchen.UnitsTagged{Tags: tags}, sure: true}, d, true
}

// tags takes tags that stand one behind the other.
func (c cursor) tags() ([]string, cursor) {
	var tags []string
	d := c
	for len(tags) < maxSegments {
		e := d
		if len(tags) > 0 {
			e, _ = e.mark(",+&")
			e = e.over("and")
		}
		t, ok := e.token().(Tag)
		if !ok {
			return tags, d
		}
		if !slices.Contains(tags, t.Text) {
			tags = append(tags, t.Text)
		}
		d = e.use(1)
	}
	return tags, d
}

// lotSaid reads "is rye lot 3", "bag lot 7", "lids synthetic filter".
func lotSaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	l, d, ok := c.over("from", "of", "out of", "made from", "the", "made of", "with", "has", "have", "uses", "in", "filled from").lot()
	return unitSaid{entry: l, sure: true}, d, ok && !of.isZero()
}

// lot takes a lot by its kind and name: "rye lot 3", "lot 3", "bag lot 7", "filter
// lot b", "lids synthetic filter". The name of a grain lot has the grain in it.
func (c cursor) lot() (kitchen.LotSaid, cursor, bool) {
	d, l, lead := c, kitchen.LotSaid{What: kitchen.GrainLot}, ""
	switch t := c.token().(type) {
	case GrainWord:
		lead, d = t.Grain.String()+" ", c.use(1)
	case VesselWord:
		if t.Container.Vessel != kitchen.Bag || t.Container.Sized() {
			return l, c, false
		}
		l.What, d = kitchen.BagLot, c.use(1)
	case Word:
		switch t.Text {
		case "grain":
			d = c.use(1)
		case "lid", "lids", "filter", "filters":
			return lidLot(c)
		}
	}
	d, ok := d.phrase("lot", "lot no", "lot number", "lot nr", "batch", "sack")
	if !ok || d.word(-1) == "batch" && lead == "" {
		return l, c, false
	}
	if g, ok := d.token().(GrainWord); ok && lead == "" && l.What == kitchen.GrainLot {
		lead, d = g.Grain.String()+" ", d.use(1)
	}
	name, e, ok := d.lotNumber()
	l.Name = lead + name
	return l, e, ok
}

// lotNumber takes what a lot is told from others by: 3, 2024-7, b.
func (c cursor) lotNumber() (string, cursor, bool) {
	d, _ := c.mark("#")
	switch t := d.token().(type) {
	case Number:
		if t.Ref != nil || t.Times || t.Word {
			return "", c, false
		}
		return d.word(0), d.use(1), true
	case RunRef:
		if len(t.Ref.Units) > 0 || d.word(0)[0] != '#' {
			return "", c, false
		}
		return d.word(0)[1:], d.use(1), true
	case Word:
		if t.Class == Unknown || len(t.Text) == 1 {
			return t.Text, d.use(1), true
		}
	}
	return "", c, false
}

// lidLot reads "lids synthetic filter", "filter type b", "lid lot 2".
func lidLot(c cursor) (kitchen.LotSaid, cursor, bool) {
	l := kitchen.LotSaid{What: kitchen.LidLot}
	d := c.use(1).over("are", "is", "type", "with", "kind", ":")
	if e, ok := d.phrase("lot", "batch"); ok {
		name, f, ok := e.lotNumber()
		l.Name = name
		return l, f, ok
	}
	e, ok := d.freeWords(4)
	_, _, sign := signsShown().take(d)
	if w, isWord := d.token().(Word); !ok || !isWord || sign || lidTalk[w.Text] {
		return l, c, false
	}
	l.Name = d.s.loweredWords(d.i, e.i)
	return l, e, true
}

// lidTalk are words behind lids that name no kind of them.
var lidTalk = set("on off off! loose tight open closed bulging leaking wet dry bad clean dirty tightened loosened here there in out gone up down not leaked leaks leak cracked broke broken lost missing blew came come need needs")

// spotWords are where units stood in the cooker.
var spotWords = []struct {
	spot  kitchen.Spot
	words []string
}{
	{kitchen.TopLayer, []string{"top layer", "in the top layer", "on the top layer", "on top", "top", "at the top", "upper layer", "in the upper layer", "stood on top", "up top", "top row", "on the top"}},
	{kitchen.BottomLayer, []string{"bottom layer", "in the bottom layer", "on the bottom layer", "bottom", "at the bottom", "lower layer", "in the lower layer", "stood at the bottom", "on the bottom", "bottom row", "on the rack at the bottom", "lowest"}},
	{kitchen.InnerOnes, []string{"in the middle", "inner", "middle", "stood inside", "in the centre", "in the center", "inner one", "inner ones", "the inner one", "the inner ones", "the middle one", "inside", "in the inside", "innermost"}},
	{kitchen.OuterOnes, []string{"outer", "stood outside", "outer one", "outer ones", "the outer one", "the outer ones", "on the outside", "at the edge", "at the wall", "at the side", "on the edge", "outermost", "by the wall"}},
}

// stoodSaid reads "top layer", "was in the middle".
func stoodSaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	d := c.over("stood", "sat", "was", "were", "stayed", "cooked", "was cooked")
	for _, s := range spotWords {
		if e, ok := d.phrase(s.words...); ok && (of.sure || d.i > c.i) && !of.isZero() {
			return unitSaid{entry: kitchen.UnitsStood{Where: s.spot}}, e.over("of the pot", "of the load", "of the cooker", "in the pot"), true
		}
	}
	return unitSaid{}, c, false
}
