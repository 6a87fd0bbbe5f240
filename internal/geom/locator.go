package geom

import "math"

// A Locator answers distance and containment for many points of one region: its
// sides lie in a grid of square cells, so that a query looks at the few nearby.
type Locator struct {
	sides  []segment
	min    Point
	cell   float64
	nx, ny int
	cells  [][]int32 // sides whose box meets the cell
	rows   [][]int32 // sides that a horizontal line in the row may cross
}

type segment struct{ a, b Point }

// NewLocator sorts the sides of r into cells. The region must be finite.
func NewLocator(r Region) *Locator {
	l := &Locator{}
	for _, ring := range r.Rings() {
		for i, a := range ring {
			l.sides = append(l.sides, segment{a, ring[(i+1)%len(ring)]})
		}
	}
	box := r.Box()
	if len(l.sides) == 0 {
		return l
	}
	l.min = box.Min
	l.cell = l.cellSize(box)
	l.nx, l.ny = int(box.Width()/l.cell)+1, int(box.Height()/l.cell)+1
	l.cells, l.rows = make([][]int32, l.nx*l.ny), make([][]int32, l.ny)
	for k, s := range l.sides {
		x0, y0, x1, y1 := l.span(Box{s.a, s.a}.Union(Box{s.b, s.b}))
		for y := y0; y <= y1; y++ {
			l.rows[y] = append(l.rows[y], int32(k))
			for x := x0; x <= x1; x++ {
				l.cells[y*l.nx+x] = append(l.cells[y*l.nx+x], int32(k))
			}
		}
	}
	return l
}

// cellSize gives about one cell for each side, at most 512 along an edge, so that
// long sides do not fill the table.
func (l *Locator) cellSize(b Box) float64 {
	n := float64(len(l.sides))
	size := math.Sqrt(math.Max(b.Width()*b.Height(), Grid) / n)
	return math.Max(math.Max(size, math.Max(b.Width(), b.Height())/512), Grid)
}

// span returns the cells that b meets, clamped to the table.
func (l *Locator) span(b Box) (x0, y0, x1, y1 int) {
	at := func(v, o float64, n int) int { return int(math.Max(0, math.Min(float64(n-1), (v-o)/l.cell))) }
	return at(b.Min.X, l.min.X, l.nx), at(b.Min.Y, l.min.Y, l.ny), at(b.Max.X, l.min.X, l.nx), at(b.Max.Y, l.min.Y, l.ny)
}

// Boundary returns the distance from p to the nearest side, mm; +Inf for an empty
// region.
func (l *Locator) Boundary(p Point) float64 { return l.within(p, math.Inf(1)) }

// within returns the distance from p to the nearest side, or limit where that is
// less. It searches growing squares of cells round p.
func (l *Locator) within(p Point, limit float64) float64 {
	if len(l.sides) == 0 {
		return limit
	}
	best := limit * limit
	far := math.Max(float64(l.nx), float64(l.ny))*l.cell + l.outside(p)
	for reach := l.outside(p) + l.cell; ; reach *= 2 {
		best = l.scan(p, reach, best)
		if best <= reach*reach || reach > 2*far {
			return math.Sqrt(best)
		}
	}
}

// scan returns the least squared distance from p to the sides in the cells within
// reach, or best where that is less.
func (l *Locator) scan(p Point, reach, best float64) float64 {
	x0, y0, x1, y1 := l.span(Box{Point{p.X - reach, p.Y - reach}, Point{p.X + reach, p.Y + reach}})
	for y := y0; y <= y1; y++ {
		dy := apartFrom(p.Y, l.min.Y+float64(y)*l.cell, l.cell)
		for x := x0; x <= x1; x++ {
			in := l.cells[y*l.nx+x]
			if len(in) == 0 {
				continue
			}
			dx := apartFrom(p.X, l.min.X+float64(x)*l.cell, l.cell)
			if dx*dx+dy*dy >= best {
				continue
			}
			for _, k := range in {
				d := nearestOn(p, l.sides[k].a, l.sides[k].b).Sub(p)
				best = math.Min(best, d.Dot(d))
			}
		}
	}
	return best
}

// apartFrom returns how far v is from the stretch of length cell that starts at lo;
// 0 in it and, since the outermost cells take what snapping moved, close by.
func apartFrom(v, lo, cell float64) float64 {
	return math.Max(0, math.Max(lo-v, v-lo-cell)-Grid)
}

// outside returns how far p lies outside the table of cells, mm.
func (l *Locator) outside(p Point) float64 {
	dx := math.Max(0, math.Max(l.min.X-p.X, p.X-l.min.X-float64(l.nx)*l.cell))
	dy := math.Max(0, math.Max(l.min.Y-p.Y, p.Y-l.min.Y-float64(l.ny)*l.cell))
	return math.Max(dx, dy)
}

// Inside reports whether p lies inside the region by winding number; points on the
// boundary may fall either way.
func (l *Locator) Inside(p Point) bool {
	y := (p.Y - l.min.Y) / l.cell
	if len(l.sides) == 0 || !(y >= 0) || y >= float64(l.ny) {
		return false
	}
	w := 0
	for _, k := range l.rows[int(y)] {
		a, b := l.sides[k].a, l.sides[k].b
		switch {
		case a.Y <= p.Y && b.Y > p.Y && b.Sub(a).Cross(p.Sub(a)) > 0:
			w++
		case a.Y > p.Y && b.Y <= p.Y && b.Sub(a).Cross(p.Sub(a)) < 0:
			w--
		}
	}
	return w > 0
}

// Distance returns the distance from p to the nearest side, mm, negative when p is
// inside, as Region.Distance does; +Inf for an empty region.
func (l *Locator) Distance(p Point) float64 {
	if d := l.Boundary(p); !l.Inside(p) {
		return d
	} else {
		return -d
	}
}
