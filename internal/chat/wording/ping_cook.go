package wording

import (
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// ventOver says that the weight goes on.
func (v PingView) ventOver() pingText {
	act := v.button(v.no()+" weight on", "weight on")
	return pingText{
		head:    say("**" + v.no() + " weight on now.** Vented since " + v.clock(v.Run.Since) + "."),
		more:    []chat.Para{say("Only if the plume was steady; else a few minutes more.")},
		buttons: v.answers("Weight on", "weight on", "Not yet"), act: act,
	}
}

func (v PingView) holdNearly() pingText {
	end, _ := v.Run.HoldEnd()
	return pingText{head: say("**" + v.no() + " heat off at " + v.clock(end) + "**" + v.soon(end) + ". Be at the pot.")}
}

// soon says how long it is until then, in whole minutes.
func (v PingView) soon(t time.Time) string {
	if left := t.Sub(v.Now).Round(time.Minute); left >= time.Minute {
		return ", in " + minutes(left)
	}
	return ", any moment"
}

// holdOver asks for the heat to be off, shorter each time.
func (v PingView) holdOver() pingText {
	t := pingText{buttons: v.answers("Heat is off", "heat off", "Not yet"), act: v.button(v.no()+" heat off", "heat off")}
	over := ""
	if end, ok := v.Run.HoldEnd(); ok {
		over = span(v.Now.Sub(end)) + " over"
		if v.again() == 0 && (v.Late >= time.Minute || v.Now.Sub(end) < time.Minute) {
			over = minutes(v.Run.Hold.Time) + " at " + psi(v.Run.Hold.At) + ", " + v.clock(end.Add(-v.Run.Hold.Time)) + " to " + v.clock(end)
		}
	}
	switch v.again() {
	case 0:
		t.head = say("**" + v.no() + " heat off now.** " + capital(over) + ".")
		t.more = []chat.Para{say("Leave it shut until it shows zero.")}
	case 1:
		t.head = say("**" + v.no() + " heat off.** " + capital(over) + ". Still on?")
	default:
		t.head = say("**" + v.no() + " HEAT OFF**, " + over + ".")
	}
	return t
}

// whoIsThere goes to every room when nobody answered, shorter once it was asked.
func (v PingView) whoIsThere() pingText {
	where := v.Run.Cooker
	if where == "" {
		where = "the cooker"
	}
	done, act := v.button("Heat is off", "heat off"), v.button(v.no()+" heat off", "heat off")
	what, gotIt, notYet := "heat off now", tap("I've got it", "i've got it"), tap("Not yet", "not yet")
	buttons := []chat.Button{done, gotIt, notYet}
	switch {
	case strings.Contains(v.Ping.Key, "/water/"):
		what, buttons = "look now, it may run dry", []chat.Button{gotIt, done, notYet}
	case strings.Contains(v.Ping.Key, "/zero/"):
		what, act = "zero yet? Leave it shut till then", v.button(v.no()+" at zero", "zero")
		buttons = []chat.Button{v.button("It's at zero", "zero"), gotIt, notYet}
	}
	unheard := " Nobody answers."
	if v.Now.Sub(v.Ping.Due) >= time.Minute {
		unheard = "" // nobody was asked
	}
	return pingText{
		head:    say("**Who is in the kitchen? "+v.no()+", {}: "+what+".**"+unheard, where),
		buttons: buttons, act: act,
	}
}

// steamYet asks after a flame that was lit and forgotten.
func (v PingView) steamYet() pingText {
	t := pingText{
		head:    say("**" + v.no() + ": steam yet?** Lit " + v.clock(v.Run.Since) + "."),
		buttons: v.answers("Steam", "steam", "Not yet"), act: v.button(v.no()+" steam", "steam"),
	}
	if v.again() == 0 {
		t.more = []chat.Para{say("Flame out, or not wanted? Say `heat off` or `call off " + v.no() + "`")}
	}
	return t
}

// pressureYet asks after a cooker that has its weight on and was forgotten.
func (v PingView) pressureYet() pingText {
	at := onGauge(v.Run)
	if samePressure(v.Run.Shown(v.Run.Hold.At), fifteenPSI) {
		at = "15"
	}
	t := pingText{
		head:    say("**" + v.no() + " at " + at + " yet?** Weight on " + v.clock(v.Run.Since) + "."),
		buttons: v.answers("At pressure", "at pressure", "Not yet"), act: v.button(v.no()+" is up", "at pressure"),
	}
	if v.again() == 0 {
		t.more = []chat.Para{say("Look at vent, weight and gasket, and whether there is water: sagging at full flame can mean dry.")}
	}
	return t
}

// waterShort warns that the pot may run dry before the hold is over.
func (v PingView) waterShort() pingText {
	lasts, _ := v.Run.WaterLasts()
	head := "**" + v.no() + " water may run short about " + v.clock(lasts) + "**, before the hold is over: flame as low as holds it."
	if !lasts.After(v.Now) {
		head = "**" + v.no() + " water may be short already**, by estimate: flame as low as holds it."
	}
	more := []chat.Para{say("Sags at full flame? Dry: heat off, leave it shut till cold, never cold water in.")}
	if v.again() > 0 {
		head, more = "**"+v.no()+" water nearly gone**, by estimate. Sags at full flame? Heat off, leave it shut.", nil
	}
	return pingText{
		head: say(head), more: more,
		buttons: []chat.Button{tap("I've got it", "i've got it"), v.button("Lost pressure", "lost pressure"), v.button("Heat is off", "heat off")},
		act:     v.button(v.no()+" lost it", "lost pressure"),
	}
}

func (v PingView) checkZero() pingText {
	off := v.Run.Since
	if s, told := v.Run.LastStep(kitchen.KindHeatOff); told {
		off = s.At
	}
	head := "**" + v.no() + " at zero?** Look at the gauge; heat went off " + v.clock(off) + "."
	if v.again() > 0 {
		head = "**" + v.no() + ": zero yet?** Nobody has said so."
	}
	return pingText{
		head:    say(head),
		more:    []chat.Para{say("Not at zero: leave it shut, and don't cool it by force.")},
		buttons: v.answers("It's at zero", "zero", "Not yet"), act: v.button(v.no()+" at zero", "zero"),
	}
}

func (v PingView) stillHot() pingText {
	head := "**" + v.no() + " was called off with the flame on: heat off?**"
	if v.again() > 0 {
		head = "**" + v.no() + " HEAT OFF?** Called off, and nobody said the flame is."
	}
	return pingText{
		head: say(head), more: []chat.Para{say("Then leave it shut until it shows zero.")},
		buttons: v.answers("Heat is off", "heat off", "Not yet"), act: v.button(v.no()+" heat off", "heat off"),
	}
}
