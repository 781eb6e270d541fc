package wording

import (
	"strings"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// prepState says until when a step of the preparation goes on, or how long wet
// grain keeps once it is over.
func (v RunView) prepState() chat.Para {
	r := v.Run
	if p, due, on := r.PrepDue(); on {
		return say("**" + v.no() + " " + prepWord(p.What) + " until " + v.clock(due) + "**, since " + v.clock(p.From) + "; a usual time.")
	}
	if n := len(r.Preps); n > 0 {
		return say("**" + v.no() + ": " + prepWord(r.Preps[n-1].What) + " done** " + v.clock(r.Preps[n-1].To) + ".")
	}
	return say(v.no() + " is being prepared.")
}

// preparing warns of wet raw grain and offers the next step of the preparation.
func (v RunView) preparing(s *sheet) {
	if until, stands := v.Run.WetUntil(); stands {
		s.add(should, say("Wet grain sours from about "+v.clock(round10(until))+" on."))
	}
	var buttons []chat.Button
	for _, c := range v.Run.Next() {
		if b, ok := v.choice(c); ok && len(buttons) < 2 {
			buttons = append(buttons, b)
		}
	}
	s.then(say("Next: "+v.prepNext()+"."), buttons...)
}

// choice is the button of something that may be said next.
func (v RunView) choice(c kitchen.Choice) (chat.Button, bool) {
	if c.Kind == kitchen.KindPrepBegun {
		return v.button(capital(prepWord(c.Prep)), prepWord(c.Prep)), true
	}
	if c.Kind == kitchen.KindPrepEnded {
		return v.button(capital(prepWord(c.Prep))+" done", prepWord(c.Prep)+" done"), true
	}
	return v.button("Heat on", "heat on"), c.Kind == kitchen.KindHeatOn
}

// prepNext is what comes after the step of the preparation that goes on or ended
// last.
func (v RunView) prepNext() string {
	n := len(v.Run.Preps)
	if n == 0 {
		return "soak it, or fill and light"
	}
	switch v.Run.Preps[n-1].What {
	case kitchen.Soaking:
		return "rinse, then simmer until a kernel crushes between thumb and nail"
	case kitchen.Simmering:
		if v.Run.Preps[0].What == kitchen.Simmering { // measured water, simmered until it is gone
			return "when the water is gone fill, loosely"
		}
		return "drain while hot, before kernels burst"
	case kitchen.Draining:
		return "let it dry until the surface is dull"
	case kitchen.Drying, 0:
		return "fill, then light the cooker"
	}
	panic("preparation without words")
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
