package template

import (
	"fmt"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"pourwright/internal/geom"
	"pourwright/internal/render/pdf"
)

const pt = 25.4 / 72 // mm

// sheets is the document being written.
type sheets struct {
	*fpdf.Fpdf
	title string
	g     *layout
}

func (b *sheets) figure(g layout) {
	b.g = &g
	if g.tooMany() {
		b.page()
		b.head(fmt.Sprintf("not printed: %d tiles are more than the %d that are printed of one outline", g.count, mostTiles))
		return
	}
	b.overview()
	for j := g.ny - 1; j >= 0; j-- {
		for i := range g.nx {
			if g.printed[j*g.nx+i] {
				b.tile(i, j)
			}
		}
	}
}

// page begins a page in the figure's orientation.
func (b *sheets) page() {
	orientation := "P"
	if b.g.turned {
		orientation = "L"
	}
	w, h := b.g.pageW, b.g.pageH
	if b.g.turned {
		w, h = h, w
	}
	b.AddPageFormat(orientation, fpdf.SizeType{Wd: w, Ht: h})
}

// oneLine makes text printable on one line.
func oneLine(text string) string { return strings.ReplaceAll(pdf.Clean(text), "\n", " ") }

// print writes one line with its base at y.
func (b *sheets) print(x, y, size float64, style, text string) {
	b.SetFont("go", style, size)
	b.Text(x, y, oneLine(text))
}

// fitted writes one line no wider than width, smaller where it must be.
func (b *sheets) fitted(x, y, width, size float64, style, text string) {
	text = oneLine(text)
	for b.SetFont("go", style, size); b.GetStringWidth(text) > width && size > 5; b.SetFont("go", style, size) {
		size -= 0.5
	}
	b.Text(x, y, text)
}

// centred writes text around x, y, size mm high.
func (b *sheets) centred(x, y, size float64, style, text string) {
	b.SetFont("go", style, size/pt/0.72) // capitals are about 0.72 of a font's size
	text = oneLine(text)
	b.Text(x-b.GetStringWidth(text)/2, y+size/2, text)
}

// head prints title, stamp and where in the document this is.
func (b *sheets) head(right string) {
	g := b.g
	b.fitted(edge, edge+6, g.pageW-2*edge-62, 14, "B", g.Name+"  "+g.Title)
	if g.View != "" {
		stamp := strings.ToUpper(g.View) + " VIEW"
		b.SetFont("go", "B", 12)
		w := b.GetStringWidth(stamp) + 6
		b.SetLineWidth(0.5)
		b.Rect(g.pageW-edge-w, edge, w, 8, "D")
		b.Text(g.pageW-edge-w+3, edge+5.6, stamp)
	}
	b.fitted(edge, edge+12, g.pageW-2*edge, 9, "", right)
}

// caution is printed on every page.
const caution = "Print at actual size, 100 %. Measure all four bars before you cut: 100 mm and 4 in, both ways. If one is off, print again."

// tile prints tile (i, j).
func (b *sheets) tile(i, j int) {
	g := b.g
	b.page()
	b.head(fmt.Sprintf("tile %s, %d of %d    %s    %s", g.tileName(i, j), g.tileNumber[j*g.nx+i], g.count, b.neighbours(i, j), b.title))
	win := g.window(i, j)
	x0, y0 := edge+strip, edge+headRoom
	at := func(p geom.Point) (x, y float64) { return x0 + p.X - win.Min.X, y0 + win.Max.Y - p.Y }
	b.bars()
	b.ClipRect(x0, y0, g.w, g.h, false)
	for _, l := range g.Lines {
		b.line(l, win, at)
	}
	for _, l := range g.Labels {
		if x, y := at(l.At); inside(win, l.At) {
			b.centred(x, y, l.Size, "B", l.Text)
		}
	}
	b.name(win, at)
	b.ClipEnd()
	b.frame(x0, y0)
	b.crosses(i, j, at)
}

func inside(b geom.Box, p geom.Point) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

