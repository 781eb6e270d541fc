package answer

import (
	"errors"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// noHeat writes that the runs at pressure in a cooker lost it as the gas or the
// stove failed: the hold doesn't count on. It gives back the run to speak of.
func (t *turn) noHeat(e kitchen.GearFailed, told kitchen.Run, at time.Time) (kitchen.Run, error) {
	open, err := t.openRuns()
	if err != nil || !e.Part.Heats() {
		return told, err
	}
	for _, r := range open {
		if e.Run != 0 && r.No != e.Run || e.Run == 0 && !sameCooker(r.Cooker, e.Cooker) || !r.Stage.Hot() {
			continue
		}
		if told.No == 0 || !sameCooker(told.Cooker, e.Cooker) || r.No == e.Run {
			told = r
		}
		lost := t.after(r, kitchen.PressureLost{}, at)
		if r.Stage != kitchen.StageAtPressure || t.follows(r, kitchen.PressureLost{}, lost) != nil {
			continue
		}
		if _, err := t.append(r.No.Subject(), kitchen.PressureLost{}, lost, t.text); err != nil {
			return told, err
		}
		if told.No == r.No {
			if told, err = t.theRun(r.No); err != nil {
				return told, err
			}
		}
	}
	return told, nil
}

// whichBurns is the run called off with its flame on that a heat off without a number
// is of, or that is still under pressure and a zero is of. Where another can be meant
// as well, it is a [whichRun]; false where none was called off so.
func (t *turn) whichBurns(i phrase.Tell, ctx scene) (kitchen.Run, bool, error) {
	state, beside := kitchen.Run.MayBurn, func(r kitchen.Run) bool { return r.Stage.Hot() }
	switch {
	case i.Which.Run != 0 || ctx.run != 0:
		return kitchen.Run{}, false, nil
	case is[kitchen.AtZero](i.Entries[0]):
		state, beside = kitchen.Run.MayPress, func(r kitchen.Run) bool { return r.Stage == kitchen.StageFalling }
	case !is[kitchen.HeatOff](i.Entries[0]):
		return kitchen.Run{}, false, nil
	}
	ended, err := t.calledOff(state)
	if err != nil {
		return kitchen.Run{}, false, err
	}
	meant := func(r kitchen.Run) bool {
		return (i.Which.Cooker == "" || sameCooker(r.Cooker, i.Which.Cooker)) && t.m.At.Sub(r.Newest) <= endedCounts
	}
	ended = only(ended, meant)
	open, err := t.openRuns()
	if err != nil || len(ended) == 0 {
		return kitchen.Run{}, false, err
	}
	several := append(only(open, func(r kitchen.Run) bool { return meant(r) && beside(r) }), ended...)
	if len(several) > 1 {
		return kitchen.Run{}, false, whichRun{several}
	}
	return several[0], true, nil
}

// litAgain takes a flame that is lit for the end of the gas or the stove having
// failed. Where that was all that was told, and the run can't be lit once more, it
// is the answer.
func (t *turn) litAgain(i phrase.Tell, run kitchen.Run) (chat.Post, bool, error) {
	if !is[kitchen.HeatOn](i.Entries[0]) || i.When != nil || !run.Stage.Hot() && !run.Relightable() {
		return chat.Post{}, false, nil
	}
	known, err := t.gear()
	if err != nil {
		return chat.Post{}, false, err
	}
	mended := kitchen.GearChecked{Cooker: run.Cooker}
	for _, g := range known {
		for _, part := range []kitchen.Part{kitchen.Gas, kitchen.Stove} {
			if _, failed := g.Failed[part]; failed && sameCooker(g.Cooker, run.Cooker) {
				mended.Parts = append(mended.Parts, part)
			}
		}
	}
	if len(mended.Parts) == 0 {
		return chat.Post{}, false, nil
	}
	if err := t.write(kitchen.GearSubject, mended, t.text); err != nil {
		return chat.Post{}, false, err
	}
	if err := t.follows(run, i.Entries[0], t.m.At); !errors.As(err, new(kitchen.AlreadySo)) || len(i.Entries) > 1 {
		return chat.Post{}, false, nil
	}
	t.kind, t.about = tellKind, run.No.Subject()
	return wording.LitAgain(wording.RunView{Run: run, Was: &run, At: t.now, Now: t.arrived(), Who: t.who}), true, nil
}

// stillBurns takes back the heat off of a run that somebody sees to be still on,
// whoever told it: else nothing would watch its flame. False where no run is told to
// be off, and the words only answer a ping.
func (t *turn) stillBurns(i phrase.AnswerPing, ctx scene) (chat.Post, bool, error) {
	off := func(r kitchen.Run) bool {
		s, told := r.LastStep(kitchen.KindHeatOff)
		return r.Stage == kitchen.StageFalling && told && s.Seen
	}
	run, err := t.which(i.Which, ctx, off)
	if post, ok := t.unsettled(err); ok {
		return post, !errors.As(err, new(nothingOn)), nil
	}
	if err != nil || !off(run) {
		return chat.Post{}, false, err
	}
	var struck []store.Logged
	for off(run) && err == nil {
		s, _ := run.LastStep(kitchen.KindHeatOff)
		var e store.Logged
		if e, err = t.book.Entry(s.No); err == nil {
			err = t.strikeOne(e)
		}
		if err == nil {
			struck = append(struck, e)
			run, err = t.theRun(run.No)
		}
	}
	if err != nil {
		return chat.Post{}, false, err
	}
	by := ""
	if struck[0].By != t.member.No {
		by = t.who(struck[0].By)
	}
	post, err := t.tellUndone(struck[:1], by)
	return post, true, err
}
