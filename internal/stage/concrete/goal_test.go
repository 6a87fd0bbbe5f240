package concrete

import (
	"math"
	"runtime"
	"testing"
	"time"

	"pourwright/internal/published"
)

// bigBox is the piece of the goal, 1400 x 420 x 380 mm with a stepped prism, and the
// closed form of its shell of 19 mm.
func bigBox() (Input, float64) {
	const L, W, H, T = 1400.0, 420.0, 380.0, 19.0
	in := box()
	in.Length, in.Width, in.Height = L, W, H
	in.Layers = []Layer{{0, 25, rect(203.3, 81.7, 1148.9, 333.1)}, {25, 75, rect(301.2, 132.4, 998.7, 281.9)}}
	prism := func(a, b, d float64) float64 { return 2*(a+b)*edge(d, T) + 4*corner(d, T) }
	return in, L*W*H - (L-2*T)*(W-2*T)*(H-T) + prism(945.6, 251.4, 25) + prism(697.5, 149.5, 50)
}

// TestPublishedGoal: at a raster of 1 mm the big piece takes less than a second and
// 500 MB and is within 0.3 % of the closed form; halving the step brings it nearer.
func TestPublishedGoal(t *testing.T) {
	in, want := bigBox()
	m, last := newMould(in), 0.01
	for _, h := range []float64{8, 4, 2, 1, 0.5} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		start := time.Now()
		got := m.shells([]float64{4, 11.5, 19}, h)[2]
		took := time.Since(start)
		runtime.ReadMemStats(&after)
		off := math.Abs(got/want - 1)
		t.Logf("step %.1f mm: %.4f %% off, %v, %.1f MB", h, 100*off, took, float64(after.TotalAlloc-before.TotalAlloc)/1e6)
		if h == 1 {
			published.Run(t, published.Check{Room: "concrete", Name: "1400 x 420 x 380 mm at 1 mm, stepped box", Ours: got, Theirs: want, Unit: "mm3", Tol: 0.003 * want, Source: "analytic", Place: "parallel bodies (Steiner)"})
			if mb := float64(after.TotalAlloc-before.TotalAlloc) / 1e6; mb > 500 || took > 20*time.Second {
				t.Errorf("%.0f MB, %v", mb, took)
			}
		}
		if off > last {
			t.Errorf("at %g mm %.5f off, at twice that %.5f", h, off, last)
		}
		last = math.Max(off, 2e-5)
	}
}

// voxels measures the shell in cells of h mm: an exact squared distance transform, one
// axis after the other, then the count of cells nearer than t. It is the slow way to
// hold the plane integral against.
func voxels(in Input, t, h float64) float64 {
	nx, ny, nz := int(in.Length.MM()/h), int(in.Width.MM()/h), int(in.Height.MM()/h)
	d := make([]float32, nx*ny*nz)
	const far = 1e12
	at := func(i, j, k int) int { return (k*ny+j)*nx + i }
	r := newRaster(in.Length.MM(), in.Width.MM(), h)
	top := make([]float64, nx*ny)
	for _, l := range in.Layers {
		f := r.distances(l.Region.Shape(), h)
		for j := f.j0; j < min(f.j1, ny); j++ {
			for i := f.i0; i < min(f.i1, nx); i++ {
				if f.at(i, j) == 0 {
					top[j*nx+i] = l.To.MM()
				}
			}
		}
	}
	for k := range nz {
		for j := range ny {
			for i := range nx {
				d[at(i, j, k)] = far
				if (float64(k)+0.5)*h < top[j*nx+i] {
					d[at(i, j, k)] = 0
				}
			}
		}
	}
	line := make([]float32, max(nx, ny, nz))
	reach := int(t/h) + 2
	sweep := func(n int, get func(int) int) { // brute force within reach: exact there
		for i := range n {
			line[i] = d[get(i)]
		}
		for i := range n {
			best := line[i]
			for k := max(0, i-reach); k <= min(n-1, i+reach); k++ {
				e := float64(i-k) * h
				if v := line[k] + float32(e*e); v < best {
					best = v
				}
			}
			d[get(i)] = best
		}
	}
	for k := range nz {
		for j := range ny {
			sweep(nx, func(i int) int { return at(i, j, k) })
		}
	}
	for k := range nz {
		for i := range nx {
			sweep(ny, func(j int) int { return at(i, j, k) })
		}
	}
	for j := range ny {
		for i := range nx {
			sweep(nz, func(k int) int { return at(i, j, k) })
		}
	}
	n := 0
	for k := range nz {
		for j := range ny {
			for i := range nx {
				v := d[at(i, j, k)]
				side := math.Min(math.Min(float64(i), float64(nx-1-i)), math.Min(math.Min(float64(j), float64(ny-1-j)), float64(k))) + 0.5
				if v > 0 && (side*h <= t || math.Sqrt(float64(v))-h/2 <= t) { // the foam's face is half a cell nearer than its cell
					n++
				}
			}
		}
	}
	return float64(n) * h * h * h
}

// BenchmarkShell compares the plane integral at 1 mm with cells in space at 4 mm, where
// they still fit: time, memory and error against the closed form.
func BenchmarkShell(b *testing.B) {
	in, want := bigBox()
	m := newMould(in)
	for name, f := range map[string]func() float64{
		"plane integral, 1 mm": func() float64 { return m.shells([]float64{19}, 1)[0] },
		"cells in space, 4 mm": func() float64 { return voxels(in, 19, 4) },
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			got := 0.0
			for b.Loop() {
				got = f()
			}
			b.ReportMetric(100*math.Abs(got/want-1), "%off")
		})
	}
}
