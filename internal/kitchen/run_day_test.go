package kitchen

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/unit"
)

// When is it cool? A reading from the middle says so; one from outside once it is
// nearly sure that the middle is cool too, and of the skin the second. After six
// hours at the limit outside it is cool inside. The limit is 27 °C, 3 over the room
// up to 30.
func TestCool(t *testing.T) {
	down := func() *teller { return begun().say("12:00", ana, AtZero{}) }
	skin := func(c unit.Celsius) TempRead { return TempRead{Temp: c} }
	tests := []struct {
		name string
		room unit.Celsius
		told *teller
		want Stage
		ping string
	}{
		{"warm", 20, down().say("18:00", ana, skin(31)), StageCooling, "probably cool to 1"},
		{"a cool skin", 20, down().say("18:00", ana, skin(26)), StageCooling, "measure again to 1"},
		{"said to be the skin", 20, down().say("18:00", ana, TempRead{Temp: 26, Where: Skin}), StageCooling, "measure again to 1"},
		{"twice, by the cook", 20, down().say("18:00", ana, skin(22)).say("19:00", ana, skin(21)), StageCool, ""},
		{"twice, but the middle may be warmer", 20, down().say("18:00", ana, skin(27)).say("19:00", ana, skin(26.5)), StageCooling, "measure again to 1"},
		{"six hours at the limit", 24, down().say("18:00", ana, skin(27)).say("2 00:00", ana, skin(26.5)), StageCool, ""},
		{"twice, by another", 20, down().say("18:00", ana, skin(22)).say("19:00", jo, skin(21)), StageCool, "cool to 1"},
		{"twice within minutes", 20, down().say("18:00", ana, skin(26)).say("18:10", ana, skin(26)), StageCooling, "measure again to 1"},
		{"it rose: the core is still warm", 20, down().say("18:00", ana, skin(24)).say("19:00", ana, skin(26)), StageCooling, "measure again to 1"},
		{"cool, then over the limit", 20, down().say("18:00", ana, skin(26)).say("19:00", ana, skin(28)).say("20:00", ana, skin(26)), StageCooling, "measure again to 1"},
		{"between the bags", 20, down().say("18:00", ana, TempRead{Temp: 26, Where: Between}), StageCooling, "measure again to 1"},
		{"cool between the bags", 20, down().say("21:00", ana, TempRead{Temp: 21, Where: Between}), StageCool, ""},
		{"79 °F typed as °C, a day later", 20, down().say("18:00", ana, TempRead{Temp: 26, Where: Middle}).say("2 18:00", ana, skin(79)), StageCool, ""},
		{"cool at once can't be", 20, down().say("12:10", ana, skin(24)).say("12:50", ana, skin(23)), StageCooling, "probably cool to 1"},
		{"the middle, warmer later", 20, down().say("18:00", ana, TempRead{Temp: 26, Where: Middle}).say("18:30", ana, skin(35)), StageCooling, "probably cool to 1"},
		{"28 in a room of 25", 25, down().say("18:00", ana, TempRead{Temp: 28, Where: Middle}), StageCool, ""},
		{"30.5 in a room of 29", 29, down().say("18:00", ana, TempRead{Temp: 30.5, Where: Middle}), StageCooling, "probably cool to 1"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := pot(RoomTemperature{tt.room})
			r := tt.told.run(t, s)
			if r.Stage != tt.want {
				t.Errorf("stage %v, want %v", r.Stage, tt.want)
			}
			got := ""
			for _, p := range r.Wants(s)[:min(1, len(r.Wants(s)))] {
				got = fmt.Sprintf("%v to %d", p.Kind, p.To)
			}
			if got != tt.ping {
				t.Errorf("first it wants %q, want %q", got, tt.ping)
			}
		})
	}
}

// Times to 27 °C out of the pot (common practice: pint 3 to 5 h, quart 5 to 8 h, 5 lb
// bag 10 to 18 h), in the closed pot half as long again or twice; out of it after a
// while, the rest goes faster. Four of five are down at the alarm, so it lies in the
// later half of those times.
func TestProbablyCool(t *testing.T) {
	for _, tt := range []struct {
		name     string
		told     *teller
		from, to string
	}{
		{"pints", begun(Item{Count: 8, Container: jar(0.5)}).say("12:00", ana, AtZero{}).say("12:00", ana, OutOfPot{}), "16:00", "18:30"},
		{"quarts taken out at once", begun().say("12:00", ana, AtZero{}).say("12:00", ana, OutOfPot{}), "18:30", "21:00"},
		{"quarts in the pot", begun().say("12:00", ana, AtZero{}), "22:00", "2 04:00"},
		{"after six hours", begun().say("12:00", ana, AtZero{}).say("18:00", ana, OutOfPot{}), "20:00", "23:30"},
		{"the largest rules", begun(Item{Count: 4, Container: jar(1)}, Item{Count: 1, Container: bag(5)}).say("12:00", ana, AtZero{}).say("12:00", ana, OutOfPot{}), "2 02:00", "2 06:00"},
	} {
		r := tt.told.run(t, pot())
		if got, ok := r.ProbablyCool(); !ok || got.Before(clock(tt.from)) || got.After(clock(tt.to)) {
			t.Errorf("%s: %v %v, want between %s and %s", tt.name, got, ok, tt.from, tt.to)
		}
	}
}

