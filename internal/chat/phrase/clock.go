package phrase

import "math"

// beside says what stands beside a time of day, and so how little will do to
// make one.
type beside uint8

const (
	// nothing: it must be plain by itself: 14:05, 2pm, noon.
	nothing beside = iota
	// preposition: at, since, by: 1405 and 14.05 are times too.
	preposition
	// aDay: a day or part of one: a bare hour is a time too.
	aDay
	// aClock: the other end of an interval: so is 11h.
	aClock
)

// half is the half of the day that a time was said to lie in.
type half uint8

const (
	unsaid half = iota
	am
	pm
)

// clock reads a time of day at i that has no day of its own.
func (l *lexer) clock(i int, b beside) (ClockTime, int, bool) {
	c, j, ok := l.clockOfDay(i, b)
	if ok && c.Hour == 24 {
		c = ClockTime{Half: true}
	}
	return c, j, ok
}

// clockOfDay reads a time of day at i that may stand beside a day: 24:00 and
// midnight are its hour 24.
func (l *lexer) clockOfDay(i int, b beside) (ClockTime, int, bool) {
	if k := l.at(i).known; k != nil && (k.day == noon || k.day == midnight) {
		return noonOr(k.day), i + 1, true
	}
	if k := l.at(i + 1).known; k != nil && (k.day == noon || k.day == midnight) && l.is(i, "12", "twelve") {
		return noonOr(k.day), i + 2, true
	}
	if c, j, ok := l.past(i, b); ok {
		return c, j, true
	}
	return l.hour(i, b)
}

func noonOr(d dayWord) ClockTime {
	if d == noon {
		return ClockTime{Hour: 12, Half: true}
	}
	return ClockTime{Hour: 24}
}

// past reads half past two, quarter to two, 20 to 2pm, twenty after 3pm.
func (l *lexer) past(i int, b beside) (ClockTime, int, bool) {
	minutes, j, certain := l.minutes(i)
	if j == i {
		return ClockTime{}, i, false
	}
	before := l.is(j, "to", "till", "of", "before")
	if !before && !l.is(j, "past", "after") {
		return ClockTime{}, i, false
	}
	if before && !certain && l.is(i-1, "from", "between") {
		return ClockTime{}, i, false // from 10 to 12
	}
	of := aDay
	if !certain && !l.is(j, "past") && (b == nothing || minutes%5 != 0) {
		// "10 to 2" is a range and "3 after 2" nothing; "10 to 2pm" can be from ten
		// to two as well, which twenty can't.
		of = nothing
		if before && minutes <= 12 {
			return ClockTime{}, i, false
		}
	}
	c, end, ok := l.clockProper(j+1, of)
	if !ok || c.Minute != 0 {
		return ClockTime{}, i, false
	}
	c.Minute = minutes
	if before {
		c.Minute = 60 - minutes
		c.Hour--
		if c.Hour < 0 || c.Hour == 0 && !c.Half {
			c.Hour = (c.Hour + 24) % 24
			if !c.Half {
				c.Hour = 12
			}
		}
	}
	return c, end, true
}

// clockProper is an hour or noon: what past counts from.
func (l *lexer) clockProper(i int, b beside) (ClockTime, int, bool) {
	if k := l.at(i).known; k != nil && k.day == midnight {
		return ClockTime{Half: true}, i + 1, true
	} else if k != nil && k.day == noon {
		return noonOr(noon), i + 1, true
	}
	return l.hour(i, b)
}

// minutes reads the minutes before past and to. certain is true where they can
// be nothing else: half, quarter, 20 minutes.
func (l *lexer) minutes(i int) (minutes, end int, certain bool) {
	j := i
	if l.is(j, "a") && l.is(j+1, "quarter") {
		j++
	}
	switch {
	case l.is(j, "half"):
		return 30, j + 1, true
	case l.is(j, "quarter"):
		return 15, j + 1, true
	}
	n, ok := l.smallNumber(i)
	if !ok || n.v < 1 || n.v > 59 {
		return 0, i, false
	}
	if l.is(n.end, "min", "mins", "minute", "minutes") {
		return int(n.v), n.end + 1, true
	}
	return int(n.v), n.end, false
}

// smallNumber reads a whole number below 10,000, in digits or words, with
// nothing glued to it that makes it another.
func (l *lexer) smallNumber(i int) (numeric, bool) {
	a := l.at(i)
	switch {
	case a.kind == atomDigits && len(a.text) <= 4:
		return numeric{v: integer(a.text), end: i + 1, digits: true}, true
	case a.known != nil && (a.known.number == ones || a.known.number == teens || a.known.number == tens):
		v, end := l.underHundred(i)
		return numeric{v: v, end: end}, true
	}
	return numeric{}, false
}

