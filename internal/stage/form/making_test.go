package form

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/cutlist"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

func bench() Input {
	return Input{Length: 1220, Width: 410, Height: 430, Thickness: 18.2, Corner: "butt", ButtOrder: "long", SheetX: 2800, SheetY: 2070, Density: 650, Kerf: 3.2, Shell: 19,
		Board: Board{Name: "board", Modulus: 1.6e6, Gravity: .65, Edge: .6}, Mix: Mix{Density: 2100}, Cut: cutlist.Input{Trim: 10, Narrowest: 40}}
}

// TestSeats is worked by hand for a piece of 1220 x 410 x 430 mm in board that
// measures 18.2 mm, 2 t = 36.4:
//
//	                    base             long sides        short sides
//	outside, butt long  1220 x 410       1256.4 x 448.2    410 x 448.2
//	outside, butt short 1220 x 410       1220 x 448.2      446.4 x 448.2
//	outside, mitre      1220 x 410       1256.4 x 448.2    446.4 x 448.2
//	on, butt long       1256.4 x 446.4   1256.4 x 430      410 x 430
//	on, butt short      1256.4 x 446.4   1220 x 430        446.4 x 430
//	on, mitre           1256.4 x 446.4   1256.4 x 430      446.4 x 430
func TestSeats(t *testing.T) {
	for _, c := range []struct {
		seat, corner, order             string
		baseL, baseW, long, short, high units.Length
	}{
		{"outside", "butt", "long", 1220, 410, 1256.4, 410, 448.2},
		{"outside", "butt", "short", 1220, 410, 1220, 446.4, 448.2},
		{"outside", "mitre", "", 1220, 410, 1256.4, 446.4, 448.2},
		{"on", "butt", "long", 1256.4, 446.4, 1256.4, 410, 430},
		{"on", "butt", "short", 1256.4, 446.4, 1220, 446.4, 430},
		{"on", "mitre", "", 1256.4, 446.4, 1256.4, 446.4, 430},
	} {
		in := bench()
		in.Seat, in.Corner, in.ButtOrder = c.seat, c.corner, c.order
		r, _ := Compute(in)
		got := []units.Length{r.Panels[0].Length, r.Panels[0].Width, r.Panels[1].Length, r.Panels[2].Length, r.Panels[1].Width, r.Panels[2].Width}
		for i, want := range []units.Length{c.baseL, c.baseW, c.long, c.short, c.high, c.high} {
			if math.Abs(float64(got[i]-want)) > 1e-9 {
				t.Errorf("%s %s %s: size %d is %v, want %v", c.seat, c.corner, c.order, i, got[i], want)
			}
		}
		if len(r.Cutting.Unplaced) > 0 || r.Cutting.Buy != 1 {
			t.Errorf("%s %s: %d sheets, unplaced %v", c.seat, c.corner, r.Cutting.Buy, r.Cutting.Unplaced)
		}
	}
}

// TestHexagon: a regular hexagon of side 300 mm has corners of 120 degrees, so mitres
// of 30 degrees and sides of 300 + 2 x 18/tan 60.
func TestHexagon(t *testing.T) {
	in := bench()
	in.Thickness, in.Corner = 18, "mitre"
	in.Length, in.Width = 600, units.Length(300*math.Sqrt(3))
	for i := range 6 {
		a := float64(i) * math.Pi / 3
		in.Outline = append(in.Outline, geom.Point{X: 300 + 300*math.Cos(a), Y: 150*math.Sqrt(3) + 300*math.Sin(a)})
	}
	r, _ := Compute(in)
	if len(r.Panels) != 7 || len(r.Walls) != 6 {
		t.Fatalf("%d panels, %d walls", len(r.Panels), len(r.Walls))
	}
	for _, p := range r.Panels[1:] {
		if want := 300 + 36/math.Tan(math.Pi/3); math.Abs(p.Length.MM()-want) > 1e-6 || len(p.Tilts) != 2 || math.Abs(float64(p.Tilts[0])-30) > 1e-6 {
			t.Errorf("%s: %v mm, tilts %v; want %v, 30 degrees", p.Name, p.Length, p.Tilts, want)
		}
	}
	in.Corner = "butt"
	r, found := Compute(in)
	n := 0
	for _, f := range found {
		if f.Code == "form/butt-corner" {
			n++
		}
	}
	if n != 6 || len(r.Panels) != 7 {
		t.Errorf("%d impossible butt corners, %d panels", n, len(r.Panels))
	}
}

