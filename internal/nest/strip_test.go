package nest

import (
	"context"
	"errors"
	"math"
	"reflect"
	"testing"

	"pourwright/internal/geom"

	"pgregory.net/rapid"
)

// TestStripSame asks for the same layout whatever the number of threads, and another for
// another seed.
func TestStripSame(t *testing.T) {
	s := Strip{HeightMM: 400, Seed: 7, Iterations: 4000}
	for i := range 12 {
		s.Pieces = append(s.Pieces, Piece{Shape: geom.Polygon{Outer: blob(3+i%5, func(k int) float64 { return 70 + float64(k*i%5)*15 })}, Turning: TurnQuarter})
	}
	var all []StripLayout
	for _, threads := range []int{1, 2, 0} {
		s.Threads = threads
		all = append(all, packed(t, s))
	}
	if !reflect.DeepEqual(all[0], all[1]) || !reflect.DeepEqual(all[0], all[2]) {
		t.Error("the layout depends on the threads")
	}
	s.Seed = 8
	if reflect.DeepEqual(all[0], packed(t, s)) {
		t.Error("the layout does not depend on the seed")
	}
}

// TestStripPuzzle cuts a rectangle into right-angled pieces and asks for its length back.
func TestStripPuzzle(t *testing.T) {
	s := Strip{HeightMM: 300, Seed: 3, Iterations: 20000}
	for _, r := range []geom.Ring{
		{{X: 0, Y: 0}, {X: 200, Y: 0}, {X: 200, Y: 100}, {X: 100, Y: 100}, {X: 100, Y: 300}, {X: 0, Y: 300}},
		{{X: 100, Y: 100}, {X: 300, Y: 100}, {X: 300, Y: 200}, {X: 100, Y: 200}},
		{{X: 200, Y: 0}, {X: 400, Y: 0}, {X: 400, Y: 300}, {X: 300, Y: 300}, {X: 300, Y: 100}, {X: 200, Y: 100}},
		{{X: 100, Y: 200}, {X: 300, Y: 200}, {X: 300, Y: 300}, {X: 100, Y: 300}},
	} {
		s.Pieces = append(s.Pieces, Piece{Shape: geom.Polygon{Outer: r}})
	}
	if l := packed(t, s); l.LengthMM > 400.01 {
		t.Errorf("length %.3f mm, want 400", l.LengthMM)
	}
}

// TestStripLaws holds strips of drawn pieces to the laws: no shorter than their area asks.
func TestStripLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := Strip{HeightMM: rapid.Float64Range(310, 900).Draw(r, "height"), Seed: rapid.Uint64().Draw(r, "seed"), Iterations: 300}
		area := 0.0
		for range rapid.IntRange(1, 10).Draw(r, "pieces") {
			n := rapid.IntRange(3, 8).Draw(r, "corners")
			ring := blob(n, func(int) float64 { return rapid.Float64Range(20, 150).Draw(r, "radius") })
			turn := rapid.SampledFrom([]float64{0, 30, 45, 90, 180, -90, 720}).Draw(r, "turn")
			s.Pieces = append(s.Pieces, Piece{Shape: geom.Polygon{Outer: ring}, Turning: TurnListed, TurnsDeg: []float64{0, turn}})
			area += ring.Area()
		}
		if l := packed(t, s); l.LengthMM*s.HeightMM < area*(1-1e-6) || t.Failed() {
			r.Fatalf("length %g mm", l.LengthMM)
		}
	})
}

// TestStripErrors gives strips that cannot be packed.
func TestStripErrors(t *testing.T) {
	ok := Piece{Shape: rect(10, 20)}
	for _, s := range []Strip{
		{HeightMM: 0, Pieces: []Piece{ok}},
		{HeightMM: math.NaN(), Pieces: []Piece{ok}},
		{HeightMM: 15, Pieces: []Piece{ok}},
		{HeightMM: 50, Pieces: []Piece{ok, {}}},
	} {
		if _, err := s.Pack(context.Background()); !errors.Is(err, ErrProblem) {
			t.Errorf("%+v: error %v", s, err)
		}
	}
}
