package geom

import (
	"container/heap"
	"math"
)

// Pole returns the point of r that lies deepest inside it and its distance from the
// boundary, mm: the centre and radius of the largest disc in r, within tol mm or
// 1/10,000 of r's extent. It is 0 for an empty region.
func (r Region) Pole(tol float64) (Point, float64) {
	return r.deepest(tol, NewLocator(r).Boundary, nil)
}

// DeepestOutside returns the point of r furthest from the region that l holds and
// its distance from it, mm, within tol mm or 1/10,000 of r's extent; r and that region
// must not overlap.
func (r Region) DeepestOutside(l *Locator, tol float64) (Point, float64) {
	return r.deepest(tol, l.Boundary, r.Rings())
}

// maxSquares bounds the search; what it has found by then is the answer, which may
// then miss the deepest point by more than the tolerance.
const maxSquares = 100_000

// deepest maximises depth, which grows by at most 1 mm each mm, over r. It starts
// from the corners of first and halves squares, the most promising first, until none
// can beat the best by tol.
func (r Region) deepest(tol float64, depth func(Point) float64, first []Ring) (Point, float64) {
	if len(r) == 0 {
		return Point{}, 0
	}
	in := NewLocator(r)
	box := r.Box()
	tol = math.Max(tol, math.Max(box.Width(), box.Height())*1e-4)
	best := deepestCorner(r[0].Outer[0], first, depth, tol)
	var open squares
	try := func(at Point, half float64) {
		d := depth(at)
		if out := in.Distance(at); out <= 0 {
			if d > best.depth {
				best = square{at: at, depth: d}
			}
		} else if out > half*math.Sqrt2 {
			return
		}
		if s := (square{at, half, d, d + half*math.Sqrt2}); s.most > best.depth+tol {
			heap.Push(&open, s)
		}
	}
	half := math.Max(math.Min(box.Width(), box.Height())/2, math.Max(box.Width(), box.Height())/100)
	for x := box.Min.X + half; x < box.Max.X+half; x += 2 * half {
		for y := box.Min.Y + half; y < box.Max.Y+half; y += 2 * half {
			try(Point{x, y}, half)
		}
	}
	for n := 0; len(open) > 0 && n < maxSquares; n++ {
		s := heap.Pop(&open).(square)
		if s.most <= best.depth+tol {
			break
		}
		h := s.half / 2
		for _, d := range []Point{{-h, -h}, {h, -h}, {-h, h}, {h, h}} {
			try(s.at.Add(d), h)
		}
	}
	return best.at, best.depth
}

// deepestCorner returns the deepest of start and the corners of rings, within tol.
// Going along a ring the depth grows by no more than the way, which skips corners.
func deepestCorner(start Point, rings []Ring, depth func(Point) float64, tol float64) square {
	best := square{at: start, depth: depth(start)}
	for _, ring := range rings {
		most := math.Inf(1)
		for i, p := range ring {
			if i > 0 {
				most += p.Sub(ring[i-1]).Norm()
			}
			if most <= best.depth+tol {
				continue
			}
			if most = depth(p); most > best.depth {
				best = square{at: p, depth: most}
			}
		}
	}
	return best
}

// A square is a part of the plane with the depth at its middle and the most that any
// of its points may have.
type square struct {
	at                Point
	half, depth, most float64
}

// squares is a heap, the most promising first, ties by place.
type squares []square

func (s squares) Len() int { return len(s) }
func (s squares) Less(i, j int) bool {
	if s[i].most != s[j].most {
		return s[i].most > s[j].most
	}
	return comparePoints(s[i].at, s[j].at) < 0
}
func (s squares) Swap(i, j int) { s[i], s[j] = s[j], s[i] }
func (s *squares) Push(x any)   { *s = append(*s, x.(square)) }
func (s *squares) Pop() any {
	old := *s
	x := old[len(old)-1]
	*s = old[:len(old)-1]
	return x
}
