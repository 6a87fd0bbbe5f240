package nest

import (
	"math"

	"pourwright/internal/geom"
)

// A side is one side of a no-fit area, whose inside lies to its left.
type side struct {
	ax, ay, ux, uy, length float64
	inA, inB               bool // beyond the end a (b) lies inside: the corner turns right
}

// A field answers how deep a place lies in a no-fit area. A grid of cells keeps, for each,
// the few sides that can be nearest to a place within it. The answers are exact.
type field struct {
	x0, y0, x1, y1 float64 // box of the area
	kx, ky         float64 // cells per mm
	cols           int
	start          []int32  // per cell: where its list starts; one more at the end
	list           []uint16 // indices of sides
	sides          []side
}

// newField prepares the answers; nil for an empty area.
func newField(r geom.Region) *field {
	f := &field{}
	for _, ring := range r.Rings() {
		f.addRing(ring)
	}
	if len(f.sides) == 0 || len(f.sides) > math.MaxUint16 {
		return nil
	}
	b := r.Box()
	f.x0, f.y0, f.x1, f.y1 = b.Min.X, b.Min.Y, b.Max.X, b.Max.Y
	f.cols = min(max(int(3*math.Sqrt(float64(len(f.sides)))), 6), 20)
	f.kx, f.ky = float64(f.cols)/b.Width(), float64(f.cols)/b.Height()
	f.fill()
	return f
}

func (f *field) addRing(ring geom.Ring) {
	n := len(ring)
	at := len(f.sides)
	for i, a := range ring {
		b := ring[(i+1)%n]
		v := b.Sub(a)
		l := v.Norm()
		if l == 0 {
			continue
		}
		f.sides = append(f.sides, side{ax: a.X, ay: a.Y, ux: v.X / l, uy: v.Y / l, length: l})
	}
	m := len(f.sides) - at
	for i := range m {
		p, q := &f.sides[at+i], &f.sides[at+(i+1)%m]
		right := p.ux*q.uy-p.uy*q.ux < 0
		p.inB, q.inA = right, right
	}
}

// blockCells is how many cells in a row share a first choice of sides.
const blockCells = 5

// fill lists the sides of every cell. A cell that lies outside gets none.
func (f *field) fill() {
	all := make([]uint16, len(f.sides))
	for i := range all {
		all[i] = uint16(i)
	}
	d := make([]float64, len(f.sides))
	cells := make([][]uint16, f.cols*f.cols)
	for row := 0; row < f.cols; row += blockCells {
		for col := 0; col < f.cols; col += blockCells {
			near := f.nearest(all, float64(row), float64(col), blockCells, d)
			for k := range blockCells * blockCells {
				if r, c := row+k/blockCells, col+k%blockCells; r < f.cols && c < f.cols && len(near) > 0 {
					cells[r*f.cols+c] = f.nearest(near, float64(r), float64(c), 1, d)
				}
			}
		}
	}
	f.start = make([]int32, 0, len(cells)+1)
	for _, c := range cells {
		f.start = append(f.start, int32(len(f.list)))
		f.list = append(f.list, c...)
	}
	f.start = append(f.start, int32(len(f.list)))
}

// nearest returns those of a list of sides that are nearest to some place of n by n cells;
// none where all of these lie outside.
func (f *field) nearest(from []uint16, row, col, n float64, d []float64) []uint16 {
	w, h := n/f.kx, n/f.ky
	half := math.Hypot(w, h) / 2 * (1 + 1e-9)
	x, y := f.x0+col/f.kx+w/2, f.y0+row/f.ky+h/2
	near, inside := math.Inf(1), false
	for _, i := range from {
		d2, in := f.sides[i].distance(x, y)
		d[i] = math.Sqrt(d2)
		if d[i] < near {
			near, inside = d[i], in
		}
	}
	if !inside && near > half {
		return nil
	}
	var out []uint16
	for _, i := range from {
		if d[i] <= near+2*half {
			out = append(out, i)
		}
	}
	return out
}

// distance returns the square of the distance from a place to s, and whether the place
// lies inside if s is the nearest side.
func (s *side) distance(x, y float64) (d2 float64, inside bool) {
	px, py := x-s.ax, y-s.ay
	t := px*s.ux + py*s.uy
	switch {
	case t <= 0:
		return px*px + py*py, s.inA
	case t >= s.length:
		px -= s.ux * s.length
		py -= s.uy * s.length
		return px*px + py*py, s.inB
	}
	c := s.ux*py - s.uy*px
	return c * c, c > 0
}

// depth returns how far inside a place lies, 0 outside.
func (f *field) depth(x, y float64) float64 {
	if !(x > f.x0 && x < f.x1 && y > f.y0 && y < f.y1) {
		return 0
	}
	k := int((y-f.y0)*f.ky)*f.cols + int((x-f.x0)*f.kx)
	if uint(k) >= uint(len(f.start)-1) {
		return 0
	}
	best, inside := math.Inf(1), false
	for _, i := range f.list[f.start[k]:f.start[k+1]] {
		s := &f.sides[i]
		px, py := x-s.ax, y-s.ay
		t := px*s.ux + py*s.uy
		var d2 float64
		var in bool
		if t > 0 && t < s.length {
			c := s.ux*py - s.uy*px
			d2, in = c*c, c > 0
		} else if t <= 0 {
			d2, in = px*px+py*py, s.inA
		} else {
			px -= s.ux * s.length
			py -= s.uy * s.length
			d2, in = px*px+py*py, s.inB
		}
		if d2 < best {
			best, inside = d2, in
		}
	}
	if !inside {
		return 0
	}
	return math.Sqrt(best)
}

// wayOut returns the depth and the unit direction in which it shrinks fastest.
func (f *field) wayOut(x, y float64) (d, nx, ny float64) {
	if !(x > f.x0 && x < f.x1 && y > f.y0 && y < f.y1) {
		return 0, 0, 0
	}
	k := int((y-f.y0)*f.ky)*f.cols + int((x-f.x0)*f.kx)
	if uint(k) >= uint(len(f.start)-1) {
		return 0, 0, 0
	}
	best, inside, at := math.Inf(1), false, -1
	for _, i := range f.list[f.start[k]:f.start[k+1]] {
		if d2, in := f.sides[i].distance(x, y); d2 < best {
			best, inside, at = d2, in, int(i)
		}
	}
	if !inside || best == 0 {
		return 0, 0, 0
	}
	s := &f.sides[at]
	d = math.Sqrt(best)
	px, py := x-s.ax, y-s.ay
	switch t := px*s.ux + py*s.uy; {
	case t <= 0:
		return d, -px / d, -py / d
	case t >= s.length:
		return d, (s.ux*s.length - px) / d, (s.uy*s.length - py) / d
	}
	return d, s.uy, -s.ux
}
