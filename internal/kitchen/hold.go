package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/hold"
	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

// defaultHolds is the hold at 15 psi and sea level by the largest container it
// covers (common practice, no source; sources differ widely for bags, up to 240
// minutes for 10 lb). Five pounds and 2.5 kg stand for one size, as do a quart
// and a litre.
var defaultHolds = []struct {
	vessel Vessel
	upTo   Container
	hold   time.Duration
}{
	{Jar, Container{Vessel: Jar, Volume: unit.Litres(1.15)}, 90 * time.Minute}, // an imperial quart is 1.137 l
	{Jar, Container{Vessel: Jar, Volume: unit.Litres(2.3)}, 120 * time.Minute},
	{Jar, Container{Vessel: Jar, Volume: unit.Litres(4.6)}, 150 * time.Minute},
	{Bag, Container{Vessel: Bag, Weight: unit.Grams(2500)}, 90 * time.Minute},
	{Bag, Container{Vessel: Bag, Weight: unit.Pounds(6)}, 120 * time.Minute},
	{Bag, Container{Vessel: Bag, Weight: unit.Pounds(10)}, 150 * time.Minute},
}

// DefaultHold is the hold of a container at 15 psi and sea level when nobody
// said otherwise; false when it is larger than any that is known.
func DefaultHold(c Container) (time.Duration, bool) {
	for _, row := range defaultHolds {
		if row.vessel == c.Vessel && c.size() <= row.upTo.size()*1.001 {
			return row.hold, true
		}
	}
	return 0, false
}

// size orders containers of one vessel: litres of a jar, kilograms of a bag. A
// jar known only by its grain is as large as the jar which that would fill.
func (c Container) size() float64 {
	if c.Vessel == Jar && c.Volume == 0 {
		full := float64(wettedDensity) * float64(1-defaultHeadspace)
		return c.Weight.Kilograms() / full
	}
	if c.Vessel == Jar {
		return float64(c.Volume)
	}
	return c.Weight.Kilograms()
}

// Hold is how long a load is held at pressure, and why.
type Hold struct {
	// For is the container that rules the load: the one that needs longest.
	For Container
	// At is the gauge pressure, Temperature that of steam there and here.
	At          unit.GaugeKPa
	Temperature unit.Celsius
	Time        time.Duration
	Origin      Origin
	// Like is the smaller container whose own hold this is, since a larger one
	// needs no less; zero when the hold was set for this one.
	Like Container
	// Base is the row of the table the default was scaled from; zero when the
	// hold was said or is the collective's own.
	Base time.Duration
	// Usual is what the default would ask for here; longer than Time when a
	// shorter hold was set.
	Usual time.Duration
	// TooLong says that the default leads past four hours here: not with this
	// cooker at this height.
	TooLong bool
	// Higher is the gauge pressure that would do with Base; zero at sea level.
	// Rating is what the cooker's rating says to it.
	Higher unit.GaugeKPa
	Rating Rating
	// AtReference is the default hold here at 15 psi, when the cooker is run below
	// that; zero when it isn't, or when that would be too long as well.
	AtReference time.Duration
}

// Rating is what a cooker's rating says to a pressure.
type Rating uint8

// The rating was not said, or it allows the pressure, or it forbids it.
const (
	RatingUnsaid Rating = iota + 1
	RatingAllows
	RatingForbids
)

// rates is what the rating says to a pressure.
func (c CookerIs) rates(g unit.GaugeKPa) Rating {
	switch {
	case c.MaxGauge == 0:
		return RatingUnsaid
	case c.MaxGauge >= g:
		return RatingAllows
	}
	return RatingForbids
}

// LongestKnown is the longest hold that sources give for a bag (common practice).
const LongestKnown = 240 * time.Minute

// suggested is a hold for a big bag that is longer than the default here, in whole
// five minutes, and no longer than any source's.
func suggested(usual time.Duration) time.Duration {
	const five = 5 * time.Minute
	return min((usual + time.Hour + five - 1).Truncate(five), LongestKnown)
}

// Short reports whether the hold is shorter than the default would be.
func (h Hold) Short() bool { return h.Usual > 0 && h.Time < h.Usual }

