package saw

import (
	"context"
	"fmt"
	"testing"
	"time"
)

func TestHeavyTry(t *testing.T) {
	for _, n := range []int{30, 100, 300, 1000, 2000} {
		d := dice{7}
		p := SheetProblem{KerfMM: 3, SmallestOffcut: Size{400, 200}, NarrowestStripMM: 50}
		for i := range n {
			p.Pieces = append(p.Pieces, Piece{Name: fmt.Sprint(i), LengthMM: float64(100 + d.below(700)), WidthMM: float64(60 + d.below(400)), Count: 1})
		}
		p.Stock = []Sheet{{Name: "a", LengthMM: 2440, WidthMM: 1220, Unlimited: true, Price: 60, Trim: TrimAll(8)}, {Name: "b", LengthMM: 2800, WidthMM: 2070, Unlimited: true, Price: 110, Trim: TrimAll(8)}, {Name: "c", LengthMM: 1220, WidthMM: 1220, Unlimited: true, Price: 33}}
		start := time.Now()
		plan := Sheets(context.Background(), p)
		fmt.Println(n, len(plan.Sheets), plan.Price, plan.LowerPrice, len(plan.Settings), plan.Reasons, time.Since(start), checkSheets(p, plan))
		if time.Since(start) > 60*time.Second {
			break
		}
	}
}
