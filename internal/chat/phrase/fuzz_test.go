package phrase

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

var collective = Names{Cookers: []string{"big pot", "Röhre 2"}, Members: []string{"Ana", "Jo", "Renée", "Will"}}

func FuzzLex(f *testing.F) {
	for _, s := range []string{
		"3 bags 5lb agar", "４ ｑｕａｒｔ jars rye LC + 2 3-lb bags", "12.1-4 oyster lc 10ml", "sat 10-14", "1½ kg", "1⁄2 gal",
		"an hour and a half ago", "lot 3 eur 125", "\x00\u200f5#\u200b #5\xff", "’twas “half past two”", "1.2.3,4/5-6",
		"🍄 80 °F Röhre 2 renée's", "in 3 weeks at 11:25am", "over four ounces", "from 10 dollars to 20 dollars", "-5 --5 x x3",
	} {
		f.Add(s)
	}
	said := time.Date(2026, 3, 4, 14, 30, 0, 0, time.UTC)
	f.Fuzz(func(t *testing.T, text string) {
		end := 0
		for _, tok := range Lex(text, collective) {
			e := tok.Extent()
			if e.Start < end || e.End <= e.Start || e.End > len(text) {
				t.Fatalf("%q: %T at %v behind %d, of %d bytes", text, tok, e, end, len(text))
			}
			end = e.End
			switch w := tok.(type) {
			case When:
				w.Moment.Resolve(said, Back)
				sameMoment(t, w.Moment)
			case Interval:
				w.Resolve(said, Forward)
				sameInterval(t, w)
			}
		}
	})
}

// sameMoment holds a moment to printing as a phrase that reads as it.
func sameMoment(t *testing.T, m Moment) {
	t.Helper()
	tokens := Lex(m.String(), Names{})
	if len(tokens) != 1 {
		t.Fatalf("%q, printed for %#v, reads as %#v", m.String(), m, tokens)
	}
	if w, ok := tokens[0].(When); !ok || !equal(w.Moment, m) {
		t.Fatalf("%q, printed for %#v, reads as %#v", m.String(), m, tokens[0])
	}
}

func sameInterval(t *testing.T, v Interval) {
	t.Helper()
	tokens := Lex(v.String(), Names{})
	if len(tokens) != 1 {
		t.Fatalf("%q reads as %#v", v.String(), tokens)
	}
	if w, ok := tokens[0].(Interval); !ok || !equal(w.From, v.From) || !equal(w.To, v.To) {
		t.Fatalf("%q reads as %v", v.String(), tokens[0])
	}
}

func equal(m, n Moment) bool {
	if m.Clock != nil && n.Clock != nil {
		if *m.Clock != *n.Clock {
			return false
		}
		m.Clock, n.Clock = nil, nil
	}
	return m == n
}

// usual are messages of the usual length.
var usual = []string{"3 bags 5lb agar", "how much for 2 kg at 45%?", "at 15 since 14:05", "12.1-4 oyster lc 10ml", "whos cooking now"}

func BenchmarkLex(b *testing.B) {
	b.Run("usual", func(b *testing.B) {
		b.ReportAllocs()
		for i := 0; b.Loop(); i++ {
			Lex(usual[i%len(usual)], collective)
		}
	})
	b.Run("typo", func(b *testing.B) {
		for b.Loop() {
			Lex("3 bgas 5lb agra", collective)
		}
	})
	for _, runes := range []int{4096, 8 * 4096} { // eight times the text, eight times the time
		for name, unit := range worst {
			b.Run(fmt.Sprintf("%d/%s", runes, name), func(b *testing.B) {
				text := string([]rune(strings.Repeat(unit, runes))[:runes])
				for b.Loop() {
					Lex(text, collective)
				}
			})
		}
	}
}

// worst are texts that a careless reader takes long for.
var worst = map[string]string{
	"message": "3 bags 5lb agar, ", "unknown": "qwrtz ", "letters": "q", "digits": "1", "points": "1.", "commas": "1,",
	"hyphens": "1-", "strokes": "1/2", "and": "1 and a half ", "hundred": "hundred ", "days": "1 day ", "clock": "1:00-",
	"wide": "３", "ligature": "㎏", "marks": "e\u0301", "half": "half ", "to": "1 to ", "in": "in ", "of a": "half of a ",
	"on": "on sat ", "ref": "1.1,1", "names": "big ", "x": "x 3", "past": "half past ", "hyphenated": "half-", "ten": "ten ",
	"dollar": "$ 1 and ", "at": "at 1 ", "the": "the first ", "grain": "grain to ", "mends": "temparaturr ", "mason": "mason ", "twice": "1 kg (", "glossed": "1 kg / 1 kg ", "thousands": "1 000 ", "point": "one point ",
	"compound": "1 lb, 1 oz ", "dozen": "half dozen ", "thousand": "one hundred and ",
}
