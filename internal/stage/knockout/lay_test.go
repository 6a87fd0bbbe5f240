package knockout

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// A tester is a test or a property test.
type tester interface {
	Helper()
	Fatalf(format string, args ...any)
}

// holdSheets holds that every thickness of every part lies once on a sheet, inside it
// by the margin, apart from others by the cutter and the spacing, turned and moved but
// never mirrored, and that every sheet lies on the bed.
func holdSheets(t tester, in Input, r Result) {
	t.Helper()
	seen := map[string]int{}
	for _, s := range r.Sheets {
		if b := s; in.Machine.Router && !fitsBed(in.Machine, b) {
			t.Fatalf("%s of %.1f x %.1f mm does not lie on the bed", s.Name, s.SizeX, s.SizeY)
		}
		inside := geom.Offset(geom.Region{{Outer: s.Outline}}, -r.Rules.Margin.MM()+0.01, 0.005)
		for i, q := range s.Placements {
			seen[fmt.Sprint(q.Part, " ", q.Copy)]++
			holdPlacement(t, r, q)
			if out := geom.Subtract(q.Region.Shape(), inside).Area(); out > 0.05 {
				t.Fatalf("%s stands out of the margin of %s by %.3f mm2", q.Part, s.Name, out)
			}
			grown := geom.Offset(q.Region.Shape(), r.Rules.Spacing.MM()-0.15, 0.1)
			for _, o := range s.Placements[i+1:] {
				if over := geom.Intersect(grown, o.Region.Shape()).Area(); over > 0.05 {
					t.Fatalf("%s and %s on %s are nearer than %.1f mm: %.3f mm2", q.Part, o.Part, s.Name, r.Rules.Spacing, over)
				}
			}
		}
	}
	for _, p := range r.Parts {
		for k := range p.Sheets {
			if n := seen[fmt.Sprint(p.ID, " ", k+1)]; n != 1 && !p.Done {
				t.Fatalf("thickness %d of %s lies on %d sheets", k+1, p.ID, n)
			}
		}
	}
}

func fitsBed(m Machine, s Sheet) bool {
	x, y := m.BedX+1e-6, m.BedY+1e-6
	return s.SizeX <= x && s.SizeY <= y || s.SizeX <= y && s.SizeY <= x
}

// holdPlacement holds that what lies on the sheet is the part turned by what is said
// and moved: every corner of it, in order.
func holdPlacement(t tester, r Result, q Placement) {
	t.Helper()
	for _, p := range r.Parts {
		if p.ID != q.Part {
			continue
		}
		sin, cos := math.Sincos(q.Turn * math.Pi / 180)
		a, b := p.Region.Shape().Rings(), q.Region.Shape().Rings()
		for i := range a {
			for k, v := range a[i] {
				want := geom.Point{X: v.X*cos - v.Y*sin + q.X.MM(), Y: v.X*sin + v.Y*cos + q.Y.MM()}
				if b[i][k].Sub(want).Norm() > 1e-6 {
					t.Fatalf("%s on its sheet is not the part turned by %g degrees", q.Part, q.Turn)
				}
			}
		}
		return
	}
	t.Fatalf("placed part %s is none", q.Part)
}

func TestSheetLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := wild(t)
		in.Making.Turns = rapid.SampledFrom([]string{anyTurn, quarters, halves, noTurn}).Draw(t, "turns")
		in.Machine.BedX = units.Length(rapid.Float64Range(500, 1500).Draw(t, "bed"))
		for i := range in.Layers {
			in.Layers[i].Depth = 25 * units.Length(rapid.IntRange(1, 2).Draw(t, "stack"))
		}
		r, found := Compute(in)
		if n := codes(found); n["knockout/no-fit"] > 0 || n["knockout/nesting"] > 0 {
			t.Skip("no seams for this bed")
		}
		holdSheets(t, in, r)
	})
}

