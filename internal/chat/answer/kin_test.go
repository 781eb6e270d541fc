package answer

import (
	"strings"
	"testing"
)

// TestEditKeepsTheWarning holds that the one warning of kin stays where it stood when the
// message that drew it is edited, and comes no second time.
func TestEditKeepsTheWarning(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "on the shelf: 4 quarts rye since 1 mar")
	s.say("kitchen", "Robin", "1.1-4 plate 7")
	m := s.message("kitchen", "Robin", "1.1 green")
	warns := func(text string) bool {
		return strings.Contains(strings.Join(strings.Fields(text), " "), "still stand")
	}
	if got := s.send(m); !warns(got) {
		t.Fatal(got)
	}
	for _, text := range []string{"1.1 is green", "1.2 green"} {
		if got := s.send(s.edited(m, text)); !warns(got) {
			t.Errorf("%s: %s", text, got)
		}
	}
	if got := s.say("kitchen", "Robin", "1.3 green"); warns(got) {
		t.Errorf("twice: %s", got)
	}
}
