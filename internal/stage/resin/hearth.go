package resin

import (
	"context"
	"fmt"
	"math"
	"slices"

	"pourwright/internal/stage/resin/heat"
	"pourwright/internal/stage/resin/kinetics"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// How finely the cure is computed, mm, and how many cells that may take: a larger basin
// gets wider ones. Chosen after trials: see docs/methods/resin.md.
const (
	rasterMM   = 2.0
	roughMM    = 5.0
	fineMM     = 10.0
	coarseMM   = 20.0
	fineZ      = 4.0
	coarseZ    = 5.0
	fineCells  = 600_000
	roughCells = 60_000
)

// runOn is how long after the last pour the cure is followed; it ends sooner when all is
// hard and sandable. What is not hard by then is followed for longest, on the coarse grid.
const (
	runOn   units.Duration = 14 * units.Day
	longest units.Duration = 60 * units.Day
)

// Materials that the resin meets. Source: [iso-10456] for the conductivities of concrete
// by density; boards and foam from handbooks, see docs/methods/resin.md.
var (
	concrete  = heat.Solid{RhoKGM3: 2000, CJKGK: 900, KWMK: 1.2}
	board     = heat.Solid{RhoKGM3: 600, CJKGK: 1700, KWMK: 0.14}
	foamUnder = heat.Solid{RhoKGM3: 25, CJKGK: 1450, KWMK: 0.035}
)

// warmed returns the temperature of resin of tempC that takes up heatJKG, C.
func warmed(tempC, heatJKG float64) float64 {
	c := kinetics.HeatCapacity + kinetics.HeatCapacityRise*(tempC-25)
	return tempC + 2*heatJKG/(c+math.Sqrt(c*c+2*kinetics.HeatCapacityRise*heatJKG))
}

// A hearth simulates the cure of one basin.
type hearth struct {
	in    Input
	model kinetics.Model
	shape shape
	rough shape   // on wider squares, for the coarse grid
	deep  float64 // of the basin, mm

	fineMM, roughMM float64 // of cells
}

// newOven returns what simulates the cure of in, or nil and why there is none.
func newOven(in Input) (oven, string) {
	if len(in.Basin) == 0 {
		return nil, "since the shape of the basin is not known"
	}
	m, why := modelOf(in.Card)
	if why != "" {
		return nil, why
	}
	h := &hearth{in: in, model: m}
	step := rasterMM
	for math.Ceil(in.Length.MM()/step)*math.Ceil(in.Width.MM()/step) > mostSquares {
		step *= 2
	}
	h.shape = shapeOf(in.Basin, in.Length.MM(), in.Width.MM(), step)
	h.rough = shapeOf(in.Basin, in.Length.MM(), in.Width.MM(), roughMM*step/rasterMM)
	if h.deep = h.shape.deepest(); !(h.deep > 0) {
		return nil, "since the basin holds nothing"
	}
	h.fineMM, h.roughMM = h.cells(fineMM, fineZ, fineCells), h.cells(coarseMM, coarseZ, roughCells)
	return h, ""
}

const mostSquares = 4_000_000

// cells chooses how wide cells are, so that no more than most are built: wide, or as
// often twice as wide as it takes. Layers are as high as dz, with some more at floors
// and levels.
func (h *hearth) cells(wide, dz float64, most int) float64 {
	layers := math.Ceil(h.deep/dz) + float64(len(h.in.Basin)) + 6
	if h.in.FoamLeft {
		layers += 8
	}
	for math.Ceil(h.in.Length.MM()/wide+2)*math.Ceil(h.in.Width.MM()/wide+2)*layers > float64(most) {
		wide *= 2
	}
	return wide
}

// caseOf writes pours as a case.
func (h *hearth) caseOf(s shape, pours []Pour, end units.Duration, w weather) heat.Case {
	deep := s.deepMM
	if w.depth != 1 {
		deep = make([]float64, len(s.deepMM))
		for i, d := range s.deepMM {
			deep[i] = d * w.depth
		}
	}
	m := h.model
	m.K25 *= w.rate
	air, body := h.air(w.room, clockOf(pours)), concrete
	body.KWMK *= w.body
	c := heat.Case{
		NX: s.nx, NY: s.ny, StepMM: s.stepMM, DeepMM: deep,
		Body: body, BodyMM: math.Max(h.in.Shell.MM(), s.stepMM), Pour: heat.Solid{RhoKGM3: m.RhoKGM3, CJKGK: kinetics.HeatCapacity, KWMK: m.KWMK}, PourRiseJKGK2: kinetics.HeatCapacityRise,
		HJKG: m.HJKG * w.heat, Rate: m.Rate, Set: m.Hard, Smooth: m.Sandable, Wall: board, WallMM: math.Max(h.in.Board.MM(), s.stepMM),
		Air: heat.Air{TempC: air, Film: heat.NaturalFilm(h.lengthM()), Scale: w.film}, EndH: float64(end),
	}
	if h.in.FoamLeft {
		c.Below = &foamUnder
	}
	for _, p := range pours {
		c.Pours = append(c.Pours, heat.Pour{AtH: float64(p.At), TopMM: max(0, (h.deep-p.To.MM())*w.depth), TempC: h.pouring() + w.room})
	}
	for _, d := range h.in.Dams {
		c.Walls = append(c.Walls, h.wallOf(d))
	}
	return c
}

// lengthM is the piece's area over its perimeter, m: what the air's film goes by.
func (h *hearth) lengthM() float64 {
	l, w := h.in.Length.MM(), h.in.Width.MM()
	return l * w / (2 * (l + w)) / 1000
}

func (h *hearth) pouring() float64 {
	if t := float64(h.in.Pouring); t > 0 && known(t) {
		return t
	}
	return float64(h.in.Room)
}

// lapMM is how far the dam reaches past the mouth. Common practice, no source.
const lapMM = 40.0

func (h *hearth) wallOf(d Dam) heat.Wall {
	edge := map[view.Side]int{view.Left: 0, view.Right: 1, view.Near: 2, view.Far: 3}[d.Side]
	return heat.Wall{Edge: edge, FromMM: d.From.MM() - lapMM, ToMM: (d.From + d.Width).MM() + lapMM, DeepMM: d.Depth.MM() + lapMM}
}

// forecast simulates pours on the coarse grid, until the last lift can be sanded: what
// becomes of its surface when nothing comes after it. Lifts poured cold days before the
// last are taken as cured and at the room's temperature; of them nothing is told.
func (h *hearth) forecast(ctx context.Context, pours []Pour) (Forecast, error) {
	end := pours[len(pours)-1].At + runOn
	c, gone := settled(h.caseOf(h.rough, pours, end, asPlanned))
	r, err := solveWithin(ctx, c, h.coarse(2e-3))
	if err != nil {
		return Forecast{}, err
	}
	if gone > 0 {
		untold := heat.PourResult{PeakC: math.Inf(-1)}
		r.Pours = append(slices.Repeat([]heat.PourResult{untold}, gone), r.Pours[1:]...)
		r.PeakPour = max(0, r.PeakPour-1+gone)
	}
	return h.tell(r, pours, end), nil
}

// coldAfter is how long before the last pour a lift was poured that no longer warms it,
// h, and oldCure what it has come to. Chosen: heat leaves a basin within two days.
const coldAfter, oldCure = 96.0, 0.85

// settled makes one pour of all that are cold by the last one, and returns how many
// these are.
func settled(c heat.Case) (heat.Case, int) {
	n, last := 0, c.Pours[len(c.Pours)-1].AtH
	for n < len(c.Pours)-1 && c.Pours[n].AtH+coldAfter <= last {
		n++
	}
	if n < 2 {
		return c, 0
	}
	base := heat.Pour{AtH: c.Pours[n].AtH, TopMM: c.Pours[n-1].TopMM, TempC: c.Air.TempC(c.Pours[n].AtH), Cure: oldCure}
	c.Pours = append([]heat.Pour{base}, c.Pours[n:]...)
	return c, n
}

// coarse are the options of the coarse grid.
func (h *hearth) coarse(tolK float64) heat.Options {
	return heat.Options{DXMM: h.roughMM, DZMM: coarseZ, TolK: tolK, Threads: threads}
}

// quick simulates on the coarse grid until all is hard, or to end.
func (h *hearth) quick(ctx context.Context, pours []Pour, w weather, end units.Duration) (heat.Result, error) {
	o := h.coarse(2e-3)
	o.Rough = true
	return solveWithin(ctx, h.caseOf(h.rough, pours, end, w), o)
}

// threads is how many go at one simulation: a shop's machine has at least two.
const threads = 2

// solveWithin solves c with cells as small as asked, or as the memory allows.
func solveWithin(ctx context.Context, c heat.Case, o heat.Options) (heat.Result, error) {
	for try := 0; ; try++ {
		r, err := heat.Solve(ctx, c, o)
		if err == nil || try == mostWider || !isTooLarge(err) {
			return r, err
		}
		o.DXMM *= 2
	}
}

const mostWider = 4

// tell puts a result, simulated to end, into the words of the shop.
func (h *hearth) tell(r heat.Result, pours []Pour, end units.Duration) Forecast {
	f := Forecast{Peak: units.Temperature(r.PeakC), PeakAt: units.Duration(r.PeakH), PeakIn: r.PeakPour + 1, HardAll: units.Duration(r.SetH), End: end}
	if !math.IsInf(r.WallC, 0) {
		f.Dam = units.Temperature(r.WallC)
	}
	if !math.IsInf(r.BelowC, 0) {
		f.Foam = units.Temperature(r.BelowC)
	}
	for _, p := range r.Pours {
		f.Lifts = append(f.Lifts, LiftForecast{Peak: units.Temperature(p.PeakC), PeakAt: units.Duration(p.PeakH),
			Gels: units.Duration(p.GelH), Bonds: units.Duration(p.BondsH), Tacky: units.Duration(p.TackyH)})
	}
	if n := len(f.Lifts); n > 0 && n <= len(pours) {
		last, at := &f.Lifts[n-1], float64(pours[n-1].At)
		last.Hard, last.Sandable = units.Duration(r.SetH), units.Duration(r.SmoothH)
		last.Zones = zonesOf(r.Columns, at, float64(end))
	}
	return f
}

// fine simulates on the fine grid with fields, and once more on cells twice as wide to
// say what the grid does. watch hears which hour is at work, of how many.
func (h *hearth) fine(ctx context.Context, pours []Pour, watch func(share float64)) (Outcome, error) {
	last := pours[len(pours)-1].At
	end := last + runOn
	o := heat.Options{DXMM: h.fineMM, DZMM: fineZ, Threads: threads, Frames: frames(last)}
	c := h.caseOf(h.shape, pours, end, asPlanned)
	watched(&c, float64(last+usualRun), watch)
	r, err := solveWithin(ctx, c, o)
	if err != nil {
		return Outcome{}, fmt.Errorf("on the fine grid: %w", err)
	}
	wide := h.coarse(2e-3)
	wide.DXMM, wide.Rough = 2*r.CellMM, true
	rough, err := solveWithin(ctx, h.caseOf(h.rough, pours, end, asPlanned), wide)
	if err != nil {
		return Outcome{}, fmt.Errorf("on the coarse grid: %w", err)
	}
	out := Outcome{Forecast: h.tell(r, pours, end), X: units.Length(r.PeakX), Y: units.Length(r.PeakY), Z: units.Length(h.deep - r.PeakZ),
		Sandable: units.Duration(r.SmoothH), Fields: h.fields(r)}
	out.Numerics = Numerics{Cells: r.Cells, Steps: r.Steps, Grid: units.Length(r.CellMM), Wide: units.Length(rough.CellMM), Asked: units.Length(fineMM), Coarse: units.Temperature(rough.PeakC),
		Off: units.Temperature(math.Abs(rough.PeakC - r.PeakC)), Energy: r.EnergyDefect()}
	out.Zones = zonesOf(r.Columns, 0, float64(end))
	if math.IsInf(r.SetH, 1) {
		if err := h.goOn(ctx, pours, &out, &r); err != nil {
			return Outcome{}, err
		}
		end = last + longest
	}
	out.Soft, out.Last = h.soft(r, float64(end))
	return out, nil
}

// usualRun is how long after the last pour most simulations go on, for the progress
// that is shown.
const usualRun units.Duration = 8 * units.Day

// watched lets watch hear how far the simulation is: the room is asked for its
// temperature at every step, none of which is longer than an hour. Questions about later
// pours come before the first step and tell nothing.
func watched(c *heat.Case, mostH float64, watch func(share float64)) {
	if watch == nil {
		return
	}
	air, reached := c.Air.TempC, 0.0
	c.Air.TempC = func(hour float64) float64 {
		if hour >= reached && hour <= reached+2 {
			reached = hour
			watch(min(1, max(0, hour/mostH)))
		}
		return air(hour)
	}
}

// goOn follows what is not hard on the coarse grid until it is, for longest at most, and
// puts the hours of the zones that still were soft into the outcome.
func (h *hearth) goOn(ctx context.Context, pours []Pour, out *Outcome, r *heat.Result) error {
	last := pours[len(pours)-1].At
	end := last + longest
	more, err := h.quick(ctx, pours, asPlanned, end)
	if err != nil {
		return fmt.Errorf("after the first %.0f days: %w", runOn/units.Day, err)
	}
	out.HardAll = units.Duration(more.SetH)
	for _, list := range []struct {
		zones []Zone
		since float64
	}{{out.Zones, 0}, {out.Lifts[len(out.Lifts)-1].Zones, float64(last)}} {
		later := zonesOf(more.Columns, list.since, float64(end))
		for i := range list.zones {
			z := &list.zones[i]
			if k := slices.IndexFunc(later, func(o Zone) bool { return o.Name == z.Name }); k >= 0 && z.Hard.Later {
				z.Hard = later[k].Hard
			}
		}
	}
	for i, c := range r.Columns {
		if math.IsInf(c.SetH, 1) {
			r.Columns[i].SetH = columnNear(more, r.OffXMM+(float64(c.I)+0.5)*r.CellMM, r.OffYMM+(float64(c.J)+0.5)*r.CellMM, c.DeepMM).SetH
		}
	}
	return nil
}

// columnNear returns the column of r that is likest to one at x, y with deepMM of resin.
func columnNear(r heat.Result, x, y, deepMM float64) heat.Column {
	best, least := heat.Column{SetH: math.Inf(1)}, math.Inf(1)
	for _, c := range r.Columns {
		off := math.Hypot(r.OffXMM+(float64(c.I)+0.5)*r.CellMM-x, r.OffYMM+(float64(c.J)+0.5)*r.CellMM-y)
		if d := off + 10*math.Abs(c.DeepMM-deepMM); d < least {
			best, least = c, d
		}
	}
	return best
}

// frames are the hours shown: every hour to a day and a half after the last pour, then
// every six.
func frames(last units.Duration) []float64 {
	var out []float64
	step := math.Ceil((float64(last) + 36) / 36)
	for t := 0.0; t <= float64(last)+36; t += step {
		out = append(out, t)
	}
	for t := out[len(out)-1] + 6; t <= float64(last)+96; t += 6 {
		out = append(out, t)
	}
	return out
}
