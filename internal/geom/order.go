package geom

import (
	"math/bits"
	"slices"
)

// A keyed is the place of a point in sweep order with the index of what lies there.
type keyed struct {
	key uint64
	i   int32
}

// sweepOrder returns the indices of n points in sweep order, by x, then y; points
// that coincide keep their order. Where both extents fit one 64-bit key, which is so
// up to some 400 m, the keys are sorted by digits.
func sweepOrder(n int, at func(i int32) gridPoint) []int32 {
	order := make([]int32, n)
	for i := range order {
		order[i] = int32(i)
	}
	if n < 2 {
		return order
	}
	lo, hi := at(0), at(0)
	for i := 1; i < n; i++ {
		p := at(int32(i))
		lo.x, hi.x = min(lo.x, p.x), max(hi.x, p.x)
		lo.y, hi.y = min(lo.y, p.y), max(hi.y, p.y)
	}
	shift := bits.Len64(uint64(hi.y - lo.y))
	if shift+bits.Len64(uint64(hi.x-lo.x)) > 64 {
		slices.SortStableFunc(order, func(a, b int32) int { return at(a).compare(at(b)) })
		return order
	}
	keys := make([]keyed, n)
	for i := range keys {
		p := at(int32(i))
		keys[i] = keyed{uint64(p.x-lo.x)<<shift | uint64(p.y-lo.y), int32(i)}
	}
	keys = sortKeys(keys, shift+bits.Len64(uint64(hi.x-lo.x)))
	for i := range keys {
		order[i] = keys[i].i
	}
	return order
}

// digit is the number of bits sorted at a time.
const digit = 11

// sortKeys sorts keys of so many bits, lowest digit first, stably.
func sortKeys(keys []keyed, width int) []keyed {
	if len(keys) < 128 {
		slices.SortStableFunc(keys, func(a, b keyed) int {
			switch {
			case a.key < b.key:
				return -1
			case a.key > b.key:
				return 1
			}
			return 0
		})
		return keys
	}
	other := make([]keyed, len(keys))
	for shift := 0; shift < width; shift += digit {
		var start [1 << digit]int32
		for i := range keys {
			start[keys[i].key>>shift&(1<<digit-1)]++
		}
		sum := int32(0)
		for d, n := range start {
			start[d] = sum
			sum += n
		}
		for _, k := range keys {
			d := k.key >> shift & (1<<digit - 1)
			other[start[d]] = k
			start[d]++
		}
		keys, other = other, keys
	}
	return keys
}
