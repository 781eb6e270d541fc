package cooling_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/unit"
)

// drawn is a question out of a kitchen, without readings.
func drawn(t *rapid.T) cooling.Question {
	q := cooling.Question{
		Elevation: unit.Metres(rapid.Float64Range(0, 3000).Draw(t, "elevation")),
		Room:      cooling.ToldRoom(unit.Celsius(rapid.Float64Range(12, 24).Draw(t, "room"))),
		Spacing:   rapid.SampledFrom([]cooling.Spacing{cooling.Apart, cooling.Close, cooling.Crowded}).Draw(t, "spacing"),
		Limit:     unit.Celsius(rapid.Float64Range(27, 30).Draw(t, "limit")),
	}
	if rapid.Bool().Draw(t, "jar") {
		q.Body = jar(t, rapid.Float64Range(0.25, 4).Draw(t, "quarts"))
	} else {
		q.Body = bag(t, rapid.Float64Range(1, 12).Draw(t, "lb"))
	}
	if rapid.Bool().Draw(t, "lifted") {
		q.Lifted = after(time.Duration(rapid.IntRange(0, 300).Draw(t, "minutes in the pot")) * time.Minute)
	}
	return q
}

// read is a reading that agrees with a forecast's own middle, off by some kelvins.
func read(f *cooling.Forecast, at time.Duration, p cooling.Place, off float64) cooling.Reading {
	return cooling.Reading{After: at, Temp: f.At(p, at).Mid.Plus(unit.Kelvins(off)), Place: p}
}

// TestOrder: in every answer the ends stand on their sides, the core is warmer than
// the skin and the room colder than both, the chance only grows and meets By.
func TestOrder(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		q := drawn(rt)
		f := forecast(rt, q)
		if rapid.Bool().Draw(rt, "read") {
			at := f.Cool().Lo / 2
			q.Readings = []cooling.Reading{read(f, at, cooling.Skin, rapid.Float64Range(-3, 3).Draw(rt, "off"))}
			f = forecast(rt, q)
		}
		c := f.Cool()
		if !(0 < c.Lo && c.Lo < c.Mid && c.Mid < c.Hi && c.Hi <= cooling.Horizon) {
			rt.Fatalf("cool %v", c)
		}
		before := unit.Fraction(0)
		for at := c.Lo / 4; at < 2*c.Hi; at += c.Mid / 4 {
			core, between, skin := f.At(cooling.Core, at), f.At(cooling.Between, at), f.At(cooling.Skin, at)
			if !(skin.Mid < between.Mid && between.Mid < core.Mid && core.Mid <= f.Boiling()) {
				rt.Fatalf("after %v: skin %v, between %v, core %v", at, skin, between, core)
			}
			if !(core.Lo <= core.Mid && core.Mid <= core.Hi) {
				rt.Fatalf("after %v: core %v", at, core)
			}
			p := f.Chance(at)
			if p < before || p > 1 {
				rt.Fatalf("after %v: a chance of %v, before it %v", at, p, before)
			}
			before = p
		}
		if p := f.Chance(c.Mid); math.Abs(float64(p)-0.5) > 1e-6 {
			rt.Fatalf("a chance of %v at the middle", p)
		}
		if core := f.At(cooling.Core, c.Mid).Mid; math.Abs(float64(core.Minus(q.Limit))) > 0.6 {
			rt.Fatalf("at the middle of the times the core is at %v, limit %v", core, q.Limit)
		}
	})
}

