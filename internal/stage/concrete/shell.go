package concrete

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// mould is the height field that concrete is cast against: the form's base at 0,
// the knockout's layers as nested prisms on it, the form's sides up to height.
type mould struct {
	length, width, height float64 // mm
	layers                []prism // each within the one before
	foam                  float64 // mm3
}

// prism is one layer of the knockout, from the base up to top.
type prism struct {
	top    float64
	region geom.Region
}

const outlineTol = 0.02 // mm; distances need no finer outline

// newMould wants layers that nest.
func newMould(in Input) mould {
	m := mould{length: in.Length.MM(), width: in.Width.MM(), height: in.Height.MM()}
	for _, l := range in.Layers {
		shape := l.Region.Shape()
		m.foam += shape.Area() * (l.To - l.From).MM()
		m.layers = append(m.layers, prism{l.To.MM(), shape.Simplify(outlineTol)})
	}
	return m
}

// shells returns the volume within each of the rising thicknesses ts of the mould,
// mm3, at raster step h mm:
//
//	V(t) = H (area within t of a side) + integral over the rest of min(H, Z) - foam
//	Z    = max(t, max over layers with d_i <= t of top_i + sqrt(t^2 - d_i^2))
//
// where d_i is the plane distance to layer i, 0 inside. All prisms stand on the base,
// so what lies below Z is all concrete or foam, and the reduction to the plane is
// exact; only the integral is numerical. Layers nest, so where a cell straddles the
// edges of several bands, the deeper band covers part of what the shallower covers:
//
//	mean Z = t + sum over layers of cover_i (rise of the running maximum at layer i)
//
// Source: [analytic].
func (m mould) shells(ts []float64, h float64) []float64 {
	r := newRaster(m.length, m.width, h)
	sums := make([]float64, len(ts))
	tops := make([][]float32, len(ts))
	for k, t := range ts {
		if m.hollow(t) {
			tops[k] = make([]float32, r.nx*r.ny) // running maximum above the base coat
		}
	}
	fields := m.fields(r, ts[len(ts)-1]+h)
	for i, l := range m.layers {
		d := <-fields[i]
		for k, t := range ts {
			if tops[k] != nil {
				sums[k] += m.rise(r, l, d, t, tops[k])
			}
		}
	}
	for k, t := range ts {
		sums[k] = m.close(t, sums[k])
	}
	return sums
}

// atOnce is how many layers' distances are computed at the same time; each is a window
// of the raster.
const atOnce = 4

// fields computes the distances of every layer side by side, in order of layers; no sum
// is shared, so that the result is the same on any number of processors.
func (m mould) fields(r raster, reach float64) []chan field {
	out, slots := make([]chan field, len(m.layers)), make(chan struct{}, atOnce)
	for i := range out {
		out[i] = make(chan field, 1)
	}
	go func() {
		for i, l := range m.layers {
			slots <- struct{}{}
			go func() {
				out[i] <- r.distances(l.region, reach)
				<-slots
			}()
		}
	}()
	return out
}

// hollow reports whether a shell t thick leaves anything hollow at all.
func (m mould) hollow(t float64) bool {
	return t > 0 && 2*t < math.Min(m.length, m.width) && t < m.height
}

// close adds base and sides to what the layers lift, and takes the foam away.
func (m mould) close(t, lifted float64) float64 {
	switch {
	case !(t > 0):
		return 0
	case !m.hollow(t):
		return m.length*m.width*m.height - m.foam
	}
	inner := (m.length - 2*t) * (m.width - 2*t)
	return (m.length*m.width-inner)*m.height + inner*t + lifted - m.foam
}

// rise returns how much layer l lifts the shell's inner face, mm3, above what top
// already holds, and puts the layer into top.
func (m mould) rise(r raster, l prism, d field, t float64, top []float32) float64 {
	step := math.Max(r.dx, r.dy)
	wx, wy := inset(r.nx, r.dx, m.length, t), inset(r.ny, r.dy, m.width, t)
	sum := 0.0
	for j := d.j0; j < d.j1; j++ {
		row := 0.0
		for i := d.i0; i < d.i1; i++ {
			d2 := float64(d.at(i, j))
			if d2 >= (t+step)*(t+step) {
				continue
			}
			lifted, cover := l.top+t, 1.0
			if d2 > 0 {
				lifted = l.top + math.Sqrt(math.Max(0, t*t-d2))
				cover = math.Max(0, math.Min(1, (t-math.Sqrt(d2))/step+0.5))
			}
			up := float32(math.Min(m.height, lifted) - t)
			if was := top[j*r.nx+i]; up > was {
				row += wx[i] * cover * float64(up-was)
				top[j*r.nx+i] = up
			}
		}
		sum += wy[j] * row
	}
	return sum
}

// inset returns, per cell of n along size, the length of it that lies further than t
// from both ends.
func inset(n int, step, size, t float64) []float64 {
	w := make([]float64, n)
	for i := range w {
		lo, hi := math.Max(t, float64(i)*step), math.Min(size-t, float64(i+1)*step)
		w[i] = math.Max(0, hi-lo)
	}
	return w
}

// Steps of the raster. Chosen: on shapes of this trade 2 mm are within 0.1 % of the
// limit and 1 mm within 0.03 %.
const (
	coarsest  = 4.0     // mm, first step
	finest    = 0.5     // mm
	goal      = 0.001   // relative change at the last halving that is good enough
	mostCells = 1 << 20 // bounds memory and time

	worstChange = 0.005 // above this a finding says so
)

// volumes returns the shell volume at each of the rising reaches, and the greatest
// relative change when the raster step was last halved.
func (m mould) volumes(rs []reach) (v []units.Volume, converged float64) {
	v = make([]units.Volume, len(rs))
	if len(rs) == 0 {
		return v, 0
	}
	h := math.Max(coarsest, math.Sqrt(m.length*m.width/mostCells)*2)
	last := m.reached(rs, h)
	for converged = 1; converged > goal && h > finest && 4*m.length*m.width/(h*h) <= mostCells; {
		h /= 2
		next := m.reached(rs, h)
		converged, last = change(last, next), next
	}
	for i := range v {
		v[i] = units.FromMM3(math.Max(0, last[i]))
	}
	return v, converged
}

// reached returns the volumes within rs at raster step h, mm3. Reaches that are the same
// every way share one pass.
func (m mould) reached(rs []reach, h float64) []float64 {
	even := true
	ts := make([]float64, len(rs))
	for i, r := range rs {
		ts[i] = r.side
		even = even && r.side == r.top
	}
	if even {
		return m.shells(ts, h)
	}
	out := make([]float64, len(rs))
	for i, r := range rs {
		f := r.side / r.top
		out[i] = m.flattened(f).shells([]float64{r.side}, h)[0] / f
	}
	return out
}

// change returns the greatest relative difference between two sets of volumes.
func change(a, b []float64) float64 {
	worst := 0.0
	for i := range a {
		if b[i] > 0 {
			worst = math.Max(worst, math.Abs(a[i]-b[i])/b[i])
		}
	}
	return worst
}
