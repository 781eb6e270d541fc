package phrase

import (
	"strconv"
	"strings"

	"ryebell/internal/kitchen"
)

var logUnitGrammar = grammar{
	kind:     KindLogUnit,
	examples: []string{"log 12.3", "story of #12.3", "what happened with 12.3", "show me 12.3", "photos of 12.3"},
	match: func(c cursor) (Intent, cursor, bool) {
		lead := c.over("show", "show me", "give me", "tell me", "tell me about", "can i see", "let me see", "see")
		d, asked := lead.over("the", "me", "any", "all", "what's the").phrase("log", "story", "history", "logbook", "what happened with", "what happened to", "what has happened with",
			"what has happened to", "what's happened to", "what became of", "what's become of", "what's with", "what's up with", "how did", "how's", "how is", "how are",
			"photo", "photos", "pic", "pics", "picture", "pictures")
		if !asked {
			d = lead
		}
		d = d.over("of", "on", "from", "for", "about", "the", "our")
		of, e, ok := unitsAsked(d)
		if !ok {
			return nil, c, false
		}
		e = e.over("do", "go", "turn out", "doing", "going", "coming along", "coming on", "getting on", "looking", "now", "please", "pls", "so far", "again")
		e.plain = asked || lead.i > c.i
		_, alone := c.token().(RunRef) // 12.3 alone is a number
		return LogUnit{Of: of}, e, (asked || c.i == 0 && (alone || e.plain)) && e.parted().ends()
	},
}

// unitsAsked reads the units that a story is asked of: "12.3", "12.1 and 12.4",
// "12.1-4", "bag 2".
func unitsAsked(c cursor) (Meant, cursor, bool) {
	if n, d, ok := unitAlone(c); ok {
		return Meant{Units: []kitchen.UnitNo{n}}, d, true
	}
	var m Meant
	d := c
	for {
		e := d
		if len(m.Refs) > 0 {
			e = d.parted()
		}
		switch t := e.token().(type) {
		case RunRef:
			if len(t.Ref.Units) == 0 {
				return m, d, len(m.Refs) > 0
			}
			m.Refs, d = append(m.Refs, t.Ref), e.use(1)
		case Number:
			if t.Ref == nil {
				return m, d, len(m.Refs) > 0
			}
			m.Refs, d = append(m.Refs, *t.Ref), e.use(1)
		default:
			return m, d, len(m.Refs) > 0
		}
	}
}

// String prints the question so that it parses back.
func (l LogUnit) String() string {
	var of []string
	for _, r := range l.Of.Refs {
		of = append(of, r.String())
	}
	for _, n := range l.Of.Units {
		of = append(of, "unit "+strconv.Itoa(int(n)))
	}
	return "log " + strings.Join(append(of, l.Of.Names...), " and ")
}
