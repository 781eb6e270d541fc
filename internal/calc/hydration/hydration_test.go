package hydration_test

import (
	"errors"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/hydration"
	"ryebell/internal/calc/unit"
)

func TestMeasured(t *testing.T) {
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "hydration.csv") {
		wetted := unit.Grams(row.Float("wetted_g"))
		r := unit.Ratio(row.Float("ratio_water_per_grain"))
		tol := row.Float("tol_abs_g")

		c, err := hydration.Measured(wetted, r)
		row.OK(err)
		row.Within("dry_g", float64(c.Dry), tol)
		row.Within("water_g", float64(c.Water), tol)
		row.Within("wetted_g", float64(c.Wetted), tol)

		back, err := hydration.FromDry(c.Dry, r)
		row.OK(err)
		row.Within("water_g", float64(back.Water), tol)
		row.Within("wetted_g", float64(back.Wetted), tol)

		m, err := hydration.Moisture(r, unit.Fraction(row.Float("grain_moisture_wb")))
		row.OK(err)
		row.Within("moisture_wb", float64(m), 1e-7)
		row.Within("overshoot_of_the_1.4_rule", hydration.ShortcutOvershoot(r), 1e-6)
	}
}

func TestWaterToAddAndWeightLost(t *testing.T) {
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "moisture.csv") {
		of := map[string]func(unit.Grams, unit.Fraction, unit.Fraction) (unit.Grams, error){
			"add_water": hydration.WaterToAdd,
			"dry_loss":  hydration.WeightLost,
		}[row.Text("kind")]
		if of == nil {
			t.Fatalf("no formula for %q", row.Text("kind"))
		}
		got, err := of(unit.Grams(row.Float("mass_g")),
			unit.Fraction(row.Float("moisture_from_wb")), unit.Fraction(row.Float("moisture_to_wb")))
		row.OK(err)
		row.Within("water_g", float64(got), row.Float("tol_abs"))
		// The file's own figure has eight digits; its tolerance is the print's.
		row.WithinShare("water_g", float64(got), 1e-6)
	}
}

// TestPublishedShrink holds the printed figures themselves: 100 g of wheat from
// 10 to 16.5 % take 7.8 ml (M2); maize from 25 to 15.5 % loses 11.24 % (M3), and
// from 25.5 to 15.5 % 11.83 % (M4). Keys: testdata/SOURCES.md.
func TestPublishedShrink(t *testing.T) {
	wheat, err := hydration.WaterToAdd(100, 0.10, 0.165)
	if err != nil || math.Abs(float64(wheat)-7.8) > 0.05 {
		t.Errorf("wheat: got %v, %v, want 7.8 ml (M2)", wheat, err)
	}
	maize, err := hydration.WeightLost(100, 0.25, 0.155)
	if err != nil || math.Abs(float64(maize)-11.24) > 0.005 {
		t.Errorf("maize: got %v, %v, want 11.24 (M3)", maize, err)
	}
	more, err := hydration.WeightLost(100, 0.255, 0.155)
	if err != nil || math.Abs(float64(more)-11.83) > 0.005 {
		t.Errorf("maize: got %v, %v, want 11.83 (M4)", more, err)
	}
	// Loss per point of moisture, M3's second table (its 1.13 for 11 % is a
	// misprint and left out).
	for to, want := range map[unit.Fraction]float64{
		0.155: 1.18, 0.15: 1.18, 0.14: 1.16, 0.13: 1.15, 0.12: 1.14,
	} {
		got, err := hydration.WeightLost(100, to+0.01, to)
		if err != nil || math.Abs(float64(got)-want) > 0.005 {
			t.Errorf("a point over %v: got %v, %v, want %v (M3)", to, got, err, want)
		}
	}
}

func TestDryMatterAndDryBasis(t *testing.T) {
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "dry_matter.csv") {
		mass := unit.Pounds(row.Float("mass"))
		dry, err := hydration.DryMatter(mass, unit.Fraction(row.Float("moisture_wb")))
		row.OK(err)
		row.Within("dry_matter", dry.Pounds(), row.Float("tol_abs"))
		row.Within("water", (mass - dry).Pounds(), row.Float("tol_abs"))
	}
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "wet_dry_basis.csv") {
		got, err := hydration.DryBasis(unit.Fraction(row.Float("moisture_wet_basis")))
		row.OK(err)
		row.Within("moisture_dry_basis", got, row.Float("tol_abs"))
	}
}

