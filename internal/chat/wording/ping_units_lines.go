package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// line is what one matter asks for: which units, what to do, and why now.
func (v UnitsPingView) line(a UnitsAsk) chat.Para {
	head := func(act string) string { return "**" + a.named() + ": " + act + ".** " }
	switch a.Due.Kind {
	case kitchen.LookAgain:
		return say(head("look again") + v.doubted(a))
	case kitchen.ShakeDue:
		return v.grows(a, head("shake"), ".")
	case kitchen.ThroughDue:
		return v.through(a, head("look"))
	case kitchen.NothingSeen:
		return v.grows(a, "**"+a.named()+": any growth?** ", ", none told.")
	case kitchen.SpawnKept:
		return v.kept(a, head)
	case kitchen.RestOver:
		if !a.heldWhole() {
			return say(head("out, unopened") + "Nobody saw the hold whole.")
		}
		return say(head("inoculate") + "Rested " + plural(v.daysSince(a.Load.Cool), "day") + ". Look first: what soured by now, the cook spoilt.")
	case kitchen.BagsThreeWeeks, kitchen.ShelvedMonth, kitchen.ShelvedThreeMonths:
		return say(head(shelfAct(a)) + capital(limitAge(a.Due.Kind)) + " on the shelf, " + many(len(a.Due.Units), a.first().Container) + ".")
	case kitchen.StartNow, kitchen.PrepOver, kitchen.WetGrainStands, kitchen.VentOver, kitchen.HoldNearlyOver, kitchen.WaterShort,
		kitchen.HoldOver, kitchen.WhoIsThere, kitchen.CheckZero, kitchen.StillHot, kitchen.ProbablyCool, kitchen.MeasureAgain,
		kitchen.CoolNow, kitchen.BookingOverrun, kitchen.SoakForBooking, kitchen.GaugeCheckDue, kitchen.WeeklyDigest,
		kitchen.SteamYet, kitchen.PressureYet:
	}
	panic("no ping of units: " + a.Due.Kind.String())
}

// shelfAct is what to do with cooked grain of an age.
func shelfAct(a UnitsAsk) string {
	switch {
	case !a.heldWhole():
		return "no culture on it, throw out"
	case a.Due.Kind == kitchen.BagsThreeWeeks:
		return "weigh one, it dries out"
	case a.Due.Kind == kitchen.ShelvedThreeMonths:
		return "use now or throw out"
	}
	return "use before newer ones"
}

// daysSince counts the nights since an instant.
func (v UnitsPingView) daysSince(at time.Time) int { return nights(at.In(v.Now.Location()), v.Now) }

// nights counts the midnights between two instants, on the clock of each.
func nights(from, to time.Time) int {
	y, m, d := from.Date()
	z, n, e := to.Date()
	return int(time.Date(z, n, e, 0, 0, 0, 0, time.UTC).Sub(time.Date(y, m, d, 0, 0, 0, 0, time.UTC)) / (24 * time.Hour))
}

// grows says what is on the units and since when, between a head and a tail.
func (v UnitsPingView) grows(a UnitsAsk, head, tail string) chat.Para {
	day := "day " + whole(float64(v.daysSince(a.first().Inoculated)))
	if a.Due.Growth.Named == "" {
		return say(head + "Culture not said, " + day + tail)
	}
	return say(head+"{}, "+day+tail, capital(a.Due.Growth.Named))
}

// through asks for a look at what is expected grown through, or is late.
func (v UnitsPingView) through(a UnitsAsk, head string) chat.Para {
	if v.Now.After(throughOf(a.Due.Growth).To) {
		return v.grows(a, head, ": later than usual.")
	}
	return v.grows(a, head, ": likely grown through.")
}

// throughOf is when the units are expected grown through, as they are asked after.
func throughOf(g kitchen.Growth) kitchen.Expected {
	if g.Shaken {
		return g.Through
	}
	return g.Unshaken
}

// kept says until when spawn usually keeps where it stands.
func (v UnitsPingView) kept(a UnitsAsk, head func(string) string) chat.Para {
	act, where := "use or chill", "in the room"
	switch {
	case a.Due.Growth.Species.Has(kitchen.NeverChill):
		act = "use"
	case a.chilled():
		act, where = "use", "chilled"
	}
	text := " grown through, usually keeps to about " + dateOf(v.Now, a.Due.Keeps) + " " + where + "."
	if a.Due.Growth.Named == "" {
		return say(head(act) + capital(text[1:]))
	}
	return say(head(act)+"{},"+text, capital(a.Due.Growth.Named))
}

// doubted is what made units suspect, and when.
func (v UnitsPingView) doubted(a UnitsAsk) string {
	step, _ := a.first().LastStep(kitchen.SaidSuspect)
	e, ok := step.Entry.(kitchen.SignSeen)
	if !ok {
		return "Suspect since " + dateOf(v.Now, step.At) + "."
	}
	return "On " + dateOf(v.Now, step.At) + ": " + e.Sign.String() + "."
}

// ground is what a single ask rests on.
func (v UnitsPingView) ground(a UnitsAsk) chat.Para {
	g := a.Due.Growth
	switch a.Due.Kind {
	case kitchen.ShakeDue:
		return v.estimate(g, "First shake", g.Shake)
	case kitchen.ThroughDue:
		return v.estimate(g, "Through", throughOf(g))
	case kitchen.NothingSeen:
		return say("None by now usually means grain too warm, an old culture or dry grain.")
	case kitchen.LookAgain:
		return say("Worse: out, unopened. As it was: it can stand.")
	case kitchen.ShelvedThreeMonths:
		return say("Bulging, leaking or foul: out unopened.")
	case kitchen.RestOver, kitchen.SpawnKept, kitchen.BagsThreeWeeks, kitchen.ShelvedMonth:
		return nil
	case kitchen.StartNow, kitchen.PrepOver, kitchen.WetGrainStands, kitchen.VentOver, kitchen.HoldNearlyOver, kitchen.WaterShort,
		kitchen.HoldOver, kitchen.WhoIsThere, kitchen.CheckZero, kitchen.StillHot, kitchen.ProbablyCool, kitchen.MeasureAgain,
		kitchen.CoolNow, kitchen.BookingOverrun, kitchen.SoakForBooking, kitchen.GaugeCheckDue, kitchen.WeeklyDigest,
		kitchen.SteamYet, kitchen.PressureYet:
	}
	panic("no ping of units: " + a.Due.Kind.String())
}

// estimate says from when to when something is expected and on what that rests.
func (v UnitsPingView) estimate(g kitchen.Growth, what string, e kitchen.Expected) chat.Para {
	text := what + " by estimate " + dateOf(v.Now, e.From) + " to " + dateOf(v.Now, e.To)
	switch {
	case g.Paced && e != g.Shake:
		return say(text + ", by how far it was.")
	case e.Runs > 0:
		return say(text + ", from " + plural(e.Runs, "run") + " of your own.")
	case g.Known:
		return say(text + ", as is usual.")
	}
	return say(text + ": I don't know that species, so as most do.")
}
