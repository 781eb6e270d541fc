package kitchen

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ryebell/internal/calc/unit"
)

// What can't be so is refused, with who said what, and the run stays as it was.
func TestRunRefusals(t *testing.T) {
	held := func() *teller { return begun().say("10:00", ana, AtPressure{}) }
	tests := []struct {
		name string
		told *teller
		at   string
		by   MemberNo
		say  RunEntry
		want error
	}{
		{
			"heat off twice", held().say("11:30", ana, HeatOff{}), "11:32", jo,
			HeatOff{},
			AlreadySo{Run: 12, Said: KindHeatOff, By: ana, At: clock("11:30"), Seen: true},
		},
		{
			"at pressure twice", held(), "10:20", jo,
			AtPressure{},
			AlreadySo{Run: 12, Said: KindAtPressure, By: ana, At: clock("10:00"), Seen: true},
		},
		{
			"steam, long after", held(), "10:20", jo,
			Steam{},
			AlreadySo{Run: 12, Said: KindSteam, At: clock("10:00")},
		},
		{
			"lost twice", held().say("10:20", jo, PressureLost{}), "10:21", ana,
			PressureLost{},
			AlreadySo{Run: 12, Said: KindPressureLost, By: jo, At: clock("10:20"), Seen: true},
		},
		{
			"back twice", held().say("10:20", jo, PressureLost{}).say("10:30", ana, PressureBack{}), "10:32", jo,
			PressureBack{},
			AlreadySo{Run: 12, Said: KindPressureBack, By: ana, At: clock("10:30"), Seen: true},
		},
		{
			"soaking twice", begun().say("09:10", jo, PrepBegun{Soaking}), "09:30", ana,
			PrepBegun{Soaking},
			AlreadySo{Run: 12, Said: KindPrepBegun, By: jo, At: clock("09:10"), Seen: true},
		},
		{
			"begun twice", begun(), "09:30", ana,
			RunBegun{Run: 12},
			AlreadySo{Run: 12, Said: KindRunBegun, By: ana, At: clock("09:00"), Seen: true},
		},
		{
			"called off twice", begun().say("09:10", jo, CalledOff{}), "09:11", ana,
			CalledOff{},
			AlreadySo{Run: 12, Said: KindCalledOff, By: jo, At: clock("09:10"), Seen: true},
		},
		{
			"a thermometer in a bag under pressure", held(), "10:20", jo,
			TempRead{Temp: 46},
			NotYet{Run: 12, Said: KindTempRead, Stage: StageAtPressure, Needs: KindHeatOff},
		},
		{
			"a gauge before the flame", begun(), "09:20", jo,
			GaugeRead{unit.PSI(3)},
			NotYet{Run: 12, Said: KindGaugeRead, Stage: StagePlanned, Needs: KindHeatOn},
		},
		{
			"lost after the heat went off", held().say("11:30", ana, HeatOff{}), "11:40", jo,
			PressureLost{},
			Over{Run: 12, Said: KindPressureLost, Stage: StageFalling},
		},
		{
			"steam of a run that was called off", begun().say("09:10", jo, CalledOff{}), "09:30", ana,
			Steam{},
			Over{Run: 12, Said: KindSteam, Stage: StageCalledOff},
		},
		{
			"more than a day before it was put on", begunLate(), "08:30", jo,
			HeatOn{},
			BeforeRun{Run: 12, At: clock("08:30"), Begun: clock("2 09:00")},
		},
		{
			"heat off before what was read later", held().say("10:40", ana, GaugeRead{unit.PSI(15)}).say("10:50", jo, PressureLost{}), "10:30", ana,
			HeatOff{},
			Contradicts{Run: 12, Said: KindHeatOff, At: clock("10:30"), Other: KindPressureLost, OtherAt: clock("10:50"), OtherBy: jo},
		},
		{"accepting what nobody offered", held(), "10:20", jo, HandAccepted{}, NotOffered{Run: 12, Cook: ana}},
		{
			"accepting what another was offered", held().say("10:10", ana, HandOffered{To: mik}), "10:20", jo,
			HandAccepted{},
			NotOffered{Run: 12, Cook: ana},
		},
		{"a jar too many", held().say("13:00", ana, AtZero{}), "13:20", jo, TempRead{Units: []UnitNo{8}, Temp: 40}, NoSuchUnit{Ref: Ref{Run: 12, Units: []UnitNo{8}}, Has: 7}},
		{"a bag at 200 °C", held().say("13:00", ana, AtZero{}), "13:20", jo, TempRead{Temp: 200}, OutOfRange{What: ReadTemp, Got: 200, Low: -20, High: 130}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			before := tt.told.run(t, pot())
			rec := Record{By: tt.by, At: clock(tt.at), Written: clock("23:00"), Entry: tt.say}
			after, err := before.Apply(rec, pot())
			if diff := cmp.Diff(tt.want, err); diff != "" {
				t.Errorf("refusal (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(before, after, sameRun()); diff != "" {
				t.Errorf("the run changed:\n%s", diff)
			}
		})
	}
}

// A clock may be ahead by a little, and a dip be over by a little.
func TestInFuture(t *testing.T) {
	r := begun().say("10:00", ana, AtPressure{}).run(t, pot())
	for _, tt := range []struct {
		at      string
		say     RunEntry
		refused bool
	}{
		{"11:31", HeatOff{}, false},
		{"11:33", HeatOff{}, true},
		{"11:20", Dipped{For: 10 * time.Minute}, false},
		{"11:25", Dipped{For: 10 * time.Minute}, true},
	} {
		_, err := r.Apply(Record{By: ana, At: clock(tt.at), Written: clock("11:30"), Entry: tt.say}, pot())
		if _, future := err.(InFuture); future != tt.refused || err != nil != tt.refused { //nolint:errorlint // never wrapped
			t.Errorf("%+v at %s: %v", tt.say, tt.at, err)
		}
	}
}

