package phrase

import "ryebell/internal/kitchen"

var answerPingGrammar = grammar{
	kind:     KindAnswerPing,
	examples: []string{"not yet", "done", "seen", "i've got it", "still at 15 psi", "the flame is still on", "#12 not yet"},
	match:    matchAnswerPing,
}

var whyPingGrammar = grammar{
	kind:     KindWhyPing,
	examples: []string{"why did you ping", "why didn't you ping me"},
	match: func(c cursor) (Intent, cursor, bool) {
		if d, ok := c.phrase("why did you ping", "why did you ping me", "why the ping", "why this ping", "why do you ping", "why do you ping me", "why was i pinged", "why ping me", "why that ping",
			"why did i get a ping", "what was the ping for", "what's the ping for", "why ping", "why am i pinged", "why did you ping us", "why did you ping her", "why did you ping him", "why are you pinging me"); ok {
			d.plain = true
			return WhyPing{}, d.over("now", "again", "so late", "so early", "at night"), true
		}
		d, ok := c.phrase("why didn't you", "why didn't you ping", "why didn't you ping me", "why no ping", "why didnt you ping", "why didnt you ping me", "why wasn't i pinged", "why didnt you", "why was there no ping",
			"why did nobody ping me", "why did you not ping", "why did you not ping me", "why wasn't there a ping", "why did i get no ping", "where was the ping", "where is the ping", "where's my ping",
			"why haven't you pinged me", "why didn't i get a ping")
		d.plain = d.word(-1) != "you"
		return WhyPing{None: true}, d.over("then", "earlier", "yesterday"), ok
	},
}

// String prints the question so that it parses back.
func (w WhyPing) String() string {
	if w.None {
		return "why didn't you ping me"
	}
	return "why did you ping"
}

// pingAnswers are the answers to a ping; the first words print one.
var pingAnswers = [...]struct {
	how   kitchen.Answered
	words []string
}{
	{kitchen.AnswerNotYet, []string{
		"not yet", "not just yet", "not quite", "not quite yet", "not done yet", "not there yet", "wait", "later", "in a minute", "in a bit", "no not yet", "nope not yet", "not now", "not yet sorry",
		"still going", "still on", "still hot", "still up", "still under pressure", "still pressure", "not zero yet", "not at zero yet", "still not", "not done", "still warm",
	}},
	{kitchen.AnswerDone, []string{"done", "all done", "did it", "it's done", "its done", "done that", "yes done", "ok done", "i did", "did that", "done it", "i did it", "already done", "just did"}},
	{kitchen.AnswerGotIt, []string{
		"i've got it", "ive got it", "i've got this", "got it", "on it", "i'm on it", "im on it", "i'll do it", "ill do it", "i do it", "i'll see to it", "i'm there", "i'm here", "im here", "i got it", "i'm on my way", "on my way",
		"coming", "i'm coming", "i'm in the kitchen", "me", "i am", "i'll go", "i go", "omw", "i'm going",
	}},
	{kitchen.AnswerSeen, []string{"seen", "seen it", "i saw", "saw it", "noted", "i see", "👍", "i see it", "i've seen it", "ack"}},
}

// burning says that a flame is not off.
var burning = []string{
	"flame is still on", "heat is still on", "stove is still on", "burner is still on", "gas is still on", "flame's still on", "heat's still on", "flame still on", "heat still on",
	"flame is not off", "heat is not off", "stove is not off", "flame isn't off", "heat isn't off", "stove isn't off", "burner isn't off", "flame's not off", "heat's not off", "flame not off", "heat not off",
	"flame still burns", "flame is still burning", "still burning", "heat was not off", "heat wasn't off", "flame wasn't off",
}

// stillBurns reads that the flame of a run is on against what was told.
func stillBurns(c cursor) (Intent, cursor, bool) {
	w, _, d := leadingRun(c.over("no", "sorry", "hey", "but", "wait"))
	d, _ = d.mark(":,-")
	d, ok := d.over("no", "the", "its").phrase(burning...)
	if !ok {
		return nil, c, false
	}
	d = d.over("here", "guys", "all", "though")
	w, d = inWhich(w, d)
	return AnswerPing{How: kitchen.AnswerNotYet, Burning: true, Which: w}, d, d.ends()
}

// String prints the answer so that it parses back.
func (a AnswerPing) String() string {
	if a.Burning {
		return a.Which.before(nil) + burning[0]
	}
	for _, p := range pingAnswers {
		if p.how == a.How {
			return a.Which.before(nil) + p.words[0]
		}
	}
	panic(a.How)
}

func matchAnswerPing(c cursor) (Intent, cursor, bool) {
	if i, d, ok := stillBurns(c); ok {
		d.plain = true
		return i, d, true
	}
	var of Which
	if _, sharp := c.ahead(0).(RunRef); sharp {
		w, units, d := leadingRun(c)
		if units != nil || w.Run == 0 {
			return nil, c, false
		}
		of, c = w, d.parted()
	}
	if run, d, named := c.run(); named && of == (Which{}) {
		if e, ok := d.over("is", "are", "all").phrase("done", "all done"); ok && e.ends() { // who says so of 12, may mean twelve of anything
			e.bare = true
			return AnswerPing{How: kitchen.AnswerDone, Which: Which{Run: run}}, e, true
		}
	}
	if d, ok := c.over("it's", "its").phrase("still at", "still", "still shows", "still showing", "still up at"); ok {
		if p, e, ok := gauge(d.over("about", "around")); ok && p > 0 && e.near == nil {
			e.plain = true
			return AnswerPing{How: kitchen.AnswerNotYet, Which: of}, e, true
		}
	}
	var best AnswerPing
	end := c
	for _, p := range pingAnswers {
		if d, ok := c.phrase(p.words...); ok && d.i > end.i {
			best, end = AnswerPing{How: p.how, Which: of}, d
		}
	}
	if r, ok := end.over("on", "for", "with").token().(RunRef); ok && of == (Which{}) && end.i > c.i && len(r.Ref.Units) == 0 {
		best.Which, end = Which{Run: r.Ref.Run}, end.over("on", "for", "with").use(1)
	}
	if !end.parted().done() && end.i > c.i {
		end = end.over("thanks", "thx", "sorry", "guys", "all", "everyone")
	}
	return best, end, end.i > c.i && end.ends()
}
