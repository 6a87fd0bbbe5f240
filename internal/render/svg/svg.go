// Package svg inks a display list as a standalone SVG at true size: one millimetre of
// the drawing is one millimetre of the page. Every element carries the class of its
// style beside its own ink, so that a page may ink it anew.
package svg

import (
	"bufio"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"pourwright/internal/drawing"
	"pourwright/internal/geom"
)

// fonts prefers humanist faces under an open licence, then whatever has no serifs.
const fonts = "'Source Sans 3','Go','Noto Sans',sans-serif"

// A pen writes one drawing.
type pen struct {
	*bufio.Writer
	d    drawing.Drawing
	unit float64 // mm of the drawing for a mm on paper
}

// Render writes d on w. Same drawing, same bytes.
func Render(w io.Writer, d drawing.Drawing) error {
	if d.Box.Empty() || !finite(d.Box) {
		d.Box = geom.Rect(0, 0, 1, 1)
	}
	p := &pen{Writer: bufio.NewWriter(w), d: d, unit: unit(d)}
	p.open()
	for _, it := range d.Items {
		p.item(it)
	}
	p.WriteString("</g>\n</svg>\n")
	return p.Flush()
}

// unit returns how many mm of d a mm on paper is.
func unit(d drawing.Drawing) float64 {
	if d.Scale > 0 && !math.IsInf(d.Scale, 0) {
		return d.Scale
	}
	return math.Max(d.Box.Width(), d.Box.Height()) / drawing.PaperWidth
}

func finite(b geom.Box) bool {
	return !math.IsNaN(b.Width()*b.Height()) && !math.IsInf(b.Width()*b.Height(), 0)
}

// num writes a number with at most three decimals; what is no number is 0.
func num(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "0"
	}
	v = math.Round(v*1000) / 1000
	if v == 0 {
		return "0" // never -0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// open writes the head: page, hatch, ground, title and the stamp of the view.
func (p *pen) open() {
	u, b := p.unit, p.d.Box
	head := 9 * u
	width := math.Max(b.Width(), u*(1.7*float64(len([]rune(p.d.Title)))+2.75*float64(len(p.d.View)+5)+6))
	fmt.Fprintf(p, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %[1]s %[2]s" font-family="%s" fill="none" stroke-linejoin="round">`+"\n",
		num(width), num(b.Height()+head), fonts)
	fmt.Fprintf(p, "<title>%s</title>\n", escape(p.d.Title))
	fmt.Fprintf(p, `<defs><pattern id="%s" width="%s" height="%[2]s" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V%[2]s" stroke="%s" stroke-width="%s"/></pattern></defs>`+"\n",
		p.hatchID(), num(2*u), Line, num(0.26*u))
	fmt.Fprintf(p, `<rect class="ground" width="100%%" height="100%%" fill="%s"/>`+"\n", Ground)
	x := 1.5 * u
	if p.d.View != "" {
		stamp := strings.ToUpper(p.d.View) + " VIEW"
		w := 2.75 * u * float64(len(stamp))
		fmt.Fprintf(p, `<rect class="stamp" x="%s" y="%s" width="%s" height="%s" stroke="%s" stroke-width="%s"/>`+"\n", num(x), num(1.2*u), num(w), num(5.6*u), Line, num(0.35*u))
		p.letters(x+w/2, 5.4*u, 3.6*u, "middle", 0, "stamp", ` font-weight="700"`, stamp)
		x += w + 2*u
	}
	p.letters(x, 5.2*u, 3.2*u, "start", 0, "title", "", p.d.Title)
	fmt.Fprintf(p, `<g transform="translate(0 %s)">`+"\n", num(head))
}

func (p *pen) hatchID() string {
	return "hatch-" + strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return '-'
	}, p.d.Name)
}

// at turns y up into y down.
func (p *pen) at(q geom.Point) (x, y float64) { return q.X - p.d.Box.Min.X, p.d.Box.Max.Y - q.Y }

