package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
)

// Preparation is a step of wetting grain: when it began, and ended (zero while it
// goes on).
type Preparation struct {
	What      Prep
	From, To  time.Time
	By        MemberNo
	Begun     bool // false when only its end was told; From is then not known
	EndedSeen bool
}

// Usual times of the preparation (common practice). Soaking and draining are the
// shortest of the usual range, for what comes next can be done at any time after.
const (
	usualSoak      = 12 * time.Hour
	usualSoakMaize = 24 * time.Hour
	simmerSoaked   = 15 * time.Minute
	simmerUnknown  = 20 * time.Minute
	usualDrain     = 30 * time.Minute
	usualDry       = 60 * time.Minute
)

// Wet raw grain ferments: within some twelve hours, within four to six where it is
// warm (common practice). The shorter end counts.
const (
	wetGrainKeeps     = 12 * time.Hour
	wetGrainKeepsWarm = 4 * time.Hour
	warmKitchen       = unit.Celsius(25)
)

// PrepTime is how long a step of the preparation usually takes for a grain; after
// says whether it was soaked before.
func PrepTime(p Prep, g grain.Kind, after Prep) time.Duration {
	switch p {
	case Soaking:
		if g == grain.Maize {
			return usualSoakMaize
		}
		return usualSoak
	case Simmering:
		if after == Soaking {
			return simmerSoaked
		}
		return firstSet(g.Simmer().Lo, simmerUnknown)
	case Draining:
		return usualDrain
	case Drying:
		return usualDry
	}
	panic("preparation " + p.String())
}

// prepTime is the time of the grain in the load that needs longest.
func (r Run) prepTime(p, after Prep) time.Duration {
	var longest time.Duration
	for _, it := range r.Order.Items {
		longest = max(longest, PrepTime(p, firstSet(it.Grain, r.kitchen.GrainMeant()), after))
	}
	return longest
}

// PrepDue is when the step of the preparation that goes on is over by the usual
// times; false when none goes on.
func (r Run) PrepDue() (Preparation, time.Time, bool) {
	n := len(r.Preps)
	if n == 0 || !r.Preps[n-1].To.IsZero() {
		return Preparation{}, time.Time{}, false
	}
	p, before := r.Preps[n-1], Prep(0)
	if n > 1 {
		before = r.Preps[n-2].What
	}
	return p, p.From.Add(r.prepTime(p.What, before)), true
}

// WetUntil is how long the wet raw grain keeps before it starts to ferment,
// counted from the end of the last step; false when none stands.
func (r Run) WetUntil() (time.Time, bool) {
	if r.Stage != StagePreparing || len(r.Preps) == 0 {
		return time.Time{}, false
	}
	last := r.Preps[len(r.Preps)-1].To
	if _, due, on := r.PrepDue(); on {
		last = due
	}
	if r.kitchen.RoomTemp() >= warmKitchen {
		return last.Add(wetGrainKeepsWarm), true
	}
	return last.Add(wetGrainKeeps), true
}

func (f *folding) prepBegun(e PrepBegun) {
	f.endPrep()
	f.step(KindPrepBegun, e.What)
	f.Preps = append(f.Preps, Preparation{What: e.What, From: f.rec.At, By: f.rec.By, Begun: true})
	f.enter(StagePreparing)
}

// prepEnded ends the step that goes on. The end of one that nobody saw begin fills
// it in.
func (f *folding) prepEnded(e PrepEnded) {
	n := len(f.Preps)
	what := e.What
	if what == 0 && n > 0 {
		what = f.Preps[n-1].What
	}
	if n == 0 || f.Preps[n-1].What != what {
		f.endPrep()
		f.Steps = append(f.Steps, Step{Kind: KindPrepBegun, At: f.rec.At, Prep: what})
		f.Preps = append(f.Preps, Preparation{What: what, From: f.rec.At, By: f.rec.By})
		n = len(f.Preps)
	}
	f.step(KindPrepEnded, what)
	f.Preps[n-1].To, f.Preps[n-1].EndedSeen = f.rec.At, true
	f.enter(StagePreparing)
}

// endPrep ends what goes on since something later began.
func (f *folding) endPrep() {
	n := len(f.Preps)
	if n == 0 || !f.Preps[n-1].To.IsZero() {
		return
	}
	f.Preps[n-1].To = f.rec.At
	f.Steps = append(f.Steps, Step{Kind: KindPrepEnded, At: f.rec.At, Prep: f.Preps[n-1].What})
}

// prepRepeats reports whether that step goes on, or was ended, already.
func (f *folding) prepRepeats(e RunEntry) bool {
	if e, ok := e.(PrepBegun); ok {
		return slices.ContainsFunc(f.Preps, func(p Preparation) bool { return p.What == e.What && p.To.IsZero() })
	}
	n := len(f.Preps)
	ended, ok := e.(PrepEnded)
	return ok && n > 0 && !f.Preps[n-1].To.IsZero() && (ended.What == 0 || f.Preps[n-1].What == ended.What)
}
