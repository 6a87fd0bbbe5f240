package heat

import (
	"context"
	"math"
)

// A packed grid is the active cells alone, in double precision, with their neighbours:
// what the explicit schemes work on. It shares the cells and conductances with the
// solver and nothing of its stepping.
type packed struct {
	cap, mass, film []float64
	start           []int32 // of each cell's links, one more at the end
	to              []int32
	g               []float64
	at              []int32 // the cell's place in the grid
	rate            func(a, tempC float64) float64
	heatJKG, refC   float64
}

// pack lists the active cells of a stepper whose films are set.
func pack(s *stepper, c Case) *packed {
	p := &packed{rate: c.Rate, heatJKG: c.HJKG, refC: s.refC}
	index := make([]int32, s.cells())
	for at, v := range s.cap {
		index[at] = -1
		if v > 0 {
			index[at] = int32(len(p.at))
			p.at = append(p.at, int32(at))
			p.cap, p.mass, p.film = append(p.cap, float64(v)), append(p.mass, float64(s.mass[at])), append(p.film, float64(s.film[at]))
		}
	}
	link := func(to int, g float32) {
		if g > 0 && index[to] >= 0 {
			p.to, p.g = append(p.to, index[to]), append(p.g, float64(g))
		}
	}
	for _, at32 := range p.at {
		at := int(at32)
		p.start = append(p.start, int32(len(p.to)))
		i, k, j := at%s.nx, at/s.nx%s.nz, at/s.nx/s.nz
		if i > 0 {
			link(at-1, s.gx[at-1])
		}
		if i+1 < s.nx {
			link(at+1, s.gx[at])
		}
		if k > 0 {
			link(at-s.nx, s.gz[at-s.nx])
		}
		if k+1 < s.nz {
			link(at+s.nx, s.gz[at])
		}
		if j > 0 {
			link(at-s.nx*s.nz, s.gy[at-s.nx*s.nz])
		}
		if j+1 < s.ny {
			link(at+s.nx*s.nz, s.gy[at])
		}
	}
	p.start = append(p.start, int32(len(p.to)))
	return p
}

// stable is the longest explicit step, s: the least of capacity over all conductances.
func (p *packed) stable() float64 {
	least := math.Inf(1)
	for n, c := range p.cap {
		sum := p.film[n]
		for l := p.start[n]; l < p.start[n+1]; l++ {
			sum += p.g[l]
		}
		least = math.Min(least, c/sum)
	}
	return least
}

// flow writes dT/dt of conduction and film into out.
func (p *packed) flow(t, out []float64, air float64) {
	for n := range t {
		q := p.film[n] * (air - t[n])
		for l := p.start[n]; l < p.start[n+1]; l++ {
			q += p.g[l] * (t[p.to[l]] - t[n])
		}
		out[n] = q / p.cap[n]
	}
}

// An Explicit is the outcome of an explicit scheme.
type Explicit struct {
	PeakC, PeakH float64
	Cells, Steps int
}

// SolveExplicit runs the first pour by the plain explicit scheme in double precision,
// films as at the start: the yardstick of the solver's speed.
func SolveExplicit(ctx context.Context, c Case, o Options) (Explicit, error) {
	p, _, err := packedCase(c, o)
	if err != nil {
		return Explicit{}, err
	}
	dt := 0.9 * p.stable()
	return p.march(ctx, c, math.Ceil(c.EndH*3600/dt), func(t, dT []float64, dt float64) {
		p.flow(t, dT, c.Air.TempC(0)-p.refC)
		for n := range t {
			t[n] += dt * dT[n]
		}
	})
}

// SolveLegendre runs the first pour by the second-order Runge-Kutta-Legendre scheme with
// steps of stepS: an independent check of the solver. Source: [meyer-rkl2].
func SolveLegendre(ctx context.Context, c Case, o Options, stepS float64) (Explicit, error) {
	p, _, err := packedCase(c, o)
	if err != nil {
		return Explicit{}, err
	}
	r := newLegendre(p, stepS, c.Air.TempC(0)-p.refC)
	return p.march(ctx, c, math.Ceil(c.EndH*3600/stepS), r.step)
}

