package phrase

import (
	"strings"
	"time"
)

var bookingGrammar = grammar{
	kind: KindBooking,
	examples: []string{
		"big pot saturday 10-14",
		"can i have the cooker sunday 9 to 12",
		"book the big pot tomorrow from 7:00 to 8:00pm",
		"big pot saturday at 10:00 for 3 hours",
		"big pot saturday 10-14, soaking the evening before",
		"cancel my saturday",
		"bookings",
	},
	match: matchBooking,
}

// String prints the booking so that it parses back.
func (b Book) String() string {
	s := "book the cooker"
	if b.Cooker != "" {
		s = "book the " + b.Cooker
	}
	s += " " + b.When.String()
	if b.Soak {
		s += ", soaking the evening before"
	}
	return s
}

// String prints the release so that it parses back.
func (u Unbook) String() string {
	if u.When == nil {
		return "cancel my booking"
	}
	return "cancel my booking " + u.When.String()
}

// String prints the question so that it parses back.
func (Bookings) String() string { return "bookings" }

func matchBooking(c cursor) (Intent, cursor, bool) {
	if d, ok := c.over("show", "the", "all", "our", "list", "my").phrase("bookings", "booking", "calendar of the pots", "who has the cooker when", "who has the pot when", "who booked", "what's booked",
		"whats booked", "booked", "when is the cooker free", "when's the cooker free", "who booked the cooker", "who has booked", "is the cooker free", "is the pot free",
		"who has it when", "when is the pot free", "cooker bookings", "pot bookings", "show bookings", "booking list"); ok {
		d = d.over("this week", "today", "tomorrow", "next week", "on saturday", "on sunday", "please")
		d.plain = d.used > 1 || c.word(0) == "bookings"
		return Bookings{}, d, true
	}
	if d, ok := freeWhen(c); ok {
		d.plain = true
		return Bookings{}, d, true
	}
	if in, d, ok := release(c); ok {
		return in, d, true
	}
	return booked(c)
}

// freeWhen reads "who has the cooker saturday", "is the big pot free tomorrow".
func freeWhen(c cursor) (cursor, bool) {
	if w := c.word(0); w != "who" && w != "who's" && w != "is" && w != "when" {
		return c, false
	}
	d, asked := c.phrase("who has", "who's got", "is", "who booked", "when is", "who needs")
	_, d, ok := cookerRef(d.over("the", "our"))
	free := c.word(0) != "is" && c.word(1) != "is"
	if e, fits := d.phrase("free", "booked", "taken", "available", "in use", "occupied"); fits {
		d, free = e, true
	}
	d = d.over("on", "for", "at", "around", "from")
	at := d.i
	if _, e, when := d.when(); when {
		d = e
	} else if _, is := d.token().(Interval); is {
		d = d.use(1)
	}
	return d, asked && ok && free && (d.i > at || c.word(0) != "who")
}

// release reads "cancel my saturday", "i don't need the pot tomorrow".
func release(c cursor) (Intent, cursor, bool) {
	d, ok := c.phrase("cancel my", "cancel my booking", "cancel the booking", "cancel booking", "cancel my slot", "release my booking", "release my slot", "release the cooker", "release the pot",
		"give up my slot", "give up my booking", "unbook", "unbook the cooker", "unbook the pot", "drop my booking", "drop my slot", "delete my booking", "i don't need the cooker",
		"i don't need the pot", "i dont need the cooker", "i dont need the pot", "free my slot", "cancel the cooker", "cancel the pot", "unbook my", "release my", "cancel", "remove my booking")
	if !ok {
		return nil, c, false
	}
	bare := d.word(-1) == "my" || d.word(-1) == "cancel"
	d = d.over("for", "on", "the", "of", "slot", "booking", "big pot", "small pot")
	if n, ok := d.token().(Name); ok && n.Of == CookerName {
		d = d.use(1).over("on", "for")
	}
	m, e, ok := d.when()
	if v, is := d.token().(Interval); is {
		from := v.From
		m, e, ok = from, d.use(1), true
	}
	switch {
	case ok && m.Shift >= 0:
		e = e.over("slot", "booking", "please", "cook", "run")
		e.plain = true
		return Unbook{When: &m}, e, true
	case bare:
		return nil, c, false
	}
	d.plain = true
	return Unbook{}, d, d.ends() || d.done()
}

