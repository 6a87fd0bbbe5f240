package rs274

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
)

const head = "G17 G21 G90 G94 G40 G49 G54 G80\n"

// read reads lines behind a full head and before an end.
func read(lines ...string) (Program, []finding.Finding) {
	return Read("a.nc", head+strings.Join(lines, "\n")+"\nM2\n")
}

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

func TestFaults(t *testing.T) {
	for _, c := range []struct {
		name, text string
		code       string
		line       int
	}{
		{"two motions", "G0 G1 X1 F100", "rs274/modal-group", 2},
		{"two planes", "G17 G18", "rs274/modal-group", 2},
		{"two spindles", "M3 M5", "rs274/modal-group", 2},
		{"coolant off and on", "M7 M9", "rs274/modal-group", 2},
		{"five M words", "M3 M7 M8 M48 M6", "rs274/modal-group", 2},
		{"G53 in relative", "G91 G53 G0 X1", "rs274/modal-group", 2},
		{"G53", "G53 G0 X1", "rs274/not-followed", 2},
		{"G92", "G92 X0", "rs274/not-followed", 2},
		{"canned cycle", "G81 X1 Y1 Z-1 R1 F100", "rs274/not-followed", 2},
		{"compensation", "G41 D1", "rs274/not-followed", 2},
		{"G0 alone", "G0", "rs274/motion", 2},
		{"G80 with axes", "G80 X1", "rs274/motion", 2},
		{"axes after G80", "X1", "rs274/motion", 2},
		{"unknown G", "G5 X1", "rs274/unknown-word", 2},
		{"unknown G tenth", "G1.5 X1", "rs274/unknown-word", 2},
		{"unknown M", "M98", "rs274/unknown-word", 2},
		{"unknown letter", "E5", "rs274/unknown-word", 2},
		{"rotary", "G0 A5", "rs274/not-followed", 2},
		{"twice X", "G0 X1 X2", "rs274/repeated-word", 2},
		{"parameter", "#1=5", "rs274/parameters", 2},
		{"parameter used", "G0 X#1", "rs274/parameters", 2},
		{"expression", "G0 X[1+2]", "rs274/parameters", 2},
		{"exponent", "G0 X1e3", "rs274/unknown-word", 2},
		{"two points", "G0 X1.2.3", "rs274/text", 2},
		{"two signs", "G0 X--1", "rs274/text", 2},
		{"no number", "G0 X", "rs274/text", 2},
		{"open comment", "G0 X1 (to", "rs274/text", 2},
		{"nested comment", "(a (b) c)", "rs274/text", 2},
		{"no letter", "=5", "rs274/text", 2},
		{"umlaut", "G0 X1 \xc3\xa4", "rs274/text", 2},
		{"percent inside", "%", "rs274/text", 2},
		{"long", "(" + strings.Repeat("x", 300) + ")", "rs274/long-line", 2},
		{"line number late", "G0 N5 X1", "rs274/text", 2},
		{"line number large", "N100000 G0 X1", "rs274/value", 2},
		{"no feed", "G0 X0 Y0 Z0\nG1 X1", "rs274/feed", 3},
		{"feed zero", "G0 X0 Y0 Z0\nG1 X1 F0", "rs274/feed", 3},
		{"negative feed", "F-1", "rs274/value", 2},
		{"inverse time", "G0 X0 Y0 Z0\nG93 G1 X1 F2\nX2", "rs274/feed", 4},
		{"arc radius", "G0 X0 Y0 Z0\nG2 X10 Y0 I5.0011 J0 F100", "rs274/arc", 3},
		{"arc across", "G0 X0 Y0 Z0\nG2 X10 Y0 I5 K1 F100", "rs274/arc", 3},
		{"arc both", "G0 X0 Y0 Z0\nG2 X10 Y0 I5 R5 F100", "rs274/arc", 3},
		{"arc neither", "G0 X0 Y0 Z0\nG2 X10 Y0 F100", "rs274/arc", 3},
		{"arc no end", "G0 X0 Y0 Z0\nG2 I5 F100", "rs274/arc", 3},
		{"arc zero", "G0 X0 Y0 Z0\nG2 X0 Y0 I0 J0 F100", "rs274/arc", 3},
		{"arc by radius full", "G0 X0 Y0 Z0\nG2 X0 Y0 R5 F100", "rs274/arc", 3},
		{"arc by radius short", "G0 X0 Y0 Z0\nG2 X10.1 Y0 R5 F100", "rs274/arc", 3},
		{"I with G1", "G0 X0 Y0 Z0\nG1 X10 I5 F100", "rs274/unused-word", 3},
		{"P alone", "P5", "rs274/unused-word", 2},
		{"dwell without P", "G4", "rs274/value", 2},
		{"cut from nowhere", "G0 X0 Y0\nG1 X5 F100", "rs274/unknown-place", 2},
		{"sideways first", "G0 X0 Y0", "rs274/unknown-place", 2},
		{"relative from nowhere", "G91 G0 X5", "rs274/not-followed", 2},
		{"two systems", "G0 X0 Y0 Z0\nG55 G0 X1", "rs274/not-followed", 3},
		{"units change", "G0 Z5\nF100\nG20", "rs274/units-change", 4},
		{"block delete", "/G0 Z5", "rs274/block-delete", 2},
		{"semicolon", "G0 Z5 ; up", "rs274/semicolon", 2},
		{"huge", "G0 X99999999", "rs274/value", 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, found := read(c.text)
			if len(found) == 0 {
				t.Fatalf("%q passed", c.text)
			}
			if f := found[0]; f.Code != c.code || f.Where.Line != c.line || f.Where.File != "a.nc" || f.Remedy == "" {
				t.Errorf("%q: got %s at %s (%s), want %s at line %d", c.text, f.Code, f.Where, f.Text, c.code, c.line)
			}
		})
	}
}

