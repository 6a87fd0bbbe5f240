package saw

import (
	"fmt"
	"math"
	"testing"
	"time"
)

func TestKnap(t *testing.T) {
	for _, in := range load(t, "cgcut.json") {
		goods := goodsOf(in, false)
		var items []item
		for k, g := range goods {
			for range g.Count {
				items = append(items, item{w: g.W, h: g.H, kind: int32(k), worth: float64(g.Value)})
			}
		}
		best := 0.0
		start := time.Now()
		rounds := 0
		var at time.Duration
		f := newFiller(items, []region{newRegion(in.L, in.W)}, 1)
		f.rules = 8
		dens := 0.0
		tot := 0.0
		for i := range items {
			dens += items[i].worth
			tot += items[i].worth
		}
		f.unit = 1
		mean := dens / float64(len(items))
		cycle := 2000
		saveUnit := f.unit
		f.unit = saveUnit
		for time.Since(start) < 1*time.Second && int64(best) < in.Oriented {
			f.cost = knapCost(f)
			for n := 0; n < cycle; n++ {
				T := 0.3 * mean * math.Pow(0.02, float64(n)/float64(cycle))
				f.oldOut = append(f.oldOut[:0], f.out...)
				f.ruin()
				f.recreate()
				now := knapCost(f)
				if now > f.cost && now-f.cost > T*f.dice.exponential() {
					f.restore()
					continue
				}
				f.cost = now
				f.forget()
				if v := tot - now; v > best {
					best = v
					at = time.Since(start)
				}
			}
			rounds += cycle
			cycle = cycle * 3 / 2
		}
		fmt.Println(in.Name, best, in.Oriented, int(best)-int(in.Oriented), rounds, at)
	}
}

func knapCost(f *filler) float64 {
	s := 0.0
	for _, i := range f.out {
		s += f.items[i].worth
	}
	return s
}
