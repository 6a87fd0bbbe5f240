package heat

import (
	"math"
	"sort"
)

// A builder homogenises squares into cells.
type builder struct {
	*body
	*grid
	n      int     // squares along a cell
	topMM  float64 // of the filling, below the top plane
	hM     float64 // side of a square, m
	solids [5]Solid
	kinds  []mat // per cell: what all of it is made of, or mixed
	stacks []stack
}

// mixed marks a cell of more than one material, or one that is not filled.
const mixed mat = 255

// classify works out the kind of every cell of row j.
func (w *builder) classify(j int) {
	g := w.grid
	for i := range g.nx {
		e := w.extent(i, j)
		for k := range g.nz {
			w.kinds[g.index(i, j, k)] = w.kind(e, g.zMM[k], g.zMM[k+1])
		}
	}
}

// An extent is the range of floors and undersides below a cell of the plan; plain where
// all of its squares are hollow or body.
type extent struct {
	shallow, deep, thin, thick float64
	plain, empty               bool
}

func (w *builder) extent(i, j int) extent {
	e := extent{shallow: math.Inf(1), deep: math.Inf(-1), thin: math.Inf(1), thick: math.Inf(-1), plain: true, empty: true}
	for sj := j * w.n; sj < (j+1)*w.n; sj++ {
		for si := i * w.n; si < (i+1)*w.n; si++ {
			if si >= w.body.nx || sj >= w.body.ny {
				e.plain = false
				continue
			}
			at := sj*w.body.nx + si
			if w.outside[at] {
				e.plain = false
				continue
			}
			e.empty = false
			e.plain = e.plain && w.wallTo[at] == 0
			e.shallow, e.deep = min(e.shallow, w.deep[at]), max(e.deep, w.deep[at])
			e.thin, e.thick = min(e.thin, w.under[at]), max(e.thick, w.under[at])
		}
	}
	return e
}

func (w *builder) kind(e extent, z0, z1 float64) mat {
	switch {
	case e.empty:
		return air
	case !e.plain:
		return mixed
	case z1 <= e.shallow+hair && z0 >= w.topMM-hair:
		return pour
	case z1 <= e.shallow+hair:
		return air
	case z0 >= e.thick-hair && w.c.Below != nil:
		return below
	case z0 >= e.thick-hair:
		return air
	case z0 >= e.deep-hair && z1 <= e.thin+hair:
		return solidBody
	}
	return mixed
}

const hair = 1e-6 // mm

// A stack is what a square is made of, from the top plane down: hollow to layer deep, body
// to layer full, a share of it in the next one, and then what is below. A wall stands to
// layer wall.
type stack struct {
	deep, full, wall int32
	part             float32
	next, rest       mat
}

// stackUp works out the stacks of the squares of row sj.
func (w *builder) stackUp(sj int) {
	for s := sj * w.body.nx; s < (sj+1)*w.body.nx; s++ {
		w.stacks[s] = w.stackOf(s)
	}
}

func (w *builder) stackOf(s int) stack {
	if w.outside[s] {
		return stack{}
	}
	if to := w.wallTo[s]; to > 0 {
		return stack{wall: int32(w.layersTo(to))}
	}
	q := stack{deep: int32(w.layersTo(w.deep[s])), rest: air}
	if w.c.Below != nil {
		q.rest = below
	}
	q.next = q.rest
	q.part = 1
	full := sort.Search(w.grid.nz, func(k int) bool { return w.zMM[k+1] > w.under[s]+hair })
	q.full = int32(full)
	if full == w.grid.nz {
		return q
	}
	f := (w.under[s] - w.zMM[full]) / (w.zMM[full+1] - w.zMM[full])
	switch {
	case f < 1e-6:
	case w.c.Below != nil:
		q.next = solidBody // the rest is as good as full: what is below touches it
	case f >= leastShare:
		q.next, q.part = solidBody, float32(f)
	}
	return q
}

// leastShare of a layer that the body must fill to count. Chosen.
const leastShare = 0.25

// layersTo returns how many layers end above depthMM; a depth within a layer counts as
// at its nearer border.
func (w *builder) layersTo(depthMM float64) int {
	return sort.Search(w.grid.nz, func(k int) bool { return (w.zMM[k]+w.zMM[k+1])/2 >= depthMM })
}

// at returns what fills square s at layer k, and how much of its height.
func (w *builder) at(s, k int) (mat, float64) {
	q := &w.stacks[s]
	switch n := int32(k); {
	case n < q.wall:
		return wall, 1
	case q.wall > 0 || q.full == 0:
		return air, 0
	case n < q.deep && w.zMM[k] >= w.topMM-hair:
		return pour, 1
	case n < q.deep:
		return air, 0
	case n < q.full:
		return solidBody, 1
	case n == q.full:
		return q.next, float64(q.part)
	default:
		return q.rest, 1
	}
}

// get returns the material of square (i, j) at layer k; air outside the raster.
func (w *builder) get(i, j, k int) (mat, float64) {
	if i < 0 || j < 0 || i >= w.body.nx || j >= w.body.ny {
		return air, 0
	}
	s := j*w.body.nx + i
	return w.at(s, k)
}
