package kitchen

import (
	"strings"
	"time"
)

// Ping is a message that a state wants sent by itself at a time. Pings are
// derived, never commanded: a state lists those it wants, and the book is made
// equal to the list.
type Ping struct {
	// Key names the ping within its collective and stays the same as long as
	// it waits for the same thing: start/17, run/12/hold-over/2. What stands
	// before the last parts is the prefix under which a state lists its own.
	Key      string
	Due      time.Time
	Kind     PingKind
	Loudness Loudness
	// To is the member it is for; zero means the whole room.
	To MemberNo
	// Room is the number of the room it goes to, as in [RoomJoined]; zero means
	// the collective's home room.
	Room int64
	// About is the subject whose entries tell what the ping says: run/12.
	About string
}

// PingKind is what a ping says.
type PingKind uint8

// The kinds. The numbers stand in the book: new ones go to the end.
const (
	// StartNow: it is time to start an order that is to be out by a time.
	StartNow PingKind = iota + 1
	// PrepOver: a step of the preparation has had its usual time.
	PrepOver
	// WetGrainStands: wet raw grain has stood as long as it keeps.
	WetGrainStands
	// VentOver: the air is out, the weight goes on.
	VentOver
	// HoldNearlyOver: five minutes more.
	HoldNearlyOver
	// WaterShort: the water doesn't cover the rest of the hold, by estimate.
	WaterShort
	// HoldOver: heat off now.
	HoldOver
	// WhoIsThere: nobody answered a guard ping; it goes to every room.
	WhoIsThere
	// CheckZero: the pressure should be down.
	CheckZero
	// StillHot: a run was called off with the flame on.
	StillHot
	// ProbablyCool: measure one.
	ProbablyCool
	// MeasureAgain: a second reading of the skin.
	MeasureAgain
	// CoolNow: inoculate or shelve.
	CoolNow
	// BookingOverrun: a run takes longer than until the next booking.
	BookingOverrun
	// SoakForBooking: grain for tomorrow's booking goes into the water.
	SoakForBooking
	// GaugeCheckDue: the gauge was last checked a year ago.
	GaugeCheckDue
	// BagsThreeWeeks: cooked bags have stood for three weeks, and dry out.
	BagsThreeWeeks
	// ShelvedMonth: cooked grain has stood for a month.
	ShelvedMonth
	// ShelvedThreeMonths: cooked grain has stood for three months.
	ShelvedThreeMonths
	// WeeklyDigest: what the week brought, and what the next one brings.
	WeeklyDigest
	// SteamYet: lit, and long after the usual time nobody told of steam.
	SteamYet
	// PressureYet: the weight is on, and long after the usual time nobody told of
	// pressure.
	PressureYet
	// LookAgain: units that looked suspect two days ago.
	LookAgain
	// RestOver: cooked grain has rested as long as they let it.
	RestOver
	// ShakeDue: what grows is to be shaken for the first time.
	ShakeDue
	// NothingSeen: inoculated long since, and nobody told of growth.
	NothingSeen
	// ThroughDue: what grows is expected grown through.
	ThroughDue
	// SpawnKept: grown through, and kept as long as it surely keeps.
	SpawnKept
)

// PingKinds lists them all.
func PingKinds() []PingKind {
	return []PingKind{
		StartNow, PrepOver, WetGrainStands, VentOver, HoldNearlyOver, WaterShort, HoldOver, WhoIsThere, CheckZero,
		StillHot, ProbablyCool, MeasureAgain, CoolNow, BookingOverrun, SoakForBooking, GaugeCheckDue,
		BagsThreeWeeks, ShelvedMonth, ShelvedThreeMonths, WeeklyDigest,
		SteamYet, PressureYet, LookAgain, RestOver, ShakeDue, NothingSeen, ThroughDue, SpawnKept,
	}
}

// String returns the words for logs.
func (k PingKind) String() string {
	switch k {
	case StartNow:
		return "start now"
	case PrepOver:
		return "preparation over"
	case WetGrainStands:
		return "wet grain stands"
	case VentOver:
		return "vent over"
	case HoldNearlyOver:
		return "hold nearly over"
	case WaterShort:
		return "water short"
	case HoldOver:
		return "hold over"
	case WhoIsThere:
		return "who is there"
	case CheckZero:
		return "check zero"
	case StillHot:
		return "still hot"
	case ProbablyCool:
		return "probably cool"
	case MeasureAgain:
		return "measure again"
	case CoolNow:
		return "cool"
	case BookingOverrun:
		return "booking overrun"
	case SoakForBooking:
		return "soak for booking"
	case GaugeCheckDue:
		return "gauge check due"
	case BagsThreeWeeks:
		return "bags three weeks old"
	case ShelvedMonth:
		return "shelved a month"
	case ShelvedThreeMonths:
		return "shelved three months"
	case WeeklyDigest:
		return "digest"
	case SteamYet:
		return "steam yet"
	case PressureYet:
		return "pressure yet"
	case LookAgain:
		return "look again"
	case RestOver:
		return "rest over"
	case ShakeDue:
		return "shake"
	case NothingSeen:
		return "nothing seen"
	case ThroughDue:
		return "grown through yet"
	case SpawnKept:
		return "spawn kept"
	}
	return "ping not said"
}

