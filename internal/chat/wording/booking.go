package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// BookingMade says which slot is somebody's now.
func BookingMade(b kitchen.Booking, now time.Time, who func(kitchen.MemberNo) string) chat.Post {
	var s sheet
	s.add(must, say("**{}, "+bookingSpan(now, b)+"**: yours, {}.", capital(cookerOf(b.Cooker)), called(who, b.For)))
	if !b.Soak.IsZero() {
		s.add(must, say("Soak the evening before: I ping you "+near(now, b.Soak)+"."))
	}
	s.then(nil, tap("Undo", "undo"), tap("Bookings", "bookings"))
	return s.post(chat.Answer)
}

// BookingReleased says that a slot is free again.
func BookingReleased(b kitchen.Booking, now time.Time) chat.Post {
	return with(theirs(say("{} is **free again** "+bookingSpan(now, b)+".", capital(cookerOf(b.Cooker)))), tap("Undo", "undo"), tap("Bookings", "bookings"))
}

// BookingMoved says when a slot is now.
func BookingMoved(b, was kitchen.Booking, now time.Time) chat.Post {
	return with(theirs(say("{} is yours **"+bookingSpan(now, b)+"**, was "+bookingSpan(now, was)+".", capital(cookerOf(b.Cooker)))),
		tap("Undo", "undo"), tap("Bookings", "bookings"))
}

// maxBookings is how many bookings a list shows.
const maxBookings = 6

// Bookings lists who has which cooker when, the earliest first, behind the runs that are
// in one now.
func Bookings(all []kitchen.Booking, on []kitchen.Row, now time.Time, who func(kitchen.MemberNo) string) chat.Post {
	var s sheet
	for _, r := range on {
		s.add(must, boardRow(r, now, who))
	}
	shown := 0
	for _, b := range all {
		if !b.To.After(now) {
			continue
		}
		if shown++; shown <= maxBookings {
			s.add(should, say("**"+bookingSpan(now, b)+"** {}, {}", cookerShort(b.Cooker), called(who, b.For)))
		}
	}
	if shown == 0 {
		s.add(must, say("Nothing is booked."))
		s.then(say("Next: book it, like `big pot saturday 10-14`"))
		return s.post(chat.Answer)
	}
	if shown > maxBookings {
		s.add(must, say("And "+whole(float64(shown-maxBookings))+" later."))
	}
	s.then(say("Next: give one up with `cancel my booking`."))
	return s.post(chat.Answer)
}
