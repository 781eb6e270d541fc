package unit

import "fmt"

// Quantity names what a RangeError is about.
type Quantity uint8

// The quantities that the formulas check. Beside each the unit in which a
// RangeError holds its numbers.
const (
	Mass        Quantity = iota + 1 // Grams
	Volume                          // Litres
	Moisture                        // Fraction of the whole weight
	WaterRatio                      // Ratio
	SoakedYield                     // Yield
	Elevation                       // Metres
	Pressure                        // AbsoluteKPa
	Gauge                           // GaugeKPa
	Temperature                     // Celsius
	Hold                            // minutes
	Rate                            // LitresPerHour
	Count                           // pieces
	TimeScale                       // natural logarithm of a factor
)

// String is the quantity's name for logs.
func (q Quantity) String() string {
	switch q {
	case Mass:
		return "mass"
	case Volume:
		return "volume"
	case Moisture:
		return "moisture"
	case WaterRatio:
		return "water ratio"
	case SoakedYield:
		return "soaked yield"
	case Elevation:
		return "elevation"
	case Pressure:
		return "absolute pressure"
	case Gauge:
		return "gauge pressure"
	case Temperature:
		return "temperature"
	case Hold:
		return "hold"
	case Rate:
		return "rate"
	case Count:
		return "count"
	case TimeScale:
		return "time scale"
	}
	panic(fmt.Sprintf("unit: no quantity %d", uint8(q)))
}

// RangeError says that a quantity lies outside the range for which a formula
// holds. It is data: the caller makes the sentence. Value, Lo and Hi stand in
// the unit that the Quantity names; both ends belong to the range. A Value that
// is not a number is outside every range.
type RangeError struct {
	Quantity      Quantity
	Value, Lo, Hi float64
}

// Error is a line for logs.
func (e *RangeError) Error() string {
	return fmt.Sprintf("%v %g not in %g..%g", e.Quantity, e.Value, e.Lo, e.Hi)
}

// Check returns nil when lo ≤ v ≤ hi, else a *RangeError that says so.
func Check[T ~float64](q Quantity, v, lo, hi T) error {
	if v >= lo && v <= hi { // false for NaN, as it must be
		return nil
	}
	return &RangeError{Quantity: q, Value: float64(v), Lo: float64(lo), Hi: float64(hi)}
}
