package cutlist

import (
	"context"
	"slices"

	"pourwright/internal/finding"
	"pourwright/internal/saw"
	"pourwright/internal/units"
)

// Compute plans the cuts of one board. What cannot be cut is said; the rest is
// planned. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	r := Empty()
	r.Board, r.Kerf, r.Trim, r.Narrowest = in.Board, in.Kerf, in.Trim, in.Narrowest
	if len(in.Parts) == 0 {
		r.Remains = untouched(in.Stock, nil)
		return r, nil
	}
	p := problem(in)
	plan := saw.Sheets(context.Background(), p)
	r.Cuts, r.Settings, r.Offcuts, r.Bought = plan.Cuts, plan.Settings, plan.Offcuts, plan.Bought
	r.AtLeast, r.Proven, r.Unplaced, r.Reasons = plan.LowerPrice, plan.Proven, plan.Unplaced, plan.Reasons
	for _, b := range plan.Bought {
		r.Buy += b.Count
	}
	used := map[int]int{}
	for _, s := range plan.Sheets {
		r.Sheets = append(r.Sheets, flat(s, in.Kerf))
		if s.Owned {
			used[s.Stock]++
		}
	}
	r.Remains = append(untouched(in.Stock, used), kept(plan.Offcuts)...)
	return r, sentences(plan.Reasons, in.Field, float64(in.Kerf), float64(in.Trim), "sheet")
}

// problem puts the owned boards first, then the sheet that can be bought.
func problem(in Input) saw.SheetProblem {
	p := saw.SheetProblem{KerfMM: in.Kerf.MM(), NarrowestStripMM: in.Narrowest.MM(),
		SmallestOffcut: saw.Size{LengthMM: in.SmallestX.MM(), WidthMM: in.SmallestY.MM()}}
	for _, x := range in.Parts {
		turn := saw.Either
		if x.Grain {
			turn = saw.Along
		}
		p.Pieces = append(p.Pieces, saw.Piece{Name: x.Name, LengthMM: x.Length.MM(), WidthMM: x.Width.MM(), Count: x.Count, Turn: turn, Bevels: x.Bevels})
	}
	trim := saw.TrimAll(in.Trim.MM())
	for _, s := range in.Stock {
		sheet := saw.Sheet{Name: s.Name, LengthMM: s.Length.MM(), WidthMM: s.Width.MM(), Count: s.Count, Owned: true, Trim: trim}
		for _, m := range s.Marks {
			sheet.Zones = append(sheet.Zones, saw.Zone{XMM: m.X.MM(), YMM: m.Y.MM(), LengthMM: m.Length.MM(), WidthMM: m.Width.MM(), Why: m.Why})
		}
		p.Stock = append(p.Stock, sheet)
	}
	if in.SheetX != 0 || in.SheetY != 0 {
		p.Stock = append(p.Stock, saw.Sheet{Name: in.Board, LengthMM: in.SheetX.MM(), WidthMM: in.SheetY.MM(), Unlimited: true, Price: in.Price, Trim: trim})
	}
	return p
}

// flat lays the tree of a sheet out into rectangles and lines.
func flat(s saw.CutSheet, kerf units.Length) Sheet {
	out := Sheet{ID: s.ID, Name: s.Name, Owned: s.Owned, SizeX: units.Length(s.LengthMM), SizeY: units.Length(s.WidthMM), Used: s.Used,
		Placements: []Placement{}, Offcuts: []Placement{}, Zones: []saw.Zone{}, Lines: []Line{}}
	out.Zones = append(out.Zones, s.Zones...)
	out.walk(s.Tree, kerf)
	slices.SortFunc(out.Lines, func(a, b Line) int { return a.Cut - b.Cut })
	return out
}

func (s *Sheet) walk(n *saw.Node, kerf units.Length) {
	if n == nil {
		return
	}
	x, y, l, w := units.Length(n.XMM), units.Length(n.YMM), units.Length(n.LengthMM), units.Length(n.WidthMM)
	switch n.Kind {
	case saw.KindPiece:
		s.Placements = append(s.Placements, Placement{n.Name, x, y, l, w, n.Turned})
	case saw.KindOffcut:
		s.Offcuts = append(s.Offcuts, Placement{Part: n.Name, X: x, Y: y, SizeX: l, SizeY: w})
	case saw.KindCut:
		at := units.Length(n.AtMM) + kerf/2
		if n.Axis == saw.DivideX {
			s.Lines = append(s.Lines, Line{n.Cut, x + at, y, x + at, y + w})
		} else {
			s.Lines = append(s.Lines, Line{n.Cut, x, y + at, x + l, y + at})
		}
		s.walk(n.A, kerf)
		s.walk(n.B, kerf)
	}
}

// untouched lists the owned stock that no part is cut from.
func untouched(stock []Stock, used map[int]int) []Remain {
	out := []Remain{}
	for i, s := range stock {
		if n := s.Count - used[i]; n > 0 && s.Length > 0 {
			out = append(out, Remain{Name: s.Name, Length: s.Length, Width: s.Width, Count: n})
		}
	}
	return out
}

func kept(offcuts []saw.Offcut) []Remain {
	var out []Remain
	for _, o := range offcuts {
		out = append(out, Remain{Name: o.Name, Length: units.Length(o.LengthMM), Width: units.Length(o.WidthMM), Count: 1, New: true})
	}
	return out
}

// ComputeBars plans the cuts of one kind of bar. A piece is never joined across bars.
func ComputeBars(in Bars) (BarResult, []finding.Finding) {
	r := BarResult{Bar: in.Bar, Kerf: in.Kerf, Trim: in.Trim, Bars: []saw.CutBar{}, Offcuts: []saw.Offcut{}, Remains: untouched(in.Stock, nil),
		Bought: []saw.Purchase{}, Proven: true, Unplaced: []saw.Missing{}, Reasons: []saw.Reason{}}
	if len(in.Parts) == 0 {
		return r, nil
	}
	p := saw.BarProblem{KerfMM: in.Kerf.MM(), SmallestOffcutMM: in.Smallest.MM(), ShortestHeldMM: in.Shortest.MM()}
	for _, x := range in.Parts {
		p.Pieces = append(p.Pieces, saw.BarPiece{Name: x.Name, LengthMM: x.Length.MM(), Count: x.Count})
	}
	for _, s := range in.Stock {
		p.Stock = append(p.Stock, saw.Bar{Name: s.Name, LengthMM: s.Length.MM(), Count: s.Count, Owned: true, TrimMM: in.Trim.MM()})
	}
	if in.Length != 0 {
		p.Stock = append(p.Stock, saw.Bar{Name: in.Bar, LengthMM: in.Length.MM(), Unlimited: true, Price: in.Price, TrimMM: in.Trim.MM()})
	}
	plan := saw.Bars(context.Background(), p)
	r.Bars, r.Offcuts, r.Bought, r.Proven, r.Unplaced, r.Reasons = plan.Bars, plan.Offcuts, plan.Bought, plan.Proven, plan.Unplaced, plan.Reasons
	used := map[int]int{}
	for _, b := range plan.Bars {
		if b.Owned {
			used[b.Stock]++
		}
	}
	for _, b := range plan.Bought {
		r.Buy += b.Count
	}
	r.Remains = append(untouched(in.Stock, used), kept(plan.Offcuts)...)
	return r, sentences(plan.Reasons, in.Field, float64(in.Kerf), float64(in.Trim), "bar")
}
