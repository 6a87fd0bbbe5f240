package resin

import (
	"math"
	"testing"

	"pourwright/internal/units"
)

func TestTintAtTheSamplesDepthIsTheSample(t *testing.T) {
	tint := Tint{Colour: "#1e5f74", Depth: 25}
	got, err := tint.shades([]units.Length{0, 12.5, 25, 50})
	if err != nil {
		t.Fatal(err)
	}
	if got[0].Colour != paleFloor {
		t.Errorf("no depth shows the floor, not %s", got[0].Colour)
	}
	if got[2].Colour != "#1e5f74" {
		t.Errorf("the sample's depth shows %s", got[2].Colour)
	}
	// Twice the depth absorbs the square: light in red falls from L0 to L0^2/F.
	f, _ := linear(paleFloor)
	s, _ := linear("#1e5f74")
	deep, _ := linear(got[3].Colour)
	for k := range f {
		if want := s[k] * s[k] / f[k]; math.Abs(deep[k]-want) > 0.003 {
			t.Errorf("channel %d at twice the depth: %.4f, want %.4f", k, deep[k], want)
		}
	}
}

func TestTintRefusesWhatIsNoColour(t *testing.T) {
	for _, tint := range []Tint{{Colour: "blue", Depth: 25}, {Colour: "#12345", Depth: 25}, {Colour: "#zzzzzz", Depth: 25}, {Colour: "#112233", Depth: 0}, {Colour: "#112233", Floor: "x", Depth: 2}} {
		if _, err := tint.shades([]units.Length{10}); err == nil {
			t.Errorf("%+v was taken", tint)
		}
	}
}

func TestPracticeOfThePour(t *testing.T) {
	in := basin(FillPoint{25, 4}, FillPoint{50, 12}, FillPoint{75, 24})
	in.Tint = Tint{Colour: "#1e5f74", Depth: 25, Share: 0.005}
	in.Pot, in.Vacuum, in.Slope, in.Length = 8, 28, 0.5, 1200
	r, _ := Compute(in)
	if r.Degas == nil || r.Degas.Pull != 2 {
		t.Fatalf("degassing: %+v", r.Degas)
	}
	for _, l := range r.Lifts {
		var tint, mass units.Mass
		for _, b := range l.Batches {
			tint += b.Tint
			mass += b.A + b.B
			if want := int(math.Ceil(float64(b.Volume)/2 - 1e-9)); b.Pulls != want {
				t.Errorf("bucket of %.2f l takes %d pulls, want %d", b.Volume, b.Pulls, want)
			}
		}
		if math.Abs(float64(tint/mass)-0.005) > 1e-12 || math.Abs(float64(l.Tint-tint)) > 1e-12 {
			t.Errorf("lift %d: tint %.5f of %.3f kg", l.Number, tint, mass)
		}
		for i, at := range l.Torch {
			if at <= 0 || i > 0 && at <= l.Torch[i-1] {
				t.Errorf("torch rounds %v", l.Torch)
			}
		}
	}
	if r.Shim == nil || math.Abs(r.Shim.Under.MM()-0.6) > 1e-12 {
		t.Errorf("shim %+v, want 0.6 mm", r.Shim)
	}
}
