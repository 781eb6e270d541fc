package load

import (
	"fmt"
	"slices"

	"ryebell/internal/calc/unit"
)

// The ends of what Pack takes.
const (
	MaxUnits    = 10000
	MaxCapacity = 10000
)

// Capacity is how many units of a class fill the cooker when nothing else is in
// it. "Seven quarts or three 5 lb bags" means that a quart takes a seventh of it
// and a bag a third. C is whatever tells the caller's classes apart.
type Capacity[C comparable] map[C]int

// Item is a number of units of one class.
type Item[C comparable] struct {
	Class C
	Count int
}

// Load is what goes into the cooker at once, the large units first. The parts
// of its units add up to one pot at most.
type Load[C comparable] []Item[C]

// NoCapacityError says that nobody has stated how many units of a class the
// cooker takes.
type NoCapacityError[C comparable] struct{ Class C }

// Error is a line for logs.
func (e *NoCapacityError[C]) Error() string {
	return fmt.Sprintf("load: no capacity for class %v", e.Class)
}

// FinenessError says that the capacities have no common measure that can be
// counted. It takes a dozen classes of odd capacities in one load.
type FinenessError struct{ Classes int }

// Error is a line for logs.
func (e *FinenessError) Error() string {
	return fmt.Sprintf("load: %d classes have no common measure", e.Classes)
}

// Pack shares units out over few loads of one cooker, exactly: parts are
// counted in a common measure, never as decimals. It puts large units first;
// where that takes more loads than the sum of the parts asks for, it searches
// for better ones among a bounded number of arrangements. So the number of
// loads is least in a kitchen's cases and near it for a thousand units. The
// same items give the same loads; classes of equal size keep the order in which
// they came. A class named twice is taken together.
//
// A class without a capacity is a *NoCapacityError. Counts under 0, more than
// MaxUnits units in all, or a capacity outside 1 to MaxCapacity are a
// *unit.RangeError. See also FinenessError.
func Pack[C comparable](items []Item[C], capacity Capacity[C]) ([]Load[C], error) {
	merged, err := merge(items)
	if err != nil {
		return nil, err
	}
	pot, err := measure(merged, capacity)
	if err != nil {
		return nil, err
	}
	slices.SortStableFunc(merged, func(a, b Item[C]) int {
		return capacity[a.Class] - capacity[b.Class]
	})
	p := packing{pot: pot}
	for _, it := range merged {
		p.sizes = append(p.sizes, pot/int64(capacity[it.Class]))
		p.left = append(p.left, it.Count)
	}
	var loads []Load[C]
	for _, pattern := range p.solve() {
		var l Load[C]
		for i, n := range pattern {
			if n > 0 {
				l = append(l, Item[C]{Class: merged[i].Class, Count: n})
			}
		}
		loads = append(loads, l)
	}
	return loads, nil
}

// Room is how many more units of a class the cooker takes beside a load: two
// bags of "seven quarts or three bags" leave room for two quarts. It is 0 when
// the load itself doesn't fit. Errors are those of Pack.
func Room[C comparable](load Load[C], class C, capacity Capacity[C]) (int, error) {
	merged, err := merge(append(slices.Clone(load), Item[C]{Class: class}))
	if err != nil {
		return 0, err
	}
	pot, err := measure(merged, capacity)
	if err != nil {
		return 0, err
	}
	free := pot
	for _, it := range merged {
		free -= int64(it.Count) * (pot / int64(capacity[it.Class]))
	}
	return int(max(free, 0) / (pot / int64(capacity[class]))), nil
}

// merge takes classes together, in order of first appearance; a class of no
// units is dropped only by its caller, so that its capacity is still checked.
func merge[C comparable](items []Item[C]) ([]Item[C], error) {
	var merged []Item[C]
	total := 0
	for _, it := range items {
		if err := unit.Check(unit.Count, float64(it.Count), 0, MaxUnits); err != nil {
			return nil, err
		}
		total += it.Count
		if err := unit.Check(unit.Count, float64(total), 0, MaxUnits); err != nil {
			return nil, err
		}
		i := slices.IndexFunc(merged, func(m Item[C]) bool { return m.Class == it.Class })
		if i < 0 {
			merged = append(merged, it)
			continue
		}
		merged[i].Count += it.Count
	}
	return merged, nil
}

// finest is the largest common measure that leaves room to add up MaxUnits
// units in an int64.
const finest = int64(1) << 45

// measure is the least common multiple of the capacities: in it a pot, and each
// unit's part of it, is a whole number.
func measure[C comparable](items []Item[C], capacity Capacity[C]) (int64, error) {
	pot := int64(1)
	for _, it := range items {
		n, ok := capacity[it.Class]
		if !ok {
			return 0, &NoCapacityError[C]{Class: it.Class}
		}
		if err := unit.Check(unit.Count, float64(n), 1, MaxCapacity); err != nil {
			return 0, err
		}
		pot *= int64(n) / gcd(pot, int64(n))
		if pot > finest {
			return 0, &FinenessError{Classes: len(items)}
		}
	}
	return pot, nil
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
