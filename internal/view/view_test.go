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

// TestTwoFlipsAreATurn: mirroring x and then y is a half turn, so it keeps the
// handedness that one mirror changes.
func TestTwoFlipsAreATurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := lopsided(t)
		ring := r[0].Outer
		both := ring.Map(func(p geom.Point) geom.Point { return geom.Point{X: 500 - p.X, Y: 400 - p.Y} })
		once := ring.Map(func(p geom.Point) geom.Point { return geom.Point{X: 500 - p.X, Y: p.Y} })
		if both.Area() <= 0 || once.Area() >= 0 {
			t.Errorf("two flips should keep the sense of rotation and one should change it: %g, %g", both.Area(), once.Area())
		}
	})
}

// TestMixingViewsDoesNotCompile type-checks a program that mixes the two views.
func TestMixingViewsDoesNotCompile(t *testing.T) {
	src := `package p
import "pourwright/internal/view"
func f(a view.Region[view.Finished], b view.Region[view.Form]) { _ = a.Union(b) }`
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, "p.go", src, 0)
	if err != nil {
		t.Fatal(err)
	}
	conf := types.Config{Importer: importer.ForCompiler(fset, "source", nil)}
	_, err = conf.Check("p", fset, []*ast.File{file}, nil)
	if err == nil || !strings.Contains(err.Error(), "cannot use b") {
		t.Errorf("mixing views: got %v, want a type error", err)
	}
}
