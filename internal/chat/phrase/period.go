package phrase

import "math"

// period reads a length of time at i, in seconds: 2h30m, 90 min, an hour and a
// half, 2 hours ten. Months have no one length and are none.
func (l *lexer) period(i int) (seconds float64, end int, ok bool) {
	if s, j := l.colon(i); j > i {
		return s, j, true
	}
	n, ok := l.number(i)
	if !ok || n.times || n.unclear {
		return 0, i, false
	}
	m, j, ok := l.unitAt(n.end, true)
	if !ok || m.seconds == 0 || n.end == i {
		return 0, i, false
	}
	seconds = n.v * m.seconds
	last := m.seconds
	if half, k := l.andHalf(j); k > j {
		return seconds + half*last, k, true
	}
	for {
		more, unit, k := l.smaller(j, last)
		if k == j {
			return seconds, j, true
		}
		seconds += math.Copysign(more, n.v)
		last, j = unit, k
	}
}

// andHalf reads "and a half" behind a unit; the share of that unit.
func (l *lexer) andHalf(j int) (float64, int) {
	if l.is(j, "and", "&") && l.is(j+1, "a") && l.at(j+2).known != nil && l.at(j+2).known.number == part {
		if _, jar := l.halfJar(j + 2); !jar {
			return l.at(j + 2).known.value, j + 3
		}
	}
	return 0, j
}

// smaller reads the next part of a length of time, in a unit smaller than last:
// 30m, "and 30 seconds", or the ten of "2 hours ten".
func (l *lexer) smaller(j int, last float64) (seconds, unit float64, end int) {
	k := j
	for l.is(k, "and", ",") {
		k++
	}
	if !l.startsNumber(k) || k > j+2 {
		return 0, last, j
	}
	n, ok := l.number(k)
	if !ok || n.unclear || n.times || n.v < 0 {
		return 0, last, j
	}
	if m, e, ok := l.unitAt(n.end, true); ok {
		size := m.seconds
		if m == l.known("m") {
			size = 60
		}
		if size > 0 && size < last {
			return n.v * size, size, e
		}
		return 0, last, j
	}
	if k == j && last == 3600 && n.v < 60 && n.v == math.Trunc(n.v) && l.restsHere(n.end) {
		return n.v * 60, 60, n.end
	}
	return 0, last, j
}

// restsHere reports whether a number ends what was said or is followed by a word
// for times gone by: it counts nothing else.
func (l *lexer) restsHere(j int) bool {
	return l.at(j).text == "" || l.is(j, "ago", "earlier", "later", "before", "from", ".", "!", "?", ")", "\n", "at", "now", "then")
}

// colon reads 1:30 h: hours and minutes with the unit behind.
func (l *lexer) colon(i int) (float64, int) {
	if l.at(i).kind != atomDigits || !l.glued(i+1, ":") || !l.twoDigits(i+2) || !l.is(i+3, "h", "hr", "hrs", "hour", "hours") {
		return 0, i
	}
	h, m := atoi(l.at(i).text), atoi(l.at(i+2).text)
	if h < 0 || m > 59 || h >= 10 || l.is(i-1, "at", "@", "by") { // 14:30 hrs is a time
		return 0, i
	}
	return float64(h*3600 + m*60), i + 4
}
