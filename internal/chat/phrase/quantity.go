package phrase

import (
	"math"
	"strconv"
	"time"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// measured reads a number with whatever belongs to it: a unit, a per cent sign,
// a second number that makes a range.
func (l *lexer) measured(i int) int {
	if _, end, ok := l.period(i); ok {
		return l.emitPeriod(i, end)
	}
	if l.is(i, "sea") && l.is(i+1, "level") && !l.is(i-1, "above", "over", "below", "under", "the") {
		return l.emit(Quantity{at: l.over(i, i+2), Senses: []Sense{{Length, 0, "m"}}}, i+2)
	}
	n, ok := l.number(i)
	if !ok {
		return i
	}
	if j := l.ranged(i, n); j > i {
		return j
	}
	return l.amount(i, n)
}

// amount puts out the number n that began at i.
func (l *lexer) amount(i int, n numeric) int {
	if j := l.percentAt(n.end); j > n.end && !n.times {
		if n.unclear {
			return l.emit(Unclear{l.over(i, j)}, j)
		}
		return l.emit(Percent{at: l.over(i, j), Value: n.v}, j)
	}
	if m, j, ok := l.unitAt(n.end, true); ok && !n.times && !l.labelled(i, n.end) {
		if end := l.odds(m, j); n.unclear || m.seconds > 0 || end > j {
			return l.emit(Unclear{l.over(i, end)}, end)
		}
		return l.amountOf(i, j, n, m)
	}
	if n.unclear {
		return l.emit(Unclear{l.over(i, n.end)}, n.end)
	}
	if a := l.at(n.end); n.digits && a.kind == atomWord && !a.gap && !n.times && l.strange(a) {
		return l.emit(Word{at: l.over(i, n.end+1), Text: l.folded.s[l.at(i).from:a.to]}, n.end+1)
	}
	if r, end, ok := l.open(n, nil, n.end); ok {
		r.at = l.over(i, end)
		return l.emit(r, end)
	}
	t := Number{
		at: l.over(i, n.end), Value: n.v, Whole: n.v == math.Trunc(n.v), Word: !n.digits,
		Times: n.times, Mixed: n.mixed,
	}
	if n.ref {
		t.Ref = l.refOf(i)
	}
	return l.emit(t, n.end)
}

// strange reports whether letters glued to a number are no word that can follow
// one, so that 2nd and 12abc are no numbers.
func (l *lexer) strange(a *atom) bool {
	k := a.known
	return k == nil || k.measure == nil && k.vessel == 0 && k.phrases == nil && k.number == 0 &&
		k.month == 0 && k.weekday == 0
}

// odds returns the atom behind money that goes on in a way nobody can be sure
// of, twenty dollar and 43; j when it doesn't.
func (l *lexer) odds(m *measure, j int) int {
	if m.means == nil || m.means[0].dim != Money || !l.is(j, "and") {
		return j
	}
	n, ok := l.number(j + 1)
	if !ok {
		return j
	}
	next := l.measureOf(l.at(n.end))
	switch {
	case l.at(n.end).text == "":
		return n.end
	case next != nil && next.means != nil && next.means[0].dim == Money:
		return n.end + 1
	}
	return j
}

// labelled reports whether the number in atoms [i, j) belongs to the word before
// it and the currency behind it to the next number: lot 3 eur 125.
func (l *lexer) labelled(i, j int) bool {
	m := l.at(j)
	if m.known == nil && m.kind != atomSign || !l.startsNumber(j+1) {
		return false
	}
	if measure := l.measureOf(m); measure == nil || measure.means == nil || measure.means[0].dim != Money {
		return false
	}
	if m.kind == atomSign && m.gap {
		return true
	}
	return l.is(i-1, "lot", "plate", "bottle", "run", "batch", "jar", "bag", "no", "nr", "number", "#", "syringe")
}

func (l *lexer) imperial() bool { return l.names.Quarts == kitchen.Imperial }

func (l *lexer) measureOf(a *atom) *measure {
	switch {
	case a.known != nil:
		return a.known.measure
	case a.kind == atomSign:
		if k := vocabulary()[a.text]; k != nil {
			return k.measure
		}
	}
	return nil
}

// percentAt returns the atom behind a per cent sign or word, j if there's none.
func (l *lexer) percentAt(j int) int {
	switch {
	case l.is(j, "%", "percent", "pct"):
		return j + 1
	case l.is(j, "per") && l.is(j+1, "cent"):
		return j + 2
	}
	return j
}

// unitAt reads the unit at j. behind says that a number stands right before it,
// so that a hyphen may tie them and short words such as in are units when glued.
func (l *lexer) unitAt(j int, behind bool) (*measure, int, bool) {
	k := j
	if behind && l.is(k, "-") && l.at(k+1).kind == atomWord && (!l.at(k).gap && !l.at(k+1).gap) {
		k++
	}
	a := l.at(k)
	if a.text == "'" && behind && l.feet(k) {
		return l.known("ft"), k + 1, true
	}
	if a.known == nil && a.kind != atomSign {
		return nil, j, false
	}
	m := l.measureOf(a)
	switch {
	case m == nil && (a.known == nil || a.known.class != Measuring):
		return nil, j, false
	case m == nil:
		return l.unitOfTwo(k, j)
	case m.close && (a.gap || !behind):
		return nil, j, false
	case a.text == "#":
		if l.digitsAt(k+1) || a.gap && !behind || l.tagAt(k) && a.gap {
			return nil, j, false
		}
		return m, k + 1, true
	case l.is(k, "°", "deg", "degs", "degree", "degrees"):
		return l.scale(m, k+1)
	}
	return m, l.stop(k), true
}

// feet reports whether the stroke at k stands for feet: 5280'. Behind smaller
// numbers, or where a quote was opened, nobody can say.
func (l *lexer) feet(k int) bool {
	i := k - 1
	if len(l.at(i).text) < 3 || l.at(k+1).kind == atomDigits {
		return false
	}
	for l.at(i).kind == atomDigits || l.is(i, ",") && k-i < 6 {
		i--
	}
	return l.at(i).text != "'"
}

// unitOfTwo reads fluid ounces and square feet at k.
func (l *lexer) unitOfTwo(k, j int) (*measure, int, bool) {
	switch {
	case l.is(k, "fl", "fluid") && l.is(l.dot(k+1), "oz", "ounce", "ounces", "ozs"):
		return l.known("floz"), l.dot(k+1) + 1, true
	case l.is(k, "sq", "square", "cubic", "cu") && l.at(k+1).known != nil && l.at(k+1).known.measure != nil:
		return l.known("acre"), k + 2, true
	}
	return nil, j, false
}

func (l *lexer) known(w string) *measure { return vocabulary()[w].measure }

// dot skips a full stop glued to an abbreviation.
func (l *lexer) dot(k int) int {
	if l.glued(k, ".") {
		return k + 1
	}
	return k
}

// stop returns the atom behind the unit at k, a full stop with it when the
// sentence plainly goes on: 5 lb. bags.
func (l *lexer) stop(k int) int {
	next := l.at(k + 2)
	if l.glued(k+1, ".") && next.gap && next.known != nil && (next.known.vessel != 0 || next.known.phrases != nil) {
		return k + 2
	}
	return k + 1
}

// scale reads the scale of degrees at k: °F, degrees celsius, deg. C.
func (l *lexer) scale(degree *measure, k int) (*measure, int, bool) {
	at := l.dot(k)
	if l.glued(at, "-") {
		at++
	}
	m := l.measureOf(l.at(at))
	if m != nil && m != degree && m.means != nil && m.means[0].dim == Temperature {
		if m == l.known("c") {
			m = l.known("celsius")
		}
		return m, at + 1, true
	}
	return degree, k, true
}

// money reads an amount with the currency first: $10, EUR 20.0, usd3.14.
func (l *lexer) money(i int) int {
	a := l.at(i)
	m := l.measureOf(a)
	if m == nil || m.means == nil || m.means[0].dim != Money || a.kind == atomWord && len(a.text) != 3 {
		return i
	}
	if !l.startsNumber(i + 1) {
		return i
	}
	n, ok := l.number(i + 1)
	if !ok {
		return i
	}
	if end := l.odds(m, n.end); n.unclear || end > n.end {
		return l.emit(Unclear{l.over(i, end)}, end)
	}
	return l.emit(Quantity{at: l.over(i, n.end), Number: n.v, Senses: m.senses(n.v, false)}, n.end)
}

// ranged reads a second number that makes the first one end of a range: 10-20
// kg, 10 kg to 20 kg, 3 or 4 bags.
func (l *lexer) ranged(i int, n numeric) int {
	j := n.end
	m, k, measured := l.unitAt(j, true)
	if measured {
		j = k
	} else if p := l.percentAt(j); p > j {
		j = p
	}
	switch {
	case n.times:
		return i
	case l.is(j, "-") && l.at(j).gap == l.at(j+1).gap:
	case l.is(j, "to", "till", "until", "or") && l.at(j).kind == atomWord:
	case l.is(j, "and") && l.is(i-1, "between"):
	default:
		return i
	}
	second, ok := l.number(j + 1)
	if !ok || second.times {
		return i
	}
	end := second.end
	m2, k2, both := l.unitAt(end, true)
	if measured && (!both || m2 != m) {
		return i // 7 quarts or 3 bags; 5 lb - 3
	}
	if l.is(j, "or") && !both && !measured && l.at(end).known == nil {
		return i
	}
	if both {
		end, m = k2, m2
	} else if p := l.percentAt(end); p > end {
		end, m = p, nil
	} else {
		m = nil
	}
	if n.unclear || second.unclear {
		return l.emit(Unclear{l.over(i, end)}, end)
	}
	r := Range{at: l.over(i, end), Lo: n.v, Hi: second.v}
	if m != nil {
		r.Senses = l.ofOne(m)
	}
	return l.emit(r, end)
}

func (l *lexer) ofOne(m *measure) []Sense {
	if m.seconds > 0 {
		return []Sense{{Dim: Duration, Value: m.seconds, Unit: "s"}}
	}
	s := m.senses(1, l.imperial())
	for i := range s {
		if s[i].Dim == Temperature {
			s[i].Value = 0
		}
	}
	return s
}

// bound reads over 4 oz, at least 2 kg, < 6 lb.
func (l *lexer) bound(i int) int {
	j, above := i+1, false
	switch {
	case l.is(i, "over", "above", ">"):
		above = true
	case l.is(i, "under", "below", "<"):
	case l.is(i, "no", "not") && l.is(i+1, "more", "less", "fewer", "over", "under") && (l.is(i+2, "than") || l.is(i+1, "over", "under")):
		j, above = i+2, l.is(i+1, "less", "fewer", "under")
		if l.is(j, "than") {
			j++
		}
	case l.is(i, "at") && l.is(i+1, "least"), l.is(i, "more") && l.is(i+1, "than"):
		j, above = i+2, true
	case l.is(i, "at") && l.is(i+1, "most"), l.is(i, "up") && l.is(i+1, "to"),
		l.is(i, "less", "fewer") && l.is(i+1, "than"):
		j = i + 2
	default:
		return i
	}
	if l.is(j, "=", "about") {
		j++
	}
	if _, _, ok := l.period(j); ok {
		return i
	}
	n, ok := l.number(j)
	if !ok {
		return i
	}
	r := Range{Lo: math.Inf(-1), Hi: n.v}
	if above {
		r.Lo, r.Hi = n.v, math.Inf(1)
	}
	end := l.percentAt(n.end)
	if m, k, ok := l.unitAt(end, true); ok {
		end, r.Senses = k, l.ofOne(m)
	}
	if n.unclear {
		return l.emit(Unclear{l.over(i, end)}, end)
	}
	r.at = l.over(i, end)
	return l.emit(r, end)
}

// halfJar reads half pint, half-gal: the size of one jar. A half litre is an
// amount like any other.
func (l *lexer) halfJar(i int) (kitchen.Container, bool) {
	j := i + 1
	if l.at(i).text != "half" {
		return kitchen.Container{}, false
	}
	if l.glued(j, "-") {
		j++
	}
	k := l.at(j).known
	if k == nil || k.measure == nil || !k.measure.jar || k.measure == l.known("l") {
		return kitchen.Container{}, false
	}
	return l.jar(k.measure, 0.5), true
}

func (l *lexer) jar(m *measure, n float64) kitchen.Container {
	return kitchen.Container{Vessel: kitchen.Jar, Volume: unit.Litres(m.senses(n, l.imperial())[0].Value)}
}

// emitPeriod puts out the length of time in atoms [i, end).
func (l *lexer) emitPeriod(i, end int) int {
	s, _, _ := l.period(i)
	if s < 0 || s > 10*365*86400 {
		return l.emit(Unclear{l.over(i, end)}, end)
	}
	return l.emit(Period{at: l.over(i, end), Length: time.Duration(s * float64(time.Second))}, end)
}

func atoi(s string) int {
	n, err := strconv.Atoi(s)
	if err != nil || len(s) > 9 {
		return -1
	}
	return n
}
