package phrase

var undoGrammar = grammar{
	kind:     KindUndo,
	examples: []string{"undo", "undo that", "scratch that"},
	match: fixed(Undo{}, "undo", "undo that", "undo it", "undo this", "undo the last", "undo last", "undo the last one", "undo my last", "scratch that",
		"scratch it", "take that back", "take it back", "strike that", "take back that", "i take that back"),
}

// String prints the wish so that it parses back.
func (Undo) String() string { return "undo" }

// fixed makes the match of a grammar of fixed phrases.
func fixed(in Intent, phrases ...string) func(cursor) (Intent, cursor, bool) {
	return func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase(phrases...)
		return in, d.maybe("please", "pls"), ok
	}
}
