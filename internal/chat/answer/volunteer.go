package answer

import (
	"slices"
	"time"

	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// offerStands is how long after somebody was asked to take a run over "me" and "i can"
// are taken for the answer.
const offerStands = 15 * time.Minute

// volunteered is what was understood, or, where somebody has just asked who takes a
// run over, that the speaker does, or doesn't.
func (t *turn) volunteered(p phrase.Parsed, ctx scene) (phrase.Parsed, error) {
	willing := phrase.Volunteer(t.text, t.names)
	if willing == phrase.Unwilling || t.m.Tap != nil || ctx.ping != "" {
		return p, nil
	}
	open, err := t.openRuns()
	if err != nil {
		return p, err
	}
	var newest kitchen.Step
	var taken kitchen.RunNo
	for _, r := range open {
		offer, stands, err := t.offerIn(r, willing)
		if err != nil {
			return p, err
		}
		if stands && (ctx.run == 0 || ctx.run == r.No) && offer.At.After(newest.At) {
			newest, taken = offer, r.No
		}
	}
	if taken == 0 {
		return p, nil
	}
	take := phrase.TakeOver{Which: phrase.Which{Run: taken}}
	if willing == phrase.SaysNo { // it stays with its cook: whoever has it goes on having it
		if take.Who, err = t.cookOf(taken); err != nil || take.Who == "" {
			return p, err
		}
	}
	return phrase.Parsed{Intents: []phrase.Intent{take}}, nil
}

// cookOf is the name of who watches a run, empty for nobody who has one.
func (t *turn) cookOf(no kitchen.RunNo) (string, error) {
	r, err := t.theRun(no)
	if err != nil || r.Cook == 0 {
		return "", err
	}
	m, err := t.book.Member(r.Cook)
	return m.Name, err
}

// offerIn is the offer of a run that the speaker can answer so: made of late in this
// room by somebody else, and answered by nobody. A yes or no answers only what the
// speaker was asked by name.
func (t *turn) offerIn(r kitchen.Run, willing phrase.Willing) (kitchen.Step, bool, error) {
	offers := []kitchen.Kind{kitchen.KindHandOffered, kitchen.KindHandAccepted, kitchen.KindTookOver}
	at := -1
	for i, s := range r.Steps {
		if slices.Contains(offers, s.Kind) {
			at = i
		}
	}
	if at < 0 || r.Steps[at].Kind != kitchen.KindHandOffered {
		return kitchen.Step{}, false, nil
	}
	offer := r.Steps[at]
	since := t.m.At.Sub(offer.At)
	asked := r.Offered == t.member.No && r.Offered != 0
	if since < -kitchen.Breath || since > offerStands || offer.By == t.member.No || r.Cook == t.member.No && t.member.No != 0 ||
		r.Offered != 0 && !asked || willing != phrase.SaysMe && !asked {
		return kitchen.Step{}, false, nil
	}
	e, err := t.book.Entry(offer.No)
	return offer, err == nil && (e.Room == t.room.ID || asked), err
}
