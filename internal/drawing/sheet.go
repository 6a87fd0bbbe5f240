package drawing

import (
	"math"

	"pourwright/internal/geom"
)

// sheet collects items and the box around them.
type sheet struct {
	d    Drawing
	size float64 // text height, mm of the drawing
}

// newSheet starts a drawing of a figure w x h mm with lines lines of notes below it.
func newSheet(name, title, viewName string, w, h float64, lines int) *sheet {
	scale := scaleFor(w, h, lines)
	return &sheet{
		d:    Drawing{Name: name, Title: title, View: viewName, Box: geom.EmptyBox(), Scale: scale, Items: []Item{}},
		size: Lettering * scale,
	}
}

func (s *sheet) add(it Item) { s.d.Items = append(s.d.Items, it) }

// grow widens the drawing's box to hold b.
func (s *sheet) grow(b geom.Box) { s.d.Box = s.d.Box.Union(b) }

// area fills rings by the even-odd rule; shade runs from 0 to 1 with depth.
func (s *sheet) area(style Style, shade float64, rings ...geom.Ring) {
	s.closed(style, Path{Rings: rings, Closed: true, Fill: true, Shade: shade})
}

// cut fills rings with section hatch.
func (s *sheet) cut(style Style, rings ...geom.Ring) {
	s.closed(style, Path{Rings: rings, Closed: true, Fill: true, Hatch: true})
}

// edge draws closed lines.
func (s *sheet) edge(style Style, rings ...geom.Ring) {
	s.closed(style, Path{Rings: rings, Closed: true})
}

func (s *sheet) closed(style Style, p Path) {
	if len(p.Rings) == 0 {
		return
	}
	for _, r := range p.Rings {
		s.grow(r.Box())
	}
	s.add(Item{Style: style, Path: &p})
}

// line draws a line through points.
func (s *sheet) line(style Style, points ...geom.Point) {
	r := geom.Ring(points)
	s.grow(r.Box())
	s.add(Item{Style: style, Path: &Path{Rings: []geom.Ring{r}}})
}

// widthOf estimates how long a text is, mm of the drawing.
func (s *sheet) widthOf(text string) float64 { return 0.56 * s.size * float64(len([]rune(text))) }

// text writes text on the base line at.
func (s *sheet) text(at geom.Point, anchor, text string) {
	w := s.widthOf(text)
	x := at.X - w*anchorShare(anchor)
	s.grow(geom.Rect(x, at.Y-0.3*s.size, x+w, at.Y+s.size))
	s.add(Item{Style: Outline, Text: &Text{At: at, Text: text, Size: s.size, Anchor: anchor}})
}

// upright writes text turned to be read from the right, its middle at at.
func (s *sheet) upright(at geom.Point, text string) {
	w := s.widthOf(text)
	s.grow(geom.Rect(at.X-s.size, at.Y-w/2, at.X+0.3*s.size, at.Y+w/2))
	s.add(Item{Style: Outline, Text: &Text{At: at, Text: text, Size: s.size, Anchor: "middle", Turn: 90}})
}

// anchorShare returns which part of a text lies before its anchor.
func anchorShare(anchor string) float64 {
	switch anchor {
	case "middle":
		return 0.5
	case "end":
		return 1
	}
	return 0
}

// dim measures from a to b on a line off text heights to the left of that direction.
func (s *sheet) dim(a, b geom.Point, off float64, text string) {
	d := Dimension{A: a, B: b, Offset: off * s.size, Text: text}
	lines := d.Lines(s.size)
	for _, l := range lines.Segments {
		s.grow(geom.Ring{l[0], l[1]}.Box())
	}
	_, up, turn := readable(b.Sub(a))
	half, h := s.widthOf(text)/2, up.Mul(1.3*s.size/math.Max(up.Norm(), 1e-9))
	along := geom.Point{X: math.Cos(turn * math.Pi / 180), Y: math.Sin(turn * math.Pi / 180)}.Mul(half)
	at := lines.At
	s.grow(geom.Ring{at.Sub(along), at.Add(along), at.Sub(along).Add(h), at.Add(along).Add(h)}.Box())
	s.add(Item{Style: Thin, Dim: &d})
}

// fits reports whether the text of a dimension stands between its ends.
func (s *sheet) fits(length float64, text string) bool { return length >= s.widthOf(text)+0.6*s.size }

// chain measures the stretches between places along one line, leaving out those whose
// text does not fit.
func (s *sheet) chain(at func(float64) geom.Point, places []float64, off float64, text func(float64) string) {
	for i := 1; i < len(places); i++ {
		a, b := places[i-1], places[i]
		if t := text(b - a); b > a && s.fits(b-a, t) {
			s.dim(at(a), at(b), off, t)
		}
	}
}

// spot circles a place.
func (s *sheet) spot(style Style, at geom.Point, radius float64, label string) {
	r := math.Max(radius, s.size)
	s.grow(geom.Rect(at.X-r, at.Y-r, at.X+r, at.Y+r+1.4*s.size))
	s.add(Item{Style: style, Spot: &Spot{At: at, Radius: r, Label: label}})
}

// notes writes lines of text below everything drawn so far, from x on.
func (s *sheet) notes(x float64, lines ...string) {
	y := s.d.Box.Min.Y - 2.2*s.size
	for _, l := range lines {
		s.text(geom.Point{X: x, Y: y}, "start", l)
		y -= 1.6 * s.size
	}
}

// done returns the drawing with a little air around it.
func (s *sheet) done() Drawing {
	m := 0.4 * s.size
	b := s.d.Box
	s.d.Box = geom.Rect(b.Min.X-m, b.Min.Y-m, b.Max.X+m, b.Max.Y+m)
	return s.d
}
