package coolingtest

// core is the warmest point of the body, °C. It lies on the axis, between cells:
// values there follow from the parabola through those beside it.
func (s *solid) core() float64 {
	best := 0
	for k := range s.nz {
		if s.axis(k) > s.axis(best) {
			best = k
		}
	}
	mid := s.axis(best)
	if best == 0 || best == s.nz-1 {
		return mid
	}
	under, over := s.axis(best-1), s.axis(best+1)
	if bend := 2*mid - under - over; bend > 0 {
		mid += (over - under) * (over - under) / (8 * bend)
	}
	return mid
}

// axis is the temperature on the axis at height k.
func (s *solid) axis(k int) float64 {
	if s.ny == 1 {
		return middle(s.temperature[s.cell(0, 0, k)], s.temperature[s.cell(1, 0, k)])
	}
	return middle(
		middle(s.temperature[s.cell(0, 0, k)], s.temperature[s.cell(1, 0, k)]),
		middle(s.temperature[s.cell(0, 1, k)], s.temperature[s.cell(1, 1, k)]),
	)
}

// middle carries the two cells beside a plane of symmetry to that plane: an even
// parabola through values half a cell and a cell and a half away.
func middle(near, far float64) float64 { return (9*near - far) / 8 }

// touching is the temperature in the middle of the back face, where a neighbour
// touches it, °C. Only a brick has one.
func (s *solid) touching() float64 {
	k := s.nz / 2
	first, second := k*s.nx, k*s.nx+1 // put went along i, j outermost only, then k
	return middle(s.back.outside[first], s.back.outside[second])
}
