package cooling

import (
	"math"
	"time"

	"ryebell/internal/calc/cooling/conduction"
	"ryebell/internal/calc/lethality"
	"ryebell/internal/calc/unit"
)

// Heat is what conduction alone brings to the middle of a body in steam: a lower
// bound, since steam also creeps in between the kernels and condenses there. It
// is never a pass mark.
type Heat struct {
	// End is the middle at the last reading, Hottest its highest until then.
	End, Hottest unit.Celsius
	// F0 of the middle until the last reading, at most two figures of it.
	F0 time.Duration
	// Middle is how it rose, in even steps.
	Middle []lethality.TemperatureReading
}

const (
	// heatingStep is how finely the steam is followed; mostHeatingSteps bounds it in
	// long runs.
	heatingStep      = time.Minute
	mostHeatingSteps = 720
	// heatingModes are enough from where untouched asks for them.
	heatingModes = 16
)

// Heated is the conduction-only estimate of a body's middle: at start all through,
// its surface at once as hot as the steam around it (an infinite Biot number),
// whose temperature went straight from each reading to the next. Duhamel's rule
// on the series of package conduction; diffusivity from the table of properties.
// The first reading may be of heating up, when air is still in the pot.
//
// Fewer than two readings leave the body at start. Readings out of order are a
// *lethality.OrderError; a temperature that lethality.FromTemperatures refuses, or
// no Body, is a *unit.RangeError.
func Heated(b Body, start unit.Celsius, steam []lethality.TemperatureReading) (Heat, error) {
	if b.Zero() {
		return Heat{}, noBody()
	}
	if err := unit.Check(unit.Temperature, start, 0, 150); err != nil {
		return Heat{}, err
	}
	if _, err := lethality.FromTemperatures(steam); err != nil {
		return Heat{}, err
	}
	heat := Heat{End: start, Hottest: start}
	if len(steam) < 2 {
		return heat, nil
	}
	from, to := steam[0].After, steam[len(steam)-1].After
	step := max(heatingStep, (to-from)/mostHeatingSteps)
	count := int((to - from + step - 1) / step)
	if count == 0 {
		return heat, nil
	}
	step = (to - from) / time.Duration(count)

	surface := make([]float64, count+1)
	for i := range surface {
		surface[i] = between(steam, from+time.Duration(i)*step)
	}
	left := b.leftAfter(step, count)
	for i := range surface {
		at := lethality.TemperatureReading{
			After: from + time.Duration(i)*step,
			Steam: unit.Celsius(superpose(float64(start), surface, left, i)),
		}
		heat.Middle = append(heat.Middle, at)
		heat.End, heat.Hottest = at.Steam, max(heat.Hottest, at.Steam)
	}
	var err error
	heat.F0, err = lethality.FromTemperatures(heat.Middle)
	return heat, err
}

// between is the steam at a time, read straight between two readings.
func between(steam []lethality.TemperatureReading, at time.Duration) float64 {
	for i := 1; i < len(steam); i++ {
		a, b := steam[i-1], steam[i]
		if at > b.After || a.After == b.After {
			continue
		}
		w := float64(at-a.After) / float64(b.After-a.After)
		return float64(a.Steam) + w*float64(b.Steam.Minus(a.Steam))
	}
	return float64(steam[len(steam)-1].Steam)
}

// response is the share of a step of the surface that hasn't reached the middle:
// after whole steps of time, and half a step before each.
type response struct{ whole, half []float64 }

func (b Body) leftAfter(step time.Duration, count int) response {
	r := response{whole: make([]float64, count+1), half: make([]float64, count+1)}
	for i := range r.whole {
		r.whole[i], r.half[i] = 1, 1
	}
	for _, a := range b.used() {
		modes := conduction.Modes(a.geometry, math.Inf(1), heatingModes)
		fo := diffusivity * step.Seconds() / (a.half * a.half)
		for i := 1; i <= count; i++ {
			r.whole[i] *= a.untouched(modes, fo*float64(i))
			r.half[i] *= a.untouched(modes, fo*(float64(i)-0.5))
		}
	}
	return r
}

// untouched is what the middle has left after fo. So early that a millionth has come,
// the series would need many modes to say so.
func (a axis) untouched(modes []conduction.Mode, fo float64) float64 {
	if fo < 0.018 {
		return 1
	}
	return conduction.At(a.geometry, modes, 0, fo)
}

// superpose is the middle at step i: the first step of the surface came at once,
// each later one as if in the middle of its time (Duhamel).
func superpose(start float64, surface []float64, left response, i int) float64 {
	t := start + (surface[0]-start)*(1-left.whole[i])
	for k := 1; k <= i; k++ {
		t += (surface[k] - surface[k-1]) * (1 - left.half[i-k+1])
	}
	return t
}
