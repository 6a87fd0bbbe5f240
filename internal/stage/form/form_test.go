package form

import (
	"math"
	"testing"

	"pourwright/internal/published"
	"pourwright/internal/units"
)

// TestPanels is worked by hand for a piece of 1220 x 410 x 430 mm in 18.2 mm board.
func TestPanels(t *testing.T) {
	for _, c := range []struct {
		corner, order string
		long, short   units.Length
	}{
		{"butt", "long", 1256.4, 410},
		{"butt", "short", 1220, 446.4},
		{"mitre", "", 1256.4, 446.4},
	} {
		r, found := Compute(Input{Length: 1220, Width: 410, Height: 430, Thickness: 18.2, Corner: c.corner, ButtOrder: c.order, SheetX: 2440, SheetY: 1220, Density: 650})
		if len(found) != 0 {
			t.Errorf("%s %s: %v", c.corner, c.order, found)
		}
		want := []Panel{{Name: "base", Length: 1220, Width: 410, Count: 1}, {Name: "long side", Length: c.long, Width: 448.2, Count: 2}, {Name: "short side", Length: c.short, Width: 448.2, Count: 2}}
		for i, w := range want {
			p := r.Panels[i]
			if p.Name != w.Name || p.Count != w.Count || math.Abs(float64(p.Length-w.Length)) > 1e-9 || math.Abs(float64(p.Width-w.Width)) > 1e-9 || p.Thickness != 18.2 {
				t.Errorf("%s %s: got %+v, want %+v", c.corner, c.order, p, w)
			}
		}
	}
}

func TestBadForms(t *testing.T) {
	for code, in := range map[string]Input{
		"form/no-panels": {},
		"form/no-sheet":  {Length: 3000, Width: 410, Height: 430, Thickness: 18, SheetX: 2440, SheetY: 1220},
		"form/thick":     {Length: 300, Width: 60, Height: 60, Thickness: 18},
	} {
		_, found := Compute(in)
		if len(found) == 0 || found[0].Code != code {
			t.Errorf("want %s, got %v", code, found)
		}
	}
}

func TestPublishedSheetMass(t *testing.T) {
	r, _ := Compute(Input{Length: 2440, Width: 1220, Height: 1, Thickness: 18, Density: 650})
	published.Run(t, published.Check{Room: "form", Name: "mass of a 2440 x 1220 x 18 mm board at 650 kg/m3", Ours: float64(r.Panels[0].Mass), Theirs: 34.8, Unit: "kg", Tol: 0.05, Source: "analytic", Place: "volume x density"})
}
