package kitchen

import (
	"errors"
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
)

func bag(lb float64) Container { return Container{Vessel: Bag, Weight: unit.Pounds(lb)} }

func jar(quarts float64) Container { return Container{Vessel: Jar, Volume: unit.USQuarts(quarts)} }

func order(items ...Item) Order { return Order{Items: items} }

func mustWork(t testing.TB, s Settings, o Order) Plan {
	t.Helper()
	p, err := s.Work(o)
	if err != nil {
		t.Fatalf("Work(%+v): %v", o, err)
	}
	return p
}

// The amounts are those of the design's formulas D = M/(1+r), W = r·D, rounded
// to the scale step. The ratios are common practice, no source; the bag of 5 lb
// is 2267.96 g (NIST Handbook 44). The reference's hydration table has the same
// two bags before rounding: 1553.40 + 714.56 at 0.46, 1585.99 + 681.97 at 0.43.
func TestAmounts(t *testing.T) {
	soaks := Settings{}.With(MethodIs{Vessel: Jar, Method: Soaked})
	tests := []struct {
		name               string
		kitchen            Settings
		item               Item
		dry, water, wetted unit.Grams
		moisture           float64
	}{
		{"5 lb bag for agar", Settings{}, Item{Count: 3, Container: bag(5), Route: Agar}, 1555, 715, 2270, 0.397},
		{"5 lb bag for grain to grain", Settings{}, Item{Count: 1, Container: bag(5), Route: GrainToGrain}, 1585, 680, 2265, 0.385},
		{"5 lb bag, liquid culture", Settings{}, Item{Count: 1, Container: bag(5), Route: LiquidCulture}, 1620, 650, 2270, 0.371},
		{"no route is 0.43", Settings{}, Item{Count: 1, Container: bag(5)}, 1585, 680, 2265, 0.385},
		{"quart at 30 % headspace and 0.68 kg/L", Settings{}, Item{Count: 1, Container: jar(1), Route: LiquidCulture}, 320, 130, 450, 0.371},
		{"quart as they weighed it", Settings{}.With(JarFill{jar(1), 520}), Item{Count: 1, Container: jar(1), Route: LiquidCulture}, 370, 150, 520, 0.371},
		{"2.5 kg wetted in a bag of no size", Settings{}, Item{Count: 4, Container: Container{Vessel: Bag}, Mass: 2500, Basis: Wetted, Route: GrainToGrain}, 1750, 750, 2500, 0.385},
		{"steps of 10 g", Settings{}.With(StepIs{10}), Item{Count: 1, Container: bag(5), Route: Agar}, 1550, 710, 2260, 0.397},
		{"own ratio for agar", Settings{}.With(RatioIs{Route: Agar, Ratio: 0.44}), Item{Count: 1, Container: bag(5), Route: Agar}, 1575, 695, 2270, 0.389},
		{"moisture wanted: (m − m0)/(1 − m) = 0.60", Settings{}, Item{Count: 1, Mass: 2000, Basis: DryBasis, Moisture: 0.45}, 2000, 1200, 3200, 0.45},
		{"5 lb meant dry", Settings{}.With(BagMeans{DryBasis}), Item{Count: 1, Container: bag(5), Route: Agar}, 2270, 1045, 3315, 0.397},
		{"soaked quart: D = M/k, rye k 1.925", soaks, Item{Count: 1, Container: jar(1)}, 235, 215, 450, 0.543},
		{"soaked, k as weighed (9.4 from 5 kg)", soaks.With(YieldIs{Grain: grain.Rye, Dry: 5000, Drained: 9400}), Item{Count: 1, Container: jar(1)}, 240, 210, 450, 0.532},
		{"a moisture said outdoes the soaking", soaks, Item{Count: 1, Container: jar(1), Moisture: 0.45}, 280, 170, 450, 0.45},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := mustWork(t, tt.kitchen, order(tt.item)).Lines[0]
			if l.Each.Dry != tt.dry || l.Each.Water != tt.water || l.Each.Wetted != tt.wetted {
				t.Errorf("each = %v + %v = %v, want %v + %v = %v", l.Each.Dry, l.Each.Water, l.Each.Wetted, tt.dry, tt.water, tt.wetted)
			}
			if math.Abs(float64(l.Moisture)-tt.moisture) > 0.0006 {
				t.Errorf("moisture = %.4f, want %.3f", l.Moisture, tt.moisture)
			}
		})
	}
}

