package toolpath

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// arcPoints returns places along a step, ends included, about every half mm.
func arcPoints(s step) [][3]float64 {
	if s.g < 2 {
		n := 1 + int(math.Hypot(s.x-s.x0, s.y-s.y0)*2)
		var out [][3]float64
		for k := 0; k <= n; k++ {
			f := float64(k) / float64(n)
			out = append(out, [3]float64{s.x0 + f*(s.x-s.x0), s.y0 + f*(s.y-s.y0), s.z0 + f*(s.z-s.z0)})
		}
		return out
	}
	cx, cy := s.x0+s.i, s.y0+s.j
	a0, a1 := math.Atan2(s.y0-cy, s.x0-cx), math.Atan2(s.y-cy, s.x-cx)
	if s.g == 3 && a1 <= a0 {
		a1 += 2 * math.Pi
	}
	if s.g == 2 && a1 >= a0 {
		a1 -= 2 * math.Pi
	}
	radius := math.Hypot(s.i, s.j)
	n := 2 + int(math.Abs(a1-a0)*radius*2)
	var out [][3]float64
	for k := 0; k <= n; k++ {
		f := float64(k) / float64(n)
		a := a0 + f*(a1-a0)
		out = append(out, [3]float64{cx + radius*math.Cos(a), cy + radius*math.Sin(a), s.z0 + f*(s.z-s.z0)})
	}
	return out
}

func cutting(s step) bool { return s.g > 0 && s.known && (s.z < 0 || s.z0 < 0) }

// anyMachine draws a machine; anySheet a sheet of wavy parts with holes.
func anyMachine(t *rapid.T) Machine {
	return Machine{Router: true, BedX: 900, BedY: 900,
		Cutter: units.Length(rapid.Float64Range(1, 14).Draw(t, "cutter")), Flute: 100,
		Feed: units.Speed(rapid.Float64Range(200, 6000).Draw(t, "feed")), Plunge: units.Speed(rapid.Float64Range(100, 3000).Draw(t, "plunge")),
		StepDown: units.Length(rapid.Float64Range(1, 30).Draw(t, "step")), Ramp: units.Angle(rapid.Float64Range(1, 45).Draw(t, "ramp")),
		ArcTol: units.Length(rapid.Float64Range(0.003, 0.1).Draw(t, "arc")), Inch: rapid.Bool().Draw(t, "inch"), Against: rapid.Bool().Draw(t, "against"),
		Spindle: rapid.Bool().Draw(t, "spindle"), Overcut: units.Length(rapid.Float64Range(0.05, 1).Draw(t, "overcut"))}
}

func anySheet(t *rapid.T) Sheet {
	s := Sheet{Name: "any", SizeX: 900, SizeY: 900, Thickness: units.Length(rapid.Float64Range(3, 60).Draw(t, "thick"))}
	for k := range rapid.IntRange(1, 3).Draw(t, "parts") {
		c := geom.Point{X: 150 + 300*float64(k), Y: rapid.Float64Range(200, 600).Draw(t, "y")}
		n := rapid.SampledFrom([]int{4, 30, 400}).Draw(t, "corners")
		p := formPart(string(rune('A'+k)), blob(c, rapid.Float64Range(60, 120).Draw(t, "radius"), rapid.Float64Range(0, 12).Draw(t, "wave"), n),
			hole(c, rapid.Float64Range(0.4, 25).Draw(t, "hole")))
		if rapid.Bool().Draw(t, "tabs") {
			b := p.Region.Shape().Box()
			p.TabsOn = []geom.Ring{grown(b, 0).Ring(), p.Region.Shape()[0].Outer}
		}
		s.Parts = append(s.Parts, p)
	}
	return s
}

// TestLaws draws sheets and machines and holds every program to the laws below.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s, m := anySheet(rt), anyMachine(rt)
		r, found := Compute(Input{Sheets: []Sheet{s}, Machine: m})
		if len(r.Programs) == 0 && len(found) == 0 {
			rt.Fatal("no program and no reason")
		}
		for _, p := range r.Programs {
			all := steps(t, p.Text)
			keepsDistance(rt, s, m, all)
			descends(rt, s, m, p, all)
			radiiAgree(rt, m, all)
		}
	})
}

// keepsDistance samples every cutting move: the cutter's centre stays its radius from
// all parts, but where a hole just narrower than the cutter is drilled.
func keepsDistance(rt *rapid.T, s Sheet, m Machine, all []step) {
	var parts geom.Region
	for _, p := range s.Parts {
		parts = append(parts, p.Region.Shape()...)
	}
	where := geom.NewLocator(parts)
	radius := m.Cutter.MM() / 2
	tol := m.ArcTol.MM() + 1.5*math.Min(flattenMM, m.ArcTol.MM()/2) + 0.002
	for _, st := range all {
		if !cutting(st) {
			continue
		}
		least := radius - tol
		if st.x == st.x0 && st.y == st.y0 {
			least -= drillMM / 2
		}
		for _, q := range arcPoints(st) {
			if d := where.Distance(geom.Point{X: q[0], Y: q[1]}); d < least {
				rt.Fatalf("%s: %.4f mm from the part, radius %.4f, tolerance %.4f", st.line, d, radius, tol)
			}
		}
	}
}