// TestMonotone: a larger body, a lower limit, a warmer room, a later lifting, a
// crowd, a slower kitchen and a warmer reading never bring the middle forward. (Of a
// reading that is far off less is believed: so it may, by a little.)
func TestMonotone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		q := drawn(rt)
		q.Body = bag(rt, rapid.Float64Range(1, 10).Draw(rt, "weight"))
		base := forecast(rt, q)
		mid := base.Cool().Mid
		at := mid / 3
		q.Readings = []cooling.Reading{read(base, at, cooling.Skin, 0)}
		mid = forecast(rt, q).Cool().Mid

		warmer := q
		warmer.Readings = []cooling.Reading{read(base, at, cooling.Skin, rapid.Float64Range(0.5, 2.5).Draw(rt, "warmer"))}
		q.Readings = nil
		plain := base.Cool().Mid
		larger, lower, warm, later, crowd, slower := q, q, q, q, q, q
		larger.Body = bag(rt, 12)
		lower.Limit -= 2
		warm.Room.Mid += 1.5
		if q.Lifted != nil {
			later.Lifted = after(*q.Lifted + time.Hour)
		}
		crowd.Spacing = cooling.Crowded
		slower.Prior = cooling.Usual()
		slower.Prior.Slower += 0.1
		for name, c := range map[string]struct {
			q    cooling.Question
			from time.Duration
		}{
			"warmer reading": {warmer, mid}, "larger": {larger, plain}, "lower limit": {lower, plain},
			"warmer room": {warm, plain}, "lifted later": {later, plain},
			"crowded": {crowd, plain}, "slower kitchen": {slower, plain},
		} {
			// Three thousandths for the histogram and the tails.
			if got := forecast(rt, c.q).Cool().Mid; float64(got) < 0.997*float64(c.from) {
				rt.Fatalf("%s: %v, before %v", name, got, c.from)
			}
		}
	})
}

// width is how many times the far end is the near one, from the last reading on, in
// logarithms.
func width(f *cooling.Forecast, since time.Duration) float64 {
	c := f.Cool()
	return math.Log(float64(c.Hi-since) / float64(c.Lo-since))
}

// TestReadingsNarrow: a reading narrows, and no number of readings takes the floor
// away: 80 % within 12 % either way of the remaining time.
func TestReadingsNarrow(t *testing.T) {
	q := cooling.Question{Body: bag(t, 5), Room: cooling.ToldRoom(20), Lifted: after(0), Limit: 27}
	base := forecast(t, q)
	without := width(base, 0)
	q.Readings = append(q.Readings, read(base, 5*time.Hour, cooling.Skin, 0))
	one := width(forecast(t, q), 0)
	for i := range 30 {
		at := 5*time.Hour + time.Duration(i)*time.Minute
		q.Readings = append(q.Readings, read(base, at, cooling.Core, 0))
	}
	many := forecast(t, q)
	if one > 0.92*without {
		t.Errorf("one reading: %.2f wide, without %.2f", one, without)
	}
	if got := width(many, 5*time.Hour+29*time.Minute); got < 2*0.115 {
		t.Errorf("thirty readings: %.3f wide in the remaining time", got)
	}
}

// TestWhoWasRead: the unit itself says more than its neighbour, and that more than
// one of another size; what is read in the middle says more than the skin.
func TestWhoWasRead(t *testing.T) {
	q := cooling.Question{Body: bag(t, 5), Room: cooling.ToldRoom(20), Lifted: after(0), Limit: 27}
	base := forecast(t, q)
	with := func(change func(*cooling.Reading)) float64 {
		r := read(base, 5*time.Hour, cooling.Skin, 0)
		change(&r)
		asked := q
		asked.Readings = []cooling.Reading{r}
		return width(forecast(t, asked), 0)
	}
	own := with(func(*cooling.Reading) {})
	neighbour := with(func(r *cooling.Reading) { r.Spread = cooling.SameSizeSpread })
	other := with(func(r *cooling.Reading) { r.Spread = cooling.OtherSizeSpread })
	core := with(func(r *cooling.Reading) { *r = read(base, 5*time.Hour, cooling.Core, 0) })
	vague := with(func(r *cooling.Reading) { r.Error = 4 })
	if !(core < own && own < neighbour && neighbour < other && own < vague && other < width(base, 0)) {
		t.Errorf("core %.3f, own %.3f, neighbour %.3f, other size %.3f, vague %.3f, none %.3f",
			core, own, neighbour, other, vague, width(base, 0))
	}
}

