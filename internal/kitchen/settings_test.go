package kitchen

import (
	"errors"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
)

func TestCookersAreMerged(t *testing.T) {
	tests := []struct {
		name    string
		changes []Change
		want    []CookerIs
	}{
		{
			"what is said later is laid over what is known",
			[]Change{bigPot(), CookerIs{Name: "Big Pot", MaxGauge: unit.PSI(15)}},
			[]CookerIs{{Name: "big pot", Takes: bigPot().Takes, MaxGauge: unit.PSI(15)}},
		},
		{
			"what it takes of another container is added",
			[]Change{CookerIs{Takes: []Capacity{{7, jar(1)}}}, CookerIs{Takes: []Capacity{{3, bag(5)}}}},
			[]CookerIs{{Takes: []Capacity{{7, jar(1)}, {3, bag(5)}}}},
		},
		{
			"a new count of the same container replaces the old one",
			[]Change{bigPot(), CookerIs{Takes: []Capacity{{6, bigPot().Takes[0].Container}}}},
			[]CookerIs{{Name: "big pot", Takes: []Capacity{bigPot().Takes[1], {6, bigPot().Takes[0].Container}}}},
		},
		{
			"the first name names the cooker that had none",
			[]Change{CookerIs{MaxGauge: unit.PSI(12)}, CookerIs{Name: "pot", Gauge: Dial}},
			[]CookerIs{{Name: "pot", MaxGauge: unit.PSI(12), Gauge: Dial}},
		},
		{
			"without a name the only cooker is meant",
			[]Change{bigPot(), CookerIs{Gauge: Weight}},
			[]CookerIs{{Name: "big pot", Takes: bigPot().Takes, Gauge: Weight}},
		},
		{
			"another name is another cooker",
			[]Change{CookerIs{Name: "a"}, CookerIs{Name: "b"}},
			[]CookerIs{{Name: "a"}, {Name: "b"}},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, Settings{}.With(tt.changes...).Cookers); diff != "" {
				t.Errorf("cookers (-want +got):\n%s", diff)
			}
		})
	}
}

// What is said of one scope again takes the place of what was said, and a wider
// hold that of narrower ones.
func TestLaterSettingsReplace(t *testing.T) {
	s := Settings{}.With(
		RatioIs{Route: Agar, Ratio: 0.5}, RatioIs{Route: Agar, Ratio: 0.44},
		JarFill{Container: jar(1), Wetted: 480}, JarFill{Container: jar(1), Wetted: 500},
		HoldIs{Container: bag(5), Hold: 150 * time.Minute}, HoldIs{Container: jar(1), Hold: 95 * time.Minute},
		HoldIs{Container: Container{Vessel: Bag}, Hold: 200 * time.Minute},
		YieldIs{Grain: grain.Rye, Dry: 5000, Drained: 9400}, YieldIs{Dry: 5000, Drained: 9000},
	)
	want := Settings{
		Ratios: []RatioIs{{Route: Agar, Ratio: 0.44}},
		Fills:  []JarFill{{Container: jar(1), Wetted: 500}},
		Holds: []HoldIs{
			{Container: jar(1), Hold: 95 * time.Minute},
			{Container: Container{Vessel: Bag}, Hold: 200 * time.Minute},
		},
		Yields: []YieldIs{{Dry: 5000, Drained: 9000}},
	}
	if diff := cmp.Diff(want, s, cmpopts.EquateEmpty()); diff != "" {
		t.Errorf("settings (-want +got):\n%s", diff)
	}
}

