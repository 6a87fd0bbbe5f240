package heat

import "math"

// A state is what changes in time: temperatures above a reference, cure, and the rate
// of the last step.
type state struct {
	temp, cure, rate, before []float32
}

func newState(n int) state {
	all := make([]float32, 4*n)
	return state{all[:n:n], all[n : 2*n : 2*n], all[2*n : 3*n : 3*n], all[3*n : 4*n : 4*n]}
}

// factors are those of the tridiagonal systems along one direction: for a line
// b x[i] - a x[i-1] - c x[i+1] = d, with p = 1/(b - a c'[i-1]), e = a p, f = c' = c p:
//
//	d'[i] = p d[i] + e d'[i-1],  x[i] = d'[i] + f[i] x[i+1]
type factors struct{ p, e, f []float32 }

func newFactors(n int) factors {
	all := make([]float32, 3*n)
	return factors{all[:n:n], all[n : 2*n : 2*n], all[2*n:]}
}

// A stepper advances a grid.
type stepper struct {
	*grid
	threads int
	rates   rateTable
	refC    float64
	heatKJ  float32 // J/kg of the poured material

	now, next  state
	flow       []float32 // work: what the sweeps turn into the change of temperature
	film       []float32 // W/K to air
	x, y, z    factors
	dt, dtPrev float64
	worst      []float32 // per row: greatest corrector
	runs       []run     // per row and layer: active cells
}

// A run is the active cells of a line along x: from a to before b.
type run struct{ a, b int32 }

func newStepper(g *grid, rates rateTable, heatJKG, refC float64, threads int) *stepper {
	n := g.cells()
	s := &stepper{grid: g, threads: threads, rates: rates, refC: refC, heatKJ: float32(heatJKG), now: newState(n), next: newState(n),
		flow: make([]float32, n), film: make([]float32, n), x: newFactors(n), y: newFactors(n), z: newFactors(n), worst: make([]float32, g.ny)}
	s.runs = make([]run, g.ny*g.nz)
	for line := range s.runs {
		base := line * g.nx
		r := run{int32(g.nx), 0}
		for i := range g.nx {
			if g.cap[base+i] > 0 {
				r.a, r.b = min(r.a, int32(i)), int32(i+1)
			}
		}
		if r.a >= r.b {
			r = run{}
		}
		s.runs[line] = r
	}
	return s
}

// factor prepares the sweeps for a step of dt seconds. The films are in the upright one.
func (s *stepper) factor(dt float64) {
	s.dt = dt
	half := float32(dt / 2)
	nx, nz := s.nx, s.nz
	parallel(s.threads, s.ny, func(j int) {
		for k := range nz {
			base := (j*nz + k) * nx
			r := s.runs[j*nz+k]
			for i := int(r.a); i < int(r.b); i++ {
				at := base + i
				c := s.cap[at]
				if c == 0 {
					s.x.p[at], s.x.e[at], s.x.f[at] = 0, 0, 0
					s.z.p[at], s.z.e[at], s.z.f[at] = 0, 0, 0
					continue
				}
				var left, over float32
				if i > int(r.a) {
					left = s.gx[at-1]
				}
				s.x.set(at, at-1, i > int(r.a), c, half, left, s.gx[at], 0)
				if k > 0 {
					over = s.gz[at-nx]
				}
				s.z.set(at, at-nx, k > 0, c, half, over, s.gz[at], s.film[at])
			}
		}
	})
	parallel(s.threads, nz, func(k int) {
		for j := range s.ny {
			base := (j*nz + k) * nx
			r := s.runs[j*nz+k]
			for i := int(r.a); i < int(r.b); i++ {
				at := base + i
				if s.cap[at] == 0 {
					s.y.p[at], s.y.e[at], s.y.f[at] = 0, 0, 0
					continue
				}
				var before float32
				if j > 0 {
					before = s.gy[at-nz*nx]
				}
				s.y.set(at, at-nz*nx, j > 0, s.cap[at], half, before, s.gy[at], 0)
			}
		}
	})
}

func (f factors) set(at, prev int, has bool, c, half, left, right, film float32) {
	a, b := half*left, c+half*(left+right+film)
	var fp float32
	if has {
		fp = f.f[prev]
	}
	p := 1 / (b - a*fp)
	f.p[at], f.e[at], f.f[at] = p, a*p, half*right*p
}

