package phrase

import (
	"sync"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// unitSaid is one thing said of units.
type unitSaid struct {
	entry kitchen.UnitEntry
	// sure is set by what people only say of units of ours, even of a bare "12".
	sure bool
	// but are units of which something else is said in the same breath.
	but []UnitsPart
	// none are those that aren't meant, said behind.
	none []kitchen.UnitNo
	// when is a day that stands behind the number of a culture.
	when *Moment
}

// saidOf are the ways to say something of units that were named in front: the one that
// takes most counts.
var saidOf = [...]func(cursor, meantRead) (unitSaid, cursor, bool){
	simplySaid, signSaid, growthSaid, usedSaid, givenSaid, movedSaid, namedSaid, taggedSaid, lotSaid, stoodSaid, overSaid, cultureSaid,
}

// predicate takes what is said of units, behind "is", "looks" and the like.
func predicate(c cursor, of meantRead) (said unitSaid, end cursor, ok bool) {
	d := c
	for range 5 {
		for _, read := range saidOf {
			if s, e, fits := read(d, of); fits && e.i > end.i {
				said, end, ok = s, e, true
			}
		}
		if ok {
			return said, end, true
		}
		_, e, tone := toneWords().take(d)
		if !tone {
			return said, c, false
		}
		d = e
	}
	return said, c, false
}

// simpleWords are things said in words alone.
var simpleWords = sync.OnceValue(func() glossary[kitchen.UnitEntry] {
	g := glossary[kitchen.UnitEntry]{}
	g.add(kitchen.BlankSet{}, "blank", "leave blank", "left blank", "is blank", "is the blank", "the control", "is the control", "control", "as blank", "as the blank", "as a blank", "for blank", "uninoculated", "without culture",
		"no culture", "as a control", "as control", "stays blank", "stay blank", "kept blank", "left without culture", "the blank", "is a blank", "is a control", "is our blank", "is our control", "as the control", "left empty",
		"stays empty", "remains blank", "not inoculated")
	g.add(kitchen.Shaken{}, "shaken", "shook", "got a shake", "was shaken", "has been shaken", "shaken up", "shaken well", "been shaken", "got a good shake", "broken up", "got shaken", "shaken today", "shake done")
	g.add(kitchen.GrownThrough{}, "done", "fully colonised", "fully colonized", "colonised", "colonized", "grown through", "all white", "ready", "finished", "complete", "fully grown", "white all through", "all grown", "100 % done",
		"fully white", "completely white", "completely colonised", "completely colonized", "done growing", "ready to use", "ready for use", "all done", "white through and through", "fully through", "through", "is through",
		"grown out", "all colonised", "all colonized", "fully run", "white all over", "solid white", "is done", "has grown through", "good to go", "ready to go", "ready to spawn", "fully colonised now", "fully grown through",
		"completely grown through", "all grown through", "totally white", "white everywhere", "ready for the straw", "pinning", "is pinning", "pins", "has pins", "pinned", "fruiting", "is fruiting", "has pinned", "first pins", "colonisation done", "colonization done", "ready to be used", "entirely white")
	g.add(kitchen.UnitsDiscarded{}, "thrown out", "thrown away", "binned", "tossed", "chucked", "in the bin", "in the trash", "discarded", "thrown", "tossed out", "chucked out", "on the compost", "went in the bin", "out in the bin",
		"trashed", "dumped", "composted", "into the bin", "is in the bin", "went to the bin", "went into the bin", "got binned", "got tossed", "disposed of", "broken", "broke", "is broken", "got broken", "smashed", "shattered", "fell and broke", "fell down and broke", "broke on the floor", "to the compost", "on the compost heap", "in the rubbish", "in the garbage")
	g.add(kitchen.UnitsGone{}, "gone", "is gone", "disappeared", "missing", "vanished", "is missing", "has gone missing", "gone missing", "is no more", "no longer here", "not there any more", "not there anymore", "nowhere to be found")
	return g
})

func simplySaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	e, d, ok := simpleWords().take(c)
	if _, gone := e.(kitchen.UnitsGone); gone && of.wholeRun() && len(of.Except) == 0 {
		return unitSaid{}, c, false // a run that is gone is told of the run
	}
	_, question := d.mark("?")
	if _, ends := e.(kitchen.GrownThrough); ends && of.wholeRun() && !of.all && len(of.Except) == 0 && endOfStep[d.word(-1)] {
		return unitSaid{}, c, false // "12 done" answers what was to be done with the run
	}
	_, shaken := e.(kitchen.Shaken)
	return unitSaid{entry: e, sure: shaken}, d, ok && !question
}

// endOfStep are words with which a step of a run is over, too.
var endOfStep = set("done finished complete ready go")

// signSaid reads what units look or smell like, and for how long.
func signSaid(c cursor, _ meantRead) (unitSaid, cursor, bool) {
	s, d, ok := signsShown().take(c)
	if !ok {
		return unitSaid{}, c, false
	}
	return unitSaid{entry: kitchen.SignSeen{Sign: s}}, d.noticed(), true
}

