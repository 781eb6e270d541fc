package phrase

import (
	"math"
	"time"
)

// when reads everything about points in time. Whole tokens are eaten or none: a
// bare number is never a time, and a short name of a day or month only with
// something of time beside it.
func (l *lexer) when(i int) int {
	if d, ok := l.dottedDay(i); ok {
		return l.emit(When{at: l.over(i, d.end), Moment: Moment{Day: d.day}}, d.end)
	}
	if !l.timely || !l.temporal(i) {
		return i
	}
	if l.is(i, "just", "right") && l.is(i+1, "now") ||
		l.is(i, "at") && l.is(i+1, "this") && l.is(i+2, "time", "moment") {
		j := i + 2
		if l.is(i, "at") {
			j++
		}
		return l.emit(When{at: l.over(i, j), Moment: Moment{Now: true}}, j)
	}
	if j := l.doubtful(i); j > i {
		return l.emit(Unclear{l.over(i, j)}, j)
	}
	if v, j, ok := l.interval(i); ok {
		v.at = l.over(i, j)
		return l.emit(v, j)
	}
	m, j, ok := l.shift(i)
	if !ok {
		m, j, ok = l.moment(i)
	}
	if !ok {
		return i
	}
	return l.emit(When{at: l.over(i, j), Moment: m}, j)
}

// temporal tells quickly whether a time can begin at i.
func (l *lexer) temporal(i int) bool {
	a := l.at(i)
	switch {
	case a.kind == atomDigits:
		return l.goesOn(i)
	case l.is(i, "at", "@") && l.at(i+1).kind == atomDigits:
		return l.goesOn(i + 1)
	case a.text == "in":
		return l.startsNumber(i+1) || l.is(i+1, "the", "a", "an", "half", "quarter")
	}
	if k := a.known; k != nil && (k.day != 0 || k.weekday != 0 || k.month != 0 || k.number != 0 && k.number != huge) {
		return true
	}
	return l.is(i, "at", "@", "on", "in", "the", "next", "last", "this", "just", "right", "from", "between", "day", "coming", ".",
		"½", "¼", "¾", "first", "second", "third")
}

// goesOn tells quickly whether what follows the digits at i can make a time of
// them.
func (l *lexer) goesOn(i int) bool {
	next := l.at(i + 1)
	if len(l.at(i).text) == 4 || l.counted || next.kind == atomSign || next.kind == atomDigits {
		return true
	}
	k := next.known
	return k != nil && next.text != "at" && (k.timely || k.measure != nil && k.measure.seconds > 0 ||
		k.number != 0 || next.text == "m" || next.text == "of" || next.text == "and" || next.text == "this") ||
		(next.text == "at" || next.text == "last") && l.is(i+2, "night")
}

// doubtful returns the atom behind what is a time that nobody can read for sure:
// half 8 is 7:30 in Germany and 8:30 in Britain, and so is 03/04 either's.
func (l *lexer) doubtful(i int) int {
	if l.at(i).text == "half" && l.prepared(i) {
		if n, ok := l.smallNumber(i + 1); ok && n.v >= 1 && n.v <= 12 && !l.countsOn(n.end) && !l.glued(n.end, "/") {
			return n.end
		}
	}
	return l.doubtfulDate(i)
}

// shift reads 10 min ago, in 20 min, 15 minutes earlier.
func (l *lexer) shift(i int) (Moment, int, bool) {
	j, sign := i, 0
	if l.is(i, "in") {
		j, sign = i+1, 1
	}
	if sign == 0 && !l.counted {
		return Moment{}, i, false
	}
	s, end, ok := l.period(j)
	if !ok {
		s, end, ok = l.minutesOrMetres(j)
	}
	if !ok || s < 0 {
		return Moment{}, i, false
	}
	if way, e := l.way(end); sign == 0 {
		sign, end = way, e
	}
	if sign == 0 || s > 5000*86400 {
		return Moment{}, i, false
	}
	if _, days := l.inDays(i); days {
		return Moment{}, i, false
	}
	if s = math.Round(s); s == 0 {
		return Moment{Now: true}, end, true
	}
	return Moment{Shift: time.Duration(sign) * time.Duration(s) * time.Second}, end, true
}

// minutesOrMetres reads 10m, which by itself could be metres.
func (l *lexer) minutesOrMetres(i int) (float64, int, bool) {
	n, ok := l.number(i)
	if !ok || n.unclear || n.times || !l.is(n.end, "m") {
		return 0, i, false
	}
	return n.v * 60, n.end + 1, true
}

