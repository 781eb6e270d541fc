package kitchen

import (
	"math"
	"testing"
	"time"

	"ryebell/internal/calc/unit"
)

// The runs B, C and D are those of the lethality check values (gauge pressure
// linear between readings, saturation by IAPWS-IF97, atmosphere by ISO 2533, z =
// 10 K): computed, no published example was found. A dip that is only told counts
// as low for all its time, so it must come out under D, where it was read.
func TestLethalityOfRuns(t *testing.T) {
	tests := []struct {
		name   string
		told   *teller
		height unit.Metres
		f0     float64
		hold   time.Duration
		broken time.Duration
	}{
		{
			"B: 90 min at 15 psi, sea level",
			begun().say("10:00", ana, AtPressure{Gauge: unit.PSI(15)}).say("10:30", ana, GaugeRead{unit.PSI(15)}).
				say("11:00", ana, GaugeRead{unit.PSI(15)}).say("11:30", ana, HeatOff{}),
			0, 87.038051, 90 * time.Minute, 0,
		},
		{
			"B without a single reading",
			begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:30", ana, AtZero{}),
			0, 87.038051, 90 * time.Minute, 0,
		},
		{"C: the same at 1600 m", begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}), 1600, 45.008588, 90 * time.Minute, 0},
		{
			"D: 40 min at 15, down to 11 over 4 min and back, 90 min more",
			begun().say("10:00", ana, AtPressure{}).say("10:40", ana, GaugeRead{unit.PSI(15)}).say("10:44", jo, GaugeRead{unit.PSI(11)}).
				say("10:48", ana, GaugeRead{unit.PSI(15)}).say("12:18", ana, HeatOff{}),
			0, 130.57224, 90 * time.Minute, 44 * time.Minute,
		},
		{
			"a dip to 11 that was told: 40 and 90 min at 15, 8 at 11",
			begun().say("10:00", ana, AtPressure{}).say("10:40", ana, Dipped{To: psi(11), For: 8 * time.Minute}).say("12:18", ana, HeatOff{}),
			0, 130*87.038051/90 + 8*0.339, 90 * time.Minute, 40 * time.Minute,
		},
		{
			"a loss of unknown depth counts for nothing",
			begun().say("10:00", ana, AtPressure{}).say("10:40", ana, PressureLost{}).say("10:50", jo, PressureBack{}).say("12:20", ana, HeatOff{}),
			0, 130*87.038051/90 + 10*0.00787, 90 * time.Minute, 40 * time.Minute,
		},
		{
			"nor does the fall between two fires",
			begun().say("10:00", ana, AtPressure{}).say("10:30", ana, HeatOff{}).say("10:40", ana, HeatOn{}).say("11:00", ana, AtPressure{}).say("12:30", ana, HeatOff{}),
			0, 120*87.038051/90 + 30*0.00787, 90 * time.Minute, 30 * time.Minute,
		},
		{"pressure that nobody saw counts for nothing", begun().say("12:30", ana, HeatOff{}), 0, 0, 0, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := tt.told.run(t, pot(Elevation{tt.height}))
			got := r.CreditAt(clock("13:00"))
			if math.Abs(got.F0.Minutes()-tt.f0) > 1e-4*max(1, tt.f0) {
				t.Errorf("F0 = %.5f min, want %.5f", got.F0.Minutes(), tt.f0)
			}
			if got.Hold != tt.hold || got.Broken != tt.broken {
				t.Errorf("held %v, %v before; want %v, %v", got.Hold, got.Broken, tt.hold, tt.broken)
			}
		})
	}
}

