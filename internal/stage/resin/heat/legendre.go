package heat

import (
	"context"
	"math"
)

// crossStep is the longest step of Check, s, and mostStages its number of stages. Chosen.
const (
	crossStep  = 300.0
	mostStages = 41
)

// Check simulates the same cells by explicit steps of many stages, stabilised by Legendre
// polynomials, of second order in time, in double precision: a scheme that shares nothing
// with Solve but the cells and the rates. Source: [meyer-rkl2].
func (p *Problem) Check(ctx context.Context) (Cross, error) {
	var r legendre
	return p.cross(ctx, 0, r.step, func(stable float64) float64 {
		r.stable = stable
		return math.Min(crossStep, r.reach(mostStages))
	})
}

// A legendre holds what lies between the stages of a step.
type legendre struct {
	stable     float64
	t, a       [3][]float64 // temperature and cure: begin, last, one before
	t1, a1     []float64    // rates of change at the beginning
	dT, dA     []float64
	haveLength int
}

// reach returns the longest stable step of s stages.
func (r *legendre) reach(s int) float64 { return 0.9 * r.stable * float64(s*s+s-2) / 4 }

func (r *legendre) room(n int) {
	if r.haveLength == n {
		return
	}
	r.haveLength = n
	for k := range 3 {
		r.t[k], r.a[k] = make([]float64, n), make([]float64, n)
	}
	r.t1, r.a1, r.dT, r.dA = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
}

// step advances d and returns how many rates of change it took. The coefficients of stage
// j are
//
//	b = (j^2 + j - 2)/(2 j (j+1)), 1/3 for j < 3,  a = 1 - b,  w = 4/(s^2 + s - 2)
//	mu = (2j-1)/j b[j]/b[j-1],  nu = -(j-1)/j b[j]/b[j-2],  mu' = mu w,  gamma = -a[j-1] mu'
func (r *legendre) step(d *double, dt, airC float64) int {
	s := 3
	for r.reach(s) < dt && s < mostStages {
		s += 2
	}
	r.room(len(d.temp))
	b := func(j int) float64 {
		if j < 3 {
			return 1.0 / 3
		}
		return float64(j*j+j-2) / float64(2*j*(j+1))
	}
	w := 4 / float64(s*s+s-2)
	copy(r.t[0], d.temp)
	copy(r.a[0], d.cure)
	copy(r.t[2], d.temp)
	copy(r.a[2], d.cure)
	d.rates(d.temp, d.cure, r.t1, r.a1, airC)
	first := b(1) * w * dt
	for m := range d.temp {
		r.t[1][m] = d.temp[m] + first*r.t1[m]
		r.a[1][m] = d.cure[m] + first*r.a1[m]
	}
	for j := 2; j <= s; j++ {
		mu := float64(2*j-1) / float64(j) * b(j) / b(j-1)
		nu := -float64(j-1) / float64(j) * b(j) / b(j-2)
		muT := mu * w * dt
		gamma := -(1 - b(j-1)) * muT
		d.rates(r.t[1], r.a[1], r.dT, r.dA, airC)
		for m := range d.temp {
			d.temp[m] = mu*r.t[1][m] + nu*r.t[2][m] + (1-mu-nu)*r.t[0][m] + muT*r.dT[m] + gamma*r.t1[m]
			d.cure[m] = mu*r.a[1][m] + nu*r.a[2][m] + (1-mu-nu)*r.a[0][m] + muT*r.dA[m] + gamma*r.a1[m]
		}
		r.t[2], r.t[1] = r.t[1], r.t[2]
		r.a[2], r.a[1] = r.a[1], r.a[2]
		copy(r.t[1], d.temp)
		copy(r.a[1], d.cure)
	}
	return s
}
