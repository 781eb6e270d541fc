package picture

import (
	"errors"
	"fmt"
	"math"
	"time"

	"ryebell/internal/calc/unit"
)

// What a chart of a cooling can hold.
const (
	shortest   = time.Minute        // span of the time axis
	longest    = 8 * 24 * time.Hour // span of the time axis
	most       = 1000               // moments of a forecast, and readings
	coldest    = unit.Celsius(-100)
	hottest    = unit.Celsius(300)
	fewMoments = 2
)

// Scale is the thermometer scale of the axis.
type Scale uint8

// The scales.
const (
	InCelsius Scale = iota + 1
	InFahrenheit
)

// Cooling is a chart of one body that cools: what was measured, what is believed of
// its middle, and when that is at the limit. Temperatures are readings from -100
// to 300 °C.
type Cooling struct {
	Title string

	// From and To are the least that the time axis shows; it grows to hold the
	// forecast, the readings and the window, from one minute to eight days in all.
	// The location of From is the kitchen's: hours and days are those of its clocks.
	From, To time.Time

	// Now is marked if it lies on the axis; the zero value marks nothing.
	Now Instant

	Forecast Forecast
	Readings []Reading
	Limit    Line

	// Window is when the middle is at the limit; the zero value draws none.
	Window Window

	Scale Scale

	// Clock names an instant on the time axis ("21:00"), Day the day it lies in
	// ("Mon 2 Mar"). Both get times in the location of From.
	Clock, Day func(time.Time) string
}

// Instant is a time with the words for it.
type Instant struct {
	At    time.Time
	Label string
}

// Line is a temperature that is drawn across, with the words for it.
type Line struct {
	At    unit.Celsius
	Label string
}

// Forecast is what is believed of the middle over time: none, or two moments and
// more in order of time. Label is written beside the band and may be empty.
type Forecast struct {
	Moments []Moment
	Label   string
}

// Moment is what is believed of the middle at one time: Mid, and the range from Low
// to High.
type Moment struct {
	At             time.Time
	Low, Mid, High unit.Celsius
}

// Reading is one look at a thermometer. Label is written beside it where there is
// room, the latest reading first, and may be empty.
type Reading struct {
	At    time.Time
	Temp  unit.Celsius
	Trust Trust
	Label string
}

// Trust says whether a reading is believed.
type Trust uint8

// The trusts. An odd reading can't be right: it is drawn hollow, may be any finite
// number, and stretches the axis by a quarter at most; beyond that it is an arrow
// at the edge.
const (
	Believed Trust = iota + 1
	Odd
)

// Window is the time within which the middle comes to the limit: Likely lies in
// From … To. It is a bar on the line of the limit, the labels below it.
type Window struct{ From, Likely, To Instant }

// shown reports whether there is a window at all.
func (w Window) shown() bool { return w != Window{} }

// instants lists the three in order of time.
func (w Window) instants() []Instant { return []Instant{w.From, w.Likely, w.To} }

// DrawCooling draws the chart as a PNG of 1200 × 900 pixels. It is an error if
// there is neither forecast nor reading, if the axis would be empty, inverted or
// too long, if moments or window are out of order, if a temperature is none, or
// if scale, trust, Clock or Day is not set.
func DrawCooling(c Cooling) ([]byte, error) {
	if err := c.check(); err != nil {
		return nil, fmt.Errorf("draw a cooling: %w", err)
	}
	s, err := newSheet()
	if err != nil {
		return nil, fmt.Errorf("draw a cooling: %w", err)
	}
	c.draw(s)
	return s.encode()
}

// check says what is wrong with the data, all of it at once.
func (c Cooling) check() error {
	errs := []error{c.checkSpan(), c.checkForecast(), c.checkReadings(), c.checkWindow()}
	if len(c.Forecast.Moments) == 0 && len(c.Readings) == 0 {
		errs = append(errs, errors.New("no forecast and no reading"))
	}
	if !inRange(c.Limit.At) {
		errs = append(errs, errors.New("limit out of range"))
	}
	if c.Scale != InCelsius && c.Scale != InFahrenheit {
		errs = append(errs, errors.New("no scale"))
	}
	if c.Clock == nil || c.Day == nil {
		errs = append(errs, errors.New("no names for hours or days"))
	}
	return errors.Join(errs...)
}

func (c Cooling) checkSpan() error {
	if !c.To.After(c.From) {
		return errors.New("the time axis ends before it begins")
	}
	from, to := c.span()
	if span := to.Sub(from); span < shortest || span > longest {
		return fmt.Errorf("a time axis of %v", span)
	}
	return nil
}

func (c Cooling) checkForecast() error {
	moments := c.Forecast.Moments
	if n := len(moments); n != 0 && n < fewMoments || n > most {
		return fmt.Errorf("a forecast of %d moments", n)
	}
	for i, m := range moments {
		switch {
		case i > 0 && !m.At.After(moments[i-1].At):
			return fmt.Errorf("moment %d is not after the one before", i)
		case !inRange(m.Low) || !inRange(m.High) || !(m.Low <= m.Mid && m.Mid <= m.High):
			return fmt.Errorf("moment %d has no range of temperatures", i)
		}
	}
	return nil
}

func (c Cooling) checkReadings() error {
	if len(c.Readings) > most {
		return fmt.Errorf("%d readings", len(c.Readings))
	}
	for i, r := range c.Readings {
		switch r.Trust {
		case Believed:
			if !inRange(r.Temp) {
				return fmt.Errorf("reading %d is out of range", i)
			}
			continue
		case Odd:
			if math.IsNaN(float64(r.Temp)) || math.IsInf(float64(r.Temp), 0) {
				return fmt.Errorf("reading %d is no number", i)
			}
			continue
		}
		return fmt.Errorf("reading %d has no trust", i)
	}
	return nil
}

func (c Cooling) checkWindow() error {
	w := c.Window
	if w.shown() && (w.Likely.At.Before(w.From.At) || w.To.At.Before(w.Likely.At)) {
		return errors.New("the window is out of order")
	}
	return nil
}

// inRange is false for what is no number, too.
func inRange(t unit.Celsius) bool { return t >= coldest && t <= hottest }

// span is the time axis: what was asked for, and all that has a time.
func (c Cooling) span() (from, to time.Time) {
	from, to = c.From, c.To
	reach := func(at time.Time) {
		if at.Before(from) {
			from = at
		}
		if at.After(to) {
			to = at
		}
	}
	for _, m := range c.Forecast.Moments {
		reach(m.At)
	}
	for _, r := range c.Readings {
		reach(r.At)
	}
	if c.Window.shown() {
		reach(c.Window.From.At)
		reach(c.Window.To.At)
	}
	return from.In(c.From.Location()), to.In(c.From.Location())
}
