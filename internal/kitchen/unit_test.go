package kitchen

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
)

// sealed is run 12 with seven quarts, at zero at 12:15 and cool at 20:00, unless the
// test tells more.
func sealed() *teller {
	return begun().say("09:10", ana, HeatOn{}).say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).
		say("12:15", ana, AtZero{}).say("20:00", ana, TempRead{Temp: 24, Where: Middle})
}

// day is an hour of a day of the month: "5 10:00".
func (l *teller) day(d int, hhmm string, by MemberNo, e Entry) *teller {
	l.say(hhmm, by, e)
	r := &l.records[len(l.records)-1]
	r.At = r.At.AddDate(0, 0, d-2)
	r.Written = r.At
	return l
}

func (l *teller) units(t testing.TB) Units {
	t.Helper()
	return FoldUnits(l.run(t, pot()), l.records)
}

// states prints how units stand, those alike together: 1-2 growing, 3 blank.
func states(u Units) string {
	var out []string
	for i := 0; i < len(u.All); {
		j := i
		for j+1 < len(u.All) && standing(u.All[j+1]) == standing(u.All[i]) {
			j++
		}
		no := fmt.Sprint(i + 1)
		if j > i {
			no += "-" + fmt.Sprint(j+1)
		}
		out = append(out, no+" "+standing(u.All[i]))
		i = j + 1
	}
	return strings.Join(out, ", ")
}

func standing(u Unit) string {
	s := u.State.String()
	if u.Blank {
		s += " blank"
	}
	if u.Loss.What != 0 && u.Loss.What != u.State {
		s += " after " + u.Loss.What.String()
	}
	return s
}

func ones(n ...UnitNo) []UnitNo { return n }

// What units come to, step by step.
func TestUnitsStates(t *testing.T) {
	all := ones(1, 2, 3, 4, 5, 6, 7)
	for _, tt := range []struct {
		name string
		l    *teller
		want string
	}{
		{"before zero", begun().say("10:00", ana, AtPressure{}), "1-7 in the cook"},
		{"at zero", sealed(), "1-7 cooked"},
		{"lit again", begun().say("09:10", ana, HeatOn{}).say("10:00", ana, AtPressure{}).say("10:10", ana, HeatOff{}).say("11:00", ana, AtZero{}).
			say("11:10", ana, HeatOn{}), "1-7 in the cook"},
		{"called off", begun().say("09:10", ana, HeatOn{}).say("10:00", ana, CalledOff{}), "1-7 gone"},
		{"run gone", sealed().say("21:00", ana, UnitsUsed{Units: ones(1)}).say("22:00", ana, RunGone{}), "1 used, 2-7 gone"},
		{
			"a day of cultures", sealed().say("21:00", ana, Inoculated{Units: ones(1, 2), Culture: "oyster"}).say("21:00", ana, BlankSet{ones(4)}),
			"1-2 inoculated, 3 cooked, 4 cooked blank, 5-7 cooked",
		},
		{
			"growth", sealed().say("21:00", ana, Inoculated{Units: all}).day(8, "09:00", jo, GrowthSeen{ones(1, 2), 0.3}).
				day(12, "09:00", jo, GrownThrough{ones(1)}).day(12, "09:00", jo, GrowthSeen{ones(3), 1}),
			"1 grown through, 2 growing, 3 grown through, 4-7 inoculated",
		},
		{
			"nobody told of the culture", sealed().day(8, "09:00", jo, GrowthSeen{ones(1), 0.3}).day(8, "09:00", jo, SignSeen{ones(2), NothingGrew}),
			"1 growing, 2 dead, 3-7 cooked",
		},
		{"suspect and fine", sealed().say("21:00", ana, Inoculated{Units: ones(1)}).day(8, "09:00", jo, SignSeen{ones(1, 2), LooksWet}).
			day(9, "09:00", jo, SignSeen{ones(1, 2), LooksFine}), "1 inoculated, 2-7 cooked"},
		{"suspect grows and is fine", sealed().say("21:00", ana, Inoculated{Units: ones(1)}).day(8, "09:00", jo, SignSeen{ones(1), YellowDrops}).
			day(9, "09:00", jo, GrowthSeen{ones(1), 0.5}).day(10, "09:00", jo, SignSeen{ones(1), LooksFine}), "1 growing, 2-7 cooked"},
		{
			"bad ends stay apart", sealed().say("21:00", ana, Inoculated{Units: all}).day(8, "09:00", jo, SignSeen{ones(1, 2), GreenMould}).
				day(9, "09:00", jo, UnitsDiscarded{ones(2, 3)}).day(12, "09:00", jo, SignSeen{ones(4, 5), NothingGrew}).day(13, "09:00", jo, UnitsDiscarded{ones(5)}).
				day(14, "09:00", jo, UnitsGiven{Units: ones(6)}),
			"1 contaminated, 2 discarded after contaminated, 3 discarded, 4 dead, 5 discarded after dead, 6 given away, 7 inoculated",
		},
		{"dead, and once more", sealed().say("21:00", ana, Inoculated{Units: ones(1)}).day(12, "09:00", jo, SignSeen{ones(1), NothingGrew}).
			day(13, "09:00", jo, Inoculated{Units: ones(1)}), "1 inoculated, 2-7 cooked"},
		{"partly used up", sealed().day(12, "09:00", jo, GrownThrough{ones(1, 2)}).day(13, "09:00", jo, UnitsUsed{Units: ones(1, 2), Share: 0.5}).
			day(14, "09:00", jo, UnitsUsed{Units: ones(1), Share: 0.5}), "1 used, 2 grown through, 3-7 cooked"},
		{
			"mould in what was given", sealed().day(4, "09:00", jo, UnitsGiven{Units: ones(1), To: "Kim"}).day(9, "09:00", jo, SignSeen{ones(1), PinkFluff}),
			"1 given away after contaminated, 2-7 cooked",
		},
		{"the blank gets a culture", sealed().say("21:00", ana, BlankSet{ones(1)}).day(9, "09:00", jo, Inoculated{Units: ones(1)}), "1 inoculated, 2-7 cooked"},
		{"the blank sours", sealed().say("21:00", ana, BlankSet{ones(1)}).day(9, "09:00", jo, SignSeen{ones(1), SourSmell}), "1 contaminated blank, 2-7 cooked"},
	} {
		u := tt.l.units(t)
		if got := states(u); got != tt.want || len(u.Strays) > 0 {
			t.Errorf("%s: %s, want %s; strays %+v", tt.name, got, tt.want, u.Strays)
		}
	}
}

