package saw

import (
	"cmp"
	"context"
	"slices"
)

// A shop is a checked problem in ticks.
type shop struct {
	p      SheetProblem
	kerf   int64
	items  []item
	owner  []int // piece of every item
	stock  []stockKind
	rounds int
	seed   uint64
	sets   int  // of sheets tried
	trials int  // for a larger offcut
	line   bool // bars: nothing lies side by side
}

// A stockKind is a size of sheet with the ways to open it.
type stockKind struct {
	index int // in SheetProblem.Stock
	price float64
	count int // most that can be had
	owned bool
	ways  []*slab
	sizes [][]box // regions of every way, in order
	area  int64   // of the regions of the best way, kerf included
	whole float64 // area of the sheet, mm2
}

func newStockKind(index int, s *Sheet, kerf int64) stockKind {
	k := stockKind{index: index, price: s.Price, count: s.Count, owned: s.Owned, ways: openings(s, kerf), whole: s.LengthMM * s.WidthMM}
	switch {
	case s.Owned:
		k.price = 0
	case s.Price == 0:
		k.price = 1
	}
	if s.Unlimited {
		k.count = Limit
	}
	for _, way := range k.ways {
		var in []box
		area := int64(0)
		way.walk(func(p *slab) {
			if p.kind == "" {
				in = append(in, box{p.x, p.y, p.x + p.w, p.y + p.h})
				area += (p.w + kerf) * (p.h + kerf)
			}
		})
		k.sizes = append(k.sizes, in)
		k.area = max(k.area, area)
	}
	return k
}

// holds reports whether the item fits a region of one of the ways.
func (k *stockKind) holds(t *item, kerf int64) bool {
	for _, regions := range k.sizes {
		for _, b := range regions {
			w, h := b.x1-b.x0+kerf, b.y1-b.y0+kerf
			if t.w <= w && t.h <= h || t.turns && t.h <= w && t.w <= h {
				return true
			}
		}
	}
	return false
}

// A unit is one sheet taken in hand.
type unit struct{ kind, way int }

// A draft is a set of sheets with all that is cut from them.
type draft struct {
	units []unit
	trees []*slab // nil for a sheet left whole
	out   []int32 // items without a place
	verdict
}

// A verdict ranks drafts.
type verdict struct {
	price    float64
	unheld   int       // cuts that cannot be held
	left     []float64 // areas of what stays useful, largest first, mm2
	settings int
	cuts     int
}

// compare returns a negative number when v is better than o.
func (v verdict) compare(o verdict) int {
	if c := cmp.Compare(v.price, o.price); c != 0 {
		return c
	}
	if c := cmp.Compare(v.unheld, o.unheld); c != 0 {
		return c
	}
	if c := slices.Compare(o.left, v.left); c != 0 {
		return c
	}
	if c := cmp.Compare(v.settings, o.settings); c != 0 {
		return c
	}
	return cmp.Compare(v.cuts, o.cuts)
}

// regions returns empty regions for the units and where each belongs.
func (s *shop) regions(units []unit) (out []region, owner []int) {
	for u, x := range units {
		for _, b := range s.stock[x.kind].sizes[x.way] {
			out = append(out, newRegion(b.x1-b.x0+s.kerf, b.y1-b.y0+s.kerf))
			owner = append(owner, u)
		}
	}
	return out, owner
}

// attempt fills the units with the items that want names, with an extra item
// standing for an offcut where extra is not nil, and reports whether all fit.
func (s *shop) attempt(ctx context.Context, units []unit, want []int32, extra *item, rounds int, seed uint64) (*filler, bool) {
	regions, _ := s.regions(units)
	items := s.items
	if extra != nil {
		items = append(slices.Clone(items), *extra)
	}
	f := newFiller(items, regions, seed)
	f.out = append(f.out[:0], want...)
	if extra != nil {
		f.out = append(f.out, int32(len(s.items)))
	}
	f.recreate()
	f.forget()
	return f, f.anneal(ctx, f.schedule(rounds))
}

// schedule returns a cooling that suits the size of the items.
func (f *filler) schedule(rounds int) schedule {
	sum := 0.0
	for i := range f.items {
		sum += float64(f.items[i].area())
	}
	mean := sum / (float64(len(f.items)) * f.unit)
	return schedule{rounds, warm * mean, cold * mean}
}

// draw turns what a filler placed into trees of cuts and judges them.
func (s *shop) draw(units []unit, f *filler) draft {
	d := draft{units: units, trees: make([]*slab, len(units)), out: slices.Clone(f.out)}
	dummy := int32(len(s.items))
	d.out = slices.DeleteFunc(d.out, func(i int32) bool { return i == dummy })
	_, owner := s.regions(units)
	next := 0
	for u, x := range units {
		tree, used := s.stock[x.kind].ways[x.way].clone(), false
		for ; next < len(owner) && owner[next] == u; next++ {
			used = used || s.holdsPieces(&f.regions[next], dummy)
		}
		if !used {
			continue
		}
		first := next - len(s.stock[x.kind].sizes[x.way])
		tree.walk(func(p *slab) {
			switch p.kind {
			case "":
				l := newLayer(&f.regions[first+int(p.piece)], s.kerf, s.useful)
				l.dummy = dummy
				p.piece = -1
				l.fill(p)
			case KindWaste:
				p.piece = -1
			}
		})
		d.trees[u] = tree
	}
	s.judge(&d)
	return d
}

func (s *shop) holdsPieces(r *region, dummy int32) bool {
	return slices.ContainsFunc(r.parts, func(p part) bool { return p.join == leaf && p.item != dummy })
}

// useful reports whether a rectangle of ticks is worth keeping.
func (s *shop) useful(w, h int64) bool {
	long, short := max(s.p.SmallestOffcut.LengthMM, s.p.SmallestOffcut.WidthMM), min(s.p.SmallestOffcut.LengthMM, s.p.SmallestOffcut.WidthMM)
	if long <= 0 {
		long = defaultOffcutMM
	}
	if short <= 0 {
		short = min(long, defaultOffcutMM)
	}
	return max(w, h) >= ticks(long) && min(w, h) >= ticks(short)
}

// defaultOffcutMM is the smallest side of an offcut worth keeping where the
// problem does not say. Chosen.
const defaultOffcutMM = 100

func (s *shop) judge(d *draft) {
	d.verdict = verdict{}
	for u, x := range d.units {
		k := &s.stock[x.kind]
		if d.trees[u] == nil {
			if k.owned {
				d.left = append(d.left, k.whole)
			}
			continue
		}
		d.price += k.price
		d.trees[u].walk(func(p *slab) {
			switch p.kind {
			case KindOffcut:
				d.left = append(d.left, mm(p.w)*mm(p.h))
			case KindCut:
				d.cuts++
			}
		})
	}
	slices.SortFunc(d.left, func(a, b float64) int { return cmp.Compare(b, a) })
	order := s.order(d)
	d.settings = len(order.settings)
	d.unheld = order.unheld
}
