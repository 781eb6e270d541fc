package coolingtest

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// law is how a number is drawn.
type law uint8

const (
	even    law = iota + 1 // anything between a and b
	evenLog                // the same in the logarithm
	normal                 // about a, standard deviation b
	factor                 // about a, its logarithm with standard deviation b
	chance                 // 1 with probability a, else 0
)

// spread is one row of the table of what is drawn: its law, its two numbers, and
// why they are what they are.
type spread struct {
	law  law
	a, b float64
	unit string
	why  string
}

// farthest keeps a normal draw within three standard deviations: beyond them lie
// bodies that no kitchen has.
const farthest = 3

func (s spread) draw(rng *rand.Rand) float64 {
	switch s.law {
	case even:
		return s.a + (s.b-s.a)*rng.Float64()
	case evenLog:
		return s.a * math.Pow(s.b/s.a, rng.Float64())
	case normal:
		return s.a + s.b*bounded(rng)
	case factor:
		return s.a * math.Exp(s.b*bounded(rng))
	case chance:
		if rng.Float64() < s.a {
			return 1
		}
		return 0
	}
	panic(fmt.Sprintf("coolingtest: no law %d", uint8(s.law)))
}

// happens draws a row of chance.
func (s spread) happens(rng *rand.Rand) bool { return s.draw(rng) == 1 }

func bounded(rng *rand.Rand) float64 {
	return min(max(rng.NormFloat64(), -farthest), farthest)
}
