package answer

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// gear folds what is known of the parts of the cookers.
func (t *turn) gear() ([]kitchen.Gear, error) {
	told, err := t.book.Standing(kitchen.GearSubject)
	if err != nil {
		return nil, err
	}
	changes, err := t.book.Standing(kitchenSubject)
	return kitchen.FoldGear(append(told, changes...)), err
}

// gearDue is what to look at before a run's cooker is lit.
func (t *turn) gearDue(run kitchen.Run) (kitchen.GearAsk, bool, error) {
	known, err := t.gear()
	if err != nil {
		return kitchen.GearAsk{}, false, err
	}
	rows, err := t.book.LastRuns(lastRuns)
	if err != nil {
		return kitchen.GearAsk{}, false, err
	}
	earlier, err := t.folded(rows)
	if err != nil {
		return kitchen.GearAsk{}, false, err
	}
	ask, due := kitchen.GearDue(run.Cooker, known, earlier, t.now, t.now.Location())
	return ask, due, nil
}

// gearTold writes that a part of a cooker failed or was looked at. An unnamed
// cooker is that of the run meant, else the only one.
func (t *turn) gearTold(i phrase.GearTold, ctx scene) (chat.Post, error) {
	cooker, run, err := t.gearOf(ctx)
	if err != nil {
		return chat.Post{}, err
	}
	at, err := t.failedAt(i, run)
	if err != nil {
		return chat.Post{}, err
	}
	view := wording.GearView{At: at.In(t.now.Location()), Now: t.arrived()}
	switch e := i.Entry.(type) {
	case kitchen.GearFailed:
		if e.Cooker == "" {
			e.Cooker, e.Run = cooker, run.No
		}
		view.Entry = e
		if run, err = t.noHeat(e, run, at); err != nil {
			return chat.Post{}, err
		}
	case kitchen.GearChecked:
		if e.Cooker == "" {
			e.Cooker = cooker
		}
		view.Entry = e
		if t.relightsNext(run) {
			run.No = 0 // how the run stands is said with that
		}
	case kitchen.GaugeReads:
		return t.set(phrase.Set{Changes: []kitchen.Change{e}})
	}
	if run.No != 0 {
		view.Run = &run
	}
	if err := t.writeAt(kitchen.GearSubject, view.Entry, at); err != nil {
		return chat.Post{}, err
	}
	return wording.GearTold(view), nil
}

// relightsNext reports whether the flame is told in the same breath as what was mended,
// "new gas bottle, lit again". No other run is lit by that.
func (t *turn) relightsNext(run kitchen.Run) bool {
	if len(t.rest) == 0 || run.No == 0 {
		return false
	}
	next, ok := t.rest[0].(phrase.Tell)
	if !ok || next.Which != (phrase.Which{}) || !is[kitchen.HeatOn](next.Entries[0]) {
		return false
	}
	next.Which.Run = run.No
	t.rest[0] = next
	return true
}

// failedAt is when a part failed, never ahead.
func (t *turn) failedAt(i phrase.GearTold, run kitchen.Run) (time.Time, error) {
	at, err := t.past(i.When)
	if err == nil && at.After(t.m.At) {
		err = kitchen.InFuture{At: at, Told: t.m.At}
	}
	if err == nil && run.No != 0 {
		err = t.ahead(i.When, at, run.PutOn())
	}
	return at, err
}

// gearOf is the cooker that gear is told of when none is named, and the run that
// is in it.
func (t *turn) gearOf(ctx scene) (string, kitchen.Run, error) {
	open, err := t.openRuns()
	if err != nil {
		return "", kitchen.Run{}, err
	}
	if ctx.run != 0 {
		r, err := t.theRun(ctx.run)
		return r.Cooker, r, err
	}
	if lost := only(open, func(r kitchen.Run) bool { return t.isOwn(r) && r.Stage == kitchen.StagePressureLost }); len(lost) == 1 {
		return lost[0].Cooker, lost[0], nil
	}
	for _, r := range open {
		if len(open) == 1 || r.Cook == t.member.No {
			return r.Cooker, r, nil
		}
	}
	k, _ := t.settings.CookerNamed("")
	return k.Name, kitchen.Run{}, nil
}
