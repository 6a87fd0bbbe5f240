package heat

import "math"

// column follows the surface and the depth of one column.
func (t *tracker) column(s *stepper, n int, hour, dt float64) {
	c := &t.columns[n]
	top := t.top[n]
	a, b := float64(s.Cure[top]), float64(s.CureNext[top])
	passes := func(at *float64, mark float64) {
		if math.IsInf(*at, 1) && b >= mark {
			*at = hour + dt*min(1, max(0, (mark-a)/math.Max(b-a, 1e-12)))
		}
	}
	passes(&c.GelH, gelCure)
	passes(&c.TackyH, tackCure)
	passes(&c.BondsH, bondCure)
	if math.IsInf(c.SetH, 1) && t.all(s, n, t.b.c.Set) {
		c.SetH = hour + dt
	}
	if t.b.c.Smooth != nil && math.IsInf(c.SmoothH, 1) && t.all(s, n, func(a, _ float64) bool { return t.b.c.Smooth(a) }) {
		c.SmoothH = hour + dt
	}
	if hour < t.dayH && hour+dt >= t.dayH {
		least := 1.0
		for at := top; at <= t.bottom[n]; at += int32(s.nx) {
			least = min(least, float64(s.CureNext[at]))
		}
		c.CureADay = least
	}
}

// all reports whether a test holds through the depth of a column.
func (t *tracker) all(s *stepper, n int, test func(a, tempC float64) bool) bool {
	if test == nil {
		return false
	}
	for at := t.top[n]; at <= t.bottom[n]; at += int32(s.nx) {
		if s.Mass[at] > 0 && !test(float64(s.CureNext[at]), float64(s.TempNext[at])+s.refC) {
			return false
		}
	}
	return true
}

// settled reports whether nothing more happens: all is hard and can be sanded, and a day
// has passed.
func (t *tracker) settled(s *stepper, hour float64) bool {
	if hour < t.dayH || t.steps%8 != 0 {
		return false
	}
	for _, c := range t.columns {
		if t.o.Tacky {
			if math.IsInf(c.TackyH, 1) {
				return false
			}
			continue
		}
		if t.o.Rough && !math.IsInf(c.SetH, 1) {
			continue
		}
		if math.IsInf(c.SetH, 1) || (t.b.c.Smooth != nil && math.IsInf(c.SmoothH, 1)) {
			return false
		}
	}
	return t.o.Rough || t.next >= len(t.o.Frames)
}
