package resin

import (
	"math"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/view"
)

func rect(x0, y0, x1, y1 float64) geom.Region {
	return geom.Build([]geom.Ring{geom.Rect(x0, y0, x1, y1).Ring()}, geom.EvenOdd)
}

func TestShapeHoldsTheBasinsLitres(t *testing.T) {
	ring := geom.Subtract(rect(10, 10, 191, 91), rect(60, 40, 101, 61)) // an island left standing
	layers := []Layer{
		{From: 0, To: 20, Region: view.Of[view.Finished](ring)},
		{From: 20, To: 45, Region: view.Of[view.Finished](rect(120, 20, 170, 80))},
	}
	want := ring.Area()*20 + 50*60*25
	s := shapeOf(layers, 200, 100, 1)
	got := 0.0
	for _, d := range s.deepMM {
		got += d * s.stepMM * s.stepMM
	}
	if s.nx != 200 || s.ny != 100 || math.Abs(got/want-1) > 1e-9 || s.deepest() != 45 {
		t.Errorf("%d x %d, %.1f mm3 of %.1f, deepest %.1f", s.nx, s.ny, got, want, s.deepest())
	}
	if d := s.deepMM[50*200+80]; d != 0 {
		t.Errorf("the island is %.1f mm deep", d)
	}
	if d := s.deepMM[50*200+150]; d != 45 {
		t.Errorf("the channel is %.1f mm deep", d)
	}
}
