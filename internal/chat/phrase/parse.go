package phrase

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Kind tells the intents apart: one for each grammar.
type Kind uint8

// The kinds of intent.
const (
	KindPlan Kind = iota + 1
	KindReverse
	KindSameAs
	KindUsual
	KindOutBy
	KindCook
	KindKitchen
	KindMembers
	KindWhy
	KindHelp
	KindUndo
	KindCorrect
	KindManners
	KindChoose
	KindBoard
	KindTell
	KindShift
	KindTakeOver
	KindHandOver
	KindAnswerPing
	KindCoolYet
	KindLog
	KindSteps
	KindBooking
	KindGear
	KindQuiet
	KindPings
	KindWhyPing
	KindAdd
	KindDrop
	KindStartAt
	KindPlanIt
	KindChart
	KindTimes
	KindTellUnits
	KindArrive
	KindMakeCulture
	KindEndCulture
	KindCultures
	KindShelf
	KindWhereIs
	KindReadyWhen
	KindTrace
	KindLogUnit
	KindSome
)

// grammar reads one kind of intent at the beginning of what is left of a
// sentence, and leaves the cursor behind it.
type grammar struct {
	kind     Kind
	examples []string
	match    func(cursor) (Intent, cursor, bool)
}

// registry lists the grammars. Of two that read the same words at the same cost
// the earlier one is taken.
var registry = [...]grammar{
	cookGrammar,
	tellGrammar,
	dropGrammar,
	correctGrammar,
	kitchenGrammar,
	addGrammar,
	someGrammar,
	planGrammar,
	reverseGrammar,
	sameAsGrammar,
	usualGrammar,
	planItGrammar,
	outByGrammar,
	startAtGrammar,
	membersGrammar,
	whyGrammar,
	arriveGrammar,
	shelfGrammar,
	whereGrammar,
	helpGrammar,
	undoGrammar,
	mannersGrammar,
	boardGrammar,
	takeOverGrammar,
	handOverGrammar,
	shiftGrammar,
	coolYetGrammar,
	chartGrammar,
	timesGrammar,
	logUnitGrammar,
	logGrammar,
	stepsGrammar,
	bookingGrammar,
	gearGrammar,
	quietGrammar,
	pingsGrammar,
	whyPingGrammar,
	answerPingGrammar,
	makeCultureGrammar,
	endCultureGrammar,
	culturesGrammar,
	traceGrammar,
	readyGrammar,
	chooseGrammar,
	tellUnitsGrammar,
}

// Parse reads a message. It never guesses: what can't be read as a whole comes
// back as a question, as nearly understood, or, when it is talk between people,
// as the zero Parsed. Time and memory are linear in the length of the text.
func Parse(text string, names Names) Parsed {
	if len(text) > maxRunes && utf8.RuneCountInString(text) > maxRunes {
		return Parsed{Near: &Near{Trouble: TooLong}}
	}
	p := readAll(read(text, names)).parsed()
	if p.Near != nil {
		p.Near.Got, p.Near.Missed = clipped(p.Near.Got), clipped(p.Near.Missed)
	}
	return p
}

// clipped is a text short enough to be quoted.
func clipped(s string) string {
	if utf8.RuneCountInString(s) <= maxQuoted {
		return s
	}
	runes := []rune(s)
	return strings.TrimSpace(string(runes[:maxQuoted-1])) + "…"
}

// reading is what the whole of a sentence was read as.
type reading struct {
	s       *sentence
	intents []Intent
	kinds   []Kind
	// bare tells of each whether people say it to each other just so.
	bare []bool
	// open is the place in intents of the one that a question is about.
	open int
	ask  *asking
	near *Near
	// from and to are the tokens of the first part that fitted nowhere.
	from, to            int
	used, filler, wrong int
	// strange counts those of the wrong words that are no kitchen talk. foreign is
	// set when one of them is what the talk is of.
	strange int
	foreign foreignness
	quoted  [2]int
	// plain is true once something was told that people don't say to each other.
	plain bool
}

