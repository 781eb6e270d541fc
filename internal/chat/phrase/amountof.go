package phrase

import "math"

// amountOf puts out n of the unit m that ends before j, with what belongs to it:
// the smaller unit of 2 lb 4 oz, the same again in another unit, the plus of 2
// kg+.
func (l *lexer) amountOf(i, j int, n numeric, m *measure) int {
	v, end, clear := l.more(n.v, m, j)
	if !clear {
		return l.emit(Unclear{l.over(i, end)}, end)
	}
	n.v = v
	if r, k, ok := l.open(n, m, end); ok {
		r.at = l.over(i, k)
		return l.emit(r, k)
	}
	q := Quantity{Number: v, Senses: m.senses(v, l.imperial()), Mixed: n.mixed}
	if g, ok := l.gloss(end, q, m); ok {
		end = g.end
		if g.senses == nil {
			return l.emit(Unclear{l.over(i, end)}, end)
		}
		q.Senses = g.senses
	}
	q.at = l.over(i, end)
	return l.emit(q, end)
}

// compounds are the units that people use together, and how many of the small
// one make the large one.
var compounds = [...]struct {
	large, small string
	ratio        float64
}{
	{"lb", "oz", 16},
	{"kg", "g", 1000},
	{"ft", "inch", 12},
	{"m", "cm", 100},
	{"l", "ml", 1000},
	{"quart", "pint", 2},
	{"gal", "quart", 4},
	{"gal", "pint", 8},
}

// more adds what belongs to an amount behind its unit at j: and a half, or the
// smaller unit of 2 lb 4 oz and 2 pounds and 8 ounces. clear is false where that
// can be two sizes: 5 lb and 8 oz bags.
func (l *lexer) more(v float64, m *measure, j int) (sum float64, end int, clear bool) {
	if v != math.Trunc(v) {
		return v, j, true
	}
	if half, end := l.andHalf(j); end > j {
		return v + half, end, true
	}
	k, joined := j, false
	if l.glued(k, ".") && l.at(k+1).text == "," {
		k++
	}
	if l.glued(k, ",") || l.is(k, "and", "&") {
		k, joined = k+1, true
	}
	n, ok := l.number(k)
	if !ok || n.unclear || n.times || n.v < 0 || l.at(k).text == "a" {
		return v, j, true
	}
	small, end, ok := l.unitAt(n.end, true)
	if !ok {
		return v, j, true
	}
	for _, p := range compounds {
		if m != l.known(p.large) || small != l.known(p.small) || n.v >= p.ratio {
			continue
		}
		if m.jar && (joined || v > 1) {
			return v, j, true // 4 quarts and 1 pint are five jars
		}
		next := l.at(end).known
		return v + n.v/p.ratio, end, !joined || next == nil || next.vessel == 0
	}
	return v, j, true
}

// open reads what makes an amount a bound: the plus of 2 kg+ and 10+ pints, the
// words of 5 lb or more.
func (l *lexer) open(n numeric, m *measure, j int) (Range, int, bool) {
	r, end := Range{Lo: n.v, Hi: math.Inf(1)}, j
	switch {
	case n.times || n.v < 0:
		return r, j, false
	case l.glued(j, "+") && (l.at(j+1).gap || l.at(j+1).kind == atomSign) && !l.startsNumber(j+1):
		end = j + 1
	case l.is(j, "or") && l.is(j+1, "more", "over", "above", "bigger", "larger"), l.is(j, "and") && l.is(j+1, "up", "over", "above"):
		end = j + 2
	case l.is(j, "or") && l.is(j+1, "less", "fewer", "under", "below", "smaller"):
		r.Lo, r.Hi, end = math.Inf(-1), n.v, j+2
	default:
		return r, j, false
	}
	if m == nil {
		if unit, k, ok := l.unitAt(end, false); ok {
			m, end = unit, k
		}
	}
	if m != nil {
		r.Senses = l.ofOne(m)
	}
	return r, end, true
}

const (
	// glossWithin is how far an amount said twice may differ: labels round, and a
	// pint passes for half a litre.
	glossWithin = 0.08
	// glossDegrees is the same for temperatures, in degrees Celsius.
	glossDegrees = 1.5
)

// gloss is an amount said again: the senses of the first that it leaves, none
// when it contradicts them.
type gloss struct {
	senses []Sense
	end    int
}

// gloss reads the same amount in another unit at j, in brackets or behind a
// stroke: 5 lb (2.27 kg), 2 kg / 4.4 lb, 1 quart (32 oz). Another kind of amount
// is none.
func (l *lexer) gloss(j int, q Quantity, m *measure) (gloss, bool) {
	if l.glued(j, ".") && l.at(j+1).text == "(" {
		j++
	}
	open := l.at(j).text == "("
	if !open && l.at(j).text != "/" {
		return gloss{}, false
	}
	k := j + 1
	for l.is(k, "about", "approx", "approximately", "roughly", "or", "ca", "circa", "=", "~") && k < j+4 {
		k++
	}
	n, ok := l.number(k)
	if !ok || n.unclear || n.times {
		return gloss{}, false
	}
	unit, end, ok := l.unitAt(n.end, true)
	if !ok || unit.means == nil {
		return gloss{}, false
	}
	v, end, clear := l.more(n.v, unit, end)
	if open {
		if end = l.dot(end); l.at(end).text != ")" {
			return gloss{}, false
		}
		end++
	}
	found, same := gloss{end: end}, false
	for _, s := range q.Senses {
		for _, again := range unit.senses(v, l.imperial()) {
			same = same || s.Dim == again.Dim
			if clear && s.agrees(again, m, q.Number) {
				found.senses = append(found.senses, s)
			}
		}
	}
	return found, same
}

// agrees reports whether two senses are one amount: of number jars it may be
// that of one.
func (s Sense) agrees(again Sense, m *measure, number float64) bool {
	within := func(v float64) bool {
		return math.Abs(v-again.Value) <= glossWithin*math.Max(math.Abs(v), math.Abs(again.Value))
	}
	switch {
	case s.Dim != again.Dim:
		return false
	case s.Dim == Temperature:
		return math.Abs(s.Value-again.Value) <= glossDegrees
	case s.Dim == Money:
		return s.Unit == again.Unit && s.Value == again.Value
	}
	return within(s.Value) || m.jar && number > 1 && within(s.Value/number)
}
