package phrase

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"ryebell/internal/kitchen"
)

// cultureNouns are what a culture lives in, as people call it: the noun that its name
// has, and the kind that this says. A plural stands before several numbers.
var cultureNouns = [...]struct {
	words, plurals []string
	noun           string
	kind           kitchen.CultureKind
}{
	{[]string{"plate", "agar plate", "petri dish", "petri", "dish", "pl", "plt"}, []string{"plates", "agar plates", "petri dishes", "petris", "dishes"}, "plate", kitchen.Plate},
	{[]string{"lc", "liquid culture"}, []string{"lcs", "liquid cultures", "lc's"}, "lc", kitchen.LiquidBottle},
	{[]string{"lc syringe", "liquid culture syringe"}, []string{"lc syringes"}, "lc syringe", kitchen.LiquidBottle},
	{[]string{"lc bottle", "bottle of lc", "bottle", "flask"}, []string{"bottles", "lc bottles", "bottles of lc", "flasks"}, "bottle", kitchen.LiquidBottle},
	{[]string{"agar"}, []string{"agars"}, "agar", kitchen.Plate},
	{[]string{"grain master", "master", "master jar"}, []string{"masters", "grain masters"}, "master", kitchen.GrainMaster},
	{[]string{"syringe", "spore syringe"}, []string{"syringes", "spore syringes"}, "syringe", kitchen.Syringe},
	{[]string{"culture", "slant"}, []string{"cultures", "slants"}, "culture", 0},
}

// The longest name of a culture, in letters and in words; how many are made or thrown
// out in one breath; how much is said of a new one.
const (
	mostCultureLetters = 40
	mostCultureWords   = 5
	mostTogether       = 24
	mostDetails        = 8
)

// aCulture is what was read where a culture must stand.
type aCulture struct {
	// name in lower case, unless the collective has one that is spelt otherwise; more
	// are those named in the same breath, "plates 7-9".
	name string
	more []string
	kind kitchen.CultureKind
	// known is set for a name that the collective has.
	known bool
	// when is a day that stands behind the number without a word: "plate 7 yesterday".
	when *Moment
	// generation is the same for "plate 7 g2".
	generation int
}

// knownCulture takes the longest name of a culture of the collective that stands here,
// whatever its words mean otherwise. Only who must have a culture here asks for it.
func (c cursor) knownCulture() (aCulture, cursor, bool) {
	name, d, ok := c.amongOwn(c.s.names.Sources)
	if !ok {
		return aCulture{}, c, false
	}
	return aCulture{name: name, kind: kindOfName(name), known: true}, d, true
}

// spelt is a name as names are compared: in lower case with single spaces, and
// without a number sign.
func spelt(name string) string {
	return strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(strings.ReplaceAll(name, "#", ""), "’", "'"))), " ")
}

// cultureNoun takes a noun of those; plural says whether it was one.
func (c cursor) cultureNoun() (noun string, kind kitchen.CultureKind, plural bool, d cursor, ok bool) {
	d = c
	for _, n := range cultureNouns {
		one, ok := c.phrase(n.words...)
		many, ok2 := c.phrase(n.plurals...)
		if ok && one.i > d.i {
			noun, kind, plural, d = n.noun, n.kind, false, one
		}
		if ok2 && many.i > d.i {
			noun, kind, plural, d = n.noun, n.kind, true, many
		}
	}
	if n, eight := c.ahead(1).(Number); eight && c.word(0) == "pl" && c.word(1) == "8" && c.glued(1) {
		if _, number := c.ahead(2).(Number); number && n.Ref == nil {
			return "plate", kitchen.Plate, false, c.use(2), true // "pl8 2"
		}
	}
	return noun, kind, plural, d, noun != ""
}

// glued reports whether nothing stands between the token n places on and the one before.
func (c cursor) glued(n int) bool {
	return c.ahead(n-1) != nil && c.ahead(n) != nil && c.ahead(n-1).Extent().End == c.ahead(n).Extent().Start
}

// kindOfName is the kind that a noun in a name says.
func kindOfName(name string) kitchen.CultureKind {
	words := " " + strings.ToLower(name) + " "
	for _, n := range cultureNouns {
		for _, w := range append(n.words[:len(n.words):len(n.words)], n.plurals...) {
			if n.kind != 0 && strings.Contains(words, " "+w+" ") {
				return n.kind
			}
		}
	}
	return 0
}

// numberedCulture takes "plate 7", "lc no 4", "plate b", "plates 7-9", "plates 7, 8 and 9".
func (c cursor) numberedCulture() (aCulture, cursor, bool) {
	noun, kind, plural, d, ok := c.cultureNoun()
	if !ok {
		return aCulture{}, c, false
	}
	d = d.over("no", "nr", "number", "#")
	out := aCulture{kind: kind}
	if lo, hi, ok := d.cultureRange(&out); ok {
		for n := lo + 1; n <= hi; n++ {
			out.more = append(out.more, noun+" "+strconv.Itoa(n))
		}
		out.name = noun + " " + strconv.Itoa(lo)
		return out, d.use(1), true
	}
	mark, d, ok := d.cultureNumber(&out)
	if !ok {
		return aCulture{}, c, false
	}
	out.name = noun + " " + mark
	for plural && len(out.more) < mostTogether && out.when == nil && out.generation == 0 {
		e := d.parted()
		next, e, ok := e.cultureNumber(&out)
		if !ok {
			break
		}
		out.more, d = append(out.more, noun+" "+next), e
	}
	return out, d, true
}

