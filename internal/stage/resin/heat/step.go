package heat

import (
	"math"

	"pourwright/internal/stage/resin/heat/lanes"
)

// try computes the step from now into next and returns the greatest correction, K.
func (s *stepper) try(airC float64) float64 {
	air, w := float32(airC-s.refC), float32(s.dt/(2*s.dtPrev))
	parallel(s.threads, s.nz, func(k int) { s.across(k, air, w) })
	parallelBy(s.threads, s.ny, func(thread, j int) { s.rows[j] = s.through(j, w, &s.desks[thread]) })
	worst := float32(0)
	for i := range s.rows {
		worst = max(worst, s.rows[i].worst)
	}
	return float64(worst)
}

// across works out the flows into the cells of layer k and sweeps along y.
func (s *stepper) across(k int, air, w float32) {
	dt := float32(s.dt)
	for j := range s.ny {
		l := s.lines[j*s.nz+k]
		if l.b == 0 {
			continue
		}
		from, n := s.index(int(l.a), j, k), int(l.b-l.a)
		clear(s.Flow[from : from+n])
		s.React(s.index(int(l.pa), j, k), int(l.pb-l.pa), w)
		s.Inflow(from, n, dt, air)
	}
	for j := s.ny - 2; j >= 0; j-- {
		l := s.lines[j*s.nz+k]
		s.Back(s.index(int(l.a), j, k), int(l.b-l.a))
	}
}

// through sweeps row j along x and z, corrects, and returns what it saw.
func (s *stepper) through(j int, w float32, d *desk) rowSum {
	sum := rowSum{line: -1}
	for n := j * s.perRow; n < (j+1)*s.perRow; n++ {
		if b := &s.blocks[n]; b.b > 0 {
			s.Along(s.index(b.a, j, b.layer), b.count, b.b-b.a, b.pe, b.f, d.swept[b.layer*s.nx+b.a:], d.work)
		}
	}
	for k := range s.nz {
		if l := s.lines[j*s.nz+k]; l.b > 0 {
			s.Down(s.index(int(l.a), j, k), int(l.b-l.a), -s.nx*min(k, 1), d.swept[k*s.nx+int(l.a):])
		}
	}
	for k := s.nz - 1; k >= 0; k-- {
		n := j*s.nz + k
		l := s.lines[n]
		if l.b == 0 {
			continue
		}
		s.Up(s.index(int(l.a), j, k), int(l.b-l.a), s.nx*min(s.nz-1-k, 1))
		if l.pb > 0 {
			sum.add(s.Correct(s.index(int(l.pa), j, k), int(l.pb-l.pa), float32(s.dt), w), int32(n))
		}
	}
	return sum
}

func (r *rowSum) add(seen lanes.Seen, line int32) {
	r.worst = max(r.worst, seen.Worst)
	if r.line < 0 || seen.Hot > r.hot {
		r.line, r.hot = line, seen.Hot
	}
}

// hottest returns the warmest poured cell of the step just tried, -1 without any.
func (s *stepper) hottest() (at int, tempC float64) {
	best := rowSum{line: -1}
	for i := range s.rows {
		if r := &s.rows[i]; r.line >= 0 && (best.line < 0 || r.hot > best.hot) {
			best = *r
		}
	}
	if best.line < 0 {
		return -1, s.refC
	}
	for at = int(best.line) * s.nx; at < (int(best.line)+1)*s.nx; at++ {
		if s.Mass[at] > 0 && s.TempNext[at] == best.hot {
			return at, float64(best.hot) + s.refC
		}
	}
	return -1, math.NaN() // not a number is nowhere
}

// lossJ returns what the step just tried gives to air: as the sweeps have it, whose change
// of temperature is left in the flow.
func (s *stepper) lossJ(airC float64) float64 {
	const chunk = 4096
	sums := make([]float64, (len(s.windows)+chunk-1)/chunk)
	over, weight := float32(s.refC-airC), float32(s.weight)
	parallel(s.threads, len(sums), func(n int) {
		sum := 0.0
		for _, w := range s.windows[n*chunk : min((n+1)*chunk, len(s.windows))] {
			sum += float64(w.film * (s.Temp[w.at] + weight*s.Flow[w.at] + over))
		}
		sums[n] = sum
	})
	total := 0.0
	for _, v := range sums {
		total += v
	}
	return total * s.dt
}

// contents returns the heat in the cells above the reference, J, and the poured mass
// times its cure, kg.
func (s *stepper) contents() (heatJ, curedKG float64) {
	for at, c := range s.Cap {
		if c > 0 {
			heatJ += s.heatOf(at, float64(s.Temp[at]))
			curedKG += float64(s.Mass[at]) * float64(s.Cure[at])
		}
	}
	return heatJ, curedKG
}

// heatOf returns the heat of a cell t over the reference, J.
func (s *stepper) heatOf(at int, t float64) float64 {
	return float64(s.Cap[at])*t + float64(s.Mass[at]*s.RiseJKGK2)*t*t/2
}

// warmth is the temperature over the reference at which a cell holds so much heat.
func (s *stepper) warmth(at int, heatJ float64) float64 {
	c, rise := float64(s.Cap[at]), float64(s.Mass[at]*s.RiseJKGK2)
	return 2 * heatJ / (c + math.Sqrt(math.Max(0, c*c+2*rise*heatJ)))
}

// accept makes next the present.
func (s *stepper) accept() {
	s.Temp, s.TempNext = s.TempNext, s.Temp
	s.Cure, s.CureNext = s.CureNext, s.Cure
	s.Before, s.Rate, s.RateNext = s.Rate, s.RateNext, s.Before
	s.dtPrev = s.dt
}
