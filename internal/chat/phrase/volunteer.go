package phrase

// Willing says how somebody answers to "can someone take over?".
type Willing uint8

// Nobody volunteers, or somebody does by name of themselves ("me", "i can"), or says
// yes or no, which mean that only of who was asked.
const (
	Unwilling Willing = iota
	SaysMe
	SaysYes
	SaysNo
)

// volunteers are the ways to say that one does it oneself.
var volunteers = []string{
	"me", "i can", "i will", "i'll do it", "ill do it", "i will do it", "i can do it", "i could", "i could do it", "i'll", "i do it", "i do", "i would", "i'd do it", "let me", "let me do it", "i'm free", "im free",
	"i can take over", "i'll do that", "i can do that", "i will do that", "i'm in", "i'm happy to", "happy to", "i can help", "i'll help", "i can cover", "i'll cover", "i volunteer", "my turn", "here", "i'll be there",
	"i can be there", "i'll go", "i can go", "i am", "i'm here", "i can watch", "i'll watch", "i can watch it", "i'll watch it", "leave it to me", "count on me",
}

// agreeing are the ways to say yes.
var agreeing = []string{"yes", "yep", "yeah", "sure", "ok", "okay", "of course", "no problem", "will do", "fine", "sure thing", "yup", "gladly", "alright", "👍", "sure ok", "yes sure", "ok sure"}

// declining are the ways to say that one doesn't.
var declining = []string{
	"no", "nope", "i can't", "i cant", "can't", "cant", "i can not", "i cannot", "cannot", "not me", "i'm not free", "im not free", "i won't", "i wont", "i don't", "i dont", "i'm out", "im out", "rather not",
	"i'd rather not", "i have to go", "i must go", "i'm busy", "im busy", "not possible", "no can do", "i can't do it", "i cant do it", "i can't take it", "i cant take it", "not today", "not now", "i can't make it", "i'm not there", "i'm not here", "no way", "no chance", "i can't now", "afraid not",
}

// Volunteer reads the answer to an offer that stands: the same words are talk where
// none does, so that [Parse] has no use for them. They must be the whole of the text.
func Volunteer(text string, names Names) Willing {
	if len(text) > maxQuoted {
		return Unwilling
	}
	c := cursor{s: read(text, names)}
	d := c.over("ok", "okay", "yes", "yep", "yeah", "sure", "hey", "well", "no problem", "of course", "hm", "then").parted()
	for _, from := range [...]cursor{d, c} {
		if e, ok := from.phrase(volunteers...); ok && ending(e) {
			return SaysMe
		}
	}
	if e, ok := c.phrase(agreeing...); ok && ending(e) {
		return SaysYes
	}
	if declines(c) {
		return SaysNo
	}
	return Unwilling
}

// declines reads "no", "sorry, i can't", "no, i can't today".
func declines(c cursor) bool {
	c = c.over("sorry", "hm", "oh", "well", "ah", "i'm afraid", "afraid").parted()
	d, ok := c.phrase(declining...)
	for ok {
		if _, asks := d.mark("?"); asks {
			return false
		}
		d = d.parted().over("sorry", "today", "right now", "really", "either", "i'm afraid", "this time")
		if ending(d) {
			return true
		}
		d, ok = d.phrase(declining...)
	}
	return false
}

// ending reports whether nothing follows but manners; a question volunteers nothing.
func ending(c cursor) bool {
	if _, asks := c.mark("?"); asks {
		return false
	}
	return c.parted().over("please", "pls", "then", "now", "for you", "sure", "ok", "of course", "thanks", "gladly", "yes", "no problem", "today").parted().done()
}