// Reach is who hears a ping beside the member it is for.
func (k PingKind) Reach() Reach {
	switch k {
	case WhoIsThere:
		return EveryRoom
	case WaterShort, StillHot:
		return CookAndRoom
	case StartNow, PrepOver, WetGrainStands, VentOver, HoldNearlyOver, HoldOver, CheckZero, ProbablyCool, MeasureAgain,
		CoolNow, BookingOverrun, SoakForBooking, GaugeCheckDue, BagsThreeWeeks, ShelvedMonth, ShelvedThreeMonths, WeeklyDigest,
		SteamYet, PressureYet, LookAgain, RestOver, ShakeDue, NothingSeen, ThroughDue, SpawnKept:
		return CookAlone
	}
	panic("ping " + k.String())
}

// Reach is how far a ping goes.
type Reach uint8

// A ping goes to the cook, in the room of the run or in private as the cook wants
// it; always to the room as well; or to every room of the collective.
const (
	CookAlone Reach = iota + 1
	CookAndRoom
	EveryRoom
)

// againPart is what stands in a key before the number of an escalation.
const againPart = "/again/"

// Chain is what the pings that ask for one thing have in common: the key of the
// first. Of several of a chain that are due at once only the last need be sent.
func (p Ping) Chain() string { return chainOf(p.Key) }

func chainOf(key string) string {
	chain, _, _ := strings.Cut(key, againPart)
	return chain
}

// nearlyStale is when a ping that announces something has been overtaken by it,
// measureStale when a load that is to be measured has had the time of any to cool.
const (
	nearlyStale  = 4 * time.Minute
	measureStale = unsaidCool
)

// Stale reports whether a ping no longer makes sense when it is only sent now.
func (p Ping) Stale(now time.Time) bool {
	late := now.Sub(p.Due)
	return p.Kind == HoldNearlyOver && late > nearlyStale ||
		(p.Kind == ProbablyCool || p.Kind == MeasureAgain) && late > measureStale
}

// morning is when the pings that wait for the next morning are due.
const morning TimeOfDay = 8 * 60

// Shift moves a ping out of the quiet hours and, where it waits for the next
// morning, there; what comes once a day to the one time of day at which that is
// said. Guard pings stay where they are, for they watch over a hot cooker, and so
// does one that somebody asked for at that very minute.
// The time of day is that of the zone, on days of 23 and 25 hours too.
func Shift(p Ping, quiet QuietHours, zone *time.Location) Ping {
	if p.Loudness == GuardPing || p.Kind == StartNow {
		return p
	}
	due := p.Due.In(zone)
	if p.Kind.Daily() {
		due = shelfTime.On(due)
	}
	if p.nextMorning() {
		first := quiet.over(due.Add(-nextDay))
		due = following(first.Add(nextDay/2), morning)
	}
	due = quiet.over(due)
	if !due.Equal(p.Due) {
		p.Due = due.UTC()
	}
	return p
}

// Breath is within what time several things told at once may lie; pings don't tell
// them apart.
const Breath = 10 * time.Millisecond

// Quieted is a list of pings as they are to stand in the book: after the quiet
// hours of those they are for, each shifted as by [Shift]. One that would only
// announce in the morning what came in the night is left out. Hours that nobody set
// hold back no word about a hot cooker, be it only that its hold is nearly over.
func (s Settings) Quieted(want []Ping, zone *time.Location) []Ping {
	all := make([]Ping, 0, len(want))
	for _, p := range want {
		quiet, set := s.QuietFor(p.To)
		if set == Default && p.Kind == HoldNearlyOver {
			quiet = QuietHours{}
		}
		shifted := Shift(p, quiet, zone)
		if p.Stale(shifted.Due) {
			continue
		}
		shifted.Due = shifted.Due.Truncate(Breath)
		all = append(all, shifted)
	}
	return all
}

// nextDay is how long after the first ping the one of the next morning stands
// before it is shifted.
const nextDay = 12 * time.Hour

// over is the end of the quiet hours that an instant lies in, else the instant.
func (q QuietHours) over(at time.Time) time.Time {
	if q.Holds(at) {
		return following(at, q.To)
	}
	return at
}

// nextMorning reports whether a ping repeats one of the day before.
func (p Ping) nextMorning() bool {
	return (p.Kind == ProbablyCool || p.Kind == MeasureAgain) && strings.Contains(p.Key, againPart)
}

// following is the first such time of day after an instant.
func following(at time.Time, t TimeOfDay) time.Time {
	on := t.On(at)
	if !on.After(at) {
		on = t.On(at.AddDate(0, 0, 1))
	}
	return on
}

// None reports whether they are of no length: none are wanted, nothing is held back.
func (q QuietHours) None() bool { return q.From == q.To }

// Holds reports whether an instant, in the kitchen's zone, lies in the quiet hours.
func (q QuietHours) Holds(at time.Time) bool {
	t := TimeOfDay(at.Hour()*60 + at.Minute())
	if q.From <= q.To {
		return t >= q.From && t < q.To
	}
	return t >= q.From || t < q.To
}

// Loudness is how much of a stir a ping makes. Guard pings watch over a hot
// cooker: they ring at any hour and go before all else. Due pings ring and wait
// for the morning. Notes and digests are silent.
type Loudness uint8

// The four loudnesses.
const (
	GuardPing Loudness = iota + 1
	DuePing
	NotePing
	DigestPing
)

// String returns the word for logs.
func (l Loudness) String() string {
	switch l {
	case GuardPing:
		return "guard"
	case DuePing:
		return "due"
	case NotePing:
		return "note"
	case DigestPing:
		return "digest"
	}
	return "loudness not said"
}

// Due is DuePing.
const Due = DuePing