// What is weighed out adds up: dry and water make the wetted weight, which is
// the wanted one to a step, and all is as many times each.
func TestAmountsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Settings{}.With(StepIs{unit.Grams(rapid.SampledFrom([]float64{1, 2, 5, 10, 25}).Draw(t, "step"))})
		it := Item{
			Count:     rapid.IntRange(1, 40).Draw(t, "count"),
			Container: bag(rapid.Float64Range(1, 10).Draw(t, "lb")),
			Route:     rapid.SampledFrom(append(Routes(), 0)).Draw(t, "route"),
			Grain:     rapid.SampledFrom(append(grain.All(), 0)).Draw(t, "grain"),
		}
		p, err := s.Work(order(it))
		if err != nil {
			t.Fatal(err)
		}
		l := p.Lines[0]
		if l.Each.Dry+l.Each.Water != l.Each.Wetted {
			t.Errorf("%v + %v is not %v", l.Each.Dry, l.Each.Water, l.Each.Wetted)
		}
		if off := math.Abs(float64(l.Each.Wetted - it.Container.Weight)); off > float64(s.Step)+1e-9 {
			t.Errorf("wetted %v is %v off the wanted %v", l.Each.Wetted, off, it.Container.Weight)
		}
		if l.All != l.Each.Times(it.Count) || p.All != l.All {
			t.Errorf("all %v is not %d times each %v", l.All, it.Count, l.Each)
		}
	})
}

// The 15 psi columns for height are the lethality table of the reference (ISO
// 2533, IAPWS-IF97, z = 10 K: 111.2 min at 500 m, 136.8 at 1000, 174.2 at 1600
// for 90 at sea level), rounded up to whole minutes. Rows by container are
// common practice, no source.
func TestHold(t *testing.T) {
	at := func(m unit.Metres, more ...Change) Settings { return Settings{}.With(append(more, Elevation{m})...) }
	tests := []struct {
		name    string
		kitchen Settings
		order   Order
		want    time.Duration
		tooLong bool
	}{
		{"quart", Settings{}, order(Item{Count: 1, Container: jar(1)}), 90, false},
		{"litre", Settings{}, order(Item{Count: 1, Container: Container{Vessel: Jar, Volume: 1}}), 90, false},
		{"half gallon", Settings{}, order(Item{Count: 1, Container: jar(2)}), 120, false},
		{"gallon", Settings{}, order(Item{Count: 1, Container: jar(4)}), 150, false},
		{"5 lb", Settings{}, order(Item{Count: 1, Container: bag(5)}), 90, false},
		{"2.5 kg", Settings{}, order(Item{Count: 1, Container: Container{Vessel: Bag, Weight: 2500}}), 90, false},
		{"6 lb", Settings{}, order(Item{Count: 1, Container: bag(6)}), 120, false},
		{"10 lb", Settings{}, order(Item{Count: 1, Container: bag(10)}), 150, false},
		{"the longest rules", Settings{}, order(Item{Count: 1, Container: jar(1)}, Item{Count: 1, Container: bag(10)}), 150, false},
		{"500 m", at(500), order(Item{Count: 1, Container: jar(1)}), 112, false},
		{"1000 m", at(1000), order(Item{Count: 1, Container: jar(1)}), 137, false},
		{"1600 m", at(1600), order(Item{Count: 1, Container: jar(1)}), 175, false},
		{"past four hours: not with this cooker", at(1600), order(Item{Count: 1, Container: jar(4)}), 291, true},
		{"10 psi at sea level: 339", Settings{}.With(CookerIs{MaxGauge: unit.PSI(10)}), order(Item{Count: 1, Container: jar(1)}), 339, true},
		{"own hold is not scaled", at(1600, HoldIs{bag(5), 150 * time.Minute}), order(Item{Count: 1, Container: bag(5)}), 150, false},
		{"own hold of all bags", Settings{}.With(HoldIs{Container{Vessel: Bag}, 180 * time.Minute}), order(Item{Count: 1, Container: bag(3)}), 180, false},
		{"said with the order", at(1600), Order{Items: []Item{{Count: 1, Container: jar(1)}}, Hold: 100 * time.Minute}, 100, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			h := mustWork(t, tt.kitchen, tt.order).Hold
			if h.Time.Round(time.Minute) != tt.want*time.Minute || h.TooLong != tt.tooLong {
				t.Errorf("hold = %v (too long: %v), want %d min (%v)", h.Time, h.TooLong, tt.want, tt.tooLong)
			}
		})
	}
}

