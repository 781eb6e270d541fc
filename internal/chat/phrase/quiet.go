package phrase

import "ryebell/internal/kitchen"

var quietGrammar = grammar{
	kind:     KindQuiet,
	examples: []string{"quiet 22-7", "quiet from 10pm to 7am for all", "no quiet hours"},
	match:    matchQuiet,
}

var pingsGrammar = grammar{
	kind:     KindPings,
	examples: []string{"pings private", "pings in the room"},
	match: func(c cursor) (Intent, cursor, bool) {
		c = c.over("my", "i want", "i'd like", "send", "send me", "please")
		if d, ok := c.phrase("pings private", "pings in private", "ping me in private", "ping me privately", "private pings", "pings privately", "pings to me alone", "pings by dm", "ping me by dm",
			"dm me the pings", "pings in dm", "dm me", "pings to me only", "pings to me", "private ping", "ping me alone"); ok {
			d.plain = true
			return PingsWhere{kitchen.InPrivate}, d, true
		}
		d, ok := c.phrase("pings in the room", "pings here", "ping me here", "ping me in the room", "pings in room", "pings public", "public pings", "pings to the room", "pings in the group",
			"no private pings", "ping me in the group", "pings not private", "pings in here", "pings in public", "ping in the room")
		d.plain = ok
		return PingsWhere{kitchen.InRoom}, d, ok
	},
}

// String prints the wish so that it parses back.
func (p PingsWhere) String() string {
	switch p.Where {
	case kitchen.InPrivate:
		return "pings private"
	case kitchen.InRoom:
		return "pings in the room"
	}
	panic(p.Where)
}

// String prints the quiet hours so that they parse back.
func (q Quiet) String() string {
	s := "no quiet hours"
	if q.From != q.To {
		s = "quiet " + dayTimeText(q.From) + " to " + dayTimeText(q.To)
	}
	if q.Everybody {
		s += " for all"
	}
	return s
}

func dayTimeText(t kitchen.TimeOfDay) string {
	return ClockTime{Hour: int(t) / 60, Minute: int(t) % 60, Half: true}.String()
}

// matchQuiet reads "quiet 22-7", "no quiet hours".
func matchQuiet(c cursor) (Intent, cursor, bool) {
	var q Quiet
	if d, ok := c.phrase("no quiet hours", "no quiet hrs", "no quiet", "quiet off", "quiet hours off", "no quiet time", "quiet never", "never quiet", "turn off quiet hours", "without quiet hours", "stop quiet hours"); ok {
		q.Everybody, d = forAll(d)
		d.plain = true
		return q, d, true
	}
	d, ok := c.over("our", "my", "the", "set", "keep").phrase("quiet", "quiet hours", "quiet from", "quiet hours from", "quiet time", "quiet between", "no pings", "no pings from", "no pings between",
		"be quiet from", "be quiet", "don't ping me from", "don't ping me between", "quiet hours are", "dont ping me from", "be quiet between", "don't ping from", "quiet hours:")
	if !ok {
		return nil, c, false
	}
	d = d.over("for all", "for everybody", "for everyone", "from", "is", "are", ":", "between")
	switch t := d.token().(type) {
	case Interval:
		q.From, q.To = t.From.Clock.ofDay(), t.To.Clock.ofDay()
		if t.From.Day.Said || !t.From.Clock.Half && t.From.Clock.Hour < 13 {
			return askNight(c, d, q)
		}
	case Range:
		a, b, hours := hourRange(t)
		if !hours {
			return nil, c, false
		}
		q.From, q.To = kitchen.TimeOfDay(60*int(t.Lo)), kitchen.TimeOfDay(60*(int(t.Hi)%24))
		if _, _ = a, b; t.Lo <= 12 && t.Lo > 5 {
			return askNight(c, d, q)
		}
	default:
		return nil, c, false
	}
	d = d.use(1)
	all := false
	for _, w := range c.s.said[c.i:d.i] {
		all = all || w == "our"
	}
	q.Everybody, d = forAll(d)
	q.Everybody = q.Everybody || all
	d.plain = true
	return q, d, true
}

// askNight asks whether "10-7" begins in the evening.
func askNight(c, d cursor, q Quiet) (Intent, cursor, bool) {
	about := c.s.typed(d.i, d.i+1)
	d = d.use(1)
	q.Everybody, d = forAll(d)
	d.plain = true
	late := q
	late.From = (q.From + 12*60) % (24 * 60)
	d.ask = &asking{gap: WhichHalf, about: about, options: []string{"evening", "morning"}, fill: func(reply cursor) (string, cursor, bool) {
		if e, ok := reply.phrase("evening", "pm", "night", "the evening", "in the evening", "at night"); ok {
			return late.String(), e, true
		}
		e, ok := reply.phrase("morning", "am", "the morning", "in the morning")
		return q.String(), e, ok
	}}
	return q, d, true
}

func forAll(c cursor) (bool, cursor) {
	d, ok := c.phrase("for all", "for everybody", "for everyone", "for us all", "for all of us", "for the room", "for us", "everybody", "everyone", "for the whole collective")
	if !ok {
		return false, c.over("for me", "please", "every day", "every night", "daily")
	}
	return true, d
}

func (c ClockTime) ofDay() kitchen.TimeOfDay { return kitchen.TimeOfDay(c.minutes()) }