func TestLayWhole(t *testing.T) {
	in := Input{Length: 1000, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 20}
	in.Layers = []Layer{layerOf(1, 50, geom.Rect(100, 50, 900, 350).Region()), layerOf(2, 25, geom.Rect(150, 100, 500, 300).Region())}
	r, _ := Compute(in)
	holdSheets(t, in, r)
	if r.Buy != 2 || r.AtLeast != 1 || len(r.Sheets) != 2 {
		t.Errorf("%d new sheets, at least %d; two of 800 x 300 and one of 350 x 200 mm do not lie on one of 1250 x 600", r.Buy, r.AtLeast)
	}
	if k := r.Sheets[1].Keep; k == nil || k.SizeX < 400 || len(r.Offcuts) == 0 {
		t.Errorf("last sheet is left with %+v, offcuts %+v", k, r.Offcuts)
	}
}

// TestOffcutsFirst: what fits lies on offcuts, also on one that is no rectangle, and no
// new sheet is bought for it.
func TestOffcutsFirst(t *testing.T) {
	in := Input{Length: 1000, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 20, Layers: []Layer{layerOf(1, 25, geom.Rect(100, 100, 400, 200).Region())}}
	ell := geom.Ring{{X: 500, Y: 300}, {X: 500, Y: 800}, {X: 0, Y: 800}, {X: 0, Y: 0}, {X: 130, Y: 0}, {X: 130, Y: 300}}
	in.Offcuts = []Offcut{{Name: "too small", Outline: geom.Rect(0, 0, 200, 100).Ring()}, {Name: "corner piece", Outline: ell}}
	r, _ := Compute(in)
	holdSheets(t, in, r)
	if r.Buy != 0 || len(r.Sheets) != 1 || r.Sheets[0].Name != "corner piece" {
		t.Errorf("bought %d, sheets %+v", r.Buy, r.Sheets)
	}
	in.Offcuts = []Offcut{{Name: "bow tie", Outline: geom.Ring{{X: 0, Y: 0}, {X: 500, Y: 500}, {X: 500, Y: 0}, {X: 0, Y: 500}}}}
	if r, found := Compute(in); r.Buy != 1 || codes(found)["knockout/offcut"] != 1 {
		t.Errorf("an outline that crosses itself was used: %v", found)
	}
}

// TestBlanks: sheets larger than the bed are sawn into blanks that lie inside the sheet
// side by side.
func TestBlanks(t *testing.T) {
	in := estuary()
	r, _ := Compute(in)
	holdSheets(t, in, r)
	if r.Buy < r.AtLeast || r.Buy == 0 {
		t.Errorf("bought %d sheets, at least %d", r.Buy, r.AtLeast)
	}
	at := map[int][]geom.Box{}
	for _, s := range r.Sheets {
		x, y := s.FromX.MM(), s.FromY.MM()
		b := geom.Rect(x, y, x+s.SizeX.MM(), y+s.SizeY.MM())
		if b.Min.X < 0 || b.Min.Y < 0 || b.Max.X > 1000+1e-6 || b.Max.Y > 500+1e-6 {
			t.Errorf("%s at %v lies off its sheet", s.Name, b)
		}
		for _, o := range at[s.Whole] {
			if geom.Intersect(o.Region(), b.Region()).Area() > 1e-3 {
				t.Errorf("%s overlaps another blank of sheet %d", s.Name, s.Whole)
			}
		}
		at[s.Whole] = append(at[s.Whole], b)
	}
}

func TestNoSheetFits(t *testing.T) {
	in := Input{Length: 1000, Width: 400, Foam: 25, SheetX: 310, SheetY: 310, Density: 20, Making: Making{Turns: noTurn, Smallest: 300},
		Layers: []Layer{layerOf(1, 25, geom.Rect(100, 50, 400, 350).Region())}}
	_, found := Compute(in)
	if n := codes(found); n["knockout/bed-small"] != 1 || n["knockout/nesting"] != 1 {
		t.Fatalf("findings %v", found)
	}
	for _, f := range found {
		if f.Code == "knockout/nesting" && !strings.Contains(f.Text, "fits no sheet of 310 x 310 mm in any turn") {
			t.Errorf("%q", f.Text)
		}
	}
}
