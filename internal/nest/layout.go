package nest

import (
	"fmt"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// shorten searches the sheet least filled for the shortest used length; it becomes the last.
func (s *solver) shorten() {
	if len(s.bins) == 0 {
		return
	}
	last := s.sparest()
	s.bins = append(slices.DeleteFunc(s.bins, func(b *bin) bool { return b == last }), last)
	s.renumber()
	if !s.goesOn(1) || len(last.things) < 2 {
		return
	}
	b := s.restore(last)
	b.length = b.reach()
	begun := s.done()
	r := newRace(b, s.rnd.next(), max(1, s.p.Iterations-s.sought))
	r.threads = s.p.Threads
	if spent := s.p.Spent; spent != nil {
		r.spent = func() float64 { return (spent() - begun) / (1 - begun) }
	}
	if s.p.Progress != nil {
		r.told = func(done, length float64) {
			s.p.Progress(Progress{begun + (1-begun)*done, len(s.bins), length})
		}
	}
	last.spread = r.run(s.ctx)
}

// layout reads the bins out. A thing that a check finds at fault is not placed.
func (s *solver) layout(bad []Unplaced) Layout {
	out := Layout{Placements: []Placement{}, Sheets: []Opened{}, Unplaced: append([]Unplaced{}, bad...)}
	why := "the sheets at hand are full"
	if s.ctx.Err() != nil {
		why = "the work was stopped before a place was found"
	}
	for _, t := range s.left {
		out.Unplaced = append(out.Unplaced, Unplaced{t.piece, why})
	}
	for _, b := range s.bins {
		s.read(b, &out)
	}
	slices.SortFunc(out.Placements, func(a, b Placement) int { return a.Piece - b.Piece })
	slices.SortFunc(out.Unplaced, func(a, b Unplaced) int { return a.Piece - b.Piece })
	return out
}

func (s *solver) read(b *bin, out *Layout) {
	b.spread.snap()
	faults := s.faults(b)
	used := 0.0
	for i, t := range b.things {
		if faults[i] {
			out.Unplaced = append(out.Unplaced, Unplaced{t.piece, "no place free of overlap was found"})
			continue
		}
		p := placement(t, b.spread, i)
		p.Sheet = len(out.Sheets)
		p.XMM, p.YMM = onGrid(p.XMM+s.stock[b.kind].corner.X), onGrid(p.YMM+s.stock[b.kind].corner.Y)
		out.Placements = append(out.Placements, p)
		used = math.Max(used, b.spread.x[i]+s.cat.shapes[t.poses[b.spread.pose[i]].shape].width)
	}
	out.Sheets = append(out.Sheets, s.opened(b, used))
}

// opened tells of a sheet used up to a length of its usable box.
func (s *solver) opened(b *bin, used float64) Opened {
	sheet := s.p.Sheets[b.kind]
	box := sheet.Outline.Box()
	end := s.stock[b.kind].corner.X + used
	o := Opened{Sheet: b.kind, Number: b.number, UsedMM: end - box.Min.X, Rest: geom.Region{}}
	if from := end + s.p.SpacingMM; from < box.Max.X-geom.Grid {
		if rest := geom.Intersect(sheet.Outline, geom.Rect(from, box.Min.Y-1, box.Max.X+1, box.Max.Y+1).Region()); len(rest) > 0 {
			o.Rest = rest
			o.RestName = fmt.Sprintf("rest of %s %d", sheet.Name, b.number)
		}
	}
	return o
}

func onGrid(x float64) float64 { return math.Round(x/geom.Grid) * geom.Grid }

// snap puts places on the grid.
func (s spread) snap() {
	for i := range s.x {
		s.x[i], s.y[i] = onGrid(s.x[i]), onGrid(s.y[i])
	}
}
