package kitchen

import "slices"

func (Elevation) entry()       {}
func (RoomTemperature) entry() {}
func (CoolLimitIs) entry()     {}
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
func (DigestIs) entry()        {}
func (RestIs) entry()          {}

func (c Elevation) change(s *Settings)       { s.Elevation = &c.Height }
func (c RoomTemperature) change(s *Settings) { s.Room = &c.Temp }
func (c StepIs) change(s *Settings)          { s.Step = c.Step }
func (c UsualGrain) change(s *Settings)      { s.UsualGrain = c.Grain }
func (c UsualOrder) change(s *Settings)      { s.UsualOrder = &c.Order }
func (c GypsumIs) change(s *Settings)        { s.Gypsum = c.Share }
func (c BagMeans) change(s *Settings)        { s.BagBasis = c.Basis }
func (c HeadspaceIs) change(s *Settings)     { s.Headspace = &c.Share }
func (c ZoneIs) change(s *Settings)          { s.Zone = c.Zone }
func (c MeasureIs) change(s *Settings)       { s.Measure = c.Measure }
func (c PressureIs) change(s *Settings)      { s.CookingGauge = c.Gauge }
func (c DigestIs) change(s *Settings)        { s.Digest = &c }
func (c RestIs) change(s *Settings)          { s.RestDays = c.Days }

// A later hold takes the place of those it covers: one for all bags that of the
// 5 lb bags.
func (c HoldIs) change(s *Settings) {
	s.Holds = replace(s.Holds, c, func(h HoldIs) bool { return c.Container.covers(h.Container) })
}

func (c MethodIs) change(s *Settings) {
	s.Methods = replace(s.Methods, c, func(m MethodIs) bool { return wider(c.Vessel, m.Vessel) })
}

func (c JarFill) change(s *Settings) {
	s.Fills = replace(s.Fills, c, func(f JarFill) bool { return f.Container.Same(c.Container) })
}

func (c YieldIs) change(s *Settings) {
	s.Yields = replace(s.Yields, c, func(y YieldIs) bool { return wider(c.Grain, y.Grain) })
}

// Of ratios the narrower one stays: it fits more closely, and was meant to.
func (c RatioIs) change(s *Settings) {
	s.Ratios = replace(s.Ratios, c, func(r RatioIs) bool {
		return r.Route == c.Route && r.Grain == c.Grain && r.Vessel == c.Vessel
	})
}

func (c StorageMoisture) change(s *Settings) {
	s.StoredAt = replace(s.StoredAt, c, func(m StorageMoisture) bool { return wider(c.Grain, m.Grain) })
}

func (c GaugeReads) change(s *Settings) {
	s.GaugeErrors = replace(s.GaugeErrors, c, func(g GaugeReads) bool { return sameName(g.Cooker, c.Cooker) })
}

func (c CoolLimitIs) change(s *Settings) {
	s.CoolLimits = replace(s.CoolLimits, c, func(l CoolLimitIs) bool { return sameName(l.Culture, c.Culture) })
}

func (c QuietHours) change(s *Settings) {
	s.Quiet = replace(s.Quiet, c, func(q QuietHours) bool { return q.Member == c.Member })
}

func (c PingsPrivate) change(s *Settings) {
	s.Private = replace(s.Private, c, func(p PingsPrivate) bool { return p.Member == c.Member })
}

// replace puts what was said newest at the end and drops what it takes the place
// of, so that one setting of a scope is left. The slice it is given is not
// changed, for an earlier kitchen may still be looked at.
func replace[T any](settings []T, newest T, replaces func(T) bool) []T {
	out := make([]T, 0, len(settings)+1)
	for _, old := range settings {
		if !replaces(old) {
			out = append(out, old)
		}
	}
	return append(out, newest)
}

// wider reports whether a setting for one thing, or for everything when it names
// none, covers what another is for.
func wider[T comparable](newer, older T) bool {
	var every T
	return newer == every || newer == older
}

// What was said of a cooker is laid over what was known of the one it means. The
// first name given names the cooker that had none.
func (c CookerIs) change(s *Settings) {
	i := slices.IndexFunc(s.Cookers, func(k CookerIs) bool { return sameName(k.Name, c.Name) })
	if i < 0 && len(s.Cookers) == 1 && (c.Name == "" || s.Cookers[0].Name == "") {
		i = 0
	}
	if i < 0 && c.Name == "" && len(s.Cookers) > 1 {
		return // the one it was said of can't be told any more: a cooker came before it that was written later
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
	c.Takes = slices.Clone(c.Takes)
	for _, t := range said.Takes { // a new count of the same container replaces the old one
		c.Takes = replace(c.Takes, t, func(known Capacity) bool { return known.Container.Same(t.Container) })
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
