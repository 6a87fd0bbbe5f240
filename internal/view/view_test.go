package view

import (
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
)

// lopsided draws a triangle without any symmetry.
func lopsided(t *rapid.T) geom.Region {
	k := func(name string) float64 { return rapid.Float64Range(1, 100).Draw(t, name) }
	a, b, c := k("a"), k("b"), k("c")
	return geom.Build([]geom.Ring{{{X: 0, Y: 0}, {X: 200 + a, Y: b}, {X: c / 3, Y: 150 + b}}}, geom.NonZero)
}

func TestMirrorTwiceIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Of[Finished](lopsided(t))
		f := Flip{Length: 500}
		back := f.ToFinished(f.ToForm(r))
		if d := geom.Xor(r.Shape(), back.Shape()).Area(); d > 1e-3*r.Shape().Perimeter() {
			t.Errorf("mirrored twice differs by %g mm2", d)
		}
		if once := geom.Xor(r.Shape(), f.ToForm(r).Shape()).Area(); once < 1 {
			t.Errorf("a lopsided shape looks the same when mirrored once")
		}
		if math.Abs(f.ToForm(r).Area()-r.Area()) > 1e-6 {
			t.Errorf("mirroring changes the area")
		}
	})
}

// chirality returns the sense in which the corners nearest to and furthest from the
// middle of the region and then its third corner follow each other: a turn keeps
// it, a mirror reverses it.
func chirality(r geom.Region) float64 {
	ring := r[0].Outer
	length := func(i int) float64 { return ring[(i+1)%3].Sub(ring[i]).Norm() }
	long, short := 0, 0
	for i := range 3 {
		if length(i) > length(long) {
			long = i
		}
		if length(i) < length(short) {
			short = i
		}
	}
	// In a triangle of three different sides, from the corner between the longest and
	// the shortest side, the shortest lies left or right of the longest.
	var corner, far, near geom.Point
	for i := range 3 {
		onLong, onShort := i == long || i == (long+1)%3, i == short || i == (short+1)%3
		switch {
		case onLong && onShort:
			corner = ring[i]
		case onLong:
			far = ring[i]
		default:
			near = ring[i]
		}
	}
	return far.Sub(corner).Cross(near.Sub(corner))
}

// TestTwoFlipsAreATurn: mirroring x and then y is a half turn, so it keeps the
// handedness that one mirror changes, and equals the region turned by 180 degrees.
func TestTwoFlipsAreATurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := lopsided(t)
		flipX := func(p geom.Point) geom.Point { return geom.Point{X: 500 - p.X, Y: p.Y} }
		flipY := func(p geom.Point) geom.Point { return geom.Point{X: p.X, Y: 400 - p.Y} }
		turn := func(p geom.Point) geom.Point {
			q := p.Sub(geom.Point{X: 250, Y: 200})
			sin, cos := math.Sincos(math.Pi)
			return geom.Point{X: 250 + q.X*cos - q.Y*sin, Y: 200 + q.X*sin + q.Y*cos}
		}
		both := r.Map(flipX, true).Map(flipY, true)
		if d := geom.Xor(both, r.Map(turn, false)).Area(); d > 1e-3*r.Perimeter() {
			t.Errorf("flipping x and y differs from a half turn by %g mm2", d)
		}
		formed := Flip{Length: 500}.ToForm(Of[Finished](r)).Shape()
		if d := geom.Xor(formed, r.Map(flipX, true)).Area(); d > 1e-3*r.Perimeter() {
			t.Errorf("form view is not the mirror in x: %g mm2", d)
		}
		c := chirality(r)
		if math.Abs(c) < 1e-3*r.Area() {
			t.Skip("two sides are alike")
		}
		if chirality(both)*c <= 0 || chirality(formed)*c >= 0 {
			t.Errorf("chirality %g: two flips give %g, form view %g", c, chirality(both), chirality(formed))
		}
	})
}

// TestNoTurnGivesTheFormView: a shape without symmetry, mirrored, cannot be turned
// and moved back onto itself, so a page printed in the wrong view shows.
func TestNoTurnGivesTheFormView(t *testing.T) {
	r := geom.Build([]geom.Ring{{{X: 0, Y: 0}, {X: 200, Y: 0}, {X: 200, Y: 40}, {X: 40, Y: 40}, {X: 40, Y: 120}, {X: 0, Y: 120}}}, geom.NonZero)
	formed := Flip{Length: 200}.ToForm(Of[Finished](r)).Shape()
	for deg := range 360 {
		sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
		turned := r.Map(func(p geom.Point) geom.Point { return geom.Point{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos} }, false)
		shift := formed.Box().Center().Sub(turned.Box().Center())
		moved := turned.Map(func(p geom.Point) geom.Point { return p.Add(shift) }, false)
		if d := geom.Xor(moved, formed).Area(); d < 0.05*r.Area() {
			t.Fatalf("turned by %d degrees the piece covers its form view but for %g mm2", deg, d)
		}
	}
}

// TestFlipTakesOperationsAlong: the view of a union is the union of the views.
func TestFlipTakesOperationsAlong(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := Of[Finished](lopsided(t)), Of[Finished](lopsided(t))
		f := Flip{Length: 500}
		for name, pair := range map[string][2]Region[Form]{
			"union":        {f.ToForm(a.Union(b)), f.ToForm(a).Union(f.ToForm(b))},
			"intersection": {f.ToForm(a.Intersect(b)), f.ToForm(a).Intersect(f.ToForm(b))},
			"difference":   {f.ToForm(a.Subtract(b)), f.ToForm(a).Subtract(f.ToForm(b))},
		} {
			if d := geom.Xor(pair[0].Shape(), pair[1].Shape()).Area(); d > 1e-3*(a.Shape().Perimeter()+b.Shape().Perimeter()) {
				t.Errorf("%s: differs by %g mm2", name, d)
			}
		}
		p := PointOf[Finished](geom.Point{X: 37, Y: 11})
		if q := f.PointToForm(p); q.X != 463 || q.Y != 11 || f.PointToFinished(q) != p {
			t.Errorf("point %v seen in the form at %v", p, q)
		}
	})
}

// TestMixingViewsDoesNotCompile type-checks programs that mix the two views, and one
// that does not.
func TestMixingViewsDoesNotCompile(t *testing.T) {
	imp := importer.ForCompiler(token.NewFileSet(), "source", nil)
	for _, c := range []struct{ body, want string }{
		{"a.Union(a); f.ToForm(a).Union(b)", ""},
		{"a.Union(b)", "cannot use b"},
		{"b.Intersect(a)", "cannot use a"},
		{"a.Subtract(f.ToForm(a))", "cannot use f.ToForm(a)"},
		{"f.ToForm(b)", "cannot use b"},
		{"f.ToFinished(f.ToFinished(b))", "cannot use f.ToFinished(b)"},
		{"f.PointToForm(p)", "cannot use p"},
		{"var c view.Region[view.Finished] = b; _ = c", "cannot use b"},
		{"_ = view.Region[view.Form](a)", "cannot convert a"},
		{"_ = view.Region[view.Form]{a.Shape()}", "unexported field"},
		{"_ = view.Of[int](nil)", "int does not satisfy"},
	} {
		src := "package p\nimport \"pourwright/internal/view\"\n" +
			"func g(f view.Flip, a view.Region[view.Finished], b view.Region[view.Form], p view.Point[view.Form]) { " + c.body + " }"
		fset := token.NewFileSet()
		file, err := parser.ParseFile(fset, "p.go", src, 0)
		if err != nil {
			t.Fatal(err)
		}
		conf := types.Config{Importer: imp}
		_, err = conf.Check("p", fset, []*ast.File{file}, nil)
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s: does not compile: %v", c.body, err)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%s: got %v, want a type error with %q", c.body, err, c.want)
		}
	}
}
