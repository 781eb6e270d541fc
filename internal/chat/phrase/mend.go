package phrase

import (
	"math/bits"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/hbollon/go-edlib"
)

const (
	// mostMended is how many unknown words of a text are looked at: more are no
	// message with a slip in it, and each costs a walk through the vocabulary.
	mostMended = 16
	// longestMended is longer than any word of the vocabulary.
	longestMended = 16
)

// target is a word that a misspelt one may be taken for.
type target struct {
	word string
	// letters has a bit for each letter of the word: two words that differ in
	// more than two letters an edit are not worth measuring.
	letters uint32
	known   *entry
	// quiet words are known but mean nothing here: one that is nearer says that
	// nothing of ours was meant.
	quiet bool
}

// targets are the words of the vocabulary by their length.
var targets = sync.OnceValue(func() [longestMended + 3][]target {
	var t [longestMended + 3][]target
	for w, e := range vocabulary() {
		if n := len(w); n >= 2 && n < len(t) && !strings.Contains(w, "'") {
			t[n] = append(t[n], target{w, letterBits(w), e, e.silent()})
		}
	}
	return t
})

// silent reports whether a word means nothing to any grammar.
func (e *entry) silent() bool {
	if e.number != 0 || e.measure != nil || e.vessel != 0 || e.day != 0 || e.weekday != 0 || e.month != 0 || e.phrases != nil {
		return false
	}
	switch e.class {
	case Trade, Calendar, Measuring, Greeting, Thanking, Ordinal:
		return false
	case Unknown, Filler, Asking, Agreeing, Denying, Joining, Pronoun, Everyday:
		return true
	}
	panic(e.class)
}

func letterBits(w string) uint32 {
	var b uint32
	for i := range len(w) {
		if c := w[i]; 'a' <= c && c <= 'z' {
			b |= 1 << (c - 'a')
		} else {
			b |= 1 << 26
		}
	}
	return b
}

// mend takes unknown words for the known ones they are a misspelling of: one
// edit away, swapped letters counting as one, two from eight letters on, and
// from seven when two were left out and no other word is as near; none below four
// letters unless a number, unit or vessel stands beside.
func (l *lexer) mend() {
	looked := 0
	for i := range l.atoms {
		a := &l.atoms[i]
		if l.beside(i) {
			continue
		}
		if a.kind != atomWord || a.known != nil || len(a.text) < 3 || len(a.text) > longestMended || strings.Contains(a.text, "'") {
			continue
		}
		if len(a.text) < 4 && !l.measuredBeside(i) || l.named(i) {
			continue
		}
		if looked++; looked > mostMended {
			return
		}
		l.mendAtom(i)
	}
}

// beside mends what only the words around it show to be misspelt: bye 14:30, how
// mush.
func (l *lexer) beside(i int) bool {
	a := &l.atoms[i]
	word := ""
	switch {
	case a.text == "bye" && l.at(i+1).kind == atomDigits && (l.glued(i+2, ":") || l.is(i+2, "am", "pm")):
		word = "by"
	case a.text == "teh" || a.text == "hte":
		a.text, a.known = "the", vocabulary()["the"] // nobody means another word
		return true
	case l.at(i-1).text == "how" && a.known == nil && a.kind == atomWord && len(a.text) >= 3:
		for _, w := range [...]string{"much", "many", "long"} {
			if oneEdit(a.text, w) && edlib.OSADamerauLevenshteinDistance(a.text, w) == 1 {
				word = w
			}
		}
	}
	if word == "" {
		return false
	}
	a.text, a.known, a.slip = word, vocabulary()[word], &slip{as: word}
	return true
}

// measuredBeside reports whether a number, unit or vessel stands beside atom i.
func (l *lexer) measuredBeside(i int) bool {
	for _, j := range [...]int{i - 1, i + 1} {
		a := l.at(j)
		if a.kind == atomDigits || a.known != nil && (a.known.measure != nil || a.known.vessel != 0 || a.known.number != 0 && a.known.number != article) {
			return true
		}
	}
	return false
}

