package saw

import (
	"cmp"
	"context"
	"slices"
)

// DefaultRounds is the search spent on a set of sheets. Chosen: a list of thirty
// pieces takes some tenths of a second.
const DefaultRounds = 1500

const (
	mostSets    = 40     // sets of sheets tried, cheapest first
	mostPops    = 200000 // sets looked at
	dummyTrials = 84     // sizes tried for a larger offcut
	calmTrials  = 12     // plans compared for fewer settings
	calmItems   = 60     // above so many pieces the search gets shorter
)

// solve returns the best draft for the items that can be placed, and those that
// can not.
func (s *shop) solve(ctx context.Context) (d draft, lower float64) {
	all, rest := s.everything(ctx)
	d = all
	if len(rest) == len(s.items) {
		return d, d.price
	}
	want := s.without(rest)
	d, lower = s.cheapest(ctx, all, want)
	d = s.closeOwned(ctx, d, want)
	d = s.largerOffcut(ctx, d, want)
	d.out = rest
	return d, lower
}

func (s *shop) without(rest []int32) []int32 {
	var want []int32
	for i := range s.items {
		if !slices.Contains(rest, int32(i)) {
			want = append(want, int32(i))
		}
	}
	return want
}

// everything opens all that is owned and buys sheets one by one until nothing
// more can be placed.
func (s *shop) everything(ctx context.Context) (draft, []int32) {
	units, left := s.owned(), s.purchasable()
	want := s.without(nil)
	for {
		f, ok := s.attempt(ctx, units, want, nil, s.rounds/4, s.seed)
		if ok {
			return s.draw(units, f), nil
		}
		k := s.wanted(f.out, left)
		if k < 0 {
			if f, ok = s.attempt(ctx, units, want, nil, s.rounds, s.seed+1); ok {
				return s.draw(units, f), nil
			}
			d := s.draw(units, f)
			return d, d.out
		}
		n := s.needed(f.out, k)
		for range min(n, left[k]) {
			units = append(units, unit{kind: k})
		}
		left[k] -= min(n, left[k])
	}
}

func (s *shop) owned() []unit {
	var units []unit
	for k := range s.stock {
		if s.stock[k].owned {
			for range s.stock[k].count {
				units = append(units, unit{kind: k})
			}
		}
	}
	return units
}

func (s *shop) purchasable() []int {
	left := make([]int, len(s.stock))
	for k := range s.stock {
		if !s.stock[k].owned {
			left[k] = s.stock[k].count
		}
	}
	return left
}

// wanted returns the kind of sheet with the best price for its area among those
// that can take the largest item outside, or any item; -1 if there is none.
func (s *shop) wanted(out []int32, left []int) int {
	order := slices.Clone(out)
	slices.SortStableFunc(order, func(a, b int32) int { return cmp.Compare(s.items[b].area(), s.items[a].area()) })
	for _, i := range order {
		best := -1
		for k := range s.stock {
			if left[k] <= 0 || !s.stock[k].holds(&s.items[i], s.kerf) {
				continue
			}
			if best < 0 || s.stock[k].price*float64(s.stock[best].area) < s.stock[best].price*float64(s.stock[k].area) {
				best = k
			}
		}
		if best >= 0 {
			return best
		}
	}
	return -1
}

// needed returns how many sheets of kind k the items outside fill by area.
func (s *shop) needed(out []int32, k int) int {
	sum := int64(0)
	for _, i := range out {
		sum += s.items[i].area() / 1024
	}
	return max(1, int(sum/(s.stock[k].area/1024+1)))
}

// cheapest tries sets of sheets in the order of their price, from the first that
// is not excluded by a bound up to the one known to do.
func (s *shop) cheapest(ctx context.Context, known draft, want []int32) (draft, float64) {
	q := newSets(s, known.price)
	lower, last, tried := -1.0, 0.0, 0
	for range mostPops {
		set, price, ok := q.pop()
		if !ok || price >= known.price || tried == s.sets || ctx.Err() != nil {
			break
		}
		last = price
		if !s.possible(set, want) {
			continue
		}
		tried++
		if d, ok := s.trySet(ctx, set, want, tried); ok {
			known = d
			break
		}
		if lower < 0 && !(s.line && s.refuted(set, want)) {
			lower = price
		}
	}
	if lower < 0 {
		lower = known.price
		if tried == s.sets || ctx.Err() != nil {
			lower = last
		}
	}
	return known, lower
}

// trySet fills a set, opening sheets with zones in other ways at every try.
func (s *shop) trySet(ctx context.Context, set []int, want []int32, salt int) (draft, bool) {
	units := s.owned()
	for k, n := range set {
		for range n {
			units = append(units, unit{kind: k})
		}
	}
	tries := 1
	for _, u := range units {
		tries = max(tries, len(s.stock[u.kind].ways))
	}
	for t := range tries {
		for i := range units {
			units[i].way = t % len(s.stock[units[i].kind].ways)
		}
		if s.line {
			if f, ok := s.snug(units, want, s.seed+uint64(salt)); ok {
				return s.draw(units, f), true
			}
		}
		if f, ok := s.attempt(ctx, units, want, nil, s.rounds, s.seed+uint64(97*salt+t)); ok {
			return s.draw(units, f), true
		}
	}
	return draft{}, false
}

// possible holds a set against the bounds: the sum of areas, a sheet for every
// item, and for a single size without offcuts the bound of bins.
func (s *shop) possible(set []int, want []int32) bool {
	area, kinds, total := 0.0, 0, 0
	var only *stockKind
	for k := range s.stock {
		n := set[k]
		if s.stock[k].owned {
			n = s.stock[k].count
		}
		if n > 0 {
			kinds, only, total = kinds+1, &s.stock[k], total+n
		}
		area += float64(n) * float64(s.stock[k].area)
	}
	items := make([]item, 0, len(want))
	for _, i := range want {
		t := s.items[i]
		area -= float64(t.area())
		items = append(items, t)
		if !slices.ContainsFunc(s.indexes(set), func(k int) bool { return s.stock[k].holds(&t, s.kerf) }) {
			return false
		}
	}
	if area < 0 {
		return false
	}
	if kinds == 1 && len(only.sizes[0]) == 1 {
		b := only.sizes[0][0]
		return lowerBins(items, b.x1-b.x0+s.kerf, b.y1-b.y0+s.kerf) <= total
	}
	return true
}

func (s *shop) indexes(set []int) []int {
	var out []int
	for k := range s.stock {
		if set[k] > 0 || s.stock[k].owned {
			out = append(out, k)
		}
	}
	return out
}
