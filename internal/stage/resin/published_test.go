package resin

import (
	"testing"

	"pourwright/internal/published"
	"pourwright/internal/units"
)

func TestPublishedRatio(t *testing.T) {
	c := &computer{in: basin()}
	byVolume := 100 * c.bPerA()
	check := func(name string, ours, theirs float64, unit string, tol float64, place string) published.Check {
		return published.Check{Room: "resin", Name: name, Ours: ours, Theirs: theirs, Unit: unit, Tol: tol, Source: "analytic", Place: place}
	}
	published.Run(t,
		check("B for 100 A by mass, 2:1 by volume at 1.13 and 0.99", byVolume, 43.8, "kg", 0.05, "100 (1/2)(0.99/1.13)"),
		check("hardener when 2:1 by volume is weighed as 2:1 by mass", 100*(50/byVolume-1), 14, "%", 0.5, "1.13/0.99 - 1"),
		check("hardener when 2:1 by mass is measured by volume", 100*(byVolume/50-1), -12, "%", 0.5, "0.99/1.13 - 1"),
	)
}

func TestPublishedRates(t *testing.T) {
	check := func(name string, from, to units.Temperature, theirs, tol float64) published.Check {
		return published.Check{Room: "resin", Name: name, Ours: RateFactor(to, from), Theirs: theirs, Unit: "1", Tol: tol, Source: "analytic", Place: "Arrhenius, 55 kJ/mol, evaluated independently"}
	}
	published.Run(t,
		check("rate of cure, 25 to 35 C", 25, 35, 2.05, 0.005),
		check("rate of cure, 22 to 25 C", 22, 25, 1.253, 0.0005),
		check("rate of cure, 25 to 20 C", 25, 20, 0.685, 0.0005),
	)
}

func TestPublishedGallons(t *testing.T) {
	in := basin(FillPoint{40, 3.785411784})
	in.Card.Shrinkage.Value, in.Overfill, in.Film, in.Reserve = 0, 0, 0, 0
	r, _ := Compute(in)
	published.Run(t,
		published.Check{Room: "resin", Name: "an order of 3.785412 l in US gallons", Ours: r.OrderUS, Theirs: 1, Unit: "US gal", Tol: 1e-9, Source: "nist-sp811", Place: "appendix B.8"},
		published.Check{Room: "resin", Name: "an order of 3.785412 l in imperial gallons", Ours: r.OrderImp, Theirs: 0.8326742, Unit: "imp gal", Tol: 5e-8, Source: "nist-sp811", Place: "appendix B.8, 3.785412/4.54609"},
	)
}

// Bubble times and film levelling by Stokes and lubrication theory, and the growth of
// gas by Boyle's law, against values computed apart from this program.
func TestPublishedBubblesAndVacuum(t *testing.T) {
	check := func(name string, ours, theirs float64, unit string, tol float64, place string) published.Check {
		return published.Check{Room: "resin", Name: name, Ours: ours, Theirs: theirs, Unit: unit, Tol: tol, Source: "analytic", Place: place}
	}
	minutes := func(mm units.Length, mu float64) float64 { return float64(BubbleRise(64, mm, mu, 1100)) * 60 }
	published.Run(t,
		check("0.1 mm bubble through 64 mm at 0.3 Pa s", minutes(0.1, 0.3), 53, "min", 0.5, "Stokes"),
		check("0.2 mm bubble through 64 mm at 0.3 Pa s", minutes(0.2, 0.3), 13, "min", 0.5, "Stokes"),
		check("0.5 mm bubble through 64 mm at 0.3 Pa s", minutes(0.5, 0.3), 2.1, "min", 0.05, "Stokes"),
		check("1 mm bubble through 64 mm at 0.3 Pa s", minutes(1, 0.3), 0.5, "min", 0.05, "Stokes"),
		check("0.2 mm bubble through 64 mm at 1 Pa s", minutes(0.2, 1), 44, "min", 0.5, "Stokes"),
		check("1 mm bubble through 64 mm at 1 Pa s", minutes(1, 1), 1.8, "min", 0.05, "Stokes"),
		check("0.1 mm bubble through 64 mm at 1 Pa s", minutes(0.1, 1), 178, "min", 0.5, "Stokes"),
		check("0.5 mm bubble through 64 mm at 1 Pa s", minutes(0.5, 1), 7.1, "min", 0.05, "Stokes"),
		check("levelling of 3 mm over 0.3 m at 0.5 Pa s", float64(LevelTime(3, 300, 0.5, 1100))*3600, 11.7, "s", 0.05, "3 mu/(rho g h^3 K^2)"),
		check("gas at 25 inHg", Expansion(25), 6, "1", 0.5, "Boyle"),
		check("gas at 27 inHg", Expansion(27), 10, "1", 0.5, "Boyle"),
		check("gas at 28 inHg", Expansion(28), 16, "1", 0.5, "Boyle"),
		check("gas at 29 inHg", Expansion(29), 33, "1", 0.5, "Boyle"),
		check("gas at 29.5 inHg", Expansion(29.5), 71, "1", 0.5, "Boyle"),
	)
}
