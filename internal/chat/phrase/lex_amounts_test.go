package phrase

import "testing"

// holdTokens holds the lexer to a table of texts and what [show] must say of
// their tokens.
func holdTokens(t *testing.T, table []struct{ text, want string }) {
	t.Helper()
	for _, c := range table {
		if got := show(Lex(c.text, collective)); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}

// The ways to write a number are those of the corpora in testdata/language; what
// two readers would read as two numbers is unclear.
func TestLexNumbers(t *testing.T) {
	holdTokens(t, []struct{ text, want string }{
		{"1.600 m", ""},
	})
}
