package answer

import (
	"regexp"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/store"
)

// A room is deaf until somebody says the operator's code; then it has a book and
// they are its steward.
func TestClaim(t *testing.T) {
	s := bare(t)
	wantSilence(t, s.say("garden", "Ana", "3 bags 5lb agar"))
	code, err := s.a.ClaimCode(t.Context(), s.now)
	if err != nil {
		t.Fatal(err)
	}
	wantSilence(t, s.say("garden", "Ana", "claim AAAA-BBBB-CCCC-DDDD"))
	wantPart(t, s.say("garden", "Ana", "claim "+code), "has a book now")
	wantPart(t, s.say("garden", "Ana", "3 bags 5lb agar"), "1,555 g")
	wantPart(t, s.say("garden", "Ana", "members"), "Ana, steward")
	wantSilence(t, s.say("cellar", "Jo", "claim "+code)) // works once
}

// Five wrong codes in an hour, and the right one no longer works in that room.
func TestGuessing(t *testing.T) {
	s := bare(t)
	code, err := s.a.ClaimCode(t.Context(), s.now)
	if err != nil {
		t.Fatal(err)
	}
	for range triesAnHour {
		s.say("garden", "Mallory", "claim AAAA-BBBB-CCCC-DDDD")
	}
	wantSilence(t, s.say("garden", "Mallory", "claim "+code))
	s.now = s.now.Add(time.Hour)
	wantPart(t, s.say("garden", "Mallory", "claim "+code), "has a book now")
}

func TestCodeExpires(t *testing.T) {
	s := bare(t)
	code, err := s.a.ClaimCode(t.Context(), s.now)
	if err != nil {
		t.Fatal(err)
	}
	s.now = s.now.Add(25 * time.Hour)
	wantSilence(t, s.say("garden", "Ana", "claim "+code))
}

// A further room joins with a code asked for in the first, and shares its book.
func TestJoin(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "we're at 1600 m")
	code := regexp.MustCompile(`[A-Z2-7]{4}(-[A-Z2-7]{4}){3}`).FindString(s.say("kitchen", "Robin", "code for another room"))
	wantPart(t, s.say("shed", "Jo", "join "+code), "shares the book")
	wantPart(t, s.say("shed", "Jo", "kitchen"), "1,600 m")
	wantPart(t, s.say("shed", "Jo", "we're at 160 m"), "Only a steward")
}

// What was done in the terminal before the first room was claimed goes over to
// that room's collective.
func TestTerminalGoesOver(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "we're at 1600 m")
	code, err := s.a.ClaimCode(t.Context(), s.now)
	if err != nil {
		t.Fatal(err)
	}
	m := s.message("-100", "Ana", "claim "+code)
	m.Room.Door, m.From.Door = chat.Telegram, chat.Telegram
	if err := s.a.Turn(t.Context(), m); err != nil {
		t.Fatal(err)
	}
	err = s.db.View(t.Context(), func(tx *store.Tx) error {
		room, err := tx.Room(string(chat.Telegram), "-100")
		if err == nil && room.Collective != 1 {
			t.Errorf("the room belongs to collective %d, want the terminal's", room.Collective)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// In private the bot serves those it has seen in a room, and nobody else.
func TestPrivate(t *testing.T) {
	s := open(t)
	wantSilence(t, s.say("private-ana", "Ana", "3 bags 5lb agar"))
	s.say("kitchen", "Ana", "3 bags 5lb agar")
	wantPart(t, s.say("private-ana", "Ana", "2 quarts lc"), "2 quart jars")
}

// Who asks to be forgotten loses name, account and typed words; the entries
// stay, and the log is still whole.
func TestForget(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Ana", "2 quarts lc")
	s.say("kitchen", "Robin", "make Ana a steward")
	s.say("kitchen", "Ana", "room 19C")
	wantPart(t, s.say("kitchen", "Ana", "forget me"), "forget Ana")
	wantPart(t, s.say("kitchen", "Ana", "forget Robin"), "only yourself")
	wantPart(t, s.say("kitchen", "Ana", "forget Ana"), "Done")
	wantPart(t, s.say("kitchen", "Robin", "kitchen"), "Room: 19 °C")
	err := s.db.View(t.Context(), func(tx *store.Tx) error {
		book := tx.Book(1)
		entries, err := book.Entries(kitchenSubject)
		if err != nil {
			return err
		}
		for _, e := range entries {
			if e.Said != "" {
				t.Errorf("entry %d still holds what was typed", e.No)
			}
		}
		return book.VerifyChain(t.Context())
	})
	if err != nil {
		t.Fatal(err)
	}
	// The only steward can't leave others behind without one; alone they can, and
	// whoever speaks next is steward.
	s.say("kitchen", "Jo", "2 quarts lc")
	wantPart(t, s.say("kitchen", "Robin", "forget Robin"), "only steward")
	s.say("kitchen", "Jo", "forget Jo")
	wantPart(t, s.say("kitchen", "Robin", "forget Robin"), "Done")
	s.say("kitchen", "Mika", "2 quarts lc")
	wantPart(t, s.say("kitchen", "Mika", "room 18C"), "18 °C")
}
