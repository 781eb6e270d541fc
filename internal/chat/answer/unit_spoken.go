package answer

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// answeredUnits are those of the units that the post answered spoke of which are meant,
// load by load; none for a post that spoke of none.
func (t *turn) answeredUnits(m meaning, ctx scene) ([]target, error) {
	if ctx.ping != "" {
		targets, err := t.pingedUnits(m, ctx)
		if err != nil || len(targets) != 1 {
			return targets, err
		}
		return t.amongSpoken(targets, m)
	}
	targets, err := t.spokenUnits(ctx)
	if err != nil || len(targets) == 0 {
		return nil, err
	}
	return t.amongSpoken(targets, m)
}

// spokenUnits are the units that the answer replied to spoke of.
func (t *turn) spokenUnits(ctx scene) ([]target, error) {
	if ctx.turn == nil {
		return nil, nil
	}
	var out []target
	for _, in := range phrase.Parse(ctx.turn.Said, t.names).Intents {
		spoken, err := t.unitsIn(in, ctx)
		if err != nil {
			return nil, err
		}
		out = append(out, spoken...)
	}
	return joined(out), nil
}

// unitsIn are the units that the answer to an intent speaks of.
func (t *turn) unitsIn(in phrase.Intent, ctx scene) ([]target, error) {
	switch i := in.(type) {
	case phrase.LogUnit:
		return targetsOf(i.Of), nil
	case phrase.WhereIs:
		return targetsOf(i.Of), nil
	case phrase.ReadyWhen:
		return targetsOf(i.Of), nil
	case phrase.TellUnits:
		var out []target
		for _, p := range i.Parts {
			out = append(out, targetsOf(p.Of)...)
		}
		return out, nil
	case phrase.Arrive:
		entries, err := t.book.EntriesOf(ctx.turn.ID)
		var out []target
		for _, no := range arrivedIn(entries) {
			out = append(out, target{run: no})
		}
		return out, err
	case phrase.Shelf:
		units, err := t.standing()
		var out []target
		for _, u := range t.shelfOnly(i).Of(units) {
			out = append(out, target{run: u.Ref.Run, units: []kitchen.UnitNo{u.Ref.Unit}})
		}
		return out, err
	case phrase.Add, phrase.AnswerPing, phrase.Board, phrase.Book, phrase.Bookings, phrase.Chart, phrase.Choose, phrase.Claim,
		phrase.Cook, phrase.CoolYet, phrase.Correct, phrase.Cultures, phrase.Drop, phrase.EndCulture, phrase.Forget, phrase.GearTold,
		phrase.GiveRole, phrase.Greet, phrase.HandOver, phrase.Help, phrase.Kitchen, phrase.Log, phrase.MakeCulture, phrase.MakeUsual,
		phrase.Members, phrase.NewCode, phrase.OutBy, phrase.PingsWhere, phrase.Plan, phrase.PlanIt, phrase.Quiet, phrase.RemindStart,
		phrase.Rename, phrase.Reverse, phrase.SameAs, phrase.Set, phrase.ShiftTime, phrase.StartAt, phrase.Steps, phrase.TakeOver,
		phrase.SomeUnits, phrase.Tell, phrase.Thanks, phrase.TimesRecord, phrase.Trace, phrase.Unbook, phrase.Undo, phrase.Usual, phrase.Why,
		phrase.WhyPing:
		return nil, nil
	}
	panic(fmt.Sprintf("units of intent %T", in))
}

func targetsOf(m phrase.Meant) []target {
	var out []target
	for _, r := range m.Refs {
		out = append(out, target{run: r.Run, units: r.Units})
	}
	return out
}

// joined has each load once.
func joined(targets []target) []target {
	var out []target
	for _, g := range targets {
		i := slices.IndexFunc(out, func(o target) bool { return o.run == g.run })
		switch {
		case i < 0:
			out = append(out, target{g.run, slices.Clone(g.units)})
		case len(out[i].units) == 0 || len(g.units) == 0:
			out[i].units = nil
		default:
			for _, n := range g.units {
				if !slices.Contains(out[i].units, n) {
					out[i].units = append(out[i].units, n)
				}
			}
		}
	}
	return out
}

// amongSpoken are those of the units just spoken of that are meant: all of one load, but
// for what is usually so of one jar; of several loads it is asked.
func (t *turn) amongSpoken(targets []target, m meaning) ([]target, error) {
	if m.entry == nil || len(targets) == 1 && !ofOne(m.entry) {
		return targets, nil
	}
	var can []candidate
	for _, g := range targets {
		fit, err := t.fitting(g, m)
		if err != nil {
			return nil, err
		}
		can = append(can, fit...)
	}
	if len(targets) == 1 && len(can) == 1 {
		can = oneByOne(can[0])
	}
	switch len(can) {
	case 0:
		return targets, nil // each says why not
	case 1:
		return []target{can[0].target}, nil
	}
	return nil, whichLoad{can}
}

// oneByOne is a load with each of its units, where there are several.
func oneByOne(all candidate) []candidate {
	out := []candidate{all}
	if len(all.units) < 2 {
		return out
	}
	for _, n := range all.units {
		out = append(out, candidate{target{all.run, []kitchen.UnitNo{n}}, all.load})
	}
	return out
}

// fitting is a target with those of its units that something can be so of; none where it
// can't of any.
func (t *turn) fitting(g target, m meaning) ([]candidate, error) {
	load, err := t.load(g.run)
	if err != nil {
		return nil, err
	}
	units := g.units
	if len(units) == 0 {
		units = load.Fit(m.entry)
	}
	if len(units) == 0 {
		return nil, nil
	}
	_, taking, err := load.Apply(t.recordOf(load, m.entry, units, m.at))
	var why kitchen.Refusal
	if errors.As(err, &why) {
		return nil, nil
	}
	return []candidate{{target{g.run, taking.Taken}, load}}, err
}

// recordOf is something told of units of a load: a moment later where it would else come
// before what was told of that very instant.
func (t *turn) recordOf(load kitchen.Units, e kitchen.UnitEntry, units []kitchen.UnitNo, at time.Time) kitchen.Record {
	if at.Equal(t.m.At) {
		at = load.After(at)
	}
	return kitchen.Record{By: t.member.No, At: at, Written: t.m.Arrived, Entry: kitchen.About(e, units)}
}

// ofOne reports whether something is rather so of one jar than of all that were spoken
// of: that it went bad, and that it was thrown out.
func ofOne(e kitchen.UnitEntry) bool {
	if seen, ok := e.(kitchen.SignSeen); ok {
		return seen.Sign != kitchen.LooksFine
	}
	return is[kitchen.UnitsDiscarded](e)
}
