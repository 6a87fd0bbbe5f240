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

// grids runs values on a grid and on one twice as fine in space and time, and returns the
// finer ones with the error to be reckoned with: for a scheme of second order a third of
// the difference, times 3 as is usual where there are only two grids (the grid
// convergence index).
func grids(values func(fine int) []float64) (v, err []float64) {
	coarse := values(1)
	v = values(2)
	for i := range v {
		err = append(err, math.Abs(v[i]-coarse[i]))
	}
	return v, err
}

// A row is a value from outside with half a unit of its last printed digit.
type row struct {
	name        string
	theirs, tol float64
	unit        string
}

// onGrids holds the values of the finer grid against rows; tolerances are the printed
// precision and what the two grids leave open.
func onGrids(t *testing.T, source, place string, rows []row, values func(fine int) []float64) {
	t.Helper()
	v, err := grids(values)
	for i, r := range rows {
		published.Run(t, published.Check{Room: "resin/heat", Name: r.name, Ours: v[i], Theirs: r.theirs, Unit: r.unit, Tol: r.tol + err[i], Source: source, Place: place})
	}
}

// face extends the upper cell to its face, with the film's own balance.
func face(z, v []float64, h, k float64) float64 { return v[0] / (1 + h*z[0]/1000/k) }

var oldSlabs = []struct{ bi, zeta, c1 float64 }{
	{0.01, 0.09983, 1.00166}, {0.1, 0.31105, 1.01609}, {0.5, 0.65327, 1.07013}, {1, 0.86033, 1.11913},
	{2, 1.07687, 1.17846}, {5, 1.31384, 1.24025}, {10, 1.42887, 1.26196}, {100, 1.55525, 1.27309},
}

// center is the temperature in the middle between an even number of layers, to third order.
func center(v []float64) float64 {
	n := len(v) / 2
	return (9*(v[n-1]+v[n]) - v[n-2] - v[n+1]) / 16
}

// TestPublishedSlabTable: late in the cooling of a slab the middle falls as
// C1 exp(-zeta^2 Fo), so two readings of the solver give zeta and C1. Steps are shares of
// the time in which it falls: changes a step far below it drown in single precision.
func TestPublishedSlabTable(t *testing.T) {
	s := Solid{RhoKGM3: 1000, CJKGK: 1000, KWMK: 1}
	const half = 0.1
	for _, q := range oldSlabs {
		rows := []row{{fmt.Sprintf("slab at Bi %g, zeta", q.bi), q.zeta, 5e-6, "1"}, {fmt.Sprintf("slab at Bi %g, C1", q.bi), q.c1, 5e-6, "1"}}
		onGrids(t, "incropera", "Table 5.1", rows, func(fine int) []float64 {
			c := slab(2000*half, s, q.bi*s.KWMK/half, q.bi*s.KWMK/half)
			second := half * half * 1e6 // of Fo
			step := second / 500 * math.Min(10, math.Max(1, 1/q.zeta/q.zeta)) / float64(fine)
			fo := [2]float64{1.2, 2.4} // by then the second term of the series is gone
			c.EndH = 2.5 * second / 3600
			r := mustSolve(t, c, Options{DZMM: 2.5 / float64(fine), StepS: step, Frames: []float64{fo[0] * second / 3600, fo[1] * second / 3600}})
			var mid [2]float64
			for n := range mid {
				_, v := profile(r, n)
				mid[n] = center(v)
			}
			zeta2 := math.Log(mid[0]/mid[1]) / (fo[1] - fo[0])
			return []float64{math.Sqrt(zeta2), mid[0] * math.Exp(zeta2*fo[0])}
		})
	}
}

// TestPublishedPipeWall: a wall insulated behind, suddenly heated by oil. The example
// takes one term of the series with rounded numbers; it is stated to .2 C.
func TestPublishedPipeWall(t *testing.T) {
	c := slab(40, Solid{RhoKGM3: 1, CJKGK: 63.9 / 18.8e-6, KWMK: 63.9}, 500, 0)
	c.Air.TempC, c.Pours[0].TempC = func(float64) float64 { return 60 }, -20
	r := mustSolve(t, c, Options{DZMM: 0.5, StepS: 2, Frames: []float64{480.0 / 3600}})
	z, v := profile(r, 0)
	skin := v[0] + (60-v[0])*(500*z[0]/1000/63.9)/(1+500*z[0]/1000/63.9)
	published.Run(t,
		published.Check{Room: "resin/heat", Name: "pipe wall after 480 s, insulated face", Ours: v[len(v)-1], Theirs: 42.9, Unit: "C", Tol: 0.2, Source: "incropera", Place: "Example 5.4"},
		published.Check{Room: "resin/heat", Name: "pipe wall after 480 s, heated face", Ours: skin, Theirs: 45.2, Unit: "C", Tol: 0.2, Source: "incropera", Place: "Example 5.4"})
}

var resinLike = Solid{RhoKGM3: 1100, CJKGK: 1800, KWMK: 0.2}

