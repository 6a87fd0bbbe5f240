package calendar

import (
	"math"
	"slices"

	"pourwright/internal/finding"
)

// Chosen: how a start is moved on in search of one whose follow-up falls in shop
// hours: by quarters of an hour, as a person would say it, for two weeks, which
// holds every pattern of a week twice.
// searchTries bounds the search where windows hang on windows.
const (
	searchStep  = perHour / 4
	searchEnd   = 2 * perWeek
	searchTries = 50_000
)

// holdBack makes a task with a window wait for all else that its next tasks need,
// so that the clock does not start before the rest is ready.
func (s *schedule) holdBack(order []int) {
	for _, i := range order {
		for _, k := range s.jobs[i].next {
			for _, other := range slices.Clone(s.jobs[k].after) {
				if other == i || s.leads(i, other) || slices.Contains(s.jobs[i].after, other) {
					continue
				}
				s.jobs[i].after = append(s.jobs[i].after, other)
				s.jobs[other].before = append(s.jobs[other].before, i)
			}
		}
	}
}

// search returns the first slot of i from m on that starts by end and lets all that
// follows keep its windows; false if there is none or the tries are used up.
func (s *schedule) search(i int, m, free, end minute, tries *int) (slot, bool) {
	for at := m; *tries > 0; at += searchStep {
		*tries--
		try := s.fit(i, at, free)
		if try.start > end {
			break
		}
		if s.chainKept(i, try, free, tries) {
			return try, true
		}
		at = max(at, try.start)
	}
	return slot{}, false
}

// chainKept reports whether i placed at lets all of its next tasks start in time,
// and theirs, where they have windows.
func (s *schedule) chainKept(i int, at slot, free minute, tries *int) bool {
	j := s.jobs[i]
	if !j.window {
		return true
	}
	if j.work > 0 {
		free = at.end
	}
	for _, k := range j.next {
		ready := max(at.end+j.wait, s.readyWithout(k, i))
		next, ok := s.search(k, ready, free, at.end+j.latest, tries)
		if !ok {
			return false
		}
		if s.jobs[k].work > 0 {
			free = next.end
		}
	}
	return true
}

// nearest returns the slot of i from first on, started by end, whose chain misses
// shop hours by least; the earliest of equals.
func (s *schedule) nearest(i int, first slot, free, end minute) slot {
	best, least := first, s.chainMiss(i, first, free)
	for at := first.start; least > 0; at += searchStep {
		try := s.fit(i, at, free)
		if try.start > end {
			break
		}
		if miss := s.chainMiss(i, try, free); miss < least {
			best, least = try, miss
		}
		at = max(at, try.start)
	}
	return best
}

// chainMiss adds up by how many minutes what follows i misses shop hours when each
// task of the chain starts as soon as it can.
func (s *schedule) chainMiss(i int, at slot, free minute) minute {
	j := s.jobs[i]
	if !j.window {
		return 0
	}
	if j.work > 0 {
		free = at.end
	}
	var sum minute
	for _, k := range j.next {
		ready, deadline := max(at.end+j.wait, s.readyWithout(k, i)), at.end+j.latest
		next := s.fit(k, ready, free)
		if next.start > deadline {
			sum += min(ready-s.closing(ready), next.start-deadline)
		}
		sum += s.chainMiss(k, next, free)
		if s.jobs[k].work > 0 {
			free = next.end
		}
	}
	return sum
}

// deadline returns by when i must start for the windows of placed tasks.
func (s *schedule) deadline(i int) minute {
	end := minute(math.MaxInt64)
	for _, a := range s.jobs[i].after {
		if j := s.jobs[a]; j.placed && j.window && slices.Contains(j.next, i) {
			end = min(end, j.end+j.latest)
		}
	}
	return end
}

// readyWithout returns when all placed tasks that k comes after, other than i, are
// done and waited for.
func (s *schedule) readyWithout(k, i int) minute {
	var m minute
	for _, a := range s.jobs[k].after {
		if a != i && s.jobs[a].placed {
			m = max(m, s.jobs[a].end+s.jobs[a].wait)
		}
	}
	return m
}

// keepsWindows reports whether i placed at leaves time for every task whose window
// is open now.
func (s *schedule) keepsWindows(i int, at slot) bool {
	if s.jobs[i].work == 0 {
		return true
	}
	for a := range s.jobs {
		if !s.jobs[a].placed || !s.jobs[a].window {
			continue
		}
		deadline := s.jobs[a].end + s.jobs[a].latest
		for _, k := range s.jobs[a].next {
			if k == i || s.jobs[k].placed || s.leads(i, k) {
				continue
			}
			ready := s.jobs[a].end + s.jobs[a].wait
			before, after := s.fit(k, ready, s.free), s.fit(k, ready, at.end)
			if after.start > deadline && after.start > before.start {
				return false
			}
		}
	}
	return true
}

func (s *schedule) sayMoved(i int, first, at slot) {
	s.say(moved.At(finding.Where{Element: s.ids[i]},
		"Task %q starts %s, not already %s: the timed steps that follow it then fall in shop hours, or nearest to them.",
		s.ids[i], s.text(at.start), s.text(first.start)))
}

// checkWindow says where what follows i starts too late.
func (s *schedule) checkWindow(i int) {
	j := s.jobs[i]
	if !j.window {
		return
	}
	where := finding.Where{Element: s.ids[i]}
	if len(j.next) > 0 && j.wait > j.latest {
		s.say(window.At(where, "After task %q the wait is %.2f h but what follows must start within %.2f h: no start fits.", s.ids[i], float64(j.typed.wait), float64(j.typed.latest)).
			Do("Correct the wait or the latest start.").Measured(float64(j.typed.wait), float64(j.typed.latest), "h"))
		return
	}
	for _, k := range j.next {
		deadline := j.end + j.latest
		if !s.jobs[k].placed || s.jobs[k].start <= deadline {
			continue
		}
		s.say(window.At(where, "Task %q must start between %s and %s, after %q; shop hours put it at %s, and no start of %q within two weeks does better.",
			s.ids[k], s.text(j.end+j.wait), s.text(deadline), s.ids[i], s.text(s.jobs[k].start), s.ids[i]).
			Measured(float64((s.jobs[k].start - j.end).hours()), float64(j.typed.latest), "h"))
	}
}
