package concrete

import (
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

const (
	gaugeStep  = 250.0 // mm between pins at most. Chosen
	gaugeClear = 30.0  // mm from every edge of the mould: beside it the shell is thicker
	mostPins   = 12    // along one side
)

// gauges spreads places for a pin over the form: bottom and floors, well off every
// edge, since concrete is thicker along inner corners.
func (c *computer) gauges(r *Result) {
	l, w := c.in.Length.MM(), c.in.Width.MM()
	nx, ny := pins(l), pins(w)
	for j := range ny {
		for i := range nx {
			at := geom.Point{X: (float64(i) + 0.5) / float64(nx) * l, Y: (float64(j) + 0.5) / float64(ny) * w}
			on, clear := c.under(at, float64(r.Shell))
			if !clear {
				continue
			}
			g := Gauge{Number: len(r.Gauges) + 1, X: units.Length(l - at.X), Y: units.Length(at.Y), On: on, Depths: []units.Length{}}
			sum := units.Length(0)
			for _, coat := range r.Coats {
				sum += coat.Top
				g.Depths = append(g.Depths, sum)
			}
			r.Gauges = append(r.Gauges, g)
		}
	}
}

func pins(size float64) int { return min(mostPins, max(2, int(size/gaugeStep)+1)) }

// under tells what lies below a place in plan, and whether every edge is further than
// the shell is thick.
func (c *computer) under(at geom.Point, shell float64) (on string, clear bool) {
	reach := max(gaugeClear, shell)
	if at.X < reach || at.Y < reach || at.X > c.in.Length.MM()-reach || at.Y > c.in.Width.MM()-reach {
		return "", false
	}
	on = "face"
	for _, l := range c.in.Layers {
		d := l.Region.Shape().Distance(at)
		if d < reach && d > -reach {
			return "", false
		}
		if d <= 0 {
			on = "floor"
		}
	}
	return on, true
}
