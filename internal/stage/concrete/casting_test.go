package concrete

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/material"
	"pourwright/internal/published"
	"pourwright/internal/units"
)

// TestHandsDecide: a large tub, one person and 45 minutes make equal batches of what
// one person packs, not of what the tub holds.
func TestHandsDecide(t *testing.T) {
	in := box()
	in.Tub, in.People, in.PackRate = 65, 1, 1.2
	in.Coats = []Coat{{"backer", 7.5, premix(0.05)}}
	in.Coats[0].Mix.WorkingLife.Value = 0.6
	r, _ := Compute(in)
	c := r.Coats[0]
	if c.Decided != "hands" || c.HandsPack >= c.TubHolds {
		t.Fatalf("decided by %s: hands %.1f kg, tub %.1f kg", c.Decided, c.HandsPack, c.TubHolds)
	}
	left := 0.6 - float64(mixing(in.Coats[0].Mix))
	byHand := float64(c.Mass) / c.Area.M2() * 1.2 * left
	if math.Abs(float64(c.HandsPack)-byHand) > 1e-9 {
		t.Errorf("hands pack %v kg, by hand %v", c.HandsPack, byHand)
	}
	n := int(math.Ceil(float64(c.ToMix) / byHand))
	if len(r.Batches) != n {
		t.Fatalf("%d batches, want %d", len(r.Batches), n)
	}
	for _, b := range r.Batches {
		if math.Abs(float64(b.Mass-r.Batches[0].Mass)) > 1e-9 || float64(b.Mass) > byHand {
			t.Errorf("batch %d of %.3f kg, the first %.3f, hands %.3f", b.Number, b.Mass, r.Batches[0].Mass, byHand)
		}
		if math.Abs(float64(b.UseBy-b.Start-b.Life)) > 1e-12 || b.StartBy < b.Start {
			t.Errorf("clocks of batch %d: %v %v %v", b.Number, b.Start, b.StartBy, b.UseBy)
		}
	}
	in.People = 4
	if four, _ := Compute(in); len(four.Batches) >= n {
		t.Errorf("four people take %d batches, one takes %d", len(four.Batches), n)
	}
	in.People, in.Temperature = 1, 28
	if hot, _ := Compute(in); len(hot.Batches) <= n {
		t.Errorf("at 28 C %d batches, at 20 C %d", len(hot.Batches), n)
	}
	in.Temperature, in.Mixer = 20, 6
	if m, _ := Compute(in); m.Coats[0].Decided != "mixer" || m.Batches[0].Mass > 6 {
		t.Errorf("a mixer of 6 kg: %s, %v kg", m.Coats[0].Decided, m.Batches[0].Mass)
	}
}

// TestHiddenWater: what emulsion and damp sand bring is not poured in again.
func TestHiddenWater(t *testing.T) {
	damp := premix(0.05)
	damp.Ingredients[1].Moisture = material.Value[units.Fraction]{Value: 0.04}
	dry, wet := (&computer{}).recipe(premix(0.05)), (&computer{}).recipe(damp)
	if math.Abs(dry.EmulsionWater-2.5/17) > 1e-9 || math.Abs(dry.WaterRatio-0.34) > 1e-9 || math.Abs(wet.WaterRatio-0.34) > 1e-9 {
		t.Errorf("emulsion's share %v, ratios %v and %v", dry.EmulsionWater, dry.WaterRatio, wet.WaterRatio)
	}
	if d := float64(dry.Parts[2].Mass - wet.Parts[2].Mass); math.Abs(d-0.04*float64(dry.Parts[1].Mass)) > 1e-9 || math.Abs(float64(wet.Parts[1].Mass-dry.Parts[1].Mass)-d) > 1e-9 || wet.WetDensity != dry.WetDensity {
		t.Errorf("damp sand takes %v kg of water off", d)
	}
	in := box()
	in.Coats = []Coat{{"coat", 10, damp}}
	r, _ := Compute(in)
	b := r.Batches[0]
	base := float64(b.Parts[0].Mass)
	if never := (0.38*base - 0.5*float64(b.Parts[3].Mass) - float64(b.Parts[1].Mass)*0.04/1.04); math.Abs(float64(b.WaterNever)-never) > 0.0011 {
		t.Errorf("never above %v, want %v", b.WaterNever, never)
	}
}

