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
// run over, that the speaker does.
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
	return phrase.Parsed{Intents: []phrase.Intent{phrase.TakeOver{Which: phrase.Which{Run: taken}}}}, nil
}

// offerIn is the offer of a run that the speaker can answer so: made of late in this
// room by somebody else, and answered by nobody. A yes answers only what the speaker
// was asked by name.
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
		r.Offered != 0 && !asked || willing == phrase.SaysYes && !asked {
		return kitchen.Step{}, false, nil
	}
	e, err := t.book.Entry(offer.No)
	return offer, err == nil && (e.Room == t.room.ID || asked), err
}
