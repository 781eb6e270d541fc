package steam

import "ryebell/internal/calc/unit"

// HighestGauge is the highest gauge pressure that Temperature is asked about:
// far over any kitchen's cooker, so that a slip of the pen is caught.
const HighestGauge unit.GaugeKPa = 1000

// BoilingPoint is where water boils in an open pot at an elevation. Ranges and
// errors are those of Atmosphere.
func BoilingPoint(elevation unit.Metres) (unit.Celsius, error) {
	return Temperature(0, elevation)
}

// Temperature is the temperature of air-free steam in a cooker whose gauge
// reads gauge at an elevation.
//
// Valid for a gauge from 0 to HighestGauge and the elevations of Atmosphere;
// else a *unit.RangeError.
func Temperature(gauge unit.GaugeKPa, elevation unit.Metres) (unit.Celsius, error) {
	if err := unit.Check(unit.Gauge, gauge, 0, HighestGauge); err != nil {
		return 0, err
	}
	air, err := Atmosphere(elevation)
	if err != nil {
		return 0, err
	}
	return SaturationTemperature(gauge.Above(air))
}

// GaugeFor is what the gauge must read at an elevation for air-free steam of
// temperature t. It says nothing of what a cooker can bear: its rating does.
//
// Valid from the boiling point there up to HighestGauge; else a
// *unit.RangeError, of the Gauge where t is colder than boiling or too hot.
func GaugeFor(t unit.Celsius, elevation unit.Metres) (unit.GaugeKPa, error) {
	air, err := Atmosphere(elevation)
	if err != nil {
		return 0, err
	}
	p, err := SaturationPressure(t)
	if err != nil {
		return 0, err
	}
	gauge := p.Over(air)
	// Solved there and back in floating point, the boiling point itself may come
	// out a hair under the air's own pressure.
	if gauge < 0 && gauge > -1e-6 {
		gauge = 0
	}
	return gauge, unit.Check(unit.Gauge, gauge, 0, HighestGauge)
}
