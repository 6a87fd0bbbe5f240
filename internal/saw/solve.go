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

// closeOwned tries to leave sheets that are owned whole, the largest first.
func (s *shop) closeOwned(ctx context.Context, d draft, want []int32) draft {
	for u := 0; u < len(d.units) && u < 20; u++ {
		if d.trees[u] == nil || !s.stock[d.units[u].kind].owned {
			continue
		}
		units := slices.Delete(slices.Clone(d.units), u, u+1)
		f, ok := s.attempt(ctx, units, want, nil, s.rounds/4, s.seed+uint64(u)+7)
		if !ok {
			continue
		}
		next := s.draw(append(units, d.units[u]), f.with(s, []unit{d.units[u]}))
		if next.compare(d.verdict) < 0 {
			d, u = next, -1
		}
	}
	return d
}

// with adds the empty regions of more units.
func (f *filler) with(s *shop, units []unit) *filler {
	more, _ := s.regions(units)
	f.setRegions(append(f.regions, more...))
	return f
}

// largerOffcut looks for a plan with a larger offcut by placing one as if it were
// a piece, and then for one with fewer settings. Sheets left whole stay so.
func (s *shop) largerOffcut(ctx context.Context, d draft, want []int32) draft {
	rounds := max(s.rounds/5, 1)
	var used, whole []unit
	for u, x := range d.units {
		if d.trees[u] != nil {
			used = append(used, x)
		} else {
			whole = append(whole, x)
		}
	}
	units := append(slices.Clone(used), whole...)
	try := func(extra *item, salt uint64) bool {
		if ctx.Err() != nil {
			return false
		}
		f, ok := s.attempt(ctx, used, want, extra, rounds, s.seed+salt)
		if !ok {
			return false
		}
		next := s.draw(units, f.with(s, whole))
		if next.compare(d.verdict) >= 0 {
			return false
		}
		d = next
		return true
	}
	var keep *item
	for t := range s.trials {
		if extra, ok := s.guess(&d, t); ok && try(&extra, uint64(t)*31) {
			keep = &extra
		}
	}
	for t := range min(calmTrials, s.trials) {
		try(keep, uint64(t)*77+5)
	}
	return d
}

// guess returns the t-th size of an offcut to try: of a used sheet in turn, a
// share of one side, and so much of the other that it beats the largest so far
// by a step that shrinks as t grows.
func (s *shop) guess(d *draft, t int) (item, bool) {
	var regions []box
	for u, x := range d.units {
		if d.trees[u] != nil {
			regions = append(regions, s.stock[x.kind].sizes[x.way]...)
		}
	}
	if len(regions) == 0 {
		return item{}, false
	}
	if s.line {
		return s.guessLength(d, regions, t)
	}
	b := regions[t%len(regions)]
	n := t / len(regions)
	w, h := b.x1-b.x0, b.y1-b.y0
	if n%2 == 1 {
		w, h = h, w
	}
	shares := []float64{1, 1, 0.8, 0.65, 0.5, 0.9}
	steps := []float64{0.7, 0.5, 0.3, 0.2, 0.1, 0.05, 0.02}
	side := float64(w) * shares[n/2%len(shares)]
	now := d.largestCut() * ticksPerMM * ticksPerMM
	spare := s.spare(d) * ticksPerMM * ticksPerMM
	area := now + (spare-now)*steps[n/(2*len(shares))%len(steps)]
	other := area / side
	if other > float64(h) || !s.useful(int64(side), int64(other)) {
		return item{}, false
	}
	return item{w: int64(side) + s.kerf, h: int64(other) + s.kerf, turns: true, kind: int32(len(s.items))}, true
}

// guessLength is guess for bars.
func (s *shop) guessLength(d *draft, regions []box, t int) (item, bool) {
	longest := int64(0)
	for _, b := range regions {
		longest = max(longest, b.x1-b.x0)
	}
	now, spare := d.largestCut()/lineMM, s.spare(d)/lineMM
	length := ticks(now) + 1 + int64(float64(ticks(spare-now))*[]float64{1, 0.8, 0.6, 0.4, 0.25, 0.12, 0.06, 0.03, 0.01, 0.003}[t%10])
	if length > longest || spare <= now {
		return item{}, false
	}
	return item{w: length + s.kerf, h: ticks(lineMM) + s.kerf, kind: int32(len(s.items))}, true
}

// largestCut returns the area of the largest offcut of the sheets in use, mm2.
func (d *draft) largestCut() float64 {
	best := 0.0
	for _, tree := range d.trees {
		tree.walk(func(p *slab) {
			if p.kind == KindOffcut {
				best = max(best, mm(p.w)*mm(p.h))
			}
		})
	}
	return best
}

// spare returns the area of all that is not a piece on the sheets in use, mm2.
func (s *shop) spare(d *draft) float64 {
	sum := 0.0
	for u, x := range d.units {
		if d.trees[u] == nil {
			continue
		}
		for _, b := range s.stock[x.kind].sizes[x.way] {
			sum += mm(b.x1-b.x0) * mm(b.y1-b.y0)
		}
		d.trees[u].walk(func(p *slab) {
			if p.kind == KindPiece {
				sum -= mm(p.w) * mm(p.h)
			}
		})
	}
	return sum
}
