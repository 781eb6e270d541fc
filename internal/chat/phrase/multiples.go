package phrase

import "math"

// andPart adds "and a half", "and a quarter", "and three quarters".
func (l *lexer) andPart(n numeric) numeric {
	if n.v != math.Trunc(n.v) || !l.is(n.end, "and", "&", "n") {
		return n
	}
	j := n.end + 1
	factor := 1.0
	switch k := l.at(j).known; {
	case l.is(j, "a", "an", "one"):
		j++
	case k != nil && k.number == ones:
		factor = k.value
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

// multiplied reads what multiplies a number: dozen, hundred, thousand, and the x
// of 3x. Millions are not a way to count here.
func (l *lexer) multiplied(n numeric) numeric {
	for !n.unclear {
		k := l.at(n.end).known
		if k == nil || k.number == 0 {
			break
		}
		if k.number == huge {
			n.unclear = true
			n.end++
			break
		}
		if k.number != hundred && k.number != thousand && k.number != dozen || n.v != math.Trunc(n.v) && k.number == dozen {
			break
		}
		n.v *= k.value
		n.end, n.plain = n.end+1, false
		if k.number != dozen && !n.digits {
			n = l.remainder(n, k.value)
		}
		if n.v > 1e9 {
			n.unclear = true
		}
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
