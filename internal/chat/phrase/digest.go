package phrase

import (
	"strings"
	"time"

	"ryebell/internal/kitchen"
)

// The digest comes on Monday morning where no day, or no time, was said. An hour of
// which nobody said the half of the day is in the evening before this one.
const (
	digestDay     = time.Monday
	digestTime    = 9 * 60
	digestMorning = 7
)

// digest reads "digest monday 9:00", "digest on sundays", "no digest".
func digest(c cursor) (kitchen.Change, cursor, bool) {
	if d, ok := c.over("please").phrase("no digest", "digest off", "no weekly digest", "turn off the digest", "stop the digest", "digest never", "without digest", "no more digests",
		"no digests", "we don't want a digest", "we want no digest", "weekly digest off", "switch off the digest"); ok {
		return kitchen.DigestIs{}, d.over("please", "any more"), true
	}
	d, ok := c.over("our", "the", "we", "want", "we'd like", "i'd like", "send", "us", "a", "please").phrase("digest", "weekly digest", "digests", "digest comes", "weekly digests")
	if !ok {
		return nil, c, false
	}
	d = d.over("is", "comes", "on", "every", "each", "at", "to", ":", "weekly", "should come")
	m, e, ok := d.when()
	if !ok {
		m, e, ok = d.hour()
	}
	if !ok || m.Shift != 0 || m.Now || !m.Day.weekly() {
		return nil, c, false
	}
	if f := e.over("at", "about"); m.Clock == nil {
		if n, g, hour := f.hour(); hour {
			m.Clock, e = n.Clock, g
		}
	}
	at := digestAt(m)
	if at.At == 0 {
		return nil, c, false // midnight would say that there is none
	}
	return at, e.over("o'clock", "please", "from now on", "every week"), true
}

// weekly reports whether a day is one of each week, or was not said.
func (d Day) weekly() bool {
	return d == Day{} || d == Day{Said: true, HasWeekday: true, Weekday: d.Weekday}
}

func digestAt(m Moment) kitchen.DigestIs {
	at := kitchen.DigestIs{Day: digestDay, At: digestTime}
	if m.Day.HasWeekday {
		at.Day = m.Day.Weekday
	}
	if t := m.Clock; t != nil {
		hour := *t
		if !hour.Half && hour.Hour < digestMorning {
			hour.Hour += 12
		}
		at.At = hour.ofDay()
	}
	return at
}

func digestText(d kitchen.DigestIs) string {
	if d.At == 0 {
		return "no digest"
	}
	return "digest " + strings.ToLower(d.Day.String()) + " " + dayTimeText(d.At)
}