func TestFine(t *testing.T) {
	for _, text := range []string{
		"", "  ", "(nothing)", "n10 g0 z5", "G 0 X +0. 12 34 Z 5", "M7 M8", "G4 P1.5", "G0 Z5\nX1 Y1", "T1 M6", "S1000 M3",
		"G0 X0 Y0 Z0\nG2 X0 Y0 I5 J0 F100", "G0 X0 Y0 Z0\nG93 G1 X1 F2\nX2 F3\nG94 F100 X3", "G61.1", "G59.3\nG0 Z5", "N5",
		"G0 X0 Y0 Z0\nG2 X10 Y0 I5.00099 J0 F100",
	} {
		if p, found := read(text); len(found) > 0 || p.Refused > 0 {
			t.Errorf("%q: %s %s", text, found[0].Code, found[0].Text)
		}
	}
}

func TestEnds(t *testing.T) {
	for _, c := range []struct{ text, code string }{
		{"%\nG21\n%\n", ""}, {"%\nG21\n%\nG99 junk", "rs274/after-end"}, {"\n \n%\nM30\n%", ""},
		{"G21\n", "rs274/end"}, {"%\nG21\n", "rs274/end"}, {"", "rs274/end"}, {"%\nG21\nM2\n", "rs274/end"},
		{"M2\nG0 X1\n", "rs274/after-end"}, {"M30", ""}, {"\ufeffM2\r\n", ""},
	} {
		_, found := Read("a.nc", c.text)
		switch {
		case c.code == "" && len(found) > 0:
			t.Errorf("%q: %s %s", c.text, found[0].Code, found[0].Text)
		case c.code != "" && (len(found) == 0 || found[0].Code != c.code):
			t.Errorf("%q: got %v, want %s", c.text, found, c.code)
		}
	}
}

func TestStatedModes(t *testing.T) {
	p, found := Read("a.nc", "G21 G90\nG0 Z5\nM2\n")
	if len(found) != 1 || found[0].Code != "rs274/unstated" || found[0].Where.Line != 2 || len(p.Unstated) != 4 {
		t.Errorf("got %v, %v", p.Unstated, found)
	}
}

// TestMoves follows a program through units, distance modes, planes and stops.
func TestMoves(t *testing.T) {
	p, found := read("S8000 M3", "T2 M6", "G0 Z5", "X10 Y20", "G1 Z-1 F300", "G91 X5", "G90 G20 X1 F10", "G21 M5", "G0 Z5", "M0")
	if len(found) != 2 || found[0].Code != "rs274/units-change" || found[1].Code != "rs274/units-change" {
		t.Fatalf("found %v, want the change to inches and back", found)
	}
	want := []Move{
		{Kind: Rapid, From: Vec{0, 0, 5}, To: Vec{0, 0, 5}, Spindle: true, Line: 4},
		{Kind: Rapid, From: Vec{10, 20, 5}, To: Vec{10, 20, 5}, Spindle: true, Line: 5},
		{Kind: Feed, From: Vec{10, 20, 5}, To: Vec{10, 20, -1}, Feed: 300, Spindle: true, Line: 6},
		{Kind: Feed, From: Vec{10, 20, -1}, To: Vec{15, 20, -1}, Feed: 300, Spindle: true, Line: 7},
		{Kind: Feed, From: Vec{15, 20, -1}, To: Vec{25.4, 20, -1}, Feed: 254, Spindle: true, Line: 8},
		{Kind: Rapid, From: Vec{25.4, 20, -1}, To: Vec{25.4, 20, 5}, Line: 10},
	}
	if len(p.Moves) != len(want) {
		t.Fatalf("got %d moves", len(p.Moves))
	}
	for i, w := range want {
		if p.Moves[i] != w {
			t.Errorf("move %d: got %+v, want %+v", i, p.Moves[i], w)
		}
	}
	if p.Units != "mixed" || !p.Spindle || !p.Ended || len(p.Stops) != 2 || len(p.Tools) != 1 || p.Tools[0] != 2 || p.Lines != 12 {
		t.Errorf("got %q %v %v %v %v %d", p.Units, p.Spindle, p.Ended, p.Stops, p.Tools, p.Lines)
	}
}

