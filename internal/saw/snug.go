package saw

import (
	"cmp"
	"slices"
)

// Chosen: tries to fill a set of bars, and steps of the search within one bar.
const (
	snugTries = 80
	snugSteps = 4000
)

// snug fills bars one by one, each with the pieces that leave the least of it,
// the longest piece left among them more often than not. It is the better search
// where bars must be filled to the last millimetres.
// Method: [gupta-ho-1999].
func (s *shop) snug(units []unit, want []int32, seed uint64) (*filler, bool) {
	regions, _ := s.regions(units)
	f := newFiller(s.items, regions, seed)
	f.out = f.out[:0]
	order := make([]int, len(regions))
	for k := range order {
		order[k] = k
	}
	long := slices.Clone(want)
	slices.SortStableFunc(long, func(a, b int32) int { return cmp.Compare(s.items[b].w, s.items[a].w) })
	for range snugTries {
		left := slices.Clone(long)
		for i := range order {
			j := i + f.dice.below(len(order)-i)
			order[i], order[j] = order[j], order[i]
		}
		for _, k := range order {
			left = s.stow(&f.regions[k], left, &f.dice)
		}
		if len(left) == 0 {
			return f, true
		}
		for k := range f.regions {
			f.regions[k].clear()
		}
	}
	return f, false
}

// stow fills one bar and returns what is left, still the longest first.
func (s *shop) stow(r *region, left []int32, d *dice) []int32 {
	n := snugSearch{s: s, left: left, best: r.w + 1, steps: snugSteps}
	if first := n.longest(r.w); first >= 0 && d.below(4) > 0 {
		n.now = append(n.now, first)
		n.look(first+1, r.w-s.items[left[first]].w)
	} else {
		n.look(0, r.w)
	}
	var rest []int32
	for i, x := range left {
		if !slices.Contains(n.chosen, i) {
			rest = append(rest, x)
			continue
		}
		at := r.root
		r.insert(at, joinX, x, false, s.items[x].w, s.items[x].h)
	}
	return rest
}

// A snugSearch looks for the pieces that leave the least room.
type snugSearch struct {
	s           *shop
	left        []int32
	now, chosen []int
	best        int64
	steps       int
}

func (n *snugSearch) longest(room int64) int {
	return slices.IndexFunc(n.left, func(x int32) bool { return n.s.items[x].w <= room })
}

func (n *snugSearch) look(from int, room int64) {
	if room < n.best {
		n.best, n.chosen = room, slices.Clone(n.now)
	}
	if n.steps--; n.steps < 0 || n.best == 0 {
		return
	}
	for i := from; i < len(n.left); i++ {
		w := n.s.items[n.left[i]].w
		if w > room || i > from && w == n.s.items[n.left[i-1]].w {
			continue
		}
		n.now = append(n.now, i)
		n.look(i+1, room-w)
		n.now = n.now[:len(n.now)-1]
	}
}
