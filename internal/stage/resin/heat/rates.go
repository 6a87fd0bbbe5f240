package heat

// A rateTable is the rate of reaction over cure and temperature, read by two-way linear
// interpolation.
type rateTable struct {
	v []float32
}

const (
	cureSteps  = 160
	coldest    = -30.0 // C
	perDegree  = 1     // entries
	warmest    = 320.0
	tempSteps  = int((warmest - coldest) * perDegree)
	tableWidth = tempSteps + 1
)

// newRateTable samples rate. Beyond its temperatures the nearest counts.
func newRateTable(rate func(a, tempC float64) float64) rateTable {
	t := rateTable{v: make([]float32, (cureSteps+1)*tableWidth)}
	for i := range cureSteps + 1 {
		for j := range tableWidth {
			t.v[i*tableWidth+j] = float32(rate(float64(i)/cureSteps, coldest+float64(j)/perDegree))
		}
	}
	return t
}

// at returns the rate, 1/s.
func (t rateTable) at(a, tempC float32) float32 {
	x, y := a*cureSteps, (tempC-coldest)*perDegree
	if x != x || y != y {
		return a + tempC // not a number: the step is refused
	}
	x, y = min(max(x, 0), cureSteps-0.001), min(max(y, 0), float32(tempSteps)-0.01)
	i, j := int(x), int(y)
	fx, fy := x-float32(i), y-float32(j)
	v := t.v[i*tableWidth+j:]
	low := v[0] + fy*(v[1]-v[0])
	high := v[tableWidth] + fy*(v[tableWidth+1]-v[tableWidth])
	return low + fx*(high-low)
}
