package phrase

import "ryebell/internal/calc/unit"

// measure is a unit that people type: its words, and every meaning it has, the
// usual one first.
type measure struct {
	words string
	means []meaning
	// close is true for words that are a unit only right behind the number, or
	// are something else with a space before: in, s, d.
	close bool
	// jar is true when one of it, without a number, is a size of jar.
	jar bool
	// seconds is the length of one, for units of time alone.
	seconds float64
}

// meaning is one meaning of a unit. imperial, where there is one, is taken by
// collectives that measure so.
type meaning struct {
	dim           Dimension
	unit          string
	one, imperial func(float64) float64
}

// by lends a constructor of package unit to the table.
func by[T ~float64](make func(float64) T) func(float64) float64 {
	return func(v float64) float64 { return float64(make(v)) }
}

// times is for units that package unit doesn't have.
func times(factor float64) func(float64) float64 {
	return func(v float64) float64 { return v * factor }
}

func as(d Dimension, name string, one func(float64) float64) meaning {
	return meaning{dim: d, unit: name, one: one}
}

// The meanings that several units share. An imperial fluid ounce is a twentieth
// of an imperial pint; a ton of talk is the short one, 2,000 lb; mercury and
// millibars as in unit.InchesOfMercury and NIST SP 811, appendix B.
var (
	celsius    = as(Temperature, "°C", times(1))
	fahrenheit = as(Temperature, "°F", by(unit.Fahrenheit))
	ounce      = as(Mass, "oz", by(unit.Ounces))
	fluidOunce = meaning{Volume, "fl oz", by(unit.USFluidOunces), by(func(n float64) unit.Litres { return unit.ImperialPints(n / 20) })}
	cup        = as(Volume, "cup", by(unit.USCups))
	pound      = as(Mass, "lb", by(unit.Pounds))
	metre      = as(Length, "m", times(1))
	litre      = as(Volume, "l", times(1))
	minute     = as(Duration, "min", times(60))
)

