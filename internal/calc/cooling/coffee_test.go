package cooling

import (
	"os"
	"testing"
	"time"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

// cup is a mug of a liquid, which mixes as it cools: a body that conducts well.
func cup(t *testing.T) Body {
	t.Helper()
	b, err := Cylinder(0.04, 0.04)
	if err != nil {
		t.Fatal(err)
	}
	b.filled = material{conductivity: 50, heat: 4.18e6}
	return b
}

// height is where water boils at t: a cup that starts there starts as a jar does.
func height(t *testing.T, at unit.Celsius) unit.Metres {
	t.Helper()
	lo, hi := unit.Metres(0), unit.Metres(11000)
	for range 50 {
		mid := (lo + hi) / 2
		boiling, err := steam.BoilingPoint(mid)
		if err != nil {
			t.Fatal(err)
		}
		if boiling > at {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// TestCoffee: two cups that were measured (Gould and Tobochnik), not early. From one
// reading a single time constant says the limit comes up to 28 % too early, since a
// hot open cup steams; no jar or bag does that much, and the model has no steam.
// Still the ping at four of five comes no more than 5 % early, the middle is less
// than 0.6 times as early as one constant, and what happened lies in the range.
func TestCoffee(t *testing.T) {
	start := map[string]unit.Celsius{"coffee black": 82.3, "coffee with cream": 68.8}
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "one_tau_bias.csv") {
		from, ok := start[row.Text("curve")]
		if !ok {
			continue
		}
		lifted := time.Duration(0)
		f, err := New(Question{
			Body: cup(t), Elevation: height(t, from), Lifted: &lifted,
			Room:  Room{Mid: unit.Celsius(row.Float("room_C")), Doubt: 0.5},
			Limit: unit.Celsius(row.Float("limit_C")), Prior: Prior{Spread: 0.5},
			Readings: []Reading{{
				After: time.Duration(row.Float("reading_at") * float64(time.Minute)),
				Temp:  unit.Celsius(row.Float("reading_C")), Place: Core, Error: 0.3,
			}},
		})
		if err != nil {
			t.Fatal(err)
		}
		actual, oneTau := row.Float("actual_time_to_limit"), row.Float("predicted_time_to_limit")
		c := f.Cool()
		// What the grower is told: measure when four of five would be cool.
		if got := f.By(0.8).Minutes(); got < 0.95*actual {
			t.Errorf("%s, reading at %s min: four of five at %.1f min, was %.1f; one constant %.1f",
				row.Text("curve"), row.Text("reading_at"), got, actual, oneTau)
		}
		// The middle is at most half as early as one constant, and within the range.
		if got := c.Mid.Minutes(); actual-got > 0.6*(actual-oneTau) || got > 1.05*actual {
			t.Errorf("%s, reading at %s min: %.1f min, was %.1f; one constant %.1f",
				row.Text("curve"), row.Text("reading_at"), got, actual, oneTau)
		}
		if lo, hi := c.Lo.Minutes(), c.Hi.Minutes(); actual < lo || actual > hi {
			t.Errorf("%s, reading at %s min: %.1f to %.1f min, was %.1f",
				row.Text("curve"), row.Text("reading_at"), lo, hi, actual)
		}
	}
}
