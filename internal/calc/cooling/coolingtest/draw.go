package coolingtest

import (
	"fmt"
	"math"
	"math/rand/v2"

	"ryebell/internal/calc/unit"
)

// Natural convection in air at one atmosphere, laminar, h = C (ΔT/L)^¼ in
// W/(m² K): simplified equations as textbooks print them (from memory; vertical
// 1.42, hot side up 1.32, hot side down 0.59). The thinner air of 2000 m takes
// about a tenth less; the spread of the film covers it.
func vertical(height float64) float64 { return 1.42 / math.Pow(height, 0.25) }
func upward(width float64) float64    { return 1.32 / math.Pow(width, 0.25) }
func downward(width float64) float64  { return 0.59 / math.Pow(width, 0.25) }

func (k Kitchen) drawBody(rng *rand.Rand, c Container) Body {
	v := c.vessel()
	b := Body{Steaming: k.Steaming}
	specific := table.specificHeat.draw(rng)
	film := k.Film * table.filmOfRun.draw(rng)
	if v.isJar() {
		b.HeatCapacity = specific * table.jarDensity.draw(rng)
		b.fillJar(rng, v)
	} else {
		b.shapeBag(rng, v)
		weight := v.weight.Kilograms() * table.bagWeight.draw(rng)
		b.HeatCapacity = specific * weight / (float64(b.Volume()) / 1000)
	}
	b.Conductivity = k.Diffusivity * table.diffusivityOfRun.draw(rng) * b.HeatCapacity
	b.face(rng, film)
	b.Bottom = k.underside(b, film)
	return b
}

func (b *Body) fillJar(rng *rand.Rand, v vessel) {
	size := table.jarSize.draw(rng)
	b.Radius = v.radius * unit.Metres(size)
	// A wider jar of the same volume is lower.
	b.Height = unit.Metres(v.brimHeight() / (size * size) * table.jarFill.draw(rng))
	b.Glass = table.glass.draw(rng)
}

func (b *Body) shapeBag(rng *rand.Rand, v vessel) {
	long := v.edges[0] * unit.Metres(table.bagEdge.draw(rng))
	wide := v.edges[1] * unit.Metres(table.bagEdge.draw(rng))
	thin := v.edges[2] * unit.Metres(table.bagEdge.draw(rng))
	if table.bagStands.happens(rng) {
		b.Across, b.Deep, b.Height = wide, thin, long
		return
	}
	b.Across, b.Deep, b.Height = long, wide, thin
}

// face gives the sides and the top to the open air.
func (b *Body) face(rng *rand.Rand, film float64) {
	open := Face{Share: 1, Film: film * vertical(float64(b.Height))}
	up := film * upward(b.width())
	if b.IsJar() {
		open.Emissivity = table.glassEmissivity.draw(rng)
		b.Side = open
		b.Top = Face{
			Share: 1, Film: up, Emissivity: table.lidEmissivity.draw(rng),
			Resistance: 1 / table.lidGap.draw(rng),
		}
		return
	}
	open.Emissivity = table.bagEmissivity.draw(rng)
	open.Resistance = table.bagGap.draw(rng)
	b.Side, b.Back = open, open
	b.Top = Face{
		Share: 1, Film: up, Emissivity: open.Emissivity,
		Resistance: 1 / table.bagPocket.draw(rng),
	}
}

// width is what the convection over and under the body goes by, in metres.
func (b Body) width() float64 {
	if b.IsJar() {
		return 2 * float64(b.Radius)
	}
	return float64(min(b.Across, b.Deep))
}

// underside is the bottom on this kitchen's stand.
func (k Kitchen) underside(b Body, film float64) Face {
	switch k.Stand {
	case Rack:
		return Face{Share: k.StandTakes, Film: film * downward(b.width()), Emissivity: b.Side.Emissivity}
	case Board, Stone:
		return Face{Share: 1, Contact: k.StandTakes}
	}
	panic(fmt.Sprintf("coolingtest: no stand %d", uint8(k.Stand)))
}
