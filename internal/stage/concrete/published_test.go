package concrete

import (
	"math"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/published"
	"pourwright/internal/units"
)

// edge is what a straight edge of a prism standing d above the base adds to the
// shell per mm: the upright swept side above the base coat and a quarter cylinder.
func edge(d, t float64) float64 { return t*(d-t) + math.Pi*t*t/4 }

// corner is what a square outer corner adds: a quarter disc swept up and an eighth of
// a ball.
func corner(d, t float64) float64 { return math.Pi*t*t/4*(d-t) + math.Pi*t*t*t/6 }

func TestPublishedShellClosedForms(t *testing.T) {
	const L, W, H, T, D = 600.0, 400.0, 300.0, 19.0, 60.0
	plain := L*W*H - (L-2*T)*(W-2*T)*(H-T)
	prism := func(a, b, d float64) float64 { return 2*(a+b)*edge(d, T) + 4*corner(d, T) }
	const a, b = 250.0, 150.0 // a channel a long and b wide that runs off the left side
	mouth := (2*(a-T)+b)*edge(D, T) + 2*corner(D, T) - T*b*D
	const r = 90.0
	round := 2 * math.Pi * (r*edge(D, T) + T*T/2*(D-T) + T*T*T/3)
	frame := prism(300, 200, D) + 2*(120+80)*edge(D, T) - 4*notch(D, T)
	hole := geom.Subtract(geom.Rect(150, 100, 450, 300).Region(), geom.Rect(240, 160, 360, 240).Region())
	for _, c := range []struct {
		name   string
		layers []Layer
		want   float64
	}{
		{"plain box", nil, plain},
		{"box with a prism", []Layer{{0, D, rect(150, 120, 420, 280)}}, plain + prism(270, 160, D)},
		{"box with a stepped prism", []Layer{{0, 40, rect(150, 120, 420, 280)}, {40, 80, rect(200, 170, 350, 240)}}, plain + prism(270, 160, 40) + prism(150, 70, 40)},
		{"box with two equal prisms stacked", []Layer{{0, 30, rect(150, 120, 420, 280)}, {30, D, rect(150, 120, 420, 280)}}, plain + prism(270, 160, D)},
		{"box with a channel that runs off a side", []Layer{{0, D, rect(0, 100, a, 100+b)}}, plain + mouth},
		{"box with a round prism", []Layer{{0, D, seen(disc(300, 200, r))}}, plain + round},
		{"box with a prism round an island", []Layer{{0, D, seen(hole)}}, plain + frame},
	} {
		in := box()
		in.Layers = c.layers
		res, found := Compute(in)
		for _, f := range found {
			t.Errorf("%s: %v", c.name, f)
		}
		published.Run(t, published.Check{Room: "concrete", Name: "true-offset shell, " + c.name, Ours: res.ShellVolume.MM3(), Theirs: c.want, Unit: "mm3", Tol: 0.001 * c.want, Source: "analytic", Place: "parallel bodies (Steiner)"})
		if res.Converged > 0.001 || res.NaiveOver < 0.02 {
			t.Errorf("%s: converged to %v, area x thickness over by %v", c.name, res.Converged, res.NaiveOver)
		}
	}
}

// notch is what a square inner corner of a prism's upright side takes off two
// straight edges: they overlap in a square of side t, where only the nearer counts:
//
//	integral over the square of the profile p of the further side,
//	p(s) = d - t + sqrt(t^2 - s^2), s = max(x, y)
func notch(d, t float64) float64 { return t*t*(d-t) + 2*t*t*t/3 }

func disc(x, y, r float64) geom.Region {
	ring := make(geom.Ring, 720)
	for i := range ring {
		a := 2 * math.Pi * float64(i) / float64(len(ring))
		ring[i] = geom.Point{X: x + r*math.Cos(a), Y: y + r*math.Sin(a)}
	}
	return geom.Build([]geom.Ring{ring}, geom.NonZero)
}

// pounds is a mix with a pozzolan. Its ratios do not depend on the emulsion's specific
// gravity, which its statement leaves open; its density would, so it is not checked.
func pounds() material.Mix {
	return material.Mix{Name: "pounds", Kind: material.Scratch, Ingredients: []material.Ingredient{
		ingredient("cement", "cement", 17.5, 3.15, 0), ingredient("pozzolan", "pozzolan", 6, 2.55, 0), ingredient("sand", "sand", 23.5, 2.65, 0),
		ingredient("water", "water", 6.5, 1, 0), ingredient("emulsion", "polymer", 2.5, 1.06, 0.5), ingredient("fibre", "fibre", 1.6, 2.68, 0)}}
}

