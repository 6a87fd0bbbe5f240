package heat

import (
	"math"

	"pourwright/internal/stage/resin/heat/lanes"
)

// A stepper advances a grid: what lanes works on, and what leads it over the grid.
type stepper struct {
	*grid
	lanes.Cells
	threads  int
	rates    *rateTable
	refC     float64
	pourJKGK float64  // capacity of the poured material at the reference
	windows  []window // cells that touch air, by face
	lines    []line   // per row and layer
	blocks   []strip  // rows of layers that are swept along x together, per row
	perRow   int      // blocks
	desks    []desk   // per thread
	rows     []rowSum
	dt       float64 // of the factors
	weight   float64 // of the step's end in the factors: a half, or 1 while a new start is damped
	dtPrev   float64
	hotAtC   float64 // warmest when the capacities of the factors were taken
}

// A line is the cells of a row and layer that hold anything, from a to before b, and those
// that react, in whole lanes.
type line struct{ a, b, pa, pb int32 }

// A strip is up to lanes.Width layers of a row, with what is turned for the sweep along x:
// capacities, conductances, factors.
type strip struct {
	layer, count, a, b int
	cap, right, pe, f  []float32
}

// A desk is where a thread works on a row.
type desk struct{ swept, work []float32 }

// A rowSum is what the second pass sees in a row of cells: the greatest correction, and
// the warmest poured cell with its line.
type rowSum struct {
	worst, hot float32
	line       int32
	_          [13]int32 // rows of different threads lie apart in memory
}

func newStepper(g *grid, rates *rateTable, c Case, refC float64, threads int) *stepper {
	s := &stepper{grid: g, Cells: lanes.New(g.nx, g.ny, g.nz), threads: threads, rates: rates, refC: refC, rows: make([]rowSum, g.ny), hotAtC: math.Inf(-1)}
	s.pourJKGK = c.Pour.CJKGK + c.PourRiseJKGK2*(refC-warmC)
	s.HJKG, s.RiseJKGK2, s.RefC, s.Rates = float32(c.HJKG), float32(c.PourRiseJKGK2), float32(refC), rates.Table
	s.Mass, s.GX, s.GY, s.GZ, s.Cap = g.mass, g.gx, g.gy, g.gz, g.cap
	if s.RiseJKGK2 != 0 {
		s.Cap = make([]float32, len(g.cap))
		for at, m := range g.mass {
			s.Cap[at] = g.cap[at] + m*s.RiseJKGK2*float32(refC-warmC)
		}
	}
	copy(s.CapF, s.Cap)
	s.findLines()
	s.findWindows()
	s.findBlocks()
	for range max(1, threads) {
		s.desks = append(s.desks, desk{make([]float32, s.nz*s.nx), make([]float32, s.nx*lanes.Width)})
	}
	return s
}

// warmC is the temperature at which capacities are stated.
const warmC = 25.0

func (s *stepper) findLines() {
	s.lines = make([]line, s.ny*s.nz)
	for n := range s.lines {
		from := n * s.nx
		a, b := spanOf(s.Cap[from : from+s.nx])
		pa, pb := spanOf(s.Mass[from : from+s.nx])
		s.lines[n] = line{int32(a), int32(b), int32(pa), int32(pb)}
	}
}

// spanOf returns where v is not 0, in whole lanes.
func spanOf(v []float32) (a, b int) {
	a = len(v)
	for i, x := range v {
		if x > 0 {
			a, b = min(a, i), i+1
		}
	}
	if b == 0 {
		return 0, 0
	}
	return a / lanes.Width * lanes.Width, (b + lanes.Width - 1) / lanes.Width * lanes.Width
}

// findBlocks lays the layers of every row into blocks; the last one overlaps the one
// before, so that it is whole: both find the same.
func (s *stepper) findBlocks() {
	s.perRow = (s.nz + lanes.Width - 1) / lanes.Width
	s.blocks = make([]strip, s.ny*s.perRow)
	parallel(s.threads, s.ny, func(j int) {
		for n := range s.perRow {
			b := &s.blocks[j*s.perRow+n]
			b.layer = max(0, min(n*lanes.Width, s.nz-lanes.Width))
			b.count = min(lanes.Width, s.nz)
			b.a = s.nx
			for k := b.layer; k < b.layer+b.count; k++ {
				if l := s.lines[j*s.nz+k]; l.b > 0 {
					b.a, b.b = min(b.a, int(l.a)), max(b.b, int(l.b))
				}
			}
			if b.b > 0 {
				s.turnBlock(j, b)
			}
		}
	})
}

func (s *stepper) turnBlock(j int, b *strip) {
	n := (b.b - b.a) * lanes.Width
	room := make([]float32, 5*n)
	b.cap, b.right, b.f, b.pe = room[:n], room[n:2*n], room[2*n:3*n], room[3*n:]
	s.turn(b.right, s.GX, j, b)
	s.turn(b.cap, s.CapF, j, b)
}

// turn writes the cells of a block by columns.
func (s *stepper) turn(to, from []float32, j int, b *strip) {
	for l := range b.count {
		row := from[s.index(b.a, j, b.layer+l):]
		for i := range b.b - b.a {
			to[i*lanes.Width+l] = row[i]
		}
	}
}

// factor prepares the sweeps along x and y for a step of dt seconds.
func (s *stepper) factor(dt, weight float64) {
	s.dt, s.weight = dt, weight
	half := float32(dt * weight)
	parallel(s.threads, len(s.blocks), func(n int) {
		b := &s.blocks[n]
		lanes.FactorX(b.cap, b.right, b.pe, b.f, half)
	})
	parallel(s.threads, s.nz, func(k int) {
		for j := range s.ny {
			l := s.lines[j*s.nz+k]
			s.FactorY(s.index(int(l.a), j, k), int(l.b-l.a), half)
		}
	})
}

// factorZ prepares the upright sweep for the step of factor and the films.
func (s *stepper) factorZ() {
	half := float32(s.dt * s.weight)
	parallel(s.threads, s.ny, func(j int) {
		for k := range s.nz {
			l := s.lines[j*s.nz+k]
			s.FactorZ(s.index(int(l.a), j, k), int(l.b-l.a), k == 0, half)
		}
	})
}

// capacityDrift is how far, K, the warmest cell may go before the factors take new heat
// capacities. They only steer what half a step's change does. Chosen.
const capacityDrift = 5.0

// capacities takes the heat capacities of the present temperatures into the factors where
// they have gone far, and reports whether it did.
func (s *stepper) capacities() bool {
	if s.RiseJKGK2 == 0 {
		return false
	}
	hot := math.Inf(-1)
	for n, l := range s.lines {
		for at := n*s.nx + int(l.pa); at < n*s.nx+int(l.pb); at++ {
			if s.Mass[at] > 0 {
				hot = max(hot, float64(s.Temp[at]))
			}
		}
	}
	if math.Abs(hot-s.hotAtC) < capacityDrift {
		return false
	}
	s.hotAtC = hot
	parallel(s.threads, s.ny, func(j int) {
		for at := j * s.Plane; at < (j+1)*s.Plane; at++ {
			s.CapF[at] = s.Cap[at] + s.Mass[at]*s.RiseJKGK2*s.Temp[at]
		}
		for n := j * s.perRow; n < (j+1)*s.perRow; n++ {
			if b := &s.blocks[n]; b.b > 0 {
				s.turn(b.cap, s.CapF, j, b)
			}
		}
	})
	return true
}
