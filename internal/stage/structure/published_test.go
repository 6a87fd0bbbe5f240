package structure

import (
	"math"
	"testing"

	"pourwright/internal/published"
	"pourwright/internal/units"
)

// pcf is a pound per cubic foot, kg/m3.
const pcf = units.Density(float64(units.Pound) / (0.3048 * 0.3048 * 0.3048))

func slab(l, w, h units.Length) units.Volume { return units.Area(l * w).Times(h) }

func shellMass(v units.Volume, d units.Density) units.Mass {
	r, _ := Compute(Input{ShellVolume: v, ShellDensity: d, People: 1})
	return r.Shell
}

func TestPublishedMasses(t *testing.T) {
	in := units.Inch
	board := units.Density(650).Of(slab(2440, 1220, 18))
	flip, _ := Compute(Input{FormMass: board, People: 1})
	published.Run(t,
		published.Check{Room: "structure", Name: "slab 47 x 29.5 x 5.5 in at 155 lb/ft3", Ours: shellMass(slab(47*in, 29.5*in, 5.5*in), 155*pcf).Lb(),
			Theirs: 684, Unit: "lb", Tol: 0.5, Source: "analytic", Place: "length x width x thickness x unit weight"},
		published.Check{Room: "structure", Name: "slab 47 x 20 x 5.5 in at 155 lb/ft3", Ours: shellMass(slab(47*in, 20*in, 5.5*in), 155*pcf).Lb(),
			Theirs: 464, Unit: "lb", Tol: 0.5, Source: "analytic", Place: "length x width x thickness x unit weight"},
		published.Check{Room: "structure", Name: "square metre of 19 mm shell at 2100 kg/m3", Ours: float64(shellMass(slab(1000, 1000, 19), 2100)),
			Theirs: 39.9, Unit: "kg", Tol: 0.05, Source: "analytic", Place: "thickness x density"},
		published.Check{Room: "structure", Name: "board 2440 x 1220 x 18 mm at 650 kg/m3, turned over", Ours: float64(flip.Flip),
			Theirs: 34.8, Unit: "kg", Tol: 0.05, Source: "analytic", Place: "area x thickness x density"},
	)
}

func TestPublishedTeamRule(t *testing.T) {
	published.Run(t,
		published.Check{Room: "structure", Name: "two people who lift 20 kg each", Ours: float64(Capacity(2, 20)), Theirs: 26.7, Unit: "kg", Tol: 0.05, Source: "hse-l23", Place: "team handling"},
		published.Check{Room: "structure", Name: "three people who lift 50 kg each", Ours: float64(Capacity(3, 50)), Theirs: 75, Unit: "kg", Tol: 0.5, Source: "hse-l23", Place: "team handling"},
	)
}

func TestPublishedTubes(t *testing.T) {
	rows := []struct {
		name                  string
		side, wall            units.Length
		kgm, cm2, cm4, cm3    float64
		tolCM4, tolCM3, tolKG float64
	}{
		{"20 x 2", 20, 2, 1.05, 1.34, .692, .692, .0005, .0005, .005},
		{"25 x 2", 25, 2, 1.36, 1.74, 1.48, 1.19, .005, .005, .005},
		{"25 x 2.5", 25, 2.5, 1.64, 2.09, 1.69, 1.35, .005, .005, .005},
		{"25 x 3", 25, 3, 1.89, 2.41, 1.84, 1.47, .005, .005, .005},
		{"30 x 2", 30, 2, 1.68, 2.14, 2.72, 1.81, .005, .005, .005},
		{"40 x 2", 40, 2, 2.31, 2.94, 6.94, 3.47, .005, .005, .005},
		{"40 x 3", 40, 3, 3.30, 4.21, 9.32, 4.66, .005, .005, .005},
		{"50 x 3", 50, 3, 4.25, 5.41, 19.5, 7.79, .05, .005, .005},
	}
	for _, r := range rows {
		s, err := Tube(r.side, r.wall)
		if err != nil {
			t.Fatal(err)
		}
		check := func(what string, ours, theirs, tol float64, unit string) published.Check {
			return published.Check{Room: "structure", Name: "square tube " + r.name + " mm, " + what, Ours: ours, Theirs: theirs,
				Unit: unit, Tol: tol, Source: "en-10219-2", Place: "table of square sections"}
		}
		published.Run(t,
			check("mass", s.MassPerM, r.kgm, r.tolKG, "kg/m"),
			check("area", float64(s.Area)/100, r.cm2, .005, "cm2"),
			check("second moment", s.Inertia/1e4, r.cm4, r.tolCM4, "cm4"),
			check("section modulus", s.Modulus/1e3, r.cm3, r.tolCM3, "cm3"),
		)
	}
}

func TestTubeSharpLimit(t *testing.T) {
	// Rounding always takes area away, and a thin wall tends to a thin line.
	s, _ := Tube(100, 0.01)
	if got := float64(s.Area); math.Abs(got-4*100*0.01) > 0.002 {
		t.Errorf("thin tube area %v mm2, want near 4", got)
	}
}
