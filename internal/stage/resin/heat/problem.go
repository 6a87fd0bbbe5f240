package heat

import (
	"context"
	"math"
)

// A Problem is a case whose cells are built.
type Problem struct {
	body  *body
	o     Options
	zMM   []float64
	first *grid // of the first pour
}

// Prepare checks a case and builds its cells for the first pour.
func Prepare(c Case, o Options) (*Problem, error) {
	if err := check(c, o); err != nil {
		return nil, err
	}
	o = o.orDefaults(c)
	b := newBody(c, int(math.Round(o.DXMM/c.StepMM)))
	p := &Problem{body: b, o: o}
	levels := make([]float64, 0, len(c.Pours))
	for _, q := range c.Pours {
		levels = append(levels, q.TopMM)
	}
	p.zMM = b.layers(o, levels)
	var err error
	p.first, err = b.build(o, p.zMM, c.Pours[0].TopMM)
	return p, err
}

// Solve simulates all stages of filling.
func (p *Problem) Solve(ctx context.Context) (Result, error) {
	tr := newTracker(p.body, p.o, p.zMM)
	last, err := p.stages(func(s *stepper, n int, fromH, endH float64) error {
		tr.stage(s, n, fromH)
		tr.open(s)
		if err := s.run(ctx, p.body.c, p.o, fromH, endH, tr); err != nil {
			return err
		}
		tr.shut(s)
		return nil
	})
	if err != nil {
		return Result{}, err
	}
	return tr.result(last), nil
}

// stages calls do for every pour with the state it begins in, and returns the last one.
func (p *Problem) stages(do func(s *stepper, pour int, fromH, endH float64) error) (*stepper, error) {
	c := p.body.c
	rates := newRateTable(c.Rate, p.warmest())
	refC := c.Air.TempC(c.Pours[0].AtH)
	var s *stepper
	for i, q := range c.Pours {
		g := p.first
		if i > 0 {
			var err error
			if g, err = p.body.build(p.o, p.zMM, q.TopMM); err != nil {
				return nil, err
			}
		}
		next := newStepper(g, rates, c, refC, p.o.Threads)
		next.begin(s, q, c.Air.TempC(q.AtH))
		s = next
		end := c.EndH
		if i+1 < len(c.Pours) {
			end = c.Pours[i+1].AtH
		}
		if err := do(s, i, q.AtH, end); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// warmest returns the greatest temperature that anything begins with.
func (p *Problem) warmest() float64 {
	c := p.body.c
	hot := math.Inf(-1)
	for _, q := range c.Pours {
		hot = max(hot, q.TempC, c.Air.TempC(q.AtH))
	}
	return hot
}

// Cells returns how many cells hold anything.
func (p *Problem) Cells() int { return active(p.first) }
