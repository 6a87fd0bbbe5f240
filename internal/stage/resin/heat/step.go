package heat

// A state is what changes in time: temperatures above a reference, cure, and the rates
// of the last two steps.
type state struct {
	temp, cure, rate, before []float32
}

func newState(n int) state {
	all := make([]float32, 4*n+1)
	return state{all[: n+1 : n+1], all[n+1 : 2*n+1 : 2*n+1], all[2*n+1 : 3*n+1 : 3*n+1], all[3*n+1:]}
}

// A pull is what the first pass of a step needs of a cell: conductances to the next cell
// along x, to those before and after along y, over and under, and to air, W/K; the heat
// of its poured mass, J; factors of the sweep along y, the first by the cell's capacity.
//
// The factors of a line b x[i] - a x[i-1] - c x[i+1] = d are p = 1/(b - a f[i-1]), e = a p
// and f = c p:
//
//	d'[i] = p d[i] + e d'[i-1],  x[i] = d'[i] + f[i] x[i+1]
type pull struct{ right, fore, aft, over, under, film, heat, p, e float32 }

// A push is what the second pass needs: factors of the sweeps along x and z, those of the
// right hand side by the cell's capacity.
type push struct{ px, ex, fx, pz, ez, fz float32 }

// A stepper advances a grid.
type stepper struct {
	*grid
	threads int
	rates   *rateTable
	refC    float64
	heatKJ  float32 // J/kg of the poured material

	now, next  state
	flow       []float32 // work: what the sweeps turn into the change of temperature
	film       []float32 // W/K to air
	airy       []int32   // cells that touch air
	pulls      []pull
	pushes     []push
	fy         []float32
	warm       []float32 // K a unit of cure warms the cell by
	dt, dtPrev float64
	rows       []rowSum
	runs       []run // per row and layer: active cells
}

// A rowSum is what the second pass sees in a row of cells: the greatest corrector, and
// the warmest poured cell.
type rowSum struct {
	worst, hot float32
	at         int32
	_          [13]int32 // rows of different threads lie apart in memory
}

// A run is the active cells of a line along x: from a to before b.
type run struct{ a, b int32 }

func newStepper(g *grid, rates *rateTable, heatJKG, refC float64, threads int) *stepper {
	n := g.cells()
	s := &stepper{grid: g, threads: threads, rates: rates, refC: refC, heatKJ: float32(heatJKG), now: newState(n), next: newState(n),
		flow: make([]float32, n), film: make([]float32, n), fy: make([]float32, n), warm: make([]float32, n),
		pulls: make([]pull, n), pushes: make([]push, n), rows: make([]rowSum, g.ny)}
	s.findRuns()
	for at, c := range g.cap {
		if c == 0 {
			continue
		}
		if g.face[0][at]+g.face[1][at]+g.face[2][at] > 0 {
			s.airy = append(s.airy, int32(at))
		}
		s.warm[at] = g.mass[at] * s.heatKJ / c
	}
	parallel(threads, g.ny, s.couple)
	return s
}

func (s *stepper) findRuns() {
	s.runs = make([]run, s.ny*s.nz)
	for line := range s.runs {
		base := line * s.nx
		r := run{int32(s.nx), 0}
		for i := range s.nx {
			if s.cap[base+i] > 0 {
				r.a, r.b = min(r.a, int32(i)), int32(i+1)
			}
		}
		if r.a >= r.b {
			r = run{}
		}
		s.runs[line] = r
	}
}

// couple writes the conductances of row j. Those across the grid's border are 0.
func (s *stepper) couple(j int) {
	plane := s.nx * s.nz
	for at := j * plane; at < (j+1)*plane; at++ {
		p := &s.pulls[at]
		p.right, p.aft, p.heat = s.gx[at], s.gy[at], s.mass[at]*s.heatKJ
		p.under = s.gz[at]
		if at%plane >= s.nx {
			p.over = s.gz[at-s.nx]
		}
		if j > 0 {
			p.fore = s.gy[at-plane]
		}
	}
}

// factor prepares the sweeps along x and y for a step of dt seconds.
func (s *stepper) factor(dt float64) {
	s.dt = dt
	half := float32(dt / 2)
	parallel(s.threads, s.ny, func(j int) {
		for line := j * s.nz; line < (j+1)*s.nz; line++ {
			s.factorX(line, half)
		}
	})
	parallel(s.threads, s.nz, func(k int) { s.factorY(k, half) })
}

