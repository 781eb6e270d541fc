package kitchen

import (
	"errors"
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// A pressure told while the hold goes on is a reading; a dip told while pressure is
// lost ends nothing.
func TestAsMeant(t *testing.T) {
	held := func() *teller { return begun().say("10:00", ana, AtPressure{Gauge: *psi(15)}) }
	lost := func() *teller { return held().say("10:10", ana, PressureLost{}) }
	simmers := func() *teller { return begun().say("09:30", ana, PrepBegun{Simmering}) }
	tests := []struct {
		name  string
		told  *teller
		at    string
		entry RunEntry
		want  RunEntry
		stage Stage
	}{
		{"it fell", held(), "10:20", AtPressure{*psi(10)}, GaugeRead{*psi(10)}, StagePressureLost},
		{"it stays up", held(), "10:20", AtPressure{*psi(15)}, GaugeRead{*psi(15)}, StageAtPressure},
		{"without a figure", held(), "10:20", AtPressure{}, AtPressure{}, 0},
		{"said by two at once", held(), "10:01", AtPressure{*psi(15)}, AtPressure{*psi(15)}, 0},
		{"it was up before", held(), "09:55", AtPressure{*psi(15)}, AtPressure{*psi(15)}, StageAtPressure},
		{"still low", lost(), "10:20", AtPressure{*psi(12)}, GaugeRead{*psi(12)}, StagePressureLost},
		{"up again", lost(), "10:20", AtPressure{*psi(15)}, AtPressure{*psi(15)}, StageAtPressure},
		{"how deep it is", lost(), "10:20", Dipped{To: psi(11), For: 4 * time.Minute}, Dipped{To: psi(11)}, StagePressureLost},
		{"how long a dip took", held().say("10:10", ana, Dipped{}), "10:10", Dipped{To: psi(11), For: 4 * time.Minute}, Dipped{To: psi(11), For: 4 * time.Minute}, StageAtPressure},
		{"a dip of the hold", held(), "10:20", Dipped{To: psi(11), For: 4 * time.Minute}, Dipped{To: psi(11), For: 4 * time.Minute}, StageAtPressure},
		{"the flame under the grain", simmers(), "10:20", HeatOff{}, PrepEnded{Simmering}, StagePreparing},
		{"the flame, where grain soaks", begun().say("09:30", ana, PrepBegun{Soaking}), "10:20", HeatOff{}, HeatOff{}, StageFalling},
		{"the flame, simmered long ago", begun().say("09:30", ana, PrepBegun{Simmering}), "22:16", HeatOff{}, HeatOff{}, 0},
		{"the flame, simmered and lit", simmers().say("10:10", ana, HeatOn{}), "10:20", HeatOff{}, HeatOff{}, StageFalling},
		{"simmered, once called off", simmers().say("10:10", ana, CalledOff{}), "10:20", PrepEnded{}, HeatOff{}, StageCalledOff},
		{"drained, once called off", simmers().say("10:10", ana, CalledOff{}), "10:20", PrepEnded{Draining}, PrepEnded{Draining}, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := tt.told.run(t, pot())
			got := r.AsMeant(tt.entry, clock(tt.at))
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Fatalf("(-want +got):\n%s", diff)
			}
			next, err := r.Apply(Record{By: jo, At: clock(tt.at), Written: clock("11:00"), Entry: got}, pot())
			if refused := err != nil; refused != (tt.stage == 0) || !refused && next.Stage != tt.stage {
				t.Errorf("stage %v, want %v; %v", next.Stage, tt.stage, err)
			}
		})
	}
}

// Too much is more than 1.5 psi over the rating, by true pressure; over 15 psi where
// no rating was said.
func TestTooMuch(t *testing.T) {
	for _, tt := range []struct {
		kitchen Settings
		shown   float64
		over    float64
		much    bool
	}{
		{pot(), 16, 1, false},
		{pot(), 16.4, 1.4, false},
		{pot(), 16.6, 1.6, true},
		{pot(), 17, 2, true},
		{pot(CookerIs{Name: "big pot", MaxGauge: *psi(20)}), 20, 0, false},
		{pot(CookerIs{Name: "big pot", MaxGauge: *psi(12)}), 15, 3, true},
		{pot(GaugeReads{Cooker: "big pot", Low: *psi(1)}), 16, 2, true},
	} {
		r := begun().say("10:00", ana, AtPressure{}).run(t, tt.kitchen)
		if _, over, much := r.TooMuch(*psi(tt.shown)); much != tt.much || math.Abs(over.PSI()-tt.over) > 0.01 {
			t.Errorf("%v shown: %.2f over, too much %v", tt.shown, over.PSI(), much)
		}
	}
}

// A flame that went out is lit again in the same hold, once.
func TestLitAgain(t *testing.T) {
	r := begun().say("09:10", ana, HeatOn{}).say("10:00", ana, AtPressure{}).say("10:10", ana, PressureLost{}).say("10:20", ana, HeatOn{}).run(t, pot())
	if r.Stage != StagePressureLost || len(r.Strays) > 0 {
		t.Errorf("stage %v, strays %v", r.Stage, r.Strays)
	}
	_, err := r.Apply(Record{By: jo, At: clock("10:25"), Written: clock("10:25"), Entry: HeatOn{}}, pot())
	if !errors.As(err, new(AlreadySo)) {
		t.Errorf("lit twice: %v", err)
	}
	again := begun().say("09:10", ana, HeatOn{}).say("09:40", ana, Steam{}).say("10:00", ana, AtPressure{}).say("10:10", ana, PressureLost{}).
		say("10:20", ana, HeatOn{}).say("10:40", ana, PressureBack{})
	_, err = again.run(t, pot()).Apply(Record{By: jo, At: clock("10:45"), Written: clock("10:45"), Entry: Steam{}}, pot())
	if !errors.As(err, new(AlreadySo)) {
		t.Errorf("steam once more, with the flame of the same hold: %v", err)
	}
	r = again.say("10:50", ana, PressureLost{}).say("10:55", jo, HeatOn{}).run(t, pot())
	if lit := r.times(KindHeatOn); lit != 3 || len(r.Strays) > 0 {
		t.Errorf("lit %d times, want one for each loss; strays %v", lit, r.Strays)
	}
}

// What is told of the time before a run was put on is taken in the kitchen in which it
// was put on: its cooker may have been named by that.
func TestBookedLateInItsKitchen(t *testing.T) {
	told := begun().say("08:30", ana, AtPressure{})
	at := func(when time.Time) Settings {
		if when.Before(clock("08:50")) {
			return Settings{}
		}
		return pot(HoldIs{jar(1), 2 * time.Hour})
	}
	r, err := FoldRun(told.records, at)
	if end, holds := r.HoldEnd(); err != nil || !holds || !end.Equal(clock("10:30")) {
		t.Errorf("hold until %v (%v), want two hours from 08:30", end, err)
	}
}
