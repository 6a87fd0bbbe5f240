package svg

import (
	"fmt"
	"math"
	"strings"

	"pourwright/internal/geom"
)

// A matrix maps (x, y) to (ax + cy + e, bx + dy + f).
// Source: [w3c-svg2] section 8.4.
type matrix struct{ a, b, c, d, e, f float64 }

var identity = matrix{a: 1, d: 1}

// then returns the matrix that applies n first and m after it.
func (m matrix) then(n matrix) matrix {
	return matrix{
		a: m.a*n.a + m.c*n.b, b: m.b*n.a + m.d*n.b,
		c: m.a*n.c + m.c*n.d, d: m.b*n.c + m.d*n.d,
		e: m.a*n.e + m.c*n.f + m.e, f: m.b*n.e + m.d*n.f + m.f,
	}
}

// point returns p under m.
func (m matrix) point(p geom.Point) geom.Point {
	return geom.Point{X: m.a*p.X + m.c*p.Y + m.e, Y: m.b*p.X + m.d*p.Y + m.f}
}

// vector returns v under m without its shift.
func (m matrix) vector(v geom.Point) geom.Point {
	return geom.Point{X: m.a*v.X + m.c*v.Y, Y: m.b*v.X + m.d*v.Y}
}

func (m matrix) finite() bool {
	sum := m.a + m.b + m.c + m.d + m.e + m.f
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// unit returns what a step of one user unit becomes, as the root of the area's scale.
func (m matrix) unit() float64 { return math.Sqrt(math.Abs(m.a*m.d - m.b*m.c)) }

func translate(x, y float64) matrix { return matrix{a: 1, d: 1, e: x, f: y} }
func scale(x, y float64) matrix     { return matrix{a: x, d: y} }

func rotate(deg float64) matrix {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	if math.Mod(deg, 90) == 0 { // quarter turns are exact
		sin, cos = math.Round(sin), math.Round(cos)
	}
	return matrix{a: cos, b: sin, c: -sin, d: cos}
}

// parseTransform reads a list of transform functions, with or without commas.
// Source: [w3c-svg2] section 8.5, [w3c-svg11] section 7.6.
func parseTransform(s string) (matrix, error) {
	m := identity
	if strings.TrimSpace(s) == "none" {
		return m, nil
	}
	sc := scanner{s: s}
	for sc.separators(); !sc.done(); sc.separators() {
		name := sc.word()
		args, err := sc.arguments()
		if err != nil {
			return m, fmt.Errorf("%s: %w", clip(name), err)
		}
		one, err := transformOf(name, args)
		if err != nil {
			return m, err
		}
		m = m.then(one)
	}
	if !m.finite() {
		return m, fmt.Errorf("the numbers are too large")
	}
	return m, nil
}

func transformOf(name string, v []float64) (matrix, error) {
	switch {
	case name == "matrix" && len(v) == 6:
		return matrix{v[0], v[1], v[2], v[3], v[4], v[5]}, nil
	case name == "translate" && len(v) == 1:
		return translate(v[0], 0), nil
	case name == "translate" && len(v) == 2:
		return translate(v[0], v[1]), nil
	case name == "scale" && len(v) == 1:
		return scale(v[0], v[0]), nil
	case name == "scale" && len(v) == 2:
		return scale(v[0], v[1]), nil
	case name == "rotate" && len(v) == 1:
		return rotate(v[0]), nil
	case name == "rotate" && len(v) == 3:
		return translate(v[1], v[2]).then(rotate(v[0])).then(translate(-v[1], -v[2])), nil
	case name == "skewX" && len(v) == 1:
		return matrix{a: 1, d: 1, c: math.Tan(v[0] * math.Pi / 180)}, nil
	case name == "skewY" && len(v) == 1:
		return matrix{a: 1, d: 1, b: math.Tan(v[0] * math.Pi / 180)}, nil
	}
	return identity, fmt.Errorf("%q with %d numbers is not a transform", clip(name), len(v))
}
