package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// BoardView is what is on and what is booked.
type BoardView struct {
	// Rows are the runs that are not over, as [kitchen.Board] sorts them.
	Rows []kitchen.Row
	// Bookings are those that stand, the earliest first.
	Bookings []kitchen.Booking
	// For is who asks, and is not offered what is theirs.
	For kitchen.MemberNo
	// Now is in the kitchen's zone.
	Now time.Time
	Who func(kitchen.MemberNo) string
}

// maxBoardRows is how many runs the board shows.
const maxBoardRows = 6

// BoardOf says who is cooking what: two lines a run, the next booking last. Runs
// that the screen has no room for are counted.
func BoardOf(v BoardView) chat.Post {
	for n := min(len(v.Rows), maxBoardRows); ; n-- {
		if s := v.sheet(n); n <= 1 || s.whole() {
			return s.post(chat.Answer)
		}
	}
}

// sheet is the board with the first n runs.
func (v BoardView) sheet(n int) *sheet {
	var s sheet
	switch len(v.Rows) {
	case 0:
		s.add(must, say("**Nothing is on**, "+clock(v.Now, v.Now)+"."))
	case 1:
		s.add(must, say("**One run on**, "+clock(v.Now, v.Now)))
	default:
		s.add(must, say("**"+whole(float64(len(v.Rows)))+" runs on**, "+clock(v.Now, v.Now)))
	}
	for _, r := range v.Rows[:n] {
		s.add(must, boardRow(r, v.Now, v.Who))
	}
	if n < len(v.Rows) {
		s.add(must, say("And "+whole(float64(len(v.Rows)-n))+" more: `log`"))
	}
	s.add(should, v.nextBooking())
	v.take(&s)
	return &s
}

// boardRow is a run in a line or two: #12 Ana, big pot: heat off 15:50.
func boardRow(r kitchen.Row, now time.Time, who func(kitchen.MemberNo) string) chat.Para {
	cooker := r.Cooker
	if cooker == "" {
		cooker = "cooker"
	}
	cook := called(who, r.Cook)
	return say("**"+r.Run.String()+"** {}, {}: "+rowState(r, now), cook, cooker)
}

// rowState is what is due next for a run, after its newest reading.
func rowState(r kitchen.Row, now time.Time) string {
	text := rowDue(r, now)
	if r.Newest != nil && r.Stage == kitchen.StageCooling {
		return warmth(r.Newest.Temp) + " at " + near(now, r.Newest.At) + ", " + text
	}
	return text
}

func rowDue(r kitchen.Row, now time.Time) string {
	until := near(now, r.Until)
	about := near(now, round10(r.Until))
	known := !r.Until.IsZero()
	switch {
	case r.Stage == kitchen.StageAtPressure && known && r.Left < time.Minute:
		return "heat off now, due " + until
	case r.Stage == kitchen.StageAtPressure && known:
		return "heat off " + until + ", " + span(r.Left.Truncate(time.Minute)) + " left"
	case r.Stage == kitchen.StageVenting && known && r.Left < 0:
		return "weight on now, due " + until
	case r.Stage == kitchen.StageVenting && known:
		return "weight on " + until
	case r.Stage == kitchen.StageFalling && known:
		return "zero about " + about
	case r.Stage == kitchen.StageCooling && known && r.Left < 0 && r.Newest != nil && r.Newest.Temp > r.Newest.Limit:
		return "measure it again"
	case r.Stage == kitchen.StageCooling && known && r.Left < 0:
		return "likely cool, measure it"
	case r.Stage == kitchen.StageCooling && known:
		return "cool about " + about
	case r.Stage == kitchen.StageHeating && known:
		return "heating, steam about " + about
	case r.Stage == kitchen.StagePreparing && known:
		return "preparing until " + until
	}
	if r.Stage == kitchen.StageCalledOff {
		return "called off, flame not known off"
	}
	if r.Stage == kitchen.StagePlanned {
		return stageWord(r.Stage)
	}
	return stageWord(r.Stage) + " since " + near(now, r.Since)
}

// nextBooking is the first booking that is not over.
func (v BoardView) nextBooking() chat.Para {
	for _, b := range v.Bookings {
		if b.To.After(v.Now) {
			return say("Next: {}, "+bookingSpan(v.Now, b)+", {}", cookerShort(b.Cooker), called(v.Who, b.For))
		}
	}
	return nil
}

func cookerShort(name string) string {
	if name == "" {
		return "cooker"
	}
	return name
}

// take offers the run that nobody watches, else the first to be taken over.
func (v BoardView) take(s *sheet) {
	if len(v.Rows) == 0 {
		s.then(nil, tap("Bookings", "bookings"), tap("Log", "log"))
		return
	}
	var first kitchen.Row
	for _, r := range v.Rows {
		if r.Cook == 0 {
			first = r
			break
		}
		if first.Run == 0 && r.Cook != v.For {
			first = r
		}
	}
	if first.Run == 0 {
		s.then(nil, tap("Log "+v.Rows[0].Run.String(), logOf(v.Rows[0].Run)))
		return
	}
	s.then(nil, tap("Take over "+first.Run.String(), gotIt(first.Run)))
}