func TestHigherPressure(t *testing.T) {
	// 17.58 psi restores the sea-level temperature at 1600 m (computed from ISO
	// 2533 and IAPWS-IF97; the canning guides' bands raise pressure likewise).
	unrated := mustWork(t, Settings{}.With(Elevation{1600}), order(Item{Count: 1, Container: jar(1)})).Hold
	if math.Abs(unrated.Higher.PSI()-17.58) > 0.01 || unrated.WithinRating {
		t.Errorf("unrated: higher = %.2f psi, within rating %v; want 17.58, false", unrated.Higher.PSI(), unrated.WithinRating)
	}
	rated := Settings{}.With(Elevation{1600}, CookerIs{MaxGauge: unit.PSI(20)})
	if h := mustWork(t, rated, order(Item{Count: 1, Container: jar(1)})).Hold; !h.WithinRating || h.At != unit.PSI(15) {
		t.Errorf("rated 20 psi: at %.1f psi, within rating %v; want 15, true", h.At.PSI(), h.WithinRating)
	}
	chosen := rated.With(PressureIs{unit.PSI(17.6)})
	if h := mustWork(t, chosen, order(Item{Count: 1, Container: jar(1)})).Hold; h.Time != 90*time.Minute {
		t.Errorf("cooking at 17.6 psi: hold = %v, want 1h30m", h.Time)
	}
}

func bigPot() CookerIs {
	return CookerIs{Name: "big pot", Takes: []Capacity{{7, jar(1)}, {3, bag(5)}}}
}

// Seven quarts or three bags of 5 lb: two bags leave room for two quarts.
func TestLoads(t *testing.T) {
	s := Settings{}.With(bigPot())
	tests := []struct {
		name  string
		order Order
		want  [][]Capacity
	}{
		{"three bags are one load", order(Item{Count: 3, Container: bag(5)}), [][]Capacity{{{3, bag(5)}}}},
		{"two bags and two quarts are one", order(Item{Count: 2, Container: jar(1)}, Item{Count: 2, Container: bag(5)}), [][]Capacity{{{2, bag(5)}, {2, jar(1)}}}},
		{"a third quart is one too many", order(Item{Count: 2, Container: bag(5)}, Item{Count: 3, Container: jar(1)}), [][]Capacity{{{2, bag(5)}, {2, jar(1)}}, {{1, jar(1)}}}},
		{"pints count as quarts", order(Item{Count: 8, Container: jar(0.5)}), [][]Capacity{{{7, jar(0.5)}}, {{1, jar(0.5)}}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got [][]Capacity
			for _, l := range mustWork(t, s, tt.order).Loads.Each {
				got = append(got, l.Parts)
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("loads (-want +got):\n%s", diff)
			}
		})
	}
}

func TestPickCooker(t *testing.T) {
	s := Settings{}.With(CookerIs{Name: "small pot", Takes: []Capacity{{4, jar(1)}}}, bigPot())
	if p := mustWork(t, s, order(Item{Count: 6, Container: jar(1)})); p.Cooker.Name != "big pot" {
		t.Errorf("6 quarts go into %q, want the big pot: one load", p.Cooker.Name)
	}
	if p := mustWork(t, s, order(Item{Count: 4, Container: jar(1)})); p.Cooker.Name != "small pot" {
		t.Errorf("4 quarts go into %q, want the first stated of equals", p.Cooker.Name)
	}
	named := order(Item{Count: 6, Container: jar(1)})
	named.Cooker = "Small Pot"
	if p := mustWork(t, s, named); p.Cooker.Name != "small pot" || len(p.Loads.Each) != 2 {
		t.Errorf("named cooker = %q in %d loads, want small pot in 2", p.Cooker.Name, len(p.Loads.Each))
	}
}

// Minimum water: 3 L to 90 min, 4 to 150, 5 beyond (common practice, no source).
func TestWater(t *testing.T) {
	for _, tt := range []struct {
		hold time.Duration
		want unit.Litres
	}{{90, 3}, {150, 4}, {240, 5}} {
		o := order(Item{Count: 1, Container: bag(5)})
		o.Hold = tt.hold * time.Minute
		if got := mustWork(t, Settings{}, o).Loads.Each[0].Water; got != tt.want {
			t.Errorf("water for %d min = %v L, want %v", tt.hold, got, tt.want)
		}
	}
	s := Settings{}.With(CookerIs{MaxWater: 2.5})
	if !hasNote[WaterOverNote](mustWork(t, s, order(Item{Count: 1, Container: jar(1)}))) {
		t.Error("3 L in a pot of at most 2.5: no note")
	}
}