// TestOtherSize: what a quart jar shows of the kitchen holds for its bags. Both
// clocks are slow: the jar's reading must move the bag later.
func TestOtherSize(t *testing.T) {
	room, out := cooling.ToldRoom(20), after(0)
	q := cooling.Question{Body: jar(t, 1), Room: room, Lifted: out, Limit: 27}
	slow := q
	slow.Prior = cooling.Prior{Slower: 0.4, Spread: 0.05}
	r := read(forecast(t, slow), 3*time.Hour, cooling.Skin, 0)
	r.Body, r.Spread = q.Body, cooling.OtherSizeSpread
	q.Body = bag(t, 5)
	before := forecast(t, q).Cool().Mid
	q.Readings = []cooling.Reading{r}
	if got := forecast(t, q).Cool().Mid; float64(got) < 1.1*float64(before) {
		t.Errorf("%v, without the jar %v", got, before)
	}
}

// TestRoomIsLearnt: a skin that stays at 25 °C after two days says that the room
// isn't at 20.
func TestRoomIsLearnt(t *testing.T) {
	q := cooling.Question{Body: jar(t, 1), Lifted: after(0), Limit: 28}
	if got := forecast(t, q).Room(); math.Abs(float64(got.Mid-20)) > 0.1 || got.Hi-got.Lo < 6.5 || got.Hi-got.Lo > 8.5 {
		t.Errorf("nobody said: %v", got)
	}
	q.Readings = []cooling.Reading{{After: 30 * time.Hour, Temp: 25, Place: cooling.Skin}}
	if got := forecast(t, q).Room(); got.Mid < 23.5 || got.Hi-got.Lo > 4 {
		t.Errorf("after a reading of 25 °C: %v", got)
	}
}

// TestNeverCool: over a room warmer than the limit nothing gets cool.
func TestNeverCool(t *testing.T) {
	f := forecast(t, cooling.Question{Body: jar(t, 1), Room: cooling.Room{Mid: 33, Doubt: 0.5}, Lifted: after(0), Limit: 27})
	if c := f.Cool(); c.Mid != cooling.Horizon || f.Chance(cooling.Horizon) > 0 {
		t.Errorf("%v, a chance of %v", c, f.Chance(cooling.Horizon))
	}
}

func TestRefuses(t *testing.T) {
	good := cooling.Question{Body: jar(t, 1), Limit: 27}
	if _, err := cooling.New(good); err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string]func(*cooling.Question){
		"no body":   func(q *cooling.Question) { q.Body = cooling.Body{} },
		"no limit":  func(q *cooling.Question) { q.Limit = 0 },
		"no number": func(q *cooling.Question) { q.Limit = unit.Celsius(math.NaN()) },
		"a furnace": func(q *cooling.Question) { q.Room = cooling.ToldRoom(90) },
		"in space":  func(q *cooling.Question) { q.Elevation = 1e6 },
		"doubt":     func(q *cooling.Question) { q.Room.Doubt = -1; q.Room.Mid = 20 },
		"spread":    func(q *cooling.Question) { q.Prior.Spread = -1 },
	} {
		q := good
		change(&q)
		var outside *unit.RangeError
		if _, err := cooling.New(q); !errors.As(err, &outside) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, make := range []func() error{
		func() error { _, err := cooling.Jar(-1); return err },
		func() error { _, err := cooling.Bag(unit.Grams(math.NaN())); return err },
		func() error { _, err := cooling.Brick(-0.1, -0.1, 0.1); return err },
		func() error { _, err := cooling.Cylinder(1, 1); return err },
	} {
		var outside *unit.RangeError
		if err := make(); !errors.As(err, &outside) {
			t.Errorf("a body that can't be: %v", err)
		}
	}
}

// TestBetweenKnots: a kitchen whose curve is read between two that were drawn is as
// one that is drawn: forecasts by a prior of a hundredth and of the usual width agree
// on how warm the usual kitchen is.
func TestBetweenKnots(t *testing.T) {
	for _, slower := range []float64{-0.3, -0.1, 0.2, 0.33} {
		q := cooling.Question{Body: bag(t, 5), Room: cooling.Room{Mid: 20, Doubt: 0.01}, Lifted: after(90 * time.Minute), Limit: 27}
		q.Prior = cooling.Prior{Slower: slower, Spread: 0.001}
		narrow := forecast(t, q).Cool().Mid
		q.Prior.Spread = 0.2
		if wide := forecast(t, q).Cool().Mid; math.Abs(float64(wide)/float64(narrow)-1) > 0.01 {
			t.Errorf("slower by %g: %v, narrow %v", slower, wide, narrow)
		}
	}
}
