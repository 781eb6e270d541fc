package steam_test

import (
	"errors"
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

func rows(t *testing.T, name string) []calctest.Row {
	t.Helper()
	return calctest.Rows(t, os.DirFS("testdata"), name)
}

// TestVerificationValues: IAPWS R7-97(2012), tables 35 and 36.
func TestVerificationValues(t *testing.T) {
	for _, row := range rows(t, "if97_region4.csv") {
		kelvin := unit.Kelvins(row.Float("temperature_K"))
		mpa := row.Float("pressure_MPa")
		tol := row.Float("tol_rel")
		switch direction := row.Text("direction"); direction {
		case "p(T)":
			p, err := steam.SaturationPressure(unit.FromAbsolute(kelvin))
			row.OK(err)
			row.WithinShare("pressure_MPa", float64(p)/1000, tol)
		case "T(p)":
			c, err := steam.SaturationTemperature(unit.Pascals(mpa * 1e6))
			row.OK(err)
			row.WithinShare("temperature_K", float64(c.AboveAbsoluteZero()), tol)
		default:
			t.Errorf("no direction %q", direction)
		}
	}
}

func TestSaturation(t *testing.T) {
	for _, row := range rows(t, "saturation.csv") {
		c, err := steam.SaturationTemperature(unit.AbsoluteKPa(row.Float("pressure_kPa_abs")))
		row.OK(err)
		row.Within("temp_C", float64(c), row.Float("tol_abs_K"))
	}
	for _, row := range rows(t, "saturation_table.csv") {
		p, err := steam.SaturationPressure(unit.Celsius(row.Float("temp_C")))
		row.OK(err)
		row.WithinShare("pressure_kPa_published", float64(p), row.Float("tol_rel"))
		row.WithinShare("pressure_kPa_computed", float64(p), 1e-7)
	}
}

func TestAtmosphere(t *testing.T) {
	for _, row := range rows(t, "atmosphere.csv") {
		p, err := steam.Atmosphere(unit.Metres(row.Float("geopotential_m")))
		row.OK(err)
		row.WithinShare("pressure_Pa_published", p.Pascals(), row.Float("tol_rel"))
		row.WithinShare("pressure_Pa_computed", p.Pascals(), 1e-6)
	}
}

func TestBoilingPoint(t *testing.T) {
	for _, row := range rows(t, "boiling_point.csv") {
		c, err := steam.BoilingPoint(unit.Feet(row.Float("elevation_ft")))
		row.OK(err)
		row.Within("boiling_F_published", c.Fahrenheit(), row.Float("tol_abs_F"))
		// Computed for a geometric height, which we take as geopotential: a
		// metre and a half at 10 000 ft, a hundredth of a degree.
		row.Within("boiling_F_computed", c.Fahrenheit(), 1e-2)
	}
	// Kitchens, in degrees Celsius to a tenth: a second computation from ISO 2533
	// and IAPWS-IF97 (96.65 at 1000 m lies on the brink).
	for m, want := range map[unit.Metres]float64{
		0: 100.0, 500: 98.3, 1000: 96.7, 1600: 94.7, 2000: 93.3, 3000: 90.0,
	} {
		c, err := steam.BoilingPoint(m)
		if err != nil || math.Abs(float64(c)-want) > 0.052 {
			t.Errorf("at %v m: got %v, %v, want %v", m, c, err, want)
		}
	}
}

func TestGaugeTables(t *testing.T) {
	for _, row := range rows(t, "gauge_psi_table.csv") {
		c, err := steam.Temperature(unit.PSI(row.Float("gauge_psi_sea_level")), 0)
		row.OK(err)
		row.Within("temp_F_published", c.Fahrenheit(), row.Float("tol_abs_F"))
		row.Within("temp_F_computed", c.Fahrenheit(), 1e-3)
	}
	for _, row := range rows(t, "gauge_to_hold.csv") {
		elevation := unit.Metres(row.Float("elevation_m_geopotential"))
		gauge := unit.PSI(row.Float("gauge_psi"))
		air, err := steam.Atmosphere(elevation)
		row.OK(err)
		row.WithinShare("atmosphere_kPa", float64(air), 1e-7)
		row.WithinShare("absolute_kPa", float64(gauge.Above(air)), 1e-7)
		c, err := steam.Temperature(gauge, elevation)
		row.OK(err)
		row.Within("steam_temp_C", float64(c), 1e-3)
	}
	for _, row := range rows(t, "gauge_for_same_temp.csv") {
		sea, err := steam.Temperature(unit.PSI(15), 0)
		row.OK(err)
		g, err := steam.GaugeFor(sea, unit.Metres(row.Float("elevation_m_geopotential")))
		row.OK(err)
		row.Within("gauge_psi", g.PSI(), row.Float("tol_abs"))
	}
}

// TestCannerBands is the outside check of the whole chain: the published rule
// (PNW 421) raises the pressure with the height in order to hold 240 °F.
func TestCannerBands(t *testing.T) {
	for _, row := range rows(t, "canner_bands.csv") {
		gauge := unit.PSI(row.Float("psi_published"))
		low, err := steam.Temperature(gauge, unit.Feet(row.Float("from_ft")))
		row.OK(err)
		high, err := steam.Temperature(gauge, unit.Feet(row.Float("to_ft")))
		row.OK(err)
		tol := row.Float("tol_abs_F")
		row.Within("temp_F_at_low_end", low.Fahrenheit(), tol)
		row.Within("temp_F_at_high_end", high.Fahrenheit(), tol)
		if low.Fahrenheit() < 240 || high.Fahrenheit() > 240 || high.Fahrenheit() < 239 {
			t.Errorf("%v psi from %s to %s ft: %.1f to %.1f °F don't enclose 240",
				gauge.PSI(), row.Text("from_ft"), row.Text("to_ft"), low.Fahrenheit(), high.Fahrenheit())
		}
	}
}

// TestPublishedPair: 10.5 psi at sea level for 240 °F (University of Missouri
// Extension, food safety question 163; whole degrees).
func TestPublishedPair(t *testing.T) {
	c, err := steam.Temperature(unit.PSI(10.5), 0)
	if err != nil || math.Abs(c.Fahrenheit()-240) > 0.5 {
		t.Errorf("got %v °F, %v, want 240", c.Fahrenheit(), err)
	}
}

// TestSensitivities at 15 psi and sea level, computed with iapws 1.5.2: a psi of
// gauge error is 1.07 K, 2 kPa of weather 0.31 K.
func TestSensitivities(t *testing.T) {
	at := func(g unit.GaugeKPa, m unit.Metres) unit.Celsius {
		c, err := steam.Temperature(g, m)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	if d := float64(at(unit.PSI(16), 0).Minus(at(unit.PSI(14), 0))) / 2; math.Abs(d-1.07) > 0.005 {
		t.Errorf("a psi: got %v K, want 1.07", d)
	}
	if d := float64(at(unit.PSI(15)+2, 0).Minus(at(unit.PSI(15)-2, 0))) / 2; math.Abs(d-0.31) > 0.005 {
		t.Errorf("weather: got %v K, want 0.31", d)
	}
}

func TestPressureAndTemperatureLeadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := unit.Celsius(rapid.Float64Range(0, 373.9).Draw(t, "temperature"))
		p, err := steam.SaturationPressure(c)
		if err != nil {
			t.Fatal(err)
		}
		back, err := steam.SaturationTemperature(max(p, steam.LowestSaturation))
		if err != nil || math.Abs(float64(back.Minus(c))) > 2e-5 {
			t.Errorf("%v °C is %v kPa is %v °C, %v", c, p, back, err)
		}
	})
}

