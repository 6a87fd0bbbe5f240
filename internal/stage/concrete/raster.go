package concrete

import (
	"math"
	"slices"

	"pourwright/internal/geom"
)

// raster is a grid of nx x ny cells over the box, mm.
type raster struct {
	dx, dy float64
	nx, ny int
}

func newRaster(length, width, step float64) raster {
	nx, ny := max(1, int(math.Ceil(length/step))), max(1, int(math.Ceil(width/step)))
	return raster{length / float64(nx), width / float64(ny), nx, ny}
}

// x returns the middle of column i, mm.
func (r raster) x(i int) float64 { return (float64(i) + 0.5) * r.dx }

// y returns the middle of row j, mm.
func (r raster) y(j int) float64 { return (float64(j) + 0.5) * r.dy }

// columns returns the cells, first and one past the last, whose middles may lie from
// x0 to x1.
func (r raster) columns(x0, x1 float64) (int, int) { return cells(x0/r.dx, x1/r.dx, r.nx) }

// rows returns the rows whose middles may lie from y0 to y1.
func (r raster) rows(y0, y1 float64) (int, int) { return cells(y0/r.dy, y1/r.dy, r.ny) }

func cells(lo, hi float64, n int) (int, int) {
	first := max(0, int(math.Floor(math.Max(lo, 0)-0.5)))
	last := min(n, int(math.Floor(math.Min(hi, float64(n))+0.5)))
	return min(first, n), max(first, last)
}

// field holds the squared distances of the cells of a window of the raster from a
// region, mm2; 0 inside, exact up to its reach, +Inf further out.
type field struct {
	i0, i1, j0, j1 int
	d2             []float32
}

func (f field) at(i, j int) float32 { return f.d2[(j-f.j0)*(f.i1-f.i0)+i-f.i0] }

// distances returns the distances from region within reach mm of it.
func (r raster) distances(region geom.Region, reach float64) field {
	f := field{}
	if len(region) == 0 {
		return f
	}
	b := region.Box()
	f.i0, f.i1 = r.columns(b.Min.X-reach, b.Max.X+reach)
	f.j0, f.j1 = r.rows(b.Min.Y-reach, b.Max.Y+reach)
	f.d2 = make([]float32, (f.i1-f.i0)*(f.j1-f.j0))
	for i := range f.d2 {
		f.d2[i] = float32(math.Inf(1))
	}
	r.inside(f, region)
	for _, ring := range region.Rings() {
		for i, a := range ring {
			r.near(f, a, ring[(i+1)%len(ring)], reach)
		}
	}
	return f
}

// near lowers the squared distances of the cells within reach of segment ab.
func (r raster) near(f field, a, b geom.Point, reach float64) {
	v := b.Sub(a)
	vv := v.Dot(v)
	if vv == 0 {
		return
	}
	i0, i1 := r.columns(math.Min(a.X, b.X)-reach, math.Max(a.X, b.X)+reach)
	j0, j1 := r.rows(math.Min(a.Y, b.Y)-reach, math.Max(a.Y, b.Y)+reach)
	i0, i1, j0, j1 = max(i0, f.i0), min(i1, f.i1), max(j0, f.j0), min(j1, f.j1)
	for j := j0; j < j1; j++ {
		wy := r.y(j) - a.Y
		row := f.d2[(j-f.j0)*(f.i1-f.i0) : (j-f.j0+1)*(f.i1-f.i0)]
		for i := i0; i < i1; i++ {
			if row[i-f.i0] == 0 {
				continue
			}
			wx := r.x(i) - a.X
			k := (wx*v.X + wy*v.Y) / vv
			k = max(0, min(1, k))
			ex, ey := wx-k*v.X, wy-k*v.Y
			if e := float32(ex*ex + ey*ey); e < row[i-f.i0] {
				row[i-f.i0] = e
			}
		}
	}
}

// inside sets the cells whose middle lies in region to 0.
func (r raster) inside(f field, region geom.Region) {
	cross := make([][]float64, f.j1-f.j0)
	for _, ring := range region.Rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			j0, j1 := r.rows(math.Min(a.Y, b.Y), math.Max(a.Y, b.Y))
			for j := max(j0, f.j0); j < min(j1, f.j1); j++ {
				if y := r.y(j); (a.Y <= y) != (b.Y <= y) {
					cross[j-f.j0] = append(cross[j-f.j0], a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
				}
			}
		}
	}
	for j, xs := range cross {
		slices.Sort(xs)
		for k := 0; k+1 < len(xs); k += 2 {
			i0, i1 := r.columns(xs[k], xs[k+1])
			for i := max(i0, f.i0); i < min(i1, f.i1); i++ {
				if x := r.x(i); x >= xs[k] && x <= xs[k+1] {
					f.d2[j*(f.i1-f.i0)+i-f.i0] = 0
				}
			}
		}
	}
}
