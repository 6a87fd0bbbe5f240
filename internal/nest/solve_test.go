package nest

import (
	"context"
	"math"
	"reflect"
	"strings"
	"testing"

	"pourwright/internal/geom"

	"pgregory.net/rapid"
)

func rect(w, h float64) geom.Polygon { return geom.Polygon{Outer: geom.Rect(0, 0, w, h).Ring()} }

// blob is a star-shaped outline of n corners about its middle.
func blob(n int, radius func(i int) float64) geom.Ring {
	var r geom.Ring
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r = append(r, geom.Point{X: c, Y: s}.Mul(radius(i)))
	}
	return r
}

func ringPolygon(outer, inner float64) geom.Polygon {
	return geom.Polygon{
		Outer: blob(24, func(int) float64 { return outer }),
		Holes: []geom.Ring{blob(24, func(int) float64 { return inner }).Reversed()},
	}
}

func solve(t testing.TB, p Problem) Layout {
	t.Helper()
	l, err := Solve(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	holdsLaws(t, p, l)
	return l
}

func drawProblem(t *rapid.T) Problem {
	p := Problem{
		SpacingMM:  rapid.SampledFrom([]float64{0, 3, 8}).Draw(t, "spacing"),
		EdgeMM:     rapid.SampledFrom([]float64{0, 5}).Draw(t, "edge"),
		Seed:       rapid.Uint64().Draw(t, "seed"),
		Iterations: rapid.SampledFrom([]int{0, 300}).Draw(t, "iterations"),
	}
	for range rapid.IntRange(1, 7).Draw(t, "pieces") {
		n := rapid.IntRange(3, 9).Draw(t, "corners")
		ring := blob(n, func(int) float64 { return rapid.Float64Range(30, 150).Draw(t, "radius") })
		shape := geom.Polygon{Outer: ring}
		if rapid.Bool().Draw(t, "hole") {
			shape = ringPolygon(rapid.Float64Range(80, 150).Draw(t, "outer"), rapid.Float64Range(20, 70).Draw(t, "inner"))
		}
		p.Pieces = append(p.Pieces, Piece{Shape: shape, Turning: rapid.SampledFrom([]Turning{TurnNone, TurnHalf, TurnQuarter, TurnAny}).Draw(t, "turning")})
	}
	p.Sheets = []Sheet{
		{Name: "offcut", Outline: geom.Region{{Outer: blob(7, func(int) float64 { return rapid.Float64Range(150, 300).Draw(t, "offcut") })}}, Quantity: 1, Owned: true},
		{Name: "sheet", Outline: geom.Rect(0, 0, 600, 400).Region(), Quantity: rapid.IntRange(0, 3).Draw(t, "sheets")},
	}
	return p
}

// TestLaws holds layouts of drawn problems to the laws.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		p := drawProblem(r)
		l, err := Solve(context.Background(), p)
		if err != nil {
			r.Fatal(err)
		}
		holdsLaws(t, p, l)
		if t.Failed() {
			r.Fatal("laws broken")
		}
	})
}

// TestSame asks for the same layout whatever the number of threads.
func TestSame(t *testing.T) {
	var want Layout
	for k, threads := range []int{1, 2, 8, 0} {
		p := Problem{SpacingMM: 3, Seed: 5, Iterations: 1500, Threads: threads,
			Sheets: []Sheet{{Name: "s", Outline: geom.Rect(0, 0, 700, 500).Region(), Quantity: 4}}}
		for i := range 8 {
			p.Pieces = append(p.Pieces, Piece{Shape: geom.Polygon{Outer: blob(5+i%4, func(k int) float64 { return 60 + float64(k*i%7)*12 })}, Turning: TurnQuarter})
		}
		l := solve(t, p)
		if k == 0 {
			want = l
		} else if !reflect.DeepEqual(l, want) {
			t.Errorf("%d threads lay the pieces otherwise", threads)
		}
	}
}

// TestHole lays a disc in the hole of a ring: together they need no more than the ring.
func TestHole(t *testing.T) {
	p := Problem{SpacingMM: 6, Iterations: 2000,
		Pieces: []Piece{{Shape: ringPolygon(200, 100)}, {Shape: geom.Polygon{Outer: blob(24, func(int) float64 { return 90 })}}},
		Sheets: []Sheet{{Name: "s", Outline: geom.Rect(0, 0, 410, 410).Region(), Quantity: 2}}}
	if l := solve(t, p); len(l.Sheets) != 1 || len(l.Unplaced) != 0 {
		t.Errorf("%d sheets, %d left over; want the disc in the hole", len(l.Sheets), len(l.Unplaced))
	}
}

// TestOwnedFirst asks that an offcut that takes all is used before a sheet is bought.
func TestOwnedFirst(t *testing.T) {
	p := Problem{SpacingMM: 3, Iterations: 500,
		Pieces: []Piece{{Shape: rect(100, 80)}, {Shape: rect(60, 40)}},
		Sheets: []Sheet{
			{Name: "new", Outline: geom.Rect(0, 0, 2440, 1220).Region(), Quantity: 5},
			{Name: "offcut", Outline: geom.Region{{Outer: geom.Ring{{X: 0, Y: 0}, {X: 300, Y: 0}, {X: 0, Y: 300}}}}, Quantity: 1, Owned: true}}}
	l := solve(t, p)
	if len(l.Sheets) != 1 || l.Sheets[0].Sheet != 1 {
		t.Errorf("sheets %+v, want the offcut alone", l.Sheets)
	}
	if r := l.Sheets[0].Rest; len(r) == 0 || l.Sheets[0].RestName != "rest of offcut 1" {
		t.Errorf("the rest is %q, %v", l.Sheets[0].RestName, r)
	}
}

