package answer

import (
	"slices"
	"strings"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// answersUnits answers pings about units: shaken, or grown through, where that was all
// they asked. Anything else writes nothing, and it is said how to answer. False for a
// post of other pings.
func (t *turn) answersUnits(i phrase.AnswerPing, ctx scene) (chat.Post, bool, error) {
	rows, err := t.book.Pings(ctx.ping)
	if err != nil || len(rows) == 0 || rows[0].Key != ctx.ping || !ofUnits(rows[0].Kind) {
		return chat.Post{}, false, err
	}
	asks, err := t.unitsAsked(ctx)
	if err != nil {
		return chat.Post{}, false, err
	}
	if done := doneBy(asks); done != nil && i.How == kitchen.AnswerDone {
		post, err := t.tellUnits(phrase.TellUnits{Parts: []phrase.UnitsPart{{Entry: done}}}, ctx)
		return post, true, err
	}
	for n, a := range asks {
		if !a.Load.Arrived {
			if asks[n].Run, err = t.theRun(a.Load.Run); err != nil {
				return chat.Post{}, false, err
			}
		}
	}
	if one := onlyLoad(asks); one != 0 {
		t.about = one.Subject()
	}
	return wording.UnitsStillAsked(wording.UnitsPingView{Asks: asks, Now: t.arrived()}), true, nil
}

// onlyLoad is the load that all is asked of; zero for several.
func onlyLoad(asks []wording.UnitsAsk) kitchen.RunNo {
	if len(asks) == 0 || slices.ContainsFunc(asks, func(a wording.UnitsAsk) bool { return a.Load.Run != asks[0].Load.Run }) {
		return 0
	}
	return asks[0].Load.Run
}

// doneBy is what it means that all that was asked is done; nil where that could be more
// than one thing.
func doneBy(asks []wording.UnitsAsk) kitchen.UnitEntry {
	all := func(k kitchen.PingKind) bool {
		return len(asks) > 0 && !slices.ContainsFunc(asks, func(a wording.UnitsAsk) bool { return a.Due.Kind != k })
	}
	switch {
	case all(kitchen.ShakeDue):
		return kitchen.Shaken{}
	case all(kitchen.ThroughDue):
		return kitchen.GrownThrough{}
	}
	return nil
}

// unitsAsked are the pings about units of the post answered, as far as they still ask.
func (t *turn) unitsAsked(ctx scene) ([]wording.UnitsAsk, error) {
	var asks []wording.UnitsAsk
	for _, key := range strings.Fields(ctx.asks) {
		no, ok := runOf(key)
		if !ok {
			continue
		}
		load, err := t.load(no)
		if err != nil {
			return nil, err
		}
		due, err := t.dueOf(load)
		if err != nil {
			return nil, err
		}
		if d, wanted := kitchen.DueAs(key, due); wanted {
			asks = append(asks, wording.UnitsAsk{Load: load, Due: d})
		}
	}
	return asks, nil
}

// pingedUnits are the units that the pings answered asked of, load by load: where an
// entry is what some of them asked for, those of these. What is not, and no question, is
// not taken of several loads: it is a [whichLoad].
func (t *turn) pingedUnits(m meaning, ctx scene) ([]target, error) {
	asks, err := t.unitsAsked(ctx)
	if err != nil {
		return nil, err
	}
	meant := slices.DeleteFunc(slices.Clone(asks), func(a wording.UnitsAsk) bool { return !asksFor(a.Due.Kind, m.entry) })
	if len(meant) == 0 {
		meant = asks
	}
	var can []candidate
	for _, a := range meant {
		i := slices.IndexFunc(can, func(c candidate) bool { return c.run == a.Load.Run })
		if i < 0 {
			i, can = len(can), append(can, candidate{target{run: a.Load.Run}, a.Load})
		}
		for _, n := range a.Due.Units {
			if !slices.Contains(can[i].units, n) {
				can[i].units = append(can[i].units, n)
			}
		}
	}
	if len(can) > 1 && m.entry != nil && !slices.ContainsFunc(meant, func(a wording.UnitsAsk) bool { return asksFor(a.Due.Kind, m.entry) }) {
		return nil, whichLoad{can}
	}
	var out []target
	for _, c := range can {
		out = append(out, c.target)
	}
	return out, nil
}

// asksFor reports whether an entry is what a ping asks for, of all that it asks of.
func asksFor(k kitchen.PingKind, e kitchen.UnitEntry) bool {
	return k == kitchen.ShakeDue && is[kitchen.Shaken](e) || k == kitchen.ThroughDue && is[kitchen.GrownThrough](e)
}
