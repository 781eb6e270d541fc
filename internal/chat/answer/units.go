package answer

import (
	"errors"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// tellUnits writes what happened to units. What can be so is taken, and the answer
// says of the rest why not. Nothing is written before it is settled of every part
// which units are meant.
func (t *turn) tellUnits(i phrase.TellUnits, ctx scene) (chat.Post, error) {
	if post, gone, err := t.runUsed(i, ctx); gone || err != nil {
		return post, err
	}
	at, err := t.past(i.When)
	if err != nil {
		return chat.Post{}, err
	}
	if err := t.mendsAnswered(ctx); err != nil {
		return chat.Post{}, err
	}
	if len(t.mends) > 0 {
		if i.When == nil {
			at = t.mends[0].At
		}
		if err := t.withoutMended(); err != nil {
			return chat.Post{}, err
		}
	}
	parts, err := t.settledParts(i, ctx, at)
	if post, asks := t.whichUnits(err, i); asks {
		return post, t.restore()
	}
	if err != nil {
		return chat.Post{}, err
	}
	view := wording.UnitsView{At: at.In(t.now.Location()), Now: t.arrived(), Who: t.who}
	said := phrase.TellUnits{When: i.When}
	for _, p := range parts {
		told, err := t.tellPart(p, at)
		if err != nil {
			return chat.Post{}, err
		}
		t.meantAhead(told, i.When)
		view.Parts = append(view.Parts, told...)
		said.Parts = append(said.Parts, p.said())
	}
	if why := refusedAll(view.Parts); why != nil {
		return chat.Post{}, why
	}
	for _, e := range t.mends {
		view.Instead = append(view.Instead, saidOf(e))
	}
	run := view.Parts[0].Load.Run
	t.kind, t.said, view.First = unitsKind, said.String(), t.once(run)
	if run != 0 {
		t.about = run.Subject()
	}
	return wording.Units(view), nil
}

// mostAhead is how far ahead a day without a year is taken for one that is still to
// come, where the one that has passed can't be meant.
const mostAhead = 200 * 24 * time.Hour

// nearerAhead is when a moment is still to come, where that is nearer than the instant
// at which it was so before.
func (t *turn) nearerAhead(m *phrase.Moment, before time.Time) (time.Time, bool) {
	for _, next := range m.Resolve(t.now, phrase.Forward) {
		if ahead := next.Sub(t.now); ahead > 0 && ahead < mostAhead && ahead < t.now.Sub(before) {
			return next, true
		}
	}
	return time.Time{}, false
}

// meantAhead says of a day that lies before the load that it is still to come, where
// the next one of that name is nearer.
func (t *turn) meantAhead(told []wording.UnitsTold, m *phrase.Moment) {
	for i := range told {
		before, early := told[i].Why.(kitchen.BeforeRun)
		if !early || m == nil {
			continue
		}
		if next, ahead := t.nearerAhead(m, before.At); ahead {
			told[i].Why = kitchen.InFuture{At: next, Told: t.m.At}
		}
	}
}

// refusedAll is why nothing of several parts was taken; nil when something was.
func refusedAll(parts []wording.UnitsTold) kitchen.Refusal {
	for _, p := range parts {
		if p.Why == nil {
			return nil
		}
	}
	return parts[0].Why
}

// settledPart is one thing told, with the units it is about.
type settledPart struct {
	entry   kitchen.UnitEntry
	targets []target
	// why is set when none can be meant.
	why kitchen.Refusal
}

// said is the part with its units as they were understood.
func (p settledPart) said() phrase.UnitsPart {
	part := phrase.UnitsPart{Entry: p.entry}
	for _, g := range p.targets {
		part.Of.Refs = append(part.Of.Refs, g.ref())
	}
	return part
}

// settledParts finds the units of each part.
func (t *turn) settledParts(i phrase.TellUnits, ctx scene, at time.Time) ([]settledPart, error) {
	var parts []settledPart
	var before []target
	for _, p := range i.Parts {
		targets, err := t.meantUnits(meaning{of: p.Of, entry: p.Entry, at: at, before: before}, ctx)
		settled := settledPart{entry: p.Entry, targets: targets}
		var why kitchen.Refusal
		if errors.As(err, &why) {
			settled.why, err = why, nil
		}
		if err != nil {
			return nil, err
		}
		parts = append(parts, settled)
		before = append(before, targets...)
	}
	return parts, nil
}

// tellPart writes one thing told, load by load.
func (t *turn) tellPart(p settledPart, at time.Time) ([]wording.UnitsTold, error) {
	if p.why != nil {
		return []wording.UnitsTold{{Entry: p.entry, Why: p.why}}, nil
	}
	var parts []wording.UnitsTold
	for _, g := range p.targets {
		told, err := t.tellLoad(g, p.entry, at)
		var why kitchen.Refusal
		if errors.As(err, &why) {
			told.Why, err = why, nil
		}
		if err != nil {
			return nil, err
		}
		parts = append(parts, told)
	}
	return parts, nil
}

// tellLoad writes an entry about those units of a load that it can be so of. A
// [kitchen.Refusal] says why of none.
func (t *turn) tellLoad(g target, e kitchen.UnitEntry, at time.Time) (wording.UnitsTold, error) {
	load, err := t.load(g.run)
	if err != nil {
		return wording.UnitsTold{}, err
	}
	if at.Equal(t.m.At) {
		at = load.After(at)
	}
	told := wording.UnitsTold{Was: load, Load: load, Units: g.units, Entry: kitchen.About(e, g.units)}
	if put, ok := told.Entry.(kitchen.Inoculated); ok {
		if put, told.Parentage, err = t.put(g.run, put, at); err != nil {
			return told, err
		}
		told.Entry = put
	}
	told.Too, told.TooAt = t.signToo(load, told.Entry)
	rec := kitchen.Record{By: t.member.No, At: at, Written: t.m.Arrived, Entry: told.Entry}
	if why := load.Again(rec); why != nil && len(t.m.Photos) == 0 {
		return told, why
	}
	next, taking, err := load.Apply(rec)
	if err != nil {
		return told, err
	}
	told.Taking = taking
	no, err := t.append(g.run.Subject(), taking.Record.Entry, at, t.text)
	if err != nil {
		return told, err
	}
	told.No, told.Load = no, next
	t.loads[g.run] = next
	if taking.Warm {
		if err := t.readBefore(&told, at); err != nil {
			return told, err
		}
	}
	return told, t.consequences(&told)
}

// atOnce is how far apart two people tell the same who saw it together: a door may know
// no more than the second.
const atOnce = time.Second

// signToo is who else told the same sign of all the same units at once, and when; zero
// for nobody.
func (t *turn) signToo(load kitchen.Units, e kitchen.UnitEntry) (by kitchen.MemberNo, at time.Time) {
	seen, is := e.(kitchen.SignSeen)
	if !is || len(seen.Units) == 0 {
		return 0, time.Time{}
	}
	for _, n := range seen.Units {
		u, _ := load.Unit(n)
		s, ok := u.LastStep(kitchen.SaidBy(e))
		before, same := s.Entry.(kitchen.SignSeen)
		if !ok || !same || before.Sign != seen.Sign || s.By == 0 || s.By == t.member.No || by != 0 && s.By != by || t.m.At.Sub(s.At).Abs() > atOnce {
			return 0, time.Time{}
		}
		by, at = s.By, s.At
	}
	return by, at
}

// readBefore adds the reading by which somebody had just found a load within the limit
// that is warm by the estimate.
func (t *turn) readBefore(told *wording.UnitsTold, at time.Time) error {
	run, err := t.theRun(told.Load.Run)
	if err != nil {
		return err
	}
	read, ok := run.ReadWithin(at)
	if !ok {
		return nil
	}
	told.Read = &read
	if c, known := run.Cooling(); known {
		middle := c.Middle(at)
		told.Middle = &middle
	}
	return nil
}

// put is what was put on units as the book knows it: the culture by the name that
// the collective gave it, and what grows.
func (t *turn) put(run kitchen.RunNo, e kitchen.Inoculated, at time.Time) (kitchen.Inoculated, kitchen.Parentage, error) {
	cultures, err := t.culturesNow()
	if err != nil {
		return e, kitchen.Parentage{}, err
	}
	if c, ok := cultures.Named(e.Culture, at); ok {
		e.Culture = c.Name
		if e.Species == "" {
			e.Species = c.Species
		}
		if e.Route == 0 {
			e.Route = c.Kind.Route()
		}
	}
	p, err := t.inoculating(run, e, at)
	if e.Species == "" {
		e.Species = p.Species
	}
	return e, p, err
}

// consequences adds what is worth saying of what was told.
func (t *turn) consequences(told *wording.UnitsTold) error {
	first, _ := told.Load.Unit(told.Taking.Taken[0])
	past, err := t.grownBefore()
	if err != nil {
		return err
	}
	if g, grows := kitchen.GrowthOf(first, past, t.settings); grows {
		told.Growth = &g
	}
	if lost(*told) {
		told.Kin, err = t.endangered(told.Load.Run, told.Taking.Taken)
	}
	return err
}

// lost reports whether units were just told to be contaminated.
func lost(told wording.UnitsTold) bool {
	for _, n := range told.Taking.Taken {
		was, _ := told.Was.Unit(n)
		now, _ := told.Load.Unit(n)
		if now.Loss.What == kitchen.UnitContaminated && was.Loss.What != kitchen.UnitContaminated {
			return true
		}
	}
	return false
}

// unitsGone takes "#13 is gone" of a load that no run made for a word about its units, and
// "used up 12" where a culture was put on them.
func (t *turn) unitsGone(i phrase.Tell, ctx scene) (chat.Post, bool, error) {
	if len(i.Entries) != 1 || !is[kitchen.RunGone](i.Entries[0]) || i.Which.Run == 0 {
		return chat.Post{}, false, nil
	}
	load, err := t.load(i.Which.Run)
	if err != nil {
		return chat.Post{}, false, nil // the run is told of, and says why not
	}
	used := phrase.SaysUsed(t.text, t.names) && cultured(load)
	if !load.Arrived && !used {
		return chat.Post{}, false, nil
	}
	told := ofRun(i.Which.Run, kitchen.UnitsGone{})
	if used {
		told = ofRun(i.Which.Run, kitchen.UnitsUsed{})
	}
	told.When = i.When
	post, err := t.tellUnits(told, ctx)
	return post, true, err
}
