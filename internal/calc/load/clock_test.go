package load_test

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"ryebell/internal/calc/load"
)

// TestClockOfOneLoad has the turn-rounds that growers' times add up to (common
// practice): jars 25 + 10 + 5 + 90 + 45 = 2 h 55; bags 40 + 10 + 10 + 150 and a
// fall of 90, on the late side, = 5 h.
func TestClockOfOneLoad(t *testing.T) {
	for _, tc := range []struct {
		name string
		load load.Durations
		want load.Offsets
	}{
		{"jars", load.JarLoad(90 * time.Minute), offsets(0, 25, 35, 40, 130, 175)},
		{"bags", load.BagLoad(150 * time.Minute), offsets(0, 40, 50, 60, 210, 300)},
		{"nothing takes time", load.Durations{}, load.Offsets{}},
		{"less than nothing", load.Durations{Heat: -time.Hour, Hold: time.Minute}, offsets(0, 0, 0, 0, 1, 1)},
	} {
		at, finish := load.Clock([]load.Durations{tc.load})
		if diff := cmp.Diff([]load.Offsets{tc.want}, at); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tc.name, diff)
		}
		if finish != tc.want.Zero {
			t.Errorf("%s: finished after %v, want %v", tc.name, finish, tc.want.Zero)
		}
	}
}

func offsets(minutes ...int) load.Offsets {
	m := func(i int) time.Duration { return time.Duration(minutes[i]) * time.Minute }
	return load.Offsets{Heat: m(0), Steam: m(1), Close: m(2), AtPressure: m(3), HeatOff: m(4), Zero: m(5)}
}

func TestClockOfTwoLoads(t *testing.T) {
	at, finish := load.Clock([]load.Durations{load.BagLoad(150 * time.Minute), load.JarLoad(90 * time.Minute)})
	want := []load.Offsets{offsets(0, 40, 50, 60, 210, 300), offsets(315, 340, 350, 355, 445, 490)}
	if diff := cmp.Diff(want, at); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if finish != 490*time.Minute {
		t.Errorf("finished after %v, want 8h10m", finish)
	}
}

func TestClockOfNoLoad(t *testing.T) {
	if at, finish := load.Clock(nil); len(at) != 0 || finish != 0 {
		t.Errorf("got %v and %v", at, finish)
	}
}

func TestClockRunsForward(t *testing.T) {
	minutes := rapid.Map(rapid.IntRange(-10, 300), func(m int) time.Duration { return time.Duration(m) * time.Minute })
	durations := rapid.Custom(func(t *rapid.T) load.Durations {
		return load.Durations{
			Heat: minutes.Draw(t, "heat"), Vent: minutes.Draw(t, "vent"), ToPressure: minutes.Draw(t, "to pressure"),
			Hold: minutes.Draw(t, "hold"), Fall: minutes.Draw(t, "fall"), TurnRound: minutes.Draw(t, "turn-round"),
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		loads := rapid.SliceOf(durations).Draw(t, "loads")
		at, finish := load.Clock(loads)
		if len(at) != len(loads) {
			t.Fatalf("%d loads have %d courses", len(loads), len(at))
		}
		var now time.Duration
		for i, o := range at {
			for _, next := range []time.Duration{o.Heat, o.Steam, o.Close, o.AtPressure, o.HeatOff, o.Zero} {
				if next < now {
					t.Errorf("load %d runs backwards: %+v", i, o)
				}
				now = next
			}
			if held := o.HeatOff - o.AtPressure; held != max(loads[i].Hold, 0) {
				t.Errorf("load %d holds %v, want %v", i, held, loads[i].Hold)
			}
		}
		if finish != now {
			t.Errorf("finished after %v, the last stage is at %v", finish, now)
		}
	})
}
