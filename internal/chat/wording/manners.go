package wording

import (
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// Greeting is the fixed answer to a greeting: that it is a bot, what it can do.
func Greeting() chat.Post {
	return with(lines("I'm the kitchen's bot: amounts, holds, the shared book.", "Try: `3 bags 5lb agar`"), tap("Help", "help"))
}

// Welcome is the fixed answer to thanks.
func Welcome() chat.Post { return lines("Good growing.") }

// Undone says what was taken back.
func Undone(what string, by string) chat.Post {
	if by != "" {
		return theirs(say("Taken back, said by {}: "+what, by))
	}
	return lines("Taken back: " + what)
}

// UndoneChange names a change that was taken back, and what holds now.
func UndoneChange(c kitchen.Change, now kitchen.Settings) string {
	switch c := c.(type) {
	case kitchen.Elevation:
		return "kitchen at " + height(c.Height) + ". Now: " + heightNow(now) + "."
	case kitchen.RoomTemperature:
		return "room " + warmth(c.Temp) + ". Now: " + warmth(now.RoomTemp()) + "."
	case kitchen.CoolLimitIs:
		return coolLimitUndone(c, now)
	case kitchen.CookerIs:
		return "what was said of the cooker. See `kitchen`."
	case kitchen.HoldIs:
		return "hold " + minutes(c.Hold) + " for " + holdScope(c.Container) + "."
	case kitchen.MethodIs:
		return "how " + methodScope(c) + " are filled. Now: " + now.MethodFor(c.Vessel).String() + "."
	case kitchen.StepIs:
		return "steps of " + upTo(1, float64(c.Step)) + nb + "g. Now: " + upTo(1, float64(now.ScaleStep())) + nb + "g."
	case kitchen.JarFill:
		return "a " + one(c.Container) + " holds " + massAsSaid(c.Wetted) + "."
	case kitchen.YieldIs:
		return kilos(c.Dry) + " came out " + kilos(c.Drained) + "."
	case kitchen.RatioIs:
		return ratio(c.Ratio) + " for " + ratioScope(c) + "."
	case kitchen.UsualGrain:
		return c.Grain.String() + " as the usual grain. Now: " + now.GrainMeant().String() + "."
	case kitchen.UsualOrder:
		return orderWords(c.Order) + " as the usual."
	case kitchen.GypsumIs:
		return "gypsum " + finePercent(c.Share) + ". Now: " + finePercent(now.Gypsum) + "."
	case kitchen.BagMeans:
		return "that a bag's size means " + basisWord(c.Basis) + "."
	case kitchen.HeadspaceIs:
		return "headspace " + percent(c.Share) + ". Now: " + percent(now.Empty()) + "."
	case kitchen.StorageMoisture:
		return finePercent(c.Moisture) + " moisture for " + grainScope(c) + "."
	case kitchen.ZoneIs:
		return "the time zone."
	case kitchen.MeasureIs:
		return measureWord(c.Measure) + " quarts."
	case kitchen.PressureIs:
		return "cooking at " + psi(c.Gauge) + "."
	case kitchen.GaugeReads:
		return gaugeWords(c) + "."
	case kitchen.QuietHours:
		return quietUndone(c, now)
	case kitchen.PingsPrivate:
		return "pings " + c.Where.String() + ". Now: " + now.PingsFor(c.Member).String() + "."
	case kitchen.DigestIs:
		return "when the digest comes. Now: " + digestTimes(now) + "."
	case kitchen.RestIs:
		return "the rest before inoculating. Now: " + restNow(now) + "."
	}
	panic("change without words")
}

// heightNow is the kitchen's height, sea level where none was said.
func heightNow(s kitchen.Settings) string {
	if s.Elevation == nil {
		return "sea level"
	}
	return height(*s.Elevation)
}

func methodScope(c kitchen.MethodIs) string {
	if c.Vessel == 0 {
		return "jars and bags"
	}
	return c.Vessel.String() + "s"
}

// UndoneRun names a run that was taken back.
func UndoneRun(no kitchen.RunNo) string {
	return "run " + no.String() + ". Its number is not used again."
}

// UndoneStart names a start ping that was taken back.
func UndoneStart() string { return "the ping for the start." }

// UndoneRole names a role that was taken back.
func UndoneRole(name string, r kitchen.Role) chat.Post {
	if r == kitchen.Steward {
		return theirs(say("Taken back: {} is no steward any more.", name))
	}
	return theirs(say("Taken back: {} is a steward again.", name))
}

// NothingChanged says that a correction left all as it was.
func NothingChanged() chat.Post { return lines("That is how it stands already. Nothing changed.") }

// WhichItem asks which of several items a correction means.
func WhichItem(o kitchen.Order) chat.Post {
	var have []string
	for _, it := range o.Items {
		have = append(have, orderWords(kitchen.Order{Items: []kitchen.Item{it}}))
	}
	first := o.Items[0]
	return lines("**Which one?** "+strings.Join(have, "; ")+". Nothing changed.",
		"Name it, like `no, "+plain(many(first.Count+1, first.Container))+"`")
}

// WillRemind says when the start ping will come.
func WillRemind(start, now time.Time) chat.Post {
	return with(lines("I'll ping you at **"+clock(now, start)+"** to light it."), tap("Undo", "undo"))
}

// SentLate heads an answer to a message that arrived long after it was sent.
func SentLate(sent, now time.Time) chat.Block {
	return say("Taken as of " + clock(now, sent) + ", when you sent it.")
}
