package resin

import (
	"math"
	"slices"

	"pourwright/internal/units"
)

// A Mark is a line on the pour stick: how much resin is in the basin when it stands that
// high above the deepest floor.
type Mark struct {
	Height units.Length `json:"height_mm"`
	Below  units.Length `json:"below_rim_mm"`
	Volume units.Volume `json:"litres_l"` // net: what the basin holds to there
	Lift   int          `json:"lift"`     // number of the lift that ends there; 0: none
}

// stickEvery is the distance of the marks between the lifts' ends, mm, of a basin that
// is not deeper than mostMarks of them. Chosen: it can be read.
const (
	stickEvery = 5.0
	mostMarks  = 100
)

// stick returns the marks: every 5 mm, at every terrace and where lifts end.
func (c *computer) stick(r *Result) []Mark {
	top := c.top().Depth
	every := math.Max(stickEvery, top.MM()/mostMarks)
	heights := append([]units.Length{}, c.terraces()...)
	for k := 1; float64(k)*every < top.MM()-touching; k++ {
		heights = append(heights, units.Length(float64(k)*every))
	}
	for _, l := range r.Lifts {
		heights = append(heights, l.To)
	}
	slices.Sort(heights)
	heights = slices.CompactFunc(heights, func(a, b units.Length) bool { return math.Abs((a - b).MM()) < touching })
	out := []Mark{}
	for _, h := range heights {
		m := Mark{Height: h, Below: max(0, top-h), Volume: c.volumeAt(h)}
		if k := slices.IndexFunc(r.Lifts, func(l Lift) bool { return math.Abs((l.To - h).MM()) < touching }); k >= 0 {
			m.Lift = r.Lifts[k].Number
		}
		out = append(out, m)
	}
	return out
}
