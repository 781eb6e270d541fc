package cooling

import "ryebell/internal/calc/cooling/conduction"

// nodes is how many points inside carry the profile along an axis. An even
// polynomial of degree 2·nodes through them and the surface is right to some
// thousandths of the excess for bodies like ours.
const nodes = 3

// scheme is orthogonal collocation on an axis (Villadsen and Stewart 1967; from
// memory): the profile is a polynomial in x², its points those of Gauss, so that
// the mean is Gauss's quadrature and heat is conserved.
type scheme struct {
	laplace   [nodes][nodes + 1]float64 // ∇² at the points; last column: the surface
	slope     [nodes + 1]float64        // gradient at the surface
	middle    [nodes + 1]float64        // value in the middle
	weights   [nodes]float64            // mean over the volume
	spreading float64
}

func newScheme(g conduction.Geometry) scheme {
	s := scheme{spreading: axis{geometry: g}.spread()}
	var squares [nodes + 1]float64 // x² of the points
	if g == conduction.Cylinder {
		// Gauss–Legendre with three points, in r².
		squares = [...]float64{0.1127016653792583, 0.5, 0.8872983346207417, 1}
		s.weights = [...]float64{5. / 18, 8. / 18, 5. / 18}
	} else {
		// The positive half of Gauss–Legendre with six points.
		for i, x := range [nodes]float64{0.2386191860831969, 0.6612093864662645, 0.9324695142031521} {
			squares[i] = x * x
		}
		squares[nodes] = 1
		s.weights = [...]float64{0.4679139345726910, 0.3607615730481386, 0.1713244923791704}
	}
	for j := range squares {
		p := cardinal(squares, j)
		for i := range nodes {
			s.laplace[i][j] = laplaceOf(p, squares[i], s.spreading)
		}
		s.slope[j] = 2 * derivative(p, 1)
		s.middle[j] = p[0]
	}
	return s
}

// cardinal are the coefficients, in powers of y = x², of the polynomial that is
// one at point j and zero at the others.
func cardinal(points [nodes + 1]float64, j int) [nodes + 1]float64 {
	p := [nodes + 1]float64{1}
	degree := 0
	for i, y := range points {
		if i == j {
			continue
		}
		scale := 1 / (points[j] - y)
		degree++
		for k := degree; k >= 0; k-- {
			below := 0.
			if k > 0 {
				below = p[k-1]
			}
			p[k] = (below - y*p[k]) * scale
		}
	}
	return p
}

// derivative is dp/dy at y.
func derivative(p [nodes + 1]float64, y float64) float64 {
	sum := 0.
	for k := nodes; k >= 1; k-- {
		sum = sum*y + float64(k)*p[k]
	}
	return sum
}

// laplaceOf is ∇²p at x² = y: each power x^2k becomes 2k(2k − 2 + spread) x^(2k−2).
func laplaceOf(p [nodes + 1]float64, y, spread float64) float64 {
	sum := 0.
	for k := nodes; k >= 1; k-- {
		sum = sum*y + float64(2*k)*(float64(2*k-2)+spread)*p[k]
	}
	return sum
}

// profile is the excess at the points of one axis, as a share of that at the
// start.
type profile struct {
	at      [nodes]float64
	surface float64
}

func flat() profile { return profile{at: [nodes]float64{1, 1, 1}, surface: 1} }

func (s *scheme) mean(p profile) float64 {
	return s.weights[0]*p.at[0] + s.weights[1]*p.at[1] + s.weights[2]*p.at[2]
}

func (s *scheme) centre(p profile) float64 {
	return s.middle[0]*p.at[0] + s.middle[1]*p.at[1] + s.middle[2]*p.at[2] + s.middle[3]*p.surface
}

// step moves a profile on by fo, a Fourier number, under a Biot number: the
// two-stage diagonally implicit rule of Alexander (1977), second order, which
// damps what is faster than the step.
func (s *scheme) step(p profile, fo, bi float64) profile {
	const gamma = 1 - 0.7071067811865476
	// The surface follows from the points: slope · y = −Bi y.
	var follow [nodes]float64
	for j := range nodes {
		follow[j] = -s.slope[j] / (s.slope[nodes] + bi)
	}
	var m [nodes][nodes]float64 // 1 − γ·fo·∇²
	for i := range nodes {
		for j := range nodes {
			m[i][j] = -gamma * fo * (s.laplace[i][j] + s.laplace[i][nodes]*follow[j])
		}
		m[i][i]++
	}
	inverse := invert(&m)
	// A stage's slope is ∇² m⁻¹ y, which is (m⁻¹ y − y)/γ.
	var k1, half [nodes]float64
	first := times(&inverse, &p.at)
	for i := range half {
		k1[i] = (first[i] - p.at[i]) / gamma
		half[i] = p.at[i] + (1-gamma)*k1[i]
	}
	second := times(&inverse, &half)
	var next profile
	for i := range next.at {
		next.at[i] = second[i] // half plus γ of the second slope
		next.surface += follow[i] * next.at[i]
	}
	return next
}

func times(m *[nodes][nodes]float64, v *[nodes]float64) [nodes]float64 {
	return [nodes]float64{
		m[0][0]*v[0] + m[0][1]*v[1] + m[0][2]*v[2],
		m[1][0]*v[0] + m[1][1]*v[1] + m[1][2]*v[2],
		m[2][0]*v[0] + m[2][1]*v[1] + m[2][2]*v[2],
	}
}

// invert is the inverse by cofactors.
func invert(m *[nodes][nodes]float64) [nodes][nodes]float64 {
	c00 := m[1][1]*m[2][2] - m[1][2]*m[2][1]
	c01 := m[1][2]*m[2][0] - m[1][0]*m[2][2]
	c02 := m[1][0]*m[2][1] - m[1][1]*m[2][0]
	d := 1 / (m[0][0]*c00 + m[0][1]*c01 + m[0][2]*c02)
	return [nodes][nodes]float64{
		{d * c00, d * (m[0][2]*m[2][1] - m[0][1]*m[2][2]), d * (m[0][1]*m[1][2] - m[0][2]*m[1][1])},
		{d * c01, d * (m[0][0]*m[2][2] - m[0][2]*m[2][0]), d * (m[0][2]*m[1][0] - m[0][0]*m[1][2])},
		{d * c02, d * (m[0][1]*m[2][0] - m[0][0]*m[2][1]), d * (m[0][0]*m[1][1] - m[0][1]*m[1][0])},
	}
}
