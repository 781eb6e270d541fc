package answer

import (
	"strings"
	"testing"
)

// TestCultureOfABadParent holds that it is said when a culture is taken of what went bad.
func TestCultureOfABadParent(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "on the shelf: 4 quarts rye oyster since 1 feb")
	s.say("kitchen", "Robin", "plate 7 from 1.1")
	s.say("kitchen", "Robin", "plate 7 is contaminated")
	s.say("kitchen", "Robin", "1.2 green")
	for said, want := range map[string]string{
		"lc 5 from plate 7": "Plate 7 went bad: what comes of it may be, too.",
		"plate 8 from 1.2":  "#1.2 is suspect or went bad: what comes of it may be, too.",
	} {
		if got := strings.Join(strings.Fields(s.say("kitchen", "Robin", said)), " "); !strings.Contains(got, want) {
			t.Errorf("%s: %s", said, got)
		}
	}
	if got := s.say("kitchen", "Robin", "plate 9 from 1.3"); strings.Contains(got, "bad") {
		t.Error(got)
	}
}
