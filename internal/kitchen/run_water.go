package kitchen

import (
	"time"

	"ryebell/internal/calc/load"
	"ryebell/internal/calc/unit"
)

// Water is what is known of the water under the rack.
type Water struct {
	// In is what was put in, all together. Assumed says that nobody told and it is
	// what the plan asks for.
	In      unit.Litres
	Assumed bool
	// Left is what was found after the cook; nil while nobody told.
	Left *unit.Litres

	since    time.Time     // when In was in the pot; zero: before the flame
	venting  time.Time     // when the venting that goes on began
	vented   time.Duration // of it since then, with the weight off
	first    time.Time     // when the pot first was at pressure since then
	pressure time.Duration // between first and the hold that runs or ended
}

func (w *Water) ventBegins(at time.Time) { w.venting = at }

func (w *Water) ventEnds(at time.Time) {
	if !w.venting.IsZero() {
		w.vented += max(0, at.Sub(w.venting))
		w.venting = time.Time{}
	}
}

func (w *Water) holdBegins(at time.Time) {
	if w.first.IsZero() {
		w.first = at
	}
	w.pressure = max(0, at.Sub(w.first))
}

// idle leaves out a time without pressure: nothing boils off in it.
func (w *Water) idle(d time.Duration) {
	if !w.first.IsZero() {
		w.first = w.first.Add(d)
	}
}

// ventedFor is the time with the weight off; the usual one while nobody told.
func (w Water) ventedFor() time.Duration {
	if w.vented == 0 && w.since.IsZero() {
		return load.UsualVent
	}
	return w.vented
}

// waterIn is water put in: as much as there is now, or so much more.
func (f *folding) waterIn(e WaterIn) {
	f.step(KindWaterIn, 0)
	w := &f.Water
	if e.Added {
		w.In += e.Water
		return
	}
	*w = Water{In: e.Water}
	if f.Stage.Hot() && f.Stage != StageHeating {
		w.since = f.rec.At // what boiled off before is made good
		if f.Stage == StageVenting {
			w.venting = f.rec.At
		}
	}
}

// WaterLasts is when the water is down to what must be left, by estimate, while a
// hold runs; false when none does. The water put in is what was told, else what
// the plan asks for.
func (r Run) WaterLasts() (time.Time, bool) {
	s, ok := r.live()
	if !ok {
		return time.Time{}, false
	}
	b := r.pot.budget(r.Hold.Time)
	b.Vent = r.Water.ventedFor()
	lasts := b.Lasts(r.Water.In) - r.Water.pressure
	return s.From.Add(max(0, min(lasts, 1000*time.Hour))), true
}

// WaterShort is how much of the hold the water doesn't cover, by estimate; zero
// when it does or none runs. A minute too little is not told apart from enough.
func (r Run) WaterShort() time.Duration {
	lasts, ok := r.WaterLasts()
	if !ok {
		return 0
	}
	if end, runs := r.HoldEnd(); runs && end.Sub(lasts) > time.Minute {
		return end.Sub(lasts)
	}
	return 0
}

func (f *folding) waterLeft(e WaterLeft) {
	f.step(KindWaterLeft, 0)
	f.Water.Left = &e.Water
}

// Learnt is what the run teaches of its cooker, to be laid over what is known of
// it; false when it teaches nothing. One run moves a known figure half of the way,
// a fall that took longer than known all of it: late is better than early.
func (r Run) Learnt() (CookerIs, bool) {
	c := CookerIs{Name: r.pot.Name, BoilOff: r.boilOff(), Fall: r.fell()}
	return c, c.BoilOff > 0 || c.Fall > 0
}

// boilOff is the water lost an hour at pressure, from what went in and was found
// left; 0 when that can't be told.
func (r Run) boilOff() unit.LitresPerHour {
	off, ended := r.Ended()
	if r.Water.Left == nil || r.Water.Assumed || !ended || !off.Seen || r.Water.first.IsZero() {
		return 0
	}
	hours := off.At.Sub(r.Water.first).Hours()
	b := r.pot.budget(0)
	before := float64(b.VentRate)*r.Water.ventedFor().Hours() + float64(b.TakenUp)
	lost := float64(r.Water.In-*r.Water.Left) - before
	if hours < 0.5 {
		return 0
	}
	rate := unit.LitresPerHour(lost / hours)
	if checkRange(BoilOffRate, float64(rate), 0.05, 5) != nil {
		return 0
	}
	if r.pot.BoilOff > 0 {
		return (r.pot.BoilOff + rate) / 2
	}
	return rate
}

// shortestFall is the fastest that a full pot can lose its pressure by itself; what
// is said sooner was no zero.
const shortestFall = 10 * time.Minute

// fell is how long the pressure took to fall, when somebody stood by: told before
// the bot asked, or after it was told not yet. Otherwise it is only when somebody
// looked.
func (r Run) fell() time.Duration {
	off, on := r.LastStep(KindHeatOff)
	zero, down := r.LastStep(KindAtZero)
	if !on || !down || !off.Seen || !zero.Seen || zero.At.Sub(off.At) < shortestFall {
		return 0
	}
	took, known := zero.At.Sub(off.At), r.fallTime(r.pot)
	switch {
	case took > known && r.saidNotYet(r.key("zero", len(r.Off))):
		return took
	case took < known:
		return (took + known) / 2
	}
	return 0
}

// fallTime is how long a cooker with this load takes to lose its pressure.
func (r Run) fallTime(k CookerIs) time.Duration {
	return firstSet(k.Fall, k.course(r.boxes, 0).Fall)
}
