package nest

import (
	"math/rand/v2"
	"testing"
)

// BenchmarkNoFit works out one no-fit field of two grown stars.
func BenchmarkNoFit(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	var shapes []*shape
	for range 30 {
		p := randomPolygon(r)
		for len(p.Holes) > 0 {
			p = randomPolygon(r)
		}
		shapes = append(shapes, newShape(grown(p, 1.5), boxOf(p.Outer)))
	}
	n := 0
	for b.Loop() {
		f := newField(noFit(shapes[n%30], shapes[(n*7+3)%30]))
		n++
		_ = f.sides
	}
}
