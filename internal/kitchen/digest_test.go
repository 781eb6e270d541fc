package kitchen

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// stock is the load of a run, under another number.
func (l *teller) stock(t testing.TB, no RunNo) Stock {
	t.Helper()
	run := l.run(t, pot())
	run.No = no
	return Stock{Run: run, Units: FoldUnits(run, l.records)}
}

func (d Digest) show() string {
	var out []string
	for _, part := range []struct {
		name string
		of   []Batch
	}{
		{"lost", d.Lost},
		{"bad", d.Bad},
		{"suspect", d.Suspect},
		{"ageing", d.Ageing},
		{"unheld", d.Unheld},
		{"old", d.Old},
		{"unmeasured", d.Unmeasured},
	} {
		for _, b := range part.of {
			out = append(out, fmt.Sprintf("%s %v%v", part.name, b.Units.Run, b.These))
		}
	}
	for _, n := range d.Nearing {
		out = append(out, fmt.Sprintf("%v %v%v", n.Limit, n.Units.Run, n.These))
	}
	return strings.Join(out, "; ")
}

// What needs a decision is sorted by unit, and what needs none is left out. All happens
// in March.
func TestDigestOf(t *testing.T) {
	grow := func() *teller {
		return sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3, 4, 5), Species: "oyster"}).
			day(8, "09:00", jo, SignSeen{ones(1), GreenMould}).day(8, "09:00", jo, UnitsDiscarded{ones(1)}).
			day(8, "09:00", jo, SignSeen{ones(2), SourSmell}).day(15, "09:00", jo, GrownThrough{ones(3, 4)}).
			day(15, "10:00", jo, UnitsMoved{ones(4), "fridge"}).day(20, "10:00", jo, SignSeen{ones(5), LooksWet})
	}
	unseen := func() *teller { return begun().say("11:30", ana, HeatOff{}).say("12:20", ana, AtZero{}) }
	held := func() *teller {
		return begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:20", ana, AtZero{})
	}
	on := func(day int) time.Time { return clock("09:00").AddDate(0, 0, day-2) }
	stock := []Stock{grow().stock(t, 1), sealed().stock(t, 2), unseen().stock(t, 3), sealed().day(5, "09:00", jo, RunGone{}).stock(t, 4)}
	for _, tt := range []struct {
		name       string
		since, now time.Time
		stock      []Stock
		want       string
	}{
		{"a pot on the stove", time.Time{}, on(9), []Stock{begun().say("10:00", ana, AtPressure{}).stock(t, 9)}, ""},
		{"cooked, and that is all", on(2), on(9), stock[1:2], ""},
		{"gone", on(2), on(9), stock[3:], ""},
		{"lost this week", on(8), on(15), stock[:1], "lost #1[1 2]; bad #1[2]; suspect #1[5]"},
		{"lost before", on(15), on(22), stock[:1], "bad #1[2]; suspect #1[5]; ageing #1[3]"},
		{"the fridge too", on(40), on(47), stock[:1], "bad #1[2]; suspect #1[5]; ageing #1[3]; ageing #1[4]"},
		{"unseen", on(2), on(9), stock[2:3], "unheld #3[1 2 3 4 5 6 7]"},
		{"unmeasured", on(2), on(9), []Stock{held().stock(t, 5)}, "unmeasured #5[1 2 3 4 5 6 7]"},
		{"unmeasured, and cool by now without doubt", on(9), on(20), []Stock{held().stock(t, 5)}, ""},
		{"a month nears", on(20), on(28), stock[1:2], "shelved a month #2[1 2 3 4 5 6 7]"},
		{"past it", on(28), on(40), stock[1:2], ""},
		{"old", on(100), on(107), stock[1:2], "old #2[1 2 3 4 5 6 7]"},
		{"by units that wait", on(20), on(28), stock[:2], "bad #1[2]; suspect #1[5]; ageing #1[3]; shelved a month #1[6 7]; shelved a month #2[1 2 3 4 5 6 7]"},
	} {
		d := DigestOf(tt.stock, tt.since, tt.now)
		if diff := cmp.Diff(tt.want, d.show()); diff != "" || d.Empty() != (tt.want == "") {
			t.Errorf("%s, empty %v (-want +got):\n%s", tt.name, d.Empty(), diff)
		}
	}
	if d := DigestOf(stock, time.Time{}, on(9)); !d.Since.Equal(on(2)) {
		t.Errorf("the first tells from %v on", d.Since)
	}
}
