package phrase

import (
	"slices"
	"strings"
)

var planItGrammar = grammar{
	kind:     KindPlanIt,
	examples: []string{"plan it", "plan that, out by 20:30", "in the small pot"},
	match: func(c cursor) (Intent, cursor, bool) {
		if in, d, ok := inPot(c); ok {
			return in, d, true
		}
		d, ok := c.over("ok", "yes", "let's", "lets", "then").phrase("plan it", "plan that", "plan this", "plan them", "plan these", "plan those", "plan it then",
			"make that plan", "plan it out", "show the plan", "show me the plan", "the plan", "the plan again", "plan again")
		if !ok {
			return nil, c, false
		}
		d.bare = d.word(-2) == "the"
		by, d := d.over("please", "pls", "again", "then").maybeOutBy()
		return PlanIt{OutBy: by}, d, true
	},
}

// inPot reads "in the small pot", "small pot", which says where a plan is to go.
func inPot(c cursor) (Intent, cursor, bool) {
	d := c.over("ok", "in", "it's", "its", "for", "with", "use", "using", "we use", "i use", "i'll use", "take", "the", "our", "no", "not", "make it", "on")
	if c.i > 0 {
		return nil, c, false
	}
	name, d, ok := knownCooker(d)
	d = d.over("please", "pls", "then", "instead", "rather")
	d.bare = true // people name a pot to each other, too
	return PlanIt{Cooker: name}, d, ok && d.parted().done() && !d.asks()
}

// knownCooker reads the name of a cooker that the collective has, or "the small one".
func knownCooker(c cursor) (string, cursor, bool) {
	name, d, ok := cookerRef(c)
	known := slices.ContainsFunc(c.s.names.Cookers, func(n string) bool { return strings.EqualFold(n, name) })
	return name, d, ok && known
}

// String prints the wish so that it parses back.
func (p PlanIt) String() string {
	if p.Cooker != "" {
		return "in the " + p.Cooker
	}
	return "plan it" + outByText(p.OutBy)
}
