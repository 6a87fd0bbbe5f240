package heat

import "math"

// frame is the state at a share of the step.
func (t *tracker) frame(s *stepper, hour float64, share float32) Frame {
	f := Frame{Hour: hour, TempC: blank(t.across * (s.ny - 2)), Cure: blank(t.across * (s.ny - 2)), CutC: blank(t.across * s.nz), CutCure: blank(t.across * s.nz)}
	mix := func(a, b float32) float32 { return a + share*(b-a) }
	for n, c := range t.columns {
		hot, least := float32(math.Inf(-1)), float32(1)
		for at := t.top[n]; at <= t.bottom[n]; at += int32(s.nx) {
			if s.Mass[at] == 0 {
				continue
			}
			temp, cure := mix(s.Temp[at], s.TempNext[at])+float32(s.refC), mix(s.Cure[at], s.CureNext[at])
			hot, least = max(hot, temp), min(least, cure)
			if c.J == t.cutJ {
				k := int(at) / s.nx % s.nz
				f.CutC[k*t.across+c.I], f.CutCure[k*t.across+c.I] = temp, cure
			}
		}
		f.TempC[c.J*t.across+c.I], f.Cure[c.J*t.across+c.I] = hot, least
	}
	return f
}

func blank(n int) []float32 {
	out := make([]float32, n)
	for i := range out {
		out[i] = float32(math.NaN())
	}
	return out
}
