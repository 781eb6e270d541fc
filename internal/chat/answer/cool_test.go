package answer

import (
	"bytes"
	"image/png"
	"strconv"
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
	"ryebell/internal/store"
)

// cooling has Robin's bags cook and cool: zero an hour ago.
func (s *stage) cooling() {
	for _, step := range []struct {
		text  string
		after time.Duration
	}{
		{"3 5lb bags agar", 0},
		{"cook it", 0},
		{"lit it", 0},
		{"at 15", time.Hour},
		{"heat off", 95 * time.Minute},
		{"zero", 45 * time.Minute},
		{"out of the pot", 50 * time.Minute},
	} {
		s.now = s.now.Add(step.after)
		s.say("kitchen", "Robin", step.text)
	}
	s.now = s.now.Add(10 * time.Minute)
}

// folded is a run as it stands.
func (s *stage) folded(no kitchen.RunNo) (r kitchen.Run) {
	s.t.Helper()
	err := s.db.View(s.t.Context(), func(tx *store.Tx) (err error) {
		r, err = foldRun(tx.Book(1), no)
		return err
	})
	if err != nil {
		s.t.Fatal(err)
	}
	return r
}

// Why is about what was said last: the cooling of a run, or a plan.
func TestWhyOfCooling(t *testing.T) {
	const cool, plan = "#1 cool inside about", "Dry = wetted"
	for _, tt := range []struct {
		name  string
		said  []string
		wants string
	}{
		{"a step told", []string{"why"}, cool},
		{"a reading", []string{"52C", "why"}, cool},
		{"a question", []string{"is it cool yet", "why?"}, cool},
		{"a time", []string{"why 20:50?"}, cool},
		{"so late", []string{"why so late"}, cool},
		{"the run", []string{"2 quarts lc", "why #1"}, cool},
		{"its number", []string{"why 1"}, cool},
		{"a chart", []string{"chart", "why"}, cool},
		{"a plan since", []string{"2 quarts lc", "why"}, plan},
		{"a number of the plan", []string{"why 682"}, plan},
		{"how long a plan takes", []string{"2 quarts lc", "why so long"}, "Hold"},
		{"the room", []string{"room 18", "why"}, cool},
		{"the hold", []string{"why the hold"}, "Hold"},
	} {
		s := open(t)
		s.cooling()
		var got string
		for _, text := range tt.said {
			got = s.say("kitchen", "Robin", text)
		}
		if !strings.Contains(got, tt.wants) {
			t.Errorf("%s: why is answered\n%s, want %q", tt.name, got, tt.wants)
		}
	}
}

// A ping about cooling is what was said last, too, and a reply to a post is about it.
func TestWhyOfPing(t *testing.T) {
	s := open(t)
	s.cooling()
	s.say("kitchen", "Robin", "2 quarts lc")
	pings := s.pass(18 * time.Hour)
	if len(pings) == 0 {
		t.Fatal("no ping to measure one")
	}
	wantPart(t, s.say("kitchen", "Robin", "why"), "Starts at 100 °C")
	plan := s.hear(s.message("kitchen", "Robin", "2 quarts lc"))
	wantPart(t, s.reply("kitchen", "Jo", "why", pings[len(pings)-1].row), "Starts at 100 °C")
	wantPart(t, s.reply("kitchen", "Jo", "why", plan.row), "Dry = wetted")
}

// A word that people say to each other is heard only from who cooks; what names the
// run or the times from anybody.
func TestChartIsHeard(t *testing.T) {
	s := open(t)
	wantSilence(t, s.say("kitchen", "Jo", "chart"))
	s.cooling()
	wantPart(t, s.say("kitchen", "Robin", "chart"), "#1 cool inside about")
	wantSilence(t, s.say("kitchen", "Jo", "chart"))
	wantPart(t, s.say("kitchen", "Jo", "chart 1"), "#1 cool inside about")
	wantPart(t, s.say("kitchen", "Jo", "how good are your times"), "measured to its end")
}

// By when and for what something is cool people ask of much: it is heard while a run
// cools.
func TestCoolByIsHeard(t *testing.T) {
	s := open(t)
	asked := []string{"will it be cool by 22", "can i inoculate tonight", "cool enough for enoki?", "cool before midnight?"}
	for _, text := range asked {
		wantSilence(t, s.say("kitchen", "Jo", text))
	}
	s.cooling()
	for _, text := range asked {
		wantPart(t, s.say("kitchen", "Jo", text), "#1 cool inside about")
	}
	wantSilence(t, s.say("kitchen", "Kim", "can we do it tomorrow morning"))
	wantPart(t, s.say("kitchen", "Robin", "can we do it tomorrow morning"), "By Tue 12:00")
	wantPart(t, s.say("kitchen", "Robin", "can i inoculate tonight"), "By Tue 00:00")
}

// Grain that is cool enough for most is not for a culture with a limit of its own.
func TestCoolForCulture(t *testing.T) {
	s := open(t)
	s.cooling()
	s.say("kitchen", "Robin", "enoki not over 22C")
	wantPart(t, s.say("kitchen", "Robin", "when can i put enoki on 1"), "For enoki the limit is 22 °C")
	s.now = s.now.Add(16 * time.Hour)
	s.say("kitchen", "Robin", "26C in the middle")
	wantPart(t, s.say("kitchen", "Robin", "is 1 cool enough for enoki"), "Not for enoki yet")
	wantPart(t, s.say("kitchen", "Robin", "is 1 cool enough for shiitake"), "inoculate in clean air")
}

