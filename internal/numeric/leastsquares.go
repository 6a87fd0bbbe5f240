// Package numeric holds numerical methods that the libraries at hand do not serve.
package numeric

import "math"

// A Fit is the outcome of LeastSquares.
type Fit struct {
	X     []float64   // parameters
	Sum   float64     // of squared residuals
	Cov   [][]float64 // inverse of J'J at X: the parameters' covariance where residuals are in standard deviations
	Steps int
	Good  bool // it settled
}

const (
	mostIterations = 25
	settledAt      = 1e-3 // relative gain of a step
	difference     = 1e-3 // for the derivatives, in parameter units near 1
)

// LeastSquares minimises the sum of squares of residuals(x) from x0 by Levenberg and
// Marquardt's method with one-sided differences. Residuals that are not numbers count as
// very bad. Parameters should be of a size near one, such as logarithms.
// Source: [marquardt].
func LeastSquares(residuals func(x []float64) []float64, x0 []float64) Fit {
	x := append([]float64{}, x0...)
	r := guarded(residuals, x)
	f := Fit{X: x, Sum: sumOf(r)}
	lambda := 1e-3
	var jtj [][]float64
	for f.Steps < mostIterations {
		f.Steps++
		j := jacobian(residuals, f.X, r)
		var g []float64
		jtj, g = normal(j, r)
		moved := false
		for try := 0; try < 12 && !moved; try++ {
			step, ok := solve(damped(jtj, lambda), g)
			if !ok {
				lambda *= 10
				continue
			}
			next := make([]float64, len(x))
			for i := range next {
				next[i] = f.X[i] - step[i]
			}
			rn := guarded(residuals, next)
			if s := sumOf(rn); s < f.Sum {
				gain := (f.Sum - s) / math.Max(f.Sum, 1e-300)
				f.X, f.Sum, r, lambda, moved = next, s, rn, math.Max(lambda/10, 1e-12), true
				if gain < settledAt {
					f.Good = true
				}
			} else {
				lambda *= 10
			}
		}
		if !moved {
			f.Good = true
		}
		if f.Good {
			break
		}
	}
	f.Cov = inverse(jtj)
	return f
}

const veryBad = 1e6

func guarded(residuals func([]float64) []float64, x []float64) []float64 {
	r := residuals(append([]float64{}, x...))
	for i, v := range r {
		if math.IsNaN(v) || math.Abs(v) > veryBad {
			r[i] = veryBad
		}
	}
	return r
}

func sumOf(r []float64) float64 {
	s := 0.0
	for _, v := range r {
		s += v * v
	}
	return s
}

func jacobian(residuals func([]float64) []float64, x, r []float64) [][]float64 {
	out := make([][]float64, len(r))
	for i := range out {
		out[i] = make([]float64, len(x))
	}
	for k := range x {
		y := append([]float64{}, x...)
		h := difference * math.Max(1, math.Abs(x[k]))
		y[k] += h
		for i, v := range guarded(residuals, y) {
			out[i][k] = (v - r[i]) / h
		}
	}
	return out
}

// normal returns J'J and J'r.
func normal(j [][]float64, r []float64) ([][]float64, []float64) {
	n := len(j[0])
	a, g := make([][]float64, n), make([]float64, n)
	for p := range n {
		a[p] = make([]float64, n)
		for q := range n {
			for i := range j {
				a[p][q] += j[i][p] * j[i][q]
			}
		}
		for i := range j {
			g[p] += j[i][p] * r[i]
		}
	}
	return a, g
}

func damped(a [][]float64, lambda float64) [][]float64 {
	out := make([][]float64, len(a))
	for i := range a {
		out[i] = append([]float64{}, a[i]...)
		out[i][i] += lambda * math.Max(a[i][i], 1e-12)
	}
	return out
}

// solve solves a x = b by elimination with pivots; ok is false where a is singular.
func solve(a [][]float64, b []float64) (x []float64, ok bool) {
	n := len(b)
	m := make([][]float64, n)
	for i := range m {
		m[i] = append(append([]float64{}, a[i]...), b[i])
	}
	for c := range n {
		p := c
		for i := c + 1; i < n; i++ {
			if math.Abs(m[i][c]) > math.Abs(m[p][c]) {
				p = i
			}
		}
		if m[p][c] == 0 || math.IsNaN(m[p][c]) {
			return nil, false
		}
		m[c], m[p] = m[p], m[c]
		for i := range n {
			if i == c {
				continue
			}
			f := m[i][c] / m[c][c]
			for k := c; k <= n; k++ {
				m[i][k] -= f * m[c][k]
			}
		}
	}
	x = make([]float64, n)
	for i := range x {
		x[i] = m[i][n] / m[i][i]
	}
	return x, true
}

// inverse returns the inverse of a, nil where it is singular.
func inverse(a [][]float64) [][]float64 {
	n := len(a)
	out := make([][]float64, n)
	for i := range out {
		out[i] = make([]float64, n)
	}
	for c := range n {
		e := make([]float64, n)
		e[c] = 1
		col, ok := solve(a, e)
		if !ok {
			return nil
		}
		for i := range col {
			out[i][c] = col[i]
		}
	}
	return out
}

// Cholesky returns the lower triangle L with L L' = a; nil where a is not positive
// definite.
func Cholesky(a [][]float64) [][]float64 {
	l := make([][]float64, len(a))
	for i := range a {
		l[i] = make([]float64, len(a))
		for j := 0; j <= i; j++ {
			s := a[i][j]
			for k := range j {
				s -= l[i][k] * l[j][k]
			}
			if i == j {
				if !(s > 0) {
					return nil
				}
				l[i][i] = math.Sqrt(s)
				continue
			}
			l[i][j] = s / l[j][j]
		}
	}
	return l
}
