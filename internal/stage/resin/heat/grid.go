package heat

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sync"
	"sync/atomic"

	"pourwright/internal/stage/resin/heat/lanes"
)

// A mat is what fills a square at a layer.
type mat uint8

const (
	air mat = iota
	pour
	solidBody
	wall
	below
)

// A grid is the cells of one stage of filling. Cells lie [y][z][x]; the first and the last
// row hold nothing, nor do columns beyond the raster that make lines whole lanes.
type grid struct {
	nx, ny, nz int
	zMM        []float64 // borders of the layers, nz+1, downwards from 0
	dxM        float64
	cap        []float32    // at 25 C
	mass       []float32    // poured
	gx, gy, gz []float32    // to the next cell
	face       [3][]float32 // area to air, m2: up, down, upright
	path       [3][]float32 // resistance from the cell's middle to that face, m2K/W
	toWall     []contact
	toBelow    []int32 // body cells that touch what is below
}

// A contact is a poured cell at a wall: how the face's temperature lies between.
type contact struct {
	cell, wall int32
	share      float32 // of the poured cell's temperature
}

func (g *grid) cells() int { return g.nx * g.ny * g.nz }

// index returns the cell's place.
func (g *grid) index(i, j, k int) int { return (j*g.nz+k)*g.nx + i }

// layers returns the borders of the layers: at every floor and level of filling, at most
// o.DZMM apart in the hollow, o.Body through the body below the deepest floor, then 5 mm.
func (b *body) layers(o Options, levels []float64) []float64 {
	marks := append([]float64{0, b.deepestMM}, levels...)
	marks = append(marks, b.floors()...)
	slices.Sort(marks)
	z := []float64{0}
	add := func(to, most float64) {
		from := z[len(z)-1]
		if to-from < 1e-6 {
			return
		}
		n := math.Max(1, math.Ceil((to-from)/most-0.05)) // a little thicker rather than one more
		for k := 1; k <= int(n); k++ {
			z = append(z, from+(to-from)*float64(k)/n)
		}
	}
	for _, m := range marks {
		if m > 0 && m <= b.deepestMM {
			add(m, o.DZMM)
		}
	}
	if b.c.BodyMM > 0 {
		add(b.deepestMM+b.c.BodyMM, b.c.BodyMM/float64(o.Body))
	}
	if b.c.Below != nil {
		add(b.deepestMM+b.c.BodyMM+belowMM, 5)
	}
	return z
}

// belowMM is how much of what fills the space below is simulated: heat does not get
// further in the time.
const belowMM = 40.0

// floors lists the depths that most of the hollow lies at, at most mostFloors of them, in
// order. Floors between take the nearer border of a layer.
func (b *body) floors() []float64 {
	squares := map[float64]int{}
	var out []float64
	for _, d := range b.deep {
		if d > 0 {
			if squares[d]++; squares[d] == 1 {
				out = append(out, d)
			}
		}
	}
	slices.SortFunc(out, func(p, q float64) int { return cmp.Or(squares[q]-squares[p], cmp.Compare(p, q)) })
	out = out[:min(len(out), mostFloors)]
	slices.Sort(out)
	return out
}

// mostFloors bounds the layers where a floor has no terraces. Chosen.
const mostFloors = 40

// size checks how large the grid would be.
func (b *body) size(o Options, z []float64) (nx, ny int, err error) {
	n := int(math.Round(o.DXMM / b.c.StepMM))
	nx, ny = (b.nx+n-1)/n, (b.ny+n-1)/n
	nx = (nx + lanes.Width - 1) / lanes.Width * lanes.Width
	if cells := nx * ny * (len(z) - 1); cells > o.Cells {
		return nx, ny, fmt.Errorf("%d cells of %.0f mm, more than %d: %w", cells, o.DXMM, o.Cells, ErrTooLarge)
	}
	return nx, ny, nil
}

// build makes the cells of the body filled up to topMM below the top plane.
func (b *body) build(o Options, z []float64, topMM float64) (*grid, error) {
	nx, ny, err := b.size(o, z)
	if err != nil {
		return nil, err
	}
	g := &grid{nx: nx, ny: ny, nz: len(z) - 1, zMM: z, dxM: o.DXMM / 1000}
	n := g.cells()
	all := make([]float32, 11*n)
	part := func(k int) []float32 { return all[k*n : (k+1)*n : (k+1)*n] }
	g.cap, g.mass, g.gx, g.gy, g.gz = part(0), part(1), part(2), part(3), part(4)
	for f := range 3 {
		g.face[f], g.path[f] = part(5+f), part(8+f)
	}
	w := &builder{body: b, grid: g, n: int(math.Round(o.DXMM / b.c.StepMM)), topMM: topMM, hM: b.c.StepMM / 1000}
	w.solids = [5]Solid{pour: b.c.Pour, solidBody: b.c.Body, wall: b.c.Wall}
	if b.c.Below != nil {
		w.solids[below] = *b.c.Below
	}
	w.kinds, w.stacks = make([]mat, n), make([]stack, len(b.deep))
	parallel(o.Threads, b.ny, w.stackUp)
	parallel(o.Threads, g.ny, w.classify)
	parallel(o.Threads, g.ny, w.row)
	w.contacts()
	return g, nil
}

// parallel runs f(0..n-1) on threads; who takes which has no influence on the result.
func parallel(threads, n int, f func(i int)) {
	parallelBy(threads, n, func(_, i int) { f(i) })
}

// parallelBy tells f which of the threads it runs on as well.
func parallelBy(threads, n int, f func(thread, i int)) {
	if threads <= 1 || n < 2*threads {
		for i := range n {
			f(0, i)
		}
		return
	}
	var wg sync.WaitGroup
	var next atomic.Int64
	work := func(thread int) {
		for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
			f(thread, i)
		}
	}
	for t := 1; t < threads; t++ {
		wg.Go(func() { work(t) })
	}
	work(0)
	wg.Wait()
}
