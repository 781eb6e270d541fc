package kitchen

import (
	"math"
	"testing"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/unit"
)

// bags is a run of three bags that is at zero at noon and out of the pot at once.
func bags() *teller {
	return begun(Item{Count: 3, Container: bag(5)}).say("10:00", ana, AtPressure{}).say("11:35", ana, HeatOff{}).
		say("12:00", ana, AtZero{}).say("12:00", ana, OutOfPot{})
}

func forecastOf(t *testing.T, l *teller, s Settings) Cooling {
	t.Helper()
	c, ok := l.run(t, s).Cooling()
	if !ok {
		t.Fatalf("no forecast of a run that is %v", l.run(t, s).Stage)
	}
	return c
}

// What moves a forecast, and which way.
func TestForecastMoves(t *testing.T) {
	plain := forecastOf(t, bags(), pot())
	in := begun(Item{Count: 3, Container: bag(5)}).say("10:00", ana, AtPressure{}).say("11:35", ana, HeatOff{}).say("12:00", ana, AtZero{})
	for _, tt := range []struct {
		name  string
		got   Cooling
		later bool
	}{
		{"left in the pot", forecastOf(t, in, pot()), true},
		{"a warm room", forecastOf(t, bags(), pot(RoomTemperature{Temp: 24})), true},
		{"a cold room", forecastOf(t, bags(), pot(RoomTemperature{Temp: 15})), false},
		{"a lower limit", forecastOf(t, bags(), pot(CoolLimitIs{Temp: 24})), true},
		{"a kitchen at 2000 m boils cooler", forecastOf(t, bags(), pot(Elevation{Height: 2000})), false},
		{"a jar beside", forecastOf(t, begun(Item{Count: 2, Container: jar(1)}, Item{Count: 1, Container: bag(6)}).say("12:00", ana, AtZero{}).say("12:00", ana, OutOfPot{}), pot()), true},
		{"read warm", forecastOf(t, bags().say("16:00", ana, TempRead{Temp: 55}), pot()), true},
		{"read cool", forecastOf(t, bags().say("16:00", ana, TempRead{Temp: 30}), pot()), false},
	} {
		if tt.got.Likely.After(plain.Likely) != tt.later || tt.got.Likely.Equal(plain.Likely) {
			t.Errorf("%s: likely %s, without it %s", tt.name, hm(tt.got.Likely), hm(plain.Likely))
		}
	}
}

// A range is in order, and a reading narrows it.
func TestForecastRange(t *testing.T) {
	blind := forecastOf(t, bags(), pot())
	read := forecastOf(t, bags().say("17:00", ana, TempRead{Temp: 31}), pot())
	for _, c := range []Cooling{blind, read} {
		if !c.From.Before(c.Likely) || !c.Likely.Before(c.Alarm) || !c.Alarm.Before(c.To) || !c.Alarm.Before(c.Surely) {
			t.Errorf("out of order: %s, %s, %s, %s, %s", hm(c.From), hm(c.Likely), hm(c.Alarm), hm(c.To), hm(c.Surely))
		}
	}
	if read.To.Sub(read.From) >= blind.To.Sub(blind.From) {
		t.Errorf("after a reading %v wide, before it %v", read.To.Sub(read.From), blind.To.Sub(blind.From))
	}
}

// Readings that can't be are kept, named, and change nothing.
func TestOddReadings(t *testing.T) {
	fahrenheit := unit.Fahrenheit(118)
	for _, tt := range []struct {
		name string
		told *teller
		why  cooling.Oddity
		was  *unit.Celsius
	}{
		{"118 °F typed as °C", bags().say("15:00", ana, TempRead{Temp: 118}), cooling.HotterThanSteam, &fahrenheit},
		{"70 °C after a day", bags().say("2 12:00", ana, TempRead{Temp: 70}), cooling.TooHot, nil},
		{"ten minutes after zero", bags().say("12:20", ana, TempRead{Temp: 25, Where: Middle}), cooling.TooCold, nil},
	} {
		c := forecastOf(t, tt.told, pot())
		if len(c.Odd) != 1 || c.Odd[0].Why != tt.why {
			t.Errorf("%s: odd %+v, want %v", tt.name, c.Odd, tt.why)
			continue
		}
		if f := c.Odd[0].Fahrenheit; tt.was != nil && (f == nil || math.Abs(float64(*f-*tt.was)) > 1e-9) {
			t.Errorf("%s: would be %v, want %v", tt.name, f, *tt.was)
		}
		if plain := forecastOf(t, bags(), pot()); !c.Likely.Equal(plain.Likely) {
			t.Errorf("%s: moved to %s from %s", tt.name, hm(c.Likely), hm(plain.Likely))
		}
	}
}

// Where nobody saw zero it is put a usual fall after the heat went off.
func TestForecastUnseenZero(t *testing.T) {
	held := func() *teller { return begun().say("10:00", ana, AtPressure{}).say("11:35", ana, HeatOff{}) }
	c := forecastOf(t, held().say("18:00", ana, TempRead{Temp: 34}), pot())
	if want := clock("12:20"); c.Seen || !c.Zero.Equal(want) {
		t.Errorf("zero %s, seen %v, want %s", hm(c.Zero), c.Seen, hm(want))
	}
}

