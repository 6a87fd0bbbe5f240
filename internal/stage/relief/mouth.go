package relief

import (
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// span is a stretch along a side, mm.
type span struct{ from, to float64 }

// mouths returns where the layers meet the sides, side by side in a fixed order.
func (c *computer) mouths(layers []Layer) []Mouth {
	out := []Mouth{}
	tol := math.Max(c.in.Tolerance.MM(), 2*geom.Grid)
	for _, s := range []struct {
		side view.Side
		on   func(geom.Point) bool
		pos  func(geom.Point) float64
	}{
		{view.Left, func(p geom.Point) bool { return p.X <= tol }, func(p geom.Point) float64 { return p.Y }},
		{view.Right, func(p geom.Point) bool { return p.X >= c.box.Max.X-tol }, func(p geom.Point) float64 { return p.Y }},
		{view.Near, func(p geom.Point) bool { return p.Y <= tol }, func(p geom.Point) float64 { return p.X }},
		{view.Far, func(p geom.Point) bool { return p.Y >= c.box.Max.Y-tol }, func(p geom.Point) float64 { return p.X }},
	} {
		var rows [][]span
		for _, l := range layers {
			rows = append(rows, spans(l.Region.Shape(), s.on, s.pos))
		}
		for _, top := range rows[0] {
			if top.to-top.from > tol {
				out = append(out, mouth(s.side, top, layers, rows))
			}
		}
	}
	return out
}

// spans returns the stretches of r's boundary that lie on a side, joined and sorted.
func spans(r geom.Region, on func(geom.Point) bool, pos func(geom.Point) float64) []span {
	var all []span
	for _, ring := range r.Rings() {
		for i, p := range ring {
			if q := ring[(i+1)%len(ring)]; on(p) && on(q) {
				a, b := pos(p), pos(q)
				all = append(all, span{math.Min(a, b), math.Max(a, b)})
			}
		}
	}
	slices.SortFunc(all, func(a, b span) int { return cmpFloat(a.from, b.from) })
	var out []span
	for _, s := range all {
		if n := len(out); n > 0 && s.from <= out[n-1].to+2*geom.Grid {
			out[n-1].to = math.Max(out[n-1].to, s.to)
		} else {
			out = append(out, s)
		}
	}
	return out
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// mouth gathers what lies under the stretch top of the first layer; layers are
// nested, so every deeper stretch lies under one stretch of the first.
func mouth(side view.Side, top span, layers []Layer, rows [][]span) Mouth {
	m := Mouth{Side: side, Width: units.Length(top.to - top.from), From: units.Length(top.from)}
	var region geom.Region
	for i, row := range rows {
		d := layers[i].To - layers[i].From
		for _, s := range row {
			if s.to <= top.from || s.from >= top.to || s.to <= s.from {
				continue
			}
			m.Opening += units.Area((s.to - s.from) * float64(d))
			m.Depth = max(m.Depth, layers[i].To)
			region = append(region, geom.Rect(s.from, -float64(layers[i].To), s.to, -float64(layers[i].From)).Region()...)
		}
	}
	if joined := geom.Union(region); len(joined) > 0 {
		m.Profile = joined[0].Outer
	}
	return m
}
