package saw

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"testing"
	"time"

	"pourwright/internal/published"
)

type inst struct {
	Name     string
	L, W     int64
	Pieces   [][]int64
	Oriented int64 `json:"optimum_oriented"`
	Rotated  int64 `json:"optimum_rotated"`
}

func load(t *testing.T, f string) []inst {
	b, _ := os.ReadFile(published.Data(t, "rect", f))
	var d struct{ Instances []inst }
	if err := json.Unmarshal(b, &d); err != nil {
		t.Fatal(err)
	}
	return d.Instances
}

func goodsOf(in inst, turns bool) []Good {
	var out []Good
	for _, p := range in.Pieces {
		g := Good{W: p[0], H: p[1], Value: p[len(p)-1], Count: 1 << 30, Turns: turns}
		if len(p) == 4 {
			g.Count = int(p[2])
		}
		out = append(out, g)
	}
	return out
}

func TestTable(t *testing.T) {
	for _, f := range []string{"gcut.json", "cgcut.json"} {
		for _, in := range load(t, f) {
			for _, turns := range []bool{false, true} {
				start := time.Now()
				tb := newTable(goodsOf(in, turns), in.L, in.W, f == "gcut.json")
				tb.fill(context.Background())
				nb := 0
				for _, b := range tb.blockX {
					nb += len(b)
				}
				fmt.Println(in.Name, turns, len(tb.x.at), len(tb.y.at), nb/len(tb.blockX), tb.value(in.L, in.W), in.Oriented, in.Rotated, time.Since(start))
			}
		}
	}
	for seed := range 4 {
		d := dice{uint64(seed)}
		var goods []Good
		for range 32 {
			w, h := int64(200+d.below(800)), int64(200+d.below(800))
			goods = append(goods, Good{W: w, H: h, Value: w * h, Count: 1 << 30})
		}
		for _, turns := range []bool{false, true} {
			for i := range goods {
				goods[i].Turns = turns
			}
			start := time.Now()
			tb, _ := unbounded(context.Background(), goods, 3000, 3000)
			nb := 0
			for _, b := range tb.blockX {
				nb += len(b)
			}
			fmt.Println("big", turns, len(tb.x.at), len(tb.y.at), nb/len(tb.blockX), tb.value(3000, 3000), time.Since(start))
		}
	}
}
