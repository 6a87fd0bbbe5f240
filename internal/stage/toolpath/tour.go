package toolpath

import (
	"math"
	"slices"

	"pourwright/internal/geom"
)

// A stop is a place of the tour above the sheet: the cutter goes down at one of in
// and comes up at the same index of out. after is a stop that must come later, -1: none.
type stop struct {
	in, out []geom.Point
	after   int
}

// A tour visits all stops from the origin and comes back to it.
type tour struct {
	stops  []stop
	before [][]int // for each stop, those that must come before it
	near   [][]int // for each stop, the nearest others
	order  []int   // of the stops
	place  []int   // of each stop in the order
	pick   []int   // for each stop, the index of its in
	spare  []int
	random uint64
}

// Bounds of the work on one tour, in changes weighed. Chosen: enough for a few per
// cent of the best.
const (
	effortEach = 100_000 // for each stop
	mostEffort = 20_000_000
)

func (t *tour) effort() int { return min(effortEach*len(t.stops), mostEffort) }

// shortest returns a short tour: the nearest stop first, then improved.
func shortest(stops []stop) *tour {
	n := len(stops)
	t := &tour{stops: stops, before: make([][]int, n), near: nearStops(stops), place: make([]int, n), pick: make([]int, n), random: 0x9e3779b97f4a7c15}
	for i, s := range stops {
		if s.after >= 0 {
			t.before[s.after] = append(t.before[s.after], i)
		}
	}
	t.nearest()
	t.seat(0, n)
	t.choose()
	t.improve(slices.Clone(t.order))
	if n <= fewStops {
		t.all()
	} else {
		t.shake()
	}
	return t
}

// in and out return where the k-th stop of the order begins and ends; before the
// first and after the last lies the origin.
func (t *tour) in(k int) geom.Point {
	if k < 0 || k >= len(t.order) {
		return geom.Point{}
	}
	i := t.order[k]
	return t.stops[i].in[t.pick[i]]
}

func (t *tour) out(k int) geom.Point {
	if k < 0 || k >= len(t.order) {
		return geom.Point{}
	}
	i := t.order[k]
	return t.stops[i].out[t.pick[i]]
}

// way returns the distance from the j-th stop to the k-th.
func (t *tour) way(j, k int) float64 { return apart(t.out(j), t.in(k)) }

func apart(a, b geom.Point) float64 {
	dx, dy := a.X-b.X, a.Y-b.Y
	return math.Sqrt(dx*dx + dy*dy)
}

// length returns the length of the tour, mm.
func (t *tour) length() float64 {
	sum := 0.0
	for k := range len(t.order) + 1 {
		sum += t.way(k-1, k)
	}
	return sum
}

// nearest builds the tour by going to the nearest stop that may come next.
func (t *tour) nearest() {
	n := len(t.stops)
	waits, done := make([]int, n), make([]bool, n)
	for _, s := range t.stops {
		if s.after >= 0 {
			waits[s.after]++
		}
	}
	at := geom.Point{}
	for range n {
		best, stop := math.Inf(1), -1
		for i, s := range t.stops {
			if done[i] || waits[i] > 0 {
				continue
			}
			for k, p := range s.in {
				if d := apart(at, p); d < best {
					best, stop, t.pick[i] = d, i, k
				}
			}
		}
		if stop < 0 {
			return // the rest waits in a ring; nest makes none
		}
		s := t.stops[stop]
		done[stop], at = true, s.out[t.pick[stop]]
		t.order = append(t.order, stop)
		if s.after >= 0 {
			waits[s.after]--
		}
	}
}

// choose picks the best beginnings for the order as it stands: the shortest way
// through the layers of choices.
func (t *tour) choose() {
	n := len(t.order)
	cost, from := []float64{0}, make([][]int, n)
	last := []geom.Point{{}}
	for k, i := range t.order {
		s := t.stops[i]
		next := make([]float64, len(s.in))
		from[k] = make([]int, len(s.in))
		for a, p := range s.in {
			next[a] = math.Inf(1)
			for b, q := range last {
				if d := cost[b] + apart(q, p); d < next[a] {
					next[a], from[k][a] = d, b
				}
			}
		}
		cost, last = next, s.out
	}
	best, at := math.Inf(1), 0
	for b, q := range last {
		if d := cost[b] + apart(q, geom.Point{}); d < best {
			best, at = d, b
		}
	}
	for k := n - 1; k >= 0; k-- {
		t.pick[t.order[k]] = at
		at = from[k][at]
	}
}
