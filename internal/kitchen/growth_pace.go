package kitchen

import (
	"math"
	"time"

	"ryebell/internal/calc/duration"
	"ryebell/internal/calc/unit"
)

// How far grown a unit usually is when (common practice, no source): when a first shake
// is due about a quarter shows, and from there on it grows evenly.
const (
	shownAtShake unit.Fraction = 0.25
	// leastTells is the share below which nobody can tell how fast it goes.
	leastTells unit.Fraction = 0.2
	// latestShake is the share of the whole time by which that quarter shows at the latest.
	latestShake duration.Factor = 0.6
	// slowest is how many times as long as usual the rest takes at the most.
	slowest duration.Factor = 2
)

// Rests reports whether something that would grow stands in the cold, where nobody can
// say when it is grown through.
func (u Unit) Rests() bool {
	return Chilled(u.Place) && (u.State == UnitInoculated || u.State == UnitGrowing)
}

// paces reports whether somebody saw how far the unit has grown.
func (u Unit) paces() bool { return u.Share > 0 && u.Share < 1 && !u.Seen.IsZero() }

// paced is when a unit is grown through, by how far it was seen: what is left takes as
// long as usual, and longer where it took longer so far. Half of that, as a ratio, is
// taken for a late start and not for a slow growth. It never goes faster than usual. Of
// what is left the range is the wider, as a share of it, the less is left.
func (u Unit) paced(usual Expected, from, shake time.Time) Expected {
	if !u.paces() {
		return usual
	}
	whole := usual.About.Sub(from)
	first := min(shake.Sub(from), latestShake.Of(whole))
	share := max(u.Share, leastTells)
	takes := duration.Factor(share / shownAtShake).Of(first)
	if share > shownAtShake {
		takes = first + duration.Factor((share-shownAtShake)/(1-shownAtShake)).Of(whole-first)
	}
	slow, at := duration.Factor(1), from
	if u.Seen.After(from) {
		slow, at = duration.Factor(math.Sqrt(float64(u.Seen.Sub(from))/float64(takes))), u.Seen
	}
	slow = min(slowest, max(1, slow))
	left := slow.Of(whole - takes)
	wide := duration.Factor(math.Sqrt(float64(whole) / float64(whole-takes)))
	by := func(end time.Time) time.Time {
		t := at.Add(max(left/2, left+(wide*duration.Factor(float64(left)/float64(whole))).Of(end.Sub(usual.About))))
		if u.Share < leastTells {
			return latest(end, t)
		}
		return t
	}
	return Expected{About: by(usual.About), From: by(usual.From), To: by(usual.To), Runs: usual.Runs}
}
