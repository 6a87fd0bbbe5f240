package knockout

import (
	"math"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// banquet is a table for twenty on a small bed.
func banquet(bed units.Length) Input {
	in := Input{Length: 3000, Width: 1200, Foam: 25, SheetX: 2500, SheetY: 1250, Density: 20,
		Machine: Machine{Router: true, BedX: bed, BedY: 400, Cutter: 6, Flute: 30}}
	for i, shrink := range []float64{0, 60, 150} {
		r := geom.Build([]geom.Ring{coast(600, 3000, 1200, shrink)}, geom.NonZero)
		r = geom.Subtract(r, geom.Rect(1400, 500, 1600, 640).Region())
		in.Layers = append(in.Layers, layerOf(i+1, 25, r))
	}
	return in
}

// TestManyPieces: a piece of many times the bed's size is cut into pieces that all fit,
// none of them for nothing.
func TestManyPieces(t *testing.T) {
	in := banquet(600)
	r, found := Compute(in)
	if codes(found)["knockout/no-fit"] > 0 {
		t.Fatalf("findings %v", found)
	}
	for _, l := range in.Layers {
		n, area := 0, 0.0
		for _, p := range r.Parts {
			if p.Layer == l.Number {
				n, area = n+1, area+float64(p.Area)
			}
			if b, a := ordered(p.BoxX.MM(), p.BoxY.MM()); b > 580+1e-6 || a > 380+1e-6 {
				t.Errorf("%s is %.0f x %.0f mm", p.ID, p.BoxX, p.BoxY)
			}
		}
		if math.Abs(area-l.Region.Area()) > 1 {
			t.Errorf("layer %d: parts of %.0f mm2, layer %.0f", l.Number, area, l.Region.Area())
		}
		t.Logf("layer %d: %d parts, at least %.0f by area", l.Number, n, math.Ceil(area/(580*380)))
		if least := area / (580 * 380); float64(n) > 2.2*least+2 {
			t.Errorf("layer %d is cut into %d parts; %.1f by area", l.Number, n, least)
		}
	}
}

// TestNonsense: no input makes it hang or panic, and nothing of a result is no number.
func TestNonsense(t *testing.T) {
	inf, nan := units.Length(math.Inf(1)), units.Length(math.NaN())
	slab := geom.Rect(50, 50, 1150, 350).Region()
	for name, edit := range map[string]func(*Input){
		"no foam":          func(in *Input) { in.Foam = 0 },
		"no sheet":         func(in *Input) { in.SheetX, in.SheetY = 0, 0 },
		"negative bed":     func(in *Input) { in.Machine.BedX = -5 },
		"no cutter":        func(in *Input) { in.Machine.Cutter = 0 },
		"endless stagger":  func(in *Input) { in.Making.Stagger = inf },
		"no number":        func(in *Input) { in.Making.Margin, in.Machine.Flute = nan, nan },
		"margin of a yard": func(in *Input) { in.Making.Margin = 900 },
		"no depth":         func(in *Input) { in.Layers[0].Depth = 0 },
		"sliver":           func(in *Input) { in.Layers[0] = layerOf(1, 25, geom.Rect(0, 0, 1200, 0.01).Region()) },
		"empty":            func(in *Input) { in.Layers[0] = layerOf(1, 25, nil) },
		"tiny bed":         func(in *Input) { in.Machine.BedX, in.Machine.BedY, in.Making.Smallest = 60, 60, 20 },
		"offcut of nothing": func(in *Input) {
			in.Offcuts = []Offcut{{Name: "x"}, {Name: "y", Outline: geom.Ring{{X: 1, Y: 1}, {X: 2, Y: 1}}}}
		},
	} {
		in := Input{Length: 1200, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 20, Layers: []Layer{layerOf(1, 25, slab), layerOf(2, 25, slab)},
			Machine: Machine{Router: true, BedX: 600, BedY: 500, Cutter: 6, Flute: 30}}
		edit(&in)
		r, _ := Compute(in)
		for _, p := range r.Parts {
			for what, v := range map[string]float64{"area": float64(p.Area), "mass": float64(p.Mass), "box": p.BoxX.MM(), "label": p.LabelAt.X} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s: %s of %s is %g", name, what, p.ID, v)
				}
			}
		}
		for _, s := range r.Seams {
			if v := float64(s.Visible); math.IsNaN(v) || v < 0 {
				t.Errorf("%s: seam %s shows %g mm", name, s.ID, v)
			}
		}
	}
}