// The budget is vent 0.4 + load 0.3 + 1 l left + 0.6 l an hour (common practice): 3
// l last 130 min.
func TestWaterOfARun(t *testing.T) {
	tests := []struct {
		name  string
		told  *teller
		lasts string
		short time.Duration
	}{
		{"as planned", begun().say("10:00", ana, AtPressure{}), "12:10", 0},
		{"two litres", begun().say("09:10", ana, WaterIn{Water: 2}).say("10:00", ana, AtPressure{}), "10:30", time.Hour},
		{"two and one", begun().say("09:10", ana, WaterIn{Water: 2}).say("09:12", ana, WaterIn{Water: 1, Added: true}).say("10:00", ana, AtPressure{}), "12:10", 0},
		{"a long vent: 20 min more at 2.4 l/h cost 80", begun().say("09:20", ana, Steam{}).say("09:50", ana, VentClosed{}).say("10:00", ana, AtPressure{}), "10:50", 40 * time.Minute},
		{"a restart", begun().say("10:00", ana, AtPressure{}).say("11:00", ana, PressureLost{}).say("11:10", ana, PressureBack{}), "12:10", 30 * time.Minute},
		{
			"opened, topped up to 3 l and vented again",
			begun().say("10:00", ana, AtPressure{}).say("11:00", ana, PressureLost{}).say("11:30", ana, WaterIn{Water: 3}).
				say("11:40", ana, Steam{}).say("11:50", ana, VentClosed{}).say("12:00", ana, PressureBack{}), "14:10", 0,
		},
		{
			"topped up to 2 l and not vented: 0.7 l to boil off",
			begun().say("10:00", ana, AtPressure{}).say("11:00", ana, PressureLost{}).say("11:30", ana, WaterIn{Water: 2}).
				say("12:00", ana, PressureBack{}), "13:10", 20 * time.Minute,
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := tt.told.run(t, pot())
			lasts, ok := r.WaterLasts()
			if d := lasts.Sub(clock(tt.lasts)); !ok || d.Abs() > time.Second {
				t.Errorf("lasts until %v, want %s", lasts, tt.lasts)
			}
			if d := r.WaterShort() - tt.short; d.Abs() > time.Second {
				t.Errorf("short by %v, want %v", r.WaterShort(), tt.short)
			}
		})
	}
}

// What a run teaches of its cooker. 4 l in, 0.7 l for vent and load, 1.5 l left: 1.8
// l in two hours.
func TestLearnt(t *testing.T) {
	in := begun().say("09:10", ana, WaterIn{Water: 4}).say("10:00", ana, AtPressure{}).say("12:00", ana, HeatOff{})
	plus := func(hhmm string, e Entry) *teller {
		l := &teller{records: slices.Clone(in.records)}
		return l.say(hhmm, ana, e)
	}
	tests := []struct {
		name    string
		kitchen Settings
		told    *teller
		boil    float64
		fall    time.Duration
	}{
		{"water left", pot(), plus("12:46", AtZero{}).say("12:50", ana, WaterLeft{1.5}), 0.9, 0},
		{"half of the way from what is known", pot(CookerIs{Name: "big pot", BoilOff: 0.5}), plus("12:46", AtZero{}).say("12:50", ana, WaterLeft{1.5}), 0.7, 0},
		{"nobody said what went in", pot(), begun().say("10:00", ana, AtPressure{}).say("12:00", ana, HeatOff{}).say("12:46", ana, AtZero{}).say("12:50", ana, WaterLeft{1.5}), 0, 0},
		{"more left than can be", pot(), plus("12:46", AtZero{}).say("12:50", ana, WaterLeft{3.9}), 0, 0},
		{"it fell sooner", pot(), plus("12:35", AtZero{}), 0, 40 * time.Minute},
		{"looked at after the ping: no lesson", pot(), plus("13:30", AtZero{}), 0, 0},
		{"not yet at the ping", pot(), plus("12:46", PingAnswered{"run/12/zero/1", AnswerNotYet}).say("13:10", ana, AtZero{}), 0, 70 * time.Minute},
		{"not yet, said too soon", pot(), plus("12:20", PingAnswered{"run/12/zero/1", AnswerNotYet}).say("12:35", ana, AtZero{}), 0, 40 * time.Minute},
		{"zero after two minutes is none", pot(), plus("12:02", AtZero{}), 0, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, ok := tt.told.run(t, tt.kitchen).Learnt()
			if math.Abs(float64(got.BoilOff)-tt.boil) > 1e-9 || got.Fall != tt.fall || ok != (tt.boil > 0 || tt.fall > 0) {
				t.Errorf("boil-off %v, fall %v (%v); want %v, %v", got.BoilOff, got.Fall, ok, tt.boil, tt.fall)
			}
		})
	}
	s := pot(CookerIs{Name: "big pot", Fall: 70 * time.Minute})
	want := "ping 13:10 check zero to 1, guard: run/12/zero/1, 13:30, 13:50, 14:05 everybody"
	for _, then := range []Settings{s, pot()} {
		if got := due(in.run(t, then).Wants(s)); got != want {
			t.Errorf("a fall known now: %s, want %s", got, want)
		}
	}
	quarts := order(Item{Count: 7, Container: jar(1)})
	if later := mustWork(t, s, quarts).Takes() - mustWork(t, pot(), quarts).Takes(); later != 25*time.Minute {
		t.Errorf("a plan takes %v longer for it, want 25 min", later)
	}
}

