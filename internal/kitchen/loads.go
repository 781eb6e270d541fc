package kitchen

import (
	"cmp"
	"slices"
	"time"

	"ryebell/internal/calc/load"
	"ryebell/internal/calc/unit"
)

// Loads is an order shared out over a cooker.
type Loads struct {
	Each []Load
	// At is when each passes its stages, counted from the first flame; Finish
	// when the last stands at zero.
	At     []load.Offsets
	Finish time.Duration
}

// Load is what goes into the cooker at once.
type Load struct {
	Parts []Capacity
	Hold  Hold
	Water unit.Litres
}

// cook adds to a plan what the cooker does with it: hold, loads, water, clock.
// Loose grain is not cooked.
func (s Settings) cook(p *Plan) error {
	boxed := containersOf(p.Order)
	if len(boxed) == 0 {
		return nil
	}
	cooker, err := s.pickCooker(p.Order, boxed)
	if err != nil {
		return err
	}
	p.Cooker = cooker
	rule, err := s.ruling(boxed, cooker, p.Order.Hold)
	if err != nil {
		return err
	}
	p.Hold = rule
	s.share(p, boxed)
	s.remark(p, boxed)
	return nil
}

// containersOf takes an order's containers of one kind together.
func containersOf(o Order) []Capacity {
	var out []Capacity
	for _, it := range o.Items {
		if it = it.sized(); it.Container.Vessel == 0 {
			continue
		}
		i := slices.IndexFunc(out, func(c Capacity) bool { return c.Container.Same(it.Container) })
		if i < 0 {
			out = append(out, Capacity{Count: it.Count, Container: it.Container})
			continue
		}
		out[i].Count += it.Count
	}
	return out
}

// pickCooker is the cooker named, else the one that needs the fewest loads, the
// first stated among equals; an unnamed 15 psi cooker when none is known.
func (s Settings) pickCooker(o Order, boxed []Capacity) (CookerIs, error) {
	if o.Cooker != "" {
		if c, ok := s.CookerNamed(o.Cooker); ok {
			return c, nil
		}
		if len(s.CookerNames()) == 0 { // the first name anybody says is the only cooker's
			c, _ := s.CookerNamed("")
			c.Name = o.Cooker
			return c, nil
		}
		return CookerIs{}, NoSuchCooker{Name: o.Cooker, Known: s.CookerNames()}
	}
	var best CookerIs
	fewest := 0
	for _, c := range s.Cookers {
		packed, _, err := pack(boxed, c)
		if err == nil && (fewest == 0 || len(packed) < fewest) {
			best, fewest = c, len(packed)
		}
	}
	if fewest == 0 && len(s.Cookers) > 0 {
		return s.Cookers[0], nil
	}
	return best, nil
}

// ruling is the hold of the container that needs the longest.
func (s Settings) ruling(parts []Capacity, k CookerIs, said time.Duration) (Hold, error) {
	return s.rulingAt(parts, k, said, s.gaugeFor(k))
}

// rulingAt is the same at another true pressure.
func (s Settings) rulingAt(parts []Capacity, k CookerIs, said time.Duration, at unit.GaugeKPa) (Hold, error) {
	var rule Hold
	for _, part := range parts {
		h, known := s.holdAt(part.Container, k, said, at)
		if !known {
			return Hold{}, NoHold{Container: part.Container}
		}
		if rule.Time == 0 || h.Time > rule.Time || (h.Time == rule.Time && h.Usual > rule.Usual) {
			rule = h
		}
	}
	return rule, nil
}

// share splits the order into loads, each with its own hold and water, and adds
// the clock of the day.
func (s Settings) share(p *Plan, boxed []Capacity) {
	packed, counted, err := pack(boxed, p.Cooker)
	p.Notes = append(p.Notes, counted...)
	if err != nil {
		p.Notes = append(p.Notes, NoCapacityNote{Container: err.container})
		packed = [][]Capacity{boxed}
	}
	durations := make([]load.Durations, 0, len(packed))
	for _, parts := range packed {
		h, _ := s.ruling(parts, p.Cooker, p.Order.Hold) // known: the whole order was
		p.Loads.Each = append(p.Loads.Each, Load{Parts: parts, Hold: h, Water: p.Cooker.water(h.Time)})
		durations = append(durations, p.Cooker.course(parts, h.Time))
	}
	p.Loads.At, p.Loads.Finish = load.Clock(durations)
}

