package phrase

import (
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

var shelfGrammar = grammar{
	kind: KindShelf,
	examples: []string{
		"shelf", "whats on the shelf", "whats oldest", "what's to use first", "how many oysters", "how many ready bags do we have", "any oyster spawn left??",
		"what's growing", "whats suspect", "anything bad", "shelf fridge", "cooked bags", "how many jars of cooked rye", "how many 5lb bags of shiitake do we have",
	},
	match: matchShelf,
}

// String prints the question so that it parses back.
func (q Shelf) String() string {
	what := q.what()
	switch q.Ask {
	case WhatThere:
		return strings.TrimSpace("shelf " + what)
	case Oldest:
		return strings.TrimSpace("what's oldest " + what)
	case AnythingBad:
		return strings.TrimSpace("anything bad " + what)
	case HowMany:
		if what == "" {
			what = "units"
		}
		return "how many " + what + " on the shelf"
	}
	panic("shelf asked nothing")
}

// what prints what narrows the question.
func (q Shelf) what() string {
	var words []string
	if q.State != 0 {
		words = append(words, shelfStateText(q.State))
	}
	if q.Container != (kitchen.Container{}) {
		words = append(words, containerText(q.Container))
	}
	if q.Grain != 0 {
		words = append(words, q.Grain.String())
	}
	if q.Culture != "" {
		words = append(words, q.Culture)
	}
	if q.Place != "" {
		words = append(words, "in "+q.Place)
	}
	return strings.Join(words, " ")
}

// shelfStates are the words for how far units on the shelf are, the one printed first.
var shelfStates = [...]struct {
	state kitchen.UnitState
	words []string
}{
	{kitchen.UnitGrown, []string{
		"grown through", "ready", "ready to use", "done", "finished", "fully grown", "fully colonised", "fully colonized", "colonised", "colonized", "grown", "all grown", "grown out", "100% grown",
	}},
	{kitchen.UnitGrowing, []string{"growing", "colonising", "colonizing", "incubating", "still growing", "half grown", "partly grown", "half colonised", "half colonized", "on the way"}},
	{kitchen.UnitInoculated, []string{"inoculated", "just inoculated", "freshly inoculated", "knocked up", "noc'd"}},
	{kitchen.UnitCooked, []string{"cooked", "uninoculated", "not inoculated", "without a culture", "without culture", "no culture", "plain cooked", "cooked only"}},
	{kitchen.UnitSuspect, []string{"suspect", "suspicious", "doubtful", "iffy", "dodgy"}},
	{kitchen.UnitContaminated, []string{"contaminated", "contam", "contams", "mouldy", "moldy"}},
	{kitchen.UnitDead, []string{"dead"}},
}

// shelfState takes a word for how far units are.
func (c cursor) shelfState() (kitchen.UnitState, cursor, bool) {
	for _, s := range shelfStates {
		if d, ok := c.phrase(s.words...); ok {
			return s.state, d, true
		}
	}
	return 0, c, false
}

func shelfStateText(s kitchen.UnitState) string {
	for _, w := range shelfStates {
		if w.state == s {
			return w.words[0]
		}
	}
	panic("state without words: " + s.String())
}

// shelfPlace takes "in the fridge", "on shelf 2", "at ana's": the name of a place.
func (c cursor) shelfPlace() (string, cursor, bool) {
	d, announced := c.phrase("in", "in the", "in our", "on", "on the", "at", "at the", "under the", "under", "inside the", "from the", "in my")
	d = d.over("the", "our", "my")
	if name, e, ok := d.placeName(); ok {
		return name, e, true
	}
	e := d.placeEnd()
	return c.s.saidBetween(d.i, e.i), e, announced && e.i > d.i
}

// placeWords are places that are asked after by the word alone: "shelf fridge".
var placeWords = set(`fridge freezer cooler incubator tent cupboard closet basement cellar pantry`)

// placeName takes the name of a place that the collective has told of, or one that says
// by itself that it is a place.
func (c cursor) placeName() (string, cursor, bool) {
	if name, d, ok := c.amongOwn(c.s.names.Places); ok {
		return name, d, true
	}
	return c.word(0), c.use(1), placeWords[c.word(0)]
}

// shelfCulture takes a species or the name of a culture.
func (c cursor) shelfCulture() (string, cursor, bool) {
	what, d, ok := c.cultureHere()
	species, e, is := c.species()
	switch {
	case ok && len(what.more) == 0 && what.when == nil && d.i >= e.i:
		return what.name, d, true
	case is:
		return species, e, true
	}
	return "", c, false
}

// narrowed reads what narrows a question of the shelf, in any order.
func (q *Shelf) narrowed(c cursor) cursor {
	for {
		d := c.over("of", "with", "the", "our", "any", "some", "and", "spawn", "spawns", "units", "unit", "ones", "grain", "mushrooms", "that are", "which are", "are", "is", "we have", "do we have",
			"have we got", "do we still have", "there", "are there", "still", "left", "got", "have", "do i have", "all", "left over", "standing", "at the moment", "now", "right now", "currently", "over", "list", "stuff",
			"is there", "yet", "that is", "a", "to")
		d = d.over("on the shelf", "on our shelf", "on the shelves", "on shelf", "in stock", "on there", "here")
		if e, ok := q.one(d); ok {
			c = e
			continue
		}
		return d
	}
}

// one takes one thing that narrows the question, each kind once.
func (q *Shelf) one(c cursor) (cursor, bool) {
	if s, d, ok := c.shelfState(); ok && q.State == 0 {
		q.State = s
		return d, true
	}
	if p, d, ok := c.shelfPlace(); ok && q.Place == "" {
		q.Place = p
		return d, true
	}
	if name, d, ok := c.shelfCulture(); ok && q.Culture == "" && !(isGrain(c) && q.Grain == 0 && d.i == c.i+1) {
		q.Culture = name
		return d, true
	}
	switch t := c.token().(type) {
	case VesselWord:
		if q.Container.Vessel == 0 || q.Container.Vessel == t.Container.Vessel && !t.Container.Sized() {
			q.Container.Vessel = t.Container.Vessel
			if t.Container.Sized() {
				q.Container = t.Container
			}
			return c.use(1), true
		}
	case GrainWord:
		if q.Grain == 0 {
			q.Grain = t.Grain
			return c.use(1), true
		}
	case Quantity:
		return q.sized(c, t)
	}
	return c, false
}

// sized takes the size of bags or jars: the 5lb of "5lb bags".
func (q *Shelf) sized(c cursor, t Quantity) (cursor, bool) {
	if q.Container.Sized() {
		return c, false
	}
	v, behind := c.ahead(1).(VesselWord)
	vessel := q.Container.Vessel
	d := c.use(1)
	if behind && vessel == 0 {
		vessel, d = v.Container.Vessel, c.use(2)
	}
	if m, ok := t.sense(Mass); ok && vessel == kitchen.Bag {
		q.Container = kitchen.Container{Vessel: vessel, Weight: unit.Grams(m.Value)}
		return d, true
	}
	if l, ok := t.sense(Volume); ok && vessel == kitchen.Jar {
		q.Container = kitchen.Container{Vessel: vessel, Volume: unit.Litres(l.Value)}
		return d, true
	}
	return c, false
}

// matchShelf reads the ways to ask what there is.
func matchShelf(c cursor) (Intent, cursor, bool) {
	if w := c.word(0); (w == "inoculated" || w == "cooked") && c.word(1) == "the" {
		return nil, c, false // that tells what somebody did
	}
	for _, read := range [...]func(cursor) (Shelf, cursor, bool){shelfList, shelfOldest, shelfBad, shelfCount, shelfWhats, shelfOf, shelfWhere} {
		q, d, ok := read(c)
		if ok && d.parted().ends() {
			d.plain = !d.bare
			return q, d, true
		}
	}
	return nil, c, false
}

// shelfList reads "shelf", "whats on the shelf", "shelf fridge".
func shelfList(c cursor) (Shelf, cursor, bool) {
	d, ok := c.over("show", "me", "list", "the", "our", "my", "full", "whole").phrase("shelf", "/shelf", "shelves", "inventory", "what's on the shelf", "whats on the shelf", "what is on the shelf",
		"what's on our shelf", "what is there on the shelf", "what do we have on the shelf", "what have we got on the shelf", "what stands on the shelf", "what is on our shelf", "whats on our shelf", "what's there on the shelf",
		"all units", "what's on the shelves", "whats on the shelves")
	if w := d.word(0); !ok || c.length("shelf life") > 0 || w == "is" || w == "are" || w == "was" {
		return Shelf{}, c, false
	}
	var q Shelf
	return q, q.narrowed(d), true
}

// shelfOldest reads "whats oldest", "what's to use first".
func shelfOldest(c cursor) (Shelf, cursor, bool) {
	q := Shelf{Ask: Oldest}
	d, ok := c.phrase("what's oldest", "whats oldest", "what is oldest", "what's the oldest", "whats the oldest", "what is the oldest", "which is oldest", "which is the oldest", "which one is oldest", "which one is the oldest",
		"oldest", "the oldest", "show oldest", "what's to use first", "whats to use first", "what is to use first", "what to use first", "what should we use first", "what should i use first", "what do we use first",
		"what do i use first", "use first", "use first?", "what's first", "what goes first", "what must go first", "which are the oldest", "what are the oldest", "which to use first", "which should we use first",
		"what's to be used first", "what is to be used first", "whats to be used first", "which bag first", "which jar first", "what can i use", "what can we use", "what could i use", "what can be used", "which can i use", "which can we use", "which one can i use", "what is there to use", "what needs using first", "what needs using", "what needs to be used first")
	if !ok {
		return q, c, false
	}
	d.bare = d.i-c.i == 1 || d.word(-1) == "use" && d.word(-2) != "first" && (d.word(-2) == "i" || d.word(-2) == "we" || d.word(-2) == "to")
	return q, q.narrowed(d), true
}

// shelfBad reads "anything bad", "what looks bad".
func shelfBad(c cursor) (Shelf, cursor, bool) {
	q := Shelf{Ask: AnythingBad}
	d, ok := c.over("is there", "do we have", "have we").phrase("anything bad", "anything suspect", "anything contaminated", "anything gone bad", "anything lost", "what's bad", "whats bad", "what is bad", "what looks bad",
		"which are bad", "which ones are bad", "bad ones", "any bad ones", "any bad", "anything off", "anything mouldy", "anything moldy", "anything green", "any contam", "any contams", "any contamination", "anything suspicious",
		"what went bad", "what needs a look", "anything to look at", "what needs looking at", "what needs a decision", "anything wrong on the shelf",
		"what spoiled", "what's spoiled", "whats spoiled", "what has spoiled", "what is spoiled", "losses", "our losses", "the losses", "show losses", "what did we lose", "what have we lost", "what was lost", "which spoiled", "which ones spoiled",
		"which jars spoiled", "which bags spoiled", "any losses", "what failed")
	if !ok {
		return q, c, false
	}
	d.bare = d.word(-1) == "bad" && d.word(-2) == "any" || d.word(-1) == "off" || d.word(-1) == "losses" || d.word(-1) == "lose" || d.word(-1) == "failed" || d.word(-1) == "lost" && d.word(-2) != "anything"
	return q, q.narrowed(d), true
}

// shelfCount reads "how many oysters", "any oyster spawn left", "do we have ready bags".
func shelfCount(c cursor) (Shelf, cursor, bool) {
	q := Shelf{Ask: HowMany}
	d, ok := c.phrase("how many", "how much", "do we have", "do we still have", "have we got", "is there", "are there", "any", "is there any", "are there any", "do we have any", "have we any", "have we got any", "how many do we have",
		"do we have any more", "any more", "how many of the", "how many of our", "count", "number of")
	if !ok {
		return q, c, false
	}
	many := c.length("how many") > 0 || c.word(0) == "count" || c.word(0) == "number"
	e := q.narrowed(d)
	said := c.s.saidBetween(d.i, e.i)
	onShelf := strings.Contains(said, "on the shelf") || strings.Contains(said, "in stock") || strings.Contains(said, "on our shelf")
	ours := q.Culture != "" || q.State != 0 && q.State != kitchen.UnitCooked || q.State == kitchen.UnitCooked && (q.Container.Vessel != 0 || q.Grain != 0)
	asksOf := strings.Contains(said, "do we have") || strings.Contains(said, "have we got") || strings.Contains(said, "left") || strings.Contains(said, "are there")
	switch {
	case many && (onShelf || ours):
		return q, e, true
	case many && q.Container.Vessel != 0 && asksOf:
		e.bare = q.Grain == 0
		return q, e, true
	case onShelf && (ours || q.Container.Vessel != 0 || q.Grain != 0):
		return q, e, true
	}
	return q, e, q.Culture != "" && (c.word(0) != "any" || e.asks() || strings.Contains(said, "left") || strings.Contains(said, "spawn"))
}

// shelfWhats reads "what's growing", "whats suspect", "what's in the fridge".
func shelfWhats(c cursor) (Shelf, cursor, bool) {
	var q Shelf
	d, ok := c.phrase("what's", "whats", "what is", "what are", "which are", "which ones are", "which is", "which units are", "what do we have", "what have we", "what have we got", "which bags are", "which jars are")
	if !ok {
		return q, c, false
	}
	switch {
	case c.length("which bags are") > 0:
		q.Container.Vessel = kitchen.Bag
	case c.length("which jars are") > 0:
		q.Container.Vessel = kitchen.Jar
	}
	e := q.narrowed(d)
	// People ask that of the soup in the fridge, too, and of dinner.
	e.bare = q.State == 0 || q.State == kitchen.UnitGrown && q.Culture == "" && q.Container.Vessel == 0
	return q, e, q.State != 0 || q.Place != "" && (q.Culture != "" || q.Container.Vessel != 0 || c.i == 0)
}

// shelfOf reads "cooked bags", "ready oysters": units in a state, and nothing more.
func shelfOf(c cursor) (Shelf, cursor, bool) {
	var q Shelf
	d := c.over("show", "me", "list", "the", "our", "all", "all the")
	if _, _, ok := d.shelfState(); !ok {
		return q, c, false
	}
	e := q.narrowed(d)
	alike := q.State == kitchen.UnitCooked && c.length("cooked") > 0 && q.Container.Vessel == 0
	return q, e, !alike && (q.Container.Vessel != 0 || q.Culture != "" || d.i > c.i && q.Grain != 0)
}

// shelfWhere reads "where are the oysters", and "when are the oysters ready", which the
// count of those that are and that grow answers.
func shelfWhere(c cursor) (Shelf, cursor, bool) {
	var q Shelf
	d, ok := c.phrase("where are", "where is", "where's", "wheres", "where do we have", "where do i find")
	if !ok {
		d, ok = c.phrase("when are", "when is", "when will", "how long till", "how long until", "are", "is")
		q.Ask = HowMany
	}
	start := d.over("the", "our", "my", "all", "all the")
	name, d, named := start.shelfCulture()
	_, whole := Species(c.s.saidBetween(start.i, d.i))
	if !ok || !named {
		return q, c, false
	}
	q.Culture = name
	d = d.over("jars", "bags", "spawn", "units")
	if q.Ask == WhatThere {
		return q, d.over("now", "gone", "again", "right now", "kept", "standing"), whole
	}
	e, ready := d.over("be", "is", "are", "finally").phrase("ready", "done", "grown through", "grown", "colonised", "colonized", "finished", "through")
	return q, e.over("yet", "now", "to use"), ready
}

// saidBetween are the folded words of tokens [i, j).
func (s *sentence) saidBetween(i, j int) string { return strings.Join(s.said[i:j], " ") }
