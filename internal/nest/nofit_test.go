package nest

import (
	"math"
	"math/rand/v2"
	"testing"

	"pourwright/internal/geom"
)

func shapeOf(p geom.Polygon) *shape { return newShape(p, boxOf(p.Outer)) }

func randomPolygon(r *rand.Rand) geom.Polygon {
	ring := blob(3+r.IntN(9), func(int) float64 { return 20 + 100*r.Float64() })
	if r.IntN(4) > 0 {
		return geom.Polygon{Outer: ring}
	}
	return ringPolygon(100+40*r.Float64(), 30+60*r.Float64())
}

// TestNoFit compares depths with exact booleans at random places: overlap is told just
// where the outlines share area, and the way out, gone a little further, ends it.
func TestNoFit(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	overlaps, holes := 0, 0
	for range 60 {
		a, b := shapeOf(randomPolygon(r)), shapeOf(randomPolygon(r))
		f := newField(noFit(a, b))
		for range 60 {
			x, y := f.x0+(f.x1-f.x0)*r.Float64(), f.y0+(f.y1-f.y0)*r.Float64()
			area := geom.Intersect(a.region(0, 0), b.region(x, y)).Area()
			d, nx, ny := f.wayOut(x, y)
			if math.Abs(d-f.depth(x, y)) > 1e-9 {
				t.Fatalf("depth %g, way out %g", f.depth(x, y), d)
			}
			if d > 0.01 && area == 0 || d == 0 && area > 1 {
				t.Fatalf("depth %g mm at (%g, %g), shared area %g mm2", d, x, y, area)
			}
			if d > 0 {
				overlaps++
				if rest := geom.Intersect(a.region(0, 0), b.region(x+nx*(d+0.001), y+ny*(d+0.001))).Area(); rest > 1e-3 {
					t.Fatalf("after the way out of %g mm %g mm2 are shared", d, rest)
				}
			} else if len(a.rings) > 1 {
				holes++
			}
		}
	}
	if overlaps < 1000 || holes < 50 {
		t.Errorf("only %d overlaps and %d places near rings tried", overlaps, holes)
	}
}

// TestDepthIsLeast compares depths with the distance to the whole boundary.
func TestDepthIsLeast(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 40 {
		region := noFit(shapeOf(randomPolygon(r)), shapeOf(randomPolygon(r)))
		f := newField(region)
		for range 200 {
			x, y := f.x0+(f.x1-f.x0)*r.Float64(), f.y0+(f.y1-f.y0)*r.Float64()
			want := math.Max(0, -region.Distance(geom.Point{X: x, Y: y}))
			if got := f.depth(x, y); math.Abs(got-want) > 1e-6 {
				t.Fatalf("depth %g at (%g, %g), distance %g", got, x, y, want)
			}
		}
	}
}

// TestNoFitArea knows the area of the sum of two squares and of a square and its inside.
func TestNoFitArea(t *testing.T) {
	frame := geom.Polygon{Outer: geom.Rect(0, 0, 100, 100).Ring(), Holes: []geom.Ring{geom.Rect(20, 20, 80, 80).Ring().Reversed()}}
	for _, c := range []struct {
		a, b geom.Polygon
		want float64
	}{
		{rect(10, 10), rect(4, 6), 14 * 16},
		{frame, rect(50, 40), 150*140 - 10*20},
		{rect(50, 40), frame, 150*140 - 10*20},
		{frame, rect(60, 61), 160 * 161},
	} {
		if got := noFit(shapeOf(c.a), shapeOf(c.b)).Area(); math.Abs(got-c.want) > 1e-6 {
			t.Errorf("area %g, want %g", got, c.want)
		}
	}
}