// TestPublishedResinSlab: slab, bar and block in films of 10 W/m2K.
func TestPublishedResinSlab(t *testing.T) {
	hours := []float64{1.0 / 6, 0.5, 1, 2}
	want := [][2]float64{{0.992534, 0.677199}, {0.879215, 0.533054}, {0.687225, 0.410662}, {0.415236, 0.247990}}
	var rows []row
	for n, w := range want {
		rows = append(rows, row{fmt.Sprintf("50 mm slab after %.0f s, middle", hours[n]*3600), w[0], 5e-7, "1"}, row{fmt.Sprintf("50 mm slab after %.0f s, face", hours[n]*3600), w[1], 5e-7, "1"})
	}
	onGrids(t, "carslaw-jaeger", "series", rows, func(fine int) (out []float64) {
		r := mustSolve(t, slab(50, resinLike, 10, 10), Options{DZMM: 1 / float64(fine), StepS: 10 / float64(fine), Frames: hours})
		for n := range hours {
			z, v := profile(r, n)
			out = append(out, center(v), face(z, v, 10, 0.2))
		}
		return out
	})
	onGrids(t, "carslaw-jaeger", "product of series", []row{{"bar 50 x 100 mm after 3600 s, middle", 0.656260, 5e-7, "1"}, {"block 50 x 100 x 200 mm after 3600 s, middle", 0.656192, 5e-7, "1"}},
		func(fine int) []float64 { return []float64{block(t, 800, fine), block(t, 200, fine)} })
}

// block returns the middle of a block 50 x 100 mm, longMM long, after an hour; 400 mm
// stand for a long bar: its ends are ten times as far away as heat gets in the time.
func block(t *testing.T, longMM float64, fine int) float64 {
	c := slab(50, resinLike, 10, 10)
	c.StepMM = 5 / float64(fine)
	c.NX, c.NY = 20*fine, int(longMM/c.StepMM)
	c.DeepMM = make([]float64, c.NX*c.NY)
	for i := range c.DeepMM {
		c.DeepMM[i] = 50
	}
	c.Air.Film, c.EndH = SteadyFilm(10), 1.1
	r := mustSolve(t, c, Options{DXMM: c.StepMM, DZMM: 2.5 / float64(fine), StepS: 60 / float64(fine), Frames: []float64{1}, Threads: 2})
	rows := make([]float64, r.CY)
	for j := range rows {
		line := make([]float64, r.CX)
		for i := range line {
			line[i] = float64(r.Frames[0].TempC[j*r.CX+i])
		}
		rows[j] = center(line)
	}
	return center(rows)
}

// TestPublishedContact: warm resin on other materials, temperature where they touch:
// (e1 T1 + e2 T2)/(e1 + e2) with e the root of k rho c.
func TestPublishedContact(t *testing.T) {
	for _, q := range []struct {
		name string
		s    Solid
		want float64
	}{
		{"concrete", Solid{RhoKGM3: 2000, CJKGK: 900, KWMK: 1.2}, 31.992}, {"board of 600 kg/m3", Solid{RhoKGM3: 600, CJKGK: 1700, KWMK: 0.14}, 44.992},
		{"foam of 25 kg/m3", Solid{RhoKGM3: 25, CJKGK: 1450, KWMK: 0.035}, 57.857},
	} {
		onGrids(t, "carslaw-jaeger", "two half spaces", []row{{"60 C resin on " + q.name + " of 20 C, where they touch", q.want, 5e-4, "C"}}, func(fine int) []float64 {
			c := slab(100, resinLike, 0, 0)
			c.Body, c.BodyMM = q.s, 100
			c.Air.TempC, c.Pours[0].TempC, c.EndH = func(float64) float64 { return 20 }, 60, 0.1
			r := mustSolve(t, c, Options{DZMM: 1 / float64(fine), Body: 100 * fine, StepS: 2 / float64(fine), Frames: []float64{0.05}})
			_, v := profile(r, 0)
			n := len(v)
			return []float64{v[n-1] - (v[n-2]-v[n-1])*0.5} // straight from two cells to the face
		})
	}
}

// TestPublishedHalfSpace: a step at the face, and a film there.
func TestPublishedHalfSpace(t *testing.T) {
	rows := []row{{"half space, step, 10 mm, 600 s", 0.363722, 5e-7, "1"}, {"half space, step, 20 mm, 3600 s", 0.458318, 5e-7, "1"},
		{"half space, film, face, 3600 s", 0.559359, 5e-7, "1"}, {"half space, film, 10 mm, 3600 s", 0.360581, 5e-7, "1"}}
	onGrids(t, "carslaw-jaeger", "error function", rows, func(fine int) []float64 {
		o := Options{DZMM: 1 / float64(fine), StepS: 4 / float64(fine), Frames: []float64{1.0 / 6, 1}}
		r := mustSolve(t, slab(200, resinLike, 1e6, 0), o)
		f := mustSolve(t, slab(200, resinLike, 10, 0), o)
		_, v0 := profile(r, 0)
		_, v1 := profile(r, 1)
		z, vf := profile(f, 1)
		at := func(v []float64, mm float64) float64 { n := int(mm/o.DZMM + 0.5); return 1 - (v[n-1]+v[n])/2 }
		return []float64{at(v0, 10), at(v1, 20), 1 - face(z, vf, 10, 0.2), at(vf, 10)}
	})
}

// TestPublishedGeneration: a steady source in a slab, its face and middle over the air.
func TestPublishedGeneration(t *testing.T) {
	rows := []row{{"slab with a steady source, face over air", 2.5, 5e-5, "K"}, {"slab with a steady source, middle over face", 1.5625, 5e-5, "K"}}
	onGrids(t, "carslaw-jaeger", "q L / h and q L^2 / 2 k", rows, func(fine int) []float64 {
		c := slab(50, resinLike, 10, 10)
		c.Pours[0].TempC, c.HJKG, c.EndH = 0, 1000/resinLike.RhoKGM3/1e-9, 60
		c.Rate = func(a, tempC float64) float64 { return 1e-9 }
		r := mustSolve(t, c, Options{DZMM: 1 / float64(fine), Frames: []float64{60}})
		z, v := profile(r, 0)
		m := z[0] / 1000
		skin := face(z, v, 10, 0.2) + 1000*m*m/2/0.2/(1+10*m/0.2) // half a cell's own heat
		return []float64{skin, center(v) - skin}
	})
}
