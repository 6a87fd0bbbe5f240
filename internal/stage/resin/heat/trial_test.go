package heat

import (
	"context"
	"errors"
	"math"
	"testing"
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

// Three schemes that share only cells and rates find the same peak.
func TestSchemesAgree(t *testing.T) {
	c := trial(5)
	c.EndH = 14
	p, err := Prepare(c, Options{DXMM: 40, DZMM: 8})
	if err != nil {
		t.Fatal(err)
	}
	r, err := p.Solve(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	check, err := p.Check(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	plain, err := p.Explicit(context.Background(), 0)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%.3f C at %.3f h; by stages %.3f at %.3f, %d rates; by small steps %.3f at %.3f, %d rates", r.PeakC, r.PeakH, check.PeakC, check.PeakH, check.Steps, plain.PeakC, plain.PeakH, plain.Steps)
	if math.Abs(r.PeakC-check.PeakC) > 0.03 || math.Abs(check.PeakC-plain.PeakC) > 0.03 || math.Abs(r.PeakH-check.PeakH) > 0.15 {
		t.Error("the schemes disagree")
	}
}

func TestCancelled(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	c := trial(5)
	c.Air.TempC = func(h float64) float64 {
		if h > 3 {
			cancel()
		}
		return 22
	}
	if _, err := Solve(ctx, c, Options{DXMM: 20}); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped in the middle: %v", err)
	}
}

func BenchmarkMember(b *testing.B) {
	c := trial(5)
	for b.Loop() {
		if _, err := Solve(context.Background(), c, Options{DXMM: 20, DZMM: 4, TolK: 2e-3, Rough: true}); err != nil {
			b.Fatal(err)
		}
	}
}
