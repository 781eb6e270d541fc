package phrase

import (
	"strconv"
	"strings"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

var makeCultureGrammar = grammar{
	kind: KindMakeCulture,
	examples: []string{
		"plate 7 from plate 3",
		"new plate 7, blue oyster",
		"poured plates 7-9 from plate 3",
		"lc 4 from plate 7, 500 ml",
		"bottle 3 is lion's mane lc, 300 ml, mine",
		"syringe 2 shiitake from Mira",
		"plate 12 from 9.2",
		"master 5 from plate 7",
		"made plate 7 yesterday",
		"plate 7 g2 from plate 3",
		"new culture called help, from plate 3",
		"blue lc from plate 7",
	},
	match: matchMakeCulture,
}

var endCultureGrammar = grammar{
	kind:     KindEndCulture,
	examples: []string{"threw plate 7", "bottle 3 is empty", "plate 7 went bad", "plate 7 is contaminated", "used up lc 4", "threw out plates 7-9 yesterday"},
	match:    matchEndCulture,
}

var culturesGrammar = grammar{
	kind:     KindCultures,
	examples: []string{"cultures", "which plates do we have", "whats plate 7", "who has plate 7"},
	match:    matchCultures,
}

// String prints the telling so that it parses back.
func (m MakeCulture) String() string {
	s := "new " + m.newName()
	add := func(what string) { s += ", " + what }
	if m.Made.Species != "" {
		add("of " + m.Made.Species)
	}
	switch {
	case m.Made.FromUnit != kitchen.UnitRef{}:
		add("from " + m.Made.FromUnit.String())
	case m.Made.From != "":
		add("from " + m.Made.From)
	}
	if m.Made.Volume > 0 {
		add(amountText(float64(m.Made.Volume)) + " l")
	}
	if m.Made.Generation > 0 {
		add("generation " + strconv.Itoa(m.Made.Generation))
	}
	switch m.Owner {
	case "":
	case Speaker:
		add("mine")
	default:
		add("belongs to " + m.Owner)
	}
	if m.When != nil {
		add("made " + m.When.String())
	}
	return s
}

// amountText is a figure in as many decimals as it has.
func amountText(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// newName is the name of a new culture with what says its kind.
func (m MakeCulture) newName() string {
	if noun, number, ok := strings.Cut(m.Made.Name, " "); ok && len(m.Also) > 0 {
		for _, other := range m.Also {
			number += ", " + strings.TrimPrefix(other, noun+" ")
		}
		return noun + "s " + number
	}
	if kindOfName(m.Made.Name) == m.Made.Kind && numberedName(m.Made.Name) {
		return m.Made.Name
	}
	if kindOfName(m.Made.Name) == m.Made.Kind {
		return "culture called " + m.Made.Name
	}
	return nounOf(m.Made.Kind) + " called " + m.Made.Name
}

// numberedName reports whether a name is a noun with a number.
func numberedName(name string) bool {
	for _, n := range cultureNouns {
		if number, ok := strings.CutPrefix(name, n.noun+" "); ok {
			_, err := strconv.Atoi(number)
			return err == nil
		}
	}
	return false
}

// nounOf is the noun of a kind.
func nounOf(k kitchen.CultureKind) string {
	for _, n := range cultureNouns {
		if n.kind == k && !strings.Contains(n.noun, " ") {
			return n.noun
		}
	}
	return "culture"
}

// Speaker as an owner is who says it: "mine".
const Speaker = "me"

// makes are the words by which a culture is told to be new.
var makes = []string{
	"new", "made", "make", "poured", "started", "made a new", "made new", "i made", "we made", "i poured", "we poured", "got", "i got", "we got", "got a new", "have a new", "we have a new", "i have a new", "received", "bought",
	"started a new", "i started", "we started", "cloned", "isolated", "took", "filled", "i filled", "there is a new", "there's a new", "transferred", "inoculated", "prepared", "new culture", "a new",
}

// matchMakeCulture reads the name of a culture with where it is from, or what it is.
func matchMakeCulture(c cursor) (Intent, cursor, bool) {
	d, told := c.over("i've", "we've", "just").phrase(makes...)
	d = d.over("another", "a", "an", "the", "today")
	if d.word(-1) == "culture" && told {
		d.i-- // "new culture" is a verb and a noun
	}
	what, e, sure := d.cultureToBe(told)
	if what.name == "" {
		return d.numberless(c, told)
	}
	d = e
	in := MakeCulture{Made: kitchen.CultureMade{Name: what.name, Kind: what.kind, Generation: what.generation}, Also: what.more, When: what.when}
	d, ok := in.details(d)
	if !ok && !(told && sure) {
		return nil, c, false
	}
	if species, ok := speciesOf(in.Made.Name); ok && in.Made.Species == "" {
		in.Made.Species = species
	}
	if _, vessel := d.token().(VesselWord); vessel {
		return nil, c, false // "new lc 4 jars" are jars
	}
	d.plain = true
	return in, d, true
}

// cultureToBe takes the name of a culture to be. It is sure where a verb alone makes
// it one.
func (c cursor) cultureToBe(told bool) (what aCulture, d cursor, sure bool) {
	if what, d, ok := c.numberedCulture(); ok {
		return what, d, true
	}
	noun, kind, plural, d, ok := c.cultureNoun()
	if e, called := d.phrase("called", "named", "by the name of", "with the name"); ok && called && told && !plural {
		name, e, fine := e.over(":").freeCulture()
		if !fine {
			return aCulture{}, c, false
		}
		if kind == 0 {
			kind = kindOfName(name)
		}
		return aCulture{name: name, kind: kind}, e, true
	}
	if species, e, is := d.over("of").species(); ok && is && told && kind != 0 && !plural {
		return aCulture{name: species + " " + noun, kind: kind}, e, true // "new plate oyster"
	}
	if ok && told && kind == 0 && !plural {
		if name, e, fine := d.freeCulture(); fine {
			return aCulture{name: name, kind: kindOfName(name)}, e, true
		}
	}
	if what, d, ok := c.describedCulture(); ok {
		return what, d, true
	}
	return aCulture{}, c, false
}

// details takes what is said of a new culture, in any order; false when it was
// nothing that makes a culture of it.
func (m *MakeCulture) details(c cursor) (cursor, bool) {
	tells := false
	for range mostDetails {
		d := c
		if e, ok := d.mark(",;:-("); ok {
			d = e
		}
		d = d.over("and", "with", "it", "it's", "is", "as", "a", "an", "about", "around", "in", "there", "today", "now", "are", "was", "were", "its", "some")
		e, is, ok := m.detail(d)
		if !ok {
			return c, tells
		}
		tells = tells || is
		c = e
		if f, ok := c.mark(")"); ok {
			c = f
		}
	}
	return c, tells
}

// detail takes one thing that is said of a new culture; is reports whether that alone
// makes one of it.
func (m *MakeCulture) detail(c cursor) (d cursor, is, ok bool) {
	if d, ok := c.phrase("from", "taken from", "off", "made from", "made of", "out of", "poured from", "transferred from", "cloned from", "started from", "grown from", "inoculated from", "taken of", "out from", "taken off", "inoculated with"); ok {
		d, ok = m.parent(d)
		return d, true, ok
	}
	if s, d, ok := c.quantity(Volume); ok && m.Made.Volume == 0 {
		m.Made.Volume = rounded(unit.Litres(s.Value))
		return d.over("of", "left", "lc"), false, true
	}
	if d, ok := m.generation(c); ok {
		return d, false, true
	}
	if d, ok := m.owner(c); ok {
		return d, false, true
	}
	e, done := c.phrase("made", "poured", "started", "filled", "inoculated")
	if when, d, ok := e.over("on", "since", "it").when(); ok && m.When == nil && when.Shift <= 0 {
		m.When = &when
		return d, done, true
	}
	if p, old := c.token().(Period); old && m.When == nil && p.Length >= 24*time.Hour {
		if d, ok := c.use(1).phrase("old"); ok {
			when := daysBack(p.Length)
			m.When = &when
			return d, true, true
		}
	}
	if species, d, ok := c.over("of").species(); ok && m.Made.Species == "" {
		m.Made.Species = species
		if _, kind, _, e, ok := d.cultureNoun(); ok && (m.Made.Kind == 0 || kind == m.Made.Kind || kind == 0) {
			m.Made.Kind, d = max(m.Made.Kind, kind), e // "lion's mane lc"
		}
		return d, true, true
	}
	if _, kind, plural, d, ok := c.cultureNoun(); ok && m.Made.Kind == 0 && kind != 0 && !plural {
		m.Made.Kind = kind
		return d, true, true
	}
	return c, false, false
}

// generation takes "g2", "2nd generation", "generation 2".
func (m *MakeCulture) generation(c cursor) (cursor, bool) {
	d, ok := c.phrase("generation", "g", "gen", "transfer")
	if ok {
		n, e, ok := d.number()
		gen, isWhole := whole(n)
		if !ok || !isWhole || gen < 1 || gen > mostGenerations {
			return c, false
		}
		m.Made.Generation = gen
		return e, true
	}
	for i, word := range []string{"first", "second", "third", "fourth", "fifth", "sixth"} {
		if d, ok := c.phrase(word+" generation", strconv.Itoa(i+1)+ordinalEnd(i+1)+" generation", word+" gen"); ok {
			m.Made.Generation = i + 1
			return d, true
		}
	}
	return c, false
}

// owner takes whose it is: "mine", "jo's", "belongs to jo".
func (m *MakeCulture) owner(c cursor) (cursor, bool) {
	if m.Owner != "" {
		return c, false
	}
	if d, ok := c.phrase("mine", "belongs to me", "my own", "of mine"); ok {
		m.Owner = Speaker
		return d, true
	}
	d, sure := c.phrase("belongs to", "belonging to", "owned by", "owner", "owner is", "for", "of", "property of")
	if n, ok := d.token().(Name); ok && n.Of == MemberName {
		if _, genitive := strings.CutSuffix(d.word(0), "s"); sure || genitive {
			m.Owner = n.Text
			return d.use(1), true
		}
	}
	if sure && strings.HasPrefix(d.word(-1), "to") || sure && d.word(-1) == "by" {
		if who, e, ok := d.person(true); ok {
			m.Owner = who
			return e, true
		}
	}
	return c, false
}

// parent takes what a culture was taken of: a unit, a culture, or whoever it came from.
func (m *MakeCulture) parent(c cursor) (cursor, bool) {
	if m.Made.From != "" || m.Made.FromUnit != (kitchen.UnitRef{}) {
		return c, false
	}
	d := c.over("the", "our", "my", "jar", "bag", "unit")
	if ref, e, ok := d.oneUnit(); ok {
		m.Made.FromUnit = ref
		return e, true
	}
	if from, e, ok := c.cultureHere(); ok && len(from.more) == 0 {
		m.Made.From = from.name
		m.When, m.Made.Generation = firstMoment(m.When, from.when), max(m.Made.Generation, from.generation)
		return e, true
	}
	if who, e, ok := c.outsider(); ok {
		m.Made.From = who
		return e, true
	}
	name, e, ok := c.freeCulture()
	m.Made.From = name
	return e, ok
}

// outsider takes who a culture came from: a member, a first name, or a word that nobody
// knows.
func (c cursor) outsider() (string, cursor, bool) {
	if w, ok := c.token().(Word); ok {
		if k := vocabulary()[w.Text]; k != nil && !k.person || w.Class != Unknown && k == nil {
			return "", c, false
		}
	}
	who, d, ok := c.person(true)
	_, word := d.token().(Word)
	_, detail := d.phrase(beginsDetail...)
	return who, d, ok && (!word || detail)
}

func firstMoment(a, b *Moment) *Moment {
	if a != nil {
		return a
	}
	return b
}

// oneUnit takes a single unit of a run: 9.2, #9.2.
func (c cursor) oneUnit() (kitchen.UnitRef, cursor, bool) {
	var ref kitchen.Ref
	switch t := c.token().(type) {
	case RunRef:
		ref = t.Ref
	case Number:
		if t.Ref != nil {
			ref = *t.Ref
		}
	}
	if len(ref.Units) != 1 {
		return kitchen.UnitRef{}, c, false
	}
	return kitchen.UnitRef{Run: ref.Run, Unit: ref.Units[0]}, c.use(1), true
}
