package reminders_test

import (
	"errors"
	"testing"
	"time"
	_ "time/tzdata"

	"pgregory.net/rapid"

	"ryebell/internal/reminders"
)

// failer is what a test and a property have in common.
type failer interface {
	Helper()
	Fatal(args ...any)
}

func zone(t failer, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

func daily(t failer, at reminders.TimeOfDay, z *time.Location) reminders.Calendar {
	t.Helper()
	c, err := reminders.Daily("digest", at, z)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// The dates of the clock changes are those of the IANA time zone database,
// files europe, southamerica and australasia.
func TestDailyOverClockChanges(t *testing.T) {
	for _, c := range []struct {
		name, zone, after string
		at                reminders.TimeOfDay
		keys, dues        []string
	}{
		{
			name: "Berlin goes from 02:00 to 03:00", zone: "Europe/Berlin", after: "2026-03-27T12:00:00Z",
			at:   reminders.TimeOfDay{Hour: 4},
			keys: []string{"digest/2026-03-28", "digest/2026-03-29", "digest/2026-03-30"},
			dues: []string{"2026-03-28T03:00:00Z", "2026-03-29T02:00:00Z", "2026-03-30T02:00:00Z"},
		},
		{
			name: "Berlin goes from 03:00 back to 02:00", zone: "Europe/Berlin", after: "2026-10-24T12:00:00Z",
			at:   reminders.TimeOfDay{Hour: 4},
			keys: []string{"digest/2026-10-25", "digest/2026-10-26"},
			dues: []string{"2026-10-25T03:00:00Z", "2026-10-26T03:00:00Z"},
		},
		{
			name: "Lisbon goes from 01:00 to 02:00", zone: "Europe/Lisbon", after: "2026-03-28T12:00:00Z",
			at:   reminders.TimeOfDay{Hour: 9, Minute: 30},
			keys: []string{"digest/2026-03-29", "digest/2026-03-30"},
			dues: []string{"2026-03-29T08:30:00Z", "2026-03-30T08:30:00Z"},
		},
		{
			name: "Lisbon goes from 02:00 back to 01:00", zone: "Europe/Lisbon", after: "2026-10-24T12:00:00Z",
			at:   reminders.TimeOfDay{Hour: 9, Minute: 30},
			keys: []string{"digest/2026-10-25", "digest/2026-10-26"},
			dues: []string{"2026-10-25T09:30:00Z", "2026-10-26T09:30:00Z"},
		},
		{
			name: "Sao Paulo had no midnight", zone: "America/Sao_Paulo", after: "2018-11-03T15:00:00Z",
			at:   reminders.TimeOfDay{Hour: 9},
			keys: []string{"digest/2018-11-04", "digest/2018-11-05"},
			dues: []string{"2018-11-04T11:00:00Z", "2018-11-05T11:00:00Z"},
		},
		{
			name: "Sao Paulo had 23:30 twice", zone: "America/Sao_Paulo", after: "2019-02-16T15:00:00Z",
			at:   reminders.TimeOfDay{Hour: 9},
			keys: []string{"digest/2019-02-17", "digest/2019-02-18"},
			dues: []string{"2019-02-17T12:00:00Z", "2019-02-18T12:00:00Z"},
		},
		{
			name: "Lord Howe goes from 02:00 to 02:30", zone: "Australia/Lord_Howe", after: "2008-10-03T17:30:00Z",
			at:   reminders.TimeOfDay{Hour: 4},
			keys: []string{"digest/2008-10-05", "digest/2008-10-06"},
			dues: []string{"2008-10-04T17:00:00Z", "2008-10-05T17:00:00Z"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			cal := daily(t, c.at, zone(t, c.zone))
			now := instant(t, c.after)
			for i := range c.keys {
				o := cal.Next(now)
				if o.Key != c.keys[i] || !o.Due.Equal(instant(t, c.dues[i])) {
					t.Fatalf("after %v: got %s %v, want %s %s", now, o.Key, o.Due, c.keys[i], c.dues[i])
				}
				now = o.Due
			}
		})
	}
}

// 23:30 came twice in Sao Paulo on 16 February 2019. The first one counts, from
// whichever side it is asked for.
func TestDoubledHourCountsOnce(t *testing.T) {
	cal := daily(t, reminders.TimeOfDay{Hour: 23, Minute: 30}, zone(t, "America/Sao_Paulo"))
	first := cal.Next(instant(t, "2019-02-16T15:00:00Z"))
	if want := instant(t, "2019-02-17T01:30:00Z"); !first.Due.Equal(want) {
		t.Fatalf("got %v, want %v", first.Due, want)
	}
	for _, after := range []time.Time{first.Due, first.Due.Add(30 * time.Minute), first.Due.Add(time.Hour)} {
		o := cal.Next(after)
		if want := instant(t, "2019-02-18T02:30:00Z"); !o.Due.Equal(want) || o.Key != "digest/2019-02-17" {
			t.Errorf("after %v: got %+v, want %v", after, o, want)
		}
	}
}

func TestWeekly(t *testing.T) {
	cal, err := reminders.Weekly("digest", time.Sunday, reminders.TimeOfDay{Hour: 18}, zone(t, "Europe/Berlin"))
	if err != nil {
		t.Fatal(err)
	}
	o := cal.Next(instant(t, "2026-03-23T00:00:00Z"))
	if o.Key != "digest/2026-03-29" || !o.Due.Equal(instant(t, "2026-03-29T16:00:00Z")) {
		t.Errorf("got %+v, want Sunday 29 March at 18:00 summer time", o)
	}
}

func TestTimesOfDayRefused(t *testing.T) {
	for _, at := range []reminders.TimeOfDay{{0, 0}, {1, 30}, {3, 59}, {24, 0}, {9, 60}, {9, -1}, {-1, 0}} {
		if _, err := reminders.Daily("x", at, time.UTC); !errors.Is(err, reminders.ErrHour) {
			t.Errorf("%v: got %v, want ErrHour", at, err)
		}
	}
	for _, at := range []reminders.TimeOfDay{{4, 0}, {23, 59}} {
		if _, err := reminders.Daily("x", at, time.UTC); err != nil {
			t.Errorf("%v: %v", at, err)
		}
	}
}

// Each local date has exactly one occurrence, at the time of day asked for:
// worked out here date by date, without the schedule.
func TestDailyIsEachDateOnce(t *testing.T) {
	zones := []string{"Europe/Berlin", "Europe/Lisbon", "America/Sao_Paulo", "America/New_York", "Australia/Lord_Howe"}
	rapid.Check(t, func(t *rapid.T) {
		z := zone(t, rapid.SampledFrom(zones).Draw(t, "zone"))
		at := reminders.TimeOfDay{Hour: rapid.IntRange(4, 23).Draw(t, "hour"), Minute: rapid.IntRange(0, 59).Draw(t, "minute")}
		start := time.Unix(rapid.Int64Range(1_200_000_000, 1_900_000_000).Draw(t, "start"), 0).In(z)
		cal, now := daily(t, at, z), start
		want := time.Date(start.Year(), start.Month(), start.Day(), at.Hour, at.Minute, 0, 0, z)
		if !want.After(start) {
			want = want.AddDate(0, 0, 1)
		}
		for range 10 {
			o := cal.Next(now)
			if !o.Due.Equal(want) || o.Key != "digest/"+want.Format(time.DateOnly) {
				t.Fatalf("after %v: got %+v, want %v", now, o, want)
			}
			now, want = o.Due, want.AddDate(0, 0, 1)
		}
	})
}

func instant(t failer, s string) time.Time {
	t.Helper()
	at, err := time.Parse(time.RFC3339, s)
	if err != nil {
		t.Fatal(err)
	}
	return at
}
