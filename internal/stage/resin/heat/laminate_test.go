package heat

import (
	"math"
	"testing"

	"pourwright/internal/published"
	"pourwright/internal/stage/resin/heat/lanes"
)

// laminate is 25.4 mm between faces held at a cycle of temperatures, minutes and C.
func laminate(s Solid, hJKG float64, cycle [][2]float64, rate func(a, tk float64) float64) Case {
	c := slab(25.4, s, 1e6, 1e6)
	c.HJKG, c.EndH, c.Pours[0].TempC = hJKG, 2.6, cycle[0][1]
	c.Rate = func(a, tempC float64) float64 { return math.Max(0, rate(a, tempC+273.15)) / 60 }
	c.Air.TempC = func(hour float64) float64 {
		for i := 1; i < len(cycle); i++ {
			if p, q := cycle[i-1], cycle[i]; 60*hour < q[0] {
				return p[1] + (q[1]-p[1])*(60*hour-p[0])/(q[0]-p[0])
			}
		}
		return cycle[len(cycle)-1][1]
	}
	return c
}

func arrhenius(a, e, tk float64) float64 { return a * math.Exp(-e/8.314462618/tk) }

// carbon is a laminate whose rate jumps at a degree of cure, and is faster than it should be.
func carbon(jump, faster float64) Case {
	k := arrhenius
	return laminate(Solid{RhoKGM3: 1520, CJKGK: 942, KWMK: 0.4457}, 198.9e3, [][2]float64{{0, 25}, {36, 116}, {96, 116}, {120, 177}}, func(a, tk float64) float64 {
		if a <= jump {
			return faster * (k(2.102e9, 80.7e3, tk) + k(-2.014e9, 77.8e3, tk)*a) * (1 - a) * (0.47 - a)
		}
		return faster * k(1.96e5, 56.6e3, tk) * (1 - a)
	})
}

// carbonAt returns temperature at 45 min, cure at 60, 90, 120 min, peak and its minute.
func carbonAt(t *testing.T, jump, faster float64, fine int) []float64 {
	r := mustSolve(t, carbon(jump, faster), Options{DZMM: 0.4 / float64(fine), StepS: 5 / float64(fine), Frames: []float64{45.0 / 60, 1, 1.5, 2}})
	_, v := profile(r, 0)
	out := []float64{center(v)}
	for _, f := range r.Frames[1:] {
		cures := make([]float64, len(v))
		for k := range cures {
			cures[k] = float64(f.CutCure[k])
		}
		out = append(out, center(cures))
	}
	return append(out, r.PeakC, 60*r.PeakH)
}

// tableError is how much too high a straight line between entries half a degree apart reads
// exp(-E/RT) at most, as a share: (E/(R T^2) .5)^2 / 8.
func tableError(e, tk float64) float64 { return math.Pow(e/8.314462618/tk/tk/lanes.PerDegree, 2) / 8 }

// TestPublishedCarbonLaminate: kinetics from a paper, results by two programs apart: one
// whose values are stated to .3 C, and bench/cure_slabs.py, converged to the digits given.
// The solver reads rates from a table of 256 to the unit of cure, which bridges the jump
// at .3; runs with the jump at either end of the bridge tell what that leaves open, and one
// with a faster rate what its entries every half degree do.
func TestPublishedCarbonLaminate(t *testing.T) {
	v, err := grids(func(fine int) []float64 { return carbonAt(t, 0.3, 1, fine) })
	low, high, faster := carbonAt(t, 76.0/256, 1, 2), carbonAt(t, 77.0/256, 1, 2), carbonAt(t, 0.3, 1+tableError(80.7e3, 390), 2)
	for i, r := range []row{{"centre at 45 min", 124.183, 5e-4, "C"}, {"cure at 60 min", 0.22779, 5e-6, "1"}, {"cure at 90 min", 0.29141, 5e-6, "1"},
		{"cure at 120 min", 0.58954, 5e-6, "1"}, {"peak", 199.537, 5e-4, "C"}, {"minute of the peak", 125.606, 5e-4, "min"}} {
		published.Run(t, published.Check{Room: "resin/heat", Name: "carbon laminate, " + r.name + ", by lines", Ours: v[i], Theirs: r.theirs, Unit: r.unit,
			Tol: r.tol + err[i] + math.Abs(high[i]-low[i]) + math.Abs(faster[i]-v[i]), Source: "cure-by-lines", Place: "carbon laminate 25.4 mm"})
	}
	check := func(name string, ours, theirs float64, unit string) published.Check {
		return published.Check{Room: "resin/heat", Name: "carbon laminate, " + name, Ours: ours, Theirs: theirs, Unit: unit, Tol: 0.3, Source: "lee-loos-springer", Place: "25.4 mm, independent finite volumes"}
	}
	published.Run(t, check("centre at 45 min", v[0], 124.17, "C"), check("peak", v[4], 199.55, "C"), check("minute of the peak", v[5], 125.6, "min"))
}

// glassAt returns peak and its minute.
func glassAt(t *testing.T, faster float64, fine int) []float64 {
	g := laminate(Solid{RhoKGM3: 1890, CJKGK: 1260, KWMK: 0.2163}, 77.5e3, [][2]float64{{0, 20}, {35, 90}, {75, 90}, {95, 130}}, func(a, tk float64) float64 {
		return faster * arrhenius(3.7e22, 167.4e3, tk) * math.Pow(math.Max(a, 0), 0.524) * math.Pow(math.Max(0, 1-a), 1.476)
	})
	g.Pours[0].Cure = 1e-4
	r := mustSolve(t, g, Options{DZMM: 0.4 / float64(fine), StepS: 5 / float64(fine)})
	return []float64{r.PeakC, 60 * r.PeakH}
}

// TestPublishedGlassLaminate: as the carbon one; its rate has no jump.
func TestPublishedGlassLaminate(t *testing.T) {
	v, err := grids(func(fine int) []float64 { return glassAt(t, 1, fine) })
	faster := glassAt(t, 1+tableError(167.4e3, 370), 2)
	for i, r := range []row{{"peak", 146.338, 5e-4, "C"}, {"minute of the peak", 83.368, 5e-4, "min"}} {
		published.Run(t, published.Check{Room: "resin/heat", Name: "glass laminate, " + r.name + ", by lines", Ours: v[i], Theirs: r.theirs, Unit: r.unit,
			Tol: r.tol + err[i] + math.Abs(faster[i]-v[i]), Source: "cure-by-lines", Place: "glass laminate 25.4 mm"})
	}
	check := func(name string, ours, theirs float64, unit string) published.Check {
		return published.Check{Room: "resin/heat", Name: "glass laminate, " + name, Ours: ours, Theirs: theirs, Unit: unit, Tol: 0.3, Source: "bogetti-gillespie", Place: "25.4 mm, independent finite volumes"}
	}
	published.Run(t, check("peak", v[0], 146.5, "C"), check("minute of the peak", v[1], 83.4, "min"))
}
