package heat

import "pourwright/internal/stage/resin/heat/lanes"

// A rateTable is the rate of reaction over cure and temperature, read by two-way linear
// interpolation. It is sampled as far up as temperatures have come.
type rateTable struct {
	lanes.Table
	rate func(a, tempC float64) float64
}

const tableAhead = 25.0 // C sampled beyond what was reached

// newRateTable samples rate up to hotC and some more. Beyond its ends the nearest counts.
func newRateTable(rate func(a, tempC float64) float64, hotC float64) *rateTable {
	t := &rateTable{Table: lanes.Table{V: make([]float32, (lanes.CureSteps+1)*lanes.RowLength)}, rate: rate}
	t.sample(hotC + tableAhead)
	return t
}

// reach makes sure that the table holds hotC, and reports whether it did not.
func (t *rateTable) reach(hotC float64) bool {
	if t.To == lanes.RowLength || hotC < lanes.ColdestC+float64(t.To-2)/lanes.PerDegree {
		return false
	}
	t.sample(hotC + tableAhead)
	return true
}

func (t *rateTable) sample(upC float64) {
	to := lanes.RowLength
	if n := (upC - lanes.ColdestC) * lanes.PerDegree; n < lanes.TempSteps {
		to = max(int(n), 2) + 1
	}
	for i := range lanes.CureSteps + 1 {
		a := lanes.LowCure + float64(i-lanes.LowSteps)/lanes.PerCure
		if i < lanes.LowSteps {
			a = lanes.LowCure * float64(i*i) / (lanes.LowSteps * lanes.LowSteps)
		}
		for j := t.To; j < to; j++ {
			t.V[i*lanes.RowLength+j] = float32(t.rate(a, lanes.ColdestC+float64(j)/lanes.PerDegree))
		}
	}
	t.To = max(t.To, to)
}