// noticed passes over how long it has been so: "after 9 days".
func (c cursor) noticed() cursor {
	d, ok := c.phrase("after", "for", "in", "since", "by", "even after", "for about", "after about", "at", "at day", "on day", "after day", "day", "for over", "in over")
	if !ok {
		return c
	}
	switch t := d.over("about", "over", "now", "more than").token().(type) {
	case Period:
		return d.over("about", "over", "now", "more than").use(1).over("now", "already", "so far")
	case Number:
		if day := d.word(-1) == "day"; day && t.Whole {
			return d.use(1)
		}
	}
	return c
}

// growthSaid reads "30%", "about half white", "1/3 grown", and "nothing yet": who
// says yet still waits for it.
func growthSaid(c cursor, _ meantRead) (unitSaid, cursor, bool) {
	if d, ok := c.phrase(noneYet...); ok {
		return unitSaid{entry: kitchen.GrowthSeen{}}, d.noticed(), true
	}
	if share, d, ok := roughShares().take(c.over("is", "it's")); ok {
		return unitSaid{entry: kitchen.GrowthSeen{Share: share}}, d, true
	}
	share, d, ok := c.over("at", "about", "abt", "around", "roughly", "ca", "approx", "approximately", "maybe", "now", "only", "just", "some", "nearly", "almost", "over", "up to").share(false)
	if !ok {
		return unitSaid{}, c, false
	}
	if e, grown := d.phrase(grownWords...); grown {
		d = e
	}
	return unitSaid{entry: kitchen.GrowthSeen{Share: share}}, d, true
}

// roughShares are how much is overgrown in words without a figure.
var roughShares = sync.OnceValue(func() glossary[unit.Fraction] {
	g := glossary[unit.Fraction]{}
	for _, grown := range []string{"white", "grown", "colonised", "colonized", "through", "covered", "overgrown"} {
		g.add(0.8, "mostly "+grown, "mainly "+grown, "largely "+grown)
		g.add(0.9, "nearly all "+grown, "almost all "+grown, "nearly "+grown, "almost "+grown, "nearly fully "+grown, "almost fully "+grown, "almost completely "+grown)
		g.add(0.1, "a bit "+grown, "a little "+grown, "slightly "+grown, "barely "+grown, "a little bit "+grown, "just a bit "+grown, "hardly "+grown)
	}
	g.add(0.1, "first white", "some white", "a bit of white", "a little white", "white spots", "starting to go white", "going white", "starting to grow", "first growth", "some growth", "a bit of growth")
	return g
})

// noneYet are said of what shows no growth and isn't given up.
var noneYet = []string{
	"nothing yet", "no growth yet", "still nothing", "still nothing yet", "nothing so far", "no white yet", "nothing white yet", "no mycelium yet", "not growing yet", "no sign yet",
	"nothing to see yet", "no change yet",
}

// grownWords stand behind how much is overgrown.
var grownWords = []string{
	"white", "grown", "colonised", "colonized", "done", "covered", "overgrown", "grown through", "through", "growth", "there", "full", "complete", "mycelium", "myc", "coverage", "of it", "visible growth", "of it white", "or so",
	"ish", "finished", "way there", "of the way", "of the way there", "colonisation", "colonization", "of the grain", "or so white", "so far", "visible", "run", "of the jar", "of the bag", "grown over", "white now",
}

// share takes how much of a whole: "30%", "half", "2/3". A bare figure is per cent where
// that is plain.
func (c cursor) share(bare bool) (unit.Fraction, cursor, bool) {
	if n, d, ok := c.partWord(); ok && !vesselOrMeasure(d.token()) {
		return n, d, true
	}
	switch t := c.token().(type) {
	case Percent:
		if t.Value < 0 || t.Value > 100 {
			return 0, c, false
		}
		return unit.Percent(t.Value), c.use(1), true
	case Number:
		d := c.use(1)
		if t.Times || t.Ref != nil || t.Value <= 0 {
			return 0, c, false
		}
		if bare && t.Value >= 1 && t.Value <= 100 && !vesselOrMeasure(d.token()) {
			return unit.Percent(t.Value), d, true
		}
		_, grown := d.phrase(grownWords...)
		if t.Value < 1 && (t.Word || grown || bare) && !vesselOrMeasure(d.token()) && c.word(0)[0] != '.' {
			return unit.Fraction(t.Value), d, true
		}
	}
	return 0, c, false
}

// partWord takes "half", "a third", "three quarters".
func (c cursor) partWord() (unit.Fraction, cursor, bool) {
	d := c.maybe("a", "one")
	switch d.word(0) {
	case "half":
		return 1. / 2, d.use(1), true
	case "third":
		return 1. / 3, d.use(1), true
	case "quarter":
		return 1. / 4, d.use(1), true
	}
	if e, ok := c.phrase("three quarters", "three quarter"); ok {
		return 3. / 4, e, true
	}
	return 0, c, false
}

