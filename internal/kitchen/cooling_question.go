package kitchen

import (
	"cmp"
	"slices"
	"time"

	"ryebell/internal/calc/cooling"
	"ryebell/internal/calc/unit"
)

// question is what the formulas are asked, and the step from which they count.
func (r Run) question(o outlook, readings []Reading) (cooling.Question, Step, bool) {
	zero, ok := r.atZero()
	if !ok || len(r.boxes) == 0 {
		return cooling.Question{}, zero, false
	}
	body, err := o.of.body()
	if err != nil {
		return cooling.Question{}, zero, false
	}
	q := cooling.Question{Body: body, Spacing: cooling.Unsaid, Elevation: o.kitchen.Height(), Limit: o.limit, Prior: o.prior}
	if room := o.kitchen.Room; room != nil {
		q.Room = cooling.ToldRoom(*room)
	}
	if out, isOut := r.LiftedOut(); isOut {
		lifted := out.Sub(zero.At)
		q.Lifted = &lifted
	}
	for _, m := range readings {
		q.Readings = append(q.Readings, r.asked(m, zero.At, o.of, several(m, readings)))
	}
	return q, zero, true
}

// LiftedOut is when the load came out of the pot, since it was last at zero; false
// while it is in there, or nobody said.
func (r Run) LiftedOut() (time.Time, bool) {
	zero, down := r.atZero()
	out, isOut := r.LastStep(KindOutOfPot)
	return out.At, down && isOut && !out.At.Before(zero.At)
}

// atZero is the step to zero pressure; where nobody saw it, it is put at a usual
// time after the heat went off. False where nobody saw that either.
func (r Run) atZero() (Step, bool) {
	zero, ok := r.LastStep(KindAtZero)
	if !ok || zero.Seen {
		return zero, ok
	}
	off, ok := r.LastStep(KindHeatOff)
	if fell := off.At.Add(r.fallTime(r.pot)); fell.Before(zero.At) {
		zero.At = fell
	}
	return zero, ok && off.Seen
}

// asked is a reading as the formulas take it. What was not said is the skin, of
// the slowest container.
func (r Run) asked(m Reading, zero time.Time, of Container, several bool) cooling.Reading {
	out := cooling.Reading{After: m.At.Sub(zero), Temp: m.Temp, Place: m.Where.asked()}
	if several {
		out.Spread = cooling.SameSizeSpread
	}
	read := r.slowest()
	if len(m.Units) > 0 {
		read = r.containerOf(m.Units[0])
	}
	if read.Vessel != of.Vessel || !near(read.heft(), of.heft()) {
		if body, err := read.body(); err == nil {
			out.Spread, out.Body = cooling.OtherSizeSpread, body
		}
	}
	return out
}

// unitsApart is how far units of one load may differ: what lies further apart at one
// instant is not of two of them, but wrong.
const unitsApart = unit.Kelvins(20)

// several reports whether a reading may be of another unit than the rest: one of
// several that were measured by their numbers, or at once.
func several(m Reading, all []Reading) bool {
	return slices.ContainsFunc(all, func(other Reading) bool {
		off := other.Temp.Minus(m.Temp)
		atOnce := other.At.Equal(m.At) && max(off, -off) < unitsApart
		return other.No != m.No && (atOnce || len(m.Units) > 0 && len(other.Units) > 0 && !slices.Equal(m.Units, other.Units))
	})
}

// OfSlowest reports whether a reading was taken of one of the slowest containers, or
// may have been.
func (r Run) OfSlowest(m Reading) bool {
	return len(m.Units) == 0 || r.containerOf(m.Units[0]) == r.slowest()
}

// containerOf is what a unit of the load is, counted in the order in which the
// load was said.
func (r Run) containerOf(u UnitNo) Container {
	for _, part := range containersOf(r.Order) {
		if int(u) > part.Count {
			u -= UnitNo(part.Count)
			continue
		}
		for _, b := range r.boxes {
			if b.Container.Same(part.Container) {
				return b.heated()
			}
		}
		return part.Container
	}
	return r.slowest()
}

// slowest is the container with the most in it.
func (r Run) slowest() Container {
	if len(r.boxes) == 0 {
		return Container{}
	}
	heaviest := slices.MaxFunc(r.boxes, func(a, b box) int { return cmp.Compare(a.heated().heft(), b.heated().heft()) })
	return heaviest.heated()
}

// heft is about how much wetted grain is in a container, kg.
func (c Container) heft() float64 {
	if c.Volume > 0 {
		return float64(c.Volume) * float64(wettedDensity) * float64(1-defaultHeadspace)
	}
	return c.Weight.Kilograms()
}

func (c Container) body() (cooling.Body, error) {
	switch {
	case c.Vessel == Bag:
		return cooling.Bag(c.Weight)
	case c.Volume > 0:
		return cooling.Jar(c.Volume)
	}
	return cooling.JarOf(c.Weight)
}

func (p Place) asked() cooling.Place {
	switch p {
	case Skin, 0:
		return cooling.Skin
	case Between:
		return cooling.Between
	case Middle:
		return cooling.Core
	}
	panic("place without a number")
}
