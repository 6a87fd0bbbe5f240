package concrete

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

// drawn draws a box with nested steps, some of which run off a side.
func drawn(t *rapid.T) Input {
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	in := box()
	in.Length, in.Width, in.Height = units.Length(f("length", 150, 700)), units.Length(f("width", 150, 500)), units.Length(f("height", 90, 400))
	l, w := in.Length.MM(), in.Width.MM()
	shape, from := geom.Rect(0, 0, l, w).Region(), units.Length(0)
	for range rapid.IntRange(0, 3).Draw(t, "layers") {
		shape = geom.Intersect(shape, wavy(f("x", 0.3, 0.9)*l, w/2, f("rx", 0.2, 0.4)*l, f("ry", 0.1, 0.4)*w, float64(rapid.IntRange(1, 5).Draw(t, "waves")), 60))
		if shape.Area() < 100 {
			break
		}
		to := from + units.Length(f("step", 4, 25))
		in.Layers, from = append(in.Layers, Layer{from, to, seen(shape)}), to
	}
	in.Tub, in.Spare = units.Volume(f("tub", 8, 60)), units.Fraction(f("spare", 0, 0.3))
	return in
}

func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		r, _ := Compute(in)
		plan := float64(in.Length) * float64(in.Width)
		if s := r.Surfaces; math.Abs(float64(s.Face+s.Floor)-plan) > 1e-6*plan {
			t.Errorf("face %v and floor %v are not the plan %v", s.Face, s.Floor, plan)
		}
		volume := units.Volume(0)
		for _, c := range r.Coats {
			volume += c.Volume
			if c.ToMix < c.Mass || c.Volume <= 0 {
				t.Errorf("coat %+v", c)
			}
		}
		if math.Abs(float64(volume-r.ShellVolume)) > 1e-9 {
			t.Errorf("coats add up to %v of %v l", volume, r.ShellVolume)
		}
		foam := 0.0
		for _, l := range in.Layers {
			foam += l.Region.Area() * float64(l.To-l.From)
		}
		if room := plan*float64(in.Height) - foam; r.ShellVolume.MM3() > room*1.0001 {
			t.Errorf("shell %v mm3 in a cavity of %v", r.ShellVolume.MM3(), room)
		}
		if m, _ := Compute(mirrored(in)); math.Abs(float64(m.ShellVolume/r.ShellVolume)-1) > 0.001 {
			t.Errorf("turned over, the shell is %v instead of %v l", m.ShellVolume, r.ShellVolume)
		}
		batches(t, in, r)
	})
}

// batches holds batches against their coats and parts against their batches.
func batches(t interface{ Errorf(string, ...any) }, in Input, r Result) {
	for _, c := range r.Coats {
		sum, n := units.Mass(0), 0
		for _, b := range r.Batches {
			if b.Coat != c.Name {
				continue
			}
			n++
			sum += b.Mass
			parts := units.Mass(0)
			for _, p := range b.Parts {
				parts += p.Mass
			}
			if math.Abs(float64(parts-b.Mass)) > 1e-9 {
				t.Errorf("batch %d: parts %v, mass %v", b.Number, parts, b.Mass)
			}
			if b.Volume > in.Tub*units.Volume(1-in.Freeboard)*1.000001 || !(b.WaterFirst < b.WaterUpTo) || b.WaterUpTo > b.WaterNever {
				t.Errorf("batch %d: %+v", b.Number, b)
			}
		}
		if math.Abs(float64(sum-c.ToMix)) > 0.003*float64(n) {
			t.Errorf("%s: %d batches weigh %v kg, to mix %v kg", c.Name, n, sum, c.ToMix)
		}
	}
}

func TestWater(t *testing.T) {
	wet := premix(0.05)
	wet.Ingredients[2].Parts.Value = 25
	free := premix(0.05)
	free.WaterMax.Value = 0
	for _, c := range []struct {
		name         string
		mix          material.Mix
		upTo, never  float64 // kg per 100 kg of what the limit counts on
		code         string
		base         string
		recipeAmount float64
	}{
		{"scratch: the emulsion's 5 % are off the limit", premix(0.05), 29, 33, "", "cement", 29},
		{"scratch, too wet: the limit holds", wet, 33, 33, "concrete/too-wet", "cement", 50},
		{"scratch, no limit: the recipe is one", free, 29, 29, "concrete/no-water-limit", "cement", 29},
		{"bagged: the middle of the range", bagged(), 14.5, 16, "", "blend", 14.5},
	} {
		in := box()
		in.Coats = []Coat{{"coat", 10, c.mix}}
		r, found := Compute(in)
		b, base, water := r.Batches[0], 0.0, 0.0
		for _, p := range b.Parts {
			switch p.Role {
			case c.base:
				base = float64(p.Mass) / 100
			case "water":
				water = float64(p.Mass)
			}
		}
		near := func(got units.Mass, want float64) bool { return math.Abs(float64(got)/base-want) < 0.03 }
		if !near(b.WaterUpTo, c.upTo) || !near(b.WaterNever, c.never) || !near(units.Mass(water), c.recipeAmount) || math.Abs(float64(b.WaterFirst)-0.8*float64(b.WaterUpTo)) > 0.0006 {
			t.Errorf("%s: %+v", c.name, b)
		}
		if codes := codesOf(found); c.code != "" && !strings.Contains(codes, c.code) {
			t.Errorf("%s: findings %s, want %s", c.name, codes, c.code)
		}
	}
}

