package resin

import (
	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// checkedFill returns the points of the curve that rise, from 0 litres at depth 0; it
// is empty where nothing rises.
func (c *computer) checkedFill(points []FillPoint) []FillPoint {
	out := []FillPoint{{}}
	for i, p := range points {
		last := out[len(out)-1]
		if i == 0 && p == last {
			continue
		}
		if !known(p.Depth) || !known(p.Volume) || p.Depth <= last.Depth || p.Volume < last.Volume {
			c.say(badFill.At(finding.Where{}, "Point %d of the fill curve, %.2f l at %.2f mm, does not rise above the one before, so it is left out.", i+1, p.Volume, p.Depth))
			continue
		}
		out = append(out, p)
	}
	if out[len(out)-1].Volume <= 0 {
		return nil
	}
	return out
}

// volumeAt returns the litres up to depth d above the deepest floor, linear between
// the points of the curve.
func (c *computer) volumeAt(d units.Length) units.Volume {
	for i := 1; i < len(c.in.Fill); i++ {
		a, b := c.in.Fill[i-1], c.in.Fill[i]
		if d < b.Depth {
			return a.Volume + (b.Volume-a.Volume)*units.Volume((d-a.Depth)/(b.Depth-a.Depth))
		}
	}
	return c.top().Volume
}

// sameArea is the growth of the surface under which a point of the curve is no
// terrace but a joint between two sheets of one outline.
const sameArea = 1e-6

// terraces returns the heights of the floors above the deepest one: the kinks of the
// curve below the rim, where the surface grows.
func (c *computer) terraces() []units.Length {
	var out []units.Length
	for i := 1; i+1 < len(c.in.Fill); i++ {
		if below, above := c.slope(i), c.slope(i+1); above > below*(1+sameArea) {
			out = append(out, c.in.Fill[i].Depth)
		}
	}
	return out
}

// slope returns the surface between points i-1 and i, l/mm.
func (c *computer) slope(i int) float64 {
	a, b := c.in.Fill[i-1], c.in.Fill[i]
	return float64(b.Volume-a.Volume) / float64(b.Depth-a.Depth)
}

// thinPlaces says where a terrace gets less resin than cures well: at the rim, or
// from a lift that ends too little above it.
func (c *computer) thinPlaces(levels []float64) {
	low, name := c.in.Card.MinDepth.Value, c.in.Card.Name
	for _, t := range c.terraces() {
		if over := c.top().Depth - t; over < low {
			c.say(shallow.At(finding.Where{}, "Over the terrace %.1f mm above the deepest floor only %.1f mm of resin stand, under the %.1f mm that %s wants.", t, over, low, name).
				Measured(float64(over), float64(low), "mm"))
			continue
		}
		for i := 1; i < len(levels)-1; i++ {
			if over := units.Length(levels[i]) - t; over > touching && over < low && t > units.Length(levels[i-1])-touching {
				c.say(thin.At(finding.Where{}, "Lift %d covers the terrace %.1f mm above the deepest floor by only %.1f mm, under the %.1f mm that %s wants.", i, t, over, low, name).
					Measured(float64(over), float64(low), "mm"))
			}
		}
	}
}
