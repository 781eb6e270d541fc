package unit

// Ratio is water per dry grain as bought, by weight: 0.43 means 430 g of water
// to each kilogram. It is not the moisture, which is a Fraction: at 12 % of
// storage moisture a ratio of 0.45 makes 39.3 % of moisture.
type Ratio float64

// Yield is what drained, soaked grain weighs, as a multiple of what it weighed
// dry as bought: 1 + the ratio of the water taken up.
type Yield float64

// Fraction is a share of a whole, 0 to 1: moisture (water in the whole weight),
// headspace (empty part of the brim volume).
type Fraction float64

// Percent makes the fraction of p hundredths.
func Percent(p float64) Fraction { return Fraction(p / 100) }

// Percent is the fraction in hundredths.
func (f Fraction) Percent() float64 { return float64(f) * 100 }

// KgPerLitre is a bulk density, the space between the kernels included.
type KgPerLitre float64

// PoundsPerUSBushel makes the density of lb pounds to the US bushel, about
// 0.01287 kg/l each: how grain is traded.
func PoundsPerUSBushel(lb float64) KgPerLitre {
	return KgPerLitre(Pounds(lb).Kilograms() / float64(USBushels(1)))
}

// Fill is what volume l weighs at density d.
func (d KgPerLitre) Fill(l Litres) Grams { return Kilograms(float64(d) * float64(l)) }
