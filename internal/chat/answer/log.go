package answer

import (
	"errors"
	"slices"
	"strconv"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// steps says the step at hand.
func (t *turn) steps(i phrase.Steps, ctx scene) (chat.Post, error) {
	run, err := t.which(i.Which, ctx, func(r kitchen.Run) bool { return !r.Stage.Over() })
	if errors.As(err, new(nothingOn)) {
		if post, ok, err := t.nextOnShelf(ctx); ok || err != nil {
			return post, err
		}
	}
	if errors.As(err, new(nothingOn)) && ctx.plan != nil {
		p, err := t.settings.Work(ctx.plan.Order)
		if err != nil {
			return chat.Post{}, err
		}
		t.kind, t.said = planKind, ctx.plan.String()
		return wording.Steps(wording.StepsView{Plan: p, Now: t.arrived()}), nil
	}
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	return t.stepsOf(run)
}

// stepsOf says the step of a run that is at hand. Nobody reports the steps before
// the flame, so who asks again gets the next.
func (t *turn) stepsOf(run kitchen.Run) (chat.Post, error) {
	if load, err := t.load(run.No); err != nil || load.Settled() {
		if err != nil {
			return chat.Post{}, err
		}
		return t.readyWhen(phrase.ReadyWhen{Of: phrase.Meant{Refs: []kitchen.Ref{{Run: run.No}}}}, scene{})
	}
	p, err := t.settings.Work(run.Order)
	if err != nil {
		return chat.Post{}, err
	}
	view := wording.StepsView{Run: run, Plan: p, Now: t.arrived()}
	if run.Stage == kitchen.StagePlanned {
		if view.At, err = t.stepAsked(run.No, wording.StepsBeforeFlame(p)); err != nil {
			return chat.Post{}, err
		}
	}
	t.about = run.No.Subject()
	return wording.Steps(view), nil
}

// nextOnShelf says what comes next where nothing is on the stove: of the run that was
// spoken of last, or, where no plan is talked about either, of all that grows.
func (t *turn) nextOnShelf(ctx scene) (chat.Post, bool, error) {
	newest, err := t.newestTurn()
	if err != nil {
		return chat.Post{}, false, err
	}
	rows, err := t.book.RowsOf(newest.ID)
	if err != nil {
		return chat.Post{}, false, err
	}
	if len(rows) > 0 && newest.Kind != planKind && t.m.At.Sub(newest.At) <= sceneLasts {
		if no, ok := runOf(rows[len(rows)-1].About); ok {
			load, err := t.load(no)
			if err == nil && (load.Arrived || load.Settled()) {
				post, err := t.readyWhen(phrase.ReadyWhen{Of: phrase.Meant{Refs: []kitchen.Ref{{Run: no}}}}, scene{})
				return post, true, err
			}
			if err != nil && !errors.As(err, new(kitchen.NoSuchRun)) {
				return chat.Post{}, false, err
			}
		}
	}
	if ctx.plan != nil {
		return chat.Post{}, false, nil
	}
	units, err := t.standing()
	if err != nil {
		return chat.Post{}, false, err
	}
	of := phrase.ReadyWhen{}
	for _, u := range units {
		load, err := t.load(u.Ref.Run)
		if err != nil {
			return chat.Post{}, false, err
		}
		if load.Grows([]kitchen.UnitNo{u.Ref.Unit}) && !slices.ContainsFunc(of.Of.Refs, func(r kitchen.Ref) bool { return r.Run == load.Run }) {
			of.Of.Refs = append(of.Of.Refs, kitchen.Ref{Run: load.Run})
		}
	}
	if len(of.Of.Refs) == 0 {
		return chat.Post{}, false, nil
	}
	post, err := t.readyWhen(of, scene{})
	return post, true, err
}

// stepAsked counts how often somebody asked for the next step of a run before its
// flame: which of so many is at hand.
func (t *turn) stepAsked(no kitchen.RunNo, of int) (int, error) {
	for at := range of {
		first, err := t.tellOnce(no.Prefix() + "step/" + strconv.Itoa(at))
		if err != nil || first == wording.New {
			return at, err
		}
	}
	return of - 1, nil
}

// logOf tells the story of a run, or lists the last ones.
func (t *turn) logOf(i phrase.Log, ctx scene) (chat.Post, error) {
	if i.Which != (phrase.Which{}) || ctx.turn != nil && ctx.run != 0 {
		run, err := t.which(i.Which, ctx, func(kitchen.Run) bool { return true })
		if post, ok := t.unsettled(err); ok {
			return post, nil
		}
		var not kitchen.NotCookedHere
		if errors.As(err, &not) {
			return t.logUnit(phrase.LogUnit{Of: phrase.Meant{Refs: []kitchen.Ref{{Run: not.Run}}}}, ctx)
		}
		if err != nil {
			return chat.Post{}, err
		}
		t.kind, t.about = logKind, run.No.Subject()
		t.said = phrase.Log{Which: phrase.Which{Run: run.No}}.String()
		return t.logRun(run)
	}
	rows, err := t.book.LastRuns(lastRuns)
	if i.Mine {
		rows, err = t.book.LastRunsOf(t.member.No, lastRuns)
	}
	if err != nil {
		return chat.Post{}, err
	}
	runs, err := t.folded(rows)
	if err != nil {
		return chat.Post{}, err
	}
	return wording.Runs(wording.RunsView{Runs: runs, Mine: i.Mine, Now: t.arrived(), Who: t.who}), nil
}

// logRun tells the story of a run, and how its units stand.
func (t *turn) logRun(run kitchen.Run) (chat.Post, error) {
	units, err := t.load(run.No)
	if err != nil {
		return chat.Post{}, err
	}
	photos, err := t.photosOfRun(run)
	return wording.Log(wording.LogView{Story: wording.Story{Run: run, Photos: photos, Now: t.arrived(), Who: t.who}, Units: units}), err
}

// lastRuns is how many runs a list shows.
const lastRuns = 8

// figures shows the working of what a run reached.
func (t *turn) figures(no kitchen.RunNo) (chat.Post, error) {
	run, err := t.theRun(no)
	if err != nil {
		return chat.Post{}, err
	}
	t.kind, t.about = logKind, no.Subject()
	t.said = phrase.Log{Which: phrase.Which{Run: no}}.String()
	return wording.LogFigures(wording.LogView{Story: wording.Story{Run: run, Now: t.arrived(), Who: t.who}}), nil
}
