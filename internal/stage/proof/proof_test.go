package proof

import (
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// hole is a round hole of radius r, as a ring that turns clockwise.
func hole(c geom.Point, r float64, sides int) geom.Ring {
	out := make(geom.Ring, sides)
	for i := range out {
		sin, cos := math.Sincos(-2 * math.Pi * float64(i) / float64(sides))
		out[i] = c.Add(geom.Point{X: r * cos, Y: r * sin})
	}
	return out
}

// plate is the part of testdata/good.nc.
func plate() Part {
	return Part{ID: "L1-A", Tabs: 2, TabWidth: 8, TabHeight: 3,
		TabsOn: []geom.Ring{{{X: 30, Y: 30}, {X: 130, Y: 30}}, {{X: 30, Y: 90}, {X: 130, Y: 90}}},
		Region: view.Of[view.Form](geom.Region{{Outer: geom.Rect(30, 30, 130, 90).Ring(),
			Holes: []geom.Ring{geom.Rect(60, 50, 80, 70).Ring().Reversed(), hole(geom.Point{X: 105, Y: 60}, 4, 192)}}})}
}

func good(t testing.TB) Input {
	t.Helper()
	text, err := os.ReadFile("testdata/good.nc")
	if err != nil {
		t.Fatal(err)
	}
	return Input{File: "good.nc", Text: string(text), Parts: []Part{plate()}, SizeX: 200, SizeY: 120, Thickness: 10,
		Cutter: 6, Flute: 22, BedX: 300, BedY: 200, SafeHeight: 5, MaxFeed: 2000}
}

func TestGoodProgram(t *testing.T) {
	r, found := Compute(good(t))
	if !r.Verified || len(r.Parts) != 1 {
		t.Fatalf("not verified: %v", found)
	}
	for _, f := range found {
		if f.Code != "proof/remains" {
			t.Errorf("%s: %s", f.Code, f.Text)
		}
	}
	p := r.Parts[0]
	if p.Gouged > 0.002 || p.Uncut != 0 {
		t.Errorf("gouged %.4f, uncut %.4f mm", p.Gouged, p.Uncut)
	}
	// what a disc leaves in a square corner: r (sqrt 2 - 1)
	if want := 3 * (math.Sqrt2 - 1); math.Abs(p.Left.MM()-want) > 0.001 {
		t.Errorf("%.4f mm are left in the corners, want %.4f", p.Left, want)
	}
	if len(p.Tabs) != 2 {
		t.Fatalf("%d tabs", len(p.Tabs))
	}
	for _, tab := range p.Tabs {
		if math.Abs(tab.Width.MM()-8) > step || math.Abs(tab.Height.MM()-3) > 0.001 || math.Abs(tab.X.MM()-80) > step {
			t.Errorf("tab %+v, want 8 by 3 mm at x 80", tab)
		}
	}
	// two circles of radius 1, two squares of 14, two ways round of 320 + 6 pi, six
	// plunges from 5 or pass to pass and four sides of tabs
	cut := 2*2*math.Pi + 2*56 + 2*(320+6*math.Pi) + 3*(10+5.3) + 4*3.3
	if math.Abs(r.Cut.MM()-cut) > 1e-6 {
		t.Errorf("cut %.4f mm, want %.4f", r.Cut, cut)
	}
	if r.Deepest != -10.3 || r.Box != geom.Rect(27, 27, 133, 93) {
		t.Errorf("deepest %v, box %v", r.Deepest, r.Box)
	}
}

// change replaces one line of the good program; several where the line occurs often.
func change(t *testing.T, in *Input, from, to string, times int) {
	t.Helper()
	if n := strings.Count(in.Text, from); n < 1 {
		t.Fatalf("%q is not in the program", from)
	}
	in.Text = strings.Replace(in.Text, from, to, times)
}

// TestCorruptions: every way to spoil the good program is caught, by the rule that is
// meant for it, with its line.
func TestCorruptions(t *testing.T) {
	outline := "G0 X60 Y27\n"
	for _, c := range []struct {
		name  string
		spoil func(t *testing.T, in *Input)
		code  string
		line  int // 0: not looked at
	}{
		{"shifted by 1 mm", func(t *testing.T, in *Input) { in.Parts[0] = moved(plate(), 1, 0) }, "proof/gouge", 0},
		{"shifted by 0.1 mm", func(t *testing.T, in *Input) { in.Parts[0] = moved(plate(), 0, 0.1) }, "proof/gouge", 0},
		{"outline 1 mm in", func(t *testing.T, in *Input) {
			change(t, in, "G1 X30\nG3 X27 Y90", "G1 X30\nG1 X31 Y92\nG1 X30 Y93\nG3 X27 Y90", 1)
		}, "proof/gouge", 34},
		{"last pass missing", func(t *testing.T, in *Input) {
			change(t, in, "G1 Z-10.3 F300\nG1 X73 F1200", "G1 Z-5 F300\nG1 X73 F1200", 1)
		}, "proof/uncut", 0},
		{"last pass of the hole missing", func(t *testing.T, in *Input) {
			change(t, in, "G1 Z-10.3 F300\nG1 X77 F1200\nG1 Y67\nG1 X63\nG1 Y53\n", "", 1)
		}, "proof/uncut", 0},
		{"dowel hole missing", func(t *testing.T, in *Input) { change(t, in, "G1 Z-10.3 F300\nG3 X106 Y60 I-1 J0 F1200\n", "", 1) }, "proof/uncut", 0},
		{"not deep enough", func(t *testing.T, in *Input) { change(t, in, "Z-10.3", "Z-9.9", -1) }, "proof/uncut", 0},
		{"too deep", func(t *testing.T, in *Input) { change(t, in, "Z-10.3", "Z-11.5", 1) }, "proof/too-deep", 10},
		{"rapid through stock", func(t *testing.T, in *Input) { change(t, in, "G0 Z5\n"+"(outline)", "(outline)", 1) }, "proof/rapid-low", 26},
		{"rapid too low", func(t *testing.T, in *Input) { change(t, in, "G0 Z5\n(outline)", "G0 Z4\n(outline)", 1) }, "proof/rapid-low", 27},
		{"rapid plunge", func(t *testing.T, in *Input) { change(t, in, outline+"G1 Z-5 F300", outline+"G0 Z-5", 1) }, "proof/rapid-plunge", 28},
		{"rapid cut", func(t *testing.T, in *Input) { change(t, in, "G1 X130 F1200", "G0 X130", 1) }, "proof/rapid-low", 29},
		{"inside of the line", func(t *testing.T, in *Input) {
			for _, p := range [][2]string{{"Y27", "Y33"}, {"X133 Y30 I0 J3", "X127 Y36 I0 J3"}, {"Y93", "Y87"}, {"X27", "X33"}} {
				in.Text = strings.ReplaceAll(in.Text, p[0], p[1])
			}
			in.Text = strings.NewReplacer("G3 X127 Y36 I0 J3", "G1 X127 Y33", "G3 X130 Y87 I-3 J0", "G1 X127 Y87", "G3 X33 Y90 I0 J-3", "G1 X33 Y87", "G3 X30 Y33 I3 J0", "G1 X33 Y33", "G1 X130 F1200", "G1 X127 F1200").Replace(in.Text)
		}, "proof/gouge", 0},
		{"arc radius off", func(t *testing.T, in *Input) { change(t, in, "G3 X133 Y30 I0 J3", "G3 X133 Y30 I0 J3.01", 1) }, "rs274/arc", 30},
		{"arc the other way", func(t *testing.T, in *Input) { change(t, in, "G3 X133 Y30 I0 J3", "G2 X133 Y30 I0 J3", 1) }, "proof/gouge", 30},
		{"straight over a corner", func(t *testing.T, in *Input) { change(t, in, "G3 X133 Y30 I0 J3", "G1 X133 Y30", 1) }, "proof/gouge", 30},
		{"one tab missing", func(t *testing.T, in *Input) { change(t, in, "G1 Z-7\nG1 X87", "G1 X87", 1) }, "proof/tabs", 0},
		{"tab too high", func(t *testing.T, in *Input) { change(t, in, "Z-7", "Z-5", 1) }, "proof/uncut", 0},
		{"tab too wide", func(t *testing.T, in *Input) { change(t, in, "G1 X73 F1200", "G1 X66 F1200", 1) }, "proof/uncut", 0},
		{"tab on the wrong side", func(t *testing.T, in *Input) { in.Parts[0].TabsOn = in.Parts[0].TabsOn[:1] }, "proof/tab-shows", 0},
		{"off the sheet", func(t *testing.T, in *Input) { in.SizeX = 125 }, "proof/off-sheet", 0},
		{"off an offcut", func(t *testing.T, in *Input) {
			in.Outline = geom.Ring{{X: 0, Y: 0}, {X: 200, Y: 0}, {X: 100, Y: 120}, {X: 0, Y: 120}}
		}, "proof/off-sheet", 0},
		{"off the bed", func(t *testing.T, in *Input) { in.BedX = 130 }, "proof/off-bed", 30},
		{"flute too short", func(t *testing.T, in *Input) { in.Flute = 9 }, "proof/flute", 10},
		{"thicker cutter", func(t *testing.T, in *Input) { in.Cutter = 6.35 }, "proof/gouge", 0},
		{"thinner cutter", func(t *testing.T, in *Input) { in.Cutter = 5.8 }, "proof/uncut", 0},
		{"spindle off", func(t *testing.T, in *Input) { change(t, in, "(square hole)", "M5", 1) }, "proof/spindle", 15},
		{"spindle late", func(t *testing.T, in *Input) {
			change(t, in, "S12000 M3\n", "", 1)
			change(t, in, "(square hole)", "M3", 1)
		}, "proof/spindle", 7},
		{"too fast", func(t *testing.T, in *Input) { in.MaxFeed = 1000 }, "proof/max-feed", 9},
		{"modes left out", func(t *testing.T, in *Input) { change(t, in, "G17 G21 G90", "G17 G90", 1) }, "proof/modes", 4},
		{"height left out", func(t *testing.T, in *Input) { change(t, in, "G0 Z5\nS12000", "S12000", 1) }, "proof/modes", 6},
		{"in inches", func(t *testing.T, in *Input) { change(t, in, "G21", "G20", 1) }, "proof/too-deep", 0},
		{"unknown word", func(t *testing.T, in *Input) { change(t, in, "G1 Y67", "G1 Y67 E5", 1) }, "rs274/unknown-word", 17},
		{"feed left out", func(t *testing.T, in *Input) { change(t, in, "G1 Z-5 F300", "G1 Z-5", 1) }, "rs274/feed", 8},
		{"cut short", func(t *testing.T, in *Input) { in.Text = in.Text[:len(in.Text)-40] }, "rs274/end", 0},
		{"two cutters", func(t *testing.T, in *Input) {
			change(t, in, "(dowel hole of 8 mm)", "T1 M6", 1)
			change(t, in, "(outline)", "T2 M6", 1)
		}, "proof/tools", 0},
		{"thickness not known", func(t *testing.T, in *Input) { in.Thickness = 0 }, "proof/input", 0},
		{"cutter not known", func(t *testing.T, in *Input) { in.Cutter = -1 }, "proof/input", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := good(t)
			c.spoil(t, &in)
			r, found := Compute(in)
			f, ok := first(found, c.code)
			if !ok {
				t.Fatalf("no %s among %v", c.code, texts(found))
			}
			if r.Verified != (f.Severity < finding.Stop) {
				t.Errorf("verified %v beside %s", r.Verified, f.Text)
			}
			if c.line != 0 && f.Where.Line != c.line {
				t.Errorf("line %d, want %d: %s", f.Where.Line, c.line, f.Text)
			}
		})
	}
}

