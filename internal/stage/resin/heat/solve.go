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
	firstStep = 10.0
	leastStep = 0.05
	mostStep  = 3600.0
	filmEvery = 4 // steps after which films are worked out anew
)

// Solve simulates a case. It returns ctx's error when it is stopped.
func Solve(ctx context.Context, c Case, o Options) (Result, error) {
	p, err := Prepare(c, o)
	if err != nil {
		return Result{}, err
	}
	return p.Solve(ctx)
}

func check(c Case) error {
	bad := func(format string, args ...any) error { return fmt.Errorf(format+": %w", append(args, ErrBadCase)...) }
	switch {
	case c.NX < 1 || c.NY < 1 || c.NX*c.NY > mostSquares || len(c.DeepMM) != c.NX*c.NY:
		return bad("%d x %d squares, %d depths", c.NX, c.NY, len(c.DeepMM))
	case !(c.StepMM > 0) || !(c.BodyMM >= 0) || !(c.EndH > 0) || c.EndH > 24*365:
		return bad("squares of %g mm, body of %g mm, %g h", c.StepMM, c.BodyMM, c.EndH)
	case len(c.Pours) == 0 || c.Rate == nil || c.Air.TempC == nil || c.Air.Film == nil:
		return bad("no pours, rate or air")
	}
	for _, s := range []Solid{c.Body, c.Pour} {
		if !(s.CJKGK > 0) || !(s.KWMK > 0) || !(s.RhoKGM3 > 0) {
			return bad("a solid of %+v", s)
		}
	}
	for i, p := range c.Pours {
		if i > 0 && (p.AtH < c.Pours[i-1].AtH || p.TopMM > c.Pours[i-1].TopMM) || math.IsNaN(p.AtH+p.TopMM+p.TempC) {
			return bad("pour %d at %g h to %g mm", i+1, p.AtH, p.TopMM)
		}
	}
	return nil
}

// begin sets the state of a new stage: what was there keeps its temperature and cure,
// what is new comes with the pour's, and cells that gain both mix them by heat and mass.
func (s *stepper) begin(old *stepper, p Pour, airC float64) {
	for at := range s.cap {
		if s.cap[at] == 0 {
			continue
		}
		was, had, cured := airC, float32(0), float32(0)
		if old != nil {
			was, had, cured = float64(old.now.temp[at])+old.refC, old.mass[at], old.now.cure[at]
		}
		fresh := s.mass[at] - had
		if fresh <= 0 {
			s.now.temp[at], s.now.cure[at] = float32(was-s.refC), cured
			continue
		}
		gain := 1.0
		if old != nil && old.cap[at] > 0 {
			gain = float64(max(0, s.cap[at]-old.cap[at]) / s.cap[at])
		} else {
			gain = float64(fresh / s.mass[at])
		}
		s.now.temp[at] = float32(was + gain*(p.TempC-was) - s.refC)
		s.now.cure[at] = (had*cured + fresh*float32(p.Cure)) / s.mass[at]
	}
	for at, m := range s.mass {
		if m > 0 {
			s.now.rate[at] = s.rates.at(s.now.cure[at], s.now.temp[at]+float32(s.refC))
			s.now.before[at] = s.now.rate[at]
		}
	}
}

// run steps from fromH to endH.
func (s *stepper) run(ctx context.Context, c Case, o Options, fromH, endH float64, tr *tracker) error {
	t, end := fromH*3600, endH*3600
	dt, filmAge, factored := firstStep, filmEvery, 0.0
	s.dtPrev = firstStep
	for t < end-1e-6 {
		if err := ctx.Err(); err != nil {
			return fmt.Errorf("simulate: %w", err)
		}
		step := min(dt, o.StepS, end-t)
		fresh := filmAge >= filmEvery
		if fresh {
			s.films(c, c.Air.TempC(t/3600))
			filmAge = 0
		}
		if step != factored {
			s.factor(step)
		}
		if fresh || step != factored {
			s.factorZ()
		}
		factored = step
		airC := c.Air.TempC((t + step/2) / 3600)
		e := s.try(airC) / 6
		if at, hot := s.hottest(); at >= 0 && s.rates.reach(hot) {
			continue // the table of rates did not reach as far
		}
		if math.IsNaN(e) || (e > 2*o.TolK && dt > leastStep) {
			if dt /= 2; dt < leastStep || tr.steps > MostSteps {
				return fmt.Errorf("simulate, at %.2f h, step %.3g s: %w", t/3600, dt, ErrNoProgress)
			}
			continue
		}
		tr.step(s, t/3600, step/3600, airC)
		s.accept()
		t, filmAge = t+step, filmAge+1
		if tr.settled(s, t/3600) && endH == c.EndH {
			break
		}
		dt = nextStep(dt, e, o.TolK)
	}
	return nil
}

// nextStep moves the step on its ladder.
func nextStep(dt, e, tol float64) float64 {
	f := 2.0
	if e > 0 {
		f = math.Cbrt(tol / e)
	}
	switch {
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
