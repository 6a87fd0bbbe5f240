package toolpath

import (
	"math"
	"strings"
	"testing"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/view"
)

// TestFindings gives each fault its finding, with a place and what to do, and tells
// whether a program is still written.
func TestFindings(t *testing.T) {
	nan := math.NaN()
	slot := func(width float64) Part { // a U with a slot of that width, 60 mm deep
		return formPart("U", geom.Ring{{X: 20, Y: 20}, {X: 120, Y: 20}, {X: 120, Y: 120}, {X: 70 + width/2, Y: 120}, {X: 70 + width/2, Y: 60},
			{X: 70 - width/2, Y: 60}, {X: 70 - width/2, Y: 120}, {X: 20, Y: 120}})
	}
	square := func(x, y float64) Part { return formPart("S", geom.Rect(x, y, x+80, y+80).Ring()) }
	for name, c := range map[string]struct {
		change  func(*Sheet, *Machine)
		code    string
		says    string
		written bool
	}{
		"channel":      {func(s *Sheet, m *Machine) { s.Parts = []Part{slot(4)} }, "toolpath/channel", "6.00 mm", true},
		"wide channel": {func(s *Sheet, m *Machine) { s.Parts = []Part{slot(6.5)} }, "", "", true},
		"narrow hole": {func(s *Sheet, m *Machine) {
			s.Parts[0] = formPart("S", geom.Rect(20, 20, 100, 100).Ring(), hole(geom.Point{X: 60, Y: 60}, 2.5))
		}, "toolpath/channel", "hole", true},
		"short flute":       {func(s *Sheet, m *Machine) { m.Flute = 20 }, "toolpath/flute", "20.0 mm", false},
		"no feed":           {func(s *Sheet, m *Machine) { m.Feed = 0 }, "toolpath/feed", "1524 mm/min", true},
		"no plunge":         {func(s *Sheet, m *Machine) { m.Plunge = 0 }, "toolpath/feed", "500 mm/min", true},
		"feed not a number": {func(s *Sheet, m *Machine) { m.Feed = -3 }, "toolpath/feed", "1524", true},
		"no cutter":         {func(s *Sheet, m *Machine) { m.Cutter = 0 }, "toolpath/cutter", "no cutter", false},
		"too fast":          {func(s *Sheet, m *Machine) { m.MaxFeed = 1000 }, "toolpath/max-feed", "1000", true},
		"safe height":       {func(s *Sheet, m *Machine) { m.SafeHeight = 1 }, "toolpath/safe-height", "1.0 mm", true},
		"off the sheet":     {func(s *Sheet, m *Machine) { s.Parts = []Part{square(330, 100)} }, "toolpath/off-sheet", "part S", false},
		"off the offcut":    {func(s *Sheet, m *Machine) { s.Outline = geom.Ring{{X: 0, Y: 0}, {X: 400, Y: 0}, {X: 0, Y: 50}} }, "toolpath/off-sheet", "part S", false},
		"off the bed":       {func(s *Sheet, m *Machine) { m.BedX = 90 }, "toolpath/off-bed", "90.0", false},
		"beside the sheet":  {func(s *Sheet, m *Machine) { s.Parts = []Part{square(1, 20)} }, "toolpath/beside-origin", "2.0 mm", true},
		"too close":         {func(s *Sheet, m *Machine) { s.Parts = append(s.Parts, square(104, 20)) }, "toolpath/too-close", "6.00 mm", false},
		"no tabs":           {func(s *Sheet, m *Machine) { s.Parts[0].TabsOn = nil }, "toolpath/tabs", "No tab", true},
		"no thickness":      {func(s *Sheet, m *Machine) { s.Thickness = 0 }, "toolpath/thickness", "thickness", false},
		"no outline":        {func(s *Sheet, m *Machine) { s.Parts = []Part{{ID: "S"}} }, "toolpath/empty", "no outline", false},
		"outline of NaN": {func(s *Sheet, m *Machine) {
			s.Parts = []Part{{ID: "S", Region: view.Of[view.Form](geom.Region{{Outer: geom.Ring{{X: nan}, {X: 10}, {X: 10, Y: 10}}}})}}
		}, "toolpath/empty", "no outline", false},
		"tiny steps":      {func(s *Sheet, m *Machine) { m.StepDown = 0.01 }, "toolpath/setting", "2490 passes", false},
		"ramp below zero": {func(s *Sheet, m *Machine) { m.Ramp = -5 }, "toolpath/setting", "ramp angle", true},
		"accel NaN":       {func(s *Sheet, m *Machine) { m.Accel = nan }, "toolpath/setting", "acceleration", true},
	} {
		t.Run(name, func(t *testing.T) {
			part := square(20, 20)
			part.TabsOn = []geom.Ring{{{X: 20, Y: 20}, {X: 100, Y: 20}, {X: 100, Y: 100}, {X: 20, Y: 100}, {X: 20, Y: 20}}}
			s, m := Sheet{Name: "sheet 1", SizeX: 400, SizeY: 300, Thickness: 24.6, Parts: []Part{part}}, router()
			c.change(&s, &m)
			r, found := Compute(Input{Sheets: []Sheet{s}, Machine: m})
			if got := len(r.Programs) == 1; got != c.written {
				t.Errorf("written %v, want %v: %v", got, c.written, found)
			}
			if c.code == "" {
				for _, f := range found {
					if f.Severity > finding.Note && f.Code != "toolpath/tabs" {
						t.Errorf("%s: %s", f.Code, f.Text)
					}
				}
				return
			}
			says(t, found, c.code, c.says)
			for _, p := range r.Programs {
				if strings.Contains(p.Text, "NaN") || strings.Contains(p.Text, "Inf") || math.IsNaN(float64(p.Minutes)) {
					t.Error("a program that is no number")
				}
			}
		})
	}
}

