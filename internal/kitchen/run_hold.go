package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/lethality"
	"ryebell/internal/calc/unit"
)

// Stretch is a time at pressure without a break: a hold that goes on, was broken
// off, or was finished.
type Stretch struct {
	From time.Time
	// To is when it ended; zero while it lasts.
	To time.Time
	// Gauge is the true pressure at its beginning.
	Gauge unit.GaugeKPa
	// Seen is false when nobody said that pressure was reached: it lasts no time
	// and counts for nothing.
	Seen bool
	// EndSeen is false when nobody said how it ended; To is then the last time at
	// which it was certain.
	EndSeen bool
	// Sagged is when pressure fell after the hold was over, with the flame still on:
	// it counts no longer than to then. Zero when nobody told of that.
	Sagged time.Time
	// read says that it began with a reading of the gauge; dip is the place of the
	// loss before it in Run.Dips, counted from 1, zero when there was none.
	read bool
	dip  int
}

// Dip is a loss of pressure: from when, until when (zero while it lasts), how
// deep.
type Dip struct {
	From, To time.Time
	// Low is the lowest true pressure said or read; nil for not known.
	Low *unit.GaugeKPa
	// No is the entry that told of it, zero when nobody told.
	No   EntryNo
	Seen bool
	// read says that it began with a reading of the gauge.
	read bool
}

// GaugePoint is a reading of the gauge: as shown, and corrected by what is known
// of the gauge.
type GaugePoint struct {
	At          time.Time
	Shown, True unit.GaugeKPa
}

// HeatGoneOff is what the hold had reached when the flame went off. It stays for
// good, also when the load is lit once more.
type HeatGoneOff struct {
	At time.Time
	By MemberNo
	// Seen is false when nobody saw the flame go off; At is then when it must have
	// at the latest.
	Seen    bool
	Outcome Outcome
	// Wanted is the hold there should have been, Credit what there was.
	Wanted time.Duration
	Credit Credit
}

// Outcome is what became of a hold.
type Outcome uint8

// A hold was Held to its end, ended Early, or is Unseen since nobody said when
// pressure was reached or when the heat went off.
const (
	Held Outcome = iota + 1
	Early
	Unseen
)

// String returns the word for logs.
func (o Outcome) String() string {
	switch o {
	case Held:
		return "held"
	case Early:
		return "early"
	case Unseen:
		return "unseen"
	}
	return "outcome not said"
}

// Credit is what a load has had up to an instant. Whether that is enough is not
// said here.
type Credit struct {
	// Hold is the unbroken time at pressure that counts, Broken the time before it
	// that pressure was lost after: shown beside the hold and never instead of it.
	Hold, Broken time.Duration
	// F0 is the lethality of the steam around the containers, and not of their
	// core, by the gauge and the kitchen's height. At most two of its figures mean
	// anything.
	F0 time.Duration
}

// gaugeStep is how far under the hold's pressure a reading counts as a loss: a
// whole psi, with room for the arithmetic. A dial shows no less.
const gaugeStep = 0.97

// early is how much of a hold may be missing because people tell whole minutes.
const early = time.Minute

// HoldEnd is when the running hold is over; false when none runs.
func (r Run) HoldEnd() (time.Time, bool) {
	if s, ok := r.live(); ok && r.Hold.Time > 0 {
		return s.From.Add(r.Hold.Time), true
	}
	return time.Time{}, false
}

// Attempt counts the holds that were begun; the first is 1.
func (r Run) Attempt() int { return len(r.Stretches) }

// live is the stretch that goes on.
func (r Run) live() (Stretch, bool) {
	if n := len(r.Stretches); n > 0 && r.Stretches[n-1].To.IsZero() {
		return r.Stretches[n-1], true
	}
	return Stretch{}, false
}

// CreditAt is what the load has had up to an instant. A hold that still goes on
// counts up to then, at the pressure that was last told.
func (r Run) CreditAt(now time.Time) Credit {
	var c Credit
	for i, s := range r.Stretches {
		d := max(0, s.end(now).Sub(s.From))
		if i == len(r.Stretches)-1 {
			c.Hold = d
		} else {
			c.Broken += d
		}
	}
	if r.lost() {
		c.Hold, c.Broken = 0, c.Broken+c.Hold
	}
	// The figures were checked when they were told; a kitchen out of range has no F0.
	c.F0, _ = lethality.FromGauge(r.trace(now), r.kitchen.Height())
	return c
}