// prepared reports whether the word before i announces a time.
func (l *lexer) prepared(i int) bool {
	return l.is(i-1, "since", "by", "until", "till", "til", "from", "before", "after", "around", "at", "@", "about", "to") &&
		!(l.is(i-1, "to", "about") && l.is(i-2, "up", "just"))
}

// moment reads a day, a time of day, or both in either order.
func (l *lexer) moment(i int) (Moment, int, bool) {
	j, b := i, nothing
	at, on := l.is(i, "at", "@"), l.is(i, "on")
	if at || on {
		j = i + 1
	}
	if at || l.prepared(i) && !l.is(i-1, "to") {
		b = preposition
	}
	if !on {
		if m, end, ok := l.clockFirst(j, b); ok {
			return m, end, true
		}
	}
	if m, end, ok := l.partFirst(j); ok {
		return m, end, true
	}
	return l.dayFirst(i, j, on || l.prepared(i))
}

// clockFirst reads 18:00 yesterday, 9 tomorrow, at 7:30 pm on fri, sep 20.
func (l *lexer) clockFirst(i int, b beside) (Moment, int, bool) {
	c, j, ok := l.clockOfDay(i, b)
	if !ok {
		c, j, ok = l.clockOfDay(i, aDay)
		if !ok || !l.dayRightAt(j) {
			return Moment{}, i, false // a bare hour needs the day right behind it
		}
	}
	alone := c
	if c.Hour == 24 {
		alone = ClockTime{Half: true}
	}
	m := Moment{Clock: &alone}
	k := j
	if l.glued(k, ",") {
		k++
	}
	if l.is(k, "on") {
		k++
	}
	d, ok := l.dayAt(k)
	if !ok || d.loose && k == j {
		return m, j, true
	}
	if l.at(k).kind == atomDigits && k == j {
		return m, j, true // 14:05 3 march: rather two things
	}
	return d.moment(c), d.end, true
}

// dayRightAt reports whether a word at j names a day: today, tonight, last
// night, this morning.
func (l *lexer) dayRightAt(j int) bool {
	k := l.at(j).known
	if l.is(j, "last") && l.is(j+1, "night") {
		return true
	}
	if l.is(j, "this") && l.at(j+1).known != nil {
		return halfOf(l.at(j+1).known.day) != unsaid
	}
	return k != nil && k.day != 0 && k.day <= tonight
}

// moment is that time on the day read. The small hours of a night are those of
// the day behind it.
func (d dayRead) moment(c ClockTime) Moment {
	m := Moment{Day: d.day}
	switch {
	case d.night && (c.Hour < 5 || c.Hour == 12 && !c.Half):
		c.Hour, c.Half = c.Hour%12, true
		m.Day.Shift++
	default:
		c = inPart(c, d)
	}
	m.Clock = &c
	return m
}

// partFirst reads in the morning at 7.
func (l *lexer) partFirst(i int) (Moment, int, bool) {
	if !l.is(i, "in") || !l.is(i+1, "the") || l.at(i+2).known == nil {
		return Moment{}, i, false
	}
	h := halfOf(l.at(i + 2).known.day)
	if h == unsaid || !l.is(i+3, "at", "@") {
		return Moment{}, i, false
	}
	c, j, ok := l.clock(i+4, aDay)
	if !ok {
		return Moment{}, i, false
	}
	if !c.Half {
		c = inHalf(c, h)
	}
	return Moment{Clock: &c}, j, true
}

// dayFirst reads a day at j, and a time of day behind it.
func (l *lexer) dayFirst(i, j int, led bool) (Moment, int, bool) {
	d, ok := l.dayAt(j)
	if !ok || l.is(i, "at", "@") {
		return Moment{}, i, false
	}
	m := Moment{Day: d.day}
	k := d.end
	if l.glued(k, ",") || l.glued(k, ".") {
		k++
	}
	if l.is(k, "at", "@", "around", "by") {
		k++
	}
	c, end, ok := l.clockOfDay(k, aDay)
	if ok && !(l.is(k-1, "by") && l.at(k).kind != atomDigits) {
		return d.moment(c), end, true
	}
	if d.loose && !led && (j > 0 || l.dot(d.end) < len(l.atoms)) {
		return Moment{}, i, false
	}
	if l.glued(d.end, ".") && d.loose && d.end == len(l.atoms)-1 {
		d.end++
	}
	return m, d.end, true
}

// inPart settles the half of the day by the part that was said with the day:
// tonight at 11, this morning at 9. Yesterday evening at 2 is in the small hours.
func inPart(c ClockTime, d dayRead) ClockTime {
	if c.Half || d.half == unsaid {
		return c
	}
	if d.day.Shift == -1 && d.half == pm && c.Hour < 6 {
		c.Half = true
		return c
	}
	return inHalf(c, d.half)
}

