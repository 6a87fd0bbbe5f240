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
	rows [][]int64 // by y, then x
}

func newRest(ctx context.Context, t *table) (*restTable, bool) {
	nx, ny := len(t.x.at), len(t.y.at)
	r := &restTable{t: t, rows: grid64(ny, nx)}
	cols := grid64(nx, ny)
	for j := ny - 1; j >= 0; j-- {
		if ctx.Err() != nil {
			return r, false
		}
		for i := nx - 1; i >= 0; i-- {
			best := int64(0)
			if i+1 < nx {
				best = r.rows[j][i+1]
			}
			if j+1 < ny {
				best = max(best, cols[i][j+1])
			}
			best = beside(r.rows[j], t.rows[j], t.blockX[j], &t.x, i, best)
			best = beside(cols[i], t.cols[i], t.blockY[i], &t.y, j, best)
			r.rows[j][i], cols[i][j] = best, best
		}
	}
	return r, true
}

// beside returns the best of adding a block to a part of length r.at[i].
func beside(rest, value []int64, blocks []int32, r *raster, i int, best int64) int64 {
	room := r.at[len(r.at)-1] - r.at[i]
	for _, b := range blocks {
		if r.at[b] > room {
			break
		}
		best = max(best, value[b]+rest[r.down[r.at[i]+r.at[b]]])
	}
	return best
}

func (r *restTable) at(w, h int64) int64 { return r.rows[r.t.y.down[h]][r.t.x.down[w]] }
