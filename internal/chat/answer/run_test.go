package answer

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// twoPots is a stage with Robin's run #1 in the big pot and Ana's #2 in the small
// one.
func twoPots(t testing.TB) *stage {
	t.Helper()
	s := open(t)
	s.say("kitchen", "Robin", "big pot takes 7 quarts; small pot takes 4 quarts")
	s.say("kitchen", "Robin", "cook 7 quarts lc in the big pot")
	s.say("kitchen", "Ana", "cook 4 quarts lc in the small pot")
	s.say("kitchen", "Jo", "who's cooking")
	return s
}

// stages is how far each run is.
func (s *stage) stages(runs int) string {
	s.t.Helper()
	var out []string
	err := s.db.View(s.t.Context(), func(tx *store.Tx) error {
		for no := 1; no <= runs; no++ {
			r, err := foldRun(tx.Book(1), kitchen.RunNo(no))
			if err != nil {
				return err
			}
			out = append(out, r.Stage.String())
		}
		return nil
	})
	if err != nil {
		s.t.Fatal(err)
	}
	return strings.Join(out, ", ")
}

// Which run is meant: a reply decides, then its name, then its cooker; then their own
// of which they have just told the same, the only one where it can follow, the speaker's
// own, the one where it comes next. Else it is asked, and nothing is written.
func TestWhichRun(t *testing.T) {
	tests := []struct {
		name     string
		before   []string // who: what
		who, say string
		want     string
	}{
		{"named", nil, "Jo", "#2 heat on", "planned, heating"},
		{"by its cooker", nil, "Ana", "big pot heat on", "heating, planned"},
		{"a name before whose it is", nil, "Ana", "#1 heat on", "heating, planned"},
		{"the only one where it can follow", []string{"Robin: #1 heat on"}, "Jo", "heat on", "heating, heating"},
		{"even for whose it isn't", []string{"Ana: #2 heat on 40 min ago"}, "Ana", "heat on", "heating, heating"},
		{"their own, which they told just now", []string{"Ana: #2 heat on"}, "Ana", "heat on", "planned, heating"},
		{"the speaker's own", nil, "Ana", "heat on", "planned, heating"},
		{"asked", nil, "Jo", "heat on", "planned, planned"},
		{"own, though it comes next in another", []string{"Robin: #1 heat on"}, "Ana", "steam", "heating, venting"},
		{"comes next in one", []string{"Robin: #1 heat on"}, "Jo", "steam", "venting, planned"},
		{"comes next in one of their own", []string{"Jo: i've got 1", "Jo: i've got 2", "Jo: #2 heat on"}, "Jo", "steam", "planned, venting"},
		{"no hold that was done is lit again", []string{"Robin: #1 at 15 since 90 min ago", "Robin: #1 heat off"}, "Jo", "heat on", "falling, heating"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := twoPots(t)
			s.now = s.now.Add(100 * time.Minute)
			for _, line := range tt.before {
				who, text, _ := strings.Cut(line, ": ")
				s.say("kitchen", who, text)
			}
			m := s.message("kitchen", tt.who, tt.say)
			m.Address = chat.Addressed
			got := s.send(m)
			if at := s.stages(2); at != tt.want {
				t.Errorf("%s says %q: %s, want %s\n%s", tt.who, tt.say, at, tt.want, got)
			}
			if asked := strings.Contains(got, "Which run?"); asked != (tt.name == "asked") {
				t.Errorf("%s", got)
			}
		})
	}
}

// A reply and a tap are about the run of their post, whoever answers.
func TestReplyMeansRun(t *testing.T) {
	s := twoPots(t)
	answer := s.hear(s.message("kitchen", "Ana", "heat on"))
	s.now = s.now.Add(time.Hour)
	reply := s.message("kitchen", "Robin", "steam")
	reply.ReplyTo = fmt.Sprintf("post-%d", answer.row)
	wantPart(t, s.send(reply), "#2 weight on at 10:10")
	next := s.message("kitchen", "Jo", "at 15")
	next.Address = chat.Addressed
	wantPart(t, s.send(next), "Which run?") // it comes next in neither
	if got := s.stages(2); got != "planned, venting" {
		t.Errorf("stages %s", got)
	}
}

// A tap on the question which run is the sentence that was asked about.
func TestWhichRunTapped(t *testing.T) {
	s := twoPots(t)
	asked := s.hear(s.message("kitchen", "Jo", "heat on"))
	for range 2 { // the second time it is so already
		tap := s.message("kitchen", "Mika", "")
		tap.Tap = &chat.Tap{Row: int64(asked.row), Button: 1}
		s.send(tap)
	}
	if got := s.stages(2); got != "planned, heating" {
		t.Errorf("stages %s", got)
	}
	if n := s.count("run/2"); n != 2 {
		t.Errorf("%d entries of #2, want its beginning and the heat", n)
	}
}

