package phrase

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// Lex takes a text apart into tokens. Their extents lie inside the text, in
// order, and don't overlap; what no grammar could use (emoji, quotes) has no
// token. Whatever text is given, it takes time linear in its length.
func Lex(text string, names Names) []Token {
	l := lexer{text: text, names: names, folded: fold(text)}
	l.split()
	l.mend()
	for i := range l.atoms {
		l.timely = l.timely || l.atoms[i].timely()
		l.counted = l.counted || l.is(i, "ago", "earlier", "later", "from")
	}
	l.out = make([]Token, 0, len(l.atoms))
	for i := 0; i < len(l.atoms); {
		i = l.next(i)
	}
	return l.out
}

// lexer reads atoms, the smallest parts of a text, and writes tokens. Each of
// its readers looks at the atoms from i on and returns the index behind what it
// read: reading costs nothing until a token is put out.
type lexer struct {
	text   string
	names  Names
	folded folded
	atoms  []atom
	out    []Token
	// timely is true when some atom can belong to a time: most messages have none.
	timely bool
	// counted is true when some atom is ago or the like.
	counted bool
	// numbers remembers what was last read where: several readers try the same
	// number, and a text full of them would be read many times over.
	numbers [8]memo
}

// memo is the number read at an atom; the zero memo is none, at counts from 1.
type memo struct {
	at int
	n  numeric
	ok bool
}

// atomKind tells the smallest parts of a text from each other.
type atomKind uint8

const (
	atomWord atomKind = iota + 1
	atomDigits
	atomSign
)

// atom is a run of letters, a run of digits or one sign.
type atom struct {
	kind atomKind
	// gap is true behind a space or at the beginning.
	gap bool
	// from and to are its bytes in the folded text.
	from, to int32
	text     string
	// known is what the vocabulary has of a word; nil for others.
	known *entry
	// slip is set for a word that was misspelt.
	slip *slip
}

// slip is what became of a misspelt word: as is the word it was taken for, near
// are those it could have been taken for.
type slip struct {
	as   string
	near []string
}

// timely reports whether no time is without such a word or sign.
func (a *atom) timely() bool {
	if a.kind == atomSign {
		return a.text == ":" || a.text == "@" || a.text == "/"
	}
	return a.kind == atomDigits && len(a.text) == 4 || a.known != nil && a.known.timely
}

// none stands for the atom before the first and behind the last.
var none = atom{gap: true}

func (l *lexer) at(i int) *atom {
	if i < 0 || i >= len(l.atoms) {
		return &none
	}
	return &l.atoms[i]
}

// split fills the atoms.
func (l *lexer) split() {
	s := l.folded.s
	l.atoms = make([]atom, 0, len(s)/3+4)
	gap := true
	for i := 0; i < len(s); {
		r, n := rune(s[i]), 1
		if r >= utf8.RuneSelf {
			r, n = utf8.DecodeRuneInString(s[i:])
		}
		switch {
		case r != '\n' && (unicode.IsSpace(r) || unicode.IsControl(r)):
			gap = true
			i += n
			continue
		case '0' <= r && r <= '9':
			n = runLen(s[i:], isDigit)
			l.atoms = append(l.atoms, atom{kind: atomDigits, gap: gap, from: int32(i), to: int32(i + n), text: s[i : i+n]})
		case isLetter(r):
			n = letters(s[i:])
			l.word(gap, i, i+n)
		default:
			l.atoms = append(l.atoms, atom{kind: atomSign, gap: gap, from: int32(i), to: int32(i + n), text: s[i : i+n]})
		}
		gap = false
		i += n
	}
}

func (l *lexer) word(gap bool, from, to int) {
	text := l.folded.s[from:to]
	for _, r := range text {
		if unicode.Is(unicode.Mn, r) {
			text = norm.NFC.String(text)
			break
		}
	}
	l.atoms = append(l.atoms, atom{kind: atomWord, gap: gap, from: int32(from), to: int32(to), text: text, known: vocabulary()[text]})
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

func isLetter(r rune) bool {
	return 'a' <= r && r <= 'z' || r >= utf8.RuneSelf && (unicode.IsLetter(r) || unicode.Is(unicode.Mn, r))
}

// runLen counts the bytes at the head of s whose runes are ok.
func runLen(s string, ok func(rune) bool) int {
	for i, r := range s {
		if !ok(r) {
			return i
		}
	}
	return len(s)
}

// letters counts the bytes of the word at the head of s: letters with
// apostrophes between them. g2g, the only word with a digit inside, is one.
func letters(s string) int {
	if strings.HasPrefix(s, "g2g") && runLen(s[3:], isLetter) == 0 {
		return len("g2g")
	}
	n := runLen(s, isLetter)
	for n < len(s) && s[n] == '\'' {
		more := runLen(s[n+1:], isLetter)
		if more == 0 {
			break
		}
		n += 1 + more
	}
	return n
}

// is reports whether atom i is one of the words or signs.
func (l *lexer) is(i int, texts ...string) bool {
	a := l.at(i)
	for _, t := range texts {
		if a.text == t {
			return true
		}
	}
	return false
}

// glued reports whether atom i is that sign with no space before it.
func (l *lexer) glued(i int, text string) bool {
	a := l.at(i)
	return a.text == text && !a.gap
}

// digitsAt reports whether atom i is a run of digits with no space before it.
func (l *lexer) digitsAt(i int) bool {
	a := l.at(i)
	return a.kind == atomDigits && !a.gap
}

// over makes the head of a token read from atoms [i, j).
func (l *lexer) over(i, j int) at {
	t := at{ext: l.folded.extent(l.atoms[i].from, l.atoms[j-1].to)}
	for k := i; k < j; k++ {
		if s := l.atoms[k].slip; s != nil && s.as != "" {
			t.as = s.as
		}
	}
	return t
}

// emit puts out a token that ends before atom j and returns j.
func (l *lexer) emit(t Token, j int) int {
	l.out = append(l.out, t)
	return j
}

// next reads one token at atom i, or skips a sign without meaning. The order
// matters: a name of the collective is stronger than the vocabulary, 14:05 is
// a time before it is a number, #5 a run before # is a pound.
func (l *lexer) next(i int) int {
	for _, read := range readers {
		if j := read(l, i); j > i {
			return j
		}
	}
	return l.single(i)
}

var readers = [...]func(*lexer, int) int{
	(*lexer).name, (*lexer).trimmings, (*lexer).tag, (*lexer).ref, (*lexer).when, (*lexer).money, (*lexer).bound, (*lexer).measured, (*lexer).phrase,
}

// single puts out the atom alone.
func (l *lexer) single(i int) int {
	a := &l.atoms[i]
	switch a.kind {
	case atomWord:
		w := Word{at: l.over(i, i+1), Text: a.text}
		if a.slip != nil {
			w.Mended = a.slip.near
		}
		if a.known != nil {
			w.Class = a.known.class
		}
		return l.emit(w, i+1)
	case atomDigits:
		return l.emit(Unclear{at: l.over(i, i+1)}, i+1)
	case atomSign:
		if strings.Contains(",+&;:?!./()-#%\n<>=$€£@", a.text) {
			r, _ := utf8.DecodeRuneInString(a.text)
			return l.emit(Mark{at: l.over(i, i+1), Rune: r}, i+1)
		}
		return i + 1
	}
	panic(a.kind)
}
