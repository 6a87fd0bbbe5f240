package saw

import "cmp"

// newShop checks the problem and takes what can be used of it; the rest stands
// in the reasons.
func newShop(p SheetProblem) (*shop, []Missing, []Reason) {
	var reasons []Reason
	bad := func(field string, x, lo, hi float64) bool {
		if finite(x) && x >= lo && x <= hi {
			return false
		}
		reasons = append(reasons, Reason{Fault: BadNumber, Remedy: Correct, Field: field, Got: shown(x)})
		return true
	}
	if bad("kerf", p.KerfMM, 0, 50) {
		p.KerfMM = 0
	}
	if bad("smallest offcut length", p.SmallestOffcut.LengthMM, 0, mostMM) || bad("smallest offcut width", p.SmallestOffcut.WidthMM, 0, mostMM) {
		p.SmallestOffcut = Size{}
	}
	if bad("narrowest strip", p.NarrowestStripMM, 0, mostMM) {
		p.NarrowestStripMM = 0
	}
	s := &shop{p: p, kerf: ticks(p.KerfMM), rounds: cmp.Or(max(p.Effort.Rounds, 0), DefaultRounds), seed: p.Effort.Seed}
	reasons = append(reasons, s.takeStock()...)
	missing, more := s.takePieces()
	s.sets, s.trials = mostSets, dummyTrials
	if n := len(s.items); n > calmItems {
		s.rounds = max(s.rounds*calmItems/n, 20)
		s.sets, s.trials = max(mostSets*calmItems/n, 4), max(dummyTrials*calmItems/n, 4)
	}
	return s, missing, append(reasons, more...)
}

func shown(x float64) float64 {
	if finite(x) {
		return x
	}
	return 0
}

// takeStock keeps the sheets that can be cut.
func (s *shop) takeStock() []Reason {
	var out []Reason
	units := 0
	for i := range s.p.Stock {
		in := &s.p.Stock[i]
		if r, ok := badSheet(in); !ok {
			out = append(out, r)
			continue
		}
		k := newStockKind(i, in, s.kerf)
		if len(k.ways) == 0 {
			out = append(out, Reason{Fault: TrimEats, Remedy: LessTrim, Stock: in.Name, ShortMM: trimShort(in)})
			continue
		}
		if k.owned {
			k.count = min(k.count, max(Limit-units, 0))
			units += k.count
		}
		s.stock = append(s.stock, k)
	}
	if len(s.stock) == 0 && len(s.p.Pieces) > 0 {
		out = append(out, Reason{Fault: NoStock, Remedy: Buy})
	}
	return out
}

// trimShort is by how much the trim exceeds a side of the sheet.
func trimShort(s *Sheet) float64 {
	return max(s.Trim.X0MM+s.Trim.X1MM-s.LengthMM, s.Trim.Y0MM+s.Trim.Y1MM-s.WidthMM, 0)
}

func badSheet(in *Sheet) (Reason, bool) {
	numbers := []struct {
		field      string
		x, lo, hi  float64
		openAtZero bool
	}{
		{"length", in.LengthMM, 0, mostMM, true}, {"width", in.WidthMM, 0, mostMM, true}, {"price", in.Price, 0, 1e9, false},
		{"trim", in.Trim.X0MM, 0, mostMM, false}, {"trim", in.Trim.X1MM, 0, mostMM, false},
		{"trim", in.Trim.Y0MM, 0, mostMM, false}, {"trim", in.Trim.Y1MM, 0, mostMM, false},
	}
	for _, z := range in.Zones {
		for _, x := range []float64{z.XMM, z.YMM, z.LengthMM, z.WidthMM} {
			numbers = append(numbers, struct {
				field      string
				x, lo, hi  float64
				openAtZero bool
			}{"zone", x, -mostMM, mostMM, false})
		}
	}
	for _, n := range numbers {
		if !finite(n.x) || n.x < n.lo || n.x > n.hi || n.openAtZero && n.x == 0 {
			return Reason{Fault: BadStock, Remedy: Correct, Stock: in.Name, Field: n.field, Got: shown(n.x)}, false
		}
	}
	if in.Count <= 0 && !in.Unlimited {
		return Reason{Fault: BadStock, Remedy: Correct, Stock: in.Name, Field: "count", Got: float64(in.Count)}, false
	}
	return Reason{}, true
}

// takePieces keeps the pieces that fit somewhere.
func (s *shop) takePieces() ([]Missing, []Reason) {
	var missing []Missing
	var out []Reason
	for i := range s.p.Pieces {
		in := &s.p.Pieces[i]
		n := max(in.Count, 0)
		r, ok := s.checkPiece(in)
		if ok && len(s.items)+n > Limit {
			r, ok = Reason{Fault: TooMany, Remedy: Divide, Parts: Limit}, false
		}
		if !ok {
			r.Piece = in.Name
			if len(s.stock) > 0 || r.Fault == BadNumber {
				out = append(out, r)
			}
			missing = append(missing, Missing{Piece: i, Name: in.Name, Count: n})
			continue
		}
		if r.Fault != "" {
			r.Piece = in.Name
			out = append(out, r)
		}
		for range n {
			t := s.itemOf(in)
			t.kind = int32(i)
			s.items = append(s.items, t)
			s.owner = append(s.owner, i)
		}
	}
	return missing, out
}

