package kitchen

import (
	"math"
	"slices"
	"time"

	"ryebell/internal/calc/duration"
	"ryebell/internal/calc/unit"
)

// What changes how quickly grain is grown through (common practice, no source).
const (
	// agarTakes, grainTakes and sporesTake are how many times as long those routes take
	// as liquid culture: grain to grain is 40 % quicker than agar.
	agarTakes  duration.Factor = 1.25
	grainTakes duration.Factor = 0.75
	sporesTake duration.Factor = 1.5
	// unshakenTakes is what leaving it unshaken adds: a third.
	unshakenTakes duration.Factor = 4.0 / 3
	// colderTakes is for each degree that the room is colder than the species likes, at
	// most for tooCold of them: growth halves over 10 °C, as a rule of thumb.
	colderTakes duration.Factor = 1.07
	tooCold     unit.Kelvins    = 10
	// bagTakes is how many times as long a 5 lb bag takes as a quart jar, where no figure
	// of the species is known.
	bagTakes duration.Factor = 1.3
)

// The containers that the columns of the table stand for, in grams of wetted grain,
// and how far beyond them their difference is carried on.
const (
	quartHolds  unit.Grams = 450
	fiveLbHolds unit.Grams = 2268
	leastSize              = -0.5
	mostSize               = 1.5
)

// mixedWithin is how long after inoculating a shake only mixes the culture in.
const mixedWithin = 24 * time.Hour

// SoonestThrough is the least time in which anything grows through: what was called so
// sooner teaches nothing (common practice, no source).
const SoonestThrough = 3 * 24 * time.Hour

// Grown is a unit that grew through, as the record keeps it.
type Grown struct {
	Unit      UnitRef
	Species   string
	Container Container
	Route     Route
	// Inoculated is when; Shaken when it was shaken for the first time, zero for one that
	// wasn't (a shake within a day only mixes); Through when somebody called it grown through.
	Inoculated, Shaken, Through time.Time
}

// Grown is what the unit adds to the record; false for one that isn't grown through,
// or of which nobody said when it was inoculated. It takes the unit's steps.
func (u Unit) Grown() (Grown, bool) {
	s, ok := u.LastStep(SaidGrownThrough)
	if !ok || u.Loss.What == UnitContaminated || u.Inoculated.IsZero() || !s.At.After(u.Inoculated) {
		return Grown{}, false
	}
	for _, first := range u.Steps { // shaken and looked at again, it may be called so twice
		if first.Kind == SaidGrownThrough && first.At.After(u.Inoculated) {
			s = first
			break
		}
	}
	return Grown{
		Unit: u.Ref, Species: u.grows(), Container: u.Container, Route: u.Route, Inoculated: u.Inoculated, Shaken: u.Shook, Through: s.At,
	}, true
}

// wasShaken reports whether it was shaken beside the mixing at first.
func (g Grown) wasShaken() bool { return g.Shaken.Sub(g.Inoculated) > mixedWithin }

// grows is the name of what grows on the unit, as far as it was said.
func (u Unit) grows() string { return firstSet(u.Species, u.Culture) }

// firstShakeStep is when the unit was shaken for the first time since it was inoculated.
func (u Unit) firstShakeStep() (UnitStep, bool) {
	for _, s := range u.Steps {
		if s.Kind == SaidShaken && s.At.Sub(u.Inoculated) > mixedWithin {
			return s, true
		}
	}
	return UnitStep{}, false
}

// Expected is when something is likely to be so: before About half of the times, and 4
// times of 5 between From and To. It is an estimate.
type Expected struct {
	About, From, To time.Time
	// Runs is how many of the collective's own runs it rests on.
	Runs int
}

// Growth is what is expected of a unit that grows.
type Growth struct {
	Species Species
	// Known is set when the table knows the species; else it is taken as others are.
	Known bool
	// Named is what it is called on the unit.
	Named string
	// Shake is when the first shake is due, the middle of its window; Shaken is set once
	// it was shaken.
	Shake  Expected
	Shaken bool
	// Through is when it is grown through, if it was shaken or will be in time; Unshaken
	// when it is left alone.
	Through, Unshaken Expected
	// Paced is set where Through and Unshaken go by how far somebody saw it grown.
	Paced bool
	// Colder is by how much the room is colder than the species likes, as it was measured;
	// 0 for a room that isn't, or that nobody measured.
	Colder unit.Kelvins
	By     GrowthBy
}

// GrowthBy is what an expectation comes from.
type GrowthBy struct {
	// Usual is how long the species usually takes through the container, with liquid
	// culture, shaken, and as warm as it likes.
	Usual duration.Range
	// Route, Cold and Unshaken are how many times as long it takes for the route, for a
	// room that is colder, and if it is not shaken; 1 for what changes nothing.
	Route, Cold, Unshaken duration.Factor
	// Runs are the runs of the collective that it rests on, each once, in their order.
	Runs []RunNo
	// RoomTold is set where somebody measured the room.
	RoomTold bool
}

// ThroughAt is when it is expected grown through, as things stand: one whose time to
// be shaken has passed is taken as left alone.
func (g Growth) ThroughAt(now time.Time) Expected {
	if g.Shaken || now.Before(g.Shake.To) {
		return g.Through
	}
	return g.Unshaken
}

// Runs is how many of the collective's own runs the expectation rests on.
func (g Growth) Runs() int { return g.Through.Runs }

