package drawing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/view"
)

// cutTray is the tray with its foam cut, doweled and laid on sheets by the stage.
func cutTray(edit func(*knockout.Input)) *plan.Plan {
	p := tray()
	in := knockout.Input{Length: length, Width: width, Foam: 25, SheetX: 500, SheetY: 400, Density: 20}
	for _, l := range p.Relief.Layers {
		in.Layers = append(in.Layers, knockout.Layer{Number: l.Number, Name: l.Name, Depth: 25, Region: l.Region})
	}
	edit(&in)
	p.Knockout, _ = knockout.Compute(in)
	return p
}

func router(in *knockout.Input) {
	in.Machine = knockout.Machine{Router: true, BedX: 300, BedY: 320, Cutter: 6, Flute: 30}
}

func TestGlueMapShowsOrderAndChecks(t *testing.T) {
	p := cutTray(router)
	d := named(t, All(p), "glue-1")
	m := p.Knockout.Maps[0]
	if d.View != "form" || len(m.Order) < 2 {
		t.Fatalf("view %q, order %v", d.View, m.Order)
	}
	for i, id := range m.Order {
		textAt(t, d, string(rune('1'+i))+": "+id)
	}
	for _, c := range m.Checks {
		if !slices.Contains(dimensions(d), Measure(c.Length, "mm")) {
			t.Errorf("check %s of %g mm is not drawn among %v", c.Name, c.Length, dimensions(d))
		}
		if got := c.To.Sub(c.From).Norm(); math.Abs(got-float64(c.Length)) > 0.06 {
			t.Errorf("check %s says %g mm between places %g apart", c.Name, c.Length, got)
		}
	}
}

// TestSheetDrawings: every part lies on a drawing of a sheet in its place, labelled,
// and an arrow leads to the near side as the part is turned.
func TestSheetDrawings(t *testing.T) {
	for name, edit := range map[string]func(*knockout.Input){"blanks": router, "whole": func(in *knockout.Input) { in.SheetX, in.SheetY = 900, 700 }} {
		p := cutTray(edit)
		ds := All(p)
		var texts []string
		for _, d := range ds {
			if !strings.HasPrefix(d.Title, "Foam, ") {
				continue
			}
			if d.View != (view.Form{}).Name() || d.Room != "knockout" {
				t.Errorf("%s: %s has view %q and room %q", name, d.Name, d.View, d.Room)
			}
			for _, it := range d.Items {
				if it.Text != nil {
					texts = append(texts, it.Text.Text)
				}
			}
		}
		for _, x := range p.Knockout.Parts {
			if !slices.Contains(texts, x.ID) {
				t.Errorf("%s: part %s stands on no sheet", name, x.ID)
			}
		}
		area := 0.0
		for _, d := range ds {
			if strings.HasPrefix(d.Title, "Foam, ") {
				for _, r := range areas(d, Foam) {
					area += r.Area()
				}
			}
		}
		want := 0.0
		for _, x := range p.Knockout.Parts {
			want += x.Region.Area()
		}
		if math.Abs(area-want) > 1 {
			t.Errorf("%s: %.1f mm2 drawn, the parts have %.1f", name, area, want)
		}
	}
}

func TestArrowTurnsWithThePart(t *testing.T) {
	for _, c := range []struct {
		turn float64
		want geom.Point
	}{{0, geom.Point{Y: -1}}, {90, geom.Point{X: 1}}, {180, geom.Point{Y: 1}}, {-90, geom.Point{X: -1}}} {
		if got := turnedBy(nearSide, c.turn); got.Sub(c.want).Norm() > 1e-12 {
			t.Errorf("turned by %g: %v", c.turn, got)
		}
	}
}

func TestFileWords(t *testing.T) {
	for text, want := range map[string]string{"sheet 1": "sheet-1", "Ecke / links": "ecke-links", "../../etc": "etc", "ü": "", "rest of sheet 2": "rest-of-sheet-2"} {
		if got := fileWord(text); got != want {
			t.Errorf("%q becomes %q", text, got)
		}
	}
}

func TestLayerNamesSeams(t *testing.T) {
	p := cutTray(router)
	for _, s := range p.Knockout.Seams {
		d := named(t, All(p), "layer-"+string(rune('0'+s.Layer)))
		textAt(t, d, s.ID)
	}
	if len(p.Knockout.Seams) == 0 {
		t.Error("no seams")
	}
}
