package phrase

import (
	"math"
	"strings"
)

// thousandth reports whether the point at i+1 can be one between thousands: 1.600
// m is 1600 m to half of Europe, and so is 3.000 bags. A scale that shows 1.500
// kg can only mean the decimals.
func (l *lexer) thousandth(i, end int) bool {
	head, tail := l.at(i).text, l.at(i+2).text
	if l.at(i+1).text != "." || len(tail) != 3 || head[0] == '0' || len(head) > 3 {
		return false
	}
	m, _, ok := l.unitAt(end, true)
	if !ok {
		before := l.measureOf(l.at(i - 1))
		return tail == "000" && l.percentAt(end) == end || before != nil && before.money()
	}
	return m.money() || l.small(m)
}

// small reports whether a unit is so small that thousands of it are usual.
func (l *lexer) small(m *measure) bool {
	for _, w := range [...]string{"m", "metre", "ft", "yd", "g", "mg", "ml"} {
		if m == l.known(w) {
			return true
		}
	}
	return false
}

// spaced joins groups of three behind a space, 10 000 g, to the digits at i.
// Before another unit than one of length only noughts can't be a size of their
// own: 3 500 ml is three jars.
func (l *lexer) spaced(n numeric, i int) numeric {
	if a := l.at(n.end); a.kind != atomDigits || len(a.text) != 3 || !a.gap {
		return n
	}
	var all strings.Builder
	all.WriteString(l.at(i).text)
	noughts, j := true, n.end
	for l.at(j).kind == atomDigits && l.at(j).gap && len(l.at(j).text) == 3 && all.Len() < mostDigits-3 {
		all.WriteString(l.at(j).text)
		noughts = noughts && l.at(j).text == "000"
		j++
	}
	if j == n.end || len(l.at(i).text) > 3 || l.at(i).text[0] == '0' || !noughts && !l.lengthAt(j) {
		return n
	}
	n.v, n.end = integer(all.String()), j
	return n
}

// lengthAt reports whether a unit of length stands at j; a lone m with it.
func (l *lexer) lengthAt(j int) bool {
	m, _, ok := l.unitAt(j, true)
	return ok && m.means != nil && m.means[0].dim == Length
}

// point adds the decimals of two point five to a number in words.
func (l *lexer) point(n numeric) numeric {
	if n.end == 0 || l.at(n.end).text != "point" || n.v != math.Trunc(n.v) {
		return n
	}
	return l.decimals(n, n.end+1)
}

// decimals adds the decimals in words or digits that begin at j.
func (l *lexer) decimals(n numeric, j int) numeric {
	scale := 0.1
	for ; ; j++ {
		k := l.at(j).known
		switch {
		case l.is(j, "zero", "oh", "nought"):
		case k != nil && k.number == ones:
			n.v += scale * k.value
		case scale == 0.1 && k != nil && (k.number == teens || k.number == tens), // two point fifty
			scale == 0.1 && l.at(j).kind == atomDigits:
			n.unclear, n.end = true, j+1
			return n
		default:
			return n
		}
		n.end, scale = j+1, scale/10
	}
}

// nought reads zero where it counts: zero meters, zero point five. Alone it is
// the pressure gone.
func (l *lexer) nought(i int) (numeric, bool) {
	n := numeric{end: i + 1}
	switch {
	case l.is(i, "zero", "nought", "naught") && l.is(i+1, "point"):
		return n, l.point(n).end > n.end
	case l.is(i, "zero", "nought", "naught"):
		return n, l.lengthAt(i + 1)
	case l.at(i).text == "point":
		n.end = i
		n = l.decimals(n, i+1)
		_, _, ok := l.unitAt(n.end, true)
		return n, ok && n.end > i
	}
	return n, false
}

// minus reads minus 200 m, minus 5 degrees. Before other things it takes away.
func (l *lexer) minus(i int) (numeric, bool) {
	if before := l.at(i - 1); before.kind == atomDigits || before.known != nil && (before.known.measure != nil || before.known.vessel != 0) {
		return numeric{}, false
	}
	n, ok := l.number(i + 1)
	if !ok || n.times || n.v < 0 {
		return n, false
	}
	m, _, ok := l.unitAt(n.end, true)
	n.v, n.plain, n.ref = -n.v, false, false
	return n, ok && m.means != nil && (m.means[0].dim == Length || m.means[0].dim == Temperature)
}

// twice passes over a number said again: 3 (three) bags.
func (l *lexer) twice(n numeric) numeric {
	j := n.end
	if l.at(j).text != "(" || n.unclear || n.times {
		return n
	}
	end, v := j+2, 0.0
	switch k := l.at(j + 1).known; {
	case !n.digits && l.at(j+1).kind == atomDigits:
		v = integer(l.at(j + 1).text)
	case n.digits && k != nil && (k.number == ones || k.number == teens || k.number == tens):
		v, end = l.underHundred(j + 1)
	default:
		return n
	}
	if v != n.v || l.at(end).text != ")" {
		return n
	}
	n.end, n.plain, n.ref = end+1, false, false
	return n
}

// vague makes an amount that was said to be about right unclear: 2ish, 3-ish, 2
// ish kg. With a space and nothing behind, 38 ish is a reading like any other.
func (l *lexer) vague(n numeric) numeric {
	j := n.end
	if l.glued(j, "-") {
		j++
	}
	if !l.is(j, "ish") {
		return n
	}
	next := l.at(j + 1).known
	if !l.at(j).gap || next != nil && (next.measure != nil || next.vessel != 0) {
		n.unclear, n.end = true, j+1
	}
	return n
}

// couple reads a couple of and a pair of. A couple without its article can be a
// few.
func (l *lexer) couple(i int) (numeric, bool) {
	j := i + 1
	if l.is(j, "of") {
		j++
	}
	n := numeric{v: 2, end: j, unclear: l.at(i).text == "couple"}
	if l.at(i).text == "couple" && l.is(i-1, "a") {
		return n, true
	}
	k := l.at(j).known
	return n, k != nil && (k.vessel != 0 || k.measure != nil) || l.startsNumber(j)
}

// headless reports whether the comma at i is a decimal one with nothing before
// it: ,5 kg. Behind a bag or a unit it rather parts two things.
func (l *lexer) headless(i int) bool {
	if l.at(i).text != "," || !l.at(i).gap || !l.digitsAt(i+1) {
		return false
	}
	before := l.at(i - 1)
	if before.text != "" && (before.known == nil || before.known.class != Filler && before.known.class != Asking) {
		return false
	}
	_, _, ok := l.unitAt(i+2, true)
	return ok
}
