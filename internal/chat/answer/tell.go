package answer

import (
	"errors"
	"slices"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// tell writes what happened to a run.
func (t *turn) tell(i phrase.Tell, ctx scene) (chat.Post, error) {
	if len(t.wrong) > 0 {
		return t.remeasure(i)
	}
	if post, gone, err := t.unitsGone(i, ctx); gone || err != nil {
		return post, err
	}
	at, err := t.past(i.When)
	if err != nil {
		return chat.Post{}, err
	}
	run, burns, err := t.whichBurns(i, ctx)
	if err == nil && !burns {
		run, err = t.whichTold(i, ctx, at)
	}
	if errors.As(err, new(nothingOn)) && beginsRun(i.Entries[0]) && ctx.plan != nil {
		if err := t.ahead(i.When, at, t.m.At); err != nil {
			return chat.Post{}, err
		}
		if post, asked := t.longBefore(i, kitchen.Run{}, at); asked {
			return post, nil
		}
		return t.beginTelling(i.Entries, ctx, at)
	}
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	if e, low := t.stillRising(i, run); low {
		t.kind, t.about = tellKind, run.No.Subject()
		return wording.StillRising(run, e), nil
	}
	if post, answered, err := t.litAgain(i, run); err != nil || answered {
		return post, err
	}
	if err := t.ahead(i.When, at, run.PutOn()); err != nil {
		return chat.Post{}, err
	}
	if post, asked := t.longBefore(i, run, at); asked {
		return post, nil
	}
	post, err := t.tellOf(run, i.Entries, at)
	var so kitchen.AlreadySo
	if i.When != nil && errors.As(err, &so) {
		so.Told = at
		return post, so
	}
	return post, err
}

// toldTwice is how long ago somebody told what they tell now, for it to be said again.
const toldTwice = 10 * time.Minute

// whichTold is the run that something is told of. What its cook says again is of their
// run, and not of another's where it would come next; what somebody else has just said
// is of the run that it was said of.
func (t *turn) whichTold(i phrase.Tell, ctx scene, at time.Time) (kitchen.Run, error) {
	e := i.Entries[0]
	follows := func(r kitchen.Run) bool {
		return t.follows(r, e, t.began(e, at)) == nil && !relights(r, e)
	}
	open, err := t.openRuns()
	if own := only(open, t.isOwn); err == nil && i.Which == (phrase.Which{}) && ctx.run == 0 && len(only(own, follows)) == 0 {
		if again := only(own, func(r kitchen.Run) bool { return t.saysAgain(r, e, at) }); len(again) == 1 {
			return again[0], nil
		}
		nextOf := only(open, func(r kitchen.Run) bool { return follows(r) && comesNext(r, e) })
		said := only(open, func(r kitchen.Run) bool { return t.saidWithin(toldTwice, r, i) })
		if len(nextOf) == 0 && len(said) == 1 {
			return said[0], nil
		}
	}
	return t.whichNext(i.Which, ctx, follows, func(r kitchen.Run) bool { return comesNext(r, e) })
}

// saysAgain reports whether the speaker told an entry of a run just now, or it is what
// the gauge of a run at pressure shows.
func (t *turn) saysAgain(r kitchen.Run, e kitchen.RunEntry, at time.Time) bool {
	meant := r.AsMeant(e, at)
	err := t.follows(r, meant, at)
	var so kitchen.AlreadySo
	if errors.As(err, &so) {
		return so.Seen && so.By == t.member.No && t.m.At.Sub(so.At).Abs() <= toldTwice
	}
	return err == nil && is[kitchen.GaugeRead](meant) && !is[kitchen.GaugeRead](e)
}

// stillRising reports whether "at 12" may only say how far a run has come up: that
// is asked, for a hold at so little takes far longer.
func (t *turn) stillRising(i phrase.Tell, run kitchen.Run) (kitchen.AtPressure, bool) {
	e, ok := i.Entries[0].(kitchen.AtPressure)
	asked := ok && len(i.Entries) == 1 && i.When == nil && t.m.Tap == nil
	return e, asked && run.Stage < kitchen.StageAtPressure && run.FarUnder(e.Gauge)
}

// relights reports whether an entry would light a run again whose hold is done, or
// which is down: it must be named for that where another can be meant.
func relights(r kitchen.Run, e kitchen.RunEntry) bool {
	off, ended := r.Ended()
	return is[kitchen.HeatOn](e) && ended && (off.Outcome == kitchen.Held || r.Stage == kitchen.StageCooling)
}

// comesNext reports whether an entry is a next step of a run, with nothing between
// that nobody told.
func comesNext(r kitchen.Run, e kitchen.RunEntry) bool {
	return slices.ContainsFunc(r.Next(), func(c kitchen.Choice) bool { return c.Kind == kitchen.KindOf(e) })
}

// began is when something began that is told as over now: a dip of 4 minutes. Said
// with a time it began then.
func (t *turn) began(e kitchen.RunEntry, at time.Time) time.Time {
	if d, ok := e.(kitchen.Dipped); ok && at.Equal(t.m.At) {
		return at.Add(-d.For)
	}
	return at
}

// follows says why an entry can't follow on what a run was told; nil if it can.
func (t *turn) follows(r kitchen.Run, e kitchen.RunEntry, at time.Time) error {
	_, err := r.Apply(t.record(e, at), t.settings)
	return err
}

// after is when something happened that is told as it does: a moment later where it
// would otherwise come before what was told of that very instant.
func (t *turn) after(r kitchen.Run, e kitchen.RunEntry, at time.Time) time.Time {
	if !at.Equal(t.m.At) || r.Newest.Before(at) || r.Newest.Sub(at) > kitchen.Breath {
		return at
	}
	next, last := r.Newest, r.Steps[len(r.Steps)-1]
	if last.At.Equal(next) && kitchen.InTrade(kitchen.KindOf(e), last.Kind) < 0 {
		next = next.Add(time.Millisecond)
	}
	if t.follows(r, e, next) == nil {
		return next
	}
	return at
}

// beginTelling makes the plan talked about a run since something was said that
// only a run can have, and says so first.
func (t *turn) beginTelling(entries []kitchen.RunEntry, ctx scene, at time.Time) (chat.Post, error) {
	begun, err := t.toBegin(ctx)
	if err != nil {
		return chat.Post{}, err
	}
	// What can't be so begins nothing.
	alone, err := kitchen.FoldRun([]kitchen.Record{t.record(begun, at)}, func(time.Time) kitchen.Settings { return t.settings })
	if err != nil {
		return chat.Post{}, err
	}
	if err := t.follows(alone, entries[0], at); err != nil {
		return chat.Post{}, err
	}
	run, err := t.begin(ctx, at)
	if err != nil {
		return chat.Post{}, err
	}
	post, err := t.tellOf(run, entries, at)
	post.Blocks = append([]chat.Block{wording.BegunBySaying(run, t.who)}, post.Blocks...)
	return post, err
}

// beginsRun reports whether something said begins a run of the plan just made:
// its preparation, or the flame.
func beginsRun(e kitchen.RunEntry) bool {
	return is[kitchen.PrepBegun](e) || is[kitchen.HeatOn](e) || is[kitchen.Steam](e) || is[kitchen.AtPressure](e)
}

// tellOf writes entries of one run and says how it stands now. What can't be so
// is refused; what came before it in the same breath counts.
func (t *turn) tellOf(run kitchen.Run, entries []kitchen.RunEntry, at time.Time) (chat.Post, error) {
	was := run
	v := wording.RunView{Was: &was, At: at.In(t.now.Location()), Now: t.arrived(), Who: t.who, First: t.once(run.No), Instead: t.instead}
	var err error
	if v.Grows, err = t.growthOnce(run.No); err != nil {
		return chat.Post{}, err
	}
	for n, e := range entries {
		e = run.AsMeant(e, at)
		at := t.after(run, e, t.began(e, at))
		err := t.follows(run, e, at)
		if errors.As(err, new(kitchen.AlreadySo)) && n < len(entries)-1 {
			continue // "lid off, bags are out": the first was told before
		}
		if err != nil && v.Told == nil {
			return chat.Post{}, err
		}
		if err != nil {
			break
		}
		if v.No, err = t.append(run.No.Subject(), e, at, t.text); err != nil {
			return chat.Post{}, err
		}
		if run, err = t.theRun(run.No); err != nil {
			return chat.Post{}, err
		}
		if err := t.learn(run, kitchen.Meant(e), v.No); err != nil {
			return chat.Post{}, err
		}
		v.Told, v.At = e, at.In(t.now.Location())
	}
	t.kind, t.about = tellKind, run.No.Subject()
	v.Run = run
	if offered, ok := v.Told.(kitchen.HandOffered); ok && offered.To != 0 {
		if v.To, err = mention(t.book, offered.To); err != nil {
			return chat.Post{}, err
		}
	}
	if v.Stays() && run.Cook != t.member.No {
		if v.To, err = mention(t.book, run.Cook); err != nil { // who asked is to know it
			return chat.Post{}, err
		}
	}
	if v.More, err = t.moreOf(run); err != nil {
		return chat.Post{}, err
	}
	return wording.Run(v), nil
}

// learn writes what an entry taught of the run's cooker: the water left how fast it
// boils off, the zero how long it falls. Each is learnt once.
func (t *turn) learn(run kitchen.Run, e kitchen.RunEntry, no kitchen.EntryNo) error {
	learnt, _ := run.Learnt()
	zero, _ := run.LastStep(kitchen.KindAtZero)
	switch {
	case is[kitchen.WaterLeft](e):
		learnt.Fall = 0
	case is[kitchen.AtZero](e) && zero.No == no: // told anew, and not a second time
		learnt.BoilOff = 0
	default:
		return nil
	}
	if learnt.BoilOff == 0 && learnt.Fall == 0 {
		return nil
	}
	return t.writeAt(kitchenSubject, learnt, t.m.At)
}

// moreOf is the next load of the plan that a run was put on from; nil when it was
// the last, or is on already.
func (t *turn) moreOf(run kitchen.Run) (*kitchen.Order, error) {
	if run.Load == 0 || run.Load >= run.Loads {
		return nil, nil
	}
	begun, err := t.book.RunsOfPlan(store.InboxID(run.Turn))
	if err != nil || len(begun) > run.Load {
		return nil, err
	}
	turn, err := t.book.Turn(store.InboxID(run.Turn))
	if err != nil {
		return nil, err
	}
	plan := t.sceneOf(turn).plan
	if plan == nil {
		return nil, nil
	}
	p, err := t.settings.Work(plan.Order)
	if err != nil || run.Load >= len(p.Orders()) {
		return nil, nil // the kitchen has changed: the plan is made anew
	}
	return &p.Orders()[run.Load], nil
}

// record is an entry as it will stand in the book.
func (t *turn) record(e kitchen.RunEntry, at time.Time) kitchen.Record {
	return kitchen.Record{By: t.member.No, At: at, Written: t.m.Arrived, Entry: e}
}

// past is the instant that a moment of the past means: now when none was said.
func (t *turn) past(m *phrase.Moment) (time.Time, error) {
	if m == nil {
		return t.m.At, nil
	}
	meant := m.Resolve(t.now, phrase.Back)
	if len(meant) == 0 {
		return time.Time{}, kitchen.InFuture{At: t.m.At, Told: t.m.At}
	}
	return meant[0].UTC(), nil
}

// soon is how far ahead a time of day is taken for one that is still to come, where it
// would else be yesterday's, before the run began.
const soon = 30 * time.Minute

// correctsWithin is the same for a time that corrects another: the wrong hour is typed
// sooner than one of the night before.
const correctsWithin = 3 * time.Hour

// ahead refuses a time of day that is still to come, when the last that has passed lies
// before the run was put on.
func (t *turn) ahead(m *phrase.Moment, at, begun time.Time) error {
	return t.aheadBy(soon, m, at, begun)
}

// aheadBy is ahead for a time that is so soon.
func (t *turn) aheadBy(soon time.Duration, m *phrase.Moment, at, begun time.Time) error {
	if m == nil || m.Clock == nil || m.Day.Said || !at.Before(begun) {
		return nil
	}
	for _, next := range m.Resolve(t.now, phrase.Forward) {
		if next.Sub(t.now) <= soon {
			return kitchen.InFuture{At: next, Told: t.m.At}
		}
	}
	return nil
}

// arrived is when the message came in, in the kitchen's zone.
func (t *turn) arrived() time.Time { return t.m.Arrived.In(t.now.Location()) }

// once says whether a caution is said for the first time in a run, and remembers
// that it was. A book that can't be asked says it once more.
func (t *turn) once(no kitchen.RunNo) func(string) wording.Newness {
	return func(caution string) wording.Newness {
		first, err := t.tellOnce(no.Prefix() + caution)
		if err != nil {
			return wording.New
		}
		return first
	}
}

// runOf is the run that a key or a subject belongs to.
func runOf(key string) (kitchen.RunNo, bool) {
	rest, ok := strings.CutPrefix(key, kitchen.RunPrefix)
	if !ok {
		return 0, false
	}
	digits, _, _ := strings.Cut(rest, "/")
	no, err := atoi(digits)
	return kitchen.RunNo(no), err == nil
}
