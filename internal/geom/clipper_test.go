//go:build clipper

package geom

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
	"time"

	"pourwright/internal/geom/clippertest"
)

// onGrid returns the rings of r as grid points.
func onGrid(r Region) []clippertest.Ring {
	var out []clippertest.Ring
	for _, ring := range r.Rings() {
		var g clippertest.Ring
		for _, p := range ring {
			q, _ := snap(p)
			g = append(g, q.x, q.y)
		}
		out = append(out, g)
	}
	return out
}

// gridArea returns the sum of the signed areas, mm2.
func gridArea(rings []clippertest.Ring) float64 {
	sum := 0.0
	for _, g := range rings {
		r := make(Ring, len(g)/2)
		for i := range r {
			r[i] = gridPoint{g[2*i], g[2*i+1]}.point()
		}
		sum += r.Area()
	}
	return sum
}

// A family makes shapes of n corners, with holes.
type family struct {
	name string
	make func(n int, rnd *rand.Rand) Region
}

var families = []family{
	{"star", func(n int, rnd *rand.Rand) Region {
		return ringed(star(n, 300, rnd, Point{}), rnd)
	}},
	{"blob", func(n int, rnd *rand.Rand) Region { return ringed(blob(n, 0, rnd), rnd) }},
	{"noisy contour", func(n int, rnd *rand.Rand) Region { return ringed(blob(n, 0.4, rnd), rnd) }},
}

// blob is a smooth closed curve of five random waves, with noise.
func blob(n int, noise float64, rnd *rand.Rand) Ring {
	var amp, phase [5]float64
	for k := range amp {
		amp[k], phase[k] = 60*rnd.Float64()/float64(k+1), 2*math.Pi*rnd.Float64()
	}
	out := make(Ring, n)
	for i := range out {
		a := 2 * math.Pi * float64(i) / float64(n)
		d := 200 + noise*rnd.NormFloat64()
		for k := range amp {
			d += amp[k] * math.Sin(float64(k+2)*a+phase[k])
		}
		out[i] = Point{d * math.Cos(a), d * math.Sin(a)}
	}
	return out
}

// ringed cuts two or three holes into outer and moves it a little.
func ringed(outer Ring, rnd *rand.Rand) Region {
	r := Build([]Ring{outer}, NonZero)
	for range 2 + rnd.Intn(2) {
		c := Point{120 * (rnd.Float64() - 0.5), 120 * (rnd.Float64() - 0.5)}
		r = Subtract(r, Build([]Ring{star(max(len(outer)/10, 5), 35, rnd, c)}, NonZero))
	}
	by := Point{60 * rnd.Float64(), 60 * rnd.Float64()}
	return r.Map(func(p Point) Point { return p.Add(by) }, false)
}

// tally adds up two clocks.
type tally struct{ ours, theirs time.Duration }

func (t *tally) String() string {
	return fmt.Sprintf("ours %v, theirs %v, ratio %.2f", t.ours.Round(time.Microsecond), t.theirs.Round(time.Microsecond), float64(t.ours)/float64(t.theirs))
}

// TestClipperBooleans compares areas on 300 pairs: 1e-6 of the larger operand.
func TestClipperBooleans(t *testing.T) {
	rnd := rand.New(rand.NewSource(7))
	ops := []struct {
		op clippertest.Op
		f  func(a, b Region) Region
	}{
		{clippertest.Union, func(a, b Region) Region { return Union(a, b) }},
		{clippertest.Intersect, Intersect}, {clippertest.Subtract, Subtract}, {clippertest.Xor, Xor},
	}
	worst := 0.0
	for _, fam := range families {
		var clock tally
		for i := range 100 {
			n := 200 + 18*i
			a, b := fam.make(n, rnd), fam.make(n, rnd)
			ga, gb := onGrid(a), onGrid(b)
			for _, o := range ops {
				start := time.Now()
				ours := o.f(a, b)
				clock.ours += time.Since(start)
				theirs, took := clippertest.Combine(o.op, ga, gb)
				clock.theirs += took
				e := math.Abs(ours.Area()-gridArea(theirs)) / math.Max(a.Area(), b.Area())
				worst = math.Max(worst, e)
				if e > 1e-6 {
					t.Errorf("%s of %d corners, operation %d: area %.6f, theirs %.6f", fam.name, n, o.op, ours.Area(), gridArea(theirs))
				}
			}
		}
		t.Logf("%s: %v", fam.name, &clock)
	}
	t.Logf("worst relative difference %.2g", worst)
}

// TestClipperOffsets compares areas of shapes grown and shrunk.
func TestClipperOffsets(t *testing.T) {
	rnd := rand.New(rand.NewSource(8))
	worst := 0.0
	for _, fam := range families {
		var clock tally
		for i := range 100 {
			a := fam.make(200+18*i, rnd)
			g := onGrid(a)
			for _, d := range []float64{19, 3, -3, -19} {
				const tol = 0.02
				start := time.Now()
				ours := Offset(a, d, tol)
				clock.ours += time.Since(start)
				theirs, took := clippertest.Grow(g, d/Grid, tol/Grid)
				clock.theirs += took
				e := math.Abs(ours.Area()-gridArea(theirs)) / a.Area()
				worst = math.Max(worst, e)
				if bound := 1.5 * tol * ours.Perimeter() / a.Area(); e > bound {
					t.Errorf("%s of %d corners by %v: area %.4f, theirs %.4f", fam.name, 200+18*i, d, ours.Area(), gridArea(theirs))
				}
			}
		}
		t.Logf("%s: %v", fam.name, &clock)
	}
	t.Logf("worst relative difference %.2g", worst)
}