// descends holds a program to its depths: passes deepen by no more than the step down,
// the lowest is the sheet's thickness and the overcut, and rapid moves below the safe
// height go straight up.
func descends(rt *rapid.T, s Sheet, m Machine, p Program, all []step) {
	bottom, deepest, last := -(s.Thickness + m.Overcut).MM(), 0.0, 0.0
	for _, st := range all {
		deepest = math.Min(deepest, st.z)
		if st.g == 0 {
			last = 0
			if st.known && st.z0 < p.Safe.MM()-1e-3 && (st.x != st.x0 || st.y != st.y0 || st.z < st.z0) {
				rt.Fatalf("%s: a rapid move below the safe height that is not straight up", st.line)
			}
			continue
		}
		if last-st.z > m.StepDown.MM()+2e-3 {
			rt.Fatalf("%s: %.3f mm below the pass before, step %.3f", st.line, last-st.z, m.StepDown)
		}
		last = math.Min(last, st.z)
	}
	if math.Abs(deepest-bottom) > 1e-3 {
		rt.Fatalf("deepest %.4f, bottom %.4f", deepest, bottom)
	}
}

// radiiAgree holds arcs to a quarter of what the reference interpreter allows.
func radiiAgree(rt *rapid.T, m Machine, all []step) {
	limit := 0.002
	if m.Inch {
		limit = 0.0002 * 25.4
	}
	for _, st := range all {
		if st.g < 2 {
			continue
		}
		a, b := math.Hypot(st.i, st.j), math.Hypot(st.x-st.x0-st.i, st.y-st.y0-st.j)
		if a == 0 || b == 0 || math.Abs(a-b) > limit/4 {
			rt.Fatalf("%s: radii %.6f and %.6f mm", st.line, a, b)
		}
		if st.x == st.x0 && st.y == st.y0 {
			rt.Fatalf("%s: a full circle nobody asked for", st.line)
		}
	}
}

// TestEveryEdgeIsCut holds the programs to the other side: along every edge that the
// cutter can reach it passes at its radius, at the bottom, but for tabs.
func TestEveryEdgeIsCut(t *testing.T) {
	in := Input{Sheets: []Sheet{exampleSheet()}, Machine: router()}
	p, _ := compute(t, in)
	var low []geom.Point
	for _, st := range steps(t, p.Text) {
		for _, q := range arcPoints(st) {
			if cutting(st) && q[2] < p.Bottom.MM()+1e-3 {
				low = append(low, geom.Point{X: q[0], Y: q[1]})
			}
		}
	}
	bare := 0.0
	for _, part := range in.Sheets[0].Parts {
		for _, ring := range part.Region.Shape().Rings() {
			for i, a := range ring {
				b := ring[(i+1)%len(ring)]
				at := a.Add(b).Mul(0.5)
				near := math.Inf(1)
				for _, q := range low {
					near = math.Min(near, q.Sub(at).Norm())
				}
				if near > 3+0.4 { // half a step of the sampling beside it
					bare += b.Sub(a).Norm()
				}
			}
		}
	}
	// the plain square has sides longer than a sample; each is judged at its middle
	if bare > 0 {
		t.Errorf("%.1f mm of edge are not cut to the bottom", bare)
	}
}

// TestTextFollowsTheMoves reads the text back and compares it with the moves that
// were timed.
func TestTextFollowsTheMoves(t *testing.T) {
	for _, inch := range []bool{false, true} {
		m := router()
		m.Inch = inch
		p, _ := compute(t, Input{Sheets: []Sheet{exampleSheet()}, Machine: m})
		got := steps(t, p.Text)[1:] // the first goes up to the safe height
		if len(got) != len(p.Moves) {
			t.Fatalf("%d motions in the text, %d moves", len(got), len(p.Moves))
		}
		for i, st := range got {
			m := p.Moves[i]
			off := math.Abs(st.x-m.X) + math.Abs(st.y-m.Y) + math.Abs(st.z-m.Z)
			if m.Kind > Line {
				off += math.Abs(st.i-m.I) + math.Abs(st.j-m.J)
			}
			if st.g != int(m.Kind) || off > 1e-6 || (m.Kind != Rapid && math.Abs(st.feed-m.Feed) > 0.2) {
				t.Fatalf("line %q is not move %+v", st.line, m)
			}
		}
	}
}

