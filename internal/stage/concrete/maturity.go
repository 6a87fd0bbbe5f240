package concrete

import (
	"math"

	"pourwright/internal/units"
)

// Activation is the Arrhenius temperature Q of a cement's setting, kelvin.
// Range 4000 (EN 1992-1-1 B.10) to 5000 (ASTM C1074, type I without admixtures).
const Activation = 5000.0

const kelvin = 273.15

// AgeFactor returns how many hours at ref one hour at t is worth, for activation
// temperature q in kelvin:
//
//	f = exp(-q (1/(t + 273.15) - 1/(ref + 273.15)))
//
// It is 1 at ref, more when warmer. At or below -10 C, where mixes stop hardening,
// it is 0. Source: [astm-c1074].
func AgeFactor(t, ref units.Temperature, q float64) float64 {
	if t <= -10 {
		return 0
	}
	return math.Exp(-q * (1/(float64(t)+kelvin) - 1/(float64(ref)+kelvin)))
}

// ENAgeFactor returns how many hours at 20 C one hour at t is worth by EN 1992-1-1:
//
//	f = exp(13.65 - 4000/(273 + t))
//
// for 0 to 80 C; at or below -10 C it is 0. At 20 C it is 0.998, as the standard's
// rounding has it. Source: [en-1992] B.10.
func ENAgeFactor(t units.Temperature) float64 {
	if t <= -10 {
		return 0
	}
	return math.Exp(13.65 - 4000/(273+float64(t)))
}

// At returns how long a wait of d, stated for ref, takes in a room at t, with
// Activation. A room too cold to harden gives a week, the longest wait planned.
func At(d units.Duration, t, ref units.Temperature) units.Duration {
	const week = 7 * units.Day
	f := AgeFactor(t, ref, Activation)
	if f <= 0 {
		return week
	}
	return min(d/units.Duration(f), week)
}

// A Stretch is a time at one temperature.
type Stretch struct {
	Time units.Duration    `json:"time_h"`
	Temp units.Temperature `json:"temp_c"`
}

// Maturity returns the Nurse-Saul temperature-time factor, C h, with datum
// temperature t0; stretches below the datum count nothing. Source: [astm-c1074].
func Maturity(history []Stretch, t0 units.Temperature) float64 {
	sum := 0.0
	for _, s := range history {
		sum += math.Max(0, float64(s.Temp-t0)) * float64(s.Time)
	}
	return sum
}

// EquivalentAge returns the hours at ref that harden as much as history.
// Source: [astm-c1074].
func EquivalentAge(history []Stretch, ref units.Temperature, q float64) units.Duration {
	sum := 0.0
	for _, s := range history {
		sum += AgeFactor(s.Temp, ref, q) * float64(s.Time)
	}
	return units.Duration(sum)
}
