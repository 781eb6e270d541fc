package kitchen

import (
	"errors"
	"testing"

	"ryebell/internal/calc/unit"
)

// The limit is common practice, no source: 27 °C, or 3 °C over the room, never over 30
// °C; the collective's own and a culture's count where they are lower.
func TestCoolLimit(t *testing.T) {
	own := func(limit unit.Celsius, culture string) Change { return CoolLimitIs{limit, culture} }
	for _, tt := range []struct {
		name    string
		said    []Change
		culture string
		want    unit.Celsius
	}{
		{"nothing said", nil, "", 27},
		{"a warm room", []Change{RoomTemperature{26}}, "", 29},
		{"a hot room", []Change{RoomTemperature{34}}, "", 30},
		{"own, lower", []Change{own(25, "")}, "", 25},
		{"own, higher", []Change{own(29, "")}, "", 27},
		{"own, higher, in a warm room", []Change{RoomTemperature{28}, own(29, "")}, "", 29},
		{"the newest of its own", []Change{own(22, ""), own(25, "")}, "", 25},
		{"a culture's", []Change{own(25, ""), own(23, "enoki")}, "Enoki", 23},
		{"a culture's, higher", []Change{own(25, ""), own(26, "enoki")}, "enoki", 25},
		{"another culture", []Change{own(25, ""), own(23, "enoki")}, "shiitake", 25},
		{"no culture", []Change{own(23, "enoki")}, "", 27},
	} {
		if got := (Settings{}).With(tt.said...).CoolLimitFor(tt.culture); got != tt.want {
			t.Errorf("%s: limit for %q = %v, want %v", tt.name, tt.culture, got, tt.want)
		}
	}
}

func TestCoolLimitTaken(t *testing.T) {
	for limit, ok := range map[unit.Celsius]bool{9: false, 10: true, 25: true, 30: true, 30.1: false, 45: false} {
		err := Settings{}.Check(CoolLimitIs{Temp: limit, Culture: "enoki"})
		if (err == nil) != ok {
			t.Errorf("Check(limit %v) = %v", limit, err)
		}
		if kills := errors.As(err, new(KillsCulture)); kills != (limit > 30) {
			t.Errorf("Check(limit %v) = %v, want that it kills: %v", limit, err, limit > 30)
		}
	}
}

func TestKnowsCulture(t *testing.T) {
	s := Settings{CoolLimits: []CoolLimitIs{{Temp: 25}, {Culture: "Enoki", Temp: 22}}}
	for name, want := range map[string]bool{"enoki": true, "shiitake": false, "": false} {
		if got := s.KnowsCulture(name); got != want {
			t.Errorf("KnowsCulture(%q) = %v", name, got)
		}
	}
}
