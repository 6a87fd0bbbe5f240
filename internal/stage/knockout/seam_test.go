package knockout

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

func codes(found []finding.Finding) map[string]int {
	out := map[string]int{}
	for _, f := range found {
		out[f.Code]++
	}
	return out
}

// TestWaist: a long part with a waist gets its seam beside the waist, not in it, and
// the layer on it its own elsewhere.
func TestWaist(t *testing.T) {
	waist := geom.Union(geom.Rect(100, 100, 620, 300).Region(), geom.Rect(620, 180, 640, 220).Region(), geom.Rect(640, 150, 1200, 260).Region())
	in := Input{Length: 1300, Width: 400, Foam: 25, SheetX: 1000, SheetY: 500, Density: 20, Layers: []Layer{layerOf(1, 25, waist), layerOf(2, 25, waist)}}
	r, found := Compute(in)
	if len(r.Seams) != 2 || codes(found)["knockout/seam"] != 2 || codes(found)["knockout/stagger"] != 0 {
		t.Fatalf("seams %+v, findings %v", r.Seams, found)
	}
	for _, s := range r.Seams {
		for _, p := range s.Line {
			if x := 1300 - p.X; x > 620-20 && x < 640+20 {
				t.Errorf("seam %s at x %g of the piece lies in the waist", s.ID, x)
			}
		}
		if s.Staggers[0].Distance < 75 {
			t.Errorf("seam %s is only %.1f mm from the other layer's", s.ID, s.Staggers[0].Distance)
		}
	}
	in.SheetX, in.SheetY = 500, 1250
	if r, _ := Compute(in); len(r.Seams) != 0 {
		t.Errorf("the part fits the sheet lying the other way: %v", r.Seams)
	}
}

// TestIsland: seams of a long pool with an island near the middle of its length pass
// the island by, though the ring beside it is the shortest way across.
func TestIsland(t *testing.T) {
	pool := geom.Subtract(geom.Rect(100, 100, 1100, 300).Region(), geom.Rect(520, 120, 680, 280).Region())
	r, found := Compute(Input{Length: 1200, Width: 400, Foam: 25, SheetX: 800, SheetY: 500, Density: 20, Layers: []Layer{layerOf(1, 25, pool)}})
	if len(r.Seams) != 1 || len(r.Parts) != 2 {
		t.Fatalf("%d seams, %d parts", len(r.Seams), len(r.Parts))
	}
	for _, p := range r.Seams[0].Line {
		if p.X > 520-25 && p.X < 680+25 {
			t.Errorf("seam at x %g runs through the ring round the island", p.X)
		}
	}
	if codes(found)["knockout/seam-island"] != 0 {
		t.Errorf("findings %v", found)
	}
}

// TestIslandMustBeCut: where the ring round the island is itself too large there is no
// way but through it, and the plan says so.
func TestIslandMustBeCut(t *testing.T) {
	ring := geom.Subtract(geom.Rect(100, 100, 1100, 300).Region(), geom.Rect(140, 140, 1060, 260).Region())
	r, found := Compute(Input{Length: 1200, Width: 400, Foam: 25, SheetX: 800, SheetY: 500, Density: 20, Layers: []Layer{layerOf(1, 25, ring)}})
	if len(r.Seams) < 2 || codes(found)["knockout/seam-island"] == 0 {
		t.Fatalf("%d seams, findings %v", len(r.Seams), found)
	}
	if total := r.Parts[0].Area + r.Parts[1].Area; len(r.Parts) != 2 || math.Abs(float64(total)-ring.Area()) > 1e-3 {
		t.Errorf("%d parts of %v mm2 make a ring of %v", len(r.Parts), total, ring.Area())
	}
}

// TestShortestVisible: of a slab half covered by the layer on it, the seam runs where
// it is covered.
func TestShortestVisible(t *testing.T) {
	in := Input{Length: 1200, Width: 400, Foam: 25, SheetX: 700, SheetY: 500, Density: 20, Layers: []Layer{
		layerOf(1, 25, geom.Rect(100, 100, 1100, 300).Region()), layerOf(2, 25, geom.Rect(560, 110, 720, 290).Region())}}
	r, _ := Compute(in)
	if len(r.Seams) != 1 {
		t.Fatalf("seams %+v", r.Seams)
	}
	s := r.Seams[0]
	if x := 1200 - s.Line[0].X; x < 560 || x > 720 {
		t.Errorf("seam at x %g of the piece, not under the block at 560 to 720", x)
	}
	if want := 20 + 2*25.0; math.Abs(float64(s.Visible)-want) > 0.5 {
		t.Errorf("%.1f mm show; 20 mm of ledge and two risers of 25 mm do", s.Visible)
	}
}

