package load_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/load"
	"ryebell/internal/calc/unit"
)

// TestWater has the usual budget (common practice and an estimate from a latent
// heat of 2.2 MJ/kg): vent 0.4 + hold × 0.6 l/h + load 0.3 + 1 l left, at least
// 3 l to 90 min, 4 l to 150, 5 l to 240.
func TestWater(t *testing.T) {
	for _, tc := range []struct {
		name string
		hold time.Duration
		with func(*load.Budget)
		want unit.Litres
	}{
		{"90 min: 2.6, so the least", 90 * time.Minute, nil, 3},
		{"a minute more", 91 * time.Minute, nil, 4},
		{"150 min: 3.2", 150 * time.Minute, nil, 4},
		{"174 min: 3.44", 174 * time.Minute, nil, 5},
		{"240 min: 4.1", 240 * time.Minute, nil, 5},
		{"6 h: 5.3", 6 * time.Hour, nil, 5.3},
		{"a thirsty pot, 240 min at 0.8: 4.9", 240 * time.Minute, boilOff(0.8), 5},
		{"a thirstier one, 240 min at 0.9: 5.3", 240 * time.Minute, boilOff(0.9), 5.3},
		{"rounded up: 150 min at 1.01 is 4.225", 150 * time.Minute, boilOff(1.01), 4.3},
		{"the maker asks more", 90 * time.Minute, func(b *load.Budget) { b.Maker = 3.85 }, 3.9},
		{"the maker asks less", 90 * time.Minute, func(b *load.Budget) { b.Maker = 2 }, 3},
		{"two vents, 150 min at 1: 4.6", 150 * time.Minute, func(b *load.Budget) { b.BoilOff, b.Vent = 1, 20*time.Minute }, 4.6},
		{"negative parts are nothing", 90 * time.Minute, func(b *load.Budget) { b.TakenUp, b.Left, b.Vent, b.BoilOff = -9, -9, -time.Hour, -1 }, 3},
	} {
		b := load.UsualBudget(tc.hold)
		if tc.with != nil {
			tc.with(&b)
		}
		if got := load.Water(b); math.Abs(float64(got-tc.want)) > 1e-9 {
			t.Errorf("%s: got %v l, want %v", tc.name, got, tc.want)
		}
	}
}

func boilOff(rate unit.LitresPerHour) func(*load.Budget) {
	return func(b *load.Budget) { b.BoilOff = rate }
}

func TestRoundUpOnBothSidesOfTheBrink(t *testing.T) {
	for l, want := range map[unit.Litres]unit.Litres{
		0: 0, 2.9: 2.9, 2.999: 3, 3: 3, 3.0000001: 3, 3.001: 3.1, 0.3: 0.3, 0.3000001: 0.3,
	} {
		if got := load.RoundUp(l); got != want {
			t.Errorf("%v l: got %v, want %v", l, got, want)
		}
	}
}

func TestLasts(t *testing.T) {
	b := load.UsualBudget(90 * time.Minute) // 1.7 l besides the hold, 0.6 l/h
	for put, want := range map[unit.Litres]time.Duration{
		2.6: 90 * time.Minute, 3.2: 150 * time.Minute, 1.7: 0, 1: 0, 0: 0,
	} {
		if got := b.Lasts(put); (got - want).Abs() > time.Millisecond {
			t.Errorf("%v l: got %v, want %v", put, got, want)
		}
	}
	b.BoilOff = 0
	if got := b.Lasts(3); got != math.MaxInt64 {
		t.Errorf("nothing boils off: got %v", got)
	}
}

func TestWaterLastsForItsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := load.Budget{
			Vent:     time.Duration(rapid.IntRange(0, 30).Draw(t, "vent")) * time.Minute,
			VentRate: unit.LitresPerHour(rapid.Float64Range(0, 4).Draw(t, "vent rate")),
			Hold:     time.Duration(rapid.IntRange(0, 600).Draw(t, "hold")) * time.Minute,
			BoilOff:  unit.LitresPerHour(rapid.Float64Range(0.05, 2).Draw(t, "boil-off")),
			TakenUp:  unit.Litres(rapid.Float64Range(0, 2).Draw(t, "taken up")),
			Left:     unit.Litres(rapid.Float64Range(0, 2).Draw(t, "left")),
			Maker:    unit.Litres(rapid.Float64Range(0, 6).Draw(t, "maker")),
		}
		w := load.Water(b)
		if b.Lasts(w) < b.Hold-time.Second {
			t.Errorf("%+v: %v l last %v", b, w, b.Lasts(w))
		}
		if w < load.LeastWater(b.Hold) || w < b.Maker-1e-6 {
			t.Errorf("%+v: %v l are under the least", b, w)
		}
		if tenths := float64(w) * 10; math.Abs(tenths-math.Round(tenths)) > 1e-9 {
			t.Errorf("%+v: %v isn't in tenths of a litre", b, w)
		}
	})
}
