package toolpath

import (
	"math"
	"testing"

	"pourwright/internal/grid"
	"pourwright/internal/published"
)

// bowl is a block of 120 x 90 mm whose surface is a wavy bowl from 0 down to -20 mm.
func bowl(t testing.TB, dx float64) Heights {
	f, err := grid.New(int(120/dx)+1, int(90/dx)+1, dx, dx)
	if err != nil {
		t.Fatal(err)
	}
	for r := range f.Rows {
		for c := range f.Cols {
			p := f.Node(c, r)
			f.Set(c, r, -10-9*math.Sin(p.X/17)*math.Cos(p.Y/13)-math.Cos(p.X/5))
		}
	}
	return f
}

func carving(t testing.TB, dx float64) Carving {
	return Carving{Name: "block", Heights: bowl(t, dx), Stock: 25, Ball: 6, Scallop: 0.1}
}

// surface returns the height of f at (x, y), straight between its nodes both ways.
func surface(f Heights, x, y float64) float64 {
	c := min(max(int(x/f.DX), 0), f.Cols-2)
	r := min(max(int(y/f.DY), 0), f.Rows-2)
	u, v := x/f.DX-float64(c), y/f.DY-float64(r)
	return (f.At(c, r)*(1-u)+f.At(c+1, r)*u)*(1-v) + (f.At(c, r+1)*(1-u)+f.At(c+1, r+1)*u)*v
}

// TestCarvingKeepsTheSurface lays the ball down at every place of the program and
// samples the surface under it.
func TestCarvingKeepsTheSurface(t *testing.T) {
	m := router()
	v := carving(t, 1.5)
	r, found := Compute(Input{Piece: "Bowl", Machine: m, Carving: &v})
	if len(r.Programs) != 1 {
		t.Fatal(found)
	}
	p := r.Programs[0]
	radius, worst := v.Ball.MM()/2, 0.0
	for i, st := range steps(t, p.Text) {
		if st.g == 0 && st.known && st.z0 < p.Safe.MM()-1e-3 && (st.x != st.x0 || st.y != st.y0) {
			t.Fatalf("%s: a rapid move in the foam", st.line)
		}
		if !cutting(st) || i%7 != 0 {
			continue
		}
		for _, q := range arcPoints(st) {
			for a := range 12 {
				for _, d := range []float64{0, 0.3, 0.6, 0.9, 0.99} {
					x, y := q[0]+d*radius*math.Cos(float64(a)*math.Pi/6), q[1]+d*radius*math.Sin(float64(a)*math.Pi/6)
					if x < 0 || y < 0 || x > 120 || y > 90 {
						continue
					}
					ball := q[2] + radius - radius*math.Sqrt(1-d*d)
					worst = math.Max(worst, surface(v.Heights, x, y)-ball)
				}
			}
		}
	}
	t.Logf("%d lines, %.1f min, %d levels; cuts at most %.3f mm below the surface", p.Lines, 60*float64(p.Minutes), p.Passes, worst)
	if worst > 0.03 {
		t.Errorf("the ball cuts %.3f mm below the surface", worst)
	}
}

// TestCarvingReachesTheSurface carves a level floor: everywhere the foam stands at
// most the scallop above it.
func TestCarvingReachesTheSurface(t *testing.T) {
	f, err := grid.New(61, 41, 1, 1)
	if err != nil {
		t.Fatal(err)
	}
	for i := range f.Z {
		f.Z[i] = -12
	}
	v := Carving{Name: "floor", Heights: f, Stock: 20, Ball: 6, Scallop: 0.15}
	r, _ := Compute(Input{Machine: router(), Carving: &v})
	all := steps(t, r.Programs[0].Text)
	for x := 0.5; x < 60; x += 3.1 {
		for y := 0.25; y < 40; y += 0.37 {
			low := 0.0
			for _, st := range all {
				if st.g != 1 || st.z > -11.99 || st.z0 > -11.99 {
					continue
				}
				a, b := math.Min(st.x, st.x0), math.Max(st.x, st.x0)
				dx := math.Max(0, math.Max(a-x, x-b))
				dy := math.Max(0, math.Max(math.Min(st.y, st.y0)-y, y-math.Max(st.y, st.y0)))
				if d2 := dx*dx + dy*dy; d2 < 9 {
					low = math.Min(low, st.z+3-math.Sqrt(9-d2))
				}
			}
			if low > -12+0.15+1e-6 {
				t.Fatalf("at %.1f, %.2f the foam stands at %.3f mm", x, y, low)
			}
		}
	}
}

