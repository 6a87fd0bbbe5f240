package toolpath

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// TestAnythingGoes draws rings that cross themselves, slivers, specks and settings
// that make no sense: every sheet gives a program or a reason, and no number is lost.
func TestAnythingGoes(t *testing.T) {
	odd := []float64{0, -1, 1e-9, 0.01, 3, 1e9, math.Inf(1), math.NaN()}
	length := func(rt *rapid.T, name string, usual units.Length) units.Length {
		if rapid.IntRange(0, 3).Draw(rt, name+" odd") > 0 {
			return usual
		}
		return units.Length(rapid.SampledFrom(odd).Draw(rt, name))
	}
	rapid.Check(t, func(rt *rapid.T) {
		var rings []geom.Ring
		for range rapid.IntRange(0, 3).Draw(rt, "rings") {
			var r geom.Ring
			for range rapid.IntRange(0, 12).Draw(rt, "corners") {
				r = append(r, geom.Point{X: rapid.Float64Range(8, 290).Draw(rt, "x"), Y: rapid.Float64Range(8, 290).Draw(rt, "y")})
			}
			rings = append(rings, r)
		}
		raw := geom.Region{}
		for _, r := range rings {
			raw = append(raw, geom.Polygon{Outer: r})
		}
		if rapid.Bool().Draw(rt, "clean") {
			raw = geom.Build(rings, geom.EvenOdd)
		}
		m := router()
		m.Cutter, m.Flute, m.StepDown = length(rt, "cutter", 6), length(rt, "flute", 30), length(rt, "step", 5)
		m.SafeHeight, m.Overcut, m.TabWidth = length(rt, "safe", 5), length(rt, "overcut", 0.3), length(rt, "tab", 8)
		m.Feed, m.Rapid = units.Speed(length(rt, "feed", 1500)), units.Speed(length(rt, "rapid", 4000))
		p := Part{ID: "X", Region: view.Of[view.Form](raw), TabsOn: rings}
		s := Sheet{Name: "odd", SizeX: length(rt, "width", 300), SizeY: 300, Thickness: length(rt, "thick", 20), Parts: []Part{p}}
		r, found := Compute(Input{Sheets: []Sheet{s}, Machine: m})
		if len(r.Programs) == 0 && len(found) == 0 {
			rt.Fatal("neither a program nor a reason")
		}
		for _, p := range r.Programs {
			if strings.Contains(p.Text, "NaN") || strings.Contains(p.Text, "Inf") || strings.Contains(p.Text, "e+") || math.IsNaN(float64(p.Minutes)) {
				rt.Fatalf("a number is lost: %v", p.Minutes)
			}
		}
	})
}
