package saw

import (
	"context"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

const nearMM = 1e-3

func near(a, b float64) bool { return math.Abs(a-b) <= nearMM }

// checkSheets verifies a plan by its geometry alone, without the code that made
// it: cuts go edge to edge with their kerf, parts nest, pieces have their size and
// grain, stay off zones and trim, and are apart by a kerf.
func checkSheets(p SheetProblem, plan SheetPlan) error {
	placed := make([]int, len(p.Pieces))
	cuts := map[int]*Node{}
	used := map[int]int{}
	price := 0.0
	offcuts := map[string]bool{}
	for _, s := range plan.Sheets {
		in := p.Stock[s.Stock]
		used[s.Stock]++
		if !in.Owned {
			price += in.Price
			if in.Price == 0 {
				price++
			}
		}
		t := s.Tree
		if !near(t.XMM, 0) || !near(t.YMM, 0) || !near(t.LengthMM, in.LengthMM) || !near(t.WidthMM, in.WidthMM) {
			return fmt.Errorf("%s is not the sheet", s.ID)
		}
		var leaves []*Node
		if err := checkNode(t, p.KerfMM, cuts, &leaves); err != nil {
			return fmt.Errorf("%s: %w", s.ID, err)
		}
		pieces := 0
		for _, l := range leaves {
			switch l.Kind {
			case KindPiece:
				pieces++
				placed[l.Piece]++
				if err := checkPlace(p, in, l); err != nil {
					return fmt.Errorf("%s: %w", s.ID, err)
				}
			case KindOffcut:
				offcuts[l.Name] = true
				if zoneHit(in.Zones, l) {
					return fmt.Errorf("%s: offcut %s on a zone", s.ID, l.Name)
				}
			}
		}
		if pieces == 0 {
			return fmt.Errorf("%s was opened for nothing", s.ID)
		}
		if err := apart(leaves, p.KerfMM); err != nil {
			return fmt.Errorf("%s: %w", s.ID, err)
		}
	}
	for k, n := range used {
		if !p.Stock[k].Unlimited && n > p.Stock[k].Count {
			return fmt.Errorf("%d of %d sheets %q used", n, p.Stock[k].Count, p.Stock[k].Name)
		}
	}
	if !near(price, plan.Price) {
		return fmt.Errorf("price %v, bought %v", plan.Price, price)
	}
	if plan.LowerPrice > plan.Price+nearMM {
		return fmt.Errorf("lower price %v above price %v", plan.LowerPrice, plan.Price)
	}
	for _, m := range plan.Unplaced {
		placed[m.Piece] += m.Count
	}
	for i, n := range placed {
		if n != max(p.Pieces[i].Count, 0) {
			return fmt.Errorf("piece %d: %d placed or unplaced, %d wanted", i, n, p.Pieces[i].Count)
		}
	}
	if len(offcuts) != len(plan.Offcuts) {
		return fmt.Errorf("%d offcuts named, %d in the trees", len(plan.Offcuts), len(offcuts))
	}
	return checkOrder(p, plan, cuts)
}

func checkNode(n *Node, kerf float64, cuts map[int]*Node, leaves *[]*Node) error {
	if n.Kind != KindCut {
		if n.A != nil || n.B != nil {
			return fmt.Errorf("a %s is cut", n.Kind)
		}
		*leaves = append(*leaves, n)
		return nil
	}
	if n.A == nil && n.B == nil {
		return fmt.Errorf("cut %d leaves nothing", n.Cut)
	}
	if cuts[n.Cut] != nil || n.Cut == 0 {
		return fmt.Errorf("cut number %d twice or missing", n.Cut)
	}
	cuts[n.Cut] = n
	size := n.LengthMM
	if n.Axis == DivideY {
		size = n.WidthMM
	}
	if n.AtMM < -nearMM || n.AtMM > size-nearMM/2 {
		return fmt.Errorf("cut %d at %v of %v", n.Cut, n.AtMM, size)
	}
	want := func(m *Node, from, length float64) error {
		if m == nil {
			if length > nearMM {
				return fmt.Errorf("cut %d loses %v mm", n.Cut, length)
			}
			return nil
		}
		x, y, l, w := n.XMM+from, n.YMM, length, n.WidthMM
		if n.Axis == DivideY {
			x, y, l, w = n.XMM, n.YMM+from, n.LengthMM, length
		}
		if !near(m.XMM, x) || !near(m.YMM, y) || !near(m.LengthMM, l) || !near(m.WidthMM, w) {
			return fmt.Errorf("cut %d: a half is not where the cut leaves it", n.Cut)
		}
		return checkNode(m, kerf, cuts, leaves)
	}
	if err := want(n.A, 0, n.AtMM); err != nil {
		return err
	}
	return want(n.B, n.AtMM+kerf, size-n.AtMM-kerf)
}

func checkPlace(p SheetProblem, in Sheet, l *Node) error {
	piece := p.Pieces[l.Piece]
	long, wide := piece.LengthMM, piece.WidthMM
	if l.Turned {
		long, wide = wide, long
	}
	if !near(long, l.LengthMM) || !near(wide, l.WidthMM) {
		return fmt.Errorf("%s measures %v x %v", piece.Name, l.LengthMM, l.WidthMM)
	}
	if piece.Turn == Along && l.Turned || piece.Turn == Across && !l.Turned {
		return fmt.Errorf("%s lies against its grain", piece.Name)
	}
	if zoneHit(in.Zones, l) {
		return fmt.Errorf("%s lies on a zone", piece.Name)
	}
	t := in.Trim
	if l.XMM < t.X0MM-nearMM || l.YMM < t.Y0MM-nearMM || l.XMM+l.LengthMM > in.LengthMM-t.X1MM+nearMM || l.YMM+l.WidthMM > in.WidthMM-t.Y1MM+nearMM {
		return fmt.Errorf("%s lies in the trim", piece.Name)
	}
	return nil
}

func zoneHit(zones []Zone, l *Node) bool {
	for _, z := range zones {
		if l.XMM+l.LengthMM > z.XMM+nearMM && z.XMM+z.LengthMM > l.XMM+nearMM && l.YMM+l.WidthMM > z.YMM+nearMM && z.YMM+z.WidthMM > l.YMM+nearMM {
			return true
		}
	}
	return false
}

func apart(leaves []*Node, kerf float64) error {
	for i, a := range leaves {
		for _, b := range leaves[:i] {
			if a.XMM+a.LengthMM+kerf > b.XMM+nearMM && b.XMM+b.LengthMM+kerf > a.XMM+nearMM &&
				a.YMM+a.WidthMM+kerf > b.YMM+nearMM && b.YMM+b.WidthMM+kerf > a.YMM+nearMM {
				return fmt.Errorf("%q and %q are not a kerf apart", a.Name, b.Name)
			}
		}
	}
	return nil
}

// checkOrder: every part is there before it is cut, settings cover the cuts in
// order, and within one the fence does not move.
func checkOrder(p SheetProblem, plan SheetPlan, cuts map[int]*Node) error {
	for n, node := range cuts {
		for _, half := range []*Node{node.A, node.B} {
			if half != nil && half.Kind == KindCut && half.Cut <= n {
				return fmt.Errorf("cut %d divides what cut %d makes", half.Cut, n)
			}
		}
	}
	next := 1
	for _, s := range plan.Settings {
		if s.First != next || s.Last < s.First || s.ReZero == "" {
			return fmt.Errorf("setting %+v after cut %d", s, next-1)
		}
		for _, c := range plan.Cuts[s.First-1 : s.Last] {
			if !near(c.FenceMM, s.FenceMM) || c.TiltDeg != s.TiltDeg {
				return fmt.Errorf("cut %d at another setting", c.Number)
			}
		}
		next = s.Last + 1
	}
	if next != len(plan.Cuts)+1 {
		return fmt.Errorf("settings end at %d of %d cuts", next-1, len(plan.Cuts))
	}
	square := 0
	for i, c := range plan.Cuts {
		if c.Number != i+1 {
			return fmt.Errorf("cut %d is numbered %d", i+1, c.Number)
		}
		if c.Edge != "" {
			continue
		}
		square++
		node := cuts[c.Number]
		if node == nil {
			return fmt.Errorf("cut %d is in no tree", c.Number)
		}
		if err := checkFence(p, c, node); err != nil {
			return err
		}
	}
	if square != len(cuts) {
		return fmt.Errorf("%d square cuts listed, %d in the trees", square, len(cuts))
	}
	return nil
}

func checkFence(p SheetProblem, c Cut, n *Node) error {
	half := n.A
	if c.FenceSide == "b" {
		half = n.B
	}
	if half == nil {
		return fmt.Errorf("cut %d: nothing at the fence", c.Number)
	}
	size := half.LengthMM
	if n.Axis == DivideY {
		size = half.WidthMM
	}
	if !near(size, c.FenceMM) {
		return fmt.Errorf("cut %d: fence at %v, part of %v", c.Number, c.FenceMM, size)
	}
	if !c.CannotHold && c.FenceMM < p.NarrowestStripMM-nearMM {
		return fmt.Errorf("cut %d: %v mm cannot be held", c.Number, c.FenceMM)
	}
	return nil
}

func drawProblem(t *rapid.T) SheetProblem {
	mm := func(lo, hi int, name string) float64 { return float64(rapid.IntRange(lo*10, hi*10).Draw(t, name)) / 10 }
	p := SheetProblem{KerfMM: rapid.SampledFrom([]float64{0, 1.8, 3.2, 25.4 / 8}).Draw(t, "kerf"), NarrowestStripMM: rapid.SampledFrom([]float64{0, 40}).Draw(t, "narrowest"),
		SmallestOffcut: Size{300, 100}, Effort: Effort{Rounds: 100}}
	for i := range rapid.IntRange(1, 6).Draw(t, "kinds") {
		p.Pieces = append(p.Pieces, Piece{Name: fmt.Sprint("p", i), LengthMM: mm(20, 1300, "l"), WidthMM: mm(20, 900, "w"),
			Count: rapid.IntRange(0, 4).Draw(t, "n"), Turn: rapid.SampledFrom([]Turn{"", Either, Along, Across}).Draw(t, "turn")})
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "stock") {
		s := Sheet{Name: fmt.Sprint("s", i), LengthMM: mm(100, 2500, "L"), WidthMM: mm(100, 1300, "W"), Count: rapid.IntRange(-1, 3).Draw(t, "have"),
			Unlimited: rapid.Bool().Draw(t, "unlimited"), Price: float64(rapid.IntRange(0, 90).Draw(t, "price")), Trim: Trim{mm(0, 60, "t"), mm(0, 20, "t"), mm(0, 20, "t"), mm(0, 60, "t")}}
		if !s.Unlimited {
			s.Owned = rapid.Bool().Draw(t, "owned")
		}
		for range rapid.IntRange(0, 3).Draw(t, "zones") {
			s.Zones = append(s.Zones, Zone{XMM: mm(0, 2000, "zx"), YMM: mm(0, 1000, "zy"), LengthMM: mm(1, 300, "zl"), WidthMM: mm(1, 300, "zw")})
		}
		p.Stock = append(p.Stock, s)
	}
	return p
}

// TestEveryPlanCanBeCut draws problems and verifies whole plans.
func TestEveryPlanCanBeCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		plan := Sheets(context.Background(), p)
		if err := checkSheets(p, plan); err != nil {
			t.Fatal(err)
		}
		missing := 0
		for _, m := range plan.Unplaced {
			missing += m.Count
		}
		if missing > 0 && len(plan.Reasons) == 0 {
			t.Fatalf("%d pieces are missing without a reason", missing)
		}
	})
}