// What was only told stands until the gauge is read; between two readings the pressure
// goes straight; a loss that is told ends it where it is told. By hand from the runs
// above: a minute at 15 psi is 87.038051/90, the way between 15 and 11 psi
// (130.57224 − 130 × 87.038051/90)/8 a minute, a minute at 11 psi (177.17 kPa, between
// 116.04 °C at 175 and 116.91 °C at 180 in the steam tables: 116.42) 0.3404, without
// pressure 0.00787.
func TestLethalityOfLowReadings(t *testing.T) {
	const (
		at15    = 87.038051 / 90
		between = (130.57224 - 130*at15) / 8
		at11    = 0.3404
		at0     = 0.00787
	)
	at := func() *teller { return begun().say("10:00", ana, AtPressure{Gauge: *psi(15)}) }
	read := func() *teller { return begun().say("09:50", ana, VentClosed{}).say("10:00", ana, GaugeRead{*psi(15)}) }
	for _, tt := range []struct {
		name string
		told *teller
		f0   float64
	}{
		{"lost once held, told and read", at().say("11:31", jo, PressureLost{}).say("11:31", ana, GaugeRead{*psi(10)}).say("11:39", ana, HeatOff{}), 91 * at15},
		{"lost once held, read", at().say("11:31", ana, GaugeRead{*psi(10)}).say("11:39", ana, HeatOff{}), 91 * at15},
		{"read at both ends", read().say("10:08", ana, GaugeRead{*psi(11)}).say("10:20", ana, HeatOff{}), 8 * between},
		{"read before, lost as told", read().say("10:40", jo, PressureLost{}).say("10:40", ana, GaugeRead{*psi(11)}).say("10:50", ana, HeatOff{}), 40 * at15},
		{"read before, lost once held as told", read().say("11:31", jo, PressureLost{}).say("11:31", ana, GaugeRead{*psi(11)}).say("11:40", ana, HeatOff{}), 91 * at15},
		{
			"read low, and up again", at().say("10:40", ana, GaugeRead{*psi(11)}).say("10:48", ana, GaugeRead{*psi(15)}).say("12:18", ana, HeatOff{}),
			130*at15 + 8*between,
		},
		{
			"lost as told, read at once, back", at().say("10:40", jo, PressureLost{}).say("10:40", ana, GaugeRead{*psi(11)}).
				say("10:50", ana, PressureBack{}).say("12:20", ana, HeatOff{}),
			130*at15 + 10*at11,
		},
		{
			"of unknown depth, and back at 15", at().say("10:40", jo, PressureLost{}).say("10:50", ana, PressureBack{Gauge: *psi(15)}).say("12:20", ana, HeatOff{}),
			130*at15 + 10*at0,
		},
	} {
		got := tt.told.run(t, pot(Elevation{0})).CreditAt(clock("13:00")).F0.Minutes()
		if math.Abs(got-tt.f0) > 1e-4*max(1, tt.f0) {
			t.Errorf("%s: F0 = %.5f min, want %.5f", tt.name, got, tt.f0)
		}
	}
}

// The hold that runs counts up to now.
func TestCreditGrows(t *testing.T) {
	r := begun().say("10:00", ana, AtPressure{}).run(t, pot())
	if got := r.CreditAt(clock("10:45")); got.Hold != 45*time.Minute || math.Abs(got.F0.Minutes()-87.038051/2) > 1e-3 {
		t.Errorf("credit after 45 min: %+v", got)
	}
	r = begun().say("10:00", ana, AtPressure{}).say("10:40", ana, PressureLost{}).run(t, pot())
	if got := r.CreditAt(clock("10:45")); got.Hold != 0 || got.Broken != 40*time.Minute {
		t.Errorf("credit while pressure is lost: %+v", got)
	}
	// Nobody said that it was lost: what was read last is certain, no more.
	r = begun().say("10:00", ana, AtPressure{}).say("10:20", ana, GaugeRead{unit.PSI(15)}).say("10:50", jo, PressureBack{}).run(t, pot())
	if got := r.CreditAt(clock("10:50")); got.Hold != 0 || got.Broken != 20*time.Minute {
		t.Errorf("credit when it is back: %+v", got)
	}
}

