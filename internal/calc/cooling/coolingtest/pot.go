package coolingtest

// Pot is the cooker while it is closed, after zero: metal and water at one
// temperature, which gives heat to the room and takes it from what stands inside.
type Pot struct {
	Bodies int     // equal ones inside
	Heat   float64 // J/K of metal and water
	Area   float64 // m² towards the room
	Outer  Face    // how that area loses heat
	Inside float64 // W/(m² K) between pot and containers
	Crowd  float64 // share of the containers' sides that takes part
}

// step is the pot's temperature after dt seconds in which each body gave it some
// watts. The second value is what the room got, in watts.
func (p Pot) step(t, dt, room, each float64) (after, lost float64) {
	lost = p.Area * p.Outer.coefficient(t, room, 0) * (t - room)
	return t + dt*(float64(p.Bodies)*each-lost)/p.Heat, lost
}
