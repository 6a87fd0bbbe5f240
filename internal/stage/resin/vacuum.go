package resin

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// atmosphereInHg is standard pressure at sea level, inHg.
const atmosphereInHg = 29.92

// riseInPot is how high degassing resin rises in its pot, times its own depth, before
// the foam breaks; 3 to 5. Common practice, no source.
const riseInPot = 4.0

// A Degassing is how a bucket goes through the maker's vacuum pot.
type Degassing struct {
	Pot   units.Volume `json:"pot_l"`
	Pull  units.Volume `json:"most_at_once_l"` // the pot over the rise
	Rise  float64      `json:"rise_factor"`
	Swell float64      `json:"gas_expands_times"` // at the gauge the pump reaches
	Gauge float64      `json:"gauge_in_hg"`
}

// Expansion returns how many times its volume a bubble grows under a vacuum gauge
// reading, inHg below the atmosphere:
//
//	29.92 / (29.92 - gauge)
//
// It is +Inf at and above a perfect vacuum, and 1 below none.
func Expansion(gauge float64) float64 {
	switch {
	case !(gauge > 0):
		return 1
	case gauge >= atmosphereInHg:
		return math.Inf(1)
	}
	return atmosphereInHg / (atmosphereInHg - gauge)
}

// degas splits each bucket into pulls of the vacuum pot, nil without one.
func (c *computer) degas(r *Result) {
	pot := c.in.Pot
	if !(pot > 0) || !known(pot) {
		return
	}
	gauge := min(max(atLeastZero(c.in.Vacuum), 0), 29.9)
	d := &Degassing{Pot: pot, Pull: pot / riseInPot, Rise: riseInPot, Gauge: gauge, Swell: Expansion(gauge)}
	r.Degas = d
	for i := range r.Lifts {
		for k := range r.Lifts[i].Batches {
			b := &r.Lifts[i].Batches[k]
			b.Pulls = int(math.Ceil(float64(b.Volume/d.Pull) - 1e-9))
			if need := units.Duration(b.Pulls) * pulling; c.potLife() > 0 && need+mixing > c.potLife() {
				c.say(slowPot.At(finding.Where{Element: "resin.degas_pot"}, "Bucket %d of lift %d takes %s in a pot of %.1f l, %.1f h with mixing, and %s keeps for %.1f h.",
					b.Number, r.Lifts[i].Number, units.Count(b.Pulls, "pull", "pulls"), pot, need+mixing, c.in.Card.Name, c.potLife()).Measured(float64(need+mixing), float64(c.potLife()), "h"))
				return
			}
		}
	}
}

const pulling units.Duration = 0.25 // h for one pull. Common practice, no source
