package wording

import (
	"math"
	"time"

	"ryebell/internal/calc/cooling"
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
	// Own is whether the collective has told the limit of that culture.
	Own bool
	// Unit is the one that was asked about; zero for the load.
	Unit kitchen.UnitNo
	// Settled is set once none of its units waits for a culture any more.
	Settled bool
}

// of is what was asked about.
func (v CoolView) of() kitchen.Ref {
	if v.Unit == 0 {
		return kitchen.Ref{Run: v.Run.No}
	}
	return kitchen.Ref{Run: v.Run.No, Units: []kitchen.UnitNo{v.Unit}}
}

// CoolYet says when a run is cool and how surely, what was read last and when, and
// when to measure.
func CoolYet(v CoolView) chat.Post {
	no := v.Run.No.String()
	run := RunView{Run: v.Run, Now: v.Now}
	var s sheet
	last, read := v.Run.SettlingReading()
	switch v.Run.Stage {
	case kitchen.StageCool:
		if v.For != "" && read && last.Temp > v.Limit {
			s.add(must, say("**Not for {} yet**: the limit is "+warmth(v.Limit)+", and "+no+" was "+warmth(last.Temp)+" "+near(v.Now, last.At)+".", v.For))
			s.then(say("Next: measure one again, between two of them. Like `" + no + " 22C`"))
			break
		}
		s.add(must, coolByReading(v.Run, v.Now))
		if v.For != "" {
			s.add(must, v.culture())
		}
		if !v.Settled {
			s.then(onceCool(v.Run, v.Now))
		}
	case kitchen.StageCooling:
		v.cooling(&s, run)
	case kitchen.StageGone:
		s.add(must, run.state())
	case kitchen.StageCalledOff:
		s.add(must, say("**"+no+"** was called off."))
	case kitchen.StagePlanned, kitchen.StagePreparing, kitchen.StageHeating, kitchen.StageVenting, kitchen.StageRising,
		kitchen.StageAtPressure, kitchen.StagePressureLost, kitchen.StageFalling:
		s.add(must, run.state())
		s.add(must, say("It cools from zero pressure on."))
	}
	return s.post(chat.Answer)
}

func (v CoolView) cooling(s *sheet, run RunView) {
	c, known := v.Run.Cooling()
	whole := v.For == "" && v.Unit == 0
	if !whole {
		c, known = v.Run.CoolingOf(v.Unit, v.Limit)
	}
	last, read := c.Believed(v.Run.Readings)
	s.add(must, v.by(c, known))
	if known && whole {
		s.add(must, run.state())
		for _, sooner := range v.Run.CoolSooner() {
			s.add(should, say("A "+one(sooner.Container)+" sooner: about "+near(v.Now, round10(sooner.Likely))+"."))
		}
	} else {
		head := coolAbout(v.of(), c, known, v.Now)
		if v.Unit == 0 {
			head = coolHead(v.Run, c, known, v.Now)
		}
		s.add(must, head)
	}
	s.add(must, v.culture())
	s.add(must, shutPot(v.Run))
	if _, is := gainsaid(v.Run, c, known); known && !is && !maybeCool(v.Run, v.Now) {
		s.add(should, say("Now about "+degrees(c, last, c.Middle(v.Now))+" in the middle."))
	}
	if read {
		s.add(must, say(capital(readingWords(v.Run, last))+", read "+near(v.Now, last.At)+"."))
	} else {
		s.add(must, say("Nobody has measured yet: a reading narrows it, like `"+v.Run.No.String()+" 52C`"))
	}
	s.then(nextReading(v.Run, c, known, v.Now), tap("Chart", chartOf(v.Run.No)), tap("Why", whyCoolOf(v.Run.No)))
}

// shutPot says that a load is counted as still in the pot, where nobody said that it is
// out: much hangs on that.
func shutPot(r kitchen.Run) chat.Para {
	if _, out := r.LiftedOut(); out || r.Stage != kitchen.StageCooling {
		return nil
	}
	return say("Counted as in the shut pot. Out? Say `" + r.No.String() + " out of the pot`")
}

// coolHead is when a load is cool, unless a reading says otherwise.
func coolHead(r kitchen.Run, c kitchen.Cooling, known bool, now time.Time) chat.Para {
	if last, is := gainsaid(r, c, known); is {
		return say("**" + r.No.String() + " isn't cool: " + warmth(last.Temp) + "** " + near(now, last.At) + ", though it should be since about " + near(now, round10(c.Likely)) + ".")
	}
	return coolAbout(kitchen.Ref{Run: r.No}, c, known, now)
}

// coolAbout is when a run is cool: the time, and the range that holds four times of
// five.
func coolAbout(of kitchen.Ref, c kitchen.Cooling, known bool, now time.Time) chat.Para {
	what := "**" + of.String()
	switch {
	case !known:
		return say(what + " cooling.** Nobody saw when it came to zero, so I can't say how long. Say it, like `zero was at 17:10`")
	case !c.Likely.Before(c.Zero.Add(cooling.Horizon)):
		return say(what + " may not get to " + celsius(c.Limit) + "**: the room may be " + warmRoom(c))
	case c.Never():
		return say(what + " cool inside about " + near(now, round10(c.Likely)) + "**, or much later: the room may be " + warmRoom(c))
	case !c.To.After(now):
		return say(what + " should be cool inside by now**, since about " + near(now, round10(c.Likely)) + ". Measure it to be sure.")
	}
	from := near(now, round10(c.From))
	if !c.From.After(now) {
		from = "now"
	}
	if !c.Likely.After(now) {
		return say(what + " may be cool inside by now**, or by " + near(now, round10(c.To)) + ".")
	}
	return say(what + " cool inside about " + near(now, round10(c.Likely)) + "**, between " + from + " and " + until(now, round10(c.From), round10(c.To)) + ".")
}

