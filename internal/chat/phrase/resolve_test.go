package phrase

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

// momentOf lexes a phrase that is one moment.
func momentOf(t testing.TB, phrase string) Moment {
	t.Helper()
	for _, tok := range Lex(phrase, Names{}) {
		if w, ok := tok.(When); ok {
			return w.Moment
		}
	}
	t.Fatalf("%q has no moment: %#v", phrase, Lex(phrase, Names{}))
	return Moment{}
}

func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	loc, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return loc
}

const layout = "2006-01-02 15:04 -0700"

func stamps(times []time.Time) []string {
	var s []string
	for _, t := range times {
		s = append(s, t.Format(layout))
	}
	return s
}

// Said on Wednesday 4 March 2026, 14:30, in Berlin; the phrases are those of a
// kitchen, the answers worked out by hand on a calendar.
func TestResolve(t *testing.T) {
	berlin := zone(t, "Europe/Berlin")
	said := time.Date(2026, 3, 4, 14, 30, 0, 0, berlin)
	for _, c := range []struct {
		phrase string
		dir    Direction
		want   []string
	}{
		{"10 min ago", Back, []string{"2026-03-04 14:20 +0100"}},
		{"ten minutes ago", Back, []string{"2026-03-04 14:20 +0100"}},
		{"10m ago", Back, []string{"2026-03-04 14:20 +0100"}},
		{"1h20 ago", Back, []string{"2026-03-04 13:10 +0100"}},
		{"an hour and a half ago", Back, []string{"2026-03-04 13:00 +0100"}},
		{"quarter of an hour ago", Back, []string{"2026-03-04 14:15 +0100"}},
		{"2.5 hours ago", Back, []string{"2026-03-04 12:00 +0100"}},
		{"just now", Back, []string{"2026-03-04 14:30 +0100"}},
		{"at 14:05", Back, []string{"2026-03-04 14:05 +0100"}},
		{"at 14.05", Back, []string{"2026-03-04 14:05 +0100"}},
		{"at 1405", Back, []string{"2026-03-04 14:05 +0100"}},
		{"at 2:05pm", Back, []string{"2026-03-04 14:05 +0100"}},
		{"at 2:05", Back, []string{"2026-03-04 14:05 +0100"}},
		{"since half past two", Back, []string{"2026-03-04 14:30 +0100"}},
		{"since quarter to two", Back, []string{"2026-03-04 13:45 +0100"}},
		{"at noon", Back, []string{"2026-03-04 12:00 +0100"}},
		{"at 23:50", Back, []string{"2026-03-03 23:50 +0100"}},
		{"last night at 11", Back, []string{"2026-03-03 23:00 +0100"}},
		{"last night at 2", Back, []string{"2026-03-04 02:00 +0100"}},
		{"this morning at 9", Back, []string{"2026-03-04 09:00 +0100"}},
		{"yesterday 6pm", Back, []string{"2026-03-03 18:00 +0100"}},
		{"on sunday at 8pm", Back, []string{"2026-03-01 20:00 +0100"}},
		{"2 march 18:00", Back, []string{"2026-03-02 18:00 +0100"}},
		{"2026-03-02 18:00", Back, []string{"2026-03-02 18:00 +0100"}},
		{"in 20 min", Forward, []string{"2026-03-04 14:50 +0100"}},
		{"in an hour", Forward, []string{"2026-03-04 15:30 +0100"}},
		{"tomorrow 10", Forward, []string{"2026-03-05 10:00 +0100"}},
		{"tomorrow 9", Forward, []string{"2026-03-05 09:00 +0100", "2026-03-05 21:00 +0100"}},
		{"10:30", Forward, []string{"2026-03-05 10:30 +0100"}},
		{"10:30", Back, []string{"2026-03-04 10:30 +0100"}},
		{"tonight at 5", Forward, []string{"2026-03-04 17:00 +0100"}},
		{"tonight at 2", Forward, []string{"2026-03-05 02:00 +0100"}},
		{"12:30 tonight", Forward, []string{"2026-03-05 00:30 +0100"}},
		{"tonight at midnight", Forward, []string{"2026-03-05 00:00 +0100"}},
		{"friday at midnight", Forward, []string{"2026-03-07 00:00 +0100", "2026-03-06 00:00 +0100"}},
		{"friday 24:00", Forward, []string{"2026-03-07 00:00 +0100"}},
		{"thursday 2 at night", Back, []string{"2026-02-26 02:00 +0100"}},
		{"8 at night", Back, []string{"2026-03-03 20:00 +0100"}},
		{"5 this afternoon", Forward, []string{"2026-03-04 17:00 +0100"}},
		{"14:30 hrs", Back, []string{"2026-03-04 14:30 +0100"}},
		{"since five thirty", Back, []string{"2026-03-04 05:30 +0100"}},
		{"at three fifteen pm", Forward, []string{"2026-03-04 15:15 +0100"}},
		{"at seventeen hundred", Forward, []string{"2026-03-04 17:00 +0100"}},
		{"fri 18h", Forward, []string{"2026-03-06 18:00 +0100"}},
		{"06/06 14:00", Forward, []string{"2026-06-06 14:00 +0200"}},
		{"25/12/2026 at 9am", Forward, []string{"2026-12-25 09:00 +0100"}},
		{"12/25 09:00", Forward, []string{"2026-12-25 09:00 +0100"}},
		{"last monday 2pm", Forward, nil},
		{"last wednesday 2pm", Back, []string{"2026-02-25 14:00 +0100"}},
		{"next friday 2pm", Back, nil},
		{"feb 29 2027 noon", Forward, nil},
		{"thu 6 march 2026", Forward, []string{"2026-03-06 00:00 +0100", "2026-03-05 00:00 +0100"}},
		{"at 7:30 PM on Fri, Sep 20", Forward, []string{"2026-09-20 19:30 +0200", "2026-09-18 19:30 +0200"}},
		{"tonight at 8", Forward, []string{"2026-03-04 20:00 +0100"}},
		{"friday at 6pm", Forward, []string{"2026-03-06 18:00 +0100"}},
		{"next friday 18:00", Forward, []string{"2026-03-13 18:00 +0100", "2026-03-06 18:00 +0100"}},
		{"next monday at 9am", Forward, []string{"2026-03-09 09:00 +0100"}},
		{"on 20 dec", Forward, []string{"2026-12-20 00:00 +0100"}},
		{"on 2 march", Forward, []string{"2027-03-02 00:00 +0100"}},
		{"in 3 weeks", Forward, []string{"2026-03-25 14:30 +0100"}},
		{"in 4 weeks", Forward, []string{"2026-04-01 14:30 +0200"}},
		{"20:30", Forward, []string{"2026-03-04 20:30 +0100"}},
		{"at 3:00", Forward, []string{"2026-03-04 15:00 +0100", "2026-03-05 03:00 +0100"}},
		{"wednesday at 10am", Forward, []string{"2026-03-11 10:00 +0100"}},
		{"wednesday at 10am", Back, []string{"2026-03-04 10:00 +0100", "2026-02-25 10:00 +0100"}},
		{"friday 5 march", Forward, []string{"2026-03-05 00:00 +0100", "2026-03-06 00:00 +0100"}},
		{"29 feb", Forward, []string{"2028-02-29 00:00 +0100"}},
		{"the 14th", Forward, []string{"2026-03-14 00:00 +0100"}},
		{"in 2 months", Forward, []string{"2026-05-04 14:30 +0200"}},
		{"at midnight", Forward, []string{"2026-03-05 00:00 +0100"}},
	} {
		got := stamps(momentOf(t, c.phrase).Resolve(said, c.dir))
		if len(got) != len(c.want) {
			t.Errorf("%q: got %v, want %v", c.phrase, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%q: got %v, want %v", c.phrase, got, c.want)
				break
			}
		}
	}
}