func TestTabsStand(t *testing.T) {
	m := router()
	p, _ := compute(t, Input{Sheets: []Sheet{exampleSheet()}, Machine: m})
	if len(p.Tabs) != 4 {
		t.Fatalf("%d tabs, want 4", len(p.Tabs))
	}
	top := -24.6 + 3.0
	for _, tab := range p.Tabs {
		if tab.Part != "L2-A" {
			t.Errorf("a tab on %s, whose edges all show", tab.Part)
		}
		if !(math.Abs(tab.Y.MM()-57) < 0.01 || math.Abs(tab.X.MM()-503) < 0.01) {
			t.Errorf("tab at %.2f, %.2f is not along a hidden edge", tab.X, tab.Y)
		}
		low := 0.0
		for _, st := range steps(t, p.Text) {
			for _, q := range arcPoints(st) {
				if cutting(st) && math.Hypot(q[0]-tab.X.MM(), q[1]-tab.Y.MM()) < tab.Width.MM()/2+m.Cutter.MM()/2-0.6 {
					low = math.Min(low, q[2])
				}
			}
		}
		if math.Abs(low-top) > 1e-3 {
			t.Errorf("over the tab at %.1f, %.1f the cutter goes down to %.3f, want %.3f", tab.X, tab.Y, low, top)
		}
	}
}

func TestClimbAndConventional(t *testing.T) {
	for _, against := range []bool{false, true} {
		m := router()
		m.Against = against
		s := Sheet{Name: "one", SizeX: 300, SizeY: 300, Thickness: 10,
			Parts: []Part{formPart("A", geom.Rect(50, 50, 200, 200).Ring(), geom.Rect(100, 100, 150, 150).Ring().Reversed())}}
		p, _ := compute(t, Input{Sheets: []Sheet{s}, Machine: m})
		for _, st := range steps(t, p.Text) {
			if st.g != 1 || st.z > -10 || math.Hypot(st.x-st.x0, st.y-st.y0) < 1 {
				continue
			}
			dx, dy := st.x-st.x0, st.y-st.y0
			n := math.Hypot(dx, dy)
			mid := geom.Point{X: (st.x + st.x0) / 2, Y: (st.y + st.y0) / 2}
			right := geom.Point{X: mid.X + 3.5*dy/n, Y: mid.Y - 3.5*dx/n}
			if onRight := s.Parts[0].Region.Shape().Contains(right); onRight == against {
				t.Fatalf("%s: part on the right %v, conventional %v", st.line, onRight, against)
			}
		}
	}
}

func TestInsideBeforeOutside(t *testing.T) {
	p, _ := compute(t, Input{Sheets: []Sheet{exampleSheet()}, Machine: router()})
	if slices.Index(p.Parts, "L1-B") > slices.Index(p.Parts, "L1-A") || len(p.Parts) != 3 {
		t.Errorf("order of the outlines %v: L1-B lies in the island's hole of L1-A", p.Parts)
	}
}

// TestModalWords holds a program to the rules of the reference interpreter that the
// writer keeps: modes stated once, one motion a line, F before the first G1, a last
// line that ends the program.
func TestModalWords(t *testing.T) {
	for _, m := range []Machine{router(), func() Machine { m := router(); m.Inch, m.Spindle, m.Speed = true, true, 12000; return m }()} {
		p, _ := compute(t, Input{Piece: strings.Repeat("a long (odd) name ", 30), Sheets: []Sheet{exampleSheet()}, Machine: m})
		for _, text := range []string{p.Text, p.DryRun.Text} {
			bs := blocks(t, text)
			count := map[float64]int{}
			fed := false
			for _, b := range bs {
				motions := 0
				for _, g := range b.gs {
					count[g]++
					if g <= 3 {
						motions++
					}
				}
				_, hasF := b.of['F']
				fed = fed || hasF
				if motions > 1 || (motions == 1 && b.gs[0] > 0 && !fed) {
					t.Errorf("line %q: %d motions, feed stated %v", b.text, motions, fed)
				}
			}
			for _, g := range []float64{17, 40, 49, 54, 80, 90, 94} {
				if count[g] != 1 {
					t.Errorf("G%g is stated %d times", g, count[g])
				}
			}
			if count[20]+count[21] != 1 || bs[len(bs)-1].text != "M2" {
				t.Errorf("units stated %d times, last line %q", count[20]+count[21], bs[len(bs)-1].text)
			}
			for _, line := range strings.Split(text, "\n") {
				if len(line) > 255 {
					t.Errorf("line of %d characters", len(line))
				}
			}
			if strings.Contains(p.DryRun.Text, "M3") {
				t.Error("the dry run starts the spindle")
			}
			if m.Spindle != strings.Contains(p.Text, "\nM3 S12000\n") {
				t.Error("spindle words")
			}
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	in := Input{Piece: "Twice", Sheets: []Sheet{exampleSheet()}, Machine: router()}
	a, _ := compute(t, in)
	b, _ := compute(t, in)
	if a.Text != b.Text {
		t.Error("two runs differ")
	}
}
