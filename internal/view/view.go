// Package view marks geometry with the side it is seen from, so that finished-view
// and form-view shapes cannot be mixed: the mixture does not compile.
//
// The piece is cast face down. FINISHED VIEW looks down on the piece as it stands
// in use: x along the length to the right, y across the width away from the
// viewer, origin at the near left corner of the outer box. FORM VIEW looks down
// into the form, onto the back of the knockout: the piece is turned over about
// its y axis like a page, so x runs the other way and y stays:
//
//	xForm = length - xFinished,  yForm = yFinished
//
// Mirroring twice gives back the shape; mirroring x and then y would be a half
// turn, not a mirror, which is why there is only one way to turn a piece here.
package view

import "pourwright/internal/geom"

// Finished marks geometry seen from above the piece in use.
type Finished struct{}

// Form marks geometry seen looking down into the form.
type Form struct{}

// A View is one of Finished and Form.
type View interface {
	Finished | Form
	Name() string
}

// Name returns "finished".
func (Finished) Name() string { return "finished" }

// Name returns "form".
func (Form) Name() string { return "form" }

// A Region is a plane region that knows its view. Without the empty field, Go would
// let one view's region be converted to the other's.
type Region[V View] struct {
	_     [0]V
	shape geom.Region
}

// A Point is a place that knows its view, mm.
type Point[V View] struct{ X, Y float64 }

// Of marks shape as seen in view V. Only readers and tests, which know what they
// read, call it.
func Of[V View](shape geom.Region) Region[V] { return Region[V]{shape: shape} }

// PointOf marks p as seen in view V.
func PointOf[V View](p geom.Point) Point[V] { return Point[V]{p.X, p.Y} }

// Shape returns the bare region, for measuring and drawing.
func (r Region[V]) Shape() geom.Region { return r.shape }

// View returns the name of r's view.
func (r Region[V]) View() string { var v V; return v.Name() }

// Area returns the area of r, mm2; it is the same in both views.
func (r Region[V]) Area() float64 { return r.shape.Area() }

// Empty reports whether r has no area.
func (r Region[V]) Empty() bool { return len(r.shape) == 0 }

// Union returns the points in r or in s.
func (r Region[V]) Union(s Region[V]) Region[V] {
	return Region[V]{shape: geom.Union(r.shape, s.shape)}
}

// Intersect returns the points in both r and s.
func (r Region[V]) Intersect(s Region[V]) Region[V] {
	return Region[V]{shape: geom.Intersect(r.shape, s.shape)}
}

// Subtract returns the points in r and not in s.
func (r Region[V]) Subtract(s Region[V]) Region[V] {
	return Region[V]{shape: geom.Subtract(r.shape, s.shape)}
}

// A Flip turns a piece of Length mm over between its two views.
type Flip struct{ Length float64 }

func (f Flip) point(p geom.Point) geom.Point { return geom.Point{X: f.Length - p.X, Y: p.Y} }

// ToForm returns r as seen in the form.
func (f Flip) ToForm(r Region[Finished]) Region[Form] {
	return Region[Form]{shape: r.shape.Map(f.point, true)}
}

// ToFinished returns r as seen on the finished piece.
func (f Flip) ToFinished(r Region[Form]) Region[Finished] {
	return Region[Finished]{shape: r.shape.Map(f.point, true)}
}

// PointToForm returns p as seen in the form.
func (f Flip) PointToForm(p Point[Finished]) Point[Form] { return Point[Form]{f.Length - p.X, p.Y} }

// PointToFinished returns p as seen on the finished piece.
func (f Flip) PointToFinished(p Point[Form]) Point[Finished] {
	return Point[Finished]{f.Length - p.X, p.Y}
}

// A Side is a side of the outer box, named as seen on the finished piece; a side
// keeps its name in both views.
type Side string

// The sides: left is x = 0, right x = length, near y = 0, far y = width, all in
// finished view.
const (
	Left  Side = "left"
	Right Side = "right"
	Near  Side = "near"
	Far   Side = "far"
)
