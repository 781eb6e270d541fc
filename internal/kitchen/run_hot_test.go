package kitchen

import (
	"errors"
	"slices"
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
		{"simmering", begun().say("09:10", ana, PrepBegun{Simmering}), false},
		{"called off while it simmers", begun().say("09:10", ana, PrepBegun{Simmering}).say("09:30", ana, CalledOff{}), true},
		{"simmering was over", begun().say("09:10", ana, PrepBegun{Simmering}).say("09:20", jo, PrepEnded{}).say("09:30", ana, CalledOff{}), false},
		{"drained since", begun().say("09:10", ana, PrepBegun{Simmering}).say("09:20", jo, PrepBegun{Draining}).say("09:30", ana, CalledOff{}), false},
		{"soaking has no flame", begun().say("09:10", ana, PrepBegun{Soaking}).say("09:30", ana, CalledOff{}), false},
		{"its flame is off", begun().say("09:10", ana, PrepBegun{Simmering}).say("09:30", ana, CalledOff{}).say("09:40", jo, HeatOff{}), false},
		{"simmered, lit, and off", begun().say("09:10", ana, PrepBegun{Simmering}).say("09:20", ana, HeatOn{}).say("09:30", ana, HeatOff{}).say("09:40", jo, CalledOff{}), false},
		{"simmered, and lit", begun().say("09:10", ana, PrepBegun{Simmering}).say("09:20", ana, HeatOn{}).say("09:40", jo, CalledOff{}), true},
		{"zero says nothing of the flame", lit().say("09:30", ana, CalledOff{}).say("09:40", jo, AtZero{}), true},
	} {
		r := tt.told.run(t, pot())
		listed := len(Board([]Run{r}, clock("10:00"))) == 1
		if r.MayBurn() != tt.want || listed != (tt.want || !r.Stage.Over()) {
			t.Errorf("%s: may burn %t, on the board %t", tt.name, r.MayBurn(), listed)
		}
	}
}

// A run called off with its flame off may be under pressure once it was, its weight
// was on, or it was heated for longer than steam takes, until somebody sees zero.
func TestMayPress(t *testing.T) {
	lit := func() *teller { return begun().say("09:10", ana, HeatOn{}) }
	off := func(l *teller, called, off string) *teller {
		return l.say(called, ana, CalledOff{}).say(off, ana, HeatOff{})
	}
	for _, tt := range []struct {
		name string
		told *teller
		want bool
	}{
		{"never lit", begun().say("09:30", ana, CalledOff{}), false},
		{"lit for a moment", off(lit(), "09:19", "09:20"), false},
		{"flame still on", lit().say("10:00", ana, AtPressure{}).say("10:10", ana, CalledOff{}), false},
		{"lit for an hour", off(lit(), "10:09", "10:10"), true},
		{"weight on", off(lit().say("09:20", ana, VentClosed{}), "09:29", "09:30"), true},
		{"at pressure", off(begun().say("09:10", ana, AtPressure{}), "09:19", "09:20"), true},
		{"at zero", off(begun().say("09:10", ana, AtPressure{}), "09:19", "09:20").say("10:10", jo, AtZero{}), false},
		{"zero denied", off(begun().say("09:10", ana, AtPressure{}), "09:19", "09:20").say("10:10", jo, AtZero{}).
			say("10:11", ana, PingAnswered{Key: "run/12/zero/1", How: AnswerNotYet}), true},
		{"zero denied, and seen then", off(begun().say("09:10", ana, AtPressure{}), "09:19", "09:20").say("10:10", jo, AtZero{}).
			say("10:11", ana, PingAnswered{Key: "run/12/zero/1", How: AnswerNotYet}).say("10:30", ana, AtZero{}), false},
		{"not called off", lit().say("10:00", ana, AtPressure{}).say("10:10", ana, HeatOff{}), false},
	} {
		r := tt.told.run(t, pot())
		asks := slices.ContainsFunc(r.Wants(pot()), func(p Ping) bool { return p.Kind == CheckZero })
		if r.MayPress() != tt.want || r.Stage == StageCalledOff && asks != tt.want {
			t.Errorf("%s: may press %t, zero asked for %t, want %t", tt.name, r.MayPress(), asks, tt.want)
		}
	}
}

// What was answered of a flame called off doesn't end the watch over the next one.
func TestStillHotOfEachFlame(t *testing.T) {
	r := begun().say("09:10", ana, HeatOn{}).say("09:30", ana, PingAnswered{Key: "run/12/still-hot/1", How: AnswerDone}).
		say("09:40", ana, HeatOn{}).say("09:50", ana, CalledOff{}).run(t, pot())
	if !r.MayBurn() || !slices.ContainsFunc(r.Wants(pot()), func(p Ping) bool { return p.Kind == StillHot }) {
		t.Errorf("may burn %t, asked for %v", r.MayBurn(), r.Wants(pot()))
	}
}

