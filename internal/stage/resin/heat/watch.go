package heat

import "math"

// Steps at the beginning of a stage that are damped (the end of the step counts whole) and
// stay short: a new layer meets what it lies on at another temperature. Chosen.
const dampedSteps = 4

// conductShare is how much larger than that of the reaction the error of conduction in a
// step may be: it fades, while that of a reaction grows. Chosen.
const conductShare = 40.0

// mostWatched cells are enough to see how temperatures bend. Chosen.
const mostWatched = 1500

// A watch follows some cells, spread over all, to tell the error that conduction makes in
// a step: of the trapezoidal rule it is dt^3/12 of the third derivative, here from the mean
// rates of three steps. Source: [gresho-sani].
type watch struct {
	cells     []int32
	last, old []float32 // mean rates of the last two steps, K/s
	dt, dtOld float64
	steps     int
}

func newWatch(s *stepper) *watch {
	w := &watch{}
	every := (active(s.grid) + mostWatched - 1) / mostWatched
	n := 0
	for at, c := range s.Cap {
		if c == 0 {
			continue
		}
		if n%every == 0 {
			w.cells = append(w.cells, int32(at))
		}
		n++
	}
	w.last, w.old = make([]float32, len(w.cells)), make([]float32, len(w.cells))
	return w
}

// look returns the error of the step just tried, K; 0 while too few went before.
func (w *watch) look(s *stepper, dt float64) float64 {
	if w.steps < 3 {
		return 0
	}
	a, b := float32(2/(dt+w.dt)), float32(2/(w.dt+w.dtOld))
	most := float32(0)
	for i, at := range w.cells {
		v := (s.TempNext[at] - s.Temp[at]) / float32(dt)
		bend := a*(v-w.last[i]) - b*(w.last[i]-w.old[i])
		most = max(most, bend, -bend)
	}
	third := float64(most) / ((dt + 2*w.dt + w.dtOld) / 4)
	return dt * dt * dt / 12 * math.Abs(third)
}

func (w *watch) accept(s *stepper, dt float64) {
	w.last, w.old = w.old, w.last
	for i, at := range w.cells {
		w.last[i] = (s.TempNext[at] - s.Temp[at]) / float32(dt)
	}
	w.dt, w.dtOld = dt, w.dt
	w.steps++
}
