package phrase

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"ryebell/internal/kitchen"
)

var takeOverGrammar = grammar{
	kind:     KindTakeOver,
	examples: []string{"i've got 12", "ana takes 12", "i take over", "not me anymore, tom has it", "i'm cooking #12"},
	match:    matchTakeOver,
}

var handOverGrammar = grammar{
	kind:     KindHandOver,
	examples: []string{"can someone take over the pot", "ana can you take 12", "can someone take #12, i need to leave at 4"},
	match:    matchHandOver,
}

// String prints the claim so that it parses back.
func (t TakeOver) String() string {
	if t.Who == "" {
		if t.Which == (Which{}) {
			return "i take over"
		}
		return "i take" + t.Which.behind("")
	}
	if t.Which == (Which{}) {
		return t.Who + " takes over"
	}
	return t.Who + " takes" + t.Which.behind("")
}

// String prints the request so that it parses back.
func (h HandOver) String() string {
	who := h.To
	if who == "" {
		who = "someone"
	}
	s := "can " + who + " take over" + h.Which.behind("")
	if h.When != nil {
		s += ", i need to leave " + h.When.String()
	}
	return s
}

// matchTakeOver reads "i've got 12", "ana takes 12", "not me anymore, tom has it".
func matchTakeOver(c cursor) (Intent, cursor, bool) {
	d := c.over("ok", "and", "not me anymore", "not me any more", "not mine anymore", "no longer me", "i'm out", "so", "then", "now")
	d = d.parted()
	gone := d.i > c.i && c.word(0) == "not"
	if e, ok := d.phrase("i've got", "ive got", "i got", "i have", "i take", "i'll take", "ill take", "i'm taking", "im taking", "i took", "taking", "i'm on", "im on",
		"i take over", "i'll take over", "i'm taking over", "i took over", "i'm watching", "im watching", "i watch", "i'll watch", "i'm cooking", "im cooking", "i cook", "mine now", "my turn on", "i can take", "i'll do", "i'll cook", "i mind",
		"i look after", "i'll look after", "i'm looking after"); ok {
		said := e.word(-1)
		w, e, ok := e.taken()
		e.plain = said != "have" && said != "got" || w.Cooker != ""
		if _, sharp := e.ahead(-1).(RunRef); sharp || said == "got" && w.Run > 9 {
			e.plain = true // "i have 4" can be said of eggs
		}
		if ok {
			return TakeOver{Which: w}, e, true
		}
	}
	if e, ok := d.phrase("take", "take over", "taking over"); ok && d.i == 0 {
		if w, e, ok := e.taken(); ok && w.Run != 0 {
			e.plain = true
			return TakeOver{Which: w}, e, true
		}
	}
	if e, ok := d.phrase("i take it", "i'll take it", "ill take it", "i take over", "i'll take over", "i'm taking over", "i took over", "i can take over", "i can take it", "taking over",
		"i take over now", "it's mine now", "i'm taking it", "over to me", "i'll take that one", "take over", "i'm on it now"); ok {
		w, e, named := e.over("now", "for now").whichOf()
		e.plain = w != (Which{})
		return TakeOver{Which: w}, e, named || e.done() || e.ends()
	}
	who, e, ok := d.person(gone)
	if !ok {
		return nil, c, false
	}
	if f, over := e.phrase("takes over", "is taking over", "took over", "has it", "takes it", "got it", "has it now", "takes it now", "is on it", "will take over", "takes over now",
		"has them", "watches it", "is watching it", "will take it", "does it"); over {
		w, f, _ := f.over("now", "from now on").whichOf()
		f.plain = gone || w != (Which{})
		return TakeOver{Which: w, Who: who}, f, true
	}
	e, ok = e.phrase("takes", "has", "has got", "is taking", "took", "will take", "watches", "is watching", "is on", "is cooking", "cooks", "minds", "looks after", "does", "'ll take",
		"will watch")
	if !ok {
		return nil, c, false
	}
	w, e, ok := e.taken()
	e.plain = true
	return TakeOver{Which: w, Who: who}, e, ok
}

// taken takes a run or cooker that somebody watches.
func (c cursor) taken() (Which, cursor, bool) {
	d := c.over("over", "run", "the", "number", "no")
	w, e, ok := d.whichOf()
	if ok && w == (Which{}) && d.i == c.i {
		return w, c, false // "i have pots"
	}
	e = e.over("now", "from now on", "from here", "for now", "then", "too", "from now")
	if _, f, from := e.over("from").person(false); from && e.length("from") > 0 {
		e = f
	}
	return w, e, ok && (e.done() || e.ends())
}

// whichOf takes a run, its number without a sign as well, or a cooker.
func (c cursor) whichOf() (Which, cursor, bool) {
	d := c.over("on", "of", "with", "in", "for", "the", "run", "number", "our")
	if run, e, ok := d.run(); ok {
		return Which{Run: run}, e, true
	}
	if w, e, ok := pot(d); ok {
		return w, e, true
	}
	// "take over 12" reads as more than 12 of something.
	if r, ok := d.token().(Range); ok && r.Senses == nil && math.IsInf(r.Hi, 1) && strings.HasPrefix(d.word(0), "over") {
		if n, isWhole := whole(r.Lo); isWhole && n > 0 && n <= mostRuns {
			return Which{Run: kitchen.RunNo(n)}, d.use(1), true
		}
	}
	return Which{}, c, false
}

