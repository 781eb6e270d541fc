package answer

import (
	"testing"
	"time"

	"ryebell/internal/kitchen"
)

// "No, 44C" behind a reading is the right figure of it, at its time; a slip in that
// loses nothing, and undo brings back what stood.
func TestRemeasured(t *testing.T) {
	s := open(t)
	s.cooling()
	s.say("kitchen", "Robin", "1.2 is 50C")
	at := s.now
	s.now = s.now.Add(20 * time.Minute)
	wantPart(t, s.say("kitchen", "Robin", "no, 144C"), "no temperature of grain")
	wantPart(t, s.say("kitchen", "Robin", "how long"), "#1.2 at 50 °C")
	mended := s.say("kitchen", "Robin", "no, 48")
	wantPart(t, mended, "#1.2 at 48 °C")
	wantPart(t, mended, "Instead of 50 °C")
	wantPart(t, s.say("kitchen", "Robin", "no, #1.9 45C"), "has 3 units")
	if got := s.folded(1).Readings; len(got) != 1 || got[0].Temp != 48 || !got[0].At.Equal(at) {
		t.Errorf("readings %+v, want 48 °C at %v alone", got, at)
	}
	wantPart(t, s.say("kitchen", "Robin", "undo"), "read 50 °C again")
	wantPart(t, s.say("kitchen", "Robin", "no, 4 bags"), "4 bags")
}

// Of several readings the one of the same unit is meant.
func TestRemeasuredOfUnits(t *testing.T) {
	s := open(t)
	s.cooling()
	s.say("kitchen", "Robin", "1.1 50C, 1.2 51C")
	wantPart(t, s.say("kitchen", "Robin", "no, 1.1 49C"), "Instead of 50 °C")
	if got := s.folded(1).Readings; len(got) != 2 || got[0].Temp == got[1].Temp || got[0].Temp+got[1].Temp != 100 {
		t.Errorf("readings %+v, want 51 and 49 °C", got)
	}
}

// A reading that can't be is looked at again, and is not what a load is cool by; one
// over the limit is not contradicted by the hour.
func TestCoolThenHot(t *testing.T) {
	s := open(t)
	s.cooling()
	s.now = s.now.Add(20 * time.Hour)
	wantPart(t, s.say("kitchen", "Robin", "#1 24C in the middle"), "inoculate in clean air")
	wantPart(t, s.say("kitchen", "Robin", "#1 90C"), "was it 90 °F?")
	wantPart(t, s.say("kitchen", "Robin", "is 1 cool yet"), "down to 24 °C")
	wantPart(t, s.say("kitchen", "Robin", "#1 35C"), "#1 isn't cool: 35 °C")
	wantPart(t, s.say("kitchen", "Robin", "who's cooking"), "measure it again")
}

// A middle that is cold hours too soon is measured twice before it counts.
func TestMiddleTooSoon(t *testing.T) {
	s := open(t)
	s.cooling()
	s.now = s.now.Add(4 * time.Hour)
	wantPart(t, s.say("kitchen", "Robin", "#1 16C in the middle"), "Far sooner than I thought")
	if got := s.folded(1).Stage; got != kitchen.StageCooling {
		t.Errorf("after one reading: %v", got)
	}
	s.now = s.now.Add(40 * time.Minute)
	wantPart(t, s.say("kitchen", "Robin", "#1 16C in the middle"), "inoculate in clean air")
}
