package concrete

import (
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// mould is the height field that concrete is cast against: the form's base at 0,
// the knockout's layers as nested prisms on it, the form's sides up to height.
type mould struct {
	length, width, height float64 // mm
	layers                []prism
	foam                  float64 // mm3
}

// prism is one layer of the knockout, from the base up to top.
type prism struct {
	top    float64
	region geom.Region
}

const outlineTol = 0.02 // mm; distances need no finer outline

func newMould(in Input) mould {
	m := mould{length: in.Length.MM(), width: in.Width.MM(), height: in.Height.MM()}
	for _, l := range in.Layers {
		shape := l.Region.Shape()
		m.foam += shape.Area() * (l.To - l.From).MM()
		m.layers = append(m.layers, prism{l.To.MM(), shape.Simplify(outlineTol)})
	}
	return m
}

// shell returns the volume within t of the mould, mm3, at raster step h mm:
//
//	V(t) = H (area within t of a side) + integral over the rest of min(H, Z) - foam
//	Z    = max(t, max over layers with d_i <= t of top_i + sqrt(t^2 - d_i^2))
//
// where d_i is the plane distance to layer i, 0 inside. All prisms stand on the base,
// so what lies below Z is all concrete or foam, and the reduction to the plane is
// exact; only the integral is numerical. Source: [analytic].
func (m mould) shell(t, h float64) float64 {
	x, y := m.length-2*t, m.width-2*t
	if !(t > 0) {
		return 0
	}
	if x <= 0 || y <= 0 || t >= m.height {
		return m.length*m.width*m.height - m.foam
	}
	r := newRaster(t, t, x, y, h)
	z := make([]float64, r.nx*r.ny)
	for i := range z {
		z[i] = math.Min(t, m.height)
	}
	for _, l := range m.layers {
		d := r.distances(l.region, t)
		for i, dist := range d {
			if dist >= t+h {
				continue
			}
			lifted := math.Min(m.height, l.top+math.Sqrt(math.Max(0, t*t-dist*dist)))
			cover := math.Max(0, math.Min(1, (t-dist)/h+0.5)) // the part of a cell on the rim of the band
			if lifted > z[i] {
				z[i] += cover * (lifted - z[i])
			}
		}
	}
	sum := 0.0
	for _, v := range z {
		sum += v
	}
	return (m.length*m.width-x*y)*m.height + sum*r.dx*r.dy - m.foam
}

// raster is a grid of cell centres over a rectangle.
type raster struct {
	x0, y0, dx, dy float64
	nx, ny         int
}

func newRaster(x0, y0, w, h, step float64) raster {
	nx, ny := max(1, int(math.Ceil(w/step))), max(1, int(math.Ceil(h/step)))
	return raster{x0, y0, w / float64(nx), h / float64(ny), nx, ny}
}

// distances returns, per cell, the distance from its centre to region, mm: 0 inside,
// exact up to reach and +Inf further out.
func (r raster) distances(region geom.Region, reach float64) []float64 {
	d := make([]float64, r.nx*r.ny)
	for i := range d {
		d[i] = math.Inf(1)
	}
	reach += math.Max(r.dx, r.dy)
	for _, ring := range region.Rings() {
		for i, a := range ring {
			r.near(d, a, ring[(i+1)%len(ring)], reach)
		}
	}
	for i := range d {
		d[i] = math.Sqrt(d[i])
	}
	r.inside(d, region)
	return d
}

// near lowers the squared distances of the cells within reach of segment ab.
func (r raster) near(d []float64, a, b geom.Point, reach float64) {
	v := b.Sub(a)
	vv := v.Dot(v)
	if vv == 0 {
		return
	}
	i0, i1 := r.column(math.Min(a.X, b.X)-reach), r.column(math.Max(a.X, b.X)+reach)
	j0, j1 := r.row(math.Min(a.Y, b.Y)-reach), r.row(math.Max(a.Y, b.Y)+reach)
	for j := max(j0, 0); j <= min(j1, r.ny-1); j++ {
		wy := r.y0 + (float64(j)+0.5)*r.dy - a.Y
		for i := max(i0, 0); i <= min(i1, r.nx-1); i++ {
			wx := r.x0 + (float64(i)+0.5)*r.dx - a.X
			k := (wx*v.X + wy*v.Y) / vv
			k = math.Max(0, math.Min(1, k))
			ex, ey := wx-k*v.X, wy-k*v.Y
			if e := ex*ex + ey*ey; e < d[j*r.nx+i] {
				d[j*r.nx+i] = e
			}
		}
	}
}

func (r raster) column(x float64) int { return int(math.Floor((x - r.x0) / r.dx)) }
func (r raster) row(y float64) int    { return int(math.Floor((y - r.y0) / r.dy)) }

// inside sets the cells whose centre lies in region to 0.
func (r raster) inside(d []float64, region geom.Region) {
	cross := make([][]float64, r.ny)
	for _, ring := range region.Rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			lo, hi := math.Min(a.Y, b.Y), math.Max(a.Y, b.Y)
			for j := max(r.row(lo)-1, 0); j <= min(r.row(hi)+1, r.ny-1); j++ {
				if y := r.y0 + (float64(j)+0.5)*r.dy; (a.Y <= y) != (b.Y <= y) {
					cross[j] = append(cross[j], a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
				}
			}
		}
	}
	for j, xs := range cross {
		slices.Sort(xs)
		for k := 0; k+1 < len(xs); k += 2 {
			for i := max(r.column(xs[k]), 0); i <= min(r.column(xs[k+1]), r.nx-1); i++ {
				if x := r.x0 + (float64(i)+0.5)*r.dx; x >= xs[k] && x <= xs[k+1] {
					d[j*r.nx+i] = 0
				}
			}
		}
	}
}

const (
	coarsest  = 4.0   // mm, first raster step
	finest    = 0.5   // mm
	goal      = 0.001 // relative change at the last halving that is good enough
	mostCells = 4 << 20
)

// volumes returns the shell volume at each cumulative thickness, and the greatest
// relative change when the raster step was last halved.
func (m mould) volumes(t []units.Length) (v []units.Volume, converged float64) {
	v = make([]units.Volume, len(t))
	for i, thick := range t {
		h := math.Max(coarsest, math.Sqrt(m.length*m.width/mostCells)*2)
		last := m.shell(thick.MM(), h)
		change := 1.0
		for h > finest && change > goal && m.length*m.width/(h*h/4) <= mostCells {
			h /= 2
			next := m.shell(thick.MM(), h)
			if next == 0 {
				change, last = 0, next
				break
			}
			change, last = math.Abs(next-last)/next, next
		}
		v[i] = units.FromMM3(last)
		converged = math.Max(converged, change)
	}
	return v, converged
}
