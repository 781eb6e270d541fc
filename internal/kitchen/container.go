package kitchen

import (
	"math"

	"ryebell/internal/calc/unit"
)

// Vessel is what grain is put into.
type Vessel uint8

// Jars are known by the volume to the brim, bags by the weight of grain.
const (
	Jar Vessel = iota + 1
	Bag
)

// String returns a word for logs and the book.
func (v Vessel) String() string {
	switch v {
	case Jar:
		return "jar"
	case Bag:
		return "bag"
	}
	return "vessel not said"
}

// Basis says whether a mass of grain is meant dry, as bought, or wetted.
type Basis uint8

// The two ways to weigh grain.
const (
	Wetted Basis = iota + 1
	DryBasis
)

// String returns a word for logs and the book.
func (b Basis) String() string {
	switch b {
	case Wetted:
		return "wetted"
	case DryBasis:
		return "dry"
	}
	return "basis not said"
}

// Measure tells the system that a quart, pint or gallon belongs to.
type Measure uint8

// A US quart holds 946 ml, an imperial one 1137 ml.
const (
	US Measure = iota + 1
	Imperial
)

// Container is a kind of jar or bag. A jar has a Volume (to the brim), a bag a
// Weight (of the grain in it, by the collective's own meaning of a "5 lb bag").
// A jar of which only the grain's weight was said has a Weight and no Volume.
// The zero Container is loose grain in no vessel.
type Container struct {
	Vessel Vessel      `json:"vessel,omitzero"`
	Volume unit.Litres `json:"litres,omitzero"`
	Weight unit.Grams  `json:"grams,omitzero"`
}

// Sized reports whether the size was said.
func (c Container) Sized() bool { return c.Volume > 0 || c.Weight > 0 }

// Same reports whether two containers are the same kind, to one per cent of
// their size: a 5 lb bag and a 2.27 kg bag are.
func (c Container) Same(d Container) bool {
	return c.Vessel == d.Vessel &&
		near(float64(c.Volume), float64(d.Volume)) && near(float64(c.Weight), float64(d.Weight))
}

// covers reports whether what is said of c is said of d too: of the same kind, of
// a vessel of any size, of anything.
func (c Container) covers(d Container) bool {
	return c == Container{} || !c.Sized() && c.Vessel == d.Vessel || c.Same(d)
}

func near(a, b float64) bool { return math.Abs(a-b) <= 0.01*math.Max(a, b) }
