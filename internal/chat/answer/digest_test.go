package answer

import (
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
	"ryebell/internal/reminders"
	"ryebell/internal/store"
	"ryebell/internal/store/storetest"
)

// kitchenIn is a stage whose clocks are a zone's, with a calendar for digests.
func kitchenIn(t *testing.T, zone string, start string) (*stage, *reminders.Reminders) {
	t.Helper()
	where, err := time.LoadLocation(zone)
	if err != nil {
		t.Fatal(err)
	}
	now, err := time.ParseInLocation(time.DateTime, start, where)
	if err != nil {
		t.Fatal(err)
	}
	db := storetest.Open(t)
	weekly := func(d kitchen.DigestIs, zone *time.Location, after time.Time) (string, time.Time, error) {
		c, err := reminders.Weekly("digest", d.Day, reminders.TimeOfDay{Hour: int(d.At) / 60, Minute: int(d.At) % 60}, zone)
		next := c.Next(after)
		return next.Key, next.Due, err
	}
	s := &stage{t: t, a: New(db, Config{Zone: where, Weekly: weekly}), db: db, now: now}
	if err := s.a.Found(t.Context(), Foundation{Room: s.room("kitchen"), Person: s.person("Robin"), At: s.now}); err != nil {
		t.Fatal(err)
	}
	return s, reminders.New(db, s.a.Ping, reminders.Config{})
}

// until moves the clock on from ping to ping, and gives what was posted of a
// loudness, each with its time on the wall.
func (s *stage) until(r *reminders.Reminders, to time.Time, l chat.Loudness) []string {
	s.t.Helper()
	var out []string
	for {
		next, waits, err := r.Next(s.t.Context())
		if err != nil {
			s.t.Fatal(err)
		}
		if !waits || next.After(to) {
			s.now = to
			return out
		}
		if next.After(s.now) {
			s.now = next.In(s.now.Location())
		}
		out = append(out, s.fireDue(r, l)...)
	}
}

// fireDue fires what is due now, as the program does.
func (s *stage) fireDue(r *reminders.Reminders, l chat.Loudness) []string {
	s.t.Helper()
	if err := r.FireDue(s.t.Context(), s.now); err != nil {
		s.t.Fatal(err)
	}
	var out []string
	for _, d := range s.deliver() {
		if d.post.Loudness == l {
			out = append(out, s.now.Format("2 Jan 15:04 ")+strings.ReplaceAll(chat.Plain(d.post, 1000), "\n", " / "))
		}
	}
	return out
}

// cooked has loads of 7 quarts held for 90 minutes and cool by a reading.
func (s *stage) cooked(nos ...string) {
	s.t.Helper()
	for _, no := range nos {
		s.say("kitchen", "Robin", "cook 7 quarts lc")
		s.say("kitchen", "Robin", no+" at 15")
	}
	s.now = s.now.Add(90 * time.Minute)
	for _, no := range nos {
		s.say("kitchen", "Robin", no+" heat off")
		s.say("kitchen", "Robin", no+" zero")
	}
	s.now = s.now.Add(9 * time.Hour)
	for _, no := range nos {
		if got := s.say("kitchen", "Robin", no+" 25 in the middle"); !strings.Contains(got, "Next: inoculate") {
			s.t.Fatalf("not cool:\n%s", got)
		}
	}
}

// unseen has a load of 7 quarts, cool by a reading, of which nobody saw the hold: that
// needs a decision each week.
func (s *stage) unseen(no string) {
	s.t.Helper()
	s.say("kitchen", "Robin", "cook 7 quarts lc")
	s.now = s.now.Add(3 * time.Hour)
	s.say("kitchen", "Robin", no+" zero")
	s.now = s.now.Add(9 * time.Hour)
	if got := s.say("kitchen", "Robin", no+" 25 in the middle"); !strings.Contains(got, "25") {
		s.t.Fatalf("not read:\n%s", got)
	}
}

// times keeps of what was posted when.
func times(posts []string) string {
	var out []string
	for _, p := range posts {
		f := strings.Fields(p)
		out = append(out, strings.Join(f[:3], " "))
	}
	return strings.Join(out, ", ")
}