// says looks for a finding of that code with those words, a place and a remedy.
func says(t *testing.T, found []finding.Finding, code, words string) {
	t.Helper()
	for _, f := range found {
		if f.Code != code || !strings.Contains(f.Text, words) {
			continue
		}
		if f.Remedy == "" || f.Where.String() == "" || !strings.HasSuffix(f.Text, ".") {
			t.Errorf("%s: %q at %q, remedy %q", code, f.Text, f.Where, f.Remedy)
		}
		return
	}
	t.Errorf("no %s with %q in %v", code, words, found)
}

func TestChannelIsLocated(t *testing.T) {
	s := Sheet{Name: "sheet 1", SizeX: 400, SizeY: 300, Thickness: 10, Parts: []Part{formPart("U", geom.Ring{{X: 20, Y: 20}, {X: 120, Y: 20}, {X: 120, Y: 120},
		{X: 72, Y: 120}, {X: 72, Y: 60}, {X: 68, Y: 60}, {X: 68, Y: 120}, {X: 20, Y: 120}})}}
	_, found := Compute(Input{Sheets: []Sheet{s}, Machine: router()})
	for _, f := range found {
		if f.Code != "toolpath/channel" {
			continue
		}
		if x, y := f.Where.At[0], f.Where.At[1]; x < 68 || x > 72 || y < 58 || y > 121 {
			t.Errorf("channel at %.1f, %.1f", x, y)
		}
		if math.Abs(f.Got-4) > 0.2 {
			t.Errorf("channel %.2f mm wide, want 4", f.Got)
		}
		return
	}
	t.Error("no channel found")
}

func TestNoRouterNoWords(t *testing.T) {
	r, found := Compute(Input{Sheets: []Sheet{exampleSheet()}})
	if len(r.Programs) != 0 || r.Programs == nil || len(found) != 0 {
		t.Errorf("%d programs, %v", len(r.Programs), found)
	}
}

func TestRulesAreComplete(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range Rules() {
		if seen[r.Code] || r.Remedy == "" || r.Title == "" || !strings.HasPrefix(r.Code, "toolpath/") {
			t.Errorf("rule %+v", r)
		}
		seen[r.Code] = true
	}
}

func TestFilesHaveTheirOwnNames(t *testing.T) {
	a := exampleSheet()
	b, u := a, a
	u.Name = "Rest \u00fc/.. (2)"
	r, _ := Compute(Input{Sheets: []Sheet{a, b, u}, Machine: router()})
	want := []string{"sheet-1.nc", "sheet-1-2.nc", "rest-2.nc"}
	for i, p := range r.Programs {
		if p.File != want[i] {
			t.Errorf("file %s, want %s", p.File, want[i])
		}
	}
}
