package kitchen

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"ryebell/internal/calc/unit"
)

// shelved prints the notes about the shelf as they are sent in Berlin.
func shelved(t *testing.T, pings []Ping, quiet QuietHours) string {
	t.Helper()
	berlin := zoneNamed(t, "Europe/Berlin")
	var lines []string
	for _, p := range pings {
		if !p.Kind.Daily() {
			continue
		}
		if p.Loudness != NotePing || p.To != 0 || p.Room != 0 || p.About != "run/12" {
			t.Errorf("%+v is not a silent note to the room", p)
		}
		lines = append(lines, fmt.Sprintf("%s %s", Shift(p, quiet, berlin).Due.In(berlin).Format("2 Jan 15:04"), p.Kind))
	}
	return strings.Join(lines, ", ")
}

// Runs of 2 March 2026: the day on which each age is
// reached, at nine on the wall clock before and after the change to summer time.
func TestShelfLimits(t *testing.T) {
	const wants = "2 Apr 09:00 shelved a month, 2 Jun 09:00 shelved three months"
	cools := func(items ...Item) *teller {
		return begun(items...).say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:20", ana, AtZero{})
	}
	bag := Item{Count: 3, Container: Container{Vessel: Bag, Weight: 2268}}
	tests := []struct {
		name  string
		told  *teller
		quiet QuietHours
		want  string
	}{
		{"jars, cool by a reading", cools().say("20:00", ana, TempRead{Temp: 26, Where: Middle}), QuietHours{}, wants},
		{"nobody said that they are cool", cools(), QuietHours{}, "4 Apr 09:00 shelved a month, 4 Jun 09:00 shelved three months"},
		{
			"bags dry out", cools(bag).say("20:00", ana, TempRead{Temp: 26, Where: Middle}),
			QuietHours{},
			"23 Mar 09:00 bags three weeks old, " + wants,
		},
		{
			"a jar and a bag", cools(Item{Count: 1, Container: jar(1)}, bag).say("20:00", ana, TempRead{Temp: 26, Where: Middle}),
			QuietHours{},
			"23 Mar 09:00 bags three weeks old, " + wants,
		},
		{
			"quiet till ten", cools().say("20:00", ana, TempRead{Temp: 26, Where: Middle}),
			QuietHours{From: 22 * 60, To: 10 * 60},
			"2 Apr 10:00 shelved a month, 2 Jun 10:00 shelved three months",
		},
		{"gone", cools().say("20:00", ana, TempRead{Temp: 26, Where: Middle}).say("21:00", jo, RunGone{}), QuietHours{}, ""},
		{"gone, and nobody had said that they are cool", cools().say("21:00", jo, RunGone{}), QuietHours{}, ""},
		{"called off while it cooled", cools().say("21:00", jo, CalledOff{}), QuietHours{}, ""},
		{"still on the stove", begun().say("10:00", ana, AtPressure{}), QuietHours{}, ""},
	}
	for _, tt := range tests {
		l := tt.told
		for i := range l.records { // the day of the talk is 2 March
			l.records[i].At, l.records[i].Written = marchSecond(l.records[i].At), marchSecond(l.records[i].Written)
		}
		var wants []Ping
		for _, due := range FoldUnits(l.run(t, pot()), l.records).Wants(pot(), nil) {
			wants = append(wants, due.Ping)
		}
		if got := shelved(t, wants, tt.quiet); got != tt.want {
			t.Errorf("%s:\n got %s\nwant %s", tt.name, got, tt.want)
		}
	}
}

func marchSecond(at time.Time) time.Time {
	return time.Date(2026, 3, 2, at.Hour(), at.Minute(), at.Second(), 0, time.UTC)
}

// What is gone is over: it is said once, steps that nobody reported are filled in,
// and a reading then comes too late.
func TestGone(t *testing.T) {
	l := begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{})
	r, s := l.run(t, pot()), pot()
	next, err := r.Apply(Record{No: 9, By: jo, At: clock("14:00"), Written: clock("14:00"), Entry: RunGone{}}, s)
	if err != nil || next.Stage != StageGone || !next.Stage.Over() {
		t.Fatalf("gone gives stage %v, %v", next.Stage, err)
	}
	if zero, ok := next.LastStep(KindAtZero); !ok || zero.Seen {
		t.Errorf("zero is %+v, want it filled in", zero)
	}
	for _, e := range []RunEntry{RunGone{}, TempRead{Temp: 26}, CalledOff{}} {
		if _, err := next.Apply(Record{No: 10, By: jo, At: clock("15:00"), Written: clock("15:00"), Entry: e}, s); err == nil {
			t.Errorf("%T after it was gone is taken", e)
		}
	}
	if _, err := l.run(t, s).Apply(Record{No: 9, By: jo, At: clock("11:00"), Written: clock("14:00"), Entry: RunGone{}}, s); err == nil {
		t.Errorf("gone from the stove is taken")
	}
}

// Monday at nine until somebody says otherwise, and never once they don't want it.
func TestDigestAt(t *testing.T) {
	for _, tt := range []struct {
		said []Change
		want string
	}{
		{nil, "Monday 540 true"},
		{[]Change{DigestIs{Day: time.Sunday, At: 18 * 60}}, "Sunday 1080 true"},
		{[]Change{DigestIs{Day: time.Sunday, At: 18 * 60}, DigestIs{}}, "Sunday 0 false"},
	} {
		d, on := Settings{}.With(tt.said...).DigestAt()
		if got := fmt.Sprint(d.Day, int(d.At), on); got != tt.want {
			t.Errorf("%v gives %s, want %s", tt.said, got, tt.want)
		}
	}
	for _, c := range []DigestIs{{At: 239}, {At: 1440}, {At: -1}} {
		if (Settings{}).Check(c) == nil {
			t.Errorf("%+v is taken", c)
		}
	}
	if !slices.Contains(PingKinds(), WeeklyDigest) {
		t.Errorf("the digest is no kind of ping")
	}
}

// Left to cool, and nobody said more for four days: off the board, until something is
// told of it.
func TestNeverSeenCool(t *testing.T) {
	cooling := func() *teller {
		return begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:20", ana, AtZero{})
	}
	read := func(at string, temp unit.Celsius) *teller {
		return cooling().say(at, ana, TempRead{Temp: temp, Where: Middle})
	}
	for _, tt := range []struct {
		name string
		told *teller
		days int
		left bool
	}{
		{"three days", cooling(), 3, false},
		{"five days", cooling(), 5, true},
		{"measured warm", read("18:00", 40), 4, false},
		{"measured cool", read("23:00", 25), 5, false},
		{"never at zero", begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}), 5, false},
	} {
		run := tt.told.run(t, pot())
		now := clock("13:00").AddDate(0, 0, tt.days)
		if got := run.NeverSeenCool(now); got != tt.left {
			t.Errorf("%s: never seen cool %v, want %v", tt.name, got, tt.left)
		}
		if rows := Board([]Run{run}, now); (len(rows) == 0) != (tt.left || run.Stage.Over()) {
			t.Errorf("%s: the board has %d rows", tt.name, len(rows))
		}
	}
}
