package wording

import (
	"ryebell/internal/chat"
)

// mostStories is how many units are told of at once.
const mostStories = 6

// LogUnits tells of several units how each stands and what was told of it last. Those
// that the screen has no room for are counted.
func LogUnits(views []LogUnitView) chat.Post {
	for n := min(len(views), mostStories); ; n-- {
		var s sheet
		for _, v := range views[:n] {
			s.add(must, v.short())
		}
		if more := len(views) - n; more > 0 {
			s.add(must, say("And "+whole(float64(more))+" more."))
		}
		var taps []chat.Button
		for _, v := range views[:min(n, maxButtons)] {
			no := v.Unit.Ref.String()
			taps = append(taps, tap("Log "+no, "log "+no))
		}
		s.then(say("Next: one of them, like `log "+views[0].Unit.Ref.String()+"`"), taps...)
		if n <= 1 || s.whole() {
			return s.post(chat.Answer)
		}
	}
}

// short is a unit in a line or two: #12.3 growing 30 %. 9 Mar: Jo shook it.
func (v LogUnitView) short() chat.Para {
	p := say("**" + v.Unit.Ref.String() + "** " + unitStands(v.Unit) + ". ")
	days := v.days()
	if len(days) == 0 {
		return p
	}
	last := days[len(days)-1]
	return append(p, v.day(last[len(last)-1:])...)
}
