package answer

import (
	"errors"
	"slices"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// readyWhen says when units are to be shaken and expected grown through, by estimate.
// Cooked grain with nothing on it is asked about as a load that cools.
func (t *turn) readyWhen(i phrase.ReadyWhen, ctx scene) (chat.Post, error) {
	targets, err := t.meantUnits(meaning{of: i.Of, at: t.m.At}, ctx)
	var several whichLoad
	if errors.As(err, &several) {
		targets, err = several.growing(), nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	view := wording.ReadyView{Now: t.arrived()}
	var of phrase.Meant
	for _, g := range targets {
		load, err := t.load(g.run)
		if err != nil {
			return chat.Post{}, err
		}
		units := g.units
		if len(units) == 0 {
			units = load.Standing()
		}
		if len(units) == 0 { // none stands: what became of them is the answer
			for _, u := range load.All {
				units = append(units, u.Ref.Unit)
			}
		}
		row, err := t.book.Run(g.run)
		if err != nil {
			return chat.Post{}, err
		}
		if !row.Arrived && !t.seenTo(load) && !asksOfGrowth(load, g.units) && len(targets) == 1 {
			return t.coolYet(phrase.CoolYet{Which: phrase.Which{Run: g.run}}, ctx)
		}
		ready, err := t.readyOf(load, units)
		if err != nil {
			return chat.Post{}, err
		}
		view.Loads = append(view.Loads, ready)
		of.Refs = append(of.Refs, kitchen.Ref{Run: g.run, Units: units})
		t.about = g.run.Subject()
	}
	t.kind, t.said = unitsKind, phrase.ReadyWhen{Of: of}.String()
	return wording.Ready(view), nil
}

// growing are the loads of a question that something grows in.
func (w whichLoad) growing() []target {
	var out []target
	for _, c := range w.can {
		if c.load.Grows(c.load.Standing()) {
			out = append(out, c.target)
		}
	}
	return out
}

// readyOf is what is expected of units of a load, alike ones together.
func (t *turn) readyOf(load kitchen.Units, units []kitchen.UnitNo) (wording.ReadyLoad, error) {
	past, err := t.grownBefore()
	out := wording.ReadyLoad{Load: load}
	for _, n := range units {
		u, ok := load.Unit(n)
		if !ok {
			return out, kitchen.NoSuchUnit{Ref: kitchen.Ref{Run: load.Run, Units: []kitchen.UnitNo{n}}, Has: len(load.All)}
		}
		g, grows := kitchen.GrowthOf(u, past, t.settings)
		out.Add(u, g, grows)
	}
	return out, err
}

// asksGrowth reports whether who asks if something is ready asks of what grows there:
// the unit named has a culture, or the whole load has been seen to.
func (t *turn) asksGrowth(i phrase.CoolYet, ctx scene) (phrase.Meant, bool, error) {
	no := i.Which.Run
	if no == 0 && i.Which == (phrase.Which{}) {
		no = ctx.run
	}
	if no == 0 || i.Warm || i.For != "" {
		return phrase.Meant{}, false, nil
	}
	load, err := t.load(no)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		return phrase.Meant{}, false, nil
	}
	ref := kitchen.Ref{Run: no}
	if i.Unit != 0 {
		ref.Units = []kitchen.UnitNo{i.Unit}
	}
	grows := load.Arrived || i.Unit != 0 && asksOfGrowth(load, ref.Units) || i.Unit == 0 && t.seenTo(load)
	return phrase.Meant{Refs: []kitchen.Ref{ref}}, grows, err
}

// asksOfGrowth reports whether of these units, of all that stand where none are named, it
// is asked how they grow, and not whether they are cool: one has a culture or had, or is
// the blank.
func asksOfGrowth(load kitchen.Units, units []kitchen.UnitNo) bool {
	if len(units) == 0 {
		return load.Grows(load.Standing())
	}
	return slices.ContainsFunc(units, func(n kitchen.UnitNo) bool {
		u, ok := load.Unit(n)
		return ok && u.State != kitchen.InCook && (u.State != kitchen.UnitCooked || u.Blank)
	})
}

// growsInstead answers a question whether it is ready, where nothing is on the stove and
// something grows; false for any other.
func (t *turn) growsInstead(i phrase.CoolYet, ctx scene) (chat.Post, bool, error) {
	if i.Which != (phrase.Which{}) || i.Unit != 0 || i.Warm || i.For != "" || i.By != nil || ctx.run != 0 {
		return chat.Post{}, false, nil
	}
	open, err := t.openRuns()
	if err != nil || len(open) > 0 {
		return chat.Post{}, false, err
	}
	if ended, err := t.endedLately(cools); err != nil || len(ended) > 0 {
		return chat.Post{}, false, err
	}
	rows, err := t.book.StandingUnits()
	if err != nil || !slices.ContainsFunc(rows, func(r store.UnitRow) bool { return r.Cultured && r.State.Lives() }) {
		return chat.Post{}, false, err
	}
	post, err := t.readyWhen(phrase.ReadyWhen{}, ctx)
	return post, true, err
}

// seenTo reports whether of a load as a whole its growth is asked of: nothing waits for
// it to be cool any more, or something grows and it was found cool. Of a run that is gone
// since when is said.
func (t *turn) seenTo(load kitchen.Units) bool {
	run, err := t.theRun(load.Run)
	cool, gone := err == nil && run.Stage == kitchen.StageCool, err == nil && run.Stage == kitchen.StageGone
	return load.Settled() && !gone || cool && load.Grows(load.Standing())
}
