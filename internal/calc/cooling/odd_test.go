package cooling_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/unit"
)

// evening is a 5 lb bag, lifted out at 50 min, with a good reading.
func evening(t testing.TB) cooling.Question {
	t.Helper()
	return cooling.Question{
		Body: bag(t, 5), Room: cooling.ToldRoom(20), Lifted: after(50 * time.Minute), Limit: 27,
		Readings: []cooling.Reading{{After: 3 * time.Hour, Temp: 40, Place: cooling.Skin}},
	}
}

// TestOdd: what can't be is named and left out, and the estimate is what it was.
func TestOdd(t *testing.T) {
	want := forecast(t, evening(t)).Cool()
	for _, c := range []struct {
		name string
		r    cooling.Reading
		why  cooling.Oddity
		// fahrenheit is what the number is in °F, NaN where that is no likely reading.
		fahrenheit float64
	}{
		{"hotter than steam", cooling.Reading{After: time.Hour, Temp: 140, Place: cooling.Skin}, cooling.HotterThanSteam, 60},
		{"°F without F", cooling.Reading{After: 3 * time.Hour, Temp: 115, Place: cooling.Skin}, cooling.HotterThanSteam, 46.1},
		{"°F under 100", cooling.Reading{After: 7 * time.Hour, Temp: 88, Place: cooling.Skin}, cooling.TooHot, 31.1},
		{"70 °C after a day", cooling.Reading{After: 24 * time.Hour, Temp: 70, Place: cooling.Core}, cooling.TooHot, 21.1},
		{"200 °C", cooling.Reading{After: 24 * time.Hour, Temp: 200, Place: cooling.Core}, cooling.HotterThanSteam, math.NaN()},
		{"cold at once", cooling.Reading{After: 20 * time.Minute, Temp: 22, Place: cooling.Core}, cooling.TooCold, math.NaN()},
		{"colder than the room", cooling.Reading{After: 9 * time.Hour, Temp: 5, Place: cooling.Skin}, cooling.TooCold, math.NaN()},
		{"rising", cooling.Reading{After: 4 * time.Hour, Temp: 46, Place: cooling.Skin}, cooling.Rising, math.NaN()},
		{"before zero", cooling.Reading{After: -time.Minute, Temp: 99, Place: cooling.Skin}, cooling.BeforeZero, math.NaN()},
		{"no number", cooling.Reading{After: 4 * time.Hour, Temp: unit.Celsius(math.NaN()), Place: cooling.Skin}, cooling.NoNumber, math.NaN()},
	} {
		q := evening(t)
		q.Readings = append(q.Readings, c.r)
		f := forecast(t, q)
		odd := f.Odd()
		if len(odd) != 1 || odd[0].Why != c.why || odd[0].Index != 1 {
			t.Errorf("%s: got %+v, want one, %v", c.name, odd, c.why)
			continue
		}
		switch got := odd[0].Fahrenheit; {
		case (got == nil) != math.IsNaN(c.fahrenheit):
			t.Errorf("%s: in °F %v, want %g", c.name, got, c.fahrenheit)
		case got != nil && math.Abs(float64(*got)-c.fahrenheit) > 0.1:
			t.Errorf("%s: in °F %v, want %g", c.name, *got, c.fahrenheit)
		}
		if got := f.Cool(); got != want {
			t.Errorf("%s: cool %v, without it %v", c.name, got, want)
		}
	}
}

// TestNotOdd: what a kitchen shows isn't called odd.
func TestNotOdd(t *testing.T) {
	for _, r := range []cooling.Reading{
		{After: 0, Temp: 99, Place: cooling.Skin},
		{After: 10 * time.Minute, Temp: 97, Place: cooling.Core},
		{After: 210 * time.Minute, Temp: 41, Place: cooling.Skin}, // a kelvin more, half an hour later
		{After: 200 * time.Minute, Temp: 60, Place: cooling.Between},
		{After: 7 * time.Hour, Temp: 31, Place: cooling.Skin},
		{After: 24 * time.Hour, Temp: 21, Place: cooling.Skin},
		{After: 48 * time.Hour, Temp: 18.5, Place: cooling.Skin},
	} {
		q := evening(t)
		q.Readings = append(q.Readings, r)
		if odd := forecast(t, q).Odd(); len(odd) != 0 {
			t.Errorf("%+v: %v", r, odd)
		}
	}
}

// TestHeavyTails: a reading that is wrong and not impossible moves the middle by
// less than its range, and the next two good ones bring it back.
func TestHeavyTails(t *testing.T) {
	q := evening(t)
	base := forecast(t, q)
	good := base.Cool()
	q.Readings = append(q.Readings, read(base, 5*time.Hour, cooling.Skin, 9))
	bad := forecast(t, q)
	if len(bad.Odd()) != 0 {
		t.Fatalf("odd: %v", bad.Odd())
	}
	if moved := bad.Cool().Mid - good.Mid; moved <= 0 || moved > good.Hi-good.Mid {
		t.Errorf("moved by %v, range was %v", moved, good)
	}
	q.Readings = append(q.Readings, read(base, 6*time.Hour, cooling.Skin, 0), read(base, 7*time.Hour, cooling.Skin, 0))
	if back := forecast(t, q).Cool().Mid; math.Abs(float64(back-good.Mid)) > 0.5*float64(bad.Cool().Mid-good.Mid) {
		t.Errorf("after two good ones %v, was %v, bad %v", back, good.Mid, bad.Cool().Mid)
	}
}

// TestAnyReadings: whatever is typed, the answer is a range of times, and what
// isn't odd is within what could be expected.
func TestAnyReadings(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		q := drawn(rt)
		for range rapid.IntRange(0, 12).Draw(rt, "readings") {
			q.Readings = append(q.Readings, cooling.Reading{
				After:  time.Duration(rapid.Int64Range(-int64(time.Hour), int64(96*time.Hour)).Draw(rt, "after")),
				Temp:   unit.Celsius(rapid.Float64Range(-30, 250).Draw(rt, "temp")),
				Place:  rapid.SampledFrom([]cooling.Place{cooling.Skin, cooling.Between, cooling.Core}).Draw(rt, "place"),
				Error:  unit.Kelvins(rapid.Float64Range(0, 5).Draw(rt, "error")),
				Spread: rapid.Float64Range(0, 0.5).Draw(rt, "spread"),
			})
		}
		f := forecast(rt, q)
		c := f.Cool()
		if !(0 < c.Lo && c.Lo <= c.Mid && c.Mid <= c.Hi && c.Hi <= cooling.Horizon) {
			rt.Fatalf("cool %v", c)
		}
		if core := f.At(cooling.Core, c.Mid); !(core.Lo <= core.Mid && core.Mid <= core.Hi) || math.IsNaN(float64(core.Mid)) {
			rt.Fatalf("core %v", core)
		}
		for _, odd := range f.Odd() {
			if odd.Reading != q.Readings[odd.Index] || !(odd.Lo < odd.Hi) {
				rt.Fatalf("odd %+v", odd)
			}
		}
	})
}
