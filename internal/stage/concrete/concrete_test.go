package concrete

import (
	"math"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/published"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

func rect(x0, y0, x1, y1 float64) view.Region[view.Finished] {
	return view.Of[view.Finished](geom.Rect(x0, y0, x1, y1).Region())
}

func ingredient(name, role string, parts, sg, solids float64) material.Ingredient {
	return material.Ingredient{Name: name, Role: role, Parts: material.Value[float64]{Value: parts},
		SG: material.Value[float64]{Value: sg}, Solids: material.Value[units.Fraction]{Value: units.Fraction(solids)}}
}

// premix is the reference premix of the trade's guides: cement 50, sand 50, water
// 14.5, emulsion 5, plasticiser 0.5 kg and 3 % fibre of the whole.
func premix(air units.Fraction) material.Mix {
	m := material.Mix{Name: "premix", Kind: material.Scratch, Ingredients: []material.Ingredient{
		ingredient("cement", "cement", 50, 3.15, 0), ingredient("sand", "sand", 50, 2.65, 0), ingredient("water", "water", 14.5, 1, 0),
		ingredient("emulsion", "polymer", 5, 1.06, 0.5), ingredient("plasticiser", "plasticiser", 0.5, 1.10, 0),
		ingredient("fibre", "fibre", 120*0.03/0.97, 2.68, 0)}}
	m.Air.Value, m.WaterMax.Value = air, 0.38
	return m
}

func box() Input {
	return Input{Length: 600, Width: 400, Height: 300, Tub: 20, Freeboard: 0.3, Spare: 0.05,
		Coats: []Coat{{"face", 4, premix(0)}, {"backer", 15, premix(0.05)}}}
}

func TestPublishedShellClosedForms(t *testing.T) {
	const L, W, H, T = 600.0, 400.0, 300.0, 19.0
	plain := L*W*H - (L-2*T)*(W-2*T)*(H-T)
	// What a prism of a x b, standing d above the surface around it, adds to the shell:
	// four swept sides, quarter cylinders over its edges and a turned quarter disc over
	// its corners (Steiner), less the prism's own part below.
	adds := func(a, b, d float64) float64 {
		p := 2 * (a + b)
		return p*((d-T)*T+math.Pi*T*T/4) + math.Pi*T*T*(d-T) + 2*math.Pi*T*T*T/3
	}
	one, two := box(), box()
	one.Layers = []Layer{{0, 60, rect(150, 120, 420, 280)}}
	two.Layers = []Layer{{0, 40, rect(150, 120, 420, 280)}, {40, 80, rect(200, 170, 350, 240)}}
	for _, c := range []struct {
		name string
		in   Input
		want float64
	}{
		{"plain box", box(), plain},
		{"box with a prism", one, plain + adds(270, 160, 60)},
		{"box with a stepped prism", two, plain + adds(270, 160, 40) + adds(150, 70, 40)},
	} {
		r, found := Compute(c.in)
		if len(found) != 0 && c.name != "" {
			for _, f := range found {
				if f.Code != "concrete/coat" {
					t.Errorf("%s: %v", c.name, f)
				}
			}
		}
		published.Run(t, published.Check{Room: "concrete", Name: "true-offset shell of a " + c.name, Ours: r.ShellVolume.MM3(), Theirs: c.want, Unit: "mm3", Tol: 0.003 * c.want, Source: "analytic", Place: "Steiner formula"})
		if r.Converged > 0.005 || float64(r.NaiveOver) < 0.02 {
			t.Errorf("%s: converged to %v, area x thickness over by %v", c.name, r.Converged, r.NaiveOver)
		}
	}
}

// TestShellAgainstCubes counts cubes of 2 mm within t of the mould, the slow way.
func TestShellAgainstCubes(t *testing.T) {
	const L, W, H, T, D, step = 120.0, 90.0, 70.0, 10.0, 25.0, 1.0
	foam := geom.Build([]geom.Ring{{{X: 30, Y: 25}, {X: 120, Y: 35}, {X: 120, Y: 60}, {X: 45, Y: 65}}}, geom.NonZero)
	count := 0
	for x := step / 2; x < L; x += step {
		for y := step / 2; y < W; y += step {
			d := foam.Distance(geom.Point{X: x, Y: y})
			for z := step / 2; z < H; z += step {
				if d <= 0 && z <= D {
					continue // foam
				}
				near := math.Min(z, math.Min(math.Min(x, L-x), math.Min(y, W-y)))
				near = math.Min(near, math.Hypot(math.Max(0, d), math.Max(0, z-D)))
				if near <= T {
					count++
				}
			}
		}
	}
	r, _ := Compute(Input{Length: L, Width: W, Height: H, Layers: []Layer{{0, D, view.Of[view.Finished](foam)}}, Coats: []Coat{{"all", T, premix(0)}}, Tub: 20})
	want := float64(count) * step * step * step
	if got := r.ShellVolume.MM3(); math.Abs(got/want-1) > 0.005 {
		t.Errorf("shell %v mm3, cubes say %v", got, want)
	}
}

func TestPublishedMixes(t *testing.T) {
	c := &computer{}
	a, b := c.recipe(premix(0)), c.recipe(premix(0.05))
	check := func(name string, ours, theirs, tol float64, unit string) published.Check {
		return published.Check{Room: "concrete", Name: name, Ours: ours, Theirs: theirs, Unit: unit, Tol: tol, Source: "aci-211", Place: "absolute volume, by hand"}
	}
	published.Run(t,
		// By hand, litres: 15.873 + 18.868 + 14.5 + 4.717 + 0.455 + 1.385 = 55.797 for 123.711 kg.
		check("premix density, no air", float64(a.WetDensity), 2217.2, 0.5, "kg/m3"),
		check("premix density, 5 % air", float64(b.WetDensity), 2106.3, 0.5, "kg/m3"),
		check("premix water to cement", a.WaterRatio, 0.340, 0.0005, "1"),
		check("premix polymer solids to cement", a.Polymer, 0.05, 0.0005, "1"),
		check("premix fibre of the whole", a.Fibre, 0.03, 0.0005, "1"),
	)
	m := material.Mix{Name: "pounds", Kind: material.Scratch, Ingredients: []material.Ingredient{
		ingredient("cement", "cement", 17.5, 3.15, 0), ingredient("pozzolan", "pozzolan", 6, 2.55, 0), ingredient("sand", "sand", 23.5, 2.65, 0),
		ingredient("water", "water", 6.5, 1, 0), ingredient("emulsion", "polymer", 2.5, 1.06, 0.5), ingredient("fibre", "fibre", 1.6, 2.68, 0)}}
	p := c.recipe(m)
	published.Run(t,
		check("mix in pounds: water to cementitious", p.WaterRatio, 0.330, 0.0005, "1"),
		check("mix in pounds: polymer to cementitious", p.Polymer, 0.053, 0.0005, "1"),
		check("mix in pounds: fibre of the whole", p.Fibre, 0.0278, 0.00005, "1"),
		check("mix in pounds: density", float64(p.WetDensity), 2194, 2.2, "kg/m3"),
	)
	navy := material.Mix{Name: "yard", Kind: material.Scratch, Ingredients: []material.Ingredient{
		ingredient("cement", "cement", 610, 3.15, 0), ingredient("water", "water", 305, 1, 0), ingredient("coarse", "sand", 1735, 2.60, 0), ingredient("fine", "sand", 1152, 2.65, 0)}}
	navy.Air.Value = 0.05
	y := c.recipe(navy)
	lbPerYard3 := float64(y.WetDensity) * 0.764554857984 / 0.45359237
	published.Run(t, published.Check{Room: "concrete", Name: "one cubic yard: mass of all parts at 5 % air", Ours: lbPerYard3, Theirs: 610 + 305 + 1735 + 1152, Unit: "lb", Tol: 5, Source: "aci-211", Place: "NAVEDTRA 14071 ch. 17 worked example"})
}

func TestBatchesAddUp(t *testing.T) {
	in := box()
	in.Layers = []Layer{{0, 60, rect(150, 120, 420, 280)}}
	r, _ := Compute(in)
	for _, c := range r.Coats {
		sum, n := units.Mass(0), 0
		for _, b := range r.Batches {
			if b.Coat != c.Name {
				continue
			}
			n++
			sum += b.Mass
			parts := units.Mass(0)
			for _, p := range b.Parts {
				parts += p.Mass
			}
			if math.Abs(float64(parts-b.Mass)) > 1e-9 {
				t.Errorf("batch %d: parts %v, mass %v", b.Number, parts, b.Mass)
			}
			if b.Volume > 14 || b.WaterFirst > b.WaterUpTo || b.WaterUpTo > b.WaterNever {
				t.Errorf("batch %d: %+v", b.Number, b)
			}
		}
		if math.Abs(float64(sum-c.ToMix)) > 0.004*float64(n) {
			t.Errorf("%s: batches %v kg, to mix %v kg", c.Name, sum, c.ToMix)
		}
	}
}

func TestWeirdInputDoesNotPanic(t *testing.T) {
	for _, in := range []Input{{}, {Length: 100, Width: 100, Height: 100}, {Length: 100, Width: 100, Height: 100, Coats: []Coat{{}}},
		{Length: 100, Width: 100, Height: 100, Coats: []Coat{{"a", 80, material.Mix{}}}, Tub: units.Volume(math.NaN())}} {
		Compute(in)
	}
}

func BenchmarkCompute(b *testing.B) {
	ring := make(geom.Ring, 1000)
	for i := range ring {
		a := 2 * math.Pi * float64(i) / 1000
		ring[i] = geom.Point{X: 600 + 400*math.Cos(a)*(1+.1*math.Sin(9*a)), Y: 205 + 140*math.Sin(a)}
	}
	r := view.Of[view.Finished](geom.Build([]geom.Ring{ring}, geom.NonZero))
	in := Input{Length: 1220, Width: 410, Height: 430, Tub: 20, Layers: []Layer{{0, 25, r}, {25, 50, r}, {50, 75, r}},
		Coats: []Coat{{"face", 4, premix(0)}, {"b1", 7.5, premix(0)}, {"b2", 7.5, premix(0)}}}
	for b.Loop() {
		Compute(in)
	}
}
