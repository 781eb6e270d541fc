package kitchen

import (
	"slices"
	"time"

	"ryebell/internal/calc/grain"
	"ryebell/internal/calc/hydration"
	"ryebell/internal/calc/unit"
)

// Plan is an order worked out for a kitchen: what to weigh, how long to hold,
// how much water goes under the rack, in how many loads. It starts nothing.
type Plan struct {
	Order Order
	Lines []Line
	// All is what the lines need together, as shown: the sum of rounded parts.
	All    hydration.Charge
	Gypsum unit.Grams
	Cooker CookerIs
	// Hold is the longest of the loads' holds, which rules when everything stands
	// together; zero for loose grain.
	Hold  Hold
	Loads Loads
	Notes []Reservation
}

// Line is one item of an order, worked out.
type Line struct {
	Item Item
	// Grain, Route and Method as taken, and where they come from.
	Grain       grain.Kind
	GrainOrigin Origin
	Route       Route
	RouteOrigin Origin
	Method      Method
	// Basis says which of its amounts was given: the dry grain or the wetted.
	Basis Basis

	// Each is what one container takes, Exact before rounding; All is Each,
	// rounded, times the count: what is weighed out adds up.
	Each, All hydration.Charge
	Exact     hydration.Charge
	// Step is what Each is rounded to: the scale's step, or a finer one where
	// there is so little that the step would spoil it.
	Step unit.Grams

	Ratio       unit.Ratio // added water per dry grain; soaked: taken up
	RatioOrigin Origin
	Stored      unit.Fraction // moisture as bought
	StoredFrom  Origin
	Moisture    unit.Fraction // of the wetted grain, wet basis
	// FillOrigin tells whether a jar's wetted weight was said, weighed by the
	// collective or reckoned from its volume. FillLike is another jar that they
	// weighed, when this one is taken to be filled as densely.
	FillOrigin Origin
	FillLike   JarFill

	GypsumShare           unit.Fraction
	GypsumEach, GypsumAll unit.Grams
}

// Reservation is something a cook should know about a plan. The cases are the types of this file that
// end in Note.
//
//sumtype:decl
type Reservation interface{ reservation() }

// BagsDifferNote says that sources differ about the hold of bags so large, with a
// hold to suggest that isn't short here.
type BagsDifferNote struct {
	Container Container
	Suggest   time.Duration
}

// ShortHoldNote says that the hold of a load, counted from 0, is shorter than the
// default would be.
type ShortHoldNote struct {
	Load int
	Hold Hold
}

// NoCapacityNote says that nobody has said how many of a container the cooker
// takes, so loads are not worked out.
type NoCapacityNote struct{ Container Container }

// CountedAsNote says that a container of no stated capacity was counted like the
// next larger one.
type CountedAsNote struct{ Container, As Container }

// WaterOverNote says that the water needed is more than the pot takes: a smaller
// load and not a shorter hold.
type WaterOverNote struct {
	Needed, Max unit.Litres
}

// LowPressureNote says that the cooker is run below 15 psi, which the hold pays
// for.
type LowPressureNote struct{ At unit.GaugeKPa }

// MeasuredNote says that an item is measured although the kitchen soaks, since a
// moisture or ratio was asked for.
type MeasuredNote struct{ Container Container }

func (BagsDifferNote) reservation()  {}
func (ShortHoldNote) reservation()   {}
func (NoCapacityNote) reservation()  {}
func (CountedAsNote) reservation()   {}
func (WaterOverNote) reservation()   {}
func (LowPressureNote) reservation() {}
func (MeasuredNote) reservation()    {}

