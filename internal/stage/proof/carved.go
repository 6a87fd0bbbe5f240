package proof

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/grid"
	"pourwright/internal/rs274"
	"pourwright/internal/units"
)

// A Carving is a surface that a ball cutter is to leave.
type Carving struct {
	Heights grid.Field   // Z, 0 at the stock's top; what is no number is not looked at
	Ball    units.Length // diameter
	Scallop units.Length // wanted height of the ridges between ways; 0 takes 0.2 mm
}

// A Carved is what a program does to a surface, measured square to it.
type Carved struct {
	Gouged units.Length `json:"gouged_mm"`
	Ridges units.Length `json:"ridges_mm"` // greatest height of foam left where the ball can reach
	Left   units.Length `json:"left_mm"`   // greatest height of foam that the ball cannot reach
}

// Allowed errors of a carved surface, mm. Chosen: the surface between the nodes of a
// height map is known no better.
const (
	carveTol   = 0.15
	ridgeTimes = 3.0 // ridges on slopes and at turns, in wanted scallops
	mostNodes  = 4_000_000
)

// A relief is the surface after the cut, on a grid finer than the ball.
//
//	cut(p)   = min over tips t with |t - p| <= R of  z(t) + R - sqrt(R^2 - |t - p|^2)
//	ideal(p) = the same over the deepest tips that leave the wanted surface whole
type relief struct {
	want, cut grid.Field
	line      []int32
	r         float64
	top       float64
}

// carving simulates a ball cutter on its surface.
func (s *simulation) carving(c Carving) *Carved {
	w, ok := newRelief(c, s.top)
	if !ok {
		s.say(noInput, 0, nil, "The surface or the ball of %s is not known: it cannot be proved.", s.in.File)
		return nil
	}
	for i := range s.program.Moves {
		if m := &s.program.Moves[i]; math.Min(m.From[2], m.To[2]) < s.top-hair {
			w.run(m)
		}
	}
	if !(c.Scallop > 0) {
		c.Scallop = 0.2
	}
	return s.compare(w, ridgeTimes*c.Scallop.MM()+carveTol)
}

func newRelief(c Carving, top float64) (*relief, bool) {
	w := &relief{r: c.Ball.MM() / 2, top: top}
	h := c.Heights
	if !(w.r > 0 && w.r < 1000) || h.Cols < 2 || h.Rows < 2 || len(h.Z) != h.Cols*h.Rows {
		return w, false
	}
	x, y := h.DX*float64(h.Cols-1), h.DY*float64(h.Rows-1)
	d := math.Max(w.r/5, math.Sqrt(x*y/mostNodes))
	cols, rows := int(math.Ceil(x/d))+1, int(math.Ceil(y/d))+1
	var err error
	if w.want, err = grid.New(cols, rows, x/float64(cols-1), y/float64(rows-1)); err != nil {
		return w, false
	}
	w.want.Origin = h.Origin
	w.cut = w.want
	w.cut.Z = make([]float64, len(w.want.Z))
	w.line = make([]int32, len(w.want.Z))
	for r := range rows {
		for q := range cols {
			w.want.Set(q, r, top+between4(h, w.want.Node(q, r)))
			w.cut.Set(q, r, top)
		}
	}
	return w, true
}

// between4 returns the height of f at p from the four nodes round it; NaN where one of
// them is.
func between4(f grid.Field, p geom.Point) float64 {
	u := math.Max(0, math.Min(float64(f.Cols-1), (p.X-f.Origin.X)/f.DX))
	v := math.Max(0, math.Min(float64(f.Rows-1), (p.Y-f.Origin.Y)/f.DY))
	c, r := min(int(u), f.Cols-2), min(int(v), f.Rows-2)
	u, v = u-float64(c), v-float64(r)
	return (1-v)*((1-u)*f.At(c, r)+u*f.At(c+1, r)) + v*((1-u)*f.At(c, r+1)+u*f.At(c+1, r+1))
}

// run takes away what the ball takes along m.
func (w *relief) run(m *rs274.Move) {
	points := m.Chords(0.01)
	for k := 1; k < len(points); k++ {
		a, b := points[k-1], points[k]
		n := math.Max(1, math.Ceil(2*a.XY().Sub(b.XY()).Norm()/math.Min(w.want.DX, w.want.DY)))
		for i := 0.0; i <= n; i++ {
			t := i / n
			w.ball(a[0]+t*(b[0]-a[0]), a[1]+t*(b[1]-a[1]), a[2]+t*(b[2]-a[2]), int32(m.Line))
		}
	}
}

