package calendar

import (
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/units"
)

// quarters draws a duration of whole quarters of an hour.
func quarters(t *rapid.T, most int, label string) units.Duration {
	return units.Duration(rapid.IntRange(0, 4*most).Draw(t, label)) / 4
}

func drawHours(t *rapid.T) [7][]Span {
	var h [7][]Span
	for d := range h {
		for range rapid.IntRange(0, 2).Draw(t, "spans") {
			from := quarters(t, 22, "from")
			h[d] = append(h[d], Span{from, min(24, from+0.25+quarters(t, 9, "length"))})
		}
	}
	h[2] = append(h[2], Span{9, 12}) // never closed all week
	return h
}

func drawTasks(t *rapid.T) []Task {
	tasks := make([]Task, rapid.IntRange(1, 9).Draw(t, "tasks"))
	for i := range tasks {
		k := Task{ID: fmt.Sprint(i), Work: quarters(t, 6, "work"), Unbroken: rapid.Bool().Draw(t, "unbroken")}
		k.Wait = quarters(t, 30, "wait")
		if rapid.IntRange(0, 2).Draw(t, "windowed") == 0 {
			k.Latest = k.Wait + 0.25 + quarters(t, 4, "latest")
		}
		for b := range i {
			if rapid.IntRange(0, 2).Draw(t, "after") == 0 {
				k.After = append(k.After, fmt.Sprint(b))
			}
		}
		tasks[i] = k
	}
	return tasks
}

func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Input{Hours: drawHours(t), Tasks: drawTasks(t)}
		r, fs := Compute(in)
		if len(r.Steps) != len(in.Tasks) {
			t.Fatalf("%d steps of %d tasks", len(r.Steps), len(in.Tasks))
		}
		steps := map[string]Step{}
		for _, s := range r.Steps {
			steps[s.ID] = s
		}
		loose := map[string]bool{} // tasks said to run through a break or past closing
		missed := map[string]bool{}
		for _, f := range fs {
			switch f.Code {
			case through.Code, overtime.Code:
				loose[f.Where.Element] = true
			case window.Code:
				missed[f.Where.Element] = true
			}
		}
		for _, k := range in.Tasks {
			checkOrder(t, k, steps)
			checkHours(t, in.Hours, k, steps[k.ID], loose[k.ID])
		}
		checkHands(t, r.Steps)
		checkWindows(t, in.Tasks, steps, missed)
		if again, fs2 := Compute(in); !reflect.DeepEqual(r, again) || !reflect.DeepEqual(fs, fs2) {
			t.Fatalf("two runs differ")
		}
	})
}

const eps = 1e-6

// checkOrder: no task starts before what it comes after is done and waited for.
func checkOrder(t *rapid.T, k Task, steps map[string]Step) {
	for _, id := range k.After {
		if before := steps[id]; steps[k.ID].StartH < before.EndH+before.Wait-eps {
			t.Fatalf("task %s starts %v, before %s ends %v and waits %v", k.ID, steps[k.ID].StartH, id, before.EndH, before.Wait)
		}
	}
}

// checkHours counts by quarter hours, independently of the stretches: a task ends
// when its work is done, and works only while the shop is open.
func checkHours(t *rapid.T, hours [7][]Span, k Task, s Step, loose bool) {
	if s.EndH < s.StartH {
		t.Fatalf("task %s ends %v before it starts %v", k.ID, s.EndH, s.StartH)
	}
	if loose {
		if got := s.EndH - s.StartH; got < k.Work-eps || got > k.Work+eps {
			t.Fatalf("task %s takes %v on end, want %v", k.ID, got, k.Work)
		}
		return
	}
	var open units.Duration
	for q := int(s.StartH*4 + eps); q < int(s.EndH*4+eps); q++ {
		if at := units.Duration(q) / 4; isOpen(hours, at) {
			open += 0.25
		} else if k.Unbroken || k.Latest > 0 {
			t.Fatalf("unbroken task %s runs %v to %v over %v, when the shop is closed", k.ID, s.StartH, s.EndH, at)
		}
	}
	if open != k.Work {
		t.Fatalf("task %s has %v open hours for %v of work", k.ID, open, k.Work)
	}
	if k.Work > 0 && !isOpen(hours, s.StartH) {
		t.Fatalf("task %s starts at %v, when the shop is closed", k.ID, s.StartH)
	}
}

