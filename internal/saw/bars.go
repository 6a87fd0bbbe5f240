package saw

import (
	"cmp"
	"context"
	"fmt"
	"slices"
)

// A BarPiece is a length wanted Count times, each end cut square or at an angle.
// LengthMM is measured between the long points.
type BarPiece struct {
	Name     string  `json:"name"`
	LengthMM float64 `json:"length_mm"`
	Count    int     `json:"count"`
}

// A Bar is a length of stock.
type Bar struct {
	Name      string  `json:"name"`
	LengthMM  float64 `json:"length_mm"`
	Count     int     `json:"count"`
	Unlimited bool    `json:"unlimited"`
	Owned     bool    `json:"owned"`
	Price     float64 `json:"price"`   // of one; a bought bar of price 0 counts as 1 bar
	TrimMM    float64 `json:"trim_mm"` // lost at each end, kerf included
}

// A BarProblem asks for lengths of one section.
type BarProblem struct {
	Pieces           []BarPiece
	Stock            []Bar
	KerfMM           float64
	SmallestOffcutMM float64 // a remainder under this is waste
	ShortestHeldMM   float64 // what can still be clamped
	Effort           Effort
}

// A BarCut is one cut, AtMM from the bar's left end to the left of the kerf.
type BarCut struct {
	Number int     `json:"number"`
	AtMM   float64 `json:"at_mm"`
	StopMM float64 `json:"stop_mm"` // length from the cut end to the stop
	Piece  int     `json:"piece"`   // -1 for a cut that cleans the end
	Name   string  `json:"name"`
}

// A CutBar is one bar with its cuts from the left.
type CutBar struct {
	ID       string   `json:"id"` // B1, B2 ...
	Stock    int      `json:"stock"`
	Name     string   `json:"name"`
	LengthMM float64  `json:"length_mm"`
	Owned    bool     `json:"owned"`
	Cuts     []BarCut `json:"cuts"`
	Pieces   []int    `json:"pieces"`           // from the left
	RestMM   float64  `json:"rest_mm"`          // left at the right end, trim included
	Offcut   string   `json:"offcut,omitempty"` // its name when it is kept
}

// A BarPlan is what to cut out of which bar.
type BarPlan struct {
	Bars       []CutBar   `json:"bars"`
	Offcuts    []Offcut   `json:"offcuts"` // WidthMM 0
	Bought     []Purchase `json:"bought"`
	Price      float64    `json:"price"`
	LowerPrice float64    `json:"lower_price"` // no plan can be cheaper
	Proven     bool       `json:"proven"`
	Unplaced   []Missing  `json:"unplaced"`
	Reasons    []Reason   `json:"reasons"`
}

// lineMM is the width given to bars and their pieces, so that bars are sheets on
// which nothing lies side by side.
const lineMM = 1

// sheets returns the problem of bars as one of sheets.
func (p *BarProblem) sheets() SheetProblem {
	out := SheetProblem{KerfMM: p.KerfMM, Effort: p.Effort, SmallestOffcut: Size{LengthMM: p.SmallestOffcutMM, WidthMM: lineMM}}
	if p.SmallestOffcutMM == 0 {
		out.SmallestOffcut.LengthMM = defaultOffcutMM
	}
	for _, in := range p.Pieces {
		out.Pieces = append(out.Pieces, Piece{Name: in.Name, LengthMM: in.LengthMM, WidthMM: lineMM, Count: in.Count, Turn: Along})
	}
	for _, b := range p.Stock {
		out.Stock = append(out.Stock, Sheet{Name: b.Name, LengthMM: b.LengthMM, WidthMM: lineMM, Count: b.Count, Unlimited: b.Unlimited,
			Owned: b.Owned, Price: b.Price, Trim: Trim{X0MM: b.TrimMM, X1MM: b.TrimMM}})
	}
	return out
}

