package wording

import (
	"strings"
	"testing"
	"time"

	"ryebell/internal/chat"
	"ryebell/internal/chat/phrase"
	"ryebell/internal/kitchen"
)

// understood holds that every tap, and every sentence shown to be typed, is one
// that phrase reads.
func understood(t *testing.T, p chat.Post) {
	t.Helper()
	names := phrase.Names{Cookers: []string{"big pot"}, Members: []string{"Ana", "Jo", "Mika"}}
	sentences := []string{}
	for _, b := range p.Buttons {
		sentences = append(sentences, b.Say)
	}
	for _, block := range p.Blocks {
		para, _ := block.(chat.Para)
		for _, span := range para {
			if code, ok := span.(chat.Code); ok {
				sentences = append(sentences, string(code))
			}
		}
	}
	for _, s := range sentences {
		parsed := phrase.Parse(s, names)
		if len(parsed.Intents) == 0 {
			t.Errorf("%q is not understood, in:\n%s", s, chat.Plain(p, phone))
		}
		rest, ofRun := strings.CutPrefix(s, "#12 ")
		for _, i := range parsed.Intents {
			if tell, ok := i.(phrase.Tell); ok && ofRun && tell.Which.Run != 12 {
				t.Errorf("%q of #12 is understood of %v", rest, tell.Which)
			}
		}
	}
}

// Every tap and every example of a cook day is understood, and about its own run.
func TestTapsAreUnderstood(t *testing.T) {
	d := newDay(t, jars(), 0, kitchen.MethodIs{Vessel: kitchen.Jar, Method: kitchen.Soaked})
	gear := kitchen.GearAsk{Cooker: "big pot", Parts: []kitchen.Part{kitchen.Vent, kitchen.Gas}, Failed: []kitchen.Part{kitchen.Gasket}}
	understood(t, Begun(BegunView{Run: d.run, Plan: d.plan, Gear: &gear, Now: d.now, Who: name, First: d.first}))
	understood(t, GearWanted(gear))
	for i := range StepsBeforeFlame(d.plan) {
		understood(t, Steps(StepsView{Run: d.run, Plan: d.plan, At: i, Now: d.now}))
		understood(t, Steps(StepsView{Plan: d.plan, At: i, Now: d.now}))
	}
	for _, s := range []struct {
		at   string
		said kitchen.RunEntry
	}{
		{"09:05", kitchen.PrepBegun{What: kitchen.Soaking}},
		{"21:00", kitchen.PrepBegun{What: kitchen.Simmering}},
		{"21:02", kitchen.WaterIn{Water: 2}},
		{"21:10", kitchen.HeatOn{}},
		{"21:40", kitchen.Steam{}},
		{"21:50", kitchen.VentClosed{}},
		{"21:55", kitchen.AtPressure{}},
		{"22:00", kitchen.HandOffered{To: jo}},
		{"22:01", kitchen.TookOver{}},
		{"22:10", kitchen.PressureLost{}},
		{"22:20", kitchen.PressureBack{}},
		{"23:00", kitchen.HeatOff{}},
		{"23:01", kitchen.HeatOff{}},
		{"23:50", kitchen.AtZero{}},
		{"23:55", kitchen.OutOfPot{}},
		{"05:00", kitchen.TempRead{Temp: 26}},
		{"05:05", kitchen.WaterLeft{Water: 1.2}},
		{"06:10", kitchen.TempRead{Temp: 25}},
	} {
		understood(t, d.at(s.at).say(ana, s.said, 0))
		understood(t, CoolYet(CoolView{Run: d.run, Now: d.now, Limit: 27}))
		understood(t, Log(LogView{Story: Story{Run: d.run, Now: d.now, Who: name}}))
		understood(t, BoardOf(BoardView{Rows: kitchen.Board([]kitchen.Run{d.run}, d.now), Now: d.now, Who: name}))
		for _, v := range d.pings() {
			understood(t, Ping(v))
		}
	}
	understood(t, Runs(RunsView{Runs: []kitchen.Run{d.run}, Now: d.now, Who: name}))
	understood(t, NoRunOn())
}

// reads holds the whole text of a post.
func reads(t *testing.T, p chat.Post, want ...string) {
	t.Helper()
	fitsPhone(t, p)
	if got := chat.Plain(p, phone); got != strings.Join(want, "\n") {
		t.Errorf("reads:\n%s\nwant:\n%s", got, strings.Join(want, "\n"))
	}
}

