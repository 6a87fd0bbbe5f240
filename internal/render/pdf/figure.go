package pdf

import (
	"math"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/geom"
)

// frame maps a drawing's millimetres to the page.
type frame struct {
	b          *book
	box        geom.Box
	x, y       float64 // upper left corner on the page, mm
	k          float64 // mm on the page for a mm of the drawing
	textHeight float64 // mm of the drawing
	size       float64 // points
}

func (f frame) at(p geom.Point) (x, y float64) {
	return f.x + (p.X-f.box.Min.X)*f.k, f.y + (f.box.Max.Y-p.Y)*f.k
}

// figures prints the drawings, each on a page of its own.
func (b *book) figures(ds []drawing.Drawing) {
	for _, d := range ds {
		if !d.Box.Empty() && d.Box.Width() > 0 && d.Box.Height() > 0 {
			b.figure(d)
		}
	}
}

// about says what a view shows.
var about = map[string]string{
	"finished": "looking down on the piece as it stands in use",
	"form":     "looking down into the form, onto the back of the foam: left and right are exchanged",
}

// figure prints one drawing at a customary scale, with the stamp of its view.
func (b *book) figure(d drawing.Drawing) {
	if d.Box.Width() > lying*d.Box.Height() {
		b.beginLying(d.Title)
	} else {
		b.begin(d.Title)
	}
	if d.View != "" {
		b.stamp(d.View)
	}
	const below = 26 // mm for the scale and the bar
	y := b.GetY()
	w, h := b.w-2*margin, b.h-foot-below-y
	f := frame{b: b, box: d.Box, y: y}
	scale, fits := d.Fitting(w, h)
	f.k = math.Min(w/d.Box.Width(), h/d.Box.Height())
	if fits {
		f.k = 1 / scale
	}
	f.x = margin + (w-d.Box.Width()*f.k)/2
	f.textHeight = drawing.Lettering * math.Max(d.Scale, 1e-9)
	f.size = math.Max(5, f.textHeight*f.k/pt/0.72) // capitals are about 0.72 of a font's size
	for _, it := range d.Items {
		f.item(it)
	}
	b.scaleBar(scale, fits)
}

// lying is from which width over height a figure gets a page on its long side. Chosen:
// between the two ways of laying the paper.
const lying = 1.1

// stamp prints the view large in a frame, so that no sheet is taken for its mirror.
func (b *book) stamp(viewName string) {
	text := strings.ToUpper(viewName) + " VIEW"
	b.font("B", 24)
	w := b.GetStringWidth(text) + 10
	y := b.GetY()
	b.SetLineWidth(0.7)
	b.Rect(margin, y, w, 13, "D")
	b.SetXY(margin, y)
	b.CellFormat(w, 13, text, "", 0, "C", false, 0, "")
	b.font("", 9)
	for i, l := range b.SplitText(about[viewName], b.w-2*margin-w-6) {
		b.text(margin+w+5, y+2.2+4.4*float64(i), b.w-2*margin-w-6, "", 9, soft, l)
	}
	b.SetXY(margin, y+18)
}

// scaleBar prints the scale and a bar of 100 mm by which a shrunk print shows.
func (b *book) scaleBar(scale float64, fits bool) {
	y := b.h - foot - 18
	text := "not to scale"
	if fits {
		text = "scale 1:" + trimmed(scale)
	}
	b.text(margin, y, 60, "B", 12, ink, text)
	if !fits {
		return
	}
	y += 9
	b.SetLineWidth(0.3)
	b.Line(margin, y, margin+100, y)
	for i := 0; i <= 10; i++ {
		x, long := margin+10*float64(i), 1.2
		if i%5 == 0 {
			long = 2.2
		}
		b.Line(x, y, x, y-long)
	}
	b.text(margin, y+1.2, b.w-2*margin, "", 8.5, soft, "Measure this bar: 100 mm. If it is not, the print was scaled; print at actual size.")
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
		f.b.SetLineWidth(widths[it.Style])
		f.b.Circle(x, y, it.Spot.Radius*f.k, "D")
		f.text(it.Spot.At.Add(geom.Point{Y: it.Spot.Radius + 0.4*f.textHeight}), "middle", 0, it.Spot.Label)
	}
}

// text prints one line; turn is counter-clockwise.
func (f frame) text(at geom.Point, anchor string, turn float64, text string) {
	b := f.b
	b.font("", f.size)
	text = Clean(text)
	x, y := f.at(at)
	dx := 0.0
	switch anchor {
	case "middle":
		dx = -b.GetStringWidth(text) / 2
	case "end":
		dx = -b.GetStringWidth(text)
	}
	if turn == 0 {
		b.Text(x+dx, y, text)
		return
	}
	b.TransformBegin()
	b.TransformRotate(turn, x, y)
	b.Text(x+dx, y, text)
	b.TransformEnd()
}