// Work works an order out. An error is a [Refusal].
func (s Settings) Work(o Order) (Plan, error) {
	if err := checkOrder(o); err != nil {
		return Plan{}, err
	}
	p := Plan{Order: o}
	for _, item := range o.Items {
		line, err := s.line(item)
		if err != nil {
			return Plan{}, err
		}
		if line.Method == Measured && s.MethodFor(item.Container.Vessel) == Soaked {
			p.Notes = append(p.Notes, MeasuredNote{Container: item.Container})
		}
		p.Lines = append(p.Lines, line)
		p.All = p.All.Plus(line.All)
		p.Gypsum += line.GypsumAll
	}
	if err := s.cook(&p); err != nil {
		return Plan{}, err
	}
	return p, nil
}

// sized is an item whose container has a size: one of which only the grain in it
// was said is as large as that.
func (it Item) sized() Item {
	if it.Container.Vessel != 0 && !it.Container.Sized() {
		it.Container.Weight = it.Mass
	}
	return it
}

// line works one item out.
func (s Settings) line(it Item) (Line, error) {
	it = it.sized()
	l := Line{Item: it, Grain: it.Grain, GrainOrigin: Said, Route: it.Route, RouteOrigin: Said}
	if it.Grain == 0 {
		l.Grain, l.GrainOrigin = s.GrainMeant(), Default
		if s.UsualGrain != 0 {
			l.GrainOrigin = Own
		}
	}
	if it.Route == 0 {
		l.RouteOrigin = Default
	}
	if err := s.wet(&l); err != nil {
		return Line{}, err
	}
	l.Step = s.stepFor(l.Exact)
	l.Each = hydration.Round(l.Exact, l.Step)
	l.All = l.Each.Times(it.Count)
	if l.GypsumShare = firstSet(it.Gypsum, s.Gypsum); it.NoGypsum {
		l.GypsumShare = 0
	}
	l.GypsumEach = unit.Grams(l.GypsumShare) * l.Exact.Dry
	l.GypsumAll = l.GypsumEach * unit.Grams(it.Count)
	return l, nil
}

// finestStep is the finest that a kitchen's scale shows.
const finestStep unit.Grams = 0.1

// stepFor is the scale's step, or a tenth of it as often as one of the parts would
// be less than two steps: half a pint is not weighed in steps of 100 g.
func (s Settings) stepFor(c hydration.Charge) unit.Grams {
	step := s.ScaleStep()
	for step > finestStep && min(c.Dry, c.Water) < 2*step {
		step = max(step/10, finestStep)
	}
	return step
}

// wet decides how the grain of a line gets its water and how much of both there
// is.
func (s Settings) wet(l *Line) error {
	it := l.Item
	l.Method = s.MethodFor(it.Container.Vessel)
	if it.Moisture > 0 || it.Ratio > 0 {
		l.Method = Measured
	}
	l.Stored, l.StoredFrom = s.StorageMoistureOf(l.Grain)
	if err := s.ratio(l); err != nil {
		return err
	}
	var mass unit.Grams
	mass, l.Basis = s.mass(l)
	var err error
	if l.Basis == DryBasis {
		l.Exact, err = hydration.FromDry(mass, l.Ratio)
	} else {
		l.Exact, err = hydration.Measured(mass, l.Ratio)
	}
	if err != nil {
		return tooMuch(it, mass)
	}
	l.Moisture, err = hydration.Moisture(l.Ratio, l.Stored)
	return err
}

// ratio sets the water per dry grain of a line: as said, from a wanted moisture,
// from the soaked yield, or by route.
func (s Settings) ratio(l *Line) error {
	switch it := l.Item; {
	case it.Ratio > 0:
		l.Ratio, l.RatioOrigin = it.Ratio, Said
	case it.Moisture > 0:
		r, err := hydration.RatioFor(it.Moisture, l.Stored)
		if err != nil || r <= 0 {
			return TooDry{Wanted: it.Moisture, Stored: l.Stored}
		}
		l.Ratio, l.RatioOrigin = r, Said
	case l.Method == Soaked:
		k, origin := s.YieldFor(l.Grain)
		l.Ratio, l.RatioOrigin = unit.Ratio(k-1), origin
	default:
		l.Ratio, l.RatioOrigin = s.RatioFor(l.Route, l.Grain, it.Container.Vessel)
	}
	return checkRange(WaterRatio, float64(l.Ratio), float64(MinRatio), float64(MaxRatio))
}

