package load

import "time"

// Usual durations of a load. Heating up is common practice, 20 to 30 min with
// jars and longer with bags. Three to five minutes to pressure are the figure of
// the USDA Complete Guide to Home Canning ("Using Pressure Canners"), a full
// load of bags takes 10 to 20. A heavy pot of quarts falls in 45 min (PNW 421,
// "Using and Caring for Your Pressure Canner"); big pots, and bags of 5 lb and
// more, in 60 to 120 (common practice), and 90 errs late: a ping that comes too
// early invites lifting the weight. The turn-round is a guess.
const (
	UsualHeatJars       = 25 * time.Minute
	UsualHeatBags       = 40 * time.Minute
	UsualToPressureJars = 5 * time.Minute
	UsualToPressureBags = 10 * time.Minute
	UsualFall           = 45 * time.Minute
	UsualFallLarge      = 90 * time.Minute
	UsualTurnRound      = 15 * time.Minute
)

// Durations is how long the stages of one load take. A negative one counts as
// nothing.
type Durations struct {
	Heat       time.Duration // flame on to steady steam
	Vent       time.Duration // steam to closing the vent
	ToPressure time.Duration // closing the vent to pressure
	Hold       time.Duration // at pressure to heat off
	Fall       time.Duration // heat off to zero
	TurnRound  time.Duration // zero to flame on for the next: unload, top up, load
}

// JarLoad is the usual course of a load of jars with this hold.
func JarLoad(hold time.Duration) Durations {
	return Durations{
		Heat: UsualHeatJars, Vent: UsualVent, ToPressure: UsualToPressureJars,
		Hold: hold, Fall: UsualFall, TurnRound: UsualTurnRound,
	}
}

// BagLoad is the usual course of a load of bags of 5 lb and more with this hold.
func BagLoad(hold time.Duration) Durations {
	return Durations{
		Heat: UsualHeatBags, Vent: UsualVent, ToPressure: UsualToPressureBags,
		Hold: hold, Fall: UsualFallLarge, TurnRound: UsualTurnRound,
	}
}

// Offsets is when a load passes its stages, counted from the first load's flame
// on.
type Offsets struct {
	Heat       time.Duration // flame on
	Steam      time.Duration // steady steam, vent begins
	Close      time.Duration // vent closed
	AtPressure time.Duration // hold begins
	HeatOff    time.Duration // hold over
	Zero       time.Duration // no pressure, may be opened
}

// Clock is the course of several loads in one cooker, one after the other, and
// when the last stands at zero. The turn-round counts between loads and not
// after the last. No loads finish at once.
func Clock(loads []Durations) (at []Offsets, finish time.Duration) {
	at = make([]Offsets, 0, len(loads))
	start := time.Duration(0)
	for _, d := range loads {
		o := d.from(start)
		at = append(at, o)
		finish = o.Zero
		start = o.Zero + max(d.TurnRound, 0)
	}
	return at, finish
}

func (d Durations) from(start time.Duration) Offsets {
	o := Offsets{Heat: start}
	o.Steam = o.Heat + max(d.Heat, 0)
	o.Close = o.Steam + max(d.Vent, 0)
	o.AtPressure = o.Close + max(d.ToPressure, 0)
	o.HeatOff = o.AtPressure + max(d.Hold, 0)
	o.Zero = o.HeatOff + max(d.Fall, 0)
	return o
}
