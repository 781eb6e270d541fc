package answer

import (
	"strings"
	"testing"

	"ryebell/internal/chat"
)

// edited is an earlier message with another text.
func (s *stage) edited(m chat.Message, text string) chat.Message {
	again := s.message(m.Room.ID, m.From.Name, text)
	again.Edits = m.Event
	return again
}

// TestEditedArrivalKeepsItsNumber holds that what others told of a load stands when who
// put it on the shelf corrects how many there are, or how old.
func TestEditedArrivalKeepsItsNumber(t *testing.T) {
	s := open(t)
	m := s.message("kitchen", "Robin", "on the shelf: 4 quarts rye oyster since 1 mar, 2 bags shiitake since 1 mar")
	s.send(m)
	s.say("kitchen", "Ana", "1.2 30%")
	s.say("kitchen", "Ana", "2.1 20%")
	for _, text := range []string{
		"on the shelf: 5 quarts rye oyster since 25 feb, 2 bags shiitake since 1 mar",
		"on the shelf: 3 quarts rye oyster since 25 feb", // and back again
		"on the shelf: 4 quarts rye oyster since 1 mar, 2 bags shiitake since 1 mar",
	} {
		if got := s.send(s.edited(m, text)); !strings.Contains(got, "#1.1-") {
			t.Errorf("%s:\n%s", text, got)
		}
		if got := s.say("kitchen", "Ana", "log 1.2"); !strings.Contains(got, "30 %") {
			t.Errorf("after %s:\n%s", text, got)
		}
	}
}

// TestRefusedEditOfAnArrival holds that what is on the shelf stays there when an edit
// says what can't be.
func TestRefusedEditOfAnArrival(t *testing.T) {
	s := open(t)
	m := s.message("kitchen", "Robin", "on the shelf: 4 quarts rye oyster since 1 mar")
	s.send(m)
	if got := s.send(s.edited(m, "on the shelf: 400 quarts rye oyster since 1 mar")); !strings.Contains(got, "before stands") {
		t.Errorf("the edit: %s", got)
	}
	if got := s.say("kitchen", "Robin", "shelf"); !strings.Contains(got, "#1.1-4") {
		t.Errorf("the shelf: %s", got)
	}
}

// TestArrivalAhead holds that a day which comes soon isn't taken for the one of last year.
func TestArrivalAhead(t *testing.T) {
	s := open(t)
	if got := s.say("kitchen", "Robin", "on the shelf: 4 quarts rye oyster since 9 mar"); !strings.Contains(got, "9 Mar is still to come") {
		t.Error(got)
	}
	for said, want := range map[string]string{"9 nov": "9 Nov 2025", "20 aug": "20 Aug 2025", "9 mar 2025": "9 Mar 2025", "tuesday": "24 Feb"} {
		if got := s.say("kitchen", "Robin", "on the shelf: 4 quarts rye oyster since "+said); !strings.Contains(strings.Join(strings.Fields(got), " "), "counted from "+want) {
			t.Errorf("since %s: %s", said, got)
		}
	}
}

// TestRefusedEditOfACulture is the same for cultures, made and ended.
func TestRefusedEditOfACulture(t *testing.T) {
	s := open(t)
	made := s.message("kitchen", "Robin", "new lc 4, oyster")
	s.send(made)
	if got := s.send(s.edited(made, "new lc 4, oyster, belongs to bob")); !strings.Contains(got, "before stands") {
		t.Errorf("its owner: %s", got)
	}
	ended := s.message("kitchen", "Robin", "lc 4 is used up")
	s.send(ended)
	if got := s.send(s.edited(ended, "lc 5 is used up")); !strings.Contains(got, "before stands") {
		t.Errorf("its end: %s", got)
	}
}