// usualGauge is the pressure that a cooker is run at by its gauge: the
// collective's choice, or 15 psi, never above its rating. Without a rating it is
// never above 15 psi.
func (s Settings) usualGauge(c CookerIs) unit.GaugeKPa {
	g := firstSet(s.CookingGauge, hold.ReferenceGauge())
	limit := firstSet(c.MaxGauge, hold.ReferenceGauge())
	return min(g, limit)
}

// gaugeFor is the true pressure that can be counted on when a cooker is at its
// usual one. A gauge that reads high makes it less; one that reads low makes it
// no more, for then the cook stops at the rating.
func (s Settings) gaugeFor(c CookerIs) unit.GaugeKPa {
	g := s.usualGauge(c)
	return min(g, s.TrueGauge(c, g))
}

// under15 reports whether a pressure doesn't pass for 15 psi.
func under15(g unit.GaugeKPa) bool { return g < 0.99*hold.ReferenceGauge() }

// holdAt is the hold of a container in a cooker at a true pressure. The second
// result is false when no table knows a container so large: then it must be asked
// for.
func (s Settings) holdAt(b box, k CookerIs, said time.Duration, at unit.GaugeKPa) (Hold, bool) {
	h := Hold{For: b.Container, At: at, Origin: Default}
	h.Temperature, _ = steam.Temperature(at, s.Height())
	base, known := DefaultHold(b.heated())
	if known {
		s.scale(&h, base, k)
	}
	own := s.ownHold(b.Container)
	like, least := s.ownHoldOfSmaller(b.Container)
	switch {
	case said > 0:
		h.Time, h.Origin, h.TooLong = said, Said, false
	case own > 0:
		h.Time, h.Origin, h.TooLong = own, Own, false
	case known && least > h.Time:
		h.Time, h.Origin, h.Like = least, Own, like
	}
	return h, known || h.Origin != Default
}

// scale sets the default hold for this height and pressure.
func (s Settings) scale(h *Hold, base time.Duration, k CookerIs) {
	scaled, err := hold.Scale(base, s.heightThatCounts(), h.At)
	if err != nil {
		return
	}
	h.Base, h.Usual, h.Time, h.TooLong = base, scaled.Hold, scaled.Hold, scaled.BeyondLimit
	if scaled.SameTemperatureGauge-h.At >= worthRaising {
		h.Higher, h.Rating = scaled.SameTemperatureGauge, k.rates(scaled.SameTemperatureGauge)
	}
	if !under15(h.At) {
		return
	}
	if r, err := hold.Scale(base, s.heightThatCounts(), hold.ReferenceGauge()); err == nil && !r.BeyondLimit {
		h.AtReference = r.Hold
	}
}

// seaside is how far from sea level nothing is scaled: 25 m are a tenth of a
// degree, less than any gauge shows (ISO 2533, IAPWS-IF97).
const seaside unit.Metres = 25

// heightThatCounts is the elevation that holds are scaled for.
func (s Settings) heightThatCounts() unit.Metres {
	if h := s.Height(); h < -seaside || h > seaside {
		return h
	}
	return 0
}

// worthRaising is the least difference of pressure worth advising: half of what
// a dial may be off.
const worthRaising unit.GaugeKPa = 3.4 // 0.5 psi

// ownHoldOfSmaller is the longest hold that the collective set for a smaller
// container of the same vessel.
func (s Settings) ownHoldOfSmaller(c Container) (like Container, longest time.Duration) {
	for _, h := range s.Holds {
		if h.Container.Sized() && h.Container.Vessel == c.Vessel && h.Container.size() < c.size() && h.Hold > longest {
			like, longest = h.Container, h.Hold
		}
	}
	return like, longest
}

// ownHold is the hold that the collective set for a container, 0 if none: for
// that size, else for its vessel, else for all.
func (s Settings) ownHold(c Container) time.Duration {
	for _, match := range []func(HoldIs) bool{
		func(h HoldIs) bool { return h.Container.Sized() && h.Container.Same(c) },
		func(h HoldIs) bool { return !h.Container.Sized() && h.Container.Vessel == c.Vessel },
		func(h HoldIs) bool { return h.Container == Container{} },
	} {
		if i := slices.IndexFunc(s.Holds, match); i >= 0 {
			return s.Holds[i].Hold
		}
	}
	return 0
}
