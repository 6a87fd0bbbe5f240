package drawing

import (
	"fmt"
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// All returns the drawings of a plan in a fixed order; those of rooms that were not
// computed are left out.
func All(p *plan.Plan) []Drawing {
	var out []Drawing
	if len(p.Relief.Layers) > 0 {
		out = append(out, planView(p, false), planView(p, true), section(p))
		for _, l := range p.Relief.Layers {
			out = append(out, layer(p, l.Number))
		}
	}
	if len(p.Form.Panels) > 0 {
		out = append(out, panels(p))
	}
	return out
}

// sheet collects items and the box around them.
type sheet struct {
	d    Drawing
	size float64 // text height, mm
}

func newSheet(name, title, viewName string, size float64) *sheet {
	return &sheet{d: Drawing{Name: name, Title: title, View: viewName, Box: geom.EmptyBox()}, size: size}
}

func (s *sheet) path(style Style, fill, hatch bool, rings ...geom.Ring) {
	for _, r := range rings {
		s.d.Box = s.d.Box.Union(r.Box())
	}
	s.d.Items = append(s.d.Items, Item{Style: style, Path: &Path{Rings: rings, Closed: true, Fill: fill, Hatch: hatch}})
}

func (s *sheet) line(style Style, a, b geom.Point) {
	s.d.Box = s.d.Box.Union(geom.Ring{a, b}.Box())
	s.d.Items = append(s.d.Items, Item{Style: style, Path: &Path{Rings: []geom.Ring{{a, b}}}})
}

func (s *sheet) text(at geom.Point, anchor, text string, scale float64) {
	h := s.size * scale
	w := 0.6 * h * float64(len([]rune(text)))
	x := at.X
	switch anchor {
	case "middle":
		x -= w / 2
	case "end":
		x -= w
	}
	s.d.Box = s.d.Box.Union(geom.Rect(x, at.Y-0.3*h, x+w, at.Y+h))
	s.d.Items = append(s.d.Items, Item{Style: Outline, Text: &Text{At: at, Text: text, Size: h, Anchor: anchor}})
}

// dim measures from a to b, drawn off mm to the left of that direction.
func (s *sheet) dim(a, b geom.Point, off float64, text string) {
	v := b.Sub(a)
	n := geom.Point{X: -v.Y, Y: v.X}.Mul(off / v.Norm())
	far := n.Mul(1 + 1.8*s.size/math.Abs(off))
	s.d.Box = s.d.Box.Union(geom.Ring{a.Add(far), b.Add(far)}.Box())
	s.d.Items = append(s.d.Items, Item{Style: Thin, Dim: &Dimension{A: a, B: b, Offset: off, Text: text}})
}

func (s *sheet) done() Drawing {
	m := s.size
	s.d.Box = geom.Rect(s.d.Box.Min.X-m, s.d.Box.Min.Y-m, s.d.Box.Max.X+m, s.d.Box.Max.Y+m)
	return s.d
}

// measure prints a length in the maker's unit.
func measure(p *plan.Plan, l units.Length) string {
	if p.Piece.Units == "in" {
		return fmt.Sprintf("%.3f in", l.In())
	}
	return fmt.Sprintf("%.1f", l.MM())
}

func textSize(p *plan.Plan) float64 {
	return math.Max(1, math.Max(float64(p.Piece.Length), float64(p.Piece.Width))/60)
}

// planView draws the piece from above (finished) or from inside the form.
func planView(p *plan.Plan, inForm bool) Drawing {
	l, w := p.Piece.Length.MM(), p.Piece.Width.MM()
	s := newSheet("plan-finished", "Plan, as it stands in use", view.Finished{}.Name(), textSize(p))
	shape := func(r view.Region[view.Finished]) geom.Region { return r.Shape() }
	turn := func(x float64) float64 { return x }
	left, right := "left", "right"
	if inForm {
		flip := view.Flip{Length: l}
		s = newSheet("plan-form", "Plan, looking into the form", view.Form{}.Name(), textSize(p))
		shape = func(r view.Region[view.Finished]) geom.Region { return flip.ToForm(r).Shape() }
		turn = func(x float64) float64 { return l - x }
		left, right = right, left
	}
	s.path(Concrete, true, false, geom.Rect(0, 0, l, w).Ring())
	for i, lay := range p.Relief.Layers {
		style := Resin
		if inForm {
			style = Foam
		} else if i > 0 {
			style = ResinDeep
		}
		s.path(style, true, false, shape(lay.Region).Rings()...)
	}
	s.path(Outline, false, false, geom.Rect(0, 0, l, w).Ring())
	for _, n := range p.Relief.Narrow {
		at := geom.Point{X: turn(float64(n.X)), Y: float64(n.Y)}
		s.d.Items = append(s.d.Items, Item{Style: Caution, Spot: &Spot{At: at, Radius: math.Max(float64(n.Limit), 2*s.size), Label: fmt.Sprintf("%s %s", n.Kind, measure(p, n.Width))}})
	}
	off := 3 * s.size
	s.dim(geom.Point{X: 0, Y: w}, geom.Point{X: l, Y: w}, off, measure(p, p.Piece.Length))
	s.dim(geom.Point{X: 0, Y: 0}, geom.Point{X: 0, Y: w}, off, measure(p, p.Piece.Width))
	s.text(geom.Point{X: l / 2, Y: -2 * s.size}, "middle", "near side", 1)
	s.text(geom.Point{X: l / 2, Y: w + s.size*0.7}, "middle", "far side", 1)
	s.text(geom.Point{X: s.size, Y: s.size * 0.7}, "start", left+" end", 1)
	s.text(geom.Point{X: l - s.size, Y: s.size * 0.7}, "end", right+" end", 1)
	for i, lay := range p.Relief.Layers {
		s.text(geom.Point{X: 0, Y: -(4 + 1.5*float64(i)) * s.size}, "start", fmt.Sprintf("%d  %s: floor %s below the face", lay.Number, lay.Name, measure(p, lay.To)), 1)
	}
	if !inForm {
		y := sectionY(p)
		s.line(Centre, geom.Point{X: -2 * s.size, Y: y}, geom.Point{X: l + 2*s.size, Y: y})
		s.text(geom.Point{X: l + 2.2*s.size, Y: y}, "start", "A", 1)
	}
	return s.done()
}

// sectionY returns the line of section A-A: the middle of the deepest layer.
func sectionY(p *plan.Plan) float64 {
	last := p.Relief.Layers[len(p.Relief.Layers)-1].Region.Shape()
	return last.Box().Center().Y
}

// section cuts the piece lengthwise through the middle of the deepest layer. The
// inner line is drawn square; in truth it is rounded at outer corners.
func section(p *plan.Plan) Drawing {
	s := newSheet("section", "Section A-A; the inner line is rounded at corners in the cast piece", view.Finished{}.Name(), textSize(p))
	l, h, t := p.Piece.Length.MM(), p.Piece.Height.MM(), p.Piece.Shell.MM()
	y := sectionY(p)
	strip := geom.Rect(-1, y-0.05, l+1, y+0.05).Region()
	var water, grown, inner geom.Region
	for _, lay := range p.Relief.Layers {
		for _, part := range geom.Intersect(lay.Region.Shape(), strip) {
			b := part.Outer.Box()
			water = append(water, geom.Rect(b.Min.X, h-lay.To.MM(), b.Max.X, h-lay.From.MM()).Region()...)
			grown = append(grown, geom.Rect(b.Min.X-t, h-lay.To.MM()-t, b.Max.X+t, h).Region()...)
		}
	}
	water = geom.Union(water)
	inner = geom.Subtract(geom.Rect(t, 0, l-t, h-t).Region(), geom.Union(grown))
	body := geom.Subtract(geom.Subtract(geom.Rect(0, 0, l, h).Region(), water), inner)
	s.path(Resin, true, false, water.Rings()...)
	s.path(Concrete, true, true, body.Rings()...)
	off := 3 * s.size
	s.dim(geom.Point{X: l, Y: h}, geom.Point{X: l, Y: 0}, off, measure(p, p.Piece.Height))
	s.dim(geom.Point{X: 0, Y: h}, geom.Point{X: l, Y: h}, off, measure(p, p.Piece.Length))
	s.text(geom.Point{X: 0, Y: -2 * s.size}, "start", fmt.Sprintf("shell %s, basin %s deep", measure(p, p.Piece.Shell), measure(p, p.Relief.Depth)), 1)
	return s.done()
}

// layer draws the foam parts of one layer in form view.
func layer(p *plan.Plan, number int) Drawing {
	s := newSheet(fmt.Sprintf("layer-%d", number), fmt.Sprintf("Knockout layer %d", number), view.Form{}.Name(), textSize(p))
	l, w := p.Piece.Length.MM(), p.Piece.Width.MM()
	s.path(Thin, false, false, geom.Rect(0, 0, l, w).Ring())
	for _, part := range p.Knockout.Parts {
		if part.Layer != number {
			continue
		}
		s.path(Foam, true, false, part.Region.Shape().Rings()...)
		box := part.Region.Shape().Box()
		s.text(geom.Point(part.LabelAt), "middle", fmt.Sprintf("%s  FORM SIDE  %s thick", part.ID, measure(p, part.Thickness)), 1)
		s.dim(geom.Point{X: box.Min.X, Y: box.Max.Y}, geom.Point{X: box.Max.X, Y: box.Max.Y}, 2.5*s.size, measure(p, part.BoxX))
	}
	s.text(geom.Point{X: s.size, Y: -2 * s.size}, "start", "right end", 1)
	s.text(geom.Point{X: l - s.size, Y: -2 * s.size}, "end", "left end", 1)
	s.text(geom.Point{X: l / 2, Y: -2 * s.size}, "middle", "near side", 1)
	return s.done()
}

// panels lays the form's panels out one above the other.
func panels(p *plan.Plan) Drawing {
	s := newSheet("panels", "Form panels, inside face up", view.Form{}.Name(), textSize(p))
	y := 0.0
	for _, x := range p.Form.Panels {
		s.path(Board, true, false, geom.Rect(0, y, x.Length.MM(), y+x.Width.MM()).Ring())
		s.text(geom.Point{X: x.Length.MM() / 2, Y: y + x.Width.MM()/2}, "middle", fmt.Sprintf("%s, %d of", x.Name, x.Count), 1)
		s.dim(geom.Point{X: 0, Y: y + x.Width.MM()}, geom.Point{X: x.Length.MM(), Y: y + x.Width.MM()}, 2*s.size, measure(p, x.Length))
		s.dim(geom.Point{X: 0, Y: y}, geom.Point{X: 0, Y: y + x.Width.MM()}, 2*s.size, measure(p, x.Width))
		y += x.Width.MM() + 7*s.size
	}
	return s.done()
}