// person takes the name of a member, a first name, or, where a name must stand,
// any word that is written like one or that nobody knows.
func (c cursor) person(sure bool) (string, cursor, bool) {
	if n, ok := c.token().(Name); ok && n.Of == MemberName {
		return n.Text, c.use(1), true
	}
	w, ok := c.token().(Word)
	if !ok {
		return "", c, false
	}
	k := vocabulary()[w.Text]
	typed := c.s.typed(c.i, c.i+1)
	if k != nil && (k.person || sure && k.class == Everyday) || k == nil && (sure || unicode.IsUpper([]rune(typed)[0])) {
		first, size := utf8.DecodeRuneInString(w.Text)
		return string(unicode.ToUpper(first)) + w.Text[size:], c.use(1), true
	}
	return "", c, false
}

// matchHandOver reads "can someone take over the pot i need to leave at 4", "ana
// can you take 12".
func matchHandOver(c cursor) (Intent, cursor, bool) {
	d := c.over("hey", "please", "ok")
	if h, e, ok := handing(d); ok {
		return h, e, true
	}
	var h HandOver
	d, h.When = d.leaving()
	d = d.parted()
	e, ok := d.phrase("can someone", "can somebody", "could someone", "could somebody", "can anyone", "can anybody", "could anyone", "someone", "who can", "who could", "somebody",
		"anyone", "would someone", "who wants to", "can one of you", "could one of you", "anybody", "who will", "will someone")
	asked := ok
	if !ok {
		e, asked = d.phrase("can", "could", "will", "would")
		h.To, e, ok = e.person(asked)
		if !ok {
			return nil, c, false
		}
		if !asked {
			e, asked = e.parted().phrase("can you", "could you", "please", "pls", "would you", "will you", "can you please", "could you please")
		}
	}
	e = e.over("please", "pls")
	f, over := e.phrase("take over", "take", "watch", "look after", "mind", "take on", "keep an eye on", "take care of", "cover", "cover for me", "take over for me", "take it", "take it over",
		"take over from me", "free to take over", "take over now", "watch it", "mind it")
	if !over || !asked {
		return nil, c, false
	}
	alone := f.word(-1) == "over" || f.word(-1) == "me" || f.word(-1) == "it" || f.word(-1) == "now"
	w, g, named := f.whichOf()
	if !named && !alone {
		return nil, c, false
	}
	h.Which = w
	g = g.over("please", "pls", "for me", "from me", "for a bit", "for a while")
	if after, when := g.parted().leaving(); when != nil {
		g, h.When = after, when
	} else if m, after, ok := takesFrom(g); ok {
		g, h.When = after, &m
	}
	g.plain = named || h.When != nil
	return h, g, true
}

// handing reads "handing 12 to jo", "i give #12 to ana".
func handing(c cursor) (HandOver, cursor, bool) {
	d, ok := c.over("i", "i'm", "im", "i'll").phrase("handing", "handing over", "hand", "hand over", "give", "giving", "passing", "pass")
	if !ok {
		return HandOver{}, c, false
	}
	w, d, ok := d.whichOf()
	d, to := d.phrase("to", "over to")
	who, d, person := d.person(true)
	d.plain = true
	return HandOver{Which: w, To: who}, d, ok && to && person && w != (Which{})
}

// takesFrom takes the time from which somebody else is wanted.
func takesFrom(c cursor) (Moment, cursor, bool) {
	d := c.over("from", "at", "after", "around", "about", "starting", "by")
	if m, e, ok := d.when(); ok && m.Shift >= 0 {
		return m, e, true
	}
	if d.i == c.i {
		return Moment{}, c, false
	}
	return d.bareHour()
}

// bareHour takes an hour alone: the 4 of "at 4".
func (c cursor) bareHour() (Moment, cursor, bool) {
	n, d, ok := c.number()
	h, isWhole := whole(n)
	if !ok || !isWhole || h < 1 || h > 23 {
		return Moment{}, c, false
	}
	return Moment{Clock: &ClockTime{Hour: h, Half: h > 12}}, d, true
}

// leaving reads "i need to leave at 4" and the like.
func (c cursor) leaving() (cursor, *Moment) {
	d, ok := c.over("because", "cause", "since", "as", "cos", "bc").phrase("i need to leave", "i have to leave", "i must leave", "i'm leaving", "im leaving", "i leave", "i have to go", "i need to go",
		"i gotta go", "i must go", "i've got to go", "gotta go", "have to leave", "need to leave", "i'm off", "i go", "i'm gone", "i have to be off", "need to go")
	if !ok {
		return c, nil
	}
	m, e, ok := takesFrom(d)
	if !ok {
		return d, nil
	}
	return e, &m
}
