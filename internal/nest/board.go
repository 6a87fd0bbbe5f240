package nest

import "slices"

// A thing lies on a board: a piece that may move, or, with no poses, a fixed one.
type thing struct {
	piece int // index into the pieces of the problem
	poses []pose
	size  float64 // area
}

// A board is a sheet with things on it, which may overlap. Places are those of the corner
// of the shape's box. The last things are fixed: what the sheet lacks of its box.
type board struct {
	cat           *catalog
	things        []thing
	movable       int
	length, width float64 // of the sheet's box, along x and y
	tol           float64 // depths up to this are none

	pose   []int32
	x, y   []float64
	weight []float64 // of pairs, n*n, symmetric
	depth  []float64 // of pairs, n*n, symmetric
}

func newBoard(cat *catalog, things []thing, movable int, length, width, tol float64) *board {
	n := len(things)
	b := &board{cat: cat, things: things, movable: movable, length: length, width: width, tol: tol,
		pose: make([]int32, n), x: make([]float64, n), y: make([]float64, n),
		weight: make([]float64, n*n), depth: make([]float64, n*n)}
	b.evenWeights()
	return b
}

// clone returns a board of its own with the same things.
func (b *board) clone() *board {
	c := *b
	c.pose, c.x, c.y = slices.Clone(b.pose), slices.Clone(b.x), slices.Clone(b.y)
	c.weight, c.depth = slices.Clone(b.weight), slices.Clone(b.depth)
	return &c
}

// A spread is where the things of a board lie.
type spread struct {
	length float64
	pose   []int32
	x, y   []float64
}

func (b *board) spread() spread {
	return spread{b.length, slices.Clone(b.pose), slices.Clone(b.x), slices.Clone(b.y)}
}

// set lays the things as in s and clamps them into the present length.
func (b *board) set(s spread) {
	copy(b.pose, s.pose)
	copy(b.x, s.x)
	copy(b.y, s.y)
	b.clamp()
	b.measure()
}

func (b *board) shape(i int) int { return b.things[i].poses[b.pose[i]].shape }

func (b *board) evenWeights() {
	for i := range b.weight {
		b.weight[i] = 1
	}
}

// clamp moves things into the box of the sheet.
func (b *board) clamp() {
	for i := range b.movable {
		s := b.cat.shapes[b.shape(i)]
		b.x[i] = max(0, min(b.x[i], b.length-s.width))
		b.y[i] = max(0, min(b.y[i], b.width-s.height))
	}
}

// fitting reports whether thing i in pose p is no larger than the box.
func (b *board) fitting(i, p int) bool {
	s := b.cat.shapes[b.things[i].poses[p].shape]
	return s.width <= b.length+1e-9 && s.height <= b.width+1e-9
}

// field returns where thing i in pose p overlaps thing j.
func (b *board) field(j, i, p int) *field {
	if j >= b.movable {
		return b.cat.field(b.shape(j), b.things[i].poses[p].bare)
	}
	return b.cat.field(b.shape(j), b.things[i].poses[p].shape)
}

// pair returns how deep i, which is movable, and j overlap.
func (b *board) pair(i, j int) float64 {
	f := b.field(j, i, int(b.pose[i]))
	if f == nil {
		return 0
	}
	d := f.depth(b.x[i]-b.x[j], b.y[i]-b.y[j])
	if d <= b.tol {
		return 0
	}
	return d
}

// measure works out all depths.
func (b *board) measure() {
	n := len(b.things)
	for i := range b.movable {
		for j := range i {
			d := b.pair(i, j)
			b.depth[i*n+j], b.depth[j*n+i] = d, d
		}
		for j := b.movable; j < n; j++ {
			d := b.pair(i, j)
			b.depth[i*n+j], b.depth[j*n+i] = d, d
		}
	}
}

// measureThing works out the depths of thing i.
func (b *board) measureThing(i int) {
	n := len(b.things)
	for j := range n {
		if j != i {
			d := b.pair(i, j)
			b.depth[i*n+j], b.depth[j*n+i] = d, d
		}
	}
}

// total returns the sum of all depths.
func (b *board) total() float64 {
	n, sum := len(b.things), 0.0
	for i := range b.movable {
		row := b.depth[i*n : i*n+n]
		for j := range i {
			sum += row[j]
		}
		for j := b.movable; j < n; j++ {
			sum += row[j]
		}
	}
	return sum
}

// overlapping appends the movable things that overlap something.
func (b *board) overlapping(out []int32) []int32 {
	n := len(b.things)
	for i := range b.movable {
		for _, d := range b.depth[i*n : i*n+n] {
			if d > 0 {
				out = append(out, int32(i))
				break
			}
		}
	}
	return out
}

// Chosen: growth of the weight of the deepest pair and of the shallowest, and decay of
// the weight of pairs that are apart.
const (
	growMost  = 2.0
	growLeast = 1.2
	decay     = 0.95
)

// learn lets the weights of overlapping pairs grow, the deepest most.
func (b *board) learn() {
	most := 0.0
	for _, d := range b.depth {
		most = max(most, d)
	}
	if most == 0 {
		return
	}
	for i, d := range b.depth {
		if d > 0 {
			b.weight[i] *= growLeast + (growMost-growLeast)*d/most
		} else if b.weight[i] > 1 {
			b.weight[i] = max(1, b.weight[i]*decay)
		}
	}
}
