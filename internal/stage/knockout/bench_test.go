package knockout

import (
	"math"
	"testing"

	"pourwright/internal/geom"
)

// coast is an outline of n corners, long by wide, with noise of fixed phases.
func coast(n int, long, wide, shrink float64) geom.Ring {
	ring := make(geom.Ring, n)
	for i := range ring {
		a := 2 * math.Pi * float64(i) / float64(n)
		r := 1 + 0.07*math.Sin(5*a+1) + 0.05*math.Sin(11*a+2) + 0.02*math.Sin(37*a)
		ring[i] = geom.Point{X: long/2 + (long/2-30-shrink)*r/1.15*math.Cos(a), Y: wide/2 + (wide/2-20-shrink)*r/1.15*math.Sin(a)}
	}
	return ring
}

// estuary is three steps with an island, of the size of a bench.
func estuary() Input {
	in := Input{Length: 1220, Width: 410, Foam: 24.6, SheetX: 1000, SheetY: 500, Density: 20,
		Machine: Machine{Router: true, BedX: 600, BedY: 400, Cutter: 6, Flute: 30}}
	for i, shrink := range []float64{0, 20, 60} {
		r := geom.Build([]geom.Ring{coast(900, 1220, 410, shrink)}, geom.NonZero)
		if i < 2 {
			r = geom.Subtract(r, geom.Build([]geom.Ring{coast(90, 160, 90, 0).Map(func(p geom.Point) geom.Point { return p.Add(geom.Point{X: 420, Y: 160}) })}, geom.NonZero))
		}
		in.Layers = append(in.Layers, layerOf(i+1, 24.6, r))
	}
	return in
}

func BenchmarkCompute(b *testing.B) {
	in := estuary()
	for b.Loop() {
		Compute(in)
	}
}
