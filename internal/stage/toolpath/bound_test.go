package toolpath

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourwright/internal/geom"
)

// bound returns a lower bound on the length of every legal tour of the stops and the
// origin, whatever beginnings it picks: the least arborescence from the origin with
// the least way back, raised by Lagrange multipliers.
//
// A tour enters and leaves every stop once, at the same beginning. The arborescence
// enters every stop once; leaving once is paid for by u, leaving where it entered by w:
//
//	cost(i,a -> j,b) = |out_ia - in_jb| + u_i + w_ia - w_jb,   less the sum of u
//
// which adds up to the length for every tour, so the least is never above the
// shortest tour for any u and w. Ways that would break the order are left out. The
// multipliers climb by subgradient steps.
//
// Sources: Held, Karp (1970), The traveling-salesman problem and minimum spanning
// trees, Operations Research 18, 1138-1162; Edmonds (1967), Optimum branchings,
// Journal of Research of the National Bureau of Standards 71B, 233-240.
func bound(stops []stop, length float64, rounds int) float64 {
	b := newBounder(stops)
	best, scale, stale := 0.0, 1.0, 0
	for range rounds {
		value, norm := b.value()
		if value > best+1e-6 {
			best, stale = math.Max(best, value), 0
		} else if stale++; stale > 15 {
			scale, stale = scale*0.7, 0
		}
		if norm == 0 || scale < 1e-3 {
			break
		}
		b.climb(scale * (length - value) / norm)
	}
	return best
}

// A bounder holds one relaxation; node len(stops) is the origin.
type bounder struct {
	nodes  []stop
	u      []float64
	w      [][]float64
	du     []float64 // subgradients
	dw     [][]float64
	allow  [][]bool
	cost   [][]float64
	leave  [][]int8 // beginnings that give the cost
	enter  [][]int8
	chosen [][2]int
}

func newBounder(stops []stop) *bounder {
	n := len(stops)
	b := &bounder{nodes: append(append([]stop{}, stops...), stop{})}
	b.nodes[n].in = append(b.nodes[n].in, b.nodes[0].in[0].Mul(0))
	b.nodes[n].out, b.nodes[n].after = b.nodes[n].in, -1
	b.u, b.du = make([]float64, n+1), make([]float64, n+1)
	waits := make([]bool, n+1)
	for i, s := range b.nodes {
		b.w, b.dw = append(b.w, make([]float64, len(s.in))), append(b.dw, make([]float64, len(s.in)))
		b.allow, b.cost = append(b.allow, make([]bool, n+1)), append(b.cost, make([]float64, n+1))
		b.leave, b.enter = append(b.leave, make([]int8, n+1)), append(b.enter, make([]int8, n+1))
		if i < n && s.after >= 0 {
			waits[s.after] = true
		}
	}
	later := func(i, j int) int { // how many steps j comes after i; 0: not bound
		for k, d := b.nodes[i].after, 1; k >= 0; k, d = b.nodes[k].after, d+1 {
			if k == j {
				return d
			}
		}
		return 0
	}
	for i := range b.nodes {
		for j := range b.nodes {
			switch {
			case i == j:
			case i == n:
				b.allow[i][j] = !waits[j]
			case j == n:
				b.allow[i][j] = b.nodes[i].after < 0
			default:
				b.allow[i][j] = later(j, i) == 0 && later(i, j) <= 1
			}
		}
	}
	return b
}

// value returns the bound at the multipliers as they stand, and the square of its
// subgradient.
func (b *bounder) value() (value, norm float64) {
	n := len(b.nodes) - 1
	for i := range b.nodes {
		for j := range b.nodes {
			b.cost[i][j] = math.Inf(1)
			if b.allow[i][j] {
				b.price(i, j)
			}
		}
	}
	parent := arborescence(b.cost, n)
	b.chosen = b.chosen[:0]
	for j, i := range parent {
		if j != n {
			b.chosen = append(b.chosen, [2]int{i, j})
		}
	}
	home := 0
	for i := range n {
		if b.cost[i][n] < b.cost[home][n] {
			home = i
		}
	}
	b.chosen = append(b.chosen, [2]int{home, n})
	for i := range b.nodes {
		b.du[i] = -1
		value -= b.u[i]
		clear(b.dw[i])
	}
	for _, c := range b.chosen {
		i, j := c[0], c[1]
		value += b.cost[i][j]
		b.du[i]++
		b.dw[i][b.leave[i][j]]++
		b.dw[j][b.enter[i][j]]--
	}
	for i := range b.nodes {
		norm += b.du[i] * b.du[i]
		for _, g := range b.dw[i] {
			norm += g * g
		}
	}
	return value, norm
}

