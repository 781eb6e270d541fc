package answer

import (
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// both tells of two runs what was told of both: of the speaker's, else of those that
// are on at all. Where not exactly two can take it, it is as if no run had been named.
func (t *turn) both(p phrase.Parsed) (phrase.Parsed, error) {
	if len(p.Intents) != 1 {
		return p, nil
	}
	i, ok := p.Intents[0].(phrase.Tell)
	if !ok || !i.Which.Both {
		return p, nil
	}
	at, err := t.past(i.When)
	if err != nil {
		return p, err
	}
	open, err := t.openRuns()
	if err != nil {
		return p, err
	}
	e := i.Entries[0]
	takes := only(open, func(r kitchen.Run) bool {
		return t.follows(r, r.AsMeant(e, at), t.began(e, at)) == nil && !relights(r, e)
	})
	if next := only(takes, func(r kitchen.Run) bool { return comesNext(r, e) }); len(next) == 2 {
		takes = next // and not a third that is not that far
	}
	if own := only(takes, t.isOwn); len(own) == 2 {
		takes = own
	}
	if i.Which = (phrase.Which{}); len(takes) != 2 {
		p.Intents, t.text = []phrase.Intent{i}, i.String()
		return p, nil
	}
	first, second := i, i
	first.Which.Run, second.Which.Run = takes[0].No, takes[1].No
	p.Intents = []phrase.Intent{first, second}
	return p, nil
}