// Words that name no ping answer the one that just came to the speaker, whosever
// other runs are on; it is theirs, and not the other they take.
func TestGotItAnswersOwnPing(t *testing.T) {
	s := twoPots(t)
	s.say("kitchen", "Ana", "at 15")
	s.pass(90 * time.Minute)
	wantPart(t, s.say("kitchen", "Ana", "i've got it"), "#2 is Ana's now. I ask again at 10:35")
	wantPart(t, s.say("kitchen", "Ana", "i've got 2"), "#2 is Ana's now.")
	s.pass(6 * time.Minute)
	wantPart(t, s.say("kitchen", "Ana", "not yet"), "#2: not yet. I ask again at 10:41")
}

// Anybody may tell of any run; only their own words can they take back without a
// reply.
func TestRunRights(t *testing.T) {
	s := twoPots(t)
	mark := s.hear(s.message("kitchen", "Jo", "#1 heat on"))
	wantPart(t, s.say("kitchen", "Ana", "undo"), "#2")
	s.say("kitchen", "Ana", "undo")
	if got := s.stages(1); got != "heating" {
		t.Errorf("Ana's undo took back what Jo said: %s", got)
	}
	undo := s.message("kitchen", "Ana", "undo")
	undo.ReplyTo = fmt.Sprintf("post-%d", mark.row)
	wantPart(t, s.send(undo), "said by Jo")
	if got := s.stages(1); got != "planned" {
		t.Errorf("stage %s", got)
	}
}

// A button that is tapped twice, and by two, is one entry; so is a message that the
// platform delivers twice.
func TestDoubleTaps(t *testing.T) {
	s := open(t)
	plan := s.hear(s.message("kitchen", "Ana", "4 quarts lc"))
	tap := func(who string, row store.RowID, button int) string {
		m := s.message("kitchen", who, "")
		m.Tap = &chat.Tap{Row: int64(row), Button: button}
		return strings.ReplaceAll(s.send(m), "\n", " ")
	}
	wantPart(t, tap("Ana", plan.row, 0), "Run #1")
	wantPart(t, tap("Ana", plan.row, 0), "Nothing was put on")
	wantPart(t, tap("Jo", plan.row, 0), "Nothing was put on")
	lit := s.hear(s.message("kitchen", "Ana", "heat on"))
	s.now = s.now.Add(20 * time.Minute)
	wantPart(t, tap("Jo", lit.row, 0), "#1 weight on at 09:30")
	wantPart(t, tap("Ana", lit.row, 0), "Jo said so, 09:20. No second entry")
	twice := s.message("kitchen", "Ana", "weight on")
	wantPart(t, s.send(twice), "#1 coming up")
	wantSilence(t, s.send(twice))
	if n := s.count("run/1"); n != 4 {
		t.Errorf("%d entries, want 4", n)
	}
}

// What only a run can have makes a run of the plan just talked about.
func TestRunBegunBySaying(t *testing.T) {
	for _, said := range []string{"soaking", "heat on", "steam", "at 15"} {
		s := open(t)
		s.say("kitchen", "Ana", "4 quarts lc")
		got := s.say("kitchen", "Ana", said)
		wantPart(t, got, "Run #1 in the cooker, Ana")
		if n := s.count("run/1"); n != 2 {
			t.Errorf("%q: %d entries, want the beginning and what was said", said, n)
		}
	}
	s := open(t)
	wantPart(t, s.say("kitchen", "Ana", "heat on"), "Nothing is on the stove")
	if n := s.count("run/1"); n != 0 {
		t.Errorf("%d entries of a run without a plan", n)
	}
}

// A refused correction of a time changes nothing.
func TestRefusedCorrection(t *testing.T) {
	s := holding(t)
	wantPart(t, s.say("kitchen", "Ana", "at pressure was 25 hours earlier"), "before #1 began")
	if got := s.stages(1); got != "at pressure" {
		t.Errorf("stage %s", got)
	}
	s.now = s.now.Add(30 * time.Minute)
	wantPart(t, s.say("kitchen", "Ana", "at pressure was 10 min later"), "heat off is now 10:40, was 10:30")
	wantPart(t, s.say("kitchen", "Ana", "steam was at 9:05"), "steam 09:05") // nobody had told
}

