package kitchen

import "slices"

func (Elevation) entry()       {}
func (RoomTemperature) entry() {}
func (CookerIs) entry()        {}
func (HoldIs) entry()          {}
func (MethodIs) entry()        {}
func (StepIs) entry()          {}
func (JarFill) entry()         {}
func (YieldIs) entry()         {}
func (RatioIs) entry()         {}
func (UsualGrain) entry()      {}
func (UsualOrder) entry()      {}
func (GypsumIs) entry()        {}
func (BagMeans) entry()        {}
func (HeadspaceIs) entry()     {}
func (StorageMoisture) entry() {}
func (ZoneIs) entry()          {}
func (MeasureIs) entry()       {}
func (PressureIs) entry()      {}
func (GaugeReads) entry()      {}
func (QuietHours) entry()      {}
func (PingsPrivate) entry()    {}

func (c Elevation) change(s *Settings)       { s.Elevation = &c.Height }
func (c RoomTemperature) change(s *Settings) { s.Room = &c.Temp }
func (c MethodIs) change(s *Settings)        { s.Methods = append(s.Methods, c) }
func (c StepIs) change(s *Settings)          { s.Step = c.Step }
func (c JarFill) change(s *Settings)         { s.Fills = append(s.Fills, c) }
func (c YieldIs) change(s *Settings)         { s.Yields = append(s.Yields, c) }
func (c RatioIs) change(s *Settings)         { s.Ratios = append(s.Ratios, c) }
func (c UsualGrain) change(s *Settings)      { s.UsualGrain = c.Grain }
func (c UsualOrder) change(s *Settings)      { s.UsualOrder = &c.Order }
func (c GypsumIs) change(s *Settings)        { s.Gypsum = c.Share }
func (c BagMeans) change(s *Settings)        { s.BagBasis = c.Basis }
func (c HeadspaceIs) change(s *Settings)     { s.Headspace = &c.Share }
func (c StorageMoisture) change(s *Settings) { s.StoredAt = append(s.StoredAt, c) }
func (c ZoneIs) change(s *Settings)          { s.Zone = c.Zone }
func (c MeasureIs) change(s *Settings)       { s.Measure = c.Measure }
func (c PressureIs) change(s *Settings)      { s.CookingGauge = c.Gauge }
func (c GaugeReads) change(s *Settings)      { s.GaugeErrors = append(s.GaugeErrors, c) }
func (c QuietHours) change(s *Settings)      { s.Quiet = append(s.Quiet, c) }
func (c PingsPrivate) change(s *Settings)    { s.Private = append(s.Private, c) }

// A hold of the same container replaces the earlier one.
func (c HoldIs) change(s *Settings) {
	s.Holds = slices.DeleteFunc(s.Holds, func(h HoldIs) bool { return h.Container.Same(c.Container) })
	s.Holds = append(s.Holds, c)
}

// What was said of a cooker is laid over what was known of the one it means. The
// first name given names the cooker that had none.
func (c CookerIs) change(s *Settings) {
	i := slices.IndexFunc(s.Cookers, func(k CookerIs) bool { return sameName(k.Name, c.Name) })
	if i < 0 && (c.Name == "" && len(s.Cookers) == 1 || c.Name != "" && len(s.Cookers) == 1 && s.Cookers[0].Name == "") {
		i = 0
	}
	if i < 0 {
		s.Cookers = append(s.Cookers, c)
		return
	}
	s.Cookers[i] = s.Cookers[i].over(c)
}

// over is what is known of a cooker once more was said of it.
func (c CookerIs) over(said CookerIs) CookerIs {
	if said.Name != "" && c.Name == "" {
		c.Name = said.Name
	}
	if len(said.Takes) > 0 {
		c.Takes = said.Takes
	}
	c.MaxGauge = firstSet(said.MaxGauge, c.MaxGauge)
	c.Gauge = firstSet(said.Gauge, c.Gauge)
	c.Pot = firstSet(said.Pot, c.Pot)
	c.MinWater = firstSet(said.MinWater, c.MinWater)
	c.MaxWater = firstSet(said.MaxWater, c.MaxWater)
	c.BoilOff = firstSet(said.BoilOff, c.BoilOff)
	c.Fall = firstSet(said.Fall, c.Fall)
	return c
}

func firstSet[T comparable](values ...T) T {
	var unset T
	for _, v := range values {
		if v != unset {
			return v
		}
	}
	return unset
}