func (s *shop) itemOf(in *Piece) item {
	t := item{w: ticks(in.LengthMM) + s.kerf, h: ticks(in.WidthMM) + s.kerf, turns: in.Turn == Either || in.Turn == ""}
	if in.Turn == Across {
		t.w, t.h = t.h, t.w
	}
	return t
}

// checkPiece returns why a piece cannot be placed anywhere, or what to mind.
func (s *shop) checkPiece(in *Piece) (Reason, bool) {
	for _, n := range []struct {
		field string
		x     float64
	}{{"length", in.LengthMM}, {"width", in.WidthMM}} {
		if !finite(n.x) || n.x <= 0 || n.x > mostMM {
			return Reason{Fault: BadNumber, Remedy: Correct, Field: n.field, Got: shown(n.x)}, false
		}
	}
	if in.Count <= 0 {
		return Reason{Fault: BadNumber, Remedy: Correct, Field: "count", Got: float64(in.Count)}, false
	}
	for _, b := range in.Bevels {
		if !finite(b.TiltDeg) || b.TiltDeg < 0 || b.TiltDeg > 60 {
			return Reason{Fault: BadNumber, Remedy: Correct, Field: "tilt", Got: shown(b.TiltDeg)}, false
		}
	}
	switch in.Turn {
	case "", Either, Along, Across:
	default:
		return Reason{Fault: BadNumber, Remedy: Correct, Field: "turn"}, false
	}
	t := s.itemOf(in)
	for k := range s.stock {
		if s.stock[k].holds(&t, s.kerf) {
			if narrow := min(in.LengthMM, in.WidthMM); narrow < s.p.NarrowestStripMM {
				return Reason{Fault: TooNarrow, Remedy: Hold, Got: narrow, LimitMM: s.p.NarrowestStripMM, Placed: true}, true
			}
			return Reason{}, true
		}
	}
	return s.nearest(in, &t), false
}

// nearest says what keeps a piece off every sheet and the nearest way out.
func (s *shop) nearest(in *Piece, t *item) Reason {
	turned := *t
	turned.turns = true
	size := Reason{LengthMM: max(in.LengthMM, in.WidthMM), WidthMM: min(in.LengthMM, in.WidthMM)}
	if t.turns {
		size.LengthMM, size.WidthMM = in.LengthMM, in.WidthMM
	}
	for k := range s.stock {
		if s.stock[k].holds(&turned, s.kerf) {
			return Reason{Fault: NeedsTurn, Remedy: TurnPiece, Stock: s.name(k), LengthMM: size.LengthMM, WidthMM: size.WidthMM}
		}
	}
	for k := range s.stock {
		bare := s.p.Stock[s.stock[k].index]
		bare.Zones = nil
		if kind := newStockKind(0, &bare, s.kerf); kind.holds(t, s.kerf) {
			return Reason{Fault: ZoneInWay, Remedy: Join, Stock: s.name(k), Parts: 2, LengthMM: size.LengthMM, WidthMM: size.WidthMM}
		}
	}
	best := Reason{}
	for k := range s.stock {
		bare := s.p.Stock[s.stock[k].index]
		short := s.short(in, &bare)
		bare.Zones, bare.Trim = nil, Trim{}
		if kind := newStockKind(0, &bare, s.kerf); kind.holds(t, s.kerf) && (best.Fault == "" || short < best.ShortMM) {
			best = Reason{Fault: TrimEats, Remedy: LessTrim, Stock: s.name(k), ShortMM: short, LengthMM: size.LengthMM, WidthMM: size.WidthMM}
		}
	}
	if best.Fault != "" {
		return best
	}
	return s.tooLarge(in, size)
}

func (s *shop) name(k int) string { return s.p.Stock[s.stock[k].index].Name }

// short returns by how much a piece exceeds the trimmed sheet along the worse
// side, in the better of its allowed turns, mm.
func (s *shop) short(in *Piece, sheet *Sheet) float64 {
	l, w := sheet.LengthMM-sheet.Trim.X0MM-sheet.Trim.X1MM, sheet.WidthMM-sheet.Trim.Y0MM-sheet.Trim.Y1MM
	along := max(in.LengthMM-l, in.WidthMM-w)
	across := max(in.LengthMM-w, in.WidthMM-l)
	switch in.Turn {
	case Along:
		return along
	case Across:
		return across
	}
	return min(along, across)
}

// tooLarge counts the parts that a piece could be joined from on the sheet where
// they are fewest.
func (s *shop) tooLarge(in *Piece, r Reason) Reason {
	r.Fault, r.Remedy = TooLarge, Buy
	for k := range s.stock {
		sheet := &s.p.Stock[s.stock[k].index]
		l, w := sheet.LengthMM-sheet.Trim.X0MM-sheet.Trim.X1MM, sheet.WidthMM-sheet.Trim.Y0MM-sheet.Trim.Y1MM
		if l <= 0 || w <= 0 {
			continue
		}
		n := joints(in.LengthMM, l) * joints(in.WidthMM, w)
		if in.Turn == Across || in.Turn != Along && joints(in.LengthMM, w)*joints(in.WidthMM, l) < n {
			n = joints(in.LengthMM, w) * joints(in.WidthMM, l)
		}
		if r.Parts == 0 || n < r.Parts {
			r.Remedy, r.Parts, r.Stock, r.ShortMM = Join, n, sheet.Name, s.short(in, sheet)
		}
	}
	return r
}

func joints(size, most float64) int { return roundUp(size / most) }