// Where there are several cookers, what is said of none of them is asked back.
func TestWhichCooker(t *testing.T) {
	two := Settings{}.With(CookerIs{Name: "big pot"}, CookerIs{Name: "small pot"})
	for _, c := range []Change{CookerIs{MaxGauge: unit.PSI(10)}, GaugeReads{Low: 3}} {
		var which WhichCooker
		if err := two.Check(c); !errors.As(err, &which) || len(which.Known) != 2 {
			t.Errorf("Check(%+v) of two cookers = %v, want which of the two", c, err)
		}
		if err := (Settings{}).With(CookerIs{Name: "big pot"}).Check(c); err != nil {
			t.Errorf("Check(%+v) of one cooker = %v", c, err)
		}
	}
	if got := two.With(CookerIs{MaxGauge: unit.PSI(10)}).Cookers; len(got) != 2 {
		t.Errorf("an unnamed cooker came up among named ones: %+v", got)
	}
}

// Settings hold from when they were said, not from when they arrived.
func TestSettingsAt(t *testing.T) {
	at := func(h, m int) time.Time { return time.Date(2026, 3, 2, h, m, 0, 0, time.UTC) }
	records := []Record{
		{No: 1, At: at(9, 0), Entry: RoomTemperature{18}},
		{No: 2, At: at(10, 0), Entry: RoomTemperature{20}},
		{No: 3, At: at(10, 0), Entry: CookerIs{Takes: []Capacity{{7, jar(1)}}}},
		{No: 4, At: at(9, 30), Entry: RoomTemperature{25}}, // came at eleven, said at half past nine
		{No: 5, At: at(10, 0), Entry: RoomTemperature{21}},
		{No: 6, At: at(10, 30), Entry: CookerIs{Takes: []Capacity{{6, jar(1)}}}},
	}
	now := FoldSettings(records)
	if got := now.RoomTemp(); got != 21 {
		t.Errorf("room now = %v, want 21, which was said last", got)
	}
	if !now.RoomAt.Equal(at(10, 0)) {
		t.Errorf("the room was told at %v, want 10:00", now.RoomAt)
	}
	settings := SettingsAt(records)
	for _, tt := range []struct {
		at    time.Time
		room  unit.Celsius
		takes int
	}{
		{at(8, 59), 20, 0},
		{at(9, 0), 18, 0},
		{at(9, 30), 25, 0},
		{at(9, 59), 25, 0},
		{at(10, 0), 21, 7},
		{at(10, 30), 21, 6},
		{at(23, 0), 21, 6},
		{at(10, 1), 21, 7},
	} {
		s := settings(tt.at)
		takes := 0
		if len(s.Cookers) > 0 {
			takes = s.Cookers[0].Takes[0].Count
		}
		if s.RoomTemp() != tt.room || takes != tt.takes {
			t.Errorf("at %v: room %v, takes %d; want %v, %d", tt.at.Format("15:04"), s.RoomTemp(), takes, tt.room, tt.takes)
		}
	}
}

// Of the collective's own ratios the closest fits, of equally close ones the
// newest.
func TestOwnRatio(t *testing.T) {
	s := Settings{}.With(
		RatioIs{Ratio: 0.5},
		RatioIs{Route: Agar, Ratio: 0.44},
		RatioIs{Route: Agar, Vessel: Jar, Ratio: 0.42},
		RatioIs{Grain: grain.Oats, Ratio: 0.6},
	)
	tests := []struct {
		route  Route
		grain  grain.Kind
		vessel Vessel
		want   unit.Ratio
	}{
		{LiquidCulture, grain.Rye, Bag, 0.5},
		{Agar, grain.Rye, Bag, 0.44},
		{Agar, grain.Rye, Jar, 0.42},
		{Agar, grain.Oats, Bag, 0.6}, // as close as agar, said later
	}
	for _, tt := range tests {
		if got, origin := s.RatioFor(tt.route, tt.grain, tt.vessel); got != tt.want || origin != Own {
			t.Errorf("RatioFor(%v, %v, %v) = %v (%d), want %v", tt.route, tt.grain, tt.vessel, got, origin, tt.want)
		}
	}
}