// hour reads an hour with or without minutes: 14:05, 2.05pm, 15h20, 1405, 11
// p.m., seven o'clock.
func (l *lexer) hour(i int, b beside) (ClockTime, int, bool) {
	n, ok := l.smallNumber(i)
	if !ok || n.v != math.Trunc(n.v) || l.is(i-1, "-", "#") && !l.at(i).gap && b == nothing {
		return ClockTime{}, i, false
	}
	c, j, bare := ClockTime{Hour: int(n.v)}, n.end, false
	text := l.at(i).text
	switch {
	case l.glued(j, ":") && l.twoDigits(j+1):
		c.Minute, j = atoi(l.at(j+1).text), j+2
		if l.glued(j, ":") && l.twoDigits(j+1) {
			j += 2
		}
		if _, period := l.colon(i); period == i && l.is(j, "h", "hr", "hrs", "hours") {
			j++
		}
		c.Half = len(text) == 2 && text[0] == '0'
	case l.glued(j, ".") && l.twoDigits(j+1) && n.digits:
		c.Minute, j, bare = atoi(l.at(j+1).text), j+2, b == nothing
		c.Half = len(text) == 2 && text[0] == '0'
	case l.glued(j, "h") && l.twoDigits(j+1) && n.digits:
		if b == nothing && l.agoFollows(j+2) || b < aDay && c.Hour < 6 {
			return c, i, false // a length of time
		}
		c.Minute, j, c.Half = atoi(l.at(j+1).text), j+2, true
	case l.glued(j, "h") && n.digits && (b == aClock || b == aDay && c.Hour >= 6 || b == preposition && (c.Hour >= 13 || l.is(i-1, "at", "@"))):
		j, c.Half = j+1, true
	case n.digits && len(text) == 4:
		if _, date := l.isoDay(i); date {
			return c, i, false
		}
		c = ClockTime{Hour: int(n.v) / 100, Minute: int(n.v) % 100, Half: text[0] == '0'}
		bare = b == nothing
		if l.is(j, "h", "hrs", "hours") {
			j++
		}
	case n.digits && len(text) == 3:
		c, bare = ClockTime{Hour: int(n.v) / 100, Minute: int(n.v) % 100}, true // 930am
	case l.is(j, "o'clock", "oclock"):
		j++
	case !n.digits && c.Hour >= 10 && c.Hour <= 24 && l.is(j, "hundred") && b >= preposition: // seventeen hundred
		j, c.Half = j+1, true
	case !n.digits && c.Hour <= 24 && l.minuteWord(j):
		c.Minute, j = l.minuteOf(j)
		bare = b == nothing
	default:
		bare = b < aDay
	}
	return l.halved(c, i, j, bare)
}

// halved reads the half of the day behind a time and checks that it is one. A
// bare number is a time only with it.
func (l *lexer) halved(c ClockTime, i, j int, bare bool) (ClockTime, int, bool) {
	h, end := l.halfAt(j, c.Hour)
	switch {
	case h == unsaid && (bare || l.countsOn(j)), c.Minute > 59, c.Hour > 24, c.Hour == 24 && (c.Minute > 0 || h != unsaid),
		h == am && c.Hour > 12, h == pm && c.Hour == 0: // 15:30am is nothing
		return ClockTime{}, i, false
	}
	return inHalf(c, h), end, true
}

// minuteWord reports whether minutes in words stand at j: the thirty of five
// thirty.
func (l *lexer) minuteWord(j int) bool {
	k := l.at(j).known
	return k != nil && (k.number == teens || k.number == tens)
}

func (l *lexer) minuteOf(j int) (minutes, end int) {
	v, end := l.underHundred(j)
	return int(v), end
}

// inHalf settles the half of the day, where it was said or can't be another.
func inHalf(c ClockTime, h half) ClockTime {
	switch {
	case c.Hour > 12 || c.Hour == 0:
		c.Half = true
	case h == am:
		c.Hour, c.Half = c.Hour%12, true
	case h == pm:
		c.Hour, c.Half = c.Hour%12+12, true
	}
	return c
}

func (l *lexer) twoDigits(i int) bool { return l.digitsAt(i) && len(l.at(i).text) == 2 }

// agoFollows reports whether a length of time at hand is one gone by or to come.
func (l *lexer) agoFollows(i int) bool { return l.is(i, "ago", "earlier", "later", "from") }

// countsOn reports whether the number that ends before j counts or measures what
// follows and is no hour.
func (l *lexer) countsOn(j int) bool {
	a := l.at(j)
	if _, _, ok := l.unitAt(j, true); ok || l.percentAt(j) > j {
		return true
	}
	if !a.gap && (a.kind == atomDigits || a.kind == atomWord && !l.is(j, "h")) {
		return true
	}
	if !a.gap && l.is(j, ".", ",", "/", ":") && l.digitsAt(j+1) {
		return true
	}
	return a.known != nil && (a.known.vessel != 0 || l.is(j, "x"))
}

// halfAt reads am, pm, a.m., 9a, 3p, in the morning, at night behind an hour.
func (l *lexer) halfAt(j, hour int) (half, int) {
	a := l.at(j)
	switch {
	case a.text == "am":
		return am, j + 1
	case a.text == "pm":
		return pm, j + 1
	case l.is(j, "a", "p") && l.glued(j+1, ".") && l.glued(j+2, "m"):
		end := l.dot(j + 3)
		return ampm(a.text), end
	case l.is(j, "a", "p") && !a.gap:
		return ampm(a.text), j + 1
	case l.is(j, "in") && l.is(j+1, "the") && l.at(j+2).known != nil:
		if d := l.at(j + 2).known.day; d == night {
			return atNight(hour), j + 3
		} else if h := halfOf(d); h != unsaid {
			return h, j + 3
		}
	case l.is(j, "at") && l.is(j+1, "night"):
		return atNight(hour), j + 2
	}
	return unsaid, j
}

// atNight is the half of the day of an hour at night: 8 is before midnight, 2
// behind it.
func atNight(hour int) half {
	if hour == 12 || hour < 6 {
		return am
	}
	return pm
}

func ampm(s string) half {
	if s == "a" {
		return am
	}
	return pm
}

// halfOf tells the half of the day that a word means.
func halfOf(d dayWord) half {
	switch d {
	case morning:
		return am
	case afternoon, evening, night, tonight:
		return pm
	case 0, today, tomorrow, yesterday, noon, midnight:
		return unsaid
	}
	panic(d)
}
