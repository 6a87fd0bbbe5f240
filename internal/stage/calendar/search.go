package calendar

import (
	"cmp"
	"slices"
)

// What one search for the earliest finish may cost: ways looked at, and places tried for
// tasks. Beyond it the best found so far stands. Chosen: some tenths of a second, where
// the work of a piece takes some thousands.
const (
	mostTries = 2000
	mostFits  = 300_000
	fewFits   = 60_000 // for a chain by itself, and for advice
)

// A problem is a network with its people and what was given up to make it solvable.
type problem struct {
	*network
	shop
	order   []int    // tasks to place, each after what it waits for
	crews   [][]crew // by task
	short   []bool   // by task: fewer people than it asks for
	anytime []bool   // by task: it goes when it must, day and night
	onEnd   []bool   // by task: it must not pause, since it may fall outside the hours
	dropped []bool   // by edge: its latest is given up
	only    []bool   // by task: whose hands count; nil all

	limit  int // of fits; 0 none
	fits   int
	tries  int
	best   *state
	finish minute
}

func newProblem(n *network, s shop, order []int) *problem {
	p := &problem{network: n, shop: s, order: order, limit: mostFits, crews: make([][]crew, len(n.jobs)), short: make([]bool, len(n.jobs)),
		anytime: make([]bool, len(n.jobs)), onEnd: make([]bool, len(n.jobs)), dropped: make([]bool, len(n.edges))}
	for i := range n.jobs {
		p.crews[i], p.short[i] = p.most(n.jobs[i].hands)
	}
	return p
}

// most returns the crews of so many hands, or, where there is none, of as many as there
// are.
func (s shop) most(hands int) (cs []crew, short bool) {
	for h := hands; h > 0; h-- {
		if cs = s.crews(h); len(cs) > 0 {
			return cs, h < hands
		}
	}
	return nil, false
}

// solve returns the times with the earliest finish, false if none keep all windows or
// the search was given up before it found any. Proven says that no earlier finish is
// there.
func (p *problem) solve() (best state, ok, proven bool) {
	p.tries, p.fits, p.best = 0, 0, nil
	st := state{crew: make([]int, len(p.jobs)), at: make([]slot, len(p.jobs))}
	for i := range p.jobs {
		st.crew[i] = -1
		if len(p.crews[i]) == 1 {
			st.crew[i] = 0
		}
	}
	if p.settle(&st) {
		p.branch(st)
	}
	whole := p.tries < mostTries && !p.spent()
	if p.best == nil {
		return state{}, false, whole
	}
	return *p.best, true, whole
}

// spent reports whether the search has cost what it may.
func (p *problem) spent() bool { return p.limit > 0 && p.fits > p.limit }

func (p *problem) end(st state) minute {
	var m minute
	for _, i := range p.order {
		m = max(m, st.at[i].end+p.jobs[i].wait)
	}
	return m
}

// branch settles the first open question of st in every way: who does a task, or which
// of two goes first.
func (p *problem) branch(st state) {
	p.tries++
	if p.spent() || p.best != nil && (p.tries >= mostTries || p.end(st) >= p.finish) || p.tries >= mostTries+len(p.jobs)*len(p.jobs) {
		return
	}
	i, k := p.question(st)
	if i < 0 {
		keep := st.with()
		p.best, p.finish = &keep, p.end(st)
		return
	}
	var ways []state
	if k < 0 {
		ways = p.byCrew(st, i)
	} else {
		for _, f := range [][2]int{{i, k}, {k, i}} {
			way := st.with()
			way.first = append(way.first, f)
			ways = append(ways, way)
		}
	}
	ways = slices.DeleteFunc(ways, func(w state) bool { return !p.settle(&w) })
	slices.SortStableFunc(ways, func(a, b state) int {
		return cmp.Or(cmp.Compare(p.end(a), p.end(b)), cmp.Compare(p.sum(a), p.sum(b)))
	})
	for _, w := range ways {
		p.branch(w)
	}
}

// sum adds up all ends: of two ways with one finish, the one with less waiting first.
func (p *problem) sum(st state) minute {
	var m minute
	for _, i := range p.order {
		m += st.at[i].end
	}
	return m
}

// byCrew gives task i every crew that makes a difference.
func (p *problem) byCrew(st state, i int) []state {
	var busy uint
	for _, k := range p.order {
		if st.crew[k] >= 0 && p.jobs[k].work > 0 {
			busy |= p.crews[k][st.crew[k]].who
		}
	}
	var ways []state
	for c, x := range p.crews[i] {
		same := func(o crew) bool { return p.alike(x.who, o.who, busy) }
		if slices.ContainsFunc(p.crews[i][:c], same) {
			continue
		}
		way := st.with()
		way.crew[i] = c
		ways = append(ways, way)
	}
	return ways
}

// question returns what is open first in time: a task without a crew and -1, two tasks
// that want the same hands at once, or -1, -1.
func (p *problem) question(st state) (int, int) {
	i, k, when := -1, -1, never
	for x, a := range p.order {
		if p.jobs[a].work == 0 || p.only != nil && !p.only[a] {
			continue
		}
		if st.crew[a] < 0 {
			if st.at[a].start < when {
				i, k, when = a, -1, st.at[a].start
			}
			continue
		}
		for _, b := range p.order[:x] {
			if t := max(st.at[a].start, st.at[b].start); t < when && p.clash(st, a, b) {
				i, k, when = b, a, t
			}
		}
	}
	return i, k
}

// clash reports whether a and b want the same hands at once.
func (p *problem) clash(st state, a, b int) bool {
	if p.jobs[a].work == 0 || p.jobs[b].work == 0 || st.crew[a] < 0 || st.crew[b] < 0 || p.only != nil && !p.only[b] {
		return false
	}
	return p.crews[a][st.crew[a]].who&p.crews[b][st.crew[b]].who != 0 && st.at[a].start < st.at[b].end && st.at[b].start < st.at[a].end
}
