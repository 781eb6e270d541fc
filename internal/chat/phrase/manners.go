package phrase

var mannersGrammar = grammar{
	kind:     KindManners,
	examples: []string{"hi", "thanks"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("thanks", "thank you", "thx", "ty", "cheers", "thanks a lot", "thank you very much", "many thanks", "thanks so much", "tnx",
			"thank you so much", "thanks very much", "thankyou", "much appreciated", "great thanks", "ta")
		if ok {
			return Thanks{}, d.over("bot", "ryebell", "very much", "a lot", "!", "everyone", "again"), true
		}
		d, ok = c.phrase("hi", "hello", "hey", "hi there", "hello there", "good morning", "good evening", "good afternoon", "morning", "hiya", "howdy", "heya",
			"greetings", "hey there", "evening")
		if !ok {
			return nil, c, false
		}
		return Greet{}, d.over("bot", "ryebell", "all", "everyone", "!"), true
	},
}

// String prints the greeting so that it parses back.
func (Greet) String() string { return "hi" }

// String prints the thanks so that they parse back.
func (Thanks) String() string { return "thanks" }
