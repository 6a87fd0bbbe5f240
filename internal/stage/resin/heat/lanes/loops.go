package lanes

import "math"

// react sets the flow into n cells from place `from` on to the heat of the rate expected
// over the step, W: the last two rates continued, w = dt / (2 dt before).
func (c *Cells) react(from, n int, w float32) {
	flow, mass, rate, before := c.Flow[from:from+n], c.Mass[from:from+n], c.Rate[from:from+n], c.Before[from:from+n]
	for i := range flow {
		flow[i] = float32(mass[i]*c.HJKG) * expected(rate[i], before[i], w)
	}
}

func expected(rate, before, w float32) float32 {
	if d := rate + float32(w*(rate-before)); d > 0 {
		return d
	}
	return 0
}

// inflow adds what flows in from neighbours and air to the flow and sweeps forward along
// y: flow = dt p (flow + ...) + e (flow before).
func (c *Cells) inflow(from, n int, dt, air float32) {
	nx, plane := c.NX, c.Plane
	t := c.Temp
	for i := from; i < from+n; i++ {
		v := t[i]
		q := c.Flow[i] + float32(c.GX[i]*(t[i+1]-v))
		q += float32(c.GX[i-1] * (t[i-1] - v))
		q += float32(c.GZ[i] * (t[i+nx] - v))
		q += float32(c.GZ[i-nx] * (t[i-nx] - v))
		q += float32(c.GY[i] * (t[i+plane] - v))
		q += float32(c.GY[i-plane] * (t[i-plane] - v))
		q += float32(c.Film[i] * (air - v))
		c.Flow[i] = float32(float32(q*dt)*c.PY[i]) + float32(c.EY[i]*c.Flow[i-plane])
	}
}

// back sweeps backward along y: flow += f (flow after).
func (c *Cells) back(from, n int) {
	flow, after, f := c.Flow[from:from+n], c.Flow[from+c.Plane:from+c.Plane+n], c.FY[from:from+n]
	for i := range flow {
		flow[i] += float32(f[i] * after[i])
	}
}

// down sweeps downwards from what the sweep along x left in swept: flow = p swept + e
// (flow over it). Shift is -NX, or 0 in the first layer.
func (c *Cells) down(from, n, shift int, swept []float32) {
	flow, over, p, e := c.Flow[from:from+n], c.Flow[from+shift:from+shift+n], c.PZ[from:from+n], c.EZ[from:from+n]
	for i := range flow {
		flow[i] = float32(p[i]*swept[i]) + float32(e[i]*over[i])
	}
}

// up sweeps upwards, flow += f (flow under it), and takes the change into the temperature.
// Shift is NX, or 0 in the last layer.
func (c *Cells) up(from, n, shift int) {
	flow, under, f := c.Flow[from:from+n], c.Flow[from+shift:from+shift+n], c.FZ[from:from+n]
	was, now := c.Temp[from:from+n], c.TempNext[from:from+n]
	for i := range flow {
		flow[i] += float32(f[i] * under[i])
		now[i] = was[i] + flow[i]
	}
}

// correct turns the change of temperature of reacting cells into that of their heat, since
// their capacity changes with it, and takes in the rate at the end of the step: no more
// heat than there is to react.
func (c *Cells) correct(from, n int, dt, w float32) Seen {
	seen := Seen{Hot: float32(math.Inf(-1))}
	bad := false
	for i := from; i < from+n; i++ {
		m := c.Mass[i]
		if !(m > 0) {
			c.CureNext[i], c.RateNext[i] = c.Cure[i], 0
			continue
		}
		r0 := c.Rate[i]
		d := expected(r0, c.Before[i], w)
		s := float32(m * c.RiseJKGK2)
		t := c.Temp[i]
		cn := c.Cap[i] + float32(s*t)
		e2 := float32(c.CapF[i] * c.Flow[i])
		e2 += e2
		t += e2 / (cn + root(float32(cn*cn)+float32(s*e2)))
		a := c.Cure[i] + float32(dt*d)
		r := c.Rates.At(a, t+c.RefC)
		more := smaller(float32(dt*(float32(float32(r0+r)*0.5)-d)), 1-a)
		off := float32(float32(m*c.HJKG)*more)/(c.Cap[i]+float32(s*t)) + float32(0*r) // keeps what is not a number
		t += off
		c.TempNext[i], c.CureNext[i], c.RateNext[i] = t, a+more, r
		bad = bad || off != off
		seen.Worst = larger(seen.Worst, float32(math.Abs(float64(off))))
		seen.Hot = larger(seen.Hot, t)
	}
	if bad {
		seen.Worst = float32(math.NaN())
	}
	return seen
}

