package phrase

var boardGrammar = grammar{
	kind:     KindBoard,
	examples: []string{"who's cooking", "now", "what's on"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("who has", "who's got", "whos got", "who's watching", "whos watching", "who is watching", "who's on", "whos on", "who is on", "who is cooking", "who's cooking")
		if _, e, named := d.whichOf(); ok && named && e.i > d.i && !isWhen(e.token()) {
			e.plain = true
			return Board{}, e, true
		}
		return askBoard(c)
	},
}

// isWhen reports whether a token is a time.
func isWhen(t Token) bool {
	switch t.(type) {
	case When, Interval:
		return true
	}
	return false
}

var askBoard = fixed(Board{}, "status", "what's the status", "whats the status", "who's cooking", "whos cooking", "who is cooking", "who cooks", "whose cooking", "who's cooking what", "who is cooking what", "now",
	"whats cooking", "what's cooking", "what is cooking", "what's on", "whats on", "what is on", "board", "the board", "who's cooking now",
	"whos cooking now", "anything on the stove", "anything cooking", "what's on the stove", "whats on the stove", "anything on the stove right now",
	"anything on the stove rn", "who has the pot on", "show the board", "who's on")

// String prints the question so that it parses back.
func (Board) String() string { return "who's cooking" }
