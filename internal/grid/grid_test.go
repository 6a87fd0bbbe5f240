package grid

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
)

// field makes a field of unit spacing from rows, the top one first.
func field(rows ...[]float64) Field {
	f, err := New(len(rows[0]), len(rows), 1, 1)
	if err != nil {
		panic(err)
	}
	for i, row := range rows {
		for c, z := range row {
			f.Set(c, len(rows)-1-i, z)
		}
	}
	return f
}

func ExampleField_Contours() {
	f := field(
		[]float64{0, 0, 0, 0},
		[]float64{0, 2, 2, 0},
		[]float64{0, 2, 2, 0},
		[]float64{0, 0, 0, 0},
	)
	region := f.Contours(1)[0]
	fmt.Printf("%d ring, area %.2f, from %v\n", len(region.Rings()), region.Area(), region.Box().Min)
	// Output:
	// 1 ring, area 3.50, from {0.5 0.5}
}

func TestContours(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name         string
		f            Field
		level        float64
		polys, holes int
		area         float64
	}{
		{"all above is the frame", field([]float64{1, 1, 1}, []float64{1, 1, 1}), 0, 1, 0, 2},
		{"all below is nothing", field([]float64{1, 1}, []float64{1, 1}), 2, 0, 0, 0},
		{"a slope meets the frame", field([]float64{0, 1}, []float64{0, 1}), 0.25, 1, 0, 0.75},
		{"a corner", field([]float64{0, 0}, []float64{1, 0}), 0.5, 1, 0, 0.125},
		{"a pit", field([]float64{1, 1, 1}, []float64{1, 0, 1}, []float64{1, 1, 1}), 0.5, 1, 1, 3.5},
		{"a saddle with a high middle joins", field([]float64{0, 4}, []float64{4, 0}), 1, 1, 0, 1 - 2*0.5*0.25*0.25},
		{"a saddle with a low middle parts", field([]float64{0, 4}, []float64{4, 0}), 3, 2, 0, 2 * 0.5 * 0.25 * 0.25},
		{"a saddle at the mean joins", field([]float64{0, 2}, []float64{2, 0}), 1, 1, 0, 0.75},
		{"a hill in a pit", field(
			[]float64{2, 2, 2, 2, 2}, []float64{2, 0, 0, 0, 2}, []float64{2, 0, 2, 0, 2}, []float64{2, 0, 0, 0, 2}, []float64{2, 2, 2, 2, 2}),
			1, 2, 1, 16 - (9 - 0.5) + 0.5},
		{"a level at the node's height holds no area", field([]float64{0, 0, 0}, []float64{0, 1, 0}, []float64{0, 0, 0}), 1, 0, 0, 0},
		{"a plateau at the level is in", field([]float64{1, 1}, []float64{1, 1}), 1, 1, 0, 1},
		{"a missing node is low", field([]float64{1, 1, 1}, []float64{1, nan, 1}, []float64{1, 1, 1}), 0.5, 1, 1, 2},
		{"no level", field([]float64{1, 1}, []float64{1, 1}), nan, 0, 0, 0},
	} {
		region := c.f.Contours(c.level)[0]
		holes := 0
		for _, p := range region {
			holes += len(p.Holes)
		}
		if len(region) != c.polys || holes != c.holes || math.Abs(region.Area()-c.area) > 1e-12 {
			t.Errorf("%s: %d polygons, %d holes, area %v; want %d, %d, %v: %v", c.name, len(region), holes, region.Area(), c.polys, c.holes, c.area, region)
		}
	}
}

func TestFrameHasNoPointsOnItsSides(t *testing.T) {
	f, _ := New(50, 40, 2, 3)
	f.Origin = geom.Point{X: 5, Y: 7}
	region := f.Contours(-1)[0]
	if len(region) != 1 || len(region[0].Outer) > 5 || region.Area() != 98*117 {
		t.Errorf("frame %v", region)
	}
	if got, want := region.Box(), f.Box(); got != want {
		t.Errorf("box %v, want %v", got, want)
	}
}

