package proof

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// farthest is how far from a boundary a path is looked for, beyond the cutter's radius,
// mm; what is left uncut by more is reported as this much.
const farthest = 20.0

// A tracer goes round the boundaries of parts and looks for the cuts along them.
type tracer struct {
	*simulation
	all, deep *index // all cuts, and those through the sheet
	part      Part
	centres   *geom.Locator // of the part at work: where a cutter that touches it has its middle
}

func (s *simulation) newTracer(cuts []piece) *tracer {
	var deep []piece
	for _, c := range cuts {
		if c.low <= s.through()+1e-9 {
			deep = append(deep, c)
		}
	}
	cell := math.Max(1, s.r/2)
	return &tracer{simulation: s, all: newIndex(cuts, cell), deep: newIndex(deep, cell)}
}

// A look is what is seen at one place of a boundary.
type look struct {
	at     geom.Point
	side   float64 // length of boundary from the place before
	free   bool    // cut through, as far as a cutter of this size reaches
	touch  bool    // cut through to the boundary itself
	left   float64 // width of foam that no cutter of this size takes, mm
	uncut  float64 // width of foam left beyond what no cutter of this size reaches, mm
	height float64 // above the sheet's lower side to which it is cut; +Inf: not at all
	line   int32   // of the cut that comes nearest
}

// trace goes round the boundaries of p.
func (t *tracer) trace(p Part, out *PartResult) {
	t.part, t.centres = p, nil
	var left, bad worst
	for _, ring := range p.Region.Shape().Rings() {
		looks := t.round(ring)
		if t.entered(ring, looks) {
			out.Tabs = append(out.Tabs, t.stretches(looks, &bad)...)
			for _, l := range looks {
				left.take(l.left, l.at, l.line)
			}
		}
	}
	out.Uncut, out.Left = units.Length(rounded(bad.by)), units.Length(rounded(left.by))
	if bad.by > t.tol {
		most := ""
		if bad.by >= farthest {
			most = "at least "
		}
		t.say(uncut, int(bad.line), &bad.at, "%s is not cut free: %s%.2f mm of foam are left at its edge; %.2f mm are allowed.", p.ID, most, bad.by, t.tol)
	}
	if left.by > 0.3 {
		t.say(remains, 0, &left.at, "The cutter of %.1f mm leaves up to %.1f mm of foam in the corners of %s.", t.in.Cutter, left.by, p.ID)
	}
	t.tabs(p, out.Tabs)
}

// round looks at every corner of a ring and at places between.
func (t *tracer) round(ring geom.Ring) []look {
	var out []look
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		length := b.Sub(a).Norm()
		n := math.Max(1, math.Ceil(length/step))
		for k := 0.0; k < n; k++ {
			l := t.look(along(a, b, k/n))
			l.side = length / n
			out = append(out, l)
		}
	}
	for i := len(out) - 1; i > 0; i-- { // from the length after a place to that before it
		out[i].side, out[0].side = out[i-1].side, out[len(out)-1].side
	}
	return out
}

// look sees how the boundary is cut at p.
func (t *tracer) look(p geom.Point) look {
	l := look{at: p, height: math.Inf(1)}
	i, d := t.deep.nearest(p, p, t.r+farthest)
	if i >= 0 {
		l.line = t.deep.pieces[i].of
	}
	if d <= t.r+t.tol {
		l.free, l.touch = true, true
		return l
	}
	reach := math.Max(t.r, t.unreached(p))
	if l.uncut = d - reach; l.uncut <= t.tol {
		l.free, l.left = true, d-t.r
		return l
	}
	t.all.within(p, reach+t.tol, func(k int32) {
		if h := t.all.pieces[k].low - t.bottom; h < l.height {
			l.height, l.line = h, t.all.pieces[k].of
		}
	})
	return l
}

// less is by how much thinner a cutter is taken for where its middle can be, mm, so that a
// hole of just its own diameter, whose chords lie inside its circle, counts as reached.
const less = 0.003

// unreached returns how far p of the boundary is from the nearest middle that a cutter
// beside the part can have.
func (t *tracer) unreached(p geom.Point) float64 {
	if t.centres == nil {
		t.centres = geom.NewLocator(geom.Offset(t.part.Region.Shape(), t.r-less, 0.002))
	}
	return math.Min(t.r+farthest, t.centres.Boundary(p))
}

// entered reports whether the cutter goes into a ring at all; of a hole that it is too
// thick for it says so.
func (t *tracer) entered(ring geom.Ring, looks []look) bool {
	for _, l := range looks {
		if l.touch || !l.free {
			return true
		}
	}
	box := ring.Box()
	at := box.Center()
	t.say(closed, 0, &at, "A hole of %s, %.1f by %.1f mm, is not cut: the cutter of %.1f mm does not go in.", t.part.ID, box.Width(), box.Height(), t.in.Cutter)
	return false
}
