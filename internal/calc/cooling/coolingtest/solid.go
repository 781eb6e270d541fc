package coolingtest

// solid is a body that is being cooled: explicit finite volumes, first order in
// time and second in space.
type solid struct {
	grid
	body        Body
	temperature []float64 // °C, by cell
	conducts    []float64 // W/(m K)
	gains       []float64 // W
	heat        []float64 // J/K

	side, back, top, bottom surface
}

// surface is one face of a solid with what was last found on each of its cells.
type surface struct {
	face    Face
	cells   []int
	areas   []float64 // m²
	depth   float64   // m, from the surface to the cells' centres
	outside []float64 // °C, where a probe is laid: beyond the face's resistance
}

func newSolid(b Body, start float64, fineness int) *solid {
	s := &solid{grid: b.grid(fineness), body: b}
	n := s.cells()
	s.temperature, s.conducts = make([]float64, n), make([]float64, n)
	s.gains, s.heat = make([]float64, n), make([]float64, n)
	for k := range s.nz {
		for j := range s.ny {
			for i := range s.nx {
				c := s.cell(i, j, k)
				s.temperature[c] = start
				s.heat[c] = s.volume[i] * b.HeatCapacity
				s.wall(c, i, j)
				s.lay(c, i, j, k)
			}
		}
	}
	s.side.depth, s.back.depth, s.top.depth, s.bottom.depth = s.dx/2, s.dy/2, s.dz/2, s.dz/2
	for _, f := range s.surfaces() {
		f.begin(start)
	}
	s.dress(b.Side, b.Back, b.Top, b.Bottom)
	return s
}

// wall adds the heat of the glass to the outermost cells.
func (s *solid) wall(c, i, j int) {
	if i == s.nx-1 {
		s.heat[c] += s.body.Glass * s.areaX[i]
	}
	if s.ny > 1 && j == s.ny-1 {
		s.heat[c] += s.body.Glass * s.areaY[i]
	}
}

// lay puts a cell on the surfaces it touches.
func (s *solid) lay(c, i, j, k int) {
	if i == s.nx-1 {
		s.side.put(c, s.areaX[i])
	}
	if s.ny > 1 && j == s.ny-1 {
		s.back.put(c, s.areaY[i])
	}
	if k == 0 {
		s.bottom.put(c, s.areaZ[i])
	}
	if k == s.nz-1 {
		s.top.put(c, s.areaZ[i])
	}
}

func (s *solid) surfaces() []*surface {
	return []*surface{&s.side, &s.back, &s.top, &s.bottom}
}

// dress gives the faces another way of losing heat.
func (s *solid) dress(side, back, top, bottom Face) {
	s.side.face, s.back.face, s.top.face, s.bottom.face = side, back, top, bottom
}

// step lets dt seconds go by in surroundings at air, in °C, with a draught, in
// W/(m² K). It returns the heat that the whole body gave away, in watts.
func (s *solid) step(dt, air, draught float64) float64 {
	for c, t := range s.temperature {
		s.conducts[c] = s.body.conductivity(t)
		s.gains[c] = 0
	}
	s.conduct()
	given := s.side.give(s, air, draught)
	given += s.back.give(s, air, draught)
	given += s.top.give(s, air, draught)
	given += s.bottom.give(s, air, draught)
	for c := range s.temperature {
		s.temperature[c] += dt * s.gains[c] / s.heat[c]
	}
	return given * s.mirror
}

// conduct adds what flows between cells.
func (s *solid) conduct() {
	row, plane := s.nx, s.nx*s.ny
	c := 0
	for k := range s.nz {
		for j := range s.ny {
			for i := range s.nx {
				if i+1 < s.nx {
					s.flow(c, c+1, s.areaX[i]/s.dx)
				}
				if j+1 < s.ny {
					s.flow(c, c+row, s.areaY[i]/s.dy)
				}
				if k+1 < s.nz {
					s.flow(c, c+plane, s.areaZ[i]/s.dz)
				}
				c++
			}
		}
	}
}

func (s *solid) flow(a, b int, areaOverWay float64) {
	watts := (s.conducts[a] + s.conducts[b]) / 2 * areaOverWay * (s.temperature[a] - s.temperature[b])
	s.gains[a] -= watts
	s.gains[b] += watts
}

// stored is the heat in the whole body over 0 °C, in joules.
func (s *solid) stored() float64 {
	sum := 0.0
	for c, t := range s.temperature {
		sum += s.heat[c] * t
	}
	return sum * s.mirror
}

func (f *surface) put(c int, area float64) {
	f.cells, f.areas = append(f.cells, c), append(f.areas, area)
}

func (f *surface) begin(start float64) {
	n := len(f.cells)
	f.outside = make([]float64, n)
	for i := range n {
		f.outside[i] = start
	}
}

// smallest coefficient, in W/(m² K), so that a face that loses nothing needs no
// case of its own.
const smallest = 1e-12

// give takes from the cells what the surface loses, and returns it in watts. The
// coefficient goes by the outer temperature of the step before: it moves by
// little within a step.
func (f *surface) give(s *solid, air, draught float64) float64 {
	sum := 0.0
	for n, c := range f.cells {
		h := max(f.face.coefficient(f.outside[n], air, draught), smallest)
		within := f.depth/s.conducts[c] + f.face.Resistance
		flux := (s.temperature[c] - air) / (within + 1/h)
		f.outside[n] = air + flux/h
		s.gains[c] -= flux * f.areas[n]
		sum += flux * f.areas[n]
	}
	return sum
}

// mean is the mean temperature of this surface, °C.
func (f *surface) mean() float64 {
	sum := 0.0
	for _, t := range f.outside {
		sum += t
	}
	return sum / float64(len(f.outside))
}
