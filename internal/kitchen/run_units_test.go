package kitchen

import (
	"testing"

	"ryebell/internal/calc/unit"
)

// One unit at the limit doesn't make a load cool of which another was over it just now.
func TestCoolOfUnits(t *testing.T) {
	at := func(temp unit.Celsius, units ...UnitNo) TempRead {
		return TempRead{Temp: temp, Where: Middle, Units: units}
	}
	type read struct {
		when string
		e    TempRead
	}
	for _, tt := range []struct {
		name  string
		reads []read
		want  Stage
	}{
		{"one cool", []read{{"20:00", at(26, 1)}}, StageCool},
		{"the other warm", []read{{"20:00", at(26, 1)}, {"20:00", at(43, 2)}}, StageCooling},
		{"the other warm, said first", []read{{"20:00", at(43, 2)}, {"20:00", at(26, 1)}}, StageCooling},
		{"both unnamed, in one breath", []read{{"20:00", at(43)}, {"20:00", at(26)}}, StageCooling},
		{"the other warm a little before", []read{{"19:45", at(43, 2)}, {"20:00", at(26, 1)}}, StageCooling},
		{"the same one warm before", []read{{"19:45", at(28, 1)}, {"20:00", at(27, 1)}}, StageCool},
		{"the other warm long before", []read{{"15:00", at(43, 2)}, {"20:00", at(26, 1)}}, StageCool},
		{"both cool", []read{{"20:00", at(26, 1)}, {"20:00", at(25, 2)}}, StageCool},
	} {
		l := begun().say("09:10", ana, HeatOn{}).say("10:00", ana, AtPressure{}).say("11:30", ana, HeatOff{}).say("12:15", ana, AtZero{})
		for _, r := range tt.reads {
			l.say(r.when, ana, r.e)
		}
		if got := l.run(t, pot()).Stage; got != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}
