package toolpath

import (
	"math"

	"pourwright/internal/grid"
)

// Bounds of the lattice on which the ball is set down. Chosen: a lattice of R/8 lets
// the ball sink between nodes by R/256 at most.
const (
	nodesInR  = 8
	mostInR   = 24
	mostNodes = 6_000_000
)

// lattice returns f on nodes about R/8 apart: between its own nodes by straight lines
// both ways, or, where it is much finer, the highest of each few nodes, so that foam
// stays rather than goes. Places that are no number stand at the top.
func lattice(f Heights, radius float64) Heights {
	for i, z := range f.Z {
		if math.IsNaN(z) {
			f.Z = append([]float64(nil), f.Z...)
			fill(f.Z[i:])
			break
		}
	}
	if fine := int(radius / mostInR / math.Min(f.DX, f.DY)); fine > 1 {
		return coarser(f, fine)
	}
	n := 1
	for n < 64 && math.Max(f.DX, f.DY)/float64(n) > radius/nodesInR && (f.Cols-1)*(f.Rows-1)*(n+1)*(n+1) < mostNodes {
		n++
	}
	return finer(f, n)
}

func fill(z []float64) {
	for i := range z {
		if math.IsNaN(z[i]) {
			z[i] = 0
		}
	}
}

// finer puts n steps into every one of f.
func finer(f Heights, n int) Heights {
	if n == 1 {
		return f
	}
	out, err := grid.New((f.Cols-1)*n+1, (f.Rows-1)*n+1, f.DX/float64(n), f.DY/float64(n))
	if err != nil {
		return f
	}
	out.Origin = f.Origin
	for r := range out.Rows {
		r0 := min(r/n, f.Rows-2)
		ty := float64(r-r0*n) / float64(n)
		for c := range out.Cols {
			c0 := min(c/n, f.Cols-2)
			tx := float64(c-c0*n) / float64(n)
			low := f.At(c0, r0)*(1-tx) + f.At(c0+1, r0)*tx
			high := f.At(c0, r0+1)*(1-tx) + f.At(c0+1, r0+1)*tx
			out.Set(c, r, low*(1-ty)+high*ty)
		}
	}
	return out
}

// coarser takes every n-th node with the highest of all nodes within n of it.
func coarser(f Heights, n int) Heights {
	out, err := grid.New(max(2, (f.Cols-1)/n+1), max(2, (f.Rows-1)/n+1), f.DX*float64(n), f.DY*float64(n))
	if err != nil {
		return f
	}
	out.Origin = f.Origin
	for r := range out.Rows {
		for c := range out.Cols {
			high := math.Inf(-1)
			for y := max(0, (r-1)*n+1); y < min(f.Rows, (r+1)*n); y++ {
				for x := max(0, (c-1)*n+1); x < min(f.Cols, (c+1)*n); x++ {
					high = math.Max(high, f.At(x, y))
				}
			}
			out.Set(c, r, math.Max(high, math.Inf(-1)))
		}
	}
	return out
}

// An offset is a node under the ball and how far the ball is above its tip there.
type offset struct {
	dc, dr int
	index  int     // of the node in the field, from the tip's
	under  float64 // sqrt(R^2 - d^2) - R, 0 at the tip
}

func ballOffsets(f Heights, radius float64) []offset {
	var out []offset
	nc, nr := int(radius/f.DX), int(radius/f.DY)
	for dr := -nr; dr <= nr; dr++ {
		for dc := -nc; dc <= nc; dc++ {
			d2 := math.Pow(float64(dc)*f.DX, 2) + math.Pow(float64(dr)*f.DY, 2)
			if d2 <= radius*radius {
				out = append(out, offset{dc, dr, dr*f.Cols + dc, math.Sqrt(radius*radius-d2) - radius})
			}
		}
	}
	return out
}

// tip returns the lowest height of the ball's tip over node (c, r) at which the ball
// cuts nothing that is to stay.
func (k *carver) tip(c, r int) float64 {
	high := math.Inf(-1)
	if nc, nr := int(k.radius/k.f.DX), int(k.radius/k.f.DY); c >= nc && r >= nr && c+nc < k.f.Cols && r+nr < k.f.Rows {
		at := r*k.f.Cols + c
		for _, o := range k.offsets {
			if z := k.f.Z[at+o.index] + o.under; z > high {
				high = z
			}
		}
		return high
	}
	for _, o := range k.offsets {
		x, y := c+o.dc, r+o.dr
		if x < 0 || y < 0 || x >= k.f.Cols || y >= k.f.Rows {
			continue
		}
		if z := k.f.Z[y*k.f.Cols+x] + o.under; z > high {
			high = z
		}
	}
	return high
}
