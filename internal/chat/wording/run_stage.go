package wording

import (
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// stage says where the run is now, what to watch for, and the one next step.
func (v RunView) stage(s *sheet) {
	if _, read := v.Told.(kitchen.TempRead); !read || v.Run.Stage != kitchen.StageCool {
		s.add(must, v.state()) // the reading is the state
	}
	s.add(must, v.corrected())
	s.add(should, v.filledIn())
	switch v.Run.Stage {
	case kitchen.StagePlanned:
		s.then(say("Next: light it, then say `heat on`."), v.button("Heat on", "heat on"))
	case kitchen.StagePreparing:
		v.preparing(s)
	case kitchen.StageHeating:
		s.then(say("Next: a steady plume? Say `steam`: I time the vent."), v.button("Steam", "steam"))
	case kitchen.StageVenting:
		s.add(may, say("Full flame, a steady plume: air left in makes it colder than its gauge says."))
		next := say("Next: weight on when I ping.")
		if until, _ := v.Run.Until(); !until.After(v.Now) {
			next = say("Next: close it, then say `weight on`.")
		}
		s.then(next, v.button("Weight on", "weight on"))
	case kitchen.StageRising:
		v.shortVent(s)
		s.then(say("Next: at "+onGauge(v.Run)+" say `at pressure`: the hold starts."), v.button("At pressure", "at pressure"))
	case kitchen.StageAtPressure:
		v.holding(s)
	case kitchen.StagePressureLost:
		v.lost(s)
	case kitchen.StageFalling:
		v.falling(s)
	case kitchen.StageCooling:
		v.cooling(s)
	case kitchen.StageCool:
		switch {
		case s.next != nil: // a reading that can't be is looked at again
		case v.Grows != nil:
			s.then(v.Grows.next(v.Now), tap("Log", logOf(v.Run.No)))
		default:
			s.then(onceCool(v.Run, v.Now), tap("Log", logOf(v.Run.No)))
		}
	case kitchen.StageGone:
		s.then(nil, tap("Log", logOf(v.Run.No)))
	case kitchen.StageCalledOff:
		v.comingDown(s)
	}
}

// state is one line on where the run is: when the next thing is due, first.
func (v RunView) state() chat.Para {
	r, no := v.Run, v.no()
	until, _ := r.Until()
	switch r.Stage {
	case kitchen.StagePlanned:
		return say(no + " is not lit yet.")
	case kitchen.StagePreparing:
		return v.prepState()
	case kitchen.StageHeating:
		return say("**" + no + " heating** since " + v.clock(r.Since) + ". Steam about " + v.clock(round10(until)) + ", a usual time.")
	case kitchen.StageVenting:
		if !until.After(v.Now) {
			return say("**" + no + " weight on now**, due " + v.clock(until) + ": vents from " + v.clock(r.Since) + ".")
		}
		return say("**" + no + " weight on at " + v.clock(until) + "**: vents from " + v.clock(r.Since) + ", 10" + nb + "min.")
	case kitchen.StageRising:
		return say("**" + no + " coming up** since " + v.clock(r.Since) + ": " + psi(r.Hold.At) + " about " + v.clock(round10(until)) + ", a usual time.")
	case kitchen.StageAtPressure:
		return v.holdState()
	case kitchen.StagePressureLost:
		return say("**" + no + " lost pressure** " + v.clock(r.Since) + v.heldSoFar() + ". The hold starts again.")
	case kitchen.StageFalling:
		return say("Leave **" + no + "** shut until zero, about **" + v.clock(round10(until)) + "**, a usual time.")
	case kitchen.StageCooling:
		if _, now := v.Told.(kitchen.TempRead); now && v.Was != nil && v.WasAt.IsZero() {
			return nil // the head says it
		}
		return v.coolState()
	case kitchen.StageCool:
		return coolByReading(r, v.Now)
	case kitchen.StageGone:
		if _, now := v.Told.(kitchen.RunGone); now {
			return nil // the head says it
		}
		return say("**" + no + " is gone from the shelf** since " + v.clock(r.Since) + ".")
	case kitchen.StageCalledOff:
		if _, now := v.Told.(kitchen.CalledOff); now {
			return nil // the head says it
		}
		if zero, down := v.Told.(kitchen.AtZero); down {
			return say("**" + no + " " + kindWord(kindOf(zero)) + " " + v.clock(v.At) + "**; called off " + v.clock(r.Since) + ".")
		}
		return say(no + " was called off " + v.clock(r.Since) + ".")
	}
	panic("stage without words")
}

// holdState says when the heat goes off, and when that has moved.
func (v RunView) holdState() chat.Para {
	r, no := v.Run, v.no()
	end, ok := r.HoldEnd()
	if !ok {
		return say("**" + no + " at pressure** since " + v.clock(r.Since) + ". I know no hold for it: keep your own clock.")
	}
	held := minutes(r.Hold.Time) + " at " + onGauge(r) + " from " + v.clock(end.Add(-r.Hold.Time))
	if !end.After(v.Now) {
		return say("**" + no + " heat off now**, due since " + v.clock(end) + ": " + held + ".")
	}
	if v.Was != nil {
		if was, ran := v.Was.HoldEnd(); ran && moved(was, end) {
			return say("**" + no + " heat off is now " + v.clock(end) + "**, was " + v.clock(was) + ": " + held + ".")
		}
	}
	return say("**" + no + " heat off " + v.clock(end) + "**: " + held + ".")
}

// moved reports whether two instants print as different minutes.
func moved(a, b time.Time) bool { return !a.Truncate(time.Minute).Equal(b.Truncate(time.Minute)) }

// heldSoFar is how much of the hold there was when pressure was lost.
func (v RunView) heldSoFar() string {
	r := v.Run
	if n := len(r.Stretches); n > 0 && r.Stretches[n-1].Seen {
		held := r.Stretches[n-1].To.Sub(r.Stretches[n-1].From)
		return ", " + whole(held.Truncate(time.Minute).Minutes()) + " of " + minutes(r.Hold.Time) + " held"
	}
	return ""
}

func (v RunView) holding(s *sheet) {
	r := v.Run
	if at := r.Stretches[len(r.Stretches)-1].Sagged; !at.IsZero() {
		s.add(should, say("Pressure fell "+v.clock(at)+", after the hold: that takes nothing from it."))
	}
	if short := r.WaterShort(); short > 0 {
		s.add(must, v.waterWord())
	}
	if v.begins() {
		if broken := r.CreditAt(v.Now).Broken; broken >= time.Minute {
			s.add(should, say("Held before: "+minutes(broken)+", beside this hold and not part of it."))
		}
		if r.Hold.TooLong {
			s.add(must, say("**Over four hours: too long for a cooker.** More pressure, or smaller containers."))
		} else if r.Hold.Origin == kitchen.Default && r.Hold.At < lowPressure {
			s.add(should, say("Colder than at 15"+nb+"psi: hence the time."))
		}
	}
	if end, ok := r.HoldEnd(); ok && !end.After(v.Now) {
		s.then(say("Next: heat off, then leave it shut."), v.button("Heat is off", "heat off"), v.button("Lost pressure", "lost pressure"))
		return
	}
	if v.begins() && r.WaterShort() == 0 {
		s.add(may, say("Flame down so far that it just stays there."))
	}
	s.then(say("Next: I ping then. Lost pressure? Say so at once."), v.button("Lost pressure", "lost pressure"))
}

// begins reports whether a hold began with what was said.
func (v RunView) begins() bool {
	if v.Told == nil || v.Run.Since.Before(v.At) || !v.WasAt.IsZero() {
		return false
	}
	return v.Run.Stage == kitchen.StageAtPressure && slices.Contains([]kitchen.Kind{
		kitchen.KindAtPressure, kitchen.KindPressureBack, kitchen.KindDipped, kitchen.KindGaugeRead,
	}, kindOf(v.Told))
}

// lowPressure is where steam is noticeably colder than at 15 psi.
const lowPressure = 0.97 * fifteenPSI

// waterWord warns that the water doesn't cover the hold, by estimate.
func (v RunView) waterWord() chat.Para {
	lasts, _ := v.Run.WaterLasts()
	text := "**Water may run short about " + v.clock(lasts) + "**"
	if !lasts.After(v.Now) {
		text = "**Water may be short already**"
	}
	if v.Run.Water.Assumed {
		return say(text + ", by estimate for " + litres(v.Run.Water.In) + ", for nobody told.")
	}
	return say(text + ", by estimate. Flame as low as holds the pressure.")
}

// onGauge is the pressure of the hold as the cook reads it.
func onGauge(r kitchen.Run) string {
	shown := r.Shown(r.Hold.At)
	if samePressure(shown, r.Hold.At) {
		return psi(shown)
	}
	return psi(shown) + " on your gauge"
}

func (v RunView) shortVent(s *sheet) {
	steam, ok := v.Run.LastStep(kitchen.KindSteam)
	if !ok || !steam.Seen {
		return
	}
	vented := v.Run.Since.Sub(steam.At)
	if vented < usualVent-time.Minute {
		s.add(should, say("Vented "+minutes(vented)+", not 10: air left in makes it colder than its gauge says."))
	}
}

const usualVent = 10 * time.Minute

func (v RunView) lost(s *sheet) {
	if v.Was == nil || v.Was.Stage != kitchen.StagePressureLost {
		water := "**Is there water?**"
		if v.Run.Water.Assumed {
			water += " I took " + litres(v.Run.Water.In) + "."
		}
		s.add(must, say(water+" Sagging at full flame can mean dry: heat off then, shut till cold, never cold water in."))
	}
	back := v.backAt()
	s.then(say("Next: full flame; then say `"+back+"`."), v.button(capital(back), back), v.button("Heat is off", "heat off"))
}

// backAt is what is said once a lost pressure is back.
func (v RunView) backAt() string {
	if samePressure(v.Run.Shown(v.Run.Hold.At), fifteenPSI) {
		return "back at 15"
	}
	return "back at pressure"
}

func (v RunView) falling(s *sheet) {
	if off, ok := v.Run.Ended(); ok && off.Outcome == kitchen.Early {
		s.then(say("Next: light it again. Flame still on? Then `undo`."), v.button("Heat on", "heat on"), tap("Undo", "undo"), v.button("It's at zero", "zero"))
		return
	}
	s.then(say("Next: when it shows zero, say `zero`."), v.button("It's at zero", "zero"))
}

func (v RunView) cooling(s *sheet) {
	if v.doubted() {
		s.then(say("Next: not at zero? `undo`, and I ask again."), tap("Undo", "undo"))
		return
	}
	_, out := v.Run.LastStep(kitchen.KindOutOfPot)
	_, measured := v.Run.NewestReading()
	switch {
	case v.Run.Relightable():
		s.then(say("Next: held too short. Water topped up and lid on, light it again."), v.button("Heat on", "heat on"), v.button("Out of the pot", "out of the pot"))
	case out && v.More != nil:
		s.then(say("Next: the next load. Top up the water first."), tap("Next load", phrase.Cook{Load: phrase.NextLoad}.String()))
	case !out && !measured:
		if _, now := v.Told.(kitchen.AtZero); now {
			s.add(may, say("In the shut pot it takes half as long again, or twice."))
		}
		s.then(say("Next: out, or leave it in; cool in clean air."), v.button("Out of the pot", "out of the pot"))
	case v.Grows != nil: // nobody is asked to measure any more
		s.then(v.Grows.next(v.Now), tap("Chart", chartOf(v.Run.No)))
	default:
		if s.next == nil {
			c, known := v.Run.Cooling()
			s.then(nextReading(v.Run, c, known, v.Now), tap("Chart", chartOf(v.Run.No)))
		}
	}
	if _, now := v.Told.(kitchen.OutOfPot); now && v.Run.Water.Left == nil && !v.Run.Water.Assumed {
		s.add(may, say("What is left in the pot? Like `1 litre left in the pot`"))
	}
}

// coolByReading says by which reading the run counts as cool.
func coolByReading(r kitchen.Run, now time.Time) chat.Para {
	last, ok := r.SettlingReading()
	if !ok {
		return say("**" + r.No.String() + "** is down.")
	}
	return say("**" + r.No.String() + " is down to " + warmth(last.Temp) + "**, read " + near(now, last.At) + limitWords(last) + ".")
}

// comingDown asks for what a run that was called off hot still needs.
func (v RunView) comingDown(s *sheet) {
	r := v.Run
	on, lit := r.LastStep(kitchen.KindHeatOn)
	off, isOff := r.LastStep(kitchen.KindHeatOff)
	switch {
	case r.Simmers():
		s.add(must, say("**Is the flame under the grain off?** I ask until somebody says so."))
		s.then(say("Next: heat off."), v.button("Heat is off", "heat off"), tap("Undo", "undo"))
	case !lit:
		s.then(nil, tap("Undo", "undo"))
	case !isOff || off.At.Before(on.At):
		s.add(must, say("**Is the flame off?** I ask until somebody says so."))
		s.then(say("Next: heat off, then leave it shut until zero."), v.button("Heat is off", "heat off"), tap("Undo", "undo"))
	case r.MayPress():
		s.then(say("Next: leave it shut until it shows zero."), v.button("It's at zero", "zero"), tap("Undo", "undo"))
	default:
		s.then(nil, tap("Undo", "undo"))
	}
}

// The cautions, each once a run: design's section on them says which.
const (
	cautionEarshot = "earshot"
	cautionSteam   = "steam"
	cautionZero    = "zero"
	cautionLid     = "lid"
	cautionGlass   = "glass"
)

// caution gives the caution that belongs to the stage, once a run, where the
// screen has room for it.
func (v RunView) caution(s *sheet) {
	for _, c := range v.cautions() {
		text := cautionWords(c)
		if !s.fits(text) || v.First == nil || v.First(c) != New {
			continue
		}
		s.add(should, text)
		return
	}
}

func (v RunView) cautions() []string {
	if v.doubted() {
		return nil // the head says it
	}
	switch v.Run.Stage {
	case kitchen.StageHeating, kitchen.StageRising, kitchen.StageAtPressure, kitchen.StagePressureLost:
		return []string{cautionEarshot}
	case kitchen.StageVenting:
		return []string{cautionSteam, cautionEarshot}
	case kitchen.StageFalling:
		return []string{cautionZero}
	case kitchen.StageCooling:
		if _, out := v.Run.LastStep(kitchen.KindOutOfPot); !out {
			return []string{cautionLid}
		}
		if hasJars(v.Run.Order) {
			return []string{cautionGlass}
		}
		return nil
	case kitchen.StageCalledOff:
		if _, lit := v.Run.LastStep(kitchen.KindHeatOn); lit {
			return []string{cautionZero}
		}
		return nil
	case kitchen.StagePlanned, kitchen.StagePreparing, kitchen.StageCool, kitchen.StageGone:
		return nil
	}
	panic("stage without cautions")
}

func cautionWords(c string) chat.Para {
	switch c {
	case cautionEarshot:
		return say("Stay in earshot while the flame is on.")
	case cautionSteam:
		return say("Steam burns: hands and face off the vent.")
	case cautionZero:
		return say("Never open, tilt or cool it by force before zero.")
	case cautionLid:
		return say("Weight off, wait 10" + nb + "min, lid tilted away from your face.")
	case cautionGlass:
		return say("Hot glass: no cold stone, no draught.")
	}
	panic("caution without words")
}

func hasJars(o kitchen.Order) bool {
	for _, it := range o.Items {
		if it.Container.Vessel == kitchen.Jar {
			return true
		}
	}
	return false
}

// ask puts the question that this entry raised, once.
func (v RunView) ask(s *sheet) {
	for _, a := range v.Run.Asks() {
		asked := a.What == kitchen.HowMuchWater && v.Run.Stage == kitchen.StagePressureLost // by what to watch for
		if a.Since == v.No && !asked {
			s.add(should, askWords(a.What, v.Run))
		}
	}
}

func askWords(q kitchen.Question, r kitchen.Run) chat.Para {
	switch q {
	case kitchen.HowDeep:
		return say("How low did it fall? Like `dropped to 11`")
	case kitchen.HowMuchWater:
		return say("How much water is in? I took " + litres(r.Water.In) + ". Like `4 litres in the pot`")
	case kitchen.WhoCooks:
		return say("**Nobody is named.** Who watches it? `" + gotIt(r.No) + "`")
	}
	panic("question without words")
}