func TestOutlinesRefused(t *testing.T) {
	for name, c := range map[string]struct {
		code string
		ring []geom.Point
	}{
		"notched":      {"form/outline", []geom.Point{{X: 0, Y: 0}, {X: 1220, Y: 0}, {X: 1220, Y: 410}, {X: 600, Y: 200}, {X: 0, Y: 410}}},
		"small":        {"form/outline", []geom.Point{{X: 0, Y: 0}, {X: 900, Y: 0}, {X: 900, Y: 410}, {X: 0, Y: 410}}},
		"no area":      {"form/outline", []geom.Point{{X: 0, Y: 0}, {X: 1220, Y: 0}, {X: 600, Y: 0}}},
		"not a number": {"form/outline", []geom.Point{{X: math.NaN(), Y: 0}, {X: 1220, Y: 0}, {X: 600, Y: 410}}},
		"too steep":    {"form/mitre-steep", []geom.Point{{X: 0, Y: 0}, {X: 1220, Y: 0}, {X: 0, Y: 410}}},
	} {
		in := bench()
		in.Outline, in.Corner = c.ring, "mitre"
		r, found := Compute(in)
		ok := false
		for _, f := range found {
			ok = ok || f.Code == c.code
		}
		if !ok || len(r.Panels) < 3 {
			t.Errorf("%s: want %s, got %v", name, c.code, found)
		}
	}
}

// TestBattens: a flowable mix bows a bare wall of the bench far more than 1 mm; the
// battens planned keep it, or the finding says that they do not.
func TestBattens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := bench()
		in.Mix.Flowable = true
		in.Height = units.Length(rapid.Float64Range(100, 500).Draw(t, "height"))
		in.Bow = units.Length(rapid.Float64Range(.3, 3).Draw(t, "limit"))
		in.Cut = cutlist.Input{}
		in.SheetX, in.SheetY = 0, 0
		b := in.brace(1220)
		if b.ok != (b.bow+b.batten <= in.Bow.MM()) || b.bow > b.bare+1e-9 || b.bare <= in.Bow.MM() && b.rail {
			t.Fatalf("%+v for a limit of %v", b, in.Bow)
		}
	})
}

// TestDam: an opening of 200 x 50 mm under 1100 kg/m3 is pushed with rho g b h2/2 =
// 2.698 N; its seal is 300 mm.
func TestDam(t *testing.T) {
	in := bench()
	in.Resin = Resin{Density: 1100}
	in.Mouths = []Mouth{{Side: view.Right, From: 100, Width: 200, Depth: 50, Opening: 10000, Profile: []geom.Point{{X: 100}, {X: 300}, {X: 300, Y: -50}, {X: 100, Y: -50}}}}
	r, _ := Compute(in)
	d := r.Dams[0]
	if math.Abs(d.Force-1100*9.81*.2*.05*.05/2) > 1e-9 || math.Abs(d.Seal.MM()-300) > 1e-9 || d.Length != 280 || d.LapFoot != 40 {
		t.Errorf("%+v", d)
	}
	if r.Assembly[1].Panel != "P4" { // the left end in FORM VIEW
		t.Errorf("the side at the mouth does not come first: %+v", r.Assembly)
	}
	in.Mouths[0].From = 5
	in.Resin.Peak = 75
	in.Mouths[0].Profile = []geom.Point{{X: 5}, {X: 205}, {X: 205, Y: -50}, {X: 5, Y: -50}}
	r, found := Compute(in)
	codes := map[string]bool{}
	for _, f := range found {
		codes[f.Code] = true
	}
	if !codes["form/dam-lap"] || !codes["form/dam-hot"] || r.Dams[0].Board != "film-faced plywood" {
		t.Errorf("%v, %+v", codes, r.Dams[0])
	}
}

func TestInserts(t *testing.T) {
	in := bench()
	in.Basin = []Layer{{To: 25, Region: view.Of[view.Finished](geom.Rect(300, 100, 900, 300).Region())}}
	in.Inserts = []Insert{{Name: "good", Kind: "insert", X: 100, Y: 100, Diameter: 10, Depth: 12}, {Name: "deep", Kind: "insert", X: 100, Y: 100, Diameter: 10, Depth: 15},
		{Name: "cable", Kind: "cable", X: 500, Y: 200, Diameter: 12}, {Name: "edge", Kind: "seat", X: 15, Y: 200, Diameter: 12, Depth: 5}, {Name: "off", Kind: "insert", X: 1300, Y: 0, Diameter: 8, Depth: 8}}
	r, found := Compute(in)
	got := map[string]string{}
	for _, f := range found {
		if f.Where.Element != "" && f.Severity > 0 {
			got[f.Where.Element] = f.Code
		}
	}
	if got["good"] != "" || got["deep"] != "form/cover" || got["cable"] != "form/cable-leak" || got["edge"] != "form/edge-cover" || got["off"] != "form/insert-off" {
		t.Errorf("%v", got)
	}
	if len(r.Inserts) != 5 || r.Inserts[0].FormX != 1120 || r.Inserts[0].FormY != 100 || r.Inserts[0].Cover != 7 {
		t.Errorf("%+v", r.Inserts)
	}
}

func TestScrewTooShort(t *testing.T) {
	in := bench()
	in.Screw = Screw{Diameter: 4, Length: 30}
	_, found := Compute(in)
	n := 0
	for _, f := range found {
		if f.Code == "form/screw-short" {
			n++
		}
	}
	if n != 4 {
		t.Errorf("%d walls with short screws: %v", n, found)
	}
}