func TestRatioFor(t *testing.T) {
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "ratio_for_moisture.csv") {
		got, err := hydration.RatioFor(
			unit.Fraction(row.Float("wanted_moisture_wb")), unit.Fraction(row.Float("grain_moisture_wb")))
		row.OK(err)
		row.Within("ratio", float64(got), row.Float("tol_abs"))
	}
}

// TestRatiosOfWantedMoistures: for grain of 12 %, to two decimals (computed
// apart from this package).
func TestRatiosOfWantedMoistures(t *testing.T) {
	for m, want := range map[unit.Fraction]float64{0.40: 0.47, 0.45: 0.60, 0.50: 0.76, 0.55: 0.96} {
		got, err := hydration.RatioFor(m, 0.12)
		if err != nil || math.Abs(float64(got)-want) > 0.005 {
			t.Errorf("%v: got %v, %v, want %v", m, got, err, want)
		}
	}
}

// TestBags has the usual bags in whole grams, nominal weight wetted: filled dry
// at 0.43 and filled with soaked grain at 1.9 times dry (common practice).
func TestBags(t *testing.T) {
	for _, tc := range []struct{ pounds, dry, water, soakedDry float64 }{
		{1, 317, 136, 239},
		{2, 634, 273, 477},
		{3, 952, 409, 716},
		{5, 1586, 682, 1194},
		{6, 1903, 818, 1432},
		{8, 2538, 1091, 1910},
		{10, 3172, 1364, 2387},
	} {
		c, err := hydration.Measured(unit.Pounds(tc.pounds), 0.43)
		if err != nil || math.Abs(float64(c.Dry)-tc.dry) > 0.5 || math.Abs(float64(c.Water)-tc.water) > 0.5 {
			t.Errorf("%v lb: got %+v, %v, want %v and %v", tc.pounds, c, err, tc.dry, tc.water)
		}
		s, err := hydration.Soaked(unit.Pounds(tc.pounds), 1.9)
		if err != nil || math.Abs(float64(s.Dry)-tc.soakedDry) > 0.5 {
			t.Errorf("%v lb soaked: got %+v, %v, want %v", tc.pounds, s, err, tc.soakedDry)
		}
	}
}

// TestSoaked has the trade's middle figures (common practice): 5 lb of drained
// rye at k = 1.9 are 1194 g dry, 5 kg that came out 9.4 are k = 1.88.
func TestSoaked(t *testing.T) {
	c, err := hydration.Soaked(unit.Pounds(5), 1.9)
	if err != nil || math.Abs(float64(c.Dry)-1193.664) > 0.001 {
		t.Errorf("got %+v, %v", c, err)
	}
	k, err := hydration.YieldOf(unit.Kilograms(5), unit.Kilograms(9.4))
	if err != nil || math.Abs(float64(k)-1.88) > 1e-12 {
		t.Errorf("got %v, %v, want 1.88", k, err)
	}
	d, err := hydration.SoakedFromDry(unit.Kilograms(5), k)
	if err != nil || math.Abs(float64(d.Wetted)-9400) > 1e-6 {
		t.Errorf("got %+v, %v", d, err)
	}
}

func TestContainers(t *testing.T) {
	for _, tc := range []struct {
		name          string
		atHand, each  unit.Grams
		n             int
		left, leftTol unit.Grams
	}{
		{"8 kg into 3 lb bags at 0.40", 8000, 971.98365, 8, 224.1308, 1e-4},
		{"just enough", 3000, 1000, 3, 0, 0},
		{"ten times a tenth", 1, 0.1, 10, 0, 1e-9},
		{"three times a tenth, a hair short in floating point", 0.3, 0.1, 3, 0, 1e-9},
		{"a gram short", 2999, 1000, 2, 999, 1e-9},
		{"nothing at hand", 0, 1000, 0, 0, 0},
		{"less than nothing", -5, 1000, 0, 0, 0},
		{"no size", 5, 0, 0, 5, 0},
		{"a size that is not a number", 5, unit.Grams(math.NaN()), 0, 5, 0},
	} {
		n, left := hydration.Containers(tc.atHand, tc.each)
		if n != tc.n || !(math.Abs(float64(left-tc.left)) <= float64(tc.leftTol)) {
			t.Errorf("%s: got %d and %v, want %d and %v", tc.name, n, left, tc.n, tc.left)
		}
	}
}

