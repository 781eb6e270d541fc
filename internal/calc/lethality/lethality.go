package lethality

import (
	"fmt"
	"math"
	"time"

	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

const (
	// Reference is the temperature at which the rate is one.
	Reference unit.Celsius = 121.1
	// Z is the rise that makes the rate ten times higher.
	Z unit.Kelvins = 10
)

// Rate is how many times faster than at Reference spores die at t:
// 10^((t − 121.1)/10). It holds for wet heat from about 100 to 140 °C and is
// defined everywhere.
func Rate(t unit.Celsius) float64 {
	return math.Pow(10, float64(t.Minus(Reference)/Z))
}

// Equivalent is how long a hold would have to be at the temperature instead to
// be as lethal as hold is at the temperature at: hold × Rate(at)/Rate(instead).
// Where that passes what a Duration can count it is the longest Duration.
func Equivalent(hold time.Duration, at, instead unit.Celsius) time.Duration {
	return duration(float64(hold) * math.Pow(10, float64(at.Minus(instead)/Z)))
}

// GaugeReading is what a gauge showed, After the start of a run.
type GaugeReading struct {
	After time.Duration
	Gauge unit.GaugeKPa
}

// TemperatureReading is how hot the steam was, After the start of a run.
type TemperatureReading struct {
	After time.Duration
	Steam unit.Celsius
}

// OrderError says that the reading at Index was taken before the one in front
// of it.
type OrderError struct{ Index int }

// Error is a line for logs.
func (e *OrderError) Error() string {
	return fmt.Sprintf("lethality: reading %d before the one in front of it", e.Index)
}

// FromTemperatures is F0 of a run whose temperature went straight from each
// reading to the next: the exact integral of Rate over each piece, (L2 − L1)/
// ln(L2/L1) × its time. (The usual trapezoid over the rates comes out higher,
// the more so the sparser the readings.) Fewer than two readings make 0.
//
// Readings out of order are an *OrderError; a temperature that is not a number
// or outside 0 to 374 °C is a *unit.RangeError.
func FromTemperatures(readings []TemperatureReading) (time.Duration, error) {
	var sum float64
	for i, r := range readings {
		err := unit.Check(unit.Temperature, r.Steam,
			steam.LowestSaturationTemperature, steam.HighestSaturationTemperature)
		if err != nil {
			return 0, err
		}
		if i == 0 {
			continue
		}
		before := readings[i-1]
		if r.After < before.After {
			return 0, &OrderError{Index: i}
		}
		sum += float64(r.After-before.After) * meanRate(before.Steam, r.Steam)
	}
	return duration(sum), nil
}

// FromGauge is F0 of a run at an elevation whose gauge pressure went straight
// from each reading to the next: Rate of the saturation temperature, integrated
// over each piece. It takes the cooker for free of air, which it isn't while it
// first comes up. Fewer than two readings make 0.
//
// Readings out of order are an *OrderError; a gauge or elevation outside the
// ranges of steam.Temperature is a *unit.RangeError.
func FromGauge(readings []GaugeReading, elevation unit.Metres) (time.Duration, error) {
	var sum float64
	for i, r := range readings {
		if _, err := steam.Temperature(r.Gauge, elevation); err != nil {
			return 0, err
		}
		if i == 0 {
			continue
		}
		before := readings[i-1]
		if r.After < before.After {
			return 0, &OrderError{Index: i}
		}
		mean, err := meanRateOfGauge(before.Gauge, r.Gauge, elevation)
		if err != nil {
			return 0, err
		}
		sum += float64(r.After-before.After) * mean
	}
	return duration(sum), nil
}

// meanRate is the mean of Rate while the temperature goes straight from a to b:
// the logarithmic mean of both rates, written so that it holds for a = b.
func meanRate(a, b unit.Celsius) float64 {
	x := math.Ln10 * float64(b.Minus(a)/Z)
	if x == 0 {
		return Rate(a)
	}
	return Rate(a) * math.Expm1(x) / x
}

// panelWidth is the widest piece of pressure that three Gauss points have to
// integrate; with 10 kPa the sum is exact to better than a millionth.
const panelWidth unit.GaugeKPa = 10

// meanRateOfGauge is the mean of Rate while the gauge goes straight from a to b:
// three-point Gauss–Legendre quadrature (Abramowitz and Stegun, table 25.4) on
// panels of at most panelWidth.
func meanRateOfGauge(a, b unit.GaugeKPa, elevation unit.Metres) (float64, error) {
	offset := unit.GaugeKPa(math.Sqrt(0.6) / 2)
	points := [...]struct {
		at     unit.GaugeKPa
		weight float64
	}{{0.5 - offset, 5. / 18}, {0.5, 8. / 18}, {0.5 + offset, 5. / 18}}

	panels := max(1, int(math.Ceil(math.Abs(float64((b-a)/panelWidth)))))
	step := (b - a) / unit.GaugeKPa(panels)
	var sum float64
	for i := range panels {
		for _, p := range points {
			t, err := steam.Temperature(a+step*(unit.GaugeKPa(i)+p.at), elevation)
			if err != nil {
				return 0, err
			}
			sum += p.weight * Rate(t)
		}
	}
	return sum / float64(panels), nil
}

// duration rounds nanoseconds and stops at the longest Duration.
func duration(ns float64) time.Duration {
	if ns >= math.MaxInt64 {
		return math.MaxInt64
	}
	return time.Duration(math.Round(ns))
}
