package concrete

import (
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/units"
)

const (
	mostBatches              = 40  // Chosen: of one coat; more is a slip in the tub's size
	waterFirst               = 0.8 // of the water, at the start. Source: [practice]
	smallest      units.Mass = 1   // Chosen: below this a gram of plasticiser decides
	leastWorkable units.Mass = 2   // Chosen: a paddle does not mix less evenly in a tub
	fullest                  = 0.95
)

// capacity is what one batch of a coat may weigh, by what limits it; 0 is no limit.
type capacity struct{ tub, mixer, hands units.Mass }

// least returns the smallest limit and its name.
func (k capacity) least() (units.Mass, string) {
	most, by := k.tub, "tub"
	if k.mixer > 0 && k.mixer < most {
		most, by = k.mixer, "mixer"
	}
	if k.hands > 0 && k.hands < most {
		most, by = k.hands, "hands"
	}
	return most, by
}

// capacityOf returns what one batch of a coat may weigh:
//
//	tub    its volume less the freeboard, at the wet density
//	hands  people x m2/h x (working life - mixing) x mass of the coat on a m2
//
// the working life at the temperature of the mix.
func (c *computer) capacityOf(coat Coat, recipe Recipe, res CoatResult) capacity {
	room := units.Volume(float64(c.in.Tub) * (1 - share(c.in.Freeboard, fullest)))
	k := capacity{tub: recipe.WetDensity.Of(room)}
	if c.in.Mixer > 0 && known(c.in.Mixer) {
		k.mixer = c.in.Mixer
	}
	left := c.lifeOf(coat.Mix) - mixing(coat.Mix)
	if m2 := res.Area.M2(); m2 > 0 {
		k.hands = res.Mass / units.Mass(m2) * units.Mass(float64(max(1, c.in.People))*c.rate(recipe)*float64(left))
	}
	return k
}

// batches splits what a coat needs into equal batches, as few as tub, mixer and hands
// allow, and notes in res what decided.
func (c *computer) batches(coat Coat, recipe Recipe, res *CoatResult, done int) []Batch {
	volume := float64(recipe.WetDensity.Fill(res.ToMix))
	if !(volume > 0) || !known(volume) {
		return nil
	}
	k := c.capacityOf(coat, recipe, *res)
	w := finding.Where{Field: "concrete.tub", Element: coat.Name}
	if !(k.tub > 0) || !known(k.tub) {
		c.say(tub.At(w, "A tub of %.1f l with %.0f %% left free holds nothing, so the coat %s is not split into batches.", c.in.Tub, 100*c.in.Freeboard, coat.Name))
		return nil
	}
	if k.hands < 0 || k.hands == 0 && res.Area > 0 {
		c.say(workable.At(finding.Where{Element: coat.Name}, "The mix of the coat %s works for %.0f min at %.0f C and takes %.0f min to mix: nothing is left to pack it, so hands are left out of its batches.", coat.Name, 60*c.lifeOf(coat.Mix), c.mixTemp(), 60*mixing(coat.Mix)).Measured(60*float64(c.lifeOf(coat.Mix)), 60*float64(mixing(coat.Mix)), "min"))
		k.hands = 0
	}
	res.TubHolds, res.MixerHolds, res.HandsPack = k.tub, k.mixer, k.hands
	most, by := k.least()
	res.Decided = by
	c.workableTub(w, coat, most, by, res.ToMix)
	n := math.Max(1, math.Ceil(float64(res.ToMix/most)-1e-9))
	if n > mostBatches {
		c.say(tub.At(w, "The coat %s of %.1f l would take %.0f batches of %.2f kg, which is what the %s allows.", coat.Name, volume, n, most, limitName(by)).Measured(n, mostBatches, "batches"))
		return nil
	}
	var out []Batch
	for i := range int(n) {
		b := Batch{Number: done + i + 1, Coat: coat.Name, Of: int(n), Volume: units.Volume(volume / n)}
		b.Parts, b.Mass = scale(recipe, res.ToMix/units.Mass(n))
		b.stageWater(coat.Mix)
		c.card(&b, coat)
		out = append(out, b)
	}
	c.weighable(coat, out[0])
	return out
}

func limitName(by string) string {
	if by == "hands" {
		return "pace of the hands"
	}
	return by
}

// workableTub says when tub or mixer hold less than can be mixed evenly, though the
// coat needs more.
func (c *computer) workableTub(w finding.Where, coat Coat, most units.Mass, by string, need units.Mass) {
	if most >= leastWorkable || need <= most {
		return
	}
	f := tubSmall.At(w, "A batch of the coat %s can weigh %.2f kg at most by the %s; less than %.0f kg does not mix evenly.", coat.Name, most, limitName(by), leastWorkable).Measured(float64(most), float64(leastWorkable), "kg")
	if by == "hands" {
		f.Remedy = "Cool the mix, take one of longer working life, or let more people pack."
	}
	c.say(f)
}

// usualScale is the step of a shop's scale. Chosen.
const usualScale units.Mass = 0.001

// finestShare is the share of a part that half a step may be. Chosen.
const finestShare = 0.02

// weighable says when a batch or its least part is too small for the scale.
func (c *computer) weighable(coat Coat, b Batch) {
	w := finding.Where{Element: coat.Name}
	if b.Mass < smallest {
		c.say(smallBatch.At(w, "A batch of the coat %s weighs %.3f kg, so its least part is a matter of grams.", coat.Name, b.Mass).Measured(float64(b.Mass), float64(smallest), "kg"))
	}
	step := c.in.Scale
	if !(step > 0) || !known(step) {
		step = usualScale
	}
	for _, p := range b.Parts {
		if p.Mass > 0 && float64(step/2/p.Mass) > finestShare {
			c.say(scaleStep.At(finding.Where{Field: "concrete.scale_step", Element: coat.Name}, "A batch of the coat %s takes %.1f g of %s; a scale that steps by %.1f g is off by up to %.0f %% there.", coat.Name, p.Mass.G(), p.Name, step.G(), 100*float64(step/2/p.Mass)).Measured(100*float64(step/2/p.Mass), 100*finestShare, "%"))
		}
	}
}

