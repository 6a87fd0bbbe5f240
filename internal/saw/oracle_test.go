package saw

import (
	"context"
	"math/bits"
	"testing"

	"pgregory.net/rapid"
)

// slowValue is the most value of a rectangle by trying every whole cut, with the
// copies that are left as a list of counts.
func slowValue(goods []Good, w, h int64, left []int, limited bool) int64 {
	best := int64(0)
	for k, g := range goods {
		if left[k] > 0 && (g.W <= w && g.H <= h || g.Turns && g.H <= w && g.W <= h) {
			best = max(best, g.Value)
		}
	}
	if !limited {
		for x := int64(1); x <= w/2; x++ {
			best = max(best, slowValue(goods, x, h, left, false)+slowValue(goods, w-x, h, left, false))
		}
		for y := int64(1); y <= h/2; y++ {
			best = max(best, slowValue(goods, w, y, left, false)+slowValue(goods, w, h-y, left, false))
		}
		return best
	}
	shares(left, make([]int, len(left)), 0, func(mine, theirs []int) {
		for x := int64(1); x < w; x++ {
			best = max(best, slowValueOf(goods, x, h, mine)+slowValueOf(goods, w-x, h, theirs))
		}
		for y := int64(1); y < h; y++ {
			best = max(best, slowValueOf(goods, w, y, mine)+slowValueOf(goods, w, h-y, theirs))
		}
	})
	return best
}

var slowMemo map[[6]int64]int64

// slowValueOf keeps what it has computed; up to three goods of up to 8 copies.
func slowValueOf(goods []Good, w, h int64, left []int) int64 {
	key := [6]int64{w, h}
	for k, n := range left {
		key[2+k] = int64(n)
	}
	if v, ok := slowMemo[key]; ok {
		return v
	}
	v := slowValue(goods, w, h, left, true)
	slowMemo[key] = v
	return v
}

// shares calls visit with every way to share the copies between two halves.
func shares(left, mine []int, k int, visit func(mine, theirs []int)) {
	if k == len(left) {
		theirs, any, all := make([]int, len(left)), false, true
		for i := range left {
			theirs[i] = left[i] - mine[i]
			any, all = any || mine[i] > 0, all && theirs[i] == 0
		}
		if any && !all {
			visit(append([]int(nil), mine...), theirs)
		}
		return
	}
	for n := 0; n <= left[k]; n++ {
		mine[k] = n
		shares(left, mine, k+1, visit)
	}
}

func drawGoods(t *rapid.T, kinds, side int) []Good {
	var out []Good
	for range rapid.IntRange(1, kinds).Draw(t, "kinds") {
		out = append(out, Good{W: int64(rapid.IntRange(1, side).Draw(t, "w")), H: int64(rapid.IntRange(1, side).Draw(t, "h")),
			Value: int64(rapid.IntRange(0, 20).Draw(t, "v")), Count: rapid.IntRange(0, 3).Draw(t, "n"), Turns: rapid.Bool().Draw(t, "turns")})
	}
	return out
}

// TestKnapsackSlow holds both exact searches against every whole cut.
func TestKnapsackSlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		goods := drawGoods(t, 3, 5)
		w, h := int64(rapid.IntRange(1, 6).Draw(t, "W")), int64(rapid.IntRange(1, 5).Draw(t, "H"))
		for _, unlimited := range []bool{false, true} {
			left := make([]int, len(goods))
			for k := range left {
				left[k] = goods[k].Count
				if unlimited {
					left[k] = 1
				}
			}
			slowMemo = map[[6]int64]int64{}
			want := slowValue(goods, w, h, left, !unlimited)
			got, err := Knapsack(context.Background(), goods, w, h, unlimited)
			if err != nil || got.Value != want || !got.Proven {
				t.Fatalf("unlimited %v: %d, by every cut %d, proven %v, %v", unlimited, got.Value, want, got.Proven, err)
			}
			count, value, err := checkSlices(goods, w, h, got.Tree)
			if err != nil || value != want {
				t.Fatalf("tree of %d: %v", value, err)
			}
			for k, n := range count {
				if !unlimited && n > goods[k].Count {
					t.Fatalf("piece %d used %d times of %d", k, n, goods[k].Count)
				}
			}
		}
	})
}

// slowFits reports whether a set of items can be cut from w x h, by every whole
// cut and every share of the items.
func slowFits(items []item, set uint, w, h int64, memo map[[3]int64]bool) bool {
	if set == 0 {
		return true
	}
	if bits.OnesCount(set) == 1 {
		t := items[bits.TrailingZeros(set)]
		return t.w <= w && t.h <= h || t.turns && t.h <= w && t.w <= h
	}
	key := [3]int64{int64(set), w, h}
	if v, ok := memo[key]; ok {
		return v
	}
	ok := false
	for sub := (set - 1) & set; sub > 0 && !ok; sub = (sub - 1) & set {
		for x := int64(1); x < w && !ok; x++ {
			ok = slowFits(items, sub, x, h, memo) && slowFits(items, set&^sub, w-x, h, memo)
		}
		for y := int64(1); y < h && !ok; y++ {
			ok = slowFits(items, sub, w, y, memo) && slowFits(items, set&^sub, w, h-y, memo)
		}
	}
	memo[key] = ok
	return ok
}

