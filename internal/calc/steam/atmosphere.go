package steam

import (
	"math"

	"ryebell/internal/calc/unit"
)

// The heights for which Atmosphere holds: from the lowest shore on land to the
// top of the standard's first layer. No kitchen is near either end.
const (
	LowestElevation  unit.Metres = -430
	HighestElevation unit.Metres = 11000
)

// Constants of ISO 2533:1975, the same in US Standard Atmosphere 1976.
const (
	seaLevelPressure    = 101.325   // kPa
	seaLevelTemperature = 288.15    // K
	lapse               = 0.0065    // K per metre, to 11 km
	gravity             = 9.80665   // m/s²
	gasConstantOfAir    = 287.05287 // J/(kg K)
	exponent            = gravity / (gasConstantOfAir * lapse)
)

// Atmosphere is the pressure of the standard atmosphere at an elevation:
// 101.325 kPa (1 − 0.0065 H/288.15)^5.25588 with H in metres (ISO 2533:1975,
// layer up to 11 km). The standard means geopotential height; a map's height at
// 1600 m is 0.4 m more, which is of no weight here.
//
// Valid from LowestElevation to HighestElevation; else a *unit.RangeError.
func Atmosphere(elevation unit.Metres) (unit.AbsoluteKPa, error) {
	if err := unit.Check(unit.Elevation, elevation, LowestElevation, HighestElevation); err != nil {
		return 0, err
	}
	base := 1 - lapse*float64(elevation)/seaLevelTemperature
	return unit.AbsoluteKPa(seaLevelPressure * math.Pow(base, exponent)), nil
}
