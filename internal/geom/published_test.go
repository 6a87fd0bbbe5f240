package geom

import (
	"fmt"
	"math"
	"testing"

	"pourwright/internal/published"
)

// TestPublishedSteiner compares grown convex shapes with A + P d + pi d^2.
func TestPublishedSteiner(t *testing.T) {
	for _, n := range []int{3, 4, 6, 17} {
		ring := make(Ring, n)
		for i := range ring {
			a := 2 * math.Pi * float64(i) / float64(n)
			ring[i] = Point{100 * math.Cos(a), 100 * math.Sin(a)}
		}
		r := Build([]Ring{ring}, NonZero)
		side := 200 * math.Sin(math.Pi/float64(n))
		area := float64(n) / 2 * 1e4 * math.Sin(2*math.Pi/float64(n))
		const d = 19.0
		published.Run(t,
			published.Check{Room: "geom", Name: fmt.Sprintf("area of a regular %d-gon", n), Ours: r.Area(), Theirs: area, Unit: "mm2", Tol: 0.1, Source: "analytic", Place: "n r^2 sin(2 pi/n)/2"},
			published.Check{Room: "geom", Name: fmt.Sprintf("Steiner area of a %d-gon grown 19 mm", n), Ours: Offset(r, d, 1e-3).Area(), Theirs: area + float64(n)*side*d + math.Pi*d*d, Unit: "mm2", Tol: 0.5, Source: "analytic", Place: "A + P d + pi d^2"},
		)
	}
}
