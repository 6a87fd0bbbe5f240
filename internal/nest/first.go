package nest

import (
	"cmp"
	"math"
	"slices"
)

// A builder lays things one by one, each as far left as it goes without overlap.
type builder struct {
	b    *board
	s    seeker
	laid []int
}

// bySize lists the movable things, the largest first.
func (b *board) bySize() []int {
	out := make([]int, b.movable)
	for i := range out {
		out[i] = i
	}
	slices.SortStableFunc(out, func(i, j int) int { return cmp.Compare(b.things[j].size, b.things[i].size) })
	return out
}

// newBuilder begins with nothing but the fixed things.
func newBuilder(b *board) *builder {
	u := &builder{b: b, s: seeker{b: b}}
	for i := b.movable; i < len(b.things); i++ {
		u.laid = append(u.laid, i)
	}
	return u
}

// lay puts thing i at the leftmost free corner of the no-fit areas of those laid, in the
// pose that reaches least far to the right; false where there is none within the board.
func (u *builder) lay(i int) bool {
	b := u.b
	best, found := [3]float64{math.Inf(1)}, false
	u.s.near = append(u.s.near[:0], nil)
	for p := range b.things[i].poses {
		sh := b.cat.shapes[b.things[i].poses[p].shape]
		if !b.fitting(i, p) {
			continue
		}
		u.neighbours(i, p)
		u.corners(b.length-sh.width, b.width-sh.height, func(x, y float64) {
			key := [3]float64{x + sh.width, y + sh.height/2, y}
			if slices.Compare(key[:], best[:]) < 0 && u.s.cost(u.s.near[0], x, y, math.Inf(1)) == 0 {
				best, found = key, true
				b.pose[i], b.x[i], b.y[i] = int32(p), x, y
			}
		})
	}
	if found {
		u.laid = append(u.laid, i)
	}
	return found
}

func (u *builder) neighbours(i, p int) {
	b := u.b
	out := u.s.near[0][:0]
	for _, j := range u.laid {
		if f := b.field(j, i, p); f != nil {
			x, y := b.x[j], b.y[j]
			out = append(out, neighbour{f.x0 + x, f.y0 + y, f.x1 + x, f.y1 + y, x, y, 1, f})
		}
	}
	u.s.near[0] = out
}

// corners offers the corners of the room, those of the no-fit areas within it, and where
// their sides meet its lower and upper edge and its left one.
func (u *builder) corners(mx, my float64, try func(x, y float64)) {
	try(0, 0)
	try(0, my)
	for _, n := range u.s.near[0] {
		for i := range n.f.sides {
			s := &n.f.sides[i]
			x, y := n.ox+s.ax, n.oy+s.ay
			if x >= 0 && x <= mx && y >= 0 && y <= my {
				try(x, y)
			}
			for _, at := range [2]float64{0, my} {
				if t := (at - y) / s.uy; t >= 0 && t <= s.length {
					if x := x + t*s.ux; x >= 0 && x <= mx {
						try(x, at)
					}
				}
			}
			if t := -x / s.ux; t >= 0 && t <= s.length {
				if y := y + t*s.uy; y >= 0 && y <= my {
					try(0, y)
				}
			}
		}
	}
}

// reach returns how far right the things lie.
func (b *board) reach() float64 {
	r := 0.0
	for i := range b.movable {
		r = max(r, b.x[i]+b.cat.shapes[b.shape(i)].width)
	}
	return r
}
