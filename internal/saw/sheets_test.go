package saw

import (
	"context"
	"encoding/json"
	"math"
	"slices"
	"testing"
	"time"
)

func shopList() SheetProblem {
	return SheetProblem{
		Pieces: []Piece{
			{Name: "base", LengthMM: 1300, WidthMM: 700, Count: 1},
			{Name: "long side", LengthMM: 1300, WidthMM: 118, Count: 2, Bevels: []Bevel{{EndA, 45}, {EndB, 45}}},
			{Name: "short side", LengthMM: 700, WidthMM: 118, Count: 2},
			{Name: "batten", LengthMM: 600, WidthMM: 60, Count: 8},
			{Name: "divider", LengthMM: 400, WidthMM: 380, Count: 5, Turn: Along},
			{Name: "dam", LengthMM: 210, WidthMM: 150, Count: 3},
		},
		Stock: []Sheet{
			{Name: "sheet", LengthMM: 2440, WidthMM: 1220, Unlimited: true, Price: 62, Trim: TrimAll(10)},
			{Name: "half", LengthMM: 1220, WidthMM: 1220, Unlimited: true, Price: 36, Trim: TrimAll(10)},
			{Name: "old", LengthMM: 900, WidthMM: 640, Count: 1, Owned: true, Zones: []Zone{{XMM: 300, YMM: 200, LengthMM: 40, WidthMM: 40, Why: "hole"}}},
		},
		KerfMM: 3.2, SmallestOffcut: Size{400, 150}, NarrowestStripMM: 50,
	}
}

// TestShopList plans a form's list: one sheet is bought, which is proven, the
// plan can be cut, is the same twice, and does not take long.
func TestShopList(t *testing.T) {
	p := shopList()
	start := time.Now()
	plan := Sheets(context.Background(), p)
	if took := time.Since(start); took > 10*time.Second {
		t.Errorf("took %v", took)
	}
	if err := checkSheets(p, plan); err != nil {
		t.Fatal(err)
	}
	if plan.Price != 62 || !plan.Proven || len(plan.Unplaced) != 0 {
		t.Errorf("price %v, proven %v, missing %v", plan.Price, plan.Proven, plan.Unplaced)
	}
	tilted := slices.DeleteFunc(slices.Clone(plan.Cuts), func(c Cut) bool { return c.TiltDeg == 0 })
	if len(tilted) != 4 || plan.Settings[len(plan.Settings)-1].TiltDeg != 45 {
		t.Errorf("%d tilted cuts, last setting %+v", len(tilted), plan.Settings[len(plan.Settings)-1])
	}
	a, _ := json.Marshal(plan)
	b, _ := json.Marshal(Sheets(context.Background(), p))
	if string(a) != string(b) {
		t.Error("the same problem gives two plans")
	}
	t.Logf("%d cuts at %d settings, offcuts %+v", len(plan.Cuts), len(plan.Settings), plan.Offcuts)
}

// TestTwoKerfs: three strips of 300 from 903 mm need two cuts. With a 1.5 mm blade
// they take 903 exactly; with 3.2 mm they take 906.4 and one is left over.
func TestTwoKerfs(t *testing.T) {
	p := SheetProblem{
		Pieces: []Piece{{Name: "strip", LengthMM: 800, WidthMM: 300, Count: 3, Turn: Along}},
		Stock:  []Sheet{{Name: "offcut", LengthMM: 800, WidthMM: 903, Count: 1, Owned: true}},
	}
	for _, c := range []struct {
		kerf float64
		left int
	}{{0, 0}, {1.5, 0}, {3.2, 1}} {
		p.KerfMM = c.kerf
		plan := Sheets(context.Background(), p)
		if err := checkSheets(p, plan); err != nil {
			t.Fatal(err)
		}
		left := 0
		for _, m := range plan.Unplaced {
			left += m.Count
		}
		if left != c.left {
			t.Errorf("kerf %v: %d left over, want %d", c.kerf, left, c.left)
		}
		if c.left > 0 && (len(plan.Reasons) != 1 || plan.Reasons[0].Fault != KerfEats || plan.Reasons[0].Remedy != ThinnerKerf || plan.Reasons[0].LimitMM != 1.5) {
			t.Errorf("kerf %v: reasons %+v, want a kerf of at most 1.5", c.kerf, plan.Reasons)
		}
	}
	p.KerfMM = 3.2
	p.Stock = append(p.Stock, Sheet{Name: "new", LengthMM: 800, WidthMM: 903, Unlimited: true, Price: 30})
	plan := Sheets(context.Background(), p)
	if plan.Price != 30 || len(plan.Reasons) != 1 || plan.Reasons[0].Fault != KerfEats || !plan.Reasons[0].Placed {
		t.Errorf("price %v, reasons %+v: a thinner blade would save the new sheet", plan.Price, plan.Reasons)
	}
}