// A figure alone is a reading only where the bot asked for one last.
func TestFigureAlone(t *testing.T) {
	const read = "at 41 °C"
	s := open(t)
	wantSilence(t, s.say("kitchen", "Robin", "41"))
	s.cooling()
	wantPart(t, s.say("kitchen", "Robin", "41"), "#1 "+read)
	wantSilence(t, s.say("kitchen", "Jo", "41"))
	wantSilence(t, s.say("kitchen", "Robin", "4"))
	both := s.say("kitchen", "Robin", "42 and 44")
	wantPart(t, both, "#1 at 44 °C")
	wantPart(t, both, "And 42 °C")
	wantPart(t, s.say("kitchen", "Robin", "60"), "°C or °F?")
	wantPart(t, s.say("kitchen", "Robin", "C"), "#1 at 60 °C")
	asked := s.hear(s.message("kitchen", "Robin", "is it cool yet"))
	wantPart(t, s.reply("kitchen", "Jo", "41", asked.row), "#1 "+read)
	s.say("kitchen", "Robin", "2 quarts lc")
	wantSilence(t, s.say("kitchen", "Robin", "41"))
	s.say("kitchen", "Robin", "is it cool yet")
	s.now = s.now.Add(10 * time.Hour)
	wantPart(t, s.say("kitchen", "Robin", "31"), "#1 at 31 °C")
	s.now = s.now.Add(13 * time.Hour)
	wantSilence(t, s.say("kitchen", "Robin", "41"))
}

// Readings of several units in one message are all kept, and all shown.
func TestReadingsOfUnits(t *testing.T) {
	s := open(t)
	s.cooling()
	got := s.say("kitchen", "Robin", "1.1 41, 1.2 43")
	wantPart(t, got, "#1.2 at 43 °C")
	wantPart(t, got, "And #1.1 at 41 °C")
	wantPart(t, s.say("kitchen", "Robin", "1.1 26 between, 1.2 43"), "over the limit")
	wantPart(t, s.say("kitchen", "Robin", "is it cool yet"), "cool inside about")
	wantPart(t, s.say("kitchen", "Robin", "39 on 1.3"), "#1.3 at 39 °C")
}

// A load measured to its end teaches the next one of its pot, and counts in the record;
// one that is found warm again teaches nothing.
func TestForecastLearns(t *testing.T) {
	s := open(t)
	s.cooling()
	s.now = s.now.Add(3 * time.Hour)
	s.say("kitchen", "Robin", "#1 44C")
	s.now = s.now.Add(12 * time.Hour)
	wantPart(t, s.say("kitchen", "Robin", "#1 24 in the middle"), "Next: inoculate")
	wantPart(t, s.say("kitchen", "Robin", "how good are your times"), "Measured to the end: 1 run;")
	s.cooling()
	wantPart(t, s.say("kitchen", "Robin", "why 2"), "1 measured run of this pot")
	s.say("kitchen", "Robin", "#1 is gone")
	wantPart(t, s.say("kitchen", "Robin", "how good are your times"), "Measured to the end: 1 run;")
	s.say("kitchen", "Robin", "undo")
	wantPart(t, s.say("kitchen", "Robin", "#1 31C"), "over the limit")
	wantPart(t, s.say("kitchen", "Robin", "how good are your times"), "No run has been measured")
}

// A chart goes out as a picture, with the answer in words below it.
func TestChart(t *testing.T) {
	s := open(t)
	s.cooling()
	s.say("kitchen", "Robin", "52C")
	got := s.hear(s.message("kitchen", "Robin", "chart"))
	if len(got.post.Files) != 1 || got.post.Files[0].Type != "image/png" || got.post.Files[0].Name != "run-1.png" {
		t.Fatalf("files %+v", got.post.Files)
	}
	if _, err := png.Decode(bytes.NewReader(got.post.Files[0].Data)); err != nil {
		t.Error(err)
	}
	wantPart(t, chat.Plain(got.post, 40), "#1 cool inside about")
}

// The picture of a load that may never get to the limit shows the day to come, and no
// week in which nothing happens.
func TestChartOfWarmRoom(t *testing.T) {
	s := open(t)
	s.cooling()
	s.say("kitchen", "Robin", "room 30C")
	for _, later := range []time.Duration{0, 3 * time.Hour, 40 * time.Hour, 400 * time.Hour} {
		run := s.folded(1)
		c, known := run.Cooling()
		if !known || !c.Never() {
			t.Fatalf("forecast %+v, %v", c, known)
		}
		now := s.now.Add(later)
		if p := charted(run, c, now); !p.To.After(now) && later < longestChart || p.To.Sub(p.From) > longestChart || p.To.Sub(now) > 4*day {
			t.Errorf("picture from %v to %v, now %v", p.From, p.To, now)
		}
	}
}

// A reading of a time at which the pot was not down is no word about heat off.
func TestReadingBeforeDown(t *testing.T) {
	s := open(t)
	s.cooling()
	got := s.say("kitchen", "Robin", "1 was 55C at 10:20")
	wantPart(t, got, "shut until it shows zero")
	wantPart(t, got, "Wrong time?")
}

// What is called 8 of 10 is likely.
func TestWordsOfChance(t *testing.T) {
	s := open(t)
	s.cooling()
	for hour := range 24 {
		got := s.say("kitchen", "Robin", "cool by "+strconv.Itoa(hour)+":40")
		if strings.Contains(got, "Maybe") && strings.Contains(got, "8 of 10") {
			t.Errorf("%s", got)
		}
	}
}
