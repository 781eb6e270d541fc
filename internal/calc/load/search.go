package load

import "slices"

// searchNodes bounds the search for fewer loads: a few milliseconds.
const searchNodes = 20000

// packing is a bin packing of classes of equal units, sizes in a common measure
// in which the pot is a whole number, largest first.
type packing struct {
	pot   int64
	sizes []int64
	left  []int // units not placed yet, per class
	nodes int   // arrangements looked at
}

// pattern is how many units of each class one load holds.
type pattern = []int

// solve returns the loads. First-fit decreasing is good and fast, but not
// always best: 1/2, 3 × 1/3, 2 × 1/4 fill two pots, and it takes three. So fewer
// loads are searched for as long as there could be fewer.
func (p *packing) solve() []pattern {
	greedy := p.greedy()
	var total int64
	for i, n := range p.left {
		total += int64(n) * p.sizes[i]
	}
	least := int((total + p.pot - 1) / p.pot)
	for n := least; n < len(greedy); n++ {
		if found, ok := p.search(n, int64(n)*p.pot-total); ok {
			return found
		}
	}
	return greedy
}

// greedy fills one load after the other with the largest units that still fit.
func (p *packing) greedy() []pattern {
	left := slices.Clone(p.left)
	var loads []pattern
	for slices.ContainsFunc(left, func(n int) bool { return n > 0 }) {
		room, load := p.pot, make(pattern, len(left))
		for i, size := range p.sizes {
			load[i] = int(min(int64(left[i]), room/size))
			room -= int64(load[i]) * size
			left[i] -= load[i]
		}
		loads = append(loads, load)
	}
	return loads
}

// search looks for an arrangement in n loads that together leave waste empty.
// Each load holds one of the largest units left (some load must) and as much as
// fits (filling a load never hurts the rest).
func (p *packing) search(n int, waste int64) ([]pattern, bool) {
	first := slices.IndexFunc(p.left, func(c int) bool { return c > 0 })
	if first < 0 {
		return nil, true
	}
	if n == 0 {
		return nil, false
	}
	load := make(pattern, len(p.left))
	var found []pattern
	ok := p.fill(load, first, p.pot, func(room int64) bool {
		if room > waste || load[first] == 0 {
			return false
		}
		rest, ok := p.search(n-1, waste-room)
		if ok {
			found = append([]pattern{slices.Clone(load)}, rest...)
		}
		return ok
	})
	return found, ok
}

// fill tries every full load from class i on, large units first, and calls done
// with the room that remains, until done agrees or the nodes are used up. While
// done runs, p.left is what the load leaves.
func (p *packing) fill(load pattern, i int, room int64, done func(room int64) bool) bool {
	if p.nodes++; p.nodes > searchNodes {
		return false
	}
	if i == len(p.left) {
		return !p.fits(room) && done(room)
	}
	for c := int(min(int64(p.left[i]), room/p.sizes[i])); c >= 0; c-- {
		load[i] = c
		p.left[i] -= c
		ok := p.fill(load, i+1, room-int64(c)*p.sizes[i], done)
		p.left[i] += c
		if ok {
			return true
		}
	}
	load[i] = 0
	return false
}

// fits says whether a unit that is left would go into the room.
func (p *packing) fits(room int64) bool {
	for i, n := range p.left {
		if n > 0 && p.sizes[i] <= room {
			return true
		}
	}
	return false
}
