package calendar

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourwright/internal/finding"
	"pourwright/internal/units"
)

// longestTask bounds the work and the wait of one task, hours: ten years of wait
// and a year of work at 40 h a week. Chosen: more is a slip of the pen.
const (
	longestWork units.Duration = 2080
	longestWait units.Duration = 10 * 365 * 24
)

// A job is a task in whole minutes with its place in the network.
type job struct {
	typed      struct{ work, wait, latest units.Duration }
	work, wait minute
	hands      int
	unbroken   bool
	placed     bool
	slot
	crew crew
}

// An edge says that one task comes after another: wait after its end at the soonest,
// and, if timed, latest after its end at the latest.
type edge struct {
	from, to     int
	wait, latest minute
	timed        bool
	instead      string // what to do if latest cannot be kept; "" if it must be
	link         bool   // with times of its own
}

// A network is the tasks and what comes after what.
type network struct {
	jobs  []job
	ids   []string
	edges []edge
	into  [][]int // edges by the task they lead to
	from  [][]int // edges by the task they come from
}

// newNetwork reads the tasks. An absurd duration, an id given twice and an unknown
// id are findings; the duration counts as none, the id as not written.
func newNetwork(tasks []Task, say func(finding.Finding)) *network {
	n := &network{jobs: make([]job, len(tasks)), into: make([][]int, len(tasks)), from: make([][]int, len(tasks))}
	index := map[string]int{}
	for i, t := range tasks {
		n.ids = append(n.ids, t.ID)
		if _, twice := index[t.ID]; twice {
			say(badTask.At(finding.Where{Element: t.ID}, "Two tasks have the id %q; tasks that come after it wait for the first.", t.ID))
			continue
		}
		index[t.ID] = i
	}
	for i, t := range tasks {
		n.jobs[i] = newJob(t, say)
	}
	for i, t := range tasks {
		n.link(i, t, index, say)
	}
	return n
}

// link adds the edges that lead to task i.
func (n *network) link(i int, t Task, index map[string]int, say func(finding.Finding)) {
	find := func(id string) (int, bool) {
		k, ok := index[id]
		if !ok {
			say(badTask.At(finding.Where{Element: t.ID}, "The task %q comes after %q, which is not there; it starts as if that were done.", t.ID, id))
		}
		return k, ok
	}
	for _, id := range t.After {
		if k, ok := find(id); ok && !n.leadsAtOnce(k, i) {
			n.join(edge{from: k, to: i, wait: n.jobs[k].wait})
		}
	}
	for _, l := range t.Links {
		k, ok := find(l.ID)
		if !ok {
			continue
		}
		e := edge{from: k, to: i, link: true, wait: minutesUp(sane(t.ID, "wait", l.Wait, longestWait, say))}
		if latest := sane(t.ID, "latest start", l.Latest, math.MaxFloat64, say); latest > 0 && latest <= longestWait {
			e.timed, e.latest = true, minutesDown(latest)
			n.jobs[k].unbroken = true
		}
		n.join(e)
	}
}

func (n *network) join(e edge) {
	n.into[e.to] = append(n.into[e.to], len(n.edges))
	n.from[e.from] = append(n.from[e.from], len(n.edges))
	n.edges = append(n.edges, e)
}

// leadsAtOnce reports whether an edge leads from i to k.
func (n *network) leadsAtOnce(i, k int) bool {
	return slices.ContainsFunc(n.from[i], func(e int) bool { return n.edges[e].to == k })
}

// after returns the tasks that i comes after, before those that come after it.
func (n *network) after(i int) []int {
	var out []int
	for _, e := range n.into[i] {
		out = append(out, n.edges[e].from)
	}
	return out
}

func (n *network) before(i int) []int {
	var out []int
	for _, e := range n.from[i] {
		out = append(out, n.edges[e].to)
	}
	return out
}

// sane returns d, or none with a finding where it is no duration of a task.
func sane(id, what string, d, most units.Duration, say func(finding.Finding)) units.Duration {
	if d >= 0 && d <= most {
		return d
	}
	say(badTask.At(finding.Where{Element: id}, "The %s of task %q is %.4g h; it counts as none.", what, id, float64(d)))
	return 0
}

