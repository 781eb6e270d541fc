package unit

// Exact: a US gallon is 231 cubic inches, an imperial gallon 4.54609 litres, a
// US bushel 2150.42 cubic inches (NIST Handbook 44, appendix C).
const (
	litresPerCubicInch      = 0.016387064
	litresPerUSGallon       = 231 * litresPerCubicInch
	litresPerUSQuart        = litresPerUSGallon / 4
	litresPerUSPint         = litresPerUSGallon / 8
	litresPerUSCup          = litresPerUSGallon / 16
	litresPerUSFluidOunce   = litresPerUSGallon / 128
	litresPerUSBushel       = 2150.42 * litresPerCubicInch
	litresPerImperialGallon = 4.54609
	litresPerImperialQuart  = litresPerImperialGallon / 4
	litresPerImperialPint   = litresPerImperialGallon / 8
)

// Litres is a volume in litres.
type Litres float64

// Millilitres makes a volume of ml millilitres (cubic centimetres).
func Millilitres(ml float64) Litres { return Litres(ml / 1000) }

// USGallons makes a volume of gal US gallons, 3.785411784 l each (exact).
func USGallons(gal float64) Litres { return Litres(gal * litresPerUSGallon) }

// USQuarts makes a volume of qt US liquid quarts, 946.352946 ml each. A quart
// of talk is this one unless the collective says otherwise.
func USQuarts(qt float64) Litres { return Litres(qt * litresPerUSQuart) }

// USPints makes a volume of pt US liquid pints, 473.176473 ml each.
func USPints(pt float64) Litres { return Litres(pt * litresPerUSPint) }

// USHalfPints makes a volume of n US half pints, 236.5882365 ml each: the same
// as a US cup, but the name of a jar.
func USHalfPints(n float64) Litres { return Litres(n * litresPerUSPint / 2) }

// USCups makes a volume of n US cups, 236.5882365 ml each.
func USCups(n float64) Litres { return Litres(n * litresPerUSCup) }

// USFluidOunces makes a volume of n US fluid ounces, 128 to the gallon.
func USFluidOunces(n float64) Litres { return Litres(n * litresPerUSFluidOunce) }

// USBushels makes a volume of n US bushels, 35.2390701669 l each: a dry
// measure, in which grain is traded.
func USBushels(n float64) Litres { return Litres(n * litresPerUSBushel) }

// ImperialGallons makes a volume of gal imperial gallons, 4.54609 l each.
func ImperialGallons(gal float64) Litres { return Litres(gal * litresPerImperialGallon) }

// ImperialQuarts makes a volume of qt imperial quarts, 1136.5225 ml each: a
// fifth more than the US quart.
func ImperialQuarts(qt float64) Litres { return Litres(qt * litresPerImperialQuart) }

// ImperialPints makes a volume of pt imperial pints, 568.26125 ml each.
func ImperialPints(pt float64) Litres { return Litres(pt * litresPerImperialPint) }

// Millilitres is the volume in millilitres.
func (l Litres) Millilitres() float64 { return float64(l) * 1000 }

// USGallons is the volume in US gallons.
func (l Litres) USGallons() float64 { return float64(l) / litresPerUSGallon }

// USQuarts is the volume in US liquid quarts.
func (l Litres) USQuarts() float64 { return float64(l) / litresPerUSQuart }

// USPints is the volume in US liquid pints.
func (l Litres) USPints() float64 { return float64(l) / litresPerUSPint }

// USCups is the volume in US cups.
func (l Litres) USCups() float64 { return float64(l) / litresPerUSCup }

// USFluidOunces is the volume in US fluid ounces.
func (l Litres) USFluidOunces() float64 { return float64(l) / litresPerUSFluidOunce }

// ImperialQuarts is the volume in imperial quarts.
func (l Litres) ImperialQuarts() float64 { return float64(l) / litresPerImperialQuart }

// ImperialPints is the volume in imperial pints.
func (l Litres) ImperialPints() float64 { return float64(l) / litresPerImperialPint }

// LitresPerHour is a rate of flow, for instance of water boiled off.
type LitresPerHour float64
