package phrase

import (
	"strings"

	"ryebell/internal/kitchen"
)

var traceGrammar = grammar{
	kind: KindTrace,
	examples: []string{
		"trace plate 7", "trace 12.3", "trace rye lot 3", "where did rye lot 3 go", "trace oyster", "trace #soak24", "what came from plate 7", "family of 12.3",
		"where does #12.3 come from", "trace 12",
	},
	match: matchTrace,
}

// String prints the question so that it parses back.
func (t Trace) String() string {
	switch {
	case t.Culture != "":
		return "trace " + t.Culture
	case t.Tag != "":
		return "trace #" + t.Tag
	case t.Lot.Name != "":
		return "trace " + lotNoun(t.Lot.What) + " lot " + t.Lot.Name
	}
	return "trace " + t.Of.String()
}

// lotNouns are the words before lot that say of what it is.
var lotNouns = [...]struct {
	what  kitchen.LotKind
	words []string
}{
	{kitchen.GrainLot, []string{"grain", "grain's"}},
	{kitchen.BagLot, []string{"bag", "bags"}},
	{kitchen.LidLot, []string{"lid", "lids", "filter", "filters"}},
}

func lotNoun(k kitchen.LotKind) string {
	for _, n := range lotNouns {
		if n.what == k {
			return n.words[0]
		}
	}
	panic("lot of nothing")
}

var (
	tracesBefore = []string{
		"trace", "traces", "tracing", "trace back", "trace all of", "trace everything from", "can you trace", "could you trace", "what came from", "what came of", "what comes from", "what became of", "what did we make from",
		"what was made from", "what was taken from", "what is from", "what's from", "whats from", "everything from", "all from", "family of", "family tree of", "the family of", "tree of", "children of", "siblings of", "parents of",
		"parent of", "relatives of", "kin of", "lineage of", "ancestry of", "ancestors of", "descendants of", "which units came from", "which units are from", "which bags are from", "which jars are from", "which bags came from",
		"which jars came from", "which jars got", "which bags got", "which jars have", "which bags have", "which units have", "which units had", "which jars had", "which bags had", "what was put on from",
		"which plate spoiled", "which culture spoiled", "what spoiled", "which plate is on", "which culture is on", "which plate was on", "which lc spoiled", "what plate spoiled", "which plate went on", "which plate made",
		"which units got", "what got", "what has", "what did we put", "origin of", "where's everything from", "where is everything from", "trace me", "show the family of",
	}
	tracesAround = [...]struct{ before, behind []string }{
		{[]string{"where did", "where has", "where have", "where does", "where do"}, []string{"go", "gone", "come from", "came from", "went", "go to", "end up", "ended up", "gone to"}},
		{[]string{"what did", "what has", "what have"}, []string{"touch", "touched", "become", "go on", "go into", "make", "been on", "been put on", "infect", "spoil", "go to"}},
		{[]string{"where is", "where's", "what is", "what's", "what was"}, []string{"from", "made from", "taken from", "made of"}},
		{[]string{"who are", "what are", "show"}, []string{"siblings", "children", "parents", "family", "kin", "family tree", "tree"}},
	}
)

// matchTrace reads "trace plate 7", "where did rye lot 3 go", "family of 12.3".
func matchTrace(c cursor) (Intent, cursor, bool) {
	for _, t := range tracesAround {
		d, ok := c.phrase(t.before...)
		if !ok {
			continue
		}
		in, d, ok := traced(d)
		d = d.over("'s", "s", "all", "units")
		if e, behind := d.phrase(t.behind...); ok && behind {
			e.plain = d.plain
			return in, e.over("to", "all"), true
		}
	}
	d, ok := c.phrase(tracesBefore...)
	if !ok {
		return nil, c, false
	}
	in, d, ok := traced(d.over(":", "the"))
	return in, d.over("please", "pls", "back", "all", "go", "again", "everywhere", "forward"), ok
}

