package template

import (
	"fmt"
	"math"

	"pourwright/internal/geom"
)

// A layout is a figure with its tiles.
type layout struct {
	Figure
	box        geom.Box // of all that is drawn
	turned     bool     // pages lie on their side
	pageW      float64  // mm
	pageH      float64
	w, h       float64 // of a tile's window
	nx, ny     int
	origin     geom.Point // lower left corner of the first tile
	printed    []bool     // by row and column
	tileNumber []int      // of the printed ones
	count      int
}

// paperSizes are those of upright sheets, mm.
var paperSizes = map[string][2]float64{"a4": {210, 297}, "letter": {215.9, 279.4}}

// mostTiles of one figure are printed. Chosen: more paper than anyone tapes together.
const mostTiles = 400

// layOut lays f out on upright or lying pages, whichever are fewer. It is false for a
// figure without an extent.
func layOut(f Figure, paper string) (layout, bool) {
	box := f.box()
	if box.Empty() || !(box.Width() < 1e5) || !(box.Height() < 1e5) {
		return layout{}, false
	}
	size, ok := paperSizes[paper]
	if !ok {
		size = paperSizes["a4"]
	}
	up := newLayout(f, box, size[0], size[1])
	side := newLayout(f, box, size[1], size[0])
	side.turned = true
	if side.count < up.count || side.count == up.count && side.nx*side.ny < up.nx*up.ny {
		up = side
	}
	return up, true
}

// box returns the extent of all that is drawn; points that are no place do not count.
func (f Figure) box() geom.Box {
	b := geom.EmptyBox()
	for _, l := range f.Lines {
		for _, p := range l.Points {
			if math.Abs(p.X) < 1e5 && math.Abs(p.Y) < 1e5 {
				b = b.Union(geom.Box{Min: p, Max: p})
			}
		}
	}
	return b
}

func newLayout(f Figure, box geom.Box, pageW, pageH float64) layout {
	g := layout{Figure: f, box: box, pageW: pageW, pageH: pageH}
	g.w, g.h = pageW-2*edge-strip, pageH-2*edge-strip-headRoom
	along := func(size, window float64) int {
		return int(math.Max(1, math.Ceil((size+4-Overlap)/(window-Overlap)))) // 2 mm of air all round
	}
	g.nx, g.ny = along(box.Width(), g.w), along(box.Height(), g.h)
	total := geom.Point{X: float64(g.nx)*(g.w-Overlap) + Overlap, Y: float64(g.ny)*(g.h-Overlap) + Overlap}
	g.origin = box.Center().Sub(total.Mul(0.5))
	if g.tooMany() {
		g.count = g.nx * g.ny
		return g
	}
	g.printed, g.tileNumber = make([]bool, g.nx*g.ny), make([]int, g.nx*g.ny)
	for j := g.ny - 1; j >= 0; j-- {
		for i := range g.nx {
			if k := j*g.nx + i; g.holds(g.window(i, j)) {
				g.count++
				g.printed[k], g.tileNumber[k] = true, g.count
			}
		}
	}
	return g
}

func (g *layout) tooMany() bool { return g.nx*g.ny > mostTiles }

// window returns what of the figure tile (i, j) shows; (0, 0) is at the lower left.
func (g *layout) window(i, j int) geom.Box {
	x, y := g.origin.X+float64(i)*(g.w-Overlap), g.origin.Y+float64(j)*(g.h-Overlap)
	return geom.Rect(x, y, x+g.w, y+g.h)
}

// corner returns the place of the cross between tiles (i-1, j-1) and (i, j).
func (g *layout) corner(i, j int) geom.Point {
	return geom.Point{X: g.origin.X + float64(i)*(g.w-Overlap) + Overlap/2, Y: g.origin.Y + float64(j)*(g.h-Overlap) + Overlap/2}
}

// holds reports whether a line to cut passes through b.
func (g *layout) holds(b geom.Box) bool {
	for _, l := range g.Lines {
		if l.Stroke != Cut {
			continue
		}
		found := false
		l.sides(func(p, q geom.Point) {
			found = found || meets(b, p, q)
		})
		if found {
			return true
		}
	}
	return false
}

// sides calls visit for every stretch of l.
func (l Line) sides(visit func(p, q geom.Point)) {
	for i := 1; i < len(l.Points); i++ {
		visit(l.Points[i-1], l.Points[i])
	}
	if n := len(l.Points); l.Closed && n > 2 {
		visit(l.Points[n-1], l.Points[0])
	}
}

// meets reports whether the stretch from p to q passes through b, by cutting off what
// lies beyond each side in turn.
func meets(b geom.Box, p, q geom.Point) bool {
	lo, hi := 0.0, 1.0
	for _, e := range [4][2]float64{{q.X - p.X, b.Max.X - p.X}, {p.X - q.X, p.X - b.Min.X}, {q.Y - p.Y, b.Max.Y - p.Y}, {p.Y - q.Y, p.Y - b.Min.Y}} {
		switch d, room := e[0], e[1]; {
		case d == 0 && room < 0:
			return false
		case d > 0:
			hi = math.Min(hi, room/d)
		case d < 0:
			lo = math.Max(lo, room/d)
		}
	}
	return lo <= hi
}

// tileName names tile (i, j) by column letter and row number from above.
func (g *layout) tileName(i, j int) string { return fmt.Sprintf("%s%d", letters(i), g.ny-j) }

// letters counts A to Z, AA, AB ...
func letters(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letters(i/26-1) + string(rune('A'+i%26))
}
