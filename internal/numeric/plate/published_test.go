package plate

import (
	"fmt"
	"testing"

	"pourwright/internal/published"
)

// unit bends a plate of a = 1 by b = ratio, D = 1, nu = 0.3; the load grows along a
// where wet.
func unit(t *testing.T, ratio float64, s Support, wet bool) Bent {
	t.Helper()
	p := Plate{A: 1, B: ratio, Rigidity: 1, Poisson: 0.3, Left: s, Right: s, Bottom: s, Top: s, Q0: 1, Terms: 26}
	if wet {
		p.Q0, p.QX = 0, 1
	}
	b, ok := Bend(p)
	if !ok {
		t.Fatal("cannot bend")
	}
	return b
}

func check(name string, ours, theirs, tol float64) published.Check {
	return published.Check{Room: "form", Name: name, Ours: ours, Theirs: theirs, Unit: "1", Tol: tol, Source: "plate-series", Place: "coefficient of q a^4/D or q a^2, nu 0.3"}
}

func TestPublishedSimplePlates(t *testing.T) {
	ratio := []float64{1, 1.2, 1.5, 2, 3, 5}
	alpha := []float64{.004062, .005651, .007724, .010129, .012233, .012971}
	bx := []float64{.04789, .06268, .08116, .10168, .11886, .12462}
	by := []float64{.04789, .05008, .04984, .04635, .04063, .03775}
	for i, r := range ratio {
		b := unit(t, r, Simple, false)
		n := fmt.Sprintf("simple edges, even load, b/a %g: ", r)
		published.Run(t, check(n+"deflection", b.Deflection(.5, r/2), alpha[i], 0.6e-6),
			check(n+"moment across", b.MomentX(.5, r/2), bx[i], 0.6e-5), check(n+"moment along", b.MomentY(.5, r/2), by[i], 0.6e-5))
	}
}

func TestPublishedSimplePlatesUnderWater(t *testing.T) {
	ratio := []float64{1, 1.2, 1.5, 2, 3}
	alpha := []float64{.002031, .002825, .003862, .005064, .006116}
	at := []float64{.66, .64, .61, .59, .58}
	bx := []float64{.02699, .03409, .04296, .05286, .06117}
	for i, r := range ratio {
		b := unit(t, r, Simple, true)
		best := b.MomentX(at[i], r/2)
		n := fmt.Sprintf("simple edges, water load, b/a %g: ", r)
		published.Run(t, check(n+"deflection", b.Deflection(.5, r/2), alpha[i], 0.6e-6), check(n+"largest moment", best, bx[i], 0.6e-5))
	}
}

func TestPublishedClampedPlates(t *testing.T) {
	ratio := []float64{1, 1.2, 1.5, 2, 3}
	alpha := []float64{.001265, .001725, .002197, .002533, .002617}
	bx := []float64{.02291, .02997, .03677, .04116, .04190}
	wet := []float64{.000633, .000862, .001098, .001267, .001309}
	for i, r := range ratio {
		b, w := unit(t, r, Clamped, false), unit(t, r, Clamped, true)
		n := fmt.Sprintf("clamped edges, b/a %g: ", r)
		published.Run(t, check(n+"deflection, even load", b.Deflection(.5, r/2), alpha[i], 0.6e-6),
			check(n+"moment across", b.MomentX(.5, r/2), bx[i], 0.6e-5),
			check(n+"deflection, water load", w.Deflection(.5, r/2), wet[i], 0.6e-6))
	}
}

