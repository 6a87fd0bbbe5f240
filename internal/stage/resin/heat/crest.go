package heat

import (
	"fmt"
	"math"
)

// peaks looks for the warmest poured cell, wall face and body below.
func (t *tracker) peaks(s *stepper, hour float64) {
	if at, v := s.hottest(); at >= 0 {
		t.crest(s, at, hour, v)
	}
	for _, c := range s.toWall {
		v := float64(c.share*s.TempNext[c.cell]+(1-c.share)*s.TempNext[c.wall]) + s.refC
		t.res.WallC = max(t.res.WallC, v)
	}
	for _, at := range s.toBelow {
		t.res.BelowC = max(t.res.BelowC, float64(s.TempNext[at])+s.refC)
	}
}

// crest follows the warmest poured cell from step to step. Where it has just passed a
// crest, a parabola through three steps gives its height and hour; another one upwards
// through the cells over and under it adds what lies between their middles.
func (t *tracker) crest(s *stepper, at int, hour, v float64) {
	extra := t.between(s, at)
	t.hours, t.tops = [3]float64{t.hours[1], t.hours[2], hour}, [3]float64{t.tops[1], t.tops[2], v}
	t.extras = [2]float64{t.extras[1], extra}
	p := &t.res.Pours[t.pour]
	t.higher(s, at, p, v+extra, hour)
	if h := t.hours; t.seen >= 2 && t.tops[1] > t.tops[0] && t.tops[1] >= v {
		x, y := vertex(h[0]-h[1], h[2]-h[1], t.tops[0]-t.tops[1], v-t.tops[1])
		if y+t.tops[1]+t.extras[0] > p.PeakC || h[1] == p.PeakH {
			t.higher(s, t.lastAt, p, t.tops[1]+y+t.extras[0], h[1]+x)
		}
	}
	t.seen, t.lastAt = t.seen+1, at
}

// higher takes a temperature into the peaks where it is one.
func (t *tracker) higher(s *stepper, at int, p *PourResult, v, hour float64) {
	if v <= p.PeakC {
		return
	}
	p.PeakC, p.PeakH = v, hour
	if v > t.res.PeakC {
		t.res.PeakC, t.res.PeakH, t.res.PeakPour = v, hour, t.pour
		t.place(s, at)
	}
}

// vertex returns where, and how far above, a parabola through (a, ya), (0, 0) and
// (b, yb) has its top, a < 0 < b.
func vertex(a, b, ya, yb float64) (x, y float64) {
	curve := (yb/b - ya/a) / (b - a)
	if !(curve < 0) {
		return 0, 0
	}
	slope := ya/a - curve*a
	x = min(max(-slope/(2*curve), a), b)
	return x, slope*x + curve*x*x
}

// between returns how much warmer than its cell the top of a parabola through a cell and
// the poured ones over and under it is.
func (t *tracker) between(s *stepper, at int) float64 {
	k := at / s.nx % s.nz
	if k == 0 || k+1 == s.nz || s.Mass[at-s.nx] == 0 || s.Mass[at+s.nx] == 0 {
		return 0
	}
	mid := func(k int) float64 { return (s.zMM[k] + s.zMM[k+1]) / 2 }
	v := s.TempNext
	_, y := vertex(mid(k-1)-mid(k), mid(k+1)-mid(k), float64(v[at-s.nx]-v[at]), float64(v[at+s.nx]-v[at]))
	return y
}

func (t *tracker) place(s *stepper, at int) {
	k := at / s.nx % s.nz
	t.res.PeakX, t.res.PeakY, t.res.PeakZ = t.middle(s, at)
	for n, p := range t.b.c.Pours[:t.pour+1] {
		if p.TopMM <= s.zMM[k]+hair {
			t.res.PeakPour = n
			break
		}
	}
}

// trouble names the poured cell that the step just tried does not end in, or the warmest.
func (t *tracker) trouble(s *stepper) string {
	worst, hot := -1, math.Inf(-1)
	for at, m := range s.Mass {
		if v := float64(s.TempNext[at]); m > 0 && !(v <= hot) {
			if worst, hot = at, v; v != v {
				break
			}
		}
	}
	if worst < 0 {
		return "nowhere poured"
	}
	x, y, z := t.middle(s, worst)
	return fmt.Sprintf("at x %.0f, y %.0f mm, %.0f mm below the rim", x, y, z)
}

// middle returns where the middle of a cell lies, mm: in the case's raster, and below the
// top plane.
func (t *tracker) middle(s *stepper, at int) (x, y, z float64) {
	i, k, j := at%s.nx, at/s.nx%s.nz, at/s.nx/s.nz
	return t.res.OffXMM + (float64(i)+0.5)*t.o.DXMM, t.res.OffYMM + (float64(j-1)+0.5)*t.o.DXMM, (s.zMM[k] + s.zMM[k+1]) / 2
}