// Out of the pot, a reading and the water left presume a zero, which nobody can have
// missed before the third of a fall; a zero presumes a flame.
func TestTooSoon(t *testing.T) {
	off := func() *teller { return begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}) }
	for _, tt := range []struct {
		name  string
		told  *teller
		at    string
		say   RunEntry
		needs Kind // zero: it counts
	}{
		{"reading, 3 min after heat off", off(), "11:33", TempRead{Temp: 46}, KindAtZero},
		{"out, 14 min after heat off", off(), "11:44", OutOfPot{}, KindAtZero},
		{"out, 15 min after heat off", off(), "11:45", OutOfPot{}, 0},
		{"water left", off(), "11:33", WaterLeft{Water: 1}, KindAtZero},
		{"gone", off(), "11:33", RunGone{}, KindAtZero},
		{"zero is believed", off(), "11:33", AtZero{}, 0},
		{"out once zero was seen", off().say("11:33", jo, AtZero{}), "11:34", OutOfPot{}, 0},
		{"zero of what isn't lit", begun(), "09:02", AtZero{}, KindHeatOn},
		{"out of what isn't lit", begun(), "09:02", OutOfPot{}, KindHeatOn},
		{"zero after a cook that nobody told", begun(), "11:20", AtZero{}, 0},
	} {
		_, err := tt.told.run(t, pot()).Apply(Record{No: 9, By: jo, At: clock(tt.at), Written: clock(tt.at), Entry: tt.say}, pot())
		var early NotYet
		if errors.As(err, &early) != (tt.needs != 0) || early.Needs != tt.needs {
			t.Errorf("%s: %v, want it to need %v", tt.name, err, tt.needs)
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

// Who was asked for the zero and sees pressure is believed over another's word, until
// the pot was opened; then zero can be said again.
func TestZeroDenied(t *testing.T) {
	down := func() *teller {
		return begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:15", jo, AtZero{})
	}
	notYet := PingAnswered{Key: "run/12/zero/1", How: AnswerNotYet}
	for _, tt := range []struct {
		name string
		told *teller
		want Stage
	}{
		{"denied", down().say("12:16", ana, notYet), StageFalling},
		{"said again", down().say("12:16", ana, notYet).say("12:30", ana, AtZero{}), StageCooling},
		{"opened before", down().say("12:16", jo, OutOfPot{}).say("12:17", ana, notYet), StageCooling},
		{"another fall", down().say("12:16", ana, PingAnswered{Key: "run/12/zero/2", How: AnswerNotYet}), StageCooling},
		{"put off before", begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:14", ana, notYet).say("12:15", jo, AtZero{}), StageCooling},
	} {
		r := tt.told.run(t, pot())
		asks := slices.ContainsFunc(r.Wants(pot()), func(p Ping) bool { return p.Kind == CheckZero })
		if r.Stage != tt.want || len(r.Strays) > 0 || asks != (tt.want == StageFalling) {
			t.Errorf("%s: %v, zero asked for %t, strays %v; want %v", tt.name, r.Stage, asks, r.Strays, tt.want)
		}
	}
}

// A zero is denied by who was asked for it and sees pressure, of a run that cools and
// of one called off; once.
func TestZeroDeniedOf(t *testing.T) {
	no := PingAnswered{Key: "run/12/zero/1", How: AnswerNotYet}
	down := func() *teller {
		return begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:10", jo, AtZero{})
	}
	off := func() *teller {
		return begun().say("10:00", ana, AtPressure{}).say("10:10", ana, CalledOff{}).say("10:11", ana, HeatOff{})
	}
	for _, tt := range []struct {
		name   string
		told   *teller
		say    PingAnswered
		denied bool
	}{
		{"not yet", down(), no, true},
		{"not yet, after a tap", begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:10", jo, PingAnswered{no.Key, AnswerDone}), no, true},
		{"got it", down(), PingAnswered{no.Key, AnswerGotIt}, false},
		{"another ping", down(), PingAnswered{"run/12/hold-over/1", AnswerNotYet}, false},
		{"out of the pot", down().say("12:12", jo, OutOfPot{}), no, false},
		{"nobody said zero", begun().say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}), no, false},
		{"denied before", down().say("12:12", ana, no), no, false},
		{"called off", off().say("11:00", jo, AtZero{}), no, true},
		{"called off, not down", off(), no, false},
		{
			"called off, and the flame is off", begun().say("10:00", ana, AtPressure{}).say("10:10", ana, CalledOff{}).say("10:20", jo, AtZero{}),
			PingAnswered{"run/12/still-hot/1", AnswerDone},
			false,
		},
	} {
		r := tt.told.run(t, pot())
		next, err := r.Apply(Record{By: ana, At: clock("12:15"), Written: clock("12:15"), Entry: tt.say}, pot())
		if err != nil {
			t.Fatalf("%s: %v", tt.name, err)
		}
		if zero, denied := r.ZeroDenied(tt.say, next); denied != tt.denied || denied && zero.By != jo {
			t.Errorf("%s: denied %t of %d, want %t", tt.name, denied, zero.By, tt.denied)
		}
	}
}