// traced takes what is to be traced.
func traced(c cursor) (Trace, cursor, bool) {
	d := c.over("the", "our", "my", "unit", "units", "jar", "bag", "run", "culture")
	d.plain = true
	lot := c.over("the", "our", "my")
	lot.plain = true
	if said, e, ok := lot.aLot(); ok {
		return Trace{Lot: said}, e, true
	}
	if tag, e, ok := d.tag(); ok {
		return Trace{Tag: tag}, e, true
	}
	if m, e, ok := d.unitsTraced(c); ok {
		return Trace{Of: m}, e, true
	}
	if what, e, ok := c.cultureHere(); ok && len(what.more) == 0 && what.when == nil {
		e.plain = true
		return Trace{Culture: what.name}, e, true
	}
	if species, e, ok := d.species(); ok {
		return Trace{Culture: species}, e, true
	}
	if w, ok := d.token().(Word); ok && w.Class == Unknown && len(w.Mended) == 0 && named(w.Text) {
		e := d.use(1) // a name that nobody gave: to be said so, where it was meant for the bot
		e.plain = false
		return Trace{Culture: w.Text}, e, e.ends()
	}
	return Trace{}, c, false
}

// unitsTraced takes units, a run, or the own name of a unit.
func (c cursor) unitsTraced(from cursor) (Meant, cursor, bool) {
	for _, d := range [...]cursor{from, c} {
		if name, e, ok := d.ownUnit(); ok {
			return Meant{Names: []string{name}}, e, true
		}
	}
	m, d, ok := c.meant(Meant{})
	before := c.word(-1) // "family of 5" is people's
	if !ok || m.pronoun || len(m.Refs)+len(m.Names) == 0 || !m.sure && before != "trace" && before != "run" && before != "of" {
		return Meant{}, c, false
	}
	if _, number := c.token().(Number); number && !m.sure && before == "of" && m.wholeRun() {
		return Meant{}, c, false
	}
	return m.Meant, d, true
}

// ownUnit takes the own name of a unit that stands.
func (c cursor) ownUnit() (string, cursor, bool) { return c.amongOwn(c.s.names.Units) }

// aLot takes "rye lot 3", "lot 3", "bag lot b2", "grain lot rye 3".
func (c cursor) aLot() (kitchen.LotSaid, cursor, bool) {
	lot := kitchen.LotSaid{What: kitchen.GrainLot}
	d, head := c, ""
	switch t := c.token().(type) {
	case GrainWord:
		d, head = c.use(1), t.Grain.String()
	default:
		for _, n := range lotNouns {
			if e, ok := c.phrase(n.words...); ok {
				d, lot.What = e, n.what
			}
		}
	}
	e, ok := d.phrase("lot", "lots", "batch", "lot no", "lot number", "lot nr")
	if !ok {
		return kitchen.LotSaid{}, c, false
	}
	e = e.over("#", "no", "nr", "number")
	first := e
	for n := 0; n < mostOfLot && !e.done(); n++ {
		if _, mark := e.token().(Mark); mark || n > 0 && endsLot[e.word(0)] {
			break
		}
		e = e.use(1)
	}
	name := spelt(c.s.typed(first.i, e.i))
	lot.Name = strings.TrimSpace(head + " " + name)
	e.quoted = [2]int{first.i, e.i}
	return lot, e, name != ""
}

// mostOfLot is the most words in the name of a lot.
const mostOfLot = 3

var endsLot = set("go gone went come came touch touched please pls end ended become and is has")

// tag takes a free tag, with its sign.
func (c cursor) tag() (string, cursor, bool) {
	if t, ok := c.maybe("tag", "tagged").token().(Tag); ok {
		return t.Text, c.maybe("tag", "tagged").use(1), true
	}
	d, ok := c.mark("#")
	if !ok {
		d, ok = c.phrase("tag", "tagged")
		if e, sharp := d.mark("#"); sharp {
			d = e
		}
	}
	if !ok || d.done() {
		return "", c, false
	}
	e := d.use(1)
	for !e.done() && e.token().Extent().Start == e.ahead(-1).Extent().End {
		if m, mark := e.token().(Mark); mark && m.Rune != '-' {
			break
		}
		e = e.use(1)
	}
	e.quoted = [2]int{d.i, e.i}
	return spelt(c.s.typed(d.i, e.i)), e, true
}
