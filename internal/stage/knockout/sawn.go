package knockout

import (
	"context"
	"fmt"
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/saw"
	"pourwright/internal/units"
)

// Chosen, for sheets that are sawn into blanks before they go on the bed.
const (
	blankKerfMM = 2.0 // a hot wire or a fine hand saw
	sawRounds   = 300 // of the search for a cutting plan
)

// sawing reports whether sheets are larger than the bed, so that each is first sawn,
// edge to edge, into blanks.
func (c *computer) sawing() bool {
	return c.in.hasBed() && !c.bedHolds(c.in.SheetX.MM(), c.in.SheetY.MM())
}

// bedHolds reports whether the bed holds a board of x by y mm either way.
func (c *computer) bedHolds(x, y float64) bool {
	return room{x: c.in.Machine.BedX.MM(), y: c.in.Machine.BedY.MM(), turns: quarters}.holds(x, y)
}

// saw gives every slip a blank of its own, its box and the margins, and plans how the
// blanks are sawn from sheets and from offcuts larger than the bed. It returns what
// found no place.
func (c *computer) saw(left []slip, offcuts []Offcut) []slip {
	m := 2 * c.in.Making.Margin.MM()
	p := saw.SheetProblem{KerfMM: blankKerfMM, SmallestOffcut: saw.Size{LengthMM: leastKeptMM, WidthMM: leastKeptMM}, Effort: saw.Effort{Rounds: sawRounds, Seed: 1}}
	turns := make([]float64, len(left))
	for i, s := range left {
		var w, h float64
		turns[i], w, h = c.leastBox(s)
		one := saw.Piece{Name: c.r.Parts[s.part].ID, LengthMM: w + m, WidthMM: h + m, Count: 1, Turn: saw.Either}
		if x, y := math.Ceil(one.LengthMM-reachMM), math.Ceil(one.WidthMM-reachMM); c.bedHolds(x, y) {
			one.LengthMM, one.WidthMM = x, y // whole millimetres are easier to saw
		}
		if len(c.right()) == 1 {
			one.Turn = saw.Along
		}
		p.Pieces = append(p.Pieces, one)
	}
	p.Stock = []saw.Sheet{{Name: "sheet", LengthMM: c.in.SheetX.MM(), WidthMM: c.in.SheetY.MM(), Unlimited: true}}
	for _, o := range offcuts {
		b := o.Outline.Box()
		p.Stock = append(p.Stock, saw.Sheet{Name: o.Name, LengthMM: b.Width(), WidthMM: b.Height(), Count: 1, Owned: true})
	}
	plan := saw.Sheets(context.Background(), p)
	for _, x := range plan.Sheets {
		c.sawnSheet(x, plan.Offcuts, left, turns)
	}
	var rest []slip
	for _, u := range plan.Unplaced {
		rest = append(rest, left[u.Piece])
	}
	return rest
}

// sawnSheet reports the blanks of one sheet.
func (c *computer) sawnSheet(x saw.CutSheet, offcuts []saw.Offcut, left []slip, turns []float64) {
	name, whole := x.Name, 0
	if !x.Owned {
		c.r.Buy++
		whole = c.r.Buy
		name = fmt.Sprintf("sheet %d", whole)
	}
	first := len(c.r.Sheets)
	m := c.in.Making.Margin.MM()
	for _, n := range pieceNodes(x.Tree) {
		b := c.board(whole, geom.Rect(n.XMM, n.YMM, n.XMM+n.LengthMM, n.YMM+n.WidthMM))
		b.Name, b.Stock = fmt.Sprintf("%s blank %d", name, len(c.r.Sheets)-first+1), "blank"
		b.WholeX, b.WholeY = units.Length(x.LengthMM), units.Length(x.WidthMM)
		degrees := turns[n.Piece]
		if n.Turned {
			degrees += 90
		}
		c.place(b, left[n.Piece], degrees, geom.Point{X: m, Y: m})
		c.close(b)
		b.Keep = nil
		c.r.Sheets = append(c.r.Sheets, b.Sheet)
	}
	k := first
	for _, o := range offcuts {
		if o.Sheet == x.ID {
			kept := Keep{Name: "offcut " + o.Name, SizeX: units.Length(o.LengthMM), SizeY: units.Length(o.WidthMM)}
			c.r.Offcuts = append(c.r.Offcuts, kept)
			if k < len(c.r.Sheets) {
				c.r.Sheets[k].Keep = &kept
				k++
			}
		}
	}
}

// pieceNodes returns the parts of a cut sheet that are wanted pieces, from left to
// right.
func pieceNodes(n *saw.Node) []*saw.Node {
	if n == nil {
		return nil
	}
	out := append(pieceNodes(n.A), pieceNodes(n.B)...)
	if n.Kind == saw.KindPiece {
		out = append(out, n)
	}
	return out
}

// leastBox returns the turn in which a part takes least of a sheet, of those allowed
// that suit the bed, and its box in that turn.
func (c *computer) leastBox(s slip) (degrees, w, h float64) {
	shape := c.r.Parts[s.part].Outline.Shape()
	b := shape.Box()
	w, h = b.Width(), b.Height()
	if c.in.Making.Turns != anyTurn {
		return 0, w, h
	}
	square := c.room.holds(w, h)
	hl := hull(slices.Concat(shape.Rings()...))
	for i, p := range hl {
		d := hl[(i+1)%len(hl)].Sub(p)
		n := d.Norm()
		if n < 1 {
			continue
		}
		x, y := extents(hl, d.Mul(1/n))
		if c.room.holds(x, y) && (!square || x*y < 0.97*w*h) {
			degrees, w, h, square = -math.Atan2(d.Y, d.X)*180/math.Pi, x, y, true
		}
	}
	return degrees, w, h
}