func packedCase(c Case, o Options) (*packed, *stepper, error) {
	if err := check(c); err != nil {
		return nil, nil, err
	}
	o = o.orDefaults(c)
	b := newBody(c)
	z := b.layers(o.DZMM, []float64{c.Pours[0].TopMM})
	g, err := b.build(o, z, c.Pours[0].TopMM)
	if err != nil {
		return nil, nil, err
	}
	s := newStepper(g, newRateTable(c.Rate, c.Pours[0].TempC), c.HJKG, c.Air.TempC(0), 1)
	s.begin(nil, c.Pours[0], c.Air.TempC(0))
	s.films(c, c.Air.TempC(0))
	return pack(s, c), s, nil
}

// march advances conduction by diffuse and reaction by the midpoint rule, split after
// Strang: half a step of conduction, a whole one of reaction, half of conduction.
func (p *packed) march(ctx context.Context, c Case, steps float64, diffuse func(t, work []float64, dt float64)) (Explicit, error) {
	dt := c.EndH * 3600 / steps
	n := len(p.cap)
	t, a, work := make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range t {
		t[i] = c.Air.TempC(0) - p.refC
		if p.mass[i] > 0 {
			t[i], a[i] = c.Pours[0].TempC-p.refC, c.Pours[0].Cure
		}
	}
	out := Explicit{PeakC: math.Inf(-1), Cells: n, Steps: int(steps)}
	for step := range out.Steps {
		if step%64 == 0 && ctx.Err() != nil {
			return out, ctx.Err()
		}
		diffuse(t, work, dt)
		for i, m := range p.mass {
			if m == 0 {
				continue
			}
			r := p.rate(a[i], t[i]+p.refC)
			half := a[i] + dt/2*r
			r = p.rate(half, t[i]+p.refC+m*p.heatJKG/p.cap[i]*dt/2*r)
			a[i] += dt * r
			t[i] += m * p.heatJKG / p.cap[i] * dt * r
			if v := t[i] + p.refC; v > out.PeakC {
				out.PeakC, out.PeakH = v, float64(step+1)*dt/3600
			}
		}
	}
	return out, nil
}

// A legendre holds the coefficients of the RKL2 scheme and its stages.
type legendre struct {
	p                 *packed
	s                 int
	air               float64
	mu, nu, muT       []float64
	gamma             []float64
	mu1               float64
	y0, y1, y2, f0, f []float64
}

// newLegendre takes as many stages as a step of stepS needs: dt <= stable (s^2+s-2)/2,
// with stable that of the explicit scheme.
func newLegendre(p *packed, stepS, air float64) *legendre {
	s := 3
	for stepS > 0.9*p.stable()*float64(s*s+s-2)/2 {
		s += 2
	}
	n := len(p.cap)
	r := &legendre{p: p, s: s, air: air, mu: make([]float64, s+1), nu: make([]float64, s+1), muT: make([]float64, s+1), gamma: make([]float64, s+1),
		y0: make([]float64, n), y1: make([]float64, n), y2: make([]float64, n), f0: make([]float64, n), f: make([]float64, n)}
	b := make([]float64, s+1)
	for j := range b {
		b[j] = 1.0 / 3
		if j >= 2 {
			b[j] = float64(j*j+j-2) / float64(2*j*(j+1))
		}
	}
	w1 := 4 / float64(s*s+s-2)
	r.mu1 = b[1] * w1
	for j := 2; j <= s; j++ {
		fj := float64(j)
		r.mu[j] = (2*fj - 1) / fj * b[j] / b[j-1]
		r.nu[j] = -(fj - 1) / fj * b[j] / b[j-2]
		r.muT[j] = r.mu[j] * w1
		r.gamma[j] = -(1 - b[j-1]) * r.muT[j]
	}
	return r
}

// step advances t by dt.
func (r *legendre) step(t, _ []float64, dt float64) {
	copy(r.y0, t)
	r.p.flow(t, r.f0, r.air)
	prev2, prev, next := r.y0, r.y1, r.y2
	for n := range t {
		prev[n] = t[n] + r.mu1*dt*r.f0[n]
	}
	spare := make([]float64, len(t))
	for j := 2; j <= r.s; j++ {
		r.p.flow(prev, r.f, r.air)
		for n := range t {
			next[n] = r.mu[j]*prev[n] + r.nu[j]*prev2[n] + (1-r.mu[j]-r.nu[j])*t[n] + r.muT[j]*dt*r.f[n] + r.gamma[j]*dt*r.f0[n]
		}
		if j == 2 {
			prev2, prev, next = prev, next, spare
		} else {
			prev2, prev, next = prev, next, prev2
		}
	}
	copy(t, prev)
}
