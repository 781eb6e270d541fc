package cooling

import (
	"math"
	"testing"

	"ryebell/internal/calc/cooling/conduction"
)

// TestStepMeetsSeries: under a constant coefficient the polynomial goes as the
// classical series does, in the middle and at the surface, for every Biot number
// of a kitchen and beyond.
func TestStepMeetsSeries(t *testing.T) {
	for _, g := range []conduction.Geometry{conduction.Wall, conduction.Cylinder} {
		for _, bi := range []float64{0.01, 0.1, 0.5, 1, 2, 5, 20} {
			s, p := newScheme(g), flat()
			modes := conduction.Modes(g, bi, 40)
			const dt = 0.01
			for i := 1; i <= 300; i++ {
				p = s.step(p, dt, bi)
				fo := dt * float64(i)
				if fo < 0.15 {
					continue
				}
				middle, surface := conduction.At(g, modes, 0, fo), conduction.At(g, modes, 1, fo)
				if math.Abs(s.centre(p)-middle) > 0.003 || math.Abs(p.surface-surface) > 0.003 {
					t.Errorf("%v, Bi %g, Fo %.2f: middle %.4f, surface %.4f; series %.4f, %.4f",
						g, bi, fo, s.centre(p), p.surface, middle, surface)
				}
			}
		}
	}
}

// TestHeatIsKept: what the mean loses in a step is what has left through the
// surface, Bi · spread · surface · Fo, to the accuracy of a small step; and without
// a coefficient nothing is lost.
func TestHeatIsKept(t *testing.T) {
	for _, g := range []conduction.Geometry{conduction.Wall, conduction.Cylinder} {
		s := newScheme(g)
		p := flat()
		for range 50 {
			p = s.step(p, 0.02, 1.5)
		}
		const dt = 1e-4
		next := s.step(p, dt, 1.5)
		lost := (s.mean(p) - s.mean(next)) / dt
		left := 1.5 * s.spreading * (p.surface + next.surface) / 2
		if math.Abs(lost/left-1) > 1e-6 {
			t.Errorf("%v: lost %g, left %g", g, lost, left)
		}
		closed := p
		for range 100 {
			closed = s.step(closed, 0.1, 0)
		}
		if math.Abs(s.mean(closed)-s.mean(p)) > 1e-12 || math.Abs(closed.surface-s.centre(closed)) > 1e-6 {
			t.Errorf("%v: closed, %g became %g; surface %g, middle %g",
				g, s.mean(p), s.mean(closed), closed.surface, s.centre(closed))
		}
	}
}

// TestLumped: a good conductor cools as a whole, 1/τ = h·surface/(volume·heat).
func TestLumped(t *testing.T) {
	b, err := Brick(0.05, 0.06, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	const h = 5.
	surface := 1/0.05 + 1/0.06 + 1/0.1 // per metre
	if got, want := b.slowest(h, 1e4), b.filled.heat/(h*surface); math.Abs(got/want-1) > 1e-4 {
		t.Errorf("τ %.1f s, want %.1f", got, want)
	}
}
