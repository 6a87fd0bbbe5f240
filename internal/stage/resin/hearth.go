package resin

import (
	"context"
	"fmt"
	"math"

	"pourwright/internal/stage/resin/heat"
	"pourwright/internal/stage/resin/kinetics"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// How finely the cure is computed, mm. Chosen after trials: see docs/methods/resin.md.
const (
	rasterMM = 2.0
	roughMM  = 5.0
	fineMM   = 10.0
	coarseMM = 20.0
	fineZ    = 4.0
	coarseZ  = 5.0
)

// runOn is how long after the last pour the cure is followed; it ends sooner when all is
// hard and sandable.
const runOn units.Duration = 10 * units.Day

// Materials that the resin meets. Source: [iso-10456] for the conductivities of concrete
// by density; boards and foam from handbooks, see docs/methods/resin.md.
var (
	concrete  = heat.Solid{RhoKGM3: 2000, CJKGK: 900, KWMK: 1.2}
	board     = heat.Solid{RhoKGM3: 600, CJKGK: 1700, KWMK: 0.14}
	foamUnder = heat.Solid{RhoKGM3: 25, CJKGK: 1450, KWMK: 0.035}
)

// resinC is the heat capacity taken for the resin, J/(kg K): 1850 + 3 (T - 25) at the
// mean of a warm cure. Source: [epoxy-properties].
const resinC = 1900.0

// A hearth simulates the cure of one basin.
type hearth struct {
	in    Input
	model kinetics.Model
	shape shape
	rough shape   // on wider squares, for the coarse grid
	deep  float64 // of the basin, mm
}

// newOven returns what simulates the cure of in, or nil and why there is none.
func newOven(in Input) (oven, string) {
	if len(in.Basin) == 0 {
		return nil, "since the shape of the basin is not known"
	}
	card := in.Card
	if !(card.K25.Value > 0) || !(card.Heat.Value > 0) || !known(card.Tg1.Value) || card.Tg1.Value == 0 {
		return nil, "since its card states no rate, heat or glass transition; fit them from the data sheet with: pourwright shelf fit FILE"
	}
	h := &hearth{in: in, model: kinetics.Typical(card.K25.Value, card.Heat.Value*1000, float64(card.Tg1.Value))}
	if v := card.RateRatio.Value; v > 0 {
		h.model.R = v
	}
	if v := card.Activation.Value; v > 0 {
		h.model.EJMol = v * 1000
	}
	h.model.RhoKGM3 = 1100
	if plausible(card.Density.Value) {
		h.model.RhoKGM3 = float64(card.Density.Value)
	}
	step := rasterMM
	for math.Ceil(in.Length.MM()/step)*math.Ceil(in.Width.MM()/step) > mostSquares {
		step *= 2
	}
	h.shape = shapeOf(in.Basin, in.Length.MM(), in.Width.MM(), step)
	h.rough = shapeOf(in.Basin, in.Length.MM(), in.Width.MM(), roughMM*step/rasterMM)
	if h.deep = h.shape.deepest(); !(h.deep > 0) {
		return nil, "since the basin holds nothing"
	}
	return h, ""
}

const mostSquares = 4_000_000

// A weather is what may be otherwise in a member of the band.
type weather struct {
	room       float64 // C, added
	rate, film float64 // factors
	depth      float64 // factor
}

var asPlanned = weather{rate: 1, film: 1, depth: 1}

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
	air := h.air(w.room)
	c := heat.Case{
		NX: s.nx, NY: s.ny, StepMM: s.stepMM, DeepMM: deep,
		Body: concrete, BodyMM: math.Max(h.in.Shell.MM(), s.stepMM), Pour: heat.Solid{RhoKGM3: m.RhoKGM3, CJKGK: resinC, KWMK: m.KWMK},
		HJKG: m.HJKG, Rate: m.Rate, Set: m.Hard, Smooth: m.Sandable, Wall: board, WallMM: math.Max(h.in.Board.MM(), s.stepMM),
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

// forecast simulates pours on the coarse grid, or on the fine one.
func (h *hearth) forecast(ctx context.Context, pours []Pour, rough bool) (Forecast, error) {
	r, err := h.run(ctx, pours, asPlanned, rough)
	if err != nil {
		return Forecast{}, err
	}
	return h.tell(r), nil
}

// run simulates without fields.
func (h *hearth) run(ctx context.Context, pours []Pour, w weather, rough bool) (heat.Result, error) {
	o, s := heat.Options{DXMM: coarseMM, DZMM: coarseZ, TolK: 2e-3, Rough: true, Threads: threads}, h.rough
	if !rough {
		o.DXMM, o.DZMM, o.TolK, s = fineMM, fineZ, 5e-4, h.shape
	}
	return solveWithin(ctx, h.caseOf(s, pours, pours[len(pours)-1].At+runOn, w), o)
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

// tell puts a result into the words of the shop.
func (h *hearth) tell(r heat.Result) Forecast {
	f := Forecast{Peak: units.Temperature(r.PeakC), PeakAt: units.Duration(r.PeakH), PeakIn: r.PeakPour + 1, HardAll: units.Duration(r.SetH)}
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
	return f
}

// fine simulates on the fine grid with fields, and once more on the coarse one to say
// what the grid does.
func (h *hearth) fine(ctx context.Context, pours []Pour) (Outcome, error) {
	last := pours[len(pours)-1].At
	o := heat.Options{DXMM: fineMM, DZMM: fineZ, Threads: threads, Frames: frames(last)}
	r, err := solveWithin(ctx, h.caseOf(h.shape, pours, last+runOn, asPlanned), o)
	if err != nil {
		return Outcome{}, fmt.Errorf("on the fine grid: %w", err)
	}
	rough, err := h.run(ctx, pours, asPlanned, true)
	if err != nil {
		return Outcome{}, fmt.Errorf("on the coarse grid: %w", err)
	}
	out := Outcome{Forecast: h.tell(r), X: units.Length(r.PeakX), Y: units.Length(r.PeakY), Z: units.Length(h.deep - r.PeakZ),
		Sandable: units.Duration(r.SmoothH), Fields: h.fields(r)}
	out.Numerics = Numerics{Cells: r.Cells, Steps: r.Steps, Grid: units.Length(r.CellMM), Coarse: units.Temperature(rough.PeakC),
		Off: units.Temperature(math.Abs(rough.PeakC - r.PeakC)), Energy: r.EnergyDefect()}
	out.Soft, out.Last = h.soft(r)
	return out, nil
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

// inRoom is a coarse forecast in a room of another temperature; the resin is as warm.
func (h *hearth) inRoom(ctx context.Context, pours []Pour, room units.Temperature) (Forecast, error) {
	w := asPlanned
	w.room = float64(room - h.in.Room)
	r, err := h.run(ctx, pours, w, true)
	if err != nil {
		return Forecast{}, err
	}
	return h.tell(r), nil
}

// members is how many simulations make the band.
const members = 16

// band simulates members two at a time. What is not known of each: the room by 1.5 K,
// rates by 15 %, films by 15 %, depth by 2 % (one standard deviation). The members are
// the points of a low-discrepancy sequence, so that the same pours give the same band.
func (h *hearth) band(ctx context.Context, pours []Pour) ([]units.Temperature, error) {
	o := heat.Options{DXMM: coarseMM, DZMM: coarseZ, TolK: 4e-3, Rough: true}
	all, err := heat.Ensemble(ctx, members, threads, func(i int) (heat.Case, heat.Options) {
		return h.caseOf(h.rough, pours, pours[len(pours)-1].At+bandOn, member(i)), o
	})
	if err != nil {
		return nil, err
	}
	out := make([]units.Temperature, 0, members)
	for _, r := range all {
		out = append(out, units.Temperature(r.PeakC))
	}
	return out, nil
}

// bandOn is how long after the last pour a member of the band is followed: to its peak.
const bandOn units.Duration = 2 * units.Day

// member returns member i: a point of the Halton sequence, each part made normal.
func member(i int) weather {
	at := func(base int) float64 { return normal(halton(i+1, base)) }
	return weather{room: 1.5 * at(2), rate: math.Exp(0.15 * at(3)), film: math.Exp(0.15 * at(5)), depth: 1 + 0.02*at(7)}
}

func halton(i, base int) float64 {
	f, r := 1.0, 0.0
	for ; i > 0; i /= base {
		f /= float64(base)
		r += f * float64(i%base)
	}
	return r
}

// normal turns a share into a standard normal deviate.
func normal(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }
