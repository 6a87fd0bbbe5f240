package nest

import (
	"math"

	"pourwright/internal/geom"
)

// A ground is a kind of sheet made ready: its box less the margin, and what it lacks of it.
type ground struct {
	owned          bool
	quantity, used int
	length, width  float64 // of its box less the margin
	corner         geom.Point
	area           float64
	lacks          []thing // fixed things
	lackX, lackY   []float64
}

// prepareStock makes the sheets ready. A sheet of which the margin leaves nothing counts
// as none.
func (s *solver) prepareStock() {
	for _, sh := range s.p.Sheets {
		g := ground{owned: sh.Owned, quantity: max(0, sh.Quantity)}
		usable := geom.Offset(geom.Union(sh.Outline), -s.p.EdgeMM, 0.01)
		if box := usable.Box(); !box.Empty() && usable.Area() > 0 {
			g.corner = box.Min
			g.length, g.width, g.area = box.Width(), box.Height(), usable.Area()
			s.addLacks(&g, usable)
		} else {
			g.quantity = 0
		}
		s.stock = append(s.stock, g)
	}
}

// addLacks makes a fixed thing of all that surrounds the usable area, far enough out that
// the shortest way out of it leads inwards.
func (s *solver) addLacks(g *ground, usable geom.Region) {
	box := usable.Box()
	if box.Width()*box.Height()-usable.Area() < 1e-6*usable.Area() {
		return
	}
	far := math.Max(box.Width(), box.Height())
	frame := geom.Rect(box.Min.X-far, box.Min.Y-far, box.Max.X+far, box.Max.Y+far)
	for _, p := range geom.Subtract(frame.Region(), usable) {
		b := boxOf(p.Outer)
		k := s.cat.add(newShape(p, b))
		g.lacks = append(g.lacks, thing{piece: -1, poses: []pose{{shape: k, bare: k}}})
		g.lackX = append(g.lackX, float64(b.lo.x)*geom.Grid-g.corner.X)
		g.lackY = append(g.lackY, float64(b.lo.y)*geom.Grid-g.corner.Y)
	}
}
