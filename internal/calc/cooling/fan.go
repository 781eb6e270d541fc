package cooling

import (
	"math"

	"ryebell/internal/calc/unit"
)

// How many kitchens are weighed: time scales, of which only some get a curve of
// their own, times the ways of the fan, times rooms, times ways to hold a probe.
const (
	scales    = 91
	knots     = 7
	rooms     = 7
	holds     = 5
	farScale  = 3.6 // standard deviations of the prior
	farRoom   = 2.4 // of the room's
	farHold   = 2.
	starPoint = 1.7320508075688772 // √3: three points of a star are exact to the third moment
)

// way is one combination of what shapes a curve beside its time scale.
type way struct{ split, pot, weight float64 }

// fan is the set of kitchens that a forecast weighs. Curves are drawn for some
// time scales and read between them; where the containers never change places a
// slower kitchen is the same curve on a slower clock, and one is enough.
type fan struct {
	body    Body
	prior   Prior
	boiling float64
	ways    []way
	curves  [][]curve // by knot, by way
	rooms   []point   // °C
	strip   float64   // K between two rooms
	free    float64   // share of the free surface's coefficient
	// lifted is when the containers left the pot, in seconds, where that parts the
	// curves; else 0.
	lifted float64
	tau    float64 // seconds, the body's slowest mode
}

// hypothesis is one time scale and way: a curve and its clock.
type hypothesis struct {
	slower      float64
	weight      float64 // before the readings
	way, first  int     // first: index of its first room among the weights
	near, far   dial
	towards     float64 // how much of the far one
	knot, scale int
}

// dial reads the curve of a knot by the clock of a hypothesis. In the pot it goes
// with the knot's own, so that all are lifted out at the same time, then with the
// hypothesis's.
type dial struct {
	curve         *curve
	lifted        float64 // s, of the kitchen
	inPot, inRoom float64 // nominal seconds to each of the kitchen's
}

// nominal is the curve's time at t.
func (d *dial) nominal(t float64) float64 {
	if t <= d.lifted {
		return t * d.inPot
	}
	return d.lifted*d.inPot + (t-d.lifted)*d.inRoom
}

// kitchen is the time when the curve's is u.
func (d *dial) kitchen(u float64) float64 {
	if pot := d.lifted * d.inPot; u > pot {
		return d.lifted + (u-pot)/d.inRoom
	}
	return u / d.inPot
}

func (d *dial) excess(t float64) (core, skin float64) { return d.curve.excess(d.nominal(t)) }

func newFan(q Question, boiling unit.Celsius) fan {
	f := fan{body: q.Body, prior: q.Prior, boiling: float64(boiling), strip: 2 * farRoom * float64(q.Room.Doubt) / (rooms - 1)}
	for _, p := range normal(rooms, farRoom) {
		f.rooms = append(f.rooms, point{float64(q.Room.Mid) + p.at*float64(q.Room.Doubt), p.weight})
	}
	lifted := math.Inf(1)
	if q.Lifted != nil {
		lifted = max(q.Lifted.Seconds(), 0)
	}
	f.ways = waysOf(lifted)
	count := 1
	if lifted > 0 && !math.IsInf(lifted, 1) {
		count, f.lifted = knots, lifted
	}
	f.free = q.Spacing.free()
	f.tau = q.Body.reference(f.free, float64(q.Room.Mid))
	schemes := q.Body.schemes()
	f.curves = make([][]curve, count)
	for k := range f.curves {
		s := surroundings{start: float64(boiling), room: float64(q.Room.Mid), free: f.free}
		s.lifted = lifted * math.Exp(-f.knot(k))
		for _, w := range f.ways {
			s.split, s.pot = w.split, w.pot
			f.curves[k] = append(f.curves[k], q.Body.cool(s, schemes))
		}
	}
	return f
}

// waysOf is a star of a normal distribution: its middle, and two points on each
// arm. Without a pot it has one arm less.
func waysOf(lifted float64) []way {
	const arm = 1. / 6
	ways := []way{
		{-starPoint * splitSpread, potSlower, arm},
		{starPoint * splitSpread, potSlower, arm},
	}
	if lifted > 0 {
		ways = append(ways,
			way{0, potSlower * math.Exp(-starPoint*potSpread), arm},
			way{0, potSlower * math.Exp(starPoint*potSpread), arm})
	}
	return append(ways, way{0, potSlower, 1 - arm*float64(len(ways))})
}

// reference is the body's slowest time constant by the coefficient that time
// scales are compared at.
func (b Body) reference(free, room float64) float64 {
	return b.slowest(free*convectionAndRadiation(referenceExcess, room, b.height), b.filled.conductivity)
}

// knot is the time scale of a knot's curves.
func (f *fan) knot(k int) float64 {
	return f.prior.Slower + f.prior.Spread*farScale*(2*float64(k)/(knots-1)-1)
}

func (f *fan) coldest() float64 { return f.rooms[0].at - f.strip/2 }
func (f *fan) warmest() float64 { return f.rooms[len(f.rooms)-1].at + f.strip/2 }

// each visits all time scales and ways.
func (f *fan) each(visit func(hypothesis)) {
	for i, s := range heavy(scales, farScale) {
		at := float64(i) * (knots - 1) / (scales - 1)
		if len(f.curves) == 1 {
			at = 0
		}
		knot := int(at)
		next := min(knot+1, len(f.curves)-1)
		slower := f.prior.Slower + f.prior.Spread*s.at
		clock := math.Exp(-slower)
		for w := range f.ways {
			visit(hypothesis{
				slower: slower, weight: s.weight * f.ways[w].weight,
				way: w, first: (i*len(f.ways) + w) * len(f.rooms),
				near: f.dial(knot, w, clock), far: f.dial(next, w, clock),
				towards: at - float64(knot), knot: knot, scale: i,
			})
		}
	}
}

func (f *fan) dial(knot, way int, clock float64) dial {
	return dial{curve: &f.curves[knot][way], lifted: f.lifted, inPot: math.Exp(-f.knot(knot)), inRoom: clock}
}

// excess is the share left in the middle and at the skin at t seconds.
func (h *hypothesis) excess(t float64) (core, skin float64) {
	core, skin = h.near.excess(t)
	if h.towards > 0 {
		c, s := h.far.excess(t)
		core, skin = core+h.towards*(c-core), skin+h.towards*(s-skin)
	}
	return core, skin
}

// reaching is when the middles of the curves reach a limit in each room, on their
// own clocks.
type reaching struct {
	nominal [][][]float64 // by knot, way and room
}

func (f *fan) reached(limit float64) reaching {
	r := reaching{nominal: make([][][]float64, len(f.curves))}
	for k, curves := range f.curves {
		r.nominal[k] = make([][]float64, len(curves))
		for w := range curves {
			times := make([]float64, len(f.rooms))
			for i, room := range f.rooms {
				times[i] = curves[w].reaches((limit - room.at) / (f.boiling - room.at))
			}
			r.nominal[k][w] = times
		}
	}
	return r
}

// at is the time in seconds for a hypothesis and a room.
func (r *reaching) at(h hypothesis, room int) float64 {
	t := h.near.kitchen(r.nominal[h.knot][h.way][room])
	if h.towards > 0 && !math.IsInf(t, 1) {
		t += h.towards * (h.far.kitchen(r.nominal[h.knot+1][h.way][room]) - t)
	}
	return t
}