// A gauge that is off corrects pressure, hold and record. 13 psi at sea level is
// 149.4 min for 90 (the altitude table of the trade prints 149; computed, IAPWS-IF97,
// z = 10 K), rounded up.
func TestGaugeThatIsOff(t *testing.T) {
	tests := []struct {
		name  string
		off   float64 // psi too low
		shown float64 // said at pressure; 0 for unsaid
		true  float64
		hold  time.Duration
	}{
		{"true", 0, 15, 15, 90 * time.Minute},
		{"half a psi less passes for it", 0, 14.5, 14.5, 90 * time.Minute},
		{"reads 1 low", 1, 15, 16, 90 * time.Minute},
		{"reads 1 low, stopped at 14", 1, 14, 15, 90 * time.Minute},
		{"reads 2 high", -2, 15, 13, 150 * time.Minute},
		{"reads 2 high, nobody said where it stands", -2, 0, 13, 150 * time.Minute},
		{"reads 2 high, brought to 17", -2, 17, 15, 90 * time.Minute},
		{"true, and only brought to 13", 0, 13, 13, 150 * time.Minute},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := pot(GaugeReads{Cooker: "Big Pot", Low: unit.PSI(tt.off)})
			r := begun().say("10:00", ana, AtPressure{Gauge: unit.PSI(tt.shown)}).run(t, s)
			if got := r.Stretches[0].Gauge; math.Abs(float64(got-unit.PSI(tt.true))) > 1e-9 {
				t.Errorf("true gauge %v psi, want %v", got.PSI(), tt.true)
			}
			if r.Hold.Time != tt.hold {
				t.Errorf("hold %v, want %v", r.Hold.Time, tt.hold)
			}
		})
	}
	other := pot(CookerIs{Name: "small pot"}, GaugeReads{Cooker: "small pot", Low: unit.PSI(-2)})
	if r := begun().say("10:00", ana, AtPressure{}).run(t, other); r.Hold.Time != 90*time.Minute {
		t.Errorf("another cooker's gauge changed the hold to %v", r.Hold.Time)
	}
}

// A finished run never changes its past because the kitchen changed; a hold that
// begins later goes by what holds then.
func TestSettingsOfTheTime(t *testing.T) {
	settingsAt := func(at time.Time) Settings {
		if at.Before(clock("10:30")) {
			return pot()
		}
		return pot(HoldIs{jar(1), 2 * time.Hour}, GaugeReads{Cooker: "big pot", Low: unit.PSI(-3)})
	}
	told := begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{})
	r, err := FoldRun(told.records, settingsAt)
	if err != nil {
		t.Fatal(err)
	}
	if r.Hold.Time != 90*time.Minute || r.Off[0].Outcome != Held || r.Stretches[0].Gauge != unit.PSI(15) {
		t.Errorf("hold %v, %v, gauge %v", r.Hold.Time, r.Off[0].Outcome, r.Stretches[0].Gauge)
	}
	told = begun().say("10:00", ana, AtPressure{}).say("10:20", ana, PressureLost{}).say("10:40", ana, PressureBack{})
	if r, err = FoldRun(told.records, settingsAt); err != nil || r.Hold.Time != 2*time.Hour {
		t.Errorf("restarted hold %v, %v", r.Hold.Time, err)
	}
}

// The dial shows the pressure before anybody says so: the hold begins.
func TestAReadingBeginsTheHold(t *testing.T) {
	r := begun().say("09:40", ana, VentClosed{}).say("09:43", ana, GaugeRead{unit.PSI(9)}).say("09:46", jo, GaugeRead{unit.PSI(15)}).run(t, pot())
	if end, ok := r.HoldEnd(); !ok || !end.Equal(clock("11:16")) {
		t.Errorf("%v, hold until %v %v", r.Stage, end, ok)
	}
}

func TestOutcomes(t *testing.T) {
	held := func() *teller { return begun().say("10:00", ana, AtPressure{}) }
	for _, tt := range []struct {
		name string
		told *teller
		want Outcome
	}{
		{"to the end", held().say("11:30", ana, HeatOff{}), Held},
		{"half a minute short is told in whole minutes", held().say("11:29", ana, GaugeRead{unit.PSI(15)}).say("11:30", ana, HeatOff{}), Held},
		{"a minute short", held().say("11:29", ana, HeatOff{}), Early},
		{"while pressure is lost", held().say("11:00", ana, PressureLost{}).say("11:40", ana, HeatOff{}), Early},
		{"nobody saw it come up", begun().say("11:30", ana, HeatOff{}), Unseen},
		{"nobody saw the flame go off", held().say("13:00", ana, AtZero{}), Unseen},
		{"and yet it was read at the end", held().say("11:35", ana, GaugeRead{unit.PSI(15)}).say("13:00", ana, AtZero{}), Held},
	} {
		r := tt.told.run(t, pot())
		if off, ok := r.Ended(); !ok || off.Outcome != tt.want {
			t.Errorf("%s: %v %v, want %v", tt.name, off.Outcome, ok, tt.want)
		}
	}
}