// TestAims: offcuts in the shop before new sheets, the cheaper size before the
// dearer, and what is left over in one piece.
func TestAims(t *testing.T) {
	full := Sheet{Name: "full", LengthMM: 2440, WidthMM: 1220, Unlimited: true, Price: 60}
	half := Sheet{Name: "half", LengthMM: 1220, WidthMM: 1220, Unlimited: true, Price: 34}
	old := Sheet{Name: "old", LengthMM: 800, WidthMM: 600, Count: 1, Owned: true}
	shelf := Piece{Name: "shelf", LengthMM: 780, WidthMM: 280, Count: 2}
	for _, c := range []struct {
		name  string
		count int
		stock []Sheet
		price float64
		left  float64 // area of the largest offcut at least, m2
	}{
		{"from the offcut", 2, []Sheet{full, half, old}, 0, 0},
		{"from the half", 2, []Sheet{full, half}, 34, 1.22 * (1.22 - 0.563)},
		{"two halves are dearer", 9, []Sheet{full, half}, 60, 0},
	} {
		shelf.Count = c.count
		p := SheetProblem{Pieces: []Piece{shelf}, Stock: c.stock, KerfMM: 3, SmallestOffcut: Size{300, 100}}
		plan := Sheets(context.Background(), p)
		if err := checkSheets(p, plan); err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		largest := 0.0
		for _, o := range plan.Offcuts {
			largest = max(largest, o.LengthMM*o.WidthMM/1e6)
		}
		if plan.Price != c.price || !plan.Proven || largest < 0.98*c.left {
			t.Errorf("%s: price %v (proven %v), want %v; largest offcut %.3f, want %.3f", c.name, plan.Price, plan.Proven, c.price, largest, c.left)
		}
	}
}

// TestFencesRepeat: six equal shelves are cut at two settings and no more.
func TestFencesRepeat(t *testing.T) {
	p := SheetProblem{Pieces: []Piece{{Name: "shelf", LengthMM: 800, WidthMM: 300, Count: 6}},
		Stock: []Sheet{{Name: "full", LengthMM: 2440, WidthMM: 1220, Unlimited: true, Price: 60}}, KerfMM: 3, SmallestOffcut: Size{300, 200}}
	plan := Sheets(context.Background(), p)
	if err := checkSheets(p, plan); err != nil {
		t.Fatal(err)
	}
	if len(plan.Settings) > 3 {
		t.Errorf("%d settings: %+v", len(plan.Settings), plan.Settings)
	}
}

