package phrase

import (
	"fmt"

	"ryebell/internal/kitchen"
)

var helpGrammar = grammar{
	kind:     KindHelp,
	examples: []string{"help", "help cooling", "help filters"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("help", "help me", "halp", "/help", "how does this work", "how does it work", "how do you work", "what can you do",
			"what can i say", "what can i type", "what do you do", "commands", "instructions", "manual")
		if !ok {
			d, ok = c.phrase("start") // as platforms begin a talk
			ok = ok && c.s.text[0] == '/'
		}
		if !ok {
			return nil, c, false
		}
		e := d.over("with", "on", "about", "the", "for", "me", "please", "pls")
		for _, t := range topics {
			if f, ok := e.phrase(t.words...); ok {
				return Help{Topic: t.topic}, f, true
			}
		}
		return Help{}, d, true
	},
}

// topics are the subjects of the help and what they are called; the first word
// is the one printed.
var topics = [...]struct {
	topic kitchen.Topic
	words []string
}{
	{kitchen.TopicJars, []string{"jars", "jar", "lids", "lid", "quarts", "quart", "pints", "pint", "jar filling"}},
	{kitchen.TopicBags, []string{"bags", "bag", "folding", "gussets", "sealing", "sealing bags"}},
	{kitchen.TopicFilters, []string{"filters", "filter", "ports", "port", "filter patch", "patch", "filters and ports", "injection ports", "injection port"}},
	{kitchen.TopicHydration, []string{"hydration", "water", "moisture", "ratio", "soaking", "soak", "simmering", "wetting", "grain"}},
	{kitchen.TopicCook, []string{
		"cook", "cooking", "the cook", "pressure", "hold", "holding", "steam", "venting", "vent", "sterilising", "sterilizing",
		"sterilization", "sterilisation", "cooker", "pot", "pressure cooker", "elevation", "altitude",
	}},
	{kitchen.TopicCooling, []string{"cooling", "cool", "cooldown", "cool down", "cooling down", "temperature"}},
	{kitchen.TopicInoculating, []string{"inoculating", "inoculation", "inoculate", "lc", "agar", "g2g", "liquid culture", "grain to grain", "spores", "routes"}},
	{kitchen.TopicContamination, []string{"contamination", "contam", "contaminated", "contams", "trich", "mould", "mold", "green", "wet rot"}},
	{kitchen.TopicShelf, []string{"shelf", "shelf life", "storage", "storing", "keeping", "shelving"}},
	{kitchen.TopicCautions, []string{"cautions", "caution", "safety", "danger", "dangers", "warnings", "risks", "safe"}},
	{kitchen.TopicKitchen, []string{"kitchen", "settings", "setting", "set up", "setup", "our kitchen"}},
	{kitchen.TopicTyping, []string{"typing", "words", "examples", "numbers", "units", "what to type", "language", "writing"}},
}

// String prints the question so that it parses back.
func (h Help) String() string {
	if h.Topic == 0 {
		return "help"
	}
	for _, t := range topics {
		if t.topic == h.Topic {
			return "help " + t.words[0]
		}
	}
	panic(fmt.Sprintf("phrase: no topic %d", h.Topic))
}