// How deep a loss went is asked for once, by the entry that told of it, until
// somebody says or reads it.
func TestHowDeepIsAsked(t *testing.T) {
	lost := func() *teller { return begun().say("10:00", ana, AtPressure{}).say("10:20", jo, PressureLost{}) }
	deep := func(r Run) (since EntryNo) {
		for _, a := range r.Asks() {
			if a.What == HowDeep {
				since = a.Since
			}
		}
		return since
	}
	for _, tt := range []struct {
		name  string
		told  *teller
		since EntryNo
	}{
		{"lost", lost(), 3},
		{"back, and still not said", lost().say("10:30", ana, PressureBack{}), 3},
		{"said with it", begun().say("10:20", jo, PressureLost{Gauge: psi(9)}), 0},
		{"said while it is down", lost().say("10:22", ana, Dipped{To: psi(9)}), 0},
		{"read while it is down", lost().say("10:22", ana, GaugeRead{unit.PSI(9)}).say("10:24", ana, GaugeRead{unit.PSI(12)}), 0},
		{"said once it is back", lost().say("10:30", ana, PressureBack{}).say("10:31", jo, Dipped{To: psi(9)}), 0},
		{"said after the heat went off", lost().say("10:30", ana, HeatOff{}).say("10:31", jo, Dipped{To: psi(9)}), 0},
		{"a dip of no said depth", begun().say("10:00", ana, AtPressure{}).say("10:20", jo, Dipped{For: 4 * time.Minute}), 3},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := tt.told.run(t, pot())
			if got := deep(r); got != tt.since {
				t.Errorf("asked since entry %d, want %d", got, tt.since)
			}
			if tt.since == 0 && math.Abs(r.Dips[0].Low.PSI()-9) > 1e-9 {
				t.Errorf("low %v psi", r.Dips[0].Low.PSI())
			}
		})
	}
	r := lost().say("10:30", ana, PressureBack{}).say("10:31", jo, Dipped{To: psi(9)}).run(t, pot())
	if len(r.Stretches) != 2 || len(r.Dips) != 1 {
		t.Errorf("the answer was taken for another loss: %+v", r.Dips)
	}
}

// A hold at less than the usual pressure that was lost begins again at as little,
// unless more is said: whatever says that it is back.
func TestBackAtLess(t *testing.T) {
	at11 := func() *teller { return begun().say("10:00", ana, AtPressure{Gauge: *psi(11)}) }
	long := at11().run(t, pot()).Hold
	if long.Time < 2*90*time.Minute {
		t.Fatalf("hold at 11 psi: %v", long.Time)
	}
	tests := []struct {
		name string
		told *teller
		long bool
	}{
		{"back", at11().say("10:10", ana, PressureLost{}).say("10:15", ana, PressureBack{}), true},
		{"back at 11", at11().say("10:10", ana, PressureLost{}).say("10:15", ana, PressureBack{Gauge: *psi(11)}), true},
		{"read at 11", at11().say("10:10", ana, PressureLost{}).say("10:15", ana, GaugeRead{*psi(11)}), true},
		{"a dip", at11().say("10:10", ana, Dipped{To: psi(5), For: 4 * time.Minute}), true},
		{"back at 15", at11().say("10:10", ana, PressureLost{}).say("10:15", ana, PressureBack{Gauge: *psi(15)}), false},
		{"read at 15", at11().say("10:10", ana, PressureLost{}).say("10:15", ana, GaugeRead{*psi(15)}), false},
	}
	for _, tt := range tests {
		h := tt.told.run(t, pot()).Hold
		if want := map[bool]time.Duration{true: long.Time, false: 90 * time.Minute}[tt.long]; h.Time != want {
			t.Errorf("%s: hold %v at %.1f psi, want %v", tt.name, h.Time, h.At.PSI(), want)
		}
	}
}

// A depth told soon after the pressure was back is that of the loss before; one told
// later is a new loss.
func TestDepthLater(t *testing.T) {
	dipped := func() *teller {
		return begun().say("10:00", ana, AtPressure{}).say("10:20", ana, PressureLost{}).say("10:25", ana, PressureBack{})
	}
	for at, want := range map[string]Stage{"10:29": StageAtPressure, "10:40": StagePressureLost} {
		if r := dipped().say(at, ana, Dipped{To: psi(9)}).run(t, pot()); r.Stage != want {
			t.Errorf("depth told %s: %v, want %v", at, r.Stage, want)
		}
	}
}
