package phrase

import (
	"math"

	"ryebell/internal/calc/unit"
	"ryebell/internal/kitchen"
)

// waterTold reads "1 litre left in the pot", "3 litres in", "added 1 L", "boiled
// dry".
func waterTold(c cursor, t telling) (event, cursor, bool) {
	if d, ok := c.phrase(potDry...); ok {
		return event{entry: kitchen.WaterLeft{}}, d, true
	}
	if d, ok := c.phrase("water left", "water left in the pot", "left in the pot", "found", "leftover water"); ok {
		v, d, ok := d.over(":", "is", "about", "was").quantity(Volume)
		return event{entry: kitchen.WaterLeft{Water: unit.Litres(v.Value)}}, d.over("of water", "water", "left", "in the pot"), ok && v.Value >= 0 && c.word(0) != "found"
	}
	if w, d, ok := toppedUpTo(c); ok {
		return event{entry: w}, d, true
	}
	d, added := c.phrase(waterAdded...)
	e, put := d.phrase(waterPut...)
	if put {
		d = e
	}
	d = d.over("about", "abt", "around", "roughly", "another", "only", "just", "some", "now", "still")
	v, d, ok := d.quantity(Volume)
	if !ok || v.Value < 0 {
		return event{}, c, false
	}
	if l, more := d.phrase("left", "water left", "of water left", "left in the pot", "left over", "of water left in the pot", "water left in the pot", "water left in pot", "of water left in pot", "still in the pot",
		"left in", "left in pot", "left in it", "left at the end", "of water still in", "left in the cooker", "of water still in the pot", "of water left in the cooker", "left in there"); more && !added {
		wet := v.Unit == "l" || v.Unit == "ml" || l.i > d.i+1
		return event{entry: kitchen.WaterLeft{Water: unit.Litres(v.Value)}}, l, wet
	}
	f, in := d.phrase("in", "water", "of water", "in the pot", "of water in", "water in", "of water in the pot", "water in the pot", "of water in it", "under the rack",
		"of water under the rack", "water under the rack", "more", "more water", "of water more", "more in", "of water is in", "water is in", "are in", "is in", "in the cooker",
		"to the pot", "of water to the pot", "water to the pot", "of water in the cooker")
	wet := v.Unit == "l" || v.Unit == "ml" || f.i > d.i && f.word(-1) == "water" || d.word(0) == "of" || d.word(0) == "water" || d.word(-2) == "water"
	if !wet || !added && !in && !put {
		return event{}, c, false
	}
	return event{entry: kitchen.WaterIn{Water: unit.Litres(v.Value), Added: added}}, f, true
}

// toppedUpTo reads "topped up to 3 l": as a bound, "up to 3 l", it has been read.
func toppedUpTo(c cursor) (kitchen.WaterIn, cursor, bool) {
	d, ok := c.phrase(waterFilled...)
	r, bound := d.token().(Range)
	if !ok || !bound || len(r.Senses) == 0 || r.Senses[0].Dim != Volume || math.IsInf(r.Hi, 1) || !(math.IsInf(r.Lo, -1) || r.Lo == 0) {
		return kitchen.WaterIn{}, c, false
	}
	return kitchen.WaterIn{Water: unit.Litres(r.Hi * r.Senses[0].Value)}, d.use(1).maybe("of water", "water"), true
}

// potDry are ways to say that no water was left.
var potDry = []string{
	"no water left", "boiled dry", "ran dry", "it ran dry", "no water left in the pot", "pot ran dry", "pot is dry", "pot boiled dry",
	"water is all gone", "no water in the pot", "out of water",
}

// waterAdded are words before water that was put to what was there.
var waterAdded = []string{
	"added", "add", "topped up", "topped up with", "put in another", "topped up by", "topped it up with", "added another", "poured in another", "topping up", "topped up another",
}

// waterPut are words before the water in the pot.
var waterPut = []string{
	"put in", "put", "poured in", "poured", "filled in", "filled with", "water", "water is at", "water in", "filled it with", "water:", "water level",
	"there's", "pot has",
}

// waterFilled are words before the water that was topped up to.
var waterFilled = []string{
	"topped", "topped it", "filled", "filled it", "topped the pot", "filled the pot",
}
