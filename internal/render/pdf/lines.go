package pdf

import (
	"math"
	"slices"

	"pourwright/internal/drawing"
	"pourwright/internal/geom"
)

// widths are the line widths of styles, mm; 0.13 unless said.
var widths = map[drawing.Style]float64{
	drawing.Outline: 0.35, drawing.Concrete: 0.35, drawing.Foam: 0.25, drawing.Board: 0.25,
	drawing.Resin: 0.18, drawing.ResinDeep: 0.18, drawing.Hidden: 0.18, drawing.Centre: 0.18,
	drawing.Frame: 0.18, drawing.Caution: 0.5, drawing.StopMark: 0.8,
}

// dashes are the dash patterns of styles, mm.
var dashes = map[drawing.Style][]float64{
	drawing.Hidden: {2, 1}, drawing.Centre: {5, 1, 0.6, 1},
}

// greys are the fills of styles on paper, from shallow to deep.
var greys = map[drawing.Style][2]float64{
	drawing.Concrete: {226, 226}, drawing.Resin: {248, 178}, drawing.ResinDeep: {178, 178},
	drawing.Foam: {250, 200}, drawing.Board: {255, 238},
}

func (f frame) path(style drawing.Style, p *drawing.Path) {
	b := f.b
	width, ok := widths[style]
	if !ok {
		width = 0.13
	}
	b.SetLineWidth(width)
	b.SetDashPattern(dashes[style], 0)
	for _, r := range p.Rings {
		f.trace(r, p.Closed)
	}
	mode := "D"
	if g, ok := greys[style]; ok && p.Fill {
		v := int(math.Round(g[0] + (g[1]-g[0])*math.Max(0, math.Min(1, p.Shade))))
		b.SetFillColor(v, v, v)
		mode = "FD*"
	}
	b.DrawPath(mode)
	b.SetDashPattern(nil, 0)
	if p.Hatch {
		f.hatch(p.Rings)
	}
}

// trace adds a ring to the current path.
func (f frame) trace(r geom.Ring, closed bool) {
	for i, q := range r {
		x, y := f.at(q)
		if i == 0 {
			f.b.MoveTo(x, y)
		} else {
			f.b.LineTo(x, y)
		}
	}
	if closed && len(r) > 0 {
		f.b.ClosePath()
	}
}

// hatchStep is the distance of section lines on paper, mm.
const hatchStep = 1.6

// hatch draws section lines at 45 degrees inside rings, by the even-odd rule.
func (f frame) hatch(rings []geom.Ring) {
	f.b.SetLineWidth(0.1)
	step := hatchStep * math.Sqrt2 / f.k
	lo, hi := f.box.Min.X-f.box.Max.Y, f.box.Max.X-f.box.Min.Y
	for k := math.Floor(lo / step); k*step < hi; k++ {
		for _, s := range slanted(rings, k*step) {
			x1, y1 := f.at(s[0])
			x2, y2 := f.at(s[1])
			f.b.Line(x1, y1, x2, y2)
		}
	}
}

// slanted returns where the line x - y = c lies inside rings.
func slanted(rings []geom.Ring, c float64) [][2]geom.Point {
	var xs []float64
	for _, r := range rings {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			da, db := a.X-a.Y-c, b.X-b.Y-c
			if (da <= 0) != (db <= 0) {
				xs = append(xs, a.X+(b.X-a.X)*da/(da-db))
			}
		}
	}
	slices.Sort(xs)
	var out [][2]geom.Point
	for i := 0; i+1 < len(xs); i += 2 {
		out = append(out, [2]geom.Point{{X: xs[i], Y: xs[i] - c}, {X: xs[i+1], Y: xs[i+1] - c}})
	}
	return out
}
