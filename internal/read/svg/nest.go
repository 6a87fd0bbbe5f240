package svg

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// insidePoint returns a place well inside a simple ring: on a level line, the middle
// of the widest stretch inside. It returns false for rings without an inside.
func insidePoint(r geom.Ring) (geom.Point, bool) {
	b := ringBox(r)
	for _, share := range []float64{0.5, 0.382, 0.618, 0.25, 0.75, 0.1, 0.9} {
		y := b.Min.Y + share*b.Height()
		xs := levelCuts(r, y)
		best, at := 0.0, 0.0
		for i := 0; i+1 < len(xs); i += 2 {
			if w := xs[i+1] - xs[i]; w > best {
				best, at = w, (xs[i]+xs[i+1])/2
			}
		}
		if best > 4*geom.Grid {
			return geom.Point{X: at, Y: y}, true
		}
	}
	return geom.Point{}, false
}

// levelCuts returns where the sides of r cross the level y, in order.
func levelCuts(r geom.Ring, y float64) []float64 {
	var xs []float64
	for i, p := range r {
		q := r[(i+1)%len(r)]
		if (p.Y <= y) != (q.Y <= y) {
			xs = append(xs, p.X+(y-p.Y)/(q.Y-p.Y)*(q.X-p.X))
		}
	}
	slices.Sort(xs)
	return xs
}

// around returns, in order, the rings that go round p an odd number of times.
func (h *hierarchy) around(p geom.Point) []int {
	x, y := p.X/geom.Grid, p.Y/geom.Grid
	ray := extentBox{int64(math.Floor(x)), int64(math.Floor(y)), int64(math.Ceil(x)), math.MaxInt64}
	odd := map[int32]bool{}
	h.within(ray, func(s side) {
		ax, bx := float64(s.ax), float64(s.bx)
		if (ax <= x) != (bx <= x) && float64(s.ay)+(x-ax)/(bx-ax)*float64(s.by-s.ay) > y {
			odd[s.ring] = !odd[s.ring]
		}
	})
	var out []int
	for r, is := range odd {
		if is {
			out = append(out, int(r))
		}
	}
	slices.Sort(out)
	return out
}

// A flatRing is a ring that counts, with the outline it belongs to.
type flatRing struct {
	outline int
	ring    geom.Ring
	area    float64 // exact, signed, mm2
	extent  float64 // area of its box, mm2
	inside  []int   // rings around it, of any outline
}

// larger orders rings so that one around another comes after it: by their boxes, by
// what they enclose, and by number.
func larger(rings []flatRing, i, j int) int {
	a, b := rings[i], rings[j]
	return cmp.Or(cmp.Compare(a.extent, b.extent), cmp.Compare(math.Abs(a.area), math.Abs(b.area)), cmp.Compare(j, i))
}

// newFlatRing measures the box of r.
func newFlatRing(outline int, r geom.Ring, area float64) flatRing {
	b := ringBox(r)
	return flatRing{outline: outline, ring: r, area: area, extent: b.Width() * b.Height()}
}

// nest finds for each ring those around it: larger, not crossing it, and round a place
// inside it. It returns false if the budget ended first.
func (h *hierarchy) nest(rings []flatRing, crossed map[[2]int]bool) bool {
	for i := range rings {
		p, ok := insidePoint(rings[i].ring)
		if !ok {
			continue
		}
		for _, j := range h.around(p) {
			if j != i && larger(rings, j, i) > 0 && !crossed[[2]int{min(i, j), max(i, j)}] {
				rings[i].inside = append(rings[i].inside, j)
			}
		}
		if h.budget <= 0 {
			return false
		}
	}
	return true
}

// ruleArea returns the area inside the rings of one outline, numbers mine in rings, by
// rule, when they do not cross: each ring parts the winding number around it from that
// within, and counts where the one is inside and the other not.
//
//	A = sum over rings of |A_r| (in(w + turn) - in(w)),  w: winding number around r
func ruleArea(rings []flatRing, mine []int, rule geom.FillRule) float64 {
	sum := 0.0
	for _, i := range mine {
		w := 0
		for _, j := range rings[i].inside {
			if rings[j].outline == rings[i].outline {
				w += turnSign(rings[j].area)
			}
		}
		inner := w + turnSign(rings[i].area)
		switch {
		case counts(inner, rule) && !counts(w, rule):
			sum += math.Abs(rings[i].area)
		case !counts(inner, rule) && counts(w, rule):
			sum -= math.Abs(rings[i].area)
		}
	}
	return sum
}

func turnSign(area float64) int {
	if area < 0 {
		return -1
	}
	return 1
}

// counts reports whether a winding number is inside by rule. Source: [w3c-svg2] 13.4.2.
func counts(w int, rule geom.FillRule) bool {
	switch rule {
	case geom.EvenOdd:
		return w%2 != 0
	case geom.Positive:
		return w > 0
	}
	return w != 0
}
