package phrase

var addGrammar = grammar{
	kind:     KindAdd,
	examples: []string{"also 2 pints", "+ 2 pints", "and 7 quart jars lc", "add 3 bags 5lb agar"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("add", "add in", "add on", "another", "i also need", "we also need", "also add", "put in")
		if !ok && !c.joins() {
			return nil, c, false
		}
		w, d, ok := readWish(d.maybe("the", "some"))
		if !ok || w.startAt != nil {
			return nil, c, false
		}
		d.near = w.near
		d.ask = w.question(func(w wish) string { return "also " + w.String() })
		return Add{Order: w.order(), OutBy: w.outBy}, d, true
	},
}

// String prints the wish so that it parses back.
func (a Add) String() string { return "also " + orderText(a.Order) + outByText(a.OutBy) }

// joins reports whether nothing stands before the place at hand but a word or
// sign that joins what follows to what was said before: "also", "+". The usual
// order may stand before it.
func (c cursor) joins() bool {
	joined := false
	for i := c.i - 1; i >= 0; i-- {
		switch c.s.said[i] {
		case "also", "and", "plus", "+", "&":
			joined = true
		case "ok", "okay", "oh", "so", "please", "hey", ",", "then":
		case "usual":
			return joined
		default:
			return false
		}
	}
	return joined
}