// TestJarFill: a US quart with 30 % headspace at 0.68 kg/l (common practice).
func TestJarFill(t *testing.T) {
	for _, tc := range []struct {
		headspace unit.Fraction
		want      float64
	}{{0.30, 450.464}, {0, 643.520}, {1, 0}, {1.2, 0}, {-0.5, 643.520}} {
		got := hydration.JarFill(unit.USQuarts(1), tc.headspace, 0.68)
		if math.Abs(float64(got)-tc.want) > 0.001 {
			t.Errorf("headspace %v: got %v g, want %v", tc.headspace, got, tc.want)
		}
	}
}

func TestRangesAreRefused(t *testing.T) {
	nan := math.NaN()
	for name, call := range map[string]func() error{
		"no mass":        func() error { return second(hydration.Measured(0, 0.4)) },
		"negative mass":  func() error { return second(hydration.FromDry(-3, 0.4)) },
		"mountain":       func() error { return second(hydration.Measured(unit.Kilograms(1e6), 0.4)) },
		"not a mass":     func() error { return second(hydration.Measured(unit.Grams(nan), 0.4)) },
		"negative ratio": func() error { return second(hydration.Measured(100, -0.1)) },
		"soup":           func() error { return second(hydration.FromDry(100, 3.5)) },
		"not a ratio":    func() error { return second(hydration.Measured(100, unit.Ratio(nan))) },
		"shrinking":      func() error { return second(hydration.Soaked(100, 0.9)) },
		"swelling":       func() error { return second(hydration.SoakedFromDry(100, 4.5)) },
		"grew by itself": func() error { return second(hydration.YieldOf(100, 500)) },
		"no grain":       func() error { return second(hydration.YieldOf(0, 500)) },
		"damp as bought": func() error { return second(hydration.Moisture(0.4, 0.5)) },
		"no more water":  func() error { return second(hydration.RatioFor(0.10, 0.12)) },
		"all water":      func() error { return second(hydration.RatioFor(1, 0.12)) },
		"too much water": func() error { return second(hydration.RatioFor(0.84, 0.12)) },
		"drying by adding": func() error {
			return second(hydration.WaterToAdd(100, 0.45, 0.12))
		},
		"wetting by drying": func() error { return second(hydration.WeightLost(100, 0.12, 0.45)) },
		"percent":           func() error { return second(hydration.DryBasis(45)) },
		"minus":             func() error { return second(hydration.DryMatter(100, -0.1)) },
	} {
		var out *unit.RangeError
		if err := call(); !errors.As(err, &out) {
			t.Errorf("%s: got %v, want a range error", name, err)
		}
	}
}

func second[T any](_ T, err error) error { return err }

// charge draws a charge by one of the two methods.
func charge(t *rapid.T) hydration.Charge {
	mass := unit.Grams(rapid.Float64Range(1, 5e6).Draw(t, "wetted"))
	r := rapid.Float64Range(0, 3).Draw(t, "ratio")
	c, err := hydration.Measured(mass, unit.Ratio(r))
	if rapid.Bool().Draw(t, "soaked") {
		c, err = hydration.Soaked(mass, unit.Yield(min(1+r, 4)))
	}
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestDryAndWaterAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := charge(t)
		if !near(c.Dry+c.Water, c.Wetted) || c.Dry <= 0 || c.Water < 0 {
			t.Errorf("%+v doesn't add up", c)
		}
		n := rapid.IntRange(0, 1000).Draw(t, "n")
		if all := c.Times(n).Plus(c); !near(all.Wetted, c.Wetted*unit.Grams(n+1)) || !near(all.Dry+all.Water, all.Wetted) {
			t.Errorf("%d and one of %+v are %+v", n, c, all)
		}
	})
}

