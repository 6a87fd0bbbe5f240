package template

import (
	"fmt"
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// overview prints the map of a figure's tiles, and how to tape them.
func (b *sheets) overview() {
	g := b.g
	b.page()
	b.head("map of " + units.Count(g.count, "tile", "tiles") + "    " + b.title)
	b.bars()
	y := b.notes(edge + headRoom + 3)
	all := g.window(0, 0).Union(g.window(g.nx-1, g.ny-1))
	x0, w := edge+strip+2, g.pageW-2*edge-strip-4
	h := g.pageH - edge - strip - 4 - y
	k := math.Min(w/all.Width(), h/all.Height())
	at := func(p geom.Point) (x, y1 float64) { return x0 + (p.X-all.Min.X)*k, y + (all.Max.Y-p.Y)*k }
	for _, l := range g.Lines {
		if l.Stroke == Cut {
			b.line(l, all, at)
		}
	}
	for j := range g.ny {
		for i := range g.nx {
			b.mapTile(i, j, at)
		}
	}
}

// mapTile draws tile (i, j) on the map, from the middles of its overlaps to where the
// outermost tiles end.
func (b *sheets) mapTile(i, j int, at func(geom.Point) (x, y float64)) {
	g := b.g
	lo, hi, all := g.corner(i, j), g.corner(i+1, j+1), g.window(0, 0).Union(g.window(g.nx-1, g.ny-1))
	if i == 0 {
		lo.X = all.Min.X
	}
	if j == 0 {
		lo.Y = all.Min.Y
	}
	if i == g.nx-1 {
		hi.X = all.Max.X
	}
	if j == g.ny-1 {
		hi.Y = all.Max.Y
	}
	x0, y1 := at(lo)
	x1, y0 := at(hi)
	b.SetDrawColor(140, 140, 140)
	b.SetLineWidth(0.1)
	b.Rect(x0, y0, x1-x0, y1-y0, "D")
	b.SetDrawColor(0, 0, 0)
	text, style := g.tileName(i, j), "B"
	if !g.printed[j*g.nx+i] {
		text, style = "no page", ""
		b.SetTextColor(120, 120, 120)
	}
	b.centred((x0+x1)/2, (y0+y1)/2, math.Min(4, (x1-x0)/6), style, text)
	b.SetTextColor(0, 0, 0)
}

// notes prints what to do and returns where the map may begin.
func (b *sheets) notes(y float64) float64 {
	g := b.g
	lines := append([]string{fmt.Sprintf("%.1f x %.1f mm, %s at true size.", g.box.Width(), g.box.Height(), g.Name)}, g.Notes...)
	lines = append(lines, fmt.Sprintf("Measure the bars. Trim left and lower edges along the grey line, lay cross on cross (a1 on a1), tape; neighbours overlap by %.0f mm.", Overlap))
	b.SetFont("go", "", 9)
	for _, text := range lines {
		for _, l := range b.SplitText(oneLine(text), g.pageW-2*edge-strip-4) {
			b.Text(edge+strip+2, y, l)
			y += 4.2
		}
	}
	return y + 1
}
