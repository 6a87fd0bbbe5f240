package resin

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/stage/resin/kinetics"
	"pourwright/internal/units"
)

// Stirring a bucket: three minutes, and one more a litre, before it is poured over into
// a clean one and stirred for another minute. Common practice, no source; the data sheet
// decides.
const (
	stirLeast   units.Duration = 3.0 / 60
	stirALitre  units.Duration = 1.0 / 60
	stirLongest units.Duration = 10.0 / 60
)

// stirred is how long a bucket of v is stirred.
func stirred(v units.Volume) units.Duration {
	return min(stirLeast+units.Duration(max(v, 0))*stirALitre, stirLongest)
}

// keeps returns how long resin of tempC can be poured from a bucket that loses no heat,
// h: until a cure of potCure. No real bucket thickens sooner. It is 0 where the card
// does not say.
//
//	da/dt = rate(a, T),  T as the heat of a warms it
func keeps(m kinetics.Model, tempC float64) units.Duration {
	const steps = 300
	hours, h := 0.0, potCure/steps
	for i := range steps {
		a := (float64(i) + 0.5) * h
		r := m.Rate(a, warmed(tempC, m.HJKG*a))
		if !(r > 0) {
			return 0
		}
		hours += h / r / 3600
	}
	return units.Duration(hours)
}

// pouring returns the temperature of the resin as poured, C.
func (c *computer) pouring() float64 { return (&hearth{in: c.in}).pouring() }

// vessels adds what the hands need beside the buckets' weights: room for stirring, how
// long, and how soon each must be in the basin.
func (c *computer) vessels(r *Result) {
	keep := units.Duration(0)
	m, why := modelOf(c.in.Card)
	if why == "" {
		keep = keeps(m, c.pouring())
	}
	told := false
	for i := range r.Lifts {
		l := &r.Lifts[i]
		if i+1 == len(r.Lifts) {
			l.HoldBack = l.Volume / r.Volume * r.Shrink
		}
		for k := range l.Batches {
			b := &l.Batches[k]
			b.Stir, b.Keeps = stirred(b.Volume), keep
			if c.in.Bucket > 0 {
				b.Free = units.Fraction(1 - b.Volume/c.in.Bucket)
			}
			need := mixing + units.Duration(b.Pulls)*pulling
			if keep > 0 && need > keep && !told {
				told = true
				c.say(hotBucket.At(finding.Where{Element: fmt.Sprintf("lift %d", l.Number)}, "A bucket of %.1f l of %s at %.0f C, from mixing to pouring %.0f min, thickens in %.0f min where it keeps its heat.",
					b.Volume, c.in.Card.Name, c.pouring(), 60*need, 60*keep).Measured(float64(60*need), float64(60*keep), "min"))
			}
		}
	}
}
