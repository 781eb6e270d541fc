package coolingtest

import "math"

// grid divides a body into nx·ny·nz cells. The first axis is the radius or half of
// Across, the second half of Deep, the third the whole height: what lies under the
// body differs from what lies over it. A cylinder has one cell around, with no
// face in the second direction. Areas and volumes depend on the first index alone.
type grid struct {
	nx, ny, nz int
	dx, dy, dz float64   // m
	volume     []float64 // m³
	areaX      []float64 // m², the outward face of cell i
	areaY      []float64
	areaZ      []float64
	mirror     float64 // how many of these pieces make the body
}

// The cells of the coarse grid: fineness 1. The proof in the tests takes more.
const (
	cellsRound, cellsUp                 = 8, 10
	cellsAcross, cellsDeep, cellsUpward = 4, 4, 7
)

func (b Body) grid(fineness int) grid {
	if b.IsJar() {
		return cylinderGrid(float64(b.Radius), float64(b.Height), cellsRound*fineness, cellsUp*fineness)
	}
	return brickGrid(float64(b.Across), float64(b.Deep), float64(b.Height),
		cellsAcross*fineness, cellsDeep*fineness, cellsUpward*fineness)
}

func cylinderGrid(radius, height float64, nr, nz int) grid {
	g := grid{nx: nr, ny: 1, nz: nz, dx: radius / float64(nr), dz: height / float64(nz), mirror: 1}
	for i := range nr {
		in, out := float64(i)*g.dx, float64(i+1)*g.dx
		ring := math.Pi * (out*out - in*in)
		g.areaX = append(g.areaX, 2*math.Pi*out*g.dz)
		g.areaY = append(g.areaY, 0)
		g.areaZ = append(g.areaZ, ring)
		g.volume = append(g.volume, ring*g.dz)
	}
	return g
}

func brickGrid(across, deep, height float64, nx, ny, nz int) grid {
	g := grid{
		nx: nx, ny: ny, nz: nz, mirror: 4,
		dx: across / 2 / float64(nx), dy: deep / 2 / float64(ny), dz: height / float64(nz),
	}
	for range nx {
		g.areaX = append(g.areaX, g.dy*g.dz)
		g.areaY = append(g.areaY, g.dx*g.dz)
		g.areaZ = append(g.areaZ, g.dx*g.dy)
		g.volume = append(g.volume, g.dx*g.dy*g.dz)
	}
	return g
}

// cell is the index of a cell; columns of equal j and k lie together.
func (g *grid) cell(i, j, k int) int { return (k*g.ny+j)*g.nx + i }

func (g *grid) cells() int { return g.nx * g.ny * g.nz }

// longestStep is the time step, in seconds, that an explicit solution can take
// when nothing conducts better than k, in W/(m K), and a cell holds heat J/(m³ K):
// every cell's new temperature stays a mean of those around it. The outermost
// cells are taken as if their surface were held at the surroundings'.
func (g *grid) longestStep(k, heat float64) float64 {
	longest := math.Inf(1)
	for i := range g.nx {
		in, out := 0.0, g.areaX[i]
		if i > 0 {
			in = g.areaX[i-1]
		}
		if i == g.nx-1 {
			out *= 2
		}
		sum := (in+out)/g.dx + 3*g.areaZ[i]/g.dz
		if g.ny > 1 {
			sum += 3 * g.areaY[i] / g.dy
		}
		longest = min(longest, g.volume[i]*heat/(k*sum))
	}
	return longest
}