// Bars plans the cutting of bars, on the terms of Sheets. The price is exact
// wherever Proven is true, which a search through all ways of filling the cheaper
// sets of bars shows for lists of common length.
func Bars(ctx context.Context, p BarProblem) BarPlan {
	plan := BarPlan{Bars: []CutBar{}, Offcuts: []Offcut{}, Bought: []Purchase{}, Unplaced: []Missing{}, Reasons: []Reason{}}
	s, missing, reasons := newShop(p.sheets())
	s.line = true
	plan.Unplaced = append(plan.Unplaced, missing...)
	var sheets SheetPlan
	sheets.Reasons = reasons
	if len(s.items) > 0 {
		d, lower := s.solve(ctx)
		plan.write(s, &d)
		s.bill(&d, &sheets)
		plan.LowerPrice = lower
		s.explain(ctx, &d, &sheets)
	}
	plan.Bought = append(plan.Bought, sheets.Bought...)
	plan.Price, plan.Proven = sheets.Price, plan.LowerPrice >= sheets.Price
	plan.Unplaced = append(plan.Unplaced, sheets.Unplaced...)
	for _, r := range sheets.Reasons {
		r.WidthMM = 0
		plan.Reasons = append(plan.Reasons, r)
	}
	for _, in := range p.Pieces {
		if finite(in.LengthMM) && in.LengthMM > 0 && in.LengthMM < p.ShortestHeldMM {
			plan.Reasons = append(plan.Reasons, Reason{Fault: TooNarrow, Remedy: Hold, Piece: in.Name, Got: in.LengthMM, LimitMM: p.ShortestHeldMM, Placed: true})
		}
	}
	return plan
}

// write lays the pieces of every bar from its left end, the longest first, so
// that a stop is moved as little as can be.
func (plan *BarPlan) write(s *shop, d *draft) {
	for u, tree := range d.trees {
		if tree == nil {
			continue
		}
		k := &s.stock[d.units[u].kind]
		in := &s.p.Stock[k.index]
		b := CutBar{ID: fmt.Sprintf("B%d", len(plan.Bars)+1), Stock: k.index, Name: in.Name, LengthMM: in.LengthMM, Owned: in.Owned}
		b.cut(s, tree)
		if s.useful(ticks(b.RestMM), ticks(lineMM)) {
			b.Offcut = b.ID + "-A"
			plan.Offcuts = append(plan.Offcuts, Offcut{Name: b.Offcut, Sheet: b.ID, LengthMM: b.RestMM})
		}
		plan.Bars = append(plan.Bars, b)
	}
}

// cut numbers the cuts of a bar. The last piece needs none where it ends with
// the bar.
func (b *CutBar) cut(s *shop, tree *slab) {
	var pieces []int32
	tree.walk(func(p *slab) {
		if p.kind == KindPiece {
			pieces = append(pieces, p.piece)
		}
	})
	slices.SortFunc(pieces, func(p, q int32) int {
		return cmp.Or(cmp.Compare(s.items[q].w, s.items[p].w), cmp.Compare(p, q))
	})
	end, at := ticks(b.LengthMM), int64(0)
	b.Cuts = []BarCut{}
	if trim := ticks(s.p.Stock[b.Stock].Trim.X0MM); trim > 0 {
		at = max(trim, s.kerf)
		b.Cuts = append(b.Cuts, BarCut{Number: 1, AtMM: mm(at - s.kerf), Piece: -1, Name: "clean end"})
	}
	for _, i := range pieces {
		size := s.items[i].w - s.kerf
		if at+size < end {
			in := &s.p.Pieces[s.owner[i]]
			b.Cuts = append(b.Cuts, BarCut{Number: len(b.Cuts) + 1, AtMM: mm(at + size), StopMM: mm(size), Piece: s.owner[i], Name: in.Name})
		}
		b.Pieces = append(b.Pieces, s.owner[i])
		at += size + s.kerf
	}
	b.RestMM = mm(max(end-at, 0))
}
