package pdf

import (
	"math"
	"slices"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/geom"
)

// scales are the customary scales of drawings. Source: [iso-5455] from memory.
var scales = []float64{1, 2, 5, 10, 20, 50, 100}

// frame maps a drawing's millimetres to the page.
type frame struct {
	b          *book
	box        geom.Box
	x, y, k    float64
	textHeight float64
}

func (f frame) at(p geom.Point) (x, y float64) {
	return f.x + (p.X-f.box.Min.X)*f.k, f.y + (f.box.Max.Y-p.Y)*f.k
}

// figure prints one drawing on a page of its own, at a customary scale.
func (b *book) figure(d drawing.Drawing) {
	b.head(d.Title)
	if d.View != "" {
		b.font("B", 22)
		b.CellFormat(0, 11, strings.ToUpper(d.View)+" VIEW", "1", 1, "C", false, 0, "")
		b.Ln(3)
	}
	w, h := b.w-2*margin, b.h-b.GetY()-42
	scale := scales[len(scales)-1]
	for _, s := range scales {
		if d.Box.Width()/s <= w && d.Box.Height()/s <= h {
			scale = s
			break
		}
	}
	f := frame{b: b, box: d.Box, x: margin + (w-d.Box.Width()/scale)/2, y: b.GetY(), k: 1 / scale, textHeight: 2.6 * scale}
	for _, it := range d.Items {
		f.item(it)
	}
	y := f.y + d.Box.Height()/scale + 8
	b.SetXY(margin, y)
	b.say("B", 11, "Scale 1:%g", scale)
	y = b.GetY() + 4
	b.SetLineWidth(0.4)
	b.Line(margin, y, margin+100, y)
	b.Line(margin, y-1.5, margin, y+1.5)
	b.Line(margin+100, y-1.5, margin+100, y+1.5)
	b.SetXY(margin, y+2)
	b.say("", 9, "Measure this bar: 100 mm on paper. If it is not, the print was scaled; print at actual size.")
}

func (f frame) item(it drawing.Item) {
	switch {
	case it.Path != nil:
		f.path(it.Style, it.Path)
	case it.Text != nil:
		f.text(it.Text.At, it.Text.Anchor, it.Text.Turn, it.Text.Text)
	case it.Dim != nil:
		l := it.Dim.Lines(f.textHeight)
		f.b.SetLineWidth(0.13)
		for _, s := range l.Segments {
			x1, y1 := f.at(s[0])
			x2, y2 := f.at(s[1])
			f.b.Line(x1, y1, x2, y2)
		}
		f.text(l.At, "middle", l.Turn, it.Dim.Text)
	case it.Spot != nil:
		x, y := f.at(it.Spot.At)
		f.b.SetLineWidth(0.5)
		f.b.Circle(x, y, it.Spot.Radius*f.k, "D")
		f.text(it.Spot.At.Add(geom.Point{Y: it.Spot.Radius + 0.3*f.textHeight}), "middle", 0, it.Spot.Label)
	}
}

// greys are the fills on paper, darkest for what is deepest.
var greys = map[drawing.Style]int{drawing.Concrete: 225, drawing.Resin: 245, drawing.ResinDeep: 200, drawing.Foam: 240, drawing.Board: 240}

func (f frame) path(style drawing.Style, p *drawing.Path) {
	width := 0.13
	switch style {
	case drawing.Outline, drawing.Concrete, drawing.Board, drawing.Foam:
		width = 0.35
	case drawing.Resin, drawing.ResinDeep:
		width = 0.25
	}
	f.b.SetLineWidth(width)
	for _, r := range p.Rings {
		for i, q := range r {
			x, y := f.at(q)
			if i == 0 {
				f.b.MoveTo(x, y)
			} else {
				f.b.LineTo(x, y)
			}
		}
		if p.Closed {
			f.b.ClosePath()
		}
	}
	mode := "D"
	if g, ok := greys[style]; ok && p.Fill {
		f.b.SetFillColor(g, g, g)
		mode = "FD*"
	}
	f.b.DrawPath(mode)
	if p.Hatch {
		f.hatch(p.Rings)
	}
}

// hatch draws section lines at 45 degrees, 2.5 mm apart on paper, inside rings.
func (f frame) hatch(rings []geom.Ring) {
	f.b.SetLineWidth(0.1)
	step := 2.5 * math.Sqrt2 / f.k
	lo, hi := f.box.Min.X-f.box.Max.Y, f.box.Max.X-f.box.Min.Y
	for c := math.Floor(lo/step) * step; c < hi; c += step { // the line x - y = c
		var ts []float64
		for _, r := range rings {
			for i, a := range r {
				b := r[(i+1)%len(r)]
				da, db := a.X-a.Y-c, b.X-b.Y-c
				if (da <= 0) != (db <= 0) {
					ts = append(ts, a.X+(b.X-a.X)*da/(da-db))
				}
			}
		}
		slices.Sort(ts)
		for i := 0; i+1 < len(ts); i += 2 {
			x1, y1 := f.at(geom.Point{X: ts[i], Y: ts[i] - c})
			x2, y2 := f.at(geom.Point{X: ts[i+1], Y: ts[i+1] - c})
			f.b.Line(x1, y1, x2, y2)
		}
	}
}

func (f frame) text(at geom.Point, anchor string, turn float64, text string) {
	f.b.font("", 7.5)
	x, y := f.at(at)
	w := f.b.GetStringWidth(text)
	dx := 0.0
	switch anchor {
	case "middle":
		dx = -w / 2
	case "end":
		dx = -w
	}
	f.b.TransformBegin()
	f.b.TransformRotate(turn, x, y)
	f.b.Text(x+dx, y, text)
	f.b.TransformEnd()
}
