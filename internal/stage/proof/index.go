package proof

import (
	"math"

	"pourwright/internal/geom"
)

// A piece is a straight stretch of something seen from above: of a path or of a
// boundary.
type piece struct {
	a, b geom.Point
	of   int32   // line of the program, or number of the part
	low  float64 // Z to which a path cuts all along, at least
}

// An index finds the pieces near a place: they lie in a grid of square cells.
type index struct {
	pieces []piece
	min    geom.Point
	cell   float64
	nx, ny int
	start  []int32 // of each cell's stretch of items; one more than cells
	items  []int32
	last   int32 // found by the query before: the next is often near it
}

// newIndex sorts pieces into cells of about the given size, mm.
func newIndex(pieces []piece, cell float64) *index {
	x := &index{pieces: pieces, last: -1}
	if len(pieces) == 0 {
		return x
	}
	box := geom.EmptyBox()
	for _, p := range pieces {
		box = box.Union(geom.Box{Min: p.a, Max: p.a}).Union(geom.Box{Min: p.b, Max: p.b})
	}
	x.min = box.Min
	x.cell = math.Max(math.Max(cell, math.Max(box.Width(), box.Height())/1500), 1e-3)
	x.nx, x.ny = int(box.Width()/x.cell)+1, int(box.Height()/x.cell)+1
	count := make([]int32, x.nx*x.ny+1)
	for _, p := range pieces {
		x.cross(p, func(c int) { count[c+1]++ })
	}
	for i := 1; i < len(count); i++ {
		count[i] += count[i-1]
	}
	x.start = append([]int32(nil), count...)
	x.items = make([]int32, count[len(count)-1])
	for i, p := range pieces {
		x.cross(p, func(c int) {
			x.items[count[c]] = int32(i)
			count[c]++
		})
	}
	return x
}

// cross calls visit for every cell that p may meet: row by row, those between its
// ends in the row.
func (x *index) cross(p piece, visit func(cell int)) {
	a, b := p.a, p.b
	if a.Y > b.Y {
		a, b = b, a
	}
	y0, y1 := x.row(a.Y), x.row(b.Y)
	for y := y0; y <= y1; y++ {
		l, r := a.X, b.X
		if y1 > y0 {
			at := func(line int) float64 {
				t := (x.min.Y + float64(line)*x.cell - a.Y) / (b.Y - a.Y)
				return a.X + math.Max(0, math.Min(1, t))*(b.X-a.X)
			}
			l, r = at(y), at(y+1)
		}
		if l > r {
			l, r = r, l
		}
		for c, end := x.column(l-1e-9), x.column(r+1e-9); c <= end; c++ {
			visit(y*x.nx + c)
		}
	}
}

func (x *index) row(v float64) int { return clamp((v-x.min.Y)/x.cell, x.ny) }

func (x *index) column(v float64) int { return clamp((v-x.min.X)/x.cell, x.nx) }

func clamp(v float64, n int) int { return int(max(0, min(float64(n-1), v))) }

// nearest returns the piece nearest to the stretch from a to b and its distance, or -1
// where none is within limit mm.
func (x *index) nearest(a, b geom.Point, limit float64) (int32, float64) {
	best, at := limit, int32(-1)
	if len(x.pieces) == 0 {
		return at, best
	}
	try := func(i int32) {
		if d := apart(a, b, x.pieces[i].a, x.pieces[i].b); d < best {
			best, at = d, i
		}
	}
	if x.last >= 0 {
		try(x.last)
	}
	x.around(a, b, func() float64 { return best }, try)
	if at >= 0 {
		x.last = at
	}
	return at, best
}

// within calls visit for the pieces within reach of p, some of them more than once.
func (x *index) within(p geom.Point, reach float64, visit func(i int32)) {
	if len(x.pieces) == 0 {
		return
	}
	x.around(p, p, func() float64 { return reach }, func(i int32) {
		if apart(p, p, x.pieces[i].a, x.pieces[i].b) <= reach {
			visit(i)
		}
	})
}

// around calls visit for the pieces of every cell within reach of the box of a and b.
func (x *index) around(a, b geom.Point, reach func() float64, visit func(i int32)) {
	lo := geom.Point{X: min(a.X, b.X), Y: min(a.Y, b.Y)}
	hi := geom.Point{X: max(a.X, b.X), Y: max(a.Y, b.Y)}
	r := reach()
	for y, y1 := x.row(lo.Y-r), x.row(hi.Y+r); y <= y1; y++ {
		dy := gap(x.min.Y+float64(y)*x.cell, x.cell, lo.Y, hi.Y)
		for c, c1 := x.column(lo.X-r), x.column(hi.X+r); c <= c1; c++ {
			cell := y*x.nx + c
			if x.start[cell] == x.start[cell+1] {
				continue
			}
			dx := gap(x.min.X+float64(c)*x.cell, x.cell, lo.X, hi.X)
			if r = reach(); dx*dx+dy*dy > r*r {
				continue
			}
			for _, i := range x.items[x.start[cell]:x.start[cell+1]] {
				visit(i)
			}
		}
	}
}

// gap returns how far the stretch from v to v+size lies from that from lo to hi.
func gap(v, size, lo, hi float64) float64 { return max(0, max(v-hi, lo-v-size)-1e-9) }

// apart returns the distance between the stretches ab and cd, mm; 0 where they cross.
func apart(a, b, c, d geom.Point) float64 {
	u, v := b.Sub(a), d.Sub(c)
	if c1, c2 := u.Cross(c.Sub(a)), u.Cross(d.Sub(a)); c1*c2 < 0 {
		if d1, d2 := v.Cross(a.Sub(c)), v.Cross(b.Sub(c)); d1*d2 < 0 {
			return 0
		}
	}
	best := min(toward2(a, c, d), toward2(c, a, b))
	if u != (geom.Point{}) {
		best = min(best, toward2(b, c, d))
	}
	if v != (geom.Point{}) {
		best = min(best, toward2(d, a, b))
	}
	return math.Sqrt(best)
}

// toward2 returns the squared distance from p to the stretch ab, mm2.
func toward2(p, a, b geom.Point) float64 {
	v, w := b.Sub(a), p.Sub(a)
	if t := v.Dot(v); t > 0 {
		w = w.Sub(v.Mul(max(0, min(1, w.Dot(v)/t))))
	}
	return w.Dot(w)
}
