package wording

import (
	"fmt"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// timeOfDay prints a time on the clock.
func timeOfDay(t kitchen.TimeOfDay) string { return fmt.Sprintf("%02d:%02d", int(t)/60, int(t)%60) }

// quietChanged says when pings wait, and which don't.
func quietChanged(c kitchen.QuietHours) []chat.Block {
	whose := "for you"
	if c.Member == 0 {
		whose = "for everybody"
	}
	if c.None() {
		return []chat.Block{
			say("**No quiet hours** " + whose + " from now on: what I ask comes at night too."),
			say("Back to the usual ones: `quiet 22-7`"),
		}
	}
	return []chat.Block{
		say("**Quiet " + timeOfDay(c.From) + " to " + timeOfDay(c.To) + "** " + whose + " from now on."),
		say("A hot cooker still rings: weight on, water, heat off, zero. All else waits until " + timeOfDay(c.To) + "."),
		say("Rather be woken? `no quiet hours`"),
	}
}

// quietUndone names quiet hours that were taken back, and what holds now.
func quietUndone(c kitchen.QuietHours, now kitchen.Settings) string {
	q, set := now.QuietFor(c.Member)
	text := quietWords(c) + ". Now: " + quietWords(q)
	if set == kitchen.Default {
		text += ", as usual"
	}
	return text + "."
}

func quietWords(q kitchen.QuietHours) string {
	if q.None() {
		return "no quiet hours"
	}
	return "quiet " + timeOfDay(q.From) + " to " + timeOfDay(q.To)
}

// privateChanged says where pings go.
func privateChanged(c kitchen.PingsPrivate) []chat.Block {
	if c.Where == kitchen.InRoom {
		return []chat.Block{say("Your pings come **in the room** again.")}
	}
	return []chat.Block{
		say("Your pings come **in private** from now on."),
		say("When nobody answers for a hot cooker, every room is asked all the same."),
	}
}

// PrivateOnceWritten says that pings will come in private to somebody who has never
// written there yet, and what to do for it.
func PrivateOnceWritten() chat.Post {
	return with(lines(
		"**Write to me in private once**, any word will do: from then on your pings come there by themselves.",
		"I can't write to you first. Until then they come in the room.",
		"When nobody answers for a hot cooker, every room is asked all the same.",
	), tap("Undo", "undo"))
}

// PingCame is a ping that was sent, of which somebody asks why.
type PingCame struct {
	Ping kitchen.Ping
	Run  kitchen.Run
	// Sent is when it went out, Now in the kitchen's zone.
	Sent, Now time.Time
}

// WhyPing says why a ping came.
func WhyPing(v PingCame) chat.Post {
	var s sheet
	about := ""
	if v.Run.No != 0 {
		about = ", " + v.Run.No.String()
	}
	s.add(must, say("**"+capital(pingWord(v.Ping.Kind))+about+"**: due "+near(v.Now, v.Ping.Due)+", sent "+near(v.Now, v.Sent)+"."))
	s.add(must, say(pingReason(v.Ping.Kind)))
	s.add(must, say(loudnessWords(v.Ping)))
	return s.post(chat.Answer)
}

// NoPing is why a ping didn't come.
type NoPing uint8

// Nothing is waited for; or the ping is not due yet, waits for the end of the quiet
// hours, was answered, went to somebody in private, or has gone out already.
const (
	NothingWaited NoPing = iota + 1
	NotDueYet
	HeldByQuiet
	AnsweredBefore
	WentPrivate
	WasSent
)

// NoPingView is a ping of which somebody asks why it didn't come.
type NoPingView struct {
	Why  NoPing
	Ping kitchen.Ping // zero for NothingWaited
	Run  kitchen.Run
	// By answered it, or got it in private, At that time.
	By  kitchen.MemberNo
	At  time.Time
	Now time.Time // in the kitchen's zone
	Who func(kitchen.MemberNo) string
}

// WhyNoPing says why a ping didn't come.
func WhyNoPing(v NoPingView) chat.Post {
	what := ""
	if v.Why != NothingWaited {
		what = "**" + capital(pingWord(v.Ping.Kind)) + "**"
		if v.Run.No != 0 {
			what = "**" + v.Run.No.String() + " " + pingWord(v.Ping.Kind) + "**"
		}
	}
	switch v.Why {
	case NothingWaited:
		return with(lines("**I wait for nothing right now**, so no ping is due."), tap("Now", "now"))
	case NotDueYet:
		return lines(what + " is due " + near(v.Now, v.Ping.Due) + ".")
	case HeldByQuiet:
		return lines(what+" waits for the quiet hours to end: "+near(v.Now, v.Ping.Due)+".",
			"A hot cooker would ring all the same. Other hours: `quiet 23-6`, `no quiet hours`")
	case AnsweredBefore:
		return theirs(say(what+": {} answered it at "+near(v.Now, v.At)+".", called(v.Who, v.By)))
	case WentPrivate:
		return theirs(say(what+" went to {} in private at "+near(v.Now, v.At)+".", called(v.Who, v.By)))
	case WasSent:
		return theirs(say(what+" went out at "+near(v.Now, v.At)+", to {}.", called(v.Who, v.By)))
	}
	panic("no ping without words")
}

// pingWord names a ping.
func pingWord(k kitchen.PingKind) string {
	switch k {
	case kitchen.StartNow:
		return "start"
	case kitchen.PrepOver:
		return "preparation over"
	case kitchen.WetGrainStands:
		return "wet grain"
	case kitchen.VentOver:
		return "weight on"
	case kitchen.HoldNearlyOver:
		return "heat off soon"
	case kitchen.WaterShort:
		return "water short"
	case kitchen.HoldOver:
		return "heat off"
	case kitchen.WhoIsThere:
		return "who is in the kitchen"
	case kitchen.CheckZero:
		return "check for zero"
	case kitchen.StillHot:
		return "flame still on"
	case kitchen.ProbablyCool:
		return "measure one"
	case kitchen.MeasureAgain:
		return "measure again"
	case kitchen.CoolNow:
		return "inoculate or shelve"
	case kitchen.BookingOverrun:
		return "booking overrun"
	case kitchen.SoakForBooking:
		return "soak grain"
	case kitchen.GaugeCheckDue:
		return "check the gauge"
	case kitchen.BagsThreeWeeks, kitchen.ShelvedMonth, kitchen.ShelvedThreeMonths:
		return "shelf"
	case kitchen.WeeklyDigest:
		return "digest"
	case kitchen.SteamYet:
		return "steam yet"
	case kitchen.PressureYet:
		return "pressure yet"
	case kitchen.LookAgain:
		return "look again"
	case kitchen.RestOver:
		return "inoculate"
	case kitchen.ShakeDue:
		return "shake"
	case kitchen.NothingSeen:
		return "look for growth"
	case kitchen.ThroughDue:
		return "look if grown through"
	case kitchen.SpawnKept:
		return "use spawn"
	}
	panic("ping without a word")
}

// pingReason is what makes a ping due.
func pingReason(k kitchen.PingKind) string {
	switch k {
	case kitchen.StartNow:
		return "Lit then, it is out in time."
	case kitchen.PrepOver:
		return "That step has had its usual time."
	case kitchen.WetGrainStands:
		return "Wet raw grain sours after about 12" + nb + "h, 4 where it is warm."
	case kitchen.VentOver:
		return "The vent has blown for 10" + nb + "min."
	case kitchen.HoldNearlyOver:
		return "Five minutes before the hold is over."
	case kitchen.WaterShort:
		return "By estimate the water doesn't cover the hold."
	case kitchen.HoldOver:
		return "The hold was over, and nobody had said that the heat is off."
	case kitchen.WhoIsThere:
		return "Nobody had answered for a hot cooker."
	case kitchen.CheckZero:
		return "The usual time from heat off to zero was over."
	case kitchen.StillHot:
		return "It was called off, and nobody had said that the flame is off."
	case kitchen.ProbablyCool:
		return "By a rough table they could be down by then."
	case kitchen.MeasureAgain:
		return "One cool skin reading isn't enough: a second, an hour later."
	case kitchen.CoolNow:
		return "A reading was within the limit."
	case kitchen.BookingOverrun:
		return "A run in that cooker goes on into the booking."
	case kitchen.SoakForBooking:
		return "Grain for the booking soaks overnight."
	case kitchen.GaugeCheckDue:
		return "A dial is checked once a year."
	case kitchen.BagsThreeWeeks:
		return "Bags dry out: they are asked after from three weeks on."
	case kitchen.ShelvedMonth, kitchen.ShelvedThreeMonths:
		return "Cooked grain is asked after at one month and at three."
	case kitchen.WeeklyDigest:
		return "It comes once a week, when there is something to say."
	case kitchen.SteamYet:
		return "Lit, and nobody had told of steam long after the usual time."
	case kitchen.PressureYet:
		return "Weight on or pressure lost, and nobody had told of pressure long after the usual time."
	case kitchen.LookAgain:
		return "Two days before they looked suspect."
	case kitchen.RestOver:
		return "The rest that you let cooked grain have was over."
	case kitchen.ShakeDue:
		return "The first shake is usual about then. An estimate."
	case kitchen.NothingSeen:
		return "Inoculated ten days or more, and nobody had told of growth."
	case kitchen.ThroughDue:
		return "It is likely grown through about then. An estimate."
	case kitchen.SpawnKept:
		return "Spawn loses vigour: a week or two in the room, longer in the fridge."
	}
	panic("ping without a reason")
}

func loudnessWords(p kitchen.Ping) string {
	switch p.Loudness {
	case kitchen.GuardPing:
		if p.Kind == kitchen.PrepOver {
			return "It watches a pot on the flame: it rings at any hour."
		}
		return "It watches a hot cooker: it rings at any hour, and again until somebody answers."
	case kitchen.DuePing:
		return "It rings once, and not in quiet hours."
	case kitchen.NotePing, kitchen.DigestPing:
		return "It comes without a sound."
	}
	panic("loudness without words")
}
