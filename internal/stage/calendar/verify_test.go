package calendar

import (
	"slices"
	"strings"
	"time"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// A failer is a test.
type failer interface {
	Helper()
	Fatalf(string, ...any)
}

const eps = 1e-6

// verify holds a result to its input by counting quarters of an hour, with nothing of
// the search: order, windows, who is there, and that nobody is in two places. All
// durations of in are whole quarters and day 1 is Monday 2027-03-01.
func verify(t failer, in Input, r Result, fs []finding.Finding) {
	t.Helper()
	if len(r.Steps) != len(in.Tasks) {
		t.Fatalf("%d steps of %d tasks", len(r.Steps), len(in.Tasks))
	}
	steps, said := map[string]Step{}, map[string]string{}
	for _, s := range r.Steps {
		steps[s.ID] = s
	}
	for _, f := range fs {
		said[f.Where.Element] += f.Code + " "
	}
	for _, k := range in.Tasks {
		verifyOrder(t, k, steps)
		verifyWindows(t, in.Tasks, k, steps, said)
		verifyPresence(t, in, k, steps, said)
	}
	verifyHands(t, r.Steps)
}

// verifyOrder: no task starts before what it comes after is done and waited for.
func verifyOrder(t failer, k Task, steps map[string]Step) {
	soonest := func(id string, wait units.Duration) {
		if before := steps[id]; steps[k.ID].StartH < before.EndH+wait-eps {
			t.Fatalf("task %s starts %v, before %s ends %v and waits %v", k.ID, steps[k.ID].StartH, id, before.EndH, wait)
		}
	}
	for _, id := range k.After {
		soonest(id, steps[id].Wait)
	}
	for _, l := range k.Links {
		soonest(l.ID, l.Wait)
	}
}

// verifyWindows: a latest that is not kept is said.
func verifyWindows(t failer, tasks []Task, k Task, steps map[string]Step, said map[string]string) {
	latest := func(from string, l units.Duration, s units.Duration) {
		if l > 0 && s > steps[from].EndH+l+eps && !strings.Contains(said[from], window.Code) {
			t.Fatalf("%s ends %v, latest %v, followed at %v without a finding", from, steps[from].EndH, l, s)
		}
	}
	for _, l := range k.Links {
		latest(l.ID, l.Latest, steps[k.ID].StartH)
	}
	first, followed := units.Duration(0), false
	for _, b := range tasks {
		if s := steps[b.ID].StartH; slices.Contains(b.After, k.ID) && (!followed || s < first) {
			first, followed = s, true
		}
	}
	if followed {
		latest(k.ID, k.Latest, first)
	}
}

// verifyPresence: as many people as asked for are there for all of the work, or it is
// said; work that may pause does so only when they are not there.
func verifyPresence(t failer, in Input, k Task, steps map[string]Step, said map[string]string) {
	s := steps[k.ID]
	if k.Work == 0 {
		return
	}
	if want := max(1, k.Hands); len(s.Who) != want && !strings.Contains(said[k.ID], hands.Code) {
		t.Fatalf("task %s asks for %d people and has %v", k.ID, want, s.Who)
	}
	loose := s.OffHours || strings.Contains(said[k.ID], through.Code) || strings.Contains(said[k.ID], overtime.Code)
	if s.OffHours && !explained(in, k, said) {
		t.Fatalf("task %s is out of hours and nothing says why", k.ID)
	}
	pauses := !k.Unbroken && k.Latest == 0 && !slices.ContainsFunc(in.Tasks, func(b Task) bool {
		return slices.ContainsFunc(b.Links, func(l Link) bool { return l.ID == k.ID && l.Latest > 0 })
	})
	if loose && (!pauses || s.OffHours) {
		return
	}
	var there units.Duration
	for q := int(s.StartH*4 + eps); q < int(s.EndH*4+eps); q++ {
		switch at := units.Duration(q) / 4; {
		case allThere(in, s.Who, at):
			there += 0.25
		case !pauses || at == s.StartH:
			t.Fatalf("task %s by %v from %v to %v: not all are there at %v", k.ID, s.Who, s.StartH, s.EndH, at)
		}
	}
	if there != k.Work {
		t.Fatalf("task %s has %v hours with all there for %v of work", k.ID, there, k.Work)
	}
}

// explained reports whether work out of hours is said: by its own length, or by a
// window that leads to it.
func explained(in Input, k Task, said map[string]string) bool {
	if strings.Contains(said[k.ID], overtime.Code) {
		return true
	}
	before := slices.Clone(k.After)
	for _, l := range k.Links {
		before = append(before, l.ID)
	}
	return slices.ContainsFunc(before, func(id string) bool { return strings.Contains(said[id], window.Code) })
}

// allThere reports whether all of who are there in the quarter of an hour from h on.
func allThere(in Input, who []string, h units.Duration) bool {
	day := int(h / 24)
	date := time.Date(2027, 3, 1+day, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
	people := in.People
	if len(people) == 0 {
		people = []Person{{Name: "maker"}}
	}
	for _, p := range people {
		if !slices.Contains(who, p.Name) {
			continue
		}
		week := in.Hours
		if p.Hours != nil {
			week = *p.Hours
		}
		at := h - units.Duration(day)*24
		inSpan := func(s Span) bool { return at >= s.From && at < s.To }
		if slices.Contains(in.Closed, date) || slices.Contains(p.Away, date) || !slices.ContainsFunc(week[day%7], inSpan) {
			return false
		}
	}
	return true
}

// verifyHands: nobody is in two places.
func verifyHands(t failer, steps []Step) {
	for i, a := range steps {
		for _, b := range steps[:i] {
			same := func(name string) bool { return slices.Contains(b.Who, name) }
			if slices.ContainsFunc(a.Who, same) && a.StartH < b.EndH-eps && b.StartH < a.EndH-eps {
				t.Fatalf("%v at %s (%v to %v) and %v at %s (%v to %v) at once", a.Who, a.ID, a.StartH, a.EndH, b.Who, b.ID, b.StartH, b.EndH)
			}
		}
	}
}
