package resin

import (
	"math"

	"pourwright/internal/units"
)

const gravity = 9.80665 // m/s2

// BubbleRise returns how long a bubble of diameter d, mm, takes to rise through depth
// of resin of viscosity mu, Pa s, and density rho (Stokes):
//
//	v = rho g d^2 / (18 mu)
//
// It is +Inf where d is 0.
func BubbleRise(depth, d units.Length, mu float64, rho units.Density) units.Duration {
	m := d.MM() / 1000
	v := float64(rho) * gravity * m * m / (18 * mu)
	return units.Duration(depth.MM() / 1000 / v / 3600)
}

// LevelTime returns the time in which a wave of length lambda on resin of depth h sinks
// to 1/e (thin film levelling under gravity):
//
//	tau = 3 mu / (rho g h^3 K^2),  K = 2 pi / lambda
func LevelTime(h, lambda units.Length, mu float64, rho units.Density) units.Duration {
	hM, k := h.MM()/1000, 2*math.Pi/(lambda.MM()/1000)
	return units.Duration(3 * mu / (float64(rho) * gravity * hM * hM * hM * k * k) / 3600)
}

// Rounds with the torch after the last bucket, common practice, no source: one when
// the large bubbles are up, one when most are, and none once the surface thickens.
const (
	firstRound  units.Duration = 0.15
	secondRound units.Duration = 0.5
	lastShare                  = 0.3 // of the time to gel, after which a flame leaves marks
)

// rounds returns when to pass the torch over a lift whose surface gels after gel.
func rounds(gel units.Duration) []units.Duration {
	out := []units.Duration{}
	last := gel * lastShare
	for _, t := range []units.Duration{firstRound, secondRound, last} {
		if t <= last && (len(out) == 0 || t > out[len(out)-1]) {
			out = append(out, t)
		}
	}
	return out
}

// shimPerMetre is the slope at which a basin is shimmed level, mm per m: over it the
// resin shows thicker at one end. Chosen.
const shimPerMetre = 0.3

// A Shim levels the piece before the first lift.
type Shim struct {
	Reading float64      `json:"reading_mm_per_m"` // of the level, along the length
	Under   units.Length `json:"shim_mm"`          // under the low end
	Off     units.Length `json:"depth_off_mm"`     // how much deeper the resin stands at the low end
}

// shim returns what levels a piece of that length; nil when it stands level.
func (c *computer) shim() *Shim {
	slope := math.Abs(c.in.Slope)
	if !known(slope) || slope < shimPerMetre {
		return nil
	}
	off := units.Length(slope * c.in.Length.MM() / 1000)
	return &Shim{Reading: slope, Under: off, Off: off}
}
