package toolpath

import (
	"math"

	"pourwright/internal/geom"
)

// A pen gathers moves, every number rounded as it will be written, so that what is
// timed and checked is what is cut.
type pen struct {
	grid  float64 // mm: the last decimal written
	moves []Move
	x, y  float64 // where the cutter is, rounded
	z     float64
}

// Grids of the two units: 4 decimals of a millimetre, 5 of an inch. [rs274ngc]
const (
	gridMM   = 1e-4
	gridInch = 1e-5 * 25.4
)

func newPen(inch bool, safe float64) *pen {
	p := &pen{grid: gridMM, x: math.NaN(), y: math.NaN()} // the first move states its place
	if inch {
		p.grid = gridInch
	}
	p.z = p.round(safe)
	return p
}

func (p *pen) round(v float64) float64 { return math.Round(v/p.grid) * p.grid }

// rapid goes up to z, then across to at.
func (p *pen) rapid(at geom.Point, z float64) {
	if p.round(z) != p.z {
		p.add(Move{Kind: Rapid, X: p.x, Y: p.y, Z: p.round(z)})
	}
	p.add(Move{Kind: Rapid, X: p.round(at.X), Y: p.round(at.Y), Z: p.z})
}

// line goes straight to (at, z).
func (p *pen) line(at geom.Point, z, feed float64) {
	p.add(Move{Kind: Line, X: p.round(at.X), Y: p.round(at.Y), Z: p.round(z), Feed: feed})
}

// add adds m unless it goes nowhere.
func (p *pen) add(m Move) {
	if m.X == p.x && m.Y == p.y && m.Z == p.z {
		return
	}
	p.moves = append(p.moves, m)
	p.x, p.y, p.z = m.X, m.Y, m.Z
}

// arc goes round to q.to. The centre is moved on to the bisector of the rounded ends,
// so that the radii at both ends agree but for the rounding of the centre; an arc too
// short to survive rounding becomes a line.
func (p *pen) arc(q piece, z, feed float64) {
	a := geom.Point{X: p.x, Y: p.y}
	b := geom.Point{X: p.round(q.to.X), Y: p.round(q.to.Y)}
	chord := b.Sub(a)
	n := chord.Norm()
	if n < leastChordMM/2 {
		p.line(q.to, z, feed)
		return
	}
	mid, along := a.Add(b).Mul(0.5), chord.Mul(1/n)
	off := q.centre.Sub(mid)
	centre := mid.Add(off.Sub(along.Mul(off.Dot(along))))
	kind := Counter
	if q.sweep < 0 {
		kind = Clockwise
	}
	p.add(Move{Kind: kind, X: b.X, Y: b.Y, Z: p.round(z), I: p.round(centre.X - a.X), J: p.round(centre.Y - a.Y), Feed: feed})
}
