package cutlist

import (
	"math"
	"testing"

	"pourwright/internal/units"
)

func codes(in Input) []string {
	_, found := Compute(in)
	out := []string{}
	for _, f := range found {
		out = append(out, f.Code)
	}
	return out
}

// TestTwoKerfs: three strips of 200 mm fill a board of 606 mm with two kerfs of 3 mm,
// and not with two of 3.2 mm, though their widths alone leave 6 mm.
func TestTwoKerfs(t *testing.T) {
	in := Input{Board: "strip", Parts: []Part{{Name: "strip", Length: 1000, Width: 200, Count: 3}},
		Stock: []Stock{{Name: "offcut", Length: 1000, Width: 606, Count: 1}}, Kerf: 3}
	r, found := Compute(in)
	if len(found) != 0 || len(r.Sheets) != 1 || len(r.Sheets[0].Placements) != 3 || len(r.Cuts) != 2 {
		t.Errorf("kerf 3: %v, %+v", found, r.Sheets)
	}
	in.Kerf = 3.2
	r, found = Compute(in)
	if len(r.Unplaced) != 1 || r.Unplaced[0].Count != 1 || len(found) != 1 || found[0].Code != "cutlist/kerf" || found[0].Remedy != "Use a blade of 3.0 mm or thinner." {
		t.Errorf("kerf 3.2: %+v, %v", r.Unplaced, found)
	}
	if len(r.Sheets[0].Placements) != 2 {
		t.Error("the other strips are lost")
	}
}

func TestBadInput(t *testing.T) {
	base := func(change func(*Input)) Input {
		in := Input{Board: "board", SheetX: 2800, SheetY: 2070, Parts: []Part{{Name: "side", Length: 1256.4, Width: 448.2, Count: 2}}, Kerf: 3.2, Trim: 10, Narrowest: 40}
		change(&in)
		return in
	}
	for _, c := range []struct {
		name, code string
		in         Input
	}{
		{"too large", "cutlist/no-stock", base(func(in *Input) { in.Parts[0].Length = 3000 })},
		{"no stock", "cutlist/no-stock", base(func(in *Input) { in.SheetX, in.SheetY = 0, 0 })},
		{"trim eats", "cutlist/trim", base(func(in *Input) { in.Parts[0].Length = 2790 })},
		{"across the grain", "cutlist/turn", base(func(in *Input) { in.Parts[0] = Part{Name: "side", Length: 1000, Width: 2500, Count: 1, Grain: true} })},
		{"stock of none", "cutlist/bad-stock", base(func(in *Input) { in.Stock = []Stock{{Name: "ghost", Length: 500, Width: 500, Count: 0}} })},
		{"stock below zero", "cutlist/bad-stock", base(func(in *Input) { in.Stock = []Stock{{Name: "ghost", Length: -500, Width: 500, Count: 1}} })},
		{"part of no size", "cutlist/bad-part", base(func(in *Input) { in.Parts[0].Width = units.Length(math.NaN()) })},
		{"narrow", "cutlist/hold", base(func(in *Input) { in.Parts = append(in.Parts, Part{Name: "lath", Length: 200, Width: 20, Count: 1}) })},
		{"all marked", "cutlist/zone", base(func(in *Input) {
			in.SheetX, in.SheetY = 0, 0
			in.Stock = []Stock{{Name: "old", Length: 1300, Width: 1000, Count: 2, Marks: []Mark{{X: 600, Y: 0, Length: 20, Width: 1000, Why: "screw holes"}}}}
		})},
	} {
		got := codes(c.in)
		if len(got) == 0 || got[0] != c.code {
			t.Errorf("%s: want %s, got %v", c.name, c.code, got)
		}
	}
}

// TestRemains: owned stock comes before bought sheets, and what is left has a name.
func TestRemains(t *testing.T) {
	r, _ := Compute(Input{Board: "board", SheetX: 2800, SheetY: 2070, Kerf: 3.2, Parts: []Part{{Name: "base", Length: 1220, Width: 410, Count: 1}},
		Stock: []Stock{{Name: "half a sheet", Length: 1400, Width: 1000, Count: 2}}})
	if r.Buy != 0 || len(r.Sheets) != 1 || !r.Sheets[0].Owned {
		t.Fatalf("bought although owned stock holds it: %+v", r)
	}
	whole, new := 0, 0
	for _, x := range r.Remains {
		if x.New {
			new++
		} else {
			whole += x.Count
		}
	}
	if whole != 1 || new == 0 || new != len(r.Offcuts) {
		t.Errorf("remains %+v", r.Remains)
	}
}

// TestBars: eleven lengths of 545 mm and ten kerfs of 1 mm are 6005 mm, so that a bar
// of 6 m gives ten; no piece is made of two rests.
func TestBars(t *testing.T) {
	r, found := ComputeBars(Bars{Bar: "tube", Length: 6000, Kerf: 1, Parts: []Part{{Name: "support", Length: 545, Count: 11}}})
	if len(found) != 1 || found[0].Code != "cutlist/kerf-costs" || r.Buy != 2 || len(r.Bars) != 2 {
		t.Errorf("%v, %+v", found, r)
	}
	long, found := ComputeBars(Bars{Bar: "tube", Length: 6000, Kerf: 1, Parts: []Part{{Name: "rail", Length: 6500, Count: 1}, {Name: "support", Length: 500, Count: 2}}})
	if len(found) != 1 || found[0].Code != "cutlist/no-stock" || len(long.Bars) != 1 || len(long.Bars[0].Pieces) != 2 {
		t.Errorf("%v, %+v", found, long)
	}
}
