package geom

// strips sorts edges into horizontal strips by y, so that the sweep along x
// compares an edge only with those that may meet it.
type strips struct {
	edges  []edge
	y0     int64
	height int64
	active [][]extent // per strip: edges met so far that may still reach further right
	seen   []int32    // per edge: last edge compared with it, to compare once
}

// extent is how far edge i reaches to the right and between which y it lies.
type extent struct {
	right, lo, hi int64
	i             int32
}

// newStrips prepares strips for edges sorted by lo.
func newStrips(edges []edge) *strips {
	s := &strips{edges: edges, seen: make([]int32, len(edges))}
	if len(edges) == 0 {
		return s
	}
	lo, hi, total := edges[0].lo.y, edges[0].lo.y, 0.0
	for i := range edges {
		e := &edges[i]
		a, b := yRange(e)
		lo, hi = min(lo, a), max(hi, b)
		total += float64(b - a)
		s.seen[i] = -1
	}
	mean := total / float64(len(edges))
	s.y0 = lo
	span := float64(hi-lo) + 1
	n := min(max(span/(4*mean+1), 1), 4096, float64(len(edges))) // a strip holds a few edges' height
	s.height = int64(span/n) + 1
	s.active = make([][]extent, (hi-lo)/s.height+1)
	return s
}

func yRange(e *edge) (lo, hi int64) { return min(e.lo.y, e.hi.y), max(e.lo.y, e.hi.y) }

// visit calls f once for every earlier edge whose box meets that of edge i, then
// takes edge i in. Edges must come in order.
func (s *strips) visit(i int32, f func(j int32)) {
	e := &s.edges[i]
	lo, hi := yRange(e)
	left := e.lo.x
	for k := (lo - s.y0) / s.height; k <= (hi-s.y0)/s.height; k++ {
		keep := s.active[k][:0]
		for _, o := range s.active[k] {
			if o.right < left {
				continue
			}
			keep = append(keep, o)
			if o.lo <= hi && o.hi >= lo && s.seen[o.i] != i {
				s.seen[o.i] = i
				f(o.i)
			}
		}
		s.active[k] = append(keep, extent{e.hi.x, lo, hi, i})
	}
}
