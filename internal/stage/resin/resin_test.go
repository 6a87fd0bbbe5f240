package resin

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/material"
	"pourwright/internal/published"
	"pourwright/internal/units"
)

func card(lo, hi units.Length) material.Resin {
	var c material.Resin
	c.Name = "test resin"
	c.Density.Value, c.DensityA.Value, c.DensityB.Value = 1100, 1130, 990
	c.RatioA.Value, c.RatioB.Value = 2, 1
	c.MinDepth.Value, c.MaxDepth.Value, c.Shrinkage.Value = lo, hi, 0.03
	return c
}

func basin(points ...FillPoint) Input {
	return Input{Fill: append([]FillPoint{{}}, points...), TopArea: 2e5, Wetted: 3e5, Card: card(10, 50), Bucket: 10, Freeboard: 0.4, Reserve: 0.05, Overfill: 1, Film: 0.2, Gap: 1}
}

func TestPublishedRatio(t *testing.T) {
	c := &computer{in: basin()}
	byVolume := 100 * c.bPerA()
	published.Run(t,
		published.Check{Room: "resin", Name: "B for 100 A by mass, 2:1 by volume at 1.13 and 0.99", Ours: byVolume, Theirs: 43.8, Unit: "kg", Tol: 0.05, Source: "analytic", Place: "100 (1/2)(0.99/1.13)"},
		published.Check{Room: "resin", Name: "hardener when 2:1 by volume is weighed as 2:1 by mass", Ours: 100 * (50/byVolume - 1), Theirs: 14, Unit: "%", Tol: 0.5, Source: "analytic", Place: "1.13/0.99 - 1"},
		published.Check{Room: "resin", Name: "hardener when 2:1 by mass is measured by volume", Ours: 100 * (byVolume/50 - 1), Theirs: -12, Unit: "%", Tol: 0.5, Source: "analytic", Place: "0.99/1.13 - 1"},
	)
}

func TestLifts(t *testing.T) {
	r, _ := Compute(basin(FillPoint{20, 1}, FillPoint{45, 4}, FillPoint{70, 8}))
	if len(r.Lifts) != 2 || r.Lifts[0].To != 35 {
		t.Errorf("70 mm in lifts of 10 to 50: %+v", r.Lifts)
	}
	// The middle, 35, lies just above this terrace, so the lift must end on it or clear of it.
	r, _ = Compute(basin(FillPoint{34.6, 1}, FillPoint{70, 8}))
	if e := r.Lifts[0].To; e > 34.6+1e-9 && e < 35.6 {
		t.Errorf("first lift ends %.1f, just above the terrace at 34.6", e)
	}
}

func TestPropertyVolumesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := basin()
		d, v := units.Length(0), units.Volume(0)
		for range rapid.IntRange(1, 6).Draw(t, "n") {
			d += units.Length(rapid.Float64Range(1, 60).Draw(t, "d"))
			v += units.Volume(rapid.Float64Range(0.01, 5).Draw(t, "v"))
			in.Fill = append(in.Fill, FillPoint{d, v})
		}
		r, found := Compute(in)
		sum, depth := 0.0, 0.0
		odd := false
		for _, f := range found {
			odd = odd || f.Code == "resin/no-split" || f.Code == "resin/too-shallow"
		}
		for _, l := range r.Lifts {
			sum += float64(l.Volume)
			depth += float64(l.Depth)
			if !odd && (l.Depth < 10-1e-6 || l.Depth > 50+1e-6) {
				t.Errorf("lift of %v mm outside 10 to 50 without a finding", l.Depth)
			}
			if math.Abs(float64(l.A+l.B-units.Density(1100).Of(l.Pour))) > 1e-9 || math.Abs(float64(l.B/l.A)-0.5*0.99/1.13) > 1e-9 {
				t.Errorf("A %v and B %v do not weigh %v l", l.A, l.B, l.Pour)
			}
		}
		if math.Abs(sum-float64(v)) > 1e-9*(1+sum) || math.Abs(depth-float64(d)) > 1e-6 || r.Order < r.Volume {
			t.Errorf("lifts add up to %v l and %v mm of %v l and %v mm, order %v", sum, depth, v, d, r.Order)
		}
	})
}

func TestWeirdInputDoesNotPanic(t *testing.T) {
	nan := units.Length(math.NaN())
	for _, in := range []Input{{}, basin(FillPoint{nan, 1}), {Fill: []FillPoint{{}, {10, 1}}}, {Fill: []FillPoint{{}, {1e9, 1}}, Card: card(1, 2)}} {
		r, found := Compute(in)
		if len(found) == 0 || math.IsNaN(float64(r.Order)) {
			t.Errorf("no finding, or NaN, for %+v", in)
		}
	}
}
