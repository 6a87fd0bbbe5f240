package geom

import (
	"math"
	"math/bits"
)

// gridPoint is a point on the integer grid of Grid mm.
type gridPoint struct{ x, y int64 }

// maxGrid bounds grid coordinates, so that products fit 128 bits with room to spare.
const maxGrid = int64(1e7 / Grid)

// snap puts p on the grid; ok is false for coordinates that are not finite or
// further than 1e7 mm from the origin.
func snap(p Point) (g gridPoint, ok bool) {
	x, y := math.Round(p.X/Grid), math.Round(p.Y/Grid)
	if !(math.Abs(x) <= float64(maxGrid) && math.Abs(y) <= float64(maxGrid)) {
		return gridPoint{}, false
	}
	return gridPoint{int64(x), int64(y)}, true
}

func (g gridPoint) point() Point { return Point{float64(g.x) * Grid, float64(g.y) * Grid} }

// before orders points by x, then y: the order of the sweep.
func (g gridPoint) before(h gridPoint) bool { return g.x < h.x || g.x == h.x && g.y < h.y }

// compare orders points by x, then y.
func (g gridPoint) compare(h gridPoint) int {
	switch {
	case g == h:
		return 0
	case g.before(h):
		return -1
	}
	return 1
}

// turn returns the sign of the cross product (b-a) x (c-a), exactly: 1 when c lies to
// the left of a to b.
func turn(a, b, c gridPoint) int {
	return crossSign(b.x-a.x, b.y-a.y, c.x-a.x, c.y-a.y)
}

// crossSign returns the sign of ax*by - ay*bx, exactly.
func crossSign(ax, ay, bx, by int64) int {
	const small = 1 << 31
	if abs64(ax) < small && abs64(ay) < small && abs64(bx) < small && abs64(by) < small {
		return sign64(ax*by - ay*bx)
	}
	h1, l1 := mul(ax, by)
	h2, l2 := mul(ay, bx)
	switch {
	case h1 != h2:
		return sign64(cmp64(h1, h2))
	case l1 > l2:
		return 1
	case l1 < l2:
		return -1
	}
	return 0
}

// mul returns the signed 128-bit product a*b.
func mul(a, b int64) (hi int64, lo uint64) {
	h, l := bits.Mul64(uint64(a), uint64(b))
	hi = int64(h)
	if a < 0 {
		hi -= b
	}
	if b < 0 {
		hi -= a
	}
	return hi, l
}

func abs64(a int64) int64 {
	if a < 0 {
		return -a
	}
	return a
}

func sign64(a int64) int {
	switch {
	case a > 0:
		return 1
	case a < 0:
		return -1
	}
	return 0
}

func cmp64(a, b int64) int64 {
	if a > b {
		return 1
	}
	if a < b {
		return -1
	}
	return 0
}
