package coolingtest

import (
	"math"
	"time"

	"ryebell/internal/calc/unit"
)

// Room is the air around the container over the time since zero.
type Room struct {
	Day       unit.Celsius  // from 10:00 to 22:00
	NightDrop unit.Kelvins  // how far it falls until 06:00
	Warmth    unit.Kelvins  // over Day at zero, from cooking
	Fades     time.Duration // the warmth's time constant; 0: there is none
	ZeroAt    time.Duration // time of day of zero, since midnight
}

// At is the room's temperature a time after zero.
func (r Room) At(after time.Duration) unit.Celsius {
	t := r.Day - unit.Celsius(float64(r.NightDrop)*night(r.ZeroAt+after))
	if r.Fades > 0 {
		t += unit.Celsius(float64(r.Warmth) * math.Exp(-after.Seconds()/r.Fades.Seconds()))
	}
	return t
}

// night is 0 by day, rises from 22:00 to 1 at 06:00, and falls back until 10:00.
func night(clock time.Duration) float64 {
	h := math.Mod(clock.Hours()+2, 24) // hours since 22:00
	switch {
	case h < 8:
		return h / 8
	case h < 12:
		return (12 - h) / 4
	}
	return 0
}

// Draught is air that moves for a while and adds to the coefficient of faces in
// air. The zero value is still air.
type Draught struct {
	From, For time.Duration // after zero
	Adds      float64       // W/(m² K)
}

func (d Draught) at(after time.Duration) float64 {
	if after >= d.From && after < d.From+d.For {
		return d.Adds
	}
	return 0
}
