package answer

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// fire fires what is due now, each in a transaction of its own, and gives what was
// posted.
func (s *stage) fire() []delivered {
	s.t.Helper()
	for {
		found := false
		err := s.db.Update(s.t.Context(), func(tx *store.Tx) error {
			rows, err := tx.DuePings(s.now, 1)
			if err != nil || len(rows) == 0 {
				return err
			}
			found = true
			if err := s.a.Ping(tx, rows[0], s.now); err != nil {
				return err
			}
			return tx.Book(rows[0].Collective).MarkFired(rows[0].Key, s.now)
		})
		if err != nil {
			s.t.Fatal(err)
		}
		if !found {
			return s.deliver()
		}
	}
}

// pass moves the clock on, and fires each ping at its time.
func (s *stage) pass(d time.Duration) []delivered {
	s.t.Helper()
	var out []delivered
	for end := s.now.Add(d); ; {
		var due time.Time
		var waits bool
		err := s.db.View(s.t.Context(), func(tx *store.Tx) (err error) {
			due, waits, err = tx.NextDue()
			return err
		})
		if err != nil {
			s.t.Fatal(err)
		}
		if !waits || due.After(end) {
			s.now = end
			return out
		}
		if due.After(s.now) {
			s.now = due
		}
		out = append(out, s.fire()...)
	}
}

// down moves the clock on while nothing fires, and then fires what is due.
func (s *stage) down(d time.Duration) []delivered {
	s.t.Helper()
	s.now = s.now.Add(d)
	return s.fire()
}

// wanted lists the pings that wait, by when they are due, without the notes about
// the shelf weeks later.
func (s *stage) wanted() []string {
	s.t.Helper()
	var rows []store.PingRow
	err := s.db.View(s.t.Context(), func(tx *store.Tx) error {
		for _, prefix := range []string{"run/", kitchen.BookingsPrefix} {
			all, err := tx.Book(1).Pings(prefix)
			if err != nil {
				return err
			}
			rows = append(rows, all...)
		}
		return nil
	})
	if err != nil {
		s.t.Fatal(err)
	}
	rows = slices.DeleteFunc(rows, func(r store.PingRow) bool { return !r.Fired.IsZero() || r.Kind.Daily() })
	slices.SortStableFunc(rows, func(a, b store.PingRow) int { return a.Due.Compare(b.Due) })
	var out []string
	for _, r := range rows {
		out = append(out, r.Due.Format("15:04")+" "+r.Key)
	}
	return out
}

// heads are the rooms and the first lines of what was posted.
func heads(posts []delivered) []string {
	var out []string
	for _, p := range posts {
		first, _, _ := strings.Cut(chat.Plain(p.post, 80), "\n")
		out = append(out, p.room+": "+strings.ReplaceAll(first, "\u00a0", " "))
	}
	return out
}

