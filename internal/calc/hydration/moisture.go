package hydration

import "ryebell/internal/calc/unit"

const (
	// MaxStorageMoisture is the dampest grain that is still called dry grain as
	// bought.
	MaxStorageMoisture unit.Fraction = 0.30
	// MaxMoisture is the wettest grain the sums below are asked about.
	MaxMoisture unit.Fraction = 0.85
)

// Moisture is the moisture (wet basis) of grain that came with moisture m0 and
// got r water per grain as bought: (m0 + r)/(1 + r), the conservation of dry
// matter (NCH-61).
//
// Valid for r from 0 to MaxRatio and m0 from 0 to MaxStorageMoisture; else a
// *unit.RangeError.
func Moisture(r unit.Ratio, m0 unit.Fraction) (unit.Fraction, error) {
	if err := unit.Check(unit.WaterRatio, r, 0, MaxRatio); err != nil {
		return 0, err
	}
	if err := unit.Check(unit.Moisture, m0, 0, MaxStorageMoisture); err != nil {
		return 0, err
	}
	return (m0 + unit.Fraction(r)) / unit.Fraction(1+r), nil
}

// RatioFor is the water per grain as bought that brings grain of moisture m0 to
// moisture m, both wet basis: (m − m0)/(1 − m), Moisture solved for r.
//
// Valid for m0 from 0 to MaxStorageMoisture, m from m0 to MaxMoisture, and a
// result up to MaxRatio; else a *unit.RangeError.
func RatioFor(m, m0 unit.Fraction) (unit.Ratio, error) {
	if err := unit.Check(unit.Moisture, m0, 0, MaxStorageMoisture); err != nil {
		return 0, err
	}
	if err := unit.Check(unit.Moisture, m, m0, MaxMoisture); err != nil {
		return 0, err
	}
	r := unit.Ratio((m - m0) / (1 - m))
	return r, unit.Check(unit.WaterRatio, r, 0, MaxRatio)
}

// WaterToAdd is the water that brings a mass of grain from moisture from to
// moisture to, wet basis: M (to − from)/(1 − to). 100 g of wheat from 10 to
// 16.5 % take 7.8 ml, not 6.5: the added water counts in the whole too.
//
// Valid for a mass from MinMass to MaxMass and 0 ≤ from ≤ to ≤ MaxMoisture;
// else a *unit.RangeError.
func WaterToAdd(mass unit.Grams, from, to unit.Fraction) (unit.Grams, error) {
	if err := checkChange(mass, from, to); err != nil {
		return 0, err
	}
	return mass * unit.Grams((to-from)/(1-to)), nil
}

// WeightLost is the water that a mass of grain loses while it dries from
// moisture from to moisture to, wet basis: M (from − to)/(1 − to) (NCH-61).
//
// Valid for a mass from MinMass to MaxMass and 0 ≤ to ≤ from ≤ MaxMoisture;
// else a *unit.RangeError.
func WeightLost(mass unit.Grams, from, to unit.Fraction) (unit.Grams, error) {
	if err := checkChange(mass, to, from); err != nil {
		return 0, err
	}
	return mass * unit.Grams((from-to)/(1-to)), nil
}

// DryMatter is what of a mass of grain is not water, m being its moisture (wet
// basis, 0 to MaxMoisture, else a *unit.RangeError): M (1 − m).
func DryMatter(mass unit.Grams, m unit.Fraction) (unit.Grams, error) {
	if err := checkChange(mass, 0, m); err != nil {
		return 0, err
	}
	return mass * unit.Grams(1-m), nil
}

// DryBasis is moisture m (wet basis, 0 to MaxMoisture, else a *unit.RangeError)
// as water per dry matter: m/(1 − m). It passes 1 from 50 % upwards. It is not
// a unit.Ratio, which counts added water per grain as bought.
func DryBasis(m unit.Fraction) (float64, error) {
	if err := unit.Check(unit.Moisture, m, 0, MaxMoisture); err != nil {
		return 0, err
	}
	return float64(m / (1 - m)), nil
}

// checkChange holds for a change of moisture between lo and hi.
func checkChange(mass unit.Grams, lo, hi unit.Fraction) error {
	if err := unit.Check(unit.Mass, mass, MinMass, MaxMass); err != nil {
		return err
	}
	if err := unit.Check(unit.Moisture, hi, 0, MaxMoisture); err != nil {
		return err
	}
	return unit.Check(unit.Moisture, lo, 0, hi)
}