// GrowthOf is what is expected of a unit, from what is common practice for its species,
// container, route and room, and from what grew through before: those of its species
// count, whatever their container and route, as soon as there is one run of them. What
// was seen counts as seen in the same room. False for a unit that doesn't grow, or of
// which nobody said when it was inoculated, and while it rests in the cold.
func GrowthOf(u Unit, past []Grown, s Settings) (Growth, bool) {
	switch {
	case u.Blank || u.Inoculated.IsZero():
		return Growth{}, false
	case u.State != UnitInoculated && u.State != UnitGrowing && u.State != UnitSuspect:
		return Growth{}, false
	case u.Rests():
		return Growth{}, false
	}
	g := Growth{Named: u.grows()}
	g.Species, g.Known = SpeciesNamed(g.Named)
	if s.Room != nil {
		g.Colder = max(0, g.Species.Coldest.Minus(*s.Room))
	}
	cold := duration.Factor(math.Pow(float64(colderTakes), float64(min(g.Colder, tooCold))))
	g.By = GrowthBy{Usual: g.Species.growsThrough(u.Container), Route: u.Route.slowness(), Cold: cold, Unshaken: unshakenTakes, RoomTold: s.Room != nil}
	g.Shaken = !u.Shook.IsZero()
	from := u.Inoculated.Add(u.Rested)

	slow := g.By.Route
	sized := slow * g.Species.slowness(u.Container)
	var shaken, through []duration.Seen
	for _, p := range past {
		if growsAs(p.Species) != growsAs(g.Named) || p.Unit == u.Ref || p.Through.Sub(p.Inoculated) < SoonestThrough {
			continue
		}
		if p.wasShaken() {
			shaken = append(shaken, p.took(p.Shaken, slow/p.Route.slowness()))
		}
		through = append(through, p.took(p.Through, sized/p.slowness(g.Species)))
		g.By.Runs = append(g.By.Runs, p.Unit.Run)
	}
	slices.Sort(g.By.Runs)
	g.By.Runs = slices.Compact(g.By.Runs)
	g.Shake = expect(from, g.Species.FirstShake.span().Times(slow*cold), shaken, 1)
	usual := g.By.Usual.Times(slow * cold)
	g.Through = u.paced(expect(from, usual, through, 1), from, g.Shake.About)
	g.Unshaken = u.paced(expect(from, usual, through, unshakenTakes), from, g.Shake.About)
	g.Paced = u.paces()
	if !g.Shaken && u.Share >= lateToShake { // it won't be any more
		g.Through = g.Unshaken
	}
	return g, true
}

// expect is a forecast from an instant on, so many times as long.
func expect(from time.Time, usual duration.Range, seen []duration.Seen, f duration.Factor) Expected {
	d := duration.Predict(usual, seen)
	return Expected{About: from.Add(f.Of(d.About)), From: from.Add(f.Of(d.From)), To: from.Add(f.Of(d.To)), Runs: d.Runs}
}

// took is how long it took until an instant, as long as it would take another.
func (g Grown) took(until time.Time, f duration.Factor) duration.Seen {
	return duration.Seen{Took: f.Of(until.Sub(g.Inoculated)), Run: int(g.Unit.Run)}
}

// slowness is how many times as long a unit of the record takes as a quart jar of
// liquid culture that was shaken.
func (g Grown) slowness(of Species) duration.Factor {
	f := g.Route.slowness() * of.slowness(g.Container)
	if !g.wasShaken() {
		f *= unshakenTakes
	}
	return f
}

// slowness is how many times as long the route takes as liquid culture; as long where
// it was not said.
func (r Route) slowness() duration.Factor {
	switch r {
	case LiquidCulture, 0:
		return 1
	case Agar:
		return agarTakes
	case GrainToGrain:
		return grainTakes
	case Spores:
		return sporesTake
	}
	panic("route " + r.String())
}

// slowness is how many times as long a container takes as a quart jar.
func (s Species) slowness(c Container) duration.Factor {
	in, jar := s.growsThrough(c), s.growsThrough(Container{Vessel: Jar})
	return duration.Factor(math.Sqrt(float64(in.From) / float64(jar.From) * float64(in.To) / float64(jar.To)))
}

// growsThrough is how long the species usually takes through a container: the columns
// of the table, and between and beyond them by the logarithm of the grain's weight.
func (s Species) growsThrough(c Container) duration.Range {
	jar, bag := s.Jar.span(), s.Bag.span()
	if s.Bag == (Days{}) {
		bag = jar.Times(bagTakes)
	}
	by := func(from, to time.Duration) time.Duration {
		return duration.Factor(math.Pow(float64(to)/float64(from), c.between())).Of(from)
	}
	return duration.Range{From: by(jar.From, bag.From), To: by(jar.To, bag.To)}
}

// between is where a container lies between a quart jar (0) and a 5 lb bag (1).
func (c Container) between() float64 {
	holds := c.Weight
	if holds == 0 {
		holds = unit.Grams(float64(c.Volume) * float64(wettedDensity) * float64(1-defaultHeadspace) * 1000)
	}
	if holds > 0 {
		return min(mostSize, max(leastSize, math.Log(float64(holds/quartHolds))/math.Log(float64(fiveLbHolds/quartHolds))))
	}
	if c.Vessel == Bag {
		return 1
	}
	return 0
}

func (d Days) span() duration.Range {
	return duration.Range{From: time.Duration(d.From) * 24 * time.Hour, To: time.Duration(d.To) * 24 * time.Hour}
}
