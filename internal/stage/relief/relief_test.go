package relief

import (
	"math"
	"strings"
	"testing"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
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
		{"undercut into an island", "relief/undercut", "up to 20.0 mm under a, over 8000 mm2", input(Step{Name: "a", Depth: 25, Region: rect(100, 100, 500, 300).Subtract(rect(200, 180, 400, 220))}, Step{Name: "b", Depth: 20, Region: rect(120, 120, 480, 280)})},
		{"undercut all round, deepest at a corner", "relief/undercut", "up to 53.9 mm under", input(Step{Name: "a", Depth: 25, Region: rect(200, 120, 500, 280)}, Step{Name: "b", Depth: 20, Region: rect(150, 100, 550, 300)})},
		{"beside the layer above", "relief/undercut", "No part of step b", input(Step{Name: "a", Depth: 25, Region: rect(200, 120, 500, 280)}, Step{Name: "b", Depth: 20, Region: rect(600, 100, 800, 300)})},
		{"narrow mouth", "relief/neck", "only 18.0 mm", input(Step{Name: "a", Depth: 25, Region: rect(100, 100, 300, 300).Union(rect(0, 190, 100, 208))})},
		{"land beside a mouth", "relief/land", "only 30.0 mm", input(Step{Name: "a", Depth: 25, Region: rect(0, 30, 300, 300)})},
		{"land between two mouths", "relief/land", "only 12.0 mm", input(Step{Name: "a", Depth: 25, Region: rect(100, 100, 300, 300).Union(rect(0, 130, 100, 190)).Union(rect(0, 202, 100, 270))})},
		{"skin at the side", "relief/land", "only 0.5 mm", input(Step{Name: "a", Depth: 25, Region: rect(0.5, 100, 300, 300)})},
		{"spit", "relief/land", "juts out, only 10.0 mm", input(Step{Name: "a", Depth: 25, Region: rect(100, 100, 500, 300).Subtract(rect(200, 100, 210, 240))})},
		{"bank between two pools", "relief/land", "only 14.0 mm", input(Step{Name: "a", Depth: 25, Region: rect(100, 100, 500, 300)}, Step{Name: "b", Depth: 20, Region: rect(120, 120, 300, 280).Union(rect(314, 120, 480, 280))})},
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

// TestUndercutIsCutBack: the rest of the plan works on what can be cast.
func TestUndercutIsCutBack(t *testing.T) {
	r, found := Compute(input(Step{Name: "a", Depth: 25, Region: rect(200, 100, 500, 300)}, Step{Name: "b", Depth: 20, Region: rect(170, 150, 400, 250)}))
	if len(r.Layers) != 2 || r.Layers[1].Area != 200*100 {
		t.Errorf("layers: %+v", r.Layers)
	}
	f := found[0]
	if f.Code != "relief/undercut" || f.Severity != finding.Stop || f.Where.At == nil || f.Where.At[0] != 170 || f.Where.View != "finished" || f.Got != 30 {
		t.Errorf("finding: %+v", f)
	}
}

// TestSliversAreNoUndercut: one curve flattened twice differs by its chord error.
func TestSliversAreNoUndercut(t *testing.T) {
	r, found := Compute(input(Step{Name: "a", Depth: 25, Region: rect(200, 100, 500, 300)}, Step{Name: "b", Depth: 20, Region: rect(199.96, 100.02, 500.03, 300)}))
	for _, f := range found {
		t.Errorf("unexpected: %+v", f)
	}
	if r.Layers[1].Area > r.Layers[0].Area {
		t.Errorf("layer 2 is not cut back: %v over %v mm2", r.Layers[1].Area, r.Layers[0].Area)
	}
}

func TestMouths(t *testing.T) {
	type want struct {
		side                       view.Side
		from, width, depth, square float64
	}
	for _, c := range []struct {
		name string
		in   Input
		want []want
	}{
		{"closed", input(Step{Depth: 25, Region: rect(100, 100, 900, 300)}), nil},
		{"round a corner", input(Step{Depth: 25, Region: rect(-5, -5, 300, 200)}),
			[]want{{view.Left, 0, 200, 25, 5000}, {view.Near, 0, 300, 25, 7500}}},
		{"two on one side", input(Step{Depth: 10, Region: rect(200, 50, 800, 350).Union(rect(0, 100, 200, 150)).Union(rect(0, 250, 200, 320))}),
			[]want{{view.Left, 100, 50, 10, 500}, {view.Left, 250, 70, 10, 700}}},
		{"end to end", input(Step{Depth: 10, Region: rect(0, 100, 1000, 300)}, Step{Depth: 5, Region: rect(0, 150, 1000, 250)}),
			[]want{{view.Left, 100, 200, 15, 2500}, {view.Right, 100, 200, 15, 2500}}},
		{"exactly along a side", input(Step{Depth: 10, Region: rect(0, 200, 1000, 400)}),
			[]want{{view.Left, 200, 200, 10, 2000}, {view.Right, 200, 200, 10, 2000}, {view.Far, 0, 1000, 10, 10000}}},
		{"within the tolerance of a side", input(Step{Depth: 10, Region: rect(300, 0.008, 400, 200)}),
			[]want{{view.Near, 300, 100, 10, 1000}}},
		{"deeper pools split in the mouth", input(Step{Depth: 10, Region: rect(500, 50, 1000, 350)}, Step{Depth: 20, Region: rect(500, 60, 1000, 100).Union(rect(500, 200, 1000, 260))}),
			[]want{{view.Right, 50, 300, 30, 3000 + 2000}}},
		{"deeper step stays inside", input(Step{Depth: 10, Region: rect(500, 50, 1000, 350)}, Step{Depth: 20, Region: rect(600, 60, 900, 100)}),
			[]want{{view.Right, 50, 300, 10, 3000}}},
	} {
		r, _ := Compute(c.in)
		if len(r.Mouths) != len(c.want) {
			t.Errorf("%s: mouths %+v, want %d", c.name, r.Mouths, len(c.want))
			continue
		}
		for i, w := range c.want {
			m := r.Mouths[i]
			near := func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }
			if m.Side != w.side || !near(m.From.MM(), w.from) || !near(m.Width.MM(), w.width) || !near(m.Depth.MM(), w.depth) || !near(float64(m.Opening), w.square) {
				t.Errorf("%s: got %+v, want %+v", c.name, m, w)
			}
			if got := geom.Ring(m.Profile).Area(); !near(got, w.square) {
				t.Errorf("%s: the profile holds %g mm2, the opening %g", c.name, got, w.square)
			}
		}
	}
}