// In Lisbon clocks go from 01:00 to 02:00 on 29 March 2026 and from 02:00 to
// 01:00 on 25 October (EU directive 2000/84/EC).
func TestResolveOnNightsOfTheClockChange(t *testing.T) {
	lisbon, berlin := zone(t, "Europe/Lisbon"), zone(t, "Europe/Berlin")
	for _, c := range []struct {
		phrase string
		said   time.Time
		dir    Direction
		want   string
		n      int
	}{
		{"at 01:30", time.Date(2026, 3, 29, 0, 10, 0, 0, lisbon), Forward, "2026-03-29 02:30 +0100", 1},
		{"at 02:30", time.Date(2026, 3, 29, 0, 10, 0, 0, berlin), Forward, "2026-03-29 03:30 +0200", 1},
		{"tomorrow 02:30", time.Date(2026, 3, 28, 12, 0, 0, 0, berlin), Forward, "2026-03-29 03:30 +0200", 1},
		{"at 01:30", time.Date(2026, 10, 25, 0, 10, 0, 0, lisbon), Forward, "2026-10-25 01:30 +0100", 2},
		{"at 02:30", time.Date(2026, 10, 25, 12, 0, 0, 0, berlin), Back, "2026-10-25 02:30 +0100", 2},
		{"yesterday 02:30", time.Date(2026, 10, 26, 12, 0, 0, 0, berlin), Back, "2026-10-25 02:30 +0200", 2},
		{"12 hours ago", time.Date(2026, 10, 25, 8, 0, 0, 0, berlin), Back, "2026-10-24 21:00 +0200", 1},
	} {
		got := stamps(momentOf(t, c.phrase).Resolve(c.said, c.dir))
		if len(got) != c.n || got[0] != c.want {
			t.Errorf("%q said %v: got %v, want %s first of %d", c.phrase, c.said, got, c.want, c.n)
		}
	}
}

