package plan

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/job"
	"pourwright/internal/stage/calendar"
	"pourwright/internal/units"
)

func (w *wiring) calendar() (string, []finding.Finding) {
	if !w.basin() {
		w.plan.Calendar = calendar.Result{Steps: []calendar.Step{}, People: []calendar.PersonHours{}}
		return notComputed, nil
	}
	shop := w.job.Shop
	r, found := calendar.Compute(calendar.Input{Start: shop.Start, Hours: week(shop.Hours), Closed: shop.Closed, People: w.people(), Tasks: w.tasks()})
	w.plan.Calendar = r
	return fmt.Sprintf("%s, %.0f hours of work, done %s", units.Count(len(r.Steps), "step", "steps"), r.Hands, r.Finish), found
}

// people are those the document lists, or the maker and the helpers who come for the
// casting.
func (w *wiring) people() []calendar.Person {
	var out []calendar.Person
	for _, p := range w.job.Shop.People {
		hours := week(p.Hours)
		out = append(out, calendar.Person{Name: p.Name, Hours: &hours, Away: p.Away})
	}
	if len(out) > 0 {
		return out
	}
	out = append(out, calendar.Person{Name: "maker"})
	for i := range w.job.Mixing.People - 1 {
		name := "helper"
		if i > 0 {
			name = fmt.Sprintf("helper %d", i+1)
		}
		out = append(out, calendar.Person{Name: name, Called: true})
	}
	return out
}

func week(hours [7][]job.Span) (out [7][]calendar.Span) {
	for d, spans := range hours {
		for _, s := range spans {
			out[d] = append(out[d], calendar.Span(s))
		}
	}
	return out
}
