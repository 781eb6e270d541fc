package answer

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// plan works an order out. Asked is when it was first asked for: a deadline such
// as "out by 20:30" is meant from there.
func (t *turn) plan(i phrase.Plan, asked time.Time) (chat.Post, error) {
	if i.StartAt != nil {
		return t.planAt(i, *i.StartAt)
	}
	return t.replan(i, asked, nil)
}

// replan is plan for an order that corrects another.
func (t *turn) replan(i phrase.Plan, asked time.Time, was *kitchen.Order) (chat.Post, error) {
	p, err := t.settings.Work(i.Order)
	if err != nil {
		return slipped(i.Order, err)
	}
	t.kind, t.said = planKind, i.String() // also when the deadline can't be met: what follows is about this plan
	view := wording.PlanView{Plan: p, Now: t.now, Settings: t.settings, Was: was}
	if i.StartAt != nil {
		view.Day = i.StartAt.Resolve(asked, phrase.Forward)[0]
	}
	if i.OutBy != nil {
		view.Start, view.OutBy, err = deadline(*i.OutBy, p, asked, t.now)
		if late, ok := errors.AsType[kitchen.TooLate](err); ok {
			return wording.TooLate(late, i.Order), nil
		}
		if err != nil {
			return chat.Post{}, err
		}
	}
	if !view.Start.IsZero() {
		if err := t.moveStart(i.Order, view.Start, view.OutBy); err != nil {
			return chat.Post{}, err
		}
	}
	if view.First, err = t.tellOnce("first plan"); err != nil {
		return chat.Post{}, err
	}
	if less, ok := t.settings.Smaller(i.Order); p.Hold.TooLong && ok {
		view.Smaller = &less
	}
	if p.DiffersByBag() {
		if view.FirstBags, err = t.tellOnce("bags differ"); err != nil {
			return chat.Post{}, err
		}
	}
	if p.Unfitted() {
		if view.FirstFit, err = t.tellOnce("what does it take"); err != nil {
			return chat.Post{}, err
		}
	}
	return wording.Plan(view), nil
}

// slipped refuses an order, and offers what was probably meant where a size
// slipped by a decimal point.
func slipped(o kitchen.Order, err error) (chat.Post, error) {
	var out kitchen.OutOfRange
	meant, ok := o.Slip()
	if !errors.As(err, &out) || out.What != kitchen.BagWeight && out.What != kitchen.JarVolume || !ok {
		return chat.Post{}, err
	}
	return wording.RefusedSize(out, meant, phrase.Plan{Order: meant}.String()), nil
}

// deadline is the latest start that brings a plan out by a moment.
func deadline(by phrase.Moment, p kitchen.Plan, asked, now time.Time) (start, out time.Time, err error) {
	if by.WholeDay() {
		return start, out, kitchen.NoHour{Said: by.String()}
	}
	meant := by.Resolve(asked, phrase.Forward)
	if len(meant) == 0 {
		return start, out, kitchen.NoSuchTime{Said: by.String()}
	}
	// An hour without its half of the day is the next one to come: another would be
	// a deadline that nobody set.
	out = meant[0]
	start = out.Add(-p.Takes()).Truncate(time.Minute)
	if !start.Before(now.Truncate(time.Minute)) {
		return start, out, nil
	}
	return start, out, kitchen.TooLate{Now: now, OutBy: out, Start: start, Soonest: now.Add(p.Takes()), Loads: len(p.Loads.Each)}
}

// tellOnce says whether something is told to this collective for the first time, and
// remembers in which turn it was: the answer to an edited message, which takes the place
// of the one that told it, tells it again.
func (t *turn) tellOnce(what string) (wording.Newness, error) {
	owner, turn := fmt.Sprintf("told/%d", t.room.Collective), strconv.AppendInt(nil, int64(t.owner), 10)
	told, err := t.tx.Note(owner, what)
	switch {
	case errors.Is(err, store.ErrNotFound):
		return wording.New, t.tx.SetNote(owner, what, turn)
	case err == nil && t.edited != nil && bytes.Equal(told, turn):
		return wording.New, nil
	}
	return wording.Known, err
}

