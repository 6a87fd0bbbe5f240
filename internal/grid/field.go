package grid

import (
	"fmt"
	"math"

	"pourwright/internal/geom"
)

// A Field is a height at every node of a grid of Cols x Rows, in rows from the
// lowest y up, each from the lowest x on.
type Field struct {
	Cols, Rows int
	DX, DY     float64    // between nodes, mm
	Origin     geom.Point // of the first node
	Z          []float64  // mm, Cols*Rows of them
}

// New returns a field of zeros; it is an error unless there are at least 2 x 2
// nodes a positive distance apart.
func New(cols, rows int, dx, dy float64) (Field, error) {
	if cols < 2 || rows < 2 {
		return Field{}, fmt.Errorf("grid of %d x %d nodes: at least 2 x 2 are needed", cols, rows)
	}
	if !(dx > 0 && dy > 0) || math.IsInf(dx+dy, 1) {
		return Field{}, fmt.Errorf("grid spacing %g x %g mm: must be positive", dx, dy)
	}
	return Field{Cols: cols, Rows: rows, DX: dx, DY: dy, Z: make([]float64, cols*rows)}, nil
}

// At returns the height of the node in column c and row r.
func (f Field) At(c, r int) float64 { return f.Z[r*f.Cols+c] }

// Set puts the height of the node in column c and row r.
func (f Field) Set(c, r int, z float64) { f.Z[r*f.Cols+c] = z }

// Node returns the place of the node in column c and row r.
func (f Field) Node(c, r int) geom.Point {
	return geom.Point{X: f.Origin.X + float64(c)*f.DX, Y: f.Origin.Y + float64(r)*f.DY}
}

// Box returns the frame that the nodes span.
func (f Field) Box() geom.Box { return geom.Box{Min: f.Origin, Max: f.Node(f.Cols-1, f.Rows-1)} }

// Range returns the lowest and highest height; missing samples do not count. Both
// are not a number when all are missing.
func (f Field) Range() (low, high float64) {
	low, high = math.NaN(), math.NaN()
	for _, z := range f.Z {
		if !(z >= low) && z == z {
			low = z
		}
		if !(z <= high) && z == z {
			high = z
		}
	}
	return low, high
}

// Padded returns f with n more nodes on every side that repeat the nearest edge.
func (f Field) Padded(n int) Field {
	out := f
	out.Cols, out.Rows = f.Cols+2*n, f.Rows+2*n
	out.Origin = f.Node(-n, -n)
	out.Z = make([]float64, out.Cols*out.Rows)
	for r := range out.Rows {
		from := f.Z[min(max(r-n, 0), f.Rows-1)*f.Cols:][:f.Cols]
		to := out.Z[r*out.Cols:][:out.Cols]
		copy(to[n:], from)
		for c := range n {
			to[c], to[n+f.Cols+c] = from[0], from[f.Cols-1]
		}
	}
	return out
}