func wantLines(t *testing.T, what string, got []string, want ...string) {
	t.Helper()
	if !slices.Equal(got, want) {
		t.Errorf("%s:\n%s\nwant:\n%s", what, strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// holding is a stage on which Ana's quarts are at pressure since now.
func holding(t testing.TB) *stage {
	s := open(t)
	s.say("kitchen", "Ana", "cook 4 quarts lc")
	s.say("kitchen", "Ana", "at 15")
	return s
}

// Each ping comes when it is due and not a moment before; those that guard a hot
// cooker go on until somebody answers.
func TestPingsWhenDue(t *testing.T) {
	s := holding(t)
	wantLines(t, "before", heads(s.pass(85*time.Minute-time.Millisecond)))
	wantLines(t, "nearly", heads(s.pass(time.Millisecond)), "kitchen: Ana: #1 heat off at 10:30, in 5 min. Be at the pot.")
	wantLines(t, "before the end", heads(s.pass(5*time.Minute-time.Millisecond)))
	over := s.pass(time.Millisecond)
	wantLines(t, "over", heads(over), "kitchen: Ana: #1 heat off now. 90 min at 15 psi, 09:00 to 10:30.")
	if over[0].post.Loudness != chat.Guard {
		t.Errorf("the end of a hold is loud as %v", over[0].post.Loudness)
	}
	wantLines(t, "unanswered", heads(s.pass(10*time.Minute)),
		"kitchen: Ana: #1 heat off. 5 min over. Still on?", "kitchen: Ana: #1 HEAT OFF, 10 min over.")
	s.say("kitchen", "Jo", "#1 heat off")
	wantLines(t, "answered", heads(s.pass(40*time.Minute)))
}

// Two pings to the same person within a minute are one post; one that guards is
// never drawn forward to another.
func TestPingsBatched(t *testing.T) {
	s := open(t)
	for i := 1; i <= 2; i++ {
		s.say("kitchen", "Ana", fmt.Sprintf("cook 4 quarts lc in pot %d", i))
	}
	s.say("kitchen", "Ana", "#1 at 15")
	s.now = s.now.Add(40 * time.Second)
	s.say("kitchen", "Ana", "#2 at 15")
	wantLines(t, "guards", heads(s.pass(90*time.Minute)),
		"kitchen: Ana: #1 heat off at 10:30, in 5 min. Be at the pot.",
		"kitchen: Ana: #1 heat off now. 90 min at 15 psi, 09:00 to 10:30.",
		"kitchen: Ana: #2 heat off now. 90 min at 15 psi, 09:00 to 10:30.")
	for _, said := range []string{"#1 heat off", "#2 heat off"} {
		s.say("kitchen", "Ana", said)
	}
	s.now = s.now.Add(50 * time.Minute)
	s.say("kitchen", "Ana", "#1 out of the pot")
	s.now = s.now.Add(40 * time.Second)
	s.say("kitchen", "Ana", "#2 out of the pot")
	cool := s.pass(9 * time.Hour)
	if len(cool) != 1 {
		t.Fatalf("%d posts for two cool loads: %v", len(cool), heads(cool))
	}
	text := chat.Plain(cool[0].post, 80)
	wantPart(t, text, "#1 probably cool: measure one")
	wantPart(t, text, "#2 probably cool: measure one")
}

// After a downtime one post says what was due, how late it is, and not what makes
// no sense any more.
func TestPingsAfterDowntime(t *testing.T) {
	tests := []struct {
		down time.Duration
		want []string
	}{
		{87 * time.Minute, []string{"kitchen: Ana: #1 heat off at 10:30, in 3 min. Be at the pot."}},
		{89*time.Minute + 30*time.Second, nil}, // nearly over is stale
		{93 * time.Minute, []string{"kitchen: Ana: #1 heat off now. 90 min at 15 psi, 09:00 to 10:30."}},
		{101 * time.Minute, []string{"kitchen: Ana: #1 heat off now. 90 min at 15 psi, 09:00 to 10:30."}},
		{2 * time.Hour, []string{"kitchen: Who is in the kitchen? #1, the cooker: heat off now."}},
	}
	for _, tt := range tests {
		s := holding(t)
		posts := s.down(tt.down)
		wantLines(t, tt.down.String(), heads(posts), tt.want...)
		if late := tt.down - 90*time.Minute; late > 0 && len(posts) > 0 {
			wantPart(t, chat.Plain(posts[0].post, 80), fmt.Sprintf("Due 10:30, %d min late", int(late.Minutes())))
		}
	}
}

// A ping goes to the room of the run, or to the cook in private; a warning of water
// to both; one that nobody answers to every room.
func TestPingRooms(t *testing.T) {
	s := open(t)
	if err := s.a.Admit(t.Context(), s.room("kitchen"), s.room("shed"), s.now); err != nil {
		t.Fatal(err)
	}
	s.say("shed", "Ana", "cook 4 quarts lc")
	s.say("shed", "Ana", "2 litres in the pot")
	s.say("private-ana", "Ana", "pings private")
	s.say("private-ana", "Ana", "at 15")
	where := func(posts []delivered) (rooms []string) {
		for _, p := range posts {
			rooms = append(rooms, p.room)
		}
		slices.Sort(rooms)
		return slices.Compact(rooms)
	}
	var water []delivered
	for len(water) == 0 && s.now.Hour() < 10 {
		water = s.pass(time.Minute)
	}
	wantLines(t, "water", where(water), "private-ana", "shed")
	s.say("private-ana", "Ana", "i've got 1")
	wantLines(t, "heat off", where(s.pass(s.now.Truncate(time.Hour).Add(90*time.Minute).Sub(s.now))), "private-ana")
	wantLines(t, "nobody", where(s.pass(15*time.Minute)), "kitchen", "private-ana", "shed")
	s.say("kitchen", "Robin", "#1 heat off")
	s.say("private-ana", "Ana", "pings here")
	wantLines(t, "zero", where(s.pass(45*time.Minute)), "shed")
}

// Who never spoke with the bot in private hears it in the room.
func TestPrivatePingsWithoutRoom(t *testing.T) {
	s := holding(t)
	s.say("kitchen", "Ana", "pings private")
	wantLines(t, "nearly", heads(s.pass(85*time.Minute)), "kitchen: Ana: #1 heat off at 10:30, in 5 min. Be at the pot.")
}

// Quiet hours put off what can wait; what guards a hot cooker rings.
func TestPingsInQuietHours(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Ana", "quiet 10:00 to 14:00")
	s.say("kitchen", "Ana", "cook 4 quarts lc")
	s.say("kitchen", "Ana", "at 15")
	wantLines(t, "quiet", heads(s.pass(90*time.Minute)), "kitchen: Ana: #1 heat off now. 90 min at 15 psi, 09:00 to 10:30.")
	s.say("kitchen", "Ana", "heat off")
	s.now = s.now.Add(50 * time.Minute)
	s.say("kitchen", "Ana", "out of the pot")
	s.now = s.now.Add(6 * time.Hour)
	s.say("kitchen", "Ana", "25 in the middle") // the cook's own reading rings nobody
	wantLines(t, "cool", s.wanted())
	s.say("kitchen", "Ana", "undo")
	wantLines(t, "warm again", s.wanted(), "18:50 run/1/probably-cool/1", "08:00 run/1/probably-cool/1/again/1")
	s.say("kitchen", "Ana", "quiet 18:00 to 21:00")
	wantLines(t, "moved", s.wanted(), "21:00 run/1/probably-cool/1", "08:00 run/1/probably-cool/1/again/1")
}

var chainOfHold = []string{
	"10:25 run/1/hold-nearly/1", "10:30 run/1/hold-over/1", "10:35 run/1/hold-over/1/again/1",
	"10:40 run/1/hold-over/1/again/2", "10:45 run/1/hold-over/1/again/3", "11:00 run/1/hold-over/1/again/4",
	"11:30 run/1/hold-over/1/again/5", "12:30 run/1/hold-over/1/again/6", "14:30 run/1/hold-over/1/again/7",
	"16:30 run/1/hold-over/1/again/8", "18:30 run/1/hold-over/1/again/9", "20:30 run/1/hold-over/1/again/10",
	"22:30 run/1/hold-over/1/again/11",
}

var chainOfZero = []string{
	"10:15 run/1/zero/1", "10:35 run/1/zero/1/again/1", "10:55 run/1/zero/1/again/2", "11:10 run/1/zero/1/again/3",
	"11:40 run/1/zero/1/again/4", "12:40 run/1/zero/1/again/5", "14:40 run/1/zero/1/again/6", "16:40 run/1/zero/1/again/7",
	"18:40 run/1/zero/1/again/8", "20:40 run/1/zero/1/again/9",
}

var chainOfLoss = []string{
	"09:50 run/1/pressure-back/1", "10:20 run/1/pressure-back/1/again/1", "11:20 run/1/pressure-back/1/again/2",
	"12:20 run/1/pressure-back/1/again/3", "14:20 run/1/pressure-back/1/again/4", "16:20 run/1/pressure-back/1/again/5",
	"18:20 run/1/pressure-back/1/again/6", "20:20 run/1/pressure-back/1/again/7",
}

// After whatever is said the pings are those that the state wants.
func TestPingsReconciled(t *testing.T) {
	s := holding(t)
	wantLines(t, "at pressure", s.wanted(), chainOfHold...)
	s.now = s.now.Add(30 * time.Minute)
	s.say("kitchen", "Ana", "heat off")
	wantLines(t, "heat off", s.wanted(), chainOfZero...)
	s.say("kitchen", "Ana", "undo")
	wantLines(t, "undone", s.wanted(), chainOfHold...)
	m := s.message("kitchen", "Ana", "lost pressure")
	s.send(m)
	wantLines(t, "lost", s.wanted(), chainOfLoss...)
	edit := s.message("kitchen", "Ana", "heat off")
	edit.Edits = m.Event
	s.send(edit)
	wantLines(t, "edited", s.wanted(), chainOfZero...)
	s.say("kitchen", "Robin", "the cooker falls in 30 min")
	for range 2 {
		s.say("kitchen", "Ana", "undo")
	}
	wantLines(t, "never at pressure", s.wanted())
	s.say("kitchen", "Ana", "undo")
	s.say("kitchen", "Ana", "undo")
	if got := s.wanted(); len(got) != 0 {
		t.Errorf("a run that was taken back wants %v", got)
	}
}

// A booking that a run runs into warns its owner, until it is given up.
func TestOverrunPing(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Robin", "big pot takes 7 quarts")
	s.say("kitchen", "Jo", "big pot today 11-14")
	s.say("kitchen", "Ana", "cook 7 quarts lc in the big pot")
	s.say("kitchen", "Ana", "at 15")
	if got := s.wanted(); !slices.ContainsFunc(got, func(l string) bool { return strings.Contains(l, "run/1/overrun/") }) {
		t.Fatalf("no warning waits: %v", got)
	}
	wantLines(t, "overrun", heads(s.pass(time.Minute)), "kitchen: Jo: #1 keeps the big pot until about 11:20; your booking is 11:00 to 14:00.")
	s.say("kitchen", "Jo", "cancel my booking")
	for _, l := range s.wanted() {
		if strings.Contains(l, "overrun") {
			t.Errorf("still waits: %s", l)
		}
	}
}

// What else was told while the bot was down doesn't hide that it was.
func TestLateWhateverWasTold(t *testing.T) {
	s := open(t)
	s.say("kitchen", "Ana", "4 quarts lc out by 20:30")
	s.say("kitchen", "Ana", "ping me then")
	s.now = s.now.Add(10 * time.Hour)
	s.say("kitchen", "Jo", "2 quarts lc out by 23:30")
	s.say("kitchen", "Jo", "ping me then")
	s.say("kitchen", "Jo", "room 19C")
	posts := s.fire()
	if len(posts) != 1 {
		t.Fatalf("got %v, want one start", heads(posts))
	}
	wantPart(t, chat.Plain(posts[0].post, 80), "late: I was down.")
}

// Which of several pings of one moment is tried first makes no difference: one that
// failed comes up again behind the others.
func TestPingsOfAMomentReadAlike(t *testing.T) {
	var heard [2][]string
	for i := range heard {
		s := open(t)
		s.say("kitchen", "Ana", "big pot takes 7 quarts\nsteel pot takes 7 quarts")
		s.say("kitchen", "Ana", "big pot tomorrow 9-13, soak")
		s.say("kitchen", "Ana", "steel pot tomorrow 9-13, soak")
		s.now = s.now.Add(24 * time.Hour)
		err := s.db.Update(t.Context(), func(tx *store.Tx) error {
			rows, err := tx.DuePings(s.now, 10)
			if err != nil {
				return err
			}
			if len(rows) != 2 {
				t.Fatalf("%d pings are due: %v", len(rows), rows)
			}
			first := rows[i]
			if err := s.a.Ping(tx, first, s.now); err != nil {
				return err
			}
			return tx.Book(first.Collective).MarkFired(first.Key, s.now)
		})
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range s.deliver() {
			heard[i] = append(heard[i], chat.Plain(p.post, 40))
		}
	}
	wantLines(t, "the second of two pings first", heard[1], heard[0]...)
}
