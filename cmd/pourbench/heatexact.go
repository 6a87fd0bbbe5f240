package main

import (
	"context"
	"fmt"
	"math"

	"pourwright/internal/stage/resin/heat"
)

// exact compares the solver with problems that have exact answers.
func (b *heatBench) exact(ctx context.Context) error {
	met := true
	limit := func(v, goal float64) string {
		met = met && v <= 1.5*goal
		return fmt.Sprintf("%.3g", v)
	}
	b.say("\nexact answers: greatest difference, K")
	slab := ""
	for i, nz := range []int{8, 16, 32} {
		e, err := slabError(ctx, nz)
		if err != nil {
			return err
		}
		slab += " " + limit(e, []float64{0.15, 0.041, 0.005}[i])
	}
	b.say("slab 50 mm cooling in films from 60 to 20 C, 10 to 120 min, 8, 16, 32 cells:%s (goals .15 .041 .005)", slab)
	touch := ""
	for i, dz := range []float64{4, 2} {
		e, err := contactError(ctx, dz)
		if err != nil {
			return err
		}
		touch += " " + limit(e, []float64{0.152, 0.027}[i])
	}
	b.say("60 C on concrete of 20 C at 600 s, cells of 4, 2 mm:%s (goals .152 .027)", touch)
	hot, off, defect, err := adiabatic(ctx)
	if err != nil {
		return err
	}
	b.say("no loss, to %.1f C: %s K from H/c, energy %s K (goals .046, .002)", hot, limit(off, 0.046), limit(defect, 0.002))
	same, err := sameBits(ctx)
	if err != nil {
		return err
	}
	b.say("same bits on 1, 2, 3, 5 threads: %v", same)
	b.goal("G6 exact answers within 1.5x of the goals, same bits on any threads", met && same, "slab%s; contact%s; no loss %.2g, %.2g K; %v", slab, touch, off, defect, same)
	return nil
}

// oneColumn is a column of one cell in plan without loss at its sides.
func oneColumn(deepMM float64, up, down float64) heat.Case {
	c := baseCase()
	c.NX, c.NY, c.StepMM, c.DeepMM, c.BodyMM = 1, 1, 10, []float64{deepMM}, 0
	c.Air.Film = func(face int, _, _ float64) float64 { return [3]float64{up, down, 0}[face] }
	return c
}

// layersAt returns middles of layers and their temperatures at a frame of one column.
func layersAt(r heat.Result, frame int) (zMM, tempC []float64) {
	for k, v := range r.Frames[frame].CutC {
		if v == v {
			zMM, tempC = append(zMM, (r.LayersMM[k]+r.LayersMM[k+1])/2), append(tempC, float64(v))
		}
	}
	return zMM, tempC
}

func slabError(ctx context.Context, nz int) (float64, error) {
	c := oneColumn(50, 10, 10)
	c.Pour = heat.Solid{RhoKGM3: 1100, CJKGK: 1800, KWMK: 0.2}
	c.Rate = func(a, t float64) float64 { return 0 }
	c.Air.TempC = func(float64) float64 { return 20 }
	c.Pours[0].TempC, c.EndH = 60, 2.1
	hours := []float64{1.0 / 6, 0.5, 1, 2}
	r, err := heat.Solve(ctx, c, heat.Options{DZMM: 50 / float64(nz), StepS: 10, Frames: hours})
	if err != nil {
		return 0, err
	}
	worst := 0.0
	for n, h := range hours {
		z, v := layersAt(r, n)
		for k := range z {
			worst = math.Max(worst, math.Abs(v[k]-20-40*slabTheta(math.Abs(z[k]/25-1), h*3600)))
		}
	}
	return worst, nil
}

// slabTheta is the slab's excess temperature at x (0 middle, 1 face) as a share of the
// first one: the series of Carslaw and Jaeger with Bi = h L/k.
func slabTheta(x, seconds float64) float64 {
	const half, k, h, rhoC = 0.025, 0.2, 10.0, 1100 * 1800.0
	bi, fo, sum := h*half/k, k/rhoC*seconds/half/half, 0.0
	for n := range 40 {
		lo, hi := float64(n)*math.Pi, (float64(n)+0.5)*math.Pi
		for range 80 {
			if mid := (lo + hi) / 2; mid*math.Tan(mid) < bi {
				lo = mid
			} else {
				hi = mid
			}
		}
		sum += 4 * math.Sin(lo) / (2*lo + math.Sin(2*lo)) * math.Exp(-lo*lo*fo) * math.Cos(lo*x)
	}
	return sum
}

// contactError is the greatest difference at the middles of the resin's cells from two
// half spaces.
func contactError(ctx context.Context, dz float64) (float64, error) {
	c := oneColumn(120, 0, 0)
	c.Rate = func(a, t float64) float64 { return 0 }
	c.BodyMM = 120
	c.Air.TempC = func(float64) float64 { return 20 }
	c.Pours[0].TempC, c.EndH = 60, 0.2
	r, err := heat.Solve(ctx, c, heat.Options{DZMM: dz, Body: int(120 / dz), StepS: 2, Frames: []float64{1.0 / 6}})
	if err != nil {
		return 0, err
	}
	e1, e2 := math.Sqrt(c.Pour.RhoKGM3*c.Pour.CJKGK*c.Pour.KWMK), math.Sqrt(c.Body.RhoKGM3*c.Body.CJKGK*c.Body.KWMK)
	touch := (e1*60 + e2*20) / (e1 + e2)
	z, v := layersAt(r, 0)
	worst := 0.0
	for k := range z {
		want := touch + (60-touch)*math.Erf((120-z[k])/1000/2/math.Sqrt(c.Pour.KWMK/c.Pour.RhoKGM3/c.Pour.CJKGK*600))
		worst = math.Max(worst, math.Abs(v[k]-want))
	}
	return worst, nil
}

// adiabatic heats a cell that loses nothing: in the end it is H/c times its cure warmer.
func adiabatic(ctx context.Context) (hotC, offK, defectK float64, err error) {
	c := oneColumn(20, 0, 0)
	c.HJKG, c.EndH = 400e3, 240
	c.Rate = func(a, t float64) float64 {
		left := math.Max(0, 1-a)
		return benchK2 * math.Exp(benchE2/8.314462618*(1/295.15-1/(t+273.15))) * (1 + a) * left * left
	}
	r, err := heat.Solve(ctx, c, heat.Options{DZMM: 20, Frames: []float64{239}})
	if err != nil {
		return 0, 0, 0, err
	}
	f := r.Frames[0]
	rise := c.HJKG / c.Pour.CJKGK
	off := math.Abs(float64(f.CutC[0]) - benchAir - rise*float64(f.CutCure[0]))
	return float64(f.CutC[0]), off, r.EnergyDefect() * rise, nil
}

// sameBits reports whether runs on several threads end alike.
func sameBits(ctx context.Context) (bool, error) {
	first := ""
	for _, threads := range []int{1, 2, 3, 5} {
		r, err := heat.Solve(ctx, basinCase(5, 1), benchOptions(20, 4, threads))
		if err != nil {
			return false, err
		}
		got := fmt.Sprintf("%v", r)
		if first == "" {
			first = got
		} else if got != first {
			return false, nil
		}
	}
	return true, nil
}
