package reminders

import (
	"errors"
	"fmt"
	"time"

	"github.com/robfig/cron/v3"
)

// firstHour is the first hour of the day at which something may recur. Clocks
// are changed between midnight and 03:59, almost everywhere: what was set to
// 01:30 would be left out on one day of the year and come twice on another.
const firstHour = 4

// ErrHour is the error of a time of day that does not exist on every day of the
// year, or not at all.
var ErrHour = errors.New("time of day is not between 04:00 and 23:59")

// TimeOfDay is a time on the wall clock, 04:00 to 23:59.
type TimeOfDay struct{ Hour, Minute int }

// String prints it as 09:05.
func (t TimeOfDay) String() string { return fmt.Sprintf("%02d:%02d", t.Hour, t.Minute) }

// Calendar says when something recurs: each day, or once a week, at a time of
// day in one time zone.
type Calendar struct {
	name     string
	schedule cron.Schedule
	zone     *time.Location
}

// Daily recurs each day. The name begins the keys, as in digest/2026-10-25. The
// error is [ErrHour].
func Daily(name string, at TimeOfDay, zone *time.Location) (Calendar, error) {
	return recurring(name, at, "*", zone)
}

// Weekly recurs on one day of the week. The name begins the keys. The error is
// [ErrHour].
func Weekly(name string, day time.Weekday, at TimeOfDay, zone *time.Location) (Calendar, error) {
	return recurring(name, at, fmt.Sprint(int(day)), zone)
}

func recurring(name string, at TimeOfDay, days string, zone *time.Location) (Calendar, error) {
	if at.Hour < firstHour || at.Hour > 23 || at.Minute < 0 || at.Minute > 59 {
		return Calendar{}, fmt.Errorf("%s: %w", at, ErrHour)
	}
	s, err := cron.ParseStandard(fmt.Sprintf("%d %d * * %s", at.Minute, at.Hour, days))
	if err != nil {
		return Calendar{}, fmt.Errorf("read schedule: %w", err)
	}
	return Calendar{name: name, schedule: s, zone: zone}, nil
}

// Occurrence is one time at which something recurs. Key holds the date in the
// calendar's zone, so that no date has two.
type Occurrence struct {
	Key string
	Due time.Time // UTC
}

// Next is the first occurrence after an instant. Where a zone turns its clocks
// back in the evening and a time comes twice, it counts once.
//
// The schedule is asked in a zone without clock changes, and its answer put into
// the calendar's: asked in a zone whose clocks go forward by half an hour, as on
// Lord Howe Island, it leaves out the day.
func (c Calendar) Next(after time.Time) Occurrence {
	date := c.schedule.Next(relabel(after.In(c.zone), time.UTC))
	due := relabel(date, c.zone)
	if !due.After(after) {
		due = relabel(c.schedule.Next(date), c.zone)
	}
	return Occurrence{Key: c.name + "/" + due.Format(time.DateOnly), Due: due.UTC()}
}

// relabel is the instant at which the clocks of a zone show what t shows.
func relabel(t time.Time, zone *time.Location) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), zone)
}
