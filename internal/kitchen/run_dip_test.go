package kitchen

import (
	"testing"
	"time"

	"ryebell/internal/calc/unit"
)

// A hold that goes by less than the usual pressure goes by it again after a loss, as
// long as nobody says or reads more: at 10 psi and sea level 339 min for 90
// (computed, IAPWS-IF97, z = 10 K).
func TestBackUnderTheUsualPressure(t *testing.T) {
	const at10, at15 = 339 * time.Minute, 90 * time.Minute
	at := func() *teller { return begun().say("10:00", ana, AtPressure{Gauge: unit.PSI(10)}) }
	tests := []struct {
		name string
		told *teller
		want time.Duration
	}{
		{"never lost", at(), at10},
		{"back, said without a figure", at().say("10:20", ana, PressureLost{}).say("10:25", ana, PressureBack{}), at10},
		{"at pressure, said of it", at().say("10:20", ana, PressureLost{}).say("10:25", ana, AtPressure{}), at10},
		{"back at 15", at().say("10:20", ana, PressureLost{}).say("10:25", ana, PressureBack{Gauge: unit.PSI(15)}), at15},
		{"a dip", at().say("10:20", ana, Dipped{To: psi(7), For: 4 * time.Minute}), at10},
		{"read at 10 again", at().say("10:20", ana, GaugeRead{unit.PSI(7)}).say("10:25", ana, GaugeRead{unit.PSI(10)}), at10},
		{"read at 15", at().say("10:20", ana, GaugeRead{unit.PSI(7)}).say("10:25", ana, GaugeRead{unit.PSI(15)}), at15},
		{
			"read at 10, and lost once more",
			at().say("10:20", ana, GaugeRead{unit.PSI(7)}).say("10:25", ana, GaugeRead{unit.PSI(10)}).
				say("10:40", ana, PressureLost{}).say("10:45", ana, PressureBack{}),
			at10,
		},
		{
			"lit again, up to 10",
			at().say("10:20", ana, HeatOff{}).say("10:25", ana, HeatOn{}).say("10:30", ana, Steam{}).say("10:40", ana, VentClosed{}).
				say("10:45", ana, GaugeRead{unit.PSI(10)}),
			at10,
		},
		{"lit again, at pressure", at().say("10:20", ana, HeatOff{}).say("10:25", ana, HeatOn{}).say("10:45", ana, AtPressure{}), at15},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := tt.told.run(t, pot())
			if r.Stage != StageAtPressure || r.Hold.Time != tt.want {
				t.Errorf("%v, hold %v, want %v", r.Stage, r.Hold.Time, tt.want)
			}
		})
	}
}

// What was told while the pressure was down belongs to the dip that is told
// afterwards with its end: the hold goes on from there.
func TestToldWithinADip(t *testing.T) {
	for name, e := range map[string]RunEntry{"read": GaugeRead{unit.PSI(9)}, "said": PressureLost{Gauge: psi(9)}} {
		r := begun().say("10:00", ana, AtPressure{}).say("10:22", ana, e).
			say("10:20", ana, Dipped{To: psi(11), For: 6 * time.Minute}).run(t, pot())
		end, ok := r.HoldEnd()
		if r.Stage != StageAtPressure || !ok || !end.Equal(clock("11:56")) {
			t.Errorf("%s: %v, hold to %v", name, r.Stage, end)
		}
		if len(r.Dips) != 1 || *r.Dips[0].Low != unit.PSI(9) {
			t.Errorf("%s: dips %+v", name, r.Dips)
		}
	}
}

// That the hold is nearly over can't be put off, for it ends no later.
func TestNearlyOverIsNotPutOff(t *testing.T) {
	r := begun().say("10:00", ana, AtPressure{}).say("11:26", ana, PingAnswered{"run/12/hold-nearly/1", AnswerNotYet}).run(t, pot())
	for _, p := range r.Wants(pot()) {
		if p.Kind == HoldNearlyOver && !p.Due.Equal(clock("11:25")) {
			t.Errorf("nearly over at %v", p.Due)
		}
	}
}

// The cook who found it cool is not told so days later, when somebody else reads or
// has it.
func TestCoolIsNotNewsToTheCook(t *testing.T) {
	cool := func() *teller {
		return begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:30", ana, AtZero{}).
			say("20:00", ana, TempRead{Temp: 25, Where: Middle})
	}
	for name, told := range map[string]*teller{
		"found by the cook": cool(),
		"read by another":   cool().say("23:00", jo, TempRead{Temp: 22}),
		"with another":      cool().say("23:00", jo, TookOver{}),
	} {
		if got := due(told.run(t, pot()).Wants(pot())); got != "" {
			t.Errorf("%s: %s", name, got)
		}
	}
}