// TestArcs holds centres and turns of arcs by both formats.
func TestArcs(t *testing.T) {
	for _, c := range []struct {
		text   string
		centre Vec
		turn   float64 // degrees
	}{
		{"G2 X10 Y0 I5 J0", Vec{5, 0, 0}, -180},
		{"G3 X10 Y0 I5 J0", Vec{5, 0, 0}, 180},
		{"G3 X5 Y5 I0 J5", Vec{0, 5, 0}, 90},
		{"G2 X5 Y5 I0 J5", Vec{0, 5, 0}, -270},
		{"G3 X0 Y0 I5", Vec{5, 0, 0}, 360},
		{"G2 X0 Y0 J-3", Vec{0, -3, 0}, -360},
		{"G3 X5 Y5 R5", Vec{0, 5, 0}, 90},
		{"G2 X5 Y5 R5", Vec{5, 0, 0}, -90},
		{"G3 X5 Y5 R-5", Vec{5, 0, 0}, 270},
		{"G2 X5 Y5 R-5", Vec{0, 5, 0}, -270},
		{"G3 X10 R5", Vec{5, 0, 0}, 180},
		{"G18 G3 Z5 X5 I5", Vec{5, 0, 0}, 90}, // from -x by way of +z, seen from +y with z right and x up
		{"G19 G2 Y5 Z5 J5", Vec{0, 5, 0}, -90},
	} {
		p, found := read("G0 X0 Y0 Z0", c.text+" F100")
		if len(found) > 0 || len(p.Moves) != 2 {
			t.Errorf("%s: %v", c.text, found)
			continue
		}
		m := p.Moves[1]
		for i := range 3 {
			if !near(m.Centre[i], c.centre[i], 1e-9) {
				t.Errorf("%s: centre %v, want %v", c.text, m.Centre, c.centre)
			}
			if !near(m.At(0.9999999)[i], m.To[i], 1e-4) {
				t.Errorf("%s: the path ends at %v, not at %v", c.text, m.At(0.9999999), m.To)
			}
		}
		if !near(m.Turn*180/math.Pi, c.turn, 1e-6) {
			t.Errorf("%s: turn %.3f, want %.0f degrees", c.text, m.Turn*180/math.Pi, c.turn)
		}
	}
}

// TestTimes holds both feed modes: 300 mm at 600 mm/min, then F2 in half a minute, and
// a second of waiting.
func TestTimes(t *testing.T) {
	p, found := read("G0 X0 Y0 Z0", "G1 X300 F600", "G93 X0 F2", "G94 G4 P1")
	if got := 60 * float64(p.Minutes(Rates{})); len(found) > 0 || !near(got, 0.5+0.5+1.0/60, 1e-9) {
		t.Errorf("got %.4f minutes, %v", got, found)
	}
	helix, _ := read("G0 X0 Y0 Z0", "G3 X0 Y0 I10 Z-5 F100")
	if got, want := helix.Moves[1].Length(), math.Hypot(20*math.Pi, 5); !near(got, want, 1e-9) {
		t.Errorf("helix %.6f mm, want %.6f", got, want)
	}
}

// TestFaultLeavesStateAlone: a line at fault does nothing at all.
func TestFaultLeavesStateAlone(t *testing.T) {
	p, _ := read("G0 X0 Y0 Z5", "G91 G20 X5 G7", "G0 X1")
	if p.Refused != 1 || len(p.Moves) != 2 || p.Moves[1].To != (Vec{1, 0, 5}) {
		t.Errorf("got %+v", p)
	}
}