func TestChecks(t *testing.T) {
	tests := []struct {
		name   string
		change Change
		want   Quantity
	}{
		{"a kitchen at 12,000 m", Elevation{12000}, HeightOfKitchen},
		{"a room at 70", RoomTemperature{70}, RoomWarmth},
		{"a hold of no time", HoldIs{jar(1), 0}, HoldTime},
		{"a quart that holds 5 kg", JarFill{jar(1), 5000}, JarWeight},
		{"grain that loses weight in water", YieldIs{grain.Rye, 5000, 4000}, SoakedYield},
		{"twice as much water as grain and more", RatioIs{Ratio: 3}, WaterRatio},
		{"gypsum 40 %", GypsumIs{0.4}, GypsumShare},
		{"grain at 45 % as bought", StorageMoisture{grain.Rye, 0.45}, Moisture},
		{"steps of 200 g", StepIs{200}, ScaleStepSize},
		{"cooking above the rating", PressureIs{unit.PSI(18)}, GaugePressure},
		{"rated 100 psi", CookerIs{MaxGauge: unit.PSI(100)}, GaugePressure},
		{"takes 5,000 jars", CookerIs{Takes: []Capacity{{5000, jar(1)}}}, CookerCapacity},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var out OutOfRange
			if err := (Settings{}).Check(tt.change); !errors.As(err, &out) || out.What != tt.want {
				t.Errorf("Check = %v, want quantity %d out of range", err, tt.want)
			}
		})
	}
	rated := Settings{}.With(CookerIs{MaxGauge: unit.PSI(20)})
	if err := rated.Check(PressureIs{unit.PSI(18)}); err != nil {
		t.Errorf("18 psi with a cooker rated 20: %v", err)
	}
	if err := (Settings{}).Check(HoldIs{jar(1), 10 * time.Minute}); err != nil {
		t.Errorf("a short hold is allowed, with a caution: %v", err)
	}
}

func TestFix(t *testing.T) {
	three := order(Item{Count: 3, Container: bag(5), Route: Agar})
	mixed := order(Item{Count: 4, Container: jar(1)}, Item{Count: 2, Container: bag(3)})
	filled := order(Item{Count: 4, Container: jar(1), Mass: 500})
	tests := []struct {
		name string
		from Order
		fix  Item
		was  int
		want Order
		how  Fixed
	}{
		{"no, 4 bags", three, Item{Count: 4, Container: Container{Vessel: Bag}}, 0, order(Item{Count: 4, Container: bag(5), Route: Agar}), Mended},
		{"make it rye", three, Item{Grain: grain.Rye}, 0, order(Item{Count: 3, Container: bag(5), Route: Agar, Grain: grain.Rye}), Mended},
		{"no, lc", three, Item{Route: LiquidCulture}, 0, order(Item{Count: 3, Container: bag(5), Route: LiquidCulture}), Mended},
		{"no, 6 lb", three, Item{Container: bag(6)}, 0, order(Item{Count: 3, Container: bag(6), Route: Agar}), Mended},
		{"make it oats, of two items", mixed, Item{Grain: grain.Oats}, 0, order(Item{Count: 4, Container: jar(1), Grain: grain.Oats}, Item{Count: 2, Container: bag(3), Grain: grain.Oats}), Mended},
		{"3 bags, not the jars", mixed, Item{Count: 3, Container: Container{Vessel: Bag}}, 0, order(Item{Count: 4, Container: jar(1)}, Item{Count: 3, Container: bag(3)}), Mended},
		{"5 not 2", mixed, Item{Count: 5}, 2, order(Item{Count: 4, Container: jar(1)}, Item{Count: 5, Container: bag(3)}), Mended},
		{"5 of two items: which?", mixed, Item{Count: 5}, 0, mixed, Unclear},
		{"no, 3 quarts, of jars that hold 500 g", filled, Item{Count: 3, Container: jar(1)}, 0, order(Item{Count: 3, Container: jar(1), Mass: 500}), Mended},
		{"no, 4 pints, of jars that hold 500 g", filled, Item{Count: 4, Container: jar(0.5)}, 0, order(Item{Count: 4, Container: jar(0.5)}), Mended},
		{"no, 2 kg dry, of bags", three, Item{Count: 1, Mass: 2000, Basis: DryBasis}, 0, order(Item{Count: 3, Container: Container{Vessel: Bag, Weight: 2000}, Basis: DryBasis, Route: Agar}), Mended},
		{"no, 300 g dry, of jars", filled, Item{Count: 1, Mass: 300, Basis: DryBasis}, 0, order(Item{Count: 4, Container: jar(1), Mass: 300, Basis: DryBasis}), Mended},
		{"no, 2 kg dry, of two items", mixed, Item{Count: 1, Mass: 2000, Basis: DryBasis}, 0, mixed, Unclear},
		{"no, without gypsum", three, Item{NoGypsum: true}, 0, order(Item{Count: 3, Container: bag(5), Route: Agar, NoGypsum: true}), Mended},
		{"no, 0%", three, Item{Parched: true}, 0, order(Item{Count: 3, Container: bag(5), Route: Agar, Parched: true}), Mended},
		{"as it is already", three, Item{Count: 3}, 0, three, Unchanged},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, how := tt.from.Fix(tt.fix, tt.was)
			if how != tt.how {
				t.Errorf("Fix = %v, want %v", how, tt.how)
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("order (-want +got):\n%s", diff)
			}
		})
	}
}

