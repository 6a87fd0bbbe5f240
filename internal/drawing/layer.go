package drawing

import (
	"fmt"
	"strings"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/stage/relief"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// layer draws the foam parts of one layer where they lie in the form, over the
// outline of the layer they are glued to.
func layer(p *plan.Plan, lay relief.Layer) Drawing {
	l, w := p.Piece.Length.MM(), p.Piece.Width.MM()
	parts, below := partsOf(p, lay.Number), partsOf(p, lay.Number-1)
	s := newSheet(fmt.Sprintf("layer-%d", lay.Number), fmt.Sprintf("Knockout layer %d: %s", lay.Number, lay.Name), view.Form{}.Name(), l, w, len(parts)+len(p.Knockout.Seams)+3)
	s.edge(Thin, geom.Rect(0, 0, l, w).Ring())
	for _, part := range below {
		s.edge(Hidden, part.Region.Shape().Rings()...)
	}
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	box := geom.EmptyBox()
	var lines []string
	for _, part := range parts {
		s.area(Foam, 0.3, part.Region.Shape().Rings()...)
		box = box.Union(part.Region.Shape().Box())
		lines = append(lines, fmt.Sprintf("%s  %s x %s, %s thick%s%s", part.ID, measure(part.BoxX), measure(part.BoxY), measure(part.Thickness), stacked(part.Sheets), beside(part)))
	}
	for _, part := range parts {
		at := geom.Point(part.LabelAt)
		s.partLabel(at, part.ID, part.Mark, nearSide, roomAt(part.Region.Shape(), at))
	}
	s.seamNames(p.Knockout.Seams, lay.Number)
	lines = append(lines, seamLines(p.Knockout.Seams, lay.Number, measure)...)
	if !box.Empty() {
		text := func(d float64) string { return measure(units.Length(d)) }
		s.chain(func(x float64) geom.Point { return geom.Point{X: x, Y: w} }, []float64{0, box.Min.X, box.Max.X, l}, dimGap, text)
		s.chain(func(y float64) geom.Point { return geom.Point{X: 0, Y: y} }, []float64{0, box.Min.Y, box.Max.Y, w}, dimGap, text)
	}
	s.text(geom.Point{X: l / 2, Y: -(nameGap + 0.8) * s.size}, "middle", "near side of the form")
	s.upright(geom.Point{X: -nameGap * s.size, Y: w / 2}, "right end")
	s.upright(geom.Point{X: l + (nameGap+0.8)*s.size, Y: w / 2}, "left end")
	lines = append(lines, "mark this side FORM SIDE UP: it shows when you look down into the form; "+fixedTo(lay.Number), unitNote(p.Piece.Units))
	s.notes(0, lines...)
	return s.done()
}

func partsOf(p *plan.Plan, number int) []knockout.Part {
	var out []knockout.Part
	for _, part := range p.Knockout.Parts {
		if part.Layer == number {
			out = append(out, part)
		}
	}
	return out
}

// beside names the parts that a part is glued to in its layer.
func beside(part knockout.Part) string {
	var ids []string
	for _, n := range part.Neighbours {
		if n.Where == "beside" {
			ids = append(ids, n.Part)
		}
	}
	if len(ids) == 0 {
		return ""
	}
	return ", beside " + strings.Join(ids, " and ")
}

func stacked(sheets int) string {
	if sheets > 1 {
		return fmt.Sprintf(", %d sheets stacked", sheets)
	}
	return ""
}

// fixedTo says on what a layer is glued.
func fixedTo(number int) string {
	if number == 1 {
		return "glued to the form's base"
	}
	return fmt.Sprintf("glued on layer %d (dashed)", number-1)
}
