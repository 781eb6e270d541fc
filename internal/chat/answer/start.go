package answer

import (
	"errors"
	"reflect"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
)

// remindStart asks for a ping at the latest start of the plan talked about. A
// member waits for one start at a time.
func (t *turn) remindStart(ctx scene) (chat.Post, error) {
	if ctx.plan == nil || ctx.plan.OutBy == nil {
		return chat.Post{}, kitchen.NoPlanYet{}
	}
	p, err := t.settings.Work(ctx.plan.Order)
	if err != nil {
		return chat.Post{}, err
	}
	if p.Hold.TooLong {
		return chat.Post{}, kitchen.TooLongHere{Hold: p.Hold}
	}
	start, out, err := deadline(*ctx.plan.OutBy, p, ctx.at.In(t.now.Location()), t.now)
	if late, ok := errors.AsType[kitchen.TooLate](err); ok {
		return wording.TooLate(late, ctx.plan.Order), nil
	}
	if err != nil {
		return chat.Post{}, err
	}
	if err := t.dropStarts(func(w kitchen.StartWanted) bool { return w.For == t.member.No }); err != nil {
		return chat.Post{}, err
	}
	wanted := kitchen.StartWanted{
		Order: ctx.plan.Order, Start: start.UTC(), OutBy: out.UTC(), For: t.member.No, Room: int64(t.room.ID),
	}
	if err := t.wantStart(wanted); err != nil {
		return chat.Post{}, err
	}
	t.kind, t.said = planKind, ctx.plan.String()
	return wording.WillRemind(start, t.now), nil
}

// moveStart moves the start that the speaker waits for to the one that the same
// order now has.
func (t *turn) moveStart(order kitchen.Order, start, out time.Time) error {
	waiting, err := t.waitingStarts()
	if err != nil {
		return err
	}
	for _, s := range waiting {
		if s.For != t.member.No || s.OutBy.Equal(out) || !reflect.DeepEqual(s.Order, order) {
			continue
		}
		if err := t.dropStarts(func(w kitchen.StartWanted) bool { return w.For == t.member.No }); err != nil {
			return err
		}
		return t.wantStart(kitchen.StartWanted{Order: order, Start: start.UTC(), OutBy: out.UTC(), For: s.For, Room: s.Room})
	}
	return nil
}

// wantStart writes that a start is waited for, and has its ping set.
func (t *turn) wantStart(w kitchen.StartWanted) error {
	no, err := t.append(startSubject, w, t.m.At, t.text)
	if err != nil {
		return err
	}
	return t.wantPings(startPrefix(no), kitchen.Start{StartWanted: w, No: no}.Wants())
}

// reckonStarts sets the pings of the starts that are waited for anew, after the
// kitchen changed: what takes longer must be lit earlier.
func (t *turn) reckonStarts() error {
	waiting, err := t.waitingStarts()
	if err != nil {
		return err
	}
	for _, s := range waiting {
		if err := t.wantPings(startPrefix(s.No), s.Reckoned(t.settings).Wants()); err != nil {
			return err
		}
	}
	return nil
}

// startsMet says that the starts that were waited for with this order have
// happened.
func (t *turn) startsMet(order kitchen.Order) error {
	return t.dropStarts(func(w kitchen.StartWanted) bool { return reflect.DeepEqual(w.Order, order) })
}

// dropStarts ends the waiting for some starts.
func (t *turn) dropStarts(drop func(kitchen.StartWanted) bool) error {
	waiting, err := t.waitingStarts()
	if err != nil {
		return err
	}
	for _, s := range waiting {
		if !drop(s.StartWanted) {
			continue
		}
		if err := t.write(startSubject, kitchen.StartMet{No: s.No}, ""); err != nil {
			return err
		}
		if err := t.wantPings(startPrefix(s.No), nil); err != nil {
			return err
		}
	}
	return nil
}

// waitingStarts lists the starts whose pings still wait.
func (t *turn) waitingStarts() ([]kitchen.Start, error) {
	rows, err := t.book.WaitingPings(kitchen.StartPrefix)
	if err != nil {
		return nil, err
	}
	var waiting []kitchen.Start
	for _, row := range rows {
		no, ok := startNo(row.Key)
		if !ok {
			continue
		}
		e, err := t.book.Entry(no)
		if err != nil {
			return nil, err
		}
		if w, ok := e.Entry.(kitchen.StartWanted); ok && e.StruckBy == 0 {
			waiting = append(waiting, kitchen.Start{StartWanted: w, No: no})
		}
	}
	return waiting, nil
}
