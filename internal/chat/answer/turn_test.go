package answer

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/chat"
	"ryebell/internal/store"
)

// A platform that delivers an event twice gets one answer and one entry.
func TestRepeatedEventIsAnsweredOnce(t *testing.T) {
	s := open(t)
	m := s.message("kitchen", "Robin", "we're at 1600 m")
	wantPart(t, s.send(m), "1,600 m")
	wantSilence(t, s.send(m))
	if n := s.count("kitchen"); n != 1 {
		t.Errorf("%d entries about the kitchen, want 1", n)
	}
}

// count is the number of entries about a subject in the first collective.
func (s *stage) count(subject string) (n int) {
	s.t.Helper()
	err := s.db.View(s.t.Context(), func(tx *store.Tx) error {
		all, err := tx.Book(1).Entries(subject)
		n = len(all)
		return err
	})
	if err != nil {
		s.t.Fatal(err)
	}
	return n
}

// What people say to each other gets no answer and leaves no trace: not even
// that they spoke.
func TestChatterLeavesNoTrace(t *testing.T) {
	s := open(t)
	for _, text := range []string{"anyone want pizza", "lol my kid ate the label", "see you at 5 then", "hi", "thanks", "3", "🍄🍄"} {
		wantSilence(t, s.say("kitchen", "Ana", text))
	}
	err := s.db.View(t.Context(), func(tx *store.Tx) error {
		members, err := tx.Book(1).Members()
		if len(members) != 1 {
			t.Errorf("%d members after chatter of a stranger, want Robin alone", len(members))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// Words that people also say to each other count from somebody who spoke with
// the bot in the last ten minutes.
func TestLooseWordsCountAfterTalk(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Ana", "3 bags 5lb agar")
	wantSilence(t, s.say("kitchen", "Jo", "thanks"))
	if s.say("kitchen", "Ana", "thanks") == "" {
		t.Error("thanks after a plan: silence")
	}
	s.now = s.now.Add(11 * time.Minute)
	wantSilence(t, s.say("kitchen", "Ana", "thanks"))
}

// In private, addressed or in a reply, what isn't understood is said.
func TestAddressedGetsAnAnswer(t *testing.T) {
	s := open(t)
	first := s.hear(s.message("kitchen", "Ana", "3 bags 5lb agar"))
	reply := s.message("kitchen", "Ana", "florb the wuzzle")
	reply.ReplyTo = "post-1"
	if first.row != 1 {
		t.Fatalf("first row is %d", first.row)
	}
	wantPart(t, s.send(reply), "I didn't get that")
	wantPart(t, s.say("private-ana", "Ana", "florb the wuzzle"), "I didn't get that")
}

// A reply is context: it is about the plan of that post, not about the newest.
func TestReplyIsContext(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Ana", "3 bags 5lb agar")
	s.say("kitchen", "Ana", "2 quarts rye lc")
	m := s.message("kitchen", "Jo", "no, 4 bags")
	m.ReplyTo = "post-1"
	wantPart(t, s.send(m), "4 bags of 5 lb, agar")
}

// An edited message corrects: its entries are struck, its answer edited in
// place, and again for a second edit.
func TestEditCorrects(t *testing.T) {
	s := open(t)
	m := s.message("kitchen", "Robin", "we're at 1600 m")
	first := s.hear(m)
	for _, text := range []string{"we're at 160 m", "we're at 1500 m"} {
		e := s.message("kitchen", "Robin", text)
		e.Edits = m.Event
		got := s.hear(e)
		if got.replaces != "post-1" || first.row != 1 {
			t.Errorf("answer to the edit replaces %q, want post-1", got.replaces)
		}
	}
	wantPart(t, s.say("kitchen", "Robin", "kitchen"), "Elevation: 1,500 m")
	if n := s.count("kitchen"); n != 5 { // three heights, two strikes
		t.Errorf("%d entries, want 5: nothing is overwritten", n)
	}
	other := s.message("kitchen", "Ana", "we're at 2 m")
	other.Edits = m.Event
	s.send(other)
	wantPart(t, s.say("kitchen", "Robin", "kitchen"), "Elevation: 1,500 m")
}

// How warm the room is anybody may tell, mend and take back; a steward's word beside it
// stays one's.
func TestRoomIsAnObservation(t *testing.T) {
	s := open(t)
	wantPart(t, s.say("kitchen", "Ana", "its 18 in here"), "18 °C")
	wantPart(t, s.say("kitchen", "Ana", "no, 19C"), "19 °C")
	wantPart(t, s.say("kitchen", "Ana", "undo"), "room 19 °C")
	wantPart(t, s.say("kitchen", "Ana", "room is 64, round to 10 g"), "Only a steward")
	wantPart(t, s.say("kitchen", "Ana", "kitchen"), "Weights to 5 g")
	m := s.message("kitchen", "Robin", "room 25C")
	s.send(m)
	late := s.message("kitchen", "Ana", "room 17C")
	late.At = late.At.Add(-time.Hour)
	s.send(late)
	wantPart(t, s.say("kitchen", "Robin", "kitchen"), "Room: 25 °C") // which was told last
}

// A room that is told late can turn a reading that was over the limit into one at it:
// the pings of the run that cools are made equal to that.
func TestRoomMovesPings(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "3 5lb bags agar")
	for _, text := range []string{"cook it", "lit it", "at 15"} {
		s.say("kitchen", "Robin", text)
	}
	s.now = s.now.Add(3 * time.Hour)
	s.say("kitchen", "Robin", "heat off")
	s.now = s.now.Add(time.Hour)
	s.say("kitchen", "Robin", "zero")
	s.now = s.now.Add(12 * time.Hour)
	s.say("kitchen", "Robin", "29C on the skin")
	if got := strings.Join(s.wanted(), " "); strings.Contains(got, "measure") {
		t.Fatalf("pings before the room is told: %s", got)
	}
	m := s.message("kitchen", "Jo", "room 28C")
	m.At = m.At.Add(-time.Hour)
	s.send(m)
	if got := strings.Join(s.wanted(), " "); !strings.Contains(got, "measure") {
		t.Errorf("pings once the room was 28 °C: %s, want one to measure again", got)
	}
}

// Only stewards change the kitchen; anybody may ask.
func TestRights(t *testing.T) {
	s := open(t)
	wantPart(t, s.say("kitchen", "Ana", "round to 10 g"), "Only a steward")
	wantPart(t, s.say("kitchen", "Ana", "make Ana a steward"), "Only a steward")
	wantPart(t, s.say("kitchen", "Ana", "code for another room"), "Only a steward")
	wantPart(t, s.say("kitchen", "Robin", "make Ana a steward"), "Ana is a steward")
	wantPart(t, s.say("kitchen", "Ana", "round to 10 g"), "10 g")
	wantPart(t, s.say("kitchen", "Robin", "robin is no longer a steward"), "no longer")
	wantPart(t, s.say("kitchen", "Ana", "ana is no longer a steward"), "only steward")
}

// Undo goes back through the speaker's own entries in this room, one turn at a
// time; somebody else's only in a reply.
func TestUndo(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Ana", "2 quarts lc")
	s.say("kitchen", "Robin", "make Ana a steward")
	s.say("kitchen", "Robin", "we're at 1600 m")
	s.say("kitchen", "Robin", "room 19C")
	mark := s.hear(s.message("kitchen", "Ana", "round to 10 g"))
	wantPart(t, s.say("kitchen", "Robin", "undo"), "room 19 °C")
	wantPart(t, s.say("kitchen", "Robin", "undo"), "1,600 m")
	m := s.message("kitchen", "Robin", "undo")
	m.ReplyTo = "post-5"
	if mark.row != 5 {
		t.Fatalf("row %d", mark.row)
	}
	wantPart(t, s.send(m), "said by Ana")
	wantPart(t, s.say("kitchen", "Robin", "undo"), "steward")
	wantPart(t, s.say("kitchen", "Robin", "undo"), "nothing here")
}

// A bug is an apology, not a lost or an endless message.
func TestBugIsSaid(t *testing.T) {
	s := open(t)
	s.a.zone = nil // time.In panics
	m := s.message("kitchen", "Robin", "3 bags 5lb agar")
	wantPart(t, s.send(m), "Something went wrong in me")
	wantSilence(t, s.send(m))
}

// Two collectives in one book can't see each other: whatever is said in one, the
// other gets the answers that it would get alone.
func TestCollectivesAreApart(t *testing.T) {
	lines := []string{
		"3 bags 5lb agar", "we're at 1600 m", "room 19C", "big pot takes 7 quarts or 3 5lb bags", "cook it", "who's cooking",
		"same as 1", "same as 2", "undo", "kitchen", "members", "make Ana a steward", "the usual is 2 quarts lc", "the usual",
		"no, 4 bags", "why", "out by 20:30", "ping me then", "call me Jo", "thanks",
	}
	rapid.Check(t, func(rt *rapid.T) {
		both, alone := open(t), open(t)
		f := Foundation{Room: both.room("other"), Person: both.person("Mika"), At: both.now}
		if err := both.a.Found(t.Context(), f); err != nil {
			rt.Fatal(err)
		}
		var last store.RowID
		for range rapid.IntRange(1, 12).Draw(rt, "turns") {
			if rapid.Bool().Draw(rt, "there") {
				m := both.message("other", rapid.SampledFrom([]string{"Mika", "Robin"}).Draw(rt, "who"), rapid.SampledFrom(lines).Draw(rt, "line"))
				if rapid.Bool().Draw(rt, "tap") && last != 0 {
					m.Tap, m.Text = &chat.Tap{Row: int64(last), Button: 0}, "" // a button of the first room
				}
				both.send(m)
				continue
			}
			who, line := rapid.SampledFrom([]string{"Robin", "Ana"}).Draw(rt, "who"), rapid.SampledFrom(lines).Draw(rt, "line")
			got, want := both.say("kitchen", who, line), alone.say("kitchen", who, line)
			if got != want {
				rt.Fatalf("%s: %q is answered\n%s\nbeside another collective, alone\n%s", who, line, got, want)
			}
			last++
		}
	})
}

// A message that comes long after it was sent counts as of then, and says so.
func TestLateMessage(t *testing.T) {
	s := open(t)
	m := s.message("kitchen", "Robin", "3 bags 5lb agar")
	m.At = m.At.Add(-20 * time.Minute)
	got := s.send(m)
	wantPart(t, got, "08:40, when you sent it")
	if !strings.Contains(strings.ReplaceAll(got, "\n", " "), "out about 12:40") {
		t.Errorf("the clock of the day doesn't count from 08:40:\n%s", got)
	}
}
