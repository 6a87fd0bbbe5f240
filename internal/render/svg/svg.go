// Package svg inks a display list as a standalone SVG at true scale: one millimetre
// of the drawing is one millimetre of the page.
package svg

import (
	"bufio"
	"encoding/xml"
	"fmt"
	"io"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/geom"
)

// ink is how a style is drawn: fill, stroke, width as a share of the text height.
type ink struct {
	fill, stroke string
	width        float64
	dash         string
}

var inks = map[drawing.Style]ink{
	drawing.Outline: {"none", "#26221c", 0.09, ""}, drawing.Thin: {"none", "#26221c", 0.04, ""},
	drawing.Hidden: {"none", "#26221c", 0.05, "0.5 0.3"}, drawing.Centre: {"none", "#26221c", 0.04, "1.2 0.3 0.2 0.3"},
	drawing.Frame: {"none", "#26221c", 0.05, ""}, drawing.Concrete: {"#d3cdc2", "#26221c", 0.09, ""},
	drawing.Resin: {"#bcd9dc", "#26221c", 0.06, ""}, drawing.ResinDeep: {"#8fbcc4", "#26221c", 0.06, ""},
	drawing.Foam: {"#ecdfb6", "#26221c", 0.06, ""}, drawing.Board: {"#ecdfb6", "#26221c", 0.07, ""},
	drawing.Caution: {"none", "#a85a00", 0.12, ""}, drawing.StopMark: {"none", "#a3161a", 0.14, ""},
}

type pen struct {
	*bufio.Writer
	d    drawing.Drawing
	unit float64 // text height, mm
}

// Render writes d on w.
func Render(w io.Writer, d drawing.Drawing) error {
	p := pen{bufio.NewWriter(w), d, textHeight(d)}
	b := d.Box
	stamp := 2.2 * p.unit
	fmt.Fprintf(p, `<svg xmlns="http://www.w3.org/2000/svg" width="%.2fmm" height="%.2fmm" viewBox="0 0 %.2f %.2f" font-family="'Source Sans 3','Noto Sans',sans-serif">`+"\n",
		b.Width(), b.Height()+stamp, b.Width(), b.Height()+stamp)
	fmt.Fprintf(p, "<title>%s</title>\n", escape(d.Title))
	fmt.Fprintf(p, `<defs><pattern id="hatch" width="%[1]g" height="%[1]g" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="%[1]g" stroke="#26221c" stroke-width="%[2]g"/></pattern></defs>`+"\n", p.unit*0.5, p.unit*0.05)
	fmt.Fprintf(p, `<rect width="100%%" height="100%%" fill="#faf6ec"/>`+"\n")
	head := d.Title
	if d.View != "" {
		head = strings.ToUpper(d.View) + " VIEW    " + head
	}
	fmt.Fprintf(p, `<text x="%.2f" y="%.2f" font-size="%.2f" font-weight="600" fill="#26221c">%s</text>`+"\n", p.unit*0.8, p.unit*1.6, p.unit*1.2, escape(head))
	fmt.Fprintf(p, `<g transform="translate(0 %.2f)">`+"\n", stamp)
	for _, it := range d.Items {
		p.item(it)
	}
	fmt.Fprint(p, "</g>\n</svg>\n")
	return p.Flush()
}

func textHeight(d drawing.Drawing) float64 {
	for _, it := range d.Items {
		if it.Text != nil {
			return it.Text.Size
		}
	}
	return max(d.Box.Width(), d.Box.Height(), 1) / 60
}

// at turns y up into y down.
func (p pen) at(q geom.Point) (x, y float64) { return q.X - p.d.Box.Min.X, p.d.Box.Max.Y - q.Y }

func (p pen) item(it drawing.Item) {
	k := inks[it.Style]
	switch {
	case it.Path != nil:
		p.path(it.Style, k, it.Path)
	case it.Text != nil:
		p.text(it.Text.At, it.Text.Size, it.Text.Anchor, -it.Text.Turn, it.Text.Text)
	case it.Dim != nil:
		p.dimension(it.Dim)
	case it.Spot != nil:
		x, y := p.at(it.Spot.At)
		fmt.Fprintf(p, `<circle class="%s" cx="%.2f" cy="%.2f" r="%.2f" fill="none" stroke="%s" stroke-width="%.2f"/>`+"\n", it.Style, x, y, it.Spot.Radius, k.stroke, k.width*p.unit)
		p.text(it.Spot.At.Add(geom.Point{Y: it.Spot.Radius + 0.3*p.unit}), p.unit, "middle", 0, it.Spot.Label)
	}
}

func (p pen) path(style drawing.Style, k ink, path *drawing.Path) {
	var d strings.Builder
	for _, r := range path.Rings {
		for i, q := range r {
			c := 'L'
			if i == 0 {
				c = 'M'
			}
			x, y := p.at(q)
			fmt.Fprintf(&d, "%c%.3f %.3f", c, x, y)
		}
		if path.Closed {
			d.WriteByte('Z')
		}
	}
	fill := "none"
	if path.Fill {
		fill = k.fill
	}
	dash := ""
	if k.dash != "" {
		var parts []string
		for _, f := range strings.Fields(k.dash) {
			var v float64
			fmt.Sscan(f, &v)
			parts = append(parts, fmt.Sprintf("%.2f", v*p.unit))
		}
		dash = ` stroke-dasharray="` + strings.Join(parts, " ") + `"`
	}
	fmt.Fprintf(p, `<path class="%s" d="%s" fill="%s" fill-rule="evenodd" stroke="%s" stroke-width="%.2f"%s/>`+"\n", style, d.String(), fill, k.stroke, k.width*p.unit, dash)
	if path.Hatch {
		fmt.Fprintf(p, `<path d="%s" fill="url(#hatch)" fill-rule="evenodd"/>`+"\n", d.String())
	}
}

func (p pen) text(at geom.Point, size float64, anchor string, turn float64, text string) {
	x, y := p.at(at)
	rotate := ""
	if turn != 0 {
		rotate = fmt.Sprintf(` transform="rotate(%.2f %.2f %.2f)"`, turn, x, y)
	}
	fmt.Fprintf(p, `<text x="%.2f" y="%.2f" font-size="%.2f" text-anchor="%s" fill="#26221c"%s>%s</text>`+"\n", x, y, size, anchor, rotate, escape(text))
}

// dimension draws extension lines, a line with slashes at its ends, and the measure.
func (p pen) dimension(d *drawing.Dimension) {
	l := d.Lines(p.unit)
	for _, s := range l.Segments {
		x1, y1 := p.at(s[0])
		x2, y2 := p.at(s[1])
		fmt.Fprintf(p, `<line x1="%.2f" y1="%.2f" x2="%.2f" y2="%.2f" stroke="#26221c" stroke-width="%.2f"/>`+"\n", x1, y1, x2, y2, 0.04*p.unit)
	}
	p.text(l.At, p.unit, "middle", -l.Turn, d.Text)
}

func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s))
	return b.String()
}
