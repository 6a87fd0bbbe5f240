package kinetics

import (
	"fmt"
	"math"
	"testing"

	"pourwright/internal/published"
)

func check(name string, ours, theirs, tol float64, source, place string) published.Check {
	return published.Check{Room: "resin/kinetics", Name: name, Ours: ours, Theirs: theirs, Unit: "1", Tol: tol, Source: source, Place: place}
}

// TestPublishedClosedForm holds the closed form of isothermal cure, and the rate
// integrated by Simpson's rule, against values computed apart from this program.
func TestPublishedClosedForm(t *testing.T) {
	want := map[float64][5]float64{0.05: {1.19786, 1.57289, 4.14217, 5.77054, 7.83914}, 0.2: {0.44733, 0.64854, 2.49092, 3.82503, 5.56866}}
	var cs []published.Check
	for _, r := range []float64{0.05, 0.2} {
		m := Typical(1e-4, 280e3, 52)
		m.R, m.NoSlowing = r, true
		for i, a := range []float64{0.10, 0.15, 0.55, 0.70, 0.80} {
			cs = append(cs,
				check("k2 t, closed form", m.IsothermalTime(a, 25)*m.Speed(25), want[r][i], 1e-4, "kamal-sourour", "m 1, n 2, integrated"),
				check("k2 t, rate integrated", m.FilmTime(a, 25)*m.Speed(25), want[r][i], 1e-4, "kamal-sourour", "m 1, n 2, integrated"))
		}
	}
	published.Run(t, cs...)
}

func TestPublishedGlassTransition(t *testing.T) {
	m := Typical(1e-4, 280e3, 52)
	var cs []published.Check
	for _, x := range [][2]float64{{0.5, -17.29}, {0.577, -10.76}, {0.7, 1.83}, {0.8, 14.69}, {0.9, 30.91}} {
		c := check("Tg, -45/52 C, L .4", m.Tg(x[0]), x[1], 0.005, "dibenedetto", "evaluated apart")
		c.Unit = "C"
		cs = append(cs, c)
	}
	published.Run(t, cs...)
}

func TestPublishedArrhenius(t *testing.T) {
	m := Typical(1e-4, 280e3, 52)
	ratio := func(from, to float64) float64 { return m.Speed(to) / m.Speed(from) }
	published.Run(t, check("rate, 25 to 35 C", ratio(25, 35), 2.05, 0.005, "analytic", "55 kJ/mol"), check("rate, 22 to 25 C", ratio(22, 25), 1.253, 0.0005, "analytic", "55 kJ/mol"),
		check("rate, 25 to 20 C", ratio(25, 20), 0.685, 0.0005, "analytic", "55 kJ/mol"))
}

// TestPublishedRules: half the pot life for every 10 C is an activation energy of 52.9
// kJ/mol, and the isothermal rate is greatest at a = (1 - 2r)/3.
func TestPublishedRules(t *testing.T) {
	m := Typical(1e-4, 280e3, 52)
	m.NoSlowing = true
	low, high := 40e3, 70e3
	for range 60 {
		m.EJMol = (low + high) / 2
		if m.IsothermalTime(0.15, 25) > 2*m.IsothermalTime(0.15, 35) {
			high = m.EJMol
		} else {
			low = m.EJMol
		}
	}
	e := check("activation energy at which pot life halves from 25 to 35 C", m.EJMol/1000, 52.9, 0.05, "analytic", "R ln 2/(1/298.15 - 1/308.15)")
	e.Unit = "kJ/mol"
	cs := []published.Check{e}
	for _, r := range []float64{0.05, 0.2, 0.4} {
		m.R = r
		best := 0.0
		for a := 0.0; a < 1; a += 1e-5 {
			if m.Rate(a, 25) > m.Rate(best, 25) {
				best = a
			}
		}
		cs = append(cs, check(fmt.Sprintf("cure at which the rate is greatest, r %g", r), best, (1-2*r)/3, 1e-5, "kamal-sourour", "m 1, n 2: (1 - 2r)/3"))
	}
	published.Run(t, cs...)
}

// TestGelPoint: the mark of gelling lies within the range of functionalities that casting
// resins have, 1/sqrt((f-1)(g-1)) for f 4 to 6 and g 2. Source: [flory-stockmayer].
func TestGelPoint(t *testing.T) {
	stockmayer := func(f, g float64) float64 { return 1 / math.Sqrt((f-1)*(g-1)) }
	if low, high := stockmayer(6, 2), stockmayer(4, 2); Gel < low || Gel > high {
		t.Errorf("gel at %.2f lies outside %.3f to %.3f", Gel, low, high)
	}
}

// TestRateLaws: never negative, nothing after full cure, faster when warmer.
func TestRateLaws(t *testing.T) {
	m := Typical(3e-5, 280e3, 52)
	for a := -0.1; a <= 1.2; a += 0.05 {
		for c := -20.0; c < 200; c += 7 {
			r := m.Rate(a, c)
			if r < 0 || math.IsNaN(r) || a >= 1 && r != 0 {
				t.Fatalf("rate %g at %.2f, %.0f C", r, a, c)
			}
			if a < 1 && m.Rate(a, c+5) <= r {
				t.Fatalf("no faster at %.0f C than at %.0f C, cure %.2f", c+5, c, a)
			}
		}
	}
	if m.Hard(0.5, -100) || !m.Hard(0.95, 20) || !Bonds(0.7) || Bonds(0.5) || Bonds(0.85) {
		t.Error("the marks of cure are not where they are said to be")
	}
}

// TestPublishedHeatOfReaction: a resin of 188 g to an equivalent with hardeners of so many.
func TestPublishedHeatOfReaction(t *testing.T) {
	for _, row := range []struct{ hardener, theirs float64 }{{60, 403}, {81, 372}, {115, 330}, {42.6, 434}, {20.6, 479}, {24.4, 471}} {
		published.Run(t, published.Check{Room: "resin/kinetics", Name: fmt.Sprintf("heat of reaction, hardener of %g g to an equivalent", row.hardener),
			Ours: HeatOfReaction(188, row.hardener/188) / 1000, Theirs: row.theirs, Unit: "J/g", Tol: 0.5, Source: "epoxy-heat", Place: "about 100 kJ an equivalent; the sources spread by 8 %"})
	}
}
