package resin

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/stage/resin/kinetics"
)

// Cures that casting resins have. Chosen: wider than any of the trade.
const (
	leastHeat, mostHeat = 100.0, 600.0     // kJ/kg
	leastTg, mostTg     = 25.0, 200.0      // C
	soonestGel          = 60.0             // s, of a film at 25 C
	latestGel           = 60 * 24 * 3600.0 // s
	apartPot            = 2.5              // factor between the pot life stated and the one that the rate gives
)

// modelOf returns the cure of a card, or why there is none.
func modelOf(card material.Resin) (kinetics.Model, string) {
	if !(card.K25.Value > 0) || !(card.Heat.Value > 0) || !known(card.Tg1.Value) || card.Tg1.Value == 0 {
		return kinetics.Model{}, "since its card states no rate, heat or glass transition; fit them from the data sheet with: pourwright shelf fit FILE"
	}
	m := kinetics.Typical(card.K25.Value, card.Heat.Value*1000, float64(card.Tg1.Value))
	if v := card.RateRatio.Value; v > 0 {
		m.R = v
	}
	if v := card.Activation.Value; v > 0 {
		m.EJMol = v * 1000
	}
	m.RhoKGM3 = float64(assumedDensity)
	if plausible(card.Density.Value) {
		m.RhoKGM3 = float64(card.Density.Value)
	}
	return m, ""
}

// checkCure says where a card's cure is none that resins have, and where its rate and
// its pot life are those of two resins: the rate decides peak and times.
func (c *computer) checkCure() {
	card := c.in.Card
	m, why := modelOf(card)
	if why != "" {
		return
	}
	at := finding.Where{Element: card.Name}
	m.NoSlowing = true
	gel := m.IsothermalTime(kinetics.Gel, float64(cupTemp))
	switch {
	case !inside(card.Heat.Value, leastHeat, mostHeat):
		c.say(unlikely.At(at, "The heat of reaction of %s is %.0f kJ/kg; casting resins have %.0f to %.0f.", card.Name, card.Heat.Value, leastHeat, mostHeat).
			Measured(card.Heat.Value, math.Max(leastHeat, math.Min(mostHeat, card.Heat.Value)), "kJ/kg"))
	case !inside(float64(card.Tg1.Value), leastTg, mostTg):
		c.say(unlikely.At(at, "The glass transition of %s is %.0f C; casting resins have %.0f to %.0f C.", card.Name, card.Tg1.Value, leastTg, mostTg).
			Measured(float64(card.Tg1.Value), math.Max(leastTg, math.Min(mostTg, float64(card.Tg1.Value))), "C"))
	case !inside(gel, soonestGel, latestGel):
		c.say(unlikely.At(at, "At its rate of %.3g /s a film of %s gels in %.3g h at 25 C; casting resins take a minute to %.0f days.", card.K25.Value, card.Name, gel/3600, latestGel/86400).
			Measured(gel/3600, math.Max(soonestGel, math.Min(latestGel, gel))/3600, "h"))
	}
	stated, computed := float64(card.PotLife.Value), m.IsothermalTime(potCure, float64(cupTemp))/3600
	if stated > 0 && known(stated) && !inside(stated/computed, 1/apartPot, apartPot) {
		c.say(rateClash.At(at, "The card of %s states a pot life of %.2f h, and its rate gives %.2f h: the cure is computed from the rate.", card.Name, stated, computed).Measured(stated, computed, "h"))
	}
}

func inside(v, low, high float64) bool { return v >= low && v <= high }
