package plate

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// navier is the double sine series of a plate with simple edges under an even load.
func navier(p Plate, x, y float64) float64 {
	sum := 0.0
	for m := 1; m < 200; m += 2 {
		for n := 1; n < 200; n += 2 {
			k := float64(m*m)/(p.A*p.A) + float64(n*n)/(p.B*p.B)
			sum += math.Sin(float64(m)*math.Pi*x/p.A) * math.Sin(float64(n)*math.Pi*y/p.B) / (float64(m*n) * k * k)
		}
	}
	return 16 * p.Q0 / (math.Pow(math.Pi, 6) * p.Rigidity) * sum
}

func TestLikeSines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		p := Plate{A: draw("a", 300, 400), B: 300 * draw("ratio", 1, 4), Rigidity: draw("d", 1e5, 1e7), Poisson: draw("nu", 0, .4), Q0: draw("q", 1e-4, 1e-2)}
		b, ok := Bend(p)
		x, y := p.A*draw("x", .1, .9), p.B*draw("y", .1, .9)
		if want := navier(p, x, y); !ok || math.Abs(b.Deflection(x, y)-want) > 1e-4*math.Abs(b.Deflection(p.A/2, p.B/2)) {
			t.Fatalf("%+v at %v, %v: %v, want %v", p, x, y, b.Deflection(x, y), want)
		}
	})
}

// TestStrip: a plate held on two sides only is a beam when nu is 0.
func TestStrip(t *testing.T) {
	b, ok := Bend(Plate{A: 1, B: 2, Rigidity: 1, Left: Simple, Right: Simple, Bottom: Free, Top: Free, Q0: 1})
	if !ok || math.Abs(b.Deflection(.5, 1)-5./384) > 1e-9 || math.Abs(b.MomentX(.5, .3)-.125) > 1e-8 {
		t.Errorf("%v, %v", b.Deflection(.5, 1), b.MomentX(.5, .3))
	}
	cantilever, ok := Bend(Plate{A: 1, B: 2, Rigidity: 1, Left: Clamped, Right: Free, Bottom: Free, Top: Free, QX: 1})
	if !ok || math.Abs(cantilever.Deflection(1, 1)-11./120) > 1e-9 {
		t.Errorf("cantilever %v, want 11/120", cantilever.Deflection(1, 1))
	}
}

func TestTurned(t *testing.T) {
	a, _ := Bend(Plate{A: 1, B: 2, Rigidity: 1, Poisson: .3, Left: Clamped, Top: Free, QY: 1})
	b, _ := Bend(Plate{A: 2, B: 1, Rigidity: 1, Poisson: .3, Bottom: Clamped, Right: Free, QX: 1})
	if math.Abs(a.Deepest()-b.Deepest()) > 1e-9 || math.Abs(a.MostMoment()-b.MostMoment()) > 1e-7 {
		t.Errorf("turned plate bends otherwise: %v, %v", a.Deepest(), b.Deepest())
	}
}

func TestNotHeld(t *testing.T) {
	for _, p := range []Plate{
		{}, {A: 1, B: 1, Rigidity: math.NaN(), Q0: 1}, {A: 1, B: math.Inf(1), Rigidity: 1}, {A: 1, B: 1, Rigidity: 1, Q0: math.NaN()},
		{A: 1, B: 1, Rigidity: 1, Poisson: .5}, {A: 1, B: 1, Rigidity: 1, Left: Free, Right: Free, Bottom: Free, Top: Free, Q0: 1},
		{A: 1, B: 1, Rigidity: 1, Left: Simple, Right: Free, Bottom: Free, Top: Free, Q0: 1},
	} {
		if _, ok := Bend(p); ok {
			t.Errorf("%+v is held by nothing", p)
		}
	}
}

// TestEdgesConverge: more terms change the slowest value, the moment on a clamped
// edge, by less than a thousandth; and a water load and its mirror add up to an even
// one.
func TestEdgesConverge(t *testing.T) {
	edge := func(terms int, q0, qx float64) (low, high float64) {
		b, _ := Bend(Plate{A: 1, B: 2, Rigidity: 1, Poisson: .3, Left: Clamped, Right: Clamped, Bottom: Clamped, Top: Clamped, Q0: q0, QX: qx, Terms: terms})
		return b.MomentX(0, 1), b.MomentX(1, 1)
	}
	even, _ := edge(24, 1, 0)
	short, _ := edge(14, 1, 0)
	shallow, deep := edge(24, 0, 1)
	if math.Abs(short/even-1) > 1e-3 || math.Abs(shallow+deep-even) > 1e-9 {
		t.Errorf("edge moments %v, %v; parts %v, %v", short, even, shallow, deep)
	}
}
