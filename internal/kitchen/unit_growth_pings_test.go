package kitchen

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/calc/unit"
)

// onceADay prints what the units want that comes once a day, as it is due.
func onceADay(t *testing.T, u Units, s Settings, past ...Grown) (out []string) {
	t.Helper()
	for _, p := range u.Wants(s, past) {
		if !p.Kind.Daily() {
			continue
		}
		if p.Loudness != NotePing || p.To != 0 || p.Room != 0 || p.About != u.Run.Subject() {
			t.Errorf("%+v is no note to the room", p)
		}
		out = append(out, fmt.Sprintf("%s %s %v", p.Due.Format("2.1."), p.Kind, p.Units))
	}
	return out
}

// oysters are all seven quarts of [sealed] with oyster on them from the evening of
// the 1st. By the table a first shake is due 4.2 days on, they are grown through after
// 10.6 days shaken, 14.1 unshaken, and keep 7 to 14 days in the room.
func oysters() *teller {
	return sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3, 4, 5, 6, 7), Culture: "blue lc", Species: "oyster", Route: LiquidCulture})
}

func TestUnitsWantAsTheyGrow(t *testing.T) {
	all, some := ones(1, 2, 3, 4, 5, 6, 7), ones(1, 2, 3, 4, 5, 6)
	for _, tt := range []struct {
		name string
		l    *teller
		want []string
	}{
		{"inoculated", oysters(), []string{"7.3. shake [1 2 3 4 5 6 7]", "12.3. nothing seen [1 2 3 4 5 6 7]", "16.3. grown through yet [1 2 3 4 5 6 7]"}},
		{"mixed at once", oysters().say("21:10", ana, Shaken{all}), []string{
			"7.3. shake [1 2 3 4 5 6 7]", "12.3. nothing seen [1 2 3 4 5 6 7]", "16.3. grown through yet [1 2 3 4 5 6 7]",
		}},
		{"some shaken", oysters().day(6, "09:00", jo, Shaken{some}), []string{
			"13.3. grown through yet [1 2 3 4 5 6 7]", "7.3. shake [7]", "12.3. nothing seen [7]",
		}},
		{"growth seen", oysters().day(8, "09:00", jo, GrowthSeen{all, 0.3}), []string{
			"7.3. shake [1 2 3 4 5 6 7]", "18.3. grown through yet [1 2 3 4 5 6 7]",
		}},
		{"seen to grow apart", oysters().day(6, "09:00", jo, Shaken{all}).day(14, "09:00", jo, GrowthSeen{ones(1, 2, 3), 0.5}).day(14, "09:10", jo, GrowthSeen{ones(4, 5, 6, 7), 0.9}), []string{
			"20.3. grown through yet [1 2 3]", "16.3. grown through yet [4 5 6 7]",
		}},
		{"into the fridge, half grown", oysters().day(8, "09:00", jo, GrowthSeen{all, 0.5}).day(8, "10:00", jo, UnitsMoved{all, "fridge"}), nil},
		{"and out of it", oysters().day(6, "09:00", jo, Shaken{all}).day(8, "10:00", jo, UnitsMoved{all, "fridge"}).day(28, "10:00", jo, UnitsMoved{all, "shelf 2"}), []string{
			"2.4. grown through yet [1 2 3 4 5 6 7]",
		}},
		{"too far to shake", oysters().day(8, "09:00", jo, GrowthSeen{all, 0.6}), []string{"13.3. grown through yet [1 2 3 4 5 6 7]"}},
		{"nearly through a day before", oysters().day(6, "09:00", jo, Shaken{all}).day(12, "09:00", jo, GrowthSeen{all, 0.8}), []string{
			"14.3. grown through yet [1 2 3 4 5 6 7]",
		}},
		{"late, and looked at", oysters().day(6, "09:00", jo, Shaken{all}).day(20, "09:00", jo, GrowthSeen{all, 0.8}), []string{
			"22.3. grown through yet [1 2 3 4 5 6 7]",
		}},
		{"through on two days", oysters().day(6, "09:00", jo, Shaken{all}).day(12, "09:00", jo, GrownThrough{ones(1, 2)}).day(14, "09:00", jo, GrownThrough{some[2:]}), []string{
			"13.3. grown through yet [7]", "19.3. spawn kept [1 2 3 4 5 6]",
		}},
		{"into the fridge", oysters().day(12, "09:00", jo, GrownThrough{all}).day(14, "09:00", jo, UnitsMoved{all, "Jo's fridge"}), []string{
			"11.4. spawn kept [1 2 3 4 5 6 7]",
		}},
		{"on another shelf", oysters().day(12, "09:00", jo, GrownThrough{all}).day(14, "09:00", jo, UnitsMoved{all, "shelf 2"}), []string{
			"19.3. spawn kept [1 2 3 4 5 6 7]",
		}},
		{"away or lost", oysters().day(9, "09:00", jo, SignSeen{ones(1), GreenMould}).day(9, "09:00", jo, UnitsDiscarded{ones(2)}).
			day(9, "09:00", jo, UnitsGiven{ones(3), "Kim"}).day(9, "09:00", jo, UnitsUsed{Units: ones(4), On: "straw"}).
			day(9, "09:00", jo, SignSeen{ones(5), NothingGrew}).day(9, "09:00", jo, SignSeen{ones(6), LooksWet}).day(9, "09:00", jo, GrownThrough{ones(7)}).
			day(10, "09:00", jo, UnitsUsed{Units: ones(7), On: "straw"}), nil},
		{"run gone", oysters().day(9, "09:00", jo, RunGone{}), nil},
		{"quick by grain: no look for growth before it is through", sealed().say("21:00", ana, Inoculated{Units: all, From: UnitRef{9, 2}, Species: "oyster"}), []string{
			"6.3. shake [1 2 3 4 5 6 7]", "13.3. grown through yet [1 2 3 4 5 6 7]",
		}},
		{"slow to show", sealed().say("21:00", ana, Inoculated{Units: all, Species: "maitake"}), []string{
			"12.3. shake [1 2 3 4 5 6 7]", "14.3. nothing seen [1 2 3 4 5 6 7]", "7.4. grown through yet [1 2 3 4 5 6 7]",
		}},
		{"growth of what nobody inoculated", sealed().day(9, "09:00", jo, GrowthSeen{all, 0.2}), nil},
	} {
		if diff := cmp.Diff(tt.want, onceADay(t, tt.l.units(t), Settings{})); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
}

// TestUnitsToldLate holds that who tells of something long past is not asked at once what the
// answer said: the day after is soon enough.
func TestUnitsToldLate(t *testing.T) {
	late := func(l *teller, d int) *teller {
		r := &l.records[len(l.records)-1]
		r.Written = clock("21:30").AddDate(0, 0, d-2)
		return l
	}
	all := ones(1, 2, 3, 4, 5, 6, 7)
	for _, tt := range []struct {
		name string
		l    *teller
		want []string
	}{
		{"inoculated, told on the 13th", late(oysters(), 13), []string{
			"14.3. shake [1 2 3 4 5 6 7]", "14.3. nothing seen [1 2 3 4 5 6 7]", "16.3. grown through yet [1 2 3 4 5 6 7]",
		}},
		{"shaken, told on the 14th", late(oysters().day(7, "09:00", jo, Shaken{all}), 14), []string{"15.3. grown through yet [1 2 3 4 5 6 7]"}},
		{"shaken in time, and again on the 14th", late(oysters().day(7, "09:00", jo, Shaken{all}).day(14, "09:00", jo, Shaken{all}), 14), []string{
			"13.3. grown through yet [1 2 3 4 5 6 7]",
		}},
		{"through, told on the 25th", late(oysters().day(7, "09:00", jo, Shaken{all}).day(13, "09:00", jo, GrownThrough{all}), 25), []string{
			"26.3. spawn kept [1 2 3 4 5 6 7]",
		}},
	} {
		if diff := cmp.Diff(tt.want, onceADay(t, tt.l.units(t), Settings{})); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
}

func TestPinkOysterIsNotChilled(t *testing.T) {
	u := sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3, 4, 5, 6, 7), Species: "pink oyster"}).day(12, "09:00", jo, GrownThrough{ones(1)}).
		day(12, "10:00", jo, UnitsMoved{ones(1), "fridge"}).units(t)
	for _, p := range u.Wants(Settings{}, nil) {
		if p.Kind == SpawnKept && (!p.Growth.Species.Has(NeverChill) || p.Due.Sub(clock("09:00")) != (10+30)*24*time.Hour) {
			t.Errorf("%+v", p)
		}
	}
	for place, want := range map[string]bool{"fridge": true, "Jo's Fridge": true, "cold room": true, "shelf 2": false, "": false, "freezing attic": false} {
		if Chilled(place) != want {
			t.Errorf("%q chilled: %v", place, !want)
		}
	}
}

