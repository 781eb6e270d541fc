package phrase

import (
	"time"
)

// dayRead is a day as read: where it ends, the half of the day said with it, and
// whether it was so short a word (sat, may) that something must stand beside it.
type dayRead struct {
	day   Day
	end   int
	half  half
	loose bool
	// night is true for tonight and last night, which go on behind midnight.
	night bool
}

// dayAt reads a day at i.
func (l *lexer) dayAt(i int) (dayRead, bool) {
	if !l.beginsDay(i) {
		return dayRead{}, false
	}
	for _, read := range [...]func(*lexer, int) (dayRead, bool){
		(*lexer).relativeDay, (*lexer).weekdayAt, (*lexer).monthDay, (*lexer).dayMonth, (*lexer).isoDay, (*lexer).strokeDay, (*lexer).inDays,
	} {
		if d, ok := read(l, i); ok {
			d.day.Said = true
			return l.withPart(d), true
		}
	}
	return dayRead{}, false
}

// beginsDay tells quickly whether a day can begin at i.
func (l *lexer) beginsDay(i int) bool {
	a, next := l.at(i), l.at(i+1)
	switch {
	case a.kind == atomDigits && next.kind == atomSign:
		return len(a.text) == 4 && next.text == "-" || next.text == "/" && !next.gap || l.counted
	case a.kind == atomDigits:
		return next.known != nil && (next.known.month != 0 || next.known.timely) || next.text == "of" || l.counted
	case a.known == nil:
		return l.counted
	}
	return a.known.day != 0 || a.known.weekday != 0 || a.known.month != 0 || a.known.class == Ordinal ||
		l.counted && a.known.number != 0 || l.is(i, "the", "this", "next", "in", "coming", "day")
}

// withPart reads the part of the day behind a day: tomorrow morning.
func (l *lexer) withPart(d dayRead) dayRead {
	k := l.at(d.end).known
	if d.half == unsaid && k != nil && halfOf(k.day) != unsaid && k.day != tonight {
		d.half = halfOf(k.day)
		d.end++
		d.loose = false
	}
	return d
}

// relativeDay reads today, tomorrow, this morning, last night, the day before
// yesterday.
func (l *lexer) relativeDay(i int) (dayRead, bool) {
	j := i
	if l.is(j, "the") {
		j++
	}
	switch {
	case l.at(i).text == "2" && l.glued(i+1, "morrow"):
		return dayRead{day: Day{Shift: 1}, end: i + 2}, true
	case l.at(i).text == "2" && (l.glued(i+1, "nite") || l.glued(i+1, "night")):
		return dayRead{end: i + 2, half: pm, night: true}, true
	case l.is(j, "day") && l.is(j+1, "before") && l.is(j+2, "yesterday"):
		return dayRead{day: Day{Shift: -2}, end: j + 3}, true
	case l.is(j, "day") && l.is(j+1, "after") && l.is(j+2, "tomorrow"):
		return dayRead{day: Day{Shift: 2}, end: j + 3}, true
	case l.is(i, "last") && l.is(i+1, "night"):
		return dayRead{day: Day{Shift: -1}, end: i + 2, half: pm, night: true}, true
	}
	k := l.at(i).known
	if k != nil && l.is(i, "this") {
		if next := l.at(i + 1).known; next != nil && halfOf(next.day) != unsaid && next.day != tonight {
			return dayRead{end: i + 2, half: halfOf(next.day)}, true
		}
		return dayRead{}, false
	}
	if k == nil || k.day == 0 {
		return dayRead{}, false
	}
	switch k.day {
	case today:
		return dayRead{end: i + 1}, true
	case tonight:
		return dayRead{end: i + 1, half: pm, night: true}, true
	case tomorrow:
		return dayRead{day: Day{Shift: 1}, end: i + 1}, true
	case yesterday:
		return dayRead{day: Day{Shift: -1}, end: i + 1}, true
	case morning, afternoon, evening, night, noon, midnight:
		return dayRead{}, false
	}
	panic(k.day)
}

