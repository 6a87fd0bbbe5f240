package concrete

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// gain is a cement's gain of strength: a and b of ACI 209 with t in days, s of
// EN 1992-1-1.
type gain struct{ a, b, s float64 }

// gains by class of cement: R rapid, N normal, S slow. ACI's type III stands beside R,
// type I beside N and S. Source: [aci-209], [en-1992], from memory.
var gains = map[string]gain{"R": {2.30, 0.92, 0.20}, "N": {4.0, 0.85, 0.25}, "S": {4.0, 0.85, 0.38}}

func gainOf(class string) gain {
	if g, ok := gains[class]; ok {
		return g
	}
	return gains["N"]
}

// aci returns the share of the strength of 28 days at an age in days:
//
//	f = t/(a + b t)
//
// 0 at and before 0. Source: [aci-209].
func (g gain) aci(days float64) float64 {
	if !(days > 0) {
		return 0
	}
	return days / (g.a + g.b*days)
}

// en returns the same by EN 1992-1-1 3.1.2: f = exp(s (1 - sqrt(28/t))).
func (g gain) en(days float64) float64 {
	if !(days > 0) {
		return 0
	}
	return math.Exp(g.s * (1 - math.Sqrt(28/days)))
}

// aciAge returns the age in days at which share f is reached; +Inf above 1/b.
func (g gain) aciAge(f float64) float64 {
	if f*g.b >= 1 {
		return math.Inf(1)
	}
	return math.Max(0, f*g.a/(1-f*g.b))
}

// enAge returns the age in days at which share f is reached; +Inf from exp(s) on.
func (g gain) enAge(f float64) float64 {
	if !(f > 0) {
		return 0
	}
	root := 1 - math.Log(f)/g.s
	if root <= 0 {
		return math.Inf(1)
	}
	return 28 / (root * root)
}

var doing = map[string]string{"demould": "stripping the form", "flip": "turning it over", "work": "grinding and drilling"}

// Strengths in compression that steps of the work need, MPa, and that of the mix at
// 28 days. Chosen: a thin shell is stripped at a quarter of its strength, turned over
// in its form at a third and ground at half.
const (
	needDemould = 10.0
	needFlip    = 15.0
	needWork    = 25.0
	usual28     = 50.0 // Source: [gfrc-guides] premix 40 to 60
)

// strengths says when the weakest coat is strong enough, in hours after the last coat.
func (c *computer) strengths(end units.Duration) []Strength {
	out := []Strength{}
	for _, need := range []struct {
		step        string
		mpa, usual_ float64
	}{{"demould", c.in.Needs.Demould, needDemould}, {"flip", c.in.Needs.Flip, needFlip}, {"work", c.in.Needs.Work, needWork}} {
		if !(need.mpa > 0) || !known(need.mpa) {
			need.mpa = need.usual_
		}
		var worst Strength
		for i, coat := range c.in.Coats {
			if s := c.strength(coat, need.mpa, end); i == 0 || s.Planned > worst.Planned {
				worst = s
			}
		}
		worst.For, worst.Need = need.step, need.mpa
		if worst.Planned >= longestWait {
			c.say(weak.At(finding.Where{Element: worst.Coat}, "The coat %s takes a week or more to reach the %.0f MPa that %s needs in this shop.", worst.Coat, need.mpa, doing[need.step]).Measured(worst.At28, need.mpa, "MPa"))
		}
		out = append(out, worst)
	}
	return out
}

// strength ages ACI's curve by the later of the two models, EN's by its own factor.
func (c *computer) strength(coat Coat, need float64, end units.Duration) Strength {
	g, m := gainOf(coat.Mix.Cement), modelsOf(coat.Mix)
	f28 := coat.Mix.Strength.Value
	if !(f28 > 0) || !known(f28) {
		f28 = usual28
	}
	factor, n := calibrate(c.in.Records, g, m, f28)
	s := Strength{Coat: coat.Name, Factor: factor, At28: f28 * factor, Basis: "the card's strength at 28 days and two curves, poor below a day"}
	if n > 0 {
		s.Basis = "the curves set to the shop's own tests"
	}
	f := need / (f28 * factor)
	later := func(days float64, rate func(units.Temperature) float64) units.Duration {
		if math.IsInf(days, 1) {
			return longestWait
		}
		return c.climateNow.wait(end, units.Duration(days)*units.Day, rate)
	}
	aci := g.aciAge(f)
	s.ACI, s.EN = max(later(aci, m.arrhenius), later(aci, m.nurse)), later(g.enAge(f), ENAgeFactor)
	s.Planned = max(s.ACI, s.EN)
	return s
}

// calibrate returns the factor that brings the mean of both curves nearest to the
// shop's tests in least squares, and how many tests counted:
//
//	k = sum(m y)/sum(m m),  m modelled, y tested
//
// It is held between a third and three.
func calibrate(records []Record, g gain, m models, f28 float64) (factor float64, n int) {
	var my, mm float64
	for _, r := range records {
		if !(r.Age > 0) || !(r.Strength > 0) || !known(r.Age) || !known(r.Strength) || !(r.Temperature > coldest && r.Temperature < hottest) {
			continue
		}
		days := float64(r.Age/units.Day) * m.arrhenius(r.Temperature)
		model := f28 * (g.aci(days) + g.en(days)) / 2
		my, mm, n = my+model*r.Strength, mm+model*model, n+1
	}
	if n == 0 || mm == 0 {
		return 1, 0
	}
	return math.Max(1.0/3, math.Min(3, my/mm)), n
}
