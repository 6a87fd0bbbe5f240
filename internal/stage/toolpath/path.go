package toolpath

import (
	"math"
	"slices"

	"pourwright/internal/geom"
)

// A piece is a straight line or an arc of a path, mm.
type piece struct {
	from, to geom.Point
	centre   geom.Point // of an arc
	sweep    float64    // radians, counter-clockwise above 0; 0 for a line
	length   float64
}

func straight(a, b geom.Point) piece { return piece{from: a, to: b, length: b.Sub(a).Norm()} }

// at returns the place s mm along p.
func (p piece) at(s float64) geom.Point {
	t := 0.0
	if p.length > 0 {
		t = s / p.length
	}
	if p.sweep == 0 {
		return p.from.Add(p.to.Sub(p.from).Mul(t))
	}
	sin, cos := math.Sincos(t * p.sweep)
	v := p.from.Sub(p.centre)
	return p.centre.Add(geom.Point{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos})
}

// part returns the stretch of p from s to e mm.
func (p piece) part(s, e float64) piece {
	q := piece{from: p.at(s), to: p.at(e), centre: p.centre, length: e - s}
	if s <= 0 {
		q.from = p.from
	}
	if e >= p.length {
		q.to = p.to
	}
	if p.length > 0 {
		q.sweep = p.sweep * (e - s) / p.length
	}
	return q
}

// A path is a closed line of pieces.
type path struct {
	pieces []piece
	ends   []float64 // length up to the end of each piece
}

func newPath(pieces []piece) path {
	p := path{pieces: pieces, ends: make([]float64, len(pieces))}
	sum := 0.0
	for i, q := range pieces {
		sum += q.length
		p.ends[i] = sum
	}
	return p
}

func (p path) length() float64 {
	if len(p.ends) == 0 {
		return 0
	}
	return p.ends[len(p.ends)-1]
}

// find returns the piece that holds the place s mm along p, 0 <= s < length, and how
// far along that piece it is.
func (p path) find(s float64) (int, float64) {
	i, _ := slices.BinarySearch(p.ends, s)
	for i < len(p.ends)-1 && p.ends[i] <= s {
		i++
	}
	i = min(i, len(p.pieces)-1)
	return i, s - (p.ends[i] - p.pieces[i].length)
}

// at returns the place s mm along p, round and round.
func (p path) at(s float64) geom.Point {
	i, rest := p.find(p.wrap(s))
	return p.pieces[i].at(rest)
}

// wrap returns s taken into [0, length).
func (p path) wrap(s float64) float64 {
	l := p.length()
	if s = math.Mod(s, l); s < 0 {
		s += l
	}
	if s >= l {
		return 0
	}
	return s
}

func (p path) box() geom.Box {
	b := geom.EmptyBox()
	for _, q := range p.pieces {
		n := 1 + int(math.Abs(q.sweep)*8)
		for k := 0; k <= n; k++ {
			v := q.at(q.length * float64(k) / float64(n))
			b = b.Union(geom.Box{Min: v, Max: v})
		}
	}
	return b
}

// reversed returns p the other way round.
func (p path) reversed() path {
	out := make([]piece, len(p.pieces))
	for i, q := range p.pieces {
		q.from, q.to, q.sweep = q.to, q.from, -q.sweep
		out[len(out)-1-i] = q
	}
	return newPath(out)
}
