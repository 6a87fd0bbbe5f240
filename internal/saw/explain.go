package saw

import "context"

// bill adds up what is bought.
func (s *shop) bill(d *draft, plan *SheetPlan) {
	count := make([]int, len(s.stock))
	for u, x := range d.units {
		if d.trees[u] != nil && !s.stock[x.kind].owned {
			count[x.kind]++
		}
	}
	for k, n := range count {
		if n > 0 {
			price := float64(n) * s.stock[k].price
			plan.Bought = append(plan.Bought, Purchase{Stock: s.stock[k].index, Name: s.name(k), Count: n, Price: price})
			plan.Price += price
		}
	}
}

// explain says why pieces are left over, what cannot be held, and where a thinner
// kerf would save a sheet.
func (s *shop) explain(ctx context.Context, d *draft, plan *SheetPlan) {
	left := make([]int, len(s.p.Pieces))
	for _, i := range d.out {
		left[s.owner[i]]++
	}
	for _, c := range plan.Cuts {
		if c.CannotHold && c.Edge == "" {
			plan.Reasons = append(plan.Reasons, Reason{Fault: CutCannotBe, Remedy: Hold, Piece: c.Makes, Stock: c.Sheet, Got: c.FenceMM, LimitMM: s.p.NarrowestStripMM, Placed: true})
		}
	}
	kerf, helps := s.thinner(ctx, d)
	for i, n := range left {
		if n == 0 {
			continue
		}
		in := &s.p.Pieces[i]
		plan.Unplaced = append(plan.Unplaced, Missing{Piece: i, Name: in.Name, Count: n})
		r := Reason{Fault: OutOfStock, Remedy: BuyMore, Piece: in.Name, Parts: 1, LengthMM: in.LengthMM, WidthMM: in.WidthMM}
		if helps {
			r.Fault, r.Remedy, r.LimitMM = KerfEats, ThinnerKerf, kerf
		}
		t := s.itemOf(in)
		for k := range s.stock {
			if s.stock[k].holds(&t, s.kerf) {
				r.Stock = s.name(k)
				break
			}
		}
		plan.Reasons = append(plan.Reasons, r)
	}
	if helps && len(d.out) == 0 {
		plan.Reasons = append(plan.Reasons, Reason{Fault: KerfEats, Remedy: ThinnerKerf, LimitMM: kerf, Placed: true})
	}
}

// thinner returns the thickest kerf, to 0.1 mm, with which fewer pieces are left
// over or less must be bought.
func (s *shop) thinner(ctx context.Context, d *draft) (float64, bool) {
	if s.kerf == 0 || len(d.out) == 0 && d.price == 0 {
		return 0, false
	}
	better := func(kerfMM float64) bool {
		p := s.p
		p.KerfMM = kerfMM
		other, _, _ := newShop(p)
		other.rounds, other.sets, other.line = max(s.rounds/4, 1), max(s.sets/8, 1), s.line
		if len(other.items) != len(s.items) {
			return false
		}
		all, rest := other.everything(ctx)
		if len(rest) < len(d.out) {
			return true
		}
		if len(rest) > len(d.out) || !other.couldSave(d) {
			return false
		}
		next, _ := other.cheapest(ctx, all, other.without(rest))
		return next.price < d.price
	}
	if !better(0) {
		return 0, false
	}
	lo, hi := 0, int(s.p.KerfMM*10)
	for lo+1 < hi {
		if m := (lo + hi) / 2; better(float64(m) / 10) {
			lo = m
		} else {
			hi = m
		}
	}
	return float64(lo) / 10, true
}

// couldSave reports whether some cheaper set of sheets passes the bounds.
func (s *shop) couldSave(d *draft) bool {
	q, want := newSets(s, d.price), s.without(d.out)
	for range 2000 {
		set, price, ok := q.pop()
		if !ok || price >= d.price {
			return false
		}
		if s.possible(set, want) {
			return true
		}
	}
	return false
}
