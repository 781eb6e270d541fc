package answer

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// reply answers the post of a row.
func (s *stage) reply(room, who, text string, row store.RowID) string {
	m := s.message(room, who, text)
	m.ReplyTo = "post-" + strconv.Itoa(int(row))
	return s.send(m)
}

// tap taps a button of a row.
func (s *stage) tap(room, who string, row store.RowID, button int) string {
	m := s.message(room, who, "")
	m.Tap = &chat.Tap{Row: int64(row), Button: button}
	return s.send(m)
}

// An edit is about what stood before it and about itself, never about what was
// said since.
func TestEditLooksBackOnly(t *testing.T) {
	s := open(t)
	first := s.message("kitchen", "Robin", "3 bags 5lb agar")
	s.send(first)
	s.say("kitchen", "Robin", "7 quarts rye lc")
	e := s.message("kitchen", "Robin", "no, 4 bags")
	e.Edits = first.Event
	wantPart(t, s.send(e), "4 bags of 5 lb, agar")
}

// What an edited message had said stands again when the new text can't be so.
func TestRefusedEditLosesNothing(t *testing.T) {
	s := open(t)
	m := s.message("kitchen", "Robin", "we're at 1600 m")
	s.send(m)
	e := s.message("kitchen", "Robin", "we're at 16000 m")
	e.Edits = m.Event
	wantPart(t, s.send(e), "16,000 m")
	wantPart(t, s.say("kitchen", "Robin", "kitchen"), "1,600 m")
}

// The kitchen and the roles are the stewards', by reply, tap and edit too.
func TestRightsByTheBackDoor(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Jo", "2 quarts lc")
	s.say("kitchen", "Kim", "2 quarts lc")
	role := s.hear(s.message("kitchen", "Robin", "make Kim a steward"))
	wantPart(t, s.reply("kitchen", "Jo", "undo", role.row), "Only a steward")
	wantPart(t, s.tap("kitchen", "Jo", role.row, 0), "Only a steward")
	both := s.hear(s.message("kitchen", "Robin", "we're at 1600 m and 3 bags 5lb agar"))
	wantPart(t, s.reply("kitchen", "Jo", "undo", both.row), "Only a steward")
	wantPart(t, s.say("kitchen", "Robin", "kitchen"), "1,600 m")
	wantPart(t, s.say("kitchen", "Robin", "members"), "Kim, steward")
}

// The list of members is what the log says, also when a role is struck by a
// correction or an edit.
func TestRolesFollowTheLog(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Jo", "2 quarts lc")
	m := s.message("kitchen", "Robin", "make Jo a steward, we're at 1600 m")
	s.send(m)
	s.say("kitchen", "Robin", "no, 1500 m")
	wantPart(t, s.say("kitchen", "Robin", "members"), "Jo, steward")
	e := s.message("kitchen", "Robin", "we're at 1400 m")
	e.Edits = m.Event
	s.send(e)
	if got := s.say("kitchen", "Robin", "members"); strings.Contains(got, "Jo, steward") {
		t.Errorf("Jo is a steward though the role was struck:\n%s", got)
	}
}

// Undo in reply to a plan takes back no setting.
func TestUndoOfAPlan(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "we're at 1600 m")
	plan := s.hear(s.message("kitchen", "Robin", "3 bags 5lb agar"))
	wantPart(t, s.reply("kitchen", "Robin", "undo", plan.row), "A plan is only worked out")
	s.say("kitchen", "Robin", "no, 4 bags")
	wantPart(t, s.say("kitchen", "Robin", "undo"), "3 bags of 5 lb")
	wantPart(t, s.say("kitchen", "Robin", "kitchen"), "1,600 m")
}

// A second tap on Cook it begins nothing; one after the load is out begins the
// next load of the same plan.
func TestCookItTwice(t *testing.T) {
	s := open(t)
	plan := s.hear(s.message("kitchen", "Robin", "3 bags 5lb agar"))
	wantPart(t, s.tap("kitchen", "Robin", plan.row, 0), "#1")
	again := s.tap("kitchen", "Ana", plan.row, 0)
	if strings.Contains(again, "#2") {
		t.Errorf("a second tap began a second run:\n%s", again)
	}
	wantPart(t, s.say("kitchen", "Robin", "cook 2 quarts rye lc"), "#2")
}

// What can't be held here isn't put on.
func TestCookNotHere(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "we're at 4000 m")
	s.say("kitchen", "Robin", "1 gallon rye agar")
	if got := s.say("kitchen", "Robin", "cook it"); strings.Contains(got, "#1") {
		t.Errorf("a run of an impossible hold was begun:\n%s", got)
	}
}

// Cooking something else doesn't end the waiting for a start; cooking that very
// order does, whoever cooks it.
func TestStartIsMetByItsOrder(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "3 bags 5lb agar out by 20:30")
	s.say("kitchen", "Robin", "ping me then")
	s.say("kitchen", "Robin", "cook 1 quart rye lc")
	if n := s.waiting(); n != 1 {
		t.Fatalf("%d start pings wait after cooking something else, want 1", n)
	}
	s.say("kitchen", "Ana", "cook 3 bags 5lb agar")
	if n := s.waiting(); n != 0 {
		t.Errorf("%d start pings wait after cooking it, want none", n)
	}
}

func (s *stage) waiting() (n int) {
	s.t.Helper()
	err := s.db.View(s.t.Context(), func(tx *store.Tx) error {
		rows, err := tx.Book(1).WaitingPings(kitchen.StartPrefix)
		n = len(rows)
		return err
	})
	if err != nil {
		s.t.Fatal(err)
	}
	return n
}

// A private room is one member's: nobody else is served there, nor who has left.
func TestPrivateRoomIsOnesOwn(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Ana", "2 quarts lc")
	s.say("private-ana", "Ana", "2 quarts lc")
	wantSilence(t, s.say("private-ana", "Mallory", "kitchen"))
	err := s.db.Update(t.Context(), func(tx *store.Tx) error { return tx.Book(1).Leave(2, s.now) })
	if err != nil {
		t.Fatal(err)
	}
	wantSilence(t, s.say("private-ana", "Ana", "kitchen"))
}

// Hours after the plan, and in somebody else's mouth just after it, "cook it" is
// still about it.
func TestCookItLater(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "3 bags 5lb agar out by 23:00")
	s.now = s.now.Add(6 * time.Hour)
	wantPart(t, s.say("kitchen", "Robin", "cook it"), "#1")
	s.say("kitchen", "Robin", "2 quarts rye lc")
	wantPart(t, s.say("kitchen", "Jo", "cook it"), "#2")
}

// A question waits while something else is set.
func TestQuestionWaits(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "3 bags agar")
	s.say("kitchen", "Robin", "we're at 1600 m")
	wantPart(t, s.say("kitchen", "Robin", "5 lb"), "3 bags of 5 lb")
}
