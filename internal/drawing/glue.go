package drawing

import (
	"fmt"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// glueMaps draws how the parts of each layer are glued, for layers of several parts or
// with dowels.
func glueMaps(p *plan.Plan) []Drawing {
	out := []Drawing{}
	for _, m := range p.Knockout.Maps {
		parts := partsOf(p, m.Layer)
		if len(parts) > 1 || slices.ContainsFunc(parts, func(x knockout.Part) bool { return len(x.Dowels) > 0 }) {
			out = append(out, glueMap(p, m, parts))
		}
	}
	return out
}

// glueMap draws one layer with the order of its parts, its dowels and the dimensions
// to check across its joints.
func glueMap(p *plan.Plan, m knockout.GlueMap, parts []knockout.Part) Drawing {
	l, w := p.Piece.Length.MM(), p.Piece.Width.MM()
	lines := glueLines(p, m, parts)
	s := newSheet(fmt.Sprintf("glue-%d", m.Layer), fmt.Sprintf("Glue map of layer %d", m.Layer), view.Form{}.Name(), l, w, len(lines))
	s.edge(Thin, geom.Rect(0, 0, l, w).Ring())
	for _, part := range partsOf(p, m.Layer-1) {
		s.edge(Hidden, part.Outline.Shape().Rings()...)
	}
	for _, part := range parts {
		s.area(Foam, 0.15, part.Region.Shape().Rings()...)
	}
	for i, id := range m.Order {
		k := slices.IndexFunc(parts, func(x knockout.Part) bool { return x.ID == id })
		if k < 0 {
			continue
		}
		at := geom.Point(parts[k].LabelAt)
		s.partLabel(at, fmt.Sprintf("%d: %s", i+1, id), "", nearSide, roomAt(parts[k].Region.Shape(), at))
	}
	s.dowels(parts)
	for _, c := range m.Checks {
		s.dim(c.From, c.To, 0, Measure(c.Length, p.Piece.Units))
	}
	s.text(geom.Point{X: l / 2, Y: -(nameGap + 0.8) * s.size}, "middle", "near side of the form")
	s.upright(geom.Point{X: -nameGap * s.size, Y: w / 2}, "right end")
	s.upright(geom.Point{X: l + (nameGap+0.8)*s.size, Y: w / 2}, "left end")
	s.notes(0, lines...)
	return s.done()
}

// dowels crosses the middles of the parts' dowel holes.
func (s *sheet) dowels(parts []knockout.Part) {
	for _, part := range parts {
		for _, d := range part.Dowels {
			r := d.Diameter.MM()
			s.line(Thin, geom.Point{X: d.X.MM() - r, Y: d.Y.MM()}, geom.Point{X: d.X.MM() + r, Y: d.Y.MM()})
			s.line(Thin, geom.Point{X: d.X.MM(), Y: d.Y.MM() - r}, geom.Point{X: d.X.MM(), Y: d.Y.MM() + r})
		}
	}
}

// glueLines are the notes below a glue map.
func glueLines(p *plan.Plan, m knockout.GlueMap, parts []knockout.Part) []string {
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	lines := []string{"FORM SIDE up, arrows to the near side; " + fixedTo(m.Layer)}
	if len(m.Order) > 1 {
		lines = append(lines, "numbers: glue in this order, the largest outline first; lay each beside one that lies")
	}
	for _, c := range m.Checks {
		lines = append(lines, fmt.Sprintf("check %s: %s between %s and %s", c.Name, measure(c.Length), c.Parts[0], c.Parts[1]))
	}
	pegs, shown := 0, 0
	var size units.Length
	for _, part := range parts {
		for _, d := range part.Dowels {
			pegs++
			size = d.Diameter
			if d.Shows {
				shown++
			}
		}
	}
	if pegs > 0 {
		lines = append(lines, fmt.Sprintf("crosses: %s of %s", units.Count(pegs, "hole for a dowel", "holes for dowels"), measure(size)))
	}
	if shown > 0 {
		lines = append(lines, fmt.Sprintf("%d of them show on a ledge: cut the dowel flush, fill and sand", shown))
	}
	return append(lines, unitNote(p.Piece.Units))
}
