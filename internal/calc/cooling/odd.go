package cooling

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ryebell/internal/calc/unit"
)

// Oddity is why a reading can't be, or hardly.
type Oddity uint8

// The oddities.
const (
	// HotterThanSteam lies over the kitchen's boiling point, after zero pressure.
	HotterThanSteam Oddity = iota + 1
	// BeforeZero was taken before zero pressure, and says nothing of the cooling.
	BeforeZero
	// TooHot is what not even the slowest kitchen shows after that time.
	TooHot
	// TooCold is what not even the fastest kitchen shows after that time.
	TooCold
	// Rising is warmer than the same unit's same place was before.
	Rising
	// NoNumber is none.
	NoNumber
)

// String is the oddity's name for logs.
func (o Oddity) String() string {
	switch o {
	case HotterThanSteam:
		return "hotter than steam"
	case BeforeZero:
		return "before zero"
	case TooHot:
		return "too hot"
	case TooCold:
		return "too cold"
	case Rising:
		return "rising"
	case NoNumber:
		return "no number"
	}
	panic(fmt.Sprintf("cooling: no oddity %d", uint8(o)))
}

// Odd is a reading that was left out, and why.
type Odd struct {
	Reading Reading
	Index   int // among the question's readings
	Why     Oddity
	// Fahrenheit is what the number would be if it was meant in °F, where that
	// would be a likely reading; else nil.
	Fahrenheit *unit.Celsius
	// Lo and Hi are what could be expected then.
	Lo, Hi unit.Celsius
}

// What makes a reading odd.
const (
	// farOff is how many standard deviations of the thermometer a reading may lie
	// outside what any of the kitchens shows.
	farOff = 3.5
	// farRise is the same for a reading over an earlier one.
	farRise = 2.5
	// farKitchen is how far a kitchen may be off at the least, in ln time, before a
	// reading of it is called odd: a learnt prior knows less than it believes.
	farKitchen = 1.05
	// roughly is how well people tell when zero and a reading were, in seconds.
	roughly = 600.
	// overSteam is what a thermometer may show over the boiling point.
	overSteam = 3.
)

// sort parts the readings into those that count, by time, and odd ones.
func (f *Forecast) sort(readings []Reading) []Reading {
	var used []Reading
	for _, at := range inOrder(readings) {
		r := readings[at]
		lo, hi := f.fan.plausible(r)
		why := f.oddity(r, lo, hi, used)
		if why == 0 {
			used = append(used, r)
			continue
		}
		odd := Odd{Reading: r, Index: at, Why: why, Lo: unit.Celsius(lo), Hi: unit.Celsius(hi)}
		if c := asFahrenheit(r.Temp); float64(c) >= lo && float64(c) <= hi && why != BeforeZero {
			odd.Fahrenheit = &c
		}
		f.odd = append(f.odd, odd)
	}
	return used
}

// oddity is what is odd about a reading, after those before it; 0 for nothing.
func (f *Forecast) oddity(r Reading, lo, hi float64, before []Reading) Oddity {
	t := float64(r.Temp)
	switch {
	case math.IsNaN(t) || math.IsInf(t, 0):
		return NoNumber
	case r.After < 0:
		return BeforeZero
	case t > float64(f.boiling)+overSteam:
		return HotterThanSteam
	case t > hi:
		return TooHot
	case t < lo:
		return TooCold
	}
	for _, b := range before {
		own := b.Spread == 0 && r.Spread == 0 && b.Place == r.Place
		if own && float64(r.Temp.Minus(b.Temp)) > farRise*math.Hypot(r.err(), b.err()) {
			return Rising
		}
	}
	return 0
}

// plausible is what any of the kitchens shows at a reading's time and place,
// within the errors of a thermometer.
func (f *fan) plausible(r Reading) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	t := r.After.Seconds() * f.asThis(r)
	further := math.Exp(max(farKitchen-farScale*f.prior.Spread, 0) + 2*r.Spread)
	f.each(func(h hypothesis) {
		if h.scale != 0 && h.scale != scales-1 {
			return
		}
		slowCore, slowSkin := h.excess((t - roughly) / further)
		fastCore, fastSkin := h.excess((t + roughly) * further)
		hi = max(hi, f.warmest()+(f.boiling-f.warmest())*f.body.share(r.Place, slowCore, slowSkin, farHold))
		lo = min(lo, f.coldest()+(f.boiling-f.coldest())*f.body.share(r.Place, fastCore, fastSkin, -farHold))
	})
	return lo - farOff*r.err(), hi + farOff*r.err()
}

// inOrder are the places of the readings by time, those of one instant as told.
func inOrder(readings []Reading) []int {
	order := make([]int, len(readings))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(readings[a].After, readings[b].After) })
	return order
}

// asFahrenheit is what a number would be if it had been meant in °F.
func asFahrenheit(t unit.Celsius) unit.Celsius { return unit.Fahrenheit(float64(t)) }
