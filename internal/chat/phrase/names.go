package phrase

import (
	"unicode"
	"unicode/utf8"
)

// name reads a name of this collective; the longest that fits is meant.
func (l *lexer) name(i int) int {
	if l.atoms[i].kind == atomSign {
		return i
	}
	found, end := Name{}, i
	for _, c := range l.names.Cookers {
		if j := l.called(i, c); j > end {
			found, end = Name{Of: CookerName, Text: c}, j
		}
	}
	for _, m := range l.names.Members {
		if j := l.called(i, m); j > end && !(j == i+1 && l.everyday(i)) {
			found, end = Name{Of: MemberName, Text: m}, j
		}
	}
	if end == i {
		return i
	}
	found.at = l.over(i, end)
	return l.emit(found, end)
}

// everyday reports whether the word at i is more likely the word than the
// member called like it: will, may, mark. Inside a sentence a capital makes it
// the member.
func (l *lexer) everyday(i int) bool {
	k := l.atoms[i].known
	if k == nil || k.person && k.class == Everyday {
		return false
	}
	r, _ := utf8.DecodeRuneInString(l.text[l.folded.extent(l.atoms[i].from, l.atoms[i].to).Start:])
	return i == 0 || !unicode.IsUpper(r)
}

// called returns the atom behind the name if it stands at i, else i. Hyphens and
// spaces of the text are the same, and so are 'ana' and 'ana's'.
func (l *lexer) called(i int, name string) int {
	j := i
	for rest := name; ; j++ {
		for rest != "" && (rest[0] == ' ' || rest[0] == '-') {
			rest = rest[1:]
			if l.is(j, "-") {
				j++
			}
		}
		if rest == "" {
			return j
		}
		a := l.at(j)
		n := prefix(rest, a.text)
		if n == 0 {
			return i
		}
		rest = rest[n:]
	}
}

// prefix returns how many bytes at the head of name, up to a space or hyphen or
// the end of a run of letters, fold to the word; 0 when they don't.
func prefix(name, word string) int {
	n, at := 0, 0
	for n < len(name) && at < len(word) {
		r, size := utf8.DecodeRuneInString(name[n:])
		w, wide := utf8.DecodeRuneInString(word[at:])
		if unicode.ToLower(r) != w {
			return 0
		}
		n += size
		at += wide
	}
	switch {
	case at == 0:
		return 0
	case at == len(word):
		return n
	case n == len(name) && word[at:] == "'s":
		return n
	}
	return 0
}
