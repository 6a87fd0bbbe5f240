package knockout

import (
	"context"
	"fmt"
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/nest"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// turning are the words of a document in the words of package nest.
var turning = map[string]nest.Turning{anyTurn: nest.TurnAny, quarters: nest.TurnQuarter, halves: nest.TurnHalf, noTurn: nest.TurnNone}

// nest lays slips on boards by their true outlines, holes used. It returns the boards
// with what lies on them and what found no place.
func (c *computer) nest(boards []*bed, left []slip) ([]*bed, []slip) {
	p := nest.Problem{SpacingMM: c.gap().MM(), EdgeMM: c.in.Making.Margin.MM(), Seed: 1, Iterations: c.in.Making.Effort}
	for _, b := range boards {
		p.Sheets = append(p.Sheets, nest.Sheet{Name: b.Name, Outline: geom.Region{{Outer: b.Outline}}, Quantity: 1, Owned: b.Stock == "offcut"})
	}
	for _, s := range left {
		part := c.r.Parts[s.part]
		p.Pieces = append(p.Pieces, nest.Piece{Name: part.ID, Shape: part.Outline.Shape()[0], Turning: turning[c.in.Making.Turns]})
	}
	layout, err := nest.Solve(context.Background(), p)
	if err != nil {
		return nil, left
	}
	var used []*bed
	for _, o := range layout.Sheets {
		used = append(used, boards[o.Sheet])
	}
	rest := slices.Clone(left)
	for _, q := range layout.Placements {
		c.put(used[q.Sheet], left[q.Piece], q.TurnDeg, geom.Point{X: q.XMM, Y: q.YMM})
		rest = slices.DeleteFunc(rest, func(s slip) bool { return s == left[q.Piece] })
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

// boxed lays slips on boards by their boxes: a plan to hold the nesting against.
func (c *computer) boxed(boards []*bed, left []slip) ([]*bed, []slip) {
	var used []*bed
	for _, b := range boards {
		rest := c.fill(b, left)
		if len(rest) < len(left) {
			used, left = append(used, b), rest
		}
	}
	return used, left
}

// best lays slips on boards, which make anew each time, the way that leaves least over,
// buys least and uses least of the last board.
func (c *computer) best(make func() []*bed, left []slip) ([]*bed, []slip) {
	a, restA := c.nest(make(), left)
	b, restB := c.boxed(make(), left)
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
