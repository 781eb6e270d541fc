package phrase

var outByGrammar = grammar{
	kind:     KindOutBy,
	examples: []string{"out by 20:30", "ready by 8pm", "ping me then", "remind me"},
	match: func(c cursor) (Intent, cursor, bool) {
		d, ok := c.phrase("ping me then", "ping me", "remind me", "remind me then", "tell me then", "ping me when it's time", "ping me at that time",
			"tell me when to start", "remind me to start", "ping me to start", "wake me then", "let me know then")
		if ok {
			d.bare = d.word(-1) == "me" && d.i == 2 // people say it to each other
			return RemindStart{}, d, true
		}
		lead := c.over("i", "we", "need", "want", "it", "them", "has", "have", "must", "should", "to", "be", "all", "that", "needed", "is")
		m, d, ok := deadline(lead)
		if !ok {
			m, d, ok = neededBy(lead)
		}
		d.bare = d.bare || lead.i > c.i
		return OutBy{m}, d, ok
	},
}

// String prints the wish so that it parses back.
func (o OutBy) String() string { return outByText(&o.By)[1:] }

// String prints the wish so that it parses back.
func (RemindStart) String() string { return "ping me then" }

// deadline reads "out by 20:30", "ready by 8pm", "done tonight at 8". The moment
// must lie ahead as it was said: "10 min ago" is none.
func deadline(c cursor) (Moment, cursor, bool) {
	d, ok := c.phrase("out by", "out at", "out before", "ready by", "ready at", "ready for", "done by", "done at", "done before", "finished by",
		"finished at", "ready before", "by", "out of the pot by", "out for", "cooked by", "out", "deadline", "deadline is",
		"the deadline is", "due", "due by", "due at", "due on", "needed by", "needed for")
	if !ok {
		return Moment{}, c, false
	}
	by := d.word(-1)
	open := d.over("at", "the", "about", "around", "latest", "is")
	m, d, ok := open.when()
	if !ok && (by == "by" || by == "at" || by == "for" || by == "before") {
		m, d, ok = open.hour()
		d.bare = c.word(0) != "out"
	}
	if !ok || m.Now || m.Shift < 0 || m.Day.Shift < 0 {
		return Moment{}, c, false
	}
	return m, d.over("at the latest", "latest", "o'clock"), true
}

// neededBy reads the time behind "need it": "need it friday 6pm".
func neededBy(c cursor) (Moment, cursor, bool) {
	switch c.word(-1) {
	case "it", "them", "that", "all":
		if w := c.word(-2); w != "need" && w != "want" && w != "needs" {
			return Moment{}, c, false
		}
	case "needed":
	default:
		return Moment{}, c, false
	}
	m, d, ok := c.over("on", "at", "for").when()
	if !ok || m.Clock == nil || m.Shift < 0 || m.Day.Shift < 0 {
		return Moment{}, c, false
	}
	return m, d, true
}

// maybeOutBy reads a deadline if one stands here.
func (c cursor) maybeOutBy() (*Moment, cursor) {
	m, d, ok := deadline(c.parted().over("must", "be", "it"))
	if !ok {
		return nil, c
	}
	return &m, d
}