func slowBins(items []item, w, h int64) int {
	n := uint(len(items))
	memo := map[[3]int64]bool{}
	best := make([]int, 1<<n)
	for set := uint(1); set < 1<<n; set++ {
		best[set] = len(items) + 1
		for sub := set; sub > 0; sub = (sub - 1) & set {
			if best[set&^sub]+1 < best[set] && slowFits(items, sub, w, h, memo) {
				best[set] = best[set&^sub] + 1
			}
		}
	}
	return best[1<<n-1]
}

// TestPackSlow holds the fewest rectangles against the true least, and the bound
// below it.
func TestPackSlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := int64(rapid.IntRange(2, 6).Draw(t, "W")), int64(rapid.IntRange(2, 6).Draw(t, "H"))
		var goods []Good
		var items []item
		for range rapid.IntRange(1, 6).Draw(t, "n") {
			g := Good{W: int64(rapid.IntRange(1, int(w)).Draw(t, "w")), H: int64(rapid.IntRange(1, int(h)).Draw(t, "h")), Count: 1, Turns: rapid.Bool().Draw(t, "turns")}
			goods = append(goods, g)
			items = append(items, item{w: g.W, h: g.H, turns: g.Turns})
		}
		want := slowBins(items, w, h)
		got, err := Pack(context.Background(), goods, w, h, Effort{Rounds: 3000})
		if err != nil || len(got.Bins) != want || got.Lower > want {
			t.Fatalf("%d rectangles, least %d, bound %d, %v", len(got.Bins), want, got.Lower, err)
		}
		checkBins(t, goods, w, h, got)
	})
}

func checkBins(t interface{ Fatalf(string, ...any) }, goods []Good, w, h int64, p Packing) {
	placed := make([]int, len(goods))
	for _, bin := range p.Bins {
		count, _, err := checkSlices(goods, w, h, bin)
		if err != nil {
			t.Fatalf("%v", err)
		}
		for k, n := range count {
			placed[k] += n
		}
	}
	for k, n := range placed {
		if n != goods[k].Count {
			t.Fatalf("good %d: %d of %d", k, n, goods[k].Count)
		}
	}
}

// TestDualFeasible: lengths that fit in 1 have images that add up to at most 1.
func TestDualFeasible(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		full := int64(rapid.IntRange(2, 60).Draw(t, "full"))
		room := full
		var parts []int64
		for room > 0 && len(parts) < 12 {
			x := int64(rapid.IntRange(1, int(room)).Draw(t, "part"))
			parts, room = append(parts, x), room-x
		}
		var all []int64
		for s := int64(0); s <= full; s++ {
			all = append(all, s)
		}
		for _, f := range dualFeasible(all, full) {
			sum := 0.0
			for _, x := range parts {
				sum += f.at(x)
			}
			if sum > 1+1e-9 {
				t.Fatalf("%+v: %v add up to %v", f, parts, sum)
			}
		}
	})
}

// slowBars is the least price by trying every set and every filling.
func slowBars(sizes []int, bars []int, price []int, kerf int) int {
	best := 1 << 30
	var try func(n int, room []int, paid int)
	try = func(n int, room []int, paid int) {
		if paid >= best {
			return
		}
		if n == len(sizes) {
			best = paid
			return
		}
		for b := range room {
			if room[b] >= sizes[n]+kerf {
				room[b] -= sizes[n] + kerf
				try(n+1, room, paid)
				room[b] += sizes[n] + kerf
			}
		}
		for k := range bars {
			if sizes[n] <= bars[k] {
				try(n+1, append(append([]int(nil), room...), bars[k]-sizes[n]), paid+price[k])
			}
		}
	}
	try(0, nil, 0)
	return best
}

// TestBarsSlow holds the price of bars against every filling.
func TestBarsSlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kerf := rapid.IntRange(0, 4).Draw(t, "kerf")
		p := BarProblem{KerfMM: float64(kerf), SmallestOffcutMM: 50}
		var sizes, bars, price []int
		for range rapid.IntRange(1, 6).Draw(t, "n") {
			sizes = append(sizes, rapid.IntRange(20, 200).Draw(t, "size"))
			p.Pieces = append(p.Pieces, BarPiece{Name: "p", LengthMM: float64(sizes[len(sizes)-1]), Count: 1})
		}
		for range rapid.IntRange(1, 3).Draw(t, "bars") {
			bars, price = append(bars, rapid.IntRange(200, 420).Draw(t, "bar")), append(price, rapid.IntRange(1, 9).Draw(t, "price"))
			p.Stock = append(p.Stock, Bar{Name: "b", LengthMM: float64(bars[len(bars)-1]), Unlimited: true, Price: float64(price[len(price)-1])})
		}
		// Adding one kerf to a bar leaves n-1 kerfs between n pieces.
		for k := range bars {
			bars[k] += kerf
		}
		plus := make([]int, len(sizes))
		for i := range sizes {
			plus[i] = sizes[i] + kerf
		}
		want := slowBars(plus, bars, price, 0)
		got := Bars(context.Background(), p)
		if got.Price != float64(want) || !got.Proven {
			t.Fatalf("price %v, least %d, proven %v", got.Price, want, got.Proven)
		}
		if err := checkBars(p, got); err != nil {
			t.Fatal(err)
		}
	})
}
