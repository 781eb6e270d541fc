package cooling

import (
	"math"

	"ryebell/internal/calc/cooling/conduction"
	"ryebell/internal/calc/unit"
)

// The smallest and largest filling that the formulas are asked about, and the
// same for the jar around it.
const (
	SmallestBody unit.Litres = 0.02
	LargestBody  unit.Litres = 50
)

// axis is a direction in which a body is thin: a wall of the half thickness, or a
// cylinder of the radius.
type axis struct {
	geometry conduction.Geometry
	half     float64 // metres
}

// Body is the grain in a container, as far as heat is concerned: its shape, and
// what the container adds to its heat. The zero Body is none.
type Body struct {
	axes   [3]axis // the last is unused in a cylinder; the skin is read across the first
	filled material
	height float64 // metres, of the standing body
	touch  touch
}

// touch is the share of the skin's excess that a probe on it meets, and how far that
// varies, as a share of it.
type touch struct{ mid, spread float64 }

// material is what a body is made of.
type material struct {
	conductivity float64 // W/(m K) at middling
	vapour       float64 // share by which it grows from middling to boiling heat
	heat         float64 // J/(m³ K), that of the container spread over the filling
}

// conducts is the conductivity when the mean of the body is at t °C: vapour that
// evaporates on the warm side and condenses on the cold one helps while it is hot.
func (m material) conducts(t float64) float64 {
	const step = 40 // K
	return m.conductivity * max(1+m.vapour*(t-middling)/step, 0.1)
}

// bare is wetted grain of a density in kg/L.
func bare(density float64) material {
	return material{conductivity: conductivity, vapour: vapour, heat: density * 1000 * heatOfGrain}
}

// Zero reports whether b is no body.
func (b Body) Zero() bool { return b.axes[0].half == 0 }

// Cylinder is bare grain of a radius and half height.
//
// Valid from SmallestBody to LargestBody; else a *unit.RangeError.
func Cylinder(radius, halfHeight unit.Metres) (Body, error) {
	volume := 2000 * math.Pi * float64(radius*radius*halfHeight)
	return Body{
		axes: [3]axis{
			{conduction.Cylinder, float64(radius)},
			{conduction.Wall, float64(halfHeight)},
		},
		filled: bare(plainDensity),
		height: 2 * float64(halfHeight),
		touch:  touch{touchJar, touchJarSpread},
	}, checkShape(volume, radius, halfHeight)
}

// Brick is bare grain of three half edges in any order; it lies on the largest
// face.
//
// Valid from SmallestBody to LargestBody; else a *unit.RangeError.
func Brick(a, b, c unit.Metres) (Body, error) {
	if a > b {
		a, b = b, a
	}
	if b > c {
		b, c = c, b
	}
	if a > b {
		a, b = b, a
	}
	return Body{
		axes: [3]axis{
			{conduction.Wall, float64(a)},
			{conduction.Wall, float64(b)},
			{conduction.Wall, float64(c)},
		},
		filled: bare(plainDensity),
		height: 2 * float64(a),
		touch:  touch{touchBag, touchBagSpread},
	}, checkShape(8000*float64(a*b*c), a, b, c)
}

func checkShape(litres float64, edges ...unit.Metres) error {
	for _, e := range edges {
		if !(e > 0) { // NaN too
			litres = math.NaN()
		}
	}
	return unit.Check(unit.Volume, unit.Litres(litres), SmallestBody, LargestBody)
}

// Jar is the filling of a jar of a brim volume: a cylinder of the proportions of
// a quart jar (radius 43 mm, common practice), filled to filledShare, in glass.
//
// Valid for fillings from SmallestBody to LargestBody; else a *unit.RangeError.
func Jar(brim unit.Litres) (Body, error) {
	const quart, quartRadius = 0.946, 0.043
	radius := quartRadius * math.Cbrt(float64(brim)/quart)
	height := float64(brim) / 1000 * filledShare / (math.Pi * radius * radius)
	b, err := Cylinder(unit.Metres(radius), unit.Metres(height/2))
	b.filled = bare(jarDensity)
	b.filled.heat *= 1 + glassShare
	return b, err
}

// JarOf is the filling of a jar of which only the weight of the wetted grain was
// said. Ranges and errors are those of Jar.
func JarOf(wetted unit.Grams) (Body, error) {
	return Jar(unit.Litres(wetted.Kilograms() / jarDensity / filledShare))
}

// Bag is a filled bag of a weight of wetted grain: a brick of the proportions
// 20 : 13 : 11, which is a 5 lb bag of 20 × 13 × 11 cm (from memory; 3 lb bags of
// 17 × 13 × 8 and 10 lb bags of 25 × 17 × 14 come close to it).
//
// Valid for fillings from SmallestBody to LargestBody; else a *unit.RangeError.
func Bag(wetted unit.Grams) (Body, error) {
	volume := wetted.Kilograms() / bagDensity / 1000
	half := unit.Metres(math.Cbrt(volume/(20*13*11)) / 2)
	b, err := Brick(20*half, 13*half, 11*half)
	b.filled = bare(bagDensity)
	return b, err
}

// used are the axes that the body has.
func (b Body) used() []axis {
	if b.axes[2].half == 0 {
		return b.axes[:2]
	}
	return b.axes[:]
}

// spread is the dimension of an axis: surface to volume is spread/half.
func (a axis) spread() float64 {
	if a.geometry == conduction.Cylinder {
		return 2
	}
	return 1
}
