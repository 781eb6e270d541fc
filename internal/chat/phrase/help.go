package phrase

import (
	"fmt"

	"ryebell/internal/kitchen"
)

var helpGrammar = grammar{
	kind:     KindHelp,
	examples: []string{"help", "help cooling", "help filters", "what is r", "what does hold mean", "more to set"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("help", "help me", "halp", "/help", "how does this work", "how does it work", "how do you work", "what can you do",
			"what can i say", "what can i type", "what do you do", "commands", "instructions", "manual")
		if !ok {
			d, ok = c.phrase("start") // as platforms begin a talk
			ok = ok && c.s.text[0] == '/'
		}
		if !ok {
			return asked(c)
		}
		e := d.over("with", "on", "about", "the", "for", "me", "please", "pls")
		for _, t := range topics {
			if f, ok := e.phrase(t.words...); ok {
				return Help{Topic: t.topic}, f, true
			}
		}
		// A subject that there is no help of: where it was meant for the bot, the first page.
		if w, word := e.token().(Word); word && w.Class == Unknown && len(w.Mended) == 0 && c.i == 0 && c.word(0) == "help" && e.use(1).parted().done() {
			e = e.use(1)
			e.bare = true
			return Help{}, e, true
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
	{kitchen.TopicContamination, []string{"contamination", "contam", "contaminated", "contams", "trich", "mould", "mold", "green", "wet rot", "sour", "bacteria", "bad jars"}},
	{kitchen.TopicShelf, []string{"shelf", "shelf life", "storage", "storing", "keeping", "shelving", "stock", "oldest", "fridge", "spawn", "old jars", "moving in", "bought"}},
	{kitchen.TopicCautions, []string{"cautions", "caution", "safety", "danger", "dangers", "warnings", "risks", "safe"}},
	{kitchen.TopicKitchen, []string{"kitchen", "settings", "setting", "set up", "setup", "our kitchen", "more to set"}},
	{kitchen.TopicTyping, []string{"typing", "examples", "numbers", "what to type", "language", "writing"}},
	{kitchen.TopicUnits, []string{"units", "unit", "using", "moving", "blank", "blanks"}},
	{kitchen.TopicWatching, []string{
		"watching", "watch", "shaking", "shake", "signs", "growing", "growth", "ready", "estimates", "estimate", "percent", "photos", "photo", "pictures",
	}},
	{kitchen.TopicCultures, []string{"cultures", "culture", "plates", "plate", "syringes", "syringe", "masters", "master"}},
	{kitchen.TopicTrace, []string{"trace", "tracing", "traces", "family", "generations", "lots", "tags"}},
	{kitchen.TopicWords, []string{"words", "glossary", "terms", "meanings", "jargon"}},
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

// asked reads a subject without the word help. What people say to each other
// just so is marked.
func asked(c cursor) (Intent, cursor, bool) {
	if c.i > 0 {
		return nil, c, false
	}
	if d, ok := c.phrase("more to set", "what can i set", "what can we set", "what else can i set", "more settings"); ok {
		return Help{Topic: kitchen.TopicKitchen}, d, true
	}
	topic, d, ok := whatIs(c)
	if !ok {
		topic, d, ok = isItSafe(c)
		if !ok {
			topic, d, ok = subject(c)
		}
		d.bare = true
	}
	return Help{Topic: topic}, d, ok && d.over("please", "pls", "then").parted().done()
}

// whatIs reads "what is r", "what does hold mean".
func whatIs(c cursor) (kitchen.Topic, cursor, bool) {
	d, ok := c.phrase("what is", "what's", "whats", "what are", "what does", "what do you mean by", "what do you mean with", "what is meant by",
		"meaning of", "define", "what's meant by", "wtf is", "what means", "what do")
	if !ok {
		return 0, c, false
	}
	topic := kitchen.TopicWords
	d = d.over("a", "an", "this", "your", "that")
	e, ok := d.phrase("r", "dry", "wet", "wetted", "moisture", "hold", "a hold", "vent", "venting", "g2g", "gtg", "lc", "agar", "liquid culture", "grain to grain", "spawn",
		"psi", "mss", "ratio", "dry grain", "wetted grain", "the hold time", "gauge", "gypsum", "wbs", "milo", "a vent", "hydration", "headspace", "lcs")
	if !ok {
		topic = kitchen.TopicFilters
		e, ok = d.phrase("filter", "filters", "filter patch", "port", "ports", "injection port", "injection ports")
	}
	if !ok {
		topic = kitchen.TopicContamination
		e, ok = d.phrase("trich", "contam", "contamination", "wet rot")
	}
	return topic, e.over("mean", "means", "meaning", "stand for", "here", "then"), ok
}

// isItSafe reads what people ask of cooked grain.
func isItSafe(c cursor) (kitchen.Topic, cursor, bool) {
	d, ok := c.phrase("can i eat", "can we eat", "can you eat", "can one eat", "is it safe", "is this safe", "is that safe", "is it sterile", "is this sterile",
		"is that sterile", "is it edible", "is this edible", "are they safe", "are they sterile", "is it dangerous", "is this dangerous", "is it sterilised",
		"is it sterilized", "can it explode", "is it poisonous", "is it toxic")
	return kitchen.TopicCautions, d.over("to eat", "it", "this", "that", "them", "now", "the grain", "yet", "really"), ok
}

// subject reads a subject that is the whole of the message, by the name that the
// help shows. Jars and bags by themselves begin an order.
func subject(c cursor) (kitchen.Topic, cursor, bool) {
	for _, t := range shown {
		if d, ok := c.phrase(t.word); ok {
			return t.topic, d, true
		}
	}
	return 0, c, false
}

// shown are the subjects by the names that the help shows.
var shown = [...]struct {
	word  string
	topic kitchen.Topic
}{
	{"filters", kitchen.TopicFilters},
	{"filters and ports", kitchen.TopicFilters},
	{"hydration", kitchen.TopicHydration},
	{"the cook", kitchen.TopicCook},
	{"cooling", kitchen.TopicCooling},
	{"inoculating", kitchen.TopicInoculating},
	{"inoculation", kitchen.TopicInoculating},
	{"contamination", kitchen.TopicContamination},
	{"shelf life", kitchen.TopicShelf},
	{"shelf", kitchen.TopicShelf},
	{"cautions", kitchen.TopicCautions},
	{"typing", kitchen.TopicTyping},
	{"words", kitchen.TopicWords},
	{"ports", kitchen.TopicFilters},
	{"stop", 0},
	{"redo", 0},
	{"quit", 0},
	{"menu", 0},
}
