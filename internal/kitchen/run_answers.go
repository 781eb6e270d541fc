package kitchen

import (
	"slices"
	"strings"
	"time"
)

// saidDone reports whether somebody said of a chain that it is done.
func (r Run) saidDone(chain string) bool {
	return slices.ContainsFunc(r.Answers, func(a Answer) bool { return chainOf(a.Key) == chain && a.How == AnswerDone })
}

func (r Run) saidNotYet(chain string) bool {
	return slices.ContainsFunc(r.Answers, func(a Answer) bool { return chainOf(a.Key) == chain && a.How == AnswerNotYet })
}

// postponed is when a chain is due anew after the last answer that put it off, by its
// first ping. A guard ping can be put off as often as somebody answers, any other once.
func (r Run) postponed(first Ping) (time.Time, bool) {
	var anew time.Time
	for _, a := range r.Answers {
		if chainOf(a.Key) != first.Key || a.How != AnswerNotYet && a.How != AnswerGotIt {
			continue
		}
		after, guard := first.Kind.putOff()
		if first.Kind == PrepOver && first.Loudness == GuardPing { // a pot that simmers
			after, guard = postponeSimmer, true
		}
		if after == 0 {
			continue
		}
		if anew.IsZero() || guard {
			anew = a.At.Add(after)
		}
	}
	return anew, !anew.IsZero()
}

// putOff is for how long a tap on Not yet puts a ping off, and whether it may be
// put off again.
func (k PingKind) putOff() (after time.Duration, guard bool) {
	switch k {
	case VentOver, HoldOver, StillHot, WhoIsThere:
		return postponeGuard, true
	case WaterShort:
		return 0, true // the water is no more for being known to be short
	case CheckZero:
		return postponeZero, true
	case SteamYet, PressureYet:
		return postponeYet, true
	case PrepOver:
		return postponeDue, false
	case WetGrainStands:
		return postponeSoak, false
	case ProbablyCool, MeasureAgain:
		return postponeCooling, false
	case HoldNearlyOver:
		return 0, false // the end of the hold doesn't wait
	case StartNow, CoolNow, BookingOverrun, SoakForBooking, GaugeCheckDue, LookAgain:
		return postponeDue, false
	case BagsThreeWeeks, ShelvedMonth, ShelvedThreeMonths, RestOver, ShakeDue, NothingSeen, ThroughDue, SpawnKept, WeeklyDigest:
		return 0, false // silent: nobody is held up by it
	}
	panic("ping " + k.String())
}

// LastAnswer is what was answered last to a chain of pings, but for a thumb that only
// saw it; false for none.
func (r Run) LastAnswer(chain string) (Answer, bool) {
	for _, a := range slices.Backward(r.Answers) {
		if chainOf(a.Key) == chain && a.How != AnswerSeen {
			return a, true
		}
	}
	return Answer{}, false
}

// gotIt is when somebody said of a chain that they have got it.
func (r Run) gotIt(chain string) (time.Time, bool) {
	for _, a := range slices.Backward(r.Answers) {
		if chainOf(a.Key) == chain && a.How == AnswerGotIt {
			return a.At, true
		}
	}
	return time.Time{}, false
}

// nameOf is what a ping of a run is called in its key; empty for other pings.
func nameOf(key string) string {
	if parts := strings.Split(key, "/"); len(parts) > 2 {
		return parts[2]
	}
	return ""
}

// Asks is what the chain asks for that a ping belongs to: of one to everybody, what
// nobody answered.
func (p Ping) Asks() PingKind {
	if p.Kind != WhoIsThere {
		return p.Kind
	}
	switch nameOf(p.Key) {
	case "prep":
		return PrepOver
	case "steam-yet":
		return SteamYet
	case "pressure-yet", "pressure-back":
		return PressureYet
	case "vent-over":
		return VentOver
	case "water":
		return WaterShort
	case "zero":
		return CheckZero
	case "still-hot":
		return StillHot
	}
	return HoldOver
}

// Meant is what an entry says: of an answer that the thing asked for is done, that
// very thing, as if somebody had told it.
func Meant(e RunEntry) RunEntry {
	if a, ok := e.(PingAnswered); ok && a.How == AnswerDone {
		if done := doneMeans(a.Key); done != nil {
			return done
		}
	}
	return e
}

// doneMeans is what a tap on Done says of a ping: as much as the words would. Nil
// for those that only end.
func doneMeans(key string) RunEntry {
	switch nameOf(key) {
	case "prep":
		return PrepEnded{}
	case "steam-yet":
		return Steam{}
	case "pressure-yet":
		return AtPressure{}
	case "pressure-back":
		return PressureBack{}
	case "vent-over":
		return VentClosed{}
	case "hold-over", "still-hot":
		return HeatOff{}
	case "zero":
		return AtZero{}
	}
	return nil
}
