package kitchen

import (
	"strings"
	"time"

	"ryebell/internal/calc/unit"
)

func sameName(a, b string) bool { return strings.EqualFold(a, b) }

func checkRange(what Quantity, got, low, high float64) error {
	if got >= low && got <= high {
		return nil
	}
	return OutOfRange{What: what, Got: got, Low: low, High: high}
}

// checkOrder refuses counts and sizes that no kitchen has.
func checkOrder(o Order) error {
	total := 0
	for _, it := range o.Items {
		if err := checkRange(CountOfUnits, float64(it.Count), 1, MaxUnits); err != nil {
			return err
		}
		if err := checkItem(it); err != nil {
			return err
		}
		if total += it.Count; total > MaxUnits {
			return OutOfRange{What: CountOfUnits, Got: float64(total), Low: 1, High: MaxUnits}
		}
	}
	if o.Hold != 0 {
		return checkHold(o.Hold)
	}
	return nil
}

func checkItem(it Item) error {
	if err := it.sized().Container.check(); err != nil {
		return err
	}
	if it.Mass != 0 {
		if err := tooMuch(it, it.Mass); err != nil {
			return err
		}
	}
	if it.Parched || it.Moisture < 0 || it.Moisture > MaxMoisture {
		return OutOfRange{What: GrainMoisture, Got: float64(it.Moisture), Low: float64(MinMoisture), High: float64(MaxMoisture)}
	}
	if it.Gypsum != 0 {
		return checkRange(GypsumShare, float64(it.Gypsum), 0, 0.1)
	}
	return nil
}

// check refuses sizes that nobody cooks.
func (c Container) check() error {
	switch c.Vessel {
	case Bag:
		return checkRange(BagWeight, float64(c.Weight), float64(MinBag), float64(MaxBag))
	case Jar:
		if c.Volume > 0 || c.Weight == 0 {
			return checkRange(JarVolume, float64(c.Volume), float64(MinJar), float64(MaxJar))
		}
		return checkRange(JarWeight, float64(c.Weight), 20, float64(unit.Kilograms(float64(MaxJar))))
	case 0:
		return nil
	}
	panic("vessel " + c.Vessel.String())
}

// tooMuch says which limit a mass of grain breaks, if any.
func tooMuch(it Item, mass unit.Grams) error {
	switch it.Container.Vessel {
	case Bag:
		return checkRange(BagWeight, float64(mass), float64(MinBag), float64(MaxBag))
	case Jar:
		return checkRange(JarWeight, float64(mass), 20, float64(it.Container.most(it.Basis)))
	case 0:
		return checkRange(LooseGrain, float64(mass), float64(MinLoose), float64(MaxLoose))
	}
	panic("vessel " + it.Container.Vessel.String())
}

// fullest is the most that a litre of a jar takes of wetted grain, and drying what
// of it is dry: wetted grain weighs at most about 1.1 kg a litre, at least 1.3
// times what it did dry.
const (
	fullest unit.Grams    = 1100
	drying  unit.Fraction = 1.3
)

// most is the most grain that can be meant for a jar.
func (c Container) most(b Basis) unit.Grams {
	switch {
	case c.Volume == 0:
		return unit.Kilograms(float64(MaxJar))
	case b == DryBasis:
		return fullest * unit.Grams(c.Volume) / unit.Grams(drying)
	}
	return fullest * unit.Grams(c.Volume)
}

func checkHold(d time.Duration) error {
	return checkRange(HoldTime, d.Minutes(), ShortestHold.Minutes(), LongestHold.Minutes())
}