// lost reports whether pressure was lost and never came back.
func (r Run) lost() bool { return len(r.Dips) > 0 && r.Dips[len(r.Dips)-1].To.IsZero() }

func (s Stretch) end(now time.Time) time.Time {
	if !s.Sagged.IsZero() && s.Sagged.Before(now) {
		now = s.Sagged
	}
	if s.To.IsZero() || s.To.After(now) {
		return now
	}
	return s.To
}

// trace is the true gauge over time while the hold was at pressure and in the
// breaks of it: as last known until something else was, and straight between two
// readings. A break of unknown depth counts as no pressure at all.
func (r Run) trace(now time.Time) []lethality.GaugeReading {
	t := tracing{run: r, now: now}
	for i, s := range r.Stretches {
		switch {
		case s.dip > 0:
			t.dip(r.Dips[s.dip-1], s)
		case i > 0: // lit once more
			t.told(r.Stretches[i-1].To, 0)
			t.told(s.From, 0)
		}
		if s.From.After(now) {
			break
		}
		t.begins(s)
		to := s.end(now)
		until := to
		if r.lossTold(to) {
			until = to.Add(-1) // what was read with it is of the loss
		}
		t.readings(s.From, until)
		t.told(to, t.last)
	}
	return t.points
}

// lossTold reports whether somebody told of a loss of pressure at an instant, and not
// only the gauge.
func (r Run) lossTold(at time.Time) bool {
	told := slices.ContainsFunc(r.Dips, func(d Dip) bool { return d.Seen && !d.read && d.From.Equal(at) })
	return told || slices.ContainsFunc(r.Stretches, func(s Stretch) bool {
		return s.Sagged.Equal(at) && slices.ContainsFunc(r.Steps, func(st Step) bool {
			return (st.Kind == KindPressureLost || st.Kind == KindDipped) && st.At.Equal(at)
		})
	})
}

// tracing collects the points of a trace.
type tracing struct {
	run     Run
	now     time.Time
	points  []lethality.GaugeReading
	last    unit.GaugeKPa
	wasRead bool // the last point was read on the gauge
}

// told adds a pressure that is known from an instant on.
func (t *tracing) told(at time.Time, g unit.GaugeKPa) {
	if t.add(at, g) {
		t.wasRead = false
	}
}

// read adds a reading of the gauge. What was only told before it stood until then.
func (t *tracing) read(at time.Time, g unit.GaugeKPa) {
	if len(t.points) > 0 && !t.wasRead {
		t.told(at, t.last)
	}
	if t.add(at, g) {
		t.wasRead = true
	}
}

// add adds a point, but none of later than now, nor before the last.
func (t *tracing) add(at time.Time, g unit.GaugeKPa) bool {
	if at.After(t.now) || len(t.points) > 0 && at.Sub(t.run.Begun) < t.points[len(t.points)-1].After {
		return false
	}
	t.points = append(t.points, lethality.GaugeReading{After: at.Sub(t.run.Begun), Gauge: g})
	t.last = g
	return true
}

// begins adds the beginning of a stretch. That it is up is told, also with a figure;
// where it was read, that reading follows.
func (t *tracing) begins(s Stretch) {
	if s.read {
		t.read(s.From, s.Gauge)
	}
	t.told(s.From, s.Gauge)
}

// readings adds what was read between two instants, both included.
func (t *tracing) readings(from, to time.Time) {
	for _, g := range t.run.Gauge {
		if !g.At.Before(from) && !g.At.After(to) {
			t.read(g.At, g.True)
		}
	}
}

// dip adds the break before the stretch next.
func (t *tracing) dip(d Dip, next Stretch) {
	if !d.read {
		t.told(d.From, orElse(d.Low, 0))
	}
	t.readings(d.From, next.From)
	if !next.read {
		t.told(next.From, t.last)
	}
}

// atPressure begins a hold, or takes up a lost one.
func (f *folding) atPressure(k Kind, shown unit.GaugeKPa) {
	if shown == 0 && (k == KindPressureBack || f.Stage == StagePressureLost) {
		f.ruleAgain()
	} else {
		f.rule(shown)
	}
	f.step(k, 0)
	f.startStretch(f.rec.At, f.trueAt(shown), shown > 0)
}

// trueAt is the true pressure when the gauge shows something, and what the hold
// counts on when nobody said.
func (f *folding) trueAt(shown unit.GaugeKPa) unit.GaugeKPa {
	if shown == 0 {
		return f.Hold.At
	}
	return f.rec.s.TrueGauge(f.pot, shown)
}

