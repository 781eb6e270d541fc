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
			NotYet{Run: 12, Said: KindTempRead, Stage: StageAtPressure, Needs: KindAtZero},
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
			"before the run", begun(), "08:30", jo,
			HeatOn{},
			BeforeRun{Run: 12, At: clock("08:30"), Begun: clock("09:00")},
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

// Whoever is sure of it can have it written: a run that was lit before anybody
// told the bot.
func TestBeforeRunAllTheSame(t *testing.T) {
	r := begun().run(t, pot())
	r = r.With(Record{No: 2, By: ana, At: clock("08:40"), Written: clock("09:10"), Entry: HeatOn{}}, pot())
	if r.Stage != StageHeating || !r.Since.Equal(clock("08:40")) || len(r.Strays) != 0 {
		t.Errorf("%v since %v, strays %v", r.Stage, r.Since, r.Strays)
	}
}

func TestNoRun(t *testing.T) {
	if _, err := FoldRun([]Record{{No: 1, Entry: HeatOn{}}}, always(pot())); err != (NoSuchRun{}) { //nolint:errorlint // never wrapped
		t.Errorf("FoldRun of no beginning: %v", err)
	}
}