func (s *stepper) factorX(line int, half float32) {
	var left, before float32 // conductance and factor
	for at := line*s.nx + int(s.runs[line].a); at < line*s.nx+int(s.runs[line].b); at++ {
		c, q := s.cap[at], &s.pushes[at]
		if c == 0 {
			q.px, q.ex, q.fx, left, before = 0, 0, 0, 0, 0
			continue
		}
		right := s.gx[at]
		a := half * left
		p := 1 / (c + half*(left+right) - a*before)
		q.px, q.ex, q.fx = p*c, a*p, half*right*p
		left, before = right, q.fx
	}
}

func (s *stepper) factorY(k int, half float32) {
	plane := s.nx * s.nz
	for j := range s.ny {
		line := j*s.nz + k
		for at := line*s.nx + int(s.runs[line].a); at < line*s.nx+int(s.runs[line].b); at++ {
			c, q := s.cap[at], &s.pulls[at]
			if c == 0 {
				q.p, q.e, s.fy[at] = 0, 0, 0
				continue
			}
			a, before := half*q.fore, float32(0)
			if j > 0 {
				before = s.fy[at-plane]
			}
			p := 1 / (c + half*(q.fore+q.aft) - a*before)
			q.p, q.e, s.fy[at] = p, a*p, half*q.aft*p
		}
	}
}

// factorZ prepares the upright sweep for the step of factor and the films.
func (s *stepper) factorZ() {
	half := float32(s.dt / 2)
	parallel(s.threads, s.ny, func(j int) {
		for k := range s.nz {
			line := j*s.nz + k
			for at := line*s.nx + int(s.runs[line].a); at < line*s.nx+int(s.runs[line].b); at++ {
				c, q, g := s.cap[at], &s.pushes[at], &s.pulls[at]
				g.film = s.film[at]
				if c == 0 {
					q.pz, q.ez, q.fz = 0, 0, 0
					continue
				}
				a, before := half*g.over, float32(0)
				if k > 0 {
					before = s.pushes[at-s.nx].fz
				}
				p := 1 / (c + half*(g.over+g.under+g.film) - a*before)
				q.pz, q.ez, q.fz = p*c, a*p, half*g.under*p
			}
		}
	})
}

// try computes the step from now into next and returns the greatest corrector, K.
func (s *stepper) try(airC float64) float64 {
	parallel(s.threads, s.nz, func(k int) { s.across(k, float32(airC-s.refC)) })
	parallel(s.threads, s.ny, func(j int) { s.rows[j] = s.through(j) })
	worst := float32(0)
	for i := range s.rows {
		worst = max(worst, s.rows[i].worst)
	}
	return float64(worst)
}

// hottest returns the warmest poured cell of the step just tried, -1 without any.
func (s *stepper) hottest() (at int, tempC float64) {
	at = -1
	best := float32(0)
	for i := range s.rows {
		if r := &s.rows[i]; r.at >= 0 && (at < 0 || r.hot > best) {
			at, best = int(r.at), r.hot
		}
	}
	return at, float64(best) + s.refC
}

// across works out the flows into the cells of layer k and sweeps along y.
func (s *stepper) across(k int, air float32) {
	plane := s.nx * s.nz
	for j := range s.ny {
		line := j*s.nz + k
		if r := s.runs[line]; r.a < r.b {
			s.inflow(line*s.nx+int(r.a), int(r.b-r.a), k, j, air)
		}
	}
	for j := s.ny - 2; j >= 0; j-- {
		line := j*s.nz + k
		r := s.runs[line]
		n := int(r.b - r.a)
		if n == 0 {
			continue
		}
		from := line*s.nx + int(r.a)
		flow, after, f := s.flow[from:from+n], s.flow[from+plane:], s.fy[from:]
		after, f = after[:n], f[:n]
		for i := range flow {
			flow[i] += f[i] * after[i]
		}
	}
}

