package knockout

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// The words a document may use.
const (
	straight = "straight"
	stepped  = "stepped"
	keyed    = "keyed"

	anyTurn  = "any"
	quarters = "90"
	halves   = "180"
	noTurn   = "none"
)

// A room is the rectangle that a piece must fit, mm; without a limit it is infinite.
type room struct {
	x, y  float64
	turns string
	by    string
}

// limits returns the largest rectangle that fits the usable bed and the sheet, both
// less the margin all round. A sheet may lie on the bed either way.
func limits(in Input) room {
	r := room{x: math.Inf(1), y: math.Inf(1), turns: in.Making.Turns, by: "none"}
	m := 2 * in.Making.Margin.MM()
	sheet := in.SheetX > 0 && in.SheetY > 0
	if sheet {
		r.x, r.y, r.by = in.SheetX.MM()-m, in.SheetY.MM()-m, "sheet"
	}
	if !in.hasBed() {
		return r
	}
	long, short := ordered(in.Machine.BedX.MM()-m, in.Machine.BedY.MM()-m)
	switch {
	case !sheet:
		r.x, r.y, r.by = in.Machine.BedX.MM()-m, in.Machine.BedY.MM()-m, "bed"
		return r
	case r.x >= r.y:
		r.narrow(long, short)
	default:
		r.narrow(short, long)
	}
	return r
}

// narrow takes a bed of x by y into account.
func (r *room) narrow(x, y float64) {
	switch {
	case x < r.x && y < r.y:
		r.by = "bed"
	case x < r.x || y < r.y:
		r.by = "bed and sheet"
	}
	r.x, r.y = math.Min(r.x, x), math.Min(r.y, y)
}

func (in Input) hasBed() bool {
	return in.Machine.Router && in.Machine.BedX > 0 && in.Machine.BedY > 0
}

func ordered(a, b float64) (long, short float64) { return math.Max(a, b), math.Min(a, b) }

func (r room) limits(router bool) Limits {
	l := Limits{By: r.by, Route: "templates"}
	if router {
		l.Route = "router"
	}
	if r.by != "none" {
		l.X, l.Y = units.Length(r.x), units.Length(r.y)
	}
	return l
}

// reachMM is how much a box may exceed the room by, mm: rounding.
const reachMM = 1e-6

// holds reports whether a box of w by h fits the room in an allowed right-angled turn.
func (r room) holds(w, h float64) bool {
	fits := func(w, h float64) bool { return w <= r.x+reachMM && h <= r.y+reachMM }
	return fits(w, h) || (r.turns == anyTurn || r.turns == quarters) && fits(h, w)
}

// fits reports whether ring fits the room in an allowed turn; with any turn allowed,
// those that lay a side of its hull along the room are tried.
func (r room) fits(ring geom.Ring) bool {
	b := ring.Box()
	if r.holds(b.Width(), b.Height()) {
		return true
	}
	if r.turns != anyTurn || b.Empty() {
		return false
	}
	long, short := ordered(r.x, r.y)
	if math.Max(b.Width(), b.Height()) > math.Hypot(long, short)+reachMM {
		return false
	}
	h := hull(ring)
	for i, p := range h {
		d := h[(i+1)%len(h)].Sub(p)
		if n := d.Norm(); n > 0 {
			w, t := extents(h, d.Mul(1/n))
			if r.holds(w, t) {
				return true
			}
		}
	}
	return false
}

// extents returns how far points reach along u and across it.
func extents(points geom.Ring, u geom.Point) (along, across float64) {
	lo, hi := geom.Point{X: math.Inf(1), Y: math.Inf(1)}, geom.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, p := range points {
		a, b := p.Dot(u), u.Cross(p)
		lo.X, hi.X = math.Min(lo.X, a), math.Max(hi.X, a)
		lo.Y, hi.Y = math.Min(lo.Y, b), math.Max(hi.Y, b)
	}
	return hi.X - lo.X, hi.Y - lo.Y
}

// hull returns the convex hull of ring, counter-clockwise.
func hull(ring geom.Ring) geom.Ring {
	ps := slices.Clone(ring)
	slices.SortFunc(ps, func(a, b geom.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	half := func(ps geom.Ring) geom.Ring {
		var out geom.Ring
		for _, p := range ps {
			for len(out) > 1 && out[len(out)-1].Sub(out[len(out)-2]).Cross(p.Sub(out[len(out)-1])) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		return out
	}
	lower := half(ps)
	upper := half(ps.Reversed())
	if len(lower) < 2 {
		return ps
	}
	return append(lower[:len(lower)-1], upper[:len(upper)-1]...)
}

// least returns into how many pieces a ring must at least be cut, judged by its box.
func (r room) least(ring geom.Ring) int {
	if r.fits(ring) {
		return 1
	}
	return max(2, r.count(ring.Box()))
}

// count returns into how many pieces a box must be cut: columns times rows, the room
// lying the way that needs fewer.
func (r room) count(b geom.Box) int {
	n := func(a, b float64) float64 { return math.Max(1, math.Ceil(a/b-1e-9)) }
	count := n(b.Width(), r.x) * n(b.Height(), r.y)
	if r.turns == anyTurn || r.turns == quarters {
		count = math.Min(count, n(b.Width(), r.y)*n(b.Height(), r.x))
	}
	return int(math.Min(mostPieces, count))
}

// mostPieces is where the splitting of one outline gives up. Chosen: a slip of units,
// or a machine far too small for the piece.
const mostPieces = 60
