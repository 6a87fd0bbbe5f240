package toolpath

import (
	"math"
	"slices"

	"pourwright/internal/geom"
)

// fewStops is the number up to which all orders are walked. Chosen: a few
// milliseconds.
const fewStops = 8

// A walker goes through all legal orders of few stops. For each it carries the least
// cost up to every beginning of the last stop, and turns back where all are longer
// than the best tour.
type walker struct {
	t     *tour
	best  float64
	order []int
	found []int
	done  []bool
}

// all puts the shortest of all tours in place of t.
func (t *tour) all() {
	w := &walker{t: t, best: t.length() + leastGainMM, done: make([]bool, len(t.stops))}
	w.from([]geom.Point{{}}, []float64{0})
	if w.found == nil {
		return
	}
	copy(t.order, w.found)
	t.seat(0, len(t.order))
	t.choose()
}

// from goes on from places that were reached at costs.
func (w *walker) from(places []geom.Point, costs []float64) {
	if slices.Min(costs) >= w.best {
		return
	}
	if len(w.order) == len(w.t.stops) {
		for k, p := range places {
			if c := costs[k] + apart(p, geom.Point{}); c < w.best {
				w.best, w.found = c, slices.Clone(w.order)
			}
		}
		return
	}
	for i, s := range w.t.stops {
		if w.done[i] || !w.ready(i) {
			continue
		}
		w.done[i] = true
		w.order = append(w.order, i)
		w.from(s.out, reached(s, places, costs))
		w.order = w.order[:len(w.order)-1]
		w.done[i] = false
	}
}

// ready reports whether all that must come before stop i is done.
func (w *walker) ready(i int) bool {
	for _, j := range w.t.before[i] {
		if !w.done[j] {
			return false
		}
	}
	return true
}

// reached returns the least costs of the beginnings of s.
func reached(s stop, places []geom.Point, costs []float64) []float64 {
	out := make([]float64, len(s.in))
	for a, p := range s.in {
		out[a] = math.Inf(1)
		for b, q := range places {
			out[a] = math.Min(out[a], costs[b]+apart(q, p))
		}
	}
	return out
}
