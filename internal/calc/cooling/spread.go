package cooling

import (
	"math"

	"ryebell/internal/calc/unit"
)

// point is a value with its share.
type point struct{ at, weight float64 }

// normal lists n points from −widest to widest standard deviations with the
// shares of a normal distribution; n is odd.
func normal(n int, widest float64) []point {
	points := make([]point, n)
	sum := 0.
	for i := range points {
		z := widest * (2*float64(i)/float64(n-1) - 1)
		points[i] = point{z, math.Exp(-z * z / 2)}
		sum += points[i].weight
	}
	for i := range points {
		points[i].weight /= sum
	}
	return points
}

// heavy is normal with the tails of Student's distribution of five degrees of
// freedom, between the same 10 and 90 %: for what was drawn from a guess, and is now
// and then far off.
func heavy(n int, widest float64) []point {
	// The 90 % quantiles of both (Abramowitz and Stegun, tables 26.10 and 26.1).
	const freedom, stretch = 5, 1.475884 / 1.281552
	points := normal(n, widest)
	sum := 0.
	for i := range points {
		z := points[i].at * stretch
		points[i].weight = math.Pow(1+z*z/freedom, -(freedom+1)/2.)
		sum += points[i].weight
	}
	for i := range points {
		points[i].weight /= sum
	}
	return points
}

// cells is how finely a spread tells values apart.
const cells = 512

// spread is a distribution as a histogram from lo to hi. What lies outside counts
// as at its ends.
type spread struct {
	lo, width float64
	share     [cells]float64
	over, sum float64
}

func newSpread(lo, hi float64) spread { return spread{lo: lo, width: (hi - lo) / cells} }

func (s *spread) add(v, weight float64) {
	s.sum += weight
	at := (v - s.lo) / s.width
	switch {
	case at >= cells:
		s.over += weight
	case at > 0:
		s.share[int(at)] += weight
	default: // not a number, too
		s.share[0] += weight
	}
}

// addOver spreads a weight evenly from lo to hi.
func (s *spread) addOver(lo, hi, weight float64) {
	const pieces = 16
	for i := range pieces {
		s.add(lo+(hi-lo)*(float64(i)+0.5)/pieces, weight/pieces)
	}
}

// below is the share under v.
func (s *spread) below(v float64) float64 {
	at := (v - s.lo) / s.width
	if at <= 0 {
		return 0
	}
	sum := 0.
	for i, w := range s.share {
		if float64(i+1) > at {
			sum += w * max(at-float64(i), 0)
			break
		}
		sum += w
	}
	return min(sum/s.sum, 1)
}

// quantile is the value under which the share p lies.
func (s *spread) quantile(p float64) float64 {
	want := p * s.sum
	for i, w := range s.share {
		if want <= w && w > 0 {
			return s.lo + s.width*(float64(i)+want/w)
		}
		want -= w
	}
	return s.lo + s.width*cells
}

func (s *spread) warmth() Warmth {
	return Warmth{
		Mid: unit.Celsius(s.quantile(0.5)),
		Lo:  unit.Celsius(s.quantile(lowEnd)),
		Hi:  unit.Celsius(s.quantile(highEnd)),
	}
}
