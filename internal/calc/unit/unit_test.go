package unit_test

import (
	"errors"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/unit"
)

// conversions go from the unit of a check value to the unit expected of it.
var conversions = map[string]func(float64) float64{
	"lb→g":      func(v float64) float64 { return float64(unit.Pounds(v)) },
	"oz→g":      func(v float64) float64 { return float64(unit.Ounces(v)) },
	"oz→lb":     func(v float64) float64 { return unit.Ounces(v).Pounds() },
	"us_gal→ml": func(v float64) float64 { return unit.USGallons(v).Millilitres() },
	"us_qt→ml":  func(v float64) float64 { return unit.USQuarts(v).Millilitres() },
	"us_pt→ml":  func(v float64) float64 { return unit.USPints(v).Millilitres() },
	"us_cup→ml": func(v float64) float64 { return unit.USCups(v).Millilitres() },
	"imp_gal→ml": func(v float64) float64 {
		return unit.ImperialGallons(v).Millilitres()
	},
	"imp_qt→ml": func(v float64) float64 { return unit.ImperialQuarts(v).Millilitres() },
	"imp_pt→ml": func(v float64) float64 { return unit.ImperialPints(v).Millilitres() },
	"psi→kPa":   func(v float64) float64 { return float64(unit.PSI(v)) },
	"psi→bar":   func(v float64) float64 { return unit.PSI(v).Bar() },
	"bar→psi":   func(v float64) float64 { return unit.Bar(v).PSI() },
	"inHg→kPa":  func(v float64) float64 { return float64(unit.InchesOfMercury(v)) },
	"atm→psi":   func(v float64) float64 { return unit.Atmospheres(v).PSI() },
	"F→C":       func(v float64) float64 { return float64(unit.Fahrenheit(v)) },
	"C→F":       func(v float64) float64 { return unit.Celsius(v).Fahrenheit() },
	"ft→m":      func(v float64) float64 { return float64(unit.Feet(v)) },
	"m→ft":      func(v float64) float64 { return unit.Metres(v).Feet() },
	"in→cm":     func(v float64) float64 { return unit.Inches(v).Centimetres() },
	"us_bu→l":   func(v float64) float64 { return float64(unit.USBushels(v)) },
}

func TestConversionsAgreeWithNIST(t *testing.T) {
	seen := map[string]bool{}
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "units.csv") {
		name := row.Text("unit") + "→" + row.Text("expect_unit")
		convert, ok := conversions[name]
		if !ok {
			t.Errorf("no conversion for the check value %s", name)
			continue
		}
		seen[name] = true
		row.WithinShare("expect", convert(row.Float("value")), row.Float("tol_rel"))
	}
	for name := range conversions {
		if !seen[name] {
			t.Errorf("%s: no check value", name)
		}
	}
}

// pairs lead there and back through a base unit.
var pairs = map[string]func(float64) float64{
	"kg":      func(v float64) float64 { return unit.Kilograms(v).Kilograms() },
	"lb":      func(v float64) float64 { return unit.Pounds(v).Pounds() },
	"oz":      func(v float64) float64 { return unit.Ounces(v).Ounces() },
	"ml":      func(v float64) float64 { return unit.Millilitres(v).Millilitres() },
	"us gal":  func(v float64) float64 { return unit.USGallons(v).USGallons() },
	"us qt":   func(v float64) float64 { return unit.USQuarts(v).USQuarts() },
	"us pt":   func(v float64) float64 { return unit.USPints(v).USPints() },
	"half pt": func(v float64) float64 { return unit.USHalfPints(v).USPints() * 2 },
	"us cup":  func(v float64) float64 { return unit.USCups(v).USCups() },
	"us floz": func(v float64) float64 { return unit.USFluidOunces(v).USFluidOunces() },
	"floz qt": func(v float64) float64 { return unit.USFluidOunces(32 * v).USQuarts() },
	"imp qt":  func(v float64) float64 { return unit.ImperialQuarts(v).ImperialQuarts() },
	"imp pt":  func(v float64) float64 { return unit.ImperialPints(v).ImperialPints() },
	"°F":      func(v float64) float64 { return unit.Fahrenheit(v).Fahrenheit() },
	"ΔF":      func(v float64) float64 { return unit.FahrenheitDifference(v).FahrenheitDegrees() },
	"K":       func(v float64) float64 { return float64(unit.Celsius(v).AboveAbsoluteZero()) - 273.15 },
	"abs":     func(v float64) float64 { return float64(unit.FromAbsolute(unit.Kelvins(v + 273.15))) },
	"ft":      func(v float64) float64 { return unit.Feet(v).Feet() },
	"in":      func(v float64) float64 { return unit.Inches(v).Inches() },
	"cm":      func(v float64) float64 { return unit.Centimetres(v).Centimetres() },
	"psi":     func(v float64) float64 { return unit.PSI(v).PSI() },
	"bar":     func(v float64) float64 { return unit.Bar(v).Bar() },
	"kPa":     func(v float64) float64 { return float64(unit.KPa(v)) },
	"Pa":      func(v float64) float64 { return unit.Pascals(v).Pascals() },
	"%":       func(v float64) float64 { return unit.Percent(v).Percent() },
}

func TestConversionsLeadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e6, 1e6).Draw(t, "value")
		for name, there := range pairs {
			if got := there(v); !(math.Abs(got-v) <= 1e-9*max(1, math.Abs(v))) {
				t.Errorf("%s: %g came back as %g", name, v, got)
			}
		}
	})
}

func TestGaugeNeedsAnAtmosphere(t *testing.T) {
	// 15 psi at 101.325 kPa are 204.746 kPa absolute: computed with Pint 0.19.2.
	got := unit.PSI(15).Above(unit.Pascals(101325))
	if math.Abs(float64(got)-204.7463594) > 1e-6 {
		t.Errorf("15 psi over one atmosphere: got %v kPa", got)
	}
	if back := got.Over(unit.Atmospheres(1)).PSI(); math.Abs(back-15) > 1e-9 {
		t.Errorf("back to the gauge: got %v psi, want 15", back)
	}
}

func TestReadingsDifferByKelvins(t *testing.T) {
	warm := unit.Celsius(46).Plus(unit.FahrenheitDifference(9))
	if warm != 51 {
		t.Errorf("46 °C and 9 °F more: got %v, want 51", warm)
	}
	if d := warm.Minus(46); d != 5 {
		t.Errorf("51 °C over 46 °C: got %v, want 5 K", d)
	}
}

func TestDensityOfABushel(t *testing.T) {
	// 1 lb/bu = 12.872 kg/m³, from the exact pound and bushel (NIST Handbook 44).
	if d := unit.PoundsPerUSBushel(1); math.Abs(float64(d)-0.012872) > 5e-7 {
		t.Errorf("a pound per bushel: got %v kg/l", d)
	}
	if g := unit.KgPerLitre(0.68).Fill(0.5); math.Abs(float64(g)-340) > 1e-9 {
		t.Errorf("half a litre at 0.68 kg/l: got %v g, want 340", g)
	}
}

func TestCheck(t *testing.T) {
	for _, tc := range []struct {
		name  string
		value unit.Ratio
		in    bool
	}{
		{"low end", 0, true},
		{"high end", 3, true},
		{"between", 0.4, true},
		{"under", -0.001, false},
		{"over", 3.001, false},
		{"not a number", unit.Ratio(math.NaN()), false},
		{"endless", unit.Ratio(math.Inf(1)), false},
	} {
		err := unit.Check(unit.WaterRatio, tc.value, 0, 3)
		var out *unit.RangeError
		if errors.As(err, &out) == tc.in {
			t.Errorf("%s: Check(%v) = %v", tc.name, tc.value, err)
		}
		if !tc.in && (out.Quantity != unit.WaterRatio || out.Lo != 0 || out.Hi != 3) {
			t.Errorf("%s: got %+v", tc.name, out)
		}
	}
}

func TestEveryQuantityHasAName(t *testing.T) {
	seen := map[string]bool{}
	for q := unit.Mass; q <= unit.TimeScale; q++ {
		name := q.String()
		if name == "" || seen[name] {
			t.Errorf("quantity %d is called %q", uint8(q), name)
		}
		seen[name] = true
	}
	err := unit.Check(unit.Elevation, unit.Metres(12000), -430, 11000)
	if got, want := err.Error(), "elevation 12000 not in -430..11000"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