// TestBadInput: every fault has its reason, with the nearest remedy, and costs
// nothing else of the plan.
func TestBadInput(t *testing.T) {
	good := Piece{Name: "good", LengthMM: 400, WidthMM: 300, Count: 2}
	sheet := Sheet{Name: "sheet", LengthMM: 1000, WidthMM: 800, Unlimited: true, Price: 10, Trim: TrimAll(10)}
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name   string
		change func(p *SheetProblem)
		fault  Fault
		remedy Remedy
		placed int // copies of good
	}{
		{"too large for any sheet", func(p *SheetProblem) { p.Pieces[0].LengthMM = 1700 }, TooLarge, Join, 2},
		{"too large by the trim", func(p *SheetProblem) { p.Pieces[0].LengthMM = 990 }, TrimEats, LessTrim, 2},
		{"fits only turned", func(p *SheetProblem) {
			p.Pieces[0] = Piece{Name: "x", LengthMM: 700, WidthMM: 900, Count: 1, Turn: Along}
		}, NeedsTurn, TurnPiece, 2},
		{"a zone in the way", func(p *SheetProblem) {
			p.Pieces[0] = Piece{Name: "x", LengthMM: 900, WidthMM: 700, Count: 1}
			p.Stock[0].Zones = []Zone{{XMM: 500, YMM: 350, LengthMM: 20, WidthMM: 20}}
		}, ZoneInWay, Join, 2},
		{"length not a number", func(p *SheetProblem) { p.Pieces[0].LengthMM = nan }, BadNumber, Correct, 2},
		{"length infinite", func(p *SheetProblem) { p.Pieces[0].WidthMM = inf }, BadNumber, Correct, 2},
		{"length negative", func(p *SheetProblem) { p.Pieces[0].WidthMM = -3 }, BadNumber, Correct, 2},
		{"count zero", func(p *SheetProblem) { p.Pieces[0].Count = 0 }, BadNumber, Correct, 2},
		{"tilt of 80", func(p *SheetProblem) { p.Pieces[0].Bevels = []Bevel{{EndA, 80}} }, BadNumber, Correct, 2},
		{"kerf negative", func(p *SheetProblem) { p.KerfMM = -1 }, BadNumber, Correct, 2},
		{"kerf not a number", func(p *SheetProblem) { p.KerfMM = nan }, BadNumber, Correct, 2},
		{"stock of zero", func(p *SheetProblem) { p.Stock = append(p.Stock, Sheet{Name: "none", LengthMM: 500, WidthMM: 500}) }, BadStock, Correct, 2},
		{"stock negative", func(p *SheetProblem) {
			p.Stock = append(p.Stock, Sheet{Name: "none", LengthMM: 500, WidthMM: 500, Count: -2, Owned: true})
		}, BadStock, Correct, 2},
		{"stock without a size", func(p *SheetProblem) { p.Stock = append(p.Stock, Sheet{Name: "none", WidthMM: 500, Count: 1}) }, BadStock, Correct, 2},
		{"trim eats a sheet", func(p *SheetProblem) {
			p.Stock = append(p.Stock, Sheet{Name: "strip", LengthMM: 500, WidthMM: 18, Count: 1, Owned: true, Trim: TrimAll(10)})
		}, TrimEats, LessTrim, 2},
		{"no stock", func(p *SheetProblem) { p.Stock = nil }, NoStock, Buy, 0},
		{"not enough stock", func(p *SheetProblem) {
			p.Pieces[0] = Piece{Name: "x", LengthMM: 900, WidthMM: 700, Count: 2}
			p.Stock[0].Unlimited, p.Stock[0].Count = false, 1
		}, OutOfStock, BuyMore, 0},
		{"too narrow to hold", func(p *SheetProblem) { p.Pieces[0].WidthMM = 20 }, TooNarrow, Hold, 2},
		{"too many", func(p *SheetProblem) { p.Pieces[0].Count = 1 << 40 }, TooMany, Divide, 2},
	} {
		p := SheetProblem{Pieces: []Piece{{Name: "x", LengthMM: 200, WidthMM: 200, Count: 1}, good}, Stock: []Sheet{sheet}, KerfMM: 3, NarrowestStripMM: 40, SmallestOffcut: Size{200, 100}}
		c.change(&p)
		plan := Sheets(context.Background(), p)
		if !slices.ContainsFunc(plan.Reasons, func(r Reason) bool { return r.Fault == c.fault && r.Remedy == c.remedy }) {
			t.Errorf("%s: reasons %+v, want %s, %s", c.name, plan.Reasons, c.fault, c.remedy)
		}
		missing := 0
		for _, m := range plan.Unplaced {
			if m.Piece == 1 {
				missing += m.Count
			}
		}
		if got := good.Count - missing; got < c.placed {
			t.Errorf("%s: %d good pieces placed, want %d", c.name, got, c.placed)
		}
		if _, err := json.Marshal(plan); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// TestCalledOff: a search that is called off at once still gives a plan.
func TestCalledOff(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p := shopList()
	if err := checkSheets(p, Sheets(ctx, p)); err != nil {
		t.Error(err)
	}
}
