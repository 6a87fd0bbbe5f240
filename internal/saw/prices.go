package saw

import (
	"context"
	"slices"
)

// priceScale makes prices of copies finer than whole values.
const priceScale = 8

// A pricing bounds the value with limited copies by charging every copy a price
// and paying for the copies there are:
//
//	V <= sum over pieces of price_i most_i + F with values v_i - price_i
//
// for any prices >= 0, F being the table for unlimited copies. The best prices
// are sought by steps along copies used less copies there are (Lagrange, subgradient).
// All values are times priceScale.
type pricing struct {
	goods []Good // as given
	w, h  int64
	price []int64
	upper int64 // the least bound so far
	best  []int64
	value int64 // of the best pattern met on the way, unscaled
	tree  *slab
}

// charged returns the goods at the prices, and what all copies cost.
func charged(goods []Good, price []int64) (out []Good, paid int64) {
	out = slices.Clone(goods)
	for k := range out {
		out[k].Value = priceScale*out[k].Value - price[k]
		paid += price[k] * int64(out[k].Count)
	}
	return out, paid
}

// Chosen: work spent on prices, in steps through a table.
const (
	priceWork = 40_000_000
	mostSteps = 80
)

// seek improves prices and keeps the best pattern that comes up.
func (p *pricing) seek(ctx context.Context) {
	p.price, p.best = make([]int64, len(p.goods)), make([]int64, len(p.goods))
	p.upper = 1 << 62
	pace, idle, work := 1.0, 0, 0
	for step := 0; step < mostSteps && work < priceWork && ctx.Err() == nil; step++ {
		goods, paid := charged(p.goods, p.price)
		t := newTable(goods, p.w, p.h, false)
		if t == nil || !t.fill(ctx) {
			return
		}
		work += t.work()
		bound := paid + t.value(p.w, p.h)
		if idle++; bound < p.upper {
			p.upper, idle = bound, 0
			copy(p.best, p.price)
		}
		root := slabOf(0, 0, p.w, p.h)
		t.lay(goods, root)
		over, square := p.overuse(root)
		p.repair(root)
		if square == 0 || p.upper < (p.value+1)*priceScale {
			return
		}
		if idle >= 5 {
			pace, idle = pace/2, 0
			copy(p.price, p.best)
		}
		size := pace * float64(bound-p.value*priceScale) / float64(square)
		for k := range p.price {
			p.price[k] = max(0, p.price[k]+int64(size*float64(over[k])))
		}
	}
}

// work estimates the steps that filling the table took.
func (t *table) work() int {
	n := 0
	for j := range t.blockX {
		n += len(t.blockX[j]) * len(t.x.at)
	}
	for i := range t.blockY {
		n += len(t.blockY[i]) * len(t.y.at)
	}
	return n/2 + len(t.x.at)*len(t.y.at)
}

// overuse returns copies used less copies there are, where a price could change
// for it, and the sum of their squares.
func (p *pricing) overuse(root *slab) (over []int, square int) {
	over = make([]int, len(p.goods))
	root.walk(func(s *slab) {
		if s.kind == KindPiece {
			over[s.piece]++
		}
	})
	for k := range over {
		over[k] -= p.goods[k].Count
		if over[k] < 0 && p.price[k] == 0 {
			over[k] = 0
		}
		square += over[k] * over[k]
	}
	return over, square
}

// repair turns a pattern with too many copies into one that can be had: copies
// too many become waste, and waste is filled with what is left and worth most.
func (p *pricing) repair(root *slab) {
	left := make([]int, len(p.goods))
	for k := range left {
		left[k] = p.goods[k].Count
	}
	value := int64(0)
	root.walk(func(s *slab) {
		if s.kind != KindPiece {
			return
		}
		if left[s.piece] == 0 {
			s.kind, s.piece = KindWaste, -1
			return
		}
		left[s.piece]--
		value += p.goods[s.piece].Value
	})
	var free []*slab
	root.walk(func(s *slab) {
		if s.kind == KindWaste {
			free = append(free, s)
		}
	})
	for _, s := range free {
		value += p.stuff(s, left)
	}
	if value > p.value {
		p.value, p.tree = value, root
	}
}

// stuff fills a waste slab piece by piece.
func (p *pricing) stuff(s *slab, left []int) int64 {
	if s == nil {
		return 0
	}
	best, turned := -1, false
	for k, g := range p.goods {
		if left[k] == 0 || best >= 0 && g.Value <= p.goods[best].Value {
			continue
		}
		if g.W <= s.w && g.H <= s.h {
			best, turned = k, false
		} else if g.Turns && g.H <= s.w && g.W <= s.h {
			best, turned = k, true
		}
	}
	if best < 0 {
		return 0
	}
	left[best]--
	w, h := p.goods[best].W, p.goods[best].H
	if turned {
		w, h = h, w
	}
	s.place(int32(best), turned, w, h)
	value := p.goods[best].Value
	for ; s.kind == KindCut; s = s.a {
		value += p.stuff(s.b, left)
	}
	return value
}
