package drawing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// sectionY returns the line of section A-A: of a raster of level lines, the one that
// is longest in the deepest layer that has an area; the middle if none has.
func sectionY(p *plan.Plan) float64 {
	for _, lay := range slices.Backward(p.Relief.Layers) {
		if !lay.Region.Empty() {
			return longestChord(lay.Region.Shape())
		}
	}
	return p.Piece.Width.MM() / 2
}

// section cuts the piece lengthwise on the line A-A and looks to the far side.
func section(p *plan.Plan) Drawing {
	c := newCutting(p, sectionY(p))
	s := newSheet("section", "Section A-A, looking to the far side", view.Finished{}.Name(), c.l, c.h, len(p.Relief.Layers)+4)
	body := geom.Rect(0, 0, c.l, c.h).Region()
	var water geom.Region
	for i := range c.layers {
		for _, x := range c.layers[i].chords {
			water = append(water, geom.Rect(x[0], c.h-c.layers[i].to, x[1], c.h-c.layers[i].from).Region()...)
		}
	}
	water = geom.Union(water)
	hollow := c.hollow()
	body = geom.Subtract(geom.Subtract(body, water), hollow)
	s.area(Resin, 0.5, water.Rings()...)
	s.cut(Concrete, body.Rings()...)
	s.dim(geom.Point{X: c.l, Y: c.h}, geom.Point{X: c.l}, dimGap, Measure(p.Piece.Height, p.Piece.Units))
	s.dim(geom.Point{X: c.l}, geom.Point{}, dimGap, Measure(p.Piece.Length, p.Piece.Units))
	c.floors(s)
	c.thickness(s, len(hollow) > 0)
	s.notes(0,
		fmt.Sprintf("hatched: concrete, a shell of %s: all that lies so near to the mould", Measure(p.Piece.Shell, p.Piece.Units)),
		fmt.Sprintf("cut %s from the near side; resin fills the basin to the face", Measure(units.Length(c.y), p.Piece.Units)),
		unitNote(p.Piece.Units))
	return s.done()
}

// A cutting is the piece on one level line.
type cutting struct {
	p          *plan.Plan
	l, w, h, t float64 // box and shell, mm
	y          float64
	layers     []cutLayer
}

// A cutLayer is what of a layer matters on the line.
type cutLayer struct {
	from, to float64 // depth below the face, mm
	chords   [][2]float64
	near     geom.Region // of the layer, as far as it can reach the line through the shell
}

func newCutting(p *plan.Plan, y float64) cutting {
	c := cutting{p: p, l: p.Piece.Length.MM(), w: p.Piece.Width.MM(), h: p.Piece.Height.MM(), t: math.Max(0, p.Piece.Shell.MM()), y: y}
	band := geom.Rect(-2*c.t-1, y-2*c.t-1, c.l+2*c.t+1, y+2*c.t+1).Region()
	for _, lay := range p.Relief.Layers {
		r := lay.Region.Shape()
		c.layers = append(c.layers, cutLayer{
			from: lay.From.MM(), to: lay.To.MM(), chords: chords(r, y),
			near: geom.Intersect(r, band).Simplify(0.02),
		})
	}
	return c
}

// under returns how deep below the face the shell reaches at x, mm: a plate of
// thickness t under the face, raised over every layer by the ball of radius t around
// its foam,
//
//	max over layers of  to + sqrt(t2 - d2),  d the level distance to the layer, d <= t
func (c cutting) under(x float64) float64 {
	deepest := c.t
	for _, lay := range c.layers {
		d := math.Max(0, lay.near.Distance(geom.Point{X: x, Y: c.y}))
		if d <= c.t {
			deepest = math.Max(deepest, lay.to+math.Sqrt(c.t*c.t-d*d))
		}
	}
	return deepest
}

