package concrete

import (
	"math"
	"testing"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// halton returns the i-th number of the radical-inverse sequence of base b, 0 to 1.
func halton(i, b int) float64 {
	f, x := 1.0, 0.0
	for ; i > 0; i /= b {
		f /= float64(b)
		x += f * float64(i%b)
	}
	return x
}

// spaceDistance returns the distance in space from (p, z) to the mould, mm, and
// whether the point is in the foam.
func spaceDistance(in Input, p geom.Point, z float64) (float64, bool) {
	near := math.Min(z, math.Min(math.Min(p.X, in.Length.MM()-p.X), math.Min(p.Y, in.Width.MM()-p.Y)))
	for _, l := range in.Layers {
		d := math.Max(0, l.Region.Shape().Distance(p))
		if d == 0 && z <= l.To.MM() {
			return 0, true
		}
		near = math.Min(near, math.Hypot(d, math.Max(0, z-l.To.MM())))
	}
	return near, false
}

// sampled estimates the shell within each of ts by points spread evenly through the
// box, mm3.
func sampled(in Input, ts []float64, n int) []float64 {
	out := make([]float64, len(ts))
	each := float64(in.Length*in.Width*in.Height) / float64(n)
	for i := 1; i <= n; i++ {
		p := geom.Point{X: halton(i, 2) * in.Length.MM(), Y: halton(i, 3) * in.Width.MM()}
		d, foam := spaceDistance(in, p, halton(i, 5)*in.Height.MM())
		for k, t := range ts {
			if !foam && d <= t {
				out[k] += each
			}
		}
	}
	return out
}

func TestShellAgainstSampledSpace(t *testing.T) {
	bay := geom.Intersect(wavy(150, 60, 90, 45, 3, 60), geom.Rect(0, 0, 180, 120).Region())
	island := geom.Subtract(bay, wavy(120, 60, 14, 12, 2, 20))
	slope := geom.Build([]geom.Ring{{{X: 30, Y: 25}, {X: 180, Y: 35}, {X: 180, Y: 60}, {X: 45, Y: 65}}}, geom.NonZero)
	for _, c := range []struct {
		name   string
		height float64
		layers []Layer
	}{
		{"one slanted channel with a mouth", 70, []Layer{{0, 25, seen(slope)}}},
		{"three nested steps, an island and a mouth", 90, []Layer{{0, 15, seen(island)}, {15, 30, seen(geom.Intersect(island, wavy(140, 60, 60, 28, 4, 60)))}, {30, 45, rect(135, 52, 165, 68)}}},
		{"foam near the rim", 40, []Layer{{0, 35, rect(50, 40, 110, 80)}}},
		{"foam thinner than the shell", 60, []Layer{{0, 5, rect(50, 40, 110, 80)}}},
		{"a slot narrower than twice the shell", 60, []Layer{{0, 30, seen(geom.Union(geom.Rect(30, 30, 80, 90).Region(), geom.Rect(92, 30, 150, 90).Region()))}}},
	} {
		thick := []float64{4, 11.5, 19}
		in := Input{Length: 180, Width: 120, Height: units.Length(c.height), Layers: c.layers}
		want := sampled(in, thick, 100_000)
		for k, thick := range thick {
			in.Coats = []Coat{{"all", units.Length(thick), premix(0)}}
			r, _ := Compute(in)
			if got := r.ShellVolume.MM3(); math.Abs(got/want[k]-1) > 0.005 {
				t.Errorf("%s, %g mm: shell %.0f mm3, sampled space says %.0f", c.name, thick, got, want[k])
			}
			if r.Converged > worstChange {
				t.Errorf("%s, %g mm: converged to %v only", c.name, thick, r.Converged)
			}
		}
	}
}

// TestConvergence holds what Converged says against a raster eight times as fine.
func TestConvergence(t *testing.T) {
	a := wavy(620, 205, 460, 150, 7, 1000)
	b := geom.Intersect(a, wavy(660, 205, 330, 100, 5, 1000))
	in := Input{Length: 1220, Width: 410, Height: 430, Layers: []Layer{{0, 25, seen(a)}, {25, 50, seen(b)}, {50, 75, rect(500, 190, 700, 220)}}}
	m := newMould(in)
	got, converged := m.volumes([]reach{{4, 4, 4}, {11.5, 11.5, 11.5}, {19, 19, 19}})
	fine := m.shells([]float64{4, 11.5, 19}, 0.25)
	for i, v := range got {
		if off := math.Abs(v.MM3()/fine[i] - 1); off > converged || off > 0.001 {
			t.Errorf("thickness %d: off by %.5f, converged is said to be %.5f", i, off, converged)
		}
	}
}

func BenchmarkCompute(b *testing.B) {
	layers := []Layer{{0, 25, seen(wavy(610, 205, 460, 150, 7, 1000))}, {25, 50, seen(wavy(610, 205, 380, 100, 7, 1000))}, {50, 75, seen(wavy(610, 205, 300, 60, 7, 1000))}}
	in := box()
	in.Length, in.Width, in.Height, in.Layers = 1220, 410, 430, layers
	for b.Loop() {
		Compute(in)
	}
}
