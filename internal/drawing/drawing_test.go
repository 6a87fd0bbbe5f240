package drawing

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/form"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/stage/relief"
	"pourwright/internal/view"
)

// The made-up tray of these tests, mm: a basin that runs off the left end, and a
// deeper place near its left end, so that nothing is symmetric.
const (
	length, width, height, shell = 600.0, 400.0, 100.0, 20.0
	upper, lower                 = 25.0, 55.0
)

func tray() *plan.Plan {
	p := &plan.Plan{Piece: plan.Piece{Name: "tray", Units: "mm", Length: length, Width: width, Height: height, Shell: shell, Board: 18, Corner: "butt"}}
	wide := view.Of[view.Finished](geom.Rect(0, 100, 450, 300).Region())
	deep := view.Of[view.Finished](geom.Rect(100, 120, 250, 280).Region())
	p.Relief.Layers = []relief.Layer{
		{Number: 1, Name: "shallow", From: 0, To: upper, Region: wide},
		{Number: 2, Name: "deep", From: upper, To: lower, Region: deep},
	}
	p.Relief.Mouths = []relief.Mouth{{Side: view.Left, Width: 200, Depth: upper, From: 100, Opening: 5000,
		Profile: []geom.Point{{X: 100, Y: -upper}, {X: 300, Y: -upper}, {X: 300}, {X: 100}}}}
	p.Relief.Narrow = []relief.Narrow{{Kind: "land", Layer: 1, X: 150, Y: 110, Width: 4, Limit: 10}}
	flip := view.Flip{Length: length}
	p.Knockout.Parts = []knockout.Part{
		{ID: "L1-A", Layer: 1, Thickness: upper, BoxX: 450, BoxY: 200, Region: flip.ToForm(wide)},
		{ID: "L2-A", Layer: 2, Thickness: lower - upper, BoxX: 150, BoxY: 160, Region: flip.ToForm(deep)},
	}
	p.Form.Panels = []form.Panel{{Name: "base", Length: length, Width: width, Thickness: 18, Count: 1}}
	return p
}

func named(t *testing.T, ds []Drawing, name string) Drawing {
	t.Helper()
	i := slices.IndexFunc(ds, func(d Drawing) bool { return d.Name == name })
	if i < 0 {
		t.Fatalf("no drawing %s", name)
	}
	return ds[i]
}

func textAt(t *testing.T, d Drawing, text string) geom.Point {
	t.Helper()
	for _, it := range d.Items {
		if it.Text != nil && it.Text.Text == text {
			return it.Text.At
		}
	}
	t.Fatalf("%s does not say %q", d.Name, text)
	return geom.Point{}
}

func dimensions(d Drawing) []string {
	var out []string
	for _, it := range d.Items {
		if it.Dim != nil {
			out = append(out, it.Dim.Text)
		}
	}
	return out
}

func areas(d Drawing, style Style) []geom.Region {
	var out []geom.Region
	for _, it := range d.Items {
		if it.Style == style && it.Path != nil && it.Path.Fill {
			out = append(out, geom.Build(it.Path.Rings, geom.EvenOdd))
		}
	}
	return out
}

func TestAllInOrder(t *testing.T) {
	want := []string{"plan-finished", "plan-form", "section", "mouth-left", "layer-1", "layer-2", "panels"}
	ds := All(tray())
	for i, d := range ds {
		if i >= len(want) || d.Name != want[i] {
			t.Errorf("drawing %d is %s, want the order %v", i, d.Name, want)
		}
	}
	if len(ds) != len(want) {
		t.Errorf("%d drawings, want %d", len(ds), len(want))
	}
	a, errA := json.Marshal(ds)
	b, errB := json.Marshal(All(tray()))
	if errA != nil || errB != nil || string(a) != string(b) {
		t.Errorf("the same plan is drawn in two ways: %v, %v", errA, errB)
	}
}

func TestEverythingLiesInTheBox(t *testing.T) {
	for _, d := range All(tray()) {
		inside := func(p geom.Point) {
			if p.X < d.Box.Min.X || p.X > d.Box.Max.X || p.Y < d.Box.Min.Y || p.Y > d.Box.Max.Y {
				t.Errorf("%s: %v lies outside %v", d.Name, p, d.Box)
			}
		}
		for _, it := range d.Items {
			switch {
			case it.Path != nil:
				for _, r := range it.Path.Rings {
					for _, p := range r {
						inside(p)
					}
				}
			case it.Text != nil:
				inside(it.Text.At)
			case it.Spot != nil:
				inside(it.Spot.At)
			case it.Dim != nil:
				for _, s := range it.Dim.Lines(Lettering * d.Scale).Segments {
					inside(s[0])
					inside(s[1])
				}
			}
		}
		if _, ok := d.Fitting(PaperWidth, PaperHeight); !ok {
			t.Errorf("%s, %g x %g mm, fits no paper", d.Name, d.Box.Width(), d.Box.Height())
		}
	}
}

