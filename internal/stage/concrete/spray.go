package concrete

import (
	"fmt"

	"pourwright/internal/geom"
)

const sprayBand = 250.0 // mm that one pass covers. Chosen

// spray orders the passes of the first coat. Overspray that dries on bare mould shows
// on the face as grit: so the gun starts on upright faces, works from the end it will
// not come back to, and points away from what is still bare, onto what is wet.
func (c *computer) spray(r *Result) {
	l, w := c.in.Length.MM(), c.in.Width.MM()
	if len(r.Coats) == 0 {
		return
	}
	from, to := 0.0, l
	if c.fromFarEnd() {
		from, to = l, 0
	}
	add := func(on, text string, a, b geom.Point) {
		r.Spray = append(r.Spray, Pass{Number: len(r.Spray) + 1, On: on, Text: text, From: a, To: b})
	}
	if len(c.in.Layers) > 0 {
		n := len(c.in.Layers)
		b := c.in.Layers[n-1].Region.Shape().Box()
		for i := n - 1; i >= 0; i-- {
			b = c.in.Layers[i].Region.Shape().Box()
			y := b.Center().Y
			if i > 0 {
				y = b.Min.Y
			}
			a, z := l-b.Min.X, l-b.Max.X
			if (to > from) != (z > a) {
				a, z = z, a
			}
			add("riser", fmt.Sprintf("Upright faces of foam layer %d, gun level, square to the face: deep corners first, both sides of every channel.", i+1), geom.Point{X: a, Y: y}, geom.Point{X: z, Y: y})
		}
	}
	add("wall", "Far side panel and its corner, gun level, tilted 15 degrees down; overspray falls to the bottom, brush it out of the corner at once.", geom.Point{X: from, Y: w - 20}, geom.Point{X: to, Y: w - 20})
	add("wall", "Near side panel and its corner, the same way.", geom.Point{X: from, Y: 20}, geom.Point{X: to, Y: 20})
	c.bands(from, to, add)
	add("wall", "End panels last of the uprights, from the wet bottom upwards.", geom.Point{X: to, Y: 20}, geom.Point{X: to, Y: w - 20})
}

// bands sprays bottom and floors in bands across the form, one behind the other.
func (c *computer) bands(from, to float64, add func(on, text string, a, b geom.Point)) {
	l, w := c.in.Length.MM(), c.in.Width.MM()
	n := min(24, max(1, int(l/sprayBand+0.999)))
	for i := range n {
		x := from + (float64(i)+0.5)/float64(n)*(to-from)
		a, b := geom.Point{X: x, Y: 40}, geom.Point{X: x, Y: w - 40}
		if i%2 == 1 {
			a, b = b, a
		}
		add("face", fmt.Sprintf("Band %d of %d: bottom and floors, gun tilted 10 degrees back over what is wet, from 400 mm; two thin coats crosswise.", i+1, n), a, b)
	}
}