func TestFibreBasis(t *testing.T) {
	for basis, want := range map[string]float64{"total": 0.03 / 0.97 * 120, "rest": 0.03 * 120, "cement": 0.03 * 50} {
		m := premix(0.05)
		m.Ingredients[5].Parts.Value = 0
		m.Ingredients[5].Share.Value, m.Ingredients[5].Basis = 0.03, basis
		r := (&computer{}).recipe(m)
		if got := float64(r.Parts[5].Mass) / float64(r.Parts[0].Mass) * 50; math.Abs(got-want) > 1e-9 {
			t.Errorf("3 %% of %s: %v parts, want %v", basis, got, want)
		}
		if basis == "total" && math.Abs(r.Fibre-0.03) > 1e-12 || basis == "rest" && math.Abs(r.FibreOfRest-0.03) > 1e-12 {
			t.Errorf("%s: of all %v, of the rest %v", basis, r.Fibre, r.FibreOfRest)
		}
	}
}

// TestAdditions works a batch by hand: 1000 g of water, four fifths first, then the
// liquids, the dry parts, the rest of the water and the fibre; at most 1150 g of water.
func TestAdditions(t *testing.T) {
	b := Batch{WaterFirst: 0.8, WaterUpTo: 1, WaterNever: 1.15,
		Parts: []Part{{"cement", "cement", 3}, {"sand", "sand", 3}, {"water", "water", 1}, {"emulsion", "polymer", 0.3}, {"oxide", "pigment", 0.0453}, {"fibre", "fibre", 0.2}}}
	b.additions()
	var got []string
	for _, a := range b.Steps {
		got = append(got, fmt.Sprintf("%s %.1f %.1f", a.What, a.Mass.G(), a.ScaleReads.G()))
	}
	want := "water 800.0 800.0, emulsion 300.0 1100.0, oxide 45.3 1145.3, cement 3000.0 4145.3, sand 3000.0 7145.3, water, the rest 200.0 7345.3, fibre 200.0 7545.3"
	if s := strings.Join(got, ", "); s != want {
		t.Errorf("added %s, want %s", s, want)
	}
	if math.Abs(b.ScaleNever.G()-7495.3) > 1e-9 {
		t.Errorf("the scale may read up to %g before the fibre", b.ScaleNever.G())
	}
}

// TestPublishedZones holds zones of another thickness against closed forms.
func TestPublishedZones(t *testing.T) {
	const L, W, H, T, D = 600.0, 400.0, 300.0, 19.0, 60.0
	for _, c := range []struct {
		name   string
		zones  []Zone
		layers []Layer
		want   float64
	}{
		{"top of 25 mm, plain box", []Zone{{"top", 25, 0}}, nil, L*W*H - (L-2*T)*(W-2*T)*(H-25)},
		{"heel of 12 mm, 60 mm high", []Zone{{"heel", 12, 60}}, nil, L*W*H - (L-2*T)*(W-2*T)*(H-T-60) - (L-24)*(W-24)*60},
		// Along a straight edge an ellipse with axes 19 and 25 in place of the circle; at
		// the corners an eighth of the ellipsoid.
		{"top of 25 mm over a prism", []Zone{{"top", 25, 0}}, []Layer{{0, D, rect(150, 120, 420, 280)}},
			L*W*H - (L-2*T)*(W-2*T)*(H-25) + 2*(270+160)*(T*(D-25)+math.Pi*T*25/4) + 4*(math.Pi*T*T/4*(D-25)+math.Pi*T*T*25/6)},
	} {
		in := box()
		in.Zones, in.Layers = c.zones, c.layers
		r, _ := Compute(in)
		published.Run(t, published.Check{Room: "concrete", Name: "shell with a " + c.name, Ours: r.ShellVolume.MM3(), Theirs: c.want, Unit: "mm3", Tol: 0.001 * c.want, Source: "analytic", Place: "parallel bodies, heights scaled"})
		sum := units.Length(0)
		for _, coat := range r.Coats {
			sum += coat.Top
			if coat.Cumulative < coat.Volume-1e-9 {
				t.Errorf("%s: %+v", c.name, coat)
			}
		}
		if len(r.Zones) != 1 || r.Coats[0].Top != 4 || c.zones[0].Surface == "top" && math.Abs(float64(sum-25)) > 1e-9 {
			t.Errorf("%s: zones %+v, %v mm on top", c.name, r.Zones, sum)
		}
	}
}

func TestPockets(t *testing.T) {
	in := box()
	in.Layers = []Layer{{0, 60, seen(geom.Union(geom.Rect(100, 100, 280, 300).Region(), geom.Rect(305, 100, 480, 300).Region()))}}
	r, _ := Compute(in)
	if len(r.Pockets) != 1 {
		t.Fatalf("pockets %+v", r.Pockets)
	}
	p := r.Pockets[0]
	if math.Abs(float64(p.Width-25)) > 0.2 || math.Abs(float64(p.X-292.5)) > 2 || p.Y < 100 || p.Y > 300 || p.Needed != 38 {
		t.Errorf("pocket %+v", p)
	}
	in.Layers = []Layer{{0, 60, rect(150, 120, 420, 280)}}
	if r, _ := Compute(in); len(r.Pockets) != 0 {
		t.Errorf("pockets where there are none: %+v", r.Pockets)
	}
}