// weekdayAt reads friday, next friday, next week mon, sun 14th, fri, sep 20.
func (l *lexer) weekdayAt(i int) (dayRead, bool) {
	j, d := i, dayRead{}
	led := true
	switch {
	case l.is(i, "next") && l.is(i+1, "week"):
		d.day.NextWeek, j = true, i+2
		if l.is(j, "on") {
			j++
		}
	case l.is(i, "next"):
		d.day.Next, j = true, i+1
	case l.is(i, "this", "last", "coming"):
		d.day.Last, j = l.is(i, "last"), i+1
	default:
		led = false
	}
	k := l.at(j).known
	if k == nil || k.weekday == 0 {
		return dayRead{}, false
	}
	d.day.HasWeekday, d.day.Weekday = true, time.Weekday(k.weekday-1)
	d.end = j + 1
	d.loose = k.loose && !led
	if l.is(d.end, "next") && l.is(d.end+1, "week") {
		d.day.NextWeek, d.loose = true, false
		d.end += 2
	}
	if !d.day.Next && !d.day.NextWeek {
		d = l.dated(d)
	}
	return d, true
}

// dated reads the date behind a weekday: sun 14th, fri, sep 20.
func (l *lexer) dated(d dayRead) dayRead {
	j := l.dot(d.end)
	if l.glued(j, ",") {
		j++
	}
	if l.is(j, "the") {
		j++
	}
	for _, read := range [...]func(*lexer, int) (dayRead, bool){(*lexer).monthDay, (*lexer).dayMonth, (*lexer).isoDay} {
		if m, ok := read(l, j); ok {
			m.day.HasWeekday, m.day.Weekday = true, d.day.Weekday
			m.loose = false
			return m
		}
	}
	if n, end, ok := l.ordinal(j); ok {
		d.day.Date, d.day.Last, d.end, d.loose = n, false, end, false
	}
	return d
}

// monthDay reads march 3, march 7th, dec 25 2026.
func (l *lexer) monthDay(i int) (dayRead, bool) {
	k := l.at(i).known
	if k == nil || k.month == 0 {
		return dayRead{}, false
	}
	j := l.dot(i + 1)
	if l.is(j, "the") {
		j++
	}
	n, end, ok := l.ordinal(j)
	if !ok && l.at(j).kind == atomDigits && !l.countsOn(j+1) && !l.glued(j+1, "-") {
		n, end, ok = atoi(l.at(j).text), j+1, true
	}
	if !ok || !validDate(n, k.month) {
		return dayRead{}, false
	}
	d := dayRead{day: Day{Month: k.month, Date: n}, end: end}
	return l.year(d), true
}

// dayMonth reads 19 june, 25th of december, the 14th.
func (l *lexer) dayMonth(i int) (dayRead, bool) {
	j := i
	if l.is(j, "the") {
		j++
	}
	n, end, ok := l.ordinal(j)
	isOrdinal := ok
	if !ok && l.at(j).kind == atomDigits && len(l.at(j).text) <= 2 {
		n, end, ok = atoi(l.at(j).text), j+1, true
	}
	if !ok {
		return dayRead{}, false
	}
	k := end
	if l.is(k, "of") {
		k++
	}
	if l.glued(k, "-") {
		k++
	}
	m := l.at(k).known
	switch {
	case m != nil && m.month != 0 && validDate(n, m.month) && (isOrdinal || !m.loose || l.dateEnds(k+1)):
		return l.year(dayRead{day: Day{Month: m.month, Date: n}, end: l.monthStop(k + 1)}), true
	case isOrdinal && j > i && n <= 31 && l.at(j).kind == atomDigits: // the 14th
		return dayRead{day: Day{Date: n}, end: end}, true
	}
	return dayRead{}, false
}

// monthStop skips the full stop of an abbreviated month when a number follows:
// 3 dec. 2026.
func (l *lexer) monthStop(j int) int {
	if l.glued(j, ".") && l.at(j+1).kind == atomDigits {
		return j + 1
	}
	return j
}

