package form

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/units"
)

// TestPanels is worked by hand for a piece of 1220 x 410 x 430 mm in 18.2 mm board.
func TestPanels(t *testing.T) {
	for _, c := range []struct {
		corner, order string
		long, short   units.Length
	}{
		{"butt", "long", 1256.4, 410},
		{"butt", "short", 1220, 446.4},
		{"mitre", "", 1256.4, 446.4},
	} {
		r, found := Compute(Input{Length: 1220, Width: 410, Height: 430, Thickness: 18.2, Corner: c.corner, ButtOrder: c.order, SheetX: 2440, SheetY: 1220, Density: 650})
		if len(found) != 0 {
			t.Errorf("%s %s: %v", c.corner, c.order, found)
		}
		want := []Panel{{Name: "base", Length: 1220, Width: 410, Count: 1}, {Name: "long side", Length: c.long, Width: 448.2, Count: 2}, {Name: "short side", Length: c.short, Width: 448.2, Count: 2}}
		for i, w := range want {
			p := r.Panels[i]
			if p.Name != w.Name || p.Count != w.Count || math.Abs(float64(p.Length-w.Length)) > 1e-9 || math.Abs(float64(p.Width-w.Width)) > 1e-9 || p.Thickness != 18.2 {
				t.Errorf("%s %s: got %+v, want %+v", c.corner, c.order, p, w)
			}
		}
	}
}

func TestBadForms(t *testing.T) {
	nan := units.Length(math.NaN())
	for _, c := range []struct {
		name, code string
		in         Input
	}{
		{"nothing", "form/no-panels", Input{}},
		{"not a number", "form/no-panels", Input{Length: nan, Width: 410, Height: 430, Thickness: 18}},
		{"endless", "form/no-panels", Input{Length: units.Length(math.Inf(1)), Width: 410, Height: 430, Thickness: 18}},
		{"no sheet holds it", "form/no-sheet", Input{Length: 3000, Width: 410, Height: 430, Thickness: 18, SheetX: 2440, SheetY: 1220}},
		{"too wide either way", "form/no-sheet", Input{Length: 1300, Width: 1250, Height: 430, Thickness: 18, SheetX: 2440, SheetY: 1220}},
		{"thick for the box", "form/thick", Input{Length: 300, Width: 60, Height: 60, Thickness: 18}},
		{"thick for any box", "form/thick", Input{Length: 3000, Width: 1000, Height: 60, Thickness: 182}},
		{"inch read as mm", "form/thin", Input{Length: 1220, Width: 410, Height: 430, Thickness: 0.75}},
	} {
		r, found := Compute(c.in)
		if len(found) == 0 || found[0].Code != c.code || r.Panels == nil {
			t.Errorf("%s: want %s, got %v", c.name, c.code, found)
		}
	}
}

func TestFitsLyingTheOtherWay(t *testing.T) {
	if _, found := Compute(Input{Length: 1200, Width: 1000, Height: 100, Thickness: 18, SheetX: 1000, SheetY: 2440}); len(found) > 0 {
		t.Errorf("the base fits across: %v", found)
	}
}

// TestReleaseAndSeam is worked by hand: 1.22 x 0.41 + 2 x 0.43 x 1.63 = 1.902 m2.
func TestReleaseAndSeam(t *testing.T) {
	in := Input{Length: 1220, Width: 410, Height: 430, Thickness: 18.2}
	r, _ := Compute(in)
	in.Covered = 300000
	less, _ := Compute(in)
	if math.Abs(float64(r.Release)-1902000) > 1e-6 || math.Abs(float64(less.Release)-1602000) > 1e-6 {
		t.Errorf("release %v and %v mm2", r.Release, less.Release)
	}
	if r.Seam != 4*430+2*(1220+410) {
		t.Errorf("seam %v mm", r.Seam)
	}
	in.Covered = 1e9
	if r, _ := Compute(in); r.Release != 0 {
		t.Errorf("negative release area %v", r.Release)
	}
}

// TestLaws: whatever the corner, the form's outside is L + 2t by W + 2t, the boards'
// volume is that of the box minus its inside, and only a mitre has bevels. A mitre's
// bevels cut four prisms of t x t/2 each side off the boards.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := func(name string) units.Length {
			return units.Length(rapid.Float64Range(100, 2000).Draw(t, name))
		}
		in := Input{Length: size("length"), Width: size("width"), Height: size("height"), Thickness: units.Length(rapid.Float64Range(6, 25).Draw(t, "t")),
			Corner: rapid.SampledFrom([]string{"butt", "mitre"}).Draw(t, "corner"), ButtOrder: rapid.SampledFrom([]string{"long", "short"}).Draw(t, "order"), Density: 650}
		if rapid.Bool().Draw(t, "square") {
			in.Width = in.Length
		}
		r, _ := Compute(in)
		long, short, d := r.Panels[1], r.Panels[2], in.Thickness
		alongX, alongY := long.Length, short.Length
		switch {
		case in.Corner == "mitre":
		case in.ButtOrder == "short":
			alongX += 2 * d // the short sides' thickness
		default:
			alongY += 2 * d
		}
		if math.Abs(float64(alongX-in.Length-2*d)) > 1e-9 || math.Abs(float64(alongY-in.Width-2*d)) > 1e-9 {
			t.Fatalf("outside %v x %v, want %v x %v", alongX, alongY, in.Length+2*d, in.Width+2*d)
		}
		if (long.Bevel != "") != (in.Corner == "mitre") || (short.Bevel != "") != (in.Corner == "mitre") {
			t.Fatalf("bevels %q, %q at %s corners", long.Bevel, short.Bevel, in.Corner)
		}
		volume := 0.0
		for _, p := range r.Panels {
			volume += float64(p.Length*p.Width*p.Thickness) * float64(p.Count)
		}
		if in.Corner == "mitre" {
			volume -= 4 * float64(d*d*(in.Height+d)) // each of eight ends loses a triangle of t^2/2
		}
		outside := float64((in.Length + 2*d) * (in.Width + 2*d) * (in.Height + d))
		inside := float64(in.Length * in.Width * in.Height)
		if math.Abs(volume-(outside-inside)) > 1e-9*outside {
			t.Fatalf("boards hold %g mm3, outside less inside %g", volume, outside-inside)
		}
	})
}
