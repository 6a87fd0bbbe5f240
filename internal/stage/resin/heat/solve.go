package heat

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
)

// Errors of a case that cannot be solved.
var (
	ErrTooLarge   = errors.New("the body is too large for the memory set aside")
	ErrNoProgress = errors.New("the steps get too small")
	ErrBadCase    = errors.New("the case cannot be simulated")
)

// Steps in time, s. Chosen: the first resolves the mixing of a new layer with what it
// lies on; the longest keeps the room's day.
const (
	firstStep   = 2.5
	leastStep   = 0.05
	mostStep    = 3600.0
	mostFilmAge = 16 // steps after which films are worked out anew in any case

	filmSteady, filmMoves = 0.01, 0.03 // changes of a film that let the next look come later, and sooner
)

// Solve simulates a case. It returns ctx's error when it is stopped.
func Solve(ctx context.Context, c Case, o Options) (Result, error) {
	p, err := Prepare(c, o)
	if err != nil {
		return Result{}, err
	}
	return p.Solve(ctx)
}

// lookAtFilms works films out, sets when to look again, and reports whether any changed.
func (p *pace) lookAtFilms(c Case, airC float64) bool {
	change := p.films(c, airC)
	p.filmAge = 0
	switch {
	case change < filmSteady:
		p.filmEvery = min(2*p.filmEvery, mostFilmAge)
	case change > filmMoves:
		p.filmEvery = max(p.filmEvery/2, 1)
	}
	return change > 0
}

// poured returns the heat of a mass of the poured material t over the reference, J.
func (s *stepper) poured(kg float32, t float64) float64 {
	return float64(kg) * (s.pourJKGK*t + float64(s.RiseJKGK2)*t*t/2)
}

// begin sets the state of a new stage: what was there keeps its temperature and cure,
// what is new comes with the pour's, and cells that gain both mix them by heat and mass.
func (s *stepper) begin(old *stepper, p Pour, airC float64) {
	for at, c := range s.Cap {
		if c == 0 {
			continue
		}
		was, had, cured := airC-s.refC, float32(0), float32(0)
		if old != nil && old.Cap[at] > 0 {
			was, had, cured = float64(old.Temp[at]), old.Mass[at], old.Cure[at]
		}
		fresh := s.Mass[at] - had
		s.Temp[at], s.Cure[at] = float32(was), cured
		if fresh <= 0 {
			continue
		}
		s.Cure[at] = (had*cured + fresh*float32(p.Cure)) / s.Mass[at]
		s.Temp[at] = float32(s.warmth(at, s.heatOf(at, was)+s.poured(fresh, p.TempC-s.refC)-s.poured(fresh, was)))
	}
	for at, m := range s.Mass {
		if m > 0 {
			s.Rate[at] = s.rates.At(s.Cure[at], s.Temp[at]+float32(s.refC))
			s.Before[at] = s.Rate[at]
		}
	}
}

// run steps from fromH to endH.
func (s *stepper) run(ctx context.Context, c Case, o Options, fromH, endH float64, tr *tracker) error {
	t, end := fromH*3600, endH*3600
	p := pace{stepper: s, o: o, dt: firstStep, filmAge: mostFilmAge, filmEvery: 4}
	s.dtPrev = firstStep
	watch := newWatch(s)
	for t < end-1e-6 {
		if err := ctx.Err(); err != nil {
			return fmt.Errorf("simulate: %w", err)
		}
		step := roomStep(c.Air.TempC, t, min(p.dt, o.StepS, end-t))
		p.prepare(c, t, step, watch.steps)
		airC := c.Air.TempC((t + step/2) / 3600)
		e := s.try(airC) / 6
		if at, hot := s.hottest(); at >= 0 && s.reach(hot) {
			continue // the table of rates did not reach as far
		}
		curve := watch.look(s, step)
		if math.IsNaN(e+curve) || (e > 2*o.TolK || curve > 4*conductShare*o.TolK) && p.dt > leastStep {
			if p.dt = min(p.dt, step) / 2; p.dt < leastStep || tr.steps > MostSteps {
				return fmt.Errorf("simulate, at %.2f h, step %.3g s, %s: %w", t/3600, p.dt, tr.trouble(s), ErrNoProgress)
			}
			continue
		}
		tr.step(s, t/3600, step/3600, airC)
		watch.accept(s, step)
		s.accept()
		t, p.filmAge = t+step, p.filmAge+1
		if tr.settled(s, t/3600) && endH == c.EndH {
			break
		}
		if tr.steps > MostSteps {
			return fmt.Errorf("simulate, at %.2f h: more than %d steps: %w", t/3600, MostSteps, ErrNoProgress)
		}
		if watch.steps > dampedSteps {
			p.dt = nextStep(p.dt, math.Max(e, curve/conductShare), o.TolK)
		}
	}
	return nil
}

// reach makes sure that the table of rates holds hotC, and reports whether it did not.
func (s *stepper) reach(hotC float64) bool {
	if !s.rates.reach(hotC) {
		return false
	}
	s.Rates = s.rates.Table
	return true
}

// A pace is what a run keeps of its steps.
type pace struct {
	*stepper
	o                  Options
	dt                 float64
	filmAge, filmEvery int        // steps since films were worked out, and until they are again
	factored           [2]float64 // step and weight of the factors
}

// prepare works out films and factors for a step, where they are no longer true.
func (p *pace) prepare(c Case, t, step float64, steps int) {
	want := [2]float64{step, 0.5}
	if steps < dampedSteps {
		want[1] = 1
	}
	look := p.filmAge >= p.filmEvery
	changed := look && p.lookAtFilms(c, c.Air.TempC(t/3600))
	if look && p.capacities() || want != p.factored {
		p.factor(want[0], want[1])
		p.factorZ()
	} else if changed {
		p.factorZ()
	}
	p.factored = want
}

// How far the room may go in a step, K, and the step down to which that counts, s: what is
// split into three directions does not see it bend. Chosen, by steps of 5 s.
const (
	roomDrift = 0.3
	roomLeast = 300.0
)

// roomStep shortens a step of dt s until the room does not go too far in it.
func roomStep(airC func(hour float64) float64, t, dt float64) float64 {
	from := airC(t / 3600)
	far := func(s float64) bool { return math.Abs(airC((t+s)/3600)-from) > roomDrift }
	for dt > roomLeast && (far(dt) || far(dt/2)) {
		dt = max(dt/2, roomLeast)
	}
	return dt
}

// nextStep moves the step on its ladder.
func nextStep(dt, e, tol float64) float64 {
	f := 5.0
	if e > 0 {
		f = math.Cbrt(tol / e)
	}
	switch {
	case f > 4:
		dt *= 2
	case f > 1.5:
		dt *= math.Sqrt2
	case f < 0.9:
		dt /= math.Sqrt2
	}
	return min(max(dt, leastStep), mostStep)
}

// quantile returns the value below which share of the weights lie; +Inf where that is
// among those that never come.
func quantile(values, weights []float64, share float64) float64 {
	order := make([]int, len(values))
	total := 0.0
	for i := range order {
		order[i] = i
		total += weights[i]
	}
	if total == 0 {
		return math.Inf(1)
	}
	slices.SortFunc(order, func(a, b int) int {
		switch {
		case values[a] < values[b]:
			return -1
		case values[a] > values[b]:
			return 1
		}
		return a - b
	})
	sum := 0.0
	for _, i := range order {
		if sum += weights[i]; sum >= share*total {
			return values[i]
		}
	}
	return values[order[len(order)-1]]
}
