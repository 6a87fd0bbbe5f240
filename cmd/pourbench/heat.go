package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"runtime"
	"syscall"
	"time"

	"pourwright/internal/stage/resin/heat"
)

// A heatBench is what the options of `pourbench heat` ask for.
type heatBench struct {
	out                      io.Writer
	check, peer, full        bool
	referenceMM, referenceDZ float64
	goals                    []heatGoal
	onTwo, onOne             heatRun
	triad                    float64 // bytes a second on two threads
	triadOne                 float64
}

// A heatGoal is a goal with what was measured.
type heatGoal struct {
	name, measured string
	met            bool
}

// A heatRun is the best of some runs of the solver.
type heatRun struct {
	build, solve float64 // s of wall clock, of the quickest run
	cpu, cpuRun  float64 // processor seconds: of all, and of solving alone; the least of the runs
	res          heat.Result
}

func runHeat(args []string, out io.Writer) error {
	b := &heatBench{out: out, referenceMM: 4, referenceDZ: 2}
	for _, a := range args {
		switch {
		case a == "--check":
			b.check = true
		case a == "--peer":
			b.peer = true
		case a == "--full":
			b.full, b.check, b.referenceMM = true, true, 2
		default:
			return fmt.Errorf("usage: pourbench heat [--check] [--peer] [--full]: no option %q", a)
		}
	}
	ctx := context.Background()
	for _, part := range []func(context.Context) error{b.speed, b.explicit, b.space, b.endToEnd, b.exact} {
		if err := part(ctx); err != nil {
			return err
		}
	}
	if b.peer {
		if err := b.peers(ctx); err != nil {
			return err
		}
	}
	b.printGoals()
	return nil
}

func (b *heatBench) say(format string, args ...any) { fmt.Fprintf(b.out, format+"\n", args...) }

func (b *heatBench) goal(name string, met bool, format string, args ...any) {
	b.goals = append(b.goals, heatGoal{name, fmt.Sprintf(format, args...), met})
}

func (b *heatBench) printGoals() {
	b.say("\n%-66s %-62s", "goal", "measured")
	for _, g := range b.goals {
		b.say("%-66s %-62s %s", g.name, g.measured, map[bool]string{true: "pass", false: "miss"}[g.met])
	}
}

// cpuSeconds returns the processor time this program has used.
func cpuSeconds() float64 {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return math.NaN()
	}
	s := func(t syscall.Timeval) float64 { return float64(t.Sec) + float64(t.Usec)/1e6 }
	return s(u.Utime) + s(u.Stime)
}

// best runs a case some times and keeps the quickest.
func best(ctx context.Context, c heat.Case, o heat.Options, times int) (heatRun, error) {
	inf := math.Inf(1)
	out := heatRun{solve: inf, build: inf, cpu: inf, cpuRun: inf}
	for range times {
		runtime.GC()
		cpu, start := cpuSeconds(), time.Now()
		p, err := heat.Prepare(c, o)
		if err != nil {
			return out, err
		}
		built, cpuBuilt := time.Since(start).Seconds(), cpuSeconds()
		r, err := p.Solve(ctx)
		if err != nil {
			return out, err
		}
		all := time.Since(start).Seconds()
		out.cpu, out.cpuRun = math.Min(out.cpu, cpuSeconds()-cpu), math.Min(out.cpuRun, cpuSeconds()-cpuBuilt)
		if all < out.build+out.solve {
			out.build, out.solve, out.res = built, all-built, r
		}
	}
	return out, nil
}

func benchOptions(dx, dz float64, threads int) heat.Options {
	return heat.Options{DXMM: dx, DZMM: dz, Threads: threads, Frames: []float64{6, 9, 12, 15, 18, 24}}
}

