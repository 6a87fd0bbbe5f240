package geom

import (
	"math"
	"math/rand"
	"testing"

	"pgregory.net/rapid"
)

// star returns a ring of n points at random distances up to radius from c.
func star(n int, radius float64, rnd *rand.Rand, c Point) Ring {
	out := make(Ring, n)
	for i := range out {
		a := 2 * math.Pi * float64(i) / float64(n)
		k := radius * (0.5 + 0.5*rnd.Float64())
		out[i] = c.Add(Point{k * math.Cos(a), k * math.Sin(a)})
	}
	return out
}

// TestAreaLaws holds on every pair: |a or b| + |a and b| = |a| + |b|, and so on, but
// for what snapping a few thousand crossings to the grid moves.
func TestAreaLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rnd := rand.New(rand.NewSource(rapid.Int64().Draw(t, "seed")))
		n := rapid.IntRange(3, 300).Draw(t, "n")
		a := Build([]Ring{star(n, 100, rnd, Point{}), star(20, 30, rnd, Point{10, 5}).Reversed()}, Positive)
		b := Build([]Ring{star(n, 80, rnd, Point{60, 20}), star(7, 200, rnd, Point{})}, EvenOdd)
		or, and, less, xor := Union(a, b).Area(), Intersect(a, b).Area(), Subtract(a, b).Area(), Xor(a, b).Area()
		const tol = 0.05 // mm2
		for name, e := range map[string]float64{
			"or + and = a + b": or + and - a.Area() - b.Area(),
			"less + and = a":   less + and - a.Area(),
			"xor = or - and":   xor - or + and,
		} {
			if math.Abs(e) > tol {
				t.Errorf("%s: off by %g mm2", name, e)
			}
		}
	})
}

func TestDegenerate(t *testing.T) {
	sq := Rect(0, 0, 100, 60).Region()
	tiles := Region{}
	for i := range 10 {
		for j := range 6 {
			tiles = append(tiles, Rect(float64(10*i), float64(10*j), float64(10*i+10), float64(10*j+10)).Region()...)
		}
	}
	jitter := sq.Map(func(p Point) Point { return p.Add(Point{1e-9, -1e-9}) }, false)
	for _, c := range []struct {
		name  string
		got   Region
		area  float64
		parts int
	}{
		{"identical, or", Union(sq, sq), 6000, 1},
		{"identical, and", Intersect(sq, sq), 6000, 1},
		{"identical, less", Subtract(sq, sq), 0, 0},
		{"identical, xor", Xor(sq, sq), 0, 0},
		{"shared edge", Union(sq, Rect(100, 0, 150, 60).Region()), 9000, 1},
		{"tiles", Union(tiles), 6000, 1},
		{"jitter", Xor(sq, jitter), 0, 0},
		{"touching corner", Union(sq, Rect(100, 60, 120, 80).Region()), 6400, 2},
		{"bow-tie, even-odd", Build([]Ring{{{0, 0}, {10, 10}, {10, 0}, {0, 10}}}, EvenOdd), 50, 2},
		{"spike", Build([]Ring{{{0, 0}, {10, 0}, {10, 5}, {30, 5}, {10, 5}, {10, 10}, {0, 10}}}, NonZero), 100, 1},
		{"repeated points", Build([]Ring{{{0, 0}, {0, 0}, {10, 0}, {10, 10}, {10, 10}, {0, 10}}}, NonZero), 100, 1},
		{"twice round", Build([]Ring{Rect(0, 0, 10, 10).Ring(), Rect(0, 0, 10, 10).Ring()}, EvenOdd), 0, 0},
		{"hole touching the outer ring", Subtract(sq, Build([]Ring{{{0, 30}, {20, 20}, {20, 40}}}, NonZero)), 5800, 1},
		{"not finite", Build([]Ring{{{math.NaN(), 0}, {math.Inf(1), 1}, {0, 1e300}}}, NonZero), 0, 0},
	} {
		if math.Abs(c.got.Area()-c.area) > 1e-3 || len(c.got) != c.parts {
			t.Errorf("%s: got %g mm2 in %d parts, want %g in %d", c.name, c.got.Area(), len(c.got), c.area, c.parts)
		}
	}
}

func TestOffsetPastCollapse(t *testing.T) {
	sq := Rect(0, 0, 100, 60).Region()
	holed := Subtract(sq, Rect(40, 20, 60, 40).Region())
	if got := Offset(sq, -40, 0.01); len(got) != 0 {
		t.Errorf("shrinking past collapse left %v", got)
	}
	if got := Offset(holed, 12, 0.01); len(got) != 1 || len(got[0].Holes) != 0 {
		t.Errorf("growing past a hole left %v", got)
	}
	want := 90*50 - (400 + 80*5 + math.Pi*25)
	if got := Offset(holed, -5, 0.001).Area(); math.Abs(got-want) > 0.1 {
		t.Errorf("shrunk area %g, want %g", got, want)
	}
}

func TestNarrowPlaces(t *testing.T) {
	bell := Union(Rect(0, 0, 100, 100).Region(), Rect(100, 40, 200, 55).Region(), Rect(200, 0, 300, 100).Region())
	got := bell.NarrowPlaces(25)
	if len(got) != 1 || math.Abs(got[0].Width-15) > 0.1 || got[0].Whole || got[0].Joins != 2 {
		t.Errorf("neck of 15 mm: got %+v", got)
	}
	if got := bell.NarrowPlaces(10); len(got) != 0 {
		t.Errorf("nothing is narrower than 10 mm: got %+v", got)
	}
	if got := Rect(0, 0, 100, 60).Region().NarrowPlaces(30); len(got) != 0 {
		t.Errorf("corners are no narrow places: got %+v", got)
	}
	if got := Rect(0, 0, 100, 60).Region().NarrowPlaces(70); len(got) != 1 || !got[0].Whole {
		t.Errorf("a whole bar of 60 mm is narrower than 70: got %+v", got)
	}
}
