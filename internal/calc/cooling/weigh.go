package cooling

import (
	"fmt"
	"math"
)

const (
	// likeness is the correlation of the errors of a run's readings beside what they
	// share by the room and by how the probe is held, which are weighed as such. Three
	// are not three times the information.
	likeness = 0.15
	// tails is Student's degrees of freedom of an error: a bad reading moves the
	// estimate, and doesn't wreck it.
	tails = 5.
	// misfit is how far the model's curve may be off a body's at a reading, in ln time.
	misfit = 0.04
)

// share is the excess that a thermometer at a place of a body meets, held z standard
// deviations better than usual.
func (b Body) share(p Place, core, skin, z float64) float64 {
	switch p {
	case Skin:
		return skin * b.touch.mid * (1 + b.touch.spread*z)
	case Between:
		skin *= b.touch.mid
		return skin + (core-skin)*min(max(betweenness+betweennessSpread*z, 0), 1)
	case Core:
		return core
	}
	panic(fmt.Sprintf("cooling: no place %d", uint8(p)))
}

// seen is a reading against one curve.
type seen struct {
	temp, variance, log float64 // log: half that of the variance
	shares              [holds]float64
}

// weigh gives each hypothesis in each room its share, in the order of each.
func (f *fan) weigh(readings []Reading) []float64 {
	weights := make([]float64, scales*len(f.ways)*len(f.rooms))
	hands := normal(holds, farHold)
	counts := 1 / (1 + likeness*float64(max(len(readings)-1, 0)))
	against := make([]seen, len(readings))
	logs := make([]float64, len(weights)*holds)
	best := math.Inf(-1)
	f.each(func(h hypothesis) {
		for i, r := range readings {
			against[i] = f.see(&h, r, hands)
		}
		for i, room := range f.rooms {
			for z := range hands {
				l := counts * likelihood(against, f.boiling, room.at, z)
				logs[(h.first+i)*holds+z] = l
				best = max(best, l)
			}
		}
	})
	sum := 0.
	f.each(func(h hypothesis) {
		for i, room := range f.rooms {
			for z, hand := range hands {
				l := logs[(h.first+i)*holds+z] - best
				if l > -20 {
					weights[h.first+i] += math.Exp(l) * hand.weight
				}
			}
			weights[h.first+i] *= h.weight * room.weight
			sum += weights[h.first+i]
		}
	})
	for i := range weights {
		weights[i] /= sum
	}
	return weights
}

// see holds a reading against a curve: what it would meet, and how far it may be
// off, by itself and because the unit isn't quite this one.
func (f *fan) see(h *hypothesis, r Reading, hands []point) seen {
	const ahead = 1.05
	t := r.After.Seconds() * f.asThis(r)
	core, skin := h.excess(t)
	laterCore, laterSkin := h.excess(t * ahead)
	of := f.body
	if !r.Body.Zero() {
		of = r.Body
	}
	drop := (of.share(r.Place, core, skin, 0) - of.share(r.Place, laterCore, laterSkin, 0)) / math.Log(ahead)
	drop *= f.boiling - f.rooms[rooms/2].at
	s := seen{temp: float64(r.Temp), variance: square(r.err()) + square(drop)*(square(misfit)+square(r.Spread))}
	s.log = math.Log(s.variance) / 2
	for i, z := range hands {
		s.shares[i] = of.share(r.Place, core, skin, z.at)
	}
	return s
}

func square(x float64) float64 { return x * x }

// asThis is how much faster the clock of this body goes than that of the one
// read, by their slowest modes.
func (f *fan) asThis(r Reading) float64 {
	if r.Body.Zero() {
		return 1
	}
	return f.tau / r.Body.reference(f.free, f.rooms[rooms/2].at)
}

// likelihood is the logarithm of Student's density of all readings.
func likelihood(readings []seen, boiling, room float64, hold int) float64 {
	sum := 0.
	for i := range readings {
		r := &readings[i]
		off := r.temp - room - (boiling-room)*r.shares[hold]
		sum -= (tails+1)/2*math.Log1p(off*off/(tails*r.variance)) + r.log
	}
	return sum
}

// err is the reading's own error, in kelvins; none is better than a tenth.
func (r Reading) err() float64 {
	const best = 0.1
	if r.Error > 0 {
		return max(float64(r.Error), best)
	}
	return float64(UsualError)
}