// inflow does n cells of a line from place `from` on: what flows into them in the step,
// and the sweep forward along y.
func (s *stepper) inflow(from, n, k, j int, air float32) {
	nx, plane := s.nx, s.nx*s.nz
	span := func(v []float32, shift int, has bool) []float32 {
		if !has {
			shift = 0 // its conductances are 0
		}
		return v[from+shift : from+shift+n]
	}
	temp := s.now.temp
	t, right := temp[from:from+n], temp[from+1:from+1+n]
	over, under := span(temp, -nx, k > 0)[:n], span(temp, nx, k+1 < s.nz)[:n]
	fore, aft := span(temp, -plane, j > 0)[:n], span(temp, plane, j+1 < s.ny)[:n]
	rate, before, guess := s.now.rate[from:from+n], s.now.before[from:from+n], s.next.cure[from:from+n]
	last := span(s.flow, -plane, j > 0)[:n]
	flow, pulls := s.flow[from:from+n], s.pulls[from:from+n]
	dt, w := float32(s.dt), float32(s.dt/(2*s.dtPrev))
	var carry float32 // what flows in from the left
	for i := range t {
		p, v := &pulls[i], t[i]
		out := p.right * (v - right[i])
		q := carry - out + p.over*(over[i]-v) + p.under*(under[i]-v) + p.fore*(fore[i]-v) + p.aft*(aft[i]-v) + p.film*(air-v)
		carry = out
		if p.heat > 0 {
			d := max(0, rate[i]+w*(rate[i]-before[i]))
			guess[i] = d // kept for the corrector
			q += p.heat * d
		}
		flow[i] = dt*q*p.p + p.e*last[i]
	}
}

// through sweeps row j along x and z, corrects, and returns what it saw.
func (s *stepper) through(j int) rowSum {
	for k := range s.nz {
		line := j*s.nz + k
		if r := s.runs[line]; r.a < r.b {
			s.along(line*s.nx+int(r.a), int(r.b-r.a), k > 0)
		}
	}
	sum := rowSum{at: -1}
	for k := s.nz - 1; k >= 0; k-- {
		line := j*s.nz + k
		if r := s.runs[line]; r.a < r.b {
			s.finish(line*s.nx+int(r.a), int(r.b-r.a), k+1 < s.nz, &sum)
		}
	}
	return sum
}

// along sweeps n cells from place `from` there and back along x, and downwards.
func (s *stepper) along(from, n int, hasOver bool) {
	flow, q := s.flow[from:from+n], s.pushes[from:from+n]
	var last float32
	for i := range flow {
		last = q[i].px*flow[i] + q[i].ex*last
		flow[i] = last
	}
	over := flow // its factors are 0
	if hasOver {
		over = s.flow[from-s.nx : from-s.nx+n]
	}
	over = over[:n]
	last = 0
	for i := n - 1; i >= 0; i-- {
		last = flow[i] + q[i].fx*last
		flow[i] = q[i].pz*last + q[i].ez*over[i]
	}
}

// finish sweeps n cells upwards and turns the changes of temperature into the new state.
func (s *stepper) finish(from, n int, hasUnder bool, sum *rowSum) {
	flow, q := s.flow[from:from+n], s.pushes[from:from+n]
	under := flow
	if hasUnder {
		under = s.flow[from+s.nx : from+s.nx+n]
	}
	under = under[:n]
	was, now, warm := s.now.temp[from:from+n], s.next.temp[from:from+n], s.warm[from:from+n]
	for i := range flow {
		flow[i] += q[i].fz * under[i]
		now[i] = was[i] + flow[i]
		if warm[i] > 0 {
			s.correct(from+i, sum)
		}
	}
}

// correct takes the rate at the end of the step into a poured cell.
func (s *stepper) correct(at int, sum *rowSum) {
	dt, t := float32(s.dt), s.next.temp[at]
	d, a0, r0 := s.next.cure[at], s.now.cure[at], s.now.rate[at]
	r := s.rates.at(a0+dt*d, t+float32(s.refC))
	more := min(dt*((r0+r)/2-d), 1-(a0+dt*d)) // no more heat than there is to react
	off := s.warm[at] * more
	t += off
	s.next.temp[at] = t
	s.next.cure[at] = a0 + dt*d + more
	s.next.rate[at], s.next.before[at] = r, r0
	sum.worst = max(sum.worst, off, -off)
	if sum.at < 0 || t > sum.hot {
		sum.at, sum.hot = int32(at), t
	}
}

// lossJ returns what the step just tried gives to air.
func (s *stepper) lossJ(airC float64) float64 {
	sum, over := 0.0, s.refC-airC
	for _, at := range s.airy {
		sum += float64(s.film[at]) * ((float64(s.now.temp[at])+float64(s.next.temp[at]))/2 + over)
	}
	return sum * s.dt
}

// contents returns the heat in the cells above the reference, J, and the poured mass
// times its cure, kg.
func (s *stepper) contents() (heatJ, curedKG float64) {
	for at, c := range s.cap {
		if c > 0 {
			heatJ += float64(c) * float64(s.now.temp[at])
			curedKG += float64(s.mass[at]) * float64(s.now.cure[at])
		}
	}
	return heatJ, curedKG
}

// accept makes next the present.
func (s *stepper) accept() {
	s.now, s.next = s.next, s.now
	s.dtPrev = s.dt
}
