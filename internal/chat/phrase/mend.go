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
// edit away, swapped letters counting as one, two from eight letters on; none
// below four letters unless a number or unit stands beside.
func (l *lexer) mend() {
	looked := 0
	for i := range l.atoms {
		a := &l.atoms[i]
		if a.kind != atomWord || a.known != nil || len(a.text) < 3 || len(a.text) > longestMended || strings.Contains(a.text, "'") {
			continue
		}
		if len(a.text) < 4 && !l.measuredBeside(i) || l.named(i) {
			continue
		}
		if looked++; looked > mostMended {
			return
		}
		l.mendAtom(a)
	}
}

// measuredBeside reports whether a number or unit stands beside atom i.
func (l *lexer) measuredBeside(i int) bool {
	for _, j := range [...]int{i - 1, i + 1} {
		a := l.at(j)
		if a.kind == atomDigits || a.known != nil && (a.known.measure != nil || a.known.number != 0 && a.known.number != article) {
			return true
		}
	}
	return false
}

// named reports whether atom i is part of a name of this collective.
func (l *lexer) named(i int) bool {
	for _, names := range [...][]string{l.names.Cookers, l.names.Members} {
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

func (l *lexer) mendAtom(a *atom) {
	limit := 1
	if utf8.RuneCountInString(a.text) >= 8 {
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
	if near.distance <= limit {
		a.take(near.words)
	}
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
	for _, names := range [...][]string{l.names.Cookers, l.names.Members} {
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

// take mends the atom when all the words found mean one thing, and keeps them as
// choices when they don't. A firm word is never one of them. Words that mean nothing count only against numbers:
// thre is three or there, baught can only be bought.
func (a *atom) take(found []target) {
	var near, loud []target
	counting := false
	for _, t := range found {
		if t.firmBeside(found) {
			continue
		}
		near = append(near, t)
		if !t.quiet {
			loud = append(loud, t)
			counting = counting || t.known != nil && t.known.number != 0
		}
	}
	if len(loud) == 0 {
		return
	}
	one := !counting || len(near) == len(loud)
	best := loud[0]
	for _, t := range loud[1:] {
		one = one && t.known.means(best.known)
		if len(t.word) > len(best.word) || len(t.word) == len(best.word) && t.word < best.word {
			best = t // the order of a map must not show
		}
	}
	if one {
		a.text, a.known, a.slip = best.word, best.known, &slip{as: best.word}
		return
	}
	a.slip = &slip{}
	for _, t := range near {
		a.slip.near = append(a.slip.near, t.word)
	}
	slices.Sort(a.slip.near)
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

// means reports whether two words mean the same: bag and bags, degree and
// degrees.
func (e *entry) means(f *entry) bool {
	if e == nil || f == nil {
		return false
	}
	return e == f || e.measure != nil && e.measure == f.measure ||
		e.vessel != 0 && e.vessel == f.vessel ||
		e.weekday != 0 && e.weekday == f.weekday || e.month != 0 && e.month == f.month ||
		e.day != 0 && e.day == f.day || e.number != 0 && e.number == f.number && e.value == f.value
}
