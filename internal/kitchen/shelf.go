package kitchen

import "time"

// shelfTime is when notes about the shelf are sent: all of one day together.
const shelfTime TimeOfDay = 9 * 60

// unsaidCool is how long after zero a load that nobody measured counts as shelved.
const unsaidCool = 48 * time.Hour

// neverSeenCool is how long after the last that was told of a load nobody is expected
// to say any more that it is cool.
const neverSeenCool = 4 * 24 * time.Hour

// NeverSeenCool reports whether a load has been left cooling and nobody said that it
// is cool, nor anything else for four days: it stands on the shelf, and is off the
// board. What is told of it later still counts.
func (r Run) NeverSeenCool(now time.Time) bool {
	return r.Stage == StageCooling && now.Sub(r.Newest) > neverSeenCool
}

// shelfLimits are the ages at which cooked grain that nobody has used is asked
// after: one month and three, and bags, which dry out through their patch, after
// three weeks (common practice).
var shelfLimits = []struct {
	kind         PingKind
	months, days int
	bagsAlone    bool
}{
	{kind: BagsThreeWeeks, days: 21, bagsAlone: true},
	{kind: ShelvedMonth, months: 1},
	{kind: ShelvedThreeMonths, months: 3},
}

// Daily reports whether a ping is one of those about what stands on the shelf, cooked
// or growing: all of one day come together.
func (k PingKind) Daily() bool {
	switch k {
	case BagsThreeWeeks, ShelvedMonth, ShelvedThreeMonths, RestOver, ShakeDue, NothingSeen, ThroughDue, SpawnKept:
		return true
	case StartNow, PrepOver, WetGrainStands, VentOver, HoldNearlyOver, WaterShort, HoldOver, WhoIsThere, CheckZero, StillHot,
		ProbablyCool, MeasureAgain, CoolNow, BookingOverrun, SoakForBooking, GaugeCheckDue, WeeklyDigest, SteamYet, PressureYet, LookAgain:
		return false
	}
	panic("ping " + k.String())
}

// Shelved is since when the cooked grain of a run stands on the shelf: since it was
// cool by a reading or, unsaid, two days after zero, which may lie ahead. False
// for a run that isn't so far, that was called off or is gone.
func (r Run) Shelved() (time.Time, bool) {
	switch r.Stage {
	case StageCool:
		return r.Since, true
	case StageCooling:
		zero, ok := r.LastStep(KindAtZero)
		return zero.At.Add(unsaidCool), ok
	case StagePlanned, StagePreparing, StageHeating, StageVenting, StageRising, StageAtPressure, StagePressureLost,
		StageFalling, StageGone, StageCalledOff:
		return time.Time{}, false
	}
	panic("stage " + r.Stage.String())
}
