package kitchen

import (
	"slices"

	"ryebell/internal/calc/unit"
)

// Fix mends an order: what is set in fix replaces what was ordered. A count or a
// size belongs to the item it fits (the one of that vessel, or of which there
// were so many, was); a grain, a route or a moisture to all. It reports false
// when it can't tell which item is meant, or when nothing would change.
func (o Order) Fix(fix Item, was int) (Order, bool) {
	out := o
	out.Items = slices.Clone(o.Items)
	if fix.Count != 0 || fix.Container != (Container{}) || fix.Mass != 0 {
		i, ok := o.meant(fix, was)
		if !ok {
			return o, false
		}
		out.Items[i] = out.Items[i].over(fix)
	} else {
		for i, it := range out.Items {
			out.Items[i] = it.over(fix)
		}
	}
	return out, !slices.Equal(out.Items, o.Items)
}

// meant finds the one item that a correction is about.
func (o Order) meant(fix Item, was int) (int, bool) {
	var fits []int
	for i, it := range o.Items {
		if was > 0 && it.Count != was {
			continue
		}
		if fix.Container.Vessel != 0 && it.Container.Vessel != fix.Container.Vessel && len(o.Items) > 1 {
			continue
		}
		fits = append(fits, i)
	}
	if len(fits) > 1 && fix.Container.Sized() {
		fits = slices.DeleteFunc(fits, func(i int) bool { return !o.Items[i].Container.Same(fix.Container) })
	}
	if len(fits) != 1 {
		return 0, false
	}
	return fits[0], true
}

// over is an item once a correction was laid over it.
func (it Item) over(fix Item) Item {
	if fix.Count != 0 {
		it.Count = fix.Count
	}
	switch {
	case fix.Container.Sized():
		it.Container, it.Mass = fix.Container, 0
	case fix.Container.Vessel != 0 && fix.Container.Vessel != it.Container.Vessel:
		it.Container = fix.Container // the size of a bag says nothing about a jar
	}
	it.Mass = firstSet(fix.Mass, it.Mass)
	it.Basis = firstSet(fix.Basis, it.Basis)
	it.Grain = firstSet(fix.Grain, it.Grain)
	it.Route = firstSet(fix.Route, it.Route)
	it.Gypsum = firstSet(fix.Gypsum, it.Gypsum)
	if fix.Moisture != 0 || fix.Ratio != 0 {
		it.Moisture, it.Ratio = fix.Moisture, fix.Ratio
	}
	return it
}

// FixMass mends the one weight in an order: of the loose grain, or of the grain
// in each container. It reports false when the order has several items.
func (o Order) FixMass(mass unit.Grams) (Order, bool) {
	if len(o.Items) != 1 {
		return o, false
	}
	it := o.Items[0]
	if it.Container.Vessel == Bag && it.Mass == 0 {
		it.Container.Weight = mass
	} else {
		it.Mass = mass
	}
	o.Items = []Item{it}
	return o, true
}
