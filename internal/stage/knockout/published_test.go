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

// TestPublishedCorner is what a cutter of 10 mm leaves in a square inside corner, and
// the shape of a key: head and neck of radius 12 mm.
func TestPublishedCorner(t *testing.T) {
	bay := view.Of[view.Finished](geom.Subtract(geom.Rect(50, 50, 450, 350).Region(), geom.Rect(200, 150, 300, 350).Region()))
	r, _ := Compute(Input{Length: 500, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 20, Layers: []Layer{{1, "bay", 25, bay}},
		Machine: Machine{Router: true, BedX: 1300, BedY: 700, Cutter: 10, Flute: 30}})
	left := r.Parts[0].Left[0]
	key := keyShape{12}.outline().Box()
	published.Run(t,
		published.Check{Room: "knockout", Name: "foam that a cutter of 10 mm leaves in a square corner", Ours: float64(left.Area), Theirs: 25 * (1 - math.Pi/4), Unit: "mm2", Tol: 0.3, Source: "analytic", Place: "(1 - pi/4) r^2"},
		published.Check{Room: "knockout", Name: "how far that foam stands out", Ours: float64(left.Width), Theirs: 5 * (math.Sqrt2 - 1), Unit: "mm", Tol: 0.04, Source: "analytic", Place: "(sqrt 2 - 1) r"},
		published.Check{Room: "knockout", Name: "height of a key of radius 12 mm", Ours: key.Height(), Theirs: 38.4, Unit: "mm", Tol: 0.02, Source: "analytic", Place: "3.2 R"},
		published.Check{Room: "knockout", Name: "its foot", Ours: key.Width(), Theirs: 38.4, Unit: "mm", Tol: 0.02, Source: "analytic", Place: "2 x 1.6 R"},
	)
}
