package resin

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

const assumedDensity units.Density = 1100 // kg/m3, mixed epoxy, 1080 to 1130. Source: [epoxy-properties]

// Densities that a casting resin or one of its parts can have, kg/m3. Chosen.
const lightest, heaviest units.Density = 500, 3000

func plausible(d units.Density) bool { return d > lightest && d < heaviest }

// density returns the density of the mixed resin.
func (c *computer) density() units.Density {
	if d := c.in.Card.Density.Value; plausible(d) {
		return d
	}
	c.say(noDensity.At(finding.Where{}, "The card of %s states no usable density, so %.0f kg/m3 is assumed.", c.in.Card.Name, assumedDensity))
	return assumedDensity
}

// bPerA returns the mass of B for one mass of A, 0 where the card states no ratio:
//
//	by volume:  (b/a) (rhoB/rhoA)      by mass:  b/a
func (c *computer) bPerA() float64 {
	card := c.in.Card
	ratio := card.RatioB.Value / card.RatioA.Value
	if !(ratio > 0.01 && ratio < 100) || card.RatioA.Value < 0 {
		c.say(noRatio.At(finding.Where{}, "The card of %s states a ratio of %g to %g, so A and B are not worked out.", card.Name, card.RatioA.Value, card.RatioB.Value))
		return 0
	}
	if ratio > 1 {
		c.say(swapped.At(finding.Where{}, "The card of %s states more hardener B than resin A: %g to %g.", card.Name, card.RatioA.Value, card.RatioB.Value).Measured(ratio, 1, "B/A"))
	}
	if card.ByMass {
		return ratio
	}
	if !plausible(card.DensityA.Value) || !plausible(card.DensityB.Value) {
		c.say(noParts.At(finding.Where{}, "The densities of parts A and B of %s are %.0f and %.0f kg/m3, so equal densities are assumed.", card.Name, card.DensityA.Value, card.DensityB.Value))
		return ratio
	}
	c.blend(ratio)
	return ratio * float64(card.DensityB.Value/card.DensityA.Value)
}

const mostOff = 0.06 // Chosen: curing shrinks, and so thickens, by 2 to 5 %

// blend says when the mixed density is not what A and B, b parts to 1 by volume, give.
func (c *computer) blend(b float64) {
	card := c.in.Card
	d := (float64(card.DensityA.Value) + b*float64(card.DensityB.Value)) / (1 + b)
	if stated := float64(card.Density.Value); plausible(card.Density.Value) && math.Abs(stated/d-1) > mostOff {
		c.say(blendOff.At(finding.Where{}, "The card of %s states %.0f kg/m3 for the mixed resin, and its parts give %.0f kg/m3.", card.Name, stated, d).Measured(stated, d, "kg/m3"))
	}
}

// parts splits mass m into A and B; without a ratio both are 0.
func parts(m units.Mass, bPerA float64) (a, b units.Mass) {
	if !(bPerA > 0) {
		return 0, 0
	}
	a = m / units.Mass(1+bPerA)
	return a, m - a
}

// leastSlip is the error of the hardener from which taking volume for weight is
// spoken of. Chosen: below it the scale and the bucket decide.
const leastSlip = 0.03

// ratioSlip says what weighing a ratio by volume would do:
//
//	error of B = rhoA/rhoB - 1
func (c *computer) ratioSlip(bPerA float64) {
	card := c.in.Card
	if card.ByMass || !(bPerA > 0) {
		return
	}
	if slip := card.RatioB.Value/card.RatioA.Value/bPerA - 1; math.Abs(slip) > leastSlip {
		c.say(byVolume.At(finding.Where{}, "The ratio %g to %g of %s is by volume: by weight it is 100 to %.1f, and weighing %g to %g would get the hardener wrong by %+.0f %%.",
			card.RatioA.Value, card.RatioB.Value, card.Name, 100*bPerA, card.RatioA.Value, card.RatioB.Value, 100*slip).Measured(100*slip, 0, "%"))
	}
}
