package resin

import (
	"context"
	"fmt"
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Compute splits the basin into lifts and says what to weigh. It does not change in.
// Without a basin there is no result but a finding.
//
// Net volumes (volume_l) add up to the basin; pour_l is what goes into the buckets,
// and A and B weigh what pour_l weighs. All pours together are the order without its
// reserve.
func Compute(in Input) (Result, []finding.Finding) {
	return Run(context.Background(), in, nil)
}

// Run is Compute that can be stopped by ctx and tells how far it is.
func Run(ctx context.Context, in Input, report func(share float64, doing string)) (Result, []finding.Finding) {
	r := Result{Resin: in.Card.Name, Lifts: []Lift{}, Alternatives: []Alternative{}, Shades: []Shade{}, Bubbles: []Bubble{}, Stick: []Mark{}, Cautions: []string{}, Cure: noneCured()}
	c := &computer{in: in}
	c.in.Fill = c.checkedFill(in.Fill)
	if len(c.in.Fill) < 2 {
		c.say(noBasin.At(finding.Where{}, "There is no basin to fill."))
		return r, c.found
	}
	c.checkRoom()
	c.checkCure()
	density, bPerA := c.density(), c.bPerA()
	c.order(&r, density, bPerA)
	levels := c.cured(ctx, &r, report)
	for i := 1; i < len(levels); i++ {
		r.Lifts = append(r.Lifts, c.lift(i, levels))
	}
	c.pours(&r, density, bPerA)
	c.practice(&r, density)
	c.vessels(&r)
	c.waits(&r)
	r.Stick, r.Cautions = c.stick(&r), c.cautions(&r)
	c.thinPlaces(levels)
	c.ratioSlip(bPerA)
	return r, c.found
}

// cured returns the levels of the lifts: by the cure where that can be computed, by the
// card's depth range otherwise.
func (c *computer) cured(ctx context.Context, r *Result, report func(float64, string)) []float64 {
	o, why := newOven(c.in)
	if o == nil {
		c.say(noCure.At(finding.Where{}, "The cure of %s was not computed, %s: its peak temperature is not known, and the waits are those of small masses.", c.in.Card.Name, why))
		return c.levels(c.top().Depth)
	}
	if levels := c.cure(ctx, r, o, report); levels != nil {
		return levels
	}
	return c.levels(c.top().Depth)
}

type computer struct {
	in    Input
	found []finding.Finding
}

func (c *computer) say(f finding.Finding) { c.found = append(c.found, f) }

// top returns the last point of the fill curve: the rim.
func (c *computer) top() FillPoint { return c.in.Fill[len(c.in.Fill)-1] }

// known reports whether v is a number that can be worked with.
func known[Q ~float64](v Q) bool { return !math.IsNaN(float64(v)) && !math.IsInf(float64(v), 0) }

// atLeastZero returns v, or 0 where it is negative or no number.
func atLeastZero[Q ~float64](v Q) Q {
	if !known(v) || v < 0 {
		return 0
	}
	return v
}

const mostShrink units.Fraction = 0.2 // Chosen: above this it is a slip; resins shrink 2 to 5 %

// order adds up what to buy.
func (c *computer) order(r *Result, density units.Density, bPerA float64) {
	in := c.in
	r.Volume = c.top().Volume
	r.Shrink = r.Volume * units.Volume(min(atLeastZero(in.Card.Shrinkage.Value), mostShrink))
	r.Overfill = atLeastZero(in.TopArea).Times(atLeastZero(in.Overfill))
	r.Film = atLeastZero(in.Wetted).Times(atLeastZero(in.Film))
	subtotal := r.Volume + r.Shrink + r.Overfill + r.Film
	r.Reserve = subtotal * units.Volume(atLeastZero(in.Reserve))
	r.Order = subtotal + r.Reserve
	r.OrderKG, r.OrderUS, r.OrderImp = density.Of(r.Order), r.Order.USGal(), r.Order.ImperialGal()
	r.OrderA, r.OrderB = parts(r.OrderKG, bPerA)
	r.AToB = 100 * bPerA
}

// lift returns lift i between the levels, with its net volume.
func (c *computer) lift(i int, levels []float64) Lift {
	from, to := units.Length(levels[i-1]), units.Length(levels[i])
	return Lift{Number: i, From: from, To: to, Depth: to - from, Volume: c.volumeAt(to) - c.volumeAt(from), Batches: []Bucket{}, Zones: []Zone{}}
}

// pours says what goes into the buckets of every lift. A lift is poured to its mark
// and shrinks below it; the next one refills that. The last one's own shrink is part
// of its pour, as is the overfill; hold both back to top up with. The film that stays
// on floors and risers is shared out by volume:
//
//	pour_k = V_k + s V_(k-1) + film V_k/V,  and + s V_n + overfill for the last
func (c *computer) pours(r *Result, density units.Density, bPerA float64) {
	refill := units.Volume(0)
	for i := range r.Lifts {
		l := &r.Lifts[i]
		share := l.Volume / r.Volume
		l.Pour = l.Volume + refill + share*r.Film
		refill = share * r.Shrink
		l.Wait = c.gels()
		if i == len(r.Lifts)-1 {
			l.Pour += refill + r.Overfill
			l.Wait = max(l.Wait, c.hardens())
		} else {
			l.BondsUntil = c.bondsUntil()
		}
		l.Mass = density.Of(l.Pour)
		l.A, l.B = parts(l.Mass, bPerA)
		l.Batches = c.buckets(*l)
	}
}

// Chosen: more buckets than this in one lift is a slip in the bucket's size.
const mostBuckets = 20

const mixing units.Duration = 0.4 // h to weigh, stir, rest and pour one bucket. Chosen

// buckets splits a lift into equal buckets, as few as the freeboard allows.
func (c *computer) buckets(l Lift) []Bucket {
	out := []Bucket{}
	where := finding.Where{Element: fmt.Sprintf("lift %d", l.Number)}
	free := min(atLeastZero(c.in.Freeboard), 0.95)
	room := float64(c.in.Bucket) * float64(1-free)
	n := math.Max(1, math.Ceil(float64(l.Pour)/room-1e-9))
	if !(room > 0) || !known(room) || n > mostBuckets {
		c.say(bucket.At(where, "Lift %d of %.2f l does not go into sensibly few buckets of %.1f l with %.0f %% left free.", l.Number, l.Pour, c.in.Bucket, 100*free))
		return out
	}
	for k := range int(n) {
		b := Bucket{Number: k + 1, Volume: l.Pour / units.Volume(n), A: l.A / units.Mass(n), B: l.B / units.Mass(n)}
		b.ScaleA, b.ScaleAB = b.A, b.A+b.B
		out = append(out, b)
	}
	if pot, need := c.potLife(), units.Duration(n)*mixing; pot > 0 && need > pot {
		c.say(potLife.At(where, "Lift %d takes %.0f buckets, about %.1f h to mix and pour, and %s keeps for %.1f h in a cup at %.0f C.", l.Number, n, need, c.in.Card.Name, pot, c.in.Room).Measured(float64(need), float64(pot), "h"))
	}
	return out
}

// typicalViscosity is that of mixed casting resin, Pa s; 0.2 to 1.
// Common practice, no source; the data sheet decides.
const typicalViscosity = 0.5

// practice adds what the hands need beside litres: pulls, tint, flame, shim.
func (c *computer) practice(r *Result, density units.Density) {
	c.degas(r)
	c.tint(r)
	r.Bubbles = []Bubble{}
	deepest := units.Length(0)
	for i := range r.Lifts {
		deepest = max(deepest, r.Lifts[i].Depth)
		r.Lifts[i].Torch = rounds(c.gels())
	}
	for _, d := range []units.Length{0.1, 0.2, 0.5, 1} {
		r.Bubbles = append(r.Bubbles, Bubble{d, BubbleRise(deepest, d, typicalViscosity, density)})
	}
	if r.Shim = c.shim(); r.Shim != nil {
		c.say(outOfLevel.At(finding.Where{Element: "resin.level"}, "The piece is out of level by %.1f mm per metre: the resin would stand %.1f mm deeper at the low end.", r.Shim.Reading, r.Shim.Off).
			Measured(r.Shim.Reading, shimPerMetre, "mm/m"))
	}
}
