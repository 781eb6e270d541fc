package kitchen

import (
	"slices"
	"time"
)

// tooHot refuses what can only be once the flame is off and the pressure down,
// while the load must still be heated: nil once the flame can have gone off with
// nobody saying so. Filled in before that it would call off the watch over a flame
// that burns, over a pot under pressure, or be said of a load that was never lit.
func (f *folding) tooHot(k Kind) Refusal {
	if !slices.Contains([]Kind{KindAtZero, KindOutOfPot, KindTempRead, KindWaterLeft, KindRunGone}, k) {
		return nil
	}
	needs := KindHeatOff
	switch f.Stage {
	case StagePlanned, StagePreparing:
		needs = KindHeatOn
	case StageFalling:
		if k == KindAtZero { // whoever looks is believed, if doubted: see ZeroSoon
			return nil
		}
		needs = KindAtZero
	case StageHeating, StageVenting, StageRising, StageAtPressure, StagePressureLost:
	case StageCooling, StageCool, StageGone, StageCalledOff:
		return nil
	}
	if !f.rec.At.Before(f.heatDue()) && !f.seenHot() {
		return nil
	}
	return NotYet{Run: f.No, Said: k, Stage: f.Stage, Needs: needs}
}

// seenHot reports whether somebody saw the load at pressure so shortly before, its hold
// over, that it can't be down: they put the heat off off, or read the gauge.
func (f *folding) seenHot() bool {
	if f.Stage != StageAtPressure {
		return false
	}
	hot := f.Since
	if a, ok := f.LastAnswer(f.key("hold-over", f.Attempt())); ok && a.How == AnswerNotYet {
		hot = latest(hot, a.At)
	}
	if n := len(f.Gauge); n > 0 && f.Gauge[n-1].Shown > 0 {
		hot = latest(hot, f.Gauge[n-1].At)
	}
	return f.rec.At.Before(hot.Add(f.fallTime(f.pot)/fallsAtLeast)) && hot.After(f.Since)
}

// heatDue is when the flame of a hot run can go off at the earliest: at the end of
// the hold that runs, else after the usual course from where the run is and a whole
// hold. Without a known hold it is when the stage began. Of a run whose heat is off
// it is when the pressure can be down at the earliest.
func (r Run) heatDue() time.Time {
	c := r.course()
	switch r.Stage {
	case StagePlanned, StagePreparing, StageHeating:
		return r.Since.Add(c.Heat + c.Vent + c.ToPressure + r.Hold.Time)
	case StageVenting:
		return r.Since.Add(c.Vent + c.ToPressure + r.Hold.Time)
	case StageRising, StagePressureLost:
		return r.Since.Add(c.ToPressure + r.Hold.Time)
	case StageAtPressure:
		return r.Since.Add(r.Hold.Time)
	case StageFalling:
		return r.Since.Add(r.fallTime(r.pot) / fallsAtLeast)
	case StageCooling, StageCool, StageCalledOff, StageGone:
		return r.Since
	}
	panic("stage " + r.Stage.String())
}

// Relightable reports whether a pot that is down can be lit again for the same run:
// its hold was too short, and nothing was taken out of it. It heats up anew, is vented
// anew, for air came in, and its hold starts again.
func (r Run) Relightable() bool {
	_, short := r.HeldShort()
	_, out := r.LastStep(KindOutOfPot)
	return r.Stage == StageCooling && short && !out
}

// MayBurn reports whether a run was called off with a flame on, that of its cooker or
// of the pot its grain simmers in, and nobody has said since that it is off.
func (r Run) MayBurn() bool {
	on, lit := r.LastStep(KindHeatOn)
	off, heatOff := r.LastStep(KindHeatOff)
	return r.Stage == StageCalledOff && (r.Simmers() || lit && (!heatOff || off.At.Before(on.At)))
}

// Simmers reports whether the flame that is on, as far as anybody said, is that of the
// pot in which the grain simmers: the run's cooker was not lit yet. Called off, a run
// simmers until somebody says that the heat is off.
func (r Run) Simmers() bool {
	n := len(r.Preps)
	if n == 0 || r.Preps[n-1].What != Simmering {
		return false
	}
	to := r.Preps[n-1].To
	if r.Stage != StageCalledOff {
		return r.Stage == StagePreparing && to.IsZero()
	}
	_, lit := r.LastStep(KindHeatOn)
	_, off := r.LastStep(KindHeatOff)
	return !r.Preps[n-1].EndedSeen && !lit && !off
}

// MayPress reports whether a run was called off, its flame is off, and it may be under
// pressure: it was, its weight was on, or it was heated for as long as that takes, and
// nobody has said since that it is down.
func (r Run) MayPress() bool {
	off, heatOff := r.LastStep(KindHeatOff)
	if r.Stage != StageCalledOff || !heatOff || r.MayBurn() || r.downSince(off.At) || r.stepSince(KindOutOfPot, off.At) {
		return false
	}
	lit, isLit := r.LastStep(KindHeatOn)
	_, closed := r.LastStep(KindVentClosed)
	c := r.course()
	return len(r.Stretches) > 0 || closed || isLit && off.At.Sub(lit.At) > c.Heat+c.Vent
}

// downSince reports whether zero was seen since an instant, and nobody who was asked
// for it has said later that it isn't.
func (r Run) downSince(at time.Time) bool {
	zero, down := r.LastStep(KindAtZero)
	denied := slices.ContainsFunc(r.Answers, func(a Answer) bool {
		return a.How == AnswerNotYet && !a.At.Before(zero.At) && chainOf(a.Key) == r.key("zero", len(r.Off))
	})
	return down && !zero.At.Before(at) && !denied
}

// ZeroDenied is the zero that an answer denied of which the run after it is next:
// somebody who was asked sees it under pressure. False where it denied none that
// somebody told.
func (r Run) ZeroDenied(e PingAnswered, next Run) (Step, bool) {
	zero, down := r.LastStep(KindAtZero)
	up := r.Stage == StageCooling && next.Stage == StageFalling || !r.MayPress() && next.MayPress()
	return zero, e.How == AnswerNotYet && up && down && zero.Seen
}

// fallsAtLeast is the part of the usual fall under which a zero is doubted.
const fallsAtLeast = 3

// ZeroSoon doubts a zero: how long after heat off it was told, and how long that
// usually takes. False for one that took a third of that or more, or where nobody
// said when the heat went off.
func (r Run) ZeroSoon() (after, usual time.Duration, doubted bool) {
	off, isOff := r.LastStep(KindHeatOff)
	zero, isDown := r.LastStep(KindAtZero)
	if !isOff || !isDown || !off.Seen || !zero.Seen || zero.At.Before(off.At) || len(r.Stretches) == 0 {
		return 0, 0, false
	}
	after, usual = zero.At.Sub(off.At), r.fallTime(r.pot)
	return after, usual, after < usual/fallsAtLeast
}