// reverse works out what grain at hand makes.
func (t *turn) reverse(i phrase.Reverse) (chat.Post, error) {
	makes, err := t.settings.Reverse(i.Supply)
	if err != nil {
		return chat.Post{}, err
	}
	first := phrase.Plan{Order: makes[0].Plan.Order}
	if i.OutBy != nil {
		first.OutBy = i.OutBy
		return t.plan(first, t.now) // a deadline asks for the plan, not for a count
	}
	t.kind, t.said = reverseKind, first.String()
	return wording.Reverse(i.Supply, makes, first.String()), nil
}

// sameAs plans the order of an earlier run again.
func (t *turn) sameAs(i phrase.SameAs) (chat.Post, error) {
	run, err := t.runNo(i.Run)
	if err != nil {
		return chat.Post{}, err
	}
	return t.plan(phrase.Plan{Order: run.Order, OutBy: i.OutBy}, t.now)
}

// usual plans the usual order.
func (t *turn) usual(i phrase.Usual) (chat.Post, error) {
	if t.settings.UsualOrder == nil {
		return chat.Post{}, kitchen.NoUsualYet{}
	}
	order := *t.settings.UsualOrder
	order.Items = slices.Clone(order.Items)
	for n := range order.Items {
		order.Items[n].Count *= max(i.Times, 1)
	}
	if i.Fix != (kitchen.Item{}) {
		fixed, how := order.Fix(i.Fix, 0)
		if how == kitchen.Unclear {
			t.kind, t.said = planKind, phrase.Plan{Order: order}.String()
			return wording.WhichItem(order), nil
		}
		order = fixed
	}
	if i.Cooker != "" {
		order.Cooker = i.Cooker
	}
	return t.plan(phrase.Plan{Order: order, OutBy: i.OutBy, StartAt: i.StartAt}, t.now)
}

// makeUsual makes the order just planned the usual one.
func (t *turn) makeUsual(ctx scene) (chat.Post, error) {
	if ctx.plan == nil {
		return chat.Post{}, kitchen.NoPlanYet{}
	}
	return t.set(phrase.Set{Changes: []kitchen.Change{kitchen.UsualOrder{Order: ctx.plan.Order}}})
}

// outBy plans the order just planned again, for a deadline.
func (t *turn) outBy(i phrase.OutBy, ctx scene) (chat.Post, error) {
	if ctx.plan == nil {
		return chat.Post{}, kitchen.NoPlanYet{}
	}
	by := onDay(i.By, ctx.plan)
	return t.plan(phrase.Plan{Order: ctx.plan.Order, OutBy: &by}, t.now)
}

