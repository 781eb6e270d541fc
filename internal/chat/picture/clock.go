package picture

import (
	"slices"
	"time"
)

// mostHours is how many ticks the time axis has at most.
const mostHours = 7

// hourSteps are the distances between ticks of time, finest first.
func hourSteps() []time.Duration {
	return []time.Duration{
		time.Minute, 2 * time.Minute, 5 * time.Minute, 10 * time.Minute, 15 * time.Minute, 30 * time.Minute,
		time.Hour, 2 * time.Hour, 3 * time.Hour, 4 * time.Hour, 6 * time.Hour, 12 * time.Hour, 24 * time.Hour, 48 * time.Hour,
	}
}

// rounds lists the times from … to at which the clocks on the wall show a multiple
// of step since midnight (for days: since some midnight), at most limit of them. An
// hour that a change of the clocks skips is not there, one that it repeats is there
// twice.
func rounds(from, to time.Time, step time.Duration, limit int) []time.Time {
	var list []time.Time
	for start := from; !start.After(to); {
		_, change := start.ZoneBounds()
		_, offset := start.Zone()
		secs := int64(step / time.Second)
		wall := start.Unix() + int64(offset)
		if start.Nanosecond() > 0 {
			wall++
		}
		first := wall + (secs-wall%secs)%secs
		for at := time.Unix(first-int64(offset), 0).In(from.Location()); !at.After(to) && len(list) < limit; at = at.Add(step) {
			if !change.IsZero() && !at.Before(change) {
				break
			}
			list = append(list, at)
		}
		if change.IsZero() {
			break
		}
		start = change.In(from.Location())
	}
	return list
}

// mostDays is more than the longest axis has beginnings of days.
const mostDays = 16

// midnights lists the times after from and before to at which a day begins on the
// wall. That is not always midnight: some clocks are changed right then.
func midnights(from, to time.Time) []time.Time {
	candidates := rounds(from, to, 24*time.Hour, mostDays)
	if _, change := from.ZoneBounds(); !change.IsZero() && change.Before(to) {
		candidates = append(candidates, change.In(from.Location()))
	}
	var days []time.Time
	for _, at := range candidates {
		if at.After(from) && at.Before(to) && at.YearDay() != at.Add(-time.Nanosecond).YearDay() && !slices.ContainsFunc(days, at.Equal) {
			days = append(days, at)
		}
	}
	slices.SortFunc(days, time.Time.Compare)
	return days
}
