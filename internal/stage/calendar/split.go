package calendar

import (
	"cmp"
	"slices"
)

// unsplit moves work that pauses over a night or a day off to a later start where that
// takes fewer days and nothing else has to move, the last task first.
func (p *problem) unsplit(st state) {
	order := slices.Clone(p.order)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(st.at[b].start, st.at[a].start) })
	finish := p.end(st)
	for _, i := range order {
		if p.jobs[i].work == 0 || p.jobs[i].unbroken {
			continue
		}
		end, start := p.room(st, i, finish)
		for day := st.at[i].start/perDay + 1; ; day++ {
			s := p.fit(i, day*perDay, st.crew[i])
			if s.end > end || s.start > start {
				break
			}
			if s.days() < st.at[i].days() {
				st.at[i] = s
			}
		}
	}
}

// days returns on how many days more than one there is work.
func (s slot) days() minute { return (s.end-1)/perDay - s.start/perDay }

// room returns by when i must end, and start, if nothing else is to move.
func (p *problem) room(st state, i int, finish minute) (end, start minute) {
	end, start = finish-p.jobs[i].wait, never
	for _, e := range p.from[i] {
		end = min(end, st.at[p.edges[e].to].start-p.edges[e].wait)
	}
	for _, e := range p.into[i] {
		if x := p.edges[e]; x.timed && !p.dropped[e] {
			start = min(start, st.at[x.from].end+x.latest)
		}
	}
	who := p.crews[i][st.crew[i]].who
	for _, k := range p.order {
		if k != i && p.jobs[k].work > 0 && p.crews[k][st.crew[k]].who&who != 0 && st.at[k].start >= st.at[i].end {
			end = min(end, st.at[k].start)
		}
	}
	return end, start
}
