package geom

import (
	"encoding/binary"
	"math"
	"testing"
)

// FuzzBuild holds that any points, wild ones too, give sound rings, and that the area of
// those within a small square is what scanning finds.
func FuzzBuild(f *testing.F) {
	f.Add([]byte{0, 0, 10, 0, 10, 10, 0, 10}, uint8(0))
	f.Add([]byte{0, 0, 10, 10, 10, 0, 0, 10}, uint8(1))
	f.Add([]byte{0, 0, 5, 0, 9, 0, 3, 0, 3, 7, 0, 0, 5, 0, 3, 7}, uint8(2))
	f.Fuzz(func(t *testing.T, data []byte, n uint8) {
		if len(data) > 64 {
			return
		}
		ring := Ring{}
		for i := 0; i+1 < len(data); i += 2 {
			ring = append(ring, Point{float64(int8(data[i])), float64(int8(data[i+1]))})
		}
		rule := FillRule(n % 3)
		r := Build([]Ring{ring}, rule)
		sound(t, r)
		if want := areaByScan([]Ring{ring}, rule); math.Abs(r.Area()-want) > Grid*(1+ring.Perimeter()) {
			t.Fatalf("area %.6f, by scanning %.6f", r.Area(), want)
		}
		if len(data) >= 8 {
			x := math.Float64frombits(binary.LittleEndian.Uint64(data))
			sound(t, Build([]Ring{append(ring, Point{x, -x}, Point{-x, 7})}, rule))
			Offset(r, math.Mod(x, 100), 0.05)
		}
	})
}
