package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/unit"
)

// AsMeant is the entry that something told of the run at an instant stands for.
// While the hold goes on, a pressure that the cooker is at is a reading of its
// gauge, which may be a loss; while pressure is lost it is one when it is still too
// low, and how long a dip took does not end the loss, unless that was told as a dip
// whose length is still to come. The heat that goes off where grain simmers is that of
// its pot, as long as that is asked after. Of a run called off that simmers only its
// heat off is waited for, and simmering over says that.
func (r Run) AsMeant(e RunEntry, at time.Time) RunEntry {
	if at.Before(r.Since) {
		return e
	}
	if told, ok := e.(AtPressure); ok && told.Gauge > 0 &&
		(r.Stage == StageAtPressure && !r.saidTwice(told.Gauge, at) || r.Stage == StagePressureLost && r.tooLow(told.Gauge)) {
		return GaugeRead(told)
	}
	if told, ok := e.(Dipped); ok && r.Stage == StagePressureLost && !r.lostInDip() {
		return Dipped{To: told.To}
	}
	if _, off := e.(HeatOff); off && r.Stage == StagePreparing && r.Simmers() && at.Before(r.simmerAsked()) {
		return PrepEnded{What: Simmering}
	}
	if ended, ok := e.(PrepEnded); ok && r.Stage == StageCalledOff && r.Simmers() && (ended.What == 0 || ended.What == Simmering) {
		return HeatOff{}
	}
	return e
}

// simmerAsked is until when a pot that simmers is asked after.
func (r Run) simmerAsked() time.Time {
	_, due, _ := r.PrepDue()
	return due.Add(askedOn)
}

// tooLow reports whether what the gauge shows is less than the hold asks for.
func (r Run) tooLow(shown unit.GaugeKPa) bool {
	return r.kitchen.TrueGauge(r.pot, shown) <= r.Hold.At-unit.PSI(gaugeStep)
}

// lostInDip reports whether the last loss was told as a dip.
func (r Run) lostInDip() bool {
	return len(r.Dips) > 0 && slices.ContainsFunc(r.told, func(t telling) bool {
		_, dip := t.Entry.(Dipped)
		return dip && t.No == r.Dips[len(r.Dips)-1].No
	})
}

// saidTwice reports whether a pressure is the one that the hold has just begun at:
// two people at one pot.
func (r Run) saidTwice(shown unit.GaugeKPa, at time.Time) bool {
	s, on := r.live()
	off := r.kitchen.TrueGauge(r.pot, shown) - s.Gauge
	return on && at.Sub(s.From) <= backTwice && max(off, -off) < unit.PSI(asGood)
}

// usualMost is the most that cookers are made for, in psi, common practice, no source.
const usualMost = 16

// Alarming reports whether a gauge shows more than any usual cooker is made for.
func (e AtPressure) Alarming() bool { return e.Gauge > unit.PSI(usualMost) }

// overStep is how far over its rating a cooker may read before that is too much:
// what a dial is off by, and half a division.
const overStep = 1.5

// TooMuch is the true pressure that a gauge shows, and how far it is over what the
// run's cooker is made for: its rating, or its usual pressure where that was not
// said. False when it is within.
func (r Run) TooMuch(shown unit.GaugeKPa) (real, over unit.GaugeKPa, is bool) {
	real = r.kitchen.TrueGauge(r.pot, shown)
	over = real - firstSet(r.pot.MaxGauge, r.kitchen.usualGauge(r.pot))
	return real, over, over > unit.PSI(overStep)
}