func newJob(t Task, say func(finding.Finding)) job {
	var j job
	j.typed.work = sane(t.ID, "work", t.Work, longestWork, say)
	j.typed.wait = sane(t.ID, "wait", t.Wait, longestWait, say)
	j.typed.latest = sane(t.ID, "latest start of what follows", t.Latest, math.MaxFloat64, say)
	j.work, j.wait = minutesUp(j.typed.work), minutesUp(j.typed.wait)
	j.unbroken = t.Unbroken || bounded(j.typed.latest)
	j.hands = max(1, t.Hands)
	if j.work == 0 {
		j.hands = 0
	}
	return j
}

// bounded reports whether a latest start counts.
func bounded(latest units.Duration) bool { return latest > 0 && latest <= longestWait }

// sorted returns the tasks that do not hang on a circle so that each comes after
// what it waits for, ties as given, and says which tasks go round in a circle.
func (n *network) sorted(say func(finding.Finding)) []int {
	open := make([]int, len(n.jobs))
	for i := range n.jobs {
		open[i] = len(n.into[i])
	}
	var order []int
	done := make([]bool, len(n.jobs))
	for {
		i := slices.IndexFunc(open, func(k int) bool { return k == 0 })
		if i < 0 {
			break
		}
		open[i], done[i] = -1, true
		order = append(order, i)
		for _, k := range n.before(i) {
			open[k]--
		}
	}
	if len(order) < len(n.jobs) {
		round := n.circle(done)
		say(circle.At(finding.Where{Element: n.ids[round[0]]}, "These tasks wait for each other in a circle: %s. %d of %d tasks have no time.",
			n.names(round), len(n.jobs)-len(order), len(n.jobs)))
	}
	return order
}

// circle returns one circle among the tasks not done, from its lowest index on.
func (n *network) circle(done []bool) []int {
	at := slices.Index(done, false)
	seen := map[int]int{}
	var walk []int
	for {
		if k, ok := seen[at]; ok {
			walk = walk[k:]
			break
		}
		seen[at] = len(walk)
		walk = append(walk, at)
		before := n.after(at)
		at = before[slices.IndexFunc(before, func(k int) bool { return !done[k] })]
	}
	slices.Reverse(walk) // walked against the order of work
	first := slices.Index(walk, slices.Min(walk))
	return append(walk[first:], walk[:first]...)
}

func (n *network) names(tasks []int) string {
	var names []string
	for _, i := range tasks {
		names = append(names, fmt.Sprintf("%q", n.ids[i]))
	}
	return strings.Join(append(names, names[0]), " then ")
}

// findNext times the edges from every task in order with a latest to its next tasks:
// those that are not also after another task after it, links aside. Tasks on a circle,
// or behind one, are never next.
func (n *network) findNext(tasks []Task, order []int) {
	for _, i := range order {
		if !bounded(n.jobs[i].typed.latest) {
			continue
		}
		for _, e := range n.from[i] {
			x := &n.edges[e]
			between := func(o int) bool { return o != e && !n.edges[o].link && n.leads(n.edges[o].to, x.to) }
			if !x.link && slices.Contains(order, x.to) && !slices.ContainsFunc(n.from[i], between) {
				x.timed, x.latest, x.instead = true, minutesDown(n.jobs[i].typed.latest), tasks[i].Otherwise
			}
		}
	}
}

// leads reports whether k comes after i, directly or not.
func (n *network) leads(i, k int) bool {
	seen := make([]bool, len(n.jobs))
	stack := []int{i}
	for len(stack) > 0 {
		at := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, b := range n.before(at) {
			if b == k {
				return true
			}
			if !seen[b] {
				seen[b] = true
				stack = append(stack, b)
			}
		}
	}
	return false
}

// withRest returns order with all tasks that it lacks behind it.
func (n *network) withRest(order []int) []int {
	out := slices.Clone(order)
	in := make([]bool, len(n.jobs))
	for _, i := range order {
		in[i] = true
	}
	for i := range n.jobs {
		if !in[i] {
			out = append(out, i)
		}
	}
	return out
}
