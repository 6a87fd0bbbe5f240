package concrete

import (
	"math"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

func seen(r geom.Region) view.Region[view.Finished] { return view.Of[view.Finished](r) }

func rect(x0, y0, x1, y1 float64) view.Region[view.Finished] {
	return seen(geom.Rect(x0, y0, x1, y1).Region())
}

// wavy returns a round shape of n corners whose radius swells and shrinks.
func wavy(cx, cy, rx, ry float64, waves float64, n int) geom.Region {
	ring := make(geom.Ring, n)
	for i := range ring {
		a := 2 * math.Pi * float64(i) / float64(n)
		f := 1 + 0.12*math.Sin(waves*a) + 0.03*math.Sin(5*waves*a+1)
		ring[i] = geom.Point{X: cx + rx*f*math.Cos(a), Y: cy + ry*f*math.Sin(a)}
	}
	return geom.Build([]geom.Ring{ring}, geom.NonZero)
}

func ingredient(name, role string, parts, sg, solids float64) material.Ingredient {
	return material.Ingredient{Name: name, Role: role, Parts: material.Value[float64]{Value: parts},
		SG: material.Value[float64]{Value: sg}, Solids: material.Value[units.Fraction]{Value: units.Fraction(solids)}}
}

// premix is the reference premix of the trade's guides: cement 50, sand 50, water
// 14.5, emulsion 5, plasticiser 0.5 kg and 3 % fibre of the whole.
func premix(air units.Fraction) material.Mix {
	m := material.Mix{Name: "premix", Use: "backer", Kind: material.Scratch, Ingredients: []material.Ingredient{
		ingredient("cement", "cement", 50, 3.15, 0), ingredient("sand", "sand", 50, 2.65, 0), ingredient("water", "water", 14.5, 1, 0),
		ingredient("emulsion", "polymer", 5, 1.06, 0.5), ingredient("plasticiser", "plasticiser", 0.5, 1.10, 0),
		ingredient("fibre", "fibre", 120*0.03/0.97, 2.68, 0)}}
	m.Air.Value, m.WaterMin.Value, m.WaterMax.Value = air, 0.3, 0.38
	return m
}

// mist is the premix without fibre, for face coats.
func mist() material.Mix {
	m := premix(0.05)
	m.Name, m.Use, m.Ingredients = "mist", "face", m.Ingredients[:5]
	return m
}

// bagged is a dry blend of 100 kg with 13 to 16 kg of water.
func bagged() material.Mix {
	m := material.Mix{Name: "bagged", Use: "any", Kind: material.Bagged, Ingredients: []material.Ingredient{ingredient("blend", "blend", 100, 2.8, 0)}}
	m.WaterMin.Value, m.WaterMax.Value, m.WetDensity.Value = 0.13, 0.16, 2080
	return m
}

// box is a plain box with a shell of 19 mm in three coats.
func box() Input {
	return Input{Length: 600, Width: 400, Height: 300, Tub: 20, Freeboard: 0.3, Spare: 0.05, People: 3, Temperature: 20,
		Coats: []Coat{{"face", 4, mist()}, {"backer 1", 7.5, premix(0.05)}, {"backer 2", 7.5, premix(0.05)}}}
}

func mirrored(in Input) Input {
	out := in
	out.Layers = nil
	for _, l := range in.Layers {
		turned := l.Region.Shape().Map(func(p geom.Point) geom.Point { return geom.Point{X: in.Length.MM() - p.X, Y: p.Y} }, true)
		out.Layers = append(out.Layers, Layer{l.From, l.To, seen(turned)})
	}
	return out
}

func codesOf(found []finding.Finding) string {
	var codes []string
	for _, f := range found {
		codes = append(codes, f.Code)
	}
	return strings.Join(codes, " ")
}
