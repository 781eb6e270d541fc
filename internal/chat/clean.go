package chat

import (
	"strings"
	"unicode"
)

// Clean makes text harmless to print within a line. Whatever breaks a line,
// and the tab, becomes a space; other control characters and the marks that
// turn the direction of writing become U+FFFD, and so does what is not UTF-8.
// Every other character stays. Doors use it for names and labels.
func Clean(s string) string {
	return strings.Map(harmless, strings.ToValidUTF8(s, "\uFFFD"))
}

func harmless(r rune) rune {
	switch {
	case r >= '\t' && r <= '\r', r == '\u0085', r == '\u2028', r == '\u2029':
		return ' '
	case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r):
		return unicode.ReplacementChar
	}
	return r
}
