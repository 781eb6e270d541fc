package phrase

import (
	"strings"
	"unicode/utf8"

	"ryebell/internal/kitchen"
)

// sentence is a text with its tokens. said holds each token as one folded word,
// so that fixed phrases can be compared whatever their tokens mean.
type sentence struct {
	text  string
	toks  []Token
	said  []string
	names Names
	// timed is true when a time stands somewhere: most grammars that need one are
	// done at once with a sentence that has none.
	timed bool
}

func read(text string, names Names) *sentence {
	s := &sentence{text: text, toks: Lex(text, names), names: names}
	s.said = make([]string, len(s.toks))
	for i, t := range s.toks {
		s.said[i] = saidWord(text, t)
		switch t.(type) {
		case When, Interval:
			s.timed = true
		}
	}
	return s
}

// saidWord is the token as it was typed, in lower case with straight quotes; a
// misspelt word as it was read.
func saidWord(text string, t Token) string {
	if w, ok := t.(Word); ok {
		return w.Text
	}
	e := t.Extent()
	w := text[e.Start:e.End]
	for i := range len(w) {
		if c := w[i]; c >= utf8.RuneSelf || 'A' <= c && c <= 'Z' {
			return strings.ToLower(strings.ReplaceAll(w, "’", "'"))
		}
	}
	return w
}

// typed is the part of the text that tokens [i, j) were read from.
func (s *sentence) typed(i, j int) string {
	if i >= j {
		return ""
	}
	return s.text[s.toks[i].Extent().Start:s.toks[j-1].Extent().End]
}

// cursor is a place in a sentence and what it cost to get there. It is a value:
// to try something and come back, copy it.
type cursor struct {
	s *sentence
	i int
	// used counts the words that had a meaning, filler those that had none.
	used, filler int
	// ask is the question that the reading leaves open, near what stands in
	// its way.
	ask  *asking
	near *Near
	// bare is set for what people say to each other just so.
	bare bool
	// quoted are the tokens of a name or code: letters that mean themselves.
	quoted [2]int
	// listMost is how many units a list may name; 0 for any. A list is read shorter
	// where the last of it begins something new.
	listMost int
	// plain is true when people don't say to each other what was read.
	plain bool
}

// asking is a question with a hole: fill prints the
// sentence that the words of a reply complete the reading to, and returns the
// place behind them.
type asking struct {
	gap     Gap
	about   string
	options []string
	fill    func(reply cursor) (whole string, rest cursor, ok bool)
}

// end returns the place behind all.
func (c cursor) end() cursor {
	c.i = len(c.s.toks)
	return c
}

// left returns what is left of the text.
func (c cursor) left() string { return c.s.typed(c.i, len(c.s.toks)) }

func (c cursor) done() bool { return c.i >= len(c.s.toks) }

// token returns the token at hand, nil at the end.
func (c cursor) token() Token { return c.ahead(0) }

// ahead returns the token n places on; nil beyond either end.
func (c cursor) ahead(n int) Token {
	if k := c.i + n; k >= 0 && k < len(c.s.toks) {
		return c.s.toks[k]
	}
	return nil
}

// word returns the token n places on as a folded word; "" beyond either end.
func (c cursor) word(n int) string {
	if k := c.i + n; k >= 0 && k < len(c.s.said) {
		return c.s.said[k]
	}
	return ""
}

// use goes n tokens on and counts them as words with a meaning.
func (c cursor) use(n int) cursor {
	c.i += n
	c.used += n
	return c
}

// skip goes n tokens on and counts them as filler.
func (c cursor) skip(n int) cursor {
	c.i += n
	c.filler += n
	return c
}

// length returns how many tokens the phrase takes when it stands here, 0 when
// it doesn't. Words of a phrase are parted by single spaces.
func (c cursor) length(phrase string) int {
	n := 0
	for phrase != "" {
		w := c.word(n)
		if w == "" {
			return 0
		}
		if phrase == w {
			return n + 1
		}
		if !strings.HasPrefix(phrase, w) || phrase[len(w)] != ' ' {
			return 0
		}
		phrase = phrase[len(w)+1:]
		n++
	}
	return n
}

// phrase takes the longest of the phrases that stands here.
func (c cursor) phrase(phrases ...string) (cursor, bool) {
	best, first := 0, c.word(0)
	if first == "" || first[len(first)-1] <= '9' && '0' <= first[0] && first[0] <= '9' {
		return c, false // no phrase begins with a number
	}
	for _, p := range phrases {
		if p[0] == first[0] && len(p) >= len(first) && p[len(first)-1] == first[len(first)-1] { // nearly all phrases end here
			best = max(best, c.length(p))
		}
	}
	return c.use(best), best > 0
}

// maybe takes a phrase as filler if one stands here.
func (c cursor) maybe(phrases ...string) cursor {
	d, ok := c.phrase(phrases...)
	if !ok {
		return c
	}
	return c.skip(d.i - c.i)
}

// back steps back over the words before the place at hand, and over one more
// token.
func (c cursor) back(words ...string) cursor {
	c.i--
	for _, w := range words {
		if c.word(0) == w {
			c.i--
			break
		}
	}
	return c
}

// over takes as many of the phrases as stand here one after another.
func (c cursor) over(phrases ...string) cursor {
	for {
		d := c.maybe(phrases...)
		if d.i == c.i {
			return c
		}
		c = d
	}
}

// mark takes one of the marks.
func (c cursor) mark(runes string) (cursor, bool) {
	if m, ok := c.token().(Mark); ok && strings.ContainsRune(runes, m.Rune) {
		c.i++
		return c, true
	}
	return c, false
}

// parted takes what stands between things said in one breath: commas, line
// breaks, full stops, "and".
func (c cursor) parted() cursor {
	for {
		if d, ok := c.mark(",+;.!?\n&:"); ok {
			c = d
			continue
		}
		if d, ok := c.phrase("and", "also", "plus", "then", "but"); ok {
			c.i = d.i
			continue
		}
		return c
	}
}

// quantity takes a quantity that can be of the dimension.
func (c cursor) quantity(dim Dimension) (Sense, cursor, bool) {
	q, ok := c.token().(Quantity)
	if !ok {
		return Sense{}, c, false
	}
	for _, s := range q.Senses {
		if s.Dim == dim {
			return s, c.use(1), true
		}
	}
	return Sense{}, c, false
}

// number takes a bare number.
func (c cursor) number() (float64, cursor, bool) {
	if n, ok := c.token().(Number); ok {
		return n.Value, c.use(1), true
	}
	return 0, c, false
}

// percent takes a number of hundredths.
func (c cursor) percent() (float64, cursor, bool) {
	if p, ok := c.token().(Percent); ok {
		return p.Value, c.use(1), true
	}
	return 0, c, false
}

// when takes a moment.
func (c cursor) when() (Moment, cursor, bool) {
	if w, ok := c.token().(When); ok {
		return w.Moment, c.use(1), true
	}
	return Moment{}, c, false
}

// vessel takes jar, bags, pints and the like.
func (c cursor) vessel() (kitchen.Container, cursor, bool) {
	if v, ok := c.token().(VesselWord); ok {
		return v.Container, c.use(1), true
	}
	return kitchen.Container{}, c, false
}

// sense returns the meaning of a quantity in a dimension.
func (q Quantity) sense(dim Dimension) (Sense, bool) {
	for _, s := range q.Senses {
		if s.Dim == dim {
			return s, true
		}
	}
	return Sense{}, false
}
