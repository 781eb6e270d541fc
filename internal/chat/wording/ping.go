package wording

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// PingView is a ping to be said now.
type PingView struct {
	Ping kitchen.Ping
	// Run is the run it is about; zero for a start, a booking or a gauge.
	Run kitchen.Run
	// To names whom it rings for; nil when it is for the whole room.
	To chat.Span
	// Now is when it is sent, in the kitchen's zone; Late how long after it could have
	// been: the bot was down.
	Now  time.Time
	Late time.Duration
	// Asked is when the first of its chain was due, for one that goes to everybody.
	Asked time.Time
	// Booking is the one that is overrun, or that grain is soaked for.
	Booking kitchen.Booking
	// Order and OutBy are what a start is for and when it is to be out.
	Order kitchen.Order
	OutBy time.Time
	// Cooker is the one whose gauge is to be checked.
	Cooker string
}

// pingText is what a ping says: run, reason and act in its head, which a phone
// shows of it; then what else to know, and the taps that answer it.
type pingText struct {
	head    chat.Para
	more    []chat.Para
	buttons []chat.Button
	// act is the tap that still says what is meant when several pings are one post.
	act chat.Button
}

// Ping says a ping.
func Ping(v PingView) chat.Post {
	t := v.text()
	var s sheet
	s.add(must, v.addressed(t.head))
	s.add(must, v.lateness())
	if v.Ping.Loudness == kitchen.GuardPing && v.To == nil && v.Ping.Kind != kitchen.WhoIsThere {
		s.add(must, say("**Nobody is named to watch it.** Who has it?"))
		if len(t.buttons) < maxButtons {
			t.buttons = append(t.buttons, tap("I've got it", "i've got it"))
		}
	}
	for i, p := range t.more {
		s.add(should+need(min(i, 1)), p)
	}
	s.then(nil, t.buttons...)
	return s.post(loudness(v.Ping.Loudness))
}

// Pings says several that are due at once in one post, those that guard a hot
// cooker first, and of those that ask for the same thing only the last. What the
// screen has no room for is counted.
func Pings(views []PingView) chat.Post {
	views = urgentFirst(views)
	if len(views) == 1 {
		return Ping(views[0])
	}
	for n := len(views); ; n-- {
		s := together(views, n)
		if n == 1 || s.whole() {
			return s.post(loudness(views[0].Ping.Loudness))
		}
	}
}

// urgentFirst sorts pings by loudness and keeps the last of each chain.
func urgentFirst(views []PingView) []PingView {
	var out []PingView
	for i, v := range views {
		newer := slices.ContainsFunc(views[i+1:], func(w PingView) bool { return w.Ping.Chain() == v.Ping.Chain() })
		if !newer {
			out = append(out, v)
		}
	}
	slices.SortStableFunc(out, func(a, b PingView) int { return cmp.Compare(a.Ping.Loudness, b.Ping.Loudness) })
	return out
}

// together is a post with the heads of the first n pings.
func together(views []PingView, n int) *sheet {
	var s sheet
	var late time.Duration
	for _, v := range views[:n] {
		t := v.text()
		s.add(must, v.addressed(t.head))
		known := slices.Contains(s.buttons, t.act)
		if t.act.Say != "" && !known && len(s.buttons) < maxButtons {
			s.buttons = append(s.buttons, t.act)
		}
		late = max(late, v.Late)
	}
	if n < len(views) {
		s.add(must, say("And "+whole(float64(len(views)-n))+" more: `now`"))
	}
	if late >= time.Minute {
		s.add(must, say("Up to "+lateBy(late)+" late: I was down."))
	}
	return &s
}

func loudness(l kitchen.Loudness) chat.Loudness {
	switch l {
	case kitchen.GuardPing:
		return chat.Guard
	case kitchen.DuePing:
		return chat.Due
	case kitchen.NotePing:
		return chat.Note
	case kitchen.DigestPing:
		return chat.Digest
	}
	panic("loudness without a post")
}

// addressed puts whom it rings for before what it says.
func (v PingView) addressed(head chat.Para) chat.Para {
	if v.To == nil {
		return head
	}
	return append(chat.Para{v.To, chat.Text(": ")}, head...)
}

func (v PingView) lateness() chat.Para {
	if v.Late < time.Minute {
		return nil
	}
	return say("Due " + v.clock(v.Now.Add(-v.Late)) + ", " + lateBy(v.Late) + " late: I was down.")
}

// lateBy is how late something came, in days once it is that much.
func lateBy(d time.Duration) string {
	if days := int(d / (24 * time.Hour)); days > 0 {
		return plural(days, "day")
	}
	return span(d.Truncate(time.Minute))
}

func (v PingView) clock(t time.Time) string { return near(v.Now, t) }

func (v PingView) no() string { return v.Run.No.String() }

// again is which repeat of its chain the ping is; 0 for the first.
func (v PingView) again() int {
	_, n, _ := strings.Cut(v.Ping.Key, "/again/")
	i, _ := strconv.Atoi(n)
	return i
}

func (v PingView) button(label, what string) chat.Button { return runTap(v.Run.No, label, what) }

// answers are the taps of a ping: what says that it is done, and the one that puts
// it off.
func (v PingView) answers(done, what, later string) []chat.Button {
	return []chat.Button{v.button(done, what), tap(later, "not yet")}
}

func (v PingView) text() pingText {
	switch v.Ping.Kind {
	case kitchen.StartNow:
		return v.startNow()
	case kitchen.PrepOver:
		return v.prepOver()
	case kitchen.WetGrainStands:
		return v.wetGrain()
	case kitchen.VentOver:
		return v.ventOver()
	case kitchen.HoldNearlyOver:
		return v.holdNearly()
	case kitchen.WaterShort:
		return v.waterShort()
	case kitchen.HoldOver:
		return v.holdOver()
	case kitchen.WhoIsThere:
		return v.whoIsThere()
	case kitchen.CheckZero:
		return v.checkZero()
	case kitchen.StillHot:
		return v.stillHot()
	case kitchen.ProbablyCool:
		return v.probablyCool()
	case kitchen.MeasureAgain:
		return v.measureAgain()
	case kitchen.CoolNow:
		return v.coolNow()
	case kitchen.BookingOverrun:
		return v.overrun()
	case kitchen.SoakForBooking:
		return v.soak()
	case kitchen.GaugeCheckDue:
		return v.gaugeCheck()
	case kitchen.WeeklyDigest: // never one of several: see Digest
		return pingText{head: say("**The digest of the week.**")}
	case kitchen.SteamYet:
		return v.steamYet()
	case kitchen.PressureYet:
		return v.pressureYet()
	case kitchen.LookAgain, kitchen.RestOver, kitchen.ShakeDue, kitchen.NothingSeen, kitchen.ThroughDue, kitchen.SpawnKept,
		kitchen.BagsThreeWeeks, kitchen.ShelvedMonth, kitchen.ShelvedThreeMonths:
		return pingText{head: say("**" + v.no() + ": " + pingWord(v.Ping.Kind) + ".**")} // see UnitsPing
	}
	panic("ping without words")
}