func moved(p Part, dx, dy float64) Part {
	p.Region = view.Of[view.Form](p.Region.Shape().Map(func(q geom.Point) geom.Point { return geom.Point{X: q.X + dx, Y: q.Y + dy} }, false))
	return p
}

func first(found []finding.Finding, code string) (finding.Finding, bool) {
	for _, f := range found {
		if f.Code == code {
			return f, true
		}
	}
	return finding.Finding{}, false
}

func texts(found []finding.Finding) string {
	var out []string
	for _, f := range found {
		out = append(out, f.Code+": "+f.Text)
	}
	return strings.Join(out, "\n")
}

// TestShiftIsMeasured: a part that lies d mm beside its cut is gouged by d.
func TestShiftIsMeasured(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, angle := rapid.Float64Range(0.1, 2.5).Draw(t, "d"), rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		text, err := os.ReadFile("testdata/good.nc")
		if err != nil {
			t.Fatal(err)
		}
		in := Input{File: "good.nc", Text: string(text), SizeX: 200, SizeY: 120, Thickness: 10, Cutter: 6, SafeHeight: 5}
		in.Parts = []Part{moved(plate(), d*math.Cos(angle), d*math.Sin(angle))}
		r, _ := Compute(in)
		// the round dowel hole sees the whole shift, whatever its direction, and a corner of
		// the square hole or of the outline sees no more
		if got := r.Parts[0].Gouged.MM(); r.Verified || math.Abs(got-d) > 0.004 {
			t.Fatalf("gouged %.4f mm, shifted by %.4f", got, d)
		}
	})
}

