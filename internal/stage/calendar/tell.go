package calendar

import (
	"fmt"
	"slices"

	"pourwright/internal/finding"
)

// A teller says what is unusual about the times of tasks.
type teller struct {
	*problem
	st state
	wall
	say func(finding.Finding)
}

func (t teller) tell(i int) {
	j, where := t.jobs[i], finding.Where{Element: t.ids[i]}
	if t.short[i] {
		t.say(hands.At(where, "Task %q asks for %d people at once; the shop has %d, from %s to %s.", t.ids[i], j.hands, len(t.list(j.crew.who)), t.text(j.start), t.text(j.end)).
			Do("Ask %d more to be there %s to %s, or write them under shop.people.", j.hands-len(t.list(j.crew.who)), t.text(j.start), t.clock(j.end)).
			Measured(float64(j.hands), float64(len(t.list(j.crew.who))), "people"))
	}
	for _, e := range t.from[i] {
		if t.edges[e].timed && t.dropped[e] {
			t.tellDropped(e)
		}
	}
	if off, e := t.offHours(i); off && e >= 0 {
		t.tellWindow(i, e)
		return
	}
	t.tellMoved(i)
	if j.through {
		t.say(through.At(where, "Task %q is %.1f h on end, longer than any stretch between two breaks: on %s it works through.", t.ids[i], float64(j.work.hours()), t.text(j.start)))
	}
	if j.over > 0 {
		t.say(overtime.At(where, "Task %q is %.1f h on end and runs %.1f h past closing time, to %s.", t.ids[i], float64(j.work.hours()), float64(j.over.hours()), t.text(j.end)).
			Measured(float64(j.work.hours()), float64((j.work - j.over).hours()), "h"))
	}
}

// offHours reports whether i runs when its people are not there by their hours, and the
// window that asks for it, or -1.
func (t teller) offHours(i int) (bool, int) {
	j := t.jobs[i]
	if !t.outside(j) {
		return false, -1
	}
	window, closes := -1, never
	for _, e := range t.into[i] {
		x := t.edges[e]
		if by := t.st.at[x.from].end + x.latest; x.timed && !t.dropped[e] && by < closes {
			window, closes = e, by
		}
	}
	return true, window
}

// tellWindow says that a window falls where nobody is there, when somebody must come,
// and from which start it would not.
func (t teller) tellWindow(i, e int) {
	j, x := t.jobs[i], t.edges[e]
	end := t.st.at[x.from].end
	alone := t.together(j.crew.who)
	where := finding.Where{Element: t.ids[x.from]}
	remedy := fmt.Sprintf("Be there %s to %s outside your hours, or ask a second person to be.", t.text(j.start), t.clock(j.end))
	if h, at, ok := t.instead(i); ok {
		remedy = fmt.Sprintf("Start %q at %s instead, or be there, or ask a second person to be, %s to %s.", t.ids[h], t.text(at), t.text(j.start), t.clock(j.end))
	}
	t.say(window.At(where, "Task %q must start between %s and %s, after %q, and takes to %s; the hours are %s, and no start of %q in hours does better.",
		t.ids[i], t.text(end+x.wait), t.text(end+x.latest), t.ids[x.from], t.clock(j.end), t.dayHours(alone, j.start), t.ids[t.head(i)]).
		Do("%s", remedy).Measured(float64((j.start - end).hours()), float64(x.latest.hours()), "h"))
}

// dayHours writes the hours of the day of m.
func (t teller) dayHours(h hours, m minute) string {
	on := h.on(m / perDay)
	if len(on) == 0 {
		return "none that day"
	}
	text := ""
	for k, s := range on {
		if k > 0 {
			text += ", "
		}
		text += t.clock(s.from) + " to " + t.clock(s.to)
	}
	return text + " that day"
}

// head returns the task that begins the chain of i.
func (t teller) head(i int) int {
	for _, c := range t.chains() {
		if slices.Contains(c, i) {
			return c[0]
		}
	}
	return i
}

// mostEarly is how far from its hours a start is offered. Chosen.
const mostEarly = 4 * perHour

// instead looks for a start of the head of i's chain, nearest its hours, from which i
// falls in hours when the rest of the chain need not.
func (t teller) instead(i int) (head int, at minute, ok bool) {
	for _, c := range t.chains() {
		if !slices.Contains(c, i) {
			continue
		}
		try := *t.problem
		try.crews, try.anytime = slices.Clone(t.crews), slices.Clone(t.anytime)
		try.onEnd = slices.Clone(t.onEnd)
		try.dropped, try.limit = slices.Clone(t.dropped), fewFits
		try.reset(c)
		others := slices.DeleteFunc(slices.Clone(c), func(k int) bool { return k == i })
		return t.soonest(&try, c[0], others)
	}
	return 0, 0, false
}

// soonest widens the days of tasks by as little as lets try keep all its windows, and
// returns when head then starts.
func (t teller) soonest(try *problem, head int, tasks []int) (int, minute, bool) {
	lo, hi, at, ok := minute(0), mostEarly/widenStep+1, minute(0), false
	for lo+1 < hi {
		mid := (lo + hi) / 2
		try.widenBy(tasks, mid*widenStep)
		if st, kept, _ := try.solve(); kept {
			hi, at, ok = mid, st.at[head].start, true
		} else {
			lo = mid
		}
	}
	return head, at, ok
}

// tellMoved says that a task with a window begins later than it could.
func (t teller) tellMoved(i int) {
	j := t.jobs[i]
	timed := func(e int) bool { return t.edges[e].timed && !t.dropped[e] }
	if !slices.ContainsFunc(t.from[i], timed) {
		return
	}
	var m minute
	for _, e := range t.into[i] {
		m = max(m, t.st.at[t.edges[e].from].end+t.edges[e].wait)
	}
	for _, k := range t.order {
		if k != i && j.work > 0 && t.jobs[k].crew.who&j.crew.who != 0 && t.jobs[k].work > 0 && t.jobs[k].start < j.start {
			m = max(m, t.jobs[k].end)
		}
	}
	if first := t.fit(i, m, t.st.crew[i]); first.start < j.start {
		t.say(moved.At(finding.Where{Element: t.ids[i]},
			"Task %q starts %s, not already %s: the timed steps that follow it then fall in shop hours, or nearest to them.",
			t.ids[i], t.text(j.start), t.text(first.start)))
	}
}

// tellDropped says that a window is not kept.
func (t teller) tellDropped(e int) {
	x := t.edges[e]
	a, where := t.jobs[x.from], finding.Where{Element: t.ids[x.from]}
	if x.wait > x.latest {
		t.say(window.At(where, "After task %q the wait is %.2f h but what follows must start within %.2f h: no start fits.", t.ids[x.from], float64(x.wait.hours()), float64(x.latest.hours())).
			Do("Correct the wait or the latest start.").Measured(float64(x.wait.hours()), float64(x.latest.hours()), "h"))
		return
	}
	k := t.jobs[x.to]
	if k.start <= a.end+x.latest {
		return
	}
	f := window.At(where, "Task %q must start between %s and %s, after %q; the hours put it at %s, and no start of %q in hours does better.",
		t.ids[x.to], t.text(a.end+x.wait), t.text(a.end+x.latest), t.ids[x.from], t.text(k.start), t.ids[x.from]).
		Measured(float64((k.start - a.end).hours()), float64(x.latest.hours()), "h")
	if x.instead != "" {
		f = f.Do("%s", x.instead)
	}
	t.say(f)
}
