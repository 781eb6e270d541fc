package answer

import (
	"errors"
	"math"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// cools reports whether a run can be asked how warm it is.
func cools(r kitchen.Run) bool {
	return r.Stage == kitchen.StageCooling || r.Stage == kitchen.StageCool
}

// whichCools finds the run of which somebody asks how warm it is.
func (t *turn) whichCools(w phrase.Which, ctx scene) (kitchen.Run, error) {
	return t.which(w, ctx, func(r kitchen.Run) bool { return !r.Stage.Over() || r.Stage == kitchen.StageCool })
}

// coolYet says what is known of how warm a run is.
func (t *turn) coolYet(i phrase.CoolYet, ctx scene) (chat.Post, error) {
	if of, grows, err := t.asksGrowth(i, ctx); grows || err != nil {
		return t.readyWhen(phrase.ReadyWhen{Of: of}, ctx)
	}
	if post, grows, err := t.growsInstead(i, ctx); grows || err != nil {
		return post, err
	}
	run, err := t.whichCools(i.Which, ctx)
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	view := wording.CoolView{Run: run, Now: t.arrived(), Limit: t.settings.CoolLimitFor(i.For), For: i.For, Unit: i.Unit, Own: t.settings.KnowsCulture(i.For)}
	load, err := t.load(run.No)
	if err != nil {
		return chat.Post{}, err
	}
	view.Settled = load.Settled()
	if int(i.Unit) > run.Units() {
		return chat.Post{}, kitchen.NoSuchUnit{Ref: kitchen.Ref{Run: run.No, Units: []kitchen.UnitNo{i.Unit}}, Has: run.Units()}
	}
	if i.By != nil {
		if meant := i.By.Resolve(t.now, phrase.Forward); len(meant) > 0 {
			view.By = meant[0]
		}
	}
	return t.ofCool(run, wording.CoolYet(view)), nil
}

// idleCool reports whether a question is one that people ask of many things, by when
// or for what it is cool, while nothing cools.
func (t *turn) idleCool(p phrase.Parsed) (bool, error) {
	if len(p.Intents) != 1 {
		return false, nil
	}
	q, ok := p.Intents[0].(phrase.CoolYet)
	if !ok || q.Which != (phrase.Which{}) || q.By == nil && q.For == "" && !q.Warm {
		return false, nil
	}
	open, err := t.openRuns()
	if err != nil || len(only(open, cools)) > 0 {
		return false, err
	}
	ended, err := t.endedLately(cools)
	return len(ended) == 0, err
}

// measured takes a figure alone for a reading, where the bot asked for one last: from
// the evening to the next morning.
func (t *turn) measured(p phrase.Parsed, ctx scene) (phrase.Parsed, error) {
	if !choosing(p) && (len(p.Intents) > 0 || p.Ask != nil || p.Near != nil) {
		return p, nil
	}
	if _, ok := phrase.Figures(t.text, t.names, 1); !ok {
		return p, nil
	}
	run, spoken, err := t.coolingSpokenOf(ctx)
	if err != nil || !spoken || run.Stage != kitchen.StageCooling {
		return p, err
	}
	if _, at, err := t.coolingSaidLast(); err != nil || !t.addressed() && t.m.At.Sub(at) > sceneLasts {
		return p, err
	}
	t.text, _ = phrase.Figures(t.text, t.names, run.No)
	return phrase.Parse(t.text, t.names), nil
}

// ofCool marks an answer as one about how a run cools, so that "why" and a figure
// alone go on from it.
func (t *turn) ofCool(run kitchen.Run, post chat.Post) chat.Post {
	t.kind, t.about = coolKind, run.No.Subject()
	t.said = phrase.CoolYet{Which: phrase.Which{Run: run.No}}.String()
	return post
}

// whyCool shows how the time at which a run is cool comes about.
func (t *turn) whyCool(run kitchen.Run) (chat.Post, error) {
	return t.ofCool(run, wording.WhyCool(run, t.arrived())), nil
}

// recorded is how many runs the record of the times goes back.
const recorded = 200

// timesRecord says how often the ranges of the forecasts held here.
func (t *turn) timesRecord() (chat.Post, error) {
	runs, err := t.book.CooledBefore(math.MaxInt32, recorded)
	return wording.TimesRecord(runs), err
}

// whyOfCool finds the run whose cooling a why is about; false when it is about
// something else, a plan most often.
func (t *turn) whyOfCool(i phrase.Why, ctx scene) (kitchen.Run, bool, error) {
	switch {
	case i.Which != (phrase.Which{}):
		run, err := t.which(i.Which, ctx, cools)
		return run, err == nil && cools(run), err
	case i.Number != 0:
		return t.whyNumber(i.Number, ctx)
	case i.Part != 0 && i.Part != phrase.PartTime:
		return kitchen.Run{}, false, nil
	}
	run, spoken, err := t.coolingSpokenOf(ctx)
	if err != nil || spoken || i.Part != phrase.PartTime || ctx.post {
		return run, spoken, err
	}
	if newest, err := t.newestTurn(); err != nil || newest.Kind == planKind {
		return kitchen.Run{}, false, err
	}
	return t.onlyCooling()
}

// onlyCooling is the run that cools, if there is one and no other.
func (t *turn) onlyCooling() (kitchen.Run, bool, error) {
	open, err := t.openRuns()
	if open = only(open, cools); len(open) == 1 {
		return open[0], true, err
	}
	return kitchen.Run{}, false, err
}

// whyNumber takes the number asked about for that of a run which cools, unless a plan
// was spoken of last: "why 12".
func (t *turn) whyNumber(n float64, ctx scene) (kitchen.Run, bool, error) {
	newest, err := t.newestTurn()
	planned := ctx.turn != nil && ctx.turn.Kind == planKind || ctx.turn == nil && newest.Kind == planKind
	if err != nil || planned || n != math.Trunc(n) {
		return kitchen.Run{}, false, err
	}
	run, err := t.theRun(kitchen.RunNo(n))
	if errors.As(err, new(kitchen.NoSuchRun)) {
		return kitchen.Run{}, false, nil
	}
	return run, err == nil && cools(run), err
}

// newestTurn is what the speaker said last here; zero when they have said nothing.
func (t *turn) newestTurn() (store.Turn, error) {
	turns, err := t.book.Turns(t.room.ID, t.member.No, 2)
	for _, turn := range turns {
		if turn.ID != t.owner {
			return turn, err
		}
	}
	return store.Turn{}, err
}

// coolingSpokenOf is the run whose cooling is spoken of: the post replied to was about
// it, or the bot said that last to the speaker, in an answer or a ping.
func (t *turn) coolingSpokenOf(ctx scene) (kitchen.Run, bool, error) {
	no := ctx.run
	switch {
	case ctx.post && ctx.ping != "":
		rows, err := t.book.Pings(ctx.ping)
		if err != nil || len(rows) == 0 || !ofCooling(rows[0].Kind) {
			return kitchen.Run{}, false, err
		}
	case ctx.post:
		if ctx.turn == nil || ctx.turn.Kind != coolKind && ctx.turn.Kind != tellKind {
			return kitchen.Run{}, false, nil
		}
	default:
		var err error
		if no, _, err = t.coolingSaidLast(); err != nil {
			return kitchen.Run{}, false, err
		}
	}
	if no == 0 {
		return kitchen.Run{}, false, nil
	}
	run, err := t.theRun(no)
	if errors.As(err, new(kitchen.NoSuchRun)) {
		return kitchen.Run{}, false, nil
	}
	return run, err == nil && cools(run), err
}

// coolingSaidLast is the run that the bot spoke of last to the speaker in this room, if
// that was about its cooling or a step told of it, and when.
func (t *turn) coolingSaidLast() (kitchen.RunNo, time.Time, error) {
	newest, err := t.newestTurn()
	if err != nil {
		return 0, time.Time{}, err
	}
	came, _, err := t.pingsOfOpen("")
	if err != nil {
		return 0, time.Time{}, err
	}
	if came.Fired.After(newest.At) && !came.Fired.After(t.m.At) {
		no, _ := runOf(came.Key)
		if !ofCooling(came.Kind) {
			no = 0
		}
		return no, came.Fired, nil
	}
	if newest.Kind != coolKind && newest.Kind != tellKind || t.m.At.Sub(newest.At) > sceneLasts {
		return 0, time.Time{}, nil
	}
	rows, err := t.book.RowsOf(newest.ID)
	if err != nil || len(rows) == 0 {
		return 0, time.Time{}, err
	}
	no, _ := runOf(rows[len(rows)-1].About)
	return no, newest.At, nil
}

// ofCooling reports whether a ping is about how warm a run is.
func ofCooling(k kitchen.PingKind) bool {
	return k == kitchen.ProbablyCool || k == kitchen.MeasureAgain || k == kitchen.CoolNow
}
