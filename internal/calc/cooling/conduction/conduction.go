package conduction

import (
	"fmt"
	"math"
)

// Geometry is one of the two bodies that the others are products of.
type Geometry uint8

// A Wall is infinite in two directions and 2 L thick; a Cylinder is infinitely
// long with the radius L.
const (
	Wall Geometry = iota + 1
	Cylinder
)

// String is the geometry's name for logs.
func (g Geometry) String() string {
	switch g {
	case Wall:
		return "wall"
	case Cylinder:
		return "cylinder"
	}
	panic(fmt.Sprintf("conduction: no geometry %d", uint8(g)))
}

// Mode is one term of the series: C exp(−Zeta² Fo), times cos(Zeta x) in a wall
// or J0(Zeta x) in a cylinder. Both numbers have no unit.
type Mode struct{ Zeta, C float64 }

// Modes lists the n slowest modes for a Biot number: the roots of ζ tan ζ = Bi
// (wall) or ζ J1(ζ) = Bi J0(ζ) (cylinder) with their coefficients. Bi may be
// anything over 0, infinity (a surface held at its surroundings) included.
func Modes(g Geometry, bi float64, n int) []Mode {
	modes := make([]Mode, n)
	for i := range modes {
		modes[i] = mode(g, bi, i)
	}
	return modes
}

// Slowest is the first of the modes: all that is left from about Fo = 0.2 on.
func Slowest(g Geometry, bi float64) Mode { return mode(g, bi, 0) }

func mode(g Geometry, bi float64, i int) Mode {
	switch g {
	case Wall:
		// Bi is met once between each zero of the sine and the next of the cosine.
		lo := float64(i) * math.Pi
		z := root(lo, lo+math.Pi/2, bi, func(z float64) (float64, float64) {
			sin, cos := math.Sincos(z)
			return z * sin, cos
		})
		return Mode{Zeta: z, C: 4 * math.Sin(z) / (2*z + math.Sin(2*z))}
	case Cylinder:
		z := root(besselZero(math.J1, i), besselZero(math.J0, i+1), bi, func(z float64) (float64, float64) {
			return z * math.J1(z), math.J0(z)
		})
		j0, j1 := math.J0(z), math.J1(z)
		return Mode{Zeta: z, C: 2 / z * j1 / (j0*j0 + j1*j1)}
	}
	panic(fmt.Sprintf("conduction: no geometry %d", uint8(g)))
}

// root halves the bracket until f's two parts, a and b, meet a = Bi b.
func root(lo, hi, bi float64, f func(float64) (a, b float64)) float64 {
	if math.IsInf(bi, 1) {
		return hi
	}
	a, b := f(lo + (hi-lo)*1e-9)
	sign := a < bi*b
	for range 54 {
		mid := (lo + hi) / 2
		if a, b = f(mid); (a < bi*b) == sign {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// besselZero is the n-th positive zero of J0 or J1, and 0 for none of J1: the
// zeros lie near (n − ¼)π and (n + ¼)π (McMahon).
func besselZero(j func(float64) float64, n int) float64 {
	if n == 0 {
		return 0
	}
	near := (float64(n) + 0.25) * math.Pi
	if j(0) == 1 { // J0
		near -= math.Pi / 2
	}
	lo, hi := near-0.3, near+0.3
	sign := math.Signbit(j(lo))
	for range 54 {
		if mid := (lo + hi) / 2; math.Signbit(j(mid)) == sign {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// At is the excess at x, 0 in the middle to 1 at the surface, after fo, by a
// series of these modes: 1 at the start, 0 in the end. With few modes it is right
// for late times only; what lies over 1 then is clamped.
func At(g Geometry, modes []Mode, x, fo float64) float64 {
	var sum float64
	for _, m := range modes {
		sum += m.C * math.Exp(-m.Zeta*m.Zeta*fo) * g.profile(m.Zeta*x)
	}
	return min(max(sum, 0), 1)
}

// profile is the shape of a mode.
func (g Geometry) profile(z float64) float64 {
	switch g {
	case Wall:
		return math.Cos(z)
	case Cylinder:
		return math.J0(z)
	}
	panic(fmt.Sprintf("conduction: no geometry %d", uint8(g)))
}
