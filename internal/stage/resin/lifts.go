package resin

import (
	"fmt"
	"math"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

const (
	candidateMM = 0.5   // Chosen: finer than a pour stick can be read
	mostSteps   = 2000  // candidates at most
	mostLifts   = 200   // Chosen: more is a slip in a unit
	touching    = 1e-6  // mm; closer than this is at the same height
	extraLifts  = 5     // how many more lifts than the fewest are tried
	unreachable = 1e300 // cost of what cannot be split
)

// limits are the least and greatest depth of a lift, mm.
type limits struct{ lo, hi float64 }

// levels returns the heights above the deepest floor at which lifts begin and end,
// mm: as few lifts as the card's depth range allows, and of those the most equal,
// ending nowhere less than Gap above a terrace. Where that cannot be had, the least
// depth is given up first, then the terraces; the greatest depth, which guards against
// heat, never. A finding says what was given up.
func (c *computer) levels(total units.Length) []float64 {
	t, lim := total.MM(), c.depthRange(total)
	if math.IsInf(lim.hi, 1) {
		return []float64{0, t}
	}
	n := max(1, math.Ceil(t/lim.hi-1e-9))
	if n > mostLifts {
		c.say(noSplit.At(finding.Where{}, "A basin of %.0f mm would take %.0f lifts of %.1f mm; it is shown as one.", t, n, lim.hi).Measured(t, lim.hi, "mm"))
		return []float64{0, t}
	}
	ends := c.candidates(t)
	if got := fewest(ends, lim, int(n)); got != nil {
		return got
	}
	if got := fewest(ends, limits{0, lim.hi}, int(n)); got != nil {
		c.say(noSplit.At(finding.Where{}, "%.1f mm cannot be split into lifts of %.1f to %.1f mm that end clear of the terraces; lifts of %s mm are shown.", t, lim.lo, lim.hi, depths(got)).Measured(thinnest(got), lim.lo, "mm"))
		return got
	}
	got := equal(t, int(n))
	c.say(onTerrace.At(finding.Where{}, "No lifts of at most %.1f mm end clear of the terraces, %.1f mm above them; equal lifts of %s mm are shown.", lim.hi, c.in.Gap, depths(got)))
	return got
}

// depthRange returns the card's range for a basin of that depth. A card without a
// greatest depth gets one lift; a basin shallower than the least depth does too.
func (c *computer) depthRange(total units.Length) limits {
	card := c.in.Card
	lo, hi := atLeastZero(card.MinDepth.Value), card.MaxDepth.Value
	switch {
	case !(hi > 0):
		c.say(noRange.At(finding.Where{}, "The card of %s states no greatest depth of a lift, so the basin is one lift of %.1f mm.", card.Name, total))
		return limits{0, math.Inf(1)}
	case lo > hi:
		c.say(noRange.At(finding.Where{}, "The card of %s states a least depth of %.1f mm above its greatest of %.1f mm; the least is not held to.", card.Name, lo, hi).Measured(float64(lo), float64(hi), "mm"))
		lo = 0
	case total < lo:
		c.say(tooShallow.At(finding.Where{}, "The basin is %.1f mm deep and %s wants at least %.1f mm in a lift.", total, card.Name, lo).Measured(float64(total), float64(lo), "mm"))
		lo = 0
	}
	return limits{lo.MM(), hi.MM()}
}

func depths(levels []float64) string {
	var out []string
	for i := 1; i < len(levels); i++ {
		out = append(out, fmt.Sprintf("%.1f", levels[i]-levels[i-1]))
	}
	return strings.Join(out, ", ")
}

func thinnest(levels []float64) float64 {
	least := math.Inf(1)
	for i := 1; i < len(levels); i++ {
		least = math.Min(least, levels[i]-levels[i-1])
	}
	return least
}

func equal(t float64, n int) []float64 {
	out := make([]float64, n+1)
	for k := range out {
		out[k] = t * float64(k) / float64(n)
	}
	return out
}

// fewest returns the most equal way with the fewest lifts, at least n, or nil.
func fewest(ends []float64, lim limits, n int) []float64 {
	for extra := range extraLifts + 1 {
		if got := split(ends, lim, n+extra); got != nil {
			return got
		}
	}
	return nil
}

// split returns the most equal way to end n lifts within lim at some of ends, the
// last at the last, or nil. It is the way with the least sum of squared depths, by
// dynamic programming; of equal ways the one whose upper lifts are thinner.
func split(ends []float64, lim limits, n int) []float64 {
	last := len(ends) - 1
	best := make([]float64, len(ends)) // least cost of reaching each end with k lifts
	for i := range best {
		best[i] = unreachable
	}
	best[0] = 0
	var from [][]int
	for range n {
		next, back := extend(ends, lim, best)
		best, from = next, append(from, back)
	}
	if best[last] >= unreachable {
		return nil
	}
	out := make([]float64, n+1)
	for k, i := n, last; k > 0; k-- {
		out[k], i = ends[i], from[k-1][i]
	}
	return out
}

// extend adds one lift to every way in best.
func extend(ends []float64, lim limits, best []float64) (next []float64, from []int) {
	next, from = make([]float64, len(ends)), make([]int, len(ends))
	for i := range ends {
		next[i] = unreachable
		for j := i - 1; j >= 0 && ends[i]-ends[j] <= lim.hi+1e-9; j-- {
			d := ends[i] - ends[j]
			if d < lim.lo-1e-9 || best[j] >= unreachable {
				continue
			}
			if cost := best[j] + d*d; cost < next[i]-1e-9 {
				next[i], from[i] = cost, j
			}
		}
	}
	return next, from
}

// candidates returns the heights at which a lift may end, rising, 0 and t included:
// every terrace, every half millimetre, and no height that is just above a terrace.
func (c *computer) candidates(t float64) []float64 {
	out := []float64{0}
	add := func(h float64) {
		if h > out[len(out)-1]+touching && h < t-touching && c.clear(h) {
			out = append(out, h)
		}
	}
	step := math.Max(candidateMM, t/mostSteps)
	terraces := c.terraces()
	for k := 1; float64(k)*step < t; k++ {
		h := float64(k) * step
		for len(terraces) > 0 && terraces[0].MM() <= h {
			add(terraces[0].MM())
			terraces = terraces[1:]
		}
		add(h)
	}
	for _, h := range terraces {
		add(h.MM())
	}
	return append(out, t)
}

// clear reports whether height h is on, under or more than Gap above every terrace.
func (c *computer) clear(h float64) bool {
	gap := atLeastZero(c.in.Gap).MM()
	for _, t := range c.terraces() {
		if over := h - t.MM(); over > touching && over < gap+touching {
			return false
		}
	}
	return true
}
