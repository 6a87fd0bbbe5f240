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
	typed              struct{ work, wait, latest units.Duration }
	work, wait, latest minute
	window             bool // latest counts
	unbroken           bool
	after              []int // tasks before this one, by index
	before             []int // tasks after this one
	next               []int // those of before that are not also after another of them
	placed             bool
	start, end         minute
}

// A network is the tasks and what comes after what.
type network struct {
	jobs []job
	ids  []string
}

// newNetwork reads the tasks. An absurd duration, an id given twice and an unknown
// id are findings; the duration counts as none, the id as not written.
func newNetwork(tasks []Task, say func(finding.Finding)) *network {
	n := &network{jobs: make([]job, len(tasks))}
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
		for _, id := range t.After {
			k, ok := index[id]
			if !ok {
				say(badTask.At(finding.Where{Element: t.ID}, "The task %q comes after %q, which is not there; it starts as if that were done.", t.ID, id))
				continue
			}
			if !slices.Contains(n.jobs[i].after, k) {
				n.jobs[i].after = append(n.jobs[i].after, k)
				n.jobs[k].before = append(n.jobs[k].before, i)
			}
		}
	}
	return n
}

func newJob(t Task, say func(finding.Finding)) job {
	sane := func(what string, d, most units.Duration) units.Duration {
		if d >= 0 && d <= most {
			return d
		}
		say(badTask.At(finding.Where{Element: t.ID}, "The %s of task %q is %.4g h; it counts as none.", what, t.ID, float64(d)))
		return 0
	}
	var j job
	j.typed.work = sane("work", t.Work, longestWork)
	j.typed.wait = sane("wait", t.Wait, longestWait)
	j.typed.latest = sane("latest start of what follows", t.Latest, math.MaxFloat64)
	j.work, j.wait = minutesUp(j.typed.work), minutesUp(j.typed.wait)
	j.window = j.typed.latest > 0 && j.typed.latest <= longestWait
	if j.window {
		j.latest = minutesDown(j.typed.latest)
	}
	j.unbroken = t.Unbroken || j.window
	return j
}

// sorted returns the tasks that do not hang on a circle so that each comes after
// what it waits for, ties as given, and says which tasks go round in a circle.
func (n *network) sorted(say func(finding.Finding)) []int {
	open := make([]int, len(n.jobs))
	for i := range n.jobs {
		open[i] = len(n.jobs[i].after)
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
		for _, k := range n.jobs[i].before {
			open[k]--
		}
	}
	if len(order) < len(n.jobs) {
		round := n.circle(done)
		say(circle.At(finding.Where{Element: n.ids[round[0]]}, "These tasks wait for each other in a circle: %s. %d of %d tasks have no time.",
			n.names(round), len(n.jobs)-len(order), len(n.jobs)))
	}
	n.findNext(order)
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
		open := slices.IndexFunc(n.jobs[at].after, func(k int) bool { return !done[k] })
		at = n.jobs[at].after[open]
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

// findNext fills in the next tasks of every task in order that has a window; tasks
// on a circle, or behind one, are never next.
func (n *network) findNext(order []int) {
	for _, i := range order {
		if !n.jobs[i].window {
			continue
		}
		for _, k := range n.jobs[i].before {
			other := func(b int) bool { return b != k && n.leads(b, k) }
			if slices.Contains(order, k) && !slices.ContainsFunc(n.jobs[i].before, other) {
				n.jobs[i].next = append(n.jobs[i].next, k)
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
		for _, b := range n.jobs[at].before {
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
