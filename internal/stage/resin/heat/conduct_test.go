package heat

import (
	"context"
	"fmt"
	"math"
	"testing"

	"pourwright/internal/published"
)

// slab is a column of one material that does not react, with films above and below, from
// 1 C in air of 0 C.
func slab(deepMM float64, s Solid, up, down float64) Case {
	return Case{NX: 1, NY: 1, StepMM: 10, DeepMM: []float64{deepMM}, Body: s, Pour: s, Rate: func(a, t float64) float64 { return 0 },
		Pours: []Pour{{TempC: 1}}, EndH: 2.1, Air: Air{TempC: func(float64) float64 { return 0 }, Film: func(face int, _, _ float64) float64 { return [3]float64{up, down, 0}[face] }}}
}

// profile returns the middles of layers, mm, and their temperatures at a frame of a column.
func profile(r Result, frame int) (z, v []float64) {
	for k, t := range r.Frames[frame].CutC {
		if t == t {
			z, v = append(z, (r.LayersMM[k]+r.LayersMM[k+1])/2), append(v, float64(t))
		}
	}
	return z, v
}

func mustSolve(t *testing.T, c Case, o Options) Result {
	t.Helper()
	r, err := Solve(context.Background(), c, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// face extends the two cells next to the upper face to it, with the film's own balance.
func face(z, v []float64, h, k float64) float64 { return v[0] / (1 + h*z[0]/1000/k) }

var oldSlabs = []struct{ bi, zeta, c1 float64 }{
	{0.01, 0.09983, 1.00166}, {0.1, 0.31105, 1.01609}, {0.5, 0.65327, 1.07013}, {1, 0.86033, 1.11913},
	{2, 1.07687, 1.17846}, {5, 1.31384, 1.24025}, {10, 1.42887, 1.26196}, {100, 1.55525, 1.27309},
}

// TestPublishedSlabTable: late in the cooling of a slab the middle falls as
// C1 exp(-zeta^2 Fo), so two readings of the solver give zeta and C1.
func TestPublishedSlabTable(t *testing.T) {
	s := Solid{1000, 1000, 1}
	const half = 0.1
	for _, row := range oldSlabs {
		c := slab(2000*half, s, row.bi*s.KWMK/half, row.bi*s.KWMK/half)
		second := half * half * 1e6 // of Fo
		fo := [2]float64{1.2, 2.4}  // by then the second term of the series is gone
		c.EndH = 2.5 * second / 3600
		r := mustSolve(t, c, Options{DZMM: 1.25, StepS: second / 1000, Frames: []float64{fo[0] * second / 3600, fo[1] * second / 3600}})
		var mid [2]float64
		for n := range mid {
			_, v := profile(r, n)
			mid[n] = (9*(v[len(v)/2-1]+v[len(v)/2]) - v[len(v)/2-2] - v[len(v)/2+1]) / 16
		}
		zeta2 := math.Log(mid[0]/mid[1]) / (fo[1] - fo[0])
		published.Run(t,
			published.Check{Room: "resin/heat", Name: fmt.Sprintf("slab at Bi %g, zeta", row.bi), Ours: math.Sqrt(zeta2), Theirs: row.zeta, Unit: "1", Tol: 1e-4, Source: "incropera", Place: "Table 5.1"},
			published.Check{Room: "resin/heat", Name: fmt.Sprintf("slab at Bi %g, C1", row.bi), Ours: mid[0] * math.Exp(zeta2*fo[0]), Theirs: row.c1, Unit: "1", Tol: 2e-4, Source: "incropera", Place: "Table 5.1"})
	}
}

// TestPublishedPipeWall: a wall insulated behind, suddenly heated by oil.
func TestPublishedPipeWall(t *testing.T) {
	c := slab(40, Solid{1, 63.9 / 18.8e-6, 63.9}, 500, 0)
	c.Air.TempC, c.Pours[0].TempC = func(float64) float64 { return 60 }, -20
	r := mustSolve(t, c, Options{DZMM: 0.5, StepS: 2, Frames: []float64{480.0 / 3600}})
	z, v := profile(r, 0)
	skin := v[0] + (60-v[0])*(500*z[0]/1000/63.9)/(1+500*z[0]/1000/63.9)
	published.Run(t,
		published.Check{Room: "resin/heat", Name: "pipe wall after 480 s, insulated face", Ours: v[len(v)-1], Theirs: 42.9, Unit: "C", Tol: 0.2, Source: "incropera", Place: "Example 5.4"},
		published.Check{Room: "resin/heat", Name: "pipe wall after 480 s, heated face", Ours: skin, Theirs: 45.2, Unit: "C", Tol: 0.2, Source: "incropera", Place: "Example 5.4"})
}

var resinLike = Solid{1100, 1800, 0.2}

// TestPublishedResinSlab: slab, bar and block in films of 10 W/m2K.
func TestPublishedResinSlab(t *testing.T) {
	hours := []float64{1.0 / 6, 0.5, 1, 2}
	r := mustSolve(t, slab(50, resinLike, 10, 10), Options{DZMM: 0.5, StepS: 5, Frames: hours})
	want := [][2]float64{{0.992534, 0.677199}, {0.879215, 0.533054}, {0.687225, 0.410662}, {0.415236, 0.247990}}
	var checks []published.Check
	for n, w := range want {
		z, v := profile(r, n)
		mid := (9*(v[49]+v[50]) - v[48] - v[51]) / 16
		checks = append(checks,
			published.Check{Room: "resin/heat", Name: fmt.Sprintf("50 mm slab after %.0f s, middle", hours[n]*3600), Ours: mid, Theirs: w[0], Unit: "1", Tol: 2e-4, Source: "carslaw-jaeger", Place: "series"},
			published.Check{Room: "resin/heat", Name: fmt.Sprintf("50 mm slab after %.0f s, face", hours[n]*3600), Ours: face(z, v, 10, 0.2), Theirs: w[1], Unit: "1", Tol: 3e-4, Source: "carslaw-jaeger", Place: "series"})
	}
	checks = append(checks,
		published.Check{Room: "resin/heat", Name: "bar 50 x 100 mm after 3600 s, middle", Ours: block(t, 1), Theirs: 0.656260, Unit: "1", Tol: 1e-3, Source: "carslaw-jaeger", Place: "product of series"},
		published.Check{Room: "resin/heat", Name: "block 50 x 100 x 200 mm after 3600 s, middle", Ours: block(t, 100), Theirs: 0.656192, Unit: "1", Tol: 1e-3, Source: "carslaw-jaeger", Place: "product of series"})
	published.Run(t, checks...)
}

// block returns the middle of a bar 50 x 100 mm, ny squares of 2 mm long, after an hour;
// one square stands for a long bar.
func block(t *testing.T, ny int) float64 {
	c := slab(50, resinLike, 10, 10)
	c.NX, c.NY, c.StepMM = 50, ny, 2
	c.DeepMM = make([]float64, c.NX*c.NY)
	for i := range c.DeepMM {
		c.DeepMM[i] = 50
	}
	c.Air.Film = SteadyFilm(10)
	if ny == 1 {
		return bar(t, c)
	}
	r := mustSolve(t, c, Options{DXMM: 4, DZMM: 2, StepS: 60, Frames: []float64{1}, Threads: 2})
	return float64(r.Frames[0].TempC[(r.CY/2)*r.CX+r.CX/2])
}

// bar makes the case long enough for its ends not to matter in the middle: 400 mm.
func bar(t *testing.T, c Case) float64 {
	c.NY = 100
	c.StepMM = 4
	c.NX = 25
	c.DeepMM = make([]float64, c.NX*c.NY)
	for i := range c.DeepMM {
		c.DeepMM[i] = 50
	}
	r := mustSolve(t, c, Options{DXMM: 4, DZMM: 2, StepS: 60, Frames: []float64{1}, Threads: 2})
	return float64(r.Frames[0].TempC[(r.CY/2)*r.CX+r.CX/2])
}

// TestPublishedContact: warm resin on other materials, temperature where they touch.
func TestPublishedContact(t *testing.T) {
	for name, m := range map[string]struct {
		s    Solid
		want float64
	}{"concrete": {Solid{2000, 900, 1.2}, 31.992}, "board": {Solid{600, 1700, 0.14}, 44.994}, "foam": {Solid{25, 1450, 0.035}, 57.857}} {
		c := slab(100, resinLike, 0, 0)
		c.Body, c.BodyMM = m.s, 100
		c.Air.TempC, c.Pours[0].TempC, c.EndH = func(float64) float64 { return 20 }, 60, 0.1
		r := mustSolve(t, c, Options{DZMM: 0.5, Body: 200, StepS: 1, Frames: []float64{0.05}})
		_, v := profile(r, 0)
		n := len(v)
		touch := v[n-1] - (v[n-2]-v[n-1])*0.5 // straight from two cells to the face
		published.Run(t, published.Check{Room: "resin/heat", Name: "60 C resin on " + name + " of 20 C, where they touch", Ours: touch, Theirs: m.want, Unit: "C", Tol: 0.06, Source: "carslaw-jaeger", Place: "two half spaces"})
	}
}

// TestPublishedHalfSpace: a step at the face, and a film there.
func TestPublishedHalfSpace(t *testing.T) {
	c := slab(200, resinLike, 1e6, 0)
	r := mustSolve(t, c, Options{DZMM: 0.5, StepS: 2, Frames: []float64{1.0 / 6, 1}})
	f := mustSolve(t, slab(200, resinLike, 10, 0), Options{DZMM: 0.5, StepS: 2, Frames: []float64{1}})
	_, v0 := profile(r, 0)
	_, v1 := profile(r, 1)
	z, vf := profile(f, 0)
	at := func(v []float64, mm float64) float64 { n := int(mm / 0.5); return 1 - (v[n-1]+v[n])/2 }
	check := func(name string, ours, theirs float64) published.Check {
		return published.Check{Room: "resin/heat", Name: "half space, " + name, Ours: ours, Theirs: theirs, Unit: "1", Tol: 3e-4, Source: "carslaw-jaeger", Place: "error function"}
	}
	published.Run(t, check("step, 10 mm, 600 s", at(v0, 10), 0.363722), check("step, 20 mm, 3600 s", at(v1, 20), 0.458318),
		check("film, face, 3600 s", 1-face(z, vf, 10, 0.2), 0.559359), check("film, 10 mm, 3600 s", at(vf, 10), 0.360581))
}

// TestPublishedGeneration: a steady source in a slab, its face and middle over the air.
func TestPublishedGeneration(t *testing.T) {
	c := slab(50, resinLike, 10, 10)
	c.Pours[0].TempC, c.HJKG, c.EndH = 0, 1000/resinLike.RhoKGM3/1e-9, 60
	c.Rate = func(a, tempC float64) float64 { return 1e-9 }
	r := mustSolve(t, c, Options{DZMM: 0.5, Frames: []float64{60}})
	z, v := profile(r, 0)
	skin := face(z, v, 10, 0.2)
	skin += 1000 * z[0] / 1000 * z[0] / 1000 / 2 / 0.2 / (1 + 10*z[0]/1000/0.2) // half a cell's own heat
	published.Run(t,
		published.Check{Room: "resin/heat", Name: "slab with a steady source, face over air", Ours: skin, Theirs: 2.5, Unit: "K", Tol: 0.01, Source: "carslaw-jaeger", Place: "q L / h"},
		published.Check{Room: "resin/heat", Name: "slab with a steady source, middle over face", Ours: v[49] - skin, Theirs: 1.5625, Unit: "K", Tol: 0.01, Source: "carslaw-jaeger", Place: "q L^2 / 2 k"})
}

// TestPublishedRunaway: a slab with a source exp(theta) and cold faces settles below the
// critical strength of .878458 and runs away above it.
func TestPublishedRunaway(t *testing.T) {
	for _, q := range []struct {
		bi, critical float64
	}{{1e6, 0.878458}, {0.5, 0.15668}, {1, 0.27067}, {5, 0.61937}} {
		lo, hi := 0.5*q.critical, 1.5*q.critical
		for hi-lo > 4e-3*q.critical {
			if mid := (lo + hi) / 2; runsAway(t, mid, q.bi) {
				hi = mid
			} else {
				lo = mid
			}
		}
		published.Run(t, published.Check{Room: "resin/heat", Name: fmt.Sprintf("critical source of a slab at Bi %g", q.bi), Ours: (lo + hi) / 2, Theirs: q.critical, Unit: "1", Tol: 0.006 * q.critical, Source: "frank-kamenetskii", Place: "no consumption"})
	}
}

// runsAway simulates theta” + delta exp(theta) with Bi at both faces, half thickness 1 m.
func runsAway(t *testing.T, delta, bi float64) bool {
	c := slab(2000, Solid{1, 1e4, 1}, bi, bi)
	c.Pours[0].TempC, c.EndH = 0, 200e4/3600
	c.HJKG, c.Rate = 20e9, func(a, tempC float64) float64 { return 1e-9 * delta * math.Exp(math.Min(tempC/20, 20)) } // 20 C is 1
	r, err := Solve(context.Background(), c, Options{DZMM: 50, StepS: 2000, TolK: 0.02})
	return err != nil || r.PeakC > 80
}

// laminate is 25.4 mm between faces held at a cycle of temperatures, minutes and C.
func laminate(s Solid, hJKG float64, cycle [][2]float64, rate func(a, tk float64) float64) Case {
	c := slab(25.4, s, 1e6, 1e6)
	c.HJKG, c.EndH, c.Pours[0].TempC = hJKG, 2.6, cycle[0][1]
	c.Rate = func(a, tempC float64) float64 { return math.Max(0, rate(a, tempC+273.15)) / 60 }
	c.Air.TempC = func(hour float64) float64 {
		for i := 1; i < len(cycle); i++ {
			if p, q := cycle[i-1], cycle[i]; 60*hour < q[0] {
				return p[1] + (q[1]-p[1])*(60*hour-p[0])/(q[0]-p[0])
			}
		}
		return cycle[len(cycle)-1][1]
	}
	return c
}

// TestPublishedLaminates: two cures of thick laminates, kinetics from papers.
func TestPublishedLaminates(t *testing.T) {
	k := func(a, e, tk float64) float64 { return a * math.Exp(-e/8.314462618/tk) }
	c := laminate(Solid{1520, 942, 0.4457}, 198.9e3, [][2]float64{{0, 25}, {36, 116}, {96, 116}, {120, 177}}, func(a, tk float64) float64 {
		if a <= 0.3 {
			return (k(2.102e9, 80.7e3, tk) + k(-2.014e9, 77.8e3, tk)*a) * (1 - a) * (0.47 - a)
		}
		return k(1.96e5, 56.6e3, tk) * (1 - a)
	})
	r := mustSolve(t, c, Options{DZMM: 0.4, StepS: 5, Frames: []float64{45.0 / 60, 1, 1.5, 2}})
	at := func(n int) (tempC, cure float64) {
		_, v := profile(r, n)
		f, m := r.Frames[n], len(v)/2
		return v[m], float64(f.CutCure[m])
	}
	check := func(source, name string, ours, theirs float64, unit string, tol float64) published.Check {
		return published.Check{Room: "resin/heat", Name: name, Ours: ours, Theirs: theirs, Unit: unit, Tol: tol, Source: source, Place: "25.4 mm, independent finite volumes"}
	}
	t45, _ := at(0)
	_, a60 := at(1)
	_, a90 := at(2)
	_, a120 := at(3)
	const carbon, glass = "lee-loos-springer", "bogetti-gillespie"
	g := laminate(Solid{1890, 1260, 0.2163}, 77.5e3, [][2]float64{{0, 20}, {35, 90}, {75, 90}, {95, 130}}, func(a, tk float64) float64 {
		return k(3.7e22, 167.4e3, tk) * math.Pow(math.Max(a, 0), 0.524) * math.Pow(math.Max(0, 1-a), 1.476)
	})
	g.Pours[0].Cure = 1e-4
	r2 := mustSolve(t, g, Options{DZMM: 0.4, StepS: 5})
	published.Run(t,
		check(carbon, "carbon laminate, centre at 45 min", t45, 124.17, "C", 0.3), check(carbon, "carbon laminate, cure at 60 min", a60, 0.2276, "1", 0.002),
		check(carbon, "carbon laminate, cure at 90 min", a90, 0.2913, "1", 0.002), check(carbon, "carbon laminate, cure at 120 min", a120, 0.5890, "1", 0.003),
		check(carbon, "carbon laminate, peak", r.PeakC, 199.55, "C", 0.3), check(carbon, "carbon laminate, minute of the peak", 60*r.PeakH, 125.6, "min", 0.3),
		check(glass, "glass laminate, peak", r2.PeakC, 146.5, "C", 0.3), check(glass, "glass laminate, minute of the peak", 60*r2.PeakH, 83.4, "min", 0.3))
}
