package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/unit"
)

// Cooling is what is believed of a run that cools, of the middle of its slowest
// container.
type Cooling struct {
	// Container is the one asked about, the slowest of the load unless said.
	Container Container
	// Zero is when it came to zero pressure; Seen is false where that was worked out
	// from the heat going off.
	Zero time.Time
	Seen bool
	// Likely is when it is as likely as not at the limit, or was; it is between From
	// and To four times of five. Alarm is when four of five would be, Surely when
	// nineteen of twenty would.
	Likely, From, To, Alarm, Surely time.Time
	// Limit is what it is measured against, Room what the room is believed to be,
	// and RoomTold whether anybody said.
	Limit    unit.Celsius
	Room     cooling.Warmth
	RoomTold bool
	// Prior is what was believed before the first reading, from so many runs of the
	// same cooker and size; Scale what the readings left of it.
	Prior, Scale cooling.Prior
	// Odd lists the readings that can't be, or hardly; they don't count.
	Odd []OddReading
	// Counted is how many readings the forecast was made from, without the odd ones.
	Counted int
	// Boiling is where it started.
	Boiling unit.Celsius

	forecast *cooling.Forecast
}

// OddReading is a reading that can't be, or hardly, and what was to be expected.
type OddReading struct {
	Reading Reading
	Why     cooling.Oddity
	// Fahrenheit is what the number would be if it was meant in °F, where that would
	// be likely; else nil.
	Fahrenheit *unit.Celsius
	Lo, Hi     unit.Celsius
}

// Believed is the newest reading that counts; false when there is none.
func (c Cooling) Believed(all []Reading) (Reading, bool) {
	for _, r := range slices.Backward(all) {
		if !slices.ContainsFunc(c.Odd, func(o OddReading) bool { return o.Reading.No == r.No }) {
			return r, true
		}
	}
	return Reading{}, false
}

// At is how warm a place is at a time, was or will be.
func (c Cooling) At(p cooling.Place, at time.Time) cooling.Warmth {
	return c.forecast.At(p, at.Sub(c.Zero))
}

// Middle is how warm the middle is at a time, was or will be.
func (c Cooling) Middle(at time.Time) cooling.Warmth { return c.At(cooling.Core, at) }

// Chance is that of the middle being at or under the limit at a time.
func (c Cooling) Chance(at time.Time) unit.Fraction { return c.forecast.Chance(at.Sub(c.Zero)) }

// Never reports whether it may not get to the limit at all, in a room as warm as
// this one may be.
func (c Cooling) Never() bool { return !c.To.Before(c.Zero.Add(cooling.Horizon)) }

// Knowing is the run as it stands in the kitchen of today, which may have learnt
// from earlier runs, oldest first. The forecast goes by both.
func (r Run) Knowing(today Settings, past []Cooled) Run {
	r.today, r.past, r.foreseen = &today, past, nil
	if c, ok := r.foresee(r.outlook(today), r.Readings); ok {
		r.foreseen = &c
	}
	return r
}

// Cooling is the forecast of a run that cools or is cool; false for any other, and
// where nobody saw enough to tell when it came to zero.
func (r Run) Cooling() (Cooling, bool) {
	if r.foreseen != nil {
		return *r.foreseen, true
	}
	return r.foresee(r.unlearnt(r.kitchen), r.Readings)
}

// CoolingOf is the forecast of one unit of the load, zero for the slowest, to a limit,
// such as that of a culture. False for a unit that isn't there.
func (r Run) CoolingOf(u UnitNo, limit unit.Celsius) (Cooling, bool) {
	if r.today == nil || int(u) > r.Units() {
		return Cooling{}, false
	}
	o := r.outlook(*r.today)
	o.limit = limit
	if u != 0 {
		o.of = r.containerOf(u)
		o.prior = r.prior(o.of)
	}
	return r.foresee(o, r.Readings)
}

