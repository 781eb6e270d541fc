package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/unit"
)

// folding is a run while its records are taken one after the other.
type folding struct {
	Run
	rec telling // the one being taken
}

// begin puts a run on that began at a time, which may lie before it was put on the
// book.
func (f *folding) begin(t telling, at time.Time) {
	e := t.Entry.(RunBegun)
	t.At = at
	f.rec = t
	f.No, f.Cooker, f.Order, f.Room, f.Follows, f.Cook = e.Run, e.Cooker, e.Order, e.Room, e.Follows, e.Cook
	f.Turn, f.Load, f.Loads = e.Turn, e.Load, e.Loads
	f.Begun, f.Newest = t.At, t.At
	f.Stage, f.Since = StagePlanned, t.At
	f.kitchen = t.s
	f.pot, _ = t.s.CookerNamed(e.Cooker)
	f.rule(0)
	f.Water = Water{In: f.pot.water(f.Hold.Time), Assumed: true}
	f.step(KindRunBegun, 0)
}

// take adds one record. One that can't be so is laid aside.
func (f *folding) take(t telling) {
	f.rec = t
	e := t.Entry.(RunEntry)
	if why := f.refuse(e); why != nil {
		f.Strays = append(f.Strays, Stray{Record: t.Record, Why: why, seq: t.seq})
		return
	}
	f.kitchen = t.s
	f.pot, _ = t.s.CookerNamed(f.Cooker)
	f.fill(e.kind())
	f.apply(e)
	if t.At.After(f.Newest) {
		f.Newest = t.At
	}
}

// apply is the dispatch: a line for each kind of entry.
func (f *folding) apply(e RunEntry) {
	switch e := e.(type) {
	case RunBegun:
		panic("run begun twice")
	case PrepBegun:
		f.prepBegun(e)
	case PrepEnded:
		f.prepEnded(e)
	case HeatOn:
		f.heatOn()
	case Steam:
		f.steam()
	case VentClosed:
		f.ventClosed()
	case AtPressure:
		f.atPressure(KindAtPressure, e.Gauge)
	case GaugeRead:
		f.gaugeRead(e.Gauge)
	case PressureLost:
		f.pressureLost(e.Gauge)
	case PressureBack:
		f.pressureBack(e.Gauge)
	case Dipped:
		f.dipped(e)
	case HeatOff:
		f.heatOff()
	case AtZero:
		f.atZero()
	case OutOfPot:
		f.step(KindOutOfPot, 0)
	case TempRead:
		f.tempRead(e)
	case WaterLeft:
		f.waterLeft(e)
	case WaterIn:
		f.waterIn(e)
	case RunGone:
		f.step(KindRunGone, 0)
		f.enter(StageGone)
	case CalledOff:
		f.calledOff()
	case TookOver:
		f.tookOver(e.kind(), firstSet(e.Member, f.rec.By))
	case HandOffered:
		f.step(KindHandOffered, 0)
		f.Offered = e.To
	case HandAccepted:
		f.tookOver(e.kind(), f.rec.By)
	case PingAnswered:
		f.answered(e)
	}
}

// refuse says why the entry can't follow on what happened before it, nil if it
// can.
func (f *folding) refuse(e RunEntry) Refusal {
	k := e.kind()
	if k == KindRunBegun {
		return AlreadySo{Run: f.No, Said: k, By: f.Steps[0].By, At: f.Begun, Seen: true}
	}
	if k == KindHandAccepted && f.Offered != f.rec.By {
		return NotOffered{Run: f.No, Cook: f.Cook}
	}
	if k == KindTookOver && f.Offered == 0 && f.Cook == firstSet(e.(TookOver).Member, f.rec.By) {
		return AlreadySo{Run: f.No, Said: k, By: f.Cook, At: f.cookSince(), Seen: true}
	}
	if slices.Contains(anytime, k) {
		return nil
	}
	if f.repeats(e) {
		return f.already(k)
	}
	if why := f.tooHot(k); why != nil {
		return why
	}
	if f.mayFollow(e) {
		return nil
	}
	return f.notNow(k)
}

// mayFollow reports whether the entry is a move of the stage, or a step further
// down the path.
func (f *folding) mayFollow(e RunEntry) bool {
	k := e.kind()
	if f.open(k) {
		// Once the heat is off only the depth of a loss can still be told.
		d, dip := e.(Dipped)
		return !dip || f.Stage.Hot() || d.For == 0 && len(f.Dips) > 0
	}
	behind, from, fills := k.presumes()
	return fills && !f.Stage.Over() && f.Stage >= from && behind >= f.Stage.passed()
}

