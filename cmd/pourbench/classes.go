package main

import (
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"runtime"
	"strconv"
	"time"

	"pourwright/internal/saw"
)

const classesUsage = "usage: pourbench classes [--seconds 1] [--count 3] [--seed 1]"

// A binClass is one of the ten classes of random instances of packing rectangles
// into square bins. Sides are uniform from 1 to top in classes 1 to 6 [berkey-wang-1987];
// in 7 to 10 [martello-vigo-1998] seven of ten items are of one type.
type binClass struct {
	side int64
	top  int
	main int // type, from 0
}

var binClasses = []binClass{
	{10, 10, 0}, {30, 10, 0}, {40, 35, 0}, {100, 35, 0}, {100, 100, 0}, {300, 100, 0},
	{100, 0, 0}, {100, 0, 1}, {100, 0, 2}, {100, 0, 3},
}

// items draws n items.
func (c binClass) items(n int, r *rand.Rand, turns bool) []saw.Good {
	out := make([]saw.Good, n)
	for i := range out {
		out[i] = saw.Good{Count: 1, Turns: turns}
		if c.top > 0 {
			out[i].W, out[i].H = 1+r.Int64N(int64(c.top)), 1+r.Int64N(int64(c.top))
			continue
		}
		kind := c.main
		if x := r.IntN(10); x < 3 {
			kind = (c.main + 1 + x) % 4
		}
		out[i].W, out[i].H = mixedSides(kind, c.side, r)
	}
	return out
}

// mixedSides draws a wide and low, a narrow and high, a large or a small item.
func mixedSides(kind int, side int64, r *rand.Rand) (w, h int64) {
	small := func() int64 { return 1 + r.Int64N(side/2) }
	large := func(lo int64) int64 { return lo + r.Int64N(side-lo+1) }
	third := (2*side + 2) / 3
	switch kind {
	case 0:
		return large(third), small()
	case 1:
		return small(), large(third)
	case 2:
		return large(side / 2), large(side / 2)
	}
	return small(), small()
}

// A classTally counts how far the results of one class are above the bound.
type classTally struct {
	sheets, lower int
	above         [3]int // 0, 1, 2 or more above the bound
	slowest       time.Duration
}

// tallyClass packs count instances of each number of items.
func tallyClass(class int, turns bool, numbers []int, count int, seed uint64, pack func([]saw.Good, int64) (saw.Packing, error)) (classTally, error) {
	var t classTally
	for _, n := range numbers {
		for k := range count {
			c := binClasses[class]
			r := rand.New(rand.NewPCG(seed, uint64(class*100000+n*100+k)))
			start := time.Now()
			p, err := pack(c.items(n, r, turns), c.side)
			if err != nil {
				return t, err
			}
			t.slowest = max(t.slowest, time.Since(start))
			t.sheets, t.lower = t.sheets+len(p.Bins), t.lower+p.Lower
			t.above[min(len(p.Bins)-p.Lower, 2)]++
		}
	}
	return t, nil
}

func runClasses(args []string, out io.Writer) error {
	seconds, count, seed := 1.0, 3, uint64(1)
	for i := 0; i < len(args); i++ {
		if i+1 == len(args) {
			return fmt.Errorf("%s", classesUsage)
		}
		var err error
		switch value := args[i+1]; args[i] {
		case "--seconds":
			seconds, err = strconv.ParseFloat(value, 64)
		case "--count":
			count, err = strconv.Atoi(value)
		case "--seed":
			seed, err = strconv.ParseUint(value, 10, 64)
		default:
			err = fmt.Errorf("unknown option %s", args[i])
		}
		if i++; err != nil || !(seconds > 0) || count < 1 {
			return fmt.Errorf("%v\n%s", err, classesUsage)
		}
	}
	pack := func(goods []saw.Good, side int64) (saw.Packing, error) {
		ctx, cancel := context.WithTimeout(context.Background(), time.Duration(seconds*solverShare*float64(time.Second)))
		defer cancel()
		return saw.Pack(ctx, goods, side, side, saw.Effort{Seed: seed, Workers: runtime.NumCPU()})
	}
	fmt.Fprintf(out, "| class | turning | sheets | bound | at the bound | 1 above | more | slowest s |\n|---|---|---|---|---|---|---|---|\n")
	for _, turns := range []bool{false, true} {
		for class := range binClasses {
			t, err := tallyClass(class, turns, []int{20, 40, 60, 80, 100}, count, seed, pack)
			if err != nil {
				return err
			}
			fmt.Fprintf(out, "| %d | %v | %d | %d | %d | %d | %d | %.2f |\n", class+1, turns, t.sheets, t.lower, t.above[0], t.above[1], t.above[2], t.slowest.Seconds())
		}
	}
	return nil
}
