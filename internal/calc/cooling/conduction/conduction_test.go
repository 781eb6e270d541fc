package conduction_test

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"ryebell/internal/calc/calctest"
	"ryebell/internal/calc/cooling/conduction"
)

const terms = 60

func rows(t *testing.T, name string) []calctest.Row {
	t.Helper()
	return calctest.Rows(t, os.DirFS("testdata"), name)
}

func geometry(t *testing.T, name string) conduction.Geometry {
	t.Helper()
	for _, g := range []conduction.Geometry{conduction.Wall, conduction.Cylinder} {
		if g.String() == name {
			return g
		}
	}
	t.Fatalf("no geometry %q", name)
	return 0
}

// TestPublishedModes: Incropera and DeWitt, table 5.1, the same in Çengel, table
// 4-2: four decimals.
func TestPublishedModes(t *testing.T) {
	for _, row := range rows(t, "conduction_eigen_published.csv") {
		m := conduction.Slowest(geometry(t, row.Text("shape")), row.Float("biot"))
		row.Within("zeta1", m.Zeta, row.Float("tol_abs"))
		row.Within("C1", m.C, row.Float("tol_abs"))
	}
}

// TestComputedModes: nine figures by bracketing with SciPy 1.10.1.
func TestComputedModes(t *testing.T) {
	for _, row := range rows(t, "conduction_eigen.csv") {
		bi := row.Float("biot")
		wall, cylinder := conduction.Slowest(conduction.Wall, bi), conduction.Slowest(conduction.Cylinder, bi)
		row.Within("wall_zeta1", wall.Zeta, 1e-7)
		row.Within("wall_C1", wall.C, 1e-7)
		row.Within("cylinder_zeta1", cylinder.Zeta, 1e-7)
		row.Within("cylinder_C1", cylinder.C, 1e-7)
	}
}

// body is a product of walls and cylinders.
type body []struct {
	geometry conduction.Geometry
	half     float64
}

func (b body) centre(k, alpha, h, seconds float64, n int) float64 {
	theta := 1.
	for _, a := range b {
		modes := conduction.Modes(a.geometry, h*a.half/k, n)
		theta *= conduction.At(a.geometry, modes, 0, alpha*seconds/(a.half*a.half))
	}
	return theta
}

// TestWorkedExamples: Geankoplis, example 5.3-4 (can of puree) and 5.3-3 (the same
// with insulated ends); Çengel, example 4-7 (brass cylinder). The books read
// charts, so they are met within 2 K and 1 K; the series value closely.
func TestWorkedExamples(t *testing.T) {
	given := map[string]struct {
		body                              body
		k, alpha, h, start, around, after float64
	}{
		"canned puree, short cylinder": {
			body{{conduction.Cylinder, 0.03405}, {conduction.Wall, 0.0508}},
			0.83, 2.007e-7, 4540, 29.4, 115.6, 2700,
		},
		"same can, long cylinder": {
			body{{conduction.Cylinder, 0.03405}}, 0.83, 2.007e-7, 4540, 29.4, 115.6, 2700,
		},
		"short brass cylinder": {
			body{{conduction.Cylinder, 0.05}, {conduction.Wall, 0.06}}, 110, 33.9e-6, 60, 120, 25, 900,
		},
	}
	for _, row := range rows(t, "conduction_published.csv") {
		g, ok := given[row.Text("case")]
		if !ok {
			t.Fatalf("no example %q", row.Text("case"))
		}
		got := g.around + (g.start-g.around)*g.body.centre(g.k, g.alpha, g.h, g.after, terms)
		row.Within("published_chart_value", got, row.Float("tol_abs_between"))
		row.Within("series_value", got, 1e-3)
	}
}

// cases are bodies like jars and bags, computed with SciPy 1.10.1.
func cases(t *testing.T) map[string]func(hours float64, n int) float64 {
	t.Helper()
	all := map[string]func(float64, int) float64{}
	for _, row := range rows(t, "conduction_cases.csv") {
		var b body
		if row.Text("shape") == "cylinder" {
			b = body{{conduction.Cylinder, row.Float("radius_or_half1_m")}, {conduction.Wall, row.Float("half2_m")}}
		} else {
			for _, column := range []string{"radius_or_half1_m", "half2_m", "half3_m"} {
				b = append(b, body{{conduction.Wall, row.Float(column)}}...)
			}
		}
		k, alpha, h := row.Float("k_W_mK"), row.Float("alpha_m2_s"), row.Float("h_W_m2K")
		start, room := row.Float("T0_C"), row.Float("room_C")
		var rate float64
		product := 1.
		for _, a := range b {
			m := conduction.Slowest(a.geometry, h*a.half/k)
			rate += alpha * m.Zeta * m.Zeta / (a.half * a.half)
			product *= m.C
		}
		row.WithinShare("tau_h", 1/rate/3600, 1e-5)
		row.WithinShare("C_centre", product, 1e-5)
		all[row.Text("case")] = func(hours float64, n int) float64 {
			return room + (start-room)*b.centre(k, alpha, h, hours*3600, n)
		}
	}
	return all
}

