package heat

import (
	"context"
	"math"
	"testing"
)

// small is a stepped block in steady films, quick enough for the explicit schemes.
func small() Case {
	c := trial(5)
	c.NX, c.NY = 60, 30
	d := make([]float64, c.NX*c.NY)
	for j := range c.NY {
		for i := range c.NX {
			if i > 6 && i < 54 && j > 6 && j < 24 {
				d[j*c.NX+i] = 24
				if i > 24 {
					d[j*c.NX+i] = 56
				}
			}
		}
	}
	c.DeepMM, c.Walls, c.EndH = d, nil, 30
	return c
}

func TestSameBytesForAnyThreads(t *testing.T) {
	c, o := small(), Options{DXMM: 10, Frames: []float64{3, 9}}
	var first Result
	for threads := 1; threads <= 5; threads++ {
		o.Threads = threads
		r, err := Solve(context.Background(), c, o)
		if err != nil {
			t.Fatal(err)
		}
		if threads == 1 {
			first = r
			continue
		}
		if r.PeakC != first.PeakC || r.PeakH != first.PeakH || r.Steps != first.Steps || r.HeatJ != first.HeatJ {
			t.Errorf("%d threads: %v at %v, one thread %v at %v", threads, r.PeakC, r.PeakH, first.PeakC, first.PeakH)
		}
		for f := range r.Frames {
			for i, v := range r.Frames[f].TempC {
				if v != first.Frames[f].TempC[i] && v == v {
					t.Fatalf("%d threads: frame %d differs at %d", threads, f, i)
				}
			}
		}
	}
}

func TestBadCasesAreRefused(t *testing.T) {
	for name, spoil := range map[string]func(*Case){
		"no pours": func(c *Case) { c.Pours = nil }, "no rate": func(c *Case) { c.Rate = nil }, "no squares": func(c *Case) { c.NX = 0 },
		"too few depths": func(c *Case) { c.DeepMM = c.DeepMM[1:] }, "no conduction": func(c *Case) { c.Body.KWMK = 0 },
		"no end": func(c *Case) { c.EndH = math.NaN() }, "pours backwards": func(c *Case) { c.Pours = []Pour{{AtH: 5, TopMM: 20}, {AtH: 1}} },
	} {
		c := small()
		spoil(&c)
		if _, err := Solve(context.Background(), c, Options{}); err == nil {
			t.Errorf("%s is simulated", name)
		}
	}
	c := small()
	c.StepMM = 0.01
	if _, err := Solve(context.Background(), c, Options{DXMM: 0.01, DZMM: 0.001}); err == nil {
		t.Error("a grid too large is built")
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Solve(ctx, small(), Options{}); err == nil {
		t.Error("a stopped run ends well")
	}
}

// TestRunawayIsReported: a reaction that outruns any step ends with an error, not with a
// number.
func TestRunawayIsReported(t *testing.T) {
	c := small()
	c.Rate = func(a, tempC float64) float64 { return math.Inf(1) }
	if r, err := Solve(context.Background(), c, Options{DXMM: 20}); err == nil {
		t.Errorf("peak %v", r.PeakC)
	}
}
