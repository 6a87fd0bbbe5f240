package saw

import "container/heap"

// sets lists numbers of sheets to buy in the order of their price.
type sets struct {
	s    *shop
	kind []int // that can be bought
	most float64
	heap setHeap
}

type boughtSet struct {
	count []int
	price float64
	last  int // only this kind and later ones may grow, so that each set comes once
}

func newSets(s *shop, most float64) *sets {
	q := &sets{s: s, most: most}
	for k := range s.stock {
		if !s.stock[k].owned && s.stock[k].count > 0 && s.stock[k].price > 0 {
			q.kind = append(q.kind, k)
		}
	}
	q.heap = setHeap{{count: make([]int, len(s.stock))}}
	return q
}

func (q *sets) pop() (count []int, price float64, ok bool) {
	if len(q.heap) == 0 {
		return nil, 0, false
	}
	top := heap.Pop(&q.heap).(boughtSet)
	for i := top.last; i < len(q.kind); i++ {
		k := q.kind[i]
		next := boughtSet{count: append([]int(nil), top.count...), price: top.price + q.s.stock[k].price, last: i}
		next.count[k]++
		if next.count[k] <= q.s.stock[k].count && next.price < q.most {
			heap.Push(&q.heap, next)
		}
	}
	return top.count, top.price, true
}

type setHeap []boughtSet

func (h setHeap) Len() int { return len(h) }
func (h setHeap) Less(i, j int) bool {
	if h[i].price != h[j].price {
		return h[i].price < h[j].price
	}
	for k := range h[i].count {
		if h[i].count[k] != h[j].count[k] {
			return h[i].count[k] > h[j].count[k]
		}
	}
	return false
}
func (h setHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *setHeap) Push(x any)   { *h = append(*h, x.(boughtSet)) }
func (h *setHeap) Pop() any {
	old := *h
	x := old[len(old)-1]
	*h = old[:len(old)-1]
	return x
}
