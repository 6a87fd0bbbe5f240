package toolpath

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// Chosen.
const (
	longestMove = 3    // stops that Or-opt moves at once
	leastGainMM = 1e-7 // against turning for ever
	neighbours  = 10   // stops next to which a stop is tried
)

// improve makes the changes that shorten the tour, beginning with the stops of
// waiting, until none is left. It returns how many changes it weighed.
func (t *tour) improve(waiting []int) int {
	weighed, queued := 0, make([]bool, len(t.stops))
	for _, s := range waiting {
		queued[s] = true
	}
	for len(waiting) > 0 && weighed < mostEffort {
		s := waiting[0]
		waiting, queued[s] = waiting[1:], false
		from, to, ok := t.better(s, &weighed)
		if !ok {
			continue
		}
		for _, k := range []int{from, from + 1, t.place[s] - 1, t.place[s], t.place[s] + 1, to - 1, to} {
			if k < 0 || k >= len(t.order) || queued[t.order[k]] {
				continue
			}
			queued[t.order[k]] = true
			waiting = append(waiting, t.order[k])
		}
	}
	return weighed
}

// better looks for a change at stop s that shortens the tour, and makes it: another
// beginning, a turned stretch that brings s next to a near stop (2-opt), or a short
// stretch from s on moved there (Or-opt). It returns the places between which the
// order changed.
func (t *tour) better(s int, weighed *int) (from, to int, ok bool) {
	i := t.place[s]
	if t.repick(i) {
		return i - 1, i + 1, true
	}
	for _, c := range t.near[s] {
		j := t.place[c]
		*weighed += 2 + 4*longestMove
		lo, hi := i+1, j
		if j < i {
			lo, hi = j, i-1
		}
		if lo < hi && t.turn(lo, hi) {
			return lo - 1, hi + 1, true
		}
		for size := 1; size <= longestMove; size++ {
			for _, first := range [2]int{i, i - size + 1} {
				for _, after := range [2]int{j, j - 1} {
					if t.move(first, size, after) {
						return min(first-1, after), max(first+size, after+1), true
					}
				}
				if size == 1 {
					break
				}
			}
		}
	}
	return 0, 0, false
}

// repick chooses the best beginning of the k-th stop for the stops round it.
func (t *tour) repick(k int) bool {
	i := t.order[k]
	before, next := t.out(k-1), t.in(k+1)
	pick, cost := t.bestPick(i, before, next)
	if cost >= t.way(k-1, k)+t.way(k, k+1)-leastGainMM {
		return false
	}
	t.pick[i] = pick
	return true
}

// bestPick returns the beginning of stop i with the shortest way from before over it
// to next.
func (t *tour) bestPick(i int, before, next geom.Point) (int, float64) {
	best, at := math.Inf(1), 0
	s := t.stops[i]
	for k, p := range s.in {
		if d := apart(before, p) + apart(s.out[k], next); d < best {
			best, at = d, k
		}
	}
	return at, best
}

// turn reverses the stops from the lo-th to the hi-th if that gains. Ends are not
// beginnings, so the ways inside change too; they are summed in try.
func (t *tour) turn(lo, hi int) bool {
	gain := t.way(lo-1, lo) + t.way(hi, hi+1) - apart(t.out(lo-1), t.in(hi)) - apart(t.out(lo), t.in(hi+1))
	return gain > leastGainMM && t.try(func(o []int) { slices.Reverse(o[lo : hi+1]) }, lo-1, hi+1)
}

// move puts size stops from the first-th on after the after-th, as they are or turned
// round, if that gains. A single stop takes its best beginning there.
func (t *tour) move(first, size, after int) bool {
	last := first + size - 1
	if first < 0 || last >= len(t.order) || (after >= first-1 && after <= last) {
		return false
	}
	freed := t.way(first-1, first) + t.way(last, last+1) - t.way(first-1, last+1)
	room := freed + t.way(after, after+1) - leastGainMM
	if room <= 0 {
		return false
	}
	a, b := min(first-1, after), max(last+1, after+1)
	if size == 1 {
		i := t.order[first]
		pick, cost := t.bestPick(i, t.out(after), t.in(after+1))
		if cost >= room {
			return false
		}
		old := t.pick[i]
		before := t.between(a, b)
		t.pick[i] = pick
		if t.tryFrom(before, func(o []int) { shift(o, first, size, after) }, a, b) {
			return true
		}
		t.pick[i] = old
		return false
	}
	if t.way(after, first)+t.way(last, after+1) < room && t.try(func(o []int) { shift(o, first, size, after) }, a, b) {
		return true
	}
	return t.way(after, last)+t.way(first, after+1) < room && t.try(func(o []int) {
		slices.Reverse(o[first : last+1])
		shift(o, first, size, after)
	}, a, b)
}

// shift moves size stops from i to after the k-th of o.
func shift(o []int, i, size, k int) {
	var held [longestMove]int
	copy(held[:], o[i:i+size])
	if k < i {
		copy(o[k+1+size:], o[k+1:i])
		copy(o[k+1:], held[:size])
		return
	}
	copy(o[i:], o[i+size:k+1])
	copy(o[k+1-size:], held[:size])
}

// try makes the change if it keeps the order that must be and shortens the ways
// between the a-th and the b-th stop.
func (t *tour) try(change func([]int), a, b int) bool {
	return t.tryFrom(t.between(a, b), change, a, b)
}

func (t *tour) tryFrom(before float64, change func([]int), a, b int) bool {
	t.spare = append(t.spare[:0], t.order...)
	change(t.order)
	if t.between(a, b) < before-leastGainMM && t.legal(a, b) {
		t.seat(a, b)
		return true
	}
	t.order, t.spare = t.spare, t.order
	t.seat(a, b)
	return false
}

// seat notes where the stops between the a-th and the b-th stand.
func (t *tour) seat(a, b int) {
	for k := max(a, 0); k <= min(b, len(t.order)-1); k++ {
		t.place[t.order[k]] = k
	}
}

// legal reports whether the stops from the a-th to the b-th come before those that
// must follow them and after those that must come first, as the order stands.
func (t *tour) legal(a, b int) bool {
	t.seat(a, b)
	for k := max(a, 0); k <= min(b, len(t.order)-1); k++ {
		i := t.order[k]
		if s := t.stops[i].after; s >= 0 && t.place[s] < k {
			return false
		}
		for _, s := range t.before[i] {
			if t.place[s] > k {
				return false
			}
		}
	}
	return true
}

func (t *tour) between(a, b int) float64 {
	sum := 0.0
	for k := a; k < b; k++ {
		sum += t.way(k, k+1)
	}
	return sum
}

// nearStops lists for each stop the nearest others by their beginnings.
func nearStops(stops []stop) [][]int {
	out := make([][]int, len(stops))
	type far struct {
		stop int
		d    float64
	}
	for i, s := range stops {
		var all []far
		for j, q := range stops {
			if i == j {
				continue
			}
			d := math.Inf(1)
			for _, a := range s.in {
				for _, b := range q.in {
					d = math.Min(d, apart(a, b))
				}
			}
			all = append(all, far{j, d})
		}
		slices.SortFunc(all, func(a, b far) int { return cmp.Or(cmp.Compare(a.d, b.d), a.stop-b.stop) })
		for _, f := range all[:min(neighbours, len(all))] {
			out[i] = append(out[i], f.stop)
		}
	}
	return out
}