func root(x float32) float32 { return float32(math.Sqrt(float64(larger(x, 0)))) }

// smaller and larger return b where a is not a number, as the vector instructions do.
func smaller(a, b float32) float32 {
	if a < b {
		return a
	}
	return b
}

func larger(a, b float32) float32 {
	if a > b {
		return a
	}
	return b
}

// At returns the rate, 1/s; not a number where cure or temperature are not finite. Beyond
// the table its edge counts.
func (t *Table) At(a, tempC float32) float32 {
	x := LowSteps + float32((a-LowCure)*PerCure)
	if a < LowCure {
		x = LowSteps * root(a*(1/LowCure))
	}
	y := float32((tempC - ColdestC) * PerDegree)
	x, y = smaller(larger(x, 0), CureSteps-0.001), smaller(larger(y, 0), t.lastTemp())
	i, j := int(x), int(y)
	fx, fy := x-float32(i), y-float32(j)
	v := t.V[i*RowLength+j:]
	v = v[:RowLength+2]
	low := v[0] + float32(fy*(v[1]-v[0]))
	high := v[RowLength] + float32(fy*(v[RowLength+1]-v[RowLength]))
	return low + float32(fx*(high-low)) + 0*float32(a+tempC)
}

// lastTemp is the greatest place in a row that is read.
func (t *Table) lastTemp() float32 { return float32(t.To) - 1.01 }

// factorLine prepares a sweep across lines, half = dt/2: with conductances before and
// after, to air, and the factor f of the line before,
//
//	p = 1/(cap + half (before + after + film) - a f'),  e = a p,  f = half after p
//
// with a = half before; p times cap where byCap.
func factorLine(cap, before, after, film, fBefore, p, e, f []float32, half float32, byCap bool) {
	for i, c := range cap {
		if c == 0 {
			p[i], e[i], f[i] = 0, 0, 0
			continue
		}
		a := float32(half * before[i])
		q := 1 / (c + float32(half*(before[i]+after[i]+film[i])) - float32(a*fBefore[i]))
		e[i], f[i] = float32(a*q), float32(float32(half*after[i])*q)
		if byCap {
			q *= c
		}
		p[i] = q
	}
}

// factorBlock prepares the sweep along x of a block: columns of Width cells each, with the
// conductances to the next column.
func factorBlock(cap, right, pe, f []float32, half float32) {
	var left, fBefore [Width]float32
	for i := 0; i < len(cap); i += Width {
		for l := range Width {
			c, r := cap[i+l], right[i+l]
			if c == 0 {
				pe[2*i+l], pe[2*i+Width+l], f[i+l], left[l], fBefore[l] = 0, 0, 0, 0, 0
				continue
			}
			a := float32(half * left[l])
			q := 1 / (c + float32(half*(left[l]+r)) - float32(a*fBefore[l]))
			e, g := float32(a*q), float32(float32(half*r)*q)
			pe[2*i+l], pe[2*i+Width+l], f[i+l] = float32(q*c), e, g
			left[l], fBefore[l] = r, g
		}
	}
}

// along sweeps a block of rows there and back along x, `cells` of each from place `from`
// on, out of Flow into swept, whose first row is the block's. Work holds cells columns.
func (c *Cells) along(from, rows, cells int, pe, f, swept, work []float32) {
	for l := range rows {
		src, dst := c.Flow[from+l*c.NX:from+l*c.NX+cells], swept[l*c.NX:l*c.NX+cells]
		last := float32(0)
		for i, v := range src {
			last = float32(pe[2*i*Width+l]*v) + float32(pe[(2*i+1)*Width+l]*last)
			work[i] = last
		}
		last = 0
		for i := cells - 1; i >= 0; i-- {
			last = work[i] + float32(f[i*Width+l]*last)
			dst[i] = last
		}
	}
}
