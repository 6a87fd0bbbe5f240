package concrete

import (
	"math"

	"pourwright/internal/geom"
)

// profile is how the mould's area lies along the length of the form, mm2 in equal
// bins, form view.
type profile struct {
	length float64 // mm
	bins   []float64
}

const profileBins = 500

// newProfile spreads the cast surface along the form: bottom and floors evenly, the
// long sides evenly, the ends in the outermost bins, risers where they stand. Mouths,
// where foam lies against a side, are taken off.
func newProfile(in Input) profile {
	l, w, h := in.Length.MM(), in.Width.MM(), in.Height.MM()
	p := profile{l, make([]float64, profileBins)}
	p.spread(0, l, l*w+2*l*h)
	p.spread(0, 0, w*h)
	p.spread(l, l, w*h)
	for _, layer := range in.Layers {
		d := (layer.To - layer.From).MM()
		for _, ring := range layer.Region.Shape().Rings() {
			for i, a := range ring {
				b := ring[(i+1)%len(ring)]
				area := b.Sub(a).Norm() * d
				if onSide(a, b, l, w) {
					area = -area
				}
				p.spread(l-a.X, l-b.X, area)
			}
		}
	}
	return p
}

// onSide reports whether ab lies on a side of the box.
func onSide(a, b geom.Point, length, width float64) bool {
	return math.Max(a.X, b.X) <= sideTol || math.Min(a.X, b.X) >= length-sideTol ||
		math.Max(a.Y, b.Y) <= sideTol || math.Min(a.Y, b.Y) >= width-sideTol
}

// spread adds area evenly between two places.
func (p profile) spread(x0, x1, area float64) {
	if x1 < x0 {
		x0, x1 = x1, x0
	}
	step := p.length / float64(len(p.bins))
	first := min(len(p.bins)-1, max(0, int(x0/step)))
	last := min(len(p.bins)-1, max(0, int(x1/step)))
	if first == last {
		p.bins[first] += area
		return
	}
	for i := first; i <= last; i++ {
		lo, hi := math.Max(x0, float64(i)*step), math.Min(x1, float64(i+1)*step)
		p.bins[i] += area * math.Max(0, hi-lo) / (x1 - x0)
	}
}

func (p profile) total() float64 {
	sum := 0.0
	for _, b := range p.bins {
		sum += b
	}
	return sum
}

// place returns how far along the form the share f of the area lies.
func (p profile) place(f float64) float64 {
	want, sum, step := f*p.total(), 0.0, p.length/float64(len(p.bins))
	for i, b := range p.bins {
		if b > 0 && sum+b >= want {
			return (float64(i) + math.Max(0, want-sum)/b) * step
		}
		sum += math.Max(0, b)
	}
	return p.length
}
