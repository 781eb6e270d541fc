package phrase

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// glossary has phrases by their first word, each with what it means: to look one up
// costs no more than the few that begin alike.
type glossary[T any] map[string][]saidAs[T]

type saidAs[T any] struct {
	phrase string
	means  T
}

func (g glossary[T]) add(means T, phrases ...string) {
	for _, p := range phrases {
		first, _, _ := strings.Cut(p, " ")
		g[first] = append(g[first], saidAs[T]{p, means})
	}
}

// take takes the longest of the phrases that stands here; of two alike the first.
func (g glossary[T]) take(c cursor) (means T, end cursor, ok bool) {
	best := 0
	for _, p := range g[c.word(0)] {
		if n := c.length(p.phrase); n > best {
			best, means = n, p.means
		}
	}
	return means, c.use(best), best > 0
}

// amongOwn takes the longest of the collective's own names that stands here, as the
// collective writes it.
func (c cursor) amongOwn(names []string) (string, cursor, bool) {
	head := c.word(0)
	if !slices.ContainsFunc(names, func(name string) bool { return beginsAlike(name, head) }) {
		return "", c, false // mostly so, and quickly seen
	}
	for n := min(mostCultureWords, len(c.s.toks)-c.i); n > 0; n-- {
		text := c.s.typed(c.i, c.i+n)
		if strings.Contains(text, "\n") {
			continue // no name goes over a line
		}
		text = spelt(text)
		for _, name := range names {
			if spelt(name) == text {
				return name, c.use(n), true
			}
		}
	}
	return "", c, false
}

// beginsAlike reports whether a name can be one that a word begins: by the first letter,
// a sign aside.
func beginsAlike(name, word string) bool {
	a, _ := utf8.DecodeRuneInString(strings.TrimLeft(name, "# "))
	b, _ := utf8.DecodeRuneInString(word)
	return b == '#' || unicode.ToLower(a) == unicode.ToLower(b) || strings.ContainsRune("'’", a)
}

// freeWords takes words of any meaning, at most so many, up to what ends or parts
// what is said: a mark, a time, a unit.
func (c cursor) freeWords(most int) (cursor, bool) {
	d, ends := c, c
	for d.i-c.i < most && !d.done() {
		switch t := d.token().(type) {
		case Word:
			switch t.Text {
			case "and", "then", "but", "with", "w", "n":
				if d.i == c.i || !d.goesOnFree() {
					return ends, ends.i > c.i
				}
				d = d.use(1)
				continue
			case "please", "pls", "plz", "thx", "thanks", "now", "ok", "again", "already", "too", "yesterday", "today", "sorry":
				return ends, ends.i > c.i
			}
		case Name, VesselWord, GrainWord, RouteWord, Quantity:
		case Number:
			if t.Ref != nil || t.Value < 0 {
				return ends, ends.i > c.i
			}
		case Range, Unclear, Percent, RunRef, When, Period, Interval, Unsuited, Mark, Tag:
			return ends, ends.i > c.i
		}
		d = d.use(1)
		ends = d
	}
	return ends, ends.i > c.i
}

// goesOnFree reports whether the "and" at hand joins two free words, and doesn't begin
// something new.
func (c cursor) goesOnFree() bool {
	if _, word := c.ahead(1).(Word); !word {
		return false
	}
	d := c.use(1)
	return !d.tellsUnits() && !tellStarts()[d.word(0)]
}

// loweredWords is the text of tokens [i, j) in lower case, with single spaces.
func (s *sentence) loweredWords(i, j int) string {
	return strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(s.typed(i, j), "’", "'"))), " ")
}

// typedWords is the text of tokens [i, j) with single spaces.
func (s *sentence) typedWords(i, j int) string {
	return strings.Join(strings.Fields(s.typed(i, j)), " ")
}