// A weight alone mends the one there is, and of two items asks which.
func TestFixMass(t *testing.T) {
	if got, how := order(Item{Count: 3, Container: bag(5)}).FixMass(2000); how != Mended || got.Items[0] != (Item{Count: 3, Container: Container{Vessel: Bag, Weight: 2000}}) {
		t.Errorf("2 kg for bags of 5 lb = %+v (%v)", got, how)
	}
	if _, how := order(Item{Count: 3, Container: bag(5)}, Item{Count: 2, Container: jar(1)}).FixMass(2000); how != Unclear {
		t.Errorf("2 kg for two items: %v, want unclear", how)
	}
	if _, how := order(Item{Count: 1, Mass: 2000}).FixMass(2000); how != Unchanged {
		t.Errorf("2 kg for 2 kg: %v, want unchanged", how)
	}
}

// A start that is waited for wants one ping, in the room where it was wanted.
func TestStartWants(t *testing.T) {
	at := time.Date(2026, 3, 2, 15, 0, 0, 0, time.UTC)
	s := Start{StartWanted: StartWanted{For: 1, Start: at, Room: 4}, No: 3}
	want := []Ping{{Key: "start/3/now", Due: at, Kind: StartNow, Loudness: DuePing, To: 1, Room: 4, About: "start/3"}}
	if diff := cmp.Diff(want, s.Wants()); diff != "" {
		t.Errorf("pings (-want +got):\n%s", diff)
	}
}

// A unit printed as a reference names the same units: no number is lost or made
// up by the ranges.
func TestRefPrints(t *testing.T) {
	tests := map[string]Ref{
		"#12":           {Run: 12},
		"#12.3":         {Run: 12, Units: []UnitNo{3}},
		"#12.1-4":       {Run: 12, Units: []UnitNo{1, 2, 3, 4}},
		"#12.1,2":       {Run: 12, Units: []UnitNo{1, 2}},
		"#12.1,3,5-7,9": {Run: 12, Units: []UnitNo{1, 3, 5, 6, 7, 9}},
	}
	for want, ref := range tests {
		if got := ref.String(); got != want {
			t.Errorf("%+v prints %q, want %q", ref, got, want)
		}
	}
}

// Whatever a container's size, a stated larger one never makes it need more of
// the pot, and what fits by itself fits with nothing else in.
func TestCapacityIsCautious(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := bigPot()
		c := bag(rapid.Float64Range(0.5, 5).Draw(t, "lb"))
		takes, ok := k.takes(c)
		if !ok || takes.Count > 3 {
			t.Errorf("takes(%v) = %v, %v; want at most the three of 5 lb", c, takes, ok)
		}
	})
}
