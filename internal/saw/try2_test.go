package saw

import (
	"context"
	"fmt"
	"testing"
	"time"
)

func TestBig(t *testing.T) {
	for _, lo := range []int{750, 500, 375, 300} {
		for seed := range 3 {
			for _, turns := range []bool{false, true} {
				d := dice{uint64(seed)}
				var goods []Good
				for range 50 {
					w, h := int64(lo+d.below(1500)), int64(lo+d.below(1500))
					goods = append(goods, Good{W: w, H: h, Value: w * h, Count: 1 << 30, Turns: turns})
				}
				start := time.Now()
				tb, _ := unbounded(context.Background(), goods, 3000, 3000)
				fmt.Println(lo, turns, len(tb.x.at), float64(tb.value(3000, 3000))/9e6, time.Since(start))
			}
		}
	}
}