// speed solves on several grids and threads beside the memory's bandwidth.
func (b *heatBench) speed(ctx context.Context) error {
	b.say("%s %s/%s, %d processors. Seconds of wall clock, best of 5; processor seconds beside them, which other work on the machine disturbs less.", runtime.Version(), runtime.GOOS, runtime.GOARCH, runtime.NumCPU())
	b.say("Invented basin %.0f x %.0f mm, floors 8 to 64 mm, body 19 mm, board at the mouth, %.0f h at %.0f C.\n", benchLong, benchWide, benchHours, benchAir)
	b.say("%6s %6s %8s %9s %6s %9s %9s %9s %10s %8s", "dx", "dz", "threads", "cells", "steps", "build s", "solve s", "cpu s", "peak C", "at h")
	for _, g := range []struct {
		dx, dz  float64
		threads int
	}{{20, 4, 1}, {20, 4, 2}, {10, 4, 1}, {10, 4, 2}} {
		r, err := best(ctx, basinCase(2, 1), benchOptions(g.dx, g.dz, g.threads), 5)
		if err != nil {
			return err
		}
		b.say("%6.0f %6.0f %8d %9d %6d %9.3f %9.3f %9.3f %10.3f %8.3f", g.dx, g.dz, g.threads, r.res.Cells, r.res.Steps, r.build, r.solve, r.cpu, r.res.PeakC, r.res.PeakH)
		if g.dx == 10 && g.threads == 1 {
			b.onOne = r
		} else if g.dx == 10 {
			b.onTwo = r
		}
	}
	b.triadOne, b.triad = triad(1), triad(2)
	const bytes = 124
	share := func(r heatRun, seconds, rate float64) float64 {
		return float64(r.res.Cells) * float64(r.res.Steps) * bytes / rate / seconds
	}
	b.say("\nbandwidth (a = b + s c, float32): %.1f GB/s on 1 thread, %.1f on 2", b.triadOne/1e9, b.triad/1e9)
	s1, s2 := share(b.onOne, b.onOne.cpuRun, b.triadOne), share(b.onTwo, b.onTwo.solve, b.triad)
	b.say("cells x steps x %d bytes over it: %.0f %% of the whole solve on 1 thread (processor time of both), %.0f %% on 2 (wall clock of both)", bytes, 100*s1, 100*s2)
	b.goal("G2 cells x steps x 124 B / bandwidth >= 25 % of the solve (stretch 50)", math.Min(s1, s2) >= 0.25, "%.0f %% on 1 thread, %.0f %% on 2", 100*s1, 100*s2)
	return nil
}

// explicit measures the plain explicit scheme and the error in time.
func (b *heatBench) explicit(ctx context.Context) error {
	p, err := heat.Prepare(basinCase(2, 1), benchOptions(10, 4, 1))
	if err != nil {
		return err
	}
	steps := 300
	if b.full {
		steps = 0
	}
	runtime.GC()
	cpu := cpuSeconds()
	x, err := p.Explicit(ctx, steps)
	if err != nil {
		return err
	}
	seconds := cpuSeconds() - cpu
	all := math.Ceil(benchHours * 3600 / x.DTS)
	total := seconds * all / float64(x.Steps)
	b.say("\nexplicit scheme, packed, float64, same cells, 1 thread: steps of %.2f s, %.0f of them, %.1f processor s (%d were run in %.2f)", x.DTS, all, total, x.Steps, seconds)
	if b.full {
		b.say("explicit peak %.3f C at %.3f h", x.PeakC, x.PeakH)
	}
	o := benchOptions(10, 4, 2)
	o.TolK, o.StepS = 1e-5, 120
	tight, err := best(ctx, basinCase(2, 1), o, 1)
	if err != nil {
		return err
	}
	r := b.onOne
	dT, dH := math.Abs(r.res.PeakC-tight.res.PeakC), math.Abs(r.res.PeakH/tight.res.PeakH-1)
	b.say("steps of at most 120 s: %d steps, peak %.3f C at %.3f h: error in time %.3f K, %.2f %% of the hour", tight.res.Steps, tight.res.PeakC, tight.res.PeakH, dT, 100*dH)
	if b.check {
		start := time.Now()
		k, err := p.Check(ctx)
		if err != nil {
			return err
		}
		b.say("cross-check by stabilised explicit steps (order 2, float64): %.3f C at %.3f h, %d rates, %.1f s: off %.3f K", k.PeakC, k.PeakH, k.Steps, time.Since(start).Seconds(), math.Abs(k.PeakC-r.res.PeakC))
		dT, dH = math.Max(dT, math.Abs(k.PeakC-r.res.PeakC)), math.Max(dH, math.Abs(k.PeakH/r.res.PeakH-1))
	}
	ratio := total / r.cpuRun
	b.goal("G1 >= 60x the explicit scheme (stretch 200), <= .1 K, <= 1 % of the hour", ratio >= 60 && dT <= 0.1 && dH <= 0.01, "%.0fx, %.3f K, %.2f %%", ratio, dT, 100*dH)
	return nil
}

