package wording

import (
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// coolLimitChanged says from when on grain counts as cool.
func coolLimitChanged(c kitchen.CoolLimitIs, after kitchen.Settings) []chat.Block {
	now := after.CoolLimitFor(c.Culture)
	head := say("Cool is **" + warmth(c.Temp) + " or less** from now on.")
	if c.Culture != "" {
		head = say("**"+warmth(c.Temp)+" or less** for {} from now on.", c.Culture)
	}
	out := []chat.Block{head}
	if now < c.Temp {
		out = append(out, say("The lower "+warmth(now)+" goes on to count."))
	}
	if after.NeverSoCool(now) {
		out = append(out, say("**Caution**: your room is "+warmth(after.RoomTemp())+". Grain in it gets no colder."))
	}
	return out
}

// coolLimitUndone names a limit that was taken back, and the one that holds now.
func coolLimitUndone(c kitchen.CoolLimitIs, now kitchen.Settings) string {
	of := ""
	if c.Culture != "" {
		of = " for " + c.Culture
	}
	return "cool at " + warmth(c.Temp) + of + ". Now: " + warmth(now.CoolLimitFor(c.Culture)) + "."
}

// coolLimits lists the limits that the collective has set.
func coolLimits(s kitchen.Settings) []chat.Block {
	var out []chat.Block
	for _, l := range s.CoolLimits {
		if l.Culture == "" {
			out = append(out, say("Cool is "+warmth(s.CoolLimit())+" or less."))
			continue
		}
		out = append(out, say("For {}: "+warmth(s.CoolLimitFor(l.Culture))+" or less.", l.Culture))
	}
	return out
}

// killsCulture says why a limit is not taken.
func killsCulture(r kitchen.KillsCulture) chat.Post {
	return lines("**"+warmth(r.Limit)+" kills**: a culture put on warm grain dies. At most "+warmth(kitchen.MaxCoolLimit)+" (common practice, no source). Nothing changed.",
		"Like: `we inoculate below 25C`")
}
