package answer

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// add puts more into the plan talked about; without one it is a plan of its own.
func (t *turn) add(i phrase.Add, ctx scene) (chat.Post, error) {
	if ctx.plan == nil {
		return t.plan(phrase.Plan{Order: i.Order, OutBy: i.OutBy}, t.now)
	}
	more := ctx.plan.Order
	more.Items = append(more.Items[:len(more.Items):len(more.Items)], i.Order.Items...)
	next := phrase.Plan{Order: more, OutBy: ctx.plan.OutBy}
	if i.OutBy != nil {
		next.OutBy = i.OutBy
	}
	return t.ask(next, ctx)
}

// drop takes containers out of the plan talked about.
func (t *turn) drop(i phrase.Drop, ctx scene) (chat.Post, error) {
	if ctx.plan == nil {
		return chat.Post{}, kitchen.NoPlanYet{}
	}
	less := ctx.plan.Order
	less.Items = nil
	for _, it := range ctx.plan.Order.Items {
		if named(it.Container, i.Container) != (i.Goes == phrase.Named) {
			less.Items = append(less.Items, it)
		}
	}
	if n := len(less.Items); n == 0 || n == len(ctx.plan.Order.Items) {
		t.kind, t.said = planKind, ctx.plan.String()
		return wording.WhichItem(ctx.plan.Order), nil
	}
	return t.ask(phrase.Plan{Order: less, OutBy: ctx.plan.OutBy}, ctx)
}

// named reports whether a container is of the kind that was named: all jars, or
// all quarts.
func named(c, by kitchen.Container) bool {
	return c.Vessel == by.Vessel && (!by.Sized() || c.Same(by))
}

// planIt plans what was talked about: the first that grain at hand makes, or the
// last plan again.
func (t *turn) planIt(i phrase.PlanIt, ctx scene) (chat.Post, error) {
	if ctx.plan == nil {
		return chat.Post{}, kitchen.NoPlanYet{}
	}
	next := *ctx.plan
	if i.OutBy != nil {
		next.OutBy = i.OutBy
	}
	if i.Cooker != "" {
		next.Order.Cooker = i.Cooker
		return t.replan(next, ctx.at.In(t.now.Location()), &ctx.plan.Order)
	}
	return t.plan(next, t.now)
}

// startAt plans what was talked about for a start: out when that start lets it be.
func (t *turn) startAt(i phrase.StartAt, ctx scene) (chat.Post, error) {
	if ctx.plan == nil {
		return chat.Post{}, kitchen.NoPlanYet{}
	}
	return t.planAt(*ctx.plan, onDay(i.At, ctx.plan))
}

// planAt is a plan whose start was said instead of its end.
func (t *turn) planAt(p phrase.Plan, at phrase.Moment) (chat.Post, error) {
	worked, err := t.settings.Work(p.Order)
	if err != nil {
		return chat.Post{}, err
	}
	meant := at.Resolve(t.now, phrase.Forward)
	if len(meant) == 0 {
		return chat.Post{}, kitchen.NoSuchTime{Said: at.String()}
	}
	if at.WholeDay() {
		return t.planOn(p, meant[0])
	}
	out := momentOf(meant[0].Add(worked.Takes()), t.now)
	p.OutBy, p.StartAt = &out, nil
	return t.plan(p, t.now)
}

// planOn is a plan for a day whose hour was not said. For today it is one for now.
func (t *turn) planOn(p phrase.Plan, day time.Time) (chat.Post, error) {
	p.StartAt = nil
	if year, month, date := day.Date(); day.After(t.now) {
		p.StartAt = &phrase.Moment{Day: phrase.Day{Year: year, Month: month, Date: date, Said: true}}
	}
	return t.replan(p, t.now, nil)
}

// onDay puts a time of day on the day that a plan is for.
func onDay(m phrase.Moment, p *phrase.Plan) phrase.Moment {
	if p.StartAt != nil && m.Clock != nil && !m.Day.Said {
		m.Day = p.StartAt.Day
	}
	return m
}

// momentOf is an instant as somebody would say it.
func momentOf(at, now time.Time) phrase.Moment {
	m := phrase.Moment{Clock: &phrase.ClockTime{Hour: at.Hour(), Minute: at.Minute(), Half: true}}
	if y, month, d := at.Date(); y != now.Year() || at.YearDay() != now.YearDay() {
		m.Day = phrase.Day{Year: y, Month: month, Date: d, Said: true}
	}
	return m
}
