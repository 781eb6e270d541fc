package wording

import (
	"errors"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
	"ryebell/internal/chat"
	"ryebell/internal/kitchen"
)

// fitsPhone holds what each post of the cook day must be: a screen of 12 lines and
// three buttons.
func fitsPhone(t interface{ Errorf(string, ...any) }, p chat.Post) {
	fits(t, p, screen)
	if len(p.Buttons) > maxButtons {
		t.Errorf("%d buttons:\n%s", len(p.Buttons), chat.Plain(p, phone))
	}
	if len(p.Blocks) == 0 || chat.Plain(p, phone) == "" {
		t.Errorf("an empty post")
	}
}

// drawEntry is anything that may be said of a run.
func drawEntry(t *rapid.T) kitchen.RunEntry {
	psi := unit.PSI(float64(rapid.IntRange(0, 20).Draw(t, "psi")))
	low := rapid.Ptr(rapid.Just(psi), true).Draw(t, "low")
	celsius := unit.Celsius(rapid.IntRange(15, 90).Draw(t, "c"))
	return rapid.SampledFrom([]kitchen.RunEntry{
		kitchen.PrepBegun{What: kitchen.Soaking},
		kitchen.PrepBegun{What: kitchen.Simmering},
		kitchen.PrepEnded{},
		kitchen.HeatOn{},
		kitchen.Steam{},
		kitchen.VentClosed{},
		kitchen.AtPressure{},
		kitchen.AtPressure{Gauge: unit.PSI(15)},
		kitchen.GaugeRead{Gauge: psi},
		kitchen.PressureLost{Gauge: low},
		kitchen.PressureBack{Gauge: unit.PSI(15)},
		kitchen.Dipped{To: low},
		kitchen.Dipped{To: low, For: 4 * time.Minute},
		kitchen.HeatOff{},
		kitchen.AtZero{},
		kitchen.OutOfPot{},
		kitchen.TempRead{Temp: celsius},
		kitchen.TempRead{Temp: celsius, Where: kitchen.Between, Units: []kitchen.UnitNo{1}},
		kitchen.WaterLeft{Water: 0.5},
		kitchen.WaterIn{Water: 3},
		kitchen.WaterIn{Water: 1, Added: true},
		kitchen.RunGone{},
		kitchen.CalledOff{},
		kitchen.TookOver{},
		kitchen.HandOffered{To: jo},
		kitchen.HandOffered{},
		kitchen.HandAccepted{},
	}).Draw(t, "said")
}

// drawDay is a run in any kitchen, of any order that can be cooked there.
func drawDay(t *rapid.T) *day {
	s := drawKitchen(t)
	o := rapid.Custom(drawOrder).Filter(func(o kitchen.Order) bool {
		_, err := s.Work(o)
		return err == nil
	}).Draw(t, "order")
	if rapid.Bool().Draw(t, "gauge off") {
		s = s.With(kitchen.GaugeReads{Cooker: "big pot", Low: unit.PSI(float64(rapid.IntRange(-2, 2).Draw(t, "off")))})
	}
	d := &day{now: time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC), settings: s, no: 1, given: map[string]bool{}}
	p, err := s.Work(o)
	if err != nil {
		t.Fatal(err)
	}
	d.plan = p
	begun := kitchen.RunBegun{
		Run: kitchen.RunNo(rapid.SampledFrom([]int{1, 12, 1234}).Draw(t, "no")), Cooker: p.Cooker.Name, Order: o,
		Cook: rapid.SampledFrom([]kitchen.MemberNo{0, ana, jo}).Draw(t, "cook"), Follows: kitchen.RunNo(rapid.IntRange(0, 1).Draw(t, "follows")),
	}
	d.run, err = kitchen.FoldRun([]kitchen.Record{{No: 1, By: ana, At: d.now, Written: d.now, Entry: begun}},
		func(time.Time) kitchen.Settings { return s })
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Whatever anybody says of a run, and whatever is asked of it then, each post fits
// a phone.
func TestRunFitsAPhone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDay(t)
		fitsPhone(t, d.begun())
		for range rapid.IntRange(1, 12).Draw(t, "entries") {
			d.now = d.now.Add(time.Duration(rapid.IntRange(0, 200).Draw(t, "later")) * time.Minute)
			e, by := drawEntry(t), rapid.SampledFrom([]kitchen.MemberNo{ana, jo, mika}).Draw(t, "by")
			if wants := d.run.Wants(d.settings); len(wants) > 0 && rapid.IntRange(0, 3).Draw(t, "answers") == 0 {
				how := rapid.SampledFrom([]kitchen.Answered{kitchen.AnswerSeen, kitchen.AnswerDone, kitchen.AnswerNotYet, kitchen.AnswerGotIt}).Draw(t, "how")
				e = kitchen.PingAnswered{Key: wants[0].Key, How: how}
			}
			ago := time.Duration(rapid.SampledFrom([]int{0, 0, 5, 180}).Draw(t, "ago")) * time.Minute
			fitsPhone(t, d.say(by, e, ago))
			fitsPhone(t, TakenBack(RunView{Run: d.run, Told: e, At: d.now, Now: d.now, Who: name}, "Jo"))
			d.asked(t)
			d.pinged(t)
		}
	})
}

