package geom

import (
	"encoding/binary"
	"math"
	"testing"
)

// FuzzBuild holds that any points give a region whose rings are simple and turn the
// right way, and that resolving it again changes nothing but what the grid moves.
func FuzzBuild(f *testing.F) {
	f.Add([]byte{0, 0, 10, 0, 10, 10, 0, 10}, uint8(0))
	f.Add([]byte{0, 0, 10, 10, 10, 0, 0, 10}, uint8(1))
	f.Fuzz(func(t *testing.T, data []byte, rule uint8) {
		if len(data) > 256 {
			return
		}
		ring := Ring{}
		for i := 0; i+1 < len(data); i += 2 {
			ring = append(ring, Point{float64(int8(data[i])), float64(int8(data[i+1]))})
		}
		if len(data) >= 16 {
			x := math.Float64frombits(binary.LittleEndian.Uint64(data))
			ring = append(ring, Point{x, -x})
		}
		r := Build([]Ring{ring}, FillRule(rule%3))
		for _, p := range r {
			if p.Outer.Area() <= 0 || len(p.Outer) < 3 {
				t.Fatalf("outer ring turns the wrong way: %v", p.Outer)
			}
			for _, h := range p.Holes {
				if h.Area() >= 0 {
					t.Fatalf("hole turns the wrong way: %v", h)
				}
			}
		}
		again := Union(r)
		if d := math.Abs(again.Area() - r.Area()); d > 1e-3*(1+r.Perimeter()) {
			t.Fatalf("resolving again changes the area by %g", d)
		}
	})
}