// begunLate is a run that was put on the book a day later than [begun].
func begunLate() *teller {
	s := begun()
	s.records[0].At = clock("2 09:00")
	return s
}

// A run that was lit before anybody told the bot began then, by the settings of when
// it was put on: those before may not know its cooker.
func TestBegunBeforePutOn(t *testing.T) {
	r := begun().run(t, pot())
	r, err := r.Apply(Record{No: 2, By: ana, At: clock("08:40"), Written: clock("09:10"), Entry: HeatOn{}}, Settings{})
	if err != nil || r.Stage != StageHeating || !r.Since.Equal(clock("08:40")) || !r.Begun.Equal(clock("08:40")) || len(r.Strays) != 0 {
		t.Errorf("%v since %v, begun %v, strays %v: %v", r.Stage, r.Since, r.Begun, r.Strays, err)
	}
	if r.pot.Name != "big pot" {
		t.Errorf("cooked in %+v", r.pot)
	}
}

func TestNoRun(t *testing.T) {
	if _, err := FoldRun([]Record{{No: 1, Entry: HeatOn{}}}, always(pot())); err != (NoSuchRun{}) { //nolint:errorlint // never wrapped
		t.Errorf("FoldRun of no beginning: %v", err)
	}
}

// While the load must still be heated nothing that takes the flame to be off is
// believed: the run stays hot and its pings stay. From the end of the hold on, or
// of the usual course to it (jars: 25, 10 and 5 minutes), the flame is taken to
// have gone off unseen.
func TestTooHot(t *testing.T) {
	held := func() *teller { return begun().say("10:00", ana, AtPressure{}) }
	tests := []struct {
		name  string
		told  *teller
		stage Stage
		early string
		due   string
	}{
		{"heating", begun().say("09:10", ana, HeatOn{}), StageHeating, "11:19", "11:20"},
		{"venting", begun().say("09:40", ana, Steam{}), StageVenting, "11:24", "11:25"},
		{"rising", begun().say("09:50", ana, VentClosed{}), StageRising, "11:24", "11:25"},
		{"at pressure", held(), StageAtPressure, "11:29", "11:30"},
		{"at pressure again", held().say("10:30", jo, PressureLost{}).say("10:40", jo, PressureBack{}), StageAtPressure, "12:09", "12:10"},
		{"after a dip", held().say("10:30", jo, Dipped{For: 10 * time.Minute}), StageAtPressure, "12:09", "12:10"},
		{"pressure lost", held().say("10:30", jo, PressureLost{}), StagePressureLost, "12:04", "12:05"},
		{"lit once more", held().say("10:30", jo, HeatOff{}).say("10:40", jo, HeatOn{}), StageHeating, "12:49", "12:50"},
	}
	for _, tt := range tests {
		for _, e := range []RunEntry{AtZero{}, OutOfPot{}, TempRead{Temp: 40}, WaterLeft{1}} {
			before := tt.told.run(t, pot())
			say := func(at string) (Run, error) {
				return before.Apply(Record{No: 99, By: jo, At: clock(at), Written: clock("23:00"), Entry: e}, pot())
			}
			after, err := say(tt.early)
			if diff := cmp.Diff(error(NotYet{Run: 12, Said: e.kind(), Stage: tt.stage, Needs: KindHeatOff}), err); diff != "" {
				t.Errorf("%s, %v at %s (-want +got):\n%s", tt.name, e.kind(), tt.early, diff)
			}
			if diff := cmp.Diff(before.Wants(pot()), after.Wants(pot())); diff != "" {
				t.Errorf("%s, %v: pings changed (-before +after):\n%s", tt.name, e.kind(), diff)
			}
			_, fills := e.(AtZero)
			if after, err = say(tt.due); fills && (err != nil || after.Stage != StageCooling) {
				t.Errorf("%s, zero at %s: %v, %v", tt.name, tt.due, after.Stage, err)
			}
		}
	}
}

// A book of old in which it was believed: the record is a stray, and what follows
// later counts.
func TestTooHotInTheBook(t *testing.T) {
	r := begun().say("10:00", ana, AtPressure{}).say("10:20", jo, AtZero{}).say("12:30", jo, OutOfPot{}).run(t, pot())
	if len(r.Strays) != 1 || r.Stage != StageCooling || !r.Since.Equal(clock("12:30")) {
		t.Errorf("%v since %v, strays %+v", r.Stage, r.Since, r.Strays)
	}
}

// The flame up to four hours before the run was put on is a late report, before that
// an hour that was rather mistyped; a soak is long.
func TestLongBefore(t *testing.T) {
	for _, tt := range []struct {
		said RunEntry
		at   string
		want bool
	}{
		{HeatOn{}, "05:00", false},
		{HeatOn{}, "04:59", true},
		{AtPressure{}, "04:59", true},
		{PrepBegun{Soaking}, "01:00", false},
		{WaterIn{Water: 3}, "01:00", false},
		{HeatOn{}, "09:30", false},
	} {
		if got := LongBefore(tt.said, clock(tt.at), clock("09:00")); got != tt.want {
			t.Errorf("%T at %s: %t, want %t", tt.said, tt.at, got, tt.want)
		}
	}
}
