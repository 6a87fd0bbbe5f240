package calendar

import (
	"cmp"
	"slices"

	"pourwright/internal/units"
)

// Result is the steps in order.
type Result struct {
	Steps    []Step         `json:"steps"`
	People   []PersonHours  `json:"people"`
	Hands    units.Duration `json:"hands_h"`         // work of all people together
	Elapsed  units.Duration `json:"elapsed_h"`       // from the first start to the end of the last wait
	Finish   string         `json:"finish"`          // "Thu 2027-03-18 15:30", or "day 17 15:30"; "" when nothing could be placed
	Earliest bool           `json:"earliest_proven"` // no order of the work and no choice of people is done sooner
}

// PersonHours is what one person has to do.
type PersonHours struct {
	Name  string         `json:"name"`
	Hours units.Duration `json:"hours_h"`
	Days  int            `json:"days"` // on which there is work
}

// A Step is a task with its time. A step that could not be placed has empty Start
// and End.
type Step struct {
	Number   int            `json:"number"`
	ID       string         `json:"id"`
	Title    string         `json:"title"`
	Room     string         `json:"room"`
	Hands    int            `json:"hands"` // people at once; 0 where nobody is needed
	Who      []string       `json:"who"`
	Work     units.Duration `json:"work_h"` // of each of them
	Wait     units.Duration `json:"wait_h"`
	WaitFor  string         `json:"wait_for"`
	Latest   units.Duration `json:"latest_h"` // 0, or how long after the work the next task may still start
	StartH   units.Duration `json:"start_h"`  // after midnight of day 1
	EndH     units.Duration `json:"end_h"`    // of the work
	Start    string         `json:"start"`
	End      string         `json:"end"`
	OffHours bool           `json:"off_hours"` // some of it when nobody is there by the hours
	Cautions []string       `json:"cautions"`
}

// byStart orders by start, then end, then the order of work.
func (p *problem) byStart() []int {
	out := slices.Clone(p.order)
	slices.SortStableFunc(out, func(a, b int) int {
		return cmp.Or(cmp.Compare(p.jobs[a].start, p.jobs[b].start), cmp.Compare(p.jobs[a].end, p.jobs[b].end))
	})
	return out
}

// result lists the tasks as steps: those of order first, then the rest as given.
func (n *network) result(tasks []Task, order []int, cal wall, who shop) Result {
	r := Result{Steps: []Step{}, People: []PersonHours{}}
	first, last := minute(-1), minute(-1)
	for _, i := range n.withRest(order) {
		j := n.jobs[i]
		r.Steps = append(r.Steps, n.step(len(r.Steps)+1, i, tasks[i], cal, who))
		r.Hands += j.typed.work * units.Duration(j.hands)
		if j.placed {
			if first < 0 || j.start < first {
				first = j.start
			}
			last = max(last, j.end+j.wait)
		}
	}
	if first >= 0 {
		r.Elapsed, r.Finish = (last - first).hours(), cal.text(last)
		r.People = n.people(order, who)
	}
	return r
}

func (n *network) step(number, i int, t Task, cal wall, who shop) Step {
	j := n.jobs[i]
	s := Step{Number: number, ID: t.ID, Title: t.Title, Room: t.Room, Hands: j.hands, Who: []string{}, WaitFor: t.WaitFor,
		Work: j.typed.work, Wait: j.typed.wait, Latest: j.typed.latest, Cautions: append([]string{}, t.Cautions...)}
	if j.placed {
		s.StartH, s.EndH = j.start.hours(), j.end.hours()
		s.Start, s.End = cal.text(j.start), cal.text(j.end)
		s.Who = who.list(j.crew.who)
		s.OffHours = who.outside(j)
	}
	return s
}

// people sums up what each person does.
func (n *network) people(order []int, who shop) []PersonHours {
	out := make([]PersonHours, len(who.names))
	for p, name := range who.names {
		days := map[minute]bool{}
		out[p].Name = name
		for _, i := range order {
			j := n.jobs[i]
			if j.crew.who&(1<<p) == 0 {
				continue
			}
			out[p].Hours += j.typed.work
			for d := j.start / perDay; d <= (j.end-1)/perDay; d++ {
				if d == j.start/perDay || len(j.crew.hours.on(d)) > 0 {
					days[d] = true
				}
			}
		}
		out[p].Days = len(days)
	}
	return out
}
