package concrete

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

const assumedDensity units.Density = 2100 // kg/m3, fresh GFRC. Source: [gfrc-guides]

// recipe works a mix out by absolute volume:
//
//	yield = sum of W_i/(SG_i 1000) / (1 - air),  density = sum of W_i / yield
//
// The water of a polymer emulsion counts in the water ratio. Source: [aci-211].
func (c *computer) recipe(mix material.Mix) Recipe {
	r := Recipe{Mix: mix.Name, Parts: []Part{}, Air: mix.Air.Value}
	parts := withWater(mix)
	mass, volume, complete := 0.0, 0.0, len(parts) > 0
	for _, p := range parts {
		mass += p.Parts.Value
		if sg := p.SG.Value; sg > 0 {
			volume += p.Parts.Value / sg / 1000
		} else {
			complete = false
		}
	}
	air := float64(mix.Air.Value)
	if !(air >= 0 && air < 0.3) {
		c.say(badAir.At(finding.Where{Element: mix.Name}, "The mix %s states %.0f %% of air; 0 is used.", mix.Name, 100*air))
		air, r.Air = 0, 0
	}
	switch {
	case mix.WetDensity.Value > 0:
		r.WetDensity = mix.WetDensity.Value
	case complete && volume > 0:
		r.WetDensity = units.Density(mass / (volume / (1 - air)))
	default:
		r.WetDensity = assumedDensity
		c.say(noDensity.At(finding.Where{Element: mix.Name}, "The mix %s lacks specific gravities, so %.0f kg/m3 is assumed for it.", mix.Name, assumedDensity))
	}
	if mass > 0 {
		for _, p := range parts {
			r.Parts = append(r.Parts, Part{p.Name, p.Role, units.Mass(p.Parts.Value / mass * float64(r.WetDensity))})
		}
	}
	c.ratios(mix, parts, mass, &r)
	return r
}

// withWater returns the mix's ingredients; a bagged blend without stated water gets
// the middle of its range.
func withWater(mix material.Mix) []material.Ingredient {
	parts := append([]material.Ingredient{}, mix.Ingredients...)
	blend := 0.0
	for _, p := range parts {
		if p.Role == "water" {
			return parts
		}
		if p.Role == "blend" {
			blend += p.Parts.Value
		}
	}
	if mix.Kind == material.Bagged && blend > 0 && mix.WaterMax.Value > 0 {
		w := material.Ingredient{Name: "water", Role: "water"}
		w.Parts.Value = blend * (mix.WaterMin.Value + mix.WaterMax.Value) / 2
		w.SG.Value = 1
		parts = append(parts, w)
	}
	return parts
}

// ratios works out water, polymer and fibre and holds them against their limits.
func (c *computer) ratios(mix material.Mix, parts []material.Ingredient, mass float64, r *Recipe) {
	var water, solids, cement, blend, fibre float64
	for _, p := range parts {
		switch w := p.Parts.Value; p.Role {
		case "water":
			water += w
		case "polymer":
			solids += w * float64(p.Solids.Value)
			water += w * (1 - float64(p.Solids.Value))
		case "cement", "pozzolan":
			cement += w
		case "blend":
			blend += w
		case "fibre":
			fibre += w
		}
	}
	base := cement
	if mix.Kind == material.Bagged {
		base = blend
	}
	if base > 0 {
		r.WaterRatio, r.Polymer = water/base, solids/base
	}
	if mass > 0 {
		r.Fibre = fibre / mass
	}
	if top := mix.WaterMax.Value; top > 0 && r.WaterRatio > top+1e-9 {
		c.say(tooWet.At(finding.Where{Element: mix.Name}, "The mix %s has a water ratio of %.3f, above its limit of %.3f.", mix.Name, r.WaterRatio, top).Measured(r.WaterRatio, top, "kg/kg"))
	}
	if r.Fibre > 0.06 || math.IsNaN(r.Fibre) {
		c.say(tooMuchFibre.At(finding.Where{Element: mix.Name}, "The mix %s has %.1f %% of fibre; premix takes 2 to 3.5 %% of the whole.", mix.Name, 100*r.Fibre).Measured(100*r.Fibre, 3.5, "%"))
	}
}