// What is said beside the answers of a run.
func TestBesideTheRunReads(t *testing.T) {
	d := newDay(t, bags(), 0)
	d.at("10:45").say(ana, kitchen.AtPressure{}, 0)
	booking := kitchen.Booking{No: 7, Cooker: "big pot", From: d.now.Add(47 * time.Hour), To: d.now.Add(51 * time.Hour), For: mika}
	reads(t, BoardOf(BoardView{Rows: kitchen.Board([]kitchen.Run{d.run}, d.now), Bookings: []kitchen.Booking{booking}, Now: d.now, Who: name}),
		"One run on, 10:45",
		"#12 nobody named, big pot: heat off",
		"12:15, 1 h 30 min left",
		"Next: big pot, Wed 09:45 to 13:45, Mika",
		"[Take over #12]")
	was := d.run
	moved, err := kitchen.FoldRun([]kitchen.Record{
		{No: 1, By: ana, At: d.run.Begun, Entry: kitchen.RunBegun{Run: 12, Cooker: "big pot", Order: bags()}},
		{No: 2, By: ana, At: d.now.Add(-10 * time.Minute), Entry: kitchen.AtPressure{}},
	}, func(time.Time) kitchen.Settings { return d.settings })
	if err != nil {
		t.Fatal(err)
	}
	reads(t, Run(RunView{
		Run: moved, Told: kitchen.AtPressure{}, At: d.now.Add(-10 * time.Minute), WasAt: d.now, Was: &was, Now: d.now.Add(time.Minute), Who: name,
	}),
		"#12 heat off is now 12:05, was 12:15:",
		"90 min at 15 psi from 10:35.",
		"At pressure 10:35, was 10:45.",
		"Next: I ping then. Lost pressure? Say so",
		"at once.",
		"[Lost pressure] [Undo]")
	reads(t, Pings([]PingView{
		{Ping: kitchen.Ping{Key: "run/12/probably-cool/1", Kind: kitchen.ProbablyCool, Loudness: kitchen.DuePing}, Run: d.run, Now: d.now, To: chat.Mention{Name: "Ana"}},
		{Ping: kitchen.Ping{Key: "run/12/hold-over/1", Kind: kitchen.HoldOver, Loudness: kitchen.GuardPing}, Run: d.run, Now: d.now.Add(95 * time.Minute), Late: 5 * time.Minute},
		{Ping: kitchen.Ping{Key: "run/12/hold-over/1/again/1", Kind: kitchen.HoldOver, Loudness: kitchen.GuardPing}, Run: d.run, Now: d.now.Add(95 * time.Minute)},
	}),
		"#12 heat off. 5 min over. Still on?",
		"Ana: #12: measure one. Nobody saw enough",
		"to say when it is cool.",
		"[#12 heat off]")
	reads(t, BookingMade(booking, d.now, name),
		"The big pot, Wed 09:45 to 13:45: yours,",
		"Mika.",
		"[Undo] [Bookings]")
	reads(t, Bookings([]kitchen.Booking{booking}, nil, d.now, name),
		"Wed 09:45 to 13:45 big pot, Mika",
		"Next: give one up with cancel my",
		"booking.")
	reads(t, GearTold(GearView{Entry: kitchen.GearFailed{Cooker: "big pot", Part: kitchen.Gas}, Run: &d.run, Now: d.now}),
		"Gas ran out in the big pot: written",
		"down. I ask for it before the next cook.",
		"Next: say lit again once #12 is.",
		"[Lit again] [Heat is off] [Undo]")
	after := d.settings.With(kitchen.GaugeReads{Cooker: "big pot", Low: -fifteenPSI / 15})
	reads(t, GearTold(GearView{Entry: kitchen.GaugeReads{Cooker: "big pot", Low: -fifteenPSI / 15}, After: after, Now: d.now}),
		"The gauge of the big pot reads 1 psi",
		"high: 15 shown is 14 psi, from now on.",
		"So steam is colder than it shows: a",
		"quart jar takes 116 min at 14 psi. Never",
		"make up for it above the rating.",
		"What was cooked before stays as it was",
		"written.",
		"[Undo]")
	reads(t, Changed([]kitchen.Change{kitchen.QuietHours{From: 22 * 60, To: 7 * 60}}, d.settings),
		"Quiet 22:00 to 07:00 for everybody from",
		"now on.",
		"A hot cooker still rings: weight on,",
		"water, heat off, zero. All else waits",
		"until 07:00.",
		"Rather be woken? no quiet hours",
		"[Undo]")
	reads(t, WhyNoPing(NoPingView{Why: AnsweredBefore, Ping: kitchen.Ping{Kind: kitchen.HoldOver}, Run: d.run, By: jo, At: d.now, Now: d.now, Who: name}),
		"#12 heat off: Jo answered it at 10:45.")
	reads(t, TakenBack(RunView{Run: d.run, Told: kitchen.HeatOff{}, At: d.now, Now: d.now.Add(5 * time.Minute), Who: name}, "Jo"),
		"Taken back, said by Jo: #12 heat off,",
		"10:45.",
		"#12 heat off 12:15: 90 min at 15 psi",
		"from 10:45.",
		"Next: I ping then. Lost pressure? Say so",
		"at once.",
		"[Lost pressure]")
	late := PingView{
		Ping: kitchen.Ping{Key: "run/12/hold-over/1", Kind: kitchen.HoldOver, Loudness: kitchen.GuardPing},
		Run:  d.run, Now: d.run.Heard.Add(2 * time.Second),
	}
	if text := chat.Plain(Ping(late), phone); strings.Contains(text, "I was down") {
		t.Errorf("not late:\n%s", text)
	}
	late.Late = 40 * time.Minute
	if text := chat.Plain(Ping(late), phone); !strings.Contains(text, "40 min late: I was down") {
		t.Errorf("late after a downtime:\n%s", text)
	}
}