func TestDryRun(t *testing.T) {
	in := good(t)
	in.DryRun = true
	in.Text = "G17 G21 G90 G94 G40 G49 G54 G80\nG0 Z5\nX27 Y27\nG1 X133 F1200\nY93\nX27\nY27\nM2\n"
	if r, found := Compute(in); !r.Verified {
		t.Errorf("not verified: %s", texts(found))
	}
	in.Text = strings.Replace(in.Text, "X133", "X133 Z4", 1)
	if r, found := Compute(in); r.Verified || found[0].Code != "proof/dry-run" || found[0].Where.Line != 4 {
		t.Errorf("a low dry run passed: %s", texts(found))
	}
}

// TestStuff throws odd inputs at the simulation: it answers, and verifies none of them.
func TestStuff(t *testing.T) {
	nan := math.NaN()
	for name, spoil := range map[string]func(in *Input){
		"no text": func(in *Input) { in.Text = "" },
		"nan corner": func(in *Input) {
			in.Parts[0].Region = view.Of[view.Form](geom.Region{{Outer: geom.Ring{{X: nan}, {X: 1}, {Y: 1}}}})
		},
		"nan cutter":   func(in *Input) { in.Cutter = units.Length(nan) },
		"large cutter": func(in *Input) { in.Cutter = 500 },
		"no sheet":     func(in *Input) { in.SizeX = 0 },
		"astray":       func(in *Input) { in.Text = strings.Replace(in.Text, "X130", "X9000000", 1) },
		"noise":        func(in *Input) { in.Text = "\x00\xff%%%(((" },
	} {
		in := good(t)
		spoil(&in)
		if r, found := Compute(in); r.Verified || len(found) == 0 {
			t.Errorf("%s: verified %v with %d findings", name, r.Verified, len(found))
		}
	}
}

