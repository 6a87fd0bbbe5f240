package heat

import (
	"context"
	"fmt"
	"math"
)

// A Cross is what a second scheme finds for the same cells, to check the first one by.
type Cross struct {
	PeakC, PeakH float64
	Steps        int     // rates of change worked out
	DTS          float64 // longest step, s
}

// A double is a stage's cells in double precision, packed for rates of change.
type double struct {
	s     *stepper
	place []int32 // of each packed cell in the grid
	cells []doubleCell
	temp  []float64
	cure  []float64
	dTemp []float64 // rates of change
	dCure []float64
}

// A doubleCell is a cell among its neighbours; those that are not there are itself.
type doubleCell struct {
	next                  [6]int32
	g                     [6]float64
	film, cap, rise, heat float64
}

// leastCap is the least capacity that the explicit schemes give a cell, in shares of a
// full cell of body, so that slivers do not set their step. Chosen.
const leastCap = 0.2

func newDouble(s *stepper, body Solid) *double {
	d := &double{s: s}
	index := make([]int32, s.cells())
	for at, c := range s.Cap {
		if c > 0 {
			index[at] = int32(len(d.place))
			d.place = append(d.place, int32(at))
		}
	}
	n := len(d.place)
	d.cells = make([]doubleCell, n)
	d.temp, d.cure, d.dTemp, d.dCure = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	plane := s.nx * s.nz
	for m, at32 := range d.place {
		at := int(at32)
		c := &d.cells[m]
		d.temp[m], d.cure[m] = float64(s.Temp[at]), float64(s.Cure[at])
		for k, q := range [6]struct {
			shift int
			g     float32
		}{{-1, s.GX[at-1]}, {1, s.GX[at]}, {-plane, s.GY[at-plane]}, {plane, s.GY[at]}, {-s.nx, s.GZ[at-s.nx]}, {s.nx, s.GZ[at]}} {
			c.next[k] = int32(m)
			if q.g > 0 {
				c.next[k], c.g[k] = index[at+q.shift], float64(q.g)
			}
		}
		k := at / s.nx % s.nz
		full := s.dxM * s.dxM * (s.zMM[k+1] - s.zMM[k]) / 1000 * body.RhoKGM3 * body.CJKGK
		c.cap, c.heat, c.rise = math.Max(float64(s.Cap[at]), leastCap*full), float64(s.Mass[at]*s.HJKG), float64(s.Mass[at]*s.RiseJKGK2)
	}
	return d
}

// films takes the films of the present temperatures.
func (d *double) films(c Case, airC float64) {
	for m, at := range d.place {
		d.s.Temp[at] = float32(d.temp[m])
	}
	d.s.films(c, airC)
	for m, at := range d.place {
		d.cells[m].film = float64(d.s.Film[at])
	}
}

// stable returns the longest step of the explicit scheme, s: all rates are below twice
// the greatest sum of a cell's conductances over its capacity.
func (d *double) stable() float64 {
	most := 0.0
	for m := range d.cells {
		c := &d.cells[m]
		sum := c.film
		for _, g := range c.g {
			sum += g
		}
		most = math.Max(most, sum/(c.cap+c.rise*math.Min(0, d.temp[m])))
	}
	return 1 / most
}

// rates writes the rates of change of the given state.
func (d *double) rates(temp, cure, dTemp, dCure []float64, airC float64) {
	air, ref := airC-d.s.refC, float32(d.s.refC)
	const rows = 4096
	parallel(d.s.threads, (len(d.cells)+rows-1)/rows, func(r int) {
		for m := r * rows; m < min((r+1)*rows, len(d.cells)); m++ {
			c, t := &d.cells[m], temp[m]
			q := c.film * (air - t)
			for k, n := range c.next {
				q += c.g[k] * (temp[n] - t)
			}
			if c.heat > 0 {
				dCure[m] = float64(d.s.rates.At(float32(cure[m]), float32(t)+ref))
				q += c.heat * dCure[m]
			}
			dTemp[m] = q / (c.cap + c.rise*t)
		}
	})
}

// warmest returns the warmest poured temperature, C, with what a parabola through the
// cell's neighbours over and under adds.
func (d *double) warmest() float64 {
	hot, n := math.Inf(-1), 0
	for m := range d.cells {
		if d.cells[m].heat > 0 && !(d.temp[m] <= hot) {
			hot, n = d.temp[m], m
		}
	}
	over, under := d.cells[n].next[4], d.cells[n].next[5]
	if d.cells[over].heat > 0 && d.cells[under].heat > 0 && int(over) != n && int(under) != n {
		s, k := d.s, int(d.place[n])/d.s.nx%d.s.nz
		mid := func(k int) float64 { return (s.zMM[k] + s.zMM[k+1]) / 2 }
		_, y := vertex(mid(k-1)-mid(k), mid(k+1)-mid(k), d.temp[over]-hot, d.temp[under]-hot)
		hot += y
	}
	return hot + d.s.refC
}

// keep writes the state back for the next stage.
func (d *double) keep() {
	for m, at := range d.place {
		d.s.Temp[at], d.s.Cure[at] = float32(d.temp[m]), float32(d.cure[m])
	}
}

// Explicit simulates the same cells by Euler's forward steps in double precision, as long
// as is stable, for at most mostSteps of them (0: to the end). It is what the implicit
// scheme is measured against.
func (p *Problem) Explicit(ctx context.Context, mostSteps int) (Cross, error) {
	return p.cross(ctx, mostSteps, func(d *double, dt, airC float64) int {
		d.rates(d.temp, d.cure, d.dTemp, d.dCure, airC)
		for m := range d.temp {
			d.temp[m] += dt * d.dTemp[m]
			d.cure[m] = math.Min(1, d.cure[m]+dt*d.dCure[m])
		}
		return 1
	}, func(stable float64) float64 { return 0.9 * stable })
}

// cross runs a scheme through all stages. Films are worked out anew every tenth of an
// hour.
func (p *Problem) cross(ctx context.Context, mostSteps int, step func(d *double, dt, airC float64) int, length func(stable float64) float64) (Cross, error) {
	c, out := p.body.c, Cross{PeakC: math.Inf(-1)}
	_, err := p.stages(func(s *stepper, _ int, fromH, endH float64) error {
		d := newDouble(s, c.Body)
		for t, end, filmsAt := fromH*3600, endH*3600, math.Inf(-1); t < end-1e-6 && (mostSteps == 0 || out.Steps < mostSteps); {
			if err := ctx.Err(); err != nil {
				return fmt.Errorf("check: %w", err)
			}
			if t-filmsAt >= 360 {
				d.films(c, c.Air.TempC(t/3600))
				filmsAt = t
			}
			dt := math.Min(length(d.stable()), end-t)
			airC := c.Air.TempC((t + dt/2) / 3600)
			out.Steps += step(d, dt, airC)
			t += dt
			out.DTS = math.Max(out.DTS, dt)
			hot := d.warmest()
			if math.IsNaN(hot) {
				return fmt.Errorf("check, at %.2f h: %w", t/3600, ErrNoProgress)
			}
			d.s.rates.reach(hot)
			if hot > out.PeakC {
				out.PeakC, out.PeakH = hot, t/3600
			}
		}
		d.keep()
		return nil
	})
	return out, err
}
