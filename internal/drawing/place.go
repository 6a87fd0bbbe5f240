package drawing

import (
	"math"
	"slices"

	"pourwright/internal/geom"
)

// middle returns a point well inside r, for a label: of the points of a raster over
// r's box, the one furthest from r's boundary, and that distance. tol says how finely
// r need be known, mm.
func middle(r geom.Region, tol float64) (geom.Point, float64) {
	const nx, ny = 48, 24
	r = r.Simplify(tol)
	box := r.Box()
	at, best := box.Center(), 0.0
	for j := range ny {
		for i := range nx {
			p := geom.Point{
				X: box.Min.X + box.Width()*(float64(i)+0.5)/nx,
				Y: box.Min.Y + box.Height()*(float64(j)+0.5)/ny,
			}
			if d := -r.Distance(p); d > best {
				at, best = p, d
			}
		}
	}
	return at, best
}

// chords returns where the level line at y lies inside r, as rising pairs of x, mm.
func chords(r geom.Region, y float64) [][2]float64 {
	var xs []float64
	for _, ring := range r.Rings() {
		for i, a := range ring {
			if b := ring[(i+1)%len(ring)]; (a.Y <= y) != (b.Y <= y) {
				xs = append(xs, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
			}
		}
	}
	slices.Sort(xs)
	var out [][2]float64
	for i := 0; i+1 < len(xs); i += 2 {
		if xs[i+1] > xs[i] {
			out = append(out, [2]float64{xs[i], xs[i+1]})
		}
	}
	return out
}

// longestChord returns the level line on which r is longest, of those of a raster
// over r's box; of equals the one nearest to the box's middle.
func longestChord(r geom.Region) float64 {
	const lines = 41
	box := r.Box()
	best, at := -1.0, box.Center().Y
	for k := range lines {
		step := float64((k+1)/2) / (lines + 1)
		if k%2 == 1 {
			step = -step
		}
		y := box.Center().Y + step*box.Height() + geom.Grid/3
		sum := 0.0
		for _, c := range chords(r, y) {
			sum += c[1] - c[0]
		}
		if sum > best+1e-6 {
			best, at = sum, y
		}
	}
	return at
}

// without returns the stretches of a that no stretch of b covers.
func without(a, b [][2]float64) [][2]float64 {
	var out [][2]float64
	for _, s := range a {
		from := s[0]
		for _, h := range b {
			if h[1] <= from || h[0] >= s[1] {
				continue
			}
			if h[0] > from {
				out = append(out, [2]float64{from, h[0]})
			}
			from = math.Max(from, h[1])
		}
		if from < s[1] {
			out = append(out, [2]float64{from, s[1]})
		}
	}
	return out
}

// longest returns the longest of stretches; false if there is none.
func longest(stretches [][2]float64) (best [2]float64, ok bool) {
	for _, s := range stretches {
		if s[1]-s[0] > best[1]-best[0] {
			best, ok = s, true
		}
	}
	return best, ok
}
