package saw

import (
	"context"
	"slices"
)

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