// FuzzCompute: no text makes the simulation fall over or verify what leaves the part
// uncut, and numbers stay finite.
func FuzzCompute(f *testing.F) {
	text, err := os.ReadFile("testdata/good.nc")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(text))
	f.Add(strings.Replace(string(text), "G1 Z-10.3 F300", "G1 Z-5 F300", 1))
	f.Add("G17 G21 G90 G94 G40 G49 G54 G80\nG0 Z5\nX1Y1\nG1Z-9F1\nG18G3X9Z-9R-9\nM2")
	small := Part{ID: "S", Tabs: 1, TabWidth: 2, TabHeight: 3, Region: view.Of[view.Form](geom.Rect(66, 56, 74, 64).Region())}
	f.Fuzz(func(t *testing.T, text string) {
		in := Input{File: "f.nc", Text: text, Parts: []Part{small}, SizeX: 200, SizeY: 120, Thickness: 10, Cutter: 6, SafeHeight: 5}
		r, found := Compute(in)
		sum := r.Cut.MM() + r.Travel.MM() + r.Deepest.MM() + float64(r.Minutes)
		for _, p := range r.Parts {
			sum += p.Gouged.MM() + p.Uncut.MM() + p.Left.MM()
			if r.Verified && (p.Uncut.MM() > defaultTol || p.Gouged.MM() > defaultTol || len(p.Tabs) < 1) {
				t.Fatalf("verified with %+v", p)
			}
		}
		if math.IsNaN(sum) || math.IsInf(sum, 0) {
			t.Fatalf("not finite: %+v", r)
		}
		if !r.Verified && len(found) == 0 {
			t.Fatal("not verified and nothing said")
		}
	})
}
