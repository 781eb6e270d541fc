package wording

import (
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// GearView is something that was just told of a part of a cooker.
type GearView struct {
	Entry kitchen.GearEntry
	// Run is the run that is on in that cooker; nil for none.
	Run *kitchen.Run
	// After is the kitchen with what was told.
	After kitchen.Settings
	// At is when it happened, zero for now; Now is in the kitchen's zone.
	At, Now time.Time
}

// GearTold says what a word about a cooker's part changes.
func GearTold(v GearView) chat.Post {
	var s sheet
	switch e := v.Entry.(type) {
	case kitchen.GearFailed:
		if e.Part == kitchen.Valve {
			v.over(&s, e)
			break
		}
		s.add(must, say("**"+failedWord(e.Part)+"** in {}"+v.late()+": written down. I ask for it before the next cook.", cookerOf(e.Cooker)))
		v.failed(&s, e)
	case kitchen.GearChecked:
		var parts []string
		for _, p := range e.Parts {
			parts = append(parts, partWord(p))
		}
		s.add(must, say("**"+capital(listed(parts))+" looked at**, {}, "+near(v.Now, v.Now)+".", cookerShort(e.Cooker)))
		if slices.ContainsFunc(e.Parts, kitchen.Part.Heats) && v.lost(&s) {
			break
		}
		s.then(nil, tap("Undo", "undo"))
	case kitchen.GaugeReads:
		for _, b := range gaugeChanged(e, v.After) {
			s.add(must, b)
		}
		v.goesOn(&s)
		s.then(nil, tap("Undo", "undo"))
	}
	return s.post(chat.Answer)
}

// late is when it failed, where that was told later.
func (v GearView) late() string {
	if v.At.IsZero() || v.Now.Sub(v.At) < time.Minute {
		return ""
	}
	return ", " + near(v.Now, v.At)
}

func failedWord(p kitchen.Part) string {
	switch p {
	case kitchen.Gasket:
		return "Gasket leaked"
	case kitchen.Vent:
		return "Vent blocked"
	case kitchen.Gas:
		return "Gas ran out"
	case kitchen.Gauge:
		return "Gauge failed"
	case kitchen.Stove:
		return "Stove out"
	case kitchen.Valve:
		return "Too much pressure"
	}
	panic("part without words")
}

// failed says what it means for the run that is on.
func (v GearView) failed(s *sheet, e kitchen.GearFailed) {
	if v.Run == nil || !v.Run.Stage.Hot() {
		s.then(say("Next: mended? Say `checked the "+partWord(e.Part)+"`"), tap("Undo", "undo"))
		return
	}
	r := *v.Run
	switch e.Part {
	case kitchen.Vent:
		s.add(must, say("**"+r.No.String()+" is on: heat off, and leave it shut until zero.** A blocked vent can't let pressure out."))
		s.then(nil, runTap(r.No, "Heat is off", "heat off"))
	case kitchen.Gas, kitchen.Stove:
		if v.lost(s) {
			return
		}
		s.then(say("Next: say `lit again` once "+r.No.String()+" is."), runTap(r.No, "Lit again", "lit again"), runTap(r.No, "Heat is off", "heat off"))
		s.undoable()
	case kitchen.Valve:
		panic("overpressure has words of its own")
	case kitchen.Gasket, kitchen.Gauge:
		s.add(must, say("**"+r.No.String()+" is on.** Does it hold "+psi(r.Hold.At)+"? If not, the hold doesn't count."))
		s.then(say("Next: say so if it fell below."), runTap(r.No, "Lost pressure", "lost pressure"), runTap(r.No, "Heat is off", "heat off"))
	}
}

// lost says how a hold stands that the heat failed in; false when none was lost.
func (v GearView) lost(s *sheet) bool {
	if v.Run == nil || v.Run.Stage != kitchen.StagePressureLost {
		return false
	}
	run := RunView{Run: *v.Run, Was: v.Run, Now: v.Now}
	s.add(must, run.state())
	run.lost(s)
	s.next = say("Next: lit again? Full flame; then say `" + run.backAt() + "`.")
	s.undoable()
	return true
}

// over says what to do when there is more pressure than a cooker is made for, and
// nobody read how much.
func (v GearView) over(s *sheet, e kitchen.GearFailed) {
	s.add(must, say("**Too much pressure in {}: heat off now.** Stand back, leave it shut until zero. The maker's manual says what then.", cookerOf(e.Cooker)))
	s.add(must, say("Written down: I ask for the safety valve before the next cook."))
	if v.Run != nil && v.Run.Stage.Hot() {
		s.then(nil, runTap(v.Run.No, "Heat is off", "heat off"))
	} else {
		s.then(nil, tap("Undo", "undo"))
	}
}

// LitAgain says how a run stands whose flame had gone out and is on again.
func LitAgain(v RunView) chat.Post {
	var s sheet
	s.add(must, say("**Lit again** "+v.clock(v.At)+": written down."))
	v.stage(&s)
	s.undoable()
	return s.post(chat.Answer)
}

// goesOn says what a corrected gauge does to the hold that runs.
func (v GearView) goesOn(s *sheet) {
	if v.Run == nil || !v.Run.Stage.Hot() {
		return
	}
	run := RunView{Run: *v.Run, Now: v.Now}
	s.add(should, run.state())
}

// gaugeChanged says what a gauge that is off means from now on.
func gaugeChanged(c kitchen.GaugeReads, after kitchen.Settings) []chat.Para {
	shown := fifteenPSI
	name := cookerOf(c.Cooker)
	if only, ok := after.CookerNamed(c.Cooker); ok {
		name = cookerOf(only.Name)
	}
	if samePressure(c.Low, 0) {
		return []chat.Para{say("The gauge of {} is **right**: as shown from now on.", name)}
	}
	way, off := "low", c.Low
	if off < 0 {
		way, off = "high", -off
	}
	out := []chat.Para{say("The gauge of {} reads **"+psi(off)+" "+way+"**: 15 shown is "+psi(shown+c.Low)+", from now on.", name)}
	if c.Low < 0 {
		out = append(out, say("So steam is colder than it shows"+longerHold(c, after)+". Never make up for it above the rating."))
	} else {
		out = append(out, say("So it is hotter than it shows. Stop at the rating by true pressure."))
	}
	if off.PSI() > 2 {
		out = append(out, say("**More than 2"+nb+"psi off: replace it.**"))
	}
	return append(out, say("What was cooked before stays as it was written."))
}

// longerHold is what the usual hold of a quart jar becomes.
func longerHold(c kitchen.GaugeReads, after kitchen.Settings) string {
	p, err := after.Work(kitchen.Order{Cooker: c.Cooker, Items: []kitchen.Item{{Count: 1, Container: kitchen.Container{Vessel: kitchen.Jar, Volume: quart}}}})
	if err != nil || p.Hold.Origin != kitchen.Default || p.Hold.TooLong {
		return ", and usual holds get longer"
	}
	return ": a quart jar takes " + minutes(p.Hold.Time) + " at " + psi(p.Hold.At)
}

// GearWanted asks for parts to be looked at before a cooker is put on.
func GearWanted(g kitchen.GearAsk) chat.Post {
	return with(theirs(say("**Before {} goes on**:", cookerOf(g.Cooker)), gearWords(g)), tap("Gear is fine", gearFine(g)))
}

func blocks(paras []chat.Para) []chat.Block {
	out := make([]chat.Block, len(paras))
	for i, p := range paras {
		out[i] = p
	}
	return out
}
