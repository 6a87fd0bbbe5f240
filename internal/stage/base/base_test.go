package base

import (
	"math"
	"testing"

	"pourwright/internal/cutlist"
)

func piece() Input {
	return Input{Length: 1220, Width: 410, Height: 430, Shell: 19, Basin: 74,
		Carcass: &Carcass{Board: "ply", Thickness: 18, Density: 550, Clearance: 3, Dividers: 1, Joint: "groove", Groove: 5, Open: "near", Rail: 60},
		Cut:     cutlist.Input{Board: "ply", SheetX: 2440, SheetY: 1220, Kerf: 3.2, Trim: 10}, BarKerf: 2,
		Supports: []Support{{Name: "tube", Tube: "tube 25 x 2", Side: 25, Wall: 2, MassPerM: 1.36, Bar: 6000, Length: 360, Count: 3, Bolt: 8}}}
}

// TestCarcass is worked by hand: 1220 - 38 - 6 = 1176 by 410 - 38 - 6 = 366; the hollow
// is 430 - 74 - 19 = 337 high; ends 366 - 36 + 10 = 340; top 1176 - 36 + 10 = 1150 by 340.
func TestCarcass(t *testing.T) {
	r, found := Compute(piece())
	if !r.Wanted || r.Length != 1176 || r.Width != 366 || r.Height != 357 || r.Reveal != 20 {
		t.Errorf("%+v", r)
	}
	want := map[string][3]float64{"base side": {1176, 357, 2}, "base end": {340, 357, 2}, "base divider": {340, 331, 1}, "base bottom": {1150, 340, 1}, "base top": {1150, 340, 1}}
	for _, p := range r.Parts {
		w := want[p.Name]
		if math.Abs(p.Length.MM()-w[0]) > 1e-9 || math.Abs(p.Width.MM()-w[1]) > 1e-9 || p.Count != int(w[2]) {
			t.Errorf("%s: %v x %v, %d", p.Name, p.Length, p.Width, p.Count)
		}
	}
	if len(r.Openings) != 2 || len(r.Cutting.Unplaced) > 0 || r.Cutting.Buy == 0 || len(r.Bars) != 1 || r.Bars[0].Buy != 1 {
		t.Errorf("openings %v, unplaced %v, bars %+v, %v", r.Openings, r.Cutting.Unplaced, r.Bars, found)
	}
}

func TestBadBases(t *testing.T) {
	for name, c := range map[string]struct {
		code   string
		change func(*Input)
	}{
		"no room":       {"base/too-small", func(in *Input) { in.Width = 150 }},
		"no board":      {"base/too-small", func(in *Input) { in.Carcass.Thickness = 0 }},
		"short":         {"base/short", func(in *Input) { in.Carcass.Height = 300 }},
		"deep grooves":  {"base/groove", func(in *Input) { in.Carcass.Groove = 12 }},
		"small bays":    {"base/opening", func(in *Input) { in.Carcass.Dividers = 12 }},
		"long tube":     {"base/tube-long", func(in *Input) { in.Supports[0].Length = 400 }},
		"wide socket":   {"base/hole-wide", func(in *Input) { in.Supports[0].Bolt = 12 }},
		"off the sides": {"base/hole-miss", func(in *Input) { in.Supports[0].FromEnd = 100 }},
		"in the shell":  {"base/support-outside", func(in *Input) { in.Supports[0].At = append(in.Supports[0].At, 5) }},
	} {
		in := piece()
		c.change(&in)
		r, found := Compute(in)
		ok := false
		for _, f := range found {
			ok = ok || f.Code == c.code
		}
		if !ok || len(r.Supports) != 1 {
			t.Errorf("%s: want %s, got %v", name, c.code, found)
		}
	}
}

// TestSections: without holes it is the tube's own; equal holes on both faces take
// twice the face's area at its arm.
func TestSections(t *testing.T) {
	whole, same := sections(25, 2, boltSize{8.5, 8.5})
	inertia := (math.Pow(25, 4)-math.Pow(21, 4))/12 - 2*8.5*2*(11.5*11.5+4./12)
	if math.Abs(whole-2*(math.Pow(25, 4)-math.Pow(21, 4))/12/25) > 1e-9 || math.Abs(same-2*inertia/25) > 1e-9 {
		t.Errorf("%v, %v", whole, same)
	}
}
