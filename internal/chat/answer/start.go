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

// wantStart writes that a start is waited for.
func (t *turn) wantStart(w kitchen.StartWanted) error { return t.write(startSubject, w, t.text) }

// reconcileStarts makes the pings equal to the starts that are waited for, in the
// kitchen as it is now: what takes longer must be lit earlier.
func (t *turn) reconcileStarts() error {
	waiting, err := t.waitingStarts()
	if err != nil {
		return err
	}
	var want []kitchen.Ping
	for _, s := range waiting {
		want = append(want, s.Reckoned(t.settings).Wants()...)
	}
	return t.wantPings(kitchen.StartPrefix, want)
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
	}
	return nil
}

// waitingStarts lists the starts that are waited for, those that were pinged for
// and not met too.
func (t *turn) waitingStarts() ([]kitchen.Start, error) {
	records, err := t.book.Standing(startSubject)
	return kitchen.FoldStarts(records), err
}