// neighbours names the tiles that are taped to tile (i, j).
func (b *sheets) neighbours(i, j int) string {
	g := b.g
	var out []string
	for _, n := range []struct {
		where  string
		di, dj int
	}{{"left", -1, 0}, {"right", 1, 0}, {"above", 0, 1}, {"below", 0, -1}} {
		x, y := i+n.di, j+n.dj
		if x >= 0 && x < g.nx && y >= 0 && y < g.ny && g.printed[y*g.nx+x] {
			out = append(out, n.where+" "+g.tileName(x, y))
		}
	}
	if len(out) == 0 {
		return "stands alone"
	}
	return "joins " + strings.Join(out, ", ")
}

// line prints what of l may be seen in win.
func (b *sheets) line(l Line, win geom.Box, at func(geom.Point) (x, y float64)) {
	b.SetLineWidth(fine)
	switch l.Stroke {
	case Cut:
		b.SetLineWidth(thick)
	case Dashed:
		b.SetDashPattern([]float64{3, 1.5}, 0)
	case Dotted:
		b.SetDashPattern([]float64{0.4, 1.2}, 0)
	}
	b.SetLineCapStyle("round")
	b.SetLineJoinStyle("round")
	grown := geom.Rect(win.Min.X-1, win.Min.Y-1, win.Max.X+1, win.Max.Y+1)
	open, end := false, geom.Point{}
	l.sides(func(p, q geom.Point) {
		if !meets(grown, p, q) {
			return
		}
		if !open || p != end {
			if open {
				b.DrawPath("D")
			}
			b.MoveTo(at(p))
			open = true
		}
		b.LineTo(at(q))
		end = q
	})
	if open {
		b.DrawPath("D")
	}
	b.SetDashPattern([]float64{}, 0)
	b.SetLineCapStyle("butt")
}

// name writes the figure's name where its material is widest in win, with the arrow.
func (b *sheets) name(win geom.Box, at func(geom.Point) (x, y float64)) {
	g := b.g
	p, room := geom.Intersect(g.Region, win.Region()).Pole(0.5)
	if room < 4 {
		return
	}
	size := min(7, room/3)
	x, y := at(p)
	b.centred(x, y-size*0.4, size, "B", g.Name)
	if g.View != "" && room > 12 {
		b.centred(x, y+size*0.9, size*0.5, "", strings.ToUpper(g.View)+" SIDE UP")
	}
	if g.Arrow == "" || room < 20 {
		return
	}
	b.SetLineWidth(0.4)
	tip := y + size*1.6 + 7
	b.Line(x, y+size*1.6, x, tip)
	b.Line(x-1.5, tip-3, x, tip)
	b.Line(x+1.5, tip-3, x, tip)
	b.SetFont("go", "", 7)
	b.Text(x+2.5, tip, oneLine("to "+g.Arrow))
}

// frame prints the edge of the tile's window, to trim along.
func (b *sheets) frame(x, y float64) {
	b.SetDrawColor(140, 140, 140)
	b.SetLineWidth(0.1)
	b.Rect(x, y, b.g.w, b.g.h, "D")
	b.SetDrawColor(0, 0, 0)
}

// crosses prints the four crosses of tile (i, j). Tiles that share one give it the same
// name.
func (b *sheets) crosses(i, j int, at func(geom.Point) (x, y float64)) {
	for _, k := range [4][2]int{{i, j}, {i + 1, j}, {i, j + 1}, {i + 1, j + 1}} {
		x, y := at(b.g.corner(k[0], k[1]))
		b.SetLineWidth(fine)
		b.Line(x-arm, y, x+arm, y)
		b.Line(x, y-arm, x, y+arm)
		b.Circle(x, y, 1.5, "D")
		b.SetTextColor(95, 95, 95)
		b.print(x+1.6, y-1.4, 6, "", fmt.Sprintf("%s%d", strings.ToLower(letters(k[0])), b.g.ny-k[1]))
		b.SetTextColor(0, 0, 0)
	}
}
