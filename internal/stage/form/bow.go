package form

import (
	"math"

	"pourwright/internal/numeric/plate"
	"pourwright/internal/units"
)

const (
	gravity      = 9.81 // m/s2
	poisson      = 0.3  // of board. Source: [memory]
	packedKPa    = 0.5  // Chosen: a hand pressing a coat, spread over the wall; a packed coat itself presses little
	usualBow     = 1.0  // mm. Chosen: what sanding takes off a face
	mostUprights = 12
	fewestKPa    = 1e-6
)

// pressure returns what the mix presses at the foot and at the top of a wall, kPa: a
// flowable mix as a liquid,
//
//	p = rho g h
//
// a packed coat the same everywhere.
func pressure(in Input) (foot, top float64) {
	if in.Mix.Flowable {
		return float64(in.Mix.Density) * gravity * in.Height.MM() * 1e-6, 0
	}
	return packedKPa, packedKPa
}

// bowLimit returns the most a wall may bow, mm.
func bowLimit(in Input) float64 {
	if in.Bow > 0 {
		return in.Bow.MM()
	}
	return usualBow
}

// A brace is what holds a wall and how far it then bows.
type brace struct {
	uprights    int
	rail        bool
	bow, batten float64 // mm: of the board between its supports, and of what supports it
	bare        float64 // without battens
	known, ok   bool
}

// brace finds the fewest battens that keep a wall of length l within the limit: none,
// then a rail along its top, then uprights with the rail. Foot and ends are held by
// screws and may turn; the top is free without a rail.
func (in *Input) brace(l float64) brace {
	foot, top := pressure(*in)
	limit := bowLimit(*in)
	b := brace{bare: in.bay(l, foot, top, false)}
	b.bow, b.known = b.bare, in.Board.Modulus > 0
	if !b.known || b.bare <= limit {
		b.ok = b.known
		return b
	}
	for n := range mostUprights + 1 {
		b.uprights, b.rail = n, true
		b.bow = in.bay(l/float64(n+1), foot, top, true)
		b.batten = max(in.railBow(l, foot, top), in.uprightBow(l/float64(n+1), foot, top, n))
		if b.bow+b.batten <= limit {
			b.ok = true
			return b
		}
		if in.railBow(l, foot, top) > limit {
			return b // more uprights do not help the rail
		}
	}
	return b
}

// bay returns the bow of one stretch of wall between uprights, mm.
func (in *Input) bay(l, footKPa, topKPa float64, rail bool) float64 {
	p := plate.Plate{A: l, B: in.Height.MM(), Rigidity: plate.Rigidity(float64(in.Board.Modulus)/1000, in.Thickness.MM(), poisson), Poisson: poisson,
		Top: plate.Free, Q0: footKPa / 1000, QY: (topKPa - footKPa) / 1000}
	if rail {
		p.Top = plate.Simple
	}
	b, ok := plate.Bend(p)
	if !ok {
		return 0
	}
	return b.Deepest()
}

// railBow returns the bow of the rail along the top, which carries the upper end of
// every strip of the wall, between the corners that hold it:
//
//	w = 5 q l^4 / 384 E I,  q = h (foot/6 + top/3)
func (in *Input) railBow(l, footKPa, topKPa float64) float64 {
	q := in.Height.MM() * (footKPa/6 + topKPa/3) / 1000
	return 5 * q * math.Pow(l, 4) / 384 / in.battenEI()
}

// uprightBow returns the bow of an upright that carries a stretch of wall l wide from
// foot to rail, the water load's .00652 and the even load's 5/384 added.
func (in *Input) uprightBow(l, footKPa, topKPa float64, n int) float64 {
	if n == 0 {
		return 0
	}
	return (0.00652*(footKPa-topKPa) + 5./384*topKPa) / 1000 * l * math.Pow(in.Height.MM(), 4) / in.battenEI()
}

// battenEI returns the stiffness of a batten on edge, N mm2.
func (in *Input) battenEI() float64 {
	w, d, e := in.Batten.Width.MM(), in.Batten.Depth.MM(), float64(in.Batten.Modulus)/1000
	if !(w > 0 && d > 0) {
		w, d = 45, 70
	}
	if !(e > 0) {
		e = 9000 // MPa, softwood. Source: [memory]
	}
	return e * w * d * d * d / 12
}

// battens lists the lumber behind a wall.
func battens(in Input, mark string, l float64, b brace) []BattenPart {
	w, d := in.Batten.Width, in.Batten.Depth
	if !(w > 0 && d > 0) {
		w, d = 45, 70
	}
	var out []BattenPart
	if b.rail {
		out = append(out, BattenPart{Name: "rail", Wall: mark, Length: units.Length(l), Width: w, Depth: d, Count: 1})
	}
	if b.uprights > 0 {
		out = append(out, BattenPart{Name: "upright", Wall: mark, Length: in.Height, Width: w, Depth: d, Count: b.uprights})
	}
	return out
}
