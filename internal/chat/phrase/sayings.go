package phrase

import "ryebell/internal/kitchen"

// phrase reads what is said in one or more words: grains, routes, vessels, sizes
// of jars that stand for the jar.
func (l *lexer) phrase(i int) int {
	a := l.at(i)
	if a.kind != atomWord || a.known == nil {
		return i
	}
	if a.text == "w" && l.glued(i+1, "/") {
		if l.glued(i+2, "o") {
			return l.emit(Word{at: l.over(i, i+3), Text: "without", Class: Denying}, i+3)
		}
		return l.emit(Word{at: l.over(i, i+2), Text: "with", Class: Joining}, i+2)
	}
	for _, s := range a.known.phrases {
		if j := l.follows(i+1, s.rest); j > 0 {
			return l.emit(s.token(l.over(i, j)), j)
		}
	}
	if c, ok := l.halfJar(i); ok {
		j := i + 2
		if l.is(i+1, "-") {
			j++
		}
		return l.emit(VesselWord{at: l.over(i, j), Container: c}, j)
	}
	switch {
	case a.known.vessel != 0:
		return l.emit(VesselWord{at: l.over(i, i+1), Container: kitchen.Container{Vessel: a.known.vessel}}, i+1)
	case a.known.measure != nil && a.known.measure.jar && len(a.text) > 1 && (l.vesselAt(i+1) || a.known.measure != l.known("l")):
		return l.emit(VesselWord{at: l.over(i, i+1), Container: l.jar(a.known.measure, 1)}, i+1)
	}
	return i
}

func (l *lexer) vesselAt(i int) bool {
	if l.glued(i, "-") {
		i++
	}
	k := l.at(i).known
	return k != nil && k.vessel != 0
}

// follows returns the atom behind the words, 0 if others stand at j. A hyphen
// between words is a space.
func (l *lexer) follows(j int, words []string) int {
	for _, w := range words {
		if l.glued(j, "-") {
			j++
		}
		if l.at(j).text != w {
			return 0
		}
		j++
	}
	return j
}
