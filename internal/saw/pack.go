package saw

import (
	"context"
)

// patience is how often a search looks whether it was called off.
const patience = 64

// A schedule says how long one annealing run is and how it cools.
type schedule struct {
	rounds     int
	start, end float64 // temperatures, in areas of the largest region
}

// anneal runs until all items are placed, the rounds are used up or ctx ends.
func (f *filler) anneal(ctx context.Context, s schedule) bool {
	f.cost = f.evaluate()
	if len(f.out) == 0 {
		return true
	}
	ratio := s.end / s.start
	for n := range s.rounds {
		if n%patience == 0 && ctx.Err() != nil {
			return false
		}
		if f.step(s.start * pow(ratio, float64(n)/float64(s.rounds))) {
			return true
		}
	}
	return false
}
