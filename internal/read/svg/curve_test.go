package svg

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
)

// draw returns the subpaths of path data.
func drawPath(t *testing.T, d string) []subpath {
	t.Helper()
	p := &pen{limit: 1e6}
	if fault := readPath(d, p); fault != nil {
		t.Fatalf("%q: %+v", d, fault)
	}
	return p.subs
}

func TestPathCommandsEndWhereTheyShould(t *testing.T) {
	for _, tt := range []struct {
		d    string
		x, y float64 // where the pen ends
		subs int
	}{
		{"M1 2 3 4", 3, 4, 1},
		{"m1 2 3 4", 4, 6, 1},
		{"M1 2H5V9", 5, 9, 1},
		{"m1 2h5v9h-1-1", 4, 11, 1},
		{"M0 0L1 1 2 2zm5 5l1 1", 6, 6, 2},
		{"M0 0L1 1 2 2zl1 1", 1, 1, 2},
		{"M0 0C1 1 2 2 3 3S4 4 5 5", 5, 5, 1},
		{"M1 1c1 1 2 2 3 3s4 4 5 5", 9, 9, 1},
		{"M0 0Q1 1 2 0T4 0 6 0", 6, 0, 1},
		{"M1 1q1 1 2 0t2 0", 5, 1, 1},
		{"M0 0A5 5 0 0 1 10 0", 10, 0, 1},
		{"M10-20A5.5.3-4 010-.1", 0, -.1, 1},
		{"M10 10a5 5 0 1125 0", 35, 10, 1},
		{"M-.5.5-1-1", -1, -1, 1},
		{"M1e1,1E-1L2.5e+1 0", 25, 0, 1},
		{"M0 0A0 5 0 0 1 10 0", 10, 0, 1},
		{"M0 0\n\tL\r5,5", 5, 5, 1},
		{"M 1. 2.L3. 4.", 3, 4, 1},
	} {
		subs := drawPath(t, tt.d)
		end := subs[len(subs)-1].end()
		if len(subs) != tt.subs || math.Abs(end.X-tt.x)+math.Abs(end.Y-tt.y) > 1e-12 {
			t.Errorf("%q: %d subpaths, end %v", tt.d, len(subs), end)
		}
	}
}

func TestPathFaultsKeepWhatCameBefore(t *testing.T) {
	for _, tt := range []struct {
		d  string
		at int // offset of the fault
		n  int // segments before it
	}{
		{"M0 0L5 5 6", 10, 1},
		{"M0 0L5 5 L6#7", 11, 1},
		{"M0 0L5 5X6 6", 8, 1},
		{"M0 0,L5 5", 4, 0},
		{"M0 0L5 5,", 8, 1},
		{"M0 0A5 5 0 2 1 6 6", 11, 0},
		{"M0 0L5,,5", 7, 0},
		{"M0 0L--5 5", 6, 0},
		{"0 0", 0, 0},
	} {
		p := &pen{limit: 1e6}
		fault := readPath(tt.d, p)
		n := 0
		for _, s := range p.subs {
			n += len(s.kinds)
		}
		if fault == nil || fault.at != tt.at || n != tt.n {
			t.Errorf("%q: fault %+v, %d segments", tt.d, fault, n)
		}
	}
}

// TestSmoothCommandsMirrorTheirControl draws the same curve both ways.
func TestSmoothCommandsMirrorTheirControl(t *testing.T) {
	for _, pair := range [][2]string{
		{"M30 40C16 137 171 45 100 90S171 45 180 155", "M30 40C16 137 171 45 100 90C29 135 171 45 180 155"},
		{"M30 40Q171 45 100 90T160 180", "M30 40Q171 45 100 90Q29 135 160 180"},
		{"M30 40T160 180", "M30 40L160 180"},
		{"M30 40L1 1S9 9 5 8", "M30 40L1 1C1 1 9 9 5 8"},
		{"M30 40Q1 1 2 2S9 9 5 8", "M30 40Q1 1 2 2C2 2 9 9 5 8"},
	} {
		a, b := drawPath(t, pair[0])[0], drawPath(t, pair[1])[0]
		if math.Abs(a.area()-b.area()) > 1e-9 || a.box() != b.box() && a.box().Min.Sub(b.box().Min).Norm() > 1e-9 {
			t.Errorf("%q and %q differ: %v, %v", pair[0], pair[1], a.area(), b.area())
		}
	}
}