// named reports whether atom i is part of a name of this collective.
func (l *lexer) named(i int) bool {
	for _, names := range [...][]string{l.names.Cookers, l.names.Members, l.names.Sources, l.names.Units, l.names.Places} {
		for _, n := range names {
			for w := range strings.FieldsFuncSeq(n, func(r rune) bool { return r == ' ' || r == '-' }) {
				if prefix(w, l.atoms[i].text) == len(w) {
					return true
				}
			}
		}
	}
	return false
}

// candidates are the nearest words found so far.
type candidates struct {
	distance int
	words    []target
}

func (c *candidates) add(t target, distance int) {
	if distance < c.distance {
		c.distance, c.words = distance, c.words[:0]
	}
	if distance == c.distance {
		c.words = append(c.words, t)
	}
}

func (l *lexer) mendAtom(i int) {
	a := &l.atoms[i]
	limit, size := 1, utf8.RuneCountInString(a.text)
	if size >= 7 {
		limit = 2
	}
	near := candidates{distance: limit + 1}
	letters := letterBits(a.text)
	for n := len(a.text) - limit; n <= len(a.text)+limit; n++ {
		for _, t := range targets()[n] {
			if bits.OnesCount32(t.letters^letters) > 2*limit || n < 3 && len(a.text) > 3 ||
				limit == 1 && !oneEdit(a.text, t.word) {
				continue
			}
			if d := edlib.OSADamerauLevenshteinDistance(a.text, t.word); d <= limit {
				near.add(t, d)
			}
		}
	}
	l.nearNames(a, limit, &near)
	if near.distance > limit || size == 7 && near.distance == 2 && !near.alike(a.text) {
		return
	}
	if l.at(i-1).kind == atomDigits { // 2 quartr are quarts
		near.words = slices.DeleteFunc(near.words, func(t target) bool { return t.known != nil && t.known.number == part })
	}
	rivals := other // thre is there, thre bags are three
	if next := l.at(i + 1).known; next != nil && (next.vessel != 0 || next.measure != nil) {
		rivals = doubled
	}
	a.take(near.words, rivals)
}

// alike reports whether all words found mean one thing and are the word with
// letters left out or in another order: wensday. Two other letters out of seven
// make a word of everyday another.
func (c *candidates) alike(text string) bool {
	var first *entry
	for _, t := range c.words {
		if t.known != nil && t.known.person {
			continue
		}
		if closenessOf(text, t.word) > shortened || first != nil && !t.known.means(first) {
			return false
		}
		first = t.known
	}
	return true
}

// closeness ranks words as many edits away by how people mistype: a letter
// doubled or not, two swapped, one left out, another but the first.
type closeness uint8

const (
	doubled closeness = iota
	swapped
	shortened
	begun
	other
)

func closenessOf(typed, word string) closeness {
	switch {
	case single(typed) == single(word):
		return doubled
	case typed[0] != word[0]:
		return other
	case len(typed) == len(word) && sorted(typed) == sorted(word):
		return swapped
	case within(typed, word):
		return shortened
	}
	return begun
}

// within reports whether w is what is left of word with some letters left out.
func within(w, word string) bool {
	for i := range len(word) {
		if w != "" && w[0] == word[i] {
			w = w[1:]
		}
	}
	return w == ""
}

// single is w with each letter that is doubled once.
func single(w string) string { return string(slices.Compact([]byte(w))) }

func sorted(w string) string {
	b := []byte(w)
	slices.Sort(b)
	return string(b)
}

// oneEdit reports whether two words can be one edit apart: what their heads and
// tails share leaves at most two letters, those of a swap. Measuring all words
// would take most of the time of a message.
func oneEdit(a, b string) bool {
	short, long := len(a), len(b)
	if short > long {
		short, long = long, short
	}
	head, tail := 0, 0
	for head < short && a[head] == b[head] {
		head++
	}
	for tail < short-head && a[len(a)-1-tail] == b[len(b)-1-tail] {
		tail++
	}
	return head+tail >= long-2
}

