package relief

import (
	"math"
	"strings"
	"testing"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/published"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

func rect(x0, y0, x1, y1 float64) view.Region[view.Finished] {
	return view.Of[view.Finished](geom.Rect(x0, y0, x1, y1).Region())
}

func input(steps ...Step) Input {
	return Input{Length: 1000, Width: 400, Height: 400, Shell: 20, Steps: steps, Neck: 25, Land: 40, Island: 30, Tolerance: 0.01}
}

func TestLayersMouthAndFill(t *testing.T) {
	r, found := Compute(input(
		Step{Name: "a", Depth: 25, Region: rect(200, 100, 1003, 300)},
		Step{Name: "b", Depth: 20, Region: rect(400, 150, 1003, 250)},
	))
	if want := 0.8*0.2*25 + 0.6*0.1*20; math.Abs(float64(r.Volume)-want) > 1e-9 {
		t.Errorf("volume %v l, want %v", r.Volume, want)
	}
	if len(r.Mouths) != 1 {
		t.Fatalf("mouths: %+v", r.Mouths)
	}
	m := r.Mouths[0]
	if m.Side != view.Right || m.Width != 200 || m.Depth != 45 || math.Abs(float64(m.Opening)-(200*25+100*20)) > 1e-6 || m.From != 100 {
		t.Errorf("mouth: %+v", m)
	}
	if n := len(r.Fill); n != 3 || r.Fill[1].Volume != 1.2 || r.Fill[2].Depth != 45 {
		t.Errorf("fill: %+v", r.Fill)
	}
	for _, f := range found {
		if f.Severity != finding.Note {
			t.Errorf("unexpected: %v", f)
		}
	}
}

func TestFindings(t *testing.T) {
	for _, c := range []struct {
		name, code, text string
		in               Input
	}{
		{"outside", "relief/outside", "wholly outside", input(Step{Name: "a", Depth: 25, Region: rect(2000, 0, 2100, 100)})},
		{"far overrun", "relief/overrun", "50.0 mm past", input(Step{Name: "a", Depth: 25, Region: rect(200, 100, 1050, 300)})},
		{"undercut", "relief/undercut", "up to 30.0 mm under", input(Step{Name: "a", Depth: 25, Region: rect(200, 100, 500, 300)}, Step{Name: "b", Depth: 20, Region: rect(170, 150, 400, 250)})},
		{"too deep", "relief/too-deep", "400.0 mm high", input(Step{Name: "a", Depth: 390, Region: rect(200, 100, 500, 300)})},
		{"no depth", "relief/no-depth", "0.00 mm of depth", input(Step{Name: "a", Region: rect(200, 100, 500, 300)})},
		{"neck", "relief/neck", "only 20.0 mm", input(Step{Name: "a", Depth: 25, Region: rect(100, 100, 300, 300).Union(rect(300, 190, 500, 210)).Union(rect(500, 100, 700, 300))})},
		{"land", "relief/land", "only 30.0 mm", input(Step{Name: "a", Depth: 25, Region: rect(100, 30, 300, 300)})},
		{"island", "relief/island", "only 20.0 mm", input(Step{Name: "a", Depth: 25, Region: rect(100, 100, 500, 300).Subtract(rect(200, 190, 300, 210))})},
	} {
		_, found := Compute(c.in)
		ok := false
		for _, f := range found {
			ok = ok || f.Code == c.code && strings.Contains(f.Text, c.text)
		}
		if !ok {
			t.Errorf("%s: want %s with %q, got %+v", c.name, c.code, c.text, found)
		}
	}
}

func TestWeirdInputDoesNotPanic(t *testing.T) {
	nan := units.Length(math.NaN())
	for _, in := range []Input{{}, {Length: nan, Width: nan}, input(), input(Step{Depth: nan, Region: rect(0, 0, 1, 1)})} {
		if r, _ := Compute(in); len(r.Layers) != 0 {
			t.Errorf("layers from nothing: %+v", r)
		}
	}
}

// TestPublishedFrustumStack stacks the steps of a square pyramid frustum, each cut
// at its middle; the stack differs from h (a^2 + ab + b^2)/3 by a d^2 term alone:
// sum of s_i^2 d over n steps = exact - (a-b)^2 h/(12 n^2).
func TestPublishedFrustumStack(t *testing.T) {
	const a, b, h, n = 300.0, 100.0, 40.0, 8
	in := input()
	for i := range n {
		s := a - (a-b)*(float64(i)+0.5)/n
		in.Steps = append(in.Steps, Step{Name: "s", Depth: h / n, Region: rect(500-s/2, 200-s/2, 500+s/2, 200+s/2)})
	}
	r, _ := Compute(in)
	exact := h*(a*a+a*b+b*b)/3 - (a-b)*(a-b)*h/(12*n*n)
	published.Run(t, published.Check{Room: "relief", Name: "basin volume of a stepped pyramid frustum", Ours: r.Volume.MM3(), Theirs: exact, Unit: "mm3", Tol: exact * 1e-6, Source: "analytic", Place: "midpoint sum of a quadratic"})
}