// readAll lets the grammars take the sentence bit by bit, each time the one
// that takes most; a token that none can begin with is stepped over and
// counted.
func readAll(s *sentence) reading {
	r := reading{s: s}
	c := cursor{s: s}
	c, _ = c.mark("/!")
	for len(r.intents) < maxSegments && r.wrong < maxUnknown {
		c = c.parted()
		if c.done() {
			return r
		}
		if d := polite(c); d.i > c.i {
			c = d
			continue
		}
		best, kind, intent := longest(c)
		if intent == nil || r.dangles(c, kind) {
			r.stepOver(c)
			c.i++
			continue
		}
		r.take(intent, kind, best)
		c = cursor{s: s, i: best.i}
	}
	c = c.parted()
	if !c.done() {
		r.wrong = maxUnknown
	}
	return r
}

// dangles reports whether what comes now belongs to words already taken, and
// begins nothing of its own: "cook 3 quarts in the kitchen".
func (r *reading) dangles(c cursor, kind Kind) bool {
	if len(r.intents) == 0 {
		return false
	}
	orders := []Kind{KindPlan, KindCook, KindAdd, KindReverse}
	if !slices.Contains(orders, r.kinds[len(r.kinds)-1]) {
		return false
	}
	if _, marked := c.ahead(-1).(Mark); kind == KindTell && !marked && !slices.Contains([]string{"and", "then", "also"}, c.word(-1)) {
		return true // "3 bags 5lb agar at 15 psi" tells nothing of a run
	}
	return slices.Contains([]string{"in", "on", "with", "the", "our", "my", "a"}, c.word(-1))
}

// longest is the reading that takes most words from here on.
func longest(c cursor) (best cursor, kind Kind, intent Intent) {
	best = c
	end := c.i // separators aside
	for i := range registry {
		in, d, ok := registry[i].match(c)
		if !ok || d.i <= c.i {
			continue
		}
		if e := d.parted().i; e > end || e == end && best.near != nil && d.near == nil {
			best, end, kind, intent = d, e, registry[i].kind, in
		}
	}
	return best, kind, intent
}

func (r *reading) stepOver(c cursor) {
	if r.wrong == 0 || r.to == c.i {
		if r.wrong == 0 {
			r.from = c.i
		}
		r.to = c.i + 1
	}
	r.wrong++
	r.foreign = max(r.foreign, c.foreign())
	switch c.token().(type) {
	case GrainWord, RouteWord, VesselWord, Quantity, Percent:
		r.used++
	default:
		r.strange++
	}
}

func (r *reading) take(in Intent, kind Kind, c cursor) {
	if c.ask != nil && r.ask == nil {
		r.ask, r.open = c.ask, len(r.intents)
	}
	if c.near != nil && r.near == nil {
		r.near = c.near
	}
	r.intents = append(r.intents, in)
	r.kinds = append(r.kinds, kind)
	r.bare = append(r.bare, c.bare)
	r.used += c.used
	r.filler += c.filler
	r.plain = r.plain || c.plain
	if c.quoted[1] > 0 {
		r.quoted = c.quoted
	}
}

// parsed weighs the reading.
func (r reading) parsed() Parsed {
	r.withoutManners()
	r.joinDeadline()
	r.carryRun()
	r.joinReadings()
	mended := r.mended()
	if len(r.intents) == 0 && r.near == nil {
		return r.misspelt()
	}
	if r.cost(len(mended)) > costTaken && (r.near == nil || r.wrong > 0) {
		if p := r.misspelt(); p.Ask != nil || p.Intents != nil {
			return p
		}
		return r.nearly()
	}
	p := Parsed{Mended: mended, Bare: r.bareness()}
	switch {
	case r.near != nil && r.wrong > 0:
		return r.nearly()
	case r.near != nil:
		p.Near = r.near
		if p.Near.Example == "" {
			p.Near.Example = r.example()
		}
		p.Near.Example = legible(p.Near.Example)
		if p.Near.Got == "" {
			p.Near.Got = tidy(strings.Replace(r.s.text, p.Near.Missed, "", 1))
		}
	case r.ask != nil:
		p.Ask = r.question()
	default:
		p.Intents = r.intents
	}
	return p
}

