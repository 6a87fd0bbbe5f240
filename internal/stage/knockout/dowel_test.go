package knockout

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// TestDowelLaws: every hole is common to two parts of neighbouring layers, inside both
// by the margin, apart from others, and no part goes on in another way without a note.
func TestDowelLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := wild(t)
		in.Making.Seam = straight
		r, found := Compute(in)
		inset := (12 + 4) - 0.2
		for _, p := range r.Parts {
			shape := p.Outline.Shape()
			for i, d := range p.Dowels {
				at := geom.Point{X: d.X.MM(), Y: d.Y.MM()}
				if -shape.Distance(at) < inset {
					t.Fatalf("hole of %s at %v lies %.1f mm from its edge", p.ID, at, -shape.Distance(at))
				}
				for _, o := range p.Dowels[i+1:] {
					if n := math.Hypot(float64(o.X-d.X), float64(o.Y-d.Y)); n < 24-1e-9 {
						t.Fatalf("holes of %s are %.1f mm apart", p.ID, n)
					}
				}
				if !hasHole(r, d.With, d) {
					t.Fatalf("%s has no hole at %v for that of %s", d.With, at, p.ID)
				}
			}
			holdOneWay(t, p, codes(found)["knockout/dowels"] > 0)
		}
	})
}

func hasHole(r Result, id string, d Dowel) bool {
	return slices.ContainsFunc(r.Parts, func(p Part) bool {
		return p.ID == id && slices.ContainsFunc(p.Dowels, func(o Dowel) bool { return o.X == d.X && o.Y == d.Y && o.Diameter == d.Diameter })
	})
}

// holdOneWay tries every turn in steps of a tenth of a degree and both sides up about
// the first hole, 2 degrees of play left out: none lays the part's lower pegs on its holes, but the right way.
func holdOneWay(t *rapid.T, p Part, said bool) {
	var down, all []geom.Point
	for _, g := range p.pegs {
		all = append(all, g.at)
		if p.Layer == g.layer+1 {
			down = append(down, g.at)
		}
	}
	if len(down) < 3 || said {
		return
	}
	for _, onto := range all {
		for k := range 3600 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 1800)
			for _, side := range []float64{1, -1} {
				met := 0
				for _, q := range down {
					d := q.Sub(down[0])
					d.Y *= side
					at := onto.Add(geom.Point{X: d.X*cos - d.Y*sin, Y: d.X*sin + d.Y*cos})
					if slices.ContainsFunc(all, func(o geom.Point) bool { return o.Sub(at).Norm() < 0.7 }) {
						met++
					}
				}
				if right := side == 1 && (k < 20 || k > 3580) && onto == down[0]; met == len(down) && !right {
					t.Fatalf("%s also goes on turned by %.1f degrees, side %g", p.ID, float64(k)/10, side)
				}
			}
		}
	}
}

// TestTurnable knows patterns that fit again and one that does not.
func TestTurnable(t *testing.T) {
	for _, c := range []struct {
		name string
		ps   []geom.Point
		want bool
	}{
		{"two turn half round", []geom.Point{{}, {X: 100}}, true},
		{"equal sides turn over", []geom.Point{{}, {X: 100}, {X: 50, Y: 80}}, true},
		{"a rectangle turns", []geom.Point{{}, {X: 100}, {X: 100, Y: 40}, {Y: 40}}, true},
		{"in a row, uneven", []geom.Point{{}, {X: 100}, {X: 30}}, true}, // turned over about the row
		{"uneven", []geom.Point{{}, {X: 100}, {X: 30, Y: 60}}, false},
	} {
		if got := turnable(c.ps, c.ps, 2); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestKeysCanBeCut: pieces with keys and sockets leave nothing for a cutter of the
// key's radius, inside and out, and the socket is larger by the clearance.
func TestKeysCanBeCut(t *testing.T) {
	for _, kind := range []string{keyed, stepped} {
		for _, cutter := range []units.Length{3, 6, 12} {
			in := Input{Length: 1200, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 20, Layers: []Layer{layerOf(1, 25, geom.Rect(50, 50, 1150, 350).Region())},
				Machine: Machine{Router: true, BedX: 700, BedY: 500, Cutter: cutter, Flute: 30}, Making: Making{Seam: kind, Clearance: 0.2}}
			r, _ := Compute(in)
			if len(r.Seams) != 1 || r.Seams[0].Kind != kind || r.Seams[0].Keys == 0 {
				t.Fatalf("%s, cutter %g: seams %+v", kind, cutter, r.Seams)
			}
			for _, p := range r.Parts {
				if len(p.Left) > 0 {
					t.Errorf("%s, cutter %g: it leaves %+v of %s", kind, cutter, p.Left, p.ID)
				}
			}
			a, b := geom.NewLocator(r.Parts[0].Outline.Shape()), r.Parts[1].Outline.Shape()
			least, most := math.Inf(1), 0.0
			for _, q := range r.Seams[0].Curve[3 : len(r.Seams[0].Curve)-3] {
				da, db := math.Abs(a.Distance(q)), math.Abs(b.Distance(q))
				least, most = math.Min(least, math.Max(da, db)), math.Max(most, math.Max(da, db))
			}
			if most > 0.2+0.02 || most < 0.2-0.02 {
				t.Errorf("%s: clearance from %.3f to %.3f mm, want 0.2", kind, least, most)
			}
		}
	}
}

// TestHollow: with hollows the foam of lower layers is lighter, the glue land stays,
// and the displaced volume is the same.
func TestHollow(t *testing.T) {
	in := Input{Length: 1000, Width: 600, Foam: 25, SheetX: 1250, SheetY: 700, Density: 20, Layers: []Layer{
		layerOf(1, 25, geom.Rect(50, 50, 950, 550).Region()), layerOf(2, 25, geom.Rect(150, 120, 850, 480).Region())}}
	plain, _ := Compute(in)
	in.Making.Hollow = true
	r, _ := Compute(in)
	hollow := float64(plain.Parts[0].Area - r.Parts[0].Area)
	if want := (700 - 80) * (360 - 80.0); math.Abs(hollow-want) > 0.02*want {
		t.Errorf("hollow of %.0f mm2, want about %.0f", hollow, want)
	}
	if r.Volume != plain.Volume || r.Mass >= plain.Mass {
		t.Errorf("volume %v and %v, mass %v and %v", r.Volume, plain.Volume, r.Mass, plain.Mass)
	}
	lower, upper := r.Parts[0].Outline.Shape(), r.Parts[1].Outline.Shape()
	if open := geom.Subtract(geom.Subtract(upper, geom.Offset(upper, -39.5, 0.1)), lower).Area(); open > 1 {
		t.Errorf("%.0f mm2 of the glue land of 40 mm are cut away", open)
	}
	if len(r.Parts[0].Dowels) < 2 {
		t.Errorf("%d dowels beside the hollow", len(r.Parts[0].Dowels))
	}
}