// TestBedChangesPlan: a smaller bed makes more pieces, a larger one fewer, and the
// piece turned by 90 degrees is cut the other way.
func TestBedChangesPlan(t *testing.T) {
	pieces := func(bedX, bedY units.Length) int {
		in := estuary()
		in.Machine.BedX, in.Machine.BedY = bedX, bedY
		r, _ := Compute(in)
		return len(r.Parts)
	}
	if a, b, c := pieces(450, 400), pieces(750, 450), pieces(1300, 500); !(a > b && b > c) {
		t.Errorf("%d, %d, %d parts on beds of 450, 750 and 1300 mm", a, b, c)
	}
	in := Input{Length: 400, Width: 1300, Foam: 25, SheetX: 800, SheetY: 500, Density: 20,
		Layers: []Layer{layerOf(1, 25, geom.Rect(100, 100, 300, 1200).Region())}}
	r, _ := Compute(in)
	if len(r.Seams) != 1 || math.Abs(r.Seams[0].Line[0].Y-r.Seams[0].Line[1].Y) > 1 {
		t.Errorf("a part along y is cut by %+v", r.Seams)
	}
}

// TestJunction: a slab larger than the bed both ways is cut into a grid whose seams end
// on each other, and every seam names the two parts beside it.
func TestJunction(t *testing.T) {
	in := Input{Length: 1200, Width: 900, Foam: 25, SheetX: 1250, SheetY: 1000, Density: 20, Machine: Machine{Router: true, BedX: 650, BedY: 500, Cutter: 6, Flute: 30},
		Layers: []Layer{layerOf(1, 25, geom.Rect(50, 50, 1150, 850).Region())}}
	r, _ := Compute(in)
	if len(r.Parts) != 4 {
		t.Fatalf("%d parts", len(r.Parts))
	}
	shape := map[string]geom.Region{}
	for _, p := range r.Parts {
		shape[p.ID] = p.Outline.Shape()
	}
	for _, s := range r.Seams {
		if s.Parts[0] == s.Parts[1] {
			t.Errorf("seam %s joins %s to itself", s.ID, s.Parts[0])
		}
		for _, q := range []float64{0.05, 0.5, 0.95} {
			p := s.Line[0].Add(s.Line[1].Sub(s.Line[0]).Mul(q))
			for _, id := range s.Parts {
				if d := math.Abs(shape[id].Distance(p)); d > 0.01 {
					t.Errorf("seam %s: %s is %.2f mm off at %v", s.ID, id, d, p)
				}
			}
		}
	}
}

func TestBadInput(t *testing.T) {
	slab := []Layer{layerOf(1, 25, geom.Rect(50, 50, 1150, 350).Region())}
	base := Input{Length: 1200, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 20, Layers: slab,
		Machine: Machine{Router: true, BedX: 600, BedY: 500, Cutter: 6, Flute: 30}}
	channelled := geom.Subtract(geom.Rect(50, 50, 450, 350).Region(), geom.Rect(200, 150, 205, 350).Region())
	for _, c := range []struct {
		name string
		edit func(*Input)
		code string
		says string // in text or remedy
	}{
		{"cutter wider than a channel", func(in *Input) { in.Layers = []Layer{layerOf(1, 25, channelled)} }, "knockout/channel", "5.0 mm wide and the cutter 6.0 mm"},
		{"cutter wider than a hole", func(in *Input) {
			in.Layers = []Layer{layerOf(1, 25, geom.Subtract(geom.Rect(50, 50, 450, 350).Region(), geom.Rect(200, 150, 204, 154).Region()))}
		}, "knockout/channel", "A hole of part L1-A is 4.0 mm wide"},
		{"bed smaller than the smallest piece", func(in *Input) { in.Machine.BedX, in.Machine.BedY = 110, 130 }, "knockout/bed-small", "smallest piece allowed is 120 mm"},
		{"bed of nothing", func(in *Input) { in.Machine.BedX, in.Machine.BedY = 15, 15 }, "knockout/bed-small", "larger bed"},
		{"sheet thinner than the layer", func(in *Input) { in.Layers = []Layer{layerOf(1, 50, slab[0].Region.Shape())} }, "knockout/stack", "2 sheets glued"},
		{"flute too short", func(in *Input) { in.Machine.Flute = 20 }, "knockout/flute", "flutes of at least 25 mm"},
		{"fits no sheet in any turn", func(in *Input) {
			in.Layers, in.Machine.BedX, in.Machine.BedY = []Layer{layerOf(1, 25, geom.Rect(50, 50, 1150, 350).Region())}, 140, 40
		}, "knockout/no-fit", "fits 120 x 20 mm"},
		{"dowels thinner than the cutter", func(in *Input) { in.Machine.Cutter, in.Making.Dowel = 12, 8 }, "knockout/dowel-cutter", "narrower than the cutter"},
		{"inside corner", func(in *Input) {
			in.Layers = []Layer{layerOf(1, 25, geom.Subtract(geom.Rect(50, 50, 450, 350).Region(), geom.Rect(200, 150, 300, 350).Region()))}
		}, "knockout/corner", "in 2 inside corners"},
	} {
		in := base
		c.edit(&in)
		r, found := Compute(in)
		k := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Code == c.code })
		if k < 0 {
			t.Errorf("%s: no %s in %v", c.name, c.code, found)
			continue
		}
		if said := found[k].Text + " " + found[k].Remedy; !strings.Contains(said, c.says) {
			t.Errorf("%s: %q", c.name, said)
		}
		if len(r.Parts) == 0 {
			t.Errorf("%s hides the parts", c.name)
		}
	}
}

