package calendar

import "slices"

// mostRounds bounds how often starts are moved on before a window counts as one nobody
// can keep: each round of a window that stays out of reach moves it on by a stretch, so
// this is weeks.
const mostRounds = 128

// never is a start that is not reached.
const never = minute(1) << 40

// A state is a partly settled calendar: who does what, which of two tasks goes first
// where they want the same hands, and the earliest times these allow.
type state struct {
	crew  []int // by task, an index into its crews; -1 open
	first [][2]int
	at    []slot
}

func (st state) with() state {
	return state{slices.Clone(st.crew), slices.Clip(st.first), slices.Clone(st.at)}
}

// fit returns where task i can go from m on: with its crew, or, while that is open,
// the earliest start and the earliest end of any.
func (p *problem) fit(i int, m minute, crew int) slot {
	j := &p.jobs[i]
	onEnd := j.unbroken || p.onEnd[i]
	if j.work == 0 {
		return slot{start: m, end: m}
	}
	if p.anytime[i] {
		return slot{start: m, end: m + j.work}
	}
	if crew >= 0 {
		return p.crews[i][crew].hours.fit(m, j.work, onEnd)
	}
	out := slot{start: never, end: never}
	for _, c := range p.crews[i] {
		s := c.hours.fit(m, j.work, onEnd)
		out.start, out.end = min(out.start, s.start), min(out.end, s.end)
	}
	return out
}

// settle moves starts on until every task begins after what it waits for, and no window
// closes before the task that must begin within it; what is left is the earliest time of
// every task at once. False if a window stays out of reach, or the search
// is spent.
//
// Every rule reads "this start is no earlier than so much after that one", and fits only
// go later as m does, so there is one least set of times and this comes up to it.
func (p *problem) settle(st *state) bool {
	for range mostRounds {
		if p.fits += len(p.order); p.spent() {
			return false
		}
		moved := false
		for _, i := range p.order {
			m := p.bound(st, i)
			if s := p.fit(i, m, st.crew[i]); s.start > st.at[i].start || s.end > st.at[i].end {
				st.at[i], moved = s, true
			}
		}
		if !moved {
			return true
		}
	}
	return false
}

// bound returns the earliest minute at which i may start as the other tasks stand.
func (p *problem) bound(st *state, i int) minute {
	m := st.at[i].start
	for _, e := range p.into[i] {
		m = max(m, st.at[p.edges[e].from].end+p.edges[e].wait)
	}
	for _, e := range p.from[i] {
		if x := p.edges[e]; x.timed && !p.dropped[e] {
			m = max(m, st.at[x.to].start-x.latest-p.jobs[i].work)
		}
	}
	for _, f := range st.first {
		if f[1] == i {
			m = max(m, st.at[f[0]].end)
		}
	}
	return m
}
