package calendar

import (
	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Input is the tasks and when somebody is there.
type Input struct {
	Start string    // date of day 1, YYYY-MM-DD, or ""
	Hours [7][]Span // Monday first
	Tasks []Task
}

// A Span is a stretch of a day, hours after midnight.
type Span struct{ From, To units.Duration }

// A Task is a piece of work or of waiting.
type Task struct {
	ID       string
	Title    string
	Room     string         // which stage asked for it: form, knockout, concrete ...
	Work     units.Duration // somebody's hands, within shop hours
	Wait     units.Duration // runs day and night after the work
	WaitFor  string         // what the wait is for, in words
	Latest   units.Duration // 0, or the next task must start within this time after the work ends
	Unbroken bool           // the work must not pause overnight, as a coat or a pour must not
	After    []string       // ids
	Cautions []string
}

// Result is the steps in order.
type Result struct {
	Steps   []Step         `json:"steps"`
	Hands   units.Duration `json:"hands_h"`
	Elapsed units.Duration `json:"elapsed_h"` // from the first start to the end of the last wait
	Finish  string         `json:"finish"`    // "Thu 2027-03-18 15:30", or "day 17 15:30"; "" when nothing could be placed
}

// A Step is a task with its time. A step that could not be placed has empty Start
// and End.
type Step struct {
	Number   int            `json:"number"`
	ID       string         `json:"id"`
	Title    string         `json:"title"`
	Room     string         `json:"room"`
	Work     units.Duration `json:"work_h"`
	Wait     units.Duration `json:"wait_h"`
	WaitFor  string         `json:"wait_for"`
	Latest   units.Duration `json:"latest_h"` // 0, or how long after the work the next task may still start
	StartH   units.Duration `json:"start_h"`  // after midnight of day 1
	EndH     units.Duration `json:"end_h"`    // of the work
	Start    string         `json:"start"`
	End      string         `json:"end"`
	Cautions []string       `json:"cautions"`
}

// Compute puts the tasks in order of time. A circle among the tasks is a stop
// finding; what does not hang on it is still placed. Without any shop hours the
// tasks are listed in order, with their durations and without times.
func Compute(in Input) (Result, []finding.Finding) {
	var found []finding.Finding
	say := func(f finding.Finding) { found = append(found, f) }
	cal := newCalendar(in.Start, say)
	net := newNetwork(in.Tasks, say)
	week := newWeek(in.Hours, say)
	order := net.sorted(say)
	if week.open() {
		order = newSchedule(net, week, cal, say).run(order)
	} else if len(in.Tasks) > 0 {
		say(closed.At(finding.Where{}, "The shop is closed all week, so %d tasks have durations but no dates.", len(in.Tasks)))
	}
	return net.result(in.Tasks, order, cal), found
}

// result lists the tasks as steps: those of order first, then the rest as given.
func (n *network) result(tasks []Task, order []int, cal wall) Result {
	r := Result{Steps: []Step{}}
	first, last := minute(-1), minute(-1)
	for _, i := range n.withRest(order) {
		j, t := n.jobs[i], tasks[i]
		s := Step{Number: len(r.Steps) + 1, ID: t.ID, Title: t.Title, Room: t.Room, WaitFor: t.WaitFor,
			Work: j.typed.work, Wait: j.typed.wait, Latest: j.typed.latest, Cautions: append([]string{}, t.Cautions...)}
		r.Hands += s.Work
		if j.placed {
			s.StartH, s.EndH = j.start.hours(), j.end.hours()
			s.Start, s.End = cal.text(j.start), cal.text(j.end)
			if first < 0 || j.start < first {
				first = j.start
			}
			last = max(last, j.end+j.wait)
		}
		r.Steps = append(r.Steps, s)
	}
	if first >= 0 {
		r.Elapsed, r.Finish = (last - first).hours(), cal.text(last)
	}
	return r
}