// usedSaid reads "used on straw", "went into 4 bags of sawdust".
func usedSaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	d, ok := c.phrase("used", "used up", "all used", "is used", "all used up", "was used", "spawned", "been used")
	if !ok {
		d, ok = c.phrase("went", "has gone", "gone", "mixed", "goes")
		if _, into := d.phrase("into", "onto", "on", "in", "through"); !ok || !into {
			return unitSaid{}, c, false
		}
	}
	var used kitchen.UnitsUsed
	if s, e, part := d.share(false); part && s < 1 {
		used.Share, d = s, e
	}
	on, e, said := d.usedOn()
	if said {
		used.On, d = on, e
	}
	if !said && (c.word(0) == "went" || c.word(0) == "gone" || c.word(0) == "has" || c.word(0) == "mixed" || c.word(0) == "goes" || of.wholeRun() && used.Share == 0 && len(of.Except) == 0) {
		return unitSaid{}, c, false // a whole run that is used up is told of the run
	}
	return unitSaid{entry: used, sure: said}, d, true
}

// mostOfPlace is the most words for a place, a purpose or a person.
const mostOfPlace = 6

// usedOn reads "on straw", "for the straw day", "into 4 bags of sawdust".
func (c cursor) usedOn() (string, cursor, bool) {
	d, ok := c.phrase("on", "for", "in", "into", "onto", "to", "to make", "to spawn", "for spawning", "through")
	if !ok || d.isPlace() {
		return "", c, false
	}
	e, ok := d.freeWords(mostOfPlace)
	if !ok {
		return "", c, false
	}
	return c.s.loweredWords(d.i, e.i), e, true
}

// givenSaid reads "given to mira", "went to mira", "to mira", "given away".
func givenSaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	if d, ok := c.phrase("given away", "gave away", "was given away", "sold", "is given away"); ok {
		if to, e, named := d.receiver(); named {
			return unitSaid{entry: kitchen.UnitsGiven{To: to}, sure: true}, e, true
		}
		return unitSaid{entry: kitchen.UnitsGiven{}}, d, true
	}
	d, ok := c.phrase("given", "gave", "went", "goes", "is for", "was given", "handed", "passed on", "sold", "is going", "lent", "donated")
	to, e, named := d.receiver()
	if !named || !ok && !of.sure {
		return unitSaid{}, c, false
	}
	if _, free := d.phrase("to"); (!ok || c.word(0) == "went" || c.word(0) == "goes" || c.word(0) == "is") && !free {
		return unitSaid{}, c, false
	}
	if w := c.word(0); !ok || w == "went" || w == "goes" || w == "is" {
		if _, _, person := d.over("to", "for").person(false); !person {
			return unitSaid{}, c, false
		}
	}
	return unitSaid{entry: kitchen.UnitsGiven{To: to}, sure: true}, e, true
}

// receiver reads "to mira", "to the neighbours".
func (c cursor) receiver() (string, cursor, bool) {
	d, ok := c.phrase("to", "for")
	if !ok || d.isPlace() {
		return "", c, false
	}
	if name, e, person := d.person(false); person {
		return name, e, true
	}
	e, ok := d.freeWords(4)
	if _, number := d.token().(Number); !ok || number {
		return "", c, false
	}
	return d.s.loweredWords(d.i, e.i), e, true
}

// overSaid reads that a grown unit was put on others: "9.3 into 12.1-5".
func overSaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	d, ok := c.phrase("into", "onto", "went into", "to", "went to", "over to", "was put into", "is in", "g2g to", "g2g into")
	if !ok || len(of.Refs) != 1 || len(of.Refs[0].Units) != 1 || !of.sure {
		return unitSaid{}, c, false
	}
	to, e, ok := d.meant(Meant{})
	if !ok || len(to.Refs) == 0 {
		return unitSaid{}, c, false
	}
	from := kitchen.UnitRef{Run: of.Refs[0].Run, Unit: of.Refs[0].Units[0]}
	return unitSaid{but: []UnitsPart{{to.Meant, kitchen.Inoculated{From: from}}}, sure: true}, e, true
}

// cultureSaid reads what was put on: "oyster lc 10ml", "with blue plate 7".
func cultureSaid(c cursor, of meantRead) (unitSaid, cursor, bool) {
	d, verb := c.phrase(inoculatedWords...)
	if !verb && len(of.Except) == 0 && !of.sure && of.Vessel != 0 {
		return unitSaid{}, c, false
	}
	k, e, ok := d.inoculated(verb && startsWith(d))
	if w := c.word(0); !ok && (w == "got" || w == "get" || w == "gets" || w == "done") {
		return unitSaid{}, c, false // "got contaminated"
	}
	if !ok && verb {
		return unitSaid{entry: kitchen.Inoculated{}, sure: true}, d, true
	}
	if !ok || k.onlyRoute() || !verb && !of.sure && !k.sure {
		return unitSaid{}, c, false
	}
	return unitSaid{entry: k.entry(), sure: k.sure || verb, when: k.when}, e, true
}

// startsWith reports whether what was put on must come now.
func startsWith(c cursor) bool {
	_, with := c.phrase(withWords...)
	return with
}

// onlyRoute reports whether nothing tells what was put on.
func (k inoculum) onlyRoute() bool {
	return k.name == "" && k.species == "" && k.from == (kitchen.UnitRef{}) && k.volume == 0 && !k.plates
}
