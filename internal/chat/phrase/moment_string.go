package phrase

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// String prints m so that it lexes to the same moment.
func (m Moment) String() string {
	switch {
	case m.Now:
		return "just now"
	case m.Shift != 0:
		return ago(m.Shift)
	case !m.Day.Said && m.Clock == nil:
		return ""
	case m.Clock == nil:
		return m.Day.String()
	case !m.Day.Said:
		return "at " + m.Clock.String()
	}
	return m.Day.String() + " at " + m.Clock.String()
}

// String prints v so that it lexes to the same interval.
func (v Interval) String() string {
	if v.From.Clock == nil || v.To.Clock == nil {
		return ""
	}
	return strings.TrimSpace(v.From.Day.String() + " from " + v.From.Clock.String() + " to " + v.To.Clock.String())
}

// String prints c so that it lexes to the same time: the half of the day shows.
func (c ClockTime) String() string {
	switch {
	case c.Hour == 24 && !c.Half:
		return "midnight"
	case !c.Half:
		return fmt.Sprintf("%d:%02d", c.Hour, c.Minute)
	case c.Hour == 12:
		return fmt.Sprintf("12:%02d pm", c.Minute)
	case c.Hour >= 10 && c.Hour < 12:
		return fmt.Sprintf("%d:%02d am", c.Hour, c.Minute)
	}
	return fmt.Sprintf("%02d:%02d", c.Hour, c.Minute)
}

// String prints d so that it lexes to the same day; nothing when none was said.
func (d Day) String() string {
	weekday := strings.ToLower(d.Weekday.String())
	switch {
	case !d.Said:
		return ""
	case d.NextWeek:
		return "next week " + weekday
	case d.Last:
		return "last " + weekday
	case d.Next:
		return "next " + weekday
	case d.Date != 0 && d.HasWeekday:
		return weekday + " " + d.date()
	case d.Date != 0:
		return d.date()
	case d.HasWeekday:
		return weekday
	case d.Months != 0:
		return counted(d.Months, "months")
	}
	switch d.Shift {
	case 0:
		return "today"
	case 1:
		return "tomorrow"
	case -1:
		return "yesterday"
	}
	return counted(d.Shift, "days")
}

func (d Day) date() string {
	month := strings.ToLower(d.Month.String())
	switch {
	case d.Month == 0:
		return "the " + strconv.Itoa(d.Date) + ordinalEnd(d.Date)
	case d.Year != 0:
		return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Date)
	}
	return month + " " + strconv.Itoa(d.Date)
}

// ordinalEnd is the st, nd, rd or th of a date.
func ordinalEnd(n int) string {
	if n/10 == 1 {
		return "th"
	}
	switch n % 10 {
	case 1:
		return "st"
	case 2:
		return "nd"
	case 3:
		return "rd"
	}
	return "th"
}

func counted(n int, unit string) string {
	if n < 0 {
		return strconv.Itoa(-n) + " " + unit + " ago"
	}
	return "in " + strconv.Itoa(n) + " " + unit
}

// ago prints 90 min ago and in 1 h 20 min.
func ago(d time.Duration) string {
	s := spoken(d.Abs())
	if d < 0 {
		return s + " ago"
	}
	return "in " + s
}

// spoken prints a length of time in hours, minutes and seconds.
func spoken(d time.Duration) string {
	var parts []string
	for _, u := range [...]struct {
		size time.Duration
		name string
	}{{time.Hour, " h"}, {time.Minute, " min"}, {time.Second, " sec"}} {
		if n := d / u.size; n > 0 {
			parts = append(parts, strconv.Itoa(int(n))+u.name)
		}
		d %= u.size
	}
	return strings.Join(parts, " ")
}
