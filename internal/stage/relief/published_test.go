package relief

import (
	"math"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/published"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// stack returns n steps through depth h whose outlines shape draws for the share of
// the depth at the middle of each step.
func stack(n int, h float64, shape func(share float64) view.Region[view.Finished]) Input {
	in := input()
	for i := range n {
		in.Steps = append(in.Steps, Step{Name: "s", Depth: units.Length(h / float64(n)), Region: shape((float64(i) + 0.5) / float64(n))})
	}
	return in
}

// TestPublishedFrustumStack stacks the steps of a square pyramid frustum, each cut
// at its middle; the stack differs from h (a^2 + ab + b^2)/3 by a d^2 term alone:
// sum of s_i^2 d over n steps = exact - (a-b)^2 h/(12 n^2).
func TestPublishedFrustumStack(t *testing.T) {
	const a, b, h, n = 300.0, 100.0, 40.0, 8
	r, _ := Compute(stack(n, h, func(share float64) view.Region[view.Finished] {
		s := a - (a-b)*share
		return rect(500-s/2, 200-s/2, 500+s/2, 200+s/2)
	}))
	exact := h*(a*a+a*b+b*b)/3 - (a-b)*(a-b)*h/(12*n*n)
	published.Run(t, published.Check{Room: "relief", Name: "basin volume of a stepped pyramid frustum", Ours: r.Volume.MM3(), Theirs: exact, Unit: "mm3", Tol: exact * 1e-6, Source: "analytic", Place: "midpoint sum of a quadratic"})
}

// TestPublishedCone stacks the steps of a cone frustum of regular 96-gons. A
// polygon's area is (n/2) sin(2 pi/n) r^2, the stack's the same midpoint sum.
func TestPublishedCone(t *testing.T) {
	const a, b, h, n, corners = 150.0, 60.0, 50.0, 10, 96
	r, _ := Compute(stack(n, h, func(share float64) view.Region[view.Finished] {
		ring := make(geom.Ring, corners)
		for i := range ring {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
			ring[i] = geom.Point{X: 500 + (a-(a-b)*share)*cos, Y: 200 + (a-(a-b)*share)*sin}
		}
		return view.Of[view.Finished](geom.Build([]geom.Ring{ring}, geom.NonZero))
	}))
	gon := corners / 2.0 * math.Sin(2*math.Pi/corners)
	exact := gon * (h*(a*a+a*b+b*b)/3 - (a-b)*(a-b)*h/(12*n*n))
	smooth := math.Pi * h * (a*a + a*b + b*b) / 3
	published.Run(t,
		published.Check{Room: "relief", Name: "basin volume of a stepped cone frustum of 96-gons", Ours: r.Volume.MM3(), Theirs: exact, Unit: "mm3", Tol: exact * 1e-5, Source: "analytic", Place: "polygon area times midpoint sum"},
		published.Check{Room: "relief", Name: "the same against the smooth cone frustum", Ours: r.Volume.MM3(), Theirs: smooth, Unit: "mm3", Tol: smooth * 2e-3, Source: "analytic", Place: "pi h (a2 + ab + b2)/3; 96-gon 0.07 %, ten steps 0.06 %"},
	)
}

// TestPublishedMouth is a V-shaped run-off cut in steps: the opening is the sum of
// the steps' widths, which for a wedge of width w and depth h is w h/2.
func TestPublishedMouth(t *testing.T) {
	const w, h, n = 200.0, 60.0, 12
	r, _ := Compute(stack(n, h, func(share float64) view.Region[view.Finished] {
		half := w / 2 * (1 - share)
		return rect(300, 200-half, 1003, 200+half)
	}))
	if len(r.Mouths) != 1 {
		t.Fatalf("mouths: %+v", r.Mouths)
	}
	published.Run(t, published.Check{Room: "relief", Name: "opening of a stepped V-shaped mouth", Ours: float64(r.Mouths[0].Opening), Theirs: w * h / 2, Unit: "mm2", Tol: 1e-6 * w * h, Source: "analytic", Place: "midpoint sum of a line is exact"})
}