// drawField draws a small field of small whole heights, so that saddles, plateaus
// and nodes at the level come up often.
func drawField(t *rapid.T) Field {
	f, _ := New(rapid.IntRange(2, 9).Draw(t, "cols"), rapid.IntRange(2, 9).Draw(t, "rows"), 2, 3)
	for i := range f.Z {
		f.Z[i] = float64(rapid.IntRange(0, 6).Draw(t, "z"))
	}
	return f
}

// winding counts how often the rings go round p.
func winding(rings []geom.Ring, p geom.Point) int {
	n := 0
	for _, r := range rings {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			side := b.Sub(a).Cross(p.Sub(a))
			if a.Y <= p.Y && b.Y > p.Y && side > 0 {
				n++
			} else if a.Y > p.Y && b.Y <= p.Y && side < 0 {
				n--
			}
		}
	}
	return n
}

// pieces counts connected high ground by flooding: nodes side by side, and across a
// saddle where the mean is up. Low counts low ground, which also joins outside the frame.
func pieces(f Field, level float64, high bool) int {
	up := func(c, r int) bool {
		if c < 0 || r < 0 || c >= f.Cols || r >= f.Rows {
			return !high
		}
		return (f.At(c, r) >= level) == high
	}
	seen := map[[2]int]bool{}
	var flood func(c, r int)
	flood = func(c, r int) {
		if c < -1 || r < -1 || c > f.Cols || r > f.Rows || seen[[2]int{c, r}] || !up(c, r) {
			return
		}
		seen[[2]int{c, r}] = true
		for _, d := range [][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
			flood(c+d[0], r+d[1])
		}
		for _, d := range [][2]int{{1, 1}, {-1, 1}, {1, -1}, {-1, -1}} {
			c1, r1 := c+d[0], r+d[1]
			if min(c, c1) < 0 || min(r, r1) < 0 || max(c, c1) >= f.Cols || max(r, r1) >= f.Rows {
				continue
			}
			mean := (f.At(c, r) + f.At(c1, r) + f.At(c, r1) + f.At(c1, r1)) / 4
			if (mean >= level) == high {
				flood(c1, r1)
			}
		}
	}
	n := 0
	for r := -1; r <= f.Rows; r++ {
		for c := -1; c <= f.Cols; c++ {
			if up(c, r) && !seen[[2]int{c, r}] {
				flood(c, r)
				n++
			}
		}
	}
	return n
}

func TestContourLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawField(t)
		level := rapid.SampledFrom([]float64{0.5, 1.5, 2.25, 3.5, 4.5}).Draw(t, "level")
		region := f.Contours(level)[0]
		rings := region.Rings()
		for r := range f.Rows {
			for c := range f.Cols {
				// A hair inside the frame, so that the frame's own nodes are decided too.
				p := f.Node(c, r)
				mid := f.Box().Center()
				p = p.Add(mid.Sub(p).Mul(1e-6))
				want := 0
				if f.At(c, r) >= level {
					want = 1
				}
				if got := winding(rings, p); got != want {
					t.Fatalf("node %d, %d: height %v, level %v, winding %d", c, r, f.At(c, r), level, got)
				}
			}
		}
		holes := 0
		for _, p := range region {
			holes += len(p.Holes)
			if p.Outer.Area() <= 0 {
				t.Fatalf("outer ring of area %v", p.Outer.Area())
			}
			for _, h := range p.Holes {
				if h.Area() >= 0 {
					t.Fatalf("hole of area %v", h.Area())
				}
				if winding([]geom.Ring{p.Outer}, h[0].Add(h[1]).Mul(0.5)) != 1 {
					t.Fatalf("hole %v outside %v", h, p.Outer)
				}
			}
		}
		if want := pieces(f, level, true); len(region) != want {
			t.Fatalf("%d polygons, flooding finds %d", len(region), want)
		}
		if want := pieces(f, level, false) - 1; holes != want {
			t.Fatalf("%d holes, flooding finds %d", holes, want)
		}
	})
}