// TestCornerLeft: in a square corner a cutter of radius r leaves (1 - pi/4) r2 of foam,
// (sqrt 2 - 1) r deep.
func TestCornerLeft(t *testing.T) {
	bay := geom.Subtract(geom.Rect(50, 50, 450, 350).Region(), geom.Rect(200, 150, 300, 350).Region())
	r, _ := Compute(Input{Length: 500, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 20, Layers: []Layer{layerOf(1, 25, bay)},
		Machine: Machine{Router: true, BedX: 1300, BedY: 700, Cutter: 10, Flute: 30}})
	left := r.Parts[0].Left
	if len(left) != 2 {
		t.Fatalf("left %+v", left)
	}
	for _, l := range left {
		if l.Kind != "corner" || math.Abs(float64(l.Width)-5*(math.Sqrt2-1)) > 0.04 || math.Abs(float64(l.Area)-25*(1-math.Pi/4)) > 0.3 {
			t.Errorf("left %+v", l)
		}
	}
}

// TestCutParts: a part that is cut keeps its id when another appears to its left, and
// a change of its outline is said.
func TestCutParts(t *testing.T) {
	pools := func(more float64, extra bool) []Layer {
		r := geom.Union(geom.Rect(100, 100, 300+more, 300).Region(), geom.Rect(500, 100, 600, 300).Region())
		if extra {
			r = geom.Union(r, geom.Rect(800, 100, 900, 200).Region())
		}
		return []Layer{layerOf(1, 25, r)}
	}
	in := Input{Length: 1000, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 20, Layers: pools(0, false)}
	first, _ := Compute(in)
	cut := first.Parts[0].ID + "/" + first.Parts[0].Mark // the left one in the form
	in.Cut = []string{cut}
	in.Layers = pools(0, true)
	r, found := Compute(in)
	if p := r.Parts[1]; p.ID != "L1-A" || !p.Done || p.Mark != first.Parts[0].Mark || codes(found)["knockout/changed"] != 0 {
		t.Errorf("cut part is now %s, done %v; %v", p.ID, p.Done, found)
	}
	if r.Parts[0].ID == "L1-A" || r.Parts[2].ID == "L1-A" {
		t.Errorf("two parts are L1-A")
	}
	in.Cut = []string{first.Parts[1].ID + "/" + first.Parts[1].Mark, "L7-Q/0000"}
	in.Layers = pools(1, false)
	if _, found := Compute(in); codes(found)["knockout/changed"] != 2 {
		t.Errorf("a cut part grew by 1 mm and another is gone: %v", found)
	}
}

// TestMarkIsStable: what does not touch a part does not change its mark.
func TestMarkIsStable(t *testing.T) {
	in := estuary()
	a, _ := Compute(in)
	in.Concrete, in.Making.Effort, in.Density = 2300, 5, 30
	b, _ := Compute(in)
	for i := range a.Parts {
		if a.Parts[i].ID != b.Parts[i].ID || a.Parts[i].Mark != b.Parts[i].Mark {
			t.Errorf("%s/%s became %s/%s", a.Parts[i].ID, a.Parts[i].Mark, b.Parts[i].ID, b.Parts[i].Mark)
		}
	}
}

