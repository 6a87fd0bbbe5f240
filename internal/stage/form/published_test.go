package form

import (
	"testing"

	"pourwright/internal/published"
	"pourwright/internal/units"
)

func TestPublishedSheetMass(t *testing.T) {
	r, _ := Compute(Input{Length: 2440, Width: 1220, Height: 1, Thickness: 18, Density: 650})
	published.Run(t, published.Check{Room: "form", Name: "mass of a 2440 x 1220 x 18 mm board at 650 kg/m3", Ours: float64(r.Panels[0].Mass), Theirs: 34.8, Unit: "kg", Tol: 0.05, Source: "analytic", Place: "volume x density"})
}

// TestPublishedPanels is worked by hand for a piece of 1220 x 410 x 430 mm in board
// of 18.2 mm: 1.2564 x 0.4482 m, 0.410 x 0.4482 m twice each, base 1.22 x 0.41 m.
func TestPublishedPanels(t *testing.T) {
	r, _ := Compute(Input{Length: 1220, Width: 410, Height: 430, Thickness: 18.2, Corner: "butt", ButtOrder: "long", Density: 650, SheetX: 2800, SheetY: 2070})
	published.Run(t,
		published.Check{Room: "form", Name: "mass of one long side", Ours: float64(r.Panels[1].Mass), Theirs: 6.662, Unit: "kg", Tol: 0.0005, Source: "analytic", Place: "1.2564 x 0.4482 x 0.0182 x 650"},
		published.Check{Room: "form", Name: "mass of all panels", Ours: float64(r.Mass), Theirs: 23.589, Unit: "kg", Tol: 0.001, Source: "analytic", Place: "(0.5002 + 2 x 0.563118 + 2 x 0.183762) x 11.83"},
	)
}

func TestPublishedScrews(t *testing.T) {
	const lb, in = 4.4482216152605, 25.4
	n := func(name string, ours, theirs, tol float64, src string) published.Check {
		return published.Check{Room: "form", Name: name, Ours: ours, Theirs: theirs, Unit: "lb/in", Tol: tol, Source: src, Place: "withdrawal from side grain, one inch of thread"}
	}
	published.Run(t,
		n("screw No. 10, G .45", Withdrawal(.45, .190*in, in)/lb, 109, 1, "nds"),
		n("screw No. 8, G .50", Withdrawal(.5, .164*in, in)/lb, 116.9, .05, "nds"),
		n("screw No. 8, G .70, ultimate", UltimateWithdrawal(.7, .164*in, in)/lb, 1262, .5, "wood-handbook"),
	)
}

func TestPublishedBeads(t *testing.T) {
	for _, c := range []struct{ r, metres float64 }{{5, 55.9}, {6.35, 34.7}, {10, 14.0}} {
		published.Run(t, published.Check{Room: "form", Name: "bead of a 300 ml cartridge", Ours: .3 / float64(Bead(1000, units.Length(c.r))), Theirs: c.metres, Unit: "m", Tol: .05,
			Source: "analytic", Place: "concave fillet, .2146 r^2"})
	}
}
