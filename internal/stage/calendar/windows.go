package calendar

import "slices"

// A chain is the tasks that windows tie together, in the order of work.
type chain []int

// chains returns the tasks joined by timed edges.
func (p *problem) chains() []chain {
	of := make([]int, len(p.jobs))
	for i := range of {
		of[i] = i
	}
	for _, e := range p.edges {
		if e.timed {
			a, b := of[e.from], of[e.to]
			for i := range of {
				if of[i] == a {
					of[i] = b
				}
			}
		}
	}
	var out []chain
	for _, i := range p.order {
		at := slices.IndexFunc(out, func(c chain) bool { return of[c[0]] == of[i] })
		if at >= 0 {
			out[at] = append(out[at], i)
		} else {
			out = append(out, chain{i})
		}
	}
	return slices.DeleteFunc(out, func(c chain) bool { return len(c) == 1 })
}

// windows returns the timed edges of a chain that are not given up.
func (p *problem) windows(c chain) []int {
	var out []int
	for k, e := range p.edges {
		if e.timed && !p.dropped[k] && slices.Contains(c, e.from) {
			out = append(out, k)
		}
	}
	return out
}

// repair gives up what must be given up for the windows of a chain, looked at by
// itself, and says what: first windows that have another way out, one if one is enough;
// then hours, as little as will do; then windows.
func (p *problem) repair(c chain) {
	for _, e := range p.windows(c) {
		p.dropped[e] = p.edges[e].wait > p.edges[e].latest // no start fits
	}
	if p.kept(c) {
		return
	}
	soft := slices.DeleteFunc(p.windows(c), func(e int) bool { return p.edges[e].instead == "" })
	if p.dropFew(c, soft) {
		return
	}
	late := p.followers(c)
	if p.widen(c, late) || p.always(c, late) {
		p.fewer(c, late)
		return
	}
	p.reset(late)
	p.dropFew(c, p.windows(c))
}

// kept reports whether all windows of a chain can be kept, whatever else there is to do.
func (p *problem) kept(c chain) bool {
	alone := *p
	alone.limit = fewFits
	alone.dropped = slices.Clone(p.dropped)
	alone.only = make([]bool, len(p.jobs))
	for e := range p.edges {
		alone.dropped[e] = alone.dropped[e] || !slices.Contains(c, p.edges[e].from)
	}
	for _, i := range c {
		alone.only[i] = true
	}
	_, ok, _ := alone.solve()
	return ok
}

// dropFew gives up one of the windows es, or, where that does not help, all of them,
// and reports whether the chain can now be kept.
func (p *problem) dropFew(c chain, es []int) bool {
	for _, e := range es {
		p.dropped[e] = true
		if p.kept(c) {
			return true
		}
		p.dropped[e] = false
	}
	for _, e := range es {
		p.dropped[e] = true
	}
	return len(es) > 0 && p.kept(c)
}

// followers returns the tasks that windows of the chain lead to.
func (p *problem) followers(c chain) []int {
	var out []int
	for _, e := range p.windows(c) {
		if to := p.edges[e].to; p.jobs[to].work > 0 && !slices.Contains(out, to) {
			out = append(out, to)
		}
	}
	return out
}

// widen begins and ends the days of tasks by as little as will do, in quarters of an
// hour; false if no day is long enough.
func (p *problem) widen(c chain, tasks []int) bool {
	lo, hi := minute(0), perDay/widenStep
	for lo+1 < hi {
		mid := (lo + hi) / 2
		if p.widenBy(tasks, mid*widenStep); p.kept(c) {
			hi = mid
		} else {
			lo = mid
		}
	}
	p.widenBy(tasks, hi*widenStep)
	return p.kept(c)
}

// longestStay is the work that is done on end where it falls outside the hours; more is
// begun and goes on in the hours. Chosen.
const longestStay = 4 * perHour

// widenStep is the step in which people stay longer. Chosen.
const widenStep = perHour / 4

func (p *problem) widenBy(tasks []int, x minute) {
	wide := p.shop.widened(x)
	for _, i := range tasks {
		p.crews[i], _ = wide.most(p.jobs[i].hands)
		p.onEnd[i] = p.jobs[i].work <= longestStay
	}
}

// always lets tasks go at any hour of day and night.
func (p *problem) always(c chain, tasks []int) bool {
	p.reset(tasks)
	for _, i := range tasks {
		p.anytime[i] = true
	}
	return p.kept(c)
}

func (p *problem) reset(tasks []int) {
	for _, i := range tasks {
		p.anytime[i], p.onEnd[i] = false, false
		p.crews[i], _ = p.most(p.jobs[i].hands)
	}
}

// fewer gives tasks their usual hours back where the others are enough.
func (p *problem) fewer(c chain, tasks []int) {
	for _, i := range tasks {
		crews, anytime, onEnd := p.crews[i], p.anytime[i], p.onEnd[i]
		if p.reset([]int{i}); !p.kept(c) {
			p.crews[i], p.anytime[i], p.onEnd[i] = crews, anytime, onEnd
		}
	}
}

// settleAll repairs every chain and returns the times of all; where chains stand in
// each other's way, windows are kept at any hour, and where even that fails they are
// given up.
func (p *problem) settleAll() (state, bool) {
	chains := p.chains()
	for _, c := range chains {
		p.repair(c)
	}
	if st, ok, proven := p.solve(); ok {
		return st, proven
	}
	for _, c := range chains {
		for _, i := range p.followers(c) {
			p.anytime[i] = true
		}
	}
	if st, ok, _ := p.solve(); ok {
		return st, false
	}
	for _, c := range chains {
		p.reset(c)
		for _, e := range p.windows(c) {
			p.dropped[e] = true
		}
	}
	p.limit = 0
	st, _, _ := p.solve()
	return st, false
}
