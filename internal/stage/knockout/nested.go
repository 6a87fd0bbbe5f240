package knockout

import (
	"context"
	"fmt"
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/nest"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// mostPoses bounds parts times turns of one nesting: every pair of poses takes a no-fit
// area of a millisecond or two. Chosen: a plan is computed at every edit.
const mostPoses = 32

// turns returns how s may be turned on a sheet when so many are laid. Where any turn is
// allowed those are tried that lay it square and those that give it the least box.
func (c *computer) turns(s slip, among int) []float64 {
	var out []float64
	switch c.in.Making.Turns {
	case noTurn:
		out = []float64{0}
	case halves:
		out = []float64{0, 180}
	default:
		out = []float64{0, 90, 180, 270}
		if a, _, _ := c.leastBox(s); math.Abs(a) > 1 && c.in.Making.Turns == anyTurn {
			out = append(out, a, a+90, a+180, a+270)
		}
	}
	return out[:min(len(out), max(1, mostPoses/among))]
}

// roughMM is how far an outline is simplified for the nesting, mm; the spacing grows by
// twice as much, and the margin once. Chosen: no-fit areas grow with the square of the
// corners.
const roughMM = 1.0

// nest lays slips on offcuts and sheets by their outlines, holes used. It returns the
// boards with what lies on them and what found no place.
func (c *computer) nest(offcuts []*bed, left []slip) ([]*bed, []slip) {
	p := nest.Problem{SpacingMM: c.gap().MM() + 2*roughMM, EdgeMM: c.in.Making.Margin.MM() + roughMM, Seed: 1, Iterations: c.in.Making.Effort}
	for _, b := range offcuts {
		p.Sheets = append(p.Sheets, nest.Sheet{Name: b.Name, Outline: geom.Region{{Outer: b.Outline}}, Quantity: 1, Owned: true})
	}
	if c.newSheets() {
		p.Sheets = append(p.Sheets, nest.Sheet{Name: "sheet", Outline: geom.Region{{Outer: c.whole(1)[0].Outline}}, Quantity: len(left)})
	}
	for _, s := range left {
		part := c.r.Parts[s.part]
		p.Pieces = append(p.Pieces, nest.Piece{Name: part.ID, Shape: coarse(part.Outline.Shape()[0], roughMM), Turning: nest.TurnListed, TurnsDeg: c.turns(s, len(left))})
	}
	layout, err := nest.Solve(context.Background(), p)
	if err != nil || len(p.Sheets) == 0 {
		return nil, left
	}
	var used []*bed
	for _, o := range layout.Sheets {
		if o.Sheet < len(offcuts) {
			used = append(used, offcuts[o.Sheet])
		} else {
			used = append(used, c.whole(1)...)
		}
	}
	laid := make([]bool, len(left))
	for _, q := range layout.Placements {
		c.put(used[q.Sheet], left[q.Piece], q.TurnDeg, geom.Point{X: q.XMM, Y: q.YMM})
		laid[q.Piece] = true
	}
	var rest []slip
	for i, s := range left {
		if !laid[i] {
			rest = append(rest, s)
		}
	}
	return used, rest
}

// put lays a slip on b, turned by degrees about the origin of form view, then moved.
func (c *computer) put(b *bed, s slip, degrees float64, move geom.Point) {
	p := c.r.Parts[s.part]
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	at := func(q geom.Point) geom.Point {
		return geom.Point{X: q.X*cos - q.Y*sin, Y: q.X*sin + q.Y*cos}.Add(move)
	}
	b.Placements = append(b.Placements, Placement{Part: p.ID, Copy: s.copy, Turn: degrees, X: units.Length(move.X), Y: units.Length(move.Y),
		Region: view.Of[view.Form](p.Region.Shape().Map(at, false)), LabelAt: view.PointOf[view.Form](at(geom.Point(p.LabelAt)))})
}

// boxed lays slips on offcuts and sheets by their boxes: a plan to hold the nesting
// against.
func (c *computer) boxed(offcuts []*bed, left []slip) ([]*bed, []slip) {
	boards := offcuts
	if c.newSheets() {
		boards = append(boards, c.whole(len(left))...)
	}
	var used []*bed
	for _, b := range boards {
		rest := c.fill(b, left)
		if len(rest) < len(left) {
			used, left = append(used, b), rest
		}
	}
	return used, left
}

// newSheets reports whether whole sheets are laid on as they are.
func (c *computer) newSheets() bool { return !c.sawing() && c.in.SheetX > 0 && c.in.SheetY > 0 }

// best lays slips the way that leaves least over, buys least and uses least of the last
// board.
func (c *computer) best(left []slip) ([]*bed, []slip) {
	b, restB := c.boxed(c.offcuts(), left)
	if len(left) > mostPoses {
		return b, restB
	}
	a, restA := c.nest(c.offcuts(), left)
	if len(restB) < len(restA) || len(restB) == len(restA) && (bought(b) < bought(a) || bought(b) == bought(a) && reach(b) < reach(a)) {
		return b, restB
	}
	return a, restA
}

func bought(bs []*bed) int {
	n := 0
	for _, b := range bs {
		if b.Stock != "offcut" {
			n++
		}
	}
	return n
}

// reach returns how far the parts on the last board reach, mm.
func reach(bs []*bed) float64 {
	most := 0.0
	if len(bs) > 0 {
		for _, q := range bs[len(bs)-1].Placements {
			most = math.Max(most, q.Region.Shape().Box().Max.X)
		}
	}
	return most
}

// whole returns n new sheets.
func (c *computer) whole(n int) []*bed {
	var out []*bed
	for k := range n {
		b := c.board(k+1, geom.Rect(0, 0, c.in.SheetX.MM(), c.in.SheetY.MM()))
		b.Name = fmt.Sprintf("sheet %d", k+1)
		out = append(out, b)
	}
	return out
}
