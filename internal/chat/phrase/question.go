package phrase

import (
	"strconv"
	"strings"
)

// question makes the public shape of what was left open. Every option says the
// whole sentence that it would complete the text to; one that would not be
// understood beside the rest of what was said is left out.
func (r reading) question() *Question {
	q := &Question{Gap: r.ask.gap, About: r.ask.about}
	for _, label := range r.ask.options {
		if len(q.Options) == 4 {
			break
		}
		if whole, _, ok := r.ask.fill(cursor{s: read(label, r.s.names)}); ok {
			say := r.say(whole)
			if len(r.intents) == 1 || understands(say, r.s.names) {
				q.Options = append(q.Options, Option{Label: label, Say: say})
			}
		}
	}
	return q
}

// understands reports whether all of a text is read, a question aside.
func understands(text string, names Names) bool {
	r := readAll(read(text, names))
	return r.near == nil && r.wrong == 0
}

// misspelt settles a misspelt word near several known ones: one that alone makes
// sense there is taken, of several is asked which.
func (r reading) misspelt() Parsed {
	q := r.whichWord()
	if q == nil || len(q.Options) > 1 {
		return Parsed{Ask: q}
	}
	p := Parse(q.Options[0].Say, r.s.names)
	p.Mended = append(p.Mended, q.Options[0].Label)
	return p
}

// whichWord asks which of several known words a misspelt one is, when it alone
// stands in the way; words that make no sense there are left out.
func (r reading) whichWord() *Question {
	if r.wrong != 1 {
		return nil
	}
	w, ok := r.s.toks[r.from].(Word)
	if !ok || len(w.Mended) < 2 {
		return nil
	}
	q := &Question{Gap: WhichWord, About: r.s.typed(r.from, r.to)}
	for _, label := range w.Mended {
		say := r.s.text[:w.ext.Start] + label + r.s.text[w.ext.End:]
		if p := Parse(say, r.s.names); p.Bare == Plainly && len(p.Intents) > 0 && len(q.Options) < 4 {
			q.Options = append(q.Options, Option{Label: label, Say: say})
		}
	}
	if len(q.Options) == 0 {
		return nil
	}
	return q
}

// Complete finishes a text that left a question open with the reply to it, by
// place ("the first"), by the label of an option or part of it, or by whatever
// else answers it ("500 ml"). It returns the whole sentence that both say
// together, and false when the reply is no answer.
func Complete(question *Question, text, reply string, names Names) (string, bool) {
	if question == nil {
		return "", false
	}
	answer := cursor{s: read(reply, names)}
	n, bare := bareNumber(answer)
	if say, ok := beginning(question.Options, n); bare && ok {
		return say, true
	}
	if place, ok := placeOf(answer); ok && place <= len(question.Options) {
		return question.Options[place-1].Say, true
	}
	if bare {
		answer = cursor{s: read(withUnit(question.Options, n), names)}
	}
	if say, ok := labelled(question.Options, reply); ok {
		return say, true
	}
	r := readAll(read(text, names))
	r.withoutManners()
	if r.ask == nil || r.ask.gap != question.Gap {
		return "", false
	}
	whole, rest, ok := r.ask.fill(answer.beginning())
	if !ok {
		return inLabel(question.Options, reply)
	}
	if more := rest.left(); more != "" {
		whole += " " + more
	}
	say := r.say(whole)
	own := Parse(reply, names)
	if own.whole() && !question.sizes(answer) {
		return "", false // something new was said
	}
	p := Parse(say, names)
	return say, len(p.Intents) > 0 || p.Ask != nil || p.Near != nil && p.Bare == Plainly && own.Near == nil
}

// beginning goes past what stands before an answer.
func (c cursor) beginning() cursor {
	return c.over("no", "nope", "sorry", "actually", "oh").parted().over("the", "a", "of", "in", "i", "mean", "meant", "it's", "its", "make", "it", "for")
}

// whole reports whether a text was plainly meant and lacks nothing.
func (p Parsed) whole() bool { return len(p.Intents) > 0 && p.Bare == Plainly }

// sizes reports whether a reply that says something by itself, too, rather gives
// the size that was asked for: "3 lb agar" of bags, "1 quart lc" of jars.
func (q *Question) sizes(reply cursor) bool {
	amount, ok := reply.parted().over("the", "a", "of", "in").token().(Quantity)
	if !ok || q.Gap != WhichSize || len(q.Options) == 0 {
		return false
	}
	_, mass := amount.sense(Mass)
	usual, _ := cursor{s: read(q.Options[0].Label, Names{})}.token().(Quantity)
	_, weighed := usual.sense(Mass)
	return mass && weighed || !mass && amount.Number == 1
}

// bareNumber reads a reply that is a number and nothing else.
func bareNumber(c cursor) (float64, bool) {
	n, d, ok := c.number()
	return n, ok && n > 0 && d.over("please", "pls").parted().done()
}

// beginning finds the one option whose label begins with that number: "5" is
// rather five pounds than the fifth.
func beginning(options []Option, n float64) (string, bool) {
	found, say := 0, ""
	for _, o := range options {
		if number, _, ok := strings.Cut(o.Label, " "); ok && number == plain(n) {
			found, say = found+1, o.Say
		}
	}
	return say, found == 1
}

// withUnit gives a bare number the unit of the likeliest option, or leaves it
// bare when that has none.
func withUnit(options []Option, n float64) string {
	if len(options) > 0 {
		if number, of, ok := strings.Cut(options[0].Label, " "); ok {
			if _, err := strconv.ParseFloat(number, 64); err == nil {
				return plain(n) + " " + of
			}
		}
	}
	return plain(n)
}

// labelled finds the option whose label the reply is.
func labelled(options []Option, reply string) (string, bool) {
	reply = bareReply(reply)
	for _, o := range options {
		if label := strings.ToLower(o.Label); label == reply || label+"s" == reply || label == reply+"s" {
			return o.Say, true
		}
	}
	return "", false
}

// inLabel finds the one option that the reply is a word of.
func inLabel(options []Option, reply string) (string, bool) {
	reply = bareReply(reply)
	found, n := "", 0
	for _, o := range options {
		for _, w := range strings.Fields(strings.ToLower(o.Label)) {
			if w == reply || w+"s" == reply {
				found, n = o.Say, n+1
				break
			}
		}
	}
	return found, n == 1
}

func bareReply(reply string) string {
	return strings.Trim(strings.ToLower(strings.TrimSpace(reply)), " .!?")
}

// placeOf reads "the first", "1", "number 2" as the place of an option.
func placeOf(c cursor) (int, bool) {
	c = c.over("the", "number", "no", "option")
	place := 0
	if n, ok := c.token().(Number); ok && n.Whole && n.Value >= 1 && n.Value <= 9 {
		place, c = int(n.Value), c.use(1)
	} else {
		for i, w := range ordinals {
			if d, ok := c.phrase(w...); ok {
				place, c = i+1, d
			}
		}
	}
	c = c.over("one", "please", "pls", "option").parted()
	return place, place > 0 && c.done()
}

var ordinals = [...][]string{
	{"first", "1st"}, {"second", "2nd"}, {"third", "3rd"}, {"fourth", "4th"},
}