// TestPackingLaws: zones share a coat equally, cover the form, never overlap in time for
// one person, and begin when the coat below is firm.
func TestPackingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.People = rapid.IntRange(1, 4).Draw(t, "people")
		in.Temperature = units.Temperature(rapid.Float64Range(8, 32).Draw(t, "temp"))
		r, _ := Compute(in)
		if got := newProfile(in).total(); math.Abs(got/float64(r.CastSurface)-1) > 1e-6 {
			t.Fatalf("profile %v of %v mm2", got, r.CastSurface)
		}
		for _, c := range r.Coats {
			var mass units.Mass
			var length units.Length
			for _, z := range r.Packing {
				if z.Coat != c.Name {
					continue
				}
				mass, length = mass+z.Mass, length+z.To-z.From
				if z.End <= z.Start || z.Closes > 0 && (z.End < z.Opens-1e-9 || z.Late != (z.End > z.Closes+1e-6)) {
					t.Errorf("zone %+v", z)
				}
			}
			if math.Abs(float64(mass-c.Mass)) > 1e-6 || math.Abs(float64(length-in.Length)) > 2 {
				t.Errorf("%s: zones of %v kg along %v mm; %v kg, %v mm", c.Name, mass, length, c.Mass, in.Length)
			}
		}
	})
}

func TestScrim(t *testing.T) {
	in := box()
	in.Length, in.Width = 1400, 1300
	in.Scrim.Use = true
	in.Mouths = []Edge{{"right", 500, 200}}
	in.Necks = []Spot{{700, 600, 40}}
	r, _ := Compute(in)
	s := r.Scrim
	if s.Into != "backer 2" || len(s.Pieces) != 4 || s.Waste < 0 {
		t.Fatalf("scrim %+v", s)
	}
	top := s.Pieces[0]
	if math.Abs(float64(2*top.Width-s.Lap-(1300-38))) > 1e-6 || top.Length != 1400-38 {
		t.Errorf("top %+v", top)
	}
	if m := s.Pieces[2]; m.For != "mouth" || m.X != 0 || m.Y != 350 || m.Width != 500 {
		t.Errorf("mouth on the right of the piece lies left in the form: %+v", m)
	}
	for i, a := range s.Pieces {
		box := a.OnRoll()
		if box.Max.Y > s.Roll.MM()+1e-6 || box.Max.X > s.Length.MM()+1e-6 {
			t.Errorf("piece %d leaves the roll: %v", a.Number, box)
		}
		for _, b := range s.Pieces[:i] {
			if o := b.OnRoll(); box.Min.X < o.Max.X-1e-6 && o.Min.X < box.Max.X-1e-6 && box.Min.Y < o.Max.Y-1e-6 && o.Min.Y < box.Max.Y-1e-6 {
				t.Errorf("pieces %d and %d overlap", a.Number, b.Number)
			}
		}
	}
}

