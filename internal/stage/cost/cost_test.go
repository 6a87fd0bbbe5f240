package cost

import (
	"fmt"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"pourwright/internal/finding"
	"pourwright/internal/material"
)

// sold makes packages of unit from pairs of size and price.
func sold(unit string, pairs ...float64) []material.Package {
	var out []material.Package
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, material.Package{
			Quantity: material.Value[float64]{Value: pairs[i], Origin: material.Typical},
			Unit:     unit,
			Price:    material.Value[float64]{Value: pairs[i+1]},
		})
	}
	return out
}

func ExampleCompute() {
	r, _ := Compute(Input{Needs: []Need{
		{Name: "casting resin", Room: "resin", Quantity: 13.2, Unit: "l", Packages: sold("l", 1, 19, 5, 80, 10, 150)},
	}})
	l := r.Lines[0]
	for _, b := range l.Buy {
		fmt.Printf("%d x %g l\n", b.Count, b.Size)
	}
	fmt.Printf("left %.1f l, price %.2f\n", l.Left, l.Price)
	// Output:
	// 1 x 10 l
	// 4 x 1 l
	// left 0.8 l, price 226.00
}

func TestBuy(t *testing.T) {
	for _, c := range []struct {
		name  string
		need  float64
		packs []material.Package
		want  string
		price float64
	}{
		{"exact", 20, sold("kg", 20, 9), "[{1 20}]", 9},
		{"a float's breath above exact", 0.1 + 0.2, sold("kg", 0.3, 9), "[{1 0.3}]", 9},
		{"a gram above", 20.001, sold("kg", 20, 9), "[{2 20}]", 18},
		{"one large is cheaper than three small", 13, sold("kg", 5, 10, 25, 25), "[{1 25}]", 25},
		{"same price: least left over", 9, sold("l", 5, 10, 10, 20), "[{1 10}]", 20},
		{"no price: least left over", 13, sold("kg", 5, 0, 20, 0), "[{3 5}]", 0},
		{"no price: mixed sizes", 27, sold("kg", 5, 0, 20, 0), "[{1 20} {2 5}]", 0},
		{"one without a price: least left over", 4, sold("kg", 5, 0, 20, 1), "[{1 5}]", 0},
		{"a kit of a gallon and a half", 5.6, sold("l", 3.785411784, 90, 1.892705892, 50), "[{1 3.785411784} {1 1.892705892}]", 140},
		{"quarts and pints have no round measure", 1.4, sold("l", 0.946352946, 20, 0.473176473, 9), "[{3 0.473176473}]", 27},
		{"duplicate sizes keep the cheaper", 4, sold("kg", 5, 12, 5, 10), "[{1 5}]", 10},
		{"cheapest needs a mix no ratio finds", 12, sold("kg", 7, 7, 6, 6.5, 5, 5), "[{1 7} {1 5}]", 12},
	} {
		r, fs := Compute(Input{Needs: []Need{{Name: "x", Quantity: c.need, Unit: c.packs[0].Unit, Packages: c.packs}}})
		if got := fmt.Sprint(r.Lines[0].Buy); got != c.want || math.Abs(r.Lines[0].Price-c.price) > 1e-9 {
			t.Errorf("%s: bought %s for %v, want %s for %v", c.name, got, r.Lines[0].Price, c.want, c.price)
		}
		if worst, ok := finding.Worst(fs); ok && worst > finding.Note {
			t.Errorf("%s: findings %v", c.name, fs)
		}
	}
}

func TestBadInput(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name string
		need Need
		code string
	}{
		{"need nan", Need{Quantity: nan, Unit: "l"}, badNeed.Code},
		{"need negative", Need{Quantity: -1, Unit: "l"}, badNeed.Code},
		{"need infinite", Need{Quantity: inf, Unit: "l", Packages: sold("l", 1, 1)}, badNeed.Code},
		{"need absurd", Need{Quantity: 1e9, Unit: "l", Packages: sold("l", 1, 1)}, badNeed.Code},
		{"no package", Need{Quantity: 1, Unit: "l"}, noPackage.Code},
		{"another unit", Need{Quantity: 1, Unit: "l", Packages: sold("kg", 1, 1)}, badPackage.Code},
		{"size zero", Need{Quantity: 1, Unit: "l", Packages: sold("l", 0, 1)}, badPackage.Code},
		{"size negative", Need{Quantity: 1, Unit: "l", Packages: sold("l", -5, 1)}, badPackage.Code},
		{"size nan", Need{Quantity: 1, Unit: "l", Packages: sold("l", nan, 1)}, badPackage.Code},
		{"price negative", Need{Quantity: 1, Unit: "l", Packages: sold("l", 1, -1)}, badPackage.Code},
		{"price nan", Need{Quantity: 1, Unit: "l", Packages: sold("l", 1, nan)}, badPackage.Code},
	} {
		c.need.Name = "x"
		r, fs := Compute(Input{Needs: []Need{c.need}})
		if len(fs) == 0 || fs[0].Code != c.code {
			t.Errorf("%s: findings %v, want %s", c.name, fs, c.code)
		}
		l := r.Lines[0]
		for _, v := range []float64{l.Need, l.Bought, l.Left, l.Price, r.Total} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%s: line %+v", c.name, l)
			}
		}
		if l.Buy == nil {
			t.Errorf("%s: Buy is nil", c.name)
		}
	}
}