func TestFromDryUndoesMeasured(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := unit.Grams(rapid.Float64Range(10, 5e6).Draw(t, "wetted"))
		r := unit.Ratio(rapid.Float64Range(0, 3).Draw(t, "ratio"))
		c, err := hydration.Measured(m, r)
		if err != nil {
			t.Fatal(err)
		}
		back, err := hydration.FromDry(c.Dry, r)
		if err != nil || !near(back.Wetted, m) || !near(back.Water, c.Water) {
			t.Errorf("%v at %v: %+v, and back %+v, %v", m, r, c, back, err)
		}
	})
}

func TestRatioAndMoistureLeadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := unit.Ratio(rapid.Float64Range(0, 2.999).Draw(t, "ratio"))
		m0 := unit.Fraction(rapid.Float64Range(0, 0.3).Draw(t, "as bought"))
		m, err := hydration.Moisture(r, m0)
		if err != nil || m < m0 || m >= 1 {
			t.Fatalf("Moisture(%v, %v) = %v, %v", r, m0, m, err)
		}
		back, err := hydration.RatioFor(max(m, m0), m0)
		if err != nil || math.Abs(float64(back-r)) > 1e-9 {
			t.Errorf("ratio %v on %v became %v and came back as %v, %v", r, m0, m, back, err)
		}
		// The same water, seen as an addition to a mass.
		added, err := hydration.WaterToAdd(1000, m0, max(m, m0))
		if err != nil || !near(added, unit.Grams(r)*1000) {
			t.Errorf("ratio %v on %v: WaterToAdd says %v, %v", r, m0, added, err)
		}
	})
}

func TestRoundAddsUpWithinAStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := charge(t)
		step := unit.Grams(rapid.SampledFrom([]float64{0.1, 0.5, 1, 2, 5, 10, 50}).Draw(t, "step"))
		r := hydration.Round(c, step)
		slack := 1e-6 * step
		if r.Dry+r.Water != r.Wetted {
			t.Errorf("%+v doesn't add up exactly", r)
		}
		if d := apart(r.Wetted, c.Wetted); d > step+slack {
			t.Errorf("%+v by %v: %+v is %v off", c, step, r, d)
		}
		if max(apart(r.Dry, c.Dry), apart(r.Water, c.Water)) > step/2+slack {
			t.Errorf("%+v by %v: %+v has a part more than half a step off", c, step, r)
		}
		for _, part := range []unit.Grams{r.Dry, r.Water, r.Wetted} {
			if n := float64(part / step); math.Abs(n-math.Round(n)) > 1e-6 {
				t.Errorf("%v isn't in steps of %v", part, step)
			}
		}
	})
}

func TestRoundWithoutAStep(t *testing.T) {
	c := hydration.Charge{Dry: 1553.4, Water: 714.6, Wetted: 2268}
	for _, step := range []unit.Grams{0, -5, unit.Grams(math.NaN())} {
		if got := hydration.Round(c, step); got != c {
			t.Errorf("step %v: got %+v", step, got)
		}
	}
	// Both sides of the brink.
	for dry, want := range map[unit.Grams]unit.Grams{1552.499: 1550, 1552.5: 1555, 1557.499: 1555} {
		if got := hydration.Round(hydration.Charge{Dry: dry}, 5).Dry; got != want {
			t.Errorf("%v in steps of 5: got %v, want %v", dry, got, want)
		}
	}
}

func TestContainersLoseNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		atHand := unit.Grams(rapid.Float64Range(0, 1e6).Draw(t, "at hand"))
		each := unit.Grams(rapid.Float64Range(1, 1e4).Draw(t, "each"))
		n, left := hydration.Containers(atHand, each)
		if apart(unit.Grams(n)*each+left, atHand) > 1e-6*each || left < 0 || left >= each {
			t.Errorf("%v by %v: %d and %v left", atHand, each, n, left)
		}
	})
}

func near(a, b unit.Grams) bool {
	return float64(apart(a, b)) <= 1e-9*max(1, math.Abs(float64(b)))
}

func apart(a, b unit.Grams) unit.Grams { return unit.Grams(math.Abs(float64(a - b))) }
