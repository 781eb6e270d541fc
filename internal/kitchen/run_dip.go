package kitchen

import (
	"time"

	"ryebell/internal/calc/unit"
)

// gaugeRead keeps a reading. One that is too low is a loss of pressure, whoever
// calls it so; one that is high enough ends the loss, or begins the hold.
func (f *folding) gaugeRead(shown unit.GaugeKPa) {
	g := f.rec.s.TrueGauge(f.pot, shown)
	f.Gauge = append(f.Gauge, GaugePoint{At: f.rec.At, Shown: shown, True: g})
	low := g <= f.Hold.At-unit.PSI(gaugeStep)
	f.step(KindGaugeRead, 0)
	switch {
	case f.inToldDip():
		f.deepen(g)
	case f.Stage == StageAtPressure && low && f.heldOut():
		f.sag()
	case f.Stage == StageAtPressure && low:
		f.closeStretch(f.rec.At)
		f.Dips = append(f.Dips, Dip{From: f.rec.At, Low: &g, No: f.rec.No, Seen: true, read: true})
		f.step(KindPressureLost, 0)
		f.enter(StagePressureLost)
	case f.Stage == StagePressureLost && low:
		f.deepen(g)
	case f.Stage == StagePressureLost:
		f.rule(shown)
		f.step(KindPressureBack, 0)
		f.startStretch(f.rec.At, g, true)
	case f.Stage == StageRising && !low:
		f.rule(shown)
		f.step(KindAtPressure, 0)
		f.startStretch(f.rec.At, g, true)
	}
}

// inToldDip reports whether the record lies in a loss of pressure whose end was
// told with it: then it tells of the same one.
func (f *folding) inToldDip() bool {
	s, ok := f.live()
	return ok && s.dip > 0 && f.rec.At.Before(s.From)
}

// deepen keeps the lowest pressure of the last dip.
func (f *folding) deepen(g unit.GaugeKPa) {
	d := &f.Dips[len(f.Dips)-1]
	if d.Low == nil || g < *d.Low {
		d.Low = &g
	}
}

func (f *folding) pressureLost(shown *unit.GaugeKPa) {
	f.step(KindPressureLost, 0)
	if f.inToldDip() {
		if low := f.trueOf(shown); low != nil {
			f.deepen(*low)
		}
		return
	}
	if f.heldOut() {
		f.sag()
		return
	}
	f.closeStretch(f.rec.At)
	f.Dips = append(f.Dips, Dip{From: f.rec.At, Low: f.trueOf(shown), No: f.rec.No, Seen: true})
	f.enter(StagePressureLost)
}

// heldOut reports whether the hold that runs is over by the clock: all that is still
// asked of it is heat off.
func (f *folding) heldOut() bool {
	end, runs := f.HoldEnd()
	return runs && f.Stage == StageAtPressure && !f.rec.At.Before(end)
}

// sag notes that pressure fell once the hold was over: that takes nothing from it.
func (f *folding) sag() {
	if s := &f.Stretches[len(f.Stretches)-1]; s.Sagged.IsZero() {
		s.Sagged = f.rec.At
	}
}

func (f *folding) trueOf(shown *unit.GaugeKPa) *unit.GaugeKPa {
	if shown == nil {
		return nil
	}
	g := f.rec.s.TrueGauge(f.pot, *shown)
	return &g
}

// pressureBack starts the hold again. When nobody said that pressure was lost it
// is only certain up to the last that was told of it.
func (f *folding) pressureBack(shown unit.GaugeKPa) {
	if s, ok := f.live(); ok && !s.Sagged.IsZero() {
		f.step(KindPressureBack, 0)
		return
	}
	if s, ok := f.live(); ok && f.Stage == StageAtPressure {
		certain := s.From
		for _, g := range f.Gauge {
			certain = latest(certain, g.At)
		}
		n := len(f.Stretches) - 1
		f.Stretches[n].To = certain
		f.Dips = append(f.Dips, Dip{From: certain})
		f.Steps = append(f.Steps, Step{Kind: KindPressureLost, At: f.rec.At})
	}
	if len(f.Stretches) == 0 {
		f.atPressure(KindAtPressure, shown) // back, though it never was there before
		return
	}
	f.atPressure(KindPressureBack, shown)
}

// dipped is a loss and its end told at once, or how deep the last one went.
func (f *folding) dipped(e Dipped) {
	low := f.trueOf(e.To)
	f.step(KindDipped, 0)
	_, runs := f.live()
	if e.For == 0 && len(f.Dips) > 0 && (f.Stage != StageAtPressure || runs && f.depthOpen()) {
		if low != nil {
			f.deepen(*low)
		}
		return
	}
	if low != nil && *low > f.Hold.At-unit.PSI(gaugeStep) {
		if !runs && f.Stage == StageAtPressure {
			f.startStretch(f.rec.At, f.Hold.At, false)
		}
		return // no loss
	}
	if f.heldOut() {
		f.sag()
		return
	}
	if f.Stage == StagePressureLost {
		if low != nil {
			f.deepen(*low)
		}
	} else {
		f.closeStretch(f.rec.At)
		f.Dips = append(f.Dips, Dip{From: f.rec.At, Low: low, No: f.rec.No, Seen: true})
	}
	if e.For == 0 {
		f.enter(StagePressureLost)
		return
	}
	f.ruleAgain()
	f.startStretch(f.rec.At.Add(e.For), f.Hold.At, false)
}

// depthAsked is how long after pressure is back a depth belongs to the loss before;
// later it is a new one.
const depthAsked = 5 * time.Minute

// depthOpen reports whether a depth told now is that of the last loss.
func (f *folding) depthOpen() bool {
	last := f.Dips[len(f.Dips)-1]
	return last.Low == nil && f.rec.At.Sub(last.To) <= depthAsked
}
