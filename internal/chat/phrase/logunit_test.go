package phrase

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/kitchen"
)

// anyLogUnit asks for the story of units.
func anyLogUnit(t *rapid.T) Intent {
	ref := func(units ...kitchen.UnitNo) kitchen.Ref {
		return kitchen.Ref{Run: kitchen.RunNo(rapid.IntRange(1, 400).Draw(t, "run")), Units: units}
	}
	return LogUnit{Of: pick(t, "units", Meant{Refs: []kitchen.Ref{ref(3)}}, Meant{Refs: []kitchen.Ref{ref(1, 2, 3, 4)}}, Meant{Refs: []kitchen.Ref{{Run: 9, Units: []kitchen.UnitNo{2}}, {Run: 12, Units: []kitchen.UnitNo{1, 3}}}},
		Meant{Units: []kitchen.UnitNo{2}})}
}

func TestLogUnit(t *testing.T) {
	of := func(units ...kitchen.UnitNo) Meant { return Meant{Refs: []kitchen.Ref{{Run: 12, Units: units}}} }
	for text, want := range map[string]Meant{
		"log 12.3": of(3), "log of 12.3": of(3), "story of #12.3": of(3), "what happened with 12.3?": of(3), "What happened to 12.3": of(3),
		"show me 12.3": of(3), "show 12.3 please": of(3), "#12.3": of(3), "#12.1-3?": of(1, 2, 3), "photos of 12.3": of(3), "show me the pictures of 12.3": of(3),
		"can i see the photos of 12.3": of(3), "how is 12.3": of(3), "how's 12.3 doing": of(3), "how did 12.3 turn out": of(3),
		"tell me about 12.3": of(3), "what became of 12.3": of(3), "log 12.1,3": of(1, 3), "log 12.1-3": of(1, 2, 3),
		"log 12.1 and 12.3": of(1, 3), "log 12.1, 3 and 5": of(1, 3, 5), "photos of bag 2 of 12": of(2),
		"log 12.1 and 9.2":        {Refs: []kitchen.Ref{{Run: 12, Units: []kitchen.UnitNo{1}}, {Run: 9, Units: []kitchen.UnitNo{2}}}},
		"log bag 2":               {Units: []kitchen.UnitNo{2}},
		"story of the jars of 12": {Refs: []kitchen.Ref{{Run: 12}}, Vessel: kitchen.Jar},
		"story of Blue Bag":       {Names: []string{"blue bag"}},
		"how's blue bag doing":    {Names: []string{"blue bag"}},
	} {
		names := tryNames
		names.Units = []string{"blue bag"}
		p := Parse(text, names)
		if diff := cmp.Diff([]Intent{LogUnit{Of: want}}, p.Intents); diff != "" {
			t.Errorf("Parse(%q) = %s (-want +got):\n%s", text, understood(p), diff)
		}
	}
}

// A run has a story of its own, and what only holds a number asks for none.
func TestLogUnitIsOfUnits(t *testing.T) {
	for _, text := range []string{
		"log 12", "log", "story of #12", "what happened with 12", "12.3", "12.3 kg", "show me 12.3 kg rye", "about 12.3", "how about 12.3", "how is 12.3 of those a lot",
		"photos of 12 people", "how are the jars", "how is it", "photos of the bags", "log 12 and 13", "how are the kids", "how are the growing ones", "how is ana", "how did 12 of them go", "show me the photos", "12.3 is the new version",
	} {
		for _, in := range Parse(text, tryNames).Intents {
			if _, ok := in.(LogUnit); ok {
				t.Errorf("Parse(%q) = %s", text, in)
			}
		}
	}
}
