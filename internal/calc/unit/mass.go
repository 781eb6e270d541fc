package unit

// Exact: 1 lb = 453.59237 g, 16 oz to the pound (NIST SP 811, appendix B).
const (
	gramsPerPound = 453.59237
	gramsPerOunce = gramsPerPound / 16
)

// Grams is a mass in grams.
type Grams float64

// Kilograms makes a mass of kg kilograms.
func Kilograms(kg float64) Grams { return Grams(kg * 1000) }

// Pounds makes a mass of lb avoirdupois pounds, 453.59237 g each (exact).
func Pounds(lb float64) Grams { return Grams(lb * gramsPerPound) }

// Ounces makes a mass of oz avoirdupois ounces, a sixteenth of a pound each.
func Ounces(oz float64) Grams { return Grams(oz * gramsPerOunce) }

// Kilograms is the mass in kilograms.
func (g Grams) Kilograms() float64 { return float64(g) / 1000 }

// Pounds is the mass in avoirdupois pounds.
func (g Grams) Pounds() float64 { return float64(g) / gramsPerPound }

// Ounces is the mass in avoirdupois ounces.
func (g Grams) Ounces() float64 { return float64(g) / gramsPerOunce }
