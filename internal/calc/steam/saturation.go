package steam

import (
	"math"

	"ryebell/internal/calc/unit"
)

// The ends of the saturation line: freezing and critical point of IF97.
const (
	LowestSaturation  unit.AbsoluteKPa = 0.611213
	HighestSaturation unit.AbsoluteKPa = 22064

	LowestSaturationTemperature  unit.Celsius = 0
	HighestSaturationTemperature unit.Celsius = 373.946
)

// Coefficients n1 to n10 of the saturation line, IAPWS R7-97(2012), table 34.
const (
	n1  = 0.11670521452767e4
	n2  = -0.72421316703206e6
	n3  = -0.17073846940092e2
	n4  = 0.12020824702470e5
	n5  = -0.32325550322333e7
	n6  = 0.14915108613530e2
	n7  = -0.48232657361591e4
	n8  = 0.40511340542057e6
	n9  = -0.23855557567849
	n10 = 0.65017534844798e3
)

const kPaPerMPa = 1000

// SaturationTemperature is the temperature at which water boils, and pure steam
// condenses, under an absolute pressure: the backward equation of region 4,
// IAPWS R7-97(2012), equation 31.
//
// Valid from LowestSaturation to HighestSaturation; else a *unit.RangeError.
func SaturationTemperature(p unit.AbsoluteKPa) (unit.Celsius, error) {
	if err := unit.Check(unit.Pressure, p, LowestSaturation, HighestSaturation); err != nil {
		return 0, err
	}
	beta := math.Pow(float64(p)/kPaPerMPa, 0.25)
	e := beta*beta + n3*beta + n6
	f := n1*beta*beta + n4*beta + n7
	g := n2*beta*beta + n5*beta + n8
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	kelvin := (n10 + d - math.Sqrt((n10+d)*(n10+d)-4*(n9+n10*d))) / 2
	return unit.FromAbsolute(unit.Kelvins(kelvin)), nil
}

// SaturationPressure is the absolute pressure of pure steam beside boiling water
// of a temperature: IAPWS R7-97(2012), equation 30.
//
// Valid from LowestSaturationTemperature to HighestSaturationTemperature; else a
// *unit.RangeError.
func SaturationPressure(t unit.Celsius) (unit.AbsoluteKPa, error) {
	err := unit.Check(unit.Temperature, t, LowestSaturationTemperature, HighestSaturationTemperature)
	if err != nil {
		return 0, err
	}
	kelvin := float64(t.AboveAbsoluteZero())
	theta := kelvin + n9/(kelvin-n10)
	a := theta*theta + n1*theta + n2
	b := n3*theta*theta + n4*theta + n5
	c := n6*theta*theta + n7*theta + n8
	root := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return unit.AbsoluteKPa(root * root * root * root * kPaPerMPa), nil
}
