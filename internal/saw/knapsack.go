package saw

import (
	"context"
	"fmt"
	"sync"
)

// A Slice is a part of a rectangle in whole units: cut again (Cut is "x" or "y",
// at distance At from its corner), a piece (Good is its index), or waste.
type Slice struct {
	X      int64  `json:"x"`
	Y      int64  `json:"y"`
	W      int64  `json:"w"`
	H      int64  `json:"h"`
	Cut    string `json:"cut,omitempty"`
	At     int64  `json:"at,omitempty"`
	Good   int    `json:"piece"` // -1 if it is no piece
	Turned bool   `json:"turned,omitempty"`
	A      *Slice `json:"a,omitempty"`
	B      *Slice `json:"b,omitempty"`
}

func sliceOf(s *slab) *Slice {
	if s == nil {
		return nil
	}
	out := &Slice{X: s.x, Y: s.y, W: s.w, H: s.h, Good: -1}
	switch s.kind {
	case KindCut:
		out.Cut, out.At, out.A, out.B = string(s.axis), s.at, sliceOf(s.a), sliceOf(s.b)
	case KindPiece:
		out.Good, out.Turned = int(s.piece), s.turned
	}
	return out
}

// A Haul is what is cut out of one rectangle, without kerf.
type Haul struct {
	Value  int64
	Upper  int64 // no pattern is worth more
	Proven bool  // Value is Upper
	Tree   *Slice
}

// mostSide is the longest side of a Knapsack in units: its tables hold an entry
// for every unit. mostCells keeps them in memory.
const (
	mostSide  = 1 << 20
	mostCells = 16_000_000
)

// Knapsack returns the guillotine pattern of the most value in a rectangle of
// w x h. With unlimited, counts are not read. It is exact, unless ctx ends or the
// search grows too large; then Upper is a bound of areas.
//
// Errors: sizes that are not positive, sides over 2^20, values that are negative.
func Knapsack(ctx context.Context, goods []Good, w, h int64, unlimited bool) (Haul, error) {
	goods, index, err := checkGoods(goods, w, h, unlimited)
	if err != nil {
		return Haul{}, err
	}
	out := Haul{Tree: &Slice{W: w, H: h, Good: -1}, Proven: true}
	if len(goods) == 0 {
		return out, nil
	}
	inner, cancel := context.WithCancel(ctx)
	defer cancel()
	spare := make(chan Haul, 1)
	// The stand-in takes turns with the exact search only where that is slow.
	standIn := sync.OnceFunc(func() {
		go func() { spare <- gather(inner, goods, w, h, 1) }()
	})
	if unlimited {
		out = exactUnlimited(ctx, goods, w, h, standIn)
	} else {
		out = exactLimited(ctx, goods, w, h, standIn)
	}
	if !out.Proven {
		standIn()
		out.better(gather(ctx, goods, w, h, 2))
		out.better(<-spare)
	}
	cancel()
	out.Tree.rename(index)
	return out, nil
}

// better takes over another haul if it is worth more.
func (out *Haul) better(other Haul) {
	if other.Value > out.Value {
		out.Value, out.Tree = other.Value, other.Tree
		out.Proven = out.Value == out.Upper
	}
}

// checkGoods leaves out what does not fit or is not wanted, and gives the index
// of every good that is left.
func checkGoods(goods []Good, w, h int64, unlimited bool) (kept []Good, index []int, err error) {
	if w <= 0 || h <= 0 || w > mostSide || h > mostSide {
		return nil, nil, fmt.Errorf("rectangle of %d x %d: sides must be 1 to %d", w, h, mostSide)
	}
	for k, g := range goods {
		if g.W <= 0 || g.H <= 0 || g.Value < 0 || g.Value > 1<<31 || !unlimited && g.Count < 0 {
			return nil, nil, fmt.Errorf("piece %d: %d x %d, value %d, count %d", k, g.W, g.H, g.Value, g.Count)
		}
		most := 0
		if g.W <= w && g.H <= h {
			most = int(w / g.W * (h / g.H))
		}
		if g.Turns && g.H <= w && g.W <= h {
			most = max(most, int(w*h/(g.W*g.H)))
		}
		if unlimited {
			g.Count = most
		}
		if g.Count = min(g.Count, most); g.Count > 0 && g.Value > 0 {
			kept, index = append(kept, g), append(index, k)
		}
	}
	return kept, index, nil
}

func (s *Slice) rename(index []int) {
	if s == nil {
		return
	}
	if s.Good >= 0 {
		s.Good = index[s.Good]
	}
	s.A.rename(index)
	s.B.rename(index)
}

// areaBound is what the rectangle is worth at the value of the dearest area.
func areaBound(goods []Good, w, h int64) int64 {
	d := dearest(goods)
	return int64(float64(d.Value)*float64(w)*float64(h)/float64(d.W*d.H)) + 1
}

func exactUnlimited(ctx context.Context, goods []Good, w, h int64, slow func()) Haul {
	t, ok := unbounded(ctx, goods, w, h, slow)
	if !ok {
		return Haul{Upper: areaBound(goods, w, h), Tree: &Slice{W: w, H: h, Good: -1}}
	}
	root := slabOf(0, 0, w, h)
	t.lay(goods, root)
	return Haul{Value: t.value(w, h), Upper: t.value(w, h), Proven: true, Tree: sliceOf(root)}
}

