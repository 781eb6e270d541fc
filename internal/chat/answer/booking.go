package answer

import (
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/chat/wording"
	"ryebell/internal/kitchen"
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
		if soak := t.settings.SoakBefore(made.From); soak.After(t.m.At) {
			made.Soak = soak
		}
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

// listBookings says which cooker is on, and who has which when.
func (t *turn) listBookings() (chat.Post, error) {
	stand, err := t.bookings()
	if err != nil {
		return chat.Post{}, err
	}
	open, err := t.openRuns()
	if err != nil {
		return chat.Post{}, err
	}
	open = only(open, func(r kitchen.Run) bool { return r.Stage < kitchen.StageCooling })
	return wording.Bookings(ahead(stand, t.m.At), kitchen.Board(open, t.m.Arrived), t.arrived(), t.who), nil
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
