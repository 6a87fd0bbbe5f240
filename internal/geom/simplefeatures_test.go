package geom

import (
	"math"
	"math/rand"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
)

// feature turns r into the other library's type.
func feature(t *testing.T, r Region) geom.Geometry {
	t.Helper()
	var polygons []geom.Polygon
	for _, p := range r {
		var lines []geom.LineString
		for _, ring := range p.Rings() {
			var flat []float64
			for _, q := range append(ring, ring[0]) {
				flat = append(flat, q.X, q.Y)
			}
			lines = append(lines, geom.NewLineString(geom.NewSequence(flat, geom.DimXY)))
		}
		polygons = append(polygons, geom.NewPolygon(lines))
	}
	return geom.NewMultiPolygon(polygons).AsGeometry()
}

// TestAgainstSimplefeatures compares areas of booleans, and of what the two results do
// not share, with an independent library in floating point.
func TestAgainstSimplefeatures(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	for _, n := range []int{5, 12, 40, 90} {
		for range 5 {
			a := Build([]Ring{star(n, 100, rnd, Point{}), star(7, 30, rnd, Point{}).Reversed()}, Positive)
			b := Build([]Ring{star(n, 90, rnd, Point{40, 25})}, NonZero)
			fa, fb := feature(t, a), feature(t, b)
			for _, c := range []struct {
				name   string
				ours   Region
				theirs func(a, b geom.Geometry) (geom.Geometry, error)
			}{
				{"or", Union(a, b), geom.Union},
				{"and", Intersect(a, b), geom.Intersection},
				{"less", Subtract(a, b), geom.Difference},
				{"xor", Xor(a, b), geom.SymmetricDifference},
			} {
				want, err := c.theirs(fa, fb)
				if err != nil {
					t.Fatal(err)
				}
				if d := math.Abs(want.Area() - c.ours.Area()); d > 1e-6*a.Area() {
					t.Errorf("%d corners, %s: area %.6f, theirs %.6f", n, c.name, c.ours.Area(), want.Area())
				}
				differ, err := geom.SymmetricDifference(want, feature(t, c.ours))
				if err != nil {
					t.Fatal(err)
				}
				if differ.Area() > Grid*c.ours.Perimeter() { // snapping moves no side by more than a grid step
					t.Errorf("%d corners, %s: results differ on %.6f mm2", n, c.name, differ.Area())
				}
			}
		}
	}
}
