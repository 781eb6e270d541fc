package phrase

var boardGrammar = grammar{
	kind:     KindBoard,
	examples: []string{"who's cooking", "now", "what's on"},
	match: fixed(Board{}, "who's cooking", "whos cooking", "who is cooking", "who cooks", "whose cooking", "who's cooking what", "who is cooking what", "now",
		"whats cooking", "what's cooking", "what is cooking", "what's on", "whats on", "what is on", "board", "the board", "who's cooking now",
		"whos cooking now", "anything on the stove", "anything cooking", "what's on the stove", "whats on the stove", "anything on the stove right now",
		"anything on the stove rn", "who has the pot on", "show the board", "who's on"),
}

// String prints the question so that it parses back.
func (Board) String() string { return "who's cooking" }
