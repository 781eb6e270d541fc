package wording

import (
	"time"

	"ryebell/internal/kitchen"
)

// ChartWords are the words in the picture of a cooling; they are short, for they
// stand where there is room.
type ChartWords struct {
	Title, Now, Middle, Limit string
	From, Likely, To          string
	// Fahrenheit is set where people read in that scale.
	Fahrenheit bool
}

// ChartOf gives the words for the picture of a run's cooling.
func ChartOf(r kitchen.Run, c kitchen.Cooling, now time.Time) ChartWords {
	last, read := c.Believed(r.Readings)
	limit := warmth(c.Limit)
	if read {
		limit = likewise(last.Temp, c.Limit)
	}
	return ChartWords{
		Title: r.No.String() + ": " + orderWords(r.Order), Now: "now", Middle: "middle", Limit: "limit " + plain(limit),
		From: ChartClock(round10(c.From.In(now.Location()))), Likely: "about " + ChartClock(round10(c.Likely.In(now.Location()))),
		To: ChartClock(round10(c.To.In(now.Location()))), Fahrenheit: read && inFahrenheit(last.Temp),
	}
}

// ChartFile is the name of the picture of a run.
func ChartFile(no kitchen.RunNo) string { return "run-" + no.String()[1:] + ".png" }

// ChartClock names an hour of the axis, ChartDay a day.
func ChartClock(at time.Time) string { return at.Format("15:04") }

// ChartDay names a day of the axis.
func ChartDay(at time.Time) string { return at.Format("Mon 2 Jan") }

// Odd is what stands beside a reading that can't be, Reading beside any other.
func (w ChartWords) Odd(r kitchen.Reading) string { return w.Reading(r) + "?" }

// Reading is what stands beside a reading, in the scale of the picture.
func (w ChartWords) Reading(r kitchen.Reading) string {
	if w.Fahrenheit {
		return upTo(0, r.Temp.Fahrenheit())
	}
	return upTo(0, float64(r.Temp))
}