// asked asks all that can be asked of a run.
func (d *day) asked(t *rapid.T) {
	fitsPhone(t, Log(LogView{Story: Story{Run: d.run, Now: d.now, Who: name}}))
	fitsPhone(t, LogFigures(LogView{Story: Story{Run: d.run, Now: d.now, Who: name}}))
	fitsPhone(t, Runs(RunsView{Runs: []kitchen.Run{d.run, d.run}, Now: d.now, Who: name}))
	fitsPhone(t, CoolYet(CoolView{Run: d.run, Now: d.now, Limit: 27, By: d.now.Add(time.Hour)}))
	fitsPhone(t, Steps(StepsView{Run: d.run, Plan: d.plan, Now: d.now, At: rapid.IntRange(0, 12).Draw(t, "at")}))
	rows := kitchen.Board([]kitchen.Run{d.run, d.run, d.run, d.run, d.run}, d.now)
	fitsPhone(t, BoardOf(BoardView{Rows: rows, Now: d.now, Who: name}))
	if len(rows) > 0 {
		fitsPhone(t, WhichRun(rows, "heat off", d.now, name))
	}
}

// pinged says each ping that the run wants, and all of them at once.
func (d *day) pinged(t *rapid.T) {
	var all []PingView
	for _, p := range d.run.Wants(d.settings) {
		v := PingView{Ping: p, Run: d.run, Now: p.Due, To: chat.Mention{Name: "Ana"}}
		if rapid.Bool().Draw(t, "late") {
			v.Late = 22 * time.Minute
			v.Now = p.Due.Add(v.Late)
		}
		all = append(all, v)
		post := Ping(v)
		fitsPhone(t, post)
		first := chat.Plain(post, 1000)
		first = string([]rune(first)[:min(100, len([]rune(first)))])
		if !strings.Contains(first, d.run.No.String()) {
			t.Errorf("no run in the first 100 characters: %q", first)
		}
		for _, absent := range []string{"Jo", "Mika"} {
			if strings.Contains(first, absent) {
				t.Errorf("the first 100 characters name %s: %q", absent, first)
			}
		}
		if (p.Loudness == kitchen.GuardPing) != (post.Loudness == chat.Guard) {
			t.Errorf("%v ping is a %v post", p.Loudness, post.Loudness)
		}
		if p.Loudness == kitchen.GuardPing && len(post.Buttons) == 0 {
			t.Errorf("a guard ping without a button:\n%s", first)
		}
	}
	if len(all) > 0 {
		fitsPhone(t, Pings(all))
	}
}