// measures are the units. A word may stand in one row only.
var measures = []measure{
	{words: "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes", means: []meaning{as(Mass, "kg", by(unit.Kilograms))}},
	{words: "g gr grs gm gms gram grams gramme grammes", means: []meaning{as(Mass, "g", times(1))}},
	{words: "mg", means: []meaning{as(Mass, "mg", times(0.001))}},
	{words: "lb lbs pound pounds # lb's", means: []meaning{pound}},
	{words: "pounder pounders", means: []meaning{as(Mass, "pounder", by(unit.Pounds))}},
	{words: "oz ozs ounce ounces", means: []meaning{ounce, fluidOunce}},
	{words: "tonne tonnes", means: []meaning{as(Mass, "t", by(func(t float64) unit.Grams { return unit.Kilograms(1000 * t) }))}},
	{words: "t", close: true, means: []meaning{as(Mass, "t", by(func(t float64) unit.Grams { return unit.Kilograms(1000 * t) }))}},
	{words: "ton tons", means: []meaning{as(Mass, "ton", by(func(t float64) unit.Grams { return unit.Pounds(2000 * t) }))}},

	{words: "l litre litres liter liters ltr ltrs", jar: true, means: []meaning{litre}},
	{words: "ml mls millilitre millilitres milliliter milliliters cc ccs", means: []meaning{as(Volume, "ml", by(unit.Millilitres))}},
	{words: "cl centilitre centilitres", means: []meaning{as(Volume, "cl", times(0.01))}},
	{words: "dl decilitre decilitres deciliter deciliters", means: []meaning{as(Volume, "dl", times(0.1))}},
	{words: "hl", means: []meaning{as(Volume, "hl", times(100))}},
	{words: "quart quarts qt qts", jar: true, means: []meaning{{Volume, "quart", by(unit.USQuarts), by(unit.ImperialQuarts)}}},
	{words: "pint pints pt pts", jar: true, means: []meaning{{Volume, "pint", by(unit.USPints), by(unit.ImperialPints)}}},
	{words: "gal gals gallon gallons", jar: true, means: []meaning{{Volume, "gal", by(unit.USGallons), by(unit.ImperialGallons)}}},
	{words: "cup cups", means: []meaning{cup}},
	{words: "floz", means: []meaning{fluidOunce}},
	{words: "tbsp tablespoon tablespoons", means: []meaning{as(Volume, "tbsp", by(func(n float64) unit.Litres { return unit.USFluidOunces(n / 2) }))}},
	{words: "tsp teaspoon teaspoons", means: []meaning{as(Volume, "tsp", by(func(n float64) unit.Litres { return unit.USFluidOunces(n / 6) }))}},
	{words: "bushel bushels", means: []meaning{as(Volume, "bushel", by(unit.USBushels))}},

	{words: "c", means: []meaning{celsius, cup}},
	{words: "celsius centigrade °c degc", means: []meaning{celsius}},
	{words: "f fahrenheit °f degf", means: []meaning{fahrenheit}},
	{words: "k kelvin kelvins °k", means: []meaning{as(Temperature, "K", by(func(k float64) unit.Celsius { return unit.FromAbsolute(unit.Kelvins(k)) }))}},
	{words: "° degree degrees deg degs", means: []meaning{as(Temperature, "degree", times(1))}},

	{words: "psi psig", means: []meaning{as(Pressure, "psi", by(unit.PSI))}},
	{words: "bar bars barg", means: []meaning{as(Pressure, "bar", by(unit.Bar))}},
	{words: "mbar mbars millibar millibars hpa", means: []meaning{as(Pressure, "hPa", times(0.1))}},
	{words: "kpa", means: []meaning{as(Pressure, "kPa", by(unit.KPa))}},
	{words: "pa pascal pascals", close: true, means: []meaning{as(Pressure, "Pa", times(0.001))}},
	{words: "mpa", means: []meaning{as(Pressure, "MPa", times(1000))}},
	{words: "mmhg torr", means: []meaning{as(Pressure, "mmHg", times(0.133322))}},
	{words: "inhg", means: []meaning{as(Pressure, "inHg", times(3.38639))}},
	{words: "atm", means: []meaning{as(Pressure, "atm", times(101.325))}},

	{words: "m", means: []meaning{metre, minute}},
	{words: "metre metres meter meters masl", means: []meaning{metre}},
	{words: "ft foot feet", means: []meaning{as(Length, "ft", by(unit.Feet))}},
	{words: "in", close: true, means: []meaning{as(Length, "in", by(unit.Inches))}},
	{words: "inch inches", means: []meaning{as(Length, "in", by(unit.Inches))}},
	{words: "cm centimetre centimetres centimeter centimeters", means: []meaning{as(Length, "cm", by(unit.Centimetres))}},
	{words: "mm millimetre millimetres millimeter millimeters", means: []meaning{as(Length, "mm", times(0.001))}},
	{words: "km kms kilometre kilometres kilometer kilometers", means: []meaning{as(Length, "km", times(1000))}},
	{words: "mi mile miles", means: []meaning{as(Length, "mile", times(1609.344))}},
	{words: "yd yds yard yards", means: []meaning{as(Length, "yd", times(0.9144))}},

	{words: "s", close: true, seconds: 1},
	{words: "sec secs second seconds", seconds: 1},
	{words: "min mins minute minutes mn", seconds: 60},
	{words: "h hr hrs hour hours", seconds: 3600},
	{words: "d", close: true, seconds: 86400},
	{words: "day days", seconds: 86400},
	{words: "fortnight fortnights", seconds: 14 * 86400},
	{words: "wk wks week weeks", seconds: 7 * 86400},

	{words: "$ dollar dollars buck bucks", means: []meaning{as(Money, "$", times(1))}},
	{words: "usd", means: []meaning{as(Money, "USD", times(1))}},
	{words: "€ eur eurs euro euros", means: []meaning{as(Money, "EUR", times(1))}},
	{words: "£ gbp quid", means: []meaning{as(Money, "GBP", times(1))}},
	{words: "chf franken", means: []meaning{as(Money, "CHF", times(1))}},
	{words: "cad", means: []meaning{as(Money, "CAD", times(1))}},
	{words: "aud", means: []meaning{as(Money, "AUD", times(1))}},
	{words: "nzd", means: []meaning{as(Money, "NZD", times(1))}},
	{words: "sek", means: []meaning{as(Money, "SEK", times(1))}},
	{words: "dkk", means: []meaning{as(Money, "DKK", times(1))}},
	{words: "pln zl", means: []meaning{as(Money, "PLN", times(1))}},
	{words: "¥ jpy yen", means: []meaning{as(Money, "JPY", times(1))}},
	{words: "cent cents ¢", means: []meaning{as(Money, "cent", times(1))}},
	{words: "pence", means: []meaning{as(Money, "penny", times(1))}},

	{words: "mph kph kmh kts knots", means: []meaning{as(Other, "speed", times(1))}},
	{words: "watt watts kw kwh volt volts amp amps btu", means: []meaning{as(Other, "power", times(1))}},
	{words: "acre acres sqft sqm hectare hectares", means: []meaning{as(Other, "area", times(1))}},
	{words: "gb mb kb px dpi", means: []meaning{as(Other, "bytes", times(1))}},
}

// money reports whether m is a currency.
func (m *measure) money() bool { return m.means != nil && m.means[0].dim == Money }

// senses works out the meanings of v of the unit.
func (m *measure) senses(v float64, imperial bool) []Sense {
	s := make([]Sense, len(m.means))
	for i, one := range m.means {
		conv := one.one
		if imperial && one.imperial != nil {
			conv = one.imperial
		}
		s[i] = Sense{Dim: one.dim, Value: conv(v), Unit: one.unit}
	}
	return s
}