// gainsaid is the newest reading that counts, where it is over the limit after the time
// at which the load should have been cool.
func gainsaid(r kitchen.Run, c kitchen.Cooling, known bool) (kitchen.Reading, bool) {
	last, read := c.Believed(r.Readings)
	return last, known && read && r.OfSlowest(last) && last.Temp > c.Limit && !c.Likely.After(last.At)
}

// warmRoom is how warm the room may be, and how to say it where nobody did.
func warmRoom(c kitchen.Cooling) string {
	text := celsius(unit.Celsius(math.Round(float64(c.Room.Hi)))) + "."
	if !c.RoomTold {
		text += " Say it, like `room 21C`"
	}
	return text
}

// nextReading is when to measure one: when four of five such loads are cool.
func nextReading(r kitchen.Run, c kitchen.Cooling, known bool, now time.Time) chat.Para {
	like := " Like `" + r.No.String() + " 26C`"
	if again, ok := r.MeasureAgain(); ok && again.After(now) {
		return say("Next: measure again " + near(now, again) + "." + asked(r, now, again))
	}
	if _, is := gainsaid(r, c, known); is {
		return say("Next: measure once more, between two of them." + like)
	}
	if !known || !c.Alarm.After(now) {
		return say("Next: measure one now, between two of them." + like)
	}
	if c.Never() {
		return say("Next: measure one again " + near(now, c.Alarm) + "." + asked(r, now, c.Alarm))
	}
	text := "Next: measure one " + near(now, c.Alarm) + ": 4 of 5 are cool by then."
	if load, _ := r.Cooling(); load.Container != c.Container {
		return say(text) // the ping is for the load
	}
	return say(text + asked(r, now, c.Alarm))
}

// asked says when the bot asks for it by itself, where that is another time.
func asked(r kitchen.Run, now, due time.Time) string {
	asks, will := r.AsksForReading(now.Location())
	switch {
	case !will:
		return ""
	case asks.Sub(due) >= 30*time.Minute:
		return " I ping at " + near(now, asks) + ", when it is no longer quiet."
	}
	return " I ping then."
}

// degrees is a range of warmth in the scale that the last reading was said in.
func degrees(c kitchen.Cooling, last kitchen.Reading, w cooling.Warmth) string {
	scale, in := "°C", func(c unit.Celsius) string { return upTo(0, float64(c)) }
	if last.No != 0 && inFahrenheit(last.Temp) {
		scale, in = "°F", func(c unit.Celsius) string { return upTo(0, c.Fahrenheit()) }
	}
	mid, lo, hi := in(min(w.Mid, c.Boiling)), in(w.Lo), in(min(w.Hi, c.Boiling))
	if lo == hi {
		return mid + nb + scale
	}
	return mid + nb + scale + ", " + lo + " to " + hi
}

// onceCool is what comes when a run is down: a culture only on what was held, and has
// rested as long as they want it to.
func onceCool(r kitchen.Run, now time.Time) chat.Para {
	off, ended := r.Ended()
	until, rests := r.RestsUntil(now)
	switch {
	case ended && off.Outcome == kitchen.Held && rests:
		return say("Next: let it rest until " + near(now, until) + ". I tell you then. What sours by then, the cook spoilt.")
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

// by answers for a time that was asked about.
func (v CoolView) by(c kitchen.Cooling, known bool) chat.Para {
	if v.By.IsZero() || !known {
		return nil
	}
	chance := float64(c.Chance(v.By))
	what := "**By " + near(v.Now, v.By) + "? "
	switch {
	case chance >= 0.95:
		return say(what + "Nearly surely.** Measure it then.")
	case chance >= 0.75: // which is called 8 of 10
		return say(what + "Likely**, " + inTen(chance) + ". Measure it then.")
	case chance >= 0.4:
		return say(what + "Maybe**, about " + inTen(chance) + ".")
	case chance >= 0.05:
		return say(what + "Hardly**, about " + inTen(chance) + ".")
	}
	return say(what + "No.**")
}

// howCool is how sure a load is cool that reads cool outside.
func howCool(chance float64) string {
	switch {
	case chance >= 0.945:
		return "nearly surely cool inside**, " + whole(math.Min(98, math.Round(chance*100))) + " of 100"
	case chance >= 0.8:
		return "probably cool inside**, " + inTen(chance)
	}
	return "not surely cool inside**"
}

// inTen is a chance as people count it.
func inTen(chance float64) string { return whole(math.Max(1, math.Round(chance*10))) + " of 10" }

// culture says the limit for the culture that was asked about, and how to lower it where
// that is everybody's; else the limit that a warm room raises.
func (v CoolView) culture() chat.Para {
	if v.For == "" {
		if v.Limit > kitchen.UsualCoolLimit {
			return say("Limit " + warmth(v.Limit) + ", for the room is that warm.")
		}
		return nil
	}
	if !v.Own {
		return say("For {} I know no limit: "+warmth(v.Limit)+" as for all. Less? Say it, like `enoki not over 22C`", v.For)
	}
	return say("For {} the limit is "+warmth(v.Limit)+".", v.For)
}
