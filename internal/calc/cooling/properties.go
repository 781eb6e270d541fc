package cooling

import "fmt"

// Aspect is something of the grain or its surroundings that the model has a number
// for.
type Aspect uint8

// The aspects. Beside each the unit of its Value.
const (
	JarDensity    Aspect = iota + 1 // kg/L of wetted grain, loose
	BagDensity                      // kg/L of wetted grain in a filled bag
	SpecificHeat                    // J/(kg K)
	Diffusivity                     // m²/s at 60 °C
	VapourGrowth                    // share by which the diffusivity grows to 100 °C, and falls to 20
	Emissivity                      // of the surface, 0 to 1
	Convection                      // W/(m² K) at 1 K over 1 m; times (ΔT/H)^¼
	GlassHeat                       // heat of a jar, as a share of its grain's
	FilledShare                     // of a jar's brim volume
	CloseShare                      // of a free surface's coefficient, standing close
	CrowdedShare                    // the same, crowded
	PotFactor                       // by which the closed pot divides the coefficient
	TouchShare                      // of a bag's skin's excess that a probe meets
	BetweenShare                    // of the way from skin to core, between two containers
	RemainingTime                   // 1; its spread is what no reading takes away
)

// String is the aspect's name for logs.
func (a Aspect) String() string {
	switch a {
	case JarDensity:
		return "density in a jar"
	case BagDensity:
		return "density in a bag"
	case SpecificHeat:
		return "specific heat"
	case Diffusivity:
		return "diffusivity"
	case VapourGrowth:
		return "growth of diffusivity"
	case Emissivity:
		return "emissivity"
	case Convection:
		return "natural convection"
	case GlassHeat:
		return "heat of glass"
	case FilledShare:
		return "share filled"
	case CloseShare:
		return "share of the surface, close"
	case CrowdedShare:
		return "share of the surface, crowded"
	case PotFactor:
		return "closed pot"
	case TouchShare:
		return "touch of a probe"
	case BetweenShare:
		return "between two containers"
	case RemainingTime:
		return "remaining time"
	}
	panic(fmt.Sprintf("cooling: no aspect %d", uint8(a)))
}

// Basis is how well a number is founded.
type Basis uint8

// The foundations, best first.
const (
	FromMemory     Basis = iota + 1 // a publication, from memory and not looked up
	CommonPractice                  // a figure of the trade without a publication
	NoSource                        // a judgement
)

// String is the basis's name for logs.
func (b Basis) String() string {
	switch b {
	case FromMemory:
		return "from memory"
	case CommonPractice:
		return "common practice"
	case NoSource:
		return "no source"
	}
	panic(fmt.Sprintf("cooling: no basis %d", uint8(b)))
}

// Property is a number of the model with its doubt and its source.
type Property struct {
	Aspect Aspect
	Value  float64 // in the unit that the Aspect names
	// Spread is the standard deviation of its logarithm; 0 where the model draws none
	// of its own, and it is part of the doubt in the time scale.
	Spread float64
	Basis  Basis
	// Publication is what the number is after; "" without one.
	Publication string
}

// Properties lists what a forecast is made from.
func Properties() []Property {
	const wheat = "Kazarian and Hall, Trans. ASAE 8 (1965) 33, soft wheat, stretched from 20 to 40 % moisture"
	return []Property{
		{JarDensity, jarDensity, 0.10, CommonPractice, ""},
		{BagDensity, bagDensity, 0.10, CommonPractice, ""},
		{SpecificHeat, heatOfGrain, 0.10, FromMemory, wheat},
		// Wheat stretched so has 0.8e-7, water 1.4e-7 to 1.7e-7; vapour helps while hot.
		{Diffusivity, diffusivity, 0.47, NoSource, ""},
		// Krischer's diffusion of vapour in wet pores gives more, from memory.
		{VapourGrowth, vapour, 0, NoSource, ""},
		{Emissivity, emissivity, 0.05, FromMemory, "textbook value of glass and of plastic film"},
		{Convection, convection, 0.2, FromMemory, "McAdams, Heat Transmission, laminar vertical plate in air"},
		{GlassHeat, glassShare, 0, NoSource, ""}, // 400 g at 0.84 kJ/(kg K) on 470 g of grain
		{FilledShare, filledShare, 0.1, CommonPractice, ""},
		{CloseShare, freeClose, 0, NoSource, ""},
		{CrowdedShare, freeCrowded, 0, NoSource, ""},
		{PotFactor, potSlower, potSpread, CommonPractice, ""}, // half as long again to twice
		{TouchShare, touchBag, touchBagSpread, NoSource, ""},
		{BetweenShare, betweenness, betweennessSpread, NoSource, ""},
		{RemainingTime, 1, floorSpread, NoSource, ""},
	}
}
