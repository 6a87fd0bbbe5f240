package resin

import (
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Compute splits the basin into lifts and says what to weigh. Net volumes (volume_l)
// add up to the basin; pour_l is what goes into the buckets: net plus the lift's
// shrink and film, and the overfill on the last. A and B weigh what pour_l weighs.
func Compute(in Input) (Result, []finding.Finding) {
	r := Result{Resin: in.Card.Name, Lifts: []Lift{}}
	c := &computer{in: in}
	if n := len(in.Fill); n < 2 || !(in.Fill[n-1].Volume > 0) || !(in.Fill[n-1].Depth > 0) {
		return r, []finding.Finding{noBasin.At(finding.Where{}, "There is no basin to fill.")}
	}
	top := in.Fill[len(in.Fill)-1]
	r.Volume = top.Volume
	shrink := math.Min(0.2, math.Max(0, float64(in.Card.Shrinkage.Value)))
	r.Shrink = r.Volume * units.Volume(shrink)
	r.Overfill = in.TopArea.Times(max(0, in.Overfill))
	r.Film = in.Wetted.Times(max(0, in.Film))
	subtotal := r.Volume + r.Shrink + r.Overfill + r.Film
	r.Reserve = subtotal * units.Volume(math.Max(0, float64(in.Reserve)))
	r.Order = subtotal + r.Reserve
	density := c.density()
	r.OrderKG, r.OrderUS, r.OrderImp = density.Of(r.Order), r.Order.USGal(), r.Order.ImperialGal()
	bPerA := c.bPerA()
	r.AToB = 100 * bPerA
	levels := c.levels(top.Depth)
	for i := 1; i < len(levels); i++ {
		r.Lifts = append(r.Lifts, c.lift(i, levels, r, density, bPerA, i == len(levels)-1))
	}
	c.shallows()
	c.say(noCure.At(finding.Where{}, "This version does not compute the cure: peak temperature and times of %s are not known.", in.Card.Name))
	return r, c.found
}

type computer struct {
	in    Input
	found []finding.Finding
}

func (c *computer) say(f finding.Finding) { c.found = append(c.found, f) }

const assumedDensity units.Density = 1100 // kg/m3, mixed epoxy, 1080 to 1130. Source: [epoxy-properties]

// density returns the density of the mixed resin.
func (c *computer) density() units.Density {
	if d := c.in.Card.Density.Value; d > 500 && d < 3000 {
		return d
	}
	c.say(noDensity.At(finding.Where{}, "The card of %s states no usable density, so %.0f kg/m3 is assumed.", c.in.Card.Name, assumedDensity))
	return assumedDensity
}

// bPerA returns the mass of B for one mass of A:
//
//	by volume:  (b/a) (rhoB/rhoA)      by mass:  b/a
func (c *computer) bPerA() float64 {
	card := c.in.Card
	ratio := card.RatioB.Value / card.RatioA.Value
	if !(ratio > 0 && ratio < 100) {
		c.say(noRatio.At(finding.Where{}, "The card of %s states a ratio of %g to %g.", card.Name, card.RatioA.Value, card.RatioB.Value))
		return 0
	}
	if card.ByMass {
		return ratio
	}
	k := float64(card.DensityB.Value / card.DensityA.Value)
	if !(k > 0.3 && k < 3) {
		c.say(noParts.At(finding.Where{}, "The densities of parts A and B of %s are %.0f and %.0f kg/m3, so equal densities are assumed.", card.Name, card.DensityA.Value, card.DensityB.Value))
		return ratio
	}
	return ratio * k
}

// lift works out lift i of the levels.
func (c *computer) lift(i int, levels []float64, r Result, density units.Density, bPerA float64, last bool) Lift {
	from, to := units.Length(levels[i-1]), units.Length(levels[i])
	l := Lift{Number: i, From: from, To: to, Depth: to - from, Volume: c.volumeAt(to) - c.volumeAt(from), Batches: []Bucket{}}
	share := l.Volume / r.Volume
	l.Pour = l.Volume + share*(r.Shrink+r.Film)
	if last {
		l.Pour += r.Overfill
	}
	l.Mass = density.Of(l.Pour)
	l.A = l.Mass / units.Mass(1+bPerA)
	l.B = l.Mass - l.A
	if !last {
		l.Wait = c.wait()
	} else {
		l.Wait = max(c.in.Card.Hard.Value, c.wait())
	}
	room := float64(c.in.Bucket) * (1 - float64(c.in.Freeboard))
	n := math.Ceil(float64(l.Pour)/room - 1e-9)
	if !(room > 0) || n > 20 {
		c.say(bucket.At(finding.Where{Element: fmt.Sprintf("lift %d", i)}, "Lift %d of %.2f l does not go into sensibly few buckets of %.1f l with %.0f %% left free.", i, l.Pour, c.in.Bucket, 100*c.in.Freeboard))
		return l
	}
	for k := range int(n) {
		b := Bucket{Number: k + 1, Volume: l.Pour / units.Volume(n), A: l.A / units.Mass(n), B: l.B / units.Mass(n)}
		b.ScaleA, b.ScaleAB = b.A, b.A+b.B
		l.Batches = append(l.Batches, b)
	}
	return l
}

// wait returns how long a lift stands before the next: until the film has gelled, by
// the card; 24 h where it says nothing.
func (c *computer) wait() units.Duration {
	if w := c.in.Card.Gel.Value; w > 0 {
		return w
	}
	return 24
}

// volumeAt returns the litres up to depth d above the deepest floor.
func (c *computer) volumeAt(d units.Length) units.Volume {
	for i := 1; i < len(c.in.Fill); i++ {
		a, b := c.in.Fill[i-1], c.in.Fill[i]
		if d <= b.Depth || i == len(c.in.Fill)-1 {
			if b.Depth == a.Depth {
				return b.Volume
			}
			return a.Volume + (b.Volume-a.Volume)*units.Volume((d-a.Depth)/(b.Depth-a.Depth))
		}
	}
	return 0
}

// shallows says which terraces are thinner than the resin wants.
func (c *computer) shallows() {
	top := c.in.Fill[len(c.in.Fill)-1].Depth
	for _, f := range c.in.Fill[1 : len(c.in.Fill)-1] {
		if over := top - f.Depth; over < c.in.Card.MinDepth.Value {
			c.say(shallow.At(finding.Where{}, "Over the terrace %.1f mm above the deepest floor only %.1f mm of resin stand, under the %.1f mm that %s wants.", f.Depth, over, c.in.Card.MinDepth.Value, c.in.Card.Name).
				Measured(float64(over), float64(c.in.Card.MinDepth.Value), "mm"))
		}
	}
}