// Refusals of the cook day, with who, when and both dates.
func TestRunRefusals(t *testing.T) {
	one := kitchen.UnitRef{Run: 12, Unit: 3}
	at := time.Date(2026, 3, 2, 14, 5, 0, 0, time.UTC)
	now := at.Add(time.Hour)
	for _, tt := range []struct {
		refusal kitchen.Refusal
		want    []string
	}{
		{kitchen.NotYet{Run: 12, Said: kitchen.KindGaugeRead, Stage: kitchen.StagePlanned, Needs: kitchen.KindHeatOn}, []string{"#12 is not lit yet", "heat on", "Nothing was written"}},
		{kitchen.AlreadySo{Run: 12, Said: kitchen.KindHeatOff, By: jo, At: at, Seen: true}, []string{"#12 heat off: Jo said so, 14:05", "No second"}},
		{kitchen.NeverTold{Run: 12, Said: kitchen.KindSteam}, []string{"Nobody has told steam of #12", "steam 5 min ago"}},
		{kitchen.Misplaced{Run: 12, Said: kitchen.KindHeatOff, At: at.Add(time.Hour), Was: at}, []string{"#12 heat off stays at 14:05", "At 15:05 it would come after"}},
		{kitchen.AlreadySo{Run: 12, Said: kitchen.KindSteam, At: at}, []string{"#12 steam was filled in"}},
		{kitchen.AlreadySo{Run: 12, Said: kitchen.KindTookOver, By: jo, At: at, Seen: true}, []string{"#12 is with Jo already"}},
		{kitchen.Over{Run: 12, Said: kitchen.KindSteam, Stage: kitchen.StageCooling}, []string{"#12 is cooling", "steam comes too late"}},
		{kitchen.BeforeRun{Run: 12, At: at.AddDate(0, 0, -1), Begun: at}, []string{"Sun 1 Mar 14:05", "Mon 2 Mar 14:05"}},
		{kitchen.InFuture{At: at.AddDate(0, 0, 1), Told: at}, []string{"Tue 3 Mar 14:05", "Mon 2 Mar 14:05"}},
		{kitchen.Contradicts{Run: 12, Said: kitchen.KindHeatOff, At: at, Other: kitchen.KindAtPressure, OtherAt: now, OtherBy: jo}, []string{"heat off 14:05", "Jo said at pressure 15:05"}},
		{kitchen.NotOffered{Run: 12, Cook: ana}, []string{"#12 was not offered", "with Ana"}},
		{kitchen.StillOn{Run: 12, Said: kitchen.KindAtPressure, At: at, By: jo}, []string{"#12 is hot", "Jo said at pressure", "call off #12"}},
		{kitchen.NoSuchUnit{Ref: kitchen.Ref{Run: 12, Units: []kitchen.UnitNo{9}}, Has: 3}, []string{"#12.9", "3 units"}},
		{kitchen.Booked{By: kitchen.Booking{Cooker: "big pot", From: at.AddDate(0, 0, 5), To: at.AddDate(0, 0, 5).Add(4 * time.Hour), For: mika}}, []string{"Mika's", "Sat 14:05 to 18:05"}},
		{kitchen.NoSuchBooking{}, []string{"no booking"}},
		{kitchen.EmptyBooking{From: now, To: at}, []string{"15:05 to 14:05"}},
		{kitchen.UnitNotYet{Unit: one, State: kitchen.InCook}, []string{"#12.3", "in the cook"}},
		{kitchen.UnitNotYet{Unit: one, State: kitchen.UnitCooked, Blank: true}, []string{"#12.3 is the blank"}},
		{kitchen.UnitPast{Unit: one, State: kitchen.UnitUsed, Since: at}, []string{"#12.3 is used since 14:05"}},
		{kitchen.UnitAlready{Unit: one, At: at}, []string{"#12.3", "14:05"}},
		{kitchen.UnitContradicts{Unit: one, Said: kitchen.SaidGrowth, Other: kitchen.SaidGrownThrough, OtherAt: at}, []string{"#12.3: growth seen", "doesn't go with grown through 14:05"}},
		{kitchen.OwnAncestor{Unit: one}, []string{"#12.3 would come from itself"}},
		{kitchen.OwnAncestor{Culture: "plate 7"}, []string{"Plate 7 would come from itself"}},
		{kitchen.NoSuchCulture{Name: "plate 7"}, []string{"no culture called plate 7"}},
		{kitchen.CultureKnown{Name: "plate 7", Made: at}, []string{"a plate 7 already, made 14:05"}},
		{kitchen.CultureOver{Name: "plate 7", Ended: at}, []string{"Plate 7 is over since 14:05"}},
		{kitchen.OutOfRange{What: kitchen.GrownShare, Got: 1.2, High: 1}, []string{"120", "12.2 30%"}},
		{kitchen.OutOfRange{What: kitchen.CultureVolume, Got: 5, High: 1}, []string{"5", "10ml"}},
		{kitchen.OutOfRange{What: kitchen.DaysOfRest, Got: 30, High: 14}, []string{"30", "rest 3 days before inoculating"}},
	} {
		post := RefusedHere(tt.refusal, Asked{Now: now, Who: name})
		fitsPhone(t, post)
		text := chat.Plain(post, 1000)
		for _, want := range tt.want {
			if !strings.Contains(text, want) {
				t.Errorf("%T: no %q in:\n%s", tt.refusal, want, text)
			}
		}
		fitsPhone(t, Refused(tt.refusal)) // also where neither time nor names are at hand
	}
	fitsPhone(t, NoRunOn())
}

