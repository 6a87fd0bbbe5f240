package resin

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

const candidateMM = 0.5 // Chosen: finer than a pour stick can be read

// levels returns the heights above the deepest floor at which lifts begin and end:
// as few lifts as the card's depth range allows, and of those the most equal,
// ending nowhere less than Gap above a terrace. Where the range cannot be met it
// takes equal lifts of at most the greatest depth and says so.
func (c *computer) levels(total units.Length) []float64 {
	t, lo, hi := total.MM(), c.in.Card.MinDepth.Value.MM(), c.in.Card.MaxDepth.Value.MM()
	if !(hi > 0) {
		c.say(noRange.At(finding.Where{}, "The card of %s states no greatest depth of a lift, so the basin is one lift of %.1f mm.", c.in.Card.Name, t))
		return []float64{0, t}
	}
	if t < lo {
		c.say(tooShallow.At(finding.Where{}, "The basin is %.1f mm deep and %s wants at least %.1f mm in a lift.", t, c.in.Card.Name, lo).Measured(t, lo, "mm"))
	}
	n := max(1, int(math.Ceil(t/hi-1e-9)))
	if n > 200 {
		c.say(noSplit.At(finding.Where{}, "A basin of %.0f mm would take %d lifts of %.1f mm.", t, n, hi))
		return []float64{0, t}
	}
	for extra := range 3 {
		if got := c.split(t, lo, hi, n+extra); got != nil {
			return got
		}
	}
	if t >= lo && n > 1 {
		c.say(noSplit.At(finding.Where{}, "%.1f mm cannot be split into lifts of %.1f to %.1f mm that end clear of the terraces; equal lifts are shown.", t, lo, hi))
	}
	out := []float64{0}
	for k := 1; k <= n; k++ {
		out = append(out, t*float64(k)/float64(n))
	}
	return out
}

// split returns the most equal way to fill t with n lifts of lo to hi, or nil. Of all
// ends that are clear of terraces it takes the ones with the least sum of squared
// depths, by dynamic programming over the candidates.
func (c *computer) split(t, lo, hi float64, n int) []float64 {
	ends := c.candidates(t)
	const none = math.MaxFloat64
	best := make([][]float64, n+1)
	from := make([][]int, n+1)
	for k := range best {
		best[k], from[k] = make([]float64, len(ends)), make([]int, len(ends))
		for i := range best[k] {
			best[k][i] = none
		}
	}
	best[0][0] = 0
	for k := 1; k <= n; k++ {
		for i := range ends {
			for j := i - 1; j >= 0 && ends[i]-ends[j] <= hi+1e-9; j-- {
				d := ends[i] - ends[j]
				if d < lo-1e-9 || best[k-1][j] == none {
					continue
				}
				if cost := best[k-1][j] + d*d; cost < best[k][i]-1e-9 {
					best[k][i], from[k][i] = cost, j
				}
			}
		}
	}
	last := len(ends) - 1
	if best[n][last] == none {
		return nil
	}
	out := make([]float64, n+1)
	for k, i := n, last; k >= 0; k-- {
		out[k] = ends[i]
		i = from[k][i]
	}
	return out
}

// candidates returns the heights at which a lift may end, rising, 0 and t included:
// every terrace and every half millimetre that is not just above one.
func (c *computer) candidates(t float64) []float64 {
	out := []float64{0}
	add := func(h float64) {
		if h > out[len(out)-1]+1e-6 && h < t-1e-6 && c.clear(h) {
			out = append(out, h)
		}
	}
	step := math.Max(candidateMM, t/2000)
	next := 1
	for h := step; h < t; h += step {
		for ; next < len(c.in.Fill) && c.in.Fill[next].Depth.MM() <= h; next++ {
			add(c.in.Fill[next].Depth.MM())
		}
		add(h)
	}
	return append(out, t)
}

// clear reports whether height h is not less than Gap above a terrace.
func (c *computer) clear(h float64) bool {
	for _, f := range c.in.Fill[1:] {
		if over := h - f.Depth.MM(); over > 1e-6 && over < c.in.Gap.MM() {
			return false
		}
	}
	return true
}
