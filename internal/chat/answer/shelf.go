package answer

import (
	"cmp"
	"errors"
	"slices"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// shelf says what stands on the shelf, and how much of it.
func (t *turn) shelf(i phrase.Shelf) (chat.Post, error) {
	units, err := t.standing()
	if err != nil {
		return chat.Post{}, err
	}
	now := t.arrived()
	only := t.shelfOnly(i)
	t.said = i.String()
	return wording.Shelf(wording.ShelfView{Asked: i, Found: kitchen.ShelfOf(only.Of(units), now), All: kitchen.ShelfOf(units, now), Now: now}), nil
}

// shelfOnly is what a question of the shelf is narrowed to.
func (t *turn) shelfOnly(i phrase.Shelf) kitchen.ShelfOnly {
	return kitchen.ShelfOnly{
		State: i.State, Bad: i.Ask == phrase.AnythingBad, Container: i.Container, Culture: i.Culture, Grain: i.Grain, Usual: t.settings.GrainMeant(), Place: i.Place,
	}
}

// standing are the units that stand, with what is known and expected of each.
func (t *turn) standing() ([]kitchen.ShelfUnit, error) {
	rows, err := t.book.StandingUnits()
	if err != nil {
		return nil, err
	}
	cultures, err := t.culturesNow()
	if err != nil {
		return nil, err
	}
	past, err := t.grownBefore()
	if err != nil {
		return nil, err
	}
	units := make([]kitchen.ShelfUnit, len(rows))
	for n, r := range rows {
		u := kitchen.ShelfUnit{Unit: r.Unit, Begun: r.Begun, Cool: r.Cool, Arrived: r.Arrived}
		if c, ok := cultures.Named(u.Culture, t.m.At); ok && u.Species == "" {
			u.Species = c.Species
		}
		u.Through = t.throughAt(u.Unit, past)
		units[n] = u
	}
	return units, nil
}

// throughAt is when a unit is expected grown through, as its pings and "when is it
// ready" have it; zero for one that doesn't grow.
func (t *turn) throughAt(u kitchen.Unit, past []kitchen.Grown) kitchen.Expected {
	g, grows := kitchen.GrowthOf(u, past, t.settings)
	if !grows {
		return kitchen.Expected{}
	}
	return g.ThroughAt(t.m.At)
}

// whereIs says where units stand, or what became of them.
func (t *turn) whereIs(i phrase.WhereIs, ctx scene) (chat.Post, error) {
	targets, err := t.meantUnits(meaning{of: i.Of, at: t.m.At}, ctx)
	var several whichLoad
	if errors.As(err, &several) {
		return t.whichOf(several, func(of phrase.Meant) phrase.Intent { return phrase.WhereIs{Of: of} }), nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	view := wording.WhereView{Now: t.arrived(), Who: t.who}
	var said phrase.Meant
	for _, g := range targets {
		units, err := t.unitsAt(g)
		if err != nil {
			return chat.Post{}, err
		}
		view.Units = append(view.Units, units...)
		said.Refs = append(said.Refs, g.ref())
	}
	t.said, t.about = phrase.WhereIs{Of: said}.String(), targets[0].run.Subject()
	return wording.Where(view), nil
}

// whichOf asks of which load something is asked.
func (t *turn) whichOf(several whichLoad, ask func(phrase.Meant) phrase.Intent) chat.Post {
	can := slices.Clone(several.can)
	slices.SortFunc(can, func(a, b candidate) int { return cmp.Compare(b.run, a.run) })
	var options []wording.LoadOption
	for _, c := range can[:min(len(can), mostAsked)] {
		of := phrase.Meant{Refs: []kitchen.Ref{c.ref()}}
		options = append(options, wording.LoadOption{Load: c.load, Units: c.units, Say: ask(of).String()})
	}
	return wording.WhichLoad(options, len(can), t.arrived())
}

// unitsAt are the units of a load that are meant, all of it where none was named.
func (t *turn) unitsAt(g target) ([]kitchen.Unit, error) {
	load, err := t.load(g.run)
	if err != nil || len(g.units) == 0 {
		return load.All, err
	}
	var out []kitchen.Unit
	for _, n := range g.units {
		u, ok := load.Unit(n)
		if !ok {
			return nil, kitchen.NoSuchUnit{Ref: kitchen.Ref{Run: g.run, Units: []kitchen.UnitNo{n}}, Has: len(load.All)}
		}
		out = append(out, u)
	}
	return out, nil
}
