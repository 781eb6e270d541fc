package phrase

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// numeric is a number as read from atoms [i, end).
type numeric struct {
	v   float64
	end int
	// digits is true when it was written with digits.
	digits bool
	// plain is true for digits alone: no point, fraction or sign.
	plain   bool
	mixed   bool
	unclear bool
	times   bool
	// ref is true for 12.3, which can also be unit 3 of run 12.
	ref bool
}

// mostDigits is the number of digits beyond which nobody means a number.
const mostDigits = 17

// number reads a number in any of its forms.
func (l *lexer) number(i int) (numeric, bool) {
	m := &l.numbers[uint(i)%uint(len(l.numbers))]
	if m.at != i+1 {
		n, ok := l.readNumber(i)
		*m = memo{i + 1, n, ok}
		return n, ok
	}
	return m.n, m.ok
}

func (l *lexer) readNumber(i int) (numeric, bool) {
	a := l.at(i)
	n, ok := numeric{}, false
	switch {
	case a.kind == atomWord:
		if a.text == "x" && l.startsNumber(i+1) { // x3
			n, ok = l.number(i + 1)
			n.times = ok
			return n, ok
		}
		if a.text == "minus" {
			return l.minus(i)
		}
		n, ok = l.spelt(i)
		n = l.point(n)
	case a.kind == atomDigits:
		n, ok = l.written(i), true
		if n.v > 0 && n.v < 1 {
			n.end = l.ofA(n.end) // 2/3 of a cup
		}
	case a.text == "." && l.digitsAt(i+1) && (a.gap || l.at(i-1).kind == atomSign), l.headless(i):
		n, ok = numeric{v: decimal("0", l.at(i+1).text), end: i + 2, digits: true}, true
	case a.text == "-" && l.signed(i):
		n, ok = l.number(i + 1)
		n.v, n.plain, n.ref = -n.v, false, false
		return n, ok
	default:
		n.v, ok = fraction(a)
		n.end, n.digits = i+1, true
	}
	if !ok {
		return n, false
	}
	return l.vague(l.twice(l.multiplied(l.andPart(n)))), true
}

// signed reports whether the hyphen at i is a minus: glued to the number and not
// to what stands before.
func (l *lexer) signed(i int) bool {
	before := l.at(i - 1)
	return (l.at(i).gap || before.text == "(") && !l.at(i+1).gap &&
		(l.at(i+1).kind == atomDigits || l.glued(i+1, "."))
}

func (l *lexer) startsNumber(i int) bool {
	a := l.at(i)
	_, vulgar := fraction(a)
	return a.kind == atomDigits || vulgar || a.known != nil && a.known.number != 0 && a.known.number <= tens ||
		a.text == "." && l.digitsAt(i+1)
}

// counts reports whether atom i is a number, with a space behind it.
func (l *lexer) counts(i int) bool {
	a := l.at(i)
	return l.at(i+1).gap && (a.kind == atomDigits || a.text == "x" || a.known != nil && a.known.number != 0 && a.known.number != article)
}

func fraction(a *atom) (float64, bool) {
	if a.kind != atomSign || len(a.text) < 2 {
		return 0, false
	}
	for _, r := range a.text {
		v, ok := vulgar[r]
		return v, ok
	}
	return 0, false
}

func decimal(whole, part string) float64 {
	v, err := strconv.ParseFloat(whole+"."+part, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

func integer(s string) float64 {
	if len(s) <= 9 {
		n := 0
		for i := range len(s) {
			n = n*10 + int(s[i]-'0')
		}
		return float64(n)
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// written reads a number that begins with digits at i.
func (l *lexer) written(i int) numeric {
	n := numeric{v: integer(l.at(i).text), end: i + 1, digits: true, plain: true}
	n.unclear = len(l.at(i).text) > mostDigits
	for (l.glued(n.end, ".") || l.glued(n.end, ",")) && l.digitsAt(n.end+1) {
		n.end += 2
	}
	if n.end > i+1 {
		n.plain = false
		n.v, n.ref, n.unclear = l.grouped(i, n.end)
		n.unclear = n.unclear || n.end == i+3 && l.thousandth(i, n.end)
	} else {
		n = l.spaced(n, i)
	}
	if l.glued(n.end, "/") && l.digitsAt(n.end+1) {
		return l.divided(n, i)
	}
	if n.plain {
		n = l.mixedUp(n, i)
	}
	// 14:60 is no time, 3² is not 3, and 6' is feet or a quote.
	if l.glued(n.end, ":") && l.digitsAt(n.end+1) || l.raised(n.end) || l.glued(n.end, "'") && !l.feet(n.end) {
		n.unclear = true
		n.end++
		if l.digitsAt(n.end) {
			n.end++
		}
		if l.is(n.end, "am", "pm") {
			n.end++
		}
	}
	return n
}

// raised reports whether the sign at j is a digit of another kind: ², ③.
func (l *lexer) raised(j int) bool {
	a := l.at(j)
	if a.kind != atomSign || a.gap || len(a.text) < 2 {
		return false
	}
	r, _ := utf8.DecodeRuneInString(a.text)
	return vulgar[r] == 0 && unicode.IsNumber(r)
}

// grouped reads digits with points and commas between them. 1,500 is fifteen
// hundred, 2,5 and 18,50 are decimals, and what could be either is unclear.
func (l *lexer) grouped(i, end int) (v float64, ref, unclear bool) {
	head, tail := l.at(i).text, l.at(i+2).text
	point := l.at(i+1).text == "."
	thousands := len(head) <= 3 && head[0] != '0'
	switch {
	case len(head) > mostDigits || len(tail) > mostDigits:
		return 0, false, true
	case end == i+3 && point:
		return decimal(head, tail), head[0] != '0' && tail[0] != '0' && len(tail) <= 3, false
	case end == i+3 && len(tail) != 3:
		return decimal(head, tail), false, len(tail) > 4
	case end == i+3 && thousands:
		return integer(head + tail), false, false
	case end == i+3:
		return decimal(head, tail), false, head != "0"
	}
	// Several separators: groups of three behind commas, perhaps a decimal point.
	var all strings.Builder
	all.WriteString(head)
	for k := i + 1; k < end; k += 2 {
		last := k == end-2
		group := l.at(k + 1).text
		switch {
		case l.at(k).text == "," && len(group) == 3 && thousands && all.Len() < mostDigits:
			all.WriteString(group)
		case l.at(k).text == "." && last && k > i+1 && len(group) <= mostDigits:
			return decimal(all.String(), group), false, false
		default:
			return 0, false, true
		}
	}
	return integer(all.String()), false, false
}

// divided reads 1/2. A fraction of decimals, a second stroke or a comma behind
// it can't be read for sure.
func (l *lexer) divided(n numeric, i int) numeric {
	over, under := n.v, integer(l.at(n.end+1).text)
	n.unclear = n.unclear || !n.plain || !fractional(over, under)
	n.v, n.plain = over/under, false
	n.end += 2
	for (l.glued(n.end, "/") || l.glued(n.end, ",") || l.glued(n.end, ".")) && l.digitsAt(n.end+1) {
		n.unclear = true
		n.end += 2
	}
	return n
}

// fractional reports whether a number over another is one that people mean: 3/4,
// 5/2, 15/16. 25/12 is rather a day.
func fractional(over, under float64) bool {
	switch under {
	case 2, 3, 4, 5, 6, 7, 8, 9, 10:
		return over < 10 || over < under || under == 2
	case 12:
		return over < 10
	case 16, 32, 64:
		return over < under
	}
	return false
}

// mixedUp adds a fraction behind a whole number: 1½, 1 1/2, 1-1/2. "2 1/2-pint"
// is two of a half pint: there the hyphen ties the fraction to the unit.
func (l *lexer) mixedUp(n numeric, i int) numeric {
	j, hyphen := n.end, false
	if l.glued(j, "-") && !l.at(j+1).gap {
		j, hyphen = j+1, true
	}
	a := l.at(j)
	part, end := 0.0, j+1
	if v, ok := fraction(a); ok {
		part = v
	} else if a.kind == atomDigits && (a.gap || hyphen) && l.glued(j+1, "/") && l.digitsAt(j+2) {
		f := l.divided(numeric{v: integer(a.text), end: j + 1, plain: true}, j)
		if f.unclear || f.v >= 1 {
			return n
		}
		part, end = f.v, f.end
	}
	tied := l.glued(end, "-") && l.at(end+1).known != nil && l.at(end+1).known.measure != nil
	// In "3 1 1/2-pint jars" the 3 is the count already.
	counted := l.counts(i - 1)
	tied = tied && !counted
	if part == 0 || part >= 1 || a.gap && !hyphen && tied {
		return n
	}
	n.v += part
	n.end, n.plain = end, false
	n.mixed = a.gap && !hyphen && !counted
	return n
}

// spelt reads a number in words.
func (l *lexer) spelt(i int) (numeric, bool) {
	k := l.at(i).known
	if k == nil || k.number == 0 || l.someone(i) {
		return l.nought(i)
	}
	switch k.number {
	case ones, teens, tens:
		v, j := l.underHundred(i)
		return l.parts(numeric{v: v, end: j}), true
	case hundred, thousand:
		return numeric{v: 1, end: i}, true // multiplied sees the word
	case huge:
		return numeric{}, false
	case dozen:
		return numeric{v: 12, end: i + 1}, true
	case couple:
		return l.couple(i)
	case article:
		return l.article(i)
	case part:
		return l.part(i)
	}
	panic(k.number)
}

// someone reports whether "one" at i stands for a thing: the big one.
func (l *lexer) someone(i int) bool {
	if l.at(i).text != "one" || i == 0 {
		return false
	}
	if next := l.at(i + 1).known; next != nil && (next.measure != nil && !next.measure.close || next.vessel != 0 || next.number != 0) || l.is(i+1, "-") {
		return false
	}
	before := l.at(i - 1)
	switch {
	case before.kind != atomWord || before.known == nil:
		return false
	case l.is(i-1, "the", "that", "this", "which", "every", "each", "any", "no", "another", "other", "first", "last",
		"second", "next", "big", "small", "large", "little", "old", "new", "red", "blue", "green", "black", "white",
		"middle", "top", "bottom", "good", "bad", "same", "right", "wrong", "hot", "cold", "only"):
		return true
	}
	return false
}

func (l *lexer) underHundred(i int) (float64, int) {
	k := l.at(i).known
	v, j := k.value, i+1
	if k.number != tens {
		return v, j
	}
	if l.glued(j, "-") && !l.at(j+1).gap {
		j++
	}
	if next := l.at(j).known; next != nil && next.number == ones {
		return v + next.value, j + 1
	}
	return v, i + 1
}

// parts reads three quarters, two thirds, and "of a" when a unit follows.
func (l *lexer) parts(n numeric) numeric {
	j := n.end
	tied := l.glued(j, "-") && !l.at(j+1).gap
	if tied {
		j++
	}
	next := l.at(j).known
	if next == nil || next.number != part {
		return n
	}
	if w := l.at(j).text; !tied && n.v != 1 && w[len(w)-1] != 's' {
		return n // three quarter-pound bags
	}
	n.v *= next.value
	n.end = l.ofA(j + 1)
	return n
}

// ofA skips "of a", "of an", "a", "an" and "of" before a unit.
func (l *lexer) ofA(j int) int {
	k := j
	if l.is(k, "of") {
		k++
	}
	if l.is(k, "a", "an") {
		k++
	}
	if _, _, ok := l.unitAt(k, false); ok {
		return k
	}
	return j
}

// part reads half and quarter where they are amounts: half a kilo, half-litre,
// quarter of an hour, half a dozen.
func (l *lexer) part(i int) (numeric, bool) {
	n := numeric{v: l.at(i).known.value, end: i + 1}
	j := i + 1
	if l.is(j, "a", "an") || l.glued(j, "-") {
		j++
	}
	if k := l.at(j).known; k != nil && k.number == dozen && l.at(i).text == "half" {
		n.v, n.end = n.v*k.value, j+1
		return n, true
	}
	if _, jar := l.halfJar(i); jar || l.at(i).text != "half" && l.at(i).text != "quarter" {
		return n, false
	}
	n.end = l.ofA(i + 1)
	_, _, ok := l.unitAt(n.end, true)
	return n, ok
}

// article reads a and an where they count: a bag, a 1-pound bag, a dozen.
func (l *lexer) article(i int) (numeric, bool) {
	n := numeric{v: 1, end: i + 1}
	next := l.at(i + 1)
	k := next.known
	if next.kind == atomDigits {
		d, _ := l.number(i + 1)
		_, _, ok := l.unitAt(d.end, true)
		return n, ok
	}
	switch {
	case k == nil:
		return n, false
	case k.number == dozen:
		return numeric{v: 12, end: i + 2}, true
	case k.number == couple:
		n, ok := l.couple(i + 1)
		n.unclear = false
		return n, ok
	case k.number == hundred || k.number == thousand:
		return n, true
	case k.number == part:
		if _, ok := l.halfJar(i + 1); ok {
			return n, true
		}
		return l.part(i + 1)
	case k.number == ones || k.number == teens || k.number == tens:
		d, _ := l.spelt(i + 1)
		_, _, ok := l.unitAt(d.end, true)
		return n, ok && d.end > i+1
	case k.vessel != 0:
		return n, true
	case k.measure != nil && len(next.text) > 1:
		_, _, ok := l.unitAt(i+1, false)
		return n, ok
	}
	return n, false
}
