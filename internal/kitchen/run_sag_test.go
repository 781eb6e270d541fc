package kitchen

import (
	"testing"
	"time"
)

// Pressure that falls once the hold is over, whoever tells it how, takes nothing from
// the hold, which counts to then, and heat off is still asked for.
func TestSag(t *testing.T) {
	ten := *psi(10)
	for _, tt := range []struct {
		name string
		say  RunEntry
		at   string
		held time.Duration
		lost bool
	}{
		{"lost", PressureLost{}, "11:31", 91 * time.Minute, false},
		{"by the gauge", GaugeRead{Gauge: ten}, "11:31", 91 * time.Minute, false},
		{"a dip", Dipped{To: &ten}, "11:31", 91 * time.Minute, false},
		{"just over", PressureLost{}, "11:30", 90 * time.Minute, false},
		{"before it was over", PressureLost{}, "11:29", 89 * time.Minute, true},
	} {
		r := begun().say("10:00", ana, AtPressure{}).say(tt.at, jo, tt.say).run(t, pot())
		if lost := r.Stage == StagePressureLost; lost != tt.lost {
			t.Errorf("%s: stage %v", tt.name, r.Stage)
		}
		if end, runs := r.HoldEnd(); runs == tt.lost || runs && !end.Equal(clock("11:30")) {
			t.Errorf("%s: the hold runs %t to %v", tt.name, runs, end)
		}
		off := begun().say("10:00", ana, AtPressure{}).say(tt.at, jo, tt.say).say("11:40", ana, HeatOff{}).run(t, pot()).Off[0]
		if tt.lost != (off.Outcome == Early) || !tt.lost && off.Credit.Hold != tt.held {
			t.Errorf("%s: %v, held %v, want %v", tt.name, off.Outcome, off.Credit.Hold, tt.held)
		}
	}
}

// Back at pressure after that begins no other hold.
func TestSagAndBack(t *testing.T) {
	r := begun().say("10:00", ana, AtPressure{}).say("11:31", jo, PressureLost{}).say("11:33", jo, PressureBack{}).run(t, pot())
	if r.Attempt() != 1 || r.Stage != StageAtPressure || len(r.Dips) > 0 {
		t.Errorf("hold %d, %v, dips %v", r.Attempt(), r.Stage, r.Dips)
	}
}
