package coolingtest

import (
	"math/rand/v2"
	"slices"
	"time"

	"ryebell/internal/calc/unit"
)

// Curve is a solved cooling: what the temperatures were, every Step from zero on.
type Curve struct {
	Core    []unit.Celsius // the warmest point
	Skin    []unit.Celsius // the mean of the sides that no neighbour touches
	Middle  []unit.Celsius // the warmest spot of those sides, about the middle of the nearest
	Between []unit.Celsius // where a probe between two containers sits
	Room    []unit.Celsius

	cooling Cooling
}

func (c *Curve) note(p *progress, room unit.Celsius) {
	core, skin := p.core(), p.skin()
	between := p.middleOfSide()
	between += p.cooling.Fold * (core - between)
	if p.cooling.Close && p.ny > 1 && p.lifted {
		between = max(between, p.touching())
	}
	c.Middle = append(c.Middle, unit.Celsius(p.middleOfSide()))
	c.Core = append(c.Core, unit.Celsius(core))
	c.Skin = append(c.Skin, unit.Celsius(skin))
	c.Between = append(c.Between, unit.Celsius(between))
	c.Room = append(c.Room, room)
}

// skin is the mean of the sides that can be reached: a neighbour hides the back.
func (p *progress) skin() float64 {
	side := p.side.mean()
	if p.cooling.Close || p.ny == 1 {
		return side
	}
	across, deep := float64(p.body.Across), float64(p.body.Deep)
	// The side's faces are as wide as the body is deep, and the other way round.
	return (deep*side + across*p.back.mean()) / (across + deep)
}

// middleOfSide is the warmest spot of the sides that can be reached.
func (p *progress) middleOfSide() float64 {
	warmest := slices.Max(p.side.outside)
	if p.cooling.Close || p.ny == 1 {
		return warmest
	}
	return max(warmest, slices.Max(p.back.outside))
}

// End is the time after zero of the last point.
func (c Curve) End() time.Duration { return time.Duration(len(c.Core)-1) * Step }

// ToLimit is the time after zero when the core has come down to limit. It is
// false when that did not happen before the curve's end.
func (c Curve) ToLimit(limit unit.Celsius) (time.Duration, bool) {
	for n, t := range c.Core {
		if t > limit {
			continue
		}
		if n == 0 {
			return 0, true
		}
		part := float64(c.Core[n-1]-limit) / float64(c.Core[n-1]-t)
		return time.Duration((float64(n-1) + part) * float64(Step)), true
	}
	return 0, false
}

// CoreAt is the core's true temperature a time after zero. Before the first and
// past the last point it is theirs, as for the other places.
func (c Curve) CoreAt(after time.Duration) unit.Celsius { return at(c.Core, after) }

// SkinAt is the true mean temperature of the skin.
func (c Curve) SkinAt(after time.Duration) unit.Celsius { return at(c.Skin, after) }

// MiddleAt is the true temperature of the skin's warmest spot.
func (c Curve) MiddleAt(after time.Duration) unit.Celsius { return at(c.Middle, after) }

// BetweenAt is the true temperature between two containers.
func (c Curve) BetweenAt(after time.Duration) unit.Celsius { return at(c.Between, after) }

// RoomAt is the room's true temperature.
func (c Curve) RoomAt(after time.Duration) unit.Celsius { return at(c.Room, after) }

func at(series []unit.Celsius, after time.Duration) unit.Celsius {
	last := len(series) - 1
	place := after.Seconds() / Step.Seconds()
	n := int(place)
	switch {
	case place <= 0:
		return series[0]
	case n >= last:
		return series[last]
	}
	part := unit.Celsius(place - float64(n))
	return series[n] + part*(series[n+1]-series[n])
}

// ReadSkin is what a thermometer on the skin shows: off by the probe's own error,
// by the reading's, by the spot it was laid on and by the heat its stem leads
// away. Nobody can take it while the pot is closed; in the first quarter of an hour
// out of it the coarse grid gives the skin some kelvins wrong.
func (c Curve) ReadSkin(after time.Duration, rng *rand.Rand) unit.Celsius {
	skin := c.SkinAt(after)
	spot := skin + unit.Celsius(table.probeSpot.draw(rng))*(at(c.Middle, after)-skin)
	stem := unit.Celsius(table.probeFin.draw(rng)) * (spot - c.RoomAt(after))
	return spot - stem + c.probe(rng)
}

// ReadBetween is what a thermometer shows that was pushed between two containers,
// off by the errors of probe and reading; no stem leads heat away there.
func (c Curve) ReadBetween(after time.Duration, rng *rand.Rand) unit.Celsius {
	return c.BetweenAt(after) + c.probe(rng)
}

// probe is what a reading is off, wherever it is taken.
func (c Curve) probe(rng *rand.Rand) unit.Celsius {
	return unit.Celsius(float64(c.cooling.Probe) + table.probeNoise.draw(rng))
}

// ReadRoom is what somebody says of the room at that time.
func (c Curve) ReadRoom(after time.Duration, rng *rand.Rand) unit.Celsius {
	return c.RoomAt(after) + unit.Celsius(float64(c.cooling.Wall)+table.roomNoise.draw(rng))
}
