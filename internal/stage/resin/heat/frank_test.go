package heat

import (
	"context"
	"fmt"
	"math"
	"testing"

	"pourwright/internal/published"
)

// fkUnit is how many C count as 1 of theta: the table of rates reaches far enough for it.
const fkUnit = 20.0

// fkMost is the theta from which on the source grows no further, so that what has run away
// comes to rest as well. At rest below the critical source theta is at most 1.61 (sphere).
const fkMost = 3.0

// A vessel is a shape with a source delta exp(theta), its case for a delta of 1, and the
// half thickness or radius, m, that delta goes by. Its stuff has conductivity 1 and a heat
// capacity that makes a Fo of one 1e4 s.
type vessel struct {
	c     Case
	o     Options
	scale float64 // delta of the shape for one of the rate
}

const fkSpan = 1e4 // s, of one Fo for a radius of 1 m

// vesselOf makes a vessel whose slowest mode falls by slowest a Fo, and follows it for spans
// of that.
func vesselOf(c Case, o Options, radiusM, slowest, spans float64) vessel {
	c.Pours[0].TempC, c.HJKG, c.EndH = 0, fkUnit*1e9, spans/slowest*fkSpan/3600
	c.Pour = Solid{RhoKGM3: 1, CJKGK: fkSpan, KWMK: 1}
	c.Body = c.Pour
	o.StepS, o.TolK = fkSpan/20/slowest, 0.02
	return vessel{c, o, radiusM * radiusM}
}

// settles reports whether it comes to rest with a source delta exp(theta), and the theta
// it has in the end.
func (v vessel) settles(delta float64) (theta float64, ok bool) {
	c := v.c
	c.Rate = func(a, tempC float64) float64 {
		return 1e-9 * delta / v.scale * math.Exp(math.Min(tempC/fkUnit, fkMost))
	}
	r, err := Solve(context.Background(), c, v.o)
	return r.PeakC / fkUnit, err == nil && r.PeakC < 0.8*fkMost*fkUnit
}

const (
	fkSpans = 200.0
	fkSlow  = 2.5e-4 + 1.5e-4

	roundSpans = 100.0
	roundSlow  = 1e-3 + 1.5e-4
)

