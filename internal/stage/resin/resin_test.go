package resin

import (
	"math"
	"strings"
	"testing"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

// card is an invented resin, 2 to 1 by volume, for lifts of lo to hi.
func card(lo, hi units.Length) material.Resin {
	var c material.Resin
	c.Name = "test resin"
	c.Density.Value, c.DensityA.Value, c.DensityB.Value = 1100, 1130, 990
	c.RatioA.Value, c.RatioB.Value = 2, 1
	c.MinDepth.Value, c.MaxDepth.Value, c.Shrinkage.Value = lo, hi, 0.03
	c.PotLife.Value, c.Gel.Value, c.Recoat.Value, c.Hard.Value = 4.5, 16, 60, 78
	return c
}

// basin is one with the given kinks above 0 litres at depth 0.
func basin(points ...FillPoint) Input {
	return Input{Fill: append([]FillPoint{{}}, points...), TopArea: 2e5, Wetted: 3e5, Card: card(10, 50), Bucket: 10, Freeboard: 0.4,
		Reserve: 0.05, Overfill: 1, Film: 0.2, Gap: 1, Room: 22}
}

func codesOf(found []finding.Finding) string {
	var codes []string
	for _, f := range found {
		codes = append(codes, f.Code)
	}
	return strings.Join(codes, " ")
}

func TestLifts(t *testing.T) {
	for _, c := range []struct {
		name   string
		lo, hi units.Length
		gap    units.Length
		fill   []FillPoint
		want   []units.Length // depths
		code   string
	}{
		{"one lift", 10, 50, 1, []FillPoint{{40, 2}}, []units.Length{40}, ""},
		{"two equal", 10, 50, 1, []FillPoint{{20, 1}, {45, 4}, {70, 8}}, []units.Length{35, 35}, ""},
		{"three equal", 10, 50, 1, []FillPoint{{120, 8}}, []units.Length{40, 40, 40}, ""},
		{"the middle is just above a terrace, so on it", 10, 50, 1, []FillPoint{{34.6, 1}, {70, 8}}, []units.Length{34.6, 35.4}, ""},
		{"exactly the guard above a terrace is too near", 10, 50, 1, []FillPoint{{34, 1}, {70, 8}}, []units.Length{34.5 + 1, 34.5}, ""},
		{"a joint of equal sheets is no terrace", 10, 50, 1, []FillPoint{{34.5, 3.45}, {70, 7}}, []units.Length{35, 35}, ""},
		{"more lifts than fit by depth alone, for a terrace", 10, 20, 15, []FillPoint{{14.8, 1}, {40, 8}}, []units.Length{14.8, 15.2, 10}, ""},
		{"too shallow", 60, 100, 1, []FillPoint{{20, 1}}, []units.Length{20}, "resin/too-shallow"},
		{"a range that leaves a gap: the greatest depth holds", 40, 50, 1, []FillPoint{{70, 5}}, []units.Length{35, 35}, "resin/no-split"},
		{"no way clear of the terraces", 10, 20, 60, []FillPoint{{1, 0.1}, {40, 8}}, []units.Length{20, 20}, "resin/ends-over-terrace"},
		{"no range", 0, 0, 1, []FillPoint{{200, 8}}, []units.Length{200}, "resin/no-range"},
		{"range the wrong way round", 60, 50, 1, []FillPoint{{80, 8}}, []units.Length{40, 40}, "resin/no-range"},
	} {
		in := basin(c.fill...)
		in.Card, in.Gap = card(c.lo, c.hi), c.gap
		r, found := Compute(in)
		ok := len(r.Lifts) == len(c.want)
		for i := range r.Lifts {
			ok = ok && math.Abs(float64(r.Lifts[i].Depth-c.want[i])) < 1e-6
		}
		if !ok {
			t.Errorf("%s: %+v, want depths %v", c.name, r.Lifts, c.want)
		}
		if codes := codesOf(found); c.code != "" && !strings.Contains(codes, c.code) || c.code == "" && strings.Contains(codes, "split") {
			t.Errorf("%s: found %s, want %q", c.name, codes, c.code)
		}
	}
}

// TestOrder adds one basin up by hand: 8 l, 0.24 l of shrink, 0.2 l of overfill, 0.06 l
// of film, 5 % in reserve.
func TestOrder(t *testing.T) {
	in := basin(FillPoint{35, 3}, FillPoint{70, 8})
	r, _ := Compute(in)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"order", float64(r.Order), 8.5 * 1.05},
		{"order, kg", float64(r.OrderKG), 8.5 * 1.05 * 1.1},
		{"order, US gal", r.OrderUS, 8.5 * 1.05 / 3.785411784},
		{"order, imperial gal", r.OrderImp, 8.5 * 1.05 / 4.54609},
		{"order, A and B", float64(r.OrderA + r.OrderB), 8.5 * 1.05 * 1.1},
		{"lift 1", float64(r.Lifts[0].Volume), 3},
		{"lift 1 poured: with its film", float64(r.Lifts[0].Pour), 3 + 0.06*3/8},
		{"lift 2 poured: refills lift 1, its own shrink, film, overfill", float64(r.Lifts[1].Pour), 5 + 0.24 + 0.06*5/8 + 0.2},
		{"lift 1, kg", float64(r.Lifts[0].Mass), (3 + 0.06*3/8) * 1.1},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: got %v, want %v", c.name, c.got, c.want)
		}
	}
	if l := r.Lifts[0]; math.Abs(float64(l.Wait)-16*1.2533) > 0.05 || l.BondsUntil != 60 {
		t.Errorf("lift 1 waits %v h and bonds until %v h in a room at 22 C", l.Wait, l.BondsUntil)
	}
	if l := r.Lifts[1]; l.Wait != 78 || l.BondsUntil != 0 {
		t.Errorf("the last lift waits %v h", l.Wait)
	}
}

