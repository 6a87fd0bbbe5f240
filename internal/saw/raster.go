package saw

// A raster is the set of lengths along one side at which a cut can matter: sums
// of sides of pieces, and what is left of the full side beyond such sums.
// Source: [herz-1972] for the sums, [scheithauer-terno-1996] for the reduction.
type raster struct {
	at   []int64 // ascending, the last is the full side
	down []int32 // down[v] is the index of the largest entry <= v, -1 for none
}

// sidesOf is a side of a piece with the most times it can occur.
type sideCount struct {
	size  int64
	count int
}

// sums marks every sum of sides up to full, each side at most its count times.
func sums(sides []sideCount, full int64) []bool {
	ok := make([]bool, full+1)
	ok[0] = true
	used := make([]int32, full+1)
	for _, s := range sides {
		clear(used)
		for v := s.size; v <= full; v++ {
			if ok[v] || !ok[v-s.size] || int(used[v-s.size]) >= s.count {
				continue
			}
			ok[v], used[v] = true, used[v-s.size]+1
		}
	}
	return ok
}

// newRaster returns the raster of a side. With reduce only those sums are kept
// that are the most that fits beside another sum.
func newRaster(sides []sideCount, full int64, reduce bool) raster {
	ok := sums(sides, full)
	if reduce {
		ok = reduced(ok, full)
	}
	r := raster{down: make([]int32, full+1)}
	last := int32(-1)
	for v := int64(0); v <= full; v++ {
		if v > 0 && (ok[v] || v == full) {
			last = int32(len(r.at))
			r.at = append(r.at, v)
		}
		r.down[v] = last
	}
	return r
}

func reduced(ok []bool, full int64) []bool {
	down := make([]int64, full+1)
	for v := int64(1); v <= full; v++ {
		down[v] = down[v-1]
		if ok[v] {
			down[v] = v
		}
	}
	out := make([]bool, full+1)
	for v := int64(0); v <= full; v++ {
		if ok[v] {
			out[down[full-v]] = true
		}
	}
	out[0] = true
	return out
}
