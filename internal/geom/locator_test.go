package geom

import (
	"math"
	"math/rand"
	"testing"

	"pgregory.net/rapid"
)

// TestLocatorAgrees holds the cells to the plain loop over all sides.
func TestLocatorAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rnd := rand.New(rand.NewSource(rapid.Int64().Draw(t, "seed")))
		n := rapid.IntRange(3, 200).Draw(t, "n")
		r := Build([]Ring{star(n, 100, rnd, Point{}), star(9, 30, rnd, Point{}).Reversed(), star(5, 8, rnd, Point{400, 3})}, Positive)
		l := NewLocator(r)
		for range 40 {
			p := Point{rnd.Float64()*700 - 200, rnd.Float64()*400 - 200}
			if got, want := l.Distance(p), r.Distance(p); math.Abs(got-want) > 1e-9 {
				t.Fatalf("distance at %v: %g, plain loop %g", p, got, want)
			}
		}
	})
	if d := NewLocator(nil).Distance(Point{}); !math.IsInf(d, 1) {
		t.Errorf("distance to nothing is %g", d)
	}
	if d := NewLocator(Rect(0, 0, 1, 1).Region()).Distance(Point{1e6, 0.5}); math.Abs(d-(1e6-1)) > 1e-6 {
		t.Errorf("distance from far away is %g", d)
	}
}

func TestPole(t *testing.T) {
	sq := Rect(0, 0, 100, 60).Region()
	tri := Build([]Ring{{{0, 0}, {300, 0}, {0, 400}}}, NonZero)
	for _, c := range []struct {
		name   string
		r      Region
		radius float64
	}{
		{"rectangle", sq, 30},
		{"3-4-5 triangle, inradius (a+b-c)/2", tri, 100},
		// Tangent to x = 0, y = 0 and the hole's corner (20, 10): 30 - sqrt(2 x 20 x 10).
		{"frame", Subtract(sq, Rect(20, 10, 90, 50).Region()), 30 - math.Sqrt(400)},
		{"nothing", nil, 0},
	} {
		at, d := c.r.Pole(0.01)
		if math.Abs(d-c.radius) > 0.02 {
			t.Errorf("%s: radius %g at %v, want %g", c.name, d, at, c.radius)
		}
		if len(c.r) > 0 && !c.r.Contains(at) {
			t.Errorf("%s: %v lies outside", c.name, at)
		}
	}
}

func TestDeepestOutside(t *testing.T) {
	above := Subtract(Rect(0, 0, 100, 60).Region(), Rect(40, 20, 60, 40).Region())
	l := NewLocator(above)
	if at, d := Rect(40, 20, 60, 40).Region().DeepestOutside(l, 0.01); math.Abs(d-10) > 0.02 {
		t.Errorf("deepest in the hole: %g at %v, want 10 in its middle", d, at)
	}
	if at, d := Rect(100, 10, 125, 20).Region().DeepestOutside(l, 0.01); math.Abs(d-25) > 0.02 {
		t.Errorf("deepest of a tongue: %g at %v, want 25 at its end", d, at)
	}
}

func disc(c Point, radius float64) Region {
	ring := make(Ring, 240)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 240)
		ring[i] = c.Add(Point{radius * cos, radius * sin})
	}
	return Build([]Ring{ring}, NonZero)
}

func TestNarrowKinds(t *testing.T) {
	poly := func(p ...Point) Region { return Build([]Ring{p}, NonZero) }
	slab := Rect(0, 0, 200, 100).Region()
	for _, c := range []struct {
		name  string
		r     Region
		width float64
		want  float64 // 0: none
		joins int
	}{
		{"two wedges tip to tip leave 8 mm", Subtract(slab, Union(poly(Point{60, 0}, Point{140, 0}, Point{100, 46}), poly(Point{60, 100}, Point{140, 100}, Point{100, 54}))), 20, 8, 2},
		{"round shores 18 mm apart", Subtract(slab, Union(disc(Point{100, 0}, 40), disc(Point{100, 100}, 42))), 20, 18, 2},
		{"hole 6 mm from the side", Subtract(slab, Rect(50, 6, 150, 60).Region()), 20, 6, 2},
		{"spit of 10 x 80 mm", Union(slab, Rect(200, 40, 280, 50).Region()), 20, 10, 1},
		{"wedge 18 mm wide at its root, 80 mm long", Union(slab, poly(Point{200, 41}, Point{280, 50}, Point{200, 59})), 20, 9, 1},
		{"short spur of 10 x 15 mm", Union(slab, Rect(200, 40, 215, 50).Region()), 20, 0, 0},
		{"blunt corner", poly(Point{0, 0}, Point{200, 0}, Point{200, 200}), 20, 0, 0},
		{"frame of 10 mm", Subtract(slab, Rect(10, 10, 190, 90).Region()), 20, 10, 0},
		{"bar of 12 mm", Rect(0, 0, 200, 12).Region(), 20, 12, 0},
		{"wide enough", Subtract(slab, Rect(50, 22, 150, 60).Region()), 20, 0, 0},
	} {
		got := c.r.NarrowPlaces(c.width)
		switch {
		case c.want == 0 && len(got) > 0:
			t.Errorf("%s: found %+v", c.name, got)
		case c.want > 0 && (len(got) != 1 || math.Abs(got[0].Width-c.want) > 0.02*c.want+0.01 || got[0].Joins != c.joins || got[0].Whole != (c.joins == 0)):
			t.Errorf("%s: want one of %g mm with %d joins, got %+v", c.name, c.want, c.joins, got)
		}
	}
}

// TestNarrowLaws: places lie in the region, are narrower than asked, and no disc
// wider than a neck fits round its middle; mirroring moves them along.
func TestNarrowLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rnd := rand.New(rand.NewSource(rapid.Int64().Draw(t, "seed")))
		n := rapid.IntRange(3, 60).Draw(t, "n")
		r := Build([]Ring{star(n, 100, rnd, Point{}), star(n, 80, rnd, Point{90, 20}), star(7, 25, rnd, Point{}).Reversed()}, Positive)
		width := rapid.Float64Range(1, 60).Draw(t, "width")
		got := r.NarrowPlaces(width)
		for _, p := range got {
			if !(p.Width < width) || p.Width < 0 {
				t.Fatalf("width %g of %g: %+v", p.Width, width, p)
			}
			if d := r.Distance(p.At); p.Joins >= 2 && (d > 2*Grid || -d > p.Width/2+2*Grid) {
				t.Fatalf("the middle of a neck of %g mm lies %g mm inside: %+v", p.Width, -d, p)
			}
		}
		mirrored := r.Map(func(p Point) Point { return Point{-p.X, p.Y} }, true).NarrowPlaces(width)
		if len(mirrored) != len(got) {
			t.Fatalf("%d places, %d when mirrored", len(got), len(mirrored))
		}
	})
}