func TestGaugeForUndoesTemperature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		elevation := unit.Metres(rapid.Float64Range(-430, 11000).Draw(t, "elevation"))
		gauge := unit.GaugeKPa(rapid.Float64Range(0, 999).Draw(t, "gauge"))
		c, err := steam.Temperature(gauge, elevation)
		if err != nil {
			t.Fatal(err)
		}
		back, err := steam.GaugeFor(c, elevation)
		if err != nil || math.Abs(float64(back-gauge)) > 1e-6 {
			t.Errorf("%v kPa at %v m is %v °C is %v kPa, %v", gauge, elevation, c, back, err)
		}
	})
}

func TestHigherIsColder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := unit.Metres(rapid.Float64Range(-430, 10990).Draw(t, "low"))
		high := low + unit.Metres(rapid.Float64Range(1, 10).Draw(t, "more"))
		gauge := unit.GaugeKPa(rapid.Float64Range(0, 200).Draw(t, "gauge"))
		below, err := steam.Temperature(gauge, low)
		if err != nil {
			t.Fatal(err)
		}
		above, err := steam.Temperature(gauge, high)
		if err != nil || above >= below {
			t.Errorf("%v kPa: %v °C at %v m, %v °C at %v m, %v", gauge, below, low, above, high, err)
		}
	})
}

func TestRangesAreRefused(t *testing.T) {
	for _, tc := range []struct {
		name string
		of   unit.Quantity
		call func() error
	}{
		{"a plane", unit.Elevation, func() error { return second(steam.Atmosphere(12000)) }},
		{"a mine", unit.Elevation, func() error { return second(steam.BoilingPoint(-431)) }},
		{"not a height", unit.Elevation, func() error { return second(steam.Atmosphere(unit.Metres(math.NaN()))) }},
		{"suction", unit.Gauge, func() error { return second(steam.Temperature(-1, 0)) }},
		{"a boiler", unit.Gauge, func() error { return second(steam.Temperature(1001, 0)) }},
		{"not a gauge", unit.Gauge, func() error { return second(steam.Temperature(unit.GaugeKPa(math.NaN()), 0)) }},
		{"vacuum", unit.Pressure, func() error { return second(steam.SaturationTemperature(0.6)) }},
		{"supercritical", unit.Pressure, func() error { return second(steam.SaturationTemperature(22065)) }},
		{"ice", unit.Temperature, func() error { return second(steam.SaturationPressure(-0.1)) }},
		{"no steam", unit.Temperature, func() error { return second(steam.SaturationPressure(374)) }},
		{"under boiling", unit.Gauge, func() error { return second(steam.GaugeFor(99, 0)) }},
		{"too hot", unit.Gauge, func() error { return second(steam.GaugeFor(200, 0)) }},
	} {
		var out *unit.RangeError
		if err := tc.call(); !errors.As(err, &out) || out.Quantity != tc.of {
			t.Errorf("%s: got %v, want a range error of the %v", tc.name, err, tc.of)
		}
	}
	if _, err := steam.SaturationTemperature(steam.HighestSaturation); err != nil {
		t.Errorf("the critical point: %v", err)
	}
	if boiling, _ := steam.BoilingPoint(1600); second(steam.GaugeFor(boiling, 1600)) != nil {
		t.Error("no gauge for the boiling point")
	}
}

func second[T any](_ T, err error) error { return err }