func TestTurnedUpsideDownIsTheRest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawField(t)
		// An offset that no mean of four whole heights meets.
		const level = 2.6
		g, _ := New(f.Cols, f.Rows, f.DX, f.DY)
		for i, z := range f.Z {
			g.Z[i] = -z
		}
		frame := f.Box().Width() * f.Box().Height()
		if a, b := f.Contours(level)[0].Area(), g.Contours(-level)[0].Area(); math.Abs(a+b-frame) > 1e-9 {
			t.Fatalf("above %v and below %v make %v, frame %v", a, b, a+b, frame)
		}
		a, v := f.Above(level)
		b, w := g.Above(-level)
		if math.Abs(a+b-frame) > 1e-9 {
			t.Fatalf("measured above %v and below %v make %v, frame %v", a, b, a+b, frame)
		}
		if want := f.Volume() - level*frame; math.Abs(v-w-want) > 1e-9 {
			t.Fatalf("volume above %v less below %v is %v, want %v", v, w, v-w, want)
		}
	})
}

func TestAboveOfAPlane(t *testing.T) {
	// z = x + 2y over 12 x 10 mm: a plane is exact whatever the triangles.
	f, _ := New(7, 6, 2, 2)
	for r := range f.Rows {
		for c := range f.Cols {
			p := f.Node(c, r)
			f.Set(c, r, p.X+2*p.Y)
		}
	}
	// Above 20: right of the line from (12, 4) to (0, 10): a triangle 12 x 6.
	area, volume := f.Above(20)
	if math.Abs(area-36) > 1e-9 || math.Abs(volume-36*12/3.0) > 1e-9 {
		t.Errorf("area %v, volume %v; want 36, 144", area, volume)
	}
	if got := f.Contours(20)[0].Area(); math.Abs(got-36) > 1e-9 {
		t.Errorf("contour area %v, want 36", got)
	}
}

func TestPaddedRepeatsTheEdge(t *testing.T) {
	f := field([]float64{1, 2, 3}, []float64{4, 5, 6})
	f.DX = 2
	p := f.Padded(2)
	if p.Cols != 7 || p.Rows != 6 || p.Node(2, 2) != f.Node(0, 0) {
		t.Fatalf("padded %+v", p)
	}
	for r := range p.Rows {
		for c := range p.Cols {
			if want := f.At(min(max(c-2, 0), 2), min(max(r-2, 0), 1)); p.At(c, r) != want {
				t.Errorf("node %d, %d is %v, want %v", c, r, p.At(c, r), want)
			}
		}
	}
}

func TestRangeSkipsMissing(t *testing.T) {
	f := field([]float64{math.NaN(), 2}, []float64{-1, 7})
	if low, high := f.Range(); low != -1 || high != 7 {
		t.Errorf("range %v to %v", low, high)
	}
	g := field([]float64{math.NaN(), math.NaN()}, []float64{math.NaN(), math.NaN()})
	if low, high := g.Range(); low == low || high == high {
		t.Errorf("range of nothing %v to %v", low, high)
	}
}

func TestNewRefuses(t *testing.T) {
	for _, c := range []struct {
		cols, rows int
		dx, dy     float64
	}{{1, 5, 1, 1}, {5, 1, 1, 1}, {2, 2, 0, 1}, {2, 2, 1, -1}, {2, 2, math.NaN(), 1}, {2, 2, math.Inf(1), 1}} {
		if _, err := New(c.cols, c.rows, c.dx, c.dy); err == nil {
			t.Errorf("New(%v) gives no error", c)
		}
	}
}

// hills is a smooth field with many closed contours.
func hills(n int) Field {
	f, _ := New(n, n, 0.5, 0.5)
	for r := range n {
		for c := range n {
			x, y := float64(c)*12/float64(n), float64(r)*12/float64(n)
			f.Set(c, r, math.Sin(x)*math.Cos(y)+0.3*math.Sin(3*x+y))
		}
	}
	return f
}

func BenchmarkContours2000(b *testing.B) {
	f := hills(2000)
	for b.Loop() {
		f.Contours(-0.5, 0, 0.5)
	}
}

func BenchmarkAbove2000(b *testing.B) {
	f := hills(2000)
	for b.Loop() {
		f.Above(0.1)
	}
}