// space compares the columns with those of a fine grid.
func (b *heatBench) space(ctx context.Context) error {
	o := benchOptions(b.referenceMM, b.referenceDZ, 2)
	o.Cells = 20_000_000
	start := time.Now()
	ref, err := best(ctx, basinCase(2, 1), o, 1)
	if err != nil {
		return err
	}
	b.say("\nfine grid %.0f/%.0f mm: %d cells, %d steps, %.1f s, peak %.3f C at %.3f h", b.referenceMM, b.referenceDZ, ref.res.Cells, ref.res.Steps, time.Since(start).Seconds(), ref.res.PeakC, ref.res.PeakH)
	e := compareColumns(b.onTwo.res, ref.res, b.referenceMM)
	peak := math.Abs(b.onTwo.res.PeakC - ref.res.PeakC)
	dH := math.Abs(b.onTwo.res.PeakH/ref.res.PeakH - 1)
	b.say("against it, dx 10/dz 4: peak %.3f K, warmest of a column at 6 to 24 h: uniform columns %.3f K, mixed %.3f K (%.3f from the warmest point in them)", peak, e.uniform, e.mixed, e.hottest)
	b.goal(fmt.Sprintf("G4 against %.0f mm: uniform columns <= .35 K, mixed <= .5, time <= 1 %%", b.referenceMM), e.uniform <= 0.35 && e.mixed <= 0.5 && peak <= 0.35 && dH <= 0.01,
		"peak %.3f, uniform %.3f, mixed %.3f K, time %.2f %%", peak, e.uniform, e.mixed, 100*dH)
	return nil
}

// columnErrors are the greatest differences of columns.
type columnErrors struct{ uniform, mixed, hottest float64 }

// compareColumns compares, at every frame, each poured column with the fine columns whose
// middles lie in it by their mean; where they are not equally deep, by the warmest of them
// as well.
func compareColumns(r, ref heat.Result, refMM float64) columnErrors {
	var e columnErrors
	for n, f := range r.Frames {
		g := ref.Frames[n]
		for _, c := range r.Columns {
			x0, y0 := r.OffXMM+float64(c.I)*r.CellMM, r.OffYMM+float64(c.J)*r.CellMM
			sum, count, hot := 0.0, 0, math.Inf(-1)
			lo, hi := math.Inf(1), math.Inf(-1)
			for j := int(math.Ceil((y0-ref.OffYMM)/refMM - 0.5)); (float64(j)+0.5)*refMM+ref.OffYMM < y0+r.CellMM; j++ {
				for i := int(math.Ceil((x0-ref.OffXMM)/refMM - 0.5)); (float64(i)+0.5)*refMM+ref.OffXMM < x0+r.CellMM; i++ {
					d := benchDepth((float64(i)+0.5)*refMM+ref.OffXMM, (float64(j)+0.5)*refMM+ref.OffYMM)
					lo, hi = math.Min(lo, d), math.Max(hi, d)
					if i < 0 || j < 0 || i >= ref.CX || j >= ref.CY {
						continue
					}
					if v := float64(g.TempC[j*ref.CX+i]); v == v {
						sum, count, hot = sum+v, count+1, math.Max(hot, v)
					}
				}
			}
			if count == 0 {
				continue
			}
			own := float64(f.TempC[c.J*r.CX+c.I])
			if lo == hi && math.Abs(c.DeepMM-lo) < 0.01 {
				e.uniform = math.Max(e.uniform, math.Abs(own-sum/float64(count)))
			} else {
				e.mixed = math.Max(e.mixed, math.Abs(own-sum/float64(count)))
				e.hottest = math.Max(e.hottest, math.Abs(own-hot))
			}
		}
	}
	return e
}

// endToEnd measures building and solving together, and a band.
func (b *heatBench) endToEnd(ctx context.Context) error {
	r := b.onTwo
	start, cpu := time.Now(), cpuSeconds()
	const members = 30
	peaks, err := heat.Ensemble(ctx, members, 2, func(i int) (heat.Case, heat.Options) {
		x := 2*float64(i)/(members-1) - 1
		c := basinCase(5, 1+0.02*math.Sin(7*float64(i)))
		factor := math.Exp(0.15 * math.Cos(3*float64(i)))
		c.Rate = func(a, t float64) float64 { return factor * benchRate(a, t) }
		c.Air.Scale = math.Exp(0.15 * math.Sin(5*float64(i)))
		c.Air.TempC = func(float64) float64 { return benchAir + x }
		return c, heat.Options{DXMM: 20, DZMM: 4, TolK: 2e-3, Rough: true}
	})
	if err != nil {
		return err
	}
	band, bandCPU := time.Since(start).Seconds(), cpuSeconds()-cpu
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range peaks {
		lo, hi = math.Min(lo, p.PeakC), math.Max(hi, p.PeakC)
	}
	b.say("\nend to end on 2 threads: build %.3f s + solve %.3f s; 30 members at dx 20: %.2f s (%.2f processor s), peaks %.1f to %.1f C", r.build, r.solve, band, bandCPU, lo, hi)
	b.goal("G5 end to end on 2 threads <= .5 s, building at most half; band <= 2 s", r.build+r.solve <= 0.5 && r.build <= r.solve && band <= 2,
		"%.3f s (%.0f %% building), band %.2f s; processor %.2f and %.2f s", r.build+r.solve, 100*r.build/(r.build+r.solve), band, r.cpu, bandCPU)
	return nil
}
