package cooling_test

import (
	"testing"
	"time"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/unit"
)

// tester is what *testing.T, *testing.B and *rapid.T share.
type tester interface {
	Helper()
	Fatal(args ...any)
}

func bag(t tester, lb float64) cooling.Body {
	t.Helper()
	b, err := cooling.Bag(unit.Pounds(lb))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func jar(t tester, quarts float64) cooling.Body {
	t.Helper()
	b, err := cooling.Jar(unit.USQuarts(quarts))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func forecast(t tester, q cooling.Question) *cooling.Forecast {
	t.Helper()
	f, err := cooling.New(q)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func after(d time.Duration) *time.Duration { return &d }

// TestCommonPractice: out of the pot to 27 °C in a room of 20 °C, as growers have
// it (common practice, no source; bags of 5 lb "overnight"). The middle of the
// forecast lies in their range, give or take 15 %.
func TestCommonPractice(t *testing.T) {
	for _, c := range []struct {
		name   string
		body   cooling.Body
		lo, hi float64 // hours
	}{
		{"pint jar", jar(t, 0.5), 3, 5},
		{"quart jar", jar(t, 1), 5, 8},
		{"half gallon jar", jar(t, 2), 8, 12},
		{"3 lb bag", bag(t, 3), 8, 12},
		{"5 lb bag", bag(t, 5), 10, 18},
		{"10 lb bag", bag(t, 10), 18, 30},
	} {
		f := forecast(t, cooling.Question{Body: c.body, Room: cooling.ToldRoom(20), Lifted: after(0), Limit: 27})
		if got := f.Cool().Mid.Hours(); got < 0.85*c.lo || got > 1.15*c.hi {
			t.Errorf("%s: %.1f h, want %g to %g", c.name, got, c.lo, c.hi)
		}
	}
}

// BenchmarkForecast is an evening's question: a 5 lb bag, lifted out after 50 min,
// two readings, when, and how warm now.
func BenchmarkForecast(b *testing.B) {
	q := cooling.Question{
		Body: bag(b, 5), Lifted: after(50 * time.Minute), Limit: 27, Room: cooling.ToldRoom(21),
		Readings: []cooling.Reading{
			{After: 2 * time.Hour, Temp: 52, Place: cooling.Skin},
			{After: 260 * time.Minute, Temp: 38, Place: cooling.Skin},
		},
	}
	for b.Loop() {
		f := forecast(b, q)
		_ = f.Cool()
		_ = f.At(cooling.Core, 5*time.Hour)
	}
}