func TestReservations(t *testing.T) {
	bags, quarts := order(Item{Count: 1, Container: bag(5)}), order(Item{Count: 1, Container: jar(1)})
	short := Settings{}.With(HoldIs{jar(1), 10 * time.Minute})
	switch {
	case !hasNote[BagsDifferNote](mustWork(t, Settings{}, bags)):
		t.Error("5 lb bags: no word that sources differ")
	case hasNote[BagsDifferNote](mustWork(t, Settings{}.With(HoldIs{bag(5), 150 * time.Minute}), bags)):
		t.Error("sources differ although the collective set its hold")
	case hasNote[BagsDifferNote](mustWork(t, Settings{}, quarts)):
		t.Error("sources differ for a quart")
	case !hasNote[ShortHoldNote](mustWork(t, short, quarts)):
		t.Error("hold of 10 min: no caution")
	case !hasNote[LowPressureNote](mustWork(t, Settings{}.With(CookerIs{MaxGauge: unit.PSI(13)}), quarts)):
		t.Error("13 psi: no word that steam is colder")
	case !hasNote[NoCapacityNote](mustWork(t, Settings{}, quarts)):
		t.Error("no capacity stated: no word of it")
	case !hasNote[CountedAsNote](mustWork(t, Settings{}.With(bigPot()), order(Item{Count: 1, Container: jar(0.5)}))):
		t.Error("a pint counted like a quart: no word of it")
	}
}

func TestRefusals(t *testing.T) {
	tests := []struct {
		name  string
		order Order
		want  Quantity
	}{
		{"0 bags", order(Item{Count: 0, Container: bag(5)}), CountOfUnits},
		{"-3 bags", order(Item{Count: -3, Container: bag(5)}), CountOfUnits},
		{"1000000 bags", order(Item{Count: 1000000, Container: bag(5)}), CountOfUnits},
		{"600 and 600", order(Item{Count: 600, Container: bag(5)}, Item{Count: 600, Container: bag(5)}), CountOfUnits},
		{"500 lb", order(Item{Count: 3, Container: bag(500)}), BagWeight},
		{"a jar of 7 t", order(Item{Count: 1, Container: Container{Vessel: Jar, Weight: 7e6}}), JarWeight},
		{"a jar of half a cubic metre", order(Item{Count: 1, Container: Container{Vessel: Jar, Volume: 500}}), JarVolume},
		{"half a gram", order(Item{Count: 1, Mass: 0.5, Basis: DryBasis}), LooseGrain},
		{"ratio 5", order(Item{Count: 1, Container: bag(5), Ratio: 5}), WaterRatio},
		{"hold of ten hours", Order{Items: []Item{{Count: 1, Container: bag(5)}}, Hold: 10 * time.Hour}, HoldTime},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Settings{}.Work(tt.order)
			var out OutOfRange
			if !errors.As(err, &out) || out.What != tt.want {
				t.Errorf("Work = %v, want quantity %d out of range", err, tt.want)
			}
		})
	}
	if _, err := (Settings{}).Work(order(Item{Count: 1, Mass: 1000, Basis: DryBasis, Moisture: 0.1})); !errors.As(err, new(TooDry)) {
		t.Errorf("10 %% moisture of grain at 12 %%: %v, want TooDry", err)
	}
	if _, err := (Settings{}).Work(order(Item{Count: 1, Container: bag(12)})); !errors.As(err, new(NoHold)) {
		t.Errorf("12 lb bag: %v, want NoHold", err)
	}
}

// 8 kg of rye in 3 lb bags for liquid culture: 1360.78 g wetted are 971.98 dry
// (the reference's hydration table), shown 970: eight bags and 240 g over.
func TestReverse(t *testing.T) {
	got, err := Settings{}.Reverse(Supply{Dry: 8000, Containers: []Container{bag(3)}, Grain: grain.Rye, Route: LiquidCulture})
	if err != nil {
		t.Fatal(err)
	}
	if l := got[0].Plan.Lines[0]; l.Item.Count != 8 || math.Abs(float64(got[0].Left-240)) > 1e-9 {
		t.Errorf("8 kg make %d bags and leave %v, want 8 and 240 g", l.Item.Count, got[0].Left)
	}
	if _, err := (Settings{}).Reverse(Supply{Dry: 500, Containers: []Container{bag(3)}}); !errors.As(err, new(TooSmall)) {
		t.Errorf("500 g for a 3 lb bag: %v, want TooSmall", err)
	}
}

// The day of several loads: 40 min heat, 10 vent, 10 to pressure, hold, 90 fall
// for big bags; 15 between loads (common practice, no source).
func TestClockOfTheDay(t *testing.T) {
	p := mustWork(t, Settings{}.With(bigPot()), order(Item{Count: 5, Container: bag(5)}))
	if len(p.Loads.Each) != 2 || p.Takes() != 8*time.Hour+15*time.Minute {
		t.Errorf("5 bags take %d loads and %v, want 2 and 8h15m", len(p.Loads.Each), p.Takes())
	}
}