// Pots over 25 l and bags of 5 lb and more take 90 min to fall, the rest 45 (design:
// better late than early).
func TestZeroIsCheckedLate(t *testing.T) {
	for _, tt := range []struct {
		name    string
		kitchen Settings
		item    Item
		want    string
	}{
		{"quarts", pot(), Item{Count: 7, Container: jar(1)}, "12:45"},
		{"quarts in 40 l", pot(CookerIs{Name: "big pot", Pot: 40}), Item{Count: 7, Container: jar(1)}, "13:30"},
		{"5 lb bags", pot(), Item{Count: 3, Container: bag(5)}, "13:30"},
		{"3 lb bags", pot(), Item{Count: 3, Container: bag(3)}, "12:45"},
	} {
		r := begun(tt.item).say("10:00", ana, AtPressure{}).say("12:00", ana, HeatOff{}).run(t, tt.kitchen)
		if p := r.Wants(tt.kitchen)[0]; p.Kind != CheckZero || hm(p.Due) != tt.want {
			t.Errorf("%s: %v at %s, want %s", tt.name, p.Kind, hm(p.Due), tt.want)
		}
	}
}

// Rye soaks 12 h, maize 24; simmering is 45 min from dry and 15 when soaked (common
// practice); a pot that simmers is asked after again, and then everybody. Wet grain
// keeps 12 h more, 4 h in a warm room.
func TestPreparation(t *testing.T) {
	maize := begun(Item{Count: 7, Container: jar(1), Grain: grain.Maize}).say("09:00", jo, PrepBegun{Soaking})
	tests := []struct {
		name    string
		kitchen Settings
		told    *teller
		want    string
	}{
		{"soaking rye", pot(), begun().say("09:00", jo, PrepBegun{Soaking}), "21:00 prep, 3.3. 09:00 wet"},
		{"soaking maize", pot(), maize, "3.3. 09:00 prep, 3.3. 21:00 wet"},
		{"in a warm room", pot(RoomTemperature{27}), begun().say("09:00", jo, PrepBegun{Soaking}), "21:00 prep, 3.3. 01:00 wet"},
		{"simmering from dry", pot(), begun().say("09:00", jo, PrepBegun{Simmering}), "09:45 prep, 09:55 prep, 10:15, 10:35, 11:15, 12:35, 14:35, 16:35, 18:35, 20:35, 21:45 wet"},
		{
			"simmering when soaked", pot(), begun().say("09:00", jo, PrepBegun{Soaking}).say("20:00", jo, PrepBegun{Simmering}),
			"20:15 prep, 20:25 prep, 20:45, 21:05, 21:45, 23:05, 3.3. 01:05, 3.3. 03:05, 3.3. 05:05, 3.3. 07:05, 3.3. 08:15 wet",
		},
		{"drained, and standing", pot(), begun().say("09:00", jo, PrepBegun{Draining}).say("09:30", jo, PrepEnded{}), "21:30 wet"},
		{"not yet: once", pot(), begun().say("09:00", jo, PrepBegun{Draining}).say("09:31", jo, PingAnswered{"run/12/prep/1", AnswerNotYet}).
			say("10:05", jo, PingAnswered{"run/12/prep/1", AnswerNotYet}), "10:01 prep, 21:30 wet"},
		{"on the stove", pot(), begun().say("09:00", jo, PrepBegun{Draining}).say("09:40", jo, HeatOn{}), "10:20, 10:50, 11:50, 12:50, 14:50, 16:50, 18:50, 20:50"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			for _, p := range tt.told.run(t, tt.kitchen).Wants(tt.kitchen) {
				what := map[PingKind]string{PrepOver: " prep", WetGrainStands: " wet"}[p.Kind]
				got = append(got, hm(p.Due)+what)
				if p.To != jo && p.Kind != SteamYet && p.Kind != WhoIsThere {
					t.Errorf("%v goes to %d, not to who prepares", p.Kind, p.To)
				}
			}
			if s := strings.Join(got, ", "); s != tt.want {
				t.Errorf("pings %q, want %q", s, tt.want)
			}
		})
	}
}
