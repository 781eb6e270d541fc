package phrase

var startAtGrammar = grammar{
	kind:     KindStartAt,
	examples: []string{"start at 10:00", "starting tomorrow 9am", "what if we start at 10"},
	match: func(c cursor) (Intent, cursor, bool) {
		at, d, ok := starts(c.over("what", "if", "when", "and", "i", "we", "can", "could", "will", "i'll", "we'll"))
		if !ok {
			return nil, c, false
		}
		return StartAt{at}, d, true
	},
}

// String prints the wish so that it parses back.
func (s StartAt) String() string { return startText(&s.At)[2:] }

// startText prints a start behind an intent, nothing for none.
func startText(m *Moment) string {
	if m == nil {
		return ""
	}
	if m.Day.Said || m.Shift != 0 {
		return ", start " + momentText(*m)
	}
	return ", start at " + momentText(*m)
}

// starts reads "start at 10:00", "starting tomorrow 9am". The moment must lie
// ahead as it was said.
func starts(c cursor) (Moment, cursor, bool) {
	d, ok := c.phrase("start", "starting", "start it", "we start", "i start", "begin", "beginning", "start cooking", "if we start", "if i start", "start is", "start at",
		"starting at")
	if !ok {
		return Moment{}, c, false
	}
	at := d.over("at", "about", "around", "on")
	m, e, ok := at.when()
	if !ok && (d.word(-1) == "at" || at.word(-1) == "at") {
		m, e, ok = at.hour()
	}
	if !ok || m.Now || m.Clock == nil && m.Shift == 0 || m.Shift < 0 || m.Day.Shift < 0 {
		return Moment{}, c, false
	}
	return m, e.over("o'clock"), true
}

// hour takes a bare number for a time of day, where nothing follows that it
// could count.
func (c cursor) hour() (Moment, cursor, bool) {
	n, ok := c.token().(Number)
	if !ok || !n.Whole || n.Times || n.Value < 1 || n.Value > 24 || c.word(0) == "a" || c.word(0) == "an" {
		return Moment{}, c, false
	}
	d := c.use(1)
	if d.parted().i == d.i && !d.done() && d.over("please", "pls", "at the latest", "latest", "o'clock", "in", "with", "hold", "thanks", "ok", "today").i == d.i {
		return Moment{}, c, false
	}
	h := int(n.Value)
	return Moment{Clock: &ClockTime{Hour: h % 24, Half: h > 12}}, d, true
}
