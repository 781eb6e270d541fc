package kitchen

import (
	"slices"
	"strconv"
	"time"
)

// BookingsSubject is what bookings are about, and BookingsPrefix begins the keys of
// their pings.
const (
	BookingsSubject = "bookings"
	BookingsPrefix  = "booking/"
)

// BookingMade says that a member wants a cooker from one time to another.
type BookingMade struct {
	Cooker string    `json:"cooker"`
	From   time.Time `json:"from"`
	To     time.Time `json:"to"`
	For    MemberNo  `json:"for"`
	// Soak is when grain for it goes into the water, the evening before; zero when
	// nothing is soaked.
	Soak time.Time `json:"soak,omitzero"`
	// Room is where it was made, as in [RoomJoined].
	Room int64 `json:"room,omitzero"`
}

// BookingReleased says that a booking is given up.
type BookingReleased struct {
	No EntryNo `json:"no"`
}

// BookingMoved says that a booking is for another time. A soak moves with it.
type BookingMoved struct {
	No   EntryNo   `json:"no"`
	From time.Time `json:"from"`
	To   time.Time `json:"to"`
}

func (BookingMade) entry()     {}
func (BookingReleased) entry() {}
func (BookingMoved) entry()    {}

// BookingEntry is an entry about bookings. The cases are the types of this file.
//
//sumtype:decl
type BookingEntry interface {
	Entry
	booking()
}

func (BookingMade) booking()     {}
func (BookingReleased) booking() {}
func (BookingMoved) booking()    {}

// Booking is a booking that stands; its number is that of the entry that made it.
// The other fields are those of [BookingMade].
type Booking struct {
	No             EntryNo
	Cooker         string
	From, To, Soak time.Time
	For            MemberNo
	Room           int64
}

// Standing is the booking that an entry makes.
func (b BookingMade) Standing(no EntryNo) Booking {
	return Booking{No: no, Cooker: b.Cooker, From: b.From, To: b.To, Soak: b.Soak, For: b.For, Room: b.Room}
}

// FoldBookings lists the bookings that stand, the earliest first.
func FoldBookings(records []Record) []Booking {
	records = slices.Clone(records)
	slices.SortStableFunc(records, func(a, b Record) int { return int(a.No - b.No) })
	var all []Booking
	for _, r := range records {
		entry, ok := r.Entry.(BookingEntry)
		if !ok {
			continue
		}
		switch e := entry.(type) {
		case BookingMade:
			all = append(all, e.Standing(r.No))
		case BookingReleased:
			all = slices.DeleteFunc(all, func(b Booking) bool { return b.No == e.No })
		case BookingMoved:
			if i := slices.IndexFunc(all, func(b Booking) bool { return b.No == e.No }); i >= 0 {
				all[i] = all[i].moved(e)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Booking) int { return a.From.Compare(b.From) })
	return all
}

func (b Booking) moved(e BookingMoved) Booking {
	if !b.Soak.IsZero() {
		b.Soak = b.Soak.Add(e.From.Sub(b.From))
	}
	b.From, b.To = e.From, e.To
	return b
}

// SoakBefore is the evening before a booking at which grain goes into the water,
// as many hours before as it soaks, and an hour for simmering, draining and
// filling.
func (s Settings) SoakBefore(from time.Time) time.Time {
	return from.Add(-PrepTime(Soaking, s.GrainMeant(), 0) - time.Hour)
}

// CheckBooking refuses a booking that can't be: [EmptyBooking], or [Booked] with
// the one that stands in its way. A booking that is moved keeps its number and is
// not in its own way; a new one has none.
func CheckBooking(b Booking, stand []Booking) error {
	if !b.To.After(b.From) {
		return EmptyBooking{From: b.From, To: b.To}
	}
	if other := Conflicts(b, stand); len(other) > 0 {
		return Booked{By: other[0]}
	}
	return nil
}

// Conflicts lists the bookings of the same cooker that overlap; end to end is no
// overlap.
func Conflicts(b Booking, stand []Booking) []Booking {
	var out []Booking
	for _, s := range stand {
		if s.No != b.No && sameName(s.Cooker, b.Cooker) && s.From.Before(b.To) && b.From.Before(s.To) {
			out = append(out, s)
		}
	}
	return out
}

// FindBooking is the booking of a member that an instant lies in, or else their
// next one after it; false when there is none.
func FindBooking(stand []Booking, who MemberNo, at time.Time) (Booking, bool) {
	for _, b := range stand {
		if b.For == who && b.To.After(at) {
			return b, true
		}
	}
	return Booking{}, false
}

// Wants is the ping that grain for the booking goes into the water.
func (b Booking) Wants() []Ping {
	if b.Soak.IsZero() {
		return nil
	}
	key := BookingsPrefix + strconv.Itoa(int(b.No))
	return []Ping{{Key: key + "/soak", Due: b.Soak, Kind: SoakForBooking, Loudness: DuePing, To: b.For, Room: b.Room, About: key}}
}

// overrunNotice is how long before a booking its owner is warned at the earliest.
const overrunNotice = 12 * time.Hour

// InTheWay are the bookings of others that the run runs into if it goes on, or is
// lit now, the earliest first. None for a run that is out of its cooker.
func (r Run) InTheWay(stand []Booking, now time.Time) []Booking {
	frees, on := r.FreesCooker(now)
	switch {
	case r.Stage.Over() || r.Stage == StageCooling:
		return nil
	case !on:
		c := r.course()
		frees = now.Add(c.Heat + c.Vent + c.ToPressure + c.Hold + c.Fall)
	}
	var out []Booking
	for _, b := range stand {
		if sameName(b.Cooker, r.Cooker) && b.For != r.Cook && b.To.After(now) && frees.After(b.From) {
			out = append(out, b)
		}
	}
	return out
}

// WantsOf are the pings to the owners of bookings that the run runs into: due
// since the last that was said of the run, at most half a day ahead. Bookings of
// the run's own cook are passed over. They belong to the run's list.
func (r Run) WantsOf(stand []Booking) []Ping {
	if _, on := r.FreesCooker(r.Newest); !on {
		return nil
	}
	var out []Ping
	for _, b := range r.InTheWay(stand, r.Newest) {
		due := latest(r.Since, b.From.Add(-overrunNotice))
		out = append(out, Ping{
			Key: r.key("overrun", int(b.No)), Due: due, Kind: BookingOverrun, Loudness: DuePing,
			To: b.For, Room: r.Room, About: r.No.Subject(),
		})
	}
	return out
}
