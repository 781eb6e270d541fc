package phrase

import (
	"ryebell/internal/kitchen"
)

const (
	mostRuns  = 1_000_000
	mostUnits = 999
)

// ref reads #12, #12.3, #12.1-4, run 12, and without a sign what can be nothing
// else: 12.1-4, 12.1,3,5. A lone 12.3 is a number that may be meant so.
func (l *lexer) ref(i int) int {
	j, named, bare := i, false, false
	switch {
	case l.is(i, "#") && l.digitsAt(i+1):
		j = i + 1
	case l.is(i, "run", "runs"):
		j = i + 1
		if l.is(j, "no", "nr", "number", "#") {
			j++
		}
		if l.at(j).kind != atomDigits {
			return i
		}
		named = true
	case l.at(i).kind == atomDigits && l.glued(i+1, ".") && l.digitsAt(i+2) &&
		(l.glued(i+3, "-") || l.glued(i+3, ",")) && l.digitsAt(i+4):
		bare = true
	default:
		return i
	}
	r, end, ok := l.refAt(j)
	// "run 3 bags" and "run 3 5 lb bags" are cooking.
	if !ok || (bare || named) && !l.endsRef(end) || named && l.at(end).kind == atomDigits {
		return i
	}
	return l.emit(RunRef{at: l.over(i, end), Ref: r}, end)
}

// endsRef reports whether what follows a bare reference leaves it one: no unit,
// vessel or per cent sign.
func (l *lexer) endsRef(end int) bool {
	a := l.at(end)
	if _, _, unit := l.unitAt(end, true); unit || l.percentAt(end) > end {
		return false
	}
	return a.known == nil || a.known.vessel == 0 && a.text != "x"
}

// refAt reads a run and its units at i.
func (l *lexer) refAt(i int) (kitchen.Ref, int, bool) {
	run := atoi(l.at(i).text)
	r := kitchen.Ref{Run: kitchen.RunNo(run)}
	if run < 1 || run > mostRuns {
		return r, i, false
	}
	j := i + 1
	if !l.glued(j, ".") || !l.digitsAt(j+1) {
		return r, j, true
	}
	for sep := "."; l.glued(j, sep) && l.digitsAt(j+1); sep = "," {
		lo, end := l.unitNo(j+1, run)
		hi := lo
		if l.glued(end, "-") && l.digitsAt(end+1) {
			hi, end = l.unitNo(end+1, run)
		}
		if lo < 1 || hi < lo || hi > mostUnits || len(r.Units)+hi-lo >= mostUnits {
			return r, i, false
		}
		for u := lo; u <= hi; u++ {
			r.Units = append(r.Units, kitchen.UnitNo(u))
		}
		j = end
	}
	return r, j, true
}

// unitNo reads the number of a unit, with or without the run before it: the
// second half of 12.1-12.5. Leading zeros are no unit's.
func (l *lexer) unitNo(i, run int) (int, int) {
	s := l.at(i).text
	if atoi(s) == run && l.glued(i+1, ".") && l.digitsAt(i+2) {
		i, s = i+2, l.at(i+2).text
	}
	if s[0] == '0' {
		return 0, i + 1
	}
	return atoi(s), i + 1
}

// refOf makes the reference that a number such as 12.3 at i may be.
func (l *lexer) refOf(i int) *kitchen.Ref {
	for l.at(i).kind != atomDigits {
		i++
	}
	r, _, ok := l.refAt(i)
	if !ok {
		return nil
	}
	return &r
}

// tag reads #soak24: a sign with a space before it and a word right behind.
func (l *lexer) tag(i int) int {
	if !l.tagAt(i) {
		return i
	}
	j := i + 2
	for k := j; l.at(k).kind != 0 && !l.at(k).gap; k++ {
		if l.at(k).kind != atomSign {
			j = k + 1
		} else if !l.is(k, "-", "_") {
			break
		}
	}
	from, to := l.atoms[i+1].from, l.atoms[j-1].to
	return l.emit(Tag{at: at{ext: l.folded.extent(l.atoms[i].from, to)}, Text: l.folded.s[from:to]}, j)
}

func (l *lexer) tagAt(i int) bool {
	return l.is(i, "#") && (l.at(i).gap || l.at(i-1).kind == atomSign) && l.at(i+1).kind == atomWord && !l.at(i+1).gap
}