// TestHealthyBasinHasNothingToSay guards against false alarms.
func TestHealthyBasinHasNothingToSay(t *testing.T) {
	for name, in := range map[string]Input{
		"plain":           input(Step{Name: "a", Depth: 25, Region: rect(100, 100, 900, 300)}, Step{Name: "b", Depth: 25, Region: rect(150, 130, 850, 270)}),
		"floor and shell": input(Step{Name: "a", Depth: 380, Region: rect(100, 100, 900, 300)}),
		"wide mouth":      input(Step{Name: "a", Depth: 25, Region: rect(0, 100, 900, 300)}),
		"whole top":       input(Step{Name: "a", Depth: 25, Region: rect(0, 0, 1000, 400)}),
		"island":          input(Step{Name: "a", Depth: 25, Region: rect(100, 50, 900, 350).Subtract(rect(300, 150, 400, 250))}),
		"wavy shore":      input(Step{Name: "a", Depth: 25, Region: wavy(800, 400, 150)}),
	} {
		if r, found := Compute(in); len(found) > 0 || len(r.Narrow) > 0 {
			t.Errorf("%s: %+v", name, found)
		}
	}
}

// TestManyPlacesAreCounted: a comb of narrow teeth gets a few findings and a count.
func TestManyPlacesAreCounted(t *testing.T) {
	region := rect(50, 100, 950, 300)
	for x := 100.0; x < 900; x += 40 {
		region = region.Subtract(rect(x, 150, x+12, 300))
	}
	r, found := Compute(input(Step{Name: "comb", Depth: 25, Region: region}))
	lands, more := 0, 0
	for _, f := range found {
		if f.Code == "relief/land" {
			lands++
			if strings.Contains(f.Text, "13 more places") {
				more++
			}
		}
	}
	if len(r.Narrow) != 19 || lands != maxSaid+1 || more != 1 {
		t.Errorf("%d places, %d findings, %d counts: %v", len(r.Narrow), lands, more, found)
	}
}

func TestWeirdInputDoesNotPanic(t *testing.T) {
	nan := units.Length(math.NaN())
	huge := input(Step{Depth: 1, Region: rect(0, 0, 1, 1)})
	huge.Length = 1e12
	for _, in := range []Input{{}, {Length: nan, Width: nan}, input(), input(Step{Depth: nan, Region: rect(0, 0, 1, 1)}), input(Step{Depth: -3, Region: rect(0, 0, 1, 1)}), input(Step{Depth: 3}), huge} {
		if r, _ := Compute(in); len(r.Layers) != 0 {
			t.Errorf("layers from nothing: %+v", r)
		}
	}
}
