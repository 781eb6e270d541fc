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
		{"1.600 m", "unclear"},
		{"5.280 feet", "unclear"},
		{"1.500 g", "unclear"},
		{"1.500 kg", "q1.5 1500=kg"},
		{",5 kg", "q0.5 500=kg"},
		{"3 bags ,5 lb", "n3 | bag | , | q5 2267.9619=lb"},
		{"a dozen and a half kg", "q18 18000=kg"},
		{"two point five kg", "q2.5 2500=kg"},
		{"two point two five kg", "q2.25 2250=kg"},
		{"zero point five kg", "q0.5 500=kg"},
		{"two point fifty kg", "unclear"},
		{"three fourths kg", "q0.75 750=kg"},
		{"three-quarters kg", "q0.75 750=kg"},
		{"half dozen bags", "n6 | bag"},
		{"half-dozen bags", "n6 | bag"},
		{"one-half kg", "q0.5 500=kg"},
		{"two-dozen bags", "n24 | bag"},
		{"1 and 1/2 kg", "q1.5 1500=kg+"},
		{"2 & 1/2 kg", "q2.5 2500=kg+"},
		{"2/3 of a cup", "q0.6667 0.1577=cup"},
		{"1 1/2 dozen bags", "n18 | bag"},
		{"3.0 bags", "n3 | bag"},
		{"3.000 bags", "unclear | bag"},
		{"3 (three) bags", "n3 | bag"},
		{"three (3) 5 lb bags", "n3 | q5 2267.9619=lb | bag"},
		{"3 (4) bags", "n3 | ( | n4 | ) | bag"},
		{"couple of bags", "unclear | bag"},
		{"a pair of bags", "n2 | bag"},
		{"a pair of gloves", "a | pair | of | gloves"},
		{"1 000 g", "q1000 1000=g"},
		{"1 600 m", "q1600 1600=m/96000=min"},
		{"3 500 ml jars", "n3 | q500 0.5=ml | jar"},
		{"12 500 g bags", "n12 | q500 500=g | bag"},
		{"2ish kg", "unclear"},
		{"3-ish bags", "unclear | bag"},
		{"38 ish", "n38 | ish"},
		{"12/25 kg", "unclear"},
		{"15/16 lb", "q0.9375 425.2428=lb"},
		{"1/99999999999999999999999999999 kg", "unclear"},
		{"5280'", "q5280 1609.344=ft"},
		{"5,280 '", "q5280 1609.344=ft"},
		{"'5280'", "unclear"},
		{"800 masl", "q800 800=m"},
		{"5k ft", "q5000 1524=ft"},
		{"minus 200 m", "q-200 -200=m/-12000=min"},
		{"zero meters", "q0 0=m"},
		{"we're at sea level", "we're | at | q0 0=m"},
		{"1600 m above sea level", "q1600 1600=m/96000=min | above | sea | level"},
		{"at zero", "at | zero"},
		{"three quarter pound bags", "n3 | q0.25 113.3981=lb | bag"},
	})
}
