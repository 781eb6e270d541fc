package wording

import (
	"cmp"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// ventOver says that the weight goes on.
func (v PingView) ventOver() pingText {
	t := pingText{
		head:    say("**" + v.no() + " weight on now.** Vented since " + v.clock(v.Run.Since) + "."),
		more:    []chat.Para{say("Only if the plume was steady; else a few minutes more.")},
		buttons: v.answers("Weight on", "weight on", "Not yet"), act: v.button(v.no()+" weight on", "weight on"),
	}
	if v.again() > 0 {
		t.head = say("**" + v.no() + ": weight on?** It vents since " + v.clock(v.Run.Since) + ", and the water goes.")
		t.more = nil
	}
	return t
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
	if v.Run.Simmers() {
		where = "grain on the stove"
	}
	a := v.unanswered()
	head := say("**Who is in the kitchen? "+v.no()+", {}: "+a.what+".**"+v.unheard(), where)
	return pingText{head: head, buttons: a.buttons, act: a.act}
}

// unanswered is what every room is asked, with the taps that answer it and the one
// that does among others.
type unanswered struct {
	what    string
	buttons []chat.Button
	act     chat.Button
}

func (v PingView) unanswered() unanswered {
	no, gotIt, notYet := v.no(), tap("I've got it", "i've got it"), tap("Not yet", "not yet")
	off, offAct := v.button("Heat is off", "heat off"), v.button(v.no()+" heat off", "heat off")
	ask := func(what, label, says string, third chat.Button) unanswered {
		return unanswered{what, []chat.Button{v.button(label, says), gotIt, third}, v.button(no+" "+says, says)}
	}
	switch v.Ping.Asks() {
	case kitchen.HoldOver, kitchen.StillHot:
		return ask("heat off now", "Heat is off", "heat off", notYet)
	case kitchen.WaterShort:
		return unanswered{"look now, it may run dry", []chat.Button{gotIt, off, notYet}, offAct}
	case kitchen.CheckZero:
		a := ask("zero yet? Leave it shut till then", "It's at zero", "zero", notYet)
		a.act.Label = no + " at zero"
		return a
	case kitchen.VentOver:
		return ask("weight on, or heat off: it vents, and may boil dry", "Weight on", "weight on", off)
	case kitchen.SteamYet:
		return ask("steam yet, or heat off? Lit "+v.clock(v.Run.Since), "Steam", "steam", off)
	case kitchen.PressureYet:
		return ask("at pressure yet, or heat off?"+v.upSince(), "At pressure", "at pressure", off)
	case kitchen.PrepOver:
		return unanswered{
			"simmering done? Dry, it scorches",
			[]chat.Button{v.simmered("Simmering done"), gotIt, notYet},
			v.simmered(no + " simmered"),
		}
	case kitchen.StartNow, kitchen.WetGrainStands, kitchen.HoldNearlyOver, kitchen.WhoIsThere, kitchen.ProbablyCool,
		kitchen.MeasureAgain, kitchen.CoolNow, kitchen.BookingOverrun, kitchen.SoakForBooking, kitchen.GaugeCheckDue,
		kitchen.BagsThreeWeeks, kitchen.ShelvedMonth, kitchen.ShelvedThreeMonths, kitchen.WeeklyDigest,
		kitchen.LookAgain, kitchen.RestOver, kitchen.ShakeDue, kitchen.NothingSeen, kitchen.ThroughDue, kitchen.SpawnKept:
	}
	panic("everybody is asked of " + v.Ping.Key)
}

// unheard is when the first of what nobody answered was due. Of one that comes late
// that stands beside; nobody can have answered what was not asked.
func (v PingView) unheard() string {
	if v.Late >= time.Minute {
		return ""
	}
	due := v.Asked
	if end, ok := v.Run.HoldEnd(); ok && v.Ping.Asks() == kitchen.HoldOver {
		due = end
	}
	text := ""
	if !due.IsZero() {
		text = " Due " + v.clock(due) + "."
	}
	if v.Now.Sub(v.Ping.Due) < time.Minute {
		text += " Nobody answers."
	}
	return text
}

// upSince is since when a cooker comes up: that its weight is on, or that it lost its
// pressure.
func (v PingView) upSince() string {
	if v.Run.Stage == kitchen.StagePressureLost {
		return " Lost " + v.clock(v.Run.Since)
	}
	return " Weight on " + v.clock(v.Run.Since)
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
		head:    say("**" + v.no() + " at " + at + " yet?**" + v.upSince() + "."),
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

// NotAtZero warns those who took a run to be at zero of what another sees on it; to
// rings for who said so, nil for nobody named.
func NotAtZero(no kitchen.RunNo, to chat.Span, by string) chat.Post {
	var s sheet
	s.add(must, PingView{To: to}.addressed(say("**"+no.String()+" is not at zero**: {} sees pressure. Leave it shut.", cmp.Or(by, "somebody"))))
	return s.post(chat.Guard)
}

func (v PingView) stillHot() pingText {
	head := "**" + v.no() + " was called off with the flame on: heat off?**"
	if v.again() > 0 {
		head = "**" + v.no() + " HEAT OFF?** Called off, and nobody said the flame is."
	}
	then := say("Then leave it shut until it shows zero.")
	switch {
	case v.Run.Simmers() && v.again() > 0:
		then = nil
	case v.Run.Simmers():
		then = say("It is the pot the grain simmers in; dry, it scorches.")
	}
	return pingText{
		head: say(head), more: []chat.Para{then},
		buttons: v.answers("Heat is off", "heat off", "Not yet"), act: v.button(v.no()+" heat off", "heat off"),
	}
}
