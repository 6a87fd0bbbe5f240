package concrete

import (
	"fmt"
	"testing"

	"pourwright/internal/published"
	"pourwright/internal/units"
)

func TestPublishedMaturity(t *testing.T) {
	day := []Stretch{{12, 18}, {12, 24}, {24, 16}, {24, 20}}
	published.Run(t,
		published.Check{Room: "concrete", Name: "Nurse-Saul 28 d at 15 C, datum -11", Ours: Maturity([]Stretch{{28 * units.Day, 15}}, -11) / 24, Theirs: 728, Unit: "C d", Tol: 0.5, Source: "astm-c1074", Place: "worked example"},
		published.Check{Room: "concrete", Name: "hours at 23 C for 3500 C h, datum 0", Ours: 3500 / Maturity([]Stretch{{1, 23}}, 0), Theirs: 152.2, Unit: "h", Tol: 0.05, Source: "astm-c1074", Place: "worked example"},
		published.Check{Room: "concrete", Name: "Nurse-Saul of a four-stretch history, datum 0", Ours: Maturity(day, 0), Theirs: 1368, Unit: "C h", Tol: 0.5, Source: "analytic", Place: "sum by hand"},
		published.Check{Room: "concrete", Name: "Nurse-Saul of a four-stretch history, datum -10", Ours: Maturity(day, -10), Theirs: 2088, Unit: "C h", Tol: 0.5, Source: "analytic", Place: "sum by hand"},
		published.Check{Room: "concrete", Name: "equivalent age of a four-stretch history, Q 5000, 20 C", Ours: float64(EquivalentAge(day, 20, 5000)), Theirs: 68.73, Unit: "h", Tol: 0.005, Source: "astm-c1074", Place: "eq. 2, evaluated independently"},
	)
	for _, row := range []struct{ temp, q5000, q4000 float64 }{
		{5, .3986, .4791}, {10, .5475, .6176}, {15, .7438, .7892}, {20, 1, 1},
		{25, 1.3311, 1.2571}, {30, 1.7553, 1.5685}, {35, 2.2939, 1.9429}, {40, 2.9723, 2.3904},
	} {
		at := units.Temperature(row.temp)
		published.Run(t,
			published.Check{Room: "concrete", Name: fmt.Sprintf("age factor at %g C, Q 5000", row.temp), Ours: AgeFactor(at, 20, 5000), Theirs: row.q5000, Unit: "1", Tol: 5e-5, Source: "astm-c1074", Place: "eq. 2, evaluated independently"},
			published.Check{Room: "concrete", Name: fmt.Sprintf("age factor at %g C, Q 4000", row.temp), Ours: AgeFactor(at, 20, 4000), Theirs: row.q4000, Unit: "1", Tol: 5e-5, Source: "astm-c1074", Place: "eq. 2, evaluated independently"},
		)
	}
	for _, row := range []struct{ temp, hours float64 }{{10, 32.9}, {12, 29.0}, {15, 24.2}, {25, 13.5}, {30, 10.3}} {
		published.Run(t, published.Check{Room: "concrete", Name: fmt.Sprintf("18 h at 20 C takes at %g C", row.temp), Ours: float64(At(18, units.Temperature(row.temp), 20)), Theirs: row.hours, Unit: "h", Tol: 0.05, Source: "astm-c1074", Place: "eq. 2, evaluated independently"})
	}
}

func TestPublishedTemperatureAdjustedAge(t *testing.T) {
	for _, row := range []struct{ temp, factor float64 }{{5, .4778}, {10, .6161}, {15, .7875}, {20, .9981}, {25, 1.2551}, {30, 1.5662}, {35, 1.9406}, {40, 2.3880}} {
		published.Run(t, published.Check{Room: "concrete", Name: fmt.Sprintf("temperature-adjusted age at %g C", row.temp), Ours: ENAgeFactor(units.Temperature(row.temp)), Theirs: row.factor, Unit: "1", Tol: 5e-5, Source: "en-1992", Place: "equation B.10, calculated independently"})
	}
}

// TestPublishedFieldRule holds Arrhenius with 5000 K against the rule of setting times
// that is printed to whole hours.
func TestPublishedFieldRule(t *testing.T) {
	const f70, f50, f30 = 21.111, 10.0, -1.111
	for _, row := range []struct {
		name  string
		temp  units.Temperature
		hours float64
	}{{"50 F", f50, 10}, {"30 F", f30, 20}} {
		published.Run(t, published.Check{Room: "concrete", Name: "setting takes 5 h at 70 F; at " + row.name, Ours: float64(At(5, row.temp, f70)), Theirs: row.hours, Unit: "h", Tol: 0.5, Source: "astm-c403", Place: "field rule, whole hours"})
	}
}

// TestPublishedSlabs weighs slabs of 155 pounds a cubic foot.
func TestPublishedSlabs(t *testing.T) {
	const pcf units.Density = 16.018463373960139
	for _, row := range []struct {
		width units.Length
		lb    float64
	}{{29.5, 684}, {20, 464}} {
		slab := units.Area(47 * units.Inch * row.width * units.Inch).Times(5.5 * units.Inch)
		published.Run(t, published.Check{Room: "concrete", Name: fmt.Sprintf("slab 47 x %g x 5.5 in at 155 pcf", row.width), Ours: (155 * pcf).Of(slab).Lb(), Theirs: row.lb, Unit: "lb", Tol: 0.5, Source: "analytic", Place: "length x width x thickness x density"})
	}
}

func TestAgeFactorInTheCold(t *testing.T) {
	if f := AgeFactor(-12, 20, Activation); f != 0 {
		t.Errorf("age factor at -12 C: got %v, want 0", f)
	}
	if d := At(18, -12, 20); d != 7*units.Day {
		t.Errorf("wait at -12 C: got %v h, want a week", d)
	}
}
