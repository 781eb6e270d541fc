package wording

import (
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// restChanged says how long cooked grain rests from now on, and what for.
func restChanged(c kitchen.RestIs) []chat.Block {
	if c.Days == 0 {
		return []chat.Block{say("**No rest** before inoculating from now on.")}
	}
	return []chat.Block{
		say("Cooked grain rests **" + plural(c.Days, "day") + "** before a culture goes on it."),
		say("I tell you when it is over. What soured by then was the cook, not the culture."),
	}
}

// restNow is the rest in a kitchen as it is.
func restNow(s kitchen.Settings) string {
	if s.RestDays == 0 {
		return "none"
	}
	return plural(s.RestDays, "day")
}