// cultureRange is the numbers of "plates 7-9"; with a day behind it they look like
// hours.
func (c cursor) cultureRange(of *aCulture) (lo, hi int, ok bool) {
	switch t := c.token().(type) {
	case Range:
		first, isWhole := whole(t.Lo)
		last, isWhole2 := whole(t.Hi)
		lo, hi, ok = first, last, isWhole && isWhole2 && t.Senses == nil
	case Interval:
		from, to := t.From, t.To
		if from.Clock == nil || to.Clock == nil || from.Clock.Minute != 0 || to.Clock.Minute != 0 || !from.Day.Said {
			return 0, 0, false
		}
		lo, hi = from.Clock.Hour, to.Clock.Hour
		ok = strings.HasPrefix(c.word(0), strconv.Itoa(lo)+"-"+strconv.Itoa(hi)+" ")
		of.when = &Moment{Day: from.Day}
	}
	return lo, hi, ok && lo >= 1 && lo < hi && hi-lo < mostTogether
}

// cultureNumber takes the number, or the letter, that tells cultures of a kind apart.
func (c cursor) cultureNumber(of *aCulture) (string, cursor, bool) {
	switch t := c.token().(type) {
	case Number:
		n, ok := whole(t.Value)
		if ok && !t.Word && !t.Times && n >= 0 && n <= mostRuns {
			return strconv.Itoa(n), c.use(1), true
		}
	case RunRef:
		if len(t.Ref.Units) == 0 && t.Ref.Run > 0 {
			return strconv.Itoa(int(t.Ref.Run)), c.use(1), true
		}
	case Quantity: // "7 g2" is 7 g and 2
		n, ok := whole(t.Number)
		g, isNumber := c.ahead(1).(Number)
		gen, isWhole := whole(g.Value)
		if s, grams := t.sense(Mass); ok && grams && s.Unit == "g" && isNumber && isWhole && gen <= mostGenerations {
			of.generation = gen
			return strconv.Itoa(n), c.use(2), true
		}
	case When: // "7 yesterday" is a time of day where no plate stands before it
		m := t.Moment
		said := c.word(0)
		if m.Clock == nil || m.Clock.Minute != 0 || !m.Day.Said || !strings.HasPrefix(said, strconv.Itoa(m.Clock.Hour)+" ") {
			return "", c, false
		}
		n := strconv.Itoa(m.Clock.Hour)
		m.Clock = nil
		of.when = &m
		return n, c.use(1), true
	case Word:
		w := t.Text
		if letter := len(w) == 1 && unicode.IsLetter(rune(w[0])) && w != "n" && w != "w"; letter || unicode.IsDigit(rune(w[0])) && len(w) <= 4 {
			return w, c.use(1), true
		}
	}
	return "", c, false
}

// mostGenerations is the most that anybody says of a culture.
const mostGenerations = 20

// describedCulture takes a noun with what it is like before it: "blue lc", "king plate
// 4", "mira's plate".
func (c cursor) describedCulture() (aCulture, cursor, bool) {
	d := c
	for n := 0; n < mostOfCulture; n++ {
		if n > 0 {
			noun, kind, _, e, ok := d.cultureNoun()
			if ok && kind != 0 {
				head := spelt(c.s.typed(c.i, d.i))
				if num, f, ok := d.numberedCulture(); ok && len(num.more) == 0 {
					num.name = head + " " + num.name
					return num, f, true
				}
				return aCulture{name: head + " " + noun, kind: kind}, e, true
			}
		}
		if _, e, ok := d.species(); ok {
			d = e
			continue
		}
		switch t := d.token().(type) {
		case Name:
			if t.Of != MemberName {
				return aCulture{}, c, false
			}
		case Word:
			if t.Class != Unknown || len(t.Mended) > 0 {
				return aCulture{}, c, false
			}
		default:
			return aCulture{}, c, false
		}
		d = d.use(1)
	}
	return aCulture{}, c, false
}

// cultureHere takes the name of a culture: one that the collective has, or what can
// hardly be anything else.
func (c cursor) cultureHere() (aCulture, cursor, bool) {
	d := c.over("the", "our", "my", "that", "culture")
	for _, from := range [...]cursor{d, c} {
		known, e, ok := from.knownCulture()
		numbered, f, ok2 := from.numberedCulture()
		switch {
		case ok2 && f.i > e.i: // "plate 7" where only a "plate" is known
			return numbered, f, true
		case ok:
			return known, e, true
		}
	}
	return d.describedCulture()
}

// freeCulture takes words up to the next mark, or to what begins a detail, as a name.
func (c cursor) freeCulture() (string, cursor, bool) {
	d := c
	for d.i-c.i < mostCultureWords && !d.done() {
		if _, begins := d.phrase(beginsDetail...); begins && d.i > c.i {
			break
		}
		stop := false
		switch t := d.token().(type) {
		case Mark:
			stop = t.Rune != '-'
		case When, Interval, Period, Percent:
			stop = true
		}
		if stop {
			break
		}
		d = d.use(1)
	}
	name := spelt(c.s.typed(c.i, d.i))
	d.quoted = [2]int{c.i, d.i}
	return name, d, named(name)
}

// beginsDetail are the words that a name ends before.
var beginsDetail = []string{"from", "is", "of", "made", "poured", "was", "on", "since", "mine", "belongs", "taken", "out of", "for", "with", "please", "pls", "plz", "thanks"}

// unnamed are words that are no name: nobody could speak of the culture.
var unnamed = set(`it that this all everything them they those these me mine you us we i the a an one two three some any each culture plate lc bottle
	syringe master agar slant from of is no not and or`)

// named reports whether a text can be the name of a culture.
func named(name string) bool {
	return name != "" && !unnamed[name] && utf8.RuneCountInString(name) <= mostCultureLetters && strings.ContainsFunc(name, unicode.IsLetter)
}
