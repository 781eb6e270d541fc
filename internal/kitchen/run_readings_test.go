package kitchen

import (
	"testing"
	"time"

	"ryebell/internal/calc/unit"
)

// A reading of a small container says nothing of the large ones beside it, not even
// one from its middle.
func TestSmallOneSettlesNothing(t *testing.T) {
	load := func(e TempRead) Run {
		return begun(Item{Count: 2, Container: bag(5)}, Item{Count: 2, Container: jar(0.5)}).say("10:00", ana, AtPressure{}).say("11:35", ana, HeatOff{}).
			say("12:00", ana, AtZero{}).say("12:00", ana, OutOfPot{}).say("18:00", ana, e).run(t, pot())
	}
	for _, tt := range []struct {
		name string
		read TempRead
		want Stage
	}{
		{"the middle of a jar", TempRead{Temp: 25, Where: Middle, Units: []UnitNo{3}}, StageCooling},
		{"the middle of a bag", TempRead{Temp: 25, Where: Middle, Units: []UnitNo{1}}, StageCool},
		{"the middle of a jar and a bag", TempRead{Temp: 25, Where: Middle, Units: []UnitNo{1, 3}}, StageCool},
		{"a middle, unsaid of which", TempRead{Temp: 25, Where: Middle}, StageCool},
	} {
		if got := load(tt.read).Stage; got != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
	if again, asks := load(TempRead{Temp: 25, Units: []UnitNo{3}}).MeasureAgain(); asks {
		t.Errorf("a jar's skin asks for another reading at %s", hm(again))
	}
}

// A reading that can't be changes nothing: what was found cool before it still counts,
// and what is said in its place.
func TestImpossibleReadingChangesNothing(t *testing.T) {
	found := bags().say("2 06:00", ana, TempRead{Temp: 22})
	want, _ := found.run(t, pot()).MeasureAgain()
	if got, asks := found.say("2 06:01", ana, TempRead{Temp: 95}).run(t, pot()).MeasureAgain(); !asks || got.Before(want) {
		t.Errorf("measured again %v, at %s; without it at %s", asks, hm(got), hm(want))
	}
	mended := bags().say("2 12:00", ana, TempRead{Temp: 95, Where: Middle}).say("2 12:00", ana, TempRead{Temp: 21, Where: Middle}).run(t, pot())
	if mended.Stage != StageCool {
		t.Errorf("said anew it is %v", mended.Stage)
	}
}

// However many readings there are, a forecast is made from a few: the first and the
// last.
func TestFewReadingsCount(t *testing.T) {
	l := bags()
	for i := range 60 {
		at := clock("16:00").Add(time.Duration(i) * time.Minute)
		l.records = append(l.records, Record{No: EntryNo(100 + i), By: ana, At: at, Written: at, Entry: TempRead{Temp: 42}})
	}
	c := forecastOf(t, l, pot())
	if last, ok := c.Believed(l.run(t, pot()).Readings); c.Counted != firstCount+lastCount || !ok || last.No != 159 {
		t.Errorf("made from %d, the last of them %d", c.Counted, last.No)
	}
}

// Who puts a culture on goes by what was just read, if that was within the limit.
func TestReadWithin(t *testing.T) {
	down := func() *teller {
		return begun().say("09:10", ana, HeatOn{}).say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:15", ana, AtZero{})
	}
	for _, tt := range []struct {
		name string
		l    *teller
		at   string
		want unit.Celsius
	}{
		{"none", down(), "20:00", 0},
		{"ten minutes before", down().say("20:00", ana, TempRead{Temp: 24}), "20:10", 24},
		{"an hour before", down().say("20:00", ana, TempRead{Temp: 24}), "21:00", 24},
		{"more than an hour before", down().say("20:00", ana, TempRead{Temp: 24}), "21:01", 0},
		{"over the limit", down().say("20:00", ana, TempRead{Temp: 28}), "20:10", 0},
		{"over the limit since", down().say("20:00", ana, TempRead{Temp: 26}).say("20:40", ana, TempRead{Temp: 29}), "20:50", 0},
		{"later", down().say("20:00", ana, TempRead{Temp: 26}), "19:50", 0},
		{"one that can't be", down().say("13:00", ana, TempRead{Temp: 20}), "13:10", 0},
	} {
		got, ok := tt.l.run(t, pot()).ReadWithin(clock(tt.at))
		if ok != (tt.want != 0) || ok && got.Temp != tt.want {
			t.Errorf("%s: %v %v, want %v", tt.name, got.Temp, ok, tt.want)
		}
	}
}
