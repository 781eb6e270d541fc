package phrase

import (
	"slices"

	"ryebell/internal/kitchen"
)

var logUnitGrammar = grammar{
	kind:     KindLogUnit,
	examples: []string{"log 12.3", "story of #12.3", "what happened with 12.3", "show me 12.3", "photos of 12.3", "story of the bags of 12"},
	match: func(c cursor) (Intent, cursor, bool) {
		lead := c.over("show", "show me", "give me", "tell me", "tell me about", "can i see", "let me see", "see")
		d, asked := lead.over("the", "me", "any", "all", "what's the").phrase("log", "story", "history", "logbook", "what happened with", "what happened to", "what has happened with",
			"what has happened to", "what's happened to", "what became of", "what's become of", "what's with", "what's up with", "whose is", "whose are", "who made", "who inoculated", "who did", "how did", "how's", "how is", "how are",
			"photo", "photos", "pic", "pics", "picture", "pictures")
		if !asked {
			d = lead
		}
		d = d.over("of", "on", "from", "for", "about", "the", "our")
		of, e, ok := d.meant(Meant{})
		if !ok || !of.unitsOnly() || !of.sure && len(of.Units) == 0 {
			return nil, c, false
		}
		e = e.over("do", "go", "turn out", "doing", "going", "coming along", "coming on", "getting on", "looking", "now", "please", "pls", "so far", "again")
		e.plain = asked || lead.i > c.i
		_, alone := c.token().(RunRef) // 12.3 alone is a number
		return LogUnit{Of: of.Meant}, e, (asked || c.i == 0 && (alone || e.plain)) && e.parted().ends()
	},
}

// unitsOnly reports whether no run as a whole is among what is meant.
func (m Meant) unitsOnly() bool {
	narrowed := m.Vessel != 0 || m.State != 0 || m.Rest || len(m.Except) > 0
	return narrowed || !slices.ContainsFunc(m.Refs, func(r kitchen.Ref) bool { return len(r.Units) == 0 })
}

// String prints the question so that it parses back.
func (l LogUnit) String() string { return "log " + l.Of.String() }