func TestTotalIsOfPricedLines(t *testing.T) {
	r, fs := Compute(Input{Needs: []Need{
		{Name: "board", Quantity: 2, Unit: "sheet", Packages: sold("sheet", 1, 40)},
		{Name: "foam", Quantity: 1, Unit: "sheet", Packages: sold("sheet", 1, 0)},
		{Name: "nothing", Quantity: 0, Unit: "l"},
	}})
	if r.Total != 80 || r.Unpriced != 1 {
		t.Errorf("total %v, unpriced %d", r.Total, r.Unpriced)
	}
	if len(fs) != 1 || fs[0].Code != noPrice.Code || fs[0].Text != "No price for 1 of 3 lines: foam." {
		t.Errorf("findings %v", fs)
	}
}

func TestSameMaterialIsBoughtTogether(t *testing.T) {
	p := sold("kg", 25, 10)
	r, _ := Compute(Input{Needs: []Need{
		{Name: "cement", Room: "concrete", Quantity: 10, Unit: "kg", Packages: p},
		{Name: "sand", Room: "concrete", Quantity: 10, Unit: "kg", Packages: p},
		{Name: "cement", Room: "form", Quantity: 5, Unit: "kg", Packages: p},
	}})
	if len(r.Lines) != 2 || r.Lines[0].Need != 15 || r.Lines[0].Room != "concrete, form" || r.Lines[0].Buy[0].Count != 1 {
		t.Errorf("lines %+v", r.Lines)
	}
}

// bruteForce tries all counts.
func bruteForce(need float64, packs []pack, byPrice bool) (price, bought float64) {
	price, bought = math.Inf(1), math.Inf(1)
	var try func(i int, p, b float64)
	try = func(i int, p, b float64) {
		if b >= need-1e-9 {
			if (byPrice && (p < price-1e-9 || (p < price+1e-9 && b < bought))) || (!byPrice && b < bought-1e-9) {
				price, bought = p, b
			}
			return
		}
		for k := i; k < len(packs); k++ {
			try(k, p+packs[k].price, b+packs[k].size)
		}
	}
	try(0, 0, 0)
	return price, bought
}

func TestChoiceIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		priced := rapid.Bool().Draw(t, "priced")
		var packs []pack
		for range rapid.IntRange(1, 4).Draw(t, "packs") {
			p := pack{size: float64(rapid.IntRange(3, 40).Draw(t, "size")) / 4}
			if priced {
				p.price = float64(rapid.IntRange(1, 400).Draw(t, "price")) / 10
			}
			packs = append(packs, p)
		}
		packs = distinct(packs)
		need := float64(rapid.IntRange(1, 80).Draw(t, "need")) / 4
		counts := cheapest(need, packs)
		var price, bought float64
		for i, c := range counts {
			price += float64(c) * packs[i].price
			bought += float64(c) * packs[i].size
		}
		wantPrice, wantBought := bruteForce(need, packs, priced)
		if math.Abs(bought-wantBought) > 1e-9 || math.Abs(price-wantPrice) > 1e-9 {
			t.Fatalf("need %v of %v: %v bought %v for %v, best %v for %v", need, packs, counts, bought, price, wantBought, wantPrice)
		}
	})
}

func TestNeverRoundsDown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var packs []pack
		for range rapid.IntRange(1, 5).Draw(t, "packs") {
			packs = append(packs, pack{rapid.Float64Range(smallest, 60).Draw(t, "size"), rapid.Float64Range(0.1, 500).Draw(t, "price")})
		}
		packs = distinct(packs)
		need := rapid.Float64Range(1e-6, packs[0].size*mostPackages).Draw(t, "need")
		bought := 0.0
		for i, c := range cheapest(need, packs) {
			bought += float64(c) * packs[i].size
		}
		if bought < need*(1-2*rounding) {
			t.Fatalf("need %v, bought %v", need, bought)
		}
	})
}

func TestAwkwardSizesStayQuick(t *testing.T) {
	packs := sold("l", 0.473176473, 9, 0.946352946, 17, 3.785411784, 61, 18.92705892, 270)
	begin := time.Now()
	r, _ := Compute(Input{Needs: []Need{{Name: "x", Quantity: 4321.987, Unit: "l", Packages: packs}}})
	if took := time.Since(begin); took > time.Second {
		t.Errorf("took %v", took)
	}
	// 228 pails leave 6.618 l: a gallon and three quarts hold 6.625 l for 112.
	if l := r.Lines[0]; l.Bought < l.Need || l.Price != 228*270+112 {
		t.Errorf("line %+v", l)
	}
}