func (r reading) cost(mended int) int {
	return r.wrong*costUnknown + mended*costMended + max(0, r.filler-freeFiller-fillerShare*r.used)*costFiller
}

// nearly tells a text with a word too much from chatter with a word of the
// kitchen in it.
func (r reading) nearly() Parsed {
	if r.wrong == 0 || r.used < nearUsed || r.used < nearShare*r.strange || r.talk() || r.ofOther() {
		return Parsed{}
	}
	p := Parsed{Near: &Near{
		Trouble: LeftOver,
		Got:     r.got(),
		Missed:  r.s.typed(r.from, r.to),
		Example: legible(r.example()),
	}}
	if r.vague() {
		p.Bare = Loosely
	}
	return p
}

func (r reading) got() string {
	return tidy(r.s.typed(0, r.from) + " " + r.s.typed(r.to, len(r.s.toks)))
}

// tidy is a text with single spaces and no separators around it.
func tidy(s string) string { return strings.Trim(strings.Join(strings.Fields(s), " "), " ,;.") }

// example is a sentence that works, made of what was understood.
func (r reading) example() string {
	if r.ask == nil && r.near == nil && len(r.intents) > 0 {
		if !r.scattered() {
			return r.say("")
		}
		if like, ok := r.s.nearest(); ok {
			return like
		}
	}
	for _, k := range r.kinds {
		for i := range registry {
			if registry[i].kind == k {
				return registry[i].examples[0]
			}
		}
	}
	return planGrammar.examples[0]
}

// say prints the intents, the open one as it was filled in.
func (r reading) say(filled string) string {
	said := make([]string, len(r.intents))
	for i, in := range r.intents {
		said[i] = in.String()
	}
	if filled != "" {
		said[r.open] = filled
	}
	return readable(strings.Join(said, "; "), r.s.names.Quarts)
}

// withoutManners drops greetings and thanks from a message that says more.
func (r *reading) withoutManners() {
	if len(r.intents) < 2 {
		return
	}
	n := 0
	for i, in := range r.intents {
		if r.kinds[i] == KindManners {
			if i < r.open {
				r.open--
			}
			continue
		}
		r.intents[n], r.kinds[n], r.bare[n] = in, r.kinds[i], r.bare[i]
		n++
	}
	n = max(n, 1)
	r.intents, r.kinds, r.bare = r.intents[:n], r.kinds[:n], r.bare[:n]
}

// joinDeadline gives a deadline said in front or behind to the order beside it.
func (r *reading) joinDeadline() {
	if len(r.intents) != 2 || r.ask != nil {
		return
	}
	of, last := r.intents[1], r.intents[0]
	by, ok := last.(OutBy)
	if !ok {
		of = last
		if by, ok = r.intents[1].(OutBy); !ok {
			return
		}
	}
	if p, ok := of.(Plan); ok && p.OutBy == nil {
		p.OutBy = &by.By
		r.become(p, KindPlan)
	} else if v, ok := of.(Reverse); ok && v.OutBy == nil {
		v.OutBy = &by.By
		r.become(v, KindReverse)
	} else if a, ok := of.(Add); ok && a.OutBy == nil {
		a.OutBy = &by.By
		r.become(a, KindAdd)
	}
}

// become puts one intent in place of the two that it was said in.
func (r *reading) become(one Intent, kind Kind) {
	r.intents, r.kinds, r.bare = []Intent{one}, []Kind{kind}, []bool{false}
}

func (r reading) mended() []string {
	var words []string
	for i, t := range r.s.toks {
		if i >= r.quoted[0] && i < r.quoted[1] {
			continue
		}
		if w, ok := t.(interface{ TakenFor() string }); ok && w.TakenFor() != "" {
			words = append(words, w.TakenFor())
		}
	}
	return words
}

// polite takes words that carry nothing at the beginning or end of what is said.
func polite(c cursor) cursor {
	return c.maybe("please", "pls", "plz", "ok", "okay", "hey", "so", "well", "um", "uh", "oh", "hm", "right", "bot",
		"can you", "could you", "lets", "let's")
}
