package kitchen

import (
	"fmt"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// wanted prints what the units want, but for what waits for their growth.
func wanted(u Units) (out []string) {
	for _, p := range u.Wants(Settings{}, nil) {
		if !p.Growth.Through.About.IsZero() {
			continue
		}
		out = append(out, fmt.Sprintf("%s %s to %d of %v", p.Due.Format("2.1. 15:04"), p.Kind, p.To, p.Units))
	}
	return out
}

func TestUnitsWant(t *testing.T) {
	for _, tt := range []struct {
		name string
		l    *teller
		want []string
	}{
		{"hot", begun().say("10:00", ana, AtPressure{}), nil},
		{"cooked", sealed(), []string{"2.4. 20:00 shelved a month to 0 of [1 2 3 4 5 6 7]", "2.6. 20:00 shelved three months to 0 of [1 2 3 4 5 6 7]"}},
		{
			"some inoculated, one blank", sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3)}).say("21:00", ana, BlankSet{ones(4)}),
			[]string{"2.4. 20:00 shelved a month to 0 of [5 6 7]", "2.6. 20:00 shelved three months to 0 of [5 6 7]"},
		},
		{
			"suspect", sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3, 4, 5, 6, 7)}).day(9, "09:00", jo, SignSeen{ones(3, 1), LooksWet}).
				day(9, "09:20", jo, SignSeen{ones(2), LooksOdd}).day(9, "12:00", jo, SignSeen{ones(5), LooksOdd}).day(9, "09:00", mik, SignSeen{ones(4), LooksOdd}),
			[]string{"11.3. 09:00 look again to 2 of [1 3 2]", "11.3. 09:00 look again to 3 of [4]", "11.3. 12:00 look again to 2 of [5]"},
		},
		{"suspect, and another doubt", sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3, 4, 5, 6, 7)}).day(9, "09:00", jo, SignSeen{ones(1), LooksWet}).
			day(10, "09:00", ana, SignSeen{ones(1), YellowDrops}), []string{"12.3. 09:00 look again to 1 of [1]"}},
		{"suspect, and settled", sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3, 4, 5, 6, 7)}).day(9, "09:00", jo, SignSeen{ones(1, 2), LooksWet}).
			day(10, "09:00", ana, SignSeen{ones(1), LooksFine}).day(10, "09:00", ana, SignSeen{ones(2), GreenMould}), nil},
	} {
		if diff := cmp.Diff(tt.want, wanted(tt.l.units(t))); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
}

// Bags are asked after sooner than jars, as long as they wait for a culture.
func TestUnitsWantBags(t *testing.T) {
	l := begun(Item{Count: 2, Container: jar(1)}, Item{Count: 2, Container: bag(5)}).
		say("09:10", ana, HeatOn{}).say("12:15", ana, AtZero{}).say("20:00", ana, TempRead{Temp: 24, Where: Middle})
	run, bags := l.run(t, pot()), []UnitNo{}
	for _, p := range FoldUnits(run, l.records).Wants(Settings{}, nil) {
		if p.Kind == BagsThreeWeeks {
			bags = p.Units
		}
	}
	if diff := cmp.Diff(ones(3, 4), bags); diff != "" {
		t.Error(diff)
	}
	if got := FoldUnits(run, l.day(9, "09:00", jo, Inoculated{Units: bags}).records).Wants(Settings{}, nil); len(got) != 5 || got[0].Due.Sub(run.Since) < 30*24*time.Hour {
		t.Errorf("without bags: %+v", got)
	}
}

// Once somebody has begun to see to a load and few of it are left, nobody is asked any
// more to measure it.
func TestUnitsSettled(t *testing.T) {
	for _, tt := range []struct {
		name string
		l    *teller
		want bool
	}{
		{"in the cook, one to be blank", begun().say("10:00", ana, AtPressure{}).say("10:01", ana, BlankSet{ones(1)}), false},
		{"cooked", sealed(), false},
		{"three of seven", sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3)}), false},
		{"four of seven", sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3, 4)}), true},
		{"three and a blank", sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3)}).say("21:00", ana, BlankSet{ones(4)}), true},
		{"four thrown out, nothing put on", sealed().say("21:00", ana, UnitsDiscarded{ones(1, 2, 3, 4)}), false},
		{"all", sealed().say("21:00", ana, Inoculated{}), true},
	} {
		u := tt.l.units(t)
		if u.Settled() != tt.want || u.Hushes(Ping{Kind: CoolNow}) != tt.want || u.Hushes(Ping{Kind: ShelvedMonth}) {
			t.Errorf("%s: settled %v, want %v", tt.name, u.Settled(), tt.want)
		}
	}
}
