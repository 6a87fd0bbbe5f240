package relief

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// span is a stretch along a side, mm.
type span struct{ from, to float64 }

// A boxSide is one side of the box.
type boxSide struct {
	name   view.Side
	length float64
	on     func(geom.Point) bool          // whether a point lies on it
	pos    func(geom.Point) float64       // its place along it
	point  func(along float64) geom.Point // and back
}

// sides returns the sides in a fixed order.
func (c *computer) sides() []boxSide {
	tol, far := c.tolerance(), c.box.Max
	x, y := func(p geom.Point) float64 { return p.X }, func(p geom.Point) float64 { return p.Y }
	return []boxSide{
		{view.Left, far.Y, func(p geom.Point) bool { return p.X <= tol }, y, func(a float64) geom.Point { return geom.Point{X: 0, Y: a} }},
		{view.Right, far.Y, func(p geom.Point) bool { return p.X >= far.X-tol }, y, func(a float64) geom.Point { return geom.Point{X: far.X, Y: a} }},
		{view.Near, far.X, func(p geom.Point) bool { return p.Y <= tol }, x, func(a float64) geom.Point { return geom.Point{X: a, Y: 0} }},
		{view.Far, far.X, func(p geom.Point) bool { return p.Y >= far.Y-tol }, x, func(a float64) geom.Point { return geom.Point{X: a, Y: far.Y} }},
	}
}

// mouths returns where the layers meet the sides, side by side in a fixed order.
func (c *computer) mouths(layers []Layer) []Mouth {
	out := []Mouth{}
	for _, s := range c.sides() {
		var rows [][]span
		for _, l := range layers {
			rows = append(rows, s.spans(l.Region.Shape()))
		}
		for _, top := range rows[0] {
			if top.to-top.from > c.tolerance() {
				out = append(out, mouth(s.name, top, layers, rows))
			}
		}
	}
	return out
}

// spans returns the stretches of r's boundary that lie on s, joined and sorted.
func (s boxSide) spans(r geom.Region) []span {
	var all []span
	for _, ring := range r.Rings() {
		for i, p := range ring {
			if q := ring[(i+1)%len(ring)]; s.on(p) && s.on(q) {
				a, b := s.pos(p), s.pos(q)
				all = append(all, span{math.Min(a, b), math.Max(a, b)})
			}
		}
	}
	slices.SortFunc(all, func(a, b span) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	var out []span
	for _, w := range all {
		if n := len(out); n > 0 && w.from <= out[n-1].to+2*geom.Grid {
			out[n-1].to = math.Max(out[n-1].to, w.to)
		} else {
			out = append(out, w)
		}
	}
	return out
}

// stretch returns w as a place on the side.
func (s boxSide) stretch(w span) geom.Narrow {
	return geom.Narrow{At: s.point((w.from + w.to) / 2), Width: w.to - w.from, Joins: 2}
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