// TestCurves: the series, and a finite-volume solution that doesn't use the
// product rule (48 radial cells, or 22³ of an octant).
func TestCurves(t *testing.T) {
	all := cases(t)
	for _, row := range rows(t, "conduction_curve.csv") {
		centre := all[row.Text("case")]
		got := centre(row.Float("hour"), terms)
		row.Within("centre_C_series", got, 1e-3)
		row.Within("centre_C_finite_volume", got, 0.05)
	}
}

// TestBall: the time for a factor of ten by Ball and Olson, Sterilization in Food
// Technology (1957): f = 0.398/[(1/a² + 0.427/b²) α] for a can, 0.933/[(1/a² +
// 1/b² + 1/c²) α] for a brick, both for a surface held at its surroundings.
func TestBall(t *testing.T) {
	for _, row := range rows(t, "heating_rate_factor.csv") {
		b := body{{conduction.Wall, row.Float("half2_m")}, {conduction.Wall, row.Float("radius_or_half1_m")}}
		if row.Text("shape") == "cylinder" {
			b[1].geometry = conduction.Cylinder
		} else {
			b = append(b, body{{conduction.Wall, row.Float("half3_m")}}...)
		}
		var rate float64
		for _, a := range b {
			z := conduction.Slowest(a.geometry, math.Inf(1)).Zeta / a.half
			rate += z * z
		}
		f := math.Ln10 / (row.Float("alpha_m2_s") * rate) / 60
		row.WithinShare("f_min_exact", f, 1e-6)
		row.WithinShare("f_min_rounded_formula", f, 1e-3)
	}
}

// TestLimits of the Biot number: a good conductor has one temperature, ζ² = Bi in
// a wall and 2 Bi in a cylinder; a surface that is held takes π/2 or 2.4048 (first
// zero of J0, Abramowitz and Stegun, table 9.5), and the second 3π/2 or 5.5201.
func TestLimits(t *testing.T) {
	const small = 1e-6
	for _, c := range []struct {
		geometry      conduction.Geometry
		lumped        float64
		first, second float64
	}{
		{conduction.Wall, 1, math.Pi / 2, 3 * math.Pi / 2},
		{conduction.Cylinder, 2, 2.404825557695773, 5.520078110286311},
	} {
		m := conduction.Slowest(c.geometry, small)
		if got := m.Zeta * m.Zeta; math.Abs(got/(c.lumped*small)-1) > 1e-5 || math.Abs(m.C-1) > 1e-5 {
			t.Errorf("%v, Bi %g: ζ² %g, C %g", c.geometry, small, got, m.C)
		}
		for _, bi := range []float64{1e9, math.Inf(1)} {
			got := conduction.Modes(c.geometry, bi, 2)
			if math.Abs(got[0].Zeta-c.first) > 1e-7 || math.Abs(got[1].Zeta-c.second) > 1e-7 {
				t.Errorf("%v, Bi %g: %v, want %g and %g", c.geometry, bi, got, c.first, c.second)
			}
		}
	}
}

// TestModesSolve: each root meets its equation and lies over the one before, and
// the coefficients make the start.
func TestModesSolve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bi := math.Pow(10, rapid.Float64Range(-3, 3).Draw(t, "log Bi"))
		for _, g := range []conduction.Geometry{conduction.Wall, conduction.Cylinder} {
			before := 0.
			for i, m := range conduction.Modes(g, bi, 12) {
				left, right := m.Zeta*math.Sin(m.Zeta), bi*math.Cos(m.Zeta)
				if g == conduction.Cylinder {
					left, right = m.Zeta*math.J1(m.Zeta), bi*math.J0(m.Zeta)
				}
				if math.Abs(left-right) > 1e-9*(1+bi+m.Zeta) {
					t.Fatalf("%v, Bi %g, mode %d: %g ≠ %g", g, bi, i, left, right)
				}
				if m.Zeta <= before {
					t.Fatalf("%v, Bi %g: mode %d at %g, not over %g", g, bi, i, m.Zeta, before)
				}
				before = m.Zeta
			}
			if got := conduction.At(g, conduction.Modes(g, bi, terms), 0, 0.01); math.Abs(got-1) > 1e-3 {
				t.Fatalf("%v, Bi %g: middle soon after the start at %g", g, bi, got)
			}
		}
	})
}
