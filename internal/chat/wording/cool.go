package wording

import (
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// CoolView is a run of which somebody asks whether it is cool.
type CoolView struct {
	Run kitchen.Run
	// By is a time that was asked about: "cool by 8?"; zero for none.
	By time.Time
	// Now is in the kitchen's zone.
	Now time.Time
	// Limit is what a reading is measured against: [kitchen.Settings.CoolLimitFor] For, the
	// culture that was asked about; empty for none.
	Limit unit.Celsius
	For   string
}

// CoolYet says what was read last and when, the rough time of a table, and that
// only a thermometer knows.
func CoolYet(v CoolView) chat.Post {
	no := v.Run.No.String()
	run := RunView{Run: v.Run, Now: v.Now}
	var s sheet
	last, read := v.Run.NewestReading()
	switch v.Run.Stage {
	case kitchen.StageCool:
		if v.For != "" && read && last.Temp > v.Limit {
			s.add(must, say("**Not for {} yet**: the limit is "+warmth(v.Limit)+", and "+no+" was "+warmth(last.Temp)+" "+near(v.Now, last.At)+".", v.For))
			s.then(say("Next: measure one again, between two of them. Like `" + no + " 22C`"))
			break
		}
		s.add(must, coolByReading(v.Run, v.Now))
		s.then(onceCool(v.Run))
	case kitchen.StageCooling:
		if read {
			s.add(must, say("**"+readingWords(v.Run, last)+"**, read "+near(v.Now, last.At)+limitWords(last)+"."))
		} else {
			s.add(must, say("**Nobody has measured "+no+" yet.** The limit is "+warmth(v.Limit)+"."))
		}
		s.add(must, v.culture())
		s.add(must, run.state())
		s.add(must, v.by())
		s.then(say("Next: measure one, between two of them. Like `"+no+" 26C`"), tap("Steps", stepsOfRun(v.Run.No)))
	case kitchen.StageGone:
		s.add(must, run.state())
	case kitchen.StageCalledOff:
		s.add(must, say("**"+no+"** was called off."))
	case kitchen.StagePlanned, kitchen.StagePreparing, kitchen.StageHeating, kitchen.StageVenting, kitchen.StageRising,
		kitchen.StageAtPressure, kitchen.StagePressureLost, kitchen.StageFalling:
		s.add(must, say("**Not yet: "+no+" is "+stageWord(v.Run.Stage)+".** It cools from zero pressure on."))
		s.add(must, run.state())
	}
	return s.post(chat.Answer)
}

// onceCool is what comes when a run is down: a culture only on what was held.
func onceCool(r kitchen.Run) chat.Para {
	off, ended := r.Ended()
	switch {
	case ended && off.Outcome == kitchen.Held:
		return say("Next: inoculate in clean air, or shelve. Leave one blank.")
	case ended && off.Outcome == kitchen.Early:
		return say("**Don't inoculate: held " + heldOf(off) + ".** Next: cook it again at once, or bin it unopened.")
	}
	return say("**Don't inoculate: nobody saw the hold whole.** Was it? Say when, like `heat off was at 11:10`. Else cook it again, or bin it unopened.")
}

// heldOf is how much of the hold there was.
func heldOf(off kitchen.HeatGoneOff) string {
	return whole(off.Credit.Hold.Truncate(time.Minute).Minutes()) + " of " + minutes(off.Wanted)
}

// by says whether the usual time is before one that was asked about.
func (v CoolView) by() chat.Para {
	usual, ok := v.Run.ProbablyCool()
	switch {
	case v.By.IsZero() || !ok:
		return nil
	case v.By.Before(usual):
		return say("By " + near(v.Now, v.By) + "? Sooner than usual: measure before you count on it.")
	}
	return say("By " + near(v.Now, v.By) + "? Usually, yes; measure before you count on it.")
}

// culture says the limit for the culture that was asked about.
func (v CoolView) culture() chat.Para {
	if v.For == "" {
		return nil
	}
	return say("For {} the limit is "+warmth(v.Limit)+".", v.For)
}
