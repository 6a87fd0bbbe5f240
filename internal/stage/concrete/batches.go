package concrete

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

const (
	mostBatches            = 40  // Chosen: of one coat; more is a slip in the tub's size
	waterFirst             = 0.8 // of the water, at the start. Source: [practice]
	smallest    units.Mass = 1   // Chosen: below this a gram of plasticiser decides
	fullest                = 0.95
)

// batches splits what a coat needs into equal tubs, as few as the freeboard allows.
func (c *computer) batches(coat Coat, recipe Recipe, res CoatResult, done int) []Batch {
	room := float64(c.in.Tub) * (1 - share(c.in.Freeboard, fullest))
	volume := float64(recipe.WetDensity.Fill(res.ToMix))
	if !(volume > 0) || !known(volume) {
		return nil
	}
	w := finding.Where{Element: coat.Name}
	if !(room > 0) || !known(room) {
		c.say(tub.At(w, "A tub of %.1f l with %.0f %% left free holds nothing, so the coat %s is not split into batches.", c.in.Tub, 100*c.in.Freeboard, coat.Name))
		return nil
	}
	n := math.Max(1, math.Ceil(volume/room-1e-9))
	if n > mostBatches {
		c.say(tub.At(w, "The coat %s of %.1f l would take %.0f batches of the %.1f l tub with %.0f %% left free.", coat.Name, volume, n, c.in.Tub, 100*c.in.Freeboard).Measured(n, mostBatches, "batches"))
		return nil
	}
	var out []Batch
	for k := range int(n) {
		b := Batch{Number: done + k + 1, Coat: coat.Name, Of: int(n), Volume: units.Volume(volume / n)}
		b.Parts, b.Mass = scale(recipe, res.ToMix/units.Mass(n))
		b.stageWater(coat.Mix)
		out = append(out, b)
	}
	if m := out[0].Mass; m < smallest {
		c.say(smallBatch.At(w, "A batch of the coat %s weighs %.3f kg, so its least part is a matter of grams.", coat.Name, m).Measured(float64(m), float64(smallest), "kg"))
	}
	return out
}

// scale returns the recipe's parts for a batch of mass m, each to the gram, and
// their sum, which is what the batch weighs.
func scale(recipe Recipe, m units.Mass) ([]Part, units.Mass) {
	parts := make([]Part, len(recipe.Parts))
	grams := 0.0
	for i, p := range recipe.Parts {
		g := math.Round(float64(p.Mass) / float64(recipe.WetDensity) * m.G())
		parts[i] = Part{Name: p.Name, Role: p.Role, Mass: units.Mass(g / 1000)}
		grams += g
	}
	return parts, units.Mass(grams / 1000)
}

// stageWater says how the batch's water goes in: four fifths first, then up to the
// recipe's, never above the limit
//
//	never = limit x base - water in the emulsion
//
// base is the dry blend of a bagged mix, cement and pozzolan of one from scratch.
// Where the recipe itself is above the limit, the limit holds; where no limit is
// stated, the recipe's water is the limit. All to the gram, the limit rounded down.
func (b *Batch) stageWater(mix material.Mix) {
	water, base, emulsion := b.water(mix)
	b.WaterNever = water
	if limit := mix.WaterMax.Value; limit > 0 && known(limit) && base > 0 {
		b.WaterNever = units.Mass(math.Max(0, math.Floor((limit*float64(base)-float64(emulsion))*1000+1e-6)/1000))
	}
	b.WaterUpTo = min(water, b.WaterNever)
	b.WaterFirst = units.Mass(math.Round(waterFirst*b.WaterUpTo.G()) / 1000)
}

// water returns the water a batch adds, the mass its limit counts on, and the water
// that comes with its emulsion.
func (b *Batch) water(mix material.Mix) (water, base, emulsion units.Mass) {
	for _, p := range b.Parts {
		switch {
		case p.Role == "water":
			water += p.Mass
		case p.Role == "polymer":
			emulsion += p.Mass * units.Mass(1-solidsOf(mix, p.Name))
		case counts(mix.Kind, p.Role):
			base += p.Mass
		}
	}
	return water, base, emulsion
}

// counts reports whether water ratios of a mix of this kind count on parts of role.
func counts(kind material.MixKind, role string) bool {
	if kind == material.Bagged {
		return role == "blend"
	}
	return role == "cement" || role == "pozzolan"
}

// solidsOf returns the share of solids of the mix's ingredient of that name.
func solidsOf(mix material.Mix, name string) float64 {
	for _, ing := range mix.Ingredients {
		if ing.Name == name {
			return share(ing.Solids.Value, 1)
		}
	}
	return 1
}
