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
	boxes := boxesOf(p.Lines)
	if len(boxes) == 0 {
		return nil
	}
	cooker, err := s.pickCooker(p.Order, partsOf(boxes))
	if err != nil {
		return err
	}
	p.Cooker = cooker
	rule, err := s.rulingAt(boxes, cooker, p.Order.Hold, s.gaugeFor(cooker))
	if err != nil {
		return err
	}
	p.Hold = rule
	s.share(p, boxes)
	s.remark(p, boxes)
	return nil
}

// box is so many of one container, and how much wetted grain is in the heaviest
// of them.
type box struct {
	Capacity
	wetted unit.Grams
}

// heated is the container that decides how long the heat takes: what is known by
// its grain is as large as the wetted grain in it, whatever it is called by. A bag
// of 5 lb that is filled with 5 lb dry is one of 7.
func (b box) heated() Container {
	c := b.Container
	if c.Volume == 0 && b.wetted > 0 {
		c.Weight = b.wetted
	}
	return c
}

func (l Line) box() box {
	return box{Capacity{Count: l.Item.Count, Container: l.Item.Container}, l.Exact.Wetted}
}

// boxes is what an order puts into a cooker. An error is a [Refusal].
func (s Settings) boxes(o Order) ([]box, error) {
	var lines []Line
	for _, it := range o.Items {
		l, err := s.line(it)
		if err != nil {
			return nil, err
		}
		lines = append(lines, l)
	}
	return boxesOf(lines), nil
}

// boxesOf takes the containers of one kind together.
func boxesOf(lines []Line) []box {
	var out []box
	for _, l := range lines {
		if l.Item.Container.Vessel == 0 {
			continue
		}
		i := slices.IndexFunc(out, func(b box) bool { return b.Container.Same(l.Item.Container) })
		if i < 0 {
			out = append(out, l.box())
			continue
		}
		out[i].Count += l.Item.Count
		out[i].wetted = max(out[i].wetted, l.Exact.Wetted)
	}
	return out
}

func partsOf(boxes []box) []Capacity {
	out := make([]Capacity, 0, len(boxes))
	for _, b := range boxes {
		out = append(out, b.Capacity)
	}
	return out
}