// CoolSooner are the forecasts of the other containers of a mixed load, which are
// cool before the slowest.
func (r Run) CoolSooner() []Cooling {
	if r.today == nil {
		return nil
	}
	var out []Cooling
	for _, b := range r.boxes {
		o := r.outlook(*r.today)
		if b.heated() == o.of {
			continue
		}
		o.of = b.heated()
		o.prior = r.prior(o.of)
		if c, ok := r.foresee(o, r.Readings); ok {
			out = append(out, c)
		}
	}
	return out
}

// outlook is what a forecast takes from outside its run.
type outlook struct {
	kitchen Settings
	limit   unit.Celsius
	prior   cooling.Prior
	// of is the container that is asked about.
	of Container
}

func (r Run) outlook(s Settings) outlook {
	return outlook{s, s.CoolLimit(), r.prior(r.slowest()), r.slowest()}
}

// unlearnt is the outlook of a kitchen of which no earlier run is known.
func (r Run) unlearnt(s Settings) outlook {
	return outlook{s, s.CoolLimit(), cooling.Usual(), r.slowest()}
}

// foresee makes the forecast from some of the readings, while that is of use.
func (r Run) foresee(o outlook, readings []Reading) (Cooling, bool) {
	if r.Stage != StageCooling && r.Stage != StageCool {
		return Cooling{}, false
	}
	return r.believe(o, readings)
}

// believe is foresee, of a run that may be over by now.
func (r Run) believe(o outlook, readings []Reading) (Cooling, bool) {
	readings = fewer(readings)
	q, zero, ok := r.question(o, readings)
	if !ok {
		return Cooling{}, false
	}
	f, err := cooling.New(q)
	if err != nil {
		return Cooling{}, false // a height or a size that no formula reaches
	}
	span := f.Cool()
	c := Cooling{
		Container: o.of, Zero: zero.At, Seen: zero.Seen, Likely: zero.At.Add(span.Mid), From: zero.At.Add(span.Lo), To: zero.At.Add(span.Hi),
		Alarm: onFive(zero.At.Add(f.By(fourOfFive))), Surely: onFive(zero.At.Add(f.By(nearlySure))), Limit: q.Limit, Room: f.Room(), RoomTold: o.kitchen.Room != nil,
		Prior: o.prior, Scale: f.Scale(), Boiling: f.Boiling(), forecast: f,
	}
	if c.Never() {
		// Nobody is told to wait for what may not be: it is looked at twice a day.
		c.Alarm = onFive(r.lastSeen(zero.At, readings).Add(measureDaily))
		c.Surely = c.Alarm
	}
	for _, odd := range f.Odd() {
		c.Odd = append(c.Odd, OddReading{Reading: readings[odd.Index], Why: odd.Why, Fahrenheit: odd.Fahrenheit, Lo: odd.Lo, Hi: odd.Hi})
	}
	c.Counted = len(readings) - len(c.Odd)
	return c, true
}

// What a forecast is made from at the most: the first readings of a run, and its last.
// More say hardly more, and take their time.
const (
	firstCount = 8
	lastCount  = 16
)

func fewer(all []Reading) []Reading {
	if len(all) <= firstCount+lastCount {
		return all
	}
	return slices.Concat(all[:firstCount], all[len(all)-lastCount:])
}

// How sure an alarm is, and a second measurement.
const (
	fourOfFive unit.Fraction = 0.8
	nearlySure unit.Fraction = 0.95
)

// lastSeen is when somebody last had to do with how warm a load is: read it, took it out,
// or saw it at zero.
func (r Run) lastSeen(zero time.Time, readings []Reading) time.Time {
	seen := zero
	if out, ok := r.LiftedOut(); ok {
		seen = latest(seen, out)
	}
	if n := len(readings); n > 0 {
		seen = latest(seen, readings[n-1].At)
	}
	return seen
}

// measureDaily is when a load is measured again that may not get cool.
const measureDaily = 12 * time.Hour

// onFive is the next time that a clock shows in full five minutes: a forecast knows
// no better.
func onFive(at time.Time) time.Time {
	const five = 5 * time.Minute
	if down := at.Truncate(five); down.Before(at) {
		return down.Add(five)
	}
	return at
}
