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
