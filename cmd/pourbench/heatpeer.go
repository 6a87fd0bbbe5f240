package main

import (
	"context"
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"pourwright/internal/stage/resin/heat"
)

// peers runs other integrators on the same cells, written to files: CVODE by the C program
// in bench/, serial; SciPy on the box; and a finite element package on the box's shape.
func (b *heatBench) peers(ctx context.Context) error {
	dir, err := os.MkdirTemp("", "pourbench-heat")
	if err != nil {
		return fmt.Errorf("make a folder for the peers: %w", err)
	}
	defer os.RemoveAll(dir)
	b.say("\npeers, same cells and rates (cpu: processor seconds)")
	if _, err := os.Stat("bench"); err != nil {
		b.say("not run: their programs lie in bench/; run from the repository's root")
		return nil
	}
	cvode := filepath.Join(dir, "heat_cvode")
	build := exec.CommandContext(ctx, "cc", "-O3", "-march=native", "-o", cvode, filepath.Join("bench", "heat_cvode.c"), "-lsundials_cvode", "-lsundials_nvecserial", "-lsundials_generic", "-lm")
	if text, err := build.CombinedOutput(); err != nil {
		b.say("the C program is not built (%v); Debian's libsundials-dev is needed: %s", err, firstLine(string(text)))
		cvode = ""
	} else if v, err := exec.CommandContext(ctx, "dpkg-query", "-W", "-f", "${Version}", "libsundials-dev").Output(); err == nil {
		b.say("libsundials-dev %s", v)
	}
	if err := b.peersOn(ctx, dir, "box", boxCase(), heat.Options{DXMM: 10, DZMM: 4}, cvode, true); err != nil {
		return err
	}
	if err := b.peersOn(ctx, dir, "basin", basinCase(2, 1), heat.Options{DXMM: 10, DZMM: 4}, cvode, false); err != nil {
		return err
	}
	return nil
}

func (b *heatBench) peersOn(ctx context.Context, dir, name string, c heat.Case, o heat.Options, cvode string, scipy bool) error {
	p, err := heat.Prepare(c, o)
	if err != nil {
		return err
	}
	path := filepath.Join(dir, name)
	if err := writeMatrix(path, p.Matrix()); err != nil {
		return err
	}
	one, err := best(ctx, c, o, 3)
	if err != nil {
		return err
	}
	o.Threads = 2
	two, err := best(ctx, c, o, 3)
	if err != nil {
		return err
	}
	b.say("%s, %d cells: ours %.3f s on 1 thread, %.3f on 2 (cpu %.3f), peak %.3f C at %.3f h", name, p.Cells(), one.solve, two.solve, one.cpu, one.res.PeakC, one.res.PeakH)
	if cvode != "" {
		if err := b.cvode(ctx, cvode, path, name, one, two); err != nil {
			return err
		}
	}
	if scipy {
		b.outside("SciPy BDF", "python3-scipy", exec.CommandContext(ctx, "/usr/bin/python3", filepath.Join("bench", "heat_bdf.py"), path, fmt.Sprint(benchHours)))
		b.outside("FreeFem++ P1", "freefem++", finite(ctx))
	}
	return nil
}

// cvode runs the C program thrice and keeps its quickest.
func (b *heatBench) cvode(ctx context.Context, program, path, name string, one, two heatRun) error {
	var peak, hour, wall, cpu float64
	var steps, calls int
	least, leastCPU := math.Inf(1), math.Inf(1)
	for range 3 {
		text, err := exec.CommandContext(ctx, program, path, "3e-4", fmt.Sprint(benchHours)).Output()
		if err != nil {
			return fmt.Errorf("run the C program: %w", err)
		}
		if _, err := fmt.Sscan(string(text), &peak, &hour, &wall, &cpu, &steps, &calls); err != nil {
			return fmt.Errorf("read what the C program prints: %w", err)
		}
		least, leastCPU = min(least, wall), min(leastCPU, cpu)
	}
	off := abs(peak - one.res.PeakC)
	b.say("  CVODE 3e-4: %.3f s (cpu %.3f), %d steps, %d right hand sides, peak %.3f C at %.3f h: off %.3f K; %.1fx our 1 thread by processor time, %.1fx our 2 by wall clock", least, leastCPU, steps, calls, peak, hour, off, leastCPU/one.cpuRun, least/two.solve)
	if name == "basin" {
		b.goal("G3 CVODE 3e-4 >= 18x our time on 1 thread, 30x on 2; peaks within .1 K", leastCPU >= 18*one.cpuRun && least >= 30*two.solve && off <= 0.1,
			"%.1fx, %.1fx, %.3f K", leastCPU/one.cpuRun, least/two.solve, off)
	}
	return nil
}

// finite is the finite element package with the folder where Debian keeps its parts.
func finite(ctx context.Context) *exec.Cmd {
	cmd := exec.CommandContext(ctx, "FreeFem++", "-nw", "-v", "0", filepath.Join("bench", "heat_box.edp"))
	cmd.Env = append(os.Environ(), "FF_LOADPATH=/usr/lib/freefem++")
	return cmd
}

// outside runs a program of another kind and prints what it says, or which of Debian's
// packages it needs.
func (b *heatBench) outside(name, needs string, cmd *exec.Cmd) {
	start := time.Now()
	text, err := cmd.Output()
	if err != nil {
		b.say("  %s: not run (%v); Debian's %s is needed", name, err, needs)
		return
	}
	b.say("  %s: %s (%.1f s; peak C, hour)", name, firstLine(string(text)), time.Since(start).Seconds())
}

func firstLine(s string) string {
	return strings.TrimSpace(strings.SplitN(strings.TrimSpace(s), "\n", 2)[0])
}

func abs(x float64) float64 { return max(x, -x) }

// writeMatrix writes a problem as numbers, little endian: cells, links and cells along x
// (int32); nine parameters of the rate and the air (float64); starts, ends and places
// (int32); capacity, film, heat, temperature, cure, and conductance of links (float64).
func writeMatrix(path string, m heat.Matrix) error {
	f, err := os.Create(path)
	if err != nil {
		return fmt.Errorf("write the matrix: %w", err)
	}
	defer f.Close()
	par := []float64{benchK1, benchE1, benchK2, benchE2, benchM, benchTg0, benchTg1, benchLambda, benchAir}
	for _, v := range []any{[]int32{int32(len(m.Cap)), int32(len(m.To)), int32(m.NX)}, par, m.Start, m.To, m.Place, m.Cap, m.Film, m.Heat, m.TempC, m.Cure, m.G} {
		if err := binary.Write(f, binary.LittleEndian, v); err != nil {
			return fmt.Errorf("write the matrix: %w", err)
		}
	}
	return f.Close()
}