// The times of runs measured to the end teach those of the same pot and size, and no
// others.
func TestForecastLearns(t *testing.T) {
	past := func(no RunNo, cooker string, c Container) Cooled {
		return Cooled{Run: no, Cooker: cooker, Container: c, Past: cooling.Past{Slower: 0.4, Spread: 0.1}}
	}
	five := func(cooker string, c Container) []Cooled {
		var all []Cooled
		for no := range RunNo(5) {
			all = append(all, past(no+1, cooker, c))
		}
		return all
	}
	run := bags().run(t, pot())
	plain, _ := run.Knowing(pot(), nil).Cooling()
	for _, tt := range []struct {
		name string
		past []Cooled
		runs int
	}{
		{"the same pot and bags", five(run.Cooker, bag(5)), 5},
		{"bags of 6 lb", five(run.Cooker, bag(6)), 5},
		{"bags of 10 lb", five(run.Cooker, bag(10)), 0},
		{"jars", five(run.Cooker, jar(1)), 0},
		{"another pot", five("small pot", bag(5)), 0},
		{"later runs", []Cooled{past(13, run.Cooker, bag(5))}, 0},
	} {
		c, _ := run.Knowing(pot(), tt.past).Cooling()
		if c.Prior.Runs != tt.runs {
			t.Errorf("%s: learnt from %d, want %d", tt.name, c.Prior.Runs, tt.runs)
		}
		if later := c.Likely.After(plain.Likely); later != (tt.runs > 0) {
			t.Errorf("%s: likely %s, unlearnt %s", tt.name, hm(c.Likely), hm(plain.Likely))
		}
	}
}

// A run that was measured until it was cool shows how it cooled and whether its ranges
// held; one that wasn't shows nothing.
func TestCooled(t *testing.T) {
	measured := func(first, second unit.Celsius) *teller {
		return bags().say("16:00", ana, TempRead{Temp: first}).say("20:00", ana, TempRead{Temp: second}).
			say("2 06:00", ana, TempRead{Temp: 25, Where: Middle})
	}
	usual, ok := measured(36, 25.5).run(t, pot()).Cooled()
	if !ok || usual.Blind != RangeHeld || usual.Measured != RangeHeld || math.Abs(usual.Past.Slower) > 0.25 {
		t.Errorf("%v: %+v", ok, usual)
	}
	slow, ok := bags().say("16:00", ana, TempRead{Temp: 62}).say("2 00:00", ana, TempRead{Temp: 42}).say("2 08:00", ana, TempRead{Temp: 31}).
		say("2 16:00", ana, TempRead{Temp: 26, Where: Middle}).run(t, pot()).Cooled()
	if !ok || slow.Blind != RangeMissed || slow.Past.Slower < usual.Past.Slower+0.2 {
		t.Errorf("a slow one: %v, %+v, the usual %+v", ok, slow, usual)
	}
	if c, ok := bags().say("16:00", ana, TempRead{Temp: 42}).run(t, pot()).Cooled(); ok {
		t.Errorf("not cool yet: %+v", c)
	}
}

// What conduction alone brings to the middle is less than the steam around it, the less
// the larger the container; published sums stand in the tests of package
// cooling.
func TestHeated(t *testing.T) {
	heat := func(it Item) unit.Celsius {
		h, ok := begun(it).say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).run(t, pot()).Heated()
		if !ok {
			t.Fatal("nothing said")
		}
		return h.Hottest
	}
	pint, quart, big := heat(Item{Count: 7, Container: jar(0.5)}), heat(Item{Count: 7, Container: jar(1)}), heat(Item{Count: 3, Container: bag(5)})
	if !(121.1 > pint && pint > quart && quart > big && big > 40) {
		t.Errorf("pint %v, quart %v, bag %v", pint, quart, big)
	}
	if _, ok := begun().run(t, pot()).Heated(); ok {
		t.Error("of a run that is not lit")
	}
}

// A run that was only measured once it was cool teaches nothing, and tells nothing of
// its ranges: that its middle was cool by then is known of any kitchen but a slow one.
func TestCooledMeasuredLate(t *testing.T) {
	late := bags().say("2 06:00", ana, TempRead{Temp: 22}).say("2 08:00", ana, TempRead{Temp: 21.5}).say("2 10:00", ana, TempRead{Temp: 21})
	r := late.run(t, pot())
	if c, ok := r.Cooled(); r.Stage != StageCool || ok {
		t.Errorf("%v: taught %+v", r.Stage, c)
	}
}

// A load that may never get cool is measured again half a day after somebody last did,
// whatever else is said of it meanwhile.
func TestMeasureWhatStaysWarm(t *testing.T) {
	warm := func() *teller { return bags().say("2 04:00", ana, TempRead{Temp: 33}) }
	c := forecastOf(t, warm(), pot())
	if !c.Never() || !c.Alarm.Equal(clock("2 16:00")) {
		t.Errorf("never %v, alarm %s", c.Never(), hm(c.Alarm))
	}
	if later := forecastOf(t, warm().say("2 09:00", jo, TookOver{}), pot()); !later.Alarm.Equal(c.Alarm) {
		t.Errorf("a hand-over moves the alarm to %s", hm(later.Alarm))
	}
}