// What can't be so is refused, with what stands in its way.
func TestUnitsRefuse(t *testing.T) {
	one := UnitRef{Run: 12, Unit: 1}
	inoc := sealed().say("21:00", ana, Inoculated{Units: ones(1, 2), Culture: "oyster"})
	at := inoc.records[len(inoc.records)-1].At
	used := func() *teller {
		return sealed().day(9, "09:00", jo, GrownThrough{ones(1)}).day(10, "09:00", jo, UnitsUsed{Units: ones(1)})
	}
	bad := func() *teller { return sealed().day(9, "09:00", jo, SignSeen{ones(1), GreenMould}) }
	on := func(d int) time.Time { return clock("09:00").AddDate(0, 0, d-2) }
	for _, tt := range []struct {
		name string
		l    *teller
		at   time.Time
		e    UnitEntry
		want Refusal
	}{
		{"a unit too many", sealed(), on(4), Shaken{ones(9)}, NoSuchUnit{Ref: Ref{Run: 12, Units: ones(9)}, Has: 7}},
		{"no unit", sealed(), on(4), Shaken{ones(0)}, NoSuchUnit{Ref: Ref{Run: 12, Units: ones(0)}, Has: 7}},
		{"hot", begun().say("10:00", ana, AtPressure{}), clock("11:00"), Inoculated{Units: ones(1)}, UnitNotYet{Unit: one, Said: SaidInoculated, State: InCook}},
		{"used", used(), on(11), Inoculated{Units: ones(1)}, UnitPast{Unit: one, Said: SaidInoculated, State: UnitUsed, Since: on(10), By: jo}},
		{"used twice", used(), on(11), UnitsUsed{Units: ones(1)}, UnitAlready{Unit: one, Said: SaidUsed, By: jo, At: on(10), Seen: true}},
		{"contaminated, then done", bad(), on(11), GrownThrough{ones(1)}, UnitPast{Unit: one, Said: SaidGrownThrough, State: UnitContaminated, Since: on(9), By: jo}},
		{"contaminated, then fine", bad(), on(11), SignSeen{ones(1), LooksFine}, UnitPast{Unit: one, Said: SaidFine, State: UnitContaminated, Since: on(9), By: jo}},
		{"contaminated, used", bad(), on(11), UnitsUsed{Units: ones(1)}, UnitPast{Unit: one, Said: SaidUsed, State: UnitContaminated, Since: on(9), By: jo}},
		{"inoculated twice", inoc, on(4), Inoculated{Units: ones(1)}, UnitAlready{Unit: one, Said: SaidInoculated, By: ana, At: at, Seen: true}},
		{"a culture on it, then blank", inoc, on(4), BlankSet{ones(1)}, UnitPast{Unit: one, Said: SaidBlank, State: UnitInoculated, Since: at, By: ana}},
		{
			"growth on the blank", sealed().day(3, "09:00", ana, BlankSet{ones(1)}), on(9),
			GrowthSeen{ones(1), 0.3},
			UnitNotYet{Unit: one, Said: SaidGrowth, State: UnitCooked, Blank: true},
		},
		{"from itself", sealed(), on(4), Inoculated{Units: ones(1), From: one}, OwnAncestor{Unit: one}},
		{
			"from its child", sealed().day(3, "09:00", ana, Inoculated{Units: ones(2), From: one}).day(3, "10:00", ana, Inoculated{Units: ones(3), From: UnitRef{12, 2}}),
			on(4),
			Inoculated{Units: ones(1), From: UnitRef{12, 3}},
			OwnAncestor{Unit: one},
		},
		{"before the run", sealed(), clock("08:00"), Inoculated{Units: ones(1)}, BeforeRun{Run: 12, At: clock("08:00"), Begun: clock("09:00")}},
		{"before the zero", sealed(), clock("12:00"), Inoculated{Units: ones(1)}, UnitNotYet{Unit: one, Said: SaidInoculated, State: InCook}},
		{"more than all", sealed(), on(4), GrowthSeen{ones(1), 1.2}, OutOfRange{What: GrownShare, Got: 1.2, High: 1}},
		{"a bucket of culture", sealed(), on(4), Inoculated{Units: ones(1), Volume: 5}, OutOfRange{What: CultureVolume, Got: 5, High: 1}},
		{
			"used before it was grown, which was told", used(), on(8),
			UnitsUsed{Units: ones(1)},
			UnitContradicts{Unit: one, Said: SaidUsed, At: on(8), Other: SaidGrownThrough, OtherAt: on(9), OtherBy: jo},
		},
	} {
		u := tt.l.units(t)
		next, _, err := u.Apply(Record{No: 99, By: mik, At: tt.at, Written: latest(tt.at, on(11)), Entry: tt.e})
		if diff := cmp.Diff(tt.want, err); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
		if states(next) != states(u) {
			t.Errorf("%s: refused and changed all the same", tt.name)
		}
	}
	_, _, err := sealed().units(t).Apply(Record{At: on(5), Written: on(4), Entry: Shaken{ones(1)}})
	if !errors.Is(err, InFuture{At: on(5), Told: on(4)}) {
		t.Errorf("tomorrow: %v", err)
	}
}

