package cooling_test

import (
	"math"
	"testing"
	"time"

	"ryebell/internal/calc/cooling"
)

// TestSlowKitchen: bags that cool 40 % slower. Runs teach it, the ranges narrow, and
// what happens next lies in them.
func TestSlowKitchen(t *testing.T) {
	truth := cooling.Usual().Slower + math.Log(1.4)
	q := cooling.Question{Body: bag(t, 5), Room: cooling.ToldRoom(20), Lifted: after(40 * time.Minute), Limit: 27}
	q.Prior = cooling.Prior{Slower: truth, Spread: 0.01}
	real := forecast(t, q)
	q.Prior = cooling.Prior{}

	var past []cooling.Past
	widths := []float64{width(forecast(t, q), 0)}
	for range 5 {
		run := q
		run.Readings = []cooling.Reading{
			read(real, 4*time.Hour, cooling.Skin, 0.5), read(real, 9*time.Hour, cooling.Skin, -0.5),
		}
		p, said, err := cooling.Observe(run)
		if err != nil || !said {
			t.Fatalf("%v, %v, %v", p, said, err)
		}
		past = append(past, p)
		q.Prior = cooling.Learn(cooling.Usual(), past)
		widths = append(widths, width(forecast(t, q), 0))
	}
	if got := q.Prior.Slower; math.Abs(got-truth) > 0.1 || q.Prior.Runs != 5 {
		t.Errorf("learnt %v, truth %.2f", q.Prior, truth)
	}
	if widths[5] > 0.95*widths[0] {
		t.Errorf("widths %.2f", widths)
	}
	c, is := forecast(t, q).Cool(), real.Cool().Mid
	if is < c.Lo || is > c.Hi {
		t.Errorf("forecast %v, is %v", c, is)
	}
}

// TestLearn: no runs leave what was believed; many never narrow beyond the floor; a
// kitchen that changes is followed within five runs; what isn't a number is nothing.
func TestLearn(t *testing.T) {
	base := cooling.Usual()
	if got := cooling.Learn(base, nil); got != base {
		t.Errorf("no runs: %v, want %v", got, base)
	}
	var past []cooling.Past
	for range 200 {
		past = append(past, cooling.Past{Slower: 0, Spread: 0.05})
	}
	settled := cooling.Learn(base, past)
	if settled.Spread < 0.13 || settled.Spread > 0.2 {
		t.Errorf("200 runs: %v", settled)
	}
	for range 5 {
		past = append(past, cooling.Past{Slower: 0.4, Spread: 0.05})
	}
	if got := cooling.Learn(base, past).Slower; got < 0.2 {
		t.Errorf("five runs after a change to 0.4: %.2f", got)
	}
	for _, bad := range []cooling.Past{{Slower: math.NaN(), Spread: 0.1}, {Slower: 1}, {Slower: 1, Spread: math.Inf(1)}} {
		if got := cooling.Learn(base, []cooling.Past{bad}); got != base {
			t.Errorf("%v: %v", bad, got)
		}
	}
}

// TestObserveNothing: without readings a run says nothing.
func TestObserveNothing(t *testing.T) {
	q := cooling.Question{Body: bag(t, 5), Limit: 27, Lifted: after(0)}
	if p, said, err := cooling.Observe(q); said || err != nil {
		t.Errorf("%v, %v, %v", p, said, err)
	}
	q.Readings = []cooling.Reading{{After: 50 * time.Hour, Temp: 20, Place: cooling.Skin}}
	if p, said, err := cooling.Observe(q); err != nil || said && p.Spread < 0.4 {
		t.Errorf("a bag that has been cold for long: %v, %v, %v", p, said, err)
	}
}
