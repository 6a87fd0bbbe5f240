package plan_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/plan"
	"pourwright/internal/read"
	"pourwright/internal/view"
)

// estuary computes the foam of the bench with lines added to its document.
func estuary(t *testing.T, more string) *plan.Plan {
	t.Helper()
	fs := fstest.MapFS{}
	for _, name := range []string{"piece.yaml", "estuary.svg"} {
		data, err := os.ReadFile(filepath.Join("..", "..", "examples", "estuary-bench", name))
		if err != nil {
			t.Fatal(err)
		}
		if name == "piece.yaml" {
			data = append(data, "\n"+more+"\n"...)
		}
		fs[name] = &fstest.MapFile{Data: data}
	}
	shelf, err := material.Default()
	if err != nil {
		t.Fatal(err)
	}
	piece, err := read.Open(fs, "piece.yaml", shelf)
	if err != nil {
		t.Fatal(err)
	}
	return plan.ComputeFoam(piece.Input)
}

// segment returns the distance from p to the segment ab.
func segment(p, a, b geom.Point) float64 {
	v := b.Sub(a)
	k := math.Max(0, math.Min(1, p.Sub(a).Dot(v)/v.Dot(v)))
	return a.Add(v.Mul(k)).Sub(p).Norm()
}

// TestEstuarySeams: on beds of several sizes no piece exceeds the bed, and the seams
// keep out of necks and off the island and from those of the layers next to them.
func TestEstuarySeams(t *testing.T) {
	for _, c := range []struct {
		more       string
		bedX, bedY float64
		seams      int
	}{
		{"knockout: {bed: {x: 750, y: 450}}", 750, 450, 3},
		{"knockout: {bed: {x: 750, y: 400}, seam: keyed}", 750, 400, 3},
		{"knockout: {bed: {x: 400, y: 750}, seam: stepped}", 400, 750, 3},
		{"knockout: {bed: {x: 700 mm, y: 700 mm}, turns: 90}", 700, 700, 3},
		{"", 600, 400, 4},
	} {
		p := estuary(t, c.more)
		k := p.Knockout
		if len(k.Seams) != c.seams {
			t.Errorf("%q: %d seams, want %d", c.more, len(k.Seams), c.seams)
		}
		for _, x := range k.Parts {
			w, h := x.BoxX.MM(), x.BoxY.MM()
			if math.Max(w, h) > math.Max(c.bedX, c.bedY) || math.Min(w, h) > math.Min(c.bedX, c.bedY) {
				t.Errorf("%q: %s is %.0f x %.0f mm", c.more, x.ID, w, h)
			}
		}
		flip := view.Flip{Length: p.Piece.Length.MM()}
		for _, s := range k.Seams {
			a, b := s.Line[0], s.Line[1]
			shape := flip.ToForm(p.Relief.Layers[s.Layer-1].Region).Shape()
			for _, n := range shape.NarrowPlaces(60) {
				if d := segment(n.At, a, b); n.Joins > 1 && d < 30 {
					t.Errorf("%q: seam %s is %.0f mm from a neck", c.more, s.ID, d)
				}
			}
			for _, hole := range shape[0].Holes {
				for _, q := range hole {
					if d := segment(q, a, b); d < 25 {
						t.Errorf("%q: seam %s is %.0f mm from the island", c.more, s.ID, d)
						break
					}
				}
			}
			for _, g := range s.Staggers {
				if g.Distance < 75 {
					t.Errorf("%q: seam %s is %.0f mm from one of layer %d", c.more, s.ID, g.Distance, g.Layer)
				}
			}
			if !strings.Contains(s.Why, "mm") {
				t.Errorf("%q: seam %s says %q", c.more, s.ID, s.Why)
			}
		}
	}
}

// TestEstuaryTemplates: without a router only the sheet limits the pieces, and a sheet
// that holds the bench needs no seam.
func TestEstuaryTemplates(t *testing.T) {
	p := estuary(t, "knockout: {route: templates}")
	if k := p.Knockout; k.Limits.By != "sheet" || k.Limits.Route != "templates" || len(k.Seams) == 0 {
		t.Errorf("limits %+v, %d seams", k.Limits, len(k.Seams))
	}
	p = estuary(t, "knockout: {route: templates, turns: none}\nmaterials: {foams: {EPS 25: {like: EPS 25, length: 2500 mm, width: 1250 mm}}}")
	if k := p.Knockout; len(k.Seams) != 0 || len(k.Parts) != 3 || k.Buy != 1 {
		t.Errorf("%d seams, %d parts, %d sheets", len(k.Seams), len(k.Parts), k.Buy)
	}
}