// lay cuts slab s as the table says.
func (t *table) lay(goods []Good, s *slab) {
	if s == nil {
		return
	}
	i, j := t.x.down[s.w], t.y.down[s.h]
	if i < 0 || j < 0 || t.rows[j][s.w] == 0 {
		return
	}
	if k, turned, ok := t.single(goods, s); ok {
		w, h := goods[k].W, goods[k].H
		if turned {
			w, h = h, w
		}
		s.place(int32(k), turned, w, h)
		return
	}
	axis, at := t.split(int(i), int(j))
	a, b := s.divide(axis, at, 0)
	t.lay(goods, a)
	t.lay(goods, b)
}

// single returns a piece that fits slab s and is worth all of it.
func (t *table) single(goods []Good, s *slab) (k int, turned, ok bool) {
	v := t.value(s.w, s.h)
	for k, g := range goods {
		if g.Value != v {
			continue
		}
		if g.W <= s.w && g.H <= s.h {
			return k, false, true
		}
		if g.Turns && g.H <= s.w && g.W <= s.h {
			return k, true, true
		}
	}
	return 0, false, false
}

// place puts a piece of w x h in the corner of s and cuts off the rest.
func (s *slab) place(k int32, turned bool, w, h int64) {
	if s.w > w {
		s, _ = s.divide(DivideX, w, 0)
	}
	if s.h > h {
		s, _ = s.divide(DivideY, h, 0)
	}
	s.kind, s.piece, s.turned = KindPiece, k, turned
}

// split returns a cut of cell (i,j) that keeps its value.
func (t *table) split(i, j int) (Axis, int64) {
	row, col, x, y := t.rows[j], t.cols[i], t.x.at[i], t.y.at[j]
	for _, at := range t.x.at[:i] {
		if row[at]+row[x-at] == row[x] {
			return DivideX, at
		}
	}
	for _, at := range t.y.at[:j] {
		if col[at]+col[y-at] == col[y] {
			return DivideY, at
		}
	}
	panic("saw: a cell of the table has no cut")
}

// firstBuilds is how many builds are made before prices are sought. Chosen.
const firstBuilds = 20_000

// quickCells is how large a table is expected to be filled soon. Chosen.
const quickCells = 500_000

// exactLimited calls slow where it will not end soon. It searches builds under the plain bound, and where that does not
// end soon, under the bound with prices.
func exactLimited(ctx context.Context, goods []Good, w, h int64, slow func()) Haul {
	out := Haul{Upper: areaBound(goods, w, h), Tree: &Slice{W: w, H: h, Good: -1}}
	t := newTable(goods, w, h, false)
	if t == nil {
		return out
	}
	if len(t.x.at)*len(t.y.at) > quickCells {
		slow()
	}
	if !t.fill(ctx) {
		return out
	}
	out.Upper = t.value(w, h)
	rest, ok := newRest(ctx, t)
	if !ok {
		return out
	}
	b := newBuilder(goods, w, h, rest)
	b.limit = firstBuilds
	out.Proven = b.run(ctx)
	out.take(b)
	if out.Proven {
		out.Upper = out.Value
		return out
	}
	slow()
	out.priced(ctx, goods, w, h)
	return out
}

// take keeps what the builder found if it is better.
func (out *Haul) take(b *builder) {
	if b.bestAt < 0 || b.best/b.scale <= out.Value {
		return
	}
	root := slabOf(0, 0, b.w, b.h)
	b.lay(root, b.bestAt)
	out.Value, out.Tree = b.best/b.scale, sliceOf(root)
}

func (out *Haul) priced(ctx context.Context, goods []Good, w, h int64) {
	p := pricing{goods: goods, w: w, h: h, value: out.Value}
	p.seek(ctx)
	if p.tree != nil {
		out.Value, out.Tree = p.value, sliceOf(p.tree)
	}
	out.Upper = min(out.Upper, p.upper/priceScale)
	if out.Upper <= out.Value {
		out.Proven = true
		return
	}
	reduced, paid := charged(goods, p.best)
	t := newTable(reduced, w, h, false)
	if !t.fill(ctx) {
		return
	}
	rest, ok := newRest(ctx, t)
	if !ok {
		return
	}
	b := newBuilder(goods, w, h, rest)
	b.scale, b.paid, b.best = priceScale, paid, out.Value*priceScale
	for k := range reduced {
		b.gains[k] = reduced[k].Value
	}
	out.Proven = b.run(ctx)
	out.take(b)
	if out.Proven {
		out.Upper = out.Value
	}
}

// lay cuts slab s into build i, the rest is waste.
func (b *builder) lay(s *slab, i int32) {
	x := &b.builds[i]
	if s.w > x.w {
		s, _ = s.divide(DivideX, x.w, 0)
	}
	if s.h > x.h {
		s, _ = s.divide(DivideY, x.h, 0)
	}
	if x.a < 0 {
		s.kind, s.piece, s.turned = KindPiece, x.good, x.turned
		return
	}
	axis, at := DivideX, b.builds[x.a].w
	if x.join == joinY {
		axis, at = DivideY, b.builds[x.a].h
	}
	p, q := s.divide(axis, at, 0)
	b.lay(p, x.a)
	b.lay(q, x.b)
}
