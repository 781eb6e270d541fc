package phrase

import "math"

// andPart adds "and a half", "and a quarter", "and three quarters".
func (l *lexer) andPart(n numeric) numeric {
	if n.v != math.Trunc(n.v) || !l.is(n.end, "and", "&", "n") || l.dozens(n.end-1) {
		return n
	}
	j := n.end + 1
	if v, end := l.properAt(j); end > j {
		n.v, n.end, n.plain, n.mixed = n.v+v, end, false, true
		return n
	}
	factor := 1.0
	switch k := l.at(j).known; {
	case l.is(j, "a", "an", "one"):
		j++
	case k != nil && k.number == ones:
		factor = k.value
		j++
	}
	if l.glued(j, "-") {
		j++
	}
	k := l.at(j).known
	if j == n.end+1 || k == nil || k.number != part || factor*k.value >= 1 {
		return n
	}
	n.v += factor * k.value
	n.end, n.plain, n.mixed = j+1, false, n.digits
	return n
}

// properAt reads a fraction below one in digits at j: the 1/2 of 2 and 1/2.
func (l *lexer) properAt(j int) (float64, int) {
	if v, ok := fraction(l.at(j)); ok {
		return v, j + 1
	}
	if l.at(j).kind != atomDigits || !l.glued(j+1, "/") || !l.digitsAt(j+2) {
		return 0, j
	}
	f := l.divided(numeric{v: integer(l.at(j).text), end: j + 1, plain: true}, j)
	if f.unclear || f.v >= 1 {
		return 0, j
	}
	return f.v, f.end
}

func (l *lexer) dozens(j int) bool {
	k := l.at(j).known
	return k != nil && k.number == dozen
}

// halfDozen adds the half of a dozen and a half.
func (l *lexer) halfDozen(n numeric) numeric {
	share, end := l.andHalf(n.end)
	if !l.dozens(n.end-1) || end == n.end {
		return n
	}
	n.v += 12 * share
	n.end = end
	return n
}

// multiplied reads what multiplies a number: dozen, hundred, thousand, and the x
// of 3x. Millions are not a way to count here.
func (l *lexer) multiplied(n numeric) numeric {
	for !n.unclear {
		j := n.end
		if l.glued(j, "-") && !l.at(j+1).gap {
			j++
		}
		k := l.at(j).known
		if k == nil || k.number == 0 {
			break
		}
		if k.number == huge {
			n.unclear = true
			n.end = j + 1
			break
		}
		if k.number != hundred && k.number != thousand && k.number != dozen || n.v*12 != math.Trunc(n.v*12) && k.number == dozen {
			break
		}
		n.v *= k.value
		n.end, n.plain, n.mixed, n.ref = j+1, false, false, false
		if k.number != dozen && !n.digits {
			n = l.remainder(n, k.value)
		}
		if n.v > 1e9 {
			n.unclear = true
		}
	}
	n = l.halfDozen(n)
	if l.glued(n.end, "k") && n.digits && l.lengthAt(n.end+1) { // 5k ft
		n.v, n.end, n.plain, n.ref = n.v*1000, n.end+1, false, false
	}
	if !n.unclear && l.at(n.end).text == "x" && l.at(n.end).kind == atomWord {
		n.times = true
		n.end++
	}
	return n
}

// remainder adds what follows a hundred or thousand in words: and twenty.
func (l *lexer) remainder(n numeric, unit float64) numeric {
	j := n.end
	if l.is(j, "and") {
		j++
	}
	k := l.at(j).known
	if k == nil || k.number == 0 || k.number > tens {
		return n
	}
	v, end := l.underHundred(j)
	if m := l.at(end).known; m != nil && m.number == hundred && unit > 100 {
		rest := l.remainder(numeric{v: v * 100, end: end + 1}, 100)
		v, end = rest.v, rest.end
	}
	n.v += v
	n.end = end
	return n
}
