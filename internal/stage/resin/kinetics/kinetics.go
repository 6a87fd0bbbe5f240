// Package kinetics is how a casting resin cures: its rate of reaction, the heat that
// sets free, and what it is like at a degree of cure. It knows no shapes and no time
// steps.
package kinetics

import "math"

const (
	gasConst = 8.314462618 // J/(mol K)
	kelvin   = 273.15
)

// A Model is one resin.
//
//	da/dt = fd (k1 + k2 a^m)(1 - a)^n,  k1 = R k2
//	k2(T) = K25 exp(E/R (1/298.15 - 1/T))
//	fd    = 1/(1 + exp((Tg(a) - T - 12)/7))
//	Tg(a) = Tg0 + (Tg1 - Tg0) L a/(1 - (1 - L) a)
//
// a is the degree of cure, 0 to 1, T in K, Tg in C.
// Source: [kamal-sourour], [dibenedetto], [chern-poehlein].
type Model struct {
	K25       float64 // 1/s, k2 at 25 C
	R         float64 // k1/k2
	M, N      float64
	EJMol     float64
	HJKG      float64 // heat of reaction
	Tg0C      float64
	Tg1C      float64
	Lambda    float64
	RhoKGM3   float64
	KWMK      float64
	NoSlowing bool // fd 1: for comparison with closed forms
}

// Typical returns the model of the generic resins of this program's shelf with the
// given rate, heat and final glass transition. Source: [resin-presets].
func Typical(k25, hJKG, tg1C float64) Model {
	return Model{K25: k25, R: 0.2, M: 1, N: 2, EJMol: 55e3, HJKG: hJKG, Tg0C: -45, Tg1C: tg1C, Lambda: 0.4, RhoKGM3: 1100, KWMK: 0.2}
}

// HeatOfReaction returns the heat, J/kg of the mix, of an epoxy of eewG grams to an
// equivalent with so much hardener to a kilogram of resin: Q / (EEW (1 + B/A)), Q about
// 100 kJ an equivalent (98 to 108). It is 0 where either is not positive. Source:
// [epoxy-heat].
func HeatOfReaction(eewG, hardenerPerResin float64) float64 {
	if !(eewG > 0) || !(hardenerPerResin > 0) {
		return 0
	}
	return 100e3 / (eewG / 1000 * (1 + hardenerPerResin))
}

// The heat capacity of a resin, J/(kg K), is HeatCapacity at 25 C and HeatCapacityRise more
// with every K. Source: [epoxy-properties].
const (
	HeatCapacity     = 1850.0
	HeatCapacityRise = 3.0
)

// Rate returns da/dt, 1/s, at a and tempC. It is 0 at and above full cure and never
// negative.
func (m Model) Rate(a, tempC float64) float64 {
	if a >= 1 {
		return 0
	}
	a = max(a, 0)
	am := a
	if m.M != 1 {
		am = math.Pow(a, m.M)
	}
	left := 1 - a
	ln := left * left
	if m.N != 2 {
		ln = math.Pow(left, m.N)
	}
	r := m.Speed(tempC) * (m.R + am) * ln
	if m.NoSlowing {
		return r
	}
	return r / (1 + math.Exp((m.Tg(a)-tempC-12)/7))
}

// Speed returns k2 at tempC, 1/s.
func (m Model) Speed(tempC float64) float64 {
	return m.K25 * math.Exp(m.EJMol/gasConst*(1/298.15-1/(tempC+kelvin)))
}

// Tg returns the glass transition at a, C.
func (m Model) Tg(a float64) float64 {
	return m.Tg0C + (m.Tg1C-m.Tg0C)*m.Lambda*a/(1-(1-m.Lambda)*a)
}

// Degrees of cure at which the resin changes for the hands.
const (
	Gel       = 0.55 // it no longer flows. Flory-Stockmayer .447 to .577. Source: [flory-stockmayer]
	TackFree  = 0.68 // .65 to .70, from memory
	NoBond    = 0.80 // above it the next lift does not bond by itself, from memory
	leastHard = 0.60 // least cure of hard resin, from memory
)

// Bonds reports whether a surface has gelled and still bonds chemically with a new lift.
func Bonds(a float64) bool { return a >= Gel && a < NoBond }

// Hard reports whether the resin is hard at tempC: a >= .6 and Tg >= T - 2, from memory.
func (m Model) Hard(a, tempC float64) bool { return a >= leastHard && m.Tg(a) >= tempC-2 }

// Sandable reports whether it can be sanded dry: Tg at least 40 C, or within 12 K of
// what it can reach. From memory.
func (m Model) Sandable(a float64) bool { return m.Tg(a) >= min(40, m.Tg1C-8) }

// IsothermalTime returns the time in s to reach a at tempC without slowing, for m 1 and
// n 2, in closed form:
//
//	t = (1/k2) ( ln((r+a)/(r(1-a)))/(1+r)^2 + (a/(1-a))/(1+r) )
func (m Model) IsothermalTime(a, tempC float64) float64 {
	r := m.R
	return (math.Log((r+a)/(r*(1-a)))/((1+r)*(1+r)) + a/(1-a)/(1+r)) / m.Speed(tempC)
}

// FilmTime returns the time in s that a thin film at tempC takes to reach a, slowing
// included: Simpson's rule over da / rate. It is +Inf where the rate dies away first.
func (m Model) FilmTime(a, tempC float64) float64 {
	const n = 400
	h := a / n
	sum := 0.0
	for i := range n + 1 {
		r := m.Rate(float64(i)*h, tempC)
		if !(r > 0) {
			return math.Inf(1)
		}
		w := 2.0
		switch {
		case i == 0 || i == n:
			w = 1
		case i%2 == 1:
			w = 4
		}
		sum += w / r
	}
	return sum * h / 3
}