// nearNames adds the names of this collective that are near.
func (l *lexer) nearNames(a *atom, limit int, near *candidates) {
	for _, names := range [...][]string{l.names.Cookers, l.names.Members, l.names.Sources, l.names.Units, l.names.Places} {
		for _, n := range names {
			for w := range strings.FieldsSeq(n) {
				w = fold(w).s
				if len(w) < 4 || len(w) > len(a.text)+limit || len(w) < len(a.text)-limit {
					continue
				}
				if d := edlib.OSADamerauLevenshteinDistance(a.text, w); d <= limit {
					near.add(target{word: w, known: vocabulary()[w]}, d)
				}
			}
		}
	}
}

// take mends the atom when all the nearest words found mean one thing, and keeps
// them as choices when they don't. A firm word is never one of them. Words that
// mean nothing count only against numbers, up to the closeness of rivals: thre is
// three or there, baught can only be bought.
func (a *atom) take(found []target, rivals closeness) {
	var near, loud []target
	best := other
	for _, t := range found {
		if t.firmBeside(found) {
			continue
		}
		near = append(near, t)
		switch c := closenessOf(a.text, t.word); {
		case t.quiet:
		case len(loud) == 0 || c < best:
			loud, best = append(loud[:0], t), c
		case c == best:
			loud = append(loud, t)
		}
	}
	if len(loud) == 0 {
		return
	}
	if w, ok := a.oneOf(loud, a.rivalled(near, max(best, rivals))); ok {
		a.text, a.known, a.slip = w.word, w.known, &slip{as: w.word}
		return
	}
	a.slip = &slip{}
	for _, t := range near {
		a.slip.near = append(a.slip.near, t.word)
	}
	slices.Sort(a.slip.near)
}

// oneOf picks the word that all those found mean; none when they mean several
// things, or a number that has a rival.
func (a *atom) oneOf(loud []target, rivalled bool) (target, bool) {
	best := loud[0]
	for _, t := range loud {
		if rivalled && t.known != nil && t.known.number != 0 || t.word != best.word && !t.known.means(best.known) {
			return target{}, false
		}
		if len(t.word) > len(best.word) || len(t.word) == len(best.word) && t.word < best.word {
			best = t // the order of a map must not show
		}
	}
	return best, true
}

// firmBeside reports whether t is a firm word or a form of one of those found:
// cooll is no more cools than cool.
func (t target) firmBeside(found []target) bool {
	for _, f := range found {
		if f.known != nil && f.known.firm && strings.HasPrefix(t.word, f.word) {
			return true
		}
	}
	return false
}

// rivalled reports whether a word without meaning is as close as that.
func (a *atom) rivalled(found []target, most closeness) bool {
	return slices.ContainsFunc(found, func(t target) bool {
		return t.quiet && (t.known == nil || !t.known.person) && closenessOf(a.text, t.word) <= most
	})
}

// means reports whether two words mean the same: bag and bags, degree and
// degrees.
func (e *entry) means(f *entry) bool {
	if e == nil || f == nil {
		return false
	}
	return e == f || e.measure != nil && e.measure == f.measure ||
		e.vessel != 0 && e.vessel == f.vessel ||
		e.weekday != 0 && e.weekday == f.weekday || e.month != 0 && e.month == f.month ||
		e.says(f) || e.day != 0 && e.day == f.day || e.number != 0 && e.number == f.number && e.value == f.value
}

// says reports whether two words alone name the same grain or route: agar and
// agars.
func (e *entry) says(f *entry) bool {
	if len(e.phrases) == 0 || len(f.phrases) == 0 {
		return false
	}
	one, two := e.phrases[len(e.phrases)-1], f.phrases[len(f.phrases)-1]
	return len(one.rest) == 0 && len(two.rest) == 0 && one.token(at{}) == two.token(at{})
}
