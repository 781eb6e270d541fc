package phrase

// timeFirst takes when it happened, and words that change nothing, in front of all.
func (t unitsTelling) timeFirst(c cursor) (unitsTelling, cursor) {
	if m, e, ok := moment(c, nil); ok { // "today" can be such a word, too
		if e, colon := e.mark(":"); colon && e.tellsUnits() {
			t.when, t.first = &m, true
			return t, e
		}
	}
	d := c
	if c.word(-1) == "oh" { // of "oh no", before which all is heard
		d = c.maybe("no")
	}
	d = d.over(unitLeads...)
	if d.i > c.i { // "oh no, 12.3 green", "in that order: 12.3, 12.1"
		if e, ok := d.mark(",:"); ok && e.over(unitLeads...).tellsUnits() {
			d = e.over(unitLeads...)
		}
	}
	if _, _, nth := inTurn(d, Meant{}); nth {
		return t, d
	}
	if m, e, ok := moment(d, nil); ok {
		e, _ = e.mark(":,")
		if e = e.over(unitLeads...); e.tellsUnits() {
			t.when, t.first, d = &m, true, e
		}
	}
	return t, d
}

// unitLeads are words before something told that change nothing in it.
var unitLeads = []string{
	"i", "we", "i've", "we've", "ive", "i have", "we have", "just", "ugh", "ok", "so", "and", "also", "then", "now", "fyi", "update", "finally", "oh no", "oh", "damn", "hm", "hmm", "today i", "today", "sorry", "yay", "lol", "eek", "shit", "argh",
	"looks like", "i think", "unfortunately", "sadly", "btw", "already", "me and jo", "uh oh", "there's", "there is", "theres", "found", "i found", "we found", "i see", "got", "we got", "seeing", "saw", "i saw", "have", "i've got", "is that", "a bit of", "some", "a bit", "a little", "lots of", "much", "noticed", "spotted", "think there's", "see", "bit of", "a", "an", "update on", "about",
	"one after the other", "one by one", "in this order", "in that order", "in order",
}

// tailWords stand behind something told and change nothing in it.
var tailWords = []string{
	"now", "again", "already", "sadly", "sorry", "today", "is that bad", "is that ok", "is this bad", "is it bad", "is that normal", "is this normal", "what now", "what should i do", "what do i do", "finally", "i think", "i guess", "for now",
	"too", "thx", "at last", "damn", "ugh", "lol", "i'm afraid", "unfortunately", "just now", "btw", "fyi", "should i worry", "is that a problem", "is that fine", "is this ok", "is that okay", "help", "hm", "hmm", "right", "please", "pls",
	"i fear", "as well", "so far", "thanks", "this time", "what is it", "what's that", "whats that", "is it contam", "or is it", "oh no", "yay", "haha",
	"in that order", "in this order", "one after the other", "one by one", "in order",
}
