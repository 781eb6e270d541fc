package cooling

import "math"

// Numbers of wetted grain and of its surroundings; Properties lists them with their
// spreads and sources.
const (
	jarDensity  = 0.68 // kg/L
	bagDensity  = 0.78 // kg/L
	diffusivity = 1.2e-7
	middling    = 60. // °C, at which the diffusivity holds
	vapour      = 0.3
	heatOfGrain = 3030. // J/(kg K)
	// plainDensity is for bodies of no container, and for the conductivity.
	plainDensity = 0.7 // kg/L
	emissivity   = 0.9
	convection   = 1.42 // W/m²K at 1 K over 1 m
	glassShare   = 0.2
	filledShare  = 0.7
	// conductivity follows: 0.25 W/(m K), the help of vapour included.
	conductivity = diffusivity * plainDensity * 1000 * heatOfGrain
)

const (
	stefanBoltzmann = 5.670374419e-8 // W/(m² K⁴), CODATA 2018
	iceInKelvin     = 273.15
)

// How the neighbours hinder the surface, as a share of its coefficient when it
// stands free. No source: faces that touch give off nothing, and warm neighbours
// radiate back.
const (
	freeClose   = 0.64
	freeCrowded = 0.5
	freeBase    = 0.96 // the face that it stands on
)

// What a forecast weighs; spreads are standard deviations of the logarithm. The
// spreads of the properties by themselves would make a wider prior than openSpread:
// what is thick, heavy and badly conducting at once doesn't add up, and ranges that
// wide held far more than four of five simulated kitchens.
const (
	// usualSlower is how much slower kitchens are than the table, in ln time.
	usualSlower = 0.01
	// openSpread is that of the time scale out of the pot: diffusivity, coefficient,
	// size and spacing together. It, the floor and the touch of a probe are set so that
	// ranges hold four times of five in simulated kitchens (TestCalibration); nobody has
	// measured real ones, which is what Learn is for.
	openSpread = 0.18
	// unsaidSpread is what comes to it where nobody said how the containers stand: half
	// of what parts close from apart.
	unsaidSpread = 0.08
	// splitSpread is that of the Biot number at the same time scale: how much of the
	// delay lies inside, and so how far the core is behind the skin.
	splitSpread = 0.35
	// potSlower divides the surface's coefficient in the closed pot, so that a body
	// there takes half as long again: common practice says half to twice, the water
	// and the metal hold heat too.
	potSlower = 2.1
	potSpread = 0.3
	// floorSpread is that of the remaining time however many readings there are: four of
	// five lie within 12 % either way.
	floorSpread = 0.09
	// early is how much longer the remaining time is, in ln, after a reading as hot as
	// the start: what fades as it cools and isn't in the model makes a hot body look
	// faster than it will be. Less by the excess that has gone. Measured cups of coffee
	// have more, by their steam. earlySpread is its spread.
	early       = 0.16
	earlySpread = 0.15
)

// convectionAndRadiation is the coefficient of a free surface, W/(m² K), excess
// kelvins over a room of room °C, on a body of this height in metres.
func convectionAndRadiation(excess, room, height float64) float64 {
	excess = max(excess, 0.01)
	cold := room + iceInKelvin
	warm := cold + excess
	return convection*math.Sqrt(math.Sqrt(excess/height)) +
		emissivity*stefanBoltzmann*(warm*warm+cold*cold)*(warm+cold)
}

// How a thermometer meets the grain. No source; in simulated kitchens, in which
// probes lie beside the best spot, stems lead heat away and a bag's neighbours and
// its base keep the core warm, skins read about so.
const (
	// The share of the excess of the skin's middle that a probe on it meets: glass is
	// pressed to the grain, film stands off it and a bag has no best spot.
	touchJar       = 1
	touchBag       = 0.67
	touchJarSpread = 0.04
	touchBagSpread = 0.23
	// betweenness is how far from the skin to the core the fold between two containers
	// is, as a share of the way.
	betweenness       = 0.5
	betweennessSpread = 0.16
)