func (p *pen) item(it drawing.Item) {
	switch {
	case it.Path != nil:
		p.path(it.Style, it.Path)
	case it.Text != nil:
		x, y := p.at(it.Text.At)
		p.letters(x, y, it.Text.Size, it.Text.Anchor, it.Text.Turn, "letters "+string(it.Style), "", it.Text.Text)
	case it.Dim != nil:
		p.dimension(it.Dim)
	case it.Spot != nil:
		p.spot(it.Style, it.Spot)
	}
}

// pathData writes rings as path data.
func (p *pen) pathData(rings []geom.Ring, closed bool) string {
	var d strings.Builder
	for _, r := range rings {
		for i, q := range r {
			d.WriteByte("ML"[min(i, 1)])
			x, y := p.at(q)
			d.WriteString(num(x))
			d.WriteByte(' ')
			d.WriteString(num(y))
		}
		if closed && len(r) > 0 {
			d.WriteByte('Z')
		}
	}
	return d.String()
}

// stroke writes the attributes of k's line.
func (p *pen) stroke(k Ink) string {
	out := fmt.Sprintf(` stroke="%s" stroke-width="%s"`, k.Stroke, num(k.Width*p.unit))
	if len(k.Dash) > 0 {
		var parts []string
		for _, v := range k.Dash {
			parts = append(parts, num(v*p.unit))
		}
		out += ` stroke-dasharray="` + strings.Join(parts, " ") + `"`
	}
	return out
}

func (p *pen) path(style drawing.Style, path *drawing.Path) {
	k, d := Palette[style], p.pathData(path.Rings, path.Closed)
	fill := ""
	if path.Fill {
		fill = fmt.Sprintf(` fill="%s" fill-rule="evenodd"`, k.shaded(path.Shade))
	}
	fmt.Fprintf(p, `<path class="%s" d="%s"%s%s/>`+"\n", style, d, fill, p.stroke(k))
	if path.Hatch {
		fmt.Fprintf(p, `<path class="hatched" d="%s" fill="url(#%s)" fill-rule="evenodd"/>`+"\n", d, p.hatchID())
	}
}

// letters writes text at x, y of the page; turn is counter-clockwise.
func (p *pen) letters(x, y, size float64, anchor string, turn float64, class, more, text string) {
	if anchor != "middle" && anchor != "end" {
		anchor = "start"
	}
	rotate := ""
	if turn != 0 {
		rotate = fmt.Sprintf(` transform="rotate(%s %s %s)"`, num(-turn), num(x), num(y))
	}
	fmt.Fprintf(p, `<text class="%s" x="%s" y="%s" font-size="%s" text-anchor="%s" fill="%s"%s%s>%s</text>`+"\n",
		class, num(x), num(y), num(size), anchor, Line, more, rotate, escape(text))
}

func (p *pen) spot(style drawing.Style, s *drawing.Spot) {
	x, y := p.at(s.At)
	fmt.Fprintf(p, `<circle class="%s" cx="%s" cy="%s" r="%s"%s/>`+"\n", style, num(x), num(y), num(s.Radius), p.stroke(Palette[style]))
	p.letters(x, y-s.Radius-p.unit, drawing.Lettering*p.unit, "middle", 0, "letters "+string(style), "", s.Label)
}

// dimension draws extension lines, a line with strokes at its ends, and the measure.
func (p *pen) dimension(d *drawing.Dimension) {
	height := drawing.Lettering * p.unit
	l := d.Lines(height)
	var path strings.Builder
	for _, s := range l.Segments {
		path.WriteString(p.pathData([]geom.Ring{{s[0], s[1]}}, false))
	}
	fmt.Fprintf(p, `<path class="dimension" d="%s"%s/>`+"\n", path.String(), p.stroke(Palette[drawing.Thin]))
	x, y := p.at(l.At)
	p.letters(x, y, height, "middle", l.Turn, "letters dimension", "", d.Text)
}

// escape makes s safe in XML; characters that XML cannot hold become U+FFFD.
func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s))
	return b.String()
}