// TestSidesKeepTheirNames: turned over, the left end lies to the right and the far
// side stays up.
func TestSidesKeepTheirNames(t *testing.T) {
	for _, c := range []struct {
		name   string
		turned bool
	}{{"plan-finished", false}, {"plan-form", true}} {
		d := named(t, All(tray()), c.name)
		left, right := textAt(t, d, "left end").X, textAt(t, d, "right end").X
		if c.turned {
			left, right = right, left
		}
		if left >= 0 || right <= length {
			t.Errorf("%s: the ends are named at x %g and %g", c.name, left, right)
		}
		if far, near := textAt(t, d, "far side").Y, textAt(t, d, "near side").Y; far <= width || near >= 0 {
			t.Errorf("%s: far side at y %g, near side at %g", c.name, far, near)
		}
		if all := dimensions(d); !slices.Contains(all, "600") || !slices.Contains(all, "400") || !slices.Contains(all, "mouth 200") {
			t.Errorf("%s measures %v", c.name, all)
		}
	}
}

func TestPlansAreMirrored(t *testing.T) {
	ds := All(tray())
	seen, formed := named(t, ds, "plan-finished"), named(t, ds, "plan-form")
	resin, foam := areas(seen, Resin), areas(formed, Foam)
	if len(resin) != 2 || len(foam) != 2 {
		t.Fatalf("%d resin and %d foam areas, want 2 and 2", len(resin), len(foam))
	}
	if got, want := resin[1].Box(), geom.Rect(100, 120, 250, 280); got != want {
		t.Errorf("deep layer in finished view: %v, want %v", got, want)
	}
	if got, want := foam[1].Box(), geom.Rect(length-250, 120, length-100, 280); got != want {
		t.Errorf("deep layer in form view: %v, want %v", got, want)
	}
	for d, x := range map[*Drawing]float64{&seen: 150, &formed: length - 150} {
		i := slices.IndexFunc(d.Items, func(it Item) bool { return it.Spot != nil })
		if i < 0 || math.Abs(d.Items[i].Spot.At.X-x) > 1e-9 || d.Items[i].Style != Caution {
			t.Errorf("%s: the narrow land is not circled at x %g", d.Name, x)
		}
	}
}

// TestSectionOfABox compares the cut concrete of a plain rectangular basin with its
// area worked out by hand: what the box holds, less resin and the hollow. The shell
// rounds each of the two upper edges of the foam by a quarter circle of radius t.
func TestSectionOfABox(t *testing.T) {
	const x0, x1, depth = 150.0, 450.0, 40.0
	p := tray()
	p.Relief.Mouths = nil
	p.Relief.Layers = []relief.Layer{{Number: 1, Name: "basin", To: depth, Region: view.Of[view.Finished](geom.Rect(x0, 100, x1, 300).Region())}}
	raised := (x1-x0)*depth + 2*(shell*(depth-shell)+math.Pi/4*shell*shell)
	hollow := (length-2*shell)*(height-shell) - raised
	want := length*height - (x1-x0)*depth - hollow
	got := 0.0
	d := named(t, All(p), "section")
	for _, r := range areas(d, Concrete) {
		got += r.Area()
	}
	if math.Abs(got-want) > 1e-3*want {
		t.Errorf("cut concrete is %.1f mm2, want %.1f", got, want)
	}
	if r := areas(d, Resin); len(r) != 1 || math.Abs(r[0].Area()-(x1-x0)*depth) > 0.1 {
		t.Errorf("resin in the section: %v", r)
	}
	textAt(t, d, "floor 1: 40")
	textAt(t, d, "shell 20")
}

func TestMeasuresInTheMakersUnit(t *testing.T) {
	p := tray()
	p.Piece.Units, p.Piece.Length = "in", 609.6
	d := named(t, All(p), "plan-finished")
	if all := dimensions(d); !slices.Contains(all, "24") || !slices.Contains(all, "15 3/4") {
		t.Errorf("measures %v, want 24 and 15 3/4", all)
	}
	last := d.Items[len(d.Items)-1].Text
	if last == nil || !strings.Contains(last.Text, "inches") {
		t.Errorf("the drawing does not say that it is in inches: %v", last)
	}
}

func TestPoorPlansAreDrawnAsFarAsTheyGo(t *testing.T) {
	if ds := All(&plan.Plan{}); ds == nil || len(ds) != 0 {
		t.Errorf("an empty plan gives %v", ds)
	}
	for name, spoil := range map[string]func(*plan.Plan){
		"no region":     func(p *plan.Plan) { p.Relief.Layers[1].Region = view.Region[view.Finished]{} },
		"no shell":      func(p *plan.Plan) { p.Piece.Shell = 0 },
		"solid":         func(p *plan.Plan) { p.Piece.Shell = 1000 },
		"no parts":      func(p *plan.Plan) { p.Knockout.Parts = nil },
		"no panels":     func(p *plan.Plan) { p.Form.Panels = nil },
		"floor too low": func(p *plan.Plan) { p.Relief.Layers[1].To = 500 },
	} {
		p := tray()
		spoil(p)
		for _, d := range All(p) {
			if w := d.Box.Width() * d.Box.Height(); !(w > 0) || math.IsInf(w, 0) {
				t.Errorf("%s: %s has the box %v", name, d.Name, d.Box)
			}
		}
	}
}
