package phrase

import (
	"testing"

	"ryebell/internal/kitchen"
)

func TestRest(t *testing.T) {
	for text, want := range map[string]int{
		"rest 3 days before inoculating":                 3,
		"Rest 2 days":                                    2,
		"we let the jars rest 5 days before inoculating": 5,
		"we rest the bags 4 days":                        4,
		"grain rests for a week before we inoculate":     7,
		"rest: two days":                                 2,
		"rest one day before inoculating":                1,
		"rest 40 days":                                   40, // refused, and told why
		"no rest":                                        0,
		"no rest before inoculating":                     0,
	} {
		if got, want := understood(Parse(text, tryNames)), "Set: "+(Set{[]kitchen.Change{kitchen.RestIs{Days: want}}}).String(); got != want {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
	for _, text := range []string{"the rest", "i need a rest", "rest well", "the rest of 12", "rest 20 min", "the rest 3 days", "no rest for the wicked", "rest of the jars in 3 days"} {
		for _, in := range Parse(text, tryNames).Intents {
			if s, ok := in.(Set); ok {
				t.Errorf("%q sets %v", text, s)
			}
		}
	}
}
