package heat

import (
	"math"
	"testing"
)

// worstOff is the greatest difference between the frames of two runs of a case, in K: of
// the warmest over each depth, and of the cut.
func worstOff(a, b Result) float64 {
	worst := 0.0
	for n := range a.Frames {
		for _, p := range [][2][]float32{{a.Frames[n].TempC, b.Frames[n].TempC}, {a.Frames[n].CutC, b.Frames[n].CutC}} {
			for i, v := range p[0] {
				if v == v {
					worst = math.Max(worst, math.Abs(float64(v-p[1][i])))
				}
			}
		}
	}
	return worst
}

// TestStepsFollowConduction: without a reaction, the steps that are chosen by default come
// within 0.1 K of steps of 5 s at every hour that is shown.
func TestStepsFollowConductionInABody(t *testing.T) {
	still := func(c Case) Case {
		c.Rate = func(a, tempC float64) float64 { return 0 }
		c.EndH = 13
		return c
	}
	body := still(small())
	body.Pours[0].TempC = 60
	lift := still(small())
	lift.Body, lift.BodyMM = Solid{RhoKGM3: 2000, CJKGK: 900, KWMK: 1.2}, 19
	lift.Air.TempC = func(float64) float64 { return 20 }
	lift.Pours = []Pour{{TopMM: 28, TempC: 20}, {AtH: 1, TempC: 60}}
	swing := still(small())
	swing.Air = daily(20, 5)
	hours := []float64{0.05, 0.2, 0.5, 1.02, 1.1, 1.5, 2, 3, 4, 6, 9, 12}
	for name, c := range map[string]Case{"warm body cools": body, "lift of 60 C on concrete": lift, "room swings": swing} {
		quick := mustSolve(t, c, Options{DXMM: 10, Frames: hours, Threads: 2})
		slow := mustSolve(t, c, Options{DXMM: 10, Frames: hours, StepS: 5, Threads: 2})
		off := worstOff(quick, slow)
		t.Logf("%s: %d steps off by %.4f K, of %d small ones", name, quick.Steps, off, slow.Steps)
		if !(off <= 0.1) {
			t.Errorf("%s: off by %.3f K", name, off)
		}
	}
}

// TestStepsFollowTheCure: the same with a lively reaction: the hours shown, read between
// steps, and the peak.
func TestStepsFollowTheCure(t *testing.T) {
	c := small()
	c.HJKG, c.EndH = 330e3, 20
	hours := []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18}
	quick := mustSolve(t, c, Options{DXMM: 10, Frames: hours, Threads: 2})
	slow := mustSolve(t, c, Options{DXMM: 10, Frames: hours, StepS: 30, TolK: 1e-5, Threads: 2})
	off := worstOff(quick, slow)
	t.Logf("%d steps off by %.4f K, peak by %.4f K and %.4f h, of %d small ones", quick.Steps, off, quick.PeakC-slow.PeakC, quick.PeakH-slow.PeakH, slow.Steps)
	if !(off <= 0.1) || !(math.Abs(quick.PeakC-slow.PeakC) <= 0.1) || !(math.Abs(quick.PeakH-slow.PeakH) <= 0.05) {
		t.Errorf("off by %.3f K, peak by %.3f K and %.3f h", off, quick.PeakC-slow.PeakC, quick.PeakH-slow.PeakH)
	}
}
