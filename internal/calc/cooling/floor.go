package cooling

import "math"

// floor is what no number of readings takes away: from the last of them on the
// body may go slower or faster than the curves that agree with them.
type floor struct {
	since float64 // seconds; 0 without readings, which have the whole prior
	ways  []stretch
}

// stretch is one such course: how much longer everything takes, and its share.
type stretch struct{ by, weight float64 }

// newFloor is the floor after readings, in order; hot is the share of the start's
// excess that the last of them shows.
func newFloor(since, hot float64) floor {
	if since <= 0 {
		return floor{ways: []stretch{{1, 1}}}
	}
	// Gauss–Hermite quadrature of a normal distribution, five points (Abramowitz and
	// Stegun, table 25.10, scaled by √2).
	const near, far = 1.3556261799742659, 2.8569700138728056
	const middle, inner, outer = 8. / 15, 0.2220759220056126, 0.0112574113277207
	hot = min(max(hot, 0), 1)
	hot *= hot // what fades is mostly gone at half the excess
	sd := math.Hypot(floorSpread, earlySpread*hot)
	f := floor{since: since}
	for _, z := range [...]point{{0, middle}, {-near, inner}, {near, inner}, {-far, outer}, {far, outer}} {
		f.ways = append(f.ways, stretch{by: math.Exp(early*hot + sd*z.at), weight: z.weight})
	}
	return f
}

// arrives is when something comes that the curves have at t.
func (f *floor) arrives(t float64, s stretch) float64 {
	if t <= f.since {
		return t
	}
	return f.since + (t-f.since)*s.by
}

// clock is what time the curves have at t.
func (f *floor) clock(t float64, s stretch) float64 {
	if t <= f.since {
		return t
	}
	return f.since + (t-f.since)/s.by
}
