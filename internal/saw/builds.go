package saw

import (
	"container/heap"
	"context"
)

// A build is a rectangle put together from pieces.
type build struct {
	w, h   int64
	value  int64 // times the scale
	gain   int64 // value less the prices of the copies
	bound  int64 // on what a whole rectangle with it in the corner can be worth
	a, b   int32 // what it is made of, -1 for a single piece
	good   int32
	turned bool
	join   join
	key    uint64
}

// A builder finds the best pattern with limited copies: it takes the build with
// the best bound, joins it along x and along y with every build taken before,
// and stops when no bound exceeds the best value. What it finds then is proven.
// Source: [viswanathan-bagchi-1993], [hifi-1997].
type builder struct {
	goods  []Good
	w, h   int64
	rest   *restTable
	words  int // of eight counters
	most   []uint64
	builds []build
	counts []uint64 // words of every build after each other
	taken  []int32
	heap   boundHeap
	seen   map[uint64][]int32
	salt   []uint64
	best   int64
	bestAt int32   // -1 while best came from elsewhere
	gains  []int64 // of the goods: their value less the price of a copy
	paid   int64   // for all copies there are
	scale  int64   // values are multiples of it
	limit  int     // of builds: then the search stops unproven
}

const (
	mostBuilds = 1_000_000
	counterTop = 0x8080808080808080
)

func newBuilder(goods []Good, w, h int64, rest *restTable) *builder {
	n := len(goods)
	b := &builder{goods: goods, w: w, h: h, rest: rest, words: (n + 7) / 8, seen: map[uint64][]int32{}, bestAt: -1, scale: 1, limit: mostBuilds}
	b.most = make([]uint64, b.words)
	d := dice{42}
	for k := range goods {
		b.most[k/8] |= uint64(min(goods[k].Count, 127)) << (k % 8 * 8)
		b.salt = append(b.salt, d.next())
		b.gains = append(b.gains, goods[k].Value)
	}
	b.heap.b = b
	return b
}

// start enters the single pieces.
func (b *builder) start() {
	count := make([]uint64, b.words)
	for k, g := range b.goods {
		if g.Count < 1 {
			continue
		}
		clear(count)
		count[k/8] = 1 << (k % 8 * 8)
		x := build{w: g.W, h: g.H, value: g.Value * b.scale, gain: b.gains[k], a: -1, b: -1, good: int32(k), key: b.salt[k]}
		b.enter(x, count)
		if g.Turns && g.W != g.H {
			x.w, x.h, x.turned = g.H, g.W, true
			b.enter(x, count)
		}
	}
}

// enter adds a build unless it is too large, too poor, or no better than one
// with the same pieces.
func (b *builder) enter(x build, count []uint64) {
	if x.w > b.w || x.h > b.h {
		return
	}
	x.bound = b.boundOf(x.gain, x.w, x.h)
	if b.poor(x.bound) && x.value <= b.best {
		return
	}
	for _, o := range b.seen[x.key] {
		if b.builds[o].w <= x.w && b.builds[o].h <= x.h {
			return
		}
	}
	i := int32(len(b.builds))
	b.seen[x.key] = append(b.seen[x.key], i)
	b.builds = append(b.builds, x)
	b.counts = append(b.counts, count...)
	if x.value > b.best {
		b.best, b.bestAt = x.value, i
	}
	heap.Push(&b.heap, i)
}

// boundOf bounds a whole rectangle with a build of this gain in the corner.
func (b *builder) boundOf(gain, w, h int64) int64 { return gain + b.paid + b.rest.at(w, h) }

// poor reports whether a bound leaves no room for a better value.
func (b *builder) poor(bound int64) bool { return bound < b.best+b.scale }

// run searches and reports whether the best is proven.
func (b *builder) run(ctx context.Context) bool {
	b.start()
	sum := make([]uint64, b.words)
	for n := 0; len(b.heap.index) > 0; n++ {
		if n%16 == 0 && ctx.Err() != nil || len(b.builds) > b.limit {
			return false
		}
		i := heap.Pop(&b.heap).(int32)
		if b.poor(b.builds[i].bound) {
			return true
		}
		b.taken = append(b.taken, i)
		for _, o := range b.taken {
			b.combine(i, o, sum)
		}
	}
	return true
}

func (b *builder) combine(i, o int32, sum []uint64) {
	p, q := &b.builds[i], &b.builds[o]
	value, gain := p.value+q.value, p.gain+q.gain
	byX, byY := p.w+q.w <= b.w, p.h+q.h <= b.h
	w, h := max(p.w, q.w), max(p.h, q.h)
	byX = byX && !b.poor(b.boundOf(gain, p.w+q.w, h))
	byY = byY && !b.poor(b.boundOf(gain, w, p.h+q.h))
	if !byX && !byY || !b.add(i, o, sum) {
		return
	}
	x := build{value: value, gain: gain, a: i, b: o, good: -1, key: p.key + q.key}
	if wide := p.w + q.w; byX {
		y := x
		y.w, y.h, y.join = wide, h, joinX
		high := p.h + q.h
		b.enter(y, sum)
		if byY {
			x.w, x.h, x.join = w, high, joinY
			b.enter(x, sum)
		}
		return
	}
	x.w, x.h, x.join = w, p.h+q.h, joinY
	b.enter(x, sum)
}

// add adds the counters of two builds and reports whether none is over its most.
func (b *builder) add(i, o int32, sum []uint64) bool {
	p, q := b.counts[int(i)*b.words:], b.counts[int(o)*b.words:]
	for k := range b.words {
		s := p[k] + q[k]
		// A counter over 127 shows in its top bit; one over its most borrows it.
		if s&counterTop != 0 || ((b.most[k]|counterTop)-s)&counterTop != counterTop {
			return false
		}
		sum[k] = s
	}
	return true
}

type boundHeap struct {
	b     *builder
	index []int32
}

func (h *boundHeap) Len() int { return len(h.index) }
func (h *boundHeap) Less(i, j int) bool {
	p, q := &h.b.builds[h.index[i]], &h.b.builds[h.index[j]]
	if p.bound != q.bound {
		return p.bound > q.bound
	}
	if p.value != q.value {
		return p.value > q.value
	}
	return h.index[i] < h.index[j]
}
func (h *boundHeap) Swap(i, j int) { h.index[i], h.index[j] = h.index[j], h.index[i] }
func (h *boundHeap) Push(x any)    { h.index = append(h.index, x.(int32)) }
func (h *boundHeap) Pop() any {
	n := len(h.index) - 1
	x := h.index[n]
	h.index = h.index[:n]
	return x
}
