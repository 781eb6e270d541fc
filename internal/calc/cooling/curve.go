package cooling

import (
	"math"
	"sort"

	"ryebell/internal/calc/cooling/conduction"
)

// surroundings is what a curve depends on beside the body.
type surroundings struct {
	start, room float64 // °C
	free        float64 // share of the free surface's coefficient
	// split is the logarithm by which the Biot number lies over the table's, at the
	// same time scale.
	split float64
	// pot divides the coefficient until lifted, in seconds of the nominal clock.
	pot, lifted float64
}

// curve is how one body cools: the excess over the room in the middle and at the
// skin, as logarithms of its share of the excess at the start. The times are on
// the nominal clock; a kitchen that is slower by s reads its own through exp(−s).
type curve struct {
	at, core, skin []float64
}

// The steps of a curve, in nominal time constants, after each change of the
// surroundings: from shortest, growing, to longest, until the middle has lost all
// but exp(−deepest).
const (
	shortestStep = 0.03
	growingStep  = 0.08
	longestStep  = 0.25
	deepest      = 6.
	mostSteps    = 160
)

// referenceExcess is the excess, in kelvins, at which time scales are compared.
const referenceExcess = 30

// slowest is the time constant of a body's slowest mode, in seconds, by a
// constant coefficient of h W/(m² K): 1/τ = α Σ (ζ/L)².
func (b Body) slowest(h, k float64) float64 {
	var sum float64
	for _, a := range b.used() {
		z := conduction.Slowest(a.geometry, h*a.half/k).Zeta / a.half
		sum += z * z
	}
	return b.filled.heat / (k * sum)
}

// schemes are those of the body's axes.
func (b Body) schemes() []scheme {
	var all []scheme
	for _, a := range b.used() {
		all = append(all, newScheme(a.geometry))
	}
	return all
}

// cool lets a body cool. The coefficient of a step is that of the mean excess of
// the surface, carried on from the steps before, the conductivity that of the mean
// temperature. Newman's product rule holds exactly, since both are the same all over
// the body at any time.
func (b Body) cool(s surroundings, schemes []scheme) curve {
	reference := s.free * convectionAndRadiation(referenceExcess, s.room, b.height)
	tau := b.slowest(reference, b.filled.conductivity)
	// With another conductivity the same coefficient makes another time scale.
	looser := math.Exp(-s.split)
	clock := b.slowest(reference, b.filled.conductivity*looser) / tau

	axes := b.used()
	c := newCurve()
	state := [3]profile{flat(), flat(), flat()}
	surface, inside := [2]float64{1, 1}, 1. // the surface now and one step before
	t, since := 0., 0.
	for range mostSteps {
		dt := tau * min(longestStep, shortestStep+growingStep*since/tau)
		coefficient := s.free
		if t < s.lifted {
			coefficient /= s.pot
			dt = min(dt, s.lifted-t)
		}
		ahead := max(1.5*surface[0]-0.5*surface[1], 0.5*surface[0])
		h := coefficient * convectionAndRadiation(ahead*(s.start-s.room), s.room, b.height)
		k := looser * b.filled.conducts(s.room+inside*(s.start-s.room))
		for i, a := range axes {
			fo := dt * clock * k / (b.filled.heat * a.half * a.half)
			state[i] = schemes[i].step(state[i], fo, h*a.half/k)
		}
		t, since = t+dt, since+dt
		if t == s.lifted {
			since = 0
		}
		surface[1], surface[0] = surface[0], meanSurface(axes, schemes, &state)
		inside = meanInside(schemes, &state)
		if c.add(t, schemes, &state); c.core[len(c.core)-1] < -deepest {
			break
		}
	}
	return c
}

func newCurve() curve {
	all := make([]float64, 3*(mostSteps+1))
	part := func(i int) []float64 { return all[i*(mostSteps+1) : i*(mostSteps+1)+1 : (i+1)*(mostSteps+1)] }
	return curve{at: part(0), core: part(1), skin: part(2)}
}

// add puts down the middle and the skin: the middle of the face across the first
// axis, where a thermometer lies.
func (c *curve) add(t float64, schemes []scheme, state *[3]profile) {
	core := min(schemes[0].centre(state[0]), 1)
	skin := state[0].surface
	for i := 1; i < len(schemes); i++ {
		middle := min(schemes[i].centre(state[i]), 1)
		core *= middle
		skin *= middle
	}
	last := len(c.core) - 1
	c.at = append(c.at, t)
	c.core = append(c.core, min(math.Log(core), c.core[last]))
	c.skin = append(c.skin, math.Log(skin))
}

// meanSurface is the mean excess over the whole surface: on the faces of each
// axis, in proportion to their area.
func meanSurface(axes []axis, schemes []scheme, state *[3]profile) float64 {
	var sum, area float64
	for i, a := range axes {
		face := state[i].surface
		for j := range axes {
			if j != i {
				face *= schemes[j].mean(state[j])
			}
		}
		weight := a.spread() / a.half
		sum, area = sum+weight*face, area+weight
	}
	return sum / area
}

// meanInside is the mean excess of the whole body.
func meanInside(schemes []scheme, state *[3]profile) float64 {
	product := 1.
	for i := range schemes {
		product *= schemes[i].mean(state[i])
	}
	return product
}

// excess is the share of the start's excess left in the middle and at the skin at
// t seconds of the nominal clock; 1 before the start.
func (c *curve) excess(t float64) (core, skin float64) {
	if t <= 0 {
		return 1, 1
	}
	i := sort.SearchFloat64s(c.at, t)
	i = min(max(i, 1), len(c.at)-1)
	w := (t - c.at[i-1]) / (c.at[i] - c.at[i-1]) // over 1 beyond the end: goes on as it went
	core = math.Exp(c.core[i-1] + w*(c.core[i]-c.core[i-1]))
	skin = math.Exp(c.skin[i-1] + w*(c.skin[i]-c.skin[i-1]))
	return core, skin
}

// reaches is when the middle is down to a share of the excess; infinity for none.
func (c *curve) reaches(share float64) float64 {
	switch {
	case share >= 1:
		return 0
	case !(share > 0):
		return math.Inf(1)
	}
	want := math.Log(share)
	i := sort.Search(len(c.core), func(i int) bool { return c.core[i] <= want })
	i = min(max(i, 1), len(c.core)-1)
	w := (want - c.core[i-1]) / (c.core[i] - c.core[i-1])
	return c.at[i-1] + w*(c.at[i]-c.at[i-1])
}
