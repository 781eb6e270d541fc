package kitchen

import (
	"errors"
	"math"
	"slices"
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
		{"half a pint in steps of 100 g is weighed to 10", Settings{}.With(StepIs{100}), Item{Count: 3, Container: jar(0.25), Route: LiquidCulture}, 80, 30, 110, 0.371},
		{"20 g in steps of 5 is weighed to half a gram", Settings{}, Item{Count: 1, Mass: 20, Basis: Wetted, Route: LiquidCulture}, 14.5, 5.5, 20, 0.371},
		{"a pint filled as the quart they weighed", Settings{}.With(JarFill{jar(1), 500}), Item{Count: 1, Container: jar(0.5), Route: LiquidCulture}, 180, 70, 250, 0.371},
		{"of two weighed jars the nearer", Settings{}.With(JarFill{jar(4), 1000}, JarFill{jar(1), 500}), Item{Count: 1, Container: jar(0.5), Route: LiquidCulture}, 180, 70, 250, 0.371},
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
		{"25 m are as good as none", at(25), order(Item{Count: 1, Container: jar(1)}), 90, false},
		{"26 m are not", at(26), order(Item{Count: 1, Container: jar(1)}), 92, false},
		{"500 m", at(500), order(Item{Count: 1, Container: jar(1)}), 112, false},
		{"1000 m", at(1000), order(Item{Count: 1, Container: jar(1)}), 137, false},
		{"1600 m", at(1600), order(Item{Count: 1, Container: jar(1)}), 175, false},
		{"past four hours: not with this cooker", at(1600), order(Item{Count: 1, Container: jar(4)}), 291, true},
		{"10 psi at sea level: 339", Settings{}.With(CookerIs{MaxGauge: unit.PSI(10)}), order(Item{Count: 1, Container: jar(1)}), 339, true},
		{"own hold is not scaled", at(1600, HoldIs{bag(5), 150 * time.Minute}), order(Item{Count: 1, Container: bag(5)}), 150, false},
		{"own hold of all bags", Settings{}.With(HoldIs{Container{Vessel: Bag}, 180 * time.Minute}), order(Item{Count: 1, Container: bag(3)}), 180, false},
		{"5 lb meant dry are 3,315 g wetted", Settings{}.With(BagMeans{DryBasis}), order(Item{Count: 3, Container: bag(5), Route: Agar}), 150, false},
		{"2.4 kg dry in each are 3.5 kg wetted", Settings{}, order(Item{Count: 4, Container: Container{Vessel: Bag}, Mass: 2400, Basis: DryBasis, Route: Agar}), 150, false},
		{"a jar of 600 g dry is one of 1.8 L", Settings{}, order(Item{Count: 1, Container: Container{Vessel: Jar, Weight: 600}, Basis: DryBasis, Route: Agar}), 120, false},
		{"own hold by the name of the size", Settings{}.With(BagMeans{DryBasis}, HoldIs{bag(5), 170 * time.Minute}), order(Item{Count: 3, Container: bag(5), Route: Agar}), 170, false},
		{"a larger bag no shorter than the own hold of a smaller one", Settings{}.With(HoldIs{bag(5), 150 * time.Minute}), order(Item{Count: 1, Container: bag(6)}), 150, false},
		{"but no shorter than its default", Settings{}.With(HoldIs{bag(3), 100 * time.Minute}), order(Item{Count: 1, Container: bag(6)}), 120, false},
		{"a smaller bag isn't ruled by a larger one", Settings{}.With(HoldIs{bag(6), 200 * time.Minute}), order(Item{Count: 1, Container: bag(5)}), 90, false},
		{"a later hold for all bags replaces", Settings{}.With(HoldIs{bag(5), 150 * time.Minute}, HoldIs{Container{Vessel: Bag}, 200 * time.Minute}), order(Item{Count: 1, Container: bag(5)}), 200, false},
		{"what can't be done outdoes an own hold", at(1600, HoldIs{Container{Vessel: Bag}, 300 * time.Minute}), order(Item{Count: 1, Container: bag(5)}, Item{Count: 1, Container: jar(4)}), 291, true},
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

// A hold taken over from a smaller bag says from which.
func TestHoldLikeSmaller(t *testing.T) {
	h := mustWork(t, Settings{}.With(HoldIs{bag(5), 150 * time.Minute}), order(Item{Count: 1, Container: bag(6)})).Hold
	if h.Origin != Own || h.Like != bag(5) || h.Usual != 120*time.Minute {
		t.Errorf("hold = %+v, want the collective's own for 5 lb", h)
	}
}

// What is suggested for big bags is longer than the default here, wherever here
// is: 150 at sea level, 235 at 1600 m, where the default is 175.
func TestSuggestedHold(t *testing.T) {
	for _, tt := range []struct {
		m    unit.Metres
		lb   float64
		want time.Duration
	}{{0, 5, 150}, {0, 10, 210}, {150, 5, 160}, {1600, 5, 235}, {2000, 5, 240}} {
		p := mustWork(t, Settings{}.With(Elevation{tt.m}), order(Item{Count: 1, Container: bag(tt.lb)}))
		i := slices.IndexFunc(p.Notes, func(n Reservation) bool { _, ok := n.(BagsDifferNote); return ok })
		if i < 0 {
			t.Errorf("%v lb at %v m: no word that sources differ", tt.lb, tt.m)
			continue
		}
		got := p.Notes[i].(BagsDifferNote).Suggest
		if got != tt.want*time.Minute || got <= p.Hold.Usual {
			t.Errorf("%v lb at %v m: %v suggested, want %d min, over %v", tt.lb, tt.m, got, tt.want, p.Hold.Usual)
		}
	}
}

func TestHigherPressure(t *testing.T) {
	// 17.58 psi restores the sea-level temperature at 1600 m (computed from ISO
	// 2533 and IAPWS-IF97; the canning guides' bands raise pressure likewise).
	unrated := mustWork(t, Settings{}.With(Elevation{1600}), order(Item{Count: 1, Container: jar(1)})).Hold
	if math.Abs(unrated.Higher.PSI()-17.58) > 0.01 || unrated.Rating != RatingUnsaid {
		t.Errorf("unrated: higher = %.2f psi, rating %d; want 17.58, unsaid", unrated.Higher.PSI(), unrated.Rating)
	}
	rated := Settings{}.With(Elevation{1600}, CookerIs{MaxGauge: unit.PSI(20)})
	if h := mustWork(t, rated, order(Item{Count: 1, Container: jar(1)})).Hold; h.Rating != RatingAllows || h.At != unit.PSI(15) {
		t.Errorf("rated 20 psi: at %.1f psi, rating %d; want 15, allowed", h.At.PSI(), h.Rating)
	}
	// At 12 psi 15 psi would do in 175 min, and 17.58 is forbidden.
	weak := mustWork(t, Settings{}.With(Elevation{1600}, CookerIs{MaxGauge: unit.PSI(12)}), order(Item{Count: 1, Container: jar(1)})).Hold
	if weak.Rating != RatingForbids || weak.AtReference != 175*time.Minute || !weak.TooLong {
		t.Errorf("rated 12 psi: rating %d, at 15 psi %v, too long %v; want forbidden, 175 min, true", weak.Rating, weak.AtReference, weak.TooLong)
	}
	if unrated.AtReference != 0 {
		t.Errorf("at 15 psi already, and told of it: %v", unrated.AtReference)
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

// Loads of different holds have each their own, and each its own caution.
func TestLoadsHaveTheirOwnHold(t *testing.T) {
	s := Settings{}.With(bigPot(), HoldIs{jar(1), 10 * time.Minute})
	p := mustWork(t, s, order(Item{Count: 3, Container: bag(5)}, Item{Count: 7, Container: jar(1)}))
	if len(p.Loads.Each) != 2 || p.Loads.Each[0].Hold.Time == p.Loads.Each[1].Hold.Time {
		t.Fatalf("loads = %+v, want two of different holds", p.Loads.Each)
	}
	var short []ShortHoldNote
	for _, n := range p.Notes {
		if n, ok := n.(ShortHoldNote); ok {
			short = append(short, n)
		}
	}
	if len(short) != 1 || p.Loads.Each[short[0].Load].Hold.Time != 10*time.Minute {
		t.Errorf("cautions = %+v, want one for the load of quarts", short)
	}
}

// Bags known by the grain in them alone are shared out over the orders too.
func TestOrdersOfLoads(t *testing.T) {
	s := Settings{}.With(bigPot())
	p := mustWork(t, s, order(Item{Count: 4, Container: Container{Vessel: Bag}, Mass: 2000, Basis: Wetted}))
	n := 0
	for _, o := range p.Orders() {
		for _, it := range o.Items {
			n += it.Count
		}
	}
	if n != 4 || len(p.Orders()) != 2 {
		t.Errorf("%d bags in %d orders, want 4 in 2", n, len(p.Orders()))
	}
}

// Smaller ones hold as much grain, and none are offered where none can be cooked.
func TestSmaller(t *testing.T) {
	high := Settings{}.With(Elevation{1600})
	got, ok := high.Smaller(order(Item{Count: 1, Container: jar(4), Route: Agar}))
	if !ok || got.Items[0].Count != 4 || !got.Items[0].Container.Same(jar(1)) {
		t.Errorf("a gallon in smaller ones = %+v (%v), want 4 quarts", got, ok)
	}
	dry := high.With(BagMeans{DryBasis})
	if got, ok := dry.Smaller(order(Item{Count: 3, Container: bag(5), Route: Agar})); !ok || got.Items[0].Count != 5 {
		t.Errorf("bags of 5 lb dry in smaller ones = %+v (%v), want 5 of 3 lb", got, ok)
	}
	if got, ok := (Settings{}).With(Elevation{4000}).Smaller(order(Item{Count: 1, Container: jar(4)})); ok {
		t.Errorf("at 4000 m smaller ones are offered: %+v", got)
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
	// What decides is the sum, the least or the maker's figure, rounded up.
	for _, tt := range []struct {
		k    CookerIs
		hold time.Duration
		want unit.Litres
	}{{CookerIs{}, 175, 5}, {CookerIs{}, 420, 5.9}, {CookerIs{MinWater: 6}, 90, 6}, {CookerIs{BoilOff: 3}, 120, 7.7}} {
		w := tt.k.WaterSum(tt.hold * time.Minute)
		got := tt.k.water(tt.hold * time.Minute)
		if most := max(w.Sum(), w.Least, w.Maker); got != tt.want || math.Abs(float64(got-most)) > 0.1 {
			t.Errorf("water for %d min = %v L (sum %v, least %v, maker %v), want %v", tt.hold, got, w.Sum(), w.Least, w.Maker, tt.want)
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
		// A quart takes at most 946 ml of 1.1 kg a litre: 1,041 g wetted.
		{"a quart with 5 lb", order(Item{Count: 4, Container: jar(1), Mass: 2268}), JarWeight},
		{"a quart with 1,050 g", order(Item{Count: 4, Container: jar(1), Mass: 1050, Basis: Wetted}), JarWeight},
		{"a quart with 900 g dry", order(Item{Count: 4, Container: jar(1), Mass: 900, Basis: DryBasis}), JarWeight},
		{"no moisture at all", order(Item{Count: 1, Container: bag(5), Parched: true}), GrainMoisture},
		{"-45 %", order(Item{Count: 1, Container: bag(5), Moisture: -0.45}), GrainMoisture},
		{"90 %", order(Item{Count: 1, Container: bag(5), Moisture: 0.9}), GrainMoisture},
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

// Without gypsum takes none, whatever the kitchen usually does.
func TestNoGypsum(t *testing.T) {
	s := Settings{}.With(GypsumIs{Share: 0.01})
	if p := mustWork(t, s, order(Item{Count: 1, Container: bag(5)})); p.Gypsum <= 0 {
		t.Fatalf("a kitchen that takes gypsum takes %v", p.Gypsum)
	}
	if p := mustWork(t, s, order(Item{Count: 1, Container: bag(5), NoGypsum: true})); p.Gypsum != 0 {
		t.Errorf("without gypsum takes %v", p.Gypsum)
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
	// More than an order takes is planned as far as that goes, and no grain is lost.
	got, err = Settings{}.Reverse(Supply{Dry: 500000, Containers: []Container{jar(0.25)}, Grain: grain.Rye, Route: LiquidCulture})
	if err != nil {
		t.Fatal(err)
	}
	if l := got[0].Plan.Lines[0]; l.Item.Count != MaxUnits || got[0].Fills <= MaxUnits || math.Abs(float64(l.All.Dry+got[0].Left-500000)) > 1e-6 {
		t.Errorf("500 kg make %d (fill %d) and leave %v: %v in all", l.Item.Count, got[0].Fills, got[0].Left, l.All.Dry+got[0].Left)
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
