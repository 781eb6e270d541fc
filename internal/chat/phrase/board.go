package phrase

var boardGrammar = grammar{
	kind:     KindBoard,
	examples: []string{"who's cooking", "now", "what's on", "what is the big pot doing"},
	match: func(c cursor) (Intent, cursor, bool) {
		if in, d, ok := doing(c); ok {
			return in, d, true
		}
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

// doing reads "what is the big pot doing", "how is 12 doing".
func doing(c cursor) (Intent, cursor, bool) {
	d, ok := c.phrase("what is", "what's", "whats", "how is", "how's", "hows", "what does", "state of", "status of", "how far is", "how are")
	if !ok {
		return nil, c, false
	}
	w, d, named := d.whichOf()
	of := c.word(1) == "of"
	e, ok := d.phrase("doing", "doing now", "up to", "at", "at now", "doing right now", "getting on", "coming along", "do", "along")
	if ok {
		d = e
	}
	d.plain = true
	return Board{Which: w}, d, named && w != (Which{}) && (ok || of) && d.over("please", "pls").parted().ends()
}

// String prints the question so that it parses back.
func (b Board) String() string {
	switch {
	case b.Which.Run != 0:
		return "what is " + b.Which.Run.String() + " doing"
	case b.Which != (Which{}):
		return "what is" + b.Which.behind("") + " doing"
	}
	return "who's cooking"
}