// dateEnds reports whether a date with a month that is also a word (12 may be
// done, 2 mar) ends before j: no other word goes on.
func (l *lexer) dateEnds(j int) bool {
	a := l.at(j)
	return a.kind != atomWord || a.known == nil ||
		l.is(j, "at", "from", "by", "for", "till", "until", "to", "and", "in", "or", "on", "with", "since")
}

// year reads the year behind a date.
func (l *lexer) year(d dayRead) dayRead {
	j := d.end
	if l.glued(j, ",") {
		j++
	}
	if a := l.at(j); a.kind == atomDigits && len(a.text) == 4 && !l.countsOn(j+1) {
		if y := atoi(a.text); 1970 <= y && y <= 2200 {
			d.day.Year, d.end = y, j+1
		}
	}
	return d
}

// ordinal reads 14th, 1st, first, second.
func (l *lexer) ordinal(i int) (int, int, bool) {
	a := l.at(i)
	if a.kind == atomDigits && len(a.text) <= 2 && !l.at(i+1).gap && l.is(i+1, "st", "nd", "rd", "th") {
		return atoi(a.text), i + 2, true
	}
	for n, w := range [...]string{"first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"} {
		if a.text == w {
			return n + 1, i + 1, true
		}
	}
	return 0, i, false
}

// validDate reports whether a month can have that date.
func validDate(date int, m time.Month) bool {
	return date >= 1 && date <= time.Date(2024, m+1, 0, 0, 0, 0, 0, time.UTC).Day() // a leap year
}

// isoDay reads 2026-03-02.
func (l *lexer) isoDay(i int) (dayRead, bool) {
	if l.at(i).kind != atomDigits || len(l.at(i).text) != 4 || !l.glued(i+1, "-") || !l.twoDigits(i+2) ||
		!l.glued(i+3, "-") || !l.twoDigits(i+4) {
		return dayRead{}, false
	}
	d := Day{Year: atoi(l.at(i).text), Month: time.Month(atoi(l.at(i + 2).text)), Date: atoi(l.at(i + 4).text)}
	if d.Month < 1 || d.Month > 12 || d.Date < 1 || d.Date > time.Date(d.Year, d.Month+1, 0, 0, 0, 0, 0, time.UTC).Day() {
		return dayRead{}, false
	}
	end := i + 5
	if l.glued(end, "t") && l.digitsAt(end+1) {
		end++ // 2026-03-02T18:00
	}
	return dayRead{day: d, end: end}, true
}

// dottedDay reads 1.2. and 20.2.2026 behind since: the day, then the month. Elsewhere
// 1.2 is a unit.
func (l *lexer) dottedDay(i int) (dayRead, bool) {
	if !l.is(i-1, "since", "dated") || l.at(i).kind != atomDigits || !l.glued(i+1, ".") || !l.digitsAt(i+2) || len(l.at(i).text) > 2 || len(l.at(i+2).text) > 2 {
		return dayRead{}, false
	}
	dated := len(l.at(i+2).text) == 1 // 8.10 is a time of day, too
	d := dayRead{day: Day{Said: true, Date: atoi(l.at(i).text), Month: time.Month(atoi(l.at(i + 2).text))}, end: i + 3}
	if l.glued(d.end, ".") {
		d.end++
		dated = dated || !l.cooks()
		if year := l.at(d.end).text; l.digitsAt(d.end) && len(year) == 4 {
			d.day.Year, dated = atoi(year), true
			d.end++
		} else if l.digitsAt(d.end) {
			return dayRead{}, false
		}
	}
	return d, dated && !l.is(d.end, "am", "pm", "h", "uhr") && d.day.Month >= 1 && d.day.Month <= 12 && validDate(d.day.Date, d.day.Month)
}

// cooks reports whether a word of the cook stands somewhere: its times are of the day.
func (l *lexer) cooks() bool {
	for i := range l.atoms {
		if l.is(i, "steam", "pressure", "heat", "zero", "vent", "venting", "hold", "psi", "simmer", "soak", "flame") {
			return true
		}
	}
	return false
}

