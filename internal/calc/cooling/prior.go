package cooling

import "math"

// Prior is what is believed of a kitchen's time scale before a reading: the
// logarithm by which its bodies cool slower than the table of properties says,
// and its standard deviation. exp(0.34) is 40 % slower.
type Prior struct {
	Slower float64
	Spread float64
	Runs   int // finished runs behind it
}

// Usual is the prior of a kitchen that has shown nothing yet.
func Usual() Prior { return Prior{Slower: usualSlower, Spread: openSpread} }

// Past is what a finished run has shown of its time scale, whatever was believed
// before it.
type Past struct {
	Slower float64
	Spread float64
}

// What is believed of runs in one kitchen, with one cooker, size and place: no
// source.
const (
	// kitchenSpread is how far kitchens lie apart, more than the prior of one allows for:
	// it lets a kitchen teach that it is unlike any that was thought of.
	kitchenSpread = 0.5
	// runSpread is how far runs lie apart: filling, draught, the day.
	runSpread = 0.11
	// narrowest is the least that a prior learns to: a kitchen changes.
	narrowest = 0.13
	// forget is how much of the weight is left of a run for each that came after.
	forget = 0.85
)

// Learn is the prior that finished runs lead to, oldest first, starting from what
// was believed before all of them: a normal update of the kitchen's own mean, in
// which older runs count less. Where runs differ from base by more than it allows
// for, it follows them. The result is never narrower than 0.13.
func Learn(base Prior, past []Past) Prior {
	precision := 1 / (kitchenSpread * kitchenSpread)
	sum := precision * base.Slower
	weight := 1.
	runs := 0
	for i := len(past) - 1; i >= 0; i-- {
		p := past[i]
		if !(p.Spread > 0) || math.IsInf(p.Spread, 1) || math.IsNaN(p.Slower) || math.IsInf(p.Slower, 0) {
			continue
		}
		information := weight / (p.Spread*p.Spread + runSpread*runSpread)
		precision += information
		sum += information * p.Slower
		weight *= forget
		runs++
	}
	return Prior{
		Slower: sum / precision,
		Spread: min(max(math.Sqrt(1/precision+runSpread*runSpread), narrowest), max(base.Spread, narrowest)),
		Runs:   base.Runs + runs,
	}
}

// vague is how wide Vague is.
const vague = 0.8

// Vague is the prior of who believes next to nothing: what comes of it is what the
// readings say by themselves.
func Vague() Prior { return Prior{Slower: usualSlower, Spread: vague} }

// Observe is what a run's readings say of its time scale by themselves. It
// reports false where they say next to nothing.
func Observe(q Question) (Past, bool, error) {
	q.Prior = Vague()
	f, err := New(q)
	if err != nil {
		return Past{}, false, err
	}
	after := f.Scale()
	if after.Spread > telling {
		return Past{}, false, nil
	}
	// Take the vague prior out again, by the normal rule.
	precision := 1/(after.Spread*after.Spread) - 1/(vague*vague)
	slower := (after.Slower/(after.Spread*after.Spread) - q.Prior.Slower/(vague*vague)) / precision
	return Past{Slower: slower, Spread: math.Hypot(1/math.Sqrt(precision), observedSpread)}, true, nil
}

// telling is how narrow a time scale has to become by a run's readings for them to
// teach. Readings of what has long been cool say only that it is not slow: a kitchen
// that measures when it is asked to would come to believe that it is ever faster.
const telling = 0.32

// observedSpread is what a run's readings can't say however many they are.
const observedSpread = 0.05