// try computes the step from now into next and returns the greatest corrector, K.
func (s *stepper) try(airC float64) float64 {
	parallel(s.threads, s.nz, func(k int) { s.across(k, float32(airC-s.refC)) })
	parallel(s.threads, s.ny, func(j int) { s.worst[j] = s.through(j) })
	worst := float32(0)
	for _, w := range s.worst {
		worst = max(worst, w)
	}
	return float64(worst)
}

// across works out the flows into the cells of layer k and sweeps along y.
func (s *stepper) across(k int, air float32) {
	nx, nz, plane := s.nx, s.nz, s.nx*s.nz
	dt, w := float32(s.dt), float32(s.dt/(2*s.dtPrev))
	temp, cure := s.now.temp, s.next.cure
	for j := range s.ny {
		base := (j*nz + k) * nx
		r := s.runs[j*nz+k]
		for i := int(r.a); i < int(r.b); i++ {
			at := base + i
			t := temp[at]
			var q float32
			if i > int(r.a) {
				q += s.gx[at-1] * (temp[at-1] - t)
			}
			if i+1 < nx {
				q += s.gx[at] * (temp[at+1] - t)
			}
			if k > 0 {
				q += s.gz[at-nx] * (temp[at-nx] - t)
			}
			if k+1 < nz {
				q += s.gz[at] * (temp[at+nx] - t)
			}
			if j > 0 {
				q += s.gy[at-plane] * (temp[at-plane] - t)
			}
			if j+1 < s.ny {
				q += s.gy[at] * (temp[at+plane] - t)
			}
			q += s.film[at] * (air - t)
			if m := s.mass[at]; m > 0 {
				d := max(0, s.now.rate[at]+w*(s.now.rate[at]-s.now.before[at]))
				cure[at] = d // kept for the corrector
				q += m * s.heatKJ * d
			}
			d := dt * q * s.y.p[at]
			if j > 0 {
				d += s.y.e[at] * s.flow[at-plane]
			}
			s.flow[at] = d
		}
	}
	for j := s.ny - 2; j >= 0; j-- {
		base := (j*nz + k) * nx
		r := s.runs[j*nz+k]
		for i := int(r.a); i < int(r.b); i++ {
			at := base + i
			s.flow[at] += s.y.f[at] * s.flow[at+plane]
		}
	}
}

// through sweeps row j along x and z, corrects, and returns the greatest corrector.
func (s *stepper) through(j int) float32 {
	nx, nz := s.nx, s.nz
	for k := range nz {
		base := (j*nz + k) * nx
		r := s.runs[j*nz+k]
		a, b := base+int(r.a), base+int(r.b)
		var last float32
		for at := a; at < b; at++ {
			last = s.x.p[at]*s.cap[at]*s.flow[at] + s.x.e[at]*last
			s.flow[at] = last
		}
		last = 0
		for at := b - 1; at >= a; at-- {
			last = s.flow[at] + s.x.f[at]*last
			s.flow[at] = last
		}
		if k == 0 {
			for at := a; at < b; at++ {
				s.flow[at] *= s.z.p[at] * s.cap[at]
			}
			continue
		}
		for at := a; at < b; at++ {
			s.flow[at] = s.z.p[at]*s.cap[at]*s.flow[at] + s.z.e[at]*s.flow[at-nx]
		}
	}
	worst := float32(0)
	for k := nz - 1; k >= 0; k-- {
		base := (j*nz + k) * nx
		r := s.runs[j*nz+k]
		for at := base + int(r.a); at < base+int(r.b); at++ {
			if k+1 < nz {
				s.flow[at] += s.z.f[at] * s.flow[at+nx]
			}
			worst = max(worst, s.correct(at))
		}
	}
	return worst
}

// correct turns the change of temperature of a cell into its new state.
func (s *stepper) correct(at int) float32 {
	t := s.now.temp[at] + s.flow[at]
	m := s.mass[at]
	if m == 0 {
		s.next.temp[at] = t
		return 0
	}
	dt := float32(s.dt)
	d, a0, r0 := s.next.cure[at], s.now.cure[at], s.now.rate[at]
	r := s.rates.at(a0+dt*d, t+float32(s.refC))
	more := dt*(r0+r)/2 - dt*d
	q := m * s.heatKJ / s.cap[at]
	s.next.temp[at] = t + q*more
	s.next.cure[at] = min(1, a0+dt*d+more)
	s.next.rate[at], s.next.before[at] = r, r0
	return float32(math.Abs(float64(q * more)))
}

// accept makes next the present.
func (s *stepper) accept() {
	s.now, s.next = s.next, s.now
	s.dtPrev = s.dt
}
