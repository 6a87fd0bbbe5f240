package saw

import "context"

// A restTable bounds from above what can be had outside a rectangle that stands
// in a corner of the whole:
//
//	R(W,H) = 0
//	R(p,q) = max( F(x,q) + R(p+x,q), F(p,y) + R(p,q+y), R(p+,q), R(p,q+) )
//
// with F the table for unlimited copies and p+, q+ the next entries of the raster.
// Source: [viswanathan-bagchi-1993].
type restTable struct {
	t    *table
	rows [][]int64 // by entry of y, then by length along x
}

func newRest(ctx context.Context, t *table) (*restTable, bool) {
	nx, ny := len(t.x.at), len(t.y.at)
	w, h := t.x.at[nx-1], t.y.at[ny-1]
	r := &restTable{t: t, rows: grid64(ny, int(w)+1)}
	cols := grid64(nx, int(h)+1)
	for last := nx - 1; last >= 0; last -= stripe {
		for j := ny - 1; j >= 0; j-- {
			if ctx.Err() != nil {
				return r, false
			}
			for i := last; i > max(last-stripe, -1); i-- {
				best := beside(r.rows[j], t.blockX[j], &t.x, i)
				best = max(best, beside(cols[i], t.blockY[i], &t.y, j))
				spread(r.rows[j], &t.x, i, best)
				spread(cols[i], &t.y, j, best)
			}
		}
	}
	return r, true
}

// beside returns the best of adding a block to a part of length r.at[i], or of
// letting it grow to the next entry.
func beside(rest []int64, blocks []block, r *raster, i int) int64 {
	at, full := r.at[i], int64(len(rest))-1
	best := int64(0)
	if i+1 < len(r.at) {
		best = rest[r.at[i+1]]
	}
	for _, b := range blocks {
		if b.at > full-at {
			break
		}
		best = max(best, b.value+rest[at+b.at])
	}
	return best
}

// at returns the bound for a corner of w x h, both entries of the rasters or less.
func (r *restTable) at(w, h int64) int64 { return r.rows[r.t.y.down[h]][w] }
