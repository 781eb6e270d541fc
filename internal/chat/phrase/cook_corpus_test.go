package phrase

import (
	"fmt"
	"testing"
)

// TestProbesOfTheCookDay puts the phrases of testdata/language into the messages
// they are for: those in scope must be read as a whole, or asked about.
func TestProbesOfTheCookDay(t *testing.T) {
	for _, file := range []string{"d-moments.tsv", "e-durations.tsv", "f-intervals.tsv", "h-temperatures.tsv", "b-quantities.tsv"} {
		for _, s := range samples(t, file) {
			switch s.probe {
			case "since", "since_ago", "book", "book_at", "reading", "pressure":
			default:
				continue
			}
			text := fmt.Sprintf(probes[s.probe], s.phrase)
			p := Parse(text, tryNames)
			if s.out && s.probe != "reading" {
				continue // silence is as good
			}
			switch {
			case p.Ask != nil || p.Near != nil:
			case len(p.Intents) != 1:
				t.Errorf("Parse(%q) = %s, want one thing told or asked", text, understood(p))
			}
		}
	}
}
