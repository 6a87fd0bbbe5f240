package nest

import "pourwright/internal/geom"

// settle ends the small overlaps a board is allowed while it is searched: every pair is
// pushed apart by half its depth in turn, until none is deeper than half a grid step. It
// reports whether it came to that; the board is changed either way.
func (b *board) settle(sweeps int) bool {
	const enough = geom.Grid / 2
	list := b.close()
	for range sweeps {
		worst := 0.0
		for _, p := range list {
			worst = max(worst, b.part(p[0], p[1]))
		}
		if worst <= enough {
			return true
		}
	}
	return false
}

// close lists the pairs that are about to meet; the first of each is movable.
func (b *board) close() [][2]int {
	var out [][2]int
	for i := range b.movable {
		for j := range b.things {
			if j >= i && j < b.movable {
				continue
			}
			f := b.field(j, i, int(b.pose[i]))
			if f == nil {
				continue
			}
			x, y, m := b.x[i]-b.x[j], b.y[i]-b.y[j], 100*b.tol
			if x > f.x0-m && x < f.x1+m && y > f.y0-m && y < f.y1+m {
				out = append(out, [2]int{i, j})
			}
		}
	}
	return out
}

// part pushes i and j apart and returns how deep they were.
func (b *board) part(i, j int) float64 {
	f := b.field(j, i, int(b.pose[i]))
	d, nx, ny := f.wayOut(b.x[i]-b.x[j], b.y[i]-b.y[j])
	if d == 0 {
		return 0
	}
	if j >= b.movable {
		b.shove(i, nx*d, ny*d)
		return d
	}
	b.shove(i, nx*d/2, ny*d/2)
	b.shove(j, -nx*d/2, -ny*d/2)
	return d
}

func (b *board) shove(i int, dx, dy float64) {
	s := b.cat.shapes[b.shape(i)]
	b.x[i] = max(0, min(b.x[i]+dx, b.length-s.width))
	b.y[i] = max(0, min(b.y[i]+dy, b.width-s.height))
}