// Check refuses a change that cannot be so. An error is a [Refusal].
func (s Settings) Check(c Change) error {
	switch c := c.(type) {
	case Elevation:
		return checkRange(HeightOfKitchen, float64(c.Height), float64(MinHeight), float64(MaxHeight))
	case RoomTemperature:
		return checkRange(RoomWarmth, float64(c.Temp), -5, 45)
	case CoolLimitIs:
		return checkCoolLimit(c)
	case CookerIs:
		if c.Name == "" && len(s.Cookers) > 1 {
			return WhichCooker{Known: s.CookerNames()}
		}
		return c.check()
	case HoldIs:
		return checkHold(c.Hold)
	case MethodIs, UsualGrain, BagMeans, MeasureIs, ZoneIs, PingsPrivate:
		return nil // closed sets, but for the zone, whose names lie outside: see UnknownZone
	case StepIs:
		return checkRange(ScaleStepSize, float64(c.Step), float64(finestStep), float64(CoarsestStep))
	case JarFill:
		return s.checkFill(c)
	case YieldIs:
		return checkRange(SoakedYield, float64(c.Drained/c.Dry), 1.1, 3)
	case RatioIs:
		return checkRange(WaterRatio, float64(c.Ratio), float64(MinRatio), float64(MaxRatio))
	case UsualOrder:
		_, err := s.Work(c.Order)
		return err
	case GypsumIs:
		return checkRange(GypsumShare, float64(c.Share), 0, 0.1)
	case HeadspaceIs:
		return checkRange(HeadspaceShare, float64(c.Share), 0.05, 0.8)
	case StorageMoisture:
		return checkRange(Moisture, float64(c.Moisture), 0.05, 0.25)
	case PressureIs:
		return checkRange(GaugePressure, float64(c.Gauge), float64(unit.PSI(5)), float64(s.highestGauge()))
	case GaugeReads:
		if c.Cooker == "" && len(s.Cookers) > 1 {
			return WhichCooker{Known: s.CookerNames()}
		}
		return checkRange(GaugeError, float64(c.Low), -float64(MaxGaugeError), float64(MaxGaugeError))
	case QuietHours:
		if err := checkRange(ClockTime, float64(c.From), 0, 24*60-1); err != nil {
			return err
		}
		return checkRange(ClockTime, float64(c.To), 0, 24*60-1)
	case DigestIs:
		if c.At == 0 {
			return nil
		}
		return checkRange(ClockTime, float64(c.At), float64(EarliestDigest), 24*60-1)
	case RestIs:
		return checkRange(DaysOfRest, float64(c.Days), 0, longestRest)
	}
	panic("change without a check")
}

// longestRest is how many days cooked grain is let rest at most: it is to be used
// within two weeks to four (common practice, no source).
const longestRest = 14

// highestGauge is the highest pressure that some cooker is rated for; 15 psi
// until a higher rating was stated.
func (s Settings) highestGauge() unit.GaugeKPa {
	high := unit.PSI(15)
	for _, c := range s.Cookers {
		high = max(high, c.MaxGauge)
	}
	return high * 1.001
}

// checkFill refuses a jar that would hold more than it can or next to nothing.
func (s Settings) checkFill(f JarFill) error {
	if err := f.Container.check(); err != nil {
		return err
	}
	full := float64(unit.Kilograms(float64(f.Container.Volume)))
	return checkRange(JarWeight, float64(f.Wetted), 0.15*full, float64(f.Container.most(Wetted)))
}

// check refuses ratings and sizes that no such cooker has.
func (c CookerIs) check() error {
	checks := []struct {
		what           Quantity
		got, low, high float64
	}{
		{GaugePressure, float64(c.MaxGauge), float64(unit.PSI(5)), float64(unit.PSI(40))},
		{PotVolume, float64(c.Pot), 3, 300},
		{CookerWater, float64(c.MinWater), 0.3, 30},
		{CookerWater, float64(c.MaxWater), 0.5, 60},
		{BoilOffRate, float64(c.BoilOff), 0.05, 5},
		{FallTime, c.Fall.Minutes(), 5, 360},
	}
	for _, k := range checks {
		if k.got == 0 {
			continue
		}
		if err := checkRange(k.what, k.got, k.low, k.high); err != nil {
			return err
		}
	}
	for _, t := range c.Takes {
		if err := checkRange(CookerCapacity, float64(t.Count), 1, 200); err != nil {
			return err
		}
		if err := t.Container.check(); err != nil {
			return err
		}
	}
	return nil
}
