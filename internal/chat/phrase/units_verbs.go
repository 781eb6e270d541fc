package phrase

import (
	"slices"
	"strings"
	"sync"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// inoculatedWords say that a culture was put on.
var inoculatedWords = []string{
	"inoculated", "inoculate", "inoculating", "inoc'd", "inocd", "inoced", "innoculated", "inocculated", "noc'd", "nocd", "noced", "knocked up", "knock up", "injected", "was inoculated", "were inoculated", "got inoculated",
	"noc", "has been inoculated", "inoculted", "knocked", "inoculation", "got", "gets", "get", "done",
}

// unitVerb is a way to tell of units with the verb in front.
type unitVerb uint8

const (
	inoculateVerb unitVerb = iota + 1
	doVerb
	putVerb
	shakeVerb
	throwVerb
	useVerb
	giveVerb
	moveVerb
	leaveVerb
	callVerb
	tagVerb
	loseVerb
)

// unitVerbs are those verbs in the words for them.
var unitVerbs = sync.OnceValue(func() glossary[unitVerb] {
	g := glossary[unitVerb]{}
	g.add(inoculateVerb, inoculatedWords[:len(inoculatedWords)-4]...)
	g.add(doVerb, "did", "we did")
	g.add(putVerb, "put", "added", "dropped", "shot", "squirted", "poured", "stuck", "spread", "sprayed")
	g.add(shakeVerb, "shook", "shaken", "shaked", "have shaken", "has shaken", "gave a shake to", "shook up", "broke up", "shake")
	g.add(throwVerb, "threw", "threw out", "threw away", "binned", "tossed", "tossed out", "chucked", "chucked out", "discarded", "dumped", "trashed", "got rid of", "composted", "chucked away", "have thrown out", "had to throw out",
		"had to throw", "had to bin", "had to toss", "thrown out", "throwing out", "tossing", "binning", "thrown away", "threw in the bin", "throw out", "had to chuck",
		"throw", "bin", "toss", "chuck", "discard", "dump", "trash", "compost", "broke", "i broke", "smashed", "shattered", "dropped and broke")
	g.add(useVerb, "used", "used up", "spawned with", "have used", "finished off", "using", "use")
	g.add(giveVerb, "gave", "gave away", "given", "handed", "sold", "donated", "passed", "lent", "have given", "giving", "give", "hand")
	g.add(moveVerb, "moved", "put", "placed", "brought", "took", "carried", "shifted", "moving", "stored", "shelved", "stuck", "move")
	g.add(leaveVerb, "left", "leave", "keep", "kept", "leaving", "keeping", "marked", "mark")
	g.add(callVerb, "call", "named", "name", "called", "rename", "renamed")
	g.add(tagVerb, "tag", "tagged", "tags on", "tags for", "add tag to", "label")
	g.add(loseVerb, "lost", "have lost", "losing", "lose", "had to give up on")
	return g
})

// verbFirst reads "shook 12", "threw 12.3", "used 12.1 12.4 on straw".
func (t unitsTelling) verbFirst(c cursor) (unitsRead, bool) {
	var best unitsRead
	for _, g := range unitVerbs()[c.word(0)] {
		n := c.length(g.phrase)
		if n == 0 {
			continue
		}
		if r, ok := t.verb(g.means, c.use(n)); ok && r.end.i > best.end.i && !(orders[g.phrase] && !t.ordered(r, c.use(n))) {
			best = r
		}
	}
	return best, best.end.i > c.i
}

// orders are verbs that people also tell each other what to do with: they are told of
// units only by their numbers.
var orders = set("throw bin toss chuck discard dump trash give hand move use compost broke smashed shattered") // "i broke my leg"

// ordered reports whether units were named behind such a verb that can be nothing else.
func (t unitsTelling) ordered(r unitsRead, c cursor) bool {
	of := r.parts[0].Of
	sharp := c.over("the", "jar", "bag").word(0)
	return t.answers || len(of.Names) > 0 || slices.ContainsFunc(of.Refs, func(r kitchen.Ref) bool { return len(r.Units) > 0 }) || strings.HasPrefix(sharp, "#") && len(of.Refs) > 0
}

// verb reads what stands behind one.
func (t unitsTelling) verb(v unitVerb, c cursor) (unitsRead, bool) {
	switch v {
	case inoculateVerb, doVerb:
		return t.inoculateVerb(c, v == doVerb)
	case putVerb:
		return t.cultureOnto(c)
	case useVerb:
		return t.useVerb(c)
	case giveVerb:
		return t.giveVerb(c)
	case loseVerb:
		return t.loseVerb(c)
	case shakeVerb, throwVerb, moveVerb, leaveVerb, callVerb, tagVerb:
	}
	m, d, ok := c.meantOr(t.before)
	if u, e, one := c.oneUnit(); one && v == callVerb { // "bag A" behind it is its name to be
		m, d = meantRead{Meant: Meant{Refs: []kitchen.Ref{u.Ref()}}, sure: true}, e
	}
	if !ok {
		return unitsRead{}, false
	}
	m.sure = m.sure || t.answers && m.pronoun
	r := unitsRead{sure: m.sure || v != moveVerb && m.wholeRun(), loose: m.isZero()}
	var e kitchen.UnitEntry
	switch v {
	case shakeVerb:
		e, d = kitchen.Shaken{}, d.over("up", "well", "hard", "again", "a bit", "gently", "good", "thoroughly")
	case throwVerb:
		e, d = kitchen.UnitsDiscarded{}, d.over("out", "away", "in the bin", "in the trash", "on the compost", "outside", "in the garbage", "into the bin", "in the compost", "unopened", "in the rubbish")
	case moveVerb:
		place, f, fits := d.place(m.sure || !m.isZero() && m.wholeRun() && c.word(-1) == "moved")
		r.sure = m.sure || d.use(1).isPlace()
		e, d, ok = kitchen.UnitsMoved{Place: place}, f, fits && (m.sure || m.wholeRun())
	case leaveVerb:
		var f cursor
		f, ok = d.over("as", "the", "a", "for", "without").phrase("blank", "control", "uninoculated", "culture", "empty", "blanks", "controls")
		e, d = kitchen.BlankSet{}, f
	case callVerb:
		f, fits := d.over("to", "as").freeWords(3)
		ok = fits && m.sure && m.units() == 1
		g := d.over("to", "as")
		_, _, rest := theRest(g, Meant{})
		if _, number := g.token().(Number); number || rest {
			return unitsRead{}, false
		}
		e, d = kitchen.UnitNamed{Name: d.s.typedWords(g.i, f.i)}, f
	case tagVerb:
		tags, f := d.over("as", "with", "to", ":").tags()
		e, d, ok = kitchen.UnitsTagged{Tags: tags}, f, tags != nil
		r.sure = true
	case inoculateVerb, doVerb, putVerb, useVerb, giveVerb, loseVerb:
	}
	r.parts, r.end = []UnitsPart{{m.Meant, e}}, d
	return r, ok
}

// inoculateVerb reads "inoculated 12 with blue plate 7", "did the jars yesterday w
// bottle 3": after "did" the culture must be said.
func (t unitsTelling) inoculateVerb(c cursor, needs bool) (unitsRead, bool) {
	m, d, ok := c.meantOr(t.before)
	if !ok || m.pronoun && m.isZero() && needs {
		return unitsRead{}, false
	}
	d = d.over("up")
	r := unitsRead{sure: true, loose: m.isZero()}
	if w, e, timed := d.told(); timed {
		r.when, d = &w, e
	}
	e, _ := d.mark(",:(")
	with := startsWith(e)
	if needs && !with {
		return unitsRead{}, false
	}
	k, f, said := e.inoculated(with)
	if needs && (!said || k.onlyRoute()) {
		return unitsRead{}, false
	}
	r.when = firstMoment(r.when, k.when)
	if said {
		d = f
	} else if with {
		return unitsRead{}, false
	}
	r.parts, r.end = []UnitsPart{{m.Meant, k.entry()}}, d
	r.sure = r.sure && (m.sure || said || m.wholeRun())
	return r, true
}

// ontoWords stand between a culture and the units it was put on.
var ontoWords = []string{"into", "onto", "on", "in", "to", "for", "in each of", "into each of", "goes into", "went into", "went on", "on to", "goes on", "over"}

// cultureOnto reads "10 ml oyster lc into 12.1-4", "g2g: 1 quart of 9.3 into 12.1-5",
// "plate 7 on 12".
func (t unitsTelling) cultureOnto(c cursor) (unitsRead, bool) {
	d := c
	if r, ok := c.token().(RouteWord); ok && r.Route == kitchen.GrainToGrain {
		d, _ = c.use(1).mark(":,-")
		if m, e, ok := d.meant(Meant{}); ok && m.sure { // "g2g 12.1-5 from 9.3"
			if k, f, said := e.inoculated(false); said && k.from != (kitchen.UnitRef{}) {
				k.route = kitchen.GrainToGrain
				return unitsRead{parts: []UnitsPart{{m.Meant, k.entry()}}, end: f, sure: true}, true
			}
		}
		d = c
	}
	k, d, ok := d.inoculum()
	if !ok {
		return unitsRead{}, false
	}
	d, ok = d.phrase(ontoWords...)
	if !ok {
		return unitsRead{}, false
	}
	m, e, ok := d.meant(t.before)
	if !ok || !m.sure && !(m.wholeRun() && (k.name != "" || k.species != "" || k.from != (kitchen.UnitRef{}))) || m.isZero() {
		return unitsRead{}, false
	}
	in := k.entry()
	if n := m.units(); k.shared && n > 0 {
		in.Volume = rounded(in.Volume / unit.Litres(n))
	} else if k.shared {
		in.Volume = 0 // nobody said among how many it was shared
	}
	f := e.over(eachWords...)
	if f.i > e.i {
		in.Volume = k.volume
	}
	return unitsRead{parts: []UnitsPart{{m.Meant, in}}, end: f, sure: true}, true
}

// sharedInoculum is a culture in front of the units that it was put on: an amount of a grown
// unit is for all of them together.
type sharedInoculum struct {
	inoculum
	shared bool
}

// inoculum takes what was put on in front of the units.
func (c cursor) inoculum() (sharedInoculum, cursor, bool) {
	var k sharedInoculum
	d := c
	if u, e, ok := c.oneUnit(); ok { // "9.3 into 12.1-5"
		k.from, k.sure = u, true
		return k, e, true
	}
	for k.read < maxSegments {
		e := d
		if k.read > 0 {
			e, _ = d.mark(":,-")
		}
		f, ok := k.piece(e.over(cultureWords...), k.read == 0)
		if !ok {
			break
		}
		d = f.over("each", "ea", "apiece")
		k.shared = k.shared || k.from != (kitchen.UnitRef{}) && d.i == f.i
	}
	return k, d, k.read > 0 && !k.onlyRoute()
}

// useVerb reads "used 12.1 12.4 on straw", "used half of 12.3".
func (t unitsTelling) useVerb(c cursor) (unitsRead, bool) {
	var used kitchen.UnitsUsed
	d := c
	if s, e, ok := c.over("about", "abt", "a", "some").share(false); ok && s < 1 {
		used.Share, d = s, e.maybe("of", "from", "out of")
	}
	m, d, ok := d.meantOr(t.before)
	if !ok {
		return unitsRead{}, false
	}
	d = d.over("up")
	if on, e, said := d.usedOn(); said {
		used.On, d = on, e
	}
	if m.wholeRun() && len(m.Except) == 0 && used.On == "" && used.Share == 0 && c.word(-1) != "used" {
		return unitsRead{}, false // a run that is used up is told of the run
	}
	return unitsRead{parts: []UnitsPart{{m.Meant, used}}, end: d, sure: m.sure || used.On != "" && m.wholeRun(), loose: m.isZero()}, true
}

// giveVerb reads "gave 12.1 to mira", "gave mira 12.1", "gave 2 bags to mira, 12.1 and
// 12.2".
func (t unitsTelling) giveVerb(c cursor) (unitsRead, bool) {
	m, d, ok := c.meantOr(t.before)
	if !ok {
		m, d, _ = theVessels(c, t.before)
		ok = m.Count > 0 && m.Vessel != 0
	}
	if ok {
		d = d.over("away")
		to, e, named := d.receiver()
		if named {
			d = e
		} else if w := d.word(-1); w != "away" && c.word(-1) != "away" && c.word(-1) != "sold" && c.word(-1) != "donated" {
			if f, shake := d.phrase("a shake", "a good shake", "a little shake", "another shake"); shake {
				return unitsRead{parts: []UnitsPart{{m.Meant, kitchen.Shaken{}}}, end: f, sure: m.sure, loose: m.isZero()}, true
			}
			return unitsRead{}, false
		}
		if m.Count > 0 && len(m.Refs) == 0 { // which they were is said behind
			f, _ := d.mark(",:(-")
			if which, g, more := f.meant(Meant{}); more && which.sure && len(which.Refs) > 0 {
				g, _ = g.mark(")")
				m, d = which, g
			}
		}
		return unitsRead{parts: []UnitsPart{{m.Meant, kitchen.UnitsGiven{To: to}}}, end: d, sure: m.sure, loose: m.isZero()}, true
	}
	to, d, ok := c.person(true)
	if w, isWord := c.token().(Word); !ok || isWord && w.Class != Unknown && !vocabulary()[w.Text].person {
		return unitsRead{}, false
	}
	m, d, ok = d.meant(t.before)
	if !ok || !m.sure {
		return unitsRead{}, false
	}
	return unitsRead{parts: []UnitsPart{{m.Meant, kitchen.UnitsGiven{To: to}}}, end: d, sure: true}, true
}
