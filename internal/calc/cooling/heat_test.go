package cooling_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/lethality"
	"ryebell/internal/calc/unit"
)

func held(t unit.Celsius, d time.Duration) []lethality.TemperatureReading {
	return []lethality.TemperatureReading{{After: 0, Steam: t}, {After: d, Steam: t}}
}

func brick(t testing.TB, a, b, c unit.Metres) cooling.Body {
	t.Helper()
	body, err := cooling.Brick(a, b, c)
	if err != nil {
		t.Fatal(err)
	}
	return body
}

// TestHeatedThreeLitres: by conduction alone, α 1.2e-7 m²/s, from 90 °C, the middle
// of a bag of 24 × 12.5 × 10 cm is at about 104 °C after 90 min in steam of 121 °C,
// and its F0 is 0.4 min (computed with SciPy 1.10.1; given to the degree).
func TestHeatedThreeLitres(t *testing.T) {
	heat, err := cooling.Heated(brick(t, 0.12, 0.0625, 0.05), 90, held(121, 90*time.Minute))
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(float64(heat.End-104)) > 0.6 {
		t.Errorf("middle: %.2f °C, want about 104", heat.End)
	}
	if math.Abs(heat.F0.Minutes()-0.4) > 0.05 {
		t.Errorf("F0: %.2f min, want 0.4", heat.F0.Minutes())
	}
	if heat.Hottest != heat.End {
		t.Errorf("hottest %v is not the end %v of a hold", heat.Hottest, heat.End)
	}
}

// TestHeatedRamp: the middle of a wall follows steam that warms steadily by β behind
// it by β L²/(2α) (Carslaw and Jaeger, section 3.4, from memory). The brick is a wall
// nearly; α is that of the table.
func TestHeatedRamp(t *testing.T) {
	const half, hours, rise = 0.02, 5., 100.
	steam := []lethality.TemperatureReading{{After: 0, Steam: 20}, {After: 5 * time.Hour, Steam: 120}}
	heat, err := cooling.Heated(brick(t, half, 0.35, 0.35), 20, steam)
	if err != nil {
		t.Fatal(err)
	}
	want := rise / (hours * 3600) * half * half / (2 * 1.2e-7)
	if got := float64(120 - heat.End); math.Abs(got-want) > 0.02 {
		t.Errorf("%.3f K behind, want %.3f", got, want)
	}
}

// TestHeatedLongHold: with time the middle comes to the steam, and F0 of the middle
// is that of the steam less what the delay has cost, which more hold doesn't change.
func TestHeatedLongHold(t *testing.T) {
	body := jar(t, 1)
	cost := func(d time.Duration) float64 {
		heat, err := cooling.Heated(body, 20, held(121.1, d))
		if err != nil {
			t.Fatal(err)
		}
		if d >= 8*time.Hour && math.Abs(float64(heat.End-121.1)) > 0.2 {
			t.Errorf("after %v: %.2f °C", d, heat.End)
		}
		return (d - heat.F0).Minutes()
	}
	if a, b := cost(8*time.Hour), cost(12*time.Hour); math.Abs(a-b) > 2 {
		t.Errorf("the delay costs %.1f min of 8 h, %.1f min of 12 h", a, b)
	}
}

// TestHeatedMonotone: a bigger bag, a colder start or colder steam never make a
// warmer middle, and no middle is hotter than the steam.
func TestHeatedMonotone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		lb := rapid.Float64Range(0.5, 12).Draw(rt, "lb")
		start := unit.Celsius(rapid.Float64Range(5, 90).Draw(rt, "start"))
		hot := unit.Celsius(rapid.Float64Range(100, 125).Draw(rt, "steam"))
		minutes := time.Duration(rapid.IntRange(10, 300).Draw(rt, "minutes")) * time.Minute
		end := func(lb float64, start, hot unit.Celsius) unit.Celsius {
			heat, err := cooling.Heated(bag(t, lb), start, held(hot, minutes))
			if err != nil {
				rt.Fatal(err)
			}
			return heat.End
		}
		base := end(lb, start, hot)
		if base > hot+1e-9 || base < start-1e-9 {
			rt.Fatalf("%v, not from %v to %v", base, start, hot)
		}
		for name, other := range map[string]unit.Celsius{
			"bigger":       end(lb*1.2, start, hot),
			"colder start": end(lb, start-3, hot),
			"colder steam": end(lb, start, hot-3),
		} {
			if other > base+1e-9 {
				rt.Fatalf("%s: %v, over %v", name, other, base)
			}
		}
	})
}

func TestHeatedRefuses(t *testing.T) {
	var outside *unit.RangeError
	if _, err := cooling.Heated(cooling.Body{}, 20, nil); !errors.As(err, &outside) {
		t.Errorf("no body: %v", err)
	}
	if _, err := cooling.Heated(bag(t, 5), unit.Celsius(math.NaN()), held(121, time.Hour)); !errors.As(err, &outside) {
		t.Errorf("no start: %v", err)
	}
	var order *lethality.OrderError
	mixed := []lethality.TemperatureReading{{After: time.Hour, Steam: 121}, {After: 0, Steam: 121}}
	if _, err := cooling.Heated(bag(t, 5), 20, mixed); !errors.As(err, &order) {
		t.Errorf("out of order: %v", err)
	}
	heat, err := cooling.Heated(bag(t, 5), 20, held(121, 0))
	if err != nil || heat.End != 20 {
		t.Errorf("no time: %v, %v", heat, err)
	}
}
