package svg

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// A side is one side of a ring on the grid of geom.Grid: all decisions on it are
// exact in 64-bit integers, coordinates being under 1e9 steps.
type side struct {
	ax, ay, bx, by int64
	ring, at       int32 // its ring, and its number in it
}

// An extentBox is a box in grid steps.
type extentBox struct{ x0, y0, x1, y1 int64 }

func (b extentBox) meets(c extentBox) bool {
	return b.x0 <= c.x1 && c.x0 <= b.x1 && b.y0 <= c.y1 && c.y0 <= b.y1
}

func (b extentBox) with(c extentBox) extentBox {
	return extentBox{min(b.x0, c.x0), min(b.y0, c.y0), max(b.x1, c.x1), max(b.y1, c.y1)}
}

// A hierarchy holds the sides of rings in a tree of boxes, a leaf for every few sides
// that follow one another, so that near sides are found without trying all pairs.
type hierarchy struct {
	sides  []side
	first  []int // of each ring in sides; rings with no sides have none
	count  []int
	levels [][]extentBox // leaves first
	budget int
}

const leafSides = 4

// newHierarchy files the rings, near rings near each other.
func newHierarchy(rings []geom.Ring, budget int) *hierarchy {
	h := &hierarchy{first: make([]int, len(rings)), count: make([]int, len(rings)), budget: budget}
	for _, i := range nearOrder(rings) {
		h.first[i] = len(h.sides)
		h.addRing(int32(i), rings[i])
		h.count[i] = len(h.sides) - h.first[i]
	}
	leaves := make([]extentBox, 0, len(h.sides)/leafSides+1)
	for i := 0; i < len(h.sides); i += leafSides {
		b := h.sides[i].box()
		for _, s := range h.sides[i:min(i+leafSides, len(h.sides))] {
			b = b.with(s.box())
		}
		leaves = append(leaves, b)
	}
	for level := leaves; len(level) > 0; {
		h.levels = append(h.levels, level)
		if len(level) == 1 {
			break
		}
		up := make([]extentBox, 0, (len(level)+1)/2)
		for i := 0; i < len(level); i += 2 {
			b := level[i]
			if i+1 < len(level) {
				b = b.with(level[i+1])
			}
			up = append(up, b)
		}
		level = up
	}
	return h
}

// addRing adds the sides of r, those shorter than a step left out.
func (h *hierarchy) addRing(ring int32, r geom.Ring) {
	var at int32
	from := len(h.sides)
	grid := func(v float64) int64 { return int64(math.Round(v / geom.Grid)) }
	if len(r) == 0 {
		return
	}
	last := r[len(r)-1]
	px, py := grid(last.X), grid(last.Y)
	for _, p := range r {
		x, y := grid(p.X), grid(p.Y)
		if x == px && y == py {
			continue
		}
		h.sides = append(h.sides, side{px, py, x, y, ring, at})
		at++
		px, py = x, y
	}
	if len(h.sides) == from+1 { // a point and back: cannot be, but for rings of no extent
		h.sides = h.sides[:from]
	}
}

func (s side) box() extentBox {
	return extentBox{min(s.ax, s.bx), min(s.ay, s.by), max(s.ax, s.bx), max(s.ay, s.by)}
}

// nearOrder returns the rings' numbers along a curve that keeps neighbours together.
func nearOrder(rings []geom.Ring) []int {
	type place struct {
		key  uint64
		ring int
	}
	all := geom.EmptyBox()
	boxes := make([]geom.Box, len(rings))
	for i, r := range rings {
		boxes[i] = ringBox(r)
		all = all.Union(boxes[i])
	}
	span := max(all.Width(), all.Height(), geom.Grid)
	order := make([]place, len(rings))
	for i, b := range boxes {
		c := b.Center().Sub(all.Min).Mul(65535 / span)
		order[i] = place{interleave(c.X) | interleave(c.Y)<<1, i}
	}
	slices.SortFunc(order, func(a, b place) int { return cmp.Or(cmp.Compare(a.key, b.key), a.ring-b.ring) })
	out := make([]int, len(order))
	for i, p := range order {
		out[i] = p.ring
	}
	return out
}

// interleave spreads the 16 bits of v to the even places of the result.
func interleave(v float64) uint64 {
	if !(v > 0) {
		return 0
	}
	x := uint64(min(v, 65535))
	x = (x | x<<8) & 0x00ff00ff
	x = (x | x<<4) & 0x0f0f0f0f
	x = (x | x<<2) & 0x33333333
	return (x | x<<1) & 0x55555555
}

func ringBox(r geom.Ring) geom.Box {
	b := geom.EmptyBox()
	for _, p := range r {
		b.Min = geom.Point{X: min(b.Min.X, p.X), Y: min(b.Min.Y, p.Y)}
		b.Max = geom.Point{X: max(b.Max.X, p.X), Y: max(b.Max.Y, p.Y)}
	}
	return b
}

// next returns the side after s in its ring.
func (h *hierarchy) next(s side) side {
	n := h.count[s.ring]
	return h.sides[h.first[s.ring]+(int(s.at)+1)%n]
}

// pairs calls visit for each pair of sides whose boxes meet; it returns false when the
// budget ends first.
func (h *hierarchy) pairs(visit func(s, t side)) bool {
	if len(h.levels) == 0 {
		return true
	}
	h.pair(len(h.levels)-1, 0, 0, visit)
	return h.budget > 0
}

func (h *hierarchy) pair(level, i, j int, visit func(s, t side)) {
	if h.budget--; h.budget <= 0 || i != j && !h.levels[level][i].meets(h.levels[level][j]) {
		return
	}
	if level == 0 {
		h.leafPair(i, j, visit)
		return
	}
	below := len(h.levels[level-1])
	for a := 2 * i; a < min(2*i+2, below); a++ {
		b := 2 * j
		if i == j {
			b = a
		}
		for ; b < min(2*j+2, below); b++ {
			h.pair(level-1, a, b, visit)
		}
	}
}

func (h *hierarchy) leafPair(i, j int, visit func(s, t side)) {
	for a := i * leafSides; a < min((i+1)*leafSides, len(h.sides)); a++ {
		b := j * leafSides
		if i == j {
			b = a + 1
		}
		box := h.sides[a].box()
		for ; b < min((j+1)*leafSides, len(h.sides)); b++ {
			h.budget--
			if box.meets(h.sides[b].box()) {
				visit(h.sides[a], h.sides[b])
			}
		}
	}
}

// within calls visit for each side whose box meets b, as long as the budget lasts.
func (h *hierarchy) within(b extentBox, visit func(s side)) {
	if len(h.levels) > 0 {
		h.descend(len(h.levels)-1, 0, b, visit)
	}
}

func (h *hierarchy) descend(level, i int, b extentBox, visit func(s side)) {
	if h.budget--; h.budget <= 0 || !h.levels[level][i].meets(b) {
		return
	}
	if level > 0 {
		for a := 2 * i; a < min(2*i+2, len(h.levels[level-1])); a++ {
			h.descend(level-1, a, b, visit)
		}
		return
	}
	for _, s := range h.sides[i*leafSides : min((i+1)*leafSides, len(h.sides))] {
		visit(s)
	}
}
