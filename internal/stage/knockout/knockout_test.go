package knockout

import (
	"math"
	"slices"
	"testing"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/published"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

func TestParts(t *testing.T) {
	tri := view.Of[view.Finished](geom.Build([]geom.Ring{{{X: 100, Y: 50}, {X: 900, Y: 50}, {X: 100, Y: 350}}}, geom.NonZero))
	low := view.Of[view.Finished](geom.Region(slices.Concat(geom.Rect(120, 60, 200, 100).Region(), geom.Rect(220, 60, 400, 100).Region())))
	r, found := Compute(Input{Length: 1000, Width: 400, Foam: 25, SheetX: 1250, SheetY: 600, Density: 30,
		Layers: []Layer{{1, "a", 25, tri}, {2, "b", 30, low}}})
	if len(r.Parts) != 3 || !slices.Equal(r.Glue, []string{"L1-A", "L2-B", "L2-A"}) {
		t.Fatalf("parts %+v, glue %v", r.Parts, r.Glue)
	}
	// The right angle lies at x 100 on the finished piece, so at x 900 in the form.
	box := r.Parts[0].Region.Shape().Box()
	if box.Min.X != 100 || box.Max.X != 900 || !r.Parts[0].Region.Shape().Contains(geom.Point{X: 890, Y: 300}) || r.Parts[0].Region.Shape().Contains(geom.Point{X: 110, Y: 300}) {
		t.Errorf("part is not mirrored: %v", r.Parts[0].Region.Shape())
	}
	for _, p := range r.Parts {
		if !p.Region.Shape().Contains(geom.Point(p.LabelAt)) {
			t.Errorf("label of %s lies outside it", p.ID)
		}
	}
	if !slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Code == "knockout/thickness" }) {
		t.Errorf("30 mm of 25 mm foam passed: %v", found)
	}
	if math.Abs(float64(r.Volume)-(120000*25+(80+180)*40*30)*1e-6) > 1e-9 {
		t.Errorf("volume %v", r.Volume)
	}
}

func TestPublishedUplift(t *testing.T) {
	v := units.Area(600 * 400).Times(60)
	m := units.Density(30).Of(v)
	published.Run(t,
		published.Check{Room: "knockout", Name: "uplift of a 600 x 400 x 60 mm foam in fresh concrete", Ours: float64(Uplift(v, m, 2100)), Theirs: 292, Unit: "N", Tol: 0.5, Source: "analytic", Place: "(2100-30) 0.0144 g"},
		published.Check{Room: "knockout", Name: "uplift of the same foam in resin", Ours: float64(Uplift(v, m, 1100)), Theirs: 151, Unit: "N", Tol: 0.5, Source: "analytic", Place: "(1100-30) 0.0144 g"},
	)
}

func TestNothing(t *testing.T) {
	if r, found := Compute(Input{}); len(r.Parts) != 0 || len(found) != 0 || r.Glue == nil {
		t.Errorf("parts from nothing: %+v %v", r, found)
	}
}
