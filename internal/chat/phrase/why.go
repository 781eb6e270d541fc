package phrase

var whyGrammar = grammar{
	kind:     KindWhy,
	examples: []string{"why", "why 682?", "show the working", "how did you get 682"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("why", "why is that", "why that", "why so", "how come", "show the working", "show me the working", "show working", "the working",
			"show your working", "show me your working", "working", "how did you get", "how did you get that", "how do you get", "how do you get that",
			"where does", "where do", "explain", "explain that", "show the formula", "show the maths", "show the math", "why is it", "why does it say",
			"how is that worked out", "where does that come from")
		if !ok {
			return nil, c, false
		}
		d = d.over("that", "the", "is it", "it", "only")
		switch t := d.token().(type) {
		case Number:
			if t.Value > 0 {
				return Why{Number: t.Value}, d.use(1).over("come from", "from"), true
			}
		case Period:
			if t.Length > 0 {
				return Why{Number: t.Length.Minutes()}, d.use(1).over("come from", "from"), true
			}
		case Quantity:
			if t.Number > 0 {
				return Why{Number: t.Number}, d.use(1).over("come from", "from"), true
			}
		}
		if w := d.word(-1); w == "where" || w == "does" || w == "do" || w == "get" {
			return nil, c, false
		}
		return Why{}, d, true
	},
}

// String prints the question so that it parses back.
func (w Why) String() string {
	if w.Number == 0 {
		return "why"
	}
	return "why " + plain(w.Number)
}
