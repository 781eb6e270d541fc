package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// goneTap says that a run has left the shelf.
func goneTap(no kitchen.RunNo) chat.Button { return tap(no.String()+" is gone", goneOf(no)) }

func goneOf(no kitchen.RunNo) string { return no.String() + " is gone" }

// heldWhole reports whether the hold of a run was seen as long as it should have been.
func heldWhole(r kitchen.Run) bool {
	off, ok := r.Ended()
	return ok && off.Outcome == kitchen.Held
}

// dateOf is the date of an instant, with the year when it isn't this one.
func dateOf(now, t time.Time) string {
	t = t.In(now.Location())
	if t.Year() != now.Year() {
		return t.Format("2 Jan 2006")
	}
	return t.Format("2 Jan")
}

// limitAge is an age on the shelf in words.
func limitAge(k kitchen.PingKind) string {
	switch k {
	case kitchen.BagsThreeWeeks:
		return "three weeks"
	case kitchen.ShelvedMonth:
		return "a month"
	case kitchen.ShelvedThreeMonths:
		return "three months"
	case kitchen.StartNow, kitchen.PrepOver, kitchen.WetGrainStands, kitchen.VentOver, kitchen.HoldNearlyOver, kitchen.WaterShort,
		kitchen.HoldOver, kitchen.WhoIsThere, kitchen.CheckZero, kitchen.StillHot, kitchen.ProbablyCool, kitchen.MeasureAgain,
		kitchen.CoolNow, kitchen.BookingOverrun, kitchen.SoakForBooking, kitchen.GaugeCheckDue, kitchen.WeeklyDigest, kitchen.SteamYet, kitchen.PressureYet,
		kitchen.LookAgain, kitchen.RestOver, kitchen.ShakeDue, kitchen.NothingSeen, kitchen.ThroughDue, kitchen.SpawnKept:
	}
	panic("no age on the shelf: " + k.String())
}
