package heat

import (
	"context"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
	"pourwright/internal/stage/resin/kinetics"
)

// booked solves c and checks that what is set free is what is stored and lost, to 0.1 % of
// what is set free.
func booked(t rapid.TB, c Case, o Options) Result {
	r, err := Solve(context.Background(), c, o)
	if err != nil {
		t.Fatal(err)
	}
	if !(r.HeatJ > 0) || !(r.EnergyDefect() <= 1e-3) {
		t.Fatalf("set free %.1f J, lost %.1f, stored %.1f: %.2g left open", r.HeatJ, r.LostJ, r.StoredJ, r.EnergyDefect())
	}
	return r
}

// daily is a room that swings by half K about meanC, and films as they come.
func daily(meanC, half float64) Air {
	return Air{TempC: func(h float64) float64 { return meanC + half*math.Sin(2*math.Pi*(h-9)/24) }, Film: NaturalFilm(0.15)}
}

// TestBasinKeepsItsBooks: the invented basin in two lifts, in a room that swings.
func TestBasinKeepsItsBooks(t *testing.T) {
	for _, rise := range []float64{0, 3} {
		c := trial(5)
		m := kinetics.Typical(3.255e-5, 280e3, 52)
		c.Rate, c.Air, c.PourRiseJKGK2 = m.Rate, daily(21, 3), rise
		c.Pours, c.EndH = []Pour{{TopMM: 32, TempC: 24}, {AtH: 20, TempC: 23, Cure: 0.01}}, 60
		r := booked(t, c, Options{DXMM: 20})
		t.Logf("rise %g: peak %.1f C at %.1f h, set free %.0f J, defect %.2g", rise, r.PeakC, r.PeakH, r.HeatJ, r.EnergyDefect())
	}
}

// TestInventedCasesKeepTheirBooks: floors, lifts, rooms, cards and grids drawn at random.
func TestInventedCasesKeepTheirBooks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		booked(t, drawnCase(t), Options{DXMM: rapid.SampledFrom([]float64{10, 20, 30}).Draw(t, "dx"), DZMM: rapid.Float64Range(2, 8).Draw(t, "dz")})
	})
}

func drawnCase(t *rapid.T) Case {
	c := trial(10)
	c.NX, c.NY = rapid.IntRange(1, 12).Draw(t, "nx"), rapid.IntRange(1, 9).Draw(t, "ny")
	c.DeepMM = make([]float64, c.NX*c.NY)
	deepest := 0.0
	for i := range c.DeepMM {
		c.DeepMM[i] = rapid.SampledFrom([]float64{0, 8, 16, 30, 50}).Draw(t, fmt.Sprintf("deep %d", i))
		deepest = math.Max(deepest, c.DeepMM[i])
	}
	if deepest == 0 {
		c.DeepMM[0], deepest = 16, 16
	}
	c.Walls = nil
	if rapid.Bool().Draw(t, "wall") {
		c.Walls = []Wall{{Edge: rapid.IntRange(0, 3).Draw(t, "edge"), FromMM: 0, ToMM: 1000, DeepMM: 60}}
	}
	if rapid.Bool().Draw(t, "foam") {
		c.Below = &Solid{RhoKGM3: 25, CJKGK: 1450, KWMK: 0.035}
	}
	m := kinetics.Typical(rapid.Float64Range(1e-5, 2e-4).Draw(t, "k25"), 280e3, 52)
	c.Rate, c.PourRiseJKGK2 = m.Rate, rapid.SampledFrom([]float64{0, 3}).Draw(t, "rise")
	half := rapid.Float64Range(0, 6).Draw(t, "swing")
	c.Air = daily(rapid.Float64Range(10, 32).Draw(t, "room"), half)
	c.Pours, c.EndH = nil, rapid.Float64Range(10, 72).Draw(t, "end")
	lifts := rapid.IntRange(1, 4).Draw(t, "lifts")
	for i := range lifts {
		c.Pours = append(c.Pours, Pour{AtH: c.EndH * float64(i) / float64(lifts+1), TopMM: deepest * float64(lifts-1-i) / float64(lifts), TempC: rapid.Float64Range(15, 35).Draw(t, "poured")})
	}
	return c
}