func (w *relief) ball(x, y, z float64, line int32) {
	w.around(x, y, func(k int, d2 float64) {
		if low := z + w.r - math.Sqrt(w.r*w.r-d2); low < w.cut.Z[k] {
			w.cut.Z[k], w.line[k] = low, line
		}
	})
}

// around calls visit for the nodes below a ball at x, y with their squared distances.
func (w *relief) around(x, y float64, visit func(k int, d2 float64)) {
	f := &w.want
	u, v := (x-f.Origin.X)/f.DX, (y-f.Origin.Y)/f.DY
	ru, rv := w.r/f.DX, w.r/f.DY
	if !(u+ru >= 0 && v+rv >= 0 && u-ru <= float64(f.Cols) && v-rv <= float64(f.Rows)) {
		return
	}
	for r := max(0, int(math.Ceil(v-rv))); r <= min(f.Rows-1, int(v+rv)); r++ {
		dy := (float64(r) - v) * f.DY
		for c := max(0, int(math.Ceil(u-ru))); c <= min(f.Cols-1, int(u+ru)); c++ {
			dx := (float64(c) - u) * f.DX
			if d2 := dx*dx + dy*dy; d2 <= w.r*w.r {
				visit(r*f.Cols+c, d2)
			}
		}
	}
}

// ideal returns the surface that a ball of this size can leave at best.
func (w *relief) ideal() []float64 {
	tip, out := make([]float64, len(w.want.Z)), make([]float64, len(w.want.Z))
	each := func(to []float64, start float64, take func(was, here, lift float64) float64, from []float64) {
		for i := range to {
			p, best := w.want.Node(i%w.want.Cols, i/w.want.Cols), start
			w.around(p.X, p.Y, func(k int, d2 float64) {
				if z := from[k]; !math.IsNaN(z) {
					best = take(best, z, w.r-math.Sqrt(w.r*w.r-d2))
				}
			})
			to[i] = best
		}
	}
	each(tip, math.Inf(-1), func(was, z, lift float64) float64 { return max(was, z-lift) }, w.want.Z)
	each(out, w.top, func(was, z, lift float64) float64 { return min(was, z+lift) }, tip)
	return out
}

// compare reports the worst places of a carved surface.
func (s *simulation) compare(w *relief, ridges float64) *Carved {
	ideal := grid.Field{Cols: w.want.Cols, Rows: w.want.Rows, DX: w.want.DX, DY: w.want.DY, Origin: w.want.Origin, Z: w.ideal()}
	var deep, high, left worst
	for i, z := range w.want.Z {
		if math.IsNaN(z) {
			continue
		}
		c, r := i%w.want.Cols, i/w.want.Cols
		at, up := w.want.Node(c, r), square(w.want, c, r)
		deep.take((z-w.cut.Z[i])*up, at, w.line[i])
		high.take((w.cut.Z[i]-ideal.Z[i])*square(ideal, c, r), at, w.line[i])
		left.take((ideal.Z[i]-z)*up, at, w.line[i])
	}
	if deep.by > carveTol {
		s.say(gouge, int(deep.line), &deep.at, "Line %d cuts %.2f mm into the surface; %.2f mm are allowed.", deep.line, deep.by, carveTol)
	}
	if high.by > ridges {
		s.say(uncut, int(high.line), &high.at, "%.2f mm of foam are left on the surface where the ball can reach; %.2f mm are allowed.", high.by, ridges)
	}
	return &Carved{units.Length(rounded(deep.by)), units.Length(rounded(high.by)), units.Length(rounded(left.by))}
}

// square returns by what a height is shortened when it is measured square to the
// surface: the cosine of the steepest slope beside the node.
func square(f grid.Field, c, r int) float64 {
	at := f.At(c, r)
	steep := func(c1, r1 int, d float64) float64 {
		if c1 < 0 || r1 < 0 || c1 >= f.Cols || r1 >= f.Rows || math.IsNaN(f.At(c1, r1)) {
			return 0
		}
		return math.Abs(f.At(c1, r1)-at) / d
	}
	x := math.Max(steep(c-1, r, f.DX), steep(c+1, r, f.DX))
	y := math.Max(steep(c, r-1, f.DY), steep(c, r+1, f.DY))
	return 1 / math.Sqrt(1+x*x+y*y)
}
