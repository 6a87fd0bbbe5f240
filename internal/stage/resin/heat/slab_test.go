package heat

import (
	"context"
	"math"
	"testing"
)

// inert is a block of one material that does not react, poured at once.
func inert(nx, ny int, deep float64, s Solid, film float64) Case {
	d := make([]float64, nx*ny)
	for i := range d {
		d[i] = deep
	}
	return Case{NX: nx, NY: ny, StepMM: 2, DeepMM: d, Body: s, BodyMM: 4, Pour: s, Rate: func(a, t float64) float64 { return 0 },
		Pours: []Pour{{TempC: 60}}, EndH: 1, Air: Air{TempC: func(float64) float64 { return 20 }, Film: SteadyFilm(film)}}
}

func TestCoolingSlabKeepsItsBooks(t *testing.T) {
	s := Solid{1100, 1800, 0.2}
	c := inert(10, 10, 46, s, 10)
	r, err := Solve(context.Background(), c, Options{DZMM: 2})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d cells, %d steps, stored %.1f lost %.1f J", r.Cells, r.Steps, r.StoredJ, r.LostJ)
	if math.Abs(r.StoredJ+r.LostJ) > 1e-3*math.Abs(r.LostJ) {
		t.Errorf("stored %.3f J, lost %.3f J", r.StoredJ, r.LostJ)
	}
}

// A cell that loses nothing and whose capacity grows with temperature ends where its heat
// of reaction puts it: c (T - 25) + rise (T - 25)^2 / 2.
func TestCapacityGrowsWithTemperature(t *testing.T) {
	c := slab(20, Solid{1100, 1850, 0.2}, 0, 0)
	c.PourRiseJKGK2, c.HJKG, c.EndH, c.Pours[0].TempC = 3, 300e3, 100, 20
	c.Air.TempC = func(float64) float64 { return 20 }
	c.Rate = func(a, tempC float64) float64 { return 2e-5 * math.Exp(0.05*(tempC-20)) * (0.1 + a) * (1 - a) }
	r := mustSolve(t, c, Options{DZMM: 5, Frames: []float64{99}})
	heat := func(tempC float64) float64 { return 1850*(tempC-25) + 1.5*(tempC-25)*(tempC-25) }
	f := r.Frames[0]
	got, want := heat(float64(f.CutC[0]))-heat(20), 300e3*float64(f.CutCure[0])
	if math.Abs(got-want) > 1e-4*want || f.CutC[0] < 150 {
		t.Errorf("%.1f C holds %.0f J/kg, %.0f were set free", f.CutC[0], got, want)
	}
	if d := r.EnergyDefect(); d > 1e-4 {
		t.Errorf("books are off by %.2g", d)
	}
}

// What is poured warm into a cold body brings its own heat, and no more.
func TestPourBringsItsHeat(t *testing.T) {
	c := inert(10, 10, 46, Solid{1100, 1850, 0.2}, 0)
	c.PourRiseJKGK2, c.EndH = 3, 0.01
	c.Pours = []Pour{{TopMM: 20, TempC: 60}, {AtH: 0.005, TempC: 50}}
	p, err := Prepare(c, Options{DZMM: 7})
	if err != nil {
		t.Fatal(err)
	}
	var held []float64
	if _, err := p.stages(func(s *stepper, pour int, fromH, endH float64) error {
		h, _ := s.contents()
		held = append(held, h)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	heat := func(kg, tempC float64) float64 { // over the air's 20 C
		f := func(t float64) float64 { return 1850*(t-25) + 1.5*(t-25)*(t-25) }
		return kg * (f(tempC) - f(20))
	}
	const square = 20 * 20 * 1e-6 * 1.1 // kg a mm of depth
	first := heat(26*square, 60)
	for i, want := range []float64{first, first + heat(20*square, 50)} {
		if math.Abs(held[i]-want) > 1e-4*want {
			t.Errorf("after pour %d the cells hold %.2f J, poured were %.2f", i+1, held[i], want)
		}
	}
}

// A cooling body is followed as closely by the steps the solver chooses as by short ones.
func TestStepsFollowConduction(t *testing.T) {
	c := inert(10, 10, 46, Solid{1100, 1800, 0.2}, 10)
	c.EndH = 6
	hours := []float64{0.25, 1, 3, 6}
	own := mustSolve(t, c, Options{DZMM: 2, Frames: hours})
	short := mustSolve(t, c, Options{DZMM: 2, Frames: hours, StepS: 5})
	t.Logf("%d steps, short %d", own.Steps, short.Steps)
	for n := range hours {
		for i, v := range own.Frames[n].TempC {
			if w := short.Frames[n].TempC[i]; v == v && math.Abs(float64(v-w)) > 0.1 {
				t.Fatalf("at %g h: %.3f C, by short steps %.3f", hours[n], v, w)
			}
		}
	}
}
