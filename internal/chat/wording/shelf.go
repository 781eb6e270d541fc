package wording

import (
	"cmp"
	"slices"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// shelf says how old one run on the shelf is, and what to do with it.
func (v PingView) shelf() pingText {
	t := pingText{
		head:    say("**" + v.no() + ", " + limitAge(v.Ping.Kind) + " on the shelf**: " + shelved(v.Run, v.Now) + "."),
		more:    []chat.Para{say(limitAdvice(v.Ping.Kind, v.Run))},
		buttons: []chat.Button{v.gone()},
	}
	if v.Run.Stage == kitchen.StageCooling {
		t.more = append(t.more, say("Nobody said when it was cool: I count from two days after zero."))
	}
	t.more = append(t.more, say("Used, given or thrown? Say `"+goneOf(v.Run.No)+"`"))
	return t
}

// shelfPost says several that came of age on one day, the oldest first. What the
// screen has no room for is counted.
func shelfPost(views []PingView) chat.Post {
	for n := len(views); ; n-- {
		s := shelfSheet(views, n)
		if n == 1 || s.whole() {
			return s.post(chat.Note)
		}
	}
}

func shelfSheet(views []PingView, n int) *sheet {
	var s sheet
	s.add(must, say("**On the shelf, time to look:**"))
	var late time.Duration
	var taps []chat.Button
	bags, short := false, false
	for i, v := range views {
		late = max(late, v.Late)
		bags, short = bags || hasBags(v.Run.Order), short || !heldWhole(v.Run)
		if i < n {
			s.add(must, say("**"+v.no()+", "+limitAge(v.Ping.Kind)+"**: "+shelved(v.Run, v.Now)+"."))
		}
		if i < maxButtons {
			taps = append(taps, v.gone())
		}
	}
	if n < len(views) {
		s.add(must, say("And "+whole(float64(len(views)-n))+" more: `log`"))
	}
	if short {
		s.add(must, say("**No culture on what wasn't held whole**: out, unopened."))
	}
	if bags {
		s.add(should, say("Bags dry out: weigh one, or look for loose grain."))
	}
	if views[0].Ping.Kind == kitchen.ShelvedThreeMonths {
		s.add(should, say("Three months: use now or throw out. Bulging, leaking or foul: out unopened."))
	}
	if late >= time.Minute {
		s.add(must, say("Up to "+lateBy(late)+" late: I was down."))
	}
	s.then(say("Next: use the oldest first. Gone? `"+goneOf(views[0].Run.No)+"`"), taps...)
	return &s
}

// oldestLimit keeps of each run the highest age, the highest first; of one age the
// run that was begun first.
func oldestLimit(views []PingView) []PingView {
	views = slices.Clone(views)
	slices.SortStableFunc(views, func(a, b PingView) int {
		return cmp.Or(cmp.Compare(b.Ping.Kind, a.Ping.Kind), a.Run.Begun.Compare(b.Run.Begun), cmp.Compare(a.Run.No, b.Run.No))
	})
	var out []PingView
	for _, v := range views {
		if !slices.ContainsFunc(out, func(o PingView) bool { return o.Run.No == v.Run.No }) {
			out = append(out, v)
		}
	}
	return out
}

// gone is the tap that says that a run has left the shelf.
func (v PingView) gone() chat.Button { return goneTap(v.Run.No) }

func goneTap(no kitchen.RunNo) chat.Button { return tap(no.String()+" is gone", goneOf(no)) }

func goneOf(no kitchen.RunNo) string { return no.String() + " is gone" }

// shelved is what stands of a run: 3 bags of 5 lb, rye, cooked 2 Mar; and what was
// short of its hold.
func shelved(r kitchen.Run, now time.Time) string {
	return orderWords(r.Order) + ", cooked " + dateOf(now, r.Begun) + notHeld(r)
}

// notHeld says behind a run that it was not held whole, as far as anybody saw.
func notHeld(r kitchen.Run) string {
	if heldWhole(r) {
		return ""
	}
	return ", " + ending(r)
}

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

func hasBags(o kitchen.Order) bool {
	return slices.ContainsFunc(o.Items, func(it kitchen.Item) bool { return it.Container.Vessel == kitchen.Bag })
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

// limitAdvice is what to do with a run of an age: it isn't bad for being old, but
// what is old is looked at before it is used.
func limitAdvice(k kitchen.PingKind, r kitchen.Run) string {
	switch {
	case !heldWhole(r):
		return "**No culture on it**: nobody saw the hold whole. Throw it out unopened."
	case k == kitchen.ShelvedThreeMonths:
		return "Use it now or throw it out. Bulging, leaking or foul: out unopened."
	case hasBags(r.Order):
		return "Bags dry out: weigh one, or look for loose grain. Then use it, or throw it out."
	}
	return "Use it before newer ones, or throw it out."
}
