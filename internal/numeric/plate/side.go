package plate

import "math"

// A side is one direction of the plate with the supports of its ends.
type side struct {
	terms    int
	length   float64
	low, top Support
}

// basis holds value, first and second derivative of every term at one place.
type basis [3][]float64

func newBasis(terms int) basis {
	return basis{make([]float64, terms), make([]float64, terms), make([]float64, terms)}
}

// at returns the terms at s in -1..1, derivatives by s: first the cubics of the ends
// that may move or turn, then the polynomials whose curvature is a Legendre polynomial
// and which neither move nor turn at the ends:
//
//	f" = P_i,  f' = (P_i+1 - P_i-1)/(2i+1),  i = 2, 3 ...
func (d side) at(s float64) basis {
	out := newBasis(d.terms)
	n := 0
	for _, c := range cubics {
		if held := [2]Support{d.low, d.top}[c.end]; n < d.terms && (held == Free || held == Simple && !c.moves) {
			for k := range 3 {
				out[k][n] = c.at(s, k)
			}
			n++
		}
	}
	p := legendre(d.terms+4, s)
	for i := 2; n < d.terms; i, n = i+1, n+1 {
		m := float64(i)
		scale := math.Sqrt((2*m + 1) / 2)
		out[2][n] = scale * p[i]
		out[1][n] = scale * (p[i+1] - p[i-1]) / (2*m + 1)
		out[0][n] = scale * ((p[i+2]-p[i])/(2*m+3) - (p[i]-p[i-2])/(2*m-1)) / (2*m + 1)
	}
	return out
}

// A cubic moves or turns one end by one and leaves the other: c[0] + c[1] s + ...
type cubic struct {
	end   int // 0 low, 1 top
	moves bool
	c     [4]float64
}

var cubics = [4]cubic{
	{0, true, [4]float64{.5, -.75, 0, .25}}, {0, false, [4]float64{.25, -.25, -.25, .25}},
	{1, true, [4]float64{.5, .75, 0, -.25}}, {1, false, [4]float64{-.25, -.25, .25, .25}},
}

// at returns the k-th derivative at s.
func (c cubic) at(s float64, k int) float64 {
	switch k {
	case 1:
		return c.c[1] + s*(2*c.c[2]+s*3*c.c[3])
	case 2:
		return 2*c.c[2] + 6*c.c[3]*s
	}
	return c.c[0] + s*(c.c[1]+s*(c.c[2]+s*c.c[3]))
}

// legendre returns the polynomials of degree 0 to n-1.
func legendre(n int, s float64) []float64 {
	p := make([]float64, n)
	p[0], p[1] = 1, s
	for i := 1; i+1 < n; i++ {
		m := float64(i)
		p[i+1] = ((2*m+1)*s*p[i] - m*p[i-1]) / (m + 1)
	}
	return p
}

// integrals are the products of the terms along a side, over its true length.
type integrals struct {
	d0, d1, d2, d20 [][]float64 // of value, slope, curvature, curvature with value
	one, ramp       []float64   // with 1 and with x/length
}

func (d side) integrals() integrals {
	terms, h := d.terms, d.length/2
	table := func() [][]float64 {
		t := make([][]float64, terms)
		for i := range t {
			t[i] = make([]float64, terms)
		}
		return t
	}
	out := integrals{table(), table(), table(), table(), make([]float64, terms), make([]float64, terms)}
	nodes, weights := gauss(terms + 4)
	for k, s := range nodes {
		f, w := d.at(s), weights[k]
		for i := range terms {
			out.one[i] += w * h * f[0][i]
			out.ramp[i] += w * h * f[0][i] * (1 + s) / 2
			for j := range terms {
				out.d0[i][j] += w * h * f[0][i] * f[0][j]
				out.d1[i][j] += w / h * f[1][i] * f[1][j]
				out.d2[i][j] += w / (h * h * h) * f[2][i] * f[2][j]
				out.d20[i][j] += w / h * f[2][i] * f[0][j]
			}
		}
	}
	return out
}

// gauss returns nodes and weights of Gauss and Legendre on -1..1, exact to degree 2n-1,
// the nodes found by Newton's method.
func gauss(n int) (nodes, weights []float64) {
	for i := range n {
		x := math.Cos(math.Pi * (float64(i) + 0.75) / (float64(n) + 0.5))
		var slope float64
		for range 100 {
			p0, p1 := 1.0, x
			for k := 1; k < n; k++ {
				m := float64(k)
				p0, p1 = p1, ((2*m+1)*x*p1-m*p0)/(m+1)
			}
			slope = float64(n) * (x*p1 - p0) / (x*x - 1)
			step := p1 / slope
			x -= step
			if math.Abs(step) < 1e-15 {
				break
			}
		}
		nodes = append(nodes, x)
		weights = append(weights, 2/((1-x*x)*slope*slope))
	}
	return nodes, weights
}