// A digest comes once a week at the same time on the wall, over both changes of the
// clocks in Berlin: 29 March and 25 October 2026 (IANA time zone database, file
// europe). A load that nobody decides on gives it something to say each week.
func TestDigestOverClockChanges(t *testing.T) {
	for _, tt := range []struct{ start, setting, want string }{
		{"2026-03-20 10:00:00", "digest on sundays", "22 Mar 09:00, 29 Mar 09:00, 5 Apr 09:00"},
		{"2026-10-16 10:00:00", "digest on sundays", "18 Oct 09:00, 25 Oct 09:00, 1 Nov 09:00"},
		{"2026-10-16 10:00:00", "digest sunday 4:00am", "18 Oct 04:00, 25 Oct 04:00, 1 Nov 04:00"},
		{"2026-03-20 10:00:00", "we soak jars", "23 Mar 09:00, 30 Mar 09:00, 6 Apr 09:00"},
		{"2026-03-20 10:00:00", "no digest", ""},
	} {
		s, r := kitchenIn(t, "Europe/Berlin", tt.start)
		s.say("kitchen", "Robin", tt.setting)
		s.unseen("#1")
		var posts []string
		for range 3 {
			posts = append(posts, s.until(r, s.now.AddDate(0, 0, 6), chat.Digest)...)
			s.say("kitchen", "Robin", "cook 4 quarts lc")
			posts = append(posts, s.until(r, s.now.AddDate(0, 0, 1), chat.Digest)...)
		}
		if got := times(posts); got != tt.want {
			t.Errorf("%s, %s: digests at %s, want %s:\n%s", tt.start, tt.setting, got, tt.want, strings.Join(posts, "\n"))
		}
	}
}

// However many weeks the bot was down, one digest tells of them all, and a message
// that comes in before it doesn't put it off.
func TestDigestAfterDowntime(t *testing.T) {
	s, r := kitchenIn(t, "Europe/Berlin", "2026-03-02 10:00:00")
	s.unseen("#1")
	s.now = s.now.AddDate(0, 0, 23)
	s.say("kitchen", "Robin", "cook 4 quarts lc")
	got := s.fireDue(r, chat.Digest)
	if len(got) != 1 || !strings.Contains(got[0], "2 Mar to 25 Mar. 16 days late") || !strings.Contains(got[0], "Hold not seen whole: #1") {
		t.Fatalf("after three weeks down: %q", got)
	}
	if again := s.fireDue(r, chat.Digest); len(again) != 0 {
		t.Errorf("a second digest: %q", again)
	}
	if due := s.keysWaiting(kitchen.DigestPrefix); due != "digest/2026-03-30" {
		t.Errorf("then waits %q", due)
	}
	s.say("kitchen", "Robin", "digest fridays at 18:00")
	if due := s.keysWaiting(kitchen.DigestPrefix); due != "digest/2026-03-27" {
		t.Errorf("on Fridays waits %q", due)
	}
	s.say("kitchen", "Robin", "undo")
	if due := s.keysWaiting(kitchen.DigestPrefix); due != "digest/2026-03-30" {
		t.Errorf("taken back, waits %q", due)
	}
}

// keysWaiting lists the keys of the pings that wait under a prefix.
func (s *stage) keysWaiting(prefix string) string {
	s.t.Helper()
	var keys []string
	err := s.db.View(s.t.Context(), func(tx *store.Tx) error {
		room, err := tx.Room(string(chat.Console), "kitchen")
		if err != nil {
			return err
		}
		rows, err := tx.Book(room.Collective).WaitingPings(prefix)
		for _, row := range rows {
			keys = append(keys, row.Key)
		}
		return err
	})
	if err != nil {
		s.t.Fatal(err)
	}
	return strings.Join(keys, " ")
}

// All that comes of age on one day is one silent post at nine on the wall, whoever
// cooked it; what was taken from the shelf, or back, isn't in it.
func TestShelfIsOnePostADay(t *testing.T) {
	s, r := kitchenIn(t, "Europe/Berlin", "2026-03-01 07:00:00")
	s.cooked("#1", "#2", "#3", "#4")
	s.say("kitchen", "Robin", "#2 is gone")
	s.say("kitchen", "Robin", "#3 is gone")
	s.say("kitchen", "Robin", "undo")
	posts := s.until(r, s.now.AddDate(0, 2, 0), chat.Note)
	if len(posts) != 1 || !strings.HasPrefix(posts[0], "1 Apr 09:00 Today on the shelf") {
		t.Fatalf("a month later: %q", posts)
	}
	for no, stands := range map[string]bool{"#1: use before": true, "#2": false, "#3: use before": true, "#4: use before": true} {
		if strings.Contains(posts[0], no) != stands {
			t.Errorf("%s: %v expected in %s", no, stands, posts[0])
		}
	}
	if due := s.keysWaiting("run/2/"); due != "" {
		t.Errorf("of what is gone waits %q", due)
	}
}