// boxesIn is what of the boxes of an order goes into one load.
func boxesIn(parts []Capacity, boxes []box) []box {
	out := make([]box, 0, len(parts))
	for _, part := range parts {
		b := box{Capacity: part}
		for _, known := range boxes {
			if known.Container.Same(part.Container) {
				b.wetted = known.wetted
			}
		}
		out = append(out, b)
	}
	return out
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

// FreeCooker is the cooker for an order that named none, where the one it would go
// into is taken and another takes it in as few loads: the first of those stated. False
// where nothing is to be changed.
func (s Settings) FreeCooker(o Order, taken func(cooker string) bool) (string, bool) {
	usual, err := s.Work(o)
	if o.Cooker != "" || err != nil || !taken(usual.Cooker.Name) {
		return "", false
	}
	for _, name := range s.CookerNames() {
		o.Cooker = name
		p, err := s.Work(o)
		if err == nil && !taken(name) && !p.Hold.TooLong && len(p.Loads.Each) <= len(usual.Loads.Each) {
			return name, true
		}
	}
	return "", false
}

// rulingAt is the hold of the container that needs the longest, at a true
// pressure; one that can't be done here outdoes every other.
func (s Settings) rulingAt(boxes []box, k CookerIs, said time.Duration, at unit.GaugeKPa) (Hold, error) {
	var rule Hold
	for _, b := range boxes {
		h, known := s.holdAt(b, k, said, at)
		if !known {
			return Hold{}, NoHold{Container: b.Container}
		}
		if rule.Time == 0 || h.outdoes(rule) {
			rule = h
		}
	}
	return rule, nil
}

func (h Hold) outdoes(other Hold) bool {
	switch {
	case h.TooLong != other.TooLong:
		return h.TooLong
	case h.Time != other.Time:
		return h.Time > other.Time
	}
	return h.Usual > other.Usual
}

// share splits the order into loads, each with its own hold and water, and adds
// the clock of the day.
func (s Settings) share(p *Plan, boxes []box) {
	packed, counted, err := pack(partsOf(boxes), p.Cooker)
	p.Notes = append(p.Notes, counted...)
	if err != nil {
		p.Notes = append(p.Notes, NoCapacityNote{Container: err.container})
		packed = [][]Capacity{partsOf(boxes)}
	}
	durations := make([]load.Durations, 0, len(packed))
	for _, parts := range packed {
		in := boxesIn(parts, boxes)
		h, _ := s.rulingAt(in, p.Cooker, p.Order.Hold, s.gaugeFor(p.Cooker)) // known: the whole order was
		p.Loads.Each = append(p.Loads.Each, Load{Parts: parts, Hold: h, Water: p.Cooker.water(h.Time)})
		durations = append(durations, p.Cooker.course(in, h.Time))
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

// WaterSum is where the water of a hold goes, and what is asked for whatever the
// sum says.
type WaterSum struct {
	Vent, BoiledOff, TakenUp, Left unit.Litres
	Rate                           unit.LitresPerHour // boiled off at pressure
	RateFrom                       Origin
	// Least is the least for a hold so long, Maker what the cooker's maker asks; 0
	// when that wasn't said.
	Least, Maker unit.Litres
}

// Sum is what the parts come to.
func (w WaterSum) Sum() unit.Litres { return w.Vent + w.BoiledOff + w.TakenUp + w.Left }

// WaterSum works out the water of a hold.
func (c CookerIs) WaterSum(hold time.Duration) WaterSum {
	b := c.budget(hold)
	w := WaterSum{
		Vent: boiledIn(b.Vent, b.VentRate), BoiledOff: boiledIn(hold, b.BoilOff), TakenUp: b.TakenUp, Left: b.Left,
		Rate: b.BoilOff, RateFrom: Default,
		Least: load.LeastWater(hold), Maker: b.Maker,
	}
	if c.BoilOff > 0 {
		w.RateFrom = Own
	}
	return w
}

func boiledIn(d time.Duration, rate unit.LitresPerHour) unit.Litres {
	return unit.Litres(d.Hours() * float64(rate))
}

// largePot and bigBag decide which usual times a load takes: both heat and fall
// slowly (common practice).
const (
	largePot unit.Litres = 25
	bigBag   unit.Grams  = 2250
)

// big reports whether it heats and falls slowly.
func (b box) big() bool {
	c := b.heated()
	return c.Vessel == Bag && c.Weight >= bigBag
}

// course is how long the stages of a load take, by the grain that is in the
// containers.
func (c CookerIs) course(boxes []box, hold time.Duration) load.Durations {
	big := slices.ContainsFunc(boxes, box.big)
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

// SuggestedHold is a hold for a container that is longer than the default here and
// no longer than any source's, in the cooker that would be picked for it; false
// where the default is as long already, or can't be done.
func (s Settings) SuggestedHold(c Container) (time.Duration, bool) {
	b := box{Capacity: Capacity{Count: 1, Container: c}}
	k, err := s.pickCooker(Order{}, []Capacity{b.Capacity})
	if err != nil {
		return 0, false
	}
	bare := s
	bare.Holds = nil
	h, known := bare.holdAt(b, k, 0, s.gaugeFor(k))
	return suggested(h.Time), known && !h.TooLong && h.Time < LongestKnown
}

// remark adds the reservations that a cook should hear.
func (s Settings) remark(p *Plan, boxes []box) {
	for i, l := range p.Loads.Each {
		if l.Hold.Short() {
			p.Notes = append(p.Notes, ShortHoldNote{Load: i, Hold: l.Hold})
		}
	}
	if under15(p.Hold.At) {
		p.Notes = append(p.Notes, LowPressureNote{At: p.Hold.At})
	}
	for _, b := range boxes {
		if !b.big() || p.Order.Hold != 0 {
			continue
		}
		if h, _ := s.holdAt(b, p.Cooker, 0, p.Hold.At); h.Origin == Default && !h.TooLong && h.Time < LongestKnown {
			p.Notes = append(p.Notes, BagsDifferNote{Container: b.Container, Suggest: suggested(h.Time)})
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
