package concrete

import (
	"math"
	"slices"

	"pourwright/internal/material"
	"pourwright/internal/units"
)

// Minutes of mixing where the card states none. Common practice, no source.
const (
	usualMix   units.Duration = 5.0 / 60
	usualFibre units.Duration = 1.5 / 60
	standing   units.Duration = 2.0 / 60 // rest before the last water
	handling   units.Duration = 0.25     // weigh, mix and clean between two batches
)

// hasFibre reports whether any part of the mix is fibre.
func hasFibre(mix material.Mix) bool {
	return slices.ContainsFunc(mix.Ingredients, func(p material.Ingredient) bool {
		return p.Role == "fibre" && (p.Parts.Value > 0 || p.Share.Value > 0)
	})
}

// mixing returns how long it takes from the first water to the first trowel.
func mixing(mix material.Mix) units.Duration {
	d := stated(mix.MixTime, usualMix) + standing
	if hasFibre(mix) {
		d += stated(mix.FibreTime, usualFibre)
	}
	return d
}

// order is how roles go into the tub after the first water: liquids and pigment, then
// the dry parts. Fibre comes last, after the rest of the water. Common practice of
// the trade, no source.
var order = [][]string{{"polymer"}, {"plasticiser"}, {"pigment"}, {"blend"}, {"cement"}, {"pozzolan"}, {"sand"}}

// card fills in what the batch's card says beside its parts.
func (c *computer) card(b *Batch, coat Coat) {
	mix := coat.Mix
	b.additions()
	b.Minutes = 60 * float64(stated(mix.MixTime, usualMix))
	if hasFibre(mix) {
		b.FibreMins = 60 * float64(stated(mix.FibreTime, usualFibre))
	}
	b.Flow = mix.Flow.Value
	b.Consistency = "Like thick paint: covers a trowel, runs off slowly, does not separate."
	if hasFibre(mix) {
		b.Consistency = "Stiff: a handful keeps its shape on an upright face and does not slump when tapped."
	}
	b.Cautions = []string{
		"Dry cement, sand and pigment: fitted respirator, no sweeping. Fresh mix is caustic: gloves, goggles, long sleeves; rinse at once.",
		"Too stiff: a little more plasticiser, never more water than the limit. Past its working life: throw it away, never thin it with water.",
	}
}

// additions lists what goes into the tub in the order of mixing, with the reading of a
// scale that is never set back, and the reading that the water must not carry it past.
func (b *Batch) additions() {
	sum := 0.0
	b.Steps = []Addition{}
	add := func(what, role, how string, grams float64) {
		if grams > 0 {
			sum += grams
			b.Steps = append(b.Steps, Addition{what, role, how, units.Mass(grams / 1000), units.Mass(sum / 1000)})
		}
	}
	water, first := math.Round(b.WaterUpTo.G()), math.Round(b.WaterFirst.G())
	add("water", "water", "the first four fifths", first)
	for _, roles := range order {
		b.eachPart(func(p Part) bool { return slices.Contains(roles, p.Role) }, func(p Part) {
			how := ""
			if p.Role == "pigment" {
				how = "weighed beforehand, the same in every batch"
			}
			add(p.Name, p.Role, how, round10(p.Mass))
		})
	}
	b.eachPart(func(p Part) bool { return !ordered(p.Role) }, func(p Part) { add(p.Name, p.Role, "", round10(p.Mass)) })
	add("water, the rest", "water", "in small steps, up to this reading and no more than the mix needs", water-first)
	b.ScaleNever = units.Mass((sum + math.Round(b.WaterNever.G()) - water) / 1000)
	b.eachPart(func(p Part) bool { return p.Role == "fibre" }, func(p Part) {
		add(p.Name, p.Role, "last, at low speed, only until it is spread", round10(p.Mass))
	})
}

// round10 returns a mass in grams to a tenth.
func round10(m units.Mass) float64 { return math.Round(m.G()*10) / 10 }

func ordered(role string) bool {
	return role == "water" || role == "fibre" || slices.ContainsFunc(order, func(roles []string) bool { return slices.Contains(roles, role) })
}

func (b *Batch) eachPart(is func(Part) bool, do func(Part)) {
	for _, p := range b.Parts {
		if is(p) {
			do(p)
		}
	}
}
