package saw

import (
	"context"
	"math"
)

// A Good is a rectangle with a value. Sizes are whole units of the instance.
type Good struct {
	W, H  int64
	Value int64
	Count int  // most copies; not read by Unbounded
	Turns bool // may turn by 90 degrees
}

// A table holds the best value of every rectangle of a raster when copies are
// not limited.
//
//	F(x,y) = max( value of the best piece in it,
//	              F(x1,y) + F(x-x1,y), F(x,y1) + F(x,y-y1) )
//
// A row of parts is a knapsack of blocks, parts that no cut of the same direction
// gives. Only blocks are tried as the first part, and only up to half the side.
// Sources: [gilmore-gomory-1966]; blocks after [russo-2014].
type table struct {
	x, y   raster
	rows   [][]int64 // by entry of y, then by length along x
	cols   [][]int64 // by entry of x, then by length along y
	seeds  [][]int64 // best single piece of just this cell
	blockX [][]block // by entry of y, ascending
	blockY [][]block
	dear   Good  // the piece with the most value for its area
	limit  int64 // parts that lose more value than this cannot matter
}

// A block is a part of a row of parts: its length and its value.
type block struct{ at, value int64 }

// loses reports whether a part of w x h that is worth v is too poor to be part
// of a pattern that loses at most limit against the dearest piece everywhere.
func (t *table) loses(w, h, v int64) bool {
	a := t.dear.W * t.dear.H
	return t.dear.Value*w*h-v*a > t.limit*a
}

// newTable returns nil where the table would need more than mostCells.
func newTable(goods []Good, w, h int64, reduce bool) *table {
	var xs, ys []sideCount
	for _, g := range goods {
		n := g.Count
		xs, ys = append(xs, sideCount{g.W, n}), append(ys, sideCount{g.H, n})
		if g.Turns {
			xs, ys = append(xs, sideCount{g.H, n}), append(ys, sideCount{g.W, n})
		}
	}
	t := &table{x: newRaster(xs, w, reduce), y: newRaster(ys, h, reduce)}
	nx, ny := len(t.x.at), len(t.y.at)
	if int64(ny)*(w+1) > mostCells || int64(nx)*(h+1) > mostCells {
		return nil
	}
	t.rows, t.cols, t.seeds = grid64(ny, int(w)+1), grid64(nx, int(h)+1), grid64(ny, nx)
	t.blockX, t.blockY = make([][]block, ny), make([][]block, nx)
	t.dear = dearest(goods)
	t.limit = t.unlimited()
	for _, g := range goods {
		t.seed(g.W, g.H, g.Value)
		if g.Turns {
			t.seed(g.H, g.W, g.Value)
		}
	}
	return t
}

// unlimited is a limit on loss that allows everything.
func (t *table) unlimited() int64 { return math.MaxInt64 / (t.dear.W * t.dear.H) }

func dearest(goods []Good) Good {
	best := Good{W: 1, H: 1}
	for _, g := range goods {
		if g.Value*best.W*best.H > best.Value*g.W*g.H {
			best = g
		}
	}
	return best
}

// unbounded returns the exact table entry of the whole rectangle: it looks for
// patterns that lose little, where most parts can be left out, and allows more
// loss until what it finds loses no more than it allowed.
func unbounded(ctx context.Context, goods []Good, w, h int64, slow func()) (t *table, ok bool) {
	t = newTable(goods, w, h, true)
	if t == nil {
		return nil, false
	}
	if len(t.x.at)*len(t.y.at) > 3*quickCells {
		slow()
	}
	a := t.dear.W * t.dear.H
	most := t.dear.Value*w*h/a + 1
	for limit := most/500 + 1; ; limit *= 3 {
		t.limit = min(limit, math.MaxInt64/a)
		t.reset()
		if !t.fill(ctx) {
			return t, false
		}
		if !t.loses(w, h, t.value(w, h)) || limit > most {
			return t, true
		}
	}
}

func grid64(n, m int) [][]int64 {
	all, out := make([]int64, n*m), make([][]int64, n)
	for i := range out {
		out[i] = all[i*m : (i+1)*m : (i+1)*m]
	}
	return out
}

// seed enters a piece at the first place of the raster that holds it.
func (t *table) seed(w, h, value int64) {
	i, j := t.x.up(w), t.y.up(h)
	if i < 0 || j < 0 {
		return
	}
	t.seeds[j][i] = max(t.seeds[j][i], value)
}

// up returns the index of the smallest entry >= v, -1 for none.
func (r *raster) up(v int64) int {
	if v >= int64(len(r.down)) {
		return -1
	}
	i := int(r.down[v])
	if i < 0 || r.at[i] < v {
		i++
	}
	return i
}

// fill computes the table and reports whether ctx let it finish.
func (t *table) fill(ctx context.Context) bool {
	for first := 0; first < len(t.x.at); first += stripe {
		for j := range t.y.at {
			if ctx.Err() != nil {
				return false
			}
			for i := first; i < min(first+stripe, len(t.x.at)); i++ {
				t.cell(i, j)
			}
		}
	}
	return true
}

// stripe is how many columns are filled side by side: their lines stay near the
// processor. Chosen.
const stripe = 32

// cell computes entry (i,j) and enters it at all lengths up to the next one.
func (t *table) cell(i, j int) {
	x, y := t.x.at[i], t.y.at[j]
	byX := bestSplit(t.rows[j], t.blockX[j], x)
	byY := bestSplit(t.cols[i], t.blockY[i], y)
	v := max(t.seeds[j][i], byX, byY)
	spread(t.rows[j], &t.x, i, v)
	spread(t.cols[i], &t.y, j, v)
	if t.loses(x, y, v) {
		return
	}
	if v > byX {
		t.blockX[j] = append(t.blockX[j], block{x, v})
	}
	if v > byY {
		t.blockY[i] = append(t.blockY[i], block{y, v})
	}
}

// spread enters v in a line from entry i of the raster up to the next.
func spread(line []int64, r *raster, i int, v int64) {
	end := len(line)
	if i+1 < len(r.at) {
		end = int(r.at[i+1])
	}
	for k := int(r.at[i]); k < end; k++ {
		line[k] = v
	}
}

// bestSplit returns the best of a line of values up to length full: what is a
// little shorter, or a block as the first part and the best of the rest.
func bestSplit(line []int64, blocks []block, full int64) int64 {
	best := line[full-1]
	for _, b := range blocks {
		if 2*b.at > full {
			break
		}
		best = max(best, b.value+line[full-b.at])
	}
	return best
}

// reset forgets the blocks of an earlier fill.
func (t *table) reset() {
	for i := range t.blockY {
		t.blockY[i] = t.blockY[i][:0]
	}
	for j := range t.blockX {
		t.blockX[j] = t.blockX[j][:0]
	}
}

// value returns the best value of a rectangle of w x h.
func (t *table) value(w, h int64) int64 {
	j := t.y.down[h]
	if j < 0 {
		return 0
	}
	return t.rows[j][w]
}
