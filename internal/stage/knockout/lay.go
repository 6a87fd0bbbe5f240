package knockout

import "math"

// lay lays the parts on sheets.
func (c *computer) lay() {
	need := 0.0
	for _, p := range c.r.Parts {
		need += float64(p.Area) * float64(p.Sheets)
	}
	if sheet := float64(c.in.SheetX) * float64(c.in.SheetY); sheet > 0 && need < 1e6*sheet {
		c.r.AtLeast = int(math.Ceil(need/sheet - 1e-9))
	}
}
