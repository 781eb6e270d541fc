package phrase

import (
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// sense finds the meaning of a quantity in a dimension.
func (c Correct) sense(dim Dimension) (float64, bool) {
	for _, s := range c.Quantity {
		if s.Dim == dim {
			return s.Value, true
		}
	}
	return 0, false
}

// Grams is the mass that a correction names, if it names one.
func (c Correct) Grams() (unit.Grams, bool) {
	v, ok := c.sense(Mass)
	return unit.Grams(v), ok
}

// Amend is a change of the kitchen with the number that a correction names in
// place of its own ("a quart jar holds 480 g", "no, 500 g"). It reports false
// when the correction names no number of that kind.
func Amend(change kitchen.Change, by Correct) (kitchen.Change, bool) {
	switch c := change.(type) {
	case kitchen.Elevation:
		v, ok := by.sense(Length)
		c.Height = unit.Metres(v)
		return c, ok
	case kitchen.RoomTemperature:
		v, ok := by.sense(Temperature)
		c.Temp = unit.Celsius(v)
		return c, ok
	case kitchen.CoolLimitIs:
		v, ok := by.sense(Temperature)
		c.Temp = unit.Celsius(v)
		return c, ok
	case kitchen.HoldIs:
		v, ok := by.sense(Duration)
		c.Hold = time.Duration(v * float64(time.Second))
		return c, ok
	case kitchen.StepIs:
		v, ok := by.Grams()
		c.Step = v
		return c, ok
	case kitchen.JarFill:
		v, ok := by.Grams()
		c.Wetted = v
		return c, ok
	case kitchen.YieldIs:
		v, ok := by.Grams()
		c.Drained = v
		return c, ok
	case kitchen.PressureIs:
		v, ok := by.sense(Pressure)
		c.Gauge = unit.GaugeKPa(v)
		return c, ok
	case kitchen.GaugeReads:
		v, ok := by.sense(Pressure)
		if c.Low < 0 {
			v = -v
		}
		c.Low = unit.GaugeKPa(v)
		return c, ok
	case kitchen.UsualGrain:
		c.Grain = by.Item.Grain
		return c, by.Item.Grain != 0
	case kitchen.CookerIs, kitchen.MethodIs, kitchen.RatioIs, kitchen.UsualOrder, kitchen.GypsumIs, kitchen.BagMeans,
		kitchen.HeadspaceIs, kitchen.StorageMoisture, kitchen.ZoneIs, kitchen.MeasureIs, kitchen.QuietHours,
		kitchen.PingsPrivate, kitchen.DigestIs, kitchen.RestIs:
		return nil, false // said anew in whole: none has a number that stands alone
	}
	panic("change that nobody amends")
}