func TestPublishedMixes(t *testing.T) {
	check := func(name string, ours, theirs, tol float64, unit, place string) published.Check {
		return published.Check{Room: "concrete", Name: name, Ours: ours, Theirs: theirs, Unit: unit, Tol: tol, Source: "aci-211", Place: place}
	}
	const hand = "absolute volume, evaluated independently"
	c := &computer{}
	a, wet, p := c.recipe(premix(0)), c.recipe(premix(0.05)), c.recipe(pounds())
	published.Run(t,
		// Litres, by hand: 15.873 + 18.868 + 14.5 + 4.717 + 0.455 + 1.385 = 55.797 for 123.711 kg.
		published.Check{Room: "concrete", Name: "premix density, no air", Ours: float64(a.WetDensity), Theirs: 2217.2, Unit: "kg/m3", Tol: 0.5, Source: "analytic", Place: "sum of W/SG by hand"},
		published.Check{Room: "concrete", Name: "premix density, 5 % air", Ours: float64(wet.WetDensity), Theirs: 2106.3, Unit: "kg/m3", Tol: 0.5, Source: "analytic", Place: "sum of W/SG by hand"},
		check("premix water to cement, emulsion's water counted", a.WaterRatio, 0.340, 0.0005, "1", hand),
		check("premix polymer solids to cement", a.Polymer, 0.050, 0.0005, "1", hand),
		check("premix fibre of the whole", a.Fibre, 0.03, 0.0005, "1", hand),
		check("mix in pounds: water to cementitious", p.WaterRatio, 0.330, 0.0005, "1", hand),
		check("mix in pounds: polymer to cementitious", p.Polymer, 0.053, 0.0005, "1", hand),
		check("mix in pounds: fibre of the whole", p.Fibre, 0.0278, 0.00005, "1", hand),
		check("mix in pounds: fibre of the rest", p.Fibre/(1-p.Fibre), 0.0286, 0.00005, "1", hand),
	)
}

// TestPublishedCubicYard does the Navy manual's worked example, which takes water at
// 62.4 lb/ft3 and rounds every volume to 0.01 ft3 before it goes on; so do we.
func TestPublishedCubicYard(t *testing.T) {
	const water, yard, air = 62.4, 27.0, 0.05 // lb/ft3, ft3
	ft3 := func(lb, sg float64) float64 {
		kg := units.Mass(lb * 0.45359237)
		return AbsoluteVolume(kg, sg).M3() / 0.028316846592 * (1000 / (water * 0.45359237 / 0.028316846592))
	}
	cement, mixing, coarse := ft3(610, 3.15), ft3(305, 1), ft3(1735, 2.60)
	printed := func(v float64) float64 { return math.Round(v*100) / 100 }
	sum := printed(cement) + printed(mixing) + printed(coarse) + air*yard
	check := func(name string, ours, theirs, tol float64, unit string) published.Check {
		return published.Check{Room: "concrete", Name: "one cubic yard: " + name, Ours: ours, Theirs: theirs, Unit: unit, Tol: tol, Source: "aci-211", Place: "NAVEDTRA 14071 ch. 17, worked example"}
	}
	published.Run(t,
		check("cement", cement, 3.10, 0.005, "ft3"),
		check("water", mixing, 4.89, 0.005, "ft3"),
		check("coarse aggregate", coarse, 10.69, 0.005, "ft3"),
		check("all but the sand", sum, 20.03, 0.005, "ft3"),
		check("sand by difference", yard-sum, 6.97, 0.005, "ft3"),
		check("sand", (yard-sum)*2.65*water, 1152, 1, "lb"),
	)
	navy := material.Mix{Kind: material.Scratch, Ingredients: []material.Ingredient{
		ingredient("cement", "cement", 610, 3.15, 0), ingredient("water", "water", 305, 1, 0), ingredient("coarse", "sand", 1735, 2.60, 0), ingredient("fine", "sand", 1152, 2.65, 0)}}
	navy.Air.Value = air
	whole := (&computer{}).recipe(navy).WetDensity
	published.Run(t, check("all parts together", float64(whole)*0.764554857984/0.45359237, 610+305+1735+1152, 4, "lb"))
}