// mass is the grain of one container and whether that is dry or wetted.
func (s Settings) mass(l *Line) (unit.Grams, Basis) {
	it := l.Item
	l.FillOrigin = Said
	switch {
	case it.Mass > 0:
		return it.Mass, firstSet(it.Basis, Wetted)
	case it.Container.Vessel == Bag:
		return it.Container.Weight, firstSet(it.Basis, s.BagBasis, Wetted)
	case it.Container.Volume > 0:
		var fill unit.Grams
		fill, l.FillOrigin, l.FillLike = s.fill(it.Container)
		return fill, Wetted
	}
	return it.Container.Weight, firstSet(it.Basis, Wetted)
}

// Reverse works out what grain at hand makes: one plan for each container asked
// about, and the dry grain left over.
func (s Settings) Reverse(have Supply) ([]Makes, error) {
	if err := checkRange(LooseGrain, float64(have.Dry), float64(MinLoose), float64(MaxLoose)); err != nil {
		return nil, err
	}
	var out []Makes
	for _, c := range have.Containers {
		one := Item{Count: 1, Container: c, Grain: have.Grain, Route: have.Route}
		if err := checkItem(one); err != nil {
			return nil, err
		}
		l, err := s.line(one)
		if err != nil {
			return nil, err
		}
		n, left := hydration.Containers(have.Dry, l.Each.Dry)
		if n == 0 {
			return nil, TooSmall{AtHand: have.Dry, Needs: l.Each.Dry, Container: c}
		}
		one.Count = min(n, MaxUnits)
		p, err := s.Work(Order{Items: []Item{one}})
		if err != nil {
			return nil, err
		}
		left += unit.Grams(n-one.Count) * l.Each.Dry
		out = append(out, Makes{Plan: p, Left: left, Fills: n})
	}
	return out, nil
}

// Makes is what grain at hand makes of one container.
type Makes struct {
	Plan Plan
	Left unit.Grams // dry grain left over
	// Fills is how many the grain would fill: more than are planned where an order
	// takes no more.
	Fills int
}

// Takes is how long the whole order takes from flame on until the last load
// stands at zero; zero when loads are not known.
func (p Plan) Takes() time.Duration { return p.Loads.Finish }

// DiffersByBag reports whether sources differ about the hold of a bag in the
// plan.
func (p Plan) DiffersByBag() bool { return hasNote[BagsDifferNote](p) }

// Unfitted reports whether it isn't known that the order fits the cooker.
func (p Plan) Unfitted() bool { return hasNote[NoCapacityNote](p) }

func hasNote[N Reservation](p Plan) bool {
	return slices.ContainsFunc(p.Notes, func(n Reservation) bool {
		_, ok := n.(N)
		return ok
	})
}

// Orders shares the order out over its loads: one order for each, with the items as
// they were said and the cooker and hold of the plan.
func (p Plan) Orders() []Order {
	left := slices.Clone(p.Order.Items)
	out := make([]Order, 0, len(p.Loads.Each))
	for _, l := range p.Loads.Each {
		o := Order{Cooker: p.Cooker.Name, Hold: p.Order.Hold}
		for _, part := range l.Parts {
			o.Items = append(o.Items, takeFrom(left, part)...)
		}
		out = append(out, o)
	}
	return out
}

// takeFrom takes so many of a container out of the items, the first ones first.
func takeFrom(left []Item, part Capacity) []Item {
	var out []Item
	for i := range left {
		n := min(left[i].Count, part.Count)
		if n == 0 || !left[i].sized().Container.Same(part.Container) {
			continue
		}
		it := left[i]
		it.Count = n
		out = append(out, it)
		left[i].Count -= n
		part.Count -= n
	}
	return out
}
