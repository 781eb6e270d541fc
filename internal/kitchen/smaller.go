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
		less, err := s.smaller(it)
		if err != nil {
			return o, false
		}
		out.Items = append(out.Items, less)
	}
	p, err := s.Work(out)
	return out, err == nil && !p.Hold.TooLong
}

// smaller is an item in smaller containers; itself, where it is in them already.
func (s Settings) smaller(it Item) (Item, error) {
	less := it
	less.Container, less.Mass = Container{Vessel: Jar, Volume: unit.USQuarts(1)}, 0
	switch it.Container.Vessel {
	case Bag:
		less.Container = Container{Vessel: Bag, Weight: unit.Pounds(3)}
	case Jar:
	case 0:
		return it, nil
	}
	now, err := s.line(it)
	if err != nil {
		return it, err
	}
	then, err := s.line(less)
	if err != nil {
		return it, err
	}
	if now.box().heated().size() <= then.box().heated().size()*1.001 {
		return it, nil
	}
	less.Count = int(math.Ceil(float64(it.Count) * float64(now.Exact.Wetted/then.Exact.Wetted) * 0.99))
	return less, nil
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
