package resin

import (
	"math"

	"pourwright/internal/material"
)

// A weather is what may be otherwise in a simulation: kelvins added to the room and to
// the resin as poured, and factors of the rest.
type weather struct{ room, rate, heat, film, depth, body float64 }

var asPlanned = weather{rate: 1, heat: 1, film: 1, depth: 1, body: 1}

// An Influence is what one standard deviation of something not known exactly does to
// the peak.
type Influence struct {
	Name string  `json:"name"`
	SD   float64 `json:"sd"`
	Unit string  `json:"unit"`
	Peak float64 `json:"peak_by_k"` // K, signed: of one standard deviation more
}

// Standard deviations where the card states no range. Chosen: a room's thermometer and
// draughts; batches of one resin; films of a sheltered shop; a depth read from a stick.
// The conductivity of a glass-fibre concrete skin is .6 to 1.6 W/mK, from memory.
const (
	sdRoomK   = 1.5
	sdRate    = 0.15
	sdOwnHeat = 0.08
	sdFilms   = 0.15
	sdDepth   = 0.02
	sdBody    = 0.25
)

// unsure lists what is not known exactly. A range on a card counts as two standard
// deviations each way.
func unsure(c material.Resin) []Influence {
	return []Influence{
		{Name: "temperature of room and resin", SD: sdRoomK, Unit: "K"},
		{Name: "rate of reaction", SD: 100 * spread(c.K25, sdRate), Unit: "%"},
		{Name: "heat of reaction", SD: 100 * spread(c.Heat, sdOwnHeat), Unit: "%"},
		{Name: "heat given to the air", SD: 100 * sdFilms, Unit: "%"},
		{Name: "depth", SD: 100 * sdDepth, Unit: "%"},
		{Name: "conductivity of the concrete", SD: 100 * sdBody, Unit: "%"},
	}
}

// spread returns the standard deviation of a card's value as a share: a quarter of its
// range, between 3 and 40 %; usual where none is stated.
func spread(v material.Value[float64], usual float64) float64 {
	if !(v.Low > 0) || !(v.High > v.Low) {
		return usual
	}
	return min(max(math.Log(v.High/v.Low)/4, 0.03), 0.4)
}

// shifted is a weather with every input z standard deviations off; the factors are
// log-normal.
func shifted(of []Influence, z []float64) weather {
	by := func(i int) float64 { return math.Exp(of[i].SD / 100 * z[i]) }
	return weather{room: of[0].SD * z[0], rate: by(1), heat: by(2), film: by(3), depth: by(4), body: by(5)}
}

// firmShare is how much an input must move the peak, as a share of what the strongest
// does, to be varied in the band. Chosen.
const firmShare = 0.1

// strong returns which inputs move the peak, the strongest first.
func strong(of []Influence) []int {
	var out []int
	most := 0.0
	for _, f := range of {
		most = math.Max(most, math.Abs(f.Peak))
	}
	for i, f := range of {
		if math.Abs(f.Peak) < firmShare*most || f.Peak == 0 {
			continue
		}
		k := len(out)
		for k > 0 && math.Abs(of[out[k-1]].Peak) < math.Abs(f.Peak) {
			k--
		}
		out = append(out[:k], append([]int{i}, out[k:]...)...)
	}
	return out
}

// joint returns member i of the band: a point of the Halton sequence over the strong
// inputs, each part made normal. The same pours give the same band.
func joint(i int, n int, strong []int) []float64 {
	bases := [...]int{2, 3, 5, 7, 11, 13}
	z := make([]float64, n)
	for k, at := range strong {
		z[at] = normal(halton(i+1, bases[k]))
	}
	return z
}

// outward is the point at distance d, in standard deviations, in the direction in which
// the peak grows fastest: where d is 1.28, nine of ten cases peak lower, for a peak that
// is nearly linear in its inputs.
func outward(of []Influence, d float64) []float64 {
	norm := 0.0
	for _, f := range of {
		norm += f.Peak * f.Peak
	}
	z := make([]float64, len(of))
	for i, f := range of {
		if norm > 0 {
			z[i] = d * f.Peak / math.Sqrt(norm)
		}
	}
	return z
}

// nineOfTen is the normal deviate that nine of ten lie below.
const nineOfTen = 1.2816

func halton(i, base int) float64 {
	f, r := 1.0, 0.0
	for ; i > 0; i /= base {
		f /= float64(base)
		r += f * float64(i%base)
	}
	return r
}

// normal turns a share into a standard normal deviate.
func normal(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }
