package nest

import (
	"math"
	"testing"

	"pourwright/internal/geom"

	sf "github.com/peterstace/simplefeatures/geom"
)

// feature turns p into the independent library's type.
func feature(t testing.TB, p geom.Region) sf.Geometry {
	t.Helper()
	var all []sf.Polygon
	for _, q := range p {
		var lines []sf.LineString
		for _, ring := range q.Rings() {
			var flat []float64
			for _, c := range append(ring[:len(ring):len(ring)], ring[0]) {
				flat = append(flat, c.X, c.Y)
			}
			lines = append(lines, sf.NewLineString(sf.NewSequence(flat, sf.DimXY)))
		}
		all = append(all, sf.NewPolygon(lines))
	}
	return sf.NewMultiPolygon(all).AsGeometry()
}

// shared returns the area two outlines share, by the independent library.
func shared(t testing.TB, a, b sf.Geometry) float64 {
	t.Helper()
	v, err := sf.Intersection(a, b)
	if err != nil {
		t.Fatal(err)
	}
	return v.Area()
}

// outside returns the area of a outside b, by the independent library.
func outside(t testing.TB, a, b sf.Geometry) float64 {
	t.Helper()
	v, err := sf.Difference(a, b)
	if err != nil {
		t.Fatal(err)
	}
	return v.Area()
}

// placedOutline turns and moves a piece as a maker would, not as the search does.
func placedOutline(p geom.Polygon, at Placement) geom.Region {
	s, c := math.Sincos(at.TurnDeg * math.Pi / 180)
	return geom.Region{p}.Map(func(q geom.Point) geom.Point {
		return geom.Point{X: c*q.X - s*q.Y + at.XMM, Y: s*q.X + c*q.Y + at.YMM}
	}, false)
}

// holdsLaws checks a layout with the independent library: every piece once, inside its
// sheet, sharing nothing with others, and the spacing kept.
func holdsLaws(t testing.TB, p Problem, l Layout) {
	t.Helper()
	seen := make([]int, len(p.Pieces))
	var shapes []sf.Geometry
	for _, at := range l.Placements {
		seen[at.Piece]++
		shapes = append(shapes, feature(t, placedOutline(p.Pieces[at.Piece].Shape, at)))
	}
	for _, u := range l.Unplaced {
		seen[u.Piece]++
		if u.Reason == "" {
			t.Errorf("piece %d is not placed and no reason given", u.Piece)
		}
	}
	for i, n := range seen {
		if n != 1 {
			t.Errorf("piece %d is told of %d times", i, n)
		}
	}
	for i, at := range l.Placements {
		sheet := feature(t, p.Sheets[l.Sheets[at.Sheet].Sheet].Outline)
		if a := outside(t, shapes[i], sheet); a > 1e-6*shapes[i].Area() {
			t.Errorf("piece %d hangs %.6f mm2 over the edge", at.Piece, a)
		}
		for j := range i {
			if l.Placements[j].Sheet == at.Sheet {
				apart(t, p, shapes[i], shapes[j], at.Piece, l.Placements[j].Piece)
			}
		}
	}
}

func apart(t testing.TB, p Problem, a, b sf.Geometry, i, j int) {
	t.Helper()
	if v := shared(t, a, b); v > 1e-6*math.Min(a.Area(), b.Area()) {
		t.Errorf("pieces %d and %d share %.6f mm2", i, j, v)
	}
	if d, ok := sf.Distance(a, b); ok && d < p.SpacingMM-4*geom.Grid {
		t.Errorf("pieces %d and %d are %.4f mm apart, want %.4f", i, j, d, p.SpacingMM)
	}
}
