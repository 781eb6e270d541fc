package phrase

import (
	"math"

	"ryebell/internal/calc/hydration"
	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// fillQuestion asks which jars hold that much.
func fillQuestion(about string, fill kitchen.JarFill) *asking {
	return &asking{gap: WhichSize, about: about, options: []string{"quart", "pint", "half gallon", "litre"}, fill: func(reply cursor) (string, cursor, bool) {
		k, e, ok := sizeOf(reply, kitchen.Jar)
		fill.Container = k
		return changeText(fill), e, ok && k.Volume > 0
	}}
}

// storedAtMost is the most water that grain has as bought, in hundredths: above
// it a share is of grain made ready.
const storedAtMost = 25

// shareRule reads "agar 44%", "rye 13%", where it isn't said of what. It must be
// all that was said: in an order it belongs to an item.
func shareRule(c cursor) (kitchen.Change, cursor, bool) {
	var r kitchen.RatioIs
	d := c.over("our", "for", "we use", "the")
	if c.i > 0 {
		return nil, c, false
	}
	switch t := d.token().(type) {
	case RouteWord:
		r.Route = t.Route
	case GrainWord:
		r.Grain = t.Grain
	default:
		return nil, c, false
	}
	p, e, ok := d.use(1).over("is", "at", "=", ":", "to", "with", "gets", "of").percent()
	if !ok || p <= 0 || p >= 100 || !e.over("please", "pls").parted().done() {
		return nil, c, false
	}
	r.Ratio = unit.Ratio(unit.Percent(p))
	if r.Ratio < driest {
		return nil, c, false
	}
	if p <= storedAtMost && r.Grain != 0 {
		stored := kitchen.StorageMoisture{Grain: r.Grain, Moisture: unit.Percent(p)}
		e.near = &Near{Trouble: Incomplete, Got: c.s.typed(c.i, e.i), Example: changeText(stored)}
		return stored, e, true
	}
	e.ask = &asking{gap: MoistureOrRatio, about: c.s.typed(c.i, e.i), options: []string{"water ratio", "moisture"}, fill: func(reply cursor) (string, cursor, bool) {
		ok := false
		if isMoist(reply.word(0)) {
			wet := r
			wet.Ratio, ok = ratioOf(unit.Percent(p))
			return ratioText(wet), reply.use(1), ok
		}
		f, ok := reply.phrase("water", "ratio", "water ratio", "water per grain", "per grain", "hydration")
		return ratioText(r), f, ok && r.Ratio >= driest && r.Ratio <= wettest
	}}
	return r, e, true
}

// ratioOf is the water per dry grain that makes a moisture of grain stored as
// grain usually is, to two decimals.
func ratioOf(moisture unit.Fraction) (unit.Ratio, bool) {
	const stored = 0.12
	r, err := hydration.RatioFor(moisture, stored)
	return unit.Ratio(math.Round(float64(r)*100) / 100), err == nil && r >= driest && r <= wettest
}