// stroked is what stands in 25/12/2026 or 12/25: which of the first two is the
// month shows only when one can't be.
type stroked struct {
	a, b, year, end int
	// plain is true where it can be nothing else: a year, a zero in front.
	plain bool
}

// strokes reads dates with strokes at i.
func (l *lexer) strokes(i int) (stroked, bool) {
	one, two := l.at(i), l.at(i+2)
	if one.kind != atomDigits || len(one.text) > 2 || !l.glued(i+1, "/") || !l.digitsAt(i+2) || len(two.text) > 2 {
		return stroked{}, false
	}
	s := stroked{a: atoi(one.text), b: atoi(two.text), end: i + 3, plain: one.text[0] == '0' || two.text[0] == '0'}
	if l.glued(s.end, "/") && l.digitsAt(s.end+1) {
		y := l.at(s.end + 1).text
		if len(y) != 4 {
			return s, false
		}
		s.year, s.end, s.plain = atoi(y), s.end+2, true
	}
	if l.countsOn(s.end) || min(s.a, s.b) < 1 || min(s.a, s.b) > 12 || max(s.a, s.b) > 31 {
		return s, false
	}
	s.plain = s.plain || max(s.a, s.b) > 12 || l.is(i-1, "on")
	if !s.plain && l.at(s.end).gap {
		_, _, s.plain = l.clock(s.end, nothing)
	}
	return s, s.plain
}

// strokeDay reads 25/12 and 03/03/2026. 03/04 is none: see doubtfulDate.
func (l *lexer) strokeDay(i int) (dayRead, bool) {
	s, ok := l.strokes(i)
	if !ok || s.a != s.b && max(s.a, s.b) <= 12 || s.year != 0 && (s.year < 1970 || s.year > 2200) {
		return dayRead{}, false
	}
	if s.a > 12 || s.a == s.b {
		s.a, s.b = s.b, s.a
	}
	d := Day{Year: s.year, Month: time.Month(s.a), Date: s.b}
	return dayRead{day: d, end: s.end}, validDate(s.b, d.Month)
}

// doubtfulDate returns the atom behind a date with strokes that can be either of
// two, 03/04, and the time of day with it.
func (l *lexer) doubtfulDate(i int) int {
	s, ok := l.strokes(i)
	if !ok || s.a == s.b || max(s.a, s.b) > 12 {
		return i
	}
	if _, j, ok := l.clock(s.end, aDay); ok {
		return j
	}
	return s.end
}

// inDays reads in 3 weeks, 2 weeks ago, a month ago: whole days and months.
func (l *lexer) inDays(i int) (dayRead, bool) {
	j, sign := i, 0
	if l.is(i, "in") {
		j, sign = i+1, 1
	}
	n, ok := l.number(j)
	if !ok || n.v < 0 || n.unclear || n.times || n.v > 5000 || n.v != float64(int(n.v)) {
		if !l.is(j, "a", "one") {
			return dayRead{}, false
		}
		n = numeric{v: 1, end: j + 1} // a month: no unit of time, so the article is no number
	}
	d := dayRead{}
	if l.is(n.end, "month", "months") {
		d.day.Months, d.end = int(n.v), n.end+1
	} else {
		s, end, ok := l.period(j)
		if !ok || int(s)%86400 != 0 || s != float64(int(s)) || s == 0 || l.is(end-1, "h", "hr", "hrs", "hour", "hours") {
			return dayRead{}, false
		}
		d.day.Shift, d.end = int(s)/86400, end
	}
	way, end := l.way(d.end)
	if sign == 0 {
		sign, d.end = way, end
	}
	if sign == 0 || d.day.Shift > 5000 {
		return dayRead{}, false
	}
	d.day.Shift *= sign
	d.day.Months *= sign
	return d, true
}

// way reads whether a length of time has gone by (-1) or is to come (1).
func (l *lexer) way(j int) (int, int) {
	switch {
	case l.is(j, "ago", "earlier"):
		return -1, j + 1
	case l.is(j, "later"):
		return 1, j + 1
	case l.is(j, "from") && l.is(j+1, "now", "today"):
		return 1, j + 2
	}
	return 0, j
}