// TestPublishedScallop compares the ridges between ways with the circle's geometry.
func TestPublishedScallop(t *testing.T) {
	k := &carver{c: &computer{m: router()}, v: Carving{Ball: 6, Scallop: 0.1}, radius: 3, f: lattice(bowl(t, 0.25), 3)}
	k.offsets = ballOffsets(k.f, 3)
	k.layWays()
	want := 2 * math.Sqrt(0.1*(6-0.1))
	published.Run(t, published.Check{Room: "toolpath", Name: "ways of a 6 mm ball for ridges of 0.1 mm, to the lattice below", Ours: k.gap,
		Theirs: math.Floor(want/k.f.DY) * k.f.DY, Unit: "mm", Tol: 1e-9, Source: "analytic", Place: "2 sqrt(h (2 R - h))"})
	sphere, err := grid.New(161, 161, 0.25, 0.25)
	if err != nil {
		t.Fatal(err)
	}
	for r := range sphere.Rows { // a dome of radius 15 mm: the tip runs on one of 15 + 3
		for c := range sphere.Cols {
			d2 := math.Pow(float64(c-80)*0.25, 2) + math.Pow(float64(r-80)*0.25, 2)
			sphere.Set(c, r, math.Sqrt(math.Max(0, 225-d2))-15)
		}
	}
	dome := &carver{radius: 3, f: lattice(sphere, 3)}
	dome.offsets = ballOffsets(dome.f, 3)
	n := (dome.f.Cols - 1) / 160
	published.Run(t,
		published.Check{Room: "toolpath", Name: "tip of a 3 mm ball on the crown of a 15 mm dome", Ours: dome.tip(80*n, 80*n), Theirs: 0, Unit: "mm", Tol: 0.012, Source: "analytic", Place: "sphere on sphere"},
		published.Check{Room: "toolpath", Name: "tip of a 3 mm ball 8 mm beside the crown of a 15 mm dome", Ours: dome.tip(112*n, 80*n), Theirs: math.Sqrt(18*18-64) - 18, Unit: "mm", Tol: 0.02, Source: "analytic", Place: "sphere on sphere"})
}

func TestCarvingFindings(t *testing.T) {
	nan := math.NaN()
	for name, c := range map[string]struct {
		change func(*Carving, *Machine)
		says   string
	}{
		"deeper than the block": {func(v *Carving, m *Machine) { v.Stock = 10 }, "10.0 mm thick"},
		"no ball":               {func(v *Carving, m *Machine) { v.Ball = 0 }, "ball"},
		"ridges above the ball": {func(v *Carving, m *Machine) { v.Scallop = 4 }, "ridges"},
		"short flutes":          {func(v *Carving, m *Machine) { m.Flute = 10 }, "10.0 mm long"},
		"no heights":            {func(v *Carving, m *Machine) { v.Heights = Heights{} }, "no heights"},
		"heights of NaN": {func(v *Carving, m *Machine) {
			for i := range v.Heights.Z {
				v.Heights.Z[i] = nan
			}
		}, "no heights"},
		"small bed": {func(v *Carving, m *Machine) { m.BedX = 100 }, "bed"},
	} {
		t.Run(name, func(t *testing.T) {
			v, m := carving(t, 3), router()
			c.change(&v, &m)
			r, found := Compute(Input{Machine: m, Carving: &v})
			if len(r.Programs) != 0 {
				t.Error("a program is written")
			}
			code := "toolpath/carve"
			if name == "small bed" {
				code = "toolpath/off-bed"
			}
			says(t, found, code, c.says)
		})
	}
}

func TestCarvingLeavesItsInputAlone(t *testing.T) {
	v := carving(t, 3)
	v.Heights.Z[5] = math.NaN()
	Compute(Input{Machine: router(), Carving: &v})
	if !math.IsNaN(v.Heights.Z[5]) {
		t.Error("the height map is written to")
	}
}

// BenchmarkCarve carves a map of 600 x 400 mm.
func BenchmarkCarve(b *testing.B) {
	f, _ := grid.New(601, 401, 1, 1)
	for i := range f.Z {
		f.Z[i] = -20 - 18*math.Sin(float64(i%601)/40)*math.Cos(float64(i/601)/30)
	}
	v := Carving{Name: "large", Heights: f, Stock: 50, Ball: 6, Scallop: 0.2}
	m := router()
	m.Flute = 60
	for b.Loop() {
		Compute(Input{Machine: m, Carving: &v})
	}
}

func TestBlock(t *testing.T) {
	depth, err := grid.New(6, 5, 10, 10) // a basin of 3 x 2 nodes, deepest at its left
	if err != nil {
		t.Fatal(err)
	}
	depth.Set(1, 1, 30)
	depth.Set(2, 1, 20)
	depth.Set(3, 2, 10)
	stock, sheets := Stock(depth, 25)
	if stock != 50 || sheets != 2 {
		t.Fatalf("stock %v of %d sheets", stock, sheets)
	}
	b := Block(depth, 50, 40, stock)
	if b.Cols != 3 || b.Rows != 2 || b.Box().Min.X != 0 {
		t.Fatalf("%d x %d nodes from %v", b.Cols, b.Rows, b.Origin)
	}
	for i, want := range []float64{-50, -30, -20, -40, -50, -50} { // mirrored once: the deepest lies right
		if b.Z[i] != want {
			t.Errorf("node %d at %v, want %v", i, b.Z[i], want)
		}
	}
	if e := Block(Heights{}, 50, 40, 25); len(e.Z) != 0 {
		t.Error("a block of nothing")
	}
}
