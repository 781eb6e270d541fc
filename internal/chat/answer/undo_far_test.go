package answer

import "testing"

// What was told last can be taken back however much was asked since.
func TestUndoReachesBehindQuestions(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "we're at 1600 m")
	for range lookBack + 5 {
		s.say("kitchen", "Robin", "shelf")
	}
	wantPart(t, s.say("kitchen", "Robin", "undo"), "1,600 m")
	wantPart(t, s.say("kitchen", "Robin", "undo"), "nothing here that could be")
}
