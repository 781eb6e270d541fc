package phrase

var logGrammar = grammar{
	kind:     KindLog,
	examples: []string{"log", "log 12", "my runs", "runs", "story of #12"},
	match: func(c cursor) (Intent, cursor, bool) {
		if d, ok := c.over("show", "me", "list").phrase("my runs", "my log", "my last runs", "my cooks", "what did i cook", "runs of mine", "my history"); ok {
			d.plain = true
			return Log{Mine: true}, d, true
		}
		if r, ok := c.over("show", "me").token().(RunRef); ok && len(r.Ref.Units) == 0 {
			d := c.over("show", "me").use(1)
			d.plain = d.i > c.i+1
			return Log{Which: Which{Run: r.Ref.Run}}, d, c.i == 0 && d.parted().done()
		}
		d, ok := c.over("show", "me", "the", "list", "our", "what's the", "tell me the").phrase("log", "runs", "last runs", "all runs", "history", "story", "logbook", "run log", "past runs", "old runs",
			"recent runs", "logs", "what happened with", "what happened to", "how did", "show run", "the log of", "latest runs", "previous runs", "whose is", "who cooked")
		if !ok {
			return nil, c, false
		}
		needs := d.word(-1) == "with" || d.word(-1) == "to" || d.word(-1) == "did" || d.word(-1) == "is" || d.word(-1) == "cooked"
		w, e, ok := d.whichOf()
		if !ok {
			d.plain = d.used > 1
			return Log{}, d, !needs
		}
		e.plain = c.word(0) != "whose" && c.word(0) != "who" // people ask so of a dozen of anything
		return Log{Which: w}, e.maybe("go"), !needs || w != (Which{})
	},
}

// String prints the question so that it parses back.
func (l Log) String() string {
	switch {
	case l.Mine:
		return "my runs"
	case l.Which == (Which{}):
		return "log"
	}
	return "log" + l.Which.behind("of ")
}
