package duration

import (
	"math"
	"slices"
	"time"

	"ryebell/internal/calc/unit"
)

// Sure is the share of durations that lie in the range of a [Forecast]: 4 times of 5.
const Sure unit.Fraction = 0.8

// tail is how many standard deviations either end of the middle 80 % lies from the
// middle of a normal distribution: its quantile at 0.9.
const tail = 1.2815515655446004

// What is assumed beside the formulas (own judgement, no source).
const (
	// betweenKitchens is the share of the usual variance that kitchens differ by; the
	// rest is what the runs of one do. At 2 to 1 a first own run counts for two thirds.
	betweenKitchens = 2.0 / 3
	// scatterWorth is for how many runs the usual scatter between runs stands beside
	// that of the runs seen.
	scatterWorth = 4
	// Narrowest is the least that either end of a range lies from its middle, as a
	// share: a look a day can't tell more.
	Narrowest unit.Fraction = 0.12
)

// Range is from when to when something usually lies, as the middle 80 %. From is
// more than nothing and not more than To.
type Range struct{ From, To time.Duration }

// Factor is how many times as long something takes; more than nothing.
type Factor float64

// Of is that many times a duration.
func (f Factor) Of(d time.Duration) time.Duration {
	return time.Duration(math.Round(float64(d) * float64(f)))
}

// Times is the range with both ends so many times as long.
func (r Range) Times(f Factor) Range { return Range{From: f.Of(r.From), To: f.Of(r.To)} }

// Seen is how long one thing took, more than nothing. Run is the same for those that
// were made together.
type Seen struct {
	Took time.Duration
	Run  int
}

// Forecast is how long something is likely to take, to the second: half of the times
// less than About, 4 times of 5 between From and To.
type Forecast struct {
	About, From, To time.Duration
	// Runs is how many runs of their own it rests on.
	Runs int
}

// Predict is how long the next one will take. What took no time is passed over.
func Predict(usual Range, seen []Seen) Forecast {
	middle := Normal{
		Mean: (math.Log(float64(usual.From)) + math.Log(float64(usual.To))) / 2,
		SD:   math.Log(float64(usual.To)/float64(usual.From)) / 2 / tail,
	}
	runs := means(seen)
	between := scatter(middle.SD*math.Sqrt(1-betweenKitchens), runs)
	middle.SD *= math.Sqrt(betweenKitchens)
	for _, r := range runs {
		middle = middle.Given(Normal{Mean: r, SD: between})
	}
	reach := max(tail*math.Hypot(middle.SD, between), math.Log1p(float64(Narrowest)))
	return Forecast{About: exp(middle.Mean), From: exp(middle.Mean - reach), To: exp(middle.Mean + reach), Runs: len(runs)}
}

func exp(ln float64) time.Duration { return time.Duration(math.Exp(ln)).Round(time.Second) }

// means are the means of the logarithms of each run, in the order of the runs.
func means(seen []Seen) []float64 {
	sums, counts := map[int]float64{}, map[int]int{}
	var runs []int
	for _, s := range seen {
		if s.Took <= 0 {
			continue
		}
		if counts[s.Run] == 0 {
			runs = append(runs, s.Run)
		}
		sums[s.Run] += math.Log(float64(s.Took))
		counts[s.Run]++
	}
	slices.Sort(runs)
	out := make([]float64, 0, len(runs))
	for _, r := range runs {
		out = append(out, sums[r]/float64(counts[r]))
	}
	return out
}

// scatter is the standard deviation between runs: the usual one and that of the runs
// seen, each variance by what it is worth.
func scatter(usual float64, runs []float64) float64 {
	if len(runs) < 2 {
		return usual
	}
	mean, squares := 0.0, 0.0
	for _, r := range runs {
		mean += r / float64(len(runs))
	}
	for _, r := range runs {
		squares += (r - mean) * (r - mean)
	}
	return math.Sqrt((scatterWorth*usual*usual + squares) / float64(scatterWorth+len(runs)-1))
}

// Normal is a normal distribution. Its SD is not negative.
type Normal struct{ Mean, SD float64 }

// Given is what is known of a mean that n says, once one value was seen about it whose
// own distribution has the standard deviation of seen. Lee, section 2.2: precisions
// add, and means are weighed by them. A value seen without any error is the mean.
func (n Normal) Given(seen Normal) Normal {
	if n.SD == 0 {
		return n
	}
	if seen.SD == 0 {
		return seen
	}
	a, b := 1/(n.SD*n.SD), 1/(seen.SD*seen.SD)
	return Normal{Mean: (a*n.Mean + b*seen.Mean) / (a + b), SD: math.Sqrt(1 / (a + b))}
}