// booked reads "big pot saturday 10-14", "can i have the cooker sunday 9 to 12".
func booked(c cursor) (Intent, cursor, bool) {
	if !c.s.timed {
		return hoursAlone(c)
	}
	d, asked := c.over("hey", "please", "pls").phrase("book", "can i have", "can i book", "i book", "i'd like", "i want", "i need", "reserve", "could i have", "may i have", "i'd like to book",
		"booking", "can i use", "can i get", "i'll take", "i take", "can we have", "we need", "i want to book", "i'll use", "could i book", "can we book", "put me down for", "i'm using",
		"i use", "can i reserve", "i will use", "i'd like to use", "i want to use", "id like", "i'll have", "can i take")
	d = d.over("the", "a", "our")
	b := Book{}
	name, e, ok := cookerRef(d)
	if ok {
		b.Cooker, d = theCooker(name), e
	}
	d = d.over("on", "for", "is mine", "mine", "booked", "this", ":", ",", "please", "coming")
	when, e, ok := slot(d)
	if !ok && asked && b.Cooker == "" && d.i == c.i {
		return nil, c, false
	}
	if !ok {
		return partOfDay(c, d, b, asked || b.Cooker != "")
	}
	if b.Cooker == "" && name == "" { // "book saturday 10-14 big pot"
		if n, f, named := cookerRef(e.over("in", "with", "the", "on", "for", "using")); named {
			b.Cooker, e, name = theCooker(n), f, n
		}
	}
	if name == "" && !(asked && c.word(0) == "book" || asked && c.word(0) == "reserve") {
		return nil, c, false
	}
	b.When = when
	b.Soak, e = soaks(e)
	e.plain = true
	return b, e, true
}

// hoursAlone reads "big pot 14-16": today's hours, or tomorrow's once they are past.
func hoursAlone(c cursor) (Intent, cursor, bool) {
	d := c.over("book", "the", "i need", "can i have", "i'd like", "can i book")
	n, ok := d.token().(Name)
	if !ok || n.Of != CookerName {
		return nil, c, false
	}
	d = d.use(1).over("from", "for", "at", "please")
	r, ok := d.token().(Range)
	from, to, hours := hourRange(r)
	d = d.use(1).over("please", "pls", "o'clock", "h")
	d.plain = true
	return Book{Cooker: n.Text, When: Interval{From: Moment{Clock: &from}, To: Moment{Clock: &to}}}, d, ok && hours && d.parted().done()
}

// slot reads a from-to, or a beginning and how long.
func slot(c cursor) (Interval, cursor, bool) {
	if v, ok := c.token().(Interval); ok {
		return Interval{From: v.From, To: v.To}, c.use(1), true
	}
	from, d, ok := c.when()
	if !ok || from.Shift < 0 || from.Day.Shift < 0 {
		return Interval{}, c, false
	}
	if from.Clock == nil { // "friday 13 10-14", "4 of july 10-14"
		if v, ok := d.over(",", "from", "between").token().(Interval); ok && from.Day.Said && !v.From.Day.Said {
			v.From.Day, v.To.Day = from.Day, from.Day
			return Interval{From: v.From, To: v.To}, d.over(",", "from", "between").use(1), true
		}
		r, ok := d.token().(Range)
		if a, b, hours := hourRange(r); ok && hours && from.Day.Said {
			return Interval{From: Moment{Day: from.Day, Clock: &a}, To: Moment{Day: from.Day, Clock: &b}}, d.use(1), true
		}
		return Interval{}, c, false
	}
	lasts, ok := d.over("for", "about", "around").token().(Period)
	if !ok || lasts.Length <= 0 || lasts.Length >= 24*time.Hour || lasts.Length%time.Minute != 0 {
		return Interval{}, c, false
	}
	to := from.Clock.plus(lasts.Length.Seconds())
	return Interval{From: from, To: Moment{Day: from.Day, Clock: &to}}, d.over("for", "about", "around").use(1), true
}

