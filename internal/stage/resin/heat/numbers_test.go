package heat

import (
	"context"
	"errors"
	"fmt"
	"math"
	"testing"
	"time"
)

// TestNothingHollow: no resin at all must be refused: PeakC is -Inf without an error.
func TestNothingHollow(t *testing.T) {
	for _, d := range []float64{0, -5} {
		c := trough()
		for i := range c.DeepMM {
			c.DeepMM[i] = d
		}
		if r, err := Solve(context.Background(), c, Options{}); err == nil && math.IsInf(r.PeakC, 0) {
			t.Errorf("depths %g: peak %v, no error", d, r.PeakC)
		}
	}
}

// within solves c and fails the test where it panics, takes longer than 5 s, or returns
// without an error something that is no number or no temperature of this world.
func within(t *testing.T, name string, c Case, o Options) (Result, error) {
	t.Helper()
	type ending struct {
		r     Result
		err   error
		panic any
	}
	done := make(chan ending, 1)
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	go func() {
		var e ending
		defer func() { e.panic = recover(); done <- e }()
		e.r, e.err = Solve(ctx, c, o)
	}()
	select {
	case e := <-done:
		switch {
		case e.panic != nil:
			t.Errorf("%s: panics: %v", name, e.panic)
		case errors.Is(e.err, context.DeadlineExceeded):
			t.Errorf("%s: goes on for 5 s", name)
		case e.err == nil && (math.IsNaN(e.r.PeakC) || math.Abs(e.r.PeakC) > 2000 || math.IsNaN(e.r.HeatJ+e.r.LostJ+e.r.StoredJ)):
			t.Errorf("%s: no error and a peak of %v C, books %v %v %v", name, e.r.PeakC, e.r.HeatJ, e.r.LostJ, e.r.StoredJ)
		}
		return e.r, e.err
	case <-time.After(7 * time.Second):
		t.Errorf("%s: hangs", name)
	}
	return Result{}, errors.New("hangs")
}

// TestHostileNumbers: no number, in any field, ends in an error or in a sane result.
func TestHostileNumbers(t *testing.T) {
	fields := map[string]func(c *Case, x float64){
		"StepMM": func(c *Case, x float64) { c.StepMM = x }, "DeepMM": func(c *Case, x float64) { c.DeepMM[12] = x }, "BodyMM": func(c *Case, x float64) { c.BodyMM = x },
		"Body.Rho": func(c *Case, x float64) { c.Body.RhoKGM3 = x }, "Body.C": func(c *Case, x float64) { c.Body.CJKGK = x }, "Body.K": func(c *Case, x float64) { c.Body.KWMK = x },
		"Pour.Rho": func(c *Case, x float64) { c.Pour.RhoKGM3 = x }, "Pour.C": func(c *Case, x float64) { c.Pour.CJKGK = x }, "Pour.K": func(c *Case, x float64) { c.Pour.KWMK = x },
		"rise": func(c *Case, x float64) { c.PourRiseJKGK2 = x }, "H": func(c *Case, x float64) { c.HJKG = x }, "EndH": func(c *Case, x float64) { c.EndH = x },
		"AtH": func(c *Case, x float64) { c.Pours[0].AtH = x }, "TopMM": func(c *Case, x float64) { c.Pours[0].TopMM = x }, "TempC": func(c *Case, x float64) { c.Pours[0].TempC = x }, "Cure": func(c *Case, x float64) { c.Pours[0].Cure = x },
		"air": func(c *Case, x float64) { c.Air.TempC = func(float64) float64 { return x } }, "film": func(c *Case, x float64) { c.Air.Film = SteadyFilm(x) }, "scale": func(c *Case, x float64) { c.Air.Scale = x },
		"wall.Deep": func(c *Case, x float64) { c.Walls = []Wall{{0, 0, 50, x}} }, "wall.From": func(c *Case, x float64) { c.Walls = []Wall{{0, x, 50, 20}} }, "WallMM": func(c *Case, x float64) { c.Walls, c.WallMM = []Wall{{0, 0, 50, 20}}, x },
		"Wall.K": func(c *Case, x float64) { c.Walls, c.Wall.KWMK = []Wall{{0, 0, 50, 20}}, x }, "Wall.C": func(c *Case, x float64) { c.Walls, c.Wall.CJKGK = []Wall{{0, 0, 50, 20}}, x },
		"below.K": func(c *Case, x float64) { c.Below = &Solid{25, 1450, x} }, "below.C": func(c *Case, x float64) { c.Below = &Solid{25, x, 0.035} },
		"rate": func(c *Case, x float64) { c.Rate = func(float64, float64) float64 { return x } },
	}
	for name, spoil := range fields {
		for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 1e-9, 1e9} {
			t.Run(fmt.Sprintf("%s=%g", name, x), func(t *testing.T) {
				c := trough()
				spoil(&c, x)
				within(t, name, c, Options{DXMM: 10, DZMM: 5})
			})
		}
	}
	for name, spoil := range map[string]func(o *Options, x float64){"DXMM": func(o *Options, x float64) { o.DXMM = x }, "DZMM": func(o *Options, x float64) { o.DZMM = x }, "TolK": func(o *Options, x float64) { o.TolK = x },
		"StepS": func(o *Options, x float64) { o.StepS = x }, "Frames": func(o *Options, x float64) { o.Frames = []float64{x} }, "Marks": func(o *Options, x float64) { o.Marks[0] = x }} {
		for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0} {
			t.Run(fmt.Sprintf("%s=%g", name, x), func(t *testing.T) {
				var o Options
				spoil(&o, x)
				within(t, name, trough(), o)
			})
		}
	}
}