// backTwice is how long after pressure was back the same is taken for being said
// twice, and not for another loss that nobody reported.
const backTwice = 10 * time.Minute

// repeats reports whether the entry says what is so already.
func (f *folding) repeats(e RunEntry) bool {
	switch k := e.kind(); k {
	case KindPrepBegun, KindPrepEnded:
		return f.prepRepeats(e)
	case KindPressureLost:
		return f.Stage == StagePressureLost
	case KindPressureBack:
		s, back := f.LastStep(KindPressureBack)
		return f.Stage == StageAtPressure && back && f.rec.At.Sub(s.At) <= backTwice
	case KindRunGone:
		return f.Stage == StageGone
	case KindCalledOff:
		return f.Stage == StageCalledOff
	case KindAtZero:
		return f.Stage != StageFalling && !f.MayPress() && f.passedBy(k) // where it was denied: see seenUp
	case KindHeatOff, KindOutOfPot:
		return f.passedBy(k)
	case KindHeatOn, KindSteam, KindVentClosed, KindAtPressure:
		if lit, ok := f.LastStep(KindHeatOn); k == KindHeatOn && f.Stage == StagePressureLost {
			return ok && !lit.At.Before(f.Since)
		}
		return !f.moves(k) && f.passedBy(k)
	case KindRunBegun, KindDipped, KindGaugeRead, KindTempRead, KindWaterIn, KindWaterLeft,
		KindTookOver, KindHandOffered, KindHandAccepted, KindPingAnswered:
		return false
	}
	panic("kind " + e.kind().String())
}

// open reports whether the kind is a move of this stage that this very run has.
func (f *folding) open(k Kind) bool {
	if f.Stage == StageCooling && (k == KindHeatOn || k == KindWaterIn) && !f.Relightable() {
		return false
	}
	return slices.ContainsFunc(follows[f.Stage], func(m move) bool { return m.kind == k })
}

// moves reports whether the kind leads from this stage into another.
func (f *folding) moves(k Kind) bool {
	return f.open(k) && slices.ContainsFunc(follows[f.Stage], func(m move) bool { return m.kind == k && m.to != f.Stage })
}

// passedBy reports whether the step was taken since the flame was last lit.
func (f *folding) passedBy(k Kind) bool {
	for i, s := range slices.Backward(f.Steps) {
		if s.Kind == k {
			return true
		}
		if s.Kind == KindHeatOn && !f.relit(i) {
			return false
		}
	}
	return false
}

// relit reports whether the flame lit at a step had only gone out by itself.
func (f *folding) relit(step int) bool {
	for _, s := range slices.Backward(f.Steps[:step]) {
		if s.Kind == KindHeatOn || s.Kind == KindHeatOff {
			return s.Kind == KindHeatOn
		}
	}
	return false
}

func (f *folding) already(k Kind) Refusal {
	s, ok := f.LastStep(k)
	if !ok {
		s = f.Steps[0]
	}
	return AlreadySo{Run: f.No, Said: k, By: s.By, At: s.At, Seen: s.Seen}
}

// cookSince is when the run came to who watches it now.
func (f *folding) cookSince() time.Time {
	for _, s := range slices.Backward(f.Steps) {
		if s.To != 0 {
			return s.At
		}
	}
	return f.Begun
}

// notNow says that a run is not so far, or past it.
func (f *folding) notNow(k Kind) Refusal {
	behind, _, fills := k.presumes()
	if !f.Stage.Over() && fills && behind > f.Stage.passed() {
		return NotYet{Run: f.No, Said: k, Stage: f.Stage, Needs: path[behind-1].kind}
	}
	if k == KindGaugeRead && f.Stage < StageHeating {
		return NotYet{Run: f.No, Said: k, Stage: f.Stage, Needs: KindHeatOn}
	}
	return Over{Run: f.No, Said: k, Stage: f.Stage}
}

// fill takes the steps that a kind of entry presumes and nobody reported.
func (f *folding) fill(k Kind) {
	if slices.ContainsFunc(follows[f.Stage], func(m move) bool { return m.kind == k }) || slices.Contains(anytime, k) {
		return
	}
	behind, _, fills := k.presumes()
	if !fills {
		return
	}
	seen := f.rec
	f.rec.By, f.rec.No = 0, 0
	for _, missed := range path[min(f.Stage.passed(), behind):behind] {
		f.Steps = append(f.Steps, Step{Kind: missed.kind, At: f.rec.At})
		switch {
		case missed.kind == KindAtPressure:
			f.pressureUnseen()
		case missed.kind == KindHeatOff:
			f.heatOffUnseen()
		}
		f.enter(missed.to)
	}
	f.rec = seen
}