// critical finds the greatest source that settles, to 3e-4 of it. In fkSpans what
// is no more than (pi/fkSpans)^2 above it has not run away yet.
func (v vessel) critical(about float64) float64 {
	low, high := 0.8*about, 1.2*about
	for high-low > 3e-4*about {
		if mid := (low + high) / 2; v.holds(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

func (v vessel) holds(delta float64) bool { _, ok := v.settles(delta); return ok }

// fkSlab has n layers between faces of Biot number bi, 2 m apart; zeta is its slowest mode.
func fkSlab(n int, bi, zeta, spans float64) vessel {
	return vesselOf(slab(2000, Solid{}, bi, bi), Options{DZMM: 2000 / float64(n)}, 1, zeta*zeta, spans)
}

const fkCold = 1e7 // W/m2K: a face as cold as the air

// TestPublishedRunaway: a slab with a source exp(theta) settles below a critical strength
// and runs away above it.
func TestPublishedRunaway(t *testing.T) {
	for _, q := range []struct{ bi, zeta, critical, half float64 }{{fkCold, math.Pi / 2, 0.878458, 5e-7}, {0.5, 0.65327, 0.15668, 5e-6}, {1, 0.86033, 0.27067, 5e-6},
		{2, 1.07687, 0.42085, 5e-6}, {5, 1.31384, 0.61937, 5e-6}, {10, 1.42887, 0.72898, 5e-6}} {
		v, err := grids(func(fine int) []float64 {
			return []float64{fkSlab(16*fine, q.bi, q.zeta, fkSpans).critical(q.critical)}
		})
		published.Run(t, published.Check{Room: "resin/heat", Name: fmt.Sprintf("critical source of a slab at Bi %g", q.bi), Ours: v[0], Theirs: q.critical, Unit: "1",
			Tol: q.half + err[0] + fkSlow*q.critical, Source: "frank-kamenetskii", Place: "no consumption; two grids, bisection to 3e-4"})
	}
}

// TestPublishedRunawayTheta: how warm the middle is at the critical source. Below it theta
// falls as the root of what is missing, so three sources give the limit.
func TestPublishedRunawayTheta(t *testing.T) {
	rows := []row{{"theta of a slab at the critical source", 1.1868, 5e-5, "1"}}
	v, err := grids(func(fine int) []float64 {
		s := fkSlab(16*fine, fkCold, math.Pi/2, 1200)
		most := s.critical(0.878458)
		var th [3]float64
		for i, missing := range []float64{0.04, 0.01, 0.0025} {
			th[i], _ = s.settles(most * (1 - missing))
		}
		a, b := 2*th[1]-th[0], 2*th[2]-th[1]
		return []float64{(4*b - a) / 3, b, math.Abs(b-a) / 3}
	})
	// an error of 3e-4 in the critical source shifts the last theta by what its root does
	shift := math.Abs(v[1]-v[0]) + 0.5*(math.Sqrt(0.0025+fkSlow)-math.Sqrt(0.0025))*10
	published.Run(t, published.Check{Room: "resin/heat", Name: rows[0].name, Ours: v[0], Theirs: rows[0].theirs, Unit: "1", Tol: rows[0].tol + err[0] + v[2] + shift, Source: "frank-kamenetskii", Place: "two grids, three sources"})
}

// round is a raster of n squares to 2 m, hollow within a circle of 1 m, and the depth there.
func round(n int, deep func(r float64) float64) Case {
	c := slab(1, Solid{}, 0, 0)
	c.NX, c.NY, c.StepMM, c.DeepMM = n, n, 2000/float64(n), make([]float64, n*n)
	for j := range n {
		for i := range n {
			if r := math.Hypot(float64(2*i+1)/float64(n)-1, float64(2*j+1)/float64(n)-1); r < 1 {
				c.DeepMM[j*n+i] = deep(r)
			}
		}
	}
	c.Air.Film = func(face int, _, _ float64) float64 { return [3]float64{0, fkCold, fkCold}[face] }
	return c
}

// holdsM3 is the volume of the cells that a case really gets.
func holdsM3(t *testing.T, c Case, o Options) float64 {
	p, err := Prepare(c, o)
	if err != nil {
		t.Fatal(err)
	}
	kg := 0.0
	for _, m := range p.first.mass {
		kg += float64(m)
	}
	return kg / c.Pour.RhoKGM3
}

// fkCylinder is a disc of one layer without films above and below. Its radius is that of a
// circle of the same area as its squares.
func fkCylinder(t *testing.T, n int) vessel {
	c := round(n, func(float64) float64 { return 100 })
	c.Air.Film = func(face int, _, _ float64) float64 { return [3]float64{0, 0, fkCold}[face] }
	v := vesselOf(c, Options{DXMM: c.StepMM, DZMM: 100}, 1, 5.783, roundSpans)
	area := holdsM3(t, v.c, v.o) / 0.1
	v.scale = area / math.Pi
	return v
}

// TestPublishedRunawayRound: the same in a cylinder, in columns. A stair of
// squares stands for the round wall, which errs by the square and scatters with how the
// squares happen to fall: the value is the mean over rasters, and the tolerance thrice what
// the mean over twice as coarse ones differs by (the grid convergence index of first order),
// and twice the standard error of both.
func TestPublishedRunawayRound(t *testing.T) {
	for _, q := range []struct {
		name         string
		critical     float64
		of           func(t *testing.T, n int) vessel
		coarse, fine []int
	}{{"cylinder", 2.0000, fkCylinder, []int{15, 16, 17}, []int{30, 32, 34}}} {
		c, ec := scatter(q.coarse, func(n int) float64 { return q.of(t, n).critical(q.critical) })
		f, ef := scatter(q.fine, func(n int) float64 { return q.of(t, n).critical(q.critical) })
		t.Logf("%s: %.4f +- %.4f, %.4f +- %.4f", q.name, c, ec, f, ef)
		published.Run(t, published.Check{Room: "resin/heat", Name: "critical source of a " + q.name, Ours: f, Theirs: q.critical, Unit: "1",
			Tol: 5e-5 + 3*math.Abs(f-c) + 2*(ec+ef) + roundSlow*q.critical, Source: "frank-kamenetskii", Place: "no consumption; rasters, bisection to 3e-4"})
	}
}

// scatter returns the mean over rasters and its standard error.
func scatter(squares []int, value func(n int) float64) (mean, err float64) {
	var v []float64
	for _, n := range squares {
		v = append(v, value(n))
		mean += v[len(v)-1] / float64(len(squares))
	}
	for _, x := range v {
		err += (x - mean) * (x - mean)
	}
	n := float64(len(v))
	return mean, math.Sqrt(err / (n - 1) / n)
}
