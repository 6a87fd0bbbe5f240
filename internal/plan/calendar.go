package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/stage/calendar"
)

func (w *wiring) calendar() (string, []finding.Finding) {
	if !w.basin() {
		w.plan.Calendar = calendar.Result{Steps: []calendar.Step{}}
		return notComputed, nil
	}
	in := calendar.Input{Start: w.job.Shop.Start, Tasks: w.tasks()}
	for d, spans := range w.job.Shop.Hours {
		for _, s := range spans {
			in.Hours[d] = append(in.Hours[d], calendar.Span(s))
		}
	}
	r, found := calendar.Compute(in)
	w.plan.Calendar = r
	return fmt.Sprintf("%d steps, %.0f hours of work, done %s", len(r.Steps), r.Hands, r.Finish), found
}
