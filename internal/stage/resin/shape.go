package resin

import (
	"math"
	"slices"

	"pourwright/internal/geom"
)

// A shape is the basin as columns: how deep below the show face the floor of each square
// of side stepMM lies, 0 outside the basin. Rows run along x from the lower left corner.
type shape struct {
	x0MM, y0MM, stepMM float64
	nx, ny             int
	deepMM             []float64
}

// shapeOf samples the layers at the centres of squares over the whole box.
func shapeOf(layers []Layer, lengthMM, widthMM, stepMM float64) shape {
	s := shape{stepMM: stepMM, nx: int(math.Ceil(lengthMM/stepMM - 1e-9)), ny: int(math.Ceil(widthMM/stepMM - 1e-9))}
	s.deepMM = make([]float64, s.nx*s.ny)
	for _, l := range layers {
		rings := l.Region.Shape().Rings()
		for j := range s.ny {
			y := s.y0MM + (float64(j)+0.5)*stepMM
			xs := crossings(rings, y)
			for k := 0; k+1 < len(xs); k += 2 {
				s.fill(j, xs[k], xs[k+1], l.To.MM())
			}
		}
	}
	return s
}

// fill deepens the squares of row j whose centres lie between a and b.
func (s *shape) fill(j int, a, b, deepMM float64) {
	from := max(0, int(math.Ceil((a-s.x0MM)/s.stepMM-0.5)))
	for i := from; i < s.nx && s.x0MM+(float64(i)+0.5)*s.stepMM < b; i++ {
		s.deepMM[j*s.nx+i] = max(s.deepMM[j*s.nx+i], deepMM)
	}
}

// crossings returns where rings cross the horizontal line at y, rising.
func crossings(rings []geom.Ring, y float64) []float64 {
	var xs []float64
	for _, r := range rings {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			if (a.Y <= y) != (b.Y <= y) {
				xs = append(xs, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
			}
		}
	}
	slices.Sort(xs)
	return xs
}

// deepest returns the depth of the deepest floor, mm below the show face.
func (s shape) deepest() float64 {
	d := 0.0
	for _, v := range s.deepMM {
		d = max(d, v)
	}
	return d
}
