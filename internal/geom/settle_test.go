package geom

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
)

// petals is a closed curve with a narrow waist or two, sampled at n points.
func petals(n int, waist float64) Ring {
	r := make(Ring, n)
	for i := range r {
		a := 2 * math.Pi * float64(i) / float64(n)
		d := 40 + waist*math.Cos(3*a+0.3) + 4*math.Cos(5*a)
		r[i] = Point{100 + d*math.Cos(a), 90 + d*math.Sin(a)}
	}
	return r
}

// rawShrink returns the edges that shrinking r by d resolves.
func rawShrink(r Ring, d, tol float64) []edge {
	return addRing(nil, offsetRing(tidy(r.Reversed()).Simplify(tol/4), d, tol), 0)
}

// The swept sides of a smooth curve cross each other at very flat angles, where
// rounding one crossing to the grid makes the next one a few steps on.
func TestSplitSettlesOnFlatCrossings(t *testing.T) {
	for n := 60; n <= 400; n += 85 {
		for _, waist := range []float64{8, 14, 20} {
			for d := 0.5; d < 9; d += 0.25 {
				edges, settled := split(rawShrink(petals(n, waist), d, 0.025))
				if !settled {
					t.Fatalf("%d points, waist %v, shrunk by %v: still crossing after %d rounds", n, waist, d, maxPasses)
				}
				if left := findCuts(edges); len(left) != 0 {
					t.Fatalf("%d points, waist %v, shrunk by %v: %d cuts left", n, waist, d, len(left))
				}
			}
		}
	}
}

// outline reads a ring, one point a line.
func outline(t *testing.T, name string) Ring {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var r Ring
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		var p Point
		if _, err := fmt.Sscan(line, &p.X, &p.Y); err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		r = append(r, p)
	}
	return r
}

// A contour of four cones, whose shrink by 4 mm holds a zip of flat crossings
// hundreds of grid steps long.
func TestShrinkLosesNoPiece(t *testing.T) {
	contour := outline(t, "testdata/flat-crossings.txt")
	for _, r := range []Ring{contour, petals(230, 14), petals(400, 20)} {
		region := Region{{Outer: r}}
		last := region.Area()
		for d := 0.25; d < 9; d += 0.25 {
			area := Offset(region, -d, 0.025).Area()
			if area > last+1e-6 || last-area > 1.1*0.25*region.Perimeter() {
				t.Fatalf("%d points: area %v at %v mm, %v a quarter of a millimetre before", len(r), area, d, last)
			}
			last = area
		}
		if edges, settled := split(rawShrink(r, 4, 0.025)); !settled {
			t.Errorf("%d points: still crossing after %d rounds, %d edges", len(r), maxPasses, len(edges))
		}
	}
}