// hourRange reads 10-14 as hours of a day.
func hourRange(r Range) (from, to ClockTime, ok bool) {
	a, isWhole := whole(r.Lo)
	b, both := whole(r.Hi)
	if r.Senses != nil || !isWhole || !both || a < 0 || b < 0 || a > 23 || b > 24 || a == b {
		return from, to, false
	}
	from, to = ClockTime{Hour: a, Half: a > 12 || a == 0}, ClockTime{Hour: b % 24, Half: b > 12}
	from, to = nearest(from, to)
	return from, to, true
}

// parts are the parts of a day, the hours that they can stand for, and whether
// those that a reply names are after noon.
var parts = [...]struct {
	word  string
	hours []string
	late  bool
}{
	{"morning", []string{"8-12", "9-13", "8-14"}, false},
	{"afternoon", []string{"12-16", "13-17", "14-18"}, true},
	{"evening", []string{"17-21", "18-22", "16-20"}, true},
	{"night", []string{"18-22", "20-23"}, true},
	{"", []string{"9-13", "13-17", "9-17"}, false},
}

// partOfDay asks which hours of a day or part of it are meant: "sunday morning".
func partOfDay(c, d cursor, b Book, meant bool) (Intent, cursor, bool) {
	m, e, ok := d.when()
	if !ok || !meant || m.Clock != nil || !m.Day.Said || m.Day.Shift < 0 {
		return nil, c, false
	}
	about := c.s.typed(d.i, e.i)
	for _, p := range parts {
		if p.word != "" && !lastWord(about, p.word) {
			continue
		}
		e.plain = true
		e.ask = &asking{gap: WhichWord, about: about, options: p.hours, fill: func(reply cursor) (string, cursor, bool) {
			v, ok := hoursSaid(reply, p.late)
			filled := b
			filled.When = Interval{From: Moment{Day: m.Day, Clock: v.From.Clock}, To: Moment{Day: m.Day, Clock: v.To.Clock}}
			return filled.String(), reply.end(), ok
		}}
		return b, e, true
	}
	return nil, c, false
}

// hoursSaid reads a reply such as "10-14" or "9am to 1pm"; those of a late part of
// the day are after noon.
func hoursSaid(c cursor, late bool) (Interval, bool) {
	c = c.over("from")
	if v, d, ok := slot(c); ok && d.parted().done() {
		return v, !v.From.Day.Said
	}
	r, ok := c.token().(Range)
	a, b, hours := hourRange(r)
	if !ok || !hours || !c.use(1).parted().done() {
		return Interval{}, false
	}
	if late && a.Hour < 12 {
		a.Hour += 12
	}
	if b.Hour <= a.Hour && b.Hour < 12 {
		b.Hour += 12
	}
	a.Half, b.Half = true, true
	return Interval{From: Moment{Clock: &a}, To: Moment{Clock: &b}}, true
}

// soaks reads "soaking the evening before".
func soaks(c cursor) (bool, cursor) {
	d, ok := c.parted().over("with", "i", "i'm", "we").phrase("soaking the evening before", "soak the evening before", "soaking the night before", "soak the night before", "soaking before",
		"soaking", "soak", "soaking overnight", "soak overnight", "the evening before", "soak before", "soak from the evening before", "and soaking")
	if !ok {
		return false, c
	}
	return true, d
}

func lastWord(text, word string) bool {
	return strings.HasSuffix(strings.ToLower(strings.TrimSpace(text)), word)
}
