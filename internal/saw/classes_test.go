package saw

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"testing"
	"time"
)

// classItems draws n items of one of the ten classes of random bin packing
// instances (1 to 10) and returns them with the side of the square bin.
// Classes 1 to 6: Berkey, Wang 1987; 7 to 10: Martello, Vigo 1998 (from memory).
func classItems(class, n int, d *dice, turns bool) ([]item, int64) {
	bins := []int64{10, 30, 40, 100, 100, 300, 100, 100, 100, 100}
	tops := []int64{10, 10, 35, 35, 100, 100}
	side := bins[class-1]
	out := make([]item, n)
	for i := range out {
		var w, h int64
		if class <= 6 {
			top := int(tops[class-1])
			w, h = 1+int64(d.below(top)), 1+int64(d.below(top))
		} else {
			w, h = mixed(class-7, side, d)
		}
		out[i] = item{w: w, h: h, turns: turns, kind: int32(i)}
	}
	return out, side
}

// mixed draws an item that is of the main type with a chance of 70 per cent and
// of each of the three others with 10.
func mixed(main int, side int64, d *dice) (int64, int64) {
	kind := main
	if x := d.below(10); x < 3 {
		kind = (main + 1 + x) % 4
	}
	between := func(lo, hi int64) int64 { return lo + int64(d.below(int(hi-lo+1))) }
	third, half := (2*side+2)/3, side/2
	switch kind {
	case 0:
		return between(third, side), between(1, half)
	case 1:
		return between(1, half), between(third, side)
	case 2:
		return between(half, side), between(half, side)
	}
	return between(1, half), between(1, half)
}

func TestTry(t *testing.T) {
	spec := os.Getenv("TRY")
	if spec == "" {
		t.Skip()
	}
	secs, _ := strconv.ParseFloat(spec, 64)
	for _, turns := range []bool{false, true} {
		for class := 1; class <= 10; class++ {
			line := ""
			for _, n := range []int{20, 40, 60, 80, 100} {
				gap, lb := 0, 0
				gaps := ""
				for k := range 3 {
					d := dice{uint64(class*1000 + n*10 + k)}
					items, side := classItems(class, n, &d, turns)
					lower := lowerBins(items, side, side)
					ctx, cancel := context.WithTimeout(context.Background(), time.Duration(secs*float64(time.Second)))
					got := tryBins(ctx, items, side, lower)
					cancel()
					if got > lower {
						ctx, cancel := context.WithTimeout(context.Background(), time.Duration(8*secs*float64(time.Second)))
						more := tryBins(ctx, items, side, lower)
						cancel()
						fmt.Println(turns, class, n, k, lower, got, more)
					}
					lb += lower
					gap += got - lower
					gaps += fmt.Sprint(got - lower)
				}
				line += fmt.Sprintf("  %d:%d(%s)", n, lb, gaps)
			}
			fmt.Println(turns, class, line)
		}
	}
}

func tryBins(ctx context.Context, items []item, side int64, lower int) int {
	f := newFiller(items, nil, 1)
	for len(f.out) > 0 {
		f.setRegions(append(f.regions, newRegion(side, side)))
		f.recreate()
		f.forget()
	}
	n := len(f.regions)
	mean := 0.0
	for i := range items {
		mean += float64(items[i].area())
	}
	mean /= float64(len(items)) * float64(side*side)
	for n > lower && ctx.Err() == nil {
		// drop the emptiest
		k := 0
		for i := range f.regions {
			if f.regions[i].area < f.regions[k].area {
				k = i
			}
		}
		f.empty(&f.regions[k])
		f.setRegions(append(f.regions[:k:k], f.regions[k+1:]...))
		rounds := 2000
		for ctx.Err() == nil {
			if f.anneal(ctx, schedule{rounds, 0.3 * mean, 0.01 * mean}) {
				n--
				break
			}
			rounds = rounds * 3 / 2
		}
	}
	return n
}
