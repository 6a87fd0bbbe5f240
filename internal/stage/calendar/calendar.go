package calendar

import (
	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// Input is the tasks, the people and when they are there.
type Input struct {
	Start  string    // date of day 1, YYYY-MM-DD, or ""
	Hours  [7][]Span // of the shop, Monday first
	Closed []string  // dates on which nobody is there
	People []Person  // none: one pair of hands
	Tasks  []Task
}

// A Person is one pair of hands.
type Person struct {
	Name   string
	Hours  *[7][]Span // nil: the shop's
	Away   []string   // dates
	Called bool       // a helper, who comes only for work that wants more than one
}

// A Span is a stretch of a day, hours after midnight.
type Span struct{ From, To units.Duration }

// A Task is a piece of work or of waiting.
type Task struct {
	ID        string
	Title     string
	Room      string         // which stage asked for it: form, knockout, concrete ...
	Hands     int            // people at once; 0 is 1
	Work      units.Duration // of every one of them, within their hours
	Wait      units.Duration // runs day and night after the work and needs nobody
	WaitFor   string         // what the wait is for, in words
	Latest    units.Duration // 0, or the next task must start within this time after the work ends
	Otherwise string         // what to do if Latest cannot be kept in hours; "" if it must be
	Unbroken  bool           // the work must not pause overnight, as a coat or a pour must not
	After     []string       // ids
	Links     []Link         // to tasks that it comes after by a time of its own
	Cautions  []string
}

// A Link is a task to come after, with times that count from the end of its work.
type Link struct {
	ID     string
	Wait   units.Duration // at the soonest
	Latest units.Duration // at the latest; 0: whenever
}

// Compute gives every task its time and its people: every window kept in hours where
// that can be, the whole done as early as can be, and then on as few days as that
// allows. A circle among the tasks is a stop finding; what does not hang on it is still
// placed. Without anybody there the tasks are listed in order, with their durations and
// without times.
func Compute(in Input) (Result, []finding.Finding) {
	var found []finding.Finding
	say := func(f finding.Finding) { found = append(found, f) }
	cal := newCalendar(in.Start, say)
	net := newNetwork(in.Tasks, say)
	who := newShop(in, cal, say)
	order := net.sorted(say)
	net.findNext(in.Tasks, order)
	earliest := false
	if who.open() {
		order, earliest = place(newProblem(net, who, order), cal, say)
	} else if len(in.Tasks) > 0 {
		say(closed.At(finding.Where{}, "The shop is closed all week, so %s no dates.", units.Count(len(in.Tasks), "task has", "tasks have")))
	}
	r := net.result(in.Tasks, order, cal, who)
	r.Earliest = earliest
	return r, found
}

// place gives the tasks of p their times, says what is unusual about them, and returns
// them by start, and whether no earlier finish is there.
func place(p *problem, cal wall, say func(finding.Finding)) ([]int, bool) {
	if len(p.order) == 0 {
		return nil, true
	}
	st, earliest := p.settleAll()
	p.unsplit(st)
	for _, i := range p.order {
		j := &p.jobs[i]
		j.placed, j.slot = true, p.fit(i, st.at[i].start, st.crew[i])
		j.unbroken = j.unbroken || p.onEnd[i]
		if j.work > 0 {
			j.crew = p.crews[i][st.crew[i]]
		}
	}
	t := teller{p, st, cal, say}
	for _, i := range p.order {
		t.tell(i)
	}
	return p.byStart(), earliest
}