// TestPublishedClampedEdges holds the moments of clamped edges to four printed digits.
func TestPublishedClampedEdges(t *testing.T) {
	for _, c := range []struct{ ratio, edge float64 }{{1, -.0513}, {1.2, -.0639}, {1.5, -.0757}, {2, -.0829}} {
		b := unit(t, c.ratio, Clamped, false)
		published.Run(t, published.Check{Room: "form", Name: fmt.Sprintf("clamped edges, b/a %g: moment on the long edge", c.ratio), Ours: b.MomentX(0, c.ratio/2),
			Theirs: c.edge, Unit: "1", Tol: 0.5e-4, Source: "memory", Place: "theory of plates, built-in edges, nu 0.3, coefficient of q a^2"})
	}
	published.Run(t, published.Check{Room: "form", Name: "clamped edges under a water load, b/a 1: moment on the deep edge", Ours: unit(t, 1, Clamped, true).MomentX(1, .5),
		Theirs: -.0334, Unit: "1", Tol: 0.5e-4, Source: "memory", Place: "theory of plates, built-in edges, nu 0.3"})
}

// TestPublishedHandbookPlates holds the printed table of a handbook, which itself is up
// to 0.9 % off the exact series.
func TestPublishedHandbookPlates(t *testing.T) {
	ratio := []float64{1, 1.2, 1.4, 1.6, 1.8, 2, 3, 4, 5}
	sigma := []float64{.2874, .3762, .4530, .5172, .5688, .6102, .7134, .7410, .7476}
	alpha := []float64{.0444, .0616, .0770, .0906, .1017, .1110, .1335, .14, .1417}
	for i, r := range ratio {
		b := unit(t, r, Simple, false)
		w, m := b.Deflection(.5, r/2)*12*(1-.09), 6*b.MomentX(.5, r/2)
		place := fmt.Sprintf("table 11.4 case 1a, a/b %g; printed values are up to 0.9 %% off the exact series", r)
		published.Run(t,
			published.Check{Room: "form", Name: fmt.Sprintf("handbook plate %g: deflection of q b^4/E t^3", r), Ours: w, Theirs: alpha[i], Unit: "1", Tol: .009 * alpha[i], Source: "roark", Place: place},
			published.Check{Room: "form", Name: fmt.Sprintf("handbook plate %g: stress of q b^2/t^2", r), Ours: m, Theirs: sigma[i], Unit: "1", Tol: .009 * sigma[i], Source: "roark", Place: place})
	}
}

// TestPublishedWallWithoutRail holds the support that a form's wall has without a
// rail: three edges simple, the top free.
func TestPublishedWallWithoutRail(t *testing.T) {
	for _, c := range []struct{ ratio, alpha, tol float64 }{{0.5, .00710, 1e-5}, {1, .01286, 1e-5}} {
		b, ok := Bend(Plate{A: 1, B: c.ratio, Rigidity: 1, Poisson: 0.3, Top: Free, Q0: 1})
		if !ok {
			t.Fatal("cannot bend")
		}
		published.Run(t, published.Check{Room: "form", Name: fmt.Sprintf("three simple edges, one free, b/a %g: deflection of the free edge", c.ratio),
			Ours: b.Deflection(.5, c.ratio), Theirs: c.alpha, Unit: "1", Tol: c.tol, Source: "memory", Place: "theory of plates, three edges simple, one free, nu 0.3"})
	}
}

func TestPublishedBoard(t *testing.T) {
	b, ok := Bend(Plate{A: 400, B: 600, Rigidity: Rigidity(2200, 18, .3), Poisson: .3, Q0: .0031})
	if !ok {
		t.Fatal("cannot bend")
	}
	published.Run(t,
		published.Check{Room: "form", Name: "rigidity of MDF 18 mm", Ours: Rigidity(2200, 18, .3) / 1e6, Theirs: 1.175, Unit: "kN m", Tol: .0005, Source: "analytic", Place: "E t^3/12(1-nu^2)"},
		published.Check{Room: "form", Name: "bow of MDF 18 mm, 400 x 600 mm, 3.1 kPa", Ours: b.Deflection(200, 300), Theirs: .522, Unit: "mm", Tol: .0005, Source: "plate-series", Place: "simple edges"},
		published.Check{Room: "form", Name: "stress in the same", Ours: 6 * b.MomentX(200, 300) / 324, Theirs: .745, Unit: "MPa", Tol: .0005, Source: "plate-series", Place: "simple edges"},
	)
}
