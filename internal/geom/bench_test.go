package geom

import (
	"math"
	"math/rand"
	"testing"
)

func wavy(n int) Ring {
	rnd := rand.New(rand.NewSource(1))
	r := make(Ring, n)
	for i := range r {
		a := 2 * math.Pi * float64(i) / float64(n)
		k := 500 + 20*math.Sin(40*a) + 0.001*rnd.Float64()
		r[i] = Point{k * math.Cos(a), k * math.Sin(a)}
	}
	return r
}

func BenchmarkBuild200k(b *testing.B) {
	r := wavy(200_000)
	for b.Loop() {
		Build([]Ring{r}, NonZero)
	}
}

func BenchmarkOffset2000(b *testing.B) {
	r := Build([]Ring{wavy(2000)}, NonZero)
	for b.Loop() {
		Offset(r, 19, 0.05)
	}
}

func BenchmarkIntersect2000(b *testing.B) {
	x := Build([]Ring{wavy(2000)}, NonZero)
	y := x.Map(func(p Point) Point { return p.Add(Point{37, 11}) }, false)
	for b.Loop() {
		Intersect(x, y)
	}
}

func BenchmarkGrow200k(b *testing.B) {
	r := Build([]Ring{wavy(200_000)}, NonZero)
	for b.Loop() {
		Offset(r, 19, 0.05)
	}
}

func BenchmarkShrink200k(b *testing.B) {
	r := Build([]Ring{wavy(200_000)}, NonZero)
	for b.Loop() {
		Offset(r, -19, 0.05)
	}
}
