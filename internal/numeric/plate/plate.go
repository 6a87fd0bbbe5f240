package plate

import "math"

// Support is how an edge is held.
type Support int

// The supports.
const (
	Simple  Support = iota // neither sinks nor is kept from turning
	Clamped                // neither sinks nor turns
	Free
)

// Plate is a rectangle 0..A by 0..B under the load Q0 + QX x/A + QY y/B.
type Plate struct {
	A, B                     float64 // mm
	Rigidity                 float64 // N mm
	Poisson                  float64
	Left, Right, Bottom, Top Support // x = 0, x = A, y = 0, y = B
	Q0, QX, QY               float64 // N/mm2
	Terms                    int     // of the series along each side, 2 to 40; 0: 14
}

// Rigidity returns E t^3 / 12(1 - nu^2), N mm.
func Rigidity(modulusMPa, thicknessMM, poisson float64) float64 {
	return modulusMPa * thicknessMM * thicknessMM * thicknessMM / (12 * (1 - poisson*poisson))
}

// usualTerms gives deflections to 1e-5 and moments to 1e-3 of plates up to five times
// as long as wide.
const usualTerms = 14

// A Bent plate knows its shape.
type Bent struct {
	p    Plate
	x, y side
	c    []float64
}

// Bend solves p. ok is false where p has no size, no rigidity, or is not held.
func Bend(p Plate) (b Bent, ok bool) {
	for _, v := range []float64{p.A, p.B, p.Rigidity} {
		if !(v > 0) || math.IsInf(v, 0) {
			return Bent{}, false
		}
	}
	if math.IsNaN(p.Q0+p.QX+p.QY) || math.IsInf(p.Q0+p.QX+p.QY, 0) || !(p.Poisson >= 0 && p.Poisson < 0.5) {
		return Bent{}, false
	}
	if p.Terms <= 0 {
		p.Terms = usualTerms
	}
	terms := min(max(p.Terms, 2), 40)
	p.Terms = terms
	b = Bent{p: p, x: side{terms, p.A, p.Left, p.Right}, y: side{terms, p.B, p.Bottom, p.Top}}
	x, y := b.x.integrals(), b.y.integrals()
	n := terms * terms
	k := make([][]float64, n)
	b.c = make([]float64, n)
	for i := range n {
		k[i] = make([]float64, i+1)
		for j := range i + 1 {
			k[i][j] = p.Rigidity * energy(&x, &y, p.Poisson, i/terms, i%terms, j/terms, j%terms)
		}
		s, t := i/terms, i%terms
		b.c[i] = p.Q0*x.one[s]*y.one[t] + p.QX*x.ramp[s]*y.one[t] + p.QY*x.one[s]*y.ramp[t]
	}
	return b, solve(k, b.c)
}

// energy is one entry of the stiffness for D = 1.
func energy(x, y *integrals, nu float64, s, t, u, v int) float64 {
	return x.d2[s][u]*y.d0[t][v] + x.d0[s][u]*y.d2[t][v] +
		nu*(x.d20[s][u]*y.d20[v][t]+x.d20[u][s]*y.d20[t][v]) +
		2*(1-nu)*x.d1[s][u]*y.d1[t][v]
}

// solve replaces c by k^-1 c, by Cholesky on the lower triangle k.
func solve(k [][]float64, c []float64) bool {
	n := len(c)
	for i := range n {
		whole := k[i][i]
		for j := range i + 1 {
			sum := k[i][j]
			for m := range j {
				sum -= k[i][m] * k[j][m]
			}
			if j < i {
				k[i][j] = sum / k[j][j]
				continue
			}
			if !(sum > 1e-13*whole) {
				return false
			}
			k[i][i] = math.Sqrt(sum)
		}
	}
	for i := range n {
		for m := range i {
			c[i] -= k[i][m] * c[m]
		}
		c[i] /= k[i][i]
	}
	for i := n - 1; i >= 0; i-- {
		for m := i + 1; m < n; m++ {
			c[i] -= k[m][i] * c[m]
		}
		c[i] /= k[i][i]
	}
	return true
}

// derivative returns d^m/dx^m d^n/dy^n of w at x, y.
func (b Bent) derivative(x, y float64, m, n int) float64 {
	fx, fy := b.x.at(2*x/b.p.A-1), b.y.at(2*y/b.p.B-1)
	sum, terms := 0.0, b.p.Terms
	for i, c := range b.c {
		sum += c * fx[m][i/terms] * fy[n][i%terms]
	}
	return sum * math.Pow(2/b.p.A, float64(m)) * math.Pow(2/b.p.B, float64(n))
}

// Deflection returns w at x, y, mm.
func (b Bent) Deflection(x, y float64) float64 { return b.derivative(x, y, 0, 0) }

// MomentX returns the moment that bends the plate along x, N mm/mm, positive where
// the face away from the load is in tension.
func (b Bent) MomentX(x, y float64) float64 {
	return -b.p.Rigidity * (b.derivative(x, y, 2, 0) + b.p.Poisson*b.derivative(x, y, 0, 2))
}

// MomentY returns the moment that bends the plate along y, N mm/mm.
func (b Bent) MomentY(x, y float64) float64 {
	return -b.p.Rigidity * (b.derivative(x, y, 0, 2) + b.p.Poisson*b.derivative(x, y, 2, 0))
}

// Deepest returns the largest deflection on a net of 40 by 40, mm.
func (b Bent) Deepest() float64 { return b.most(b.Deflection) }

// MostMoment returns the largest moment of either direction on the same net, N mm/mm.
func (b Bent) MostMoment() float64 { return max(b.most(b.MomentX), b.most(b.MomentY)) }

func (b Bent) most(f func(x, y float64) float64) float64 {
	const net = 40
	best := 0.0
	for i := range net + 1 {
		for j := range net + 1 {
			best = max(best, math.Abs(f(b.p.A*float64(i)/net, b.p.B*float64(j)/net)))
		}
	}
	return best
}
