package relief

import (
	"fmt"
	"math"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/view"
)

// wavy returns a shore of n corners round (500, 200), with waves of a few millimetres.
func wavy(n int, rx, ry float64) view.Region[view.Finished] {
	ring := make(geom.Ring, n)
	for i := range ring {
		a := 2 * math.Pi * float64(i) / float64(n)
		k := 1 + 0.03*math.Sin(23*a) + 0.01*math.Sin(311*a+1)
		ring[i] = geom.Point{X: 500 + rx*k*math.Cos(a), Y: 200 + ry*k*math.Sin(a)}
	}
	return view.Of[view.Finished](geom.Build([]geom.Ring{ring}, geom.NonZero))
}

// BenchmarkLargeDrawing layers three steps, from an ordinary piece to a drawing of
// 200,000 corners.
func BenchmarkLargeDrawing(b *testing.B) {
	for _, n := range []int{150, 1_000, 10_000, 66_667} {
		in := input(Step{Name: "a", Depth: 25, Region: wavy(n, 400, 150)}, Step{Name: "b", Depth: 25, Region: wavy(n, 350, 120)}, Step{Name: "c", Depth: 20, Region: wavy(n, 280, 80)})
		b.Run(fmt.Sprint(3*n), func(b *testing.B) {
			for b.Loop() {
				Compute(in)
			}
		})
		// The same with the second step reaching out all round under the first.
		in.Steps[0], in.Steps[1] = in.Steps[1], in.Steps[0]
		b.Run(fmt.Sprint(3*n, " undercut"), func(b *testing.B) {
			for b.Loop() {
				Compute(in)
			}
		})
	}
}
