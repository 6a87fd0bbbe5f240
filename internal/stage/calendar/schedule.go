package calendar

import (
	"cmp"
	"slices"

	"pourwright/internal/finding"
)

// A schedule places jobs one by one; free is when the hands are free again.
type schedule struct {
	*network
	week
	wall
	say  func(finding.Finding)
	free minute
}

func newSchedule(n *network, w week, cal wall, say func(finding.Finding)) *schedule {
	return &schedule{network: n, week: w.turned(cal.weekday()), wall: cal, say: say}
}

// run places the tasks of order and returns them by start.
func (s *schedule) run(order []int) []int {
	s.holdBack(order)
	for range order {
		i, at := s.choose(order)
		s.put(i, at)
	}
	for _, i := range order {
		s.checkWindow(i)
	}
	return s.byStart(order)
}

// byStart orders by start, then end, then the order of work.
func (s *schedule) byStart(order []int) []int {
	out := slices.Clone(order)
	slices.SortStableFunc(out, func(a, b int) int {
		return cmp.Or(cmp.Compare(s.jobs[a].start, s.jobs[b].start), cmp.Compare(s.jobs[a].end, s.jobs[b].end))
	})
	return out
}

// choose returns the task that can start first without closing a window that is
// open, and where it goes.
func (s *schedule) choose(order []int) (int, slot) {
	best, bestSlot, bestKeeps := -1, slot{}, false
	for _, i := range order {
		if s.jobs[i].placed || !s.ready(i) {
			continue
		}
		at := s.place(i, s.earliest(i), s.free)
		keeps := s.keepsWindows(i, at)
		if best < 0 || (keeps && !bestKeeps) || (keeps == bestKeeps && at.start < bestSlot.start) {
			best, bestSlot, bestKeeps = i, at, keeps
		}
	}
	return best, bestSlot
}

func (s *schedule) ready(i int) bool {
	return !slices.ContainsFunc(s.jobs[i].after, func(k int) bool { return !s.jobs[k].placed })
}

// earliest returns when all that i comes after is done and waited for.
func (s *schedule) earliest(i int) minute {
	var m minute
	for _, k := range s.jobs[i].after {
		m = max(m, s.jobs[k].end+s.jobs[k].wait)
	}
	return m
}

// fit returns where the work of i goes from m on when the hands are free from
// free on. A task without work needs no hands.
func (s *schedule) fit(i int, m, free minute) slot {
	j := s.jobs[i]
	switch {
	case j.work == 0:
		return slot{start: m, end: m}
	case j.unbroken:
		return s.unbroken(max(m, free), j.work)
	}
	return s.broken(max(m, free), j.work)
}

// place is fit, moved on until all windows of the chain that i begins are kept, but
// not past the window that i itself must meet. If there is none, it is the start
// that misses shop hours by least.
func (s *schedule) place(i int, m, free minute) slot {
	first := s.fit(i, m, free)
	if !s.jobs[i].window {
		return first
	}
	tries := searchTries
	end := min(first.start+searchEnd, s.deadline(i))
	if at, ok := s.search(i, m, free, end, &tries); ok {
		return at
	}
	return s.nearest(i, first, free, end)
}

// put settles i and says what is unusual about its place.
func (s *schedule) put(i int, at slot) {
	j := &s.jobs[i]
	if first := s.fit(i, s.earliest(i), s.free); j.window && at.start > first.start {
		s.sayMoved(i, first, at)
	}
	j.placed, j.start, j.end = true, at.start, at.end
	if j.work > 0 {
		s.free = at.end
	}
	where := finding.Where{Element: s.ids[i]}
	if at.through {
		s.say(through.At(where, "Task %q is %.1f h on end, longer than any stretch between two breaks: on %s it works through.", s.ids[i], float64(j.work.hours()), s.text(at.start)))
	}
	if at.over > 0 {
		s.say(overtime.At(where, "Task %q is %.1f h on end and runs %.1f h past closing time, to %s.", s.ids[i], float64(j.work.hours()), float64(at.over.hours()), s.text(at.end)).
			Measured(float64(j.work.hours()), float64((j.work - at.over).hours()), "h"))
	}
}
