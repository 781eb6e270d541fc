package wording

import (
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// startNow says that it is time to light an order.
func (v PingView) startNow() pingText {
	if v.Now.After(v.OutBy) {
		return pingText{
			head:    say("**too late now** to be out by " + v.clock(v.OutBy) + ": " + orderWords(v.Order) + "."),
			buttons: []chat.Button{tap("Cook it", "cook it")},
		}
	}
	t := pingText{
		head:    say("**light it now** for " + orderWords(v.Order) + ", out by " + v.clock(v.OutBy) + "."),
		buttons: []chat.Button{tap("Cook it", "cook it")},
	}
	if v.Now.Sub(v.Ping.Due) >= time.Minute {
		t.more = []chat.Para{say("It comes out that much later.")}
	}
	return t
}

func (v PingView) prepOver() pingText {
	p, _, on := v.Run.PrepDue()
	if !on {
		return pingText{head: say("**" + v.no() + "**: the time of this step is over.")}
	}
	run := RunView{Run: v.Run, Now: v.Now}
	t := pingText{
		head: say("**" + v.no() + " " + prepWord(p.What) + " is done** by the usual time, since " + v.clock(p.From) + "."),
		more: []chat.Para{say("Next: " + run.prepNext() + ".")},
	}
	if v.again() > 0 {
		t.head = say("**" + v.no() + ": " + prepWord(p.What) + " done?** On the flame since " + v.clock(p.From) + "; dry, it scorches.")
		t.more = nil
	}
	for _, c := range v.Run.Next() {
		if b, ok := run.choice(c); ok && len(t.buttons) < 1 {
			t.buttons = append(t.buttons, b)
		}
	}
	t.buttons = append(t.buttons, tap("Not yet", "not yet"))
	if v.Run.Simmers() {
		t.act = v.simmered(v.no() + " simmered")
	}
	return t
}

// simmered is the tap that says that the grain is out of its pot's heat.
func (v PingView) simmered(label string) chat.Button {
	return v.button(label, prepWord(kitchen.Simmering)+" done")
}

func (v PingView) wetGrain() pingText {
	return pingText{
		head:    say("**" + v.no() + ": wet grain stands too long.** Cook it now, or into the fridge: it sours."),
		more:    []chat.Para{say("Sour smell, bubbles, slime: throw it out.")},
		buttons: []chat.Button{v.button("Heat on", "heat on"), tap("Not yet", "not yet")},
	}
}

func (v PingView) probablyCool() pingText {
	return pingText{
		head:    v.coolByNow(),
		more:    []chat.Para{say("Between two of them; never pierce or open. Then say it, like `" + v.no() + " 26C`")},
		buttons: []chat.Button{tap("Still warm", "not yet")},
	}
}

// coolByNow is how sure it is that a load is cool, where that can be told.
func (v PingView) coolByNow() chat.Para {
	c, known := v.Run.Cooling()
	if !known {
		return say("**" + v.no() + ": measure one.** Nobody saw enough to say when it is cool.")
	}
	chance := float64(c.Chance(v.Now))
	switch {
	case chance < 0.5:
		return say("**" + v.no() + ": measure one.** " + inTen(chance) + " such loads are cool by now.")
	case chance < 0.95:
		return say("**" + v.no() + " probably cool: measure one.** " + inTen(chance) + " such loads are by now.")
	}
	return say("**" + v.no() + " nearly surely cool: measure one.**")
}

func (v PingView) measureAgain() pingText {
	last, _ := v.Run.SettlingReading()
	return pingText{
		head:    say("**" + v.no() + ": measure once more.** It read " + warmth(last.Temp) + " at " + v.clock(last.At) + "; the middle lags."),
		more:    []chat.Para{say("Say it, like `" + v.no() + " 26C`")},
		buttons: []chat.Button{tap("Not yet", "not yet")},
	}
}

func (v PingView) coolNow() pingText {
	return pingText{head: coolByReading(v.Run, v.Now), more: []chat.Para{onceCool(v.Run, v.Now)}}
}

func (v PingView) overrun() pingText {
	frees, _ := v.Run.FreesCooker(v.Now)
	return pingText{
		head: say("**"+v.no()+" keeps {} until about "+v.clock(round10(frees))+"**; your booking is "+bookingSpan(v.Now, v.Booking)+".",
			cookerOf(v.Booking.Cooker)),
		buttons: []chat.Button{tap("Bookings", "bookings")},
	}
}

func (v PingView) soak() pingText {
	return pingText{
		head:    say("**Soak grain tonight** for {}, "+bookingSpan(v.Now, v.Booking)+".", cookerOf(v.Booking.Cooker)),
		more:    []chat.Para{say("Rinse it first; water well over the grain.")},
		buttons: []chat.Button{tap("Bookings", "bookings")},
	}
}

func (v PingView) gaugeCheck() pingText {
	return pingText{
		head:    say("**Check the gauge of {}**: a year since the last time. More than 2"+nb+"psi off: replace it.", cookerOf(v.Cooker)),
		more:    []chat.Para{say("Off? Say by how much, like `gauge reads 1 low`")},
		buttons: []chat.Button{tap("Gauge is fine", "checked the gauge")},
	}
}

// bookingSpan is when a booking is: Sat 10:00 to 14:00.
func bookingSpan(now time.Time, b kitchen.Booking) string {
	return near(now, b.From) + " to " + until(now, b.From, b.To)
}