// why shows the working of what was said last: of the plan talked about, in the
// kitchen as it is now, or of how a run cools.
func (t *turn) why(i phrase.Why, ctx scene) (chat.Post, error) {
	if ctx.log != 0 && i.Which == (phrase.Which{}) {
		return t.figures(ctx.log)
	}
	if i.Of != (kitchen.Container{}) {
		return t.holdOf(i)
	}
	if post, ok, err := t.whyGrowth(i, ctx); ok || err != nil {
		return post, err
	}
	if i.Part == phrase.PartWater && i.Which != (phrase.Which{}) {
		return t.waterOf(i, ctx)
	}
	run, cooling, err := t.whyOfCool(i, ctx)
	if post, ok := t.unsettled(err); ok {
		return post, nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	if cooling {
		return t.whyCool(run)
	}
	if i.Part == phrase.PartTime {
		i.Part = phrase.PartHold
	}
	if i.Which != (phrase.Which{}) {
		ctx.run, ctx.turn, i.Which = run.No, nil, phrase.Which{}
	}
	return t.whyPlan(i, ctx)
}

// whyPlan shows the working of the plan talked about, or of what is in the cooker.
func (t *turn) whyPlan(i phrase.Why, ctx scene) (chat.Post, error) {
	if ctx.run != 0 && (ctx.turn == nil || ctx.turn.Kind != planKind) {
		run, err := t.theRun(ctx.run)
		if err != nil {
			return chat.Post{}, err
		}
		ctx.plan = &phrase.Plan{Order: run.Order}
		if i == (phrase.Why{}) {
			i.Part = phrase.PartHold
		}
	}
	if ctx.plan == nil {
		run, cooling, err := t.onlyCooling()
		if err == nil && cooling {
			return t.whyCool(run)
		}
		return wording.NoWhy(), err
	}
	p, err := t.settings.Work(ctx.plan.Order)
	if err != nil {
		return chat.Post{}, err
	}
	t.kind, t.said = planKind, ctx.plan.String() // so that a tap below it is about the same plan
	return wording.Why(p, t.settings, i), nil
}

// correct mends the plan or setting said last.
func (t *turn) correct(i phrase.Correct, ctx scene) (chat.Post, error) {
	if ctx.set != nil {
		return t.amend(i, *ctx.set)
	}
	if ctx.asked != "" && i.Item.Count != 0 {
		return t.ask(phrase.Plan{Order: kitchen.Order{Items: []kitchen.Item{i.Item}}}, ctx) // what was asked about is said anew
	}
	if ctx.plan == nil {
		return chat.Post{}, kitchen.NoPlanYet{}
	}
	if post, mended, err := t.mendRun(i, ctx); mended || err != nil {
		return post, err
	}
	fixed, how := fix(ctx.plan.Order, i)
	next := phrase.Plan{Order: fixed, OutBy: ctx.plan.OutBy, StartAt: ctx.plan.StartAt}
	if i.OutBy != nil {
		next.OutBy, next.StartAt, how = i.OutBy, nil, kitchen.Mended
	}
	switch how {
	case kitchen.Mended:
		return t.ask(next, ctx)
	case kitchen.Unchanged:
		t.kind, t.said = planKind, ctx.plan.String()
		return wording.NothingChanged(), nil
	case kitchen.Unclear:
		t.kind, t.said = planKind, ctx.plan.String()
		return wording.WhichItem(ctx.plan.Order), nil
	}
	panic("correction " + how.String())
}

// fix lays a correction over an order.
func fix(o kitchen.Order, i phrase.Correct) (kitchen.Order, kitchen.Fixed) {
	if mass, ok := i.Grams(); ok {
		return o.FixMass(mass)
	}
	return o.Fix(i.Item, i.Was)
}

// ask plans a mended order, or asks for what it now lacks: four bags instead of
// three jars have no size yet.
func (t *turn) ask(next phrase.Plan, ctx scene) (chat.Post, error) {
	sentence := next.String()
	parsed := phrase.Parse(sentence, t.names)
	if parsed.Ask != nil {
		t.kind, t.asked = askedKind, sentence
		return wording.Ask(*parsed.Ask), nil
	}
	if ctx.plan == nil {
		return t.plan(next, t.now)
	}
	return t.replan(next, ctx.at.In(t.now.Location()), &ctx.plan.Order)
}

// askAgain repeats the question that an answer didn't fit.
func (t *turn) askAgain(ctx scene) (chat.Post, error) {
	first := phrase.Parse(ctx.asked, t.names)
	if first.Ask == nil {
		return t.notUnderstood()
	}
	t.kind, t.asked = askedKind, ctx.asked
	return wording.Ask(*first.Ask), nil
}

// mendRun mends the order of a run that the plan talked about was put on as: the
// run keeps its number. It reports false when none was.
func (t *turn) mendRun(i phrase.Correct, ctx scene) (chat.Post, bool, error) {
	entries, err := t.book.EntriesOf(ctx.planTurn)
	if err != nil {
		return chat.Post{}, false, err
	}
	at := slices.IndexFunc(entries, func(e store.Logged) bool { return is[kitchen.RunBegun](e.Entry) && counts(e) })
	if at < 0 {
		return chat.Post{}, false, nil
	}
	begun := entries[at].Entry.(kitchen.RunBegun)
	was := begun.Order
	fixed, how := fix(was, i)
	if how != kitchen.Mended {
		return chat.Post{}, false, nil
	}
	p, err := t.settings.Work(fixed)
	if err != nil {
		return chat.Post{}, true, err
	}
	if err := t.strikeOne(entries[at]); err != nil {
		return chat.Post{}, true, err
	}
	begun.Order = fixed
	if err := t.writeAt(begun.Run.Subject(), begun, entries[at].At); err != nil {
		return chat.Post{}, true, err
	}
	run, err := t.theRun(begun.Run)
	if err != nil {
		return chat.Post{}, true, err
	}
	t.kind, t.about, t.said = planKind, run.No.Subject(), phrase.Plan{Order: fixed}.String()
	if run.Stage > kitchen.StagePlanned {
		return wording.Mended(wording.RunView{Run: run, Now: t.arrived(), Who: t.who, First: t.once(run.No)}, was), true, nil
	}
	view := wording.BegunView{Run: run, Plan: p, Load: run.Load, Now: t.arrived(), Who: t.who, First: t.once(run.No)}
	return wording.Begun(view), true, nil
}
