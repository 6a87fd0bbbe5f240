package heat

import (
	"context"
	"math"
	"testing"
	"time"
)

// trough is a small hollow of 3 x 3 squares in a body, quick to simulate.
func trough() Case {
	c := small()
	c.NX, c.NY, c.StepMM = 5, 5, 10
	c.DeepMM = make([]float64, 25)
	for _, at := range []int{6, 7, 8, 11, 12, 13, 16, 17, 18} {
		c.DeepMM[at] = 20
	}
	c.Pours, c.EndH = []Pour{{TempC: 22}}, 3
	return c
}

// sane reports whether a run ended with an error or with numbers of this world, in time.
func sane(t *testing.T, name string, c Case, o Options) {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
	defer cancel()
	r, err := Solve(ctx, c, o)
	if ctx.Err() != nil {
		t.Errorf("%s: goes on for 20 s", name)
	}
	if err == nil && (!(math.Abs(r.PeakC) < 2e5) || math.IsNaN(r.HeatJ+r.LostJ+r.StoredJ)) {
		t.Errorf("%s: no error and a peak of %v C, books %v %v %v", name, r.PeakC, r.HeatJ, r.LostJ, r.StoredJ)
	}
}

// TestHostileShapes: shapes and pours at the edge of sense end in an error or a sane result.
func TestHostileShapes(t *testing.T) {
	for name, spoil := range map[string]func(c *Case){
		"no body": func(c *Case) { c.BodyMM = 0 }, "body of a hair": func(c *Case) { c.BodyMM = 1e-3 },
		"one square":                 func(c *Case) { c.NX, c.NY, c.DeepMM = 1, 1, []float64{20} },
		"one square, no body":        func(c *Case) { c.NX, c.NY, c.DeepMM, c.BodyMM = 1, 1, []float64{20}, 0 },
		"one row":                    func(c *Case) { c.NX, c.NY, c.DeepMM = 5, 1, []float64{0, 20, 20, 8, 0} },
		"lift of .1 mm":              func(c *Case) { c.Pours = []Pour{{TopMM: 0.1, TempC: 22}, {AtH: 1, TempC: 22}} },
		"two lifts at once":          func(c *Case) { c.Pours = []Pour{{TopMM: 10, TempC: 22}, {TempC: 30}} },
		"the same lift twice":        func(c *Case) { c.Pours = []Pour{{TopMM: 10, TempC: 22}, {AtH: 1, TopMM: 10, TempC: 30}} },
		"lift above the top":         func(c *Case) { c.Pours = []Pour{{TopMM: 10, TempC: 22}, {AtH: 1, TopMM: -10, TempC: 30}} },
		"ends before the last pour":  func(c *Case) { c.Pours, c.EndH = []Pour{{TopMM: 10, TempC: 22}, {AtH: 5, TempC: 22}}, 3 },
		"poured at 100 000 C":        func(c *Case) { c.Pours[0].TempC = 1e5 },
		"poured at -300 C":           func(c *Case) { c.Pours[0].TempC = -300 },
		"cured beyond full":          func(c *Case) { c.Pours[0].Cure = 3 },
		"cured below none":           func(c *Case) { c.Pours[0].Cure = -3 },
		"rate below 0":               func(c *Case) { c.Rate = func(a, t float64) float64 { return -1e-4 } },
		"rate no number when warm":   func(c *Case) { c.Rate = func(a, t float64) float64 { return 1e-5 * math.Sqrt(30-t) } },
		"rate boundless when warm":   func(c *Case) { c.Rate = func(a, t float64) float64 { return 1e-6 / math.Max(0, 30-t) } },
		"heat that cools":            func(c *Case) { c.HJKG = -280e3 },
		"wall where nothing is":      func(c *Case) { c.Walls = []Wall{{Edge: 2, FromMM: 900, ToMM: 950, DeepMM: 20}} },
		"wall upside down":           func(c *Case) { c.Walls = []Wall{{Edge: 2, FromMM: 50, ToMM: 0, DeepMM: -20}} },
		"capacity that falls to 0":   func(c *Case) { c.PourRiseJKGK2 = -60 },
		"no film":                    func(c *Case) { c.Air.Film = SteadyFilm(0) },
		"film that draws heat in":    func(c *Case) { c.Air.Film = SteadyFilm(-5) },
		"room of 500 C":              func(c *Case) { c.Air.TempC = func(float64) float64 { return 500 } },
		"room jumping every minute":  func(c *Case) { c.Air.TempC = func(h float64) float64 { return 22 + 20*math.Mod(math.Floor(60*h), 2) } },
		"resin that conducts as air": func(c *Case) { c.Pour.KWMK = 1e-9 }, "body that conducts boundlessly": func(c *Case) { c.Body.KWMK = 1e9 },
	} {
		c := trough()
		spoil(&c)
		sane(t, name, c, Options{DXMM: 10, DZMM: 5})
	}
	sane(t, "layers of .1 mm", trough(), Options{DXMM: 10, DZMM: 0.1})
	sane(t, "cells wider than the body", trough(), Options{DXMM: 1000, DZMM: 5})
	sane(t, "frames out of order and past the end", trough(), Options{Frames: []float64{2, 1, 99, -1}})
}

// TestStoppedAtAnyTime: a context cancelled after any number of looks at the room ends the
// run with its error.
func TestStoppedAtAnyTime(t *testing.T) {
	for after := 1; after < 40; after += 6 {
		ctx, cancel := context.WithCancel(context.Background())
		c, looks := trough(), 0
		c.Pours = []Pour{{TopMM: 10, TempC: 22}, {AtH: 1, TempC: 22}}
		c.Air.TempC = func(float64) float64 {
			if looks++; looks > after {
				cancel()
			}
			return 22
		}
		if _, err := Solve(ctx, c, Options{}); looks > after && err == nil && ctx.Err() != nil && looks > after+3 {
			t.Errorf("stopped after %d looks: no error, %d looks", after, looks)
		}
		cancel()
	}
}
