package wording

import (
	"strconv"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// BegunView is a run that was just put on, or whose preparation just started.
type BegunView struct {
	Run  kitchen.Run
	Plan kitchen.Plan
	// Load is which load of the plan it is, from 1.
	Load int
	// Gear is what to look at before it is lit; nil for nothing.
	Gear *kitchen.GearAsk
	// Beside is another run that has not left the same cooker; zero for none.
	Beside kitchen.Run
	// Booked is somebody else's booking that it runs into if it is lit now; zero for
	// none.
	Booked kitchen.Booking
	// Now is when it was said, in the kitchen's zone.
	Now   time.Time
	Who   func(kitchen.MemberNo) string
	First func(caution string) Newness
}

// Begun says that an order became a run: its number, whose it is, what to do
// first.
func Begun(v BegunView) chat.Post {
	r := v.Run
	run := RunView{Run: r, Now: v.Now, Who: v.Who, First: v.First}
	var s sheet
	s.add(must, v.whose())
	s.add(should, say(capital(orderWords(r.Order))+v.loads()+"."))
	if o := v.Beside; o.No != 0 {
		s.add(must, v.beside(o))
	}
	if b := v.Booked; b.No != 0 {
		s.add(must, say("**{} booked it "+bookingSpan(v.Now, b)+"**: ask {} first.", called(v.Who, b.For), called(v.Who, b.For)))
	}
	s.add(must, v.water())
	s.add(must, v.gear())
	if r.Hold.Short() {
		s.add(must, say("**Caution**, on the record: hold "+minutes(r.Hold.Time)+", shorter than the default here, "+minutes(r.Hold.Usual)+"."))
	} else if r.Hold.Time > 0 {
		s.add(may, say("Then "+onGauge(r)+" for **"+minutes(r.Hold.Time)+"**."))
	}
	v.next(&s, run)
	if c := say("The maker's manual comes first. Stay in earshot while the flame is on."); s.fits(c) && v.First != nil && v.First(cautionEarshot) == New {
		s.add(should, c)
	}
	return s.post(chat.Answer)
}

// Mended says what a run that is on holds now, when that was corrected, and how it
// stands.
func Mended(v RunView, was kitchen.Order) chat.Post {
	var s sheet
	s.add(must, say("**"+v.no()+"** changed: "+orderWords(v.Run.Order)+", was "+orderWords(was)+"."))
	v.stage(&s)
	s.undoable()
	return s.post(chat.Answer)
}

func (v BegunView) whose() chat.Para {
	no := "**Run " + v.Run.No.String() + "**"
	cooker := cookerOf(v.Run.Cooker)
	if v.Run.Cook == 0 {
		return say(no+" in {}. **Nobody is named** to watch it.", cooker)
	}
	return say(no+" in {} is yours, {}.", cooker, called(v.Who, v.Run.Cook))
}

func (v BegunView) loads() string {
	if n := len(v.Plan.Loads.Each); n > 1 && v.Load > 0 {
		return "; load " + strconv.Itoa(v.Load) + " of " + strconv.Itoa(n)
	}
	return ""
}

// beside says that another run has the cooker, and about how long.
func (v BegunView) beside(o kitchen.Run) chat.Para {
	text := "**" + o.No.String() + " of {} is in it too**: " + stageWord(o.Stage)
	if frees, on := o.FreesCooker(v.Now); on && frees.After(v.Now) {
		text += ", until about " + near(v.Now, frees)
	}
	return say(text+".", called(v.Who, o.Cook))
}

// water is what goes under the rack; a load that follows tops it up first.
func (v BegunView) water() chat.Para {
	w := litres(v.Run.Water.In)
	if soaksFirst(v.Run) && v.Run.Follows == 0 {
		return say("When it is lit: **" + w + " water** under the rack.")
	}
	if v.Run.Follows != 0 {
		return say("First: **top up the water to " + w + "**, " + v.Run.Follows.String() + " boiled some off. Then rack, load, lid.")
	}
	return say("First: **" + w + " water**, rack, load, lid.")
}

// gear asks for what is to be looked at before this cook.
func (v BegunView) gear() chat.Para {
	if v.Gear == nil {
		return nil
	}
	return gearWords(*v.Gear)
}

// gearWords asks for parts to be looked at, those that failed first.
func gearWords(g kitchen.GearAsk) chat.Para {
	var failed, parts []string
	for _, p := range g.Failed {
		failed = append(failed, partWord(p))
	}
	for _, p := range g.Parts {
		parts = append(parts, partWord(p))
	}
	text := ""
	if len(failed) > 0 {
		text = "**" + capital(listed(failed)) + " failed last time**: mended?"
	}
	if len(parts) > 0 {
		if text != "" {
			text += " "
		}
		text += "First cook of the day: look at " + listed(parts) + "."
	}
	return say(text)
}

func partWord(p kitchen.Part) string {
	switch p {
	case kitchen.Gasket:
		return "gasket"
	case kitchen.Vent:
		return "vent"
	case kitchen.Gas:
		return "gas"
	case kitchen.Gauge:
		return "gauge"
	case kitchen.Stove:
		return "stove"
	case kitchen.Valve:
		return "safety valve"
	}
	panic("part without words")
}

// next is the first step of this run: somebody to watch it, its preparation, or
// the flame.
func (v BegunView) next(s *sheet, run RunView) {
	var buttons []chat.Button
	next := "Next: light it and say `heat on`."
	if soaksFirst(v.Run) {
		next = "Next: rinse and soak; or is it soaked? Light it."
		buttons = append(buttons, run.button("Soaking", "soaking"))
	}
	buttons = append(buttons, run.button("Heat on", "heat on"))
	if v.Run.Cook == 0 {
		next = "Next: who watches it? Then light it."
		buttons = append([]chat.Button{tap("I've got it", gotIt(v.Run.No))}, buttons...)
	}
	if v.Gear != nil && len(buttons) < maxButtons {
		buttons = append(buttons, tap("Gear is fine", gearFine(*v.Gear)))
	}
	s.then(say(next), buttons...)
	s.undoable()
}

// gearFine is the sentence that says all of it was looked at.
func gearFine(g kitchen.GearAsk) string {
	var parts []string
	for _, p := range append(append([]kitchen.Part{}, g.Failed...), g.Parts...) {
		parts = append(parts, partWord(p))
	}
	return "checked " + listed(parts)
}

// soaksFirst reports whether the run may begin with soaking.
func soaksFirst(r kitchen.Run) bool {
	for _, c := range r.Next() {
		if c.Kind == kitchen.KindPrepBegun && c.Prep == kitchen.Soaking {
			return true
		}
	}
	return false
}
