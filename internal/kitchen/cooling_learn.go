package kitchen

import (
	"math"
	"slices"

	"ryebell/internal/calc/cooling"
)

// Cooled is what an earlier run has shown of how its cooker's loads cool.
type Cooled struct {
	Run       RunNo
	Cooker    string
	Container Container
	Past      cooling.Past
	// Blind says whether the range held that was made at zero pressure without a
	// reading, Measured whether the one after the first reading did.
	Blind, Measured Verdict
}

// Verdict is what came of a range. The zero Verdict is none: too little was
// measured to tell.
type Verdict uint8

// A range Held or was Missed.
const (
	RangeHeld Verdict = iota + 1
	RangeMissed
)

// Cooled is what a run that is cool has shown, by its readings; false where they show
// next to nothing, and for a run that was not measured until it was cool.
func (r Run) Cooled() (Cooled, bool) {
	if r.coolAt.IsZero() || r.Stage != StageCool && r.Stage != StageGone {
		return Cooled{}, false
	}
	q, _, ok := r.question(r.outlook(r.kitchen), fewer(r.Readings))
	if !ok {
		return Cooled{}, false
	}
	past, shows, err := cooling.Observe(q)
	if err != nil || !shows {
		return Cooled{}, false
	}
	c := Cooled{Run: r.No, Cooker: r.Cooker, Container: r.slowest(), Past: past}
	open := r.outlook(r.kitchen)
	open.prior = cooling.Vague() // a range is not to be its own witness
	all, ok := r.believe(open, r.Readings)
	if counted := r.counted(all); ok && len(counted) > 0 {
		c.Blind = r.held(all, nil)
		if len(counted) > 1 {
			c.Measured = r.held(all, counted[:1])
		}
	}
	return c, true
}

// relative is how wide the range is, in ln time since zero.
func (c Cooling) relative() float64 {
	return math.Log(float64(c.To.Sub(c.Zero)) / float64(c.From.Sub(c.Zero)))
}

// counted are the readings that are not odd.
func (r Run) counted(c Cooling) []Reading {
	return slices.DeleteFunc(slices.Clone(r.Readings), func(m Reading) bool {
		return slices.ContainsFunc(c.Odd, func(o OddReading) bool { return o.Reading.No == m.No })
	})
}

// held judges the range that some of the readings gave by what all of them show by
// themselves, where that is no wider.
func (r Run) held(all Cooling, some []Reading) Verdict {
	then, ok := r.believe(r.outlook(r.kitchen), some)
	switch {
	case !ok:
		return 0
	case all.relative() > then.relative():
		return 0 // too little was measured to tell
	case all.Likely.Before(then.From) || all.Likely.After(then.To):
		return RangeMissed
	}
	return RangeHeld
}

// alikeSize is how far containers may lie apart in size and still teach each other.
const alikeSize = 1.5

// prior is what earlier runs of the cooker with containers about as large taught.
func (r Run) prior(mine Container) cooling.Prior {
	var shown []cooling.Past
	for _, c := range r.past {
		apart := c.Container.heft() / mine.heft()
		if sameName(c.Cooker, r.Cooker) && c.Container.Vessel == mine.Vessel && apart < alikeSize && apart > 1/alikeSize && c.Run < r.No {
			shown = append(shown, c.Past)
		}
	}
	return cooling.Learn(cooling.Usual(), shown)
}
