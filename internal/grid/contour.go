package grid

import (
	"pourwright/internal/geom"
)

// Contours returns, for each level, the region where f is at or above it. Regions
// are closed along the frame; outer rings turn counter-clockwise. A level that is
// not a number gives an empty region.
func (f Field) Contours(levels ...float64) []geom.Region {
	out := make([]geom.Region, len(levels))
	t := newTracer(f)
	for i, level := range levels {
		out[i] = t.region(level)
	}
	return out
}

// The sides of a cell, and the bits of its corners.
const (
	bottom, right, top, left = 0, 1, 2, 3

	lowLeft, lowRight, highRight, highLeft = 1, 2, 4, 8
)

// way holds, for the corners that are up and the side by which a contour enters,
// the side by which it leaves with the high ground on its left; -1 where none
// enters. Rows 16 and 17 are the cells 5 and 10 with their high corners joined.
var way = [18][4]int8{
	1:  {bottom: left, right: -1, top: -1, left: -1},
	2:  {bottom: -1, right: bottom, top: -1, left: -1},
	3:  {bottom: -1, right: left, top: -1, left: -1},
	4:  {bottom: -1, right: -1, top: right, left: -1},
	5:  {bottom: left, right: -1, top: right, left: -1},
	6:  {bottom: -1, right: -1, top: bottom, left: -1},
	7:  {bottom: -1, right: -1, top: left, left: -1},
	8:  {bottom: -1, right: -1, top: -1, left: top},
	9:  {bottom: top, right: -1, top: -1, left: -1},
	10: {bottom: -1, right: bottom, top: -1, left: top},
	11: {bottom: -1, right: top, top: -1, left: -1},
	12: {bottom: -1, right: -1, top: -1, left: right},
	13: {bottom: right, right: -1, top: -1, left: -1},
	14: {bottom: -1, right: -1, top: -1, left: bottom},
	16: {bottom: right, right: -1, top: left, left: -1},
	17: {bottom: -1, right: top, top: -1, left: bottom},
	0:  {-1, -1, -1, -1},
	15: {-1, -1, -1, -1},
}

// A tracer walks the contours of a field. Its cells are those between the nodes and
// one more row and column of them around the frame, whose outer nodes lie on the
// frame and are below every level: they close the contours along it. Cell (i, j)
// has node (i-1, j-1) at its lower left; the stretch of a node row between nodes
// i-1 and i is its gap i.
type tracer struct {
	Field
	level float64
	wide  int     // cells, and gaps, in a row: Cols+1
	cells []uint8 // row of way that each cell takes
	seen  []uint8 // bit of each side by which a cell was entered
	gaps  []int32 // which ring crosses each gap; valid where one does
	rings []ring
}

// A ring is a traced contour and its leftmost crossing of a node row.
type ring struct {
	points   geom.Ring
	row, gap int
}

func newTracer(f Field) *tracer {
	wide := f.Cols + 1
	n := wide * (f.Rows + 1)
	return &tracer{Field: f, wide: wide, cells: make([]uint8, n), seen: make([]uint8, n), gaps: make([]int32, wide*f.Rows)}
}

func (t *tracer) region(level float64) geom.Region {
	t.level, t.rings = level, t.rings[:0]
	t.classify()
	for at, k := range t.cells {
		if k == 0 || k == 15 {
			continue
		}
		for side := range 4 {
			if way[k][side] >= 0 && t.seen[at]&(1<<side) == 0 {
				t.trace(at, side)
			}
		}
	}
	return t.assemble()
}

// up reports whether the node in column c and row r is at or above the level.
func (t *tracer) up(c, r int) bool { return t.Z[r*t.Cols+c] >= t.level }

// classify sets the row of way that every cell takes.
func (t *tracer) classify() {
	clear(t.seen)
	clear(t.cells)
	for r := range t.Rows {
		lower, upper := t.cells[r*t.wide:][:t.wide], t.cells[(r+1)*t.wide:][:t.wide]
		for c, z := range t.Z[r*t.Cols:][:t.Cols] {
			if z >= t.level {
				lower[c] |= highRight
				lower[c+1] |= highLeft
				upper[c] |= lowRight
				upper[c+1] |= lowLeft
			}
		}
		for i, k := range lower {
			if k == lowLeft|highRight || k == lowRight|highLeft {
				lower[i] = t.saddle(i, r, k)
			}
		}
	}
}

// saddle returns the row of way for the ambiguous cell (i, j).
func (t *tracer) saddle(i, j int, k uint8) uint8 {
	mean := (t.At(i-1, j-1) + t.At(i, j-1) + t.At(i, j) + t.At(i-1, j)) / 4
	switch {
	case !(mean >= t.level):
		return k
	case k == lowLeft|highRight:
		return 16
	}
	return 17
}

// trace walks the contour that enters cell at by side until it is back there.
func (t *tracer) trace(at, side int) {
	id := int32(len(t.rings))
	r := ring{gap: t.wide}
	for t.seen[at]&(1<<side) == 0 {
		t.seen[at] |= 1 << side
		out := int(way[t.cells[at]][side])
		i, j := at%t.wide, at/t.wide
		switch out {
		case bottom:
			r.cross(t, i, j-1, id)
			at -= t.wide
		case top:
			r.cross(t, i, j, id)
			at += t.wide
		case left:
			r.add(t.onColumn(i-1, j))
			at--
		case right:
			r.add(t.onColumn(i, j))
			at++
		}
		side = (out + 2) % 4
	}
	r.points = straightened(r.points)
	t.rings = append(t.rings, r)
}

// cross adds where the contour crosses gap i of row.
func (r *ring) cross(t *tracer, i, row int, id int32) {
	t.gaps[row*t.wide+i] = id
	if i < r.gap {
		r.row, r.gap = row, i
	}
	r.add(t.onRow(i, row))
}

func (r *ring) add(p geom.Point) {
	if n := len(r.points); n == 0 || r.points[n-1] != p {
		r.points = append(r.points, p)
	}
}

// onRow returns the crossing in gap i of a row of nodes.
func (t *tracer) onRow(i, row int) geom.Point {
	if i == 0 || i == t.Cols {
		return t.Node(max(i-1, 0), row)
	}
	p := t.Node(i-1, row)
	p.X += t.share(t.At(i-1, row), t.At(i, row)) * t.DX
	return p
}

// onColumn returns the crossing between nodes j-1 and j of a column of nodes.
func (t *tracer) onColumn(col, j int) geom.Point {
	if j == 0 || j == t.Rows {
		return t.Node(col, max(j-1, 0))
	}
	p := t.Node(col, j-1)
	p.Y += t.share(t.At(col, j-1), t.At(col, j)) * t.DY
	return p
}

// share returns how far from height a to height b the level is met, 0 to 1; at the
// higher one where the other is missing or endless.
func (t *tracer) share(a, b float64) float64 {
	if s := (t.level - a) / (b - a); s >= 0 && s <= 1 {
		return s
	}
	if a >= t.level {
		return 0
	}
	return 1
}

// straightened drops points between two others on one line along the grid.
func straightened(r geom.Ring) geom.Ring {
	if n := len(r); n > 1 && r[0] == r[n-1] {
		r = r[:n-1]
	}
	out := r[:0]
	for i, p := range r {
		next := r[(i+1)%len(r)]
		if n := len(out); n > 0 && i+1 < len(r) {
			if in, on := p.Sub(out[n-1]), next.Sub(p); (in.X == 0 && on.X == 0 || in.Y == 0 && on.Y == 0) && in.Dot(on) > 0 {
				continue
			}
		}
		out = append(out, p)
	}
	return out
}
