package picture

import (
	"image"
	"math"
	"time"

	"ryebell/internal/calc/unit"
)

// leastRange is the smallest range of the temperature axis: a body at rest is drawn
// at rest.
const leastRange = unit.Kelvins(10)

// Shares of the range of temperatures.
const (
	headroom   = 0.04 // left free above and below what is drawn
	oddStretch = 0.25 // by which an odd reading may stretch the axis
)

// frame says where times and temperatures lie in the picture.
type frame struct {
	plot      image.Rectangle // within the axes
	data      image.Rectangle // where curves and marks may lie; labels have the rest of plot
	from, to  time.Time
	low, high unit.Celsius // at the lower and upper edge of data
	scale     Scale
}

// x is the column of a time, which lies within the frame.
func (f frame) x(t time.Time) float64 {
	share := float64(t.Sub(f.from)) / float64(f.to.Sub(f.from))
	return float64(f.data.Min.X) + share*float64(f.data.Dx())
}

// y is the row of a temperature, which may lie outside the frame.
func (f frame) y(t unit.Celsius) float64 {
	share := float64(t-f.low) / float64(f.high-f.low)
	return float64(f.data.Max.Y) - share*float64(f.data.Dy())
}

// holds reports whether a time lies on the axis.
func (f frame) holds(t time.Time) bool { return !t.Before(f.from) && !t.After(f.to) }

// degrees is a temperature in the scale of the axis.
func (s Scale) degrees(t unit.Celsius) float64 {
	switch s {
	case InCelsius:
		return float64(t)
	case InFahrenheit:
		return t.Fahrenheit()
	}
	panic(s)
}

// reading is the temperature of so many degrees of the scale.
func (s Scale) reading(degrees float64) unit.Celsius {
	switch s {
	case InCelsius:
		return unit.Celsius(degrees)
	case InFahrenheit:
		return unit.Fahrenheit(degrees)
	}
	panic(s)
}

// symbol is that of the scale.
func (s Scale) symbol() string {
	switch s {
	case InCelsius:
		return "°C"
	case InFahrenheit:
		return "°F"
	}
	panic(s)
}

// temperatures is the range of the temperature axis.
func (c Cooling) temperatures() (low, high unit.Celsius) {
	low, high = c.Limit.At, c.Limit.At
	for _, m := range c.Forecast.Moments {
		low, high = min(low, m.Low), max(high, m.High)
	}
	for _, r := range c.Readings {
		if r.Trust == Believed {
			low, high = min(low, r.Temp), max(high, r.Temp)
		}
	}
	if short := leastRange - high.Minus(low); short > 0 {
		low, high = low.Plus(-short/2), high.Plus(short/2)
	}
	lowest, highest := low-oddStretch*(high-low), high+oddStretch*(high-low)
	for _, r := range c.Readings {
		if r.Trust == Odd && r.Temp >= lowest && r.Temp <= highest {
			low, high = min(low, r.Temp), max(high, r.Temp)
		}
	}
	room := headroom * (high - low)
	return low - room, high + room
}

// mostDegrees is how many ticks the temperature axis has at most.
const mostDegrees = 6

// degreeSteps are the distances between ticks of temperature, in degrees of either
// scale.
func degreeSteps() []float64 { return []float64{1, 2, 5, 10, 20, 25, 50, 100, 200} }

// degreeTicks are the round numbers of degrees between low and high.
func degreeTicks(low, high float64) []float64 {
	var ticks []float64
	for _, step := range degreeSteps() {
		ticks = ticks[:0]
		for n := math.Ceil(low / step); n*step <= high && len(ticks) <= mostDegrees; n++ {
			ticks = append(ticks, n*step)
		}
		if len(ticks) <= mostDegrees {
			break
		}
	}
	return ticks
}
