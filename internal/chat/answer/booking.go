package answer

import (
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// bookings lists the bookings that stand.
func (t *turn) bookings() ([]kitchen.Booking, error) {
	records, err := t.book.Standing(kitchen.BookingsSubject)
	return kitchen.FoldBookings(records), err
}

// bookCooker books a cooker, if nobody has it then.
func (t *turn) bookCooker(i phrase.Book) (chat.Post, error) {
	meant := i.When.Resolve(t.now, phrase.Forward)
	if len(meant) == 0 {
		return wording.NotUnderstood(), nil
	}
	name, err := t.cookerMeant(i.Cooker)
	if err != nil {
		return chat.Post{}, err
	}
	made := kitchen.BookingMade{
		Cooker: name, From: meant[0].From.UTC(), To: meant[0].To.UTC(), For: t.member.No, Room: int64(t.room.ID),
	}
	if i.Soak || t.settings.MethodFor(kitchen.Jar) == kitchen.Soaked {
		made.Soak = t.settings.SoakBefore(made.From)
	}
	stand, err := t.bookings()
	if err != nil {
		return chat.Post{}, err
	}
	if err := kitchen.CheckBooking(made.Standing(0), stand); err != nil {
		return chat.Post{}, err
	}
	no, err := t.append(kitchen.BookingsSubject, made, t.m.At, t.text)
	if err != nil {
		return chat.Post{}, err
	}
	return wording.BookingMade(made.Standing(no), t.now, t.who), nil
}

// cookerMeant is the name of the cooker named, or of the only one.
func (t *turn) cookerMeant(name string) (string, error) {
	if k, ok := t.settings.CookerNamed(name); ok {
		return k.Name, nil
	}
	if name == "" || len(t.settings.Cookers) == 0 {
		return name, nil
	}
	return "", kitchen.NoSuchCooker{Name: name, Known: t.settings.CookerNames()}
}

// sameCooker reports whether two names are one cooker's, case aside.
func sameCooker(a, b string) bool { return strings.EqualFold(a, b) }

// unbook gives up the speaker's booking of that time, or their next one.
func (t *turn) unbook(i phrase.Unbook) (chat.Post, error) {
	stand, err := t.bookings()
	if err != nil {
		return chat.Post{}, err
	}
	at := t.m.At
	if i.When != nil {
		if meant := i.When.Resolve(t.now, phrase.Forward); len(meant) > 0 {
			at = meant[0]
		}
	}
	b, ok := kitchen.FindBooking(stand, t.member.No, at)
	if !ok {
		return chat.Post{}, kitchen.NoSuchBooking{}
	}
	if err := t.write(kitchen.BookingsSubject, kitchen.BookingReleased{No: b.No}, t.text); err != nil {
		return chat.Post{}, err
	}
	return wording.BookingReleased(b, t.now), nil
}

// listBookings says who has which cooker when.
func (t *turn) listBookings() (chat.Post, error) {
	stand, err := t.bookings()
	if err != nil {
		return chat.Post{}, err
	}
	return wording.Bookings(ahead(stand, t.m.At), t.now, t.who), nil
}

// ahead keeps the bookings that are not over.
func ahead(all []kitchen.Booking, now time.Time) []kitchen.Booking {
	var kept []kitchen.Booking
	for _, b := range all {
		if b.To.After(now) {
			kept = append(kept, b)
		}
	}
	return kept
}

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
	view := wording.GearView{Now: t.arrived()}
	if run.No != 0 {
		view.Run = &run
	}
	switch e := i.Entry.(type) {
	case kitchen.GearFailed:
		if e.Cooker == "" {
			e.Cooker, e.Run = cooker, run.No
		}
		view.Entry = e
	case kitchen.GearChecked:
		if e.Cooker == "" {
			e.Cooker = cooker
		}
		view.Entry = e
	case kitchen.GaugeReads:
		return t.set(phrase.Set{Changes: []kitchen.Change{e}})
	}
	if err := t.write(kitchen.GearSubject, view.Entry, t.text); err != nil {
		return chat.Post{}, err
	}
	return wording.GearTold(view), nil
}

