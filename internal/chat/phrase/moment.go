package phrase

import "time"

// Moment is a point in time as it was said: nothing is settled yet. Which
// instant it is depends on when the message was sent, in which zone, and
// whether the intent looks back (stages) or forward (bookings): see
// [Moment.Resolve].
type Moment struct {
	// Shift is set for "10 min ago" (negative) and "in 20 min" (positive).
	Shift time.Duration
	// Day is the day said, if any.
	Day Day
	// Clock is the time of day said, if any. A Day without one ("tonight",
	// "friday") does for a date; whoever needs a time has to ask for it.
	Clock *ClockTime
	// Now is set for "now", "just now".
	Now bool
}

// WholeDay reports whether a day was said and no time in it: "tonight", "friday".
func (m Moment) WholeDay() bool {
	return m.Day.Said && m.Clock == nil && !m.Now && (!m.Day.counted() || m.Day.Shift < 2)
}

// ClockTime is a time of day. Half is true when it was said which half of the
// day is meant (2pm, 14:05, "in the morning"), false for "at 2:05". Hour 24
// stands only beside a day: 24:00 is its end; without Half it's the midnight of
// "friday at midnight", the end of the day or its beginning.
type ClockTime struct {
	Hour, Minute int
	Half         bool
}

// Day is a day as it was said. The zero Day means none was.
type Day struct {
	// Shift counts days from the day of the message: -1 yesterday, 1 tomorrow.
	Shift int
	// Weekday is set when HasWeekday; Next when "next friday" was said.
	Weekday    time.Weekday
	HasWeekday bool
	Next       bool
	// Last is set for "last friday", which can't lie ahead.
	Last bool
	// NextWeek is set for "next week monday".
	NextWeek bool
	// Months counts calendar months from the month of the message.
	Months int
	// Year, Month and Date of a calendar date; Year 0 when it was not said, Month
	// 0 as well for "the 14th" and "thu 14th".
	Year  int
	Month time.Month
	Date  int
	// Said is true when any day was said at all ("today" has Shift 0).
	Said bool
}

// Direction is where an intent looks.
type Direction uint8

// Stages look back, bookings and deadlines forward.
const (
	Back Direction = iota + 1
	Forward
)