// farUnder is how much less than the hold is for is no inexact gauge.
const farUnder = 1.9

// FarUnder reports whether a gauge that shows so much is well below the pressure of
// the hold.
func (r Run) FarUnder(shown unit.GaugeKPa) bool {
	return shown > 0 && r.kitchen.TrueGauge(r.pot, shown) <= r.Hold.At-unit.PSI(farUnder)
}

// Shown is what the gauge of the run's cooker shows at a true pressure.
func (r Run) Shown(g unit.GaugeKPa) unit.GaugeKPa {
	const any = 200 // a pressure that no correction brings under zero
	return g - (r.kitchen.TrueGauge(r.pot, any) - any)
}

func (f *folding) startStretch(at time.Time, g unit.GaugeKPa, read bool) {
	after := 0
	if f.lost() {
		after = len(f.Dips)
		f.Dips[after-1].To = at
	}
	f.Stretches = append(f.Stretches, Stretch{From: at, Gauge: g, Seen: true, read: read, dip: after})
	f.enter(StageAtPressure)
	f.Since = at
	f.Water.ventEnds(at)
	f.Water.holdBegins(at)
}

// pressureUnseen is pressure that must have been reached, nobody knows when.
func (f *folding) pressureUnseen() {
	f.rule(0)
	f.Stretches = append(f.Stretches, Stretch{From: f.rec.At, To: f.rec.At, Gauge: f.Hold.At})
}

func (f *folding) closeStretch(at time.Time) {
	if n := len(f.Stretches); n > 0 && f.Stretches[n-1].To.IsZero() {
		// A dip may have ended later than what is told next.
		f.Stretches[n-1].To = latest(f.Stretches[n-1].end(at), f.Stretches[n-1].From)
		f.Stretches[n-1].EndSeen = true
	}
}

func latest(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

func earliest(a, b time.Time) time.Time {
	if a.Before(b) {
		return a
	}
	return b
}

func (f *folding) heatOff() {
	f.step(KindHeatOff, 0)
	f.closeStretch(f.rec.At)
	f.goneOff(true)
	if f.Stage != StageCalledOff {
		f.enter(StageFalling)
	}
}

// heatOffUnseen is a flame that must have gone off, nobody knows when: the hold
// is certain up to the last that was told of it.
func (f *folding) heatOffUnseen() {
	if s, ok := f.live(); ok {
		certain := s.From
		for _, g := range f.Gauge {
			certain = latest(certain, g.At)
		}
		f.Stretches[len(f.Stretches)-1].To = certain
	}
	f.goneOff(false)
}

// goneOff writes down what was reached when the heat went off.
func (f *folding) goneOff(seen bool) {
	off := HeatGoneOff{At: f.rec.At, By: f.rec.By, Seen: seen, Wanted: f.Hold.Time, Credit: f.CreditAt(f.rec.At)}
	switch {
	case off.Credit.Hold > f.Hold.Time-early && f.Hold.Time > 0:
		off.Outcome = Held
	case !seen || !f.pressureSeen():
		off.Outcome = Unseen
	default:
		off.Outcome = Early
	}
	f.Off = append(f.Off, off)
}

// pressureSeen reports whether somebody said when the last hold began.
func (f *folding) pressureSeen() bool {
	n := len(f.Stretches)
	return n > 0 && f.Stretches[n-1].Seen
}

// Ended is how the last hold ended; false while the heat was never off, or is on
// again.
func (r Run) Ended() (HeatGoneOff, bool) {
	if len(r.Off) == 0 || r.Stage.Hot() {
		return HeatGoneOff{}, false
	}
	return r.Off[len(r.Off)-1], true
}

// HeldShort is how long the last hold can have been at most, when that is less than
// it should have been; false while it isn't over, or can have been long enough.
func (r Run) HeldShort() (time.Duration, bool) {
	off, ended := r.Ended()
	n := len(r.Stretches)
	if !ended || off.Outcome == Held || n == 0 || !r.Stretches[n-1].Seen {
		return 0, false
	}
	most := off.Credit.Hold
	if off.Outcome == Unseen {
		most = off.At.Sub(r.Stretches[n-1].From)
	}
	return most, most <= off.Wanted-early
}

// unfinished lists the dips of unknown depth.
func (r Run) unfinished() []Dip {
	return slices.DeleteFunc(slices.Clone(r.Dips), func(d Dip) bool { return d.Low != nil })
}