func (b *bounder) price(i, j int) {
	from, to := b.nodes[i], b.nodes[j]
	for a, p := range from.out {
		for e, q := range to.in {
			if c := apart(p, q) + b.u[i] + b.w[i][a] - b.w[j][e]; c < b.cost[i][j] {
				b.cost[i][j], b.leave[i][j], b.enter[i][j] = c, int8(a), int8(e)
			}
		}
	}
}

func (b *bounder) climb(step float64) {
	for i := range b.nodes {
		b.u[i] += step * b.du[i]
		for a, g := range b.dw[i] {
			b.w[i][a] += step * g
		}
	}
}

// arborescence returns the parents of the least arborescence from root: every other
// node takes its cheapest way in; a ring of them is drawn together to one node, and
// opened again where the rest enters it.
func arborescence(cost [][]float64, root int) []int {
	n := len(cost)
	parent := make([]int, n)
	for j := range n {
		parent[j] = -1
		for i := range n {
			if j != root && i != j && (parent[j] < 0 || cost[i][j] < cost[parent[j]][j]) {
				parent[j] = i
			}
		}
	}
	ring := ringOf(parent)
	if ring == nil {
		return parent
	}
	id, back := make([]int, n), []int{} // nodes outside the ring, then the ring as one
	for i := range n {
		id[i] = -1
		if !ring[i] {
			id[i] = len(back)
			back = append(back, i)
		}
	}
	m := len(back)
	small := make([][]float64, m+1)
	for i := range small {
		small[i] = make([]float64, m+1)
		for j := range small[i] {
			small[i][j] = math.Inf(1)
		}
	}
	enter, leave := make([]int, m), make([]int, m)
	for i := range n {
		for j := range n {
			switch {
			case i == j || (ring[i] && ring[j]):
			case ring[j]:
				if c := cost[i][j] - cost[parent[j]][j]; c < small[id[i]][m] {
					small[id[i]][m], enter[id[i]] = c, j
				}
			case ring[i]:
				if cost[i][j] < small[m][id[j]] {
					small[m][id[j]], leave[id[j]] = cost[i][j], i
				}
			default:
				small[id[i]][id[j]] = cost[i][j]
			}
		}
	}
	for j, i := range arborescence(small, id[root]) {
		switch {
		case i < 0:
		case j == m:
			parent[enter[i]] = back[i]
		case i == m:
			parent[back[j]] = leave[j]
		default:
			parent[back[j]] = back[i]
		}
	}
	return parent
}

// ringOf returns the nodes of a ring of parents, or nil.
func ringOf(parent []int) []bool {
	state := make([]int, len(parent)) // the walk that came by
	for start := range parent {
		i := start
		for i >= 0 && state[i] == 0 {
			state[i] = start + 1
			i = parent[i]
		}
		if i < 0 || state[i] != start+1 {
			continue
		}
		ring := make([]bool, len(parent))
		for j := i; !ring[j]; j = parent[j] {
			ring[j] = true
		}
		return ring
	}
	return nil
}

// TestSmallTours compares tours and bounds with the shortest of all legal tours.
func TestSmallTours(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(1, 6).Draw(rt, "stops")
		stops := make([]stop, n)
		at := func() geom.Point {
			return geom.Point{X: rapid.Float64Range(0, 500).Draw(rt, "x"), Y: rapid.Float64Range(0, 500).Draw(rt, "y")}
		}
		for i := range stops {
			stops[i].after = -1
			if i+1 < n && rapid.Bool().Draw(rt, "waits") {
				stops[i].after = rapid.IntRange(i+1, n-1).Draw(rt, "after")
			}
			for range rapid.IntRange(1, 3).Draw(rt, "beginnings") {
				stops[i].in, stops[i].out = append(stops[i].in, at()), append(stops[i].out, at())
			}
		}
		best := math.Inf(1)
		tryAll(stops, nil, geom.Point{}, 0, &best)
		tour := shortest(stops)
		if got := tour.length(); math.Abs(got-best) > 1e-6 {
			rt.Errorf("tour of %.3f mm, shortest %.3f mm", got, best)
		}
		if least := bound(stops, tour.length(), 40); least > best+1e-6 {
			rt.Errorf("bound of %.3f mm above the shortest tour, %.3f mm", least, best)
		}
	})
}

// tryAll walks every legal tour with every beginning.
func tryAll(stops []stop, done []bool, at geom.Point, length float64, best *float64) {
	if done == nil {
		done = make([]bool, len(stops))
	}
	left := false
	for i, s := range stops {
		if done[i] {
			continue
		}
		left = true
		free := true
		for j, q := range stops {
			free = free && (done[j] || q.after != i)
		}
		if !free || length >= *best {
			continue
		}
		done[i] = true
		for k, p := range s.in {
			tryAll(stops, done, s.out[k], length+apart(at, p), best)
		}
		done[i] = false
	}
	if !left {
		*best = math.Min(*best, length+apart(at, geom.Point{}))
	}
}
