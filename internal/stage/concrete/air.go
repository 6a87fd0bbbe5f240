package concrete

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Evaporation returns the water that leaves a fresh face, kg/m2h:
//
//	E = 5 [(Tc + 18)^2.5 - r (Ta + 18)^2.5] (V + 4) 1e-6
//
// Tc concrete and Ta air in C, r relative humidity from 0 to 1, V air speed in km/h.
// It is 0 where dew falls, and below -18 C. Source: [uno-1998].
func Evaporation(concrete, air units.Temperature, humidity units.Fraction, speed float64) float64 {
	power := func(t units.Temperature) float64 { return math.Pow(math.Max(0, float64(t)+18), 2.5) }
	e := 5 * (power(concrete) - float64(humidity)*power(air)) * (math.Max(0, speed) + 4) * 1e-6
	return math.Max(0, e)
}

// DewPoint returns the temperature at which air of temperature t and humidity r drops
// its water, by Magnus with 17.62 and 243.12 C. Humidity is held above 1 %.
// Source: [magnus].
func DewPoint(t units.Temperature, humidity units.Fraction) units.Temperature {
	const a, b = 17.62, 243.12
	g := math.Log(math.Max(0.01, math.Min(1, float64(humidity)))) + a*float64(t)/(b+float64(t))
	return units.Temperature(b * g / (a - g))
}

const (
	lowBleed      = 0.5 // kg/m2h, limit for mixes that hardly bleed. Source: [uno-1998]
	anyMix        = 1.0
	usualHumidity = units.Fraction(0.5)
	dewMargin     = units.Temperature(3) // Source: [practice]
	slightest     = 0.2                  // kg/m2h; Chosen: below, no caution beyond the film
)

// air says what the shop's air does to the first coat.
func (c *computer) air() Air {
	t := c.climateNow.mean(0, 1)
	a := Air{Humidity: c.in.Humidity, Mix: c.mixTemp(), Draught: math.Max(0, c.in.Draught), Limit: lowBleed}
	if !known(a.Draught) {
		a.Draught = 0
	}
	if !(a.Humidity > 0) || a.Humidity > 1 {
		a.Humidity, a.Assumed = usualHumidity, true
	}
	a.Evaporation = Evaporation(a.Mix, t, a.Humidity, a.Draught)
	a.DewPoint = DewPoint(t, a.Humidity)
	a.Coldest = a.DewPoint + dewMargin
	switch {
	case a.Evaporation >= lowBleed:
		a.Risk = "too fast: still air, damp the air, cool the mix, cover each zone at once"
		limit := lowBleed
		if a.Evaporation >= anyMix {
			limit = anyMix
		}
		c.say(crazing.At(finding.Where{Field: "room"}, "A fresh face loses %.2f kg/m2 of water an hour at %.0f C, %.0f %% humidity and %.1f km/h of air; above %.1f it crazes.", a.Evaporation, t, 100*a.Humidity, a.Draught, limit).Measured(a.Evaporation, limit, "kg/m2h"))
	case a.Evaporation >= slightest:
		a.Risk = "some: cover each zone as soon as it is packed"
	default:
		a.Risk = "low: cover with film at the end"
	}
	return a
}

// mixTemp returns the temperature of the mix: as stated, else the shop's when casting
// begins.
func (c *computer) mixTemp() units.Temperature {
	if c.in.HasMix && c.in.MixTemp > 0 && c.in.MixTemp <= hottest {
		return c.in.MixTemp
	}
	return c.climateNow.mean(0, 1)
}
