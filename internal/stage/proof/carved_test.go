package proof

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pourwright/internal/grid"
)

// bowl is a block of 60 by 40 mm with a hollow of slope up to about 1 in 2, and a program
// of straight ways 1 mm apart whose tips follow the ball's lowest allowed place, found by
// trying all nodes of a fine grid.
func bowl(t *testing.T) Input {
	t.Helper()
	const r = 3.0
	height := func(x, y float64) float64 {
		x, y = math.Max(0, math.Min(60, x)), math.Max(0, math.Min(40, y))
		return -8 - 4*math.Cos((x-30)/10)*math.Cos((y-20)/12)
	}
	f, err := grid.New(121, 81, 0.5, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	for j := range f.Rows {
		for i := range f.Cols {
			f.Set(i, j, height(f.Node(i, j).X, f.Node(i, j).Y))
		}
	}
	tip := func(x, y float64) float64 {
		best := math.Inf(-1)
		for dx := -r; dx <= r; dx += 0.25 {
			for dy := -r; dy <= r; dy += 0.25 {
				if d2 := dx*dx + dy*dy; d2 <= r*r {
					best = math.Max(best, height(x+dx, y+dy)+math.Sqrt(r*r-d2)-r)
				}
			}
		}
		return best
	}
	var text strings.Builder
	text.WriteString("G17 G21 G90 G94 G40 G49 G54 G80\nG0 Z5\nF1500\n")
	for y := 0.0; y <= 40; y++ {
		fmt.Fprintf(&text, "G0 Z5\nG0 X0 Y%.4f\n", y)
		for x := 0.0; x <= 60; x++ {
			fmt.Fprintf(&text, "G1 X%.4f Z%.4f\n", x, tip(x, y))
		}
	}
	text.WriteString("G0 Z5\nM2\n")
	return Input{File: "bowl.nc", Text: text.String(), SizeX: 60, SizeY: 40, Thickness: 20, Cutter: 6, SafeHeight: 5,
		Carving: &Carving{Heights: f, Ball: 6, Scallop: 0.05}}
}

func TestCarving(t *testing.T) {
	in := bowl(t)
	r, found := Compute(in)
	if !r.Verified || r.Carved == nil {
		t.Fatalf("not verified: %s", texts(found))
	}
	// the far edge falls by 1 in 3 outwards, and the ball's middle stays on the block:
	// there it leaves up to R (1 - cos a)
	edge := 3 * (1 - math.Cos(math.Atan(1.0/3)))
	if r.Carved.Gouged > 0.1 || r.Carved.Ridges > 0.15 || r.Carved.Left.MM() > edge {
		t.Errorf("got %+v", r.Carved)
	}
	for name, c := range map[string]struct{ from, to, code string }{
		"too deep":     {"G1 X30.0000 Z-11.9", "G1 X30.0000 Z-12.9", "proof/gouge"},
		"way left out": {"G0 X0 Y20.0000\n", "G0 Z5\nM2\n", "proof/uncut"},
	} {
		bad := in
		if bad.Text = strings.Replace(in.Text, c.from, c.to, 1); bad.Text == in.Text {
			t.Fatalf("%s: %q is not in the program", name, c.from)
		}
		r, found := Compute(bad)
		if _, ok := first(found, c.code); !ok || r.Verified {
			t.Errorf("%s: verified %v, %s", name, r.Verified, texts(found))
		}
	}
	in.Carving.Ball = 0
	if r, _ := Compute(in); r.Verified {
		t.Error("a carving without a ball is verified")
	}
}