// TestArcsAreExact checks area and extent of arcs against circle and ellipse.
func TestArcsAreExact(t *testing.T) {
	for _, tt := range []struct {
		d    string
		area float64
		box  geom.Box
	}{
		{"M0 0A5 5 0 0 1 10 0Z", math.Pi * 25 / 2, geom.Rect(0, -5, 10, 0)},
		{"M0 0A5 5 0 0 0 10 0Z", -math.Pi * 25 / 2, geom.Rect(0, 0, 10, 5)},
		{"M0 0A10 10 0 0 1 10 10L0 10Z", math.Pi * 100 / 4, geom.Rect(0, 0, 10, 10)},
		{"M10 0A10 10 0 1 1 0-10V0Z", math.Pi * 75, geom.Rect(-10, -10, 10, 10)},
		{"M0 0A1 1 0 0 1 10 0Z", math.Pi * 25 / 2, geom.Rect(0, -5, 10, 0)},
		{"M-5 0A5 2 0 0 1 5 0A5 2 0 0 1 -5 0Z", math.Pi * 10, geom.Rect(-5, -2, 5, 2)},
		{"M0-5A5 2 90 0 1 0 5A5 2 90 0 1 0-5Z", math.Pi * 10, geom.Rect(-2, -5, 2, 5)},
	} {
		s := drawPath(t, tt.d)[0]
		near(t, tt.d, s.area(), tt.area, 1e-9)
		b := s.box()
		near(t, tt.d+" box", b.Min.Sub(tt.box.Min).Norm()+b.Max.Sub(tt.box.Max).Norm(), 0, 1e-9)
	}
}

// anyCurve draws a random closed line of lines, cubics and arcs under a random
// transform.
func anyCurve(t *rapid.T) subpath {
	coord := rapid.Float64Range(-300, 300)
	point := func(name string) geom.Point {
		return geom.Point{X: coord.Draw(t, name+"x"), Y: coord.Draw(t, name+"y")}
	}
	p := &pen{limit: 1000}
	p.move(point("start"))
	for range rapid.IntRange(1, 5).Draw(t, "segments") {
		switch rapid.IntRange(0, 3).Draw(t, "kind") {
		case 0:
			p.line(point("to"))
		case 1:
			p.cubic(point("a"), point("b"), point("to"))
		case 2:
			p.quadratic(point("a"), point("to"))
		case 3:
			r := rapid.Float64Range(1, 400)
			p.arc(r.Draw(t, "rx"), r.Draw(t, "ry"), coord.Draw(t, "turn"), rapid.Bool().Draw(t, "large"), rapid.Bool().Draw(t, "sweep"), point("to"))
		}
	}
	if len(p.subs) == 0 { // an arc to where the pen stands draws nothing
		p.line(point("to"))
	}
	p.close()
	k := rapid.Float64Range(-3, 3)
	m := matrix{k.Draw(t, "ma"), k.Draw(t, "mb"), k.Draw(t, "mc"), k.Draw(t, "md"), coord.Draw(t, "me"), coord.Draw(t, "mf")}
	return p.subs[0].transformed(m)
}

// TestChordsStayWithinTheStatedError samples every segment densely and measures how
// far it is from its chords.
func TestChordsStayWithinTheStatedError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyCurve(t)
		e := rapid.SampledFrom([]float64{0.01, 0.05, 1}).Draw(t, "error")
		line, ok := s.flatten(e, 1e6)
		if !ok {
			t.Fatal("limit")
		}
		s.each(func(k segment, from geom.Point, p []geom.Point) {
			for i := range 60 {
				u := float64(i) / 59
				q := from.Mul(1 - u).Add(p[len(p)-1].Mul(u))
				switch k {
				case cubic:
					q = cubicAt(from, p, u)
				case arc:
					q = arcAt(p, p[3].X+u*(p[3].Y-p[3].X))
				}
				if d := distanceToRing(line.points, q); d > e*(1+1e-9)+1e-7 {
					t.Fatalf("a point is %v mm from the chords, %v allowed", d, e)
				}
			}
		})
		box := ringBox(line.points)
		if line.box.Min.X > box.Min.X+1e-7 || line.box.Max.Y < box.Max.Y-1e-7 {
			t.Fatalf("the exact box %v does not hold the chords' %v", line.box, box)
		}
	})
}

func distanceToRing(r geom.Ring, p geom.Point) float64 {
	best := math.Inf(1)
	for i, a := range r {
		b := r[(i+1)%len(r)]
		ab, ap := b.Sub(a), p.Sub(a)
		t := 0.0
		if l := ab.Dot(ab); l > 0 {
			t = max(0, min(1, ap.Dot(ab)/l))
		}
		best = min(best, ap.Sub(ab.Mul(t)).Norm())
	}
	return best
}

// TestExactAreaIsTheLimitOfTheChords compares the closed form with fine chords.
func TestExactAreaIsTheLimitOfTheChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyCurve(t)
		line, ok := s.flatten(minChordErrorMM, 1e7)
		if !ok {
			t.Fatal("limit")
		}
		if allowed := 2.0 / 3 * minChordErrorMM * s.controlLength(); math.Abs(line.points.Area()-s.area()) > allowed+1e-6 {
			t.Fatalf("chords %v, exact %v, allowed %v", line.points.Area(), s.area(), allowed)
		}
	})
}

func TestCirclesKeepTheirAreaInChords(t *testing.T) {
	for _, r := range []float64{10, 25, 100, 600} {
		_, o := readOne(t, page100(sprintf(`<circle cx="50" cy="50" r="%g"/>`, r)), Options{})
		want := math.Pi * r * r
		near(t, "stated area", o.AreaMM2, want, 1e-9*want)
		near(t, "area of the chords", o.Rings[0].Area(), want, 1.05e-4*want)
		if len(o.Rings[0]) > 400 {
			t.Errorf("%d corners", len(o.Rings[0]))
		}
	}
}
