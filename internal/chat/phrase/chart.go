package phrase

// Chart asks for a picture of how a run cools.
type Chart struct{ Which Which }

// TimesRecord asks how often the times that were forecast held.
type TimesRecord struct{}

func (Chart) intent()       {}
func (TimesRecord) intent() {}

var chartGrammar = grammar{
	kind:     KindChart,
	examples: []string{"chart", "chart 12", "show me the curve of 12", "graph #12"},
	match: func(c cursor) (Intent, cursor, bool) {
		lead := c.over("show", "show me", "me", "us", "the", "a", "draw", "can i see", "can i have", "give me", "send", "see", "i want", "as")
		d, ok := lead.phrase("chart", "graph", "curve", "cooling curve", "cooling chart", "temperature curve", "temperature chart", "cooling graph", "plot", "graph it", "plot it", "chart it")
		if !ok {
			return nil, c, false
		}
		d = d.over("of", "for", "please", "pls")
		w, e, named := d.whichOf()
		if named {
			d = e.over("please", "pls", "cooling", "cool", "cooling down")
		} else if e, ok := d.phrase("cooling", "the cooling", "it", "the cooldown", "the temperature"); ok {
			d = e
		}
		d.plain = w != (Which{}) || c.length("cooling curve") > 0
		return Chart{w}, d, d.parted().ends()
	},
}

// String prints the wish so that it parses back.
func (p Chart) String() string { return "chart" + p.Which.behind("of ") }

var timesGrammar = grammar{
	kind:     KindTimes,
	examples: []string{"how good are your times", "how often are you right", "can i trust your times", "are your times any good"},
	match: func(c cursor) (Intent, cursor, bool) {
		if d, ok := c.phrase("how often are you right", "how often are you wrong", "how accurate are you", "how reliable are you", "are you ever right", "how right are you", "how often were you right",
			"how often were you wrong", "how often do you get it right", "your track record", "what's your track record"); ok {
			return TimesRecord{}, d.over("about cooling", "with cooling", "about the cooling", "with your times", "really", "usually"), true // people ask each other that
		}
		d, ok := c.over("and").phrase("how good are your", "how good are the", "how accurate are your", "how reliable are your", "can i trust your", "can we trust your", "should i trust your", "are your", "do your", "how often do your",
			"how often are your", "how exact are your", "how good were your", "how wrong are your", "how far off are your", "were your", "how true are your", "how sure are your", "how good is your")
		if !ok {
			return nil, c, false
		}
		open := d.word(-2) == "are" && d.word(-3) == "" || d.word(-2) == "do" || d.word(-2) == "were" || d.word(-2) == "often" || d.word(-3) == "often"
		d, ok = d.over("cooling").phrase("times", "time", "estimates", "forecasts", "forecast", "predictions", "ranges", "cooling times", "estimate", "prognoses")
		if !ok {
			return nil, c, false
		}
		e, judged := d.phrase("any good", "right", "hold", "good", "reliable", "accurate", "ever right", "correct", "usually right", "wrong", "exact", "true", "any use", "held", "held up", "hold up")
		if judged {
			d = e
		}
		d.plain = true
		return TimesRecord{}, d.over("usually", "here", "really", "anyway", "then", "in our kitchen", "in this kitchen"), judged || !open
	},
}

// String prints the question so that it parses back.
func (TimesRecord) String() string { return "how good are your times" }