// Every kind of ping has its words, its reason and a post.
func TestEveryPingHasWords(t *testing.T) {
	d := newDay(t, bags(), ana)
	at := func(clock string, e kitchen.RunEntry) kitchen.Run {
		d.at(clock).say(ana, e, 0)
		return d.run
	}
	soaking := at("09:05", kitchen.PrepBegun{What: kitchen.Soaking})
	lit := at("10:00", kitchen.HeatOn{})
	venting := at("10:25", kitchen.Steam{})
	rising := at("10:36", kitchen.VentClosed{})
	held := at("10:45", kitchen.AtPressure{})
	fell := at("12:15", kitchen.HeatOff{})
	cools := at("13:30", kitchen.AtZero{})
	read := at("19:00", kitchen.TempRead{Temp: 26})
	runs := map[kitchen.PingKind]kitchen.Run{
		kitchen.PrepOver: soaking, kitchen.WetGrainStands: soaking, kitchen.VentOver: venting, kitchen.HoldNearlyOver: held,
		kitchen.WaterShort: held, kitchen.HoldOver: held, kitchen.WhoIsThere: held, kitchen.CheckZero: fell, kitchen.StillHot: venting,
		kitchen.SteamYet: lit, kitchen.PressureYet: rising,
		kitchen.ProbablyCool: cools, kitchen.MeasureAgain: read, kitchen.CoolNow: read, kitchen.BookingOverrun: held,
		kitchen.BagsThreeWeeks: cools, kitchen.ShelvedMonth: cools, kitchen.ShelvedThreeMonths: cools,
	}
	for _, k := range kitchen.PingKinds() {
		v := PingView{
			Ping: kitchen.Ping{Kind: k, Key: "run/12/x/1", Loudness: kitchen.DuePing, Due: d.now}, Run: runs[k], Now: d.now, To: chat.Mention{Name: "Ana"},
			Booking: kitchen.Booking{Cooker: "big pot", From: d.now, To: d.now.Add(time.Hour), For: ana}, Order: bags(), OutBy: d.now, Cooker: "big pot",
		}
		fitsPhone(t, Ping(v))
		fitsPhone(t, WhyPing(PingCame{Ping: v.Ping, Run: v.Run, Sent: d.now, Now: d.now}))
		for why := NothingWaited; why <= WasSent; why++ {
			fitsPhone(t, WhyNoPing(NoPingView{Why: why, Ping: v.Ping, Run: v.Run, By: jo, At: d.now, Now: d.now, Who: name}))
		}
	}
	for _, s := range kitchen.Stages() {
		if stageWord(s) == "" {
			t.Errorf("stage %v has no word", s)
		}
	}
	var why kitchen.Refusal
	if errors.As(kitchen.NotYet{}, &why); why == nil {
		t.Errorf("a refusal is no refusal")
	}
}
