package heat

import (
	"context"
	"math"
	"testing"
	"time"
)

// steppedBasin is an invented basin 1400 x 450 mm: eight floors 8 mm apart, each an
// ellipse about a bent axis that runs off the right end.
func steppedBasin(step float64) (nx, ny int, deep []float64) {
	nx, ny = int(1400/step), int(450/step)
	deep = make([]float64, nx*ny)
	for j := range ny {
		for i := range nx {
			x, y := (float64(i)+0.5)*step, (float64(j)+0.5)*step
			axis := 225 + 60*math.Sin(x/220)
			half := 60 + 130*math.Sqrt(math.Max(0, x-60)/1340)
			if u := math.Abs(y-axis) / half; u < 1 && x > 60 {
				deep[j*nx+i] = 8 * math.Min(8, 1+math.Floor(9*(1-u*u)*math.Min(1, (x-60)/400)))
			}
		}
	}
	return nx, ny, deep
}

func trial(step float64) Case {
	nx, ny, deep := steppedBasin(step)
	rate := func(a, tempC float64) float64 {
		tk := 1/295.15 - 1/(tempC+273.15)
		k1, k2 := 4e-6*math.Exp(50e3/8.314462618*tk), 6e-6*math.Exp(45e3/8.314462618*tk)
		tg := -40 + 110*0.4*a/(1-0.6*a)
		return (k1 + k2*math.Pow(math.Max(a, 0), 0.9)) * (1 - a) * (1 - a) / (1 + math.Exp((tg-tempC-12)/7))
	}
	return Case{NX: nx, NY: ny, StepMM: step, DeepMM: deep, Body: Solid{2000, 900, 1.2}, BodyMM: 19, Pour: Solid{1100, 1900, 0.2}, HJKG: 280e3,
		Rate: rate, Set: func(a, t float64) bool { return a > 0.6 }, Walls: []Wall{{Edge: 1, FromMM: 0, ToMM: 450, DeepMM: 80}}, Wall: Solid{600, 1700, 0.14}, WallMM: 18,
		Pours: []Pour{{TempC: 22}}, EndH: 48, Air: Air{TempC: func(float64) float64 { return 22 }, Film: SteadyFilm(8.5)}}
}

func TestTrial(t *testing.T) {
	c := trial(2)
	for _, o := range []Options{{DXMM: 20, Rough: true}, {DXMM: 20, Threads: 2, Rough: true}, {DXMM: 10, Rough: true}, {DXMM: 10, Threads: 2, Rough: true}} {
		start := time.Now()
		b := newBody(c)
		t1 := time.Since(start)
		r, err := b.solve(context.Background(), o.orDefaults(c))
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("dx %.0f threads %d: %d cells %d steps body %v all %v peak %.2f at %.2f h wall %.1f defect %.2g set %.1f", o.DXMM, o.Threads, r.Cells, r.Steps, t1, time.Since(start), r.PeakC, r.PeakH, r.WallC, r.EnergyDefect(), r.SetH)
	}
}
