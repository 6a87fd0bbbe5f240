package geom

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// areaByScan returns the area covered by rule, computed apart from the engine: between
// two neighbouring heights at which a side ends or two sides cross, every side is
// straight, so the widths half way times the height are exact.
func areaByScan(rings []Ring, rule FillRule) float64 {
	var sides [][2]Point
	for _, r := range rings {
		for i, a := range r {
			sides = append(sides, [2]Point{a, r[(i+1)%len(r)]})
		}
	}
	heights := []float64{}
	for i, s := range sides {
		heights = append(heights, s[0].Y)
		for _, t := range sides[:i] {
			u, v, w := s[1].Sub(s[0]), t[1].Sub(t[0]), t[0].Sub(s[0])
			if den := u.Cross(v); den != 0 {
				if k, l := w.Cross(v)/den, w.Cross(u)/den; k >= 0 && k <= 1 && l >= 0 && l <= 1 {
					heights = append(heights, s[0].Y+k*u.Y)
				}
			}
		}
	}
	slices.Sort(heights)
	sum := 0.0
	for i := 1; i < len(heights); i++ {
		sum += (heights[i] - heights[i-1]) * widthAt(sides, (heights[i]+heights[i-1])/2, rule)
	}
	return sum
}

// widthAt returns how much of the line at height y is covered.
func widthAt(sides [][2]Point, y float64, rule FillRule) float64 {
	type crossing struct {
		x    float64
		step int32
	}
	var line []crossing
	for _, s := range sides {
		x := s[0].X + (y-s[0].Y)/(s[1].Y-s[0].Y)*(s[1].X-s[0].X)
		switch {
		case s[0].Y <= y && s[1].Y > y:
			line = append(line, crossing{x, -1}) // going up: inside to its left
		case s[0].Y > y && s[1].Y <= y:
			line = append(line, crossing{x, 1})
		}
	}
	slices.SortFunc(line, func(a, b crossing) int {
		switch {
		case a.x < b.x:
			return -1
		case a.x > b.x:
			return 1
		}
		return 0
	})
	width, w := 0.0, int32(0)
	for i, c := range line {
		if i > 0 && rule.covers(w) {
			width += c.x - line[i-1].x
		}
		w += c.step
	}
	return width
}

// sound fails where r is not a set of polygons with simple rings that turn the right
// way, do not cross or share sides, and nest holes in outer rings.
func sound(t rapid.TB, r Region) {
	t.Helper()
	var edges []edge
	for _, p := range r {
		for i, ring := range p.Rings() {
			if (ring.Area() > 0) != (i == 0) || len(ring) < 3 {
				t.Fatalf("ring %d of a polygon has area %g: %v", i, ring.Area(), ring)
			}
			seen := map[Point]bool{}
			for _, q := range ring {
				if seen[q] {
					t.Fatalf("ring passes %v twice: %v", q, ring)
				}
				seen[q] = true
			}
			edges = addRing(edges, ring, 0)
			if i > 0 && !(Region{{Outer: p.Outer}}).Contains(inside(ring)) {
				t.Fatalf("hole %v lies outside its outer ring %v", ring, p.Outer)
			}
		}
	}
	n := len(edges)
	if merged := merge(edges); len(merged) != n {
		t.Fatalf("rings share %d sides", n-len(merged))
	}
	rings := r.Rings()
	for i, a := range rings {
		if c := a.SelfCrossings(1); len(c) > 0 {
			t.Fatalf("ring crosses itself at %v", c)
		}
		for _, b := range rings[:i] {
			if c := Crossings(a, b, 1); len(c) > 0 {
				t.Fatalf("rings cross at %v", c)
			}
		}
	}
}

// inside returns the middle of the first side of hole, which lies on its boundary.
func inside(hole Ring) Point { return hole[0].Add(hole[1]).Mul(0.5) }

// tangle draws a ring of whole millimetres within a small square, full of crossings,
// overlaps and repeats.
func tangle(size int) *rapid.Generator[Ring] {
	coord := rapid.IntRange(0, size)
	return rapid.Custom(func(t *rapid.T) Ring {
		r := make(Ring, rapid.IntRange(3, 14).Draw(t, "n"))
		for i := range r {
			r[i] = Point{float64(coord.Draw(t, "x")), float64(coord.Draw(t, "y"))}
		}
		return r
	})
}

// TestBuildAgainstScan holds tangles, by every rule, to the area by scanning.
func TestBuildAgainstScan(t *testing.T) {
	for _, size := range []int{4, 12, 1000} {
		rapid.Check(t, func(t *rapid.T) {
			rings := rapid.SliceOfN(tangle(size), 1, 3).Draw(t, "rings")
			length := 0.0
			for _, r := range rings {
				length += r.Perimeter()
			}
			for _, rule := range []FillRule{NonZero, EvenOdd, Positive} {
				got := Build(rings, rule)
				sound(t, got)
				if want := areaByScan(rings, rule); math.Abs(got.Area()-want) > Grid*(1+length) {
					t.Fatalf("rule %d: area %.6f, by scanning %.6f", rule, got.Area(), want)
				}
			}
		})
	}
}

// TestBooleansAgainstScan holds pairs of tangles to the area by scanning both.
func TestBooleansAgainstScan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Build([]Ring{tangle(9).Draw(t, "a")}, EvenOdd)
		b := Build([]Ring{tangle(9).Draw(t, "b")}, EvenOdd)
		both := append(a.Rings(), b.Rings()...)
		or, xor := areaByScan(both, NonZero), areaByScan(both, EvenOdd)
		for name, c := range map[string]struct {
			got  Region
			want float64
		}{
			"or": {Union(a, b), or}, "xor": {Xor(a, b), xor}, "and": {Intersect(a, b), or - xor},
			"less": {Subtract(a, b), or - b.Area()},
		} {
			sound(t, c.got)
			if math.Abs(c.got.Area()-c.want) > 0.02 {
				t.Fatalf("%s: area %.6f, by scanning %.6f", name, c.got.Area(), c.want)
			}
		}
	})
}

// TestOffsetAgainstDistance holds grown and shrunk regions, far past collapse too, to
// the distance of random points from the original.
func TestOffsetAgainstDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rnd := rand.New(rand.NewSource(rapid.Int64().Draw(t, "seed")))
		n := rapid.IntRange(3, 120).Draw(t, "n")
		r := Build([]Ring{star(n, 100, rnd, Point{}), star(9, 30, rnd, Point{}).Reversed(), star(5, 8, rnd, Point{130, 3})}, Positive)
		d := rapid.Float64Range(-60, 60).Draw(t, "d")
		const tol = 0.01
		got := Offset(r, d, tol)
		sound(t, got)
		for range 300 {
			p := Point{rnd.Float64()*420 - 190, rnd.Float64()*380 - 190}
			if off := r.Distance(p) - d; math.Abs(off) > 2*tol && got.Contains(p) != (off < 0) {
				t.Fatalf("%v is %g mm from the region moved by %g, contained: %v", p, off, d, got.Contains(p))
			}
		}
	})
}