// TestBadInput: every fault of the work is said with its place and what to do.
func TestBadInput(t *testing.T) {
	edit := func(f func(*Input)) Input {
		in := box()
		f(&in)
		return in
	}
	one := func(in *Input, f func(*material.Mix)) {
		m := premix(0.05)
		f(&m)
		in.Coats[1].Mix, in.Coats[2].Mix = m, m
	}
	for _, c := range []struct {
		name, code string
		in         Input
	}{
		{"no densities", "concrete/no-density", edit(func(in *Input) { one(in, func(m *material.Mix) { m.Ingredients[0].SG.Value = 0 }) })},
		{"too wet", "concrete/too-wet", edit(func(in *Input) { one(in, func(m *material.Mix) { m.Ingredients[2].Parts.Value = 20 }) })},
		{"much fibre", "concrete/fibre", edit(func(in *Input) { one(in, func(m *material.Mix) { m.Ingredients[5].Parts.Value = 9 }) })},
		{"much pigment", "concrete/pigment", edit(func(in *Input) {
			one(in, func(m *material.Mix) {
				m.Ingredients = append(m.Ingredients, ingredient("oxide", "pigment", 6, 4.5, 0))
			})
		})},
		{"full colour", "concrete/saturated", edit(func(in *Input) {
			one(in, func(m *material.Mix) {
				m.Ingredients = append(m.Ingredients, ingredient("oxide", "pigment", 3.5, 4.5, 0))
			})
		})},
		{"little pigment on a coarse scale", "concrete/scale", edit(func(in *Input) {
			in.Scale = 0.005
			one(in, func(m *material.Mix) {
				m.Ingredients = append(m.Ingredients, ingredient("oxide", "pigment", 0.1, 4.5, 0))
			})
		})},
		{"wet sand", "concrete/wet-sand", edit(func(in *Input) { one(in, func(m *material.Mix) { m.Ingredients[1].Moisture.Value = 0.3 }) })},
		{"small tub", "concrete/tub-small", edit(func(in *Input) { in.Tub = 1 })},
		{"no life left", "concrete/workable", edit(func(in *Input) { one(in, func(m *material.Mix) { m.WorkingLife.Value = 0.1 }) })},
		{"coats do not add up", "concrete/coat-sum", edit(func(in *Input) { in.Stated = 25 })},
		{"history in Fahrenheit", "concrete/climate", edit(func(in *Input) { in.Climate.Stretches = []Stretch{{12, 68}} })},
		{"history with a hole", "concrete/climate", edit(func(in *Input) { in.Climate.Stretches = []Stretch{{12, 18}, {0, 18}} })},
		{"history without a number", "concrete/climate", edit(func(in *Input) { in.Climate.Stretches = []Stretch{{12, units.Temperature(math.NaN())}} })},
		{"short history", "concrete/short-climate", edit(func(in *Input) { in.Climate.Stretches = []Stretch{{5, 18}} })},
		{"frost", "concrete/too-cold", edit(func(in *Input) { in.Temperature = -12 })},
		{"dry wind", "concrete/crazing", edit(func(in *Input) { in.Draught, in.Humidity, in.Temperature = 15, 0.2, 30 })},
		{"one pair of hands", "concrete/late-coat", edit(func(in *Input) { in.People = 1; in.PackRate = 0.5 })},
		{"unknown zone", "concrete/zone", edit(func(in *Input) { in.Zones = []Zone{{"lid", 25, 0}} })},
		{"zone thinner than the face", "concrete/zone", edit(func(in *Input) { in.Zones = []Zone{{"top", 3, 0}} })},
		{"heel higher than the side", "concrete/zone", edit(func(in *Input) { in.Zones = []Zone{{"heel", 12, 500}} })},
		{"weak mix", "concrete/weak", edit(func(in *Input) { in.Needs.Work = 70 })},
	} {
		r, found := Compute(c.in)
		hit := false
		for _, f := range found {
			hit = hit || f.Code == c.code && f.Remedy != "" && (f.Where != finding.Where{}) || f.Code == c.code && c.code == "concrete/too-cold"
		}
		if !hit {
			t.Errorf("%s: findings %s, want %s with place and remedy", c.name, codesOf(found), c.code)
		}
		for _, w := range r.Windows {
			if !known(w.Planned.From) || !known(w.Planned.Until) || w.Planned.From < 0 {
				t.Errorf("%s: window %+v", c.name, w)
			}
		}
	}
}

// TestNoNumbers: what is no number anywhere never comes out as one.
func TestNoNumbers(t *testing.T) {
	nan := math.NaN()
	for name, edit := range map[string]func(*Input){
		"temperature":  func(in *Input) { in.Temperature = units.Temperature(nan) },
		"draught":      func(in *Input) { in.Draught = nan },
		"humidity":     func(in *Input) { in.Humidity = units.Fraction(nan) },
		"mixer":        func(in *Input) { in.Mixer = units.Mass(nan) },
		"pace":         func(in *Input) { in.PackRate = nan },
		"needs":        func(in *Input) { in.Needs = Needs{nan, -1, math.Inf(1)} },
		"records":      func(in *Input) { in.Records = []Record{{24, units.Temperature(nan), 10}, {24, 20, nan}} },
		"scrim":        func(in *Input) { in.Scrim = Scrim{true, units.Length(nan), units.Length(nan)} },
		"necks":        func(in *Input) { in.Scrim.Use = true; in.Necks = []Spot{{units.Length(nan), 0, 0}} },
		"zones":        func(in *Input) { in.Zones = []Zone{{"top", units.Length(nan), 0}, {"heel", 12, units.Length(nan)}} },
		"working life": func(in *Input) { in.Coats[1].Mix.WorkingLife.Value = units.Duration(nan) },
		"moisture":     func(in *Input) { in.Coats[1].Mix.Ingredients[1].Moisture.Value = units.Fraction(nan) },
		"patch": func(in *Input) {
			in.Patch, in.Scale, in.DryDays = units.Mass(nan), units.Mass(nan), units.Duration(nan)
		},
		"people": func(in *Input) { in.People = -3 },
	} {
		in := box()
		edit(&in)
		r, _ := Compute(in)
		if _, err := json.Marshal(r); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}
