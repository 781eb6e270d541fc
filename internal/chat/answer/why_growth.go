package answer

import (
	"errors"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// whyGrowth shows the working of when units are grown through, where a why is about
// that; false where it is about something else.
func (t *turn) whyGrowth(i phrase.Why, ctx scene) (chat.Post, bool, error) {
	targets, err := t.whyUnits(i, ctx)
	if err != nil || len(targets) == 0 {
		return chat.Post{}, false, err
	}
	view := wording.ReadyView{Now: t.arrived()}
	var of phrase.Meant
	for _, g := range targets {
		load, err := t.load(g.run)
		if err != nil {
			return chat.Post{}, false, err
		}
		units := g.units
		if len(units) == 0 {
			units = load.Standing()
		}
		ready, err := t.readyOf(load, units)
		if err != nil {
			return chat.Post{}, false, err
		}
		view.Loads = append(view.Loads, ready)
		of.Refs = append(of.Refs, kitchen.Ref{Run: g.run, Units: units})
	}
	t.kind, t.about, t.said = unitsKind, targets[0].run.Subject(), phrase.ReadyWhen{Of: of}.String()
	return wording.WhyGrowth(view), true, nil
}

// whyUnits are the units that a why is about: those named, else those that grow of which
// the bot spoke last.
func (t *turn) whyUnits(i phrase.Why, ctx scene) ([]target, error) {
	if i.Number != 0 || i.Of != (kitchen.Container{}) || i.Part != 0 && i.Part != phrase.PartTime {
		return nil, nil
	}
	if no := i.Which.Run; no != 0 {
		return t.whyNamed(no, i.Unit)
	}
	if i.Which != (phrase.Which{}) {
		return nil, nil
	}
	targets, err := t.unitsSpokenLast(ctx)
	if err != nil {
		return nil, err
	}
	var grow []target
	for _, g := range targets {
		load, err := t.load(g.run)
		if errors.As(err, new(kitchen.NoSuchRun)) {
			continue
		}
		if err != nil {
			return nil, err
		}
		units := g.units
		if len(units) == 0 {
			units = load.Standing()
		}
		for _, n := range units {
			if load.Grows([]kitchen.UnitNo{n}) {
				grow = append(grow, target{run: g.run, units: []kitchen.UnitNo{n}})
			}
		}
	}
	return joined(grow), nil
}

// whyNamed are the units of a load that was named, if its growth is what can be asked.
func (t *turn) whyNamed(no kitchen.RunNo, unit kitchen.UnitNo) ([]target, error) {
	load, err := t.load(no)
	if err != nil {
		return nil, err
	}
	asked := target{run: no}
	if unit != 0 {
		asked.units = []kitchen.UnitNo{unit}
		if _, ok := load.Unit(unit); !ok {
			return nil, kitchen.NoSuchUnit{Ref: kitchen.Ref{Run: no, Units: asked.units}, Has: len(load.All)}
		}
	}
	if load.Arrived || t.seenTo(load) || unit != 0 && load.Grows(asked.units) {
		return []target{asked}, nil
	}
	return nil, nil
}

// unitsSpokenLast are the units of which the post replied to spoke, or the bot's last
// answer to the speaker here.
func (t *turn) unitsSpokenLast(ctx scene) ([]target, error) {
	if ctx.post && ctx.ping != "" {
		rows, err := t.book.Pings(ctx.ping)
		if err != nil || len(rows) == 0 || !ofGrowth(rows[0]) {
			return nil, err
		}
		return []target{{run: ctx.run}}, nil
	}
	if !ctx.post {
		newest, err := t.newestTurn()
		if err != nil || t.m.At.Sub(newest.At) > sceneLasts {
			return nil, err
		}
		ctx.turn = &newest
	}
	if ctx.turn == nil || ctx.turn.Kind != unitsKind {
		return nil, nil
	}
	return t.spokenUnits(ctx)
}

// ofGrowth reports whether a ping is about when units are grown through.
func ofGrowth(p store.PingRow) bool {
	return p.Kind == kitchen.ShakeDue || p.Kind == kitchen.ThroughDue || p.Kind == kitchen.NothingSeen
}