func isOpen(hours [7][]Span, h units.Duration) bool {
	day := int(h / 24)
	for _, s := range hours[day%7] {
		if at := h - units.Duration(day)*24; at >= s.From && at < s.To {
			return true
		}
	}
	return false
}

// checkHands: no two tasks have the hands at once.
func checkHands(t *rapid.T, steps []Step) {
	for i, a := range steps {
		for _, b := range steps[:i] {
			if a.Work > 0 && b.Work > 0 && a.StartH < b.EndH-eps && b.StartH < a.EndH-eps {
				t.Fatalf("%s (%v to %v) and %s (%v to %v) at once", a.ID, a.StartH, a.EndH, b.ID, b.StartH, b.EndH)
			}
		}
	}
}

// checkWindows: a task without a finding is followed in time, by at least the first
// of the tasks after it.
func checkWindows(t *rapid.T, tasks []Task, steps map[string]Step, missed map[string]bool) {
	for _, k := range tasks {
		if k.Latest == 0 || missed[k.ID] {
			continue
		}
		first, followed := units.Duration(0), false
		for _, b := range tasks {
			for _, id := range b.After {
				if s := steps[b.ID].StartH; id == k.ID && (!followed || s < first) {
					first, followed = s, true
				}
			}
		}
		if followed && first > steps[k.ID].EndH+k.Latest+eps {
			t.Fatalf("%s ends %v, latest %v, followed at %v without a finding", k.ID, steps[k.ID].EndH, k.Latest, first)
		}
	}
}

// With any links at all, circles among them, every task is listed once and those
// without a time hang on a circle that a stop finding names.
func TestAnyLinks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := Input{Hours: drawHours(t), Tasks: drawTasks(t)}
		for i := range in.Tasks {
			for range rapid.IntRange(0, 2).Draw(t, "links") {
				in.Tasks[i].After = append(in.Tasks[i].After, fmt.Sprint(rapid.IntRange(0, len(in.Tasks)).Draw(t, "to")))
			}
		}
		r, fs := Compute(in)
		seen := map[string]bool{}
		untimed := 0
		for _, s := range r.Steps {
			seen[s.ID] = true
			if s.Start == "" {
				untimed++
			}
		}
		stops := 0
		for _, f := range fs {
			if f.Code == circle.Code {
				stops++
			}
		}
		if len(seen) != len(in.Tasks) || (untimed > 0) != (stops == 1) {
			t.Fatalf("%d of %d tasks listed, %d without a time, %d circles said", len(seen), len(in.Tasks), untimed, stops)
		}
	})
}

// BenchmarkWindows places six chains of coats that no start can keep in hours, the
// slowest case of the search.
func BenchmarkWindows(b *testing.B) {
	in := Input{Hours: shop()}
	for c := range 6 {
		for k := range 4 {
			t := Task{ID: fmt.Sprintf("%d-%d", c, k), Work: 1.5, Wait: 0.5, Latest: 2, Unbroken: true}
			if k == 3 {
				t.Wait, t.Latest = 10, 12
			}
			if k > 0 {
				t.After = []string{fmt.Sprintf("%d-%d", c, k-1)}
			}
			in.Tasks = append(in.Tasks, t)
		}
		in.Tasks = append(in.Tasks, Task{ID: fmt.Sprintf("%d-level", c), Work: 0.5, After: []string{fmt.Sprintf("%d-3", c)}})
	}
	for b.Loop() {
		Compute(in)
	}
}
