package numeric

import (
	"math"
	"testing"
)

// Rosenbrock's valley as two residuals: the minimum is 0 at (1, 1).
func TestRosenbrock(t *testing.T) {
	f := LeastSquares(func(x []float64) []float64 { return []float64{10 * (x[1] - x[0]*x[0]), 1 - x[0]} }, []float64{-1.2, 1})
	if math.Hypot(f.X[0]-1, f.X[1]-1) > 1e-3 || f.Sum > 1e-8 {
		t.Errorf("%+v", f)
	}
}

// A straight line has a closed form: slope and intercept, and their covariance.
func TestLine(t *testing.T) {
	xs, ys := []float64{0, 1, 2, 3, 4}, []float64{1.1, 2.9, 5.2, 6.8, 9.1}
	f := LeastSquares(func(p []float64) []float64 {
		var r []float64
		for i, x := range xs {
			r = append(r, p[0]+p[1]*x-ys[i])
		}
		return r
	}, []float64{0, 0})
	if math.Abs(f.X[0]-1.04) > 1e-6 || math.Abs(f.X[1]-1.99) > 1e-6 {
		t.Errorf("line %v", f.X)
	}
	if math.Abs(f.Cov[1][1]-0.1) > 1e-6 || math.Abs(f.Cov[0][0]-0.6) > 1e-6 {
		t.Errorf("covariance %v, want .6 and .1", f.Cov)
	}
}

func TestBadResidualsDoNotHang(t *testing.T) {
	f := LeastSquares(func([]float64) []float64 { return []float64{math.NaN(), math.Inf(1)} }, []float64{1, 2})
	if f.Steps > mostIterations || f.Cov != nil {
		t.Errorf("%+v", f)
	}
}
