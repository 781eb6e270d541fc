package kitchen

import (
	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/lethality"
	"ryebell/internal/calc/steam"
)

// Heated is what conduction alone brought to the middle of the slowest container, by
// the gauge: a lower bound, for steam creeps in as well, and never a pass mark. It
// starts at the room's warmth when the flame was lit, or when it is likely to have
// been. False for a run that nobody saw at pressure.
func (r Run) Heated() (cooling.Heat, bool) {
	body, err := r.slowest().body()
	points := r.steamOver()
	if err != nil || len(points) < 2 {
		return cooling.Heat{}, false
	}
	heat, err := cooling.Heated(body, r.kitchen.RoomTemp(), points)
	return heat, err == nil
}

// steamOver is how hot the steam around the load was over time: from the boil on, to
// when the heat went off. What came after that is not counted.
func (r Run) steamOver() []lethality.TemperatureReading {
	trace := r.trace(r.Newest)
	boiling, err := steam.BoilingPoint(r.kitchen.Height())
	if len(trace) == 0 || err != nil {
		return nil
	}
	before := max(0, trace[0].After-r.course().ToPressure-ventFor)
	points := []lethality.TemperatureReading{{After: before, Steam: boiling}, {After: max(before, trace[0].After-r.course().ToPressure), Steam: boiling}}
	for _, p := range trace {
		t, err := steam.Temperature(p.Gauge, r.kitchen.Height())
		if err != nil {
			return nil
		}
		points = append(points, lethality.TemperatureReading{After: p.After, Steam: t})
	}
	return points
}
