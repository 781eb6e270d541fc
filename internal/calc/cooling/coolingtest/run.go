package coolingtest

import (
	"math"
	"time"

	"ryebell/internal/calc/unit"
)

// Never is when a container is lifted out that stays in the pot.
const Never = time.Duration(math.MaxInt64)

// The curve's grid of time; how long a curve goes on after its core has reached
// the limit; and where it ends in any case.
const (
	Step    = 2 * time.Minute
	beyond  = 2 * time.Hour
	longest = 96 * time.Hour
)

// Cooling is one container's way from zero pressure to the room's temperature,
// as drawn. Run solves it.
type Cooling struct {
	Container Container
	Body      Body
	Start     unit.Celsius // of all the grain, at zero
	Room      Room
	Pot       Pot
	LiftedOut time.Duration // after zero; 0 at once, or Never
	Close     bool          // neighbours touch it, or nearly
	Warmed    float64       // share of the skin's excess by which neighbours warm the air
	Draught   Draught
	Slowness  float64 // 1 as drawn; 1.4: everything takes 1.4 times as long

	Fold      float64      // how far towards the core a probe between two containers reads
	Probe     unit.Kelvins // error of this kitchen's probe, the same at each reading
	Wall      unit.Kelvins // error of its room thermometer
	LimitTold unit.Celsius // 27 °C, or 3 over the room as told if that is more, never over 30
	RoomTold  unit.Celsius // what somebody says of the room at zero
}

// Run solves the cooling on the coarse grid, until two hours after the core has
// come down to limit, or for 96 hours.
func (c Cooling) Run(limit unit.Celsius) Curve { return c.run(limit, 1) }

// run solves on a grid that is finer by a whole factor.
func (c Cooling) run(limit unit.Celsius, fineness int) Curve {
	s := c.begin(fineness)
	curve := Curve{cooling: c}
	end := longest
	for now := time.Duration(0); ; now += Step {
		curve.note(s, c.Room.At(now))
		if curve.Core[len(curve.Core)-1] <= limit {
			end = min(end, now+beyond)
			limit = unit.Celsius(math.Inf(-1))
		}
		if now >= end {
			return curve
		}
		s.advance(now)
	}
}

// progress is a cooling under way: the body, and the pot while it is in it.
type progress struct {
	*solid
	cooling Cooling
	steps   int     // in one Step
	dt      float64 // s
	pot     float64 // °C
	lifted  bool
	lost    float64 // J given to the room by body and pot
}

func (c Cooling) begin(fineness int) *progress {
	b := c.Body
	b.HeatCapacity *= c.Slowness
	b.Glass *= c.Slowness
	c.Pot.Heat *= c.Slowness
	p := &progress{solid: newSolid(b, float64(c.Start), fineness), cooling: c, pot: float64(c.Start)}
	// Nine tenths of the longest stable step, and short enough for the error in
	// time to fall as fast as that in space.
	hottest := max(float64(c.Start), 105)
	stable := 0.9 * p.longestStep(b.conductivity(hottest), b.HeatCapacity)
	short := Step.Seconds() / float64(fineness*fineness)
	p.steps = int(math.Ceil(Step.Seconds() / min(stable, short)))
	p.dt = Step.Seconds() / float64(p.steps)
	p.standIn(b)
	return p
}

// standIn puts the body into the pot.
func (p *progress) standIn(b Body) {
	pot := p.cooling.Pot
	p.dress(b.Side.inPot(pot.Crowd, pot.Inside), b.Back.inPot(pot.Crowd, pot.Inside),
		b.Top.inPot(1, pot.Inside), b.Bottom.inPot(1, pot.Inside))
}

// advance goes one Step on from now.
func (p *progress) advance(now time.Duration) {
	c := p.cooling
	if !p.lifted && now >= c.LiftedOut {
		p.lifted = true
		b := c.Body
		p.dress(b.Side, b.Back, b.Top, b.Bottom)
	}
	room := float64(c.Room.At(now + Step/2))
	draught := c.Draught.at(now)
	for range p.steps {
		if p.lifted {
			air := room + c.Warmed*(p.side.mean()-room)
			p.lost += p.dt * p.step(p.dt, air, draught)
			continue
		}
		each := p.step(p.dt, p.pot, 0)
		lost := 0.0
		p.pot, lost = c.Pot.step(p.pot, p.dt, room, each)
		p.lost += p.dt * lost
	}
}
