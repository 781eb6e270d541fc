package answer

import (
	"errors"
	"slices"
	"time"

	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// soonestThrough is how long after the culture went on "12 done" can mean that it has
// grown through: no culture takes less, and before it is said of other things (common
// practice, no source).
const soonestThrough = 3 * 24 * time.Hour

// doneGrowing takes "12 done", which else answers what was to be done with a run, for
// grown through where nothing but growth is left of the load.
func (t *turn) doneGrowing(p phrase.Parsed) (phrase.Parsed, error) {
	if len(p.Intents) != 1 {
		return p, nil
	}
	i, ok := p.Intents[0].(phrase.AnswerPing)
	if !ok || i.How != kitchen.AnswerDone || i.Which.Run == 0 {
		return p, nil
	}
	load, err := t.load(i.Which.Run)
	if err != nil {
		var none kitchen.Refusal
		if errors.As(err, &none) {
			err = nil
		}
		return p, err
	}
	young := func(n kitchen.UnitNo) bool {
		u, _ := load.Unit(n)
		return !u.Inoculated.IsZero() && t.m.At.Sub(u.Inoculated) < soonestThrough
	}
	if !load.Arrived && !t.seenTo(load) || !load.Grows(load.Standing()) || slices.ContainsFunc(load.Standing(), young) {
		return p, nil
	}
	all := phrase.Meant{Refs: []kitchen.Ref{{Run: load.Run}}}
	return phrase.Parsed{Intents: []phrase.Intent{phrase.TellUnits{Parts: []phrase.UnitsPart{{Of: all, Entry: kitchen.GrownThrough{}}}}}}, nil
}

// allPutOn reports whether no unit of a run waits for a culture any more: the blank waits
// for none.
func (t *turn) allPutOn(no kitchen.RunNo) (bool, error) {
	load, err := t.load(no)
	waits := func(u kitchen.Unit) bool {
		return u.State == kitchen.InCook || u.State == kitchen.UnitCooked && !u.Blank
	}
	return len(load.All) > 0 && !slices.ContainsFunc(load.All, waits), err
}
