package concrete

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

const (
	gaugeStep = 250.0 // mm between pins at most. Chosen
	mostPins  = 12    // along one side
	tries     = 7     // places tried along each side of a cell
)

// gauges spreads places for a pin over the form: in every cell of a coarse grid the
// place furthest from any edge of the mould, where that is further than the shell is
// thick, since concrete is thicker along inner corners.
func (c *computer) gauges(r *Result) {
	l, w := c.in.Length.MM(), c.in.Width.MM()
	nx, ny := pins(l), pins(w)
	edges := c.locators()
	for j := range ny {
		for i := range nx {
			at, on, ok := c.clearest(edges, geom.Rect(float64(i)*l/float64(nx), float64(j)*w/float64(ny), float64(i+1)*l/float64(nx), float64(j+1)*w/float64(ny)), r.Shell.MM())
			if !ok {
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

// clearest returns the place of a cell that lies furthest from every edge.
func (c *computer) clearest(edges []*geom.Locator, cell geom.Box, shell float64) (best geom.Point, on string, ok bool) {
	most := shell
	for j := range tries {
		for i := range tries {
			at := geom.Point{X: cell.Min.X + (float64(i)+0.5)/tries*cell.Width(), Y: cell.Min.Y + (float64(j)+0.5)/tries*cell.Height()}
			if where, d := c.under(edges, at); d > most+1e-9 {
				best, on, ok, most = at, where, true, d
			}
		}
	}
	return best, on, ok
}

// under tells what lies below a place in plan, and how far the nearest edge is.
func (c *computer) under(edges []*geom.Locator, at geom.Point) (on string, clear float64) {
	clear = math.Min(math.Min(at.X, c.in.Length.MM()-at.X), math.Min(at.Y, c.in.Width.MM()-at.Y))
	on = "face"
	for _, e := range edges {
		d := e.Distance(at)
		if d <= 0 {
			on = "floor"
		}
		clear = math.Min(clear, math.Abs(d))
	}
	return on, clear
}

// locators returns one for every layer of the knockout.
func (c *computer) locators() []*geom.Locator {
	out := make([]*geom.Locator, len(c.in.Layers))
	for i, l := range c.in.Layers {
		out[i] = geom.NewLocator(l.Region.Shape().Simplify(pocketTol))
	}
	return out
}
