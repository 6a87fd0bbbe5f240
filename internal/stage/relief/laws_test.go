package relief

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// blob draws a lopsided star-shaped outline round a point in or near the box.
func blob(t *rapid.T) view.Region[view.Finished] {
	x, y := rapid.Float64Range(-50, 1050).Draw(t, "x"), rapid.Float64Range(-50, 450).Draw(t, "y")
	ring := make(geom.Ring, rapid.IntRange(3, 14).Draw(t, "corners"))
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(ring)))
		k := rapid.Float64Range(20, 400).Draw(t, "radius")
		ring[i] = geom.Point{X: x + k*cos, Y: y + k*sin}
	}
	return view.Of[view.Finished](geom.Build([]geom.Ring{ring}, geom.NonZero))
}

func steps(t *rapid.T) Input {
	in := input()
	for range rapid.IntRange(1, 4).Draw(t, "steps") {
		in.Steps = append(in.Steps, Step{Depth: units.Length(rapid.Float64Range(0.5, 80).Draw(t, "depth")), Region: blob(t)})
	}
	return in
}

// TestLaws holds on any steps: layers lie in the box and each in the one above,
// volumes add up to the end of the fill curve, which rises, and mouths stay on their
// sides; what the maker drew is either kept or a finding.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := steps(t)
		r, found := Compute(in)
		above := geom.Rect(0, 0, 1000, 400).Region()
		sum := 0.0
		for i, l := range r.Layers {
			if out := geom.Subtract(l.Region.Shape(), above).Area(); out > 1e-3*l.Perimeter.MM() {
				t.Fatalf("layer %d reaches %g mm2 out", l.Number, out)
			}
			if l.Number != i+1 || i > 0 && l.From != r.Layers[i-1].To {
				t.Fatalf("layers do not follow each other: %+v", r.Layers)
			}
			above = l.Region.Shape()
			sum += float64(l.Area) * float64(l.To-l.From) * 1e-6
		}
		if math.Abs(sum-float64(r.Volume)) > 1e-9*(1+sum) {
			t.Fatalf("layers hold %g l, the basin %g", sum, r.Volume)
		}
		checkFill(t, r)
		for _, m := range r.Mouths {
			length := units.Length(400)
			if m.Side == view.Near || m.Side == view.Far {
				length = 1000
			}
			if m.From < -0.001 || m.From+m.Width > length+0.001 || m.Depth > r.Depth || float64(m.Opening) > float64(m.Width*m.Depth)*(1+1e-9) {
				t.Fatalf("mouth %+v", m)
			}
		}
		if len(r.Layers) < len(in.Steps) {
			if worst, _ := finding.Worst(found); worst != finding.Stop {
				t.Fatalf("a step is lost without a stop: %v", found)
			}
		}
	})
}

func checkFill(t *rapid.T, r Result) {
	if len(r.Layers) == 0 {
		return
	}
	if len(r.Fill) != len(r.Layers)+1 || r.Fill[0].Depth != 0 || r.Fill[0].Volume != 0 {
		t.Fatalf("fill: %+v", r.Fill)
	}
	end := r.Fill[len(r.Fill)-1]
	if math.Abs(float64(end.Volume-r.Volume)) > 1e-9*(1+float64(r.Volume)) || math.Abs(float64(end.Depth-r.Depth)) > 1e-9 {
		t.Fatalf("fill ends at %+v, the basin has %v l and %v mm", end, r.Volume, r.Depth)
	}
	for i, p := range r.Fill[1:] {
		if p.Depth <= r.Fill[i].Depth || p.Volume <= r.Fill[i].Volume || p.Area < r.Fill[i].Area-1 {
			t.Fatalf("fill does not rise: %+v", r.Fill)
		}
	}
}

// TestTurnedPiece: a half turn of box and basin changes no area, volume or width,
// and moves every mouth to the opposite side.
func TestTurnedPiece(t *testing.T) {
	opposite := map[view.Side]view.Side{view.Left: view.Right, view.Right: view.Left, view.Near: view.Far, view.Far: view.Near}
	rapid.Check(t, func(t *rapid.T) {
		in := steps(t)
		turned := in
		turned.Steps = nil
		for _, s := range in.Steps {
			s.Region = view.Of[view.Finished](s.Region.Shape().Map(func(p geom.Point) geom.Point { return geom.Point{X: 1000 - p.X, Y: 400 - p.Y} }, false))
			turned.Steps = append(turned.Steps, s)
		}
		a, _ := Compute(in)
		b, _ := Compute(turned)
		if len(a.Layers) != len(b.Layers) || math.Abs(float64(a.Volume-b.Volume)) > 1e-5*(1+float64(a.Volume)) {
			t.Fatalf("turned, the basin holds %v l instead of %v", b.Volume, a.Volume)
		}
		width := map[view.Side]float64{}
		for _, m := range a.Mouths {
			width[m.Side] += m.Width.MM()
		}
		for _, m := range b.Mouths {
			width[opposite[m.Side]] -= m.Width.MM()
		}
		for side, w := range width {
			if math.Abs(w) > 0.05 {
				t.Fatalf("mouths on %s differ by %g mm from those of the turned piece", side, w)
			}
		}
	})
}

// TestInputIsNotWrittenTo keeps the stage pure.
func TestInputIsNotWrittenTo(t *testing.T) {
	in := input(Step{Depth: 25, Region: rect(200, 100, 1050, 300)}, Step{Depth: 20, Region: rect(100, 150, 400, 250)})
	Compute(in)
	if in.Steps[0].Region.Area() != 850*200 || in.Steps[1].Region.Area() != 300*100 {
		t.Errorf("steps were changed: %+v", in.Steps)
	}
}
