package coolingtest

import (
	"math/rand/v2"
	"time"

	"ryebell/internal/calc/steam"
	"ryebell/internal/calc/unit"
)

// Kitchen is what stays the same from one run to the next.
type Kitchen struct {
	Elevation   unit.Metres // 0 to 2000 as drawn
	Day         unit.Celsius
	NightDrop   unit.Kelvins
	Diffusivity float64 // m²/s at 60 °C, of its usual grain
	Steaming    float64 // as Body
	Film        float64 // factor on what air takes
	Stand       Stand
	StandTakes  float64 // share left free by a rack, W/(m² K) of a board or stone
	Close       bool    // the habit of cooling close together
	PotMetal    float64 // J/K
	PotArea     float64 // m²
	PotOuter    Face
	Probe       unit.Kelvins // errors of its thermometers
	Wall        unit.Kelvins

	// Slowness is 1 as drawn. At 1.4 all that it cooks holds 1.4 times the heat, and
	// cools in 1.4 times the time.
	Slowness float64
}

// Stand is what a container is put on.
type Stand uint8

// The kinds of stand.
const (
	Rack Stand = iota + 1
	Board
	Stone
)

// DrawKitchen draws a kitchen.
func DrawKitchen(rng *rand.Rand) Kitchen {
	t := &table
	k := Kitchen{
		Elevation:   unit.Metres(t.elevation.draw(rng)),
		Day:         unit.Celsius(t.room.draw(rng)),
		NightDrop:   unit.Kelvins(t.nightDrop.draw(rng)),
		Diffusivity: t.diffusivity.draw(rng),
		Steaming:    t.steaming.draw(rng),
		Film:        t.film.draw(rng),
		Close:       t.close.happens(rng),
		PotMetal:    t.potMetal.draw(rng),
		PotArea:     t.potArea.draw(rng),
		PotOuter:    Face{Share: 1, Film: vertical(0.3), Emissivity: t.potEmissivity.draw(rng)},
		Probe:       unit.Kelvins(t.probeOffset.draw(rng)),
		Wall:        unit.Kelvins(t.roomOff.draw(rng)),
		Slowness:    1,
	}
	k.Stand, k.StandTakes = drawStand(rng)
	return k
}

func drawStand(rng *rand.Rand) (Stand, float64) {
	switch {
	case table.onRack.happens(rng):
		return Rack, table.rackShare.draw(rng)
	case table.onBoard.happens(rng):
		return Board, table.board.draw(rng)
	}
	return Stone, table.stone.draw(rng)
}

// Draw draws one cooling of a container in a kitchen of its own.
func Draw(rng *rand.Rand, c Container) Cooling { return DrawKitchen(rng).Draw(rng, c) }

// Draw draws one cooling in this kitchen.
func (k Kitchen) Draw(rng *rand.Rand, container Container) Cooling {
	t := &table
	c := Cooling{
		Container: container,
		Body:      k.drawBody(rng, container),
		Start:     k.boiling() + unit.Celsius(t.startOver.draw(rng)),
		Room: Room{
			Day: k.Day, NightDrop: k.NightDrop,
			Warmth: unit.Kelvins(t.kitchenWarmth.draw(rng)),
			Fades:  hours(t.kitchenFades.draw(rng)),
			ZeroAt: hours(t.zeroHour.draw(rng)),
		},
		Pot:       k.drawPot(rng, container),
		LiftedOut: drawLift(rng),
		Close:     k.Close,
		Draught:   drawDraught(rng),
		Slowness:  k.Slowness,
		Fold:      t.foldBag.draw(rng),
		Probe:     k.Probe,
		Wall:      k.Wall,
	}
	if container.vessel().isJar() {
		c.Fold = t.foldJar.draw(rng)
	}
	if c.Close = c.Close && c.Pot.Bodies > 1; c.Close {
		c.crowd(rng)
	}
	c.RoomTold = c.Room.At(0) + unit.Celsius(float64(k.Wall)+t.roomNoise.draw(rng))
	c.LimitTold = min(max(27, c.RoomTold+3), 30)
	return c
}

// crowd lets neighbours hinder the sides and warm the air.
func (c *Cooling) crowd(rng *rand.Rand) {
	c.Warmed = table.warmedAir.draw(rng)
	if c.Body.IsJar() {
		c.Body.Side.Share = table.closeJar.draw(rng)
		return
	}
	c.Body.Back.Share = table.closeBag.draw(rng)
}

// boiling is where water boils in this kitchen.
func (k Kitchen) boiling() unit.Celsius {
	t, err := steam.BoilingPoint(k.Elevation)
	if err != nil {
		panic("coolingtest: a kitchen outside the atmosphere: " + err.Error())
	}
	return t
}

func (k Kitchen) drawPot(rng *rand.Rand, c Container) Pot {
	const heatOfWater = 4186 // J/(L K)
	return Pot{
		Bodies: int(c.vessel().together.draw(rng)),
		Heat:   k.PotMetal + heatOfWater*table.potWater.draw(rng),
		Area:   k.PotArea,
		Outer:  k.PotOuter,
		Inside: table.potInside.draw(rng),
		Crowd:  table.potCrowd.draw(rng),
	}
}

// drawLift draws when somebody takes the containers out.
func drawLift(rng *rand.Rand) time.Duration {
	switch {
	case table.neverLifted.happens(rng):
		return Never
	case table.leftForHours.happens(rng):
		return hours(table.liftedLate.draw(rng))
	}
	return hours(table.liftedSoon.draw(rng) / 60)
}

func drawDraught(rng *rand.Rand) Draught {
	if !table.draughty.happens(rng) {
		return Draught{}
	}
	return Draught{
		From: hours(table.draughtFrom.draw(rng)),
		For:  hours(table.draughtFor.draw(rng)),
		Adds: table.draught.draw(rng),
	}
}

// hours rounds to whole seconds: nobody's clock is finer.
func hours(h float64) time.Duration {
	return time.Duration(h * float64(time.Hour)).Round(time.Second)
}