// water is what goes under the rack for a hold.
func (c CookerIs) water(hold time.Duration) unit.Litres { return load.Water(c.budget(hold)) }

// budget is where the water of a hold goes.
func (c CookerIs) budget(hold time.Duration) load.Budget {
	b := load.UsualBudget(hold)
	b.BoilOff = firstSet(c.BoilOff, b.BoilOff)
	b.Maker = c.MinWater
	return b
}

// largePot and bigBag decide which usual times a load takes: both heat and fall
// slowly (common practice).
const (
	largePot unit.Litres = 25
	bigBag   unit.Grams  = 2250
)

// course is how long the stages of a load take.
func (c CookerIs) course(parts []Capacity, hold time.Duration) load.Durations {
	big := slices.ContainsFunc(parts, func(p Capacity) bool {
		return p.Container.Vessel == Bag && p.Container.Weight >= bigBag
	})
	d := load.JarLoad(hold)
	switch {
	case big:
		d = load.BagLoad(hold)
	case c.Pot > largePot:
		d.Fall = load.UsualFallLarge
	}
	d.Fall = firstSet(c.Fall, d.Fall)
	return d
}

// capacityError says for which container no capacity is known.
type capacityError struct{ container Container }

func (capacityError) Error() string { return "no capacity stated" }

// pack shares containers out over loads of one cooker. A container of no stated
// capacity counts like the next larger of its vessel, which can only be too
// cautious; where none is larger the capacity is unknown.
func pack(boxed []Capacity, k CookerIs) ([][]Capacity, []Reservation, *capacityError) {
	capacity := load.Capacity[int]{}
	items := make([]load.Item[int], 0, len(boxed))
	var notes []Reservation
	for i, b := range boxed {
		takes, ok := k.takes(b.Container)
		if !ok {
			return nil, nil, &capacityError{b.Container}
		}
		if !takes.Container.Same(b.Container) {
			notes = append(notes, CountedAsNote{Container: b.Container, As: takes.Container})
		}
		capacity[i] = takes.Count
		items = append(items, load.Item[int]{Class: i, Count: b.Count})
	}
	loads, err := load.Pack(items, capacity)
	if err != nil {
		return nil, nil, &capacityError{boxed[0].Container}
	}
	out := make([][]Capacity, 0, len(loads))
	for _, l := range loads {
		parts := make([]Capacity, 0, len(l))
		for _, it := range l {
			parts = append(parts, Capacity{Count: it.Count, Container: boxed[it.Class].Container})
		}
		out = append(out, parts)
	}
	return out, notes, nil
}

// takes finds the stated capacity that a container counts by.
func (c CookerIs) takes(want Container) (Capacity, bool) {
	var larger []Capacity
	for _, t := range c.Takes {
		if t.Container.Same(want) {
			return t, true
		}
		if t.Container.Vessel == want.Vessel && t.Container.size() >= want.size() {
			larger = append(larger, t)
		}
	}
	if len(larger) == 0 {
		return Capacity{}, false
	}
	return slices.MinFunc(larger, func(a, b Capacity) int {
		return cmp.Compare(a.Container.size(), b.Container.size())
	}), true
}

// remark adds the reservations that a cook should hear.
func (s Settings) remark(p *Plan, boxed []Capacity) {
	if p.Hold.Short() {
		p.Notes = append(p.Notes, ShortHoldNote{Hold: p.Hold})
	}
	if p.Hold.At < 0.99*unit.PSI(15) {
		p.Notes = append(p.Notes, LowPressureNote{At: p.Hold.At})
	}
	for _, b := range boxed {
		if b.Container.Vessel == Bag && b.Container.Weight >= bigBag && s.ownHold(b.Container) == 0 && p.Order.Hold == 0 {
			p.Notes = append(p.Notes, BagsDifferNote{Container: b.Container})
			break
		}
	}
	for _, l := range p.Loads.Each {
		if p.Cooker.MaxWater > 0 && l.Water > p.Cooker.MaxWater {
			p.Notes = append(p.Notes, WaterOverNote{Needed: l.Water, Max: p.Cooker.MaxWater})
			break
		}
	}
}