// Of several units some may fail: the rest is taken, and what is written is about
// those alone.
func TestUnitsTakeSome(t *testing.T) {
	u := sealed().say("21:00", ana, Inoculated{Units: ones(1, 2, 3), Culture: "oyster"}).day(9, "09:00", jo, GrownThrough{ones(2)}).
		day(9, "09:00", jo, SignSeen{ones(3), GreenMould}).units(t)
	at := clock("09:00").AddDate(0, 0, 8)
	next, took, err := u.Apply(Record{No: 99, By: jo, At: at, Written: at, Entry: UnitsUsed{Units: ones(1, 2, 3, 9, 2), On: "straw"}})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(ones(1, 2), took.Taken); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(UnitsUsed{Units: ones(1, 2), On: "straw"}, took.Record.Entry); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(ones(1), took.Early); diff != "" {
		t.Errorf("used before they were grown through: %s", diff)
	}
	var not []UnitNo
	for _, n := range took.Not {
		not = append(not, n.Unit)
	}
	if !slices.Equal(not, ones(3, 9)) {
		t.Errorf("not taken: %v", not)
	}
	if got, want := states(next), "1-2 used, 3 contaminated, 4-7 cooked"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

func TestUnitsRemark(t *testing.T) {
	warm := func(hhmm string, d int) bool {
		at := clock(hhmm).AddDate(0, 0, d)
		_, took, err := sealed().units(t).Apply(Record{At: at, Written: at, Entry: Inoculated{Units: ones(1)}})
		if err != nil {
			t.Fatal(err)
		}
		return took.Warm
	}
	if !warm("18:00", 0) || warm("20:30", 0) || warm("18:00", 4) {
		t.Errorf("warm at 18:00, not at 20:30, when the grain was seen cool at 20:00")
	}
	at := clock("09:00").AddDate(0, 0, 9)
	_, took, err := sealed().units(t).Apply(Record{At: at, Written: at, Entry: GrowthSeen{ones(1, 2), 0.2}})
	if err != nil || !slices.Equal(took.Filled, ones(1, 2)) {
		t.Errorf("growth on what nobody inoculated: %v, %v", took.Filled, err)
	}
}

// The culture can be told after the growth that made it plain.
func TestUnitsLateCulture(t *testing.T) {
	u := sealed().day(8, "09:00", jo, GrowthSeen{ones(1), 0.3}).day(9, "09:00", ana, Inoculated{Units: ones(1), Culture: "blues", Route: LiquidCulture}).units(t)
	x, _ := u.Unit(1)
	if x.State != UnitGrowing || x.Culture != "blues" || !x.Inoculated.IsZero() || x.Share != 0.3 {
		t.Errorf("%+v", x)
	}
}

func TestUnitsDetails(t *testing.T) {
	u := sealed().say("20:30", ana, LotSaid{What: GrainLot, Name: "rye lot 3"}).say("20:31", ana, LotSaid{Units: ones(2), What: GrainLot, Name: "rye lot 4"}).
		say("20:32", ana, UnitsTagged{Tags: []string{"soak24", "Soak24"}}).say("20:33", jo, UnitNamed{Unit: 2, Name: "bag A"}).
		say("20:34", jo, UnitsMoved{ones(2), "fridge"}).say("20:35", jo, UnitsStood{ones(2), InnerOnes}).
		say("21:00", ana, Inoculated{Units: ones(2), From: UnitRef{9, 2}, Volume: 0.01}).units(t)
	x, _ := u.Unit(2)
	x.Steps = nil
	at := clock("21:00")
	want := Unit{
		Ref: UnitRef{12, 2}, Container: jar(1), Grain: x.Grain, Name: "bag A", Place: "fridge", Spot: InnerOnes, Tags: []string{"soak24"},
		Lots: []UnitLot{{GrainLot, "rye lot 4"}}, State: UnitInoculated, Since: at, By: ana, Cultured: true, Inoculated: at, InoculatedBy: ana,
		From: UnitRef{9, 2}, Route: GrainToGrain, Volume: 0.01, Left: 1,
	}
	if diff := cmp.Diff(want, x); diff != "" {
		t.Error(diff)
	}
	if y, _ := u.Unit(1); !y.Tagged("SOAK24") || y.Lots[0].Name != "rye lot 3" || y.Place != "" {
		t.Errorf("%+v", y)
	}
}

func TestArrived(t *testing.T) {
	l := &teller{}
	since := clock("09:00").AddDate(0, -1, 0)
	order := Order{Items: []Item{{Count: 4, Container: jar(1), Grain: grain.Rye}, {Count: 1, Mass: unit.Kilograms(2)}, {Count: 2, Container: bag(5)}}}
	l.say("10:00", ana, Arrived{Run: 13, Order: order, Since: since, Culture: "oyster", From: "Kim"})
	l.say("11:00", jo, UnitsUsed{Units: ones(5), On: "straw"})
	u, err := FoldArrived(l.records)
	if err != nil || !u.Arrived || states(u) != "1-4 inoculated, 5 used, 6 inoculated" {
		t.Fatalf("%v %v", err, states(u))
	}
	x, _ := u.Unit(6)
	if x.Culture != "oyster" || x.Container.Vessel != Bag || !x.Inoculated.Equal(since) || x.Steps[0].Kind != SaidArrived {
		t.Errorf("%+v", x)
	}
	if _, err := FoldArrived(l.records[1:]); !errors.As(err, &NoSuchRun{}) {
		t.Errorf("nothing arrived: %v", err)
	}
	for _, tt := range []struct {
		e    Arrived
		want UnitState
	}{
		{Arrived{Run: 13, Order: order}, UnitCooked},
		{Arrived{Run: 13, Order: order, State: UnitGrown}, UnitGrown},
		{Arrived{Run: 13, Order: order, Culture: "oyster", State: UnitUsed}, UnitInoculated},
	} {
		u, err := FoldArrived((&teller{}).say("10:00", ana, tt.e).records)
		if err != nil || u.All[0].State != tt.want {
			t.Errorf("%+v: %v, want %v", tt.e, u.All[0].State, tt.want)
		}
	}
	at := clock("10:00")
	if err := CheckArrived(Record{At: at, Written: at, Entry: Arrived{Run: 13, Order: order, Since: at.AddDate(0, 0, 1)}}); !errors.Is(err, InFuture{At: at.AddDate(0, 0, 1), Told: at}) {
		t.Errorf("tomorrow: %v", err)
	}
	if err := CheckArrived(Record{At: at, Written: at, Entry: Arrived{Run: 13}}); err == nil {
		t.Error("nothing arrived")
	}
	if err := CheckArrived(l.records[0]); err != nil {
		t.Error(err)
	}
}

// What is said of units changes nothing of their run, though both stand under one
// subject.
func TestRunsPassOverUnits(t *testing.T) {
	l := sealed()
	want := l.run(t, pot())
	l.day(9, "09:00", jo, Inoculated{Units: ones(1)}).day(10, "09:00", jo, SignSeen{ones(1), GreenMould})
	if diff := cmp.Diff(want, l.run(t, pot()), sameRun()); diff != "" {
		t.Error(diff)
	}
}