func TestRestWanted(t *testing.T) {
	three := pot(RestIs{Days: 3})
	for _, tt := range []struct {
		name string
		u    Units
		s    Settings
		want string
	}{
		{"none wanted", sealed().units(t), pot(), ""},
		{"three days from cool", sealed().units(t), three, "5.3. rest over [1 2 3 4 5 6 7]"},
		{"but the blank and what has a culture", sealed().say("21:00", ana, Inoculated{Units: ones(1)}).say("21:00", ana, BlankSet{ones(7)}).units(t), three, "5.3. rest over [2 3 4 5 6]"},
		{"given up again", sealed().units(t), pot(RestIs{Days: 3}, RestIs{}), ""},
		{"hot", begun().say("10:00", ana, AtPressure{}).units(t), three, ""},
		{"arrived", arrived(t, Arrived{Run: 13, Order: order(Item{Count: 2, Container: jar(1)})}), three, ""},
	} {
		got := ""
		for _, line := range onceADay(t, tt.u, tt.s) {
			if strings.Contains(line, "rest") {
				got += line
			}
		}
		if got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
	for days, ok := range map[int]bool{0: true, 2: true, 14: true, 15: false, -1: false} {
		if err := three.Check(RestIs{Days: days}); (err == nil) != ok {
			t.Errorf("%d days: %v", days, err)
		}
	}
}

// Their own record moves what is asked, and a key stays as single units go.
func TestUnitsWantByRecord(t *testing.T) {
	u := oysters().units(t)
	slow := grown(3, "oyster", jar(1), LiquidCulture, 21)
	before, after := u.Wants(Settings{}, nil), u.Wants(Settings{}, []Grown{slow})
	if len(before) != 3 || len(after) != 3 {
		t.Fatalf("%v\n%v", before, after)
	}
	for i := range before {
		if before[i].Key != after[i].Key {
			t.Errorf("%s became %s", before[i].Key, after[i].Key)
		}
	}
	if !after[2].Due.After(before[2].Due.AddDate(0, 0, 4)) || after[2].Growth.Runs() != 1 {
		t.Errorf("through %v, by the record %v", before[2].Due, after[2].Due)
	}
	less := oysters().day(9, "09:00", jo, SignSeen{ones(1), GreenMould}).units(t).Wants(Settings{}, nil)
	if d, ok := DueAs(before[0].Key, less); !ok || len(d.Units) != 6 {
		t.Errorf("%s is not among %+v", before[0].Key, less)
	}
	if _, ok := DueAs("run/12/nothing/1", less); ok {
		t.Error("a key that nothing wants")
	}
}

// Species of one load are asked after apart, and jars and bags too.
func TestUnitsWantByKind(t *testing.T) {
	cold := unit.Celsius(17)
	l := begun(Item{Count: 2, Container: jar(1)}, Item{Count: 2, Container: bag(5)}).
		say("09:10", ana, HeatOn{}).say("12:15", ana, AtZero{}).say("20:00", ana, TempRead{Temp: 24, Where: Middle}).
		say("21:00", ana, Inoculated{Units: ones(1, 3), Species: "oyster"}).say("21:30", ana, Inoculated{Units: ones(2, 4), Species: "shiitake"})
	want := []string{
		"7.3. shake [1]", "12.3. nothing seen [1]", "16.3. grown through yet [1]",
		"7.3. shake [3]", "12.3. nothing seen [3]", "22.3. grown through yet [3]",
		"10.3. shake [2]", "12.3. nothing seen [2]", "29.3. grown through yet [2]",
		"10.3. shake [4]", "12.3. nothing seen [4]", "7.4. grown through yet [4]",
	}
	if diff := cmp.Diff(want, onceADay(t, l.units(t), Settings{})); diff != "" {
		t.Error(diff)
	}
	if got := onceADay(t, l.units(t), Settings{Room: &cold}); got[0] != "8.3. shake [1]" {
		t.Errorf("in the cold: %v", got)
	}
}
