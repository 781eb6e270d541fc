package kitchen

import (
	"slices"

	"ryebell/internal/calc/unit"
)

// Fixed is what became of a correction.
type Fixed uint8

// An order was Mended; stands as it did (Unchanged); or it is Unclear which of its
// items was meant.
const (
	Mended Fixed = iota + 1
	Unchanged
	Unclear
)

// String returns the word for logs.
func (f Fixed) String() string {
	switch f {
	case Mended:
		return "mended"
	case Unchanged:
		return "unchanged"
	case Unclear:
		return "unclear"
	}
	return "not fixed"
}

// Fix mends an order: what is set in fix replaces what was ordered. A count or a
// size belongs to the item it fits (the one of that vessel, or of which there
// were so many, was); a grain, a route or a moisture to all. An order that isn't
// Mended comes back as it was.
func (o Order) Fix(fix Item, was int) (Order, Fixed) {
	out := o
	out.Items = slices.Clone(o.Items)
	if fix.Count != 0 || fix.Container != (Container{}) || fix.Mass != 0 {
		i, ok := o.meant(fix, was)
		if !ok {
			return o, Unclear
		}
		out.Items[i] = out.Items[i].over(fix)
	} else {
		for i, it := range out.Items {
			out.Items[i] = it.over(fix)
		}
	}
	if slices.Equal(out.Items, o.Items) {
		return o, Unchanged
	}
	return out, Mended
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
	if fix.loose() && it.Container.Vessel != 0 {
		it = it.filledWith(fix.Mass) // an amount says nothing about how many
		fix.Count, fix.Mass = 0, 0
	}
	if fix.Count != 0 {
		it.Count = fix.Count
	}
	switch {
	case fix.Container.Sized() && fix.Container.Same(it.Container):
	case fix.Container.Sized():
		it.Container, it.Mass = fix.Container, 0
	case fix.Container.Vessel != 0 && fix.Container.Vessel != it.Container.Vessel:
		it.Container = fix.Container // the size of a bag says nothing about a jar
	}
	it.Mass = firstSet(fix.Mass, it.Mass)
	it.Basis = firstSet(fix.Basis, it.Basis)
	it.Grain = firstSet(fix.Grain, it.Grain)
	it.Route = firstSet(fix.Route, it.Route)
	if fix.Gypsum != 0 || fix.NoGypsum {
		it.Gypsum, it.NoGypsum = fix.Gypsum, fix.NoGypsum
	}
	if fix.wateredAs() {
		it.Moisture, it.Ratio, it.Parched = fix.Moisture, fix.Ratio, fix.Parched
	}
	return it
}

// wateredAs reports whether an item says how wet its grain is to be.
func (it Item) wateredAs() bool { return it.Moisture != 0 || it.Ratio != 0 || it.Parched }

// loose reports whether an item is an amount of grain in no vessel.
func (it Item) loose() bool { return it.Container == Container{} && it.Mass > 0 && it.Count == 1 }

// filledWith is an item with another weight of grain: a bag is known by it, a jar
// is filled with it.
func (it Item) filledWith(mass unit.Grams) Item {
	if it.Container.Vessel == Bag && it.Mass == 0 {
		it.Container.Weight = mass
	} else {
		it.Mass = mass
	}
	return it
}

// FixMass mends the one weight in an order: of the loose grain, or of the grain
// in each container. Of several items it is Unclear which is meant.
func (o Order) FixMass(mass unit.Grams) (Order, Fixed) {
	if len(o.Items) != 1 {
		return o, Unclear
	}
	it := o.Items[0].filledWith(mass)
	if it == o.Items[0] {
		return o, Unchanged
	}
	o.Items = []Item{it}
	return o, Mended
}
