package structure

import (
	"math"

	"pourwright/internal/units"
)

// BestLift is what one person may lift under the best conditions, kg: the load
// constant of the lifting equation. Source: [niosh-94-110] equation 1.
const BestLift units.Mass = 23

// largestTeam is the largest team expected to lift in step. Chosen: the team rule
// is printed for two and three people; four still have a corner each.
const largestTeam = 4

// Capacity returns what n people may lift together when each alone may lift one:
//
//	n one            n = 1
//	2/3 n one        n = 2
//	1/2 n one        n >= 3 (printed for 3, kept above)
//
// n below 1 lifts nothing. Source: [hse-l23] on team handling.
func Capacity(n int, one units.Mass) units.Mass {
	switch {
	case n < 1:
		return 0
	case n == 1:
		return one
	case n == 2:
		return 2 * one * 2 / 3
	}
	return units.Mass(n) * one / 2
}

// Team returns the least number of people whose capacity reaches m, 0 for no mass
// at all. One must be positive.
func Team(m, one units.Mass) int {
	if m <= 0 {
		return 0
	}
	for n := 1; n <= 3; n++ {
		if Capacity(n, one) >= m {
			return n
		}
	}
	return int(math.Ceil(float64(2 * m / one)))
}
