package kitchen

import (
	"math"

	"ryebell/internal/calc/unit"
)

// Smaller is an order of about as much wetted grain in smaller containers, which
// can be cooked here when this one can't: bags of 3 lb instead of larger bags,
// quarts instead of larger jars. It reports false where that doesn't help.
func (s Settings) Smaller(o Order) (Order, bool) {
	out := o
	out.Items = nil
	for _, it := range o.Items {
		small := Container{Vessel: Jar, Volume: unit.USQuarts(1)}
		if it.Container.Vessel == Bag {
			small = Container{Vessel: Bag, Weight: unit.Pounds(3)}
		}
		if it.sized().Container.size() > small.size() {
			times := math.Ceil(float64(it.Count) * it.sized().Container.size() / small.size() * 0.99)
			it.Count, it.Container, it.Mass = int(times), small, 0
		}
		out.Items = append(out.Items, it)
	}
	p, err := s.Work(out)
	return out, err == nil && !p.Hold.TooLong
}

// Slip is an order whose one size out of range was brought back by shifting its
// decimal point, as when 5 was typed as 500. It reports false when that doesn't
// give a size that is in range.
func (o Order) Slip() (Order, bool) {
	if len(o.Items) != 1 {
		return o, false
	}
	it := o.Items[0]
	for range 3 {
		it.Container.Weight /= 10
		it.Container.Volume /= 10
		if it.Container.Sized() && checkItem(it) == nil {
			o.Items = []Item{it}
			return o, true
		}
	}
	return o, false
}