// TestEmptied asks that the search saves a sheet where leftmost places need two.
func TestEmptied(t *testing.T) {
	p := Problem{Iterations: 20000, Seed: 1, Sheets: []Sheet{{Name: "s", Outline: geom.Rect(0, 0, 400, 400).Region(), Quantity: 5}}}
	for range 4 { // eight right triangles make four squares of 200
		for _, r := range []geom.Ring{{{X: 0, Y: 0}, {X: 199, Y: 0}, {X: 0, Y: 199}}, {{X: 199, Y: 0}, {X: 199, Y: 199}, {X: 0, Y: 199}}} {
			p.Pieces = append(p.Pieces, Piece{Shape: geom.Polygon{Outer: r}, Turning: TurnQuarter})
		}
	}
	if l := solve(t, p); len(l.Sheets) != 1 {
		t.Errorf("%d sheets, want 1", len(l.Sheets))
	}
}

// TestReasons gives pieces and stock that cannot be served.
func TestReasons(t *testing.T) {
	sheet := Sheet{Name: "s", Outline: geom.Rect(0, 0, 1000, 500).Region(), Quantity: 1}
	good := Piece{Name: "a", Shape: rect(10, 10)}
	for _, c := range []struct {
		name   string
		piece  Piece
		sheets []Sheet
		want   string
	}{
		{"too long", Piece{Shape: rect(1200, 10), Turning: TurnAny}, []Sheet{sheet}, "fits no sheet in any turn"},
		{"too long as drawn", Piece{Shape: rect(10, 600)}, []Sheet{sheet}, "fits no sheet in any turn"},
		{"no stock", good, nil, "no sheet"},
		{"none left", good, []Sheet{{Name: "s", Outline: sheet.Outline}}, "no sheet"},
		{"margin eats the sheet", good, []Sheet{{Name: "s", Outline: geom.Rect(0, 0, 8, 8).Region(), Quantity: 1}}, "no sheet"},
		{"crosses itself", Piece{Shape: geom.Polygon{Outer: geom.Ring{{X: 0, Y: 0}, {X: 9, Y: 9}, {X: 9, Y: 0}, {X: 0, Y: 9}}}}, []Sheet{sheet}, "crosses itself at (4.5, 4.5)"},
		{"not finite", Piece{Shape: geom.Polygon{Outer: geom.Ring{{X: 0, Y: 0}, {X: math.NaN(), Y: 9}, {X: 9, Y: 0}}}}, []Sheet{sheet}, "not a finite number"},
		{"no corners", Piece{}, []Sheet{sheet}, "fewer than three corners"},
		{"no turn", Piece{Shape: rect(9, 9), Turning: TurnListed, TurnsDeg: []float64{math.Inf(1)}}, []Sheet{sheet}, "a turn is not a finite"},
		{"flat", Piece{Shape: geom.Polygon{Outer: geom.Ring{{X: 0, Y: 0}, {X: 5, Y: 0}, {X: 9, Y: 0}}}}, []Sheet{sheet}, "fewer than three corners"},
	} {
		l, err := Solve(context.Background(), Problem{Pieces: []Piece{c.piece}, Sheets: c.sheets, EdgeMM: 4, SpacingMM: 4, Iterations: 100})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		} else if len(l.Unplaced) != 1 || !strings.Contains(l.Unplaced[0].Reason, c.want) {
			t.Errorf("%s: %+v, want %q", c.name, l.Unplaced, c.want)
		}
	}
}

// TestFull asks that what is left over when the sheets are full is told.
func TestFull(t *testing.T) {
	p := Problem{Iterations: 200, Sheets: []Sheet{{Name: "s", Outline: geom.Rect(0, 0, 100, 100).Region(), Quantity: 1}}}
	for range 3 {
		p.Pieces = append(p.Pieces, Piece{Shape: rect(90, 40)})
	}
	l := solve(t, p)
	if len(l.Placements) != 2 || len(l.Unplaced) != 1 || !strings.Contains(l.Unplaced[0].Reason, "full") {
		t.Errorf("%d placed, %+v", len(l.Placements), l.Unplaced)
	}
}

// TestErrors gives problems that are at fault as a whole.
func TestErrors(t *testing.T) {
	for _, p := range []Problem{
		{SpacingMM: -1}, {SpacingMM: math.NaN()}, {EdgeMM: math.Inf(1)},
		{Sheets: []Sheet{{Outline: geom.Rect(0, 0, math.Inf(1), 5).Region(), Quantity: 1}}},
	} {
		if _, err := Solve(context.Background(), p); err == nil {
			t.Errorf("%+v: no error", p)
		}
	}
}

// TestCancelled asks for a lawful layout when there is no time at all.
func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p := Problem{Iterations: 1000, Pieces: []Piece{{Shape: rect(10, 10)}}, Sheets: []Sheet{{Name: "s", Outline: geom.Rect(0, 0, 100, 100).Region(), Quantity: 1}}}
	l, err := Solve(ctx, p)
	if err != nil {
		t.Fatal(err)
	}
	holdsLaws(t, p, l)
}