// interval reads a from-to on one day: sat 10-14, 10am to 2pm, tomorrow from 7:00
// to 8:00pm, from 4pm for thirty minutes.
func (l *lexer) interval(i int) (Interval, int, bool) {
	j, v := i, Interval{}
	if l.is(j, "on") {
		j++
	}
	d, dayed := l.dayAt(j)
	if dayed {
		j = d.end
		if l.glued(j, ",") || l.glued(j, ".") {
			j++
		}
	}
	from := l.is(j, "from", "between")
	if from {
		j++
	}
	b := nothing
	if dayed {
		b = aClock
	} else if from {
		b = preposition
	}
	a, end, ok := l.clock(j, b)
	bare := !ok
	if bare {
		a, end, ok = l.clock(j, aClock)
	}
	if !ok || l.at(j).kind == atomWord && l.at(j).known.day == 0 && bare {
		return v, i, false
	}
	if s, e, ok := l.lasting(end); ok && from && !bare {
		to := a.plus(s)
		v.From, v.To = Moment{Day: d.day, Clock: &a}, Moment{Day: d.day, Clock: &to}
		return v, e, true
	}
	return l.intervalTo(intervalHead{i: i, j: j, a: a, day: d, dayed: dayed, from: from, bare: bare}, end)
}

// intervalHead is what was read of an interval before its second time.
type intervalHead struct {
	i, j              int
	a                 ClockTime
	day               dayRead
	dayed, from, bare bool
}

// intervalTo reads the second time of an interval at j, and a day behind it.
func (l *lexer) intervalTo(h intervalHead, j int) (Interval, int, bool) {
	hyphen := l.is(j, "-")
	if !hyphen && !l.is(j, "to", "till", "until", "til") && !(l.is(j, "and") && h.from && l.is(h.j-1, "between")) {
		return Interval{}, h.i, false
	}
	_, _, strong := l.clock(j+1, nothing)
	c, end, ok := l.clock(j+1, aClock)
	if !ok {
		return Interval{}, h.i, false
	}
	if !h.dayed {
		k := end
		if l.is(k, "on") {
			k++
		}
		if d, ok := l.dayAt(k); ok && (!d.loose || k == end || l.is(k-1, "on")) && l.at(k).kind == atomWord {
			h.day, h.dayed, end = d, true, d.end
		}
	}
	sure := !h.bare || strong && (hyphen || h.from) || h.dayed && (hyphen || h.from) || h.dayed && h.j > h.i
	if !sure || h.bare && !strong && !h.dayed {
		return Interval{}, h.i, false
	}
	a := inPart(h.a, h.day)
	c = inPart(c, h.day)
	a, c = nearest(a, c)
	return Interval{From: Moment{Day: h.day.day, Clock: &a}, To: Moment{Day: h.day.day, Clock: &c}}, end, true
}

// nearest settles the half of the day of one end by the other's: 10-2pm begins
// in the morning, 7 to 8pm in the evening.
func nearest(a, b ClockTime) (ClockTime, ClockTime) {
	switch {
	case a.Half == b.Half:
		return a, b
	case b.Half:
		if other := a.otherHalf(); other.until(b) < a.until(b) {
			a = other
		}
		a.Half = true
	default:
		if other := b.otherHalf(); a.until(other) < a.until(b) {
			b = other
		}
		b.Half = true
	}
	return a, b
}

func (c ClockTime) minutes() int { return c.Hour*60 + c.Minute }

func (c ClockTime) otherHalf() ClockTime {
	c.Hour = (c.Hour + 12) % 24
	return c
}

// until counts the minutes from c to the next d, 24 hours when they are equal.
func (c ClockTime) until(d ClockTime) int {
	m := (d.minutes() - c.minutes() + 24*60) % (24 * 60)
	if m == 0 {
		return 24 * 60
	}
	return m
}

// plus is the time of day s seconds later.
func (c ClockTime) plus(s float64) ClockTime {
	m := (c.minutes() + int(math.Round(s/60))) % (24 * 60)
	if !c.Half {
		return ClockTime{Hour: (m/60+11)%12 + 1, Minute: m % 60}
	}
	return ClockTime{Hour: m / 60, Minute: m % 60, Half: c.Half}
}

// lasting reads for thirty minutes.
func (l *lexer) lasting(i int) (float64, int, bool) {
	if !l.is(i, "for") {
		return 0, i, false
	}
	s, end, ok := l.period(i + 1)
	if !ok || s <= 0 || s >= 86400 {
		return 0, i, false
	}
	return s, end, true
}
