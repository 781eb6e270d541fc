package phrase

var planItGrammar = grammar{
	kind:     KindPlanIt,
	examples: []string{"plan it", "plan that, out by 20:30"},
	match: func(c cursor) (Intent, cursor, bool) {
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

// String prints the wish so that it parses back.
func (p PlanIt) String() string { return "plan it" + outByText(p.OutBy) }