// scale returns the recipe's parts for a batch of mass m, each to the gram, and
// their sum, which is what the batch weighs. Pigment is to a tenth of a gram.
func scale(recipe Recipe, m units.Mass) ([]Part, units.Mass) {
	parts := make([]Part, len(recipe.Parts))
	tenths := 0.0
	for i, p := range recipe.Parts {
		g := math.Round(float64(p.Mass)/float64(recipe.WetDensity)*m.G()) * 10
		if p.Role == "pigment" {
			g = math.Round(float64(p.Mass) / float64(recipe.WetDensity) * m.G() * 10)
		}
		parts[i] = Part{Name: p.Name, Role: p.Role, Mass: units.Mass(g / 10000)}
		tenths += g
	}
	return parts, units.Mass(tenths / 10000)
}

// stageWater says how the batch's water goes in: four fifths first, then up to the
// recipe's, never above the limit
//
//	never = limit x base - water in emulsion, admixtures and sand
//
// base is the dry blend of a bagged mix, cement and pozzolan of one from scratch.
// Where the recipe itself is above the limit, the limit holds; where no limit is
// stated, the recipe's water is the limit. All to the gram, the limit rounded down.
func (b *Batch) stageWater(mix material.Mix) {
	water, base, hidden := b.water(mix)
	b.WaterNever = water
	if limit := mix.WaterMax.Value; limit > 0 && known(limit) && base > 0 {
		b.WaterNever = units.Mass(math.Max(0, math.Floor((limit*float64(base)-float64(hidden))*1000+1e-6)/1000))
	}
	b.WaterUpTo = min(water, b.WaterNever)
	b.WaterFirst = units.Mass(math.Round(waterFirst*b.WaterUpTo.G()) / 1000)
}

// water returns the water a batch adds, the mass its limit counts on, and the water
// that comes with its emulsion, admixtures and sand.
func (b *Batch) water(mix material.Mix) (water, base, hidden units.Mass) {
	for _, p := range b.Parts {
		if p.Role == "water" {
			water += p.Mass
			continue
		}
		hidden += p.Mass * units.Mass(waterIn(mix, p.Name))
		if counts(mix.Kind, p.Role) {
			base += p.Mass
		}
	}
	return water, base, hidden
}

// waterIn returns the share of water in what is weighed as the mix's ingredient of
// that name.
func waterIn(mix material.Mix, name string) float64 {
	for _, ing := range mix.Ingredients {
		if ing.Name != name {
			continue
		}
		switch ing.Role {
		case "polymer":
			return 1 - share(ing.Solids.Value, 1)
		case "plasticiser", "pigment":
			if ing.Solids.Value > 0 {
				return 1 - share(ing.Solids.Value, 1)
			}
		case "sand":
			m := share(ing.Moisture.Value, 1)
			return m / (1 + m)
		}
	}
	return 0
}

// counts reports whether water ratios of a mix of this kind count on parts of role.
func counts(kind material.MixKind, role string) bool {
	if kind == material.Bagged {
		return role == "blend"
	}
	return role == "cement" || role == "pozzolan"
}

// reserve keeps dry mix of the first coat back for patches.
func (c *computer) reserve(r *Result) {
	r.Reserve.Parts = []Part{}
	if len(c.in.Coats) == 0 || len(r.Recipes) == 0 {
		return
	}
	recipe, dry := r.Recipes[0], 0.0
	for _, p := range recipe.Parts {
		if isDry(p.Role) {
			dry += float64(p.Mass)
		}
	}
	keep := c.in.Patch
	if !(keep > 0) || !known(keep) {
		keep = usualPatch
	}
	if dry <= 0 {
		return
	}
	r.Reserve.Mix, r.Reserve.Dry = recipe.Mix, keep
	for _, p := range recipe.Parts {
		m := units.Mass(math.Round(float64(p.Mass)/dry*keep.G()*10) / 10000)
		if isDry(p.Role) {
			r.Reserve.Parts = append(r.Reserve.Parts, Part{p.Name, p.Role, m})
		} else if p.Role == "water" {
			r.Reserve.Water = m
		}
	}
}

const usualPatch units.Mass = 1 // kg of dry mix. Chosen: some pinholes and an edge

func isDry(role string) bool {
	switch role {
	case "cement", "pozzolan", "sand", "blend", "pigment":
		return true
	}
	return false
}

// sheetOf writes the order of addition in words.
func sheetOf(mix material.Mix) []Step {
	mins := func(v material.Value[units.Duration], usual units.Duration) float64 {
		return 60 * float64(stated(v, usual))
	}
	texts := []string{
		"Weigh every dry part, and the pigment of each batch by itself, before the first water is poured. Keep the reserve for patches aside.",
		"Into the tub: four fifths of the water, emulsion, plasticiser, pigment. Mix until the pigment shows no streaks.",
		fmt.Sprintf("Add the dry parts slowly while mixing; then mix %.0f min.", mins(mix.MixTime, usualMix)),
		"Let it stand 2 min, then add water in small steps up to the recipe's. Never above the limit: thin with plasticiser instead.",
		fmt.Sprintf("Fibre last, at low speed, only until it is spread: %.1f min at most.", mins(mix.FibreTime, usualFibre)),
		"Test its flow, write down the time, pack.",
	}
	out := make([]Step, len(texts))
	for i, t := range texts {
		out[i] = Step{i + 1, t}
	}
	return out
}