// wild draws layers of any size with holes, and a machine.
func wild(t *rapid.T) Input {
	in := Input{Length: 1500, Width: 700, Foam: 25, SheetX: 1250, SheetY: 600, Density: 20,
		Machine: Machine{Router: true, BedX: units.Length(rapid.Float64Range(420, 1300).Draw(t, "bed x")), BedY: units.Length(rapid.Float64Range(420, 900).Draw(t, "bed y")), Cutter: 6, Flute: 30},
		Making:  Making{Seam: rapid.SampledFrom([]string{straight, stepped, keyed}).Draw(t, "seam"), Turns: rapid.SampledFrom([]string{anyTurn, quarters}).Draw(t, "turns"), Effort: 20}}
	for i := range rapid.IntRange(1, 2).Draw(t, "layers") {
		long := rapid.Float64Range(500, 1450).Draw(t, "long")
		wide := rapid.Float64Range(200, 650).Draw(t, "wide")
		r := geom.Build([]geom.Ring{coast(rapid.IntRange(12, 60).Draw(t, "corners"), long, wide, 0)}, geom.NonZero)
		if rapid.Bool().Draw(t, "island") {
			r = geom.Subtract(r, geom.Rect(long/2-40, wide/2-30, long/2+40, wide/2+30).Region())
		}
		in.Layers = append(in.Layers, layerOf(i+1, 25, r.Map(func(p geom.Point) geom.Point { return p.Add(geom.Point{X: 20, Y: 20}) }, false)))
	}
	return in
}

// TestSeamLaws: the parts of a layer are disjoint and, but for the clearance, make the
// layer turned over once; none exceeds bed and sheet; none is smaller than allowed
// without being named; staggers are what the seams' lines say.
func TestSeamLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := wild(t)
		r, found := Compute(in)
		for _, l := range in.Layers {
			whole := l.Region.Shape().Map(func(p geom.Point) geom.Point { return geom.Point{X: in.Length.MM() - p.X, Y: p.Y} }, true)
			holdParts(t, r, l.Number, whole)
		}
		long, short := ordered(r.Limits.X.MM(), r.Limits.Y.MM())
		for _, p := range r.Parts {
			if b, a := ordered(p.BoxX.MM(), p.BoxY.MM()); (b > long+1e-6 || a > short+1e-6) && len(r.Seams) > 0 && !limits(Input{SheetX: in.SheetX, SheetY: in.SheetY, Machine: in.Machine, Making: in.Making.filled(in)}).fits(p.Outline.Shape()[0].Outer) {
				t.Fatalf("%s of %.1f x %.1f mm exceeds %.1f x %.1f", p.ID, p.BoxX, p.BoxY, long, short)
			}
		}
		holdStaggers(t, r, found)
	})
}

func holdParts(t *rapid.T, r Result, layer int, whole geom.Region) {
	var all []geom.Region
	sum, keys := 0.0, 0.0
	for _, p := range r.Parts {
		if p.Layer == layer {
			all = append(all, p.Outline.Shape())
			sum += float64(p.Area)
		}
	}
	for _, s := range r.Seams {
		if s.Layer == layer && s.Kind != straight {
			for i := 1; i < len(s.Curve); i++ {
				keys += s.Curve[i].Sub(s.Curve[i-1]).Norm()
			}
		}
	}
	union := geom.Union(all...)
	if extra := geom.Subtract(union, whole).Area(); extra > 0.5 {
		t.Fatalf("parts of layer %d stand out of it by %.3f mm2", layer, extra)
	}
	if lost := whole.Area() - union.Area(); lost > 1+keys*0.16 {
		t.Fatalf("parts of layer %d lack %.2f mm2 of it; clearance allows %.2f", layer, lost, keys*0.16)
	}
	if over := sum - union.Area(); math.Abs(over) > 0.5 {
		t.Fatalf("parts of layer %d overlap by %.3f mm2", layer, over)
	}
}

func holdStaggers(t *rapid.T, r Result, found []finding.Finding) {
	for _, s := range r.Seams {
		for _, g := range s.Staggers {
			least := math.Inf(1)
			for _, o := range r.Seams {
				a, b := s.Line, o.Line
				if o.Layer == g.Layer && !(steep(a[0], a[1], b[0], b[1]) && apart(a[0], a[1], b[0], b[1]) == 0) {
					least = math.Min(least, lineGap(s.Curve, o.Curve))
				}
			}
			if math.Abs(least-float64(g.Distance)) > 1e-6 {
				t.Fatalf("%s says %.2f mm to layer %d, its curve %.2f", s.ID, g.Distance, g.Layer, least)
			}
			said := slices.ContainsFunc(found, func(f finding.Finding) bool {
				return f.Code == "knockout/stagger" && strings.Contains(f.Text, fmt.Sprintf("layer %d;", g.Layer)) && f.Where.Element == s.ID
			})
			if g.Layer < s.Layer && float64(g.Distance) < 74.9 && !said {
				t.Fatalf("%s is %.1f mm from layer %d and nothing is said", s.ID, g.Distance, g.Layer)
			}
		}
	}
}
