package hold_test

import (
	"errors"
	"math"
	"os"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/hold"
	"ryebell/internal/calc/lethality"
	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

const usual = 90 * time.Minute

func rows(t *testing.T, name string) []calctest.Row {
	t.Helper()
	return calctest.Rows(t, os.DirFS("testdata"), name)
}

func TestScale(t *testing.T) {
	for _, row := range rows(t, "gauge_to_hold.csv") {
		s, err := hold.Scale(usual,
			unit.Metres(row.Float("elevation_m_geopotential")), unit.PSI(row.Float("gauge_psi")))
		row.OK(err)
		row.Within("steam_temp_C", float64(s.Temperature), 1e-3)
		row.WithinShare("lethal_rate_121.1_z10", lethality.Rate(s.Temperature), 5e-4)
		const column = "steam_lethality_equal_to_90min_15psi_sea_level_min"
		row.Within(column, s.Exact.Minutes(), 0.05)
		// The answer in whole minutes, upwards.
		if want := math.Ceil(row.Float(column)); s.Hold.Minutes() != want {
			t.Errorf("%s m, %s psi: got %v, want %v min",
				row.Text("elevation_m_geopotential"), row.Text("gauge_psi"), s.Hold, want)
		}
	}
}

func TestSameTemperatureGauge(t *testing.T) {
	for _, row := range rows(t, "gauge_for_same_temp.csv") {
		elevation := unit.Metres(row.Float("elevation_m_geopotential"))
		s, err := hold.Scale(usual, elevation, unit.PSI(15))
		row.OK(err)
		row.Within("gauge_psi", s.SameTemperatureGauge.PSI(), row.Float("tol_abs"))

		there, err := hold.Scale(usual, elevation, s.SameTemperatureGauge+unit.PSI(0.001))
		row.OK(err)
		if there.Hold != usual {
			t.Errorf("at the gauge that restores the temperature: got %v", there.Hold)
		}
	}
}

// TestGrid is a second computation of the same chain (ISO 2533, IAPWS-IF97,
// z = 10 °C), to whole minutes for 90 min at 15 psi and sea level.
func TestGrid(t *testing.T) {
	psi := []float64{15, 13, 11, 10}
	for elevation, want := range map[unit.Metres][]float64{
		0:    {90, 149, 256, 339},
		500:  {111, 187, 325, 434},
		1000: {137, 233, 410, 552},
		1600: {174, 301, 539, 734},
		2500: {246, 435, 802, 1108},
	} {
		for i, minutes := range want {
			s, err := hold.Scale(usual, elevation, unit.PSI(psi[i]))
			if err != nil || math.Abs(s.Exact.Minutes()-minutes) > 0.75 {
				t.Errorf("%v m, %v psi: got %v, %v, want %v min", elevation, psi[i], s.Exact, err, minutes)
			}
		}
	}
}

func TestTheReferenceCycleKeepsItsBase(t *testing.T) {
	for _, base := range []time.Duration{time.Minute, usual, 90*time.Minute + 30*time.Second, 5 * time.Hour, 24 * time.Hour} {
		s, err := hold.Scale(base, 0, unit.PSI(15))
		if err != nil || s.Hold != base || s.Exact != base || s.BeyondLimit {
			t.Errorf("base %v: got %+v, %v", base, s, err)
		}
		if math.Abs(s.SameTemperatureGauge.PSI()-15) > 1e-6 {
			t.Errorf("base %v: the same temperature at %v psi", base, s.SameTemperatureGauge.PSI())
		}
	}
}

func TestLimit(t *testing.T) {
	for _, tc := range []struct {
		name      string
		base      time.Duration
		elevation unit.Metres
		psi       float64
		beyond    bool
	}{
		{"90 min at 1600 m", usual, 1600, 15, false},
		{"90 min at 2500 m, 247 min", usual, 2500, 15, true},
		{"150 min at 1000 m, 228 min", 150 * time.Minute, 1000, 15, false},
		{"150 min at 1600 m, 291 min", 150 * time.Minute, 1600, 15, true},
		{"10 psi at the sea", usual, 0, 10, true},
		{"a long base by itself", 6 * time.Hour, 0, 15, false},
		{"a long base on a hot pot", 6 * time.Hour, 0, 17, false},
		{"a long base, lengthened", 6 * time.Hour, 500, 15, true},
		{"four hours by itself", hold.Limit, 0, 15, false},
		{"open steam", usual, 0, 0, true},
		{"more than a Duration counts", 24 * time.Hour, 11000, 0, true},
	} {
		s, err := hold.Scale(tc.base, tc.elevation, unit.PSI(tc.psi))
		if err != nil || s.BeyondLimit != tc.beyond {
			t.Errorf("%s: got %+v, %v, want beyond %v", tc.name, s, err, tc.beyond)
		}
	}
}

// TestRoundingUp stands on both sides of a whole minute: the hold that makes
// exactly 100 min, a second less and a second more of it.
func TestRoundingUp(t *testing.T) {
	here, err := steam.Temperature(unit.PSI(15), 300)
	if err != nil {
		t.Fatal(err)
	}
	sea, err := steam.Temperature(hold.ReferenceGauge(), 0)
	if err != nil {
		t.Fatal(err)
	}
	for exact, want := range map[time.Duration]time.Duration{
		100*time.Minute - time.Second: 100 * time.Minute,
		100 * time.Minute:             100 * time.Minute,
		100*time.Minute + time.Second: 101 * time.Minute,
	} {
		s, err := hold.Scale(lethality.Equivalent(exact, here, sea), 300, unit.PSI(15))
		if err != nil || s.Hold != want {
			t.Errorf("%v: got %+v, %v, want %v", exact, s, err, want)
		}
	}
}

func TestScaleNeverShortens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := time.Duration(rapid.IntRange(1, 24*60).Draw(t, "minutes")) * time.Minute
		elevation := unit.Metres(rapid.Float64Range(-430, 11000).Draw(t, "elevation"))
		gauge := unit.GaugeKPa(rapid.Float64Range(0, 1000).Draw(t, "gauge"))
		s, err := hold.Scale(base, elevation, gauge)
		if err != nil {
			t.Fatal(err)
		}
		const endless = math.MaxInt64 - time.Minute
		short := s.Hold < s.Exact-time.Millisecond && s.Exact < endless
		if s.Hold < base || short || s.Hold%time.Minute != 0 {
			t.Errorf("base %v: %+v", base, s)
		}
		if s.Hold > base && s.Hold-s.Exact > time.Minute {
			t.Errorf("base %v: %+v rounds up by more than a minute", base, s)
		}
		if s.BeyondLimit != (s.Hold > base && s.Hold > hold.Limit) {
			t.Errorf("base %v: %+v", base, s)
		}
		higher, err := hold.Scale(base, min(elevation+100, 11000), gauge)
		if err != nil || higher.Hold < s.Hold {
			t.Errorf("base %v: %v, a hundred metres higher %v, %v", base, s.Hold, higher.Hold, err)
		}
	})
}

func TestRangesAreRefused(t *testing.T) {
	for _, tc := range []struct {
		name      string
		of        unit.Quantity
		base      time.Duration
		elevation unit.Metres
		gauge     unit.GaugeKPa
	}{
		{"no hold", unit.Hold, 0, 0, 100},
		{"a negative hold", unit.Hold, -time.Hour, 0, 100},
		{"two days", unit.Hold, 48 * time.Hour, 0, 100},
		{"a plane", unit.Elevation, usual, 12000, 100},
		{"suction", unit.Gauge, usual, 0, -1},
		{"not a gauge", unit.Gauge, usual, 0, unit.GaugeKPa(math.NaN())},
	} {
		var out *unit.RangeError
		_, err := hold.Scale(tc.base, tc.elevation, tc.gauge)
		if !errors.As(err, &out) || out.Quantity != tc.of {
			t.Errorf("%s: got %v, want a range error of the %v", tc.name, err, tc.of)
		}
	}
}
