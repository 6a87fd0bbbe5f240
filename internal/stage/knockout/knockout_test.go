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
	"pourwright/internal/view"
)

func TestParts(t *testing.T) {
	tri := view.Of[view.Finished](geom.Build([]geom.Ring{{{X: 100, Y: 50}, {X: 900, Y: 50}, {X: 100, Y: 350}}}, geom.NonZero))
	low := view.Of[view.Finished](geom.Region(slices.Concat(geom.Rect(120, 60, 200, 100).Region(), geom.Rect(220, 60, 400, 100).Region())))
	r, found := Compute(Input{Length: 1000, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 30,
		Layers: []Layer{{1, "a", 25, tri}, {2, "b", 30, low}}})
	if len(r.Parts) != 3 || !slices.Equal(r.Glue, []string{"L1-A", "L2-A", "L2-B"}) {
		t.Fatalf("parts %+v, glue %v", r.Parts, r.Glue)
	}
	// The right angle lies at x 100 on the finished piece, so at x 900 in the form.
	box := r.Parts[0].Region.Shape().Box()
	if box.Min.X != 100 || box.Max.X != 900 || !r.Parts[0].Region.Shape().Contains(geom.Point{X: 890, Y: 300}) || r.Parts[0].Region.Shape().Contains(geom.Point{X: 110, Y: 300}) {
		t.Errorf("part is not mirrored: %v", r.Parts[0].Region.Shape())
	}
	for _, p := range r.Parts {
		if !p.Region.Shape().Contains(geom.Point(p.LabelAt)) {
			t.Errorf("label of %s lies outside it", p.ID)
		}
	}
	if !slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Code == "knockout/thickness" }) {
		t.Errorf("30 mm of 25 mm foam passed: %v", found)
	}
	if math.Abs(float64(r.Volume)-(120000*25+(80+180)*40*30)*1e-6) > 1e-9 {
		t.Errorf("volume %v", r.Volume)
	}
}

func TestNothing(t *testing.T) {
	if r, found := Compute(Input{}); len(r.Parts) != 0 || len(found) != 0 || r.Glue == nil {
		t.Errorf("parts from nothing: %+v %v", r, found)
	}
}

func layerOf(number int, depth units.Length, r geom.Region) Layer {
	return Layer{Number: number, Name: "step", Depth: depth, Region: view.Of[view.Finished](r)}
}

// TestIDsKeepTheirPlace: small changes of an outline do not rename its parts.
func TestIDsKeepTheirPlace(t *testing.T) {
	for _, shift := range []float64{0, 0.2, -0.3} {
		pools := geom.Union(geom.Rect(100, 200, 200, 300).Region(), geom.Rect(100+shift, 50, 200+shift, 150).Region(), geom.Rect(500, 50+shift, 600, 150).Region())
		r, _ := Compute(Input{Length: 1000, Width: 400, Foam: 25, Density: 20, Layers: []Layer{layerOf(1, 25, pools)}})
		var got []string
		for _, p := range r.Parts {
			c := p.Region.Shape().Box().Center()
			got = append(got, fmt.Sprintf("%s %.0f %.0f", p.ID, c.X, c.Y))
		}
		if want := []string{"L1-A 450 100", "L1-B 850 100", "L1-C 850 250"}; !slices.Equal(got, want) {
			t.Errorf("shift %g: %v, want %v", shift, got, want)
		}
	}
}

func TestSheets(t *testing.T) {
	for _, c := range []struct {
		name        string
		depth, foam units.Length
		sheets      int
		found       string // in text or remedy
	}{
		{"one", 24.6, 24.6, 1, ""},
		{"two", 49.2, 24.6, 2, ""},
		{"within sanding", 49.4, 24.6, 2, ""},
		{"nominal taken for measured", 50, 24.6, 3, "miss it by -0.8 mm"},
		{"half a sheet", 12, 25, 1, "thin 1 x 25.0 mm down to 12.0 mm"},
		{"unit slip", 25, 0.025, 100, "unit"},
		{"no foam", 25, 0, 1, ""},
	} {
		n, found := sheetsFor(Layer{Number: 1, Depth: c.depth}, c.foam)
		said := ""
		for _, f := range found {
			said += f.Text + f.Remedy
		}
		if n != c.sheets || (c.found == "") != (len(found) == 0) || !strings.Contains(said, c.found) {
			t.Errorf("%s: %d sheets, %q", c.name, n, said)
		}
	}
}

// TestLaws: turning over keeps every area; parts add up to their layers; labels lie
// inside; every part is glued once, no part under one it carries.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Input{Length: 1000, Width: 400, Foam: 25, SheetX: 1000, SheetY: 500, Density: 20}
		want := 0.0
		for i := range rapid.IntRange(1, 3).Draw(t, "layers") {
			var rings []geom.Ring
			for range rapid.IntRange(1, 4).Draw(t, "outlines") {
				ring := make(geom.Ring, rapid.IntRange(3, 9).Draw(t, "corners"))
				for k := range ring {
					ring[k] = geom.Point{X: rapid.Float64Range(0, 1000).Draw(t, "x"), Y: rapid.Float64Range(0, 400).Draw(t, "y")}
				}
				rings = append(rings, ring)
			}
			r := geom.Build(rings, geom.EvenOdd)
			want += r.Area() * 25
			in.Layers = append(in.Layers, layerOf(i+1, 25, r))
		}
		r, _ := Compute(in)
		if math.Abs(r.Volume.MM3()-want) > 1e-3+1e-9*want {
			t.Fatalf("parts hold %g mm3, layers %g", r.Volume.MM3(), want)
		}
		last := 0
		for _, id := range r.Glue {
			k := slices.IndexFunc(r.Parts, func(p Part) bool { return p.ID == id })
			if r.Parts[k].Layer < last {
				t.Fatalf("glue order %v", r.Glue)
			}
			last = r.Parts[k].Layer
		}
		for _, p := range r.Parts {
			n := 0
			for _, id := range r.Glue {
				if id == p.ID {
					n++
				}
			}
			if n != 1 {
				t.Fatalf("%s is glued %d times", p.ID, n)
			}
			if !p.Region.Shape().Contains(geom.Point(p.LabelAt)) {
				t.Fatalf("label of %s lies outside: %+v", p.ID, p)
			}
		}
	})
}