// gearOf is the cooker that gear is told of when none is named, and the run that
// is in it.
func (t *turn) gearOf(ctx scene) (string, kitchen.Run, error) {
	open, err := t.openRuns()
	if err != nil {
		return "", kitchen.Run{}, err
	}
	for _, r := range open {
		if r.No == ctx.run || len(open) == 1 || r.Cook == t.member.No {
			return r.Cooker, r, nil
		}
	}
	k, _ := t.settings.CookerNamed("")
	return k.Name, kitchen.Run{}, nil
}

// quiet sets quiet hours, the speaker's own or, by a steward, everybody's.
func (t *turn) quiet(i phrase.Quiet) (chat.Post, error) {
	q := kitchen.QuietHours{Member: t.member.No, From: i.From, To: i.To}
	if i.Everybody {
		q.Member = 0
		if t.member.Role != kitchen.Steward {
			return chat.Post{}, kitchen.NotSteward{}
		}
	}
	return t.own(q)
}

// pingsWhere says where the speaker wants pings.
func (t *turn) pingsWhere(i phrase.PingsWhere) (chat.Post, error) {
	return t.own(kitchen.PingsPrivate{Member: t.member.No, Where: i.Where})
}

// own writes a change that everybody may make for themselves.
func (t *turn) own(c kitchen.Change) (chat.Post, error) {
	if err := check(t.settings, c); err != nil {
		return chat.Post{}, err
	}
	if err := t.write(kitchenSubject, c, t.text); err != nil {
		return chat.Post{}, err
	}
	t.settings = t.settings.With(c)
	return wording.Changed([]kitchen.Change{c}, t.settings), nil
}

// whyPing says why the ping replied to, or the last one, came; or why none did.
func (t *turn) whyPing(i phrase.WhyPing, ctx scene) (chat.Post, error) {
	came, next, err := t.pingsOfOpen(ctx.ping)
	if err != nil {
		return chat.Post{}, err
	}
	if i.None || came.Fired.IsZero() {
		return t.whyNone(next)
	}
	view := wording.PingCame{Ping: came.Ping, Sent: came.Fired.In(t.now.Location()), Now: t.arrived()}
	if no, ok := runOf(came.Key); ok {
		if view.Run, err = t.theRun(no); err != nil {
			return chat.Post{}, err
		}
	}
	return wording.WhyPing(view), nil
}

// whyNone says why no ping has come: the next one isn't due, or nothing waits.
func (t *turn) whyNone(next store.PingRow) (chat.Post, error) {
	view := wording.NoPingView{Why: wording.NothingWaited, Now: t.arrived(), Who: t.who}
	if next.Key != "" {
		view.Why, view.Ping = wording.NotDueYet, next.Ping
		if no, ok := runOf(next.Key); ok {
			run, err := t.theRun(no)
			if err != nil {
				return chat.Post{}, err
			}
			view.Run = run
		}
	}
	return wording.WhyNoPing(view), nil
}

// pingsOfOpen finds among the pings of the open runs the one of a key, else the
// last that came, and the next that waits.
func (t *turn) pingsOfOpen(key string) (came, next store.PingRow, err error) {
	open, err := t.book.OpenRuns()
	if err != nil {
		return came, next, err
	}
	for _, r := range open {
		rows, err := t.book.Pings(r.No.Prefix())
		if err != nil {
			return came, next, err
		}
		for _, p := range rows {
			switch {
			case !p.Fired.IsZero() && (p.Key == key || came.Key != key && p.Fired.After(came.Fired)):
				came = p
			case p.Fired.IsZero() && (next.Key == "" || p.Due.Before(next.Due)):
				next = p
			}
		}
	}
	return came, next, nil
}