// hollow returns what the shell leaves free on the line, in the plane of the section;
// nothing where the piece is solid there.
func (c cutting) hollow() geom.Region {
	if !(c.t > 0) || 2*c.t >= c.l || c.y < c.t || c.y > c.w-c.t {
		return nil
	}
	ring := geom.Ring{{X: c.l - c.t, Y: 0}}
	for _, x := range slices.Backward(c.samples()) {
		ring = append(ring, geom.Point{X: x, Y: math.Max(0, c.h-c.under(x))})
	}
	ring = append(ring, geom.Point{X: c.t, Y: 0})
	return geom.Build([]geom.Ring{ring.Simplify(0.01).Reversed()}, geom.EvenOdd)
}

// thickness leads from the left wall into the hollow, where there is room for it.
func (c cutting) thickness(s *sheet, hollow bool) {
	text, y := "shell "+Measure(c.p.Piece.Shell, c.p.Piece.Units), 0.4*c.h
	end := c.t + 2.5*s.size + s.widthOf(text)
	for x := c.t; hollow && x <= end; x += c.t / 2 {
		hollow = x < c.l-c.t && c.under(x) < c.h-y-2*s.size
	}
	if hollow {
		s.line(Thin, geom.Point{X: c.t / 2, Y: y}, geom.Point{X: c.t + 1.5*s.size, Y: y})
		s.text(geom.Point{X: c.t + 1.8*s.size, Y: y - 0.35*s.size}, "start", text)
	}
}

// samples returns the places along the line at which the shell is worked out: evenly
// a 16th of its thickness apart, at most 4000, and where it bends; on both sides of
// where a layer's ball ends, for there the shell's back may drop upright.
func (c cutting) samples() []float64 {
	const upright = 0.01 // mm, how wide an upright drop is drawn at most
	lo, hi := c.t, c.l-c.t
	n := int(math.Min(4000, math.Ceil((hi-lo)/(c.t/16))))
	xs := []float64{lo, hi}
	for i := 1; i < n; i++ {
		xs = append(xs, lo+(hi-lo)*float64(i)/float64(n))
	}
	for _, lay := range c.layers {
		for _, s := range lay.chords {
			xs = append(xs, s[0]-c.t-upright, s[0]-c.t+upright, s[0], s[1], s[1]+c.t-upright, s[1]+c.t+upright)
		}
	}
	xs = slices.DeleteFunc(xs, func(x float64) bool { return x < lo || x > hi })
	slices.Sort(xs)
	return slices.Compact(xs)
}

// floors leads from every floor that the line crosses up to its depth, written so
// that no leader runs through a text.
func (c cutting) floors(s *sheet) {
	type level struct {
		x, y float64
		text string
	}
	var all []level
	for i, lay := range c.layers {
		seen := lay.chords
		if i+1 < len(c.layers) {
			seen = without(seen, c.layers[i+1].chords)
		}
		if best, ok := longest(seen); ok {
			all = append(all, level{(best[0] + best[1]) / 2, c.h - lay.to,
				fmt.Sprintf("floor %d: %s", i+1, Measure(units.Length(lay.to), c.p.Piece.Units))})
		}
	}
	slices.SortFunc(all, func(a, b level) int { return cmp.Compare(b.x, a.x) })
	var starts []float64
	for _, f := range all {
		k := slices.IndexFunc(starts, func(x float64) bool { return f.x+s.widthOf(f.text)+s.size <= x })
		if k < 0 {
			k, starts = len(starts), append(starts, 0)
		}
		starts[k] = f.x
		y := c.h + (1+1.5*float64(k))*s.size
		s.line(Thin, geom.Point{X: f.x, Y: f.y}, geom.Point{X: f.x, Y: y + 0.9*s.size})
		s.line(Thin, geom.Point{X: f.x - 0.25*s.size, Y: f.y - 0.25*s.size}, geom.Point{X: f.x + 0.25*s.size, Y: f.y + 0.25*s.size})
		s.text(geom.Point{X: f.x + 0.4*s.size, Y: y}, "start", f.text)
	}
}
