package cooling

import (
	"math"
	"os"
	"testing"
	"time"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/unit"
)

// TestPriorAlone: without readings, in a room that is known, the time to the limit
// spreads as the time scale does. The check values have the same for one time
// constant: ln τ ~ N(μ, 0.5²) (grid posterior by NumPy 1.24.2).
func TestPriorAlone(t *testing.T) {
	can, err := Cylinder(0.043, 0.06)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range calctest.Rows(t, os.DirFS("testdata"), "tau_posterior.csv") {
		if row.Text("case") != "prior only" {
			continue
		}
		lifted := time.Duration(0)
		f, err := New(Question{
			Body: can, Lifted: &lifted, Limit: 27, Room: Room{Mid: 21, Doubt: 1e-6},
			Prior: Prior{Spread: row.Float("prior_sd")},
		})
		if err != nil {
			t.Fatal(err)
		}
		middle := f.By(0.5).Hours()
		for column, p := range map[string]float64{"p10": 0.1, "p80": 0.8, "p90": 0.9} {
			want := row.Float("hours_to_limit_"+column) / row.Float("hours_to_limit_p50")
			if got := f.By(unit.Fraction(p)).Hours() / middle; math.Abs(got/want-1) > 0.03 {
				t.Errorf("%s: %.3f of the middle, want %.3f", column, got, want)
			}
		}
	}
}
