package heat

import "math"

// A rateTable is the rate of reaction over cure and temperature, read by two-way linear
// interpolation. It is sampled as far up as temperatures have come.
type rateTable struct {
	v    []float32 // [cure][temperature]
	rate func(a, tempC float64) float64
	to   int // entries sampled of each cure
}

const (
	lowCure    = 1.0 / 32 // below it entries lie evenly by the root of the cure
	lowSteps   = 16
	cureSteps  = lowSteps + 248 // above it 256 to the unit
	coldest    = -30.0          // C
	perDegree  = 2              // entries
	warmest    = 330.0
	tempSteps  = int((warmest - coldest) * perDegree)
	tableWidth = tempSteps + 1
	tableAhead = 25.0 // C sampled beyond what was reached
)

// newRateTable samples rate up to hotC and some more. Beyond coldest and warmest the
// nearest counts.
func newRateTable(rate func(a, tempC float64) float64, hotC float64) *rateTable {
	t := &rateTable{v: make([]float32, (cureSteps+1)*tableWidth), rate: rate}
	t.sample(hotC + tableAhead)
	return t
}

// reach makes sure that the table holds hotC, and reports whether it did not.
func (t *rateTable) reach(hotC float64) bool {
	if t.to == tableWidth || hotC < coldest+float64(t.to-2)/perDegree {
		return false
	}
	t.sample(hotC + tableAhead)
	return true
}

func (t *rateTable) sample(upC float64) {
	to := tableWidth
	if n := (upC - coldest) * perDegree; n < float64(tempSteps) {
		to = max(int(n), 2) + 1
	}
	for i := range cureSteps + 1 {
		a := lowCure + float64(i-lowSteps)/256
		if i < lowSteps {
			a = lowCure * float64(i*i) / (lowSteps * lowSteps)
		}
		for j := t.to; j < to; j++ {
			t.v[i*tableWidth+j] = float32(t.rate(a, coldest+float64(j)/perDegree))
		}
	}
	t.to = max(t.to, to)
}

// at returns the rate, 1/s.
func (t *rateTable) at(a, tempC float32) float32 {
	x, y := lowSteps+(a-lowCure)*256, (tempC-coldest)*perDegree
	if a < lowCure {
		x = lowSteps * float32(math.Sqrt(float64(max(a, 0)/lowCure)))
	}
	if x != x || y != y {
		return a + tempC // not a number: the step is refused
	}
	x, y = min(max(x, 0), cureSteps-0.001), min(max(y, 0), float32(t.to)-1.01)
	i, j := int(x), int(y)
	fx, fy := x-float32(i), y-float32(j)
	v := t.v[i*tableWidth+j:]
	v = v[:tableWidth+2]
	low := v[0] + fy*(v[1]-v[0])
	high := v[tableWidth] + fy*(v[tableWidth+1]-v[tableWidth])
	return low + fx*(high-low)
}
