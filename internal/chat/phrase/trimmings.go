package phrase

// trimmings passes over words that say what a jar or bag is like and change
// nothing in what goes into it, wide mouth, filter patch, and over the sign or
// article between a count and a size: 2 bags @ 3 lb, 2 bags a 3 lb.
func (l *lexer) trimmings(i int) int {
	a := l.at(i)
	if a.text == "@" || a.text == "a" || a.text == "à" {
		return l.sizedAt(i)
	}
	if a.known == nil || a.known.class != Trade && a.known.class != Everyday {
		return i
	}
	j := i
	for range mostTrimmings {
		j = l.trimming(j)
	}
	if j == i {
		return i
	}
	if k := l.at(j).known; k == nil || k.vessel == 0 && (k.measure == nil || !k.measure.jar) {
		return i
	}
	return j
}

// mostTrimmings is how many such words stand before a jar: wide mouth mason.
const mostTrimmings = 3

// trimming returns the atom behind one of them at i, i when there's none.
func (l *lexer) trimming(i int) int {
	next := l.hyphened(i + 1)
	switch {
	case l.is(i, "wide", "regular", "narrow", "standard") && l.is(next, "mouth", "neck"), l.is(i, "filter") && l.is(next, "patch"):
		return l.hyphened(next + 1)
	case l.is(i, "mason", "filter", "patch", "glass", "plastic", "canning", "preserving", "gusseted", "autoclavable"):
		return next
	}
	return i
}

// hyphened skips a hyphen between two words.
func (l *lexer) hyphened(j int) int {
	if l.glued(j, "-") && !l.at(j+1).gap {
		return j + 1
	}
	return j
}

// sizedAt returns the atom behind the sign at i when it stands between a vessel
// or a count and an amount.
func (l *lexer) sizedAt(i int) int {
	if k := l.at(i - 1).known; (k == nil || k.vessel == 0) && !l.counts(i-1) || !l.at(i+1).gap && l.at(i).text != "@" {
		return i
	}
	n, ok := l.number(i + 1)
	if !ok || l.at(i+1).text == "a" {
		return i
	}
	m, _, ok := l.unitAt(n.end, true)
	if !ok || m.means == nil || m.means[0].dim != Mass && m.means[0].dim != Volume {
		return i
	}
	return i + 1
}
