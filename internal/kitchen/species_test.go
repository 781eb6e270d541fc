package kitchen

import (
	"testing"

	"ryebell/internal/calc/unit"
)

func TestSpeciesNamed(t *testing.T) {
	for _, tt := range []struct {
		name, want string
		known      bool
	}{
		{"oyster", "oyster", true},
		{"Grey Oyster", "oyster", true},
		{" Lion's Mane ", "lion's mane", true},
		{"pink oyster", "pink oyster", true},
		{"oysters", "", false}, // what people type is read elsewhere
		{"", "", false},
	} {
		if s, known := SpeciesNamed(tt.name); s.Name != tt.want || known != tt.known {
			t.Errorf("%q: %q %v", tt.name, s.Name, known)
		}
	}
}

func TestSpeciesFacts(t *testing.T) {
	for _, name := range append(SpeciesNames(), "anything else") {
		s, _ := SpeciesNamed(name)
		for what, d := range map[string]Days{"first shake": s.FirstShake, "jar": s.Jar, "warm": s.Warm} {
			if d.From < 1 || d.To < d.From {
				t.Errorf("%s: %s %v", name, what, d)
			}
		}
		if s.Known != CommonPractice || s.Coldest < 15 || s.Warmest > 30 || s.Coldest >= s.Warmest {
			t.Errorf("%s: %+v", name, s)
		}
		if s.FirstShake.To >= s.Jar.To || (s.Bag != Days{}) && (s.Bag.From <= s.Jar.From || s.Bag.To <= s.Jar.To) {
			t.Errorf("%s: shaken %v, jar %v, bag %v", name, s.FirstShake, s.Jar, s.Bag)
		}
		if s.Has(NeverChill) != (s.Fridge == Days{}) || s.Fridge.To < s.Fridge.From {
			t.Errorf("%s: fridge %v, %v", name, s.Fridge, s.Cautions)
		}
		for _, c := range s.Cautions {
			if known, source := c.Known(); (known == Sourced) != (source != "") || c.String() == "caution not said" {
				t.Errorf("%s: %v %v %q", name, c, known, source)
			}
		}
	}
	pink, _ := SpeciesNamed("pink oyster")
	if !pink.Has(NeverChill) || pink.Warm != (Days{30, 30}) {
		t.Errorf("pink oyster: %+v", pink)
	}
}

// What is given away can't be changed from outside.
func TestSpeciesIsACopy(t *testing.T) {
	a, _ := SpeciesNamed("oyster")
	a.Cautions[0], a.Optima[0] = NeverChill, unit.Celsius(3)
	if b, _ := SpeciesNamed("oyster"); b.Has(NeverChill) || b.Optima[0] != 30 {
		t.Errorf("%+v", b)
	}
}
