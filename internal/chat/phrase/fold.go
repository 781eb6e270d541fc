package phrase

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// folded is a text in lower case, normal width, straight quotes and ASCII
// digits, without marks that don't show. from and to lead from each of its bytes
// back to the text; both are nil when they would lead to the same byte.
type folded struct {
	s        string
	from, to []int32
}

// extent leads from bytes [a, b) of the folded text back to the text.
func (f *folded) extent(a, b int32) Extent {
	if f.from == nil {
		return Extent{int(a), int(b)}
	}
	return Extent{int(f.from[a]), int(f.to[b-1])}
}

func fold(text string) folded {
	for i := range len(text) {
		if text[i] >= utf8.RuneSelf {
			return foldRunes(text)
		}
	}
	return folded{s: strings.ToLower(text)}
}

func foldRunes(text string) folded {
	f := folded{from: make([]int32, 0, len(text)+8), to: make([]int32, 0, len(text)+8)}
	buf := make([]byte, 0, len(text)+8)
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		before := len(buf)
		buf = foldRune(buf, r)
		for range len(buf) - before {
			f.from = append(f.from, int32(i))
			f.to = append(f.to, int32(i+n))
		}
		i += n
	}
	f.s = string(buf)
	return f
}

// foldRune appends what r is folded to: nothing for a mark that doesn't show.
// Vulgar fractions stay as they are, since NFKC would make 11/2 of 1½, and so do
// raised digits: 3² is not 32.
func foldRune(buf []byte, r rune) []byte {
	switch {
	case r < utf8.RuneSelf:
		return append(buf, lower(byte(r)))
	case unicode.Is(unicode.Cf, r):
		return buf // zero-width and direction marks
	case unicode.IsSpace(r):
		return append(buf, ' ')
	case unicode.Is(unicode.Nd, r):
		return append(buf, '0'+digit(r))
	case vulgar[r] != 0:
		return utf8.AppendRune(buf, r)
	}
	if c, ok := straight[r]; ok {
		return append(buf, c)
	}
	if r == 'º' || r == '˚' {
		return append(buf, "°"...)
	}
	if compatible(r) {
		var in [utf8.UTFMax]byte
		parts := norm.NFKC.Properties(utf8.AppendRune(in[:0], r)).Decomposition()
		for len(parts) > 0 {
			c, n := utf8.DecodeRune(parts)
			parts = parts[n:]
			if s, ok := straight[c]; ok {
				c = rune(s)
			}
			buf = utf8.AppendRune(buf, unicode.ToLower(c))
			r = -1
		}
		if r < 0 {
			return buf
		}
	}
	return utf8.AppendRune(buf, unicode.ToLower(r))
}

func lower(c byte) byte {
	if 'A' <= c && c <= 'Z' {
		return c + 'a' - 'A'
	}
	return c
}

// digit is the value of a decimal digit of any script: their blocks run from
// zero to nine and start where the range does.
func digit(r rune) byte {
	for _, t := range unicode.Nd.R16 {
		if rune(t.Lo) <= r && r <= rune(t.Hi) {
			return byte((r - rune(t.Lo)) % 10)
		}
	}
	for _, t := range unicode.Nd.R32 {
		if rune(t.Lo) <= r && r <= rune(t.Hi) {
			return byte((r - rune(t.Lo)) % 10)
		}
	}
	return 0
}

// compatible reports whether r stands in a block of ligatures, wide forms,
// letter-like signs (℃, K) or squared units (㎏).
func compatible(r rune) bool {
	switch {
	case 0xFB00 <= r && r <= 0xFB06, 0xFF01 <= r && r <= 0xFFEF, 0x2100 <= r && r <= 0x214F,
		0x3300 <= r && r <= 0x33FF, 0x1D400 <= r && r <= 0x1D7FF:
		return true
	}
	return false
}

// vulgar are the fractions of one sign.
var vulgar = map[rune]float64{
	'½': 1. / 2, '⅓': 1. / 3, '⅔': 2. / 3, '¼': 1. / 4, '¾': 3. / 4, '⅕': 1. / 5, '⅖': 2. / 5, '⅗': 3. / 5,
	'⅘': 4. / 5, '⅙': 1. / 6, '⅚': 5. / 6, '⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8,
}

// straight are signs that stand for one of ASCII.
var straight = map[rune]byte{
	'‘': '\'', '’': '\'', '‚': '\'', '‛': '\'', '′': '\'', 'ʼ': '\'', '`': '\'', '´': '\'',
	'“': '"', '”': '"', '„': '"', '″': '"', '«': '"', '»': '"',
	'‐': '-', '‑': '-', '‒': '-', '–': '-', '—': '-', '−': '-', '﹣': '-',
	'⁄': '/', '∕': '/', '×': 'x', '✕': 'x', '✖': 'x', '、': ',', '。': '.', '，': ',',
}
