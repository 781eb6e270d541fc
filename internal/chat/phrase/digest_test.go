package phrase

import (
	"testing"
	"time"

	"ryebell/internal/kitchen"
)

func TestDigest(t *testing.T) {
	on := func(d time.Weekday, hour, minute int) kitchen.DigestIs {
		return kitchen.DigestIs{Day: d, At: kitchen.TimeOfDay(hour*60 + minute)}
	}
	for text, want := range map[string]kitchen.DigestIs{
		"digest monday 9:00":               on(time.Monday, 9, 0),
		"digest on sundays":                on(time.Sunday, 9, 0),
		"Digest on Fridays at 6":           on(time.Friday, 18, 0),
		"digest fri 6am":                   on(time.Friday, 6, 0),
		"digest friday 9":                  on(time.Friday, 9, 0),
		"our digest every sunday 18:30":    on(time.Sunday, 18, 30),
		"weekly digest at 8:00":            on(time.Monday, 8, 0),
		"we want the digest on wednesdays": on(time.Wednesday, 9, 0),
		"digest sunday 10pm":               on(time.Sunday, 22, 0),
		"no digest":                        {},
		"digest off please":                {},
	} {
		p := Parse(text, tryNames)
		if got, want := understood(p), "Set: "+(Set{[]kitchen.Change{want}}).String(); got != want {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
	for _, text := range []string{"digest tomorrow 9:00", "digest in 20 min", "digest 3 march", "digest next friday"} {
		if p := Parse(text, tryNames); len(p.Intents) == 1 {
			t.Errorf("%q is %s", text, understood(p))
		}
	}
}

func TestGone(t *testing.T) {
	twelve := Tell{Which: Which{Run: 12}, Entries: []kitchen.RunEntry{kitchen.RunGone{}}}
	for text, want := range map[string]Intent{
		"#12 is gone":                 twelve,
		"12 is gone":                  twelve,
		"used up 12":                  twelve,
		"used up #12":                 twelve,
		"12 is all used":              twelve,
		"run 12 is all gone":          twelve,
		"12 gone from the shelf":      twelve,
		"#12 is used up":              twelve,
		"#12: none left on the shelf": twelve,
	} {
		if got := understood(Parse(text, tryNames)); got != "Tell: "+want.String() {
			t.Errorf("%q is %s, want %v", text, got, want)
		}
	}
	for _, text := range []string{"ana is gone", "12.3 is gone", "the gas is gone", "pressure's gone", "gone home", "the water is all gone"} {
		for _, in := range Parse(text, tryNames).Intents {
			if told, ok := in.(Tell); ok && told.Entries[0] == kitchen.RunEntry(kitchen.RunGone{}) {
				t.Errorf("%q takes a run from the shelf: %v", text, in)
			}
		}
	}
}
