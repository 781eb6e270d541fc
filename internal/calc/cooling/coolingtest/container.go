package coolingtest

import (
	"fmt"
	"math"

	"ryebell/internal/calc/unit"
)

// Container is a kind of jar or bag.
type Container uint8

// The containers that are drawn. Bags go by the weight of wetted grain in them.
const (
	Pint Container = iota + 1
	Quart
	HalfGallon
	Bag3lb
	Bag5lb
	Bag6lb
)

// Containers lists every kind, small before large.
func Containers() []Container {
	return []Container{Pint, Quart, HalfGallon, Bag3lb, Bag5lb, Bag6lb}
}

// String is the name for logs and tables.
func (c Container) String() string {
	switch c {
	case Pint:
		return "pint jar"
	case Quart:
		return "quart jar"
	case HalfGallon:
		return "half gallon jar"
	case Bag3lb:
		return "3 lb bag"
	case Bag5lb:
		return "5 lb bag"
	case Bag6lb:
		return "6 lb bag"
	}
	panic(fmt.Sprintf("coolingtest: no container %d", uint8(c)))
}

// vessel is what a container is by its nominal size: a jar has brim and radius, a
// bag weight and edges.
type vessel struct {
	brim   unit.Litres
	radius unit.Metres

	weight unit.Grams
	edges  [3]unit.Metres // longest first

	together spread // how many cool in one pot
}

func (v vessel) isJar() bool { return v.brim > 0 }

// brimHeight is the inside height of a jar that holds its brim volume.
func (v vessel) brimHeight() float64 {
	return float64(v.brim) / 1000 / (math.Pi * float64(v.radius*v.radius))
}

// vessel gives the nominal sizes. The radii of pint and quart are those of the
// check values' jars B and A; the half gallon's has no source. Footprints of 3 and
// 5 lb bags are the trade's, from memory; the 6 lb bag has no source and is the
// 5 lb bag grown by the cube root of its weight.
func (c Container) vessel() vessel {
	grown := unit.Metres(math.Cbrt(6.0 / 5))
	switch c {
	case Pint:
		return vessel{brim: unit.USPints(1), radius: 0.035, together: table.pints}
	case Quart:
		return vessel{brim: unit.USQuarts(1), radius: 0.043, together: table.quarts}
	case HalfGallon:
		return vessel{brim: unit.USQuarts(2), radius: 0.054, together: table.halfGallons}
	case Bag3lb:
		return vessel{weight: unit.Pounds(3), edges: [3]unit.Metres{0.17, 0.13, 0.08}, together: table.smallBags}
	case Bag5lb:
		return vessel{weight: unit.Pounds(5), edges: [3]unit.Metres{0.20, 0.13, 0.11}, together: table.bigBags}
	case Bag6lb:
		return vessel{weight: unit.Pounds(6), edges: [3]unit.Metres{0.20 * grown, 0.13 * grown, 0.11 * grown}, together: table.bigBags}
	}
	panic(fmt.Sprintf("coolingtest: no container %d", uint8(c)))
}
