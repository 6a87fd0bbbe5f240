package resin

import (
	"context"
	"slices"

	"pourwright/internal/stage/resin/heat"
	"pourwright/internal/units"
)

// members is how many simulations with all inputs off at once are drawn. With those of
// one input each, the plan itself and the two outward ones there are 19.
const members = 10

// A Band is what the pours do when what is not known exactly is otherwise.
type Band struct {
	Peaks, Dams, Foams []units.Temperature // of the members drawn
	Low, High          Forecast            // the peak's tenths, by going outward in its steepest direction
	Influences         []Influence         // the strongest first
	Runs               int
}

// inRoom is a coarse forecast in a room of another temperature; the resin is as warm.
func (h *hearth) inRoom(ctx context.Context, pours []Pour, room units.Temperature) (Forecast, error) {
	w := asPlanned
	w.room = float64(room) - h.usual()
	end := pours[len(pours)-1].At + longest
	r, err := h.quick(ctx, pours, w, end)
	if err != nil {
		return Forecast{}, err
	}
	return h.tell(r, pours, end), nil
}

// peaked is when pours that peak at peakAt have surely peaked, also where all is slower.
func peaked(pours []Pour, f Forecast) units.Duration {
	last, since := pours[len(pours)-1].At, units.Duration(0)
	for _, p := range pours {
		if p.At < f.PeakAt {
			since = f.PeakAt - p.At
		}
	}
	return max(last+2*units.Day, f.PeakAt+since+units.Day)
}

// band simulates the pours with one input off at a time, to see which ones matter, then
// with these off all at once, and in the direction in which the peak grows fastest.
func (h *hearth) band(ctx context.Context, pours []Pour, plan Forecast, watch func(share float64)) (Band, error) {
	of := unsure(h.in.Card)
	end, total := peaked(pours, plan), float64(len(of)+members)
	single := func(i int) []float64 {
		z := make([]float64, len(of))
		if i > 0 {
			z[i-1] = 1
		}
		return z
	}
	ones, err := h.off(ctx, pours, of, end, len(of)+1, single, func(done int) { tellShare(watch, float64(done)/total) })
	if err != nil {
		return Band{}, err
	}
	for i := range of {
		of[i].Peak = ones[i+1].PeakC - ones[0].PeakC
	}
	matter := strong(of)
	all, err := h.off(ctx, pours, of, end, members, func(i int) []float64 { return joint(i, len(of), matter) },
		func(done int) { tellShare(watch, float64(len(of)+done)/total) })
	if err != nil {
		return Band{}, err
	}
	ways := []float64{-nineOfTen, nineOfTen}
	ends, err := h.off(ctx, pours, of, end, len(ways), func(i int) []float64 { return outward(of, ways[i]) }, func(int) {})
	if err != nil {
		return Band{}, err
	}
	// The members are coarse: what counts is by how much they differ from the plan on
	// the same cells.
	same := h.tell(ones[0], pours, end)
	beside := func(r heat.Result) Forecast {
		f := h.tell(r, pours, end)
		f.Peak, f.Dam, f.Foam = plan.Peak+f.Peak-same.Peak, plan.Dam+f.Dam-same.Dam, plan.Foam+f.Foam-same.Foam
		return f
	}
	b := Band{Runs: len(ones) + len(all) + len(ends), Low: beside(ends[0]), High: beside(ends[1])}
	for _, r := range all {
		f := beside(r)
		b.Peaks, b.Dams, b.Foams = append(b.Peaks, f.Peak), append(b.Dams, f.Dam), append(b.Foams, f.Foam)
	}
	order := strongFirst(of)
	for _, i := range order {
		b.Influences = append(b.Influences, of[i])
	}
	return b, nil
}

func strongFirst(of []Influence) []int {
	order := make([]int, len(of))
	for i := range order {
		order[i] = i
	}
	size := func(i int) float64 { return max(of[i].Peak, -of[i].Peak) }
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case size(a) > size(b):
			return -1
		case size(a) < size(b):
			return 1
		}
		return 0
	})
	return order
}

func tellShare(watch func(float64), share float64) {
	if watch != nil {
		watch(min(1, share))
	}
}

// off simulates n members of a band, two at a time; z says how far each input is off.
func (h *hearth) off(ctx context.Context, pours []Pour, of []Influence, end units.Duration, n int, z func(i int) []float64, begun func(done int)) ([]heat.Result, error) {
	o := h.coarse(4e-3)
	o.Rough = true
	turn := make(chan struct{}, 1) // one member at a time tells
	count := 0
	return heat.Ensemble(ctx, n, threads, func(i int) (heat.Case, heat.Options) {
		turn <- struct{}{}
		begun(count)
		count++
		<-turn
		return h.caseOf(h.rough, pours, end, shifted(of, z(i))), o
	})
}

// column simulates the pours in an endless slab as deep as the basin's deepest place: no
// heat leaves sideways, so that no place of the basin gets as warm.
func (h *hearth) column(ctx context.Context, pours []Pour, w weather, end units.Duration) (units.Temperature, error) {
	c := h.caseOf(shape{stepMM: slabSquare, nx: 1, ny: 1, deepMM: []float64{h.deep}}, pours, end, w)
	c.BodyMM, c.Walls = h.in.Shell.MM(), nil
	film := c.Air.Film
	c.Air.Film = func(face int, surfaceC, airC float64) float64 {
		if face == 2 {
			return 0
		}
		return film(face, surfaceC, airC)
	}
	r, err := heat.Solve(ctx, c, heat.Options{DXMM: slabSquare, DZMM: fineZ, TolK: 4e-3, Rough: true})
	return units.Temperature(r.PeakC), err
}

const slabSquare = 100.0 // mm; any size does

// extremes simulates the pours where all that is not known exactly is off together, so
// that nine of ten cases stay above the first forecast and below the second. Columns say
// which way. bracket is the column's peak as planned.
func (h *hearth) extremes(ctx context.Context, pours []Pour, plan Forecast) (low, high Forecast, bracket units.Temperature, err error) {
	of, end := unsure(h.in.Card), peaked(pours, plan)
	if bracket, err = h.column(ctx, pours, asPlanned, end); err != nil {
		return low, high, bracket, err
	}
	for i := range of {
		z := make([]float64, len(of))
		z[i] = 1
		peak, err := h.column(ctx, pours, shifted(of, z), end)
		if err != nil {
			return low, high, bracket, err
		}
		of[i].Peak = float64(peak - bracket)
	}
	for _, d := range []float64{-nineOfTen, nineOfTen} {
		r, err := h.quick(ctx, pours, shifted(of, outward(of, d)), end)
		if err != nil {
			return low, high, bracket, err
		}
		low, high = high, h.tell(r, pours, end)
	}
	return low, high, bracket, nil
}
