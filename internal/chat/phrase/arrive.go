package phrase

import (
	"slices"
	"strings"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

var arriveGrammar = grammar{
	kind: KindArrive,
	examples: []string{
		"4 quarts rye oyster on the shelf since 3 oct",
		"we have 6 pints of shiitake spawn from Mira",
		"bought 3 bags 5lb oyster spawn, grown through",
		"got 2 quarts reishi from the market yesterday, half grown",
		"there are 5 cooked quarts rye from last week",
		"already on the shelf: 3 quarts oyster, 2 bags 5lb king since 1 nov",
		"on the shelf: 3 quarts rye, cooked, 3 weeks old",
		"3 quarts oyster from plate 7 on the shelf since 20 feb",
		"6 quarts oyster since 16 feb, 50%",
		"2 quarts blank on the shelf since monday",
	},
	match: matchArrive,
}

// String prints the sentence so that it parses back.
func (a Arrive) String() string {
	lines := make([]string, len(a.Loads))
	for i, l := range a.Loads {
		lines[i] = l.text()
	}
	return "on the shelf: " + strings.Join(lines, "\n")
}

// text prints a load with all that was said of it.
func (l Arriving) text() string {
	s := orderText(l.Entry.Order)
	if l.Entry.Culture != "" {
		s += ", with " + l.Entry.Culture
	}
	if l.Entry.Species != "" {
		s += ", of " + l.Entry.Species
	}
	switch {
	case l.Share > 0:
		s += ", " + fractionText(l.Share) + " grown"
	case l.Entry.State != 0:
		s += ", " + shelfStateText(l.Entry.State)
	}
	if l.When != nil {
		s += ", since " + momentText(*l.When)
	}
	if l.Entry.From != "" {
		s += ", by " + l.Entry.From
	}
	if l.Place != "" {
		s += ", in " + l.Place
	}
	return s
}

// piece is one item of what arrived, while it is read.
type piece struct {
	items   []int // its tokens
	item    kitchen.Item
	culture string
	// species is what grows, said beside the name of a culture.
	species string
	state   kitchen.UnitState
	share   unit.Fraction
	when    *Moment
	from    string
	place   string
	// line counts the lines: what is said on one is not said of another.
	line int
	// joined is set behind a plus: then it is one load with the piece before.
	joined bool
	// grained is set once a grain was named: a second one is the name of a culture.
	grained bool
	// spawn is set when it was called spawn, plain for grain without a culture.
	spawn, plain bool
}

// arrival is what arrived while it is read.
type arrival struct {
	c      cursor
	pieces []piece
	// head is what was said of all before the first of them.
	head piece
	line int
	// shelf is set by words that only what is there already has; sign by words that
	// need a culture or a state beside them.
	shelf, sign bool
}

// arriveSigns begin what is told of something that is here now.
var arriveSigns = []string{
	"we have", "i have", "we've got", "we got", "i got", "got", "there are", "there is", "there's", "bought", "i bought", "we bought", "just bought", "was given", "i was given", "we were given", "brought", "i brought",
	"here are", "received", "we received", "i received", "we also have", "i've got", "picked up", "i picked up", "traded", "swapped for", "have", "still have", "we still have", "i still have",
}

// arriveWords are those of which every telling of what arrived has one.
var arriveWords = set(`shelf shelves here there have we've i've got are is there's bought given brought received picked traded swapped gave left sent dropped
	inoculated cooked sterile since from by off thanks gift stock in on at fridge under inside`)

// onShelf are the words that only what is there already has.
var onShelf = []string{
	"on the shelf", "on our shelf", "already on the shelf", "already here", "already there", "on the shelves", "standing on the shelf", "stand on the shelf", "are on the shelf", "is on the shelf", "in stock already",
	"add to the shelf", "put on the shelf", "onto the shelf", "to the shelf", "shelf has", "the shelf has", "on shelf", "already have",
}

func matchArrive(c cursor) (Intent, cursor, bool) {
	a := arrival{c: c}
	if c.i > 0 || !slices.ContainsFunc(c.s.said, func(w string) bool { return arriveWords[w] }) {
		return nil, c, false
	}
	for !a.c.done() && a.step() {
	}
	d := a.c.over("please", "pls", "plz", "thx", "thanks").parted()
	if !d.done() || !a.shelf && !a.sign || slices.ContainsFunc(c.s.toks, questionMark) || len(a.pieces) == 0 {
		return nil, c, false
	}
	for i := range a.pieces {
		if !a.pieces[i].read(c.s) {
			return nil, c, false
		}
	}
	a.spread()
	if !a.tells() {
		return nil, c, false
	}
	d.plain = true
	return Arrive{Loads: a.loads()}, d, true
}

// questionMark reports whether a token asks something.
func questionMark(t Token) bool {
	m, ok := t.(Mark)
	return ok && m.Rune == '?'
}

// tells reports whether what was read can be nothing else than units that are here:
// each is on the shelf, or has a culture or a state.
func (a *arrival) tells() bool {
	for _, p := range a.pieces {
		said := p.culture != "" || p.state != 0 || p.spawn
		if !said && (!a.shelf || !p.plain && !p.item.Container.Sized()) {
			return false
		}
	}
	return true
}

// step takes one token, or a few that belong together.
func (a *arrival) step() bool {
	c := a.c
	if d, ok := c.mark(",+;.\n&:!()"); ok {
		a.part(c.token().(Mark).Rune)
		a.c = d
		return true
	}
	if d, ok := c.phrase("and", "plus", "also", "then"); ok {
		a.c = d
		a.part(',')
		return true
	}
	if d, ok := c.phrase(onShelf...); ok {
		a.shelf, a.c = true, d
		return true
	}
	if d, ok := c.phrase(arriveSigns...); ok && len(a.last().items) == 0 {
		a.sign, a.c = true, d
		return true
	}
	if who, d, ok := givenBy(c); ok && len(a.last().items) == 0 {
		a.last().from, a.sign, a.c = who, true, d
		return true
	}
	return a.said(a.last())
}

// givenBy takes "ana gave us", "mira brought".
func givenBy(c cursor) (string, cursor, bool) {
	who, d, ok := c.person(true)
	d, gave := d.phrase("gave us", "gave me", "brought us", "brought", "dropped off", "left us", "sent us", "brought over")
	return who, d, ok && gave
}

// part ends the piece at hand where another begins behind the mark.
func (a *arrival) part(mark rune) {
	if mark == '\n' || mark == ';' {
		a.line++
	}
	switch last := a.last(); {
	case len(last.items) > 0 && begins(a.c.parted()):
		a.pieces = append(a.pieces, piece{line: a.line, joined: mark == '+'})
	case len(last.items) == 0 && (mark == '\n' || mark == ':'):
		a.head = *last
		*last = piece{line: a.line}
	}
}

// last is the piece at hand.
func (a *arrival) last() *piece {
	if len(a.pieces) == 0 {
		a.pieces = append(a.pieces, piece{line: a.line})
	}
	return &a.pieces[len(a.pieces)-1]
}

// begins reports whether an item begins here: with a number.
func begins(c cursor) bool {
	d := c.over("also", "another", "and", "then", "about", "there are", "we have", "-")
	switch t := d.token().(type) {
	case Number:
		return true
	case Quantity:
		_, volume := t.sense(Volume)
		_, mass := t.sense(Mass)
		return volume || mass
	}
	return false
}

// said takes what is said of a piece: its culture, state, age, origin or place, or a
// word of the item itself.
func (a *arrival) said(p *piece) bool {
	c := a.c
	if m, d, ok := arriveSince(c); ok && p.when == nil {
		p.when, a.c, a.sign = &m, d, a.sign || strings.HasPrefix(c.word(0), "since")
		return true
	}
	if d, ok := a.howFar(p); ok {
		a.c = d
		return true
	}
	if place, d, ok := c.shelfPlace(); ok && p.place == "" && d.i > c.i+1 {
		p.place, a.c, a.sign = place, d, true
		return true
	}
	if d, ok := p.taken(c); ok {
		a.c = d
		return true
	}
	if from, d, ok := arriveFrom(c); ok && p.from == "" {
		p.from, a.c, a.sign = from, d, true
		return true
	}
	of := c.over("of", "with", "w")
	if name, d, ok := of.shelfCulture(); ok && p.culture == "" && !(isGrain(of) && !p.grained && d.i == of.i+1) {
		p.culture, a.c = name, d
		return true
	}
	if species, d, ok := of.surelySpecies(); ok && p.species == "" && p.culture != "" && !isSpecies(p.culture) {
		p.species, a.c = species, d
		return true
	}
	if d, ok := c.phrase("spawn", "grain spawn", "grainspawn"); ok {
		p.spawn, a.c = true, d
		return true
	}
	return a.ofItem(p)
}

// ofItem takes a word of the item itself.
func (a *arrival) ofItem(p *piece) bool {
	c := a.c
	switch t := c.token().(type) {
	case Number, VesselWord, GrainWord, Range:
		if n, ok := t.(Number); ok && (n.Ref != nil || !n.Whole || n.Value < 1) {
			return false
		}
	case Quantity:
		_, volume := t.sense(Volume)
		_, mass := t.sense(Mass)
		if !volume && !mass {
			return false
		}
	case Word:
		d := c.over("of", "the", "a", "with", "in", "our", "my", "here", "now", "already", "still", "are", "is", "was", "were", "each", "each of", "x", "some", "about", "more", "jars of", "that are", "which are", "from before",
			"add", "put", "today", "just", "also", "all", "both", "w", "home", "grain", "sized", "size", "them", "it", "they")
		if d.i == c.i {
			return false
		}
		a.c = d
		return true
	default:
		return false
	}
	p.grained = p.grained || isGrain(c)
	p.items = append(p.items, c.i)
	a.c = c.use(1)
	return true
}

// isGrain reports whether the token at hand is a grain.
func isGrain(c cursor) bool {
	_, ok := c.token().(GrainWord)
	return ok
}

// read makes the item of the tokens of a piece; false when there is no item in them.
func (p *piece) read(s *sentence) bool {
	if len(p.items) == 0 {
		return false
	}
	one := &sentence{text: s.text, names: s.names}
	for _, i := range p.items {
		one.toks, one.said = append(one.toks, s.toks[i]), append(one.said, s.said[i])
	}
	it := gather(cursor{s: one})
	if !it.c.done() || it.trouble != nil || len(it.drafts) != 1 {
		return false
	}
	d := it.drafts[0]
	p.item = d.finished()
	p.plain = p.item.Grain != 0
	return d.counted && d.trouble(s) == nil && d.behind == nil && len(d.grains) < 2 && p.item.Container.Vessel != 0 && p.item.Count > 0
}

// spread gives what was said of one piece to those before it on its line that say
// nothing of the kind, then to those behind, and to all what was said before the first.
func (a *arrival) spread() {
	ps := a.pieces
	for i := range ps {
		if ps[i].joined {
			ps[i-1].plain, ps[i].plain = false, false // one of them says the culture of both
		}
	}
	for i := len(ps) - 2; i >= 0; i-- {
		if ps[i].line == ps[i+1].line {
			ps[i].borrow(ps[i+1])
		}
	}
	for i := 1; i < len(ps); i++ {
		if ps[i].line == ps[i-1].line {
			ps[i].borrow(ps[i-1])
		}
	}
	for i := range ps {
		ps[i].borrow(a.head)
	}
}

// borrow takes from another piece what was not said of this one. Plain grain is given
// no culture.
func (p *piece) borrow(q piece) {
	if p.culture == "" && !p.plain && p.state != kitchen.UnitCooked {
		p.culture, p.species = q.culture, q.species
	}
	if p.state == 0 && (p.culture != "" || p.spawn) == (q.culture != "" || q.spawn) {
		p.state, p.share = q.state, q.share
	}
	if p.when == nil {
		p.when = q.when
	}
	if p.from == "" {
		p.from = q.from
	}
	if p.place == "" {
		p.place = q.place
	}
	if p.item.Grain == 0 {
		p.item.Grain = q.item.Grain
	}
}

// loads makes one load of pieces that differ only in their containers.
func (a *arrival) loads() []Arriving {
	var out []Arriving
	for _, p := range a.pieces {
		l := Arriving{Entry: kitchen.Arrived{Culture: p.culture, Species: p.species, State: p.state, From: p.from}, Place: p.place, When: p.when, Share: p.share}
		n := len(out)
		if n > 0 {
			b := out[n-1]
			same := b.Entry.Culture == l.Entry.Culture && b.Entry.Species == l.Entry.Species && b.Entry.State == l.Entry.State && b.Entry.From == l.Entry.From && b.Place == l.Place && b.Share == l.Share
			if same && alikeMoment(b.When, l.When) {
				out[n-1].Entry.Order.Items = append(out[n-1].Entry.Order.Items, p.item)
				continue
			}
		}
		l.Entry.Order.Items = []kitchen.Item{p.item}
		out = append(out, l)
	}
	for i := range out {
		out[i].Entry.Order = out[i].Entry.Order.Merged()
	}
	return out
}

func alikeMoment(a, b *Moment) bool {
	return a == b || a != nil && b != nil && momentText(*a) == momentText(*b)
}