// TestLostPlace: arcs behind a line that was left out start nowhere known, and are
// reported again from where X and Y are stated.
func TestLostPlace(t *testing.T) {
	p, found := read("G0 X0 Y0 Z0", "F100", "G1 X5 E1", "G2 X10 Y5 I0 J5", "G1 X0 Y0", "G2 X10 Y5 I0 J5")
	if p.Refused != 3 || len(found) != 2 || found[1].Where.Line != 7 || found[1].Code != "rs274/arc" {
		t.Errorf("refused %d, found %v", p.Refused, found)
	}
}

func TestManyFaults(t *testing.T) {
	p, found := read(strings.Repeat("G7\n", 500))
	if len(found) != MaxFindings+1 || p.Refused != 500 || found[MaxFindings].Code != "rs274/more" {
		t.Errorf("%d findings, %d refused", len(found), p.Refused)
	}
}

// TestChords: chords of an arc err by no more than asked.
func TestChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.05, 500).Draw(t, "radius")
		turn := rapid.Float64Range(-6.28, 6.28).Draw(t, "turn")
		tol := rapid.Float64Range(0.001, 0.5).Draw(t, "tol")
		m := Move{Kind: Circle, From: Vec{r, 0, 0}, To: Vec{r * math.Cos(turn), r * math.Sin(turn), 1}, Turn: turn}
		ps := m.Chords(tol)
		for i := 1; i < len(ps); i++ {
			mid := ps[i-1].XY().Add(ps[i].XY()).Mul(0.5)
			if off := r - mid.Norm(); off > tol+1e-9 {
				t.Fatalf("chord %d of %d errs by %g", i, len(ps)-1, off)
			}
		}
		if ps[0] != m.From || ps[len(ps)-1] != m.To {
			t.Fatalf("ends %v %v", ps[0], ps[len(ps)-1])
		}
	})
}

// FuzzRead: no text makes the reader fall over, and what it returns is finite and joined
// up from move to move on every stated axis.
func FuzzRead(f *testing.F) {
	for _, s := range []string{head + "G0 Z5\nX1 Y1\nG1 Z-1 F100\nG2 X3 Y3 I1 J1\nM2\n", "%\nG20\n%\n", "G2 X1 R1", "/N5 (x) G0X.5", "G93G1X1F1",
		"G18 G3 X1 Z1 R-9", "#1=[2]", "G91\nG1 X1e9", "M6T1\nM3S1", "G0X0Y0Z0\nG3X0Y0I1Z9F1\nG19G2Y1Z1J1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, found := Read("f.nc", text)
		for _, fd := range found {
			if fd.Text == "" || fd.Remedy == "" {
				t.Fatalf("finding without words: %+v", fd)
			}
		}
		if p.Refused > 0 && len(found) == 0 {
			t.Fatal("lines refused and nothing said")
		}
		for i, m := range p.Moves {
			sum := m.Length() + m.Feed + m.Radius()
			for _, v := range m.Chords(0.01) {
				sum += v[0] + v[1] + v[2]
			}
			if math.IsNaN(sum) || math.IsInf(sum, 0) {
				t.Fatalf("move %d is not finite: %+v", i, m)
			}
			if m.Kind != Rapid && m.Feed <= 0 {
				t.Fatalf("move %d cuts without a feed", i)
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	var s strings.Builder
	s.WriteString(head + "G0 X0 Y0 Z5\nG1 Z-1 F1000\n")
	for i := range 100_000 {
		s.WriteString("X" + word{'X', float64(i%1000) / 7, 0}.String()[1:] + " Y" + word{'Y', float64(i%777) / 3, 0}.String()[1:] + "\n")
	}
	s.WriteString("M2\n")
	text := s.String()
	for b.Loop() {
		Read("b.nc", text)
	}
}

func hasStop(found []finding.Finding) bool {
	worst, any := finding.Worst(found)
	return any && worst == finding.Stop
}

func TestSurvey(t *testing.T) {
	p, _ := read("G0 X0 Y0 Z5", "G1 Z-2 F300", "X100 F1000", "G0 Z5", "G0 X0 Z-1")
	s, found := p.Survey("a.nc", 6000)
	if s.Low != (Vec{0, 0, -2}) || s.High != (Vec{100, 0, 5}) || s.CutLow[2] != -2 || len(s.Feeds) != 2 || s.Feeds[0].Feed != 300 || len(s.Depths) != 1 {
		t.Errorf("got %+v", s)
	}
	if len(found) != 1 || found[0].Code != "rs274/low-rapid" || found[0].Where.Line != 6 {
		t.Errorf("found %v", found)
	}
	if s, _ := (Program{}).Survey("", 0); s.Units != "not stated" || s.Low != (Vec{}) {
		t.Errorf("of nothing: %+v", s)
	}
}