func TestRatioByMass(t *testing.T) {
	in := basin(FillPoint{40, 5})
	in.Card.ByMass, in.Card.RatioA.Value, in.Card.RatioB.Value = true, 100, 45
	r, _ := Compute(in)
	if l := r.Lifts[0]; math.Abs(float64(l.B/l.A)-0.45) > 1e-12 || r.AToB != 45 {
		t.Errorf("100:45 by mass: A %v, B %v kg, %v per 100", l.A, l.B, r.AToB)
	}
}

func TestFindings(t *testing.T) {
	nan := math.NaN()
	for code, change := range map[string]func(*Input){
		"resin/no-basin":          func(in *Input) { in.Fill = nil },
		"resin/bad-fill":          func(in *Input) { in.Fill = append(in.Fill, FillPoint{units.Length(nan), 9}) },
		"resin/no-density":        func(in *Input) { in.Card.Density.Value = 0 },
		"resin/no-ratio":          func(in *Input) { in.Card.RatioA.Value = 0 },
		"resin/ratio-swapped":     func(in *Input) { in.Card.RatioB.Value = 3 },
		"resin/no-part-density":   func(in *Input) { in.Card.DensityB.Value = units.Density(nan) },
		"resin/densities-clash":   func(in *Input) { in.Card.Density.Value = 1250 },
		"resin/ratio-by-volume":   func(in *Input) {},
		"resin/no-range":          func(in *Input) { in.Card.MaxDepth.Value = 0 },
		"resin/too-shallow":       func(in *Input) { in.Card.MinDepth.Value, in.Card.MaxDepth.Value = 80, 90 },
		"resin/no-split":          func(in *Input) { in.Card.MinDepth.Value, in.Card.MaxDepth.Value = 45, 50 },
		"resin/ends-over-terrace": func(in *Input) { in.Fill[1], in.Gap = FillPoint{2, 0.05}, 68 },
		"resin/bucket":            func(in *Input) { in.Bucket = 0 },
		"resin/pot-life":          func(in *Input) { in.Bucket, in.Card.PotLife.Value = 1, 0.5 },
		"resin/room":              func(in *Input) { in.Room = 8 },
		"resin/shallow":           func(in *Input) { in.Fill[1].Depth = 65 },
		"resin/thin-on-terrace":   func(in *Input) { in.Fill[1].Depth = 30 },
		"resin/cure-not-computed": func(in *Input) {},
	} {
		in := basin(FillPoint{20, 1}, FillPoint{70, 8})
		change(&in)
		if _, found := Compute(in); !strings.Contains(codesOf(found), code) {
			t.Errorf("want %s, found %s", code, codesOf(found))
		}
	}
	seen := map[string]bool{}
	for _, r := range Rules() {
		if seen[r.Code] || r.Remedy == "" || r.Title == "" || !strings.HasPrefix(r.Code, "resin/") {
			t.Errorf("rule %+v", r)
		}
		seen[r.Code] = true
	}
}
