package kitchen

import (
	"testing"
	"time"
)

// Seven quarts fall in 45 minutes: a zero in the first 15 of them is doubted, but
// not where nobody said when the heat went off.
func TestZeroSoon(t *testing.T) {
	off := func() *teller { return begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}) }
	for _, tt := range []struct {
		name    string
		told    *teller
		after   time.Duration
		doubted bool
	}{
		{"two minutes", off().say("11:32", jo, AtZero{}), 2 * time.Minute, true},
		{"under a third", off().say("11:44", jo, AtZero{}), 14 * time.Minute, true},
		{"a third", off().say("11:45", jo, AtZero{}), 15 * time.Minute, false},
		{"no zero yet", off(), 0, false},
		{"heat off unseen", begun().say("10:00", ana, AtPressure{}).say("11:32", jo, AtZero{}), 0, false},
		{"lit once more", off().say("11:32", ana, HeatOn{}), 0, false},
		{"called off", off().say("11:31", ana, CalledOff{}).say("11:33", jo, AtZero{}), 3 * time.Minute, true},
	} {
		after, usual, doubted := tt.told.run(t, pot()).ZeroSoon()
		if doubted != tt.doubted || after != tt.after || after > 0 && usual != 45*time.Minute {
			t.Errorf("%s: %v of %v, doubted %t; want %v, %t", tt.name, after, usual, doubted, tt.after, tt.doubted)
		}
	}
}

// A run that was called off is over, and stays on the board while its flame is not
// known to be off.
func TestMayBurn(t *testing.T) {
	lit := func() *teller { return begun().say("09:10", ana, HeatOn{}) }
	for _, tt := range []struct {
		name string
		told *teller
		want bool
	}{
		{"never lit", begun().say("09:30", ana, CalledOff{}), false},
		{"lit", lit(), false},
		{"called off hot", lit().say("09:30", ana, CalledOff{}), true},
		{"off after that", lit().say("09:30", ana, CalledOff{}).say("09:40", jo, HeatOff{}), false},
		{"off before that", lit().say("09:20", jo, HeatOff{}).say("09:30", ana, CalledOff{}), false},
		{"zero says nothing of the flame", lit().say("09:30", ana, CalledOff{}).say("09:40", jo, AtZero{}), true},
	} {
		r := tt.told.run(t, pot())
		listed := len(Board([]Run{r}, clock("10:00"))) == 1
		if r.MayBurn() != tt.want || listed != (tt.want || !r.Stage.Over()) {
			t.Errorf("%s: may burn %t, on the board %t", tt.name, r.MayBurn(), listed)
		}
	}
}

// A pot that came to zero before its hold was over is lit again in the same run; one
// whose hold was done, or that was emptied, isn't.
func TestRelit(t *testing.T) {
	at := func() *teller { return begun().say("10:00", ana, AtPressure{}) }
	for _, tt := range []struct {
		name  string
		told  *teller
		lit   bool
		short time.Duration
	}{
		{"heat off early", at().say("10:30", ana, HeatOff{}).say("11:15", ana, AtZero{}), true, 40 * time.Minute},
		{"lost, then off", at().say("10:20", ana, PressureLost{}).say("10:30", ana, HeatOff{}).say("10:50", ana, AtZero{}), true, 30 * time.Minute},
		{"ten minutes too few", at().say("11:20", ana, HeatOff{}).say("12:00", ana, AtZero{}), true, 65 * time.Minute},
		{"held", at().say("11:30", ana, HeatOff{}).say("12:15", ana, AtZero{}), false, 0},
		{"out of the pot", at().say("10:30", ana, HeatOff{}).say("11:15", ana, AtZero{}).say("11:20", ana, OutOfPot{}), false, 0},
		{"nobody said pressure", begun().say("10:00", ana, Steam{}).say("11:30", ana, HeatOff{}).say("12:15", ana, AtZero{}), false, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := tt.told.run(t, pot())
			next, err := r.Apply(Record{No: 90, By: ana, At: clock("12:40"), Written: clock("12:40"), Entry: HeatOn{}}, pot())
			if lit := err == nil && next.Stage == StageHeating; lit != tt.lit || r.Relightable() != tt.lit {
				t.Fatalf("lit again: %v, relightable %v, want %v (%v)", lit, r.Relightable(), tt.lit, err)
			}
			if !tt.lit {
				return
			}
			if end, held := next.HoldEnd(); held {
				t.Errorf("a hold runs until %v", end)
			}
			next = next.With(Record{No: 91, By: ana, At: clock("12:50"), Written: clock("12:50"), Entry: Steam{}}, pot())
			next = next.With(Record{No: 92, By: ana, At: clock("13:00"), Written: clock("13:00"), Entry: AtPressure{}}, pot())
			if end, held := next.HoldEnd(); next.Stage != StageAtPressure || !held || !end.Equal(clock("14:30")) {
				t.Errorf("%v, hold until %v, want a whole one until 14:30", next.Stage, end)
			}
			if short := next.WaterShort(); short > tt.short {
				t.Errorf("water short by %v: the time without pressure boils nothing off", short)
			}
		})
	}
}