// step writes down what happened.
func (f *folding) step(k Kind, p Prep) {
	f.Steps = append(f.Steps, Step{Kind: k, At: f.rec.At, By: f.rec.By, No: f.rec.No, Seen: true, Prep: p})
}

func (f *folding) enter(s Stage) {
	if f.Stage != s {
		f.Stage, f.Since = s, f.rec.At
	}
}

func (f *folding) heatOn() {
	f.endPrep()
	f.step(KindHeatOn, 0)
	if off, ended := f.Ended(); ended && f.Stage == StageCooling {
		f.first = skinRead{}
		f.Water.idle(f.rec.At.Sub(off.At))
	}
	if f.Stage != StagePressureLost { // there it is the same hold's flame
		f.enter(StageHeating)
	}
}

func (f *folding) steam() {
	f.step(KindSteam, 0)
	f.enter(StageVenting)
	f.Water.ventBegins(f.rec.At)
}

func (f *folding) ventClosed() {
	f.step(KindVentClosed, 0)
	f.enter(StageRising)
	f.Water.ventEnds(f.rec.At)
}

func (f *folding) atZero() {
	f.step(KindAtZero, 0)
	if f.Stage != StageCalledOff {
		f.enter(StageCooling)
	}
}

// calledOff ends the run. What was at pressure is not held any longer.
func (f *folding) calledOff() {
	f.endPrep()
	f.closeStretch(f.rec.At)
	f.step(KindCalledOff, 0)
	f.enter(StageCalledOff)
}

// tookOver gives the run to another, with the step that did it.
func (f *folding) tookOver(k Kind, to MemberNo) {
	f.Steps = append(f.Steps, Step{Kind: k, At: f.rec.At, By: f.rec.By, No: f.rec.No, Seen: true, To: to})
	f.Cook, f.Offered = to, 0
}

// answered writes an answer down. Who sees to it has the run from then on; what a
// tap says to be done is as good as saying it.
func (f *folding) answered(e PingAnswered) {
	f.Answers = append(f.Answers, Answer{Key: e.Key, How: e.How, By: f.rec.By, At: f.rec.At})
	switch e.How {
	case AnswerSeen:
	case AnswerNotYet:
		if f.seenUp(e.Key) {
			f.enter(StageFalling)
			f.Since = f.Off[len(f.Off)-1].At
		}
	case AnswerGotIt:
		if f.Cook != f.rec.By {
			f.tookOver(KindTookOver, f.rec.By)
		}
	case AnswerDone:
		if done := doneMeans(e.Key); done != nil && f.refuse(done) == nil {
			f.fill(done.kind())
			f.apply(done)
		}
	}
}

// seenUp reports whether somebody who was asked for the zero of a pot that is down by
// another's word sees it under pressure. Of the two the one is believed who would leave
// it shut, unless it was opened.
func (f *folding) seenUp(key string) bool {
	return f.Stage == StageCooling && len(f.Off) > 0 && chainOf(key) == f.key("zero", len(f.Off)) &&
		!f.stepSince(KindOutOfPot, f.Since) && !f.stepSince(KindTempRead, f.Since) && !f.stepSince(KindWaterLeft, f.Since)
}

// asGood is how far under its usual pressure a cooker is taken to be at it: half
// of what a dial shows, so that one bar passes for 15 psi.
const asGood = 0.55

// rule works out the hold for what the gauge shows; zero means that nobody said.
// A cooker that is under its usual pressure is held longer, one over it never
// shorter.
func (f *folding) rule(shown unit.GaugeKPa) {
	s := f.rec.s
	at := s.gaugeFor(f.pot)
	if shown > 0 {
		at = s.usualGauge(f.pot)
		if g := s.TrueGauge(f.pot, shown); g < at-unit.PSI(asGood) {
			at = g
		}
	}
	f.ruleAt(at)
}

// ruleAgain works out the hold that begins anew when nobody said at what pressure:
// at the one that was lost, where that was less than the usual.
func (f *folding) ruleAgain() {
	was := f.Hold.At
	f.rule(0)
	if len(f.Stretches) > 0 && was < f.Hold.At {
		f.ruleAt(was)
	}
}

func (f *folding) ruleAt(at unit.GaugeKPa) {
	s := f.rec.s
	boxes, err := s.boxes(f.Order)
	if err != nil {
		boxes = boxesIn(containersOf(f.Order), nil) // by the names of the sizes, when the amounts can't be worked out
	}
	f.boxes = boxes
	f.Hold, _ = s.rulingAt(boxes, f.pot, f.Order.Hold, at)
}