func TestResolveIntervals(t *testing.T) {
	said := time.Date(2026, 3, 4, 14, 30, 0, 0, time.UTC)
	for phrase, want := range map[string]string{
		"sat 10-14":                    "2026-03-07 10:00 to 2026-03-07 14:00",
		"sat 10am to 2pm":              "2026-03-07 10:00 to 2026-03-07 14:00",
		"10-2pm saturday":              "2026-03-07 10:00 to 2026-03-07 14:00",
		"tomorrow from 7:00 to 8:00pm": "2026-03-05 19:00 to 2026-03-05 20:00",
		"fri 22-7":                     "2026-03-06 22:00 to 2026-03-07 07:00",
		"tonight 8-11":                 "2026-03-04 20:00 to 2026-03-04 23:00",
		"9h30 - 11h":                   "2026-03-05 09:30 to 2026-03-05 11:00",
		"from 4pm for thirty minutes":  "2026-03-04 16:00 to 2026-03-04 16:30",
		"from 11pm for 2 hours":        "2026-03-04 23:00 to 2026-03-05 01:00",
		"20 dec 9:00-12:30":            "2026-12-20 09:00 to 2026-12-20 12:30",
	} {
		tokens := Lex(phrase, Names{})
		v, ok := tokens[0].(Interval)
		if !ok || len(tokens) > 1 {
			t.Errorf("%q: got %#v, want an interval", phrase, tokens)
			continue
		}
		found := v.Resolve(said, Forward)
		if len(found) == 0 {
			t.Errorf("%q: resolves to nothing", phrase)
			continue
		}
		const l = "2006-01-02 15:04"
		if got := found[0].From.Format(l) + " to " + found[0].To.Format(l); got != want {
			t.Errorf("%q: got %s, want %s", phrase, got, want)
		}
	}
}

// Whatever moment there is, printing and reading it gives it back, and what it
// resolves to lies in the direction looked, if anything of it does.
func TestMomentsPrintAsTheyRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMoment(t)
		tokens := Lex(m.String(), Names{})
		if len(tokens) != 1 {
			t.Fatalf("%q reads as %#v", m.String(), tokens)
		}
		if w, ok := tokens[0].(When); !ok || !equal(w.Moment, m) {
			t.Fatalf("%q, printed for %#v, reads as %#v", m.String(), m, tokens[0])
		}
	})
}

func anyMoment(t *rapid.T) Moment {
	clock := ClockTime{
		Hour: rapid.IntRange(1, 12).Draw(t, "hour"), Minute: rapid.IntRange(0, 59).Draw(t, "minute"),
	}
	if rapid.Bool().Draw(t, "half") {
		clock = ClockTime{Hour: rapid.IntRange(0, 23).Draw(t, "hour"), Minute: clock.Minute, Half: true}
	}
	weekday := time.Weekday(rapid.IntRange(0, 6).Draw(t, "weekday"))
	month, day := time.Month(rapid.IntRange(1, 12).Draw(t, "month")), rapid.IntRange(1, 28).Draw(t, "day")
	days := []Day{
		{},
		{Shift: rapid.IntRange(-100, 100).Draw(t, "days")},
		{HasWeekday: true, Weekday: weekday},
		{HasWeekday: true, Weekday: weekday, Next: true},
		{HasWeekday: true, Weekday: weekday, Last: true},
		{HasWeekday: true, Weekday: weekday, NextWeek: true},
		{HasWeekday: true, Weekday: weekday, Date: day},
		{HasWeekday: true, Weekday: weekday, Month: month, Date: day},
		{Month: month, Date: day},
		{Date: day},
		{Year: rapid.IntRange(1990, 2100).Draw(t, "year"), Month: month, Date: day},
		{Months: rapid.SampledFrom([]int{-3, 1, 12}).Draw(t, "months")},
	}
	d := rapid.SampledFrom(days).Draw(t, "which")
	d.Said = d != Day{} || rapid.Bool().Draw(t, "today")
	switch {
	case d.Said && rapid.Bool().Draw(t, "no clock"):
		return Moment{Day: d}
	case !d.Said && rapid.Bool().Draw(t, "shift"):
		s := rapid.IntRange(-400_000, 400_000).Filter(func(n int) bool { return n != 0 }).Draw(t, "seconds")
		return Moment{Shift: time.Duration(s) * time.Second}
	}
	if d.Said && rapid.Bool().Draw(t, "midnight") {
		clock = ClockTime{Hour: 24, Half: rapid.Bool().Draw(t, "end of the day")}
	}
	return Moment{Day: d, Clock: &clock}
}

// Intents print their moments in another form, for buttons: it must read back
// too.
func TestMomentsOfIntentsPrintAsTheyRead(t *testing.T) {
	for _, text := range []string{
		"tuesday 4 march", "friday 2026-03-03 24:00", "last monday 2:00pm", "friday midnight", "the 14th 9:30", "tomorrow 9:30",
	} {
		m := momentOf(t, text)
		if again := momentOf(t, momentText(m)); !equal(again, m) {
			t.Errorf("%q prints as %q, which reads as %#v", text, momentText(m), again)
		}
	}
}
