package cooling

import (
	"math"
	"time"

	"ryebell/internal/calc/unit"
)

// Forecast is what is believed of one unit's cooling, with its readings.
type Forecast struct {
	question Question
	boiling  unit.Celsius
	fan      fan
	odd      []Odd
	floor    floor
	weights  []float64
	arrival  spread // of ln seconds until the core is at the limit
}

// Span is a time with its range, after zero pressure: the median, and the ends
// between which it lies four times of five. An end at Horizon means that it may
// never be.
type Span struct{ Mid, Lo, Hi time.Duration }

// Warmth is a temperature with its range: the median, and the ends between which
// it lies four times of five.
type Warmth struct{ Mid, Lo, Hi unit.Celsius }

// negligible is the share of a hypothesis that changes nothing: all of them together
// make less than two thousandths.
const negligible = 1e-6

// The shares below the ends of a range.
const (
	lowEnd  = 0.1
	highEnd = 0.9
)

// New makes a forecast. An elevation outside the ranges of steam.Atmosphere, no
// Body, a Limit outside LowestLimit to HighestLimit or a room over that are a
// *unit.RangeError. Odd readings are no error: they are left out, and Odd lists
// them.
func New(q Question) (*Forecast, error) {
	q, boiling, err := q.checked()
	if err != nil {
		return nil, err
	}
	f := &Forecast{question: q, boiling: boiling, fan: newFan(q, boiling)}
	used := f.sort(q.Readings)
	if n := len(used); n > 0 {
		last := used[n-1]
		f.floor = newFloor(last.After.Seconds(), float64(last.Temp.Minus(q.Room.Mid)/boiling.Minus(q.Room.Mid)))
	} else {
		f.floor = newFloor(0, 0)
	}
	f.weights = f.fan.weigh(used)
	f.arrival = f.arrivals()
	return f, nil
}

// Boiling is where the cooling started: the kitchen's boiling point.
func (f *Forecast) Boiling() unit.Celsius { return f.boiling }

// Odd lists the readings that can't be, or hardly; they are not in the estimate.
func (f *Forecast) Odd() []Odd { return f.odd }

// Cool is when the core will be at the limit, or was.
func (f *Forecast) Cool() Span {
	return Span{Mid: f.By(0.5), Lo: f.By(lowEnd), Hi: f.By(highEnd)}
}

// By is the time by which the core is at or under the limit with a chance p:
// By(0.8) is when four of five would be. Horizon if it never gets so sure.
func (f *Forecast) By(p unit.Fraction) time.Duration {
	ln := f.arrival.quantile(float64(p))
	if ln >= math.Log(Horizon.Seconds()) {
		return Horizon
	}
	return time.Duration(math.Exp(ln) * float64(time.Second))
}

// Chance is that of the core being at or under the limit at a time.
func (f *Forecast) Chance(after time.Duration) unit.Fraction {
	if after <= 0 {
		return 0
	}
	return unit.Fraction(f.arrival.below(math.Log(after.Seconds())))
}

// At is how warm a place is, was or will be. What the readings themselves show is
// not repeated: it is the belief about the body.
func (f *Forecast) At(p Place, after time.Duration) Warmth {
	s := newSpread(f.fan.coldest(), float64(f.boiling))
	for _, way := range f.floor.ways {
		t := f.floor.clock(after.Seconds(), way)
		f.fan.each(func(h hypothesis) {
			core, skin := h.excess(t)
			share := f.fan.body.share(p, core, skin, 0)
			for r, room := range f.fan.rooms {
				if w := f.weights[h.first+r]; w > negligible {
					s.add(room.at+(float64(f.boiling)-room.at)*share, w*way.weight)
				}
			}
		})
	}
	return s.warmth()
}

// Room is what the room is believed to be.
func (f *Forecast) Room() Warmth {
	s := newSpread(f.fan.coldest(), f.fan.warmest())
	f.fan.each(func(h hypothesis) {
		for r, room := range f.fan.rooms {
			// A room stands for the strip around it.
			s.addOver(room.at-f.fan.strip/2, room.at+f.fan.strip/2, f.weights[h.first+r])
		}
	})
	return s.warmth()
}

// Scale is what the readings leave of the prior: the time scale of this run.
func (f *Forecast) Scale() Prior {
	var sum, mean, square float64
	f.fan.each(func(h hypothesis) {
		for r := range f.fan.rooms {
			w := f.weights[h.first+r]
			sum, mean, square = sum+w, mean+w*h.slower, square+w*h.slower*h.slower
		}
	})
	mean, square = mean/sum, square/sum
	return Prior{
		Slower: mean, Spread: math.Sqrt(max(square-mean*mean, 0)),
		Runs: f.question.Prior.Runs,
	}
}

// arrivals spreads the times at which the core gets to the limit.
func (f *Forecast) arrivals() spread {
	s := newSpread(math.Log(60), math.Log(Horizon.Seconds()))
	reached := f.fan.reached(float64(f.question.Limit))
	f.fan.each(func(h hypothesis) {
		for r := range f.fan.rooms {
			w := f.weights[h.first+r]
			if w <= negligible {
				continue
			}
			t := reached.at(h, r)
			for _, way := range f.floor.ways {
				s.add(math.Log(max(f.floor.arrives(t, way), 1)), w*way.weight)
			}
		}
	})
	return s
}
