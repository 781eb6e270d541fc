package unit

const (
	zeroCelsiusInKelvin  = 273.15 // exact, by definition of the degree Celsius
	freezingInFahrenheit = 32
	kelvinsPerFahrenheit = 5.0 / 9
)

// Celsius is a temperature reading in degrees Celsius. Two readings differ by
// Kelvins; add or take those with Plus and Minus.
type Celsius float64

// Kelvins is a difference of two temperatures, or a step of the absolute scale.
type Kelvins float64

// Fahrenheit makes the reading of f degrees Fahrenheit.
func Fahrenheit(f float64) Celsius {
	return Celsius((f - freezingInFahrenheit) * kelvinsPerFahrenheit)
}

// FahrenheitDifference makes a difference of f Fahrenheit degrees, 5/9 K each.
func FahrenheitDifference(f float64) Kelvins { return Kelvins(f * kelvinsPerFahrenheit) }

// FromAbsolute makes the reading that stands k kelvins over absolute zero.
func FromAbsolute(k Kelvins) Celsius { return Celsius(k - zeroCelsiusInKelvin) }

// Fahrenheit is the reading in degrees Fahrenheit.
func (c Celsius) Fahrenheit() float64 {
	return float64(c)/kelvinsPerFahrenheit + freezingInFahrenheit
}

// AboveAbsoluteZero is the thermodynamic temperature in kelvins.
func (c Celsius) AboveAbsoluteZero() Kelvins { return Kelvins(c) + zeroCelsiusInKelvin }

// Plus is the reading d higher.
func (c Celsius) Plus(d Kelvins) Celsius { return c + Celsius(d) }

// Minus is how far c lies over other; negative when it lies under it.
func (c Celsius) Minus(other Celsius) Kelvins { return Kelvins(c - other) }

// FahrenheitDegrees is the difference counted in Fahrenheit degrees.
func (k Kelvins) FahrenheitDegrees() float64 { return float64(k) / kelvinsPerFahrenheit }