func TestFindings(t *testing.T) {
	nan := math.NaN()
	mix := func(change func(*material.Mix)) func(*Input) {
		return func(in *Input) {
			m := premix(0.05)
			change(&m)
			in.Coats = []Coat{{"coat", 10, m}}
		}
	}
	for code, change := range map[string]func(*Input){
		"concrete/no-box":         func(in *Input) { in.Height = units.Length(nan) },
		"concrete/no-coats":       func(in *Input) { in.Coats = nil },
		"concrete/no-thickness":   func(in *Input) { in.Coats[1].Thickness = units.Length(nan) },
		"concrete/no-layer":       func(in *Input) { in.Layers = []Layer{{0, units.Length(nan), rect(50, 50, 90, 90)}} },
		"concrete/undercut":       func(in *Input) { in.Layers = []Layer{{0, 20, rect(50, 50, 90, 90)}, {20, 40, rect(60, 60, 120, 80)}} },
		"concrete/solid":          func(in *Input) { in.Width = 38 },
		"concrete/coat":           func(in *Input) { in.Coats[0].Thickness = 12 },
		"concrete/tub":            func(in *Input) { in.Tub = 0.2 },
		"concrete/small-batch":    func(in *Input) { in.Length, in.Width, in.Height = 60, 60, 60 },
		"concrete/air":            mix(func(m *material.Mix) { m.Air.Value = 5 }),
		"concrete/bad-part":       mix(func(m *material.Mix) { m.Ingredients[1].Parts.Value = nan }),
		"concrete/no-parts":       mix(func(m *material.Mix) { m.Ingredients = nil }),
		"concrete/no-cement":      mix(func(m *material.Mix) { m.Ingredients = m.Ingredients[1:] }),
		"concrete/no-density":     mix(func(m *material.Mix) { m.Ingredients[1].SG.Value = 0 }),
		"concrete/no-water-limit": mix(func(m *material.Mix) { m.WaterMax.Value = nan }),
		"concrete/too-wet":        mix(func(m *material.Mix) { m.Ingredients[2].Parts.Value = 20 }),
		"concrete/too-dry":        mix(func(m *material.Mix) { m.Ingredients[2].Parts.Value = 9 }),
		"concrete/fibre":          mix(func(m *material.Mix) { m.Ingredients[5].Parts.Value = 9 }),
		"concrete/polymer":        mix(func(m *material.Mix) { m.Ingredients[3].Parts.Value = 1 }),
		"concrete/plasticiser":    mix(func(m *material.Mix) { m.Ingredients[4].Parts.Value = 1 }),
		"concrete/pigment":        mix(func(m *material.Mix) { m.Ingredients = append(m.Ingredients, ingredient("red", "pigment", 6, 4.5, 0)) }),
	} {
		in := box()
		change(&in)
		r, found := Compute(in)
		if !strings.Contains(codesOf(found), code) {
			t.Errorf("want %s, found %s", code, codesOf(found))
		}
		if _, err := json.Marshal(r); err != nil {
			t.Errorf("%s: the result does not print: %v", code, err)
		}
	}
	if _, found := Compute(box()); len(found) != 0 {
		t.Errorf("a sound box is found fault with: %v", found)
	}
	codes := map[string]bool{}
	for _, r := range Rules() {
		if codes[r.Code] || r.Remedy == "" || r.Title == "" || !strings.HasPrefix(r.Code, "concrete/") {
			t.Errorf("rule %+v", r)
		}
		codes[r.Code] = true
	}
}

// TestUndercutCountsAsFoam: a deeper layer that reaches further is solid foam to the base.
func TestUndercutCountsAsFoam(t *testing.T) {
	in, same := box(), box()
	in.Layers = []Layer{{0, 20, rect(150, 150, 300, 250)}, {20, 40, rect(100, 100, 350, 300)}}
	same.Layers = []Layer{{0, 40, rect(100, 100, 350, 300)}}
	a, _ := Compute(in)
	b, _ := Compute(same)
	if math.Abs(float64(a.ShellVolume/b.ShellVolume)-1) > 1e-9 || math.Abs(float64(a.CastSurface-b.CastSurface)) > 1 {
		t.Errorf("shell %v l on %v mm2, want %v l on %v mm2", a.ShellVolume, a.CastSurface, b.ShellVolume, b.CastSurface)
	}
}

func TestWeirdInputDoesNotPanic(t *testing.T) {
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	odd := material.Mix{Name: "odd", Ingredients: []material.Ingredient{ingredient("a", "cement", math.Inf(1), math.NaN(), math.NaN()), ingredient("b", "polymer", 1, -1, 7)}}
	odd.Air.Value, odd.WetDensity.Value, odd.Cured.Value = units.Fraction(math.NaN()), units.Density(math.NaN()), -3
	hundred := func(c ...Coat) Input { return Input{Length: 100, Width: 100, Height: 100, Coats: c} }
	shares := hundred(Coat{"a", 8, premix(0)})
	shares.Tub, shares.Freeboard, shares.Spare = 20, units.Fraction(math.NaN()), units.Fraction(math.NaN())
	for i, in := range []Input{{}, {Length: nan, Width: 1, Height: 1}, hundred(), hundred(Coat{}), hundred(Coat{"a", 80, material.Mix{}}),
		hundred(Coat{"a", inf, odd}), hundred(Coat{"a", 8, odd}), shares} {
		r, found := Compute(in)
		if len(found) == 0 && i < 7 {
			t.Errorf("input %d: nothing is found", i)
		}
		if _, err := json.Marshal(r); err != nil {
			t.Errorf("input %d: %v", i, err)
		}
	}
}
