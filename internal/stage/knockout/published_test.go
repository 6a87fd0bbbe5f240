package knockout

import (
	"math"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/published"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

func TestPublishedUplift(t *testing.T) {
	v := units.Area(600 * 400).Times(60)
	m := units.Density(30).Of(v)
	published.Run(t,
		published.Check{Room: "knockout", Name: "uplift of a 600 x 400 x 60 mm foam in fresh concrete", Ours: float64(Uplift(v, m, 2100)), Theirs: 292, Unit: "N", Tol: 0.5, Source: "analytic", Place: "(2100-30) 0.0144 g"},
		published.Check{Room: "knockout", Name: "uplift of the same foam in resin", Ours: float64(Uplift(v, m, 1100)), Theirs: 151, Unit: "N", Tol: 0.5, Source: "analytic", Place: "(1100-30) 0.0144 g"},
	)
}

// TestPublishedPart is a ring of foam, radii 200 and 120 mm of 360-gons, 49.2 mm
// thick at 20 kg/m3: (n/2) sin(2 pi/n) (R^2 - r^2) t rho.
func TestPublishedPart(t *testing.T) {
	gon := func(r float64) geom.Ring {
		ring := make(geom.Ring, 360)
		for i := range ring {
			sin, cos := math.Sincos(math.Pi * float64(i) / 180)
			ring[i] = geom.Point{X: 500 + r*cos, Y: 250 + r*sin}
		}
		return ring
	}
	ring := view.Of[view.Finished](geom.Build([]geom.Ring{gon(200), gon(120)}, geom.EvenOdd))
	r, _ := Compute(Input{Length: 1000, Width: 500, Foam: 24.6, SheetX: 1000, SheetY: 500, Density: 20, Layers: []Layer{{1, "ring", 49.2, ring}}})
	area := 180 * math.Sin(math.Pi/180) * (200*200 - 120*120)
	published.Run(t,
		published.Check{Room: "knockout", Name: "mass of a foam ring", Ours: float64(r.Mass), Theirs: area * 49.2e-9 * 20, Unit: "kg", Tol: 1e-6, Source: "analytic", Place: "polygon area x thickness x density"},
		published.Check{Room: "knockout", Name: "depth of its label from the edge: half the ring's width", Ours: -r.Parts[0].Region.Shape().Distance(geom.Point(r.Parts[0].LabelAt)), Theirs: 40, Unit: "mm", Tol: 1, Source: "analytic", Place: "largest disc in a ring"},
	)
}