// said are the lines of random conversations about runs.
var said = []string{
	"4 quarts lc", "14 quarts rye lc", "cook it", "next load", "heat on", "steam", "weight on", "at 15", "14 psi", "lost pressure", "back at 15",
	"dropped to 11 for 4 min", "heat off", "heat off 5 min ago", "zero", "out of the pot", "1 litre left in the pot", "3 litres in the pot", "46C",
	"25 in the middle", "undo", "undo", "i've got 1", "robin takes 2", "call off the run", "at pressure was 5 min earlier", "soaking", "draining",
	"#1 heat on", "#2 steam", "#2 at 15 since 10 min ago", "big pot takes 7 quarts", "gauge reads 1 low", "quiet 22-7", "big pot tomorrow 10-14",
	"cook 2 quarts lc in the big pot", "not yet", "same as 1", "log 1", "now",
}

// However people talk, edit and repeat themselves, the list of runs and the pings
// that wait are those of a fold of all entries.
func TestListIsFold(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := open(t)
		var last chat.Message
		for range rapid.IntRange(1, 15).Draw(rt, "turns") {
			s.now = s.now.Add(rapid.SampledFrom([]time.Duration{0, time.Second, 7 * time.Minute, 2 * time.Hour}).Draw(rt, "later"))
			s.fire()
			m := s.message("kitchen", rapid.SampledFrom([]string{"Robin", "Ana"}).Draw(rt, "who"), rapid.SampledFrom(said).Draw(rt, "line"))
			m.Address = chat.Addressed
			if rapid.IntRange(0, 5).Draw(rt, "edit") == 0 && last.Event != "" {
				m.From, m.Edits = last.From, last.Event
			} else {
				last = m
			}
			s.send(m)
			s.holdList(rt)
		}
	})
}

// holdList compares the rows of the runs, and their pings, with a fold of all that
// stands.
func (s *stage) holdList(t *rapid.T) {
	err := s.db.View(context.Background(), func(tx *store.Tx) error {
		book := tx.Book(1)
		rows, err := book.LastRuns(100)
		if err != nil {
			return err
		}
		changes, err := book.Standing(kitchenSubject)
		if err != nil {
			return err
		}
		bookings, err := book.Standing(kitchen.BookingsSubject)
		if err != nil {
			return err
		}
		listed := map[kitchen.RunNo]store.RunRow{}
		for _, row := range rows {
			listed[row.No] = row
		}
		for no := kitchen.RunNo(1); no < 20; no++ {
			records, err := book.Standing(no.Subject())
			if err != nil {
				return err
			}
			r, err := kitchen.FoldRun(records, kitchen.SettingsAt(changes))
			row, known := listed[no]
			if err != nil {
				if known {
					t.Fatalf("#%d is listed and does not stand", no)
				}
				continue
			}
			want := store.RunRow{No: no, Begun: row.Begun, Cook: r.Cook, Cooker: r.Cooker, Turn: store.InboxID(r.Turn), State: store.OpenRun}
			if r.Stage.Over() {
				want.State = store.EndedRun
			}
			if diff := cmp.Diff(want, row); diff != "" || !row.Begun.Equal(r.Begun) {
				t.Fatalf("#%d, begun %v (-fold +list):\n%s", no, r.Begun, diff)
			}
			if err := holdPings(t, book, r, kitchen.FoldSettings(changes), kitchen.FoldBookings(bookings)); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// holdPings compares the keys of the pings that wait, or came, with those that the
// run wants after the quiet hours.
func holdPings(t *rapid.T, book *store.Book, r kitchen.Run, s kitchen.Settings, b []kitchen.Booking) error {
	rows, err := book.Pings(r.No.Prefix())
	if err != nil {
		return err
	}
	var want, waiting []string
	came := map[string]bool{}
	for _, row := range rows {
		came[row.Key] = !row.Fired.IsZero()
		if row.Fired.IsZero() {
			waiting = append(waiting, row.Key)
		}
	}
	load, err := loadOf(book, r.No)
	if err != nil {
		return err
	}
	wanted := append(slices.DeleteFunc(r.Wants(s), load.Hushes), r.WantsOf(b)...)
	for _, due := range load.Wants(s, nil) {
		wanted = append(wanted, due.Ping)
	}
	for _, p := range s.Quieted(wanted, time.UTC) {
		if !came[p.Key] {
			want = append(want, p.Key)
		}
	}
	slices.Sort(want)
	slices.Sort(waiting)
	if diff := cmp.Diff(want, waiting); diff != "" {
		t.Fatalf("pings of #%d, %v (-wanted +waiting):\n%s", r.No, r.Stage, diff)
	}
	return nil
}
