package nest

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"sync"

	"pourwright/internal/geom"
)

// Chosen: searches run side by side; a number of its own, so that the result does not
// depend on the processors at hand.
const lanes = 2

// Chosen: pieces each lane seeks a place for between two meetings of the lanes.
const stretch = 400

// A race is the lanes of one strip and what they have spent.
type race struct {
	lanes   []*lane
	limit   int
	threads int
	spent   func() float64
	told    func(done, length float64)
}

// Pack lays the pieces of a strip. It returns the best layout found when the iterations
// are used up or ctx is cancelled.
func (s Strip) Pack(ctx context.Context) (StripLayout, error) {
	if !(s.HeightMM > 0) || math.IsInf(s.HeightMM, 0) {
		return StripLayout{}, fmt.Errorf("%w: the strip is %g mm high", ErrProblem, s.HeightMM)
	}
	cat, things, bad := prepare(s.Pieces, 0)
	if len(bad) > 0 {
		return StripLayout{}, fmt.Errorf("%w: piece %d (%s): %s", ErrProblem, bad[0].Piece, s.Pieces[bad[0].Piece].Name, bad[0].Reason)
	}
	cat.seal()
	b, err := s.first(cat, things)
	if err != nil {
		return StripLayout{}, err
	}
	r := newRace(b, s.Seed, s.Iterations)
	r.threads, r.spent = s.Threads, s.Spent
	r.run(ctx)
	for _, found := range append(r.found(), b.spread()) {
		if !disjoint(cat, things, found) {
			continue
		}
		out := StripLayout{LengthMM: found.length}
		for i, t := range things {
			out.Placements = append(out.Placements, placement(t, found, i))
		}
		return out, nil
	}
	return StripLayout{}, fmt.Errorf("%w: no layout without overlap was found", ErrProblem)
}

// found lists the layouts that the lanes came to, the shortest first.
func (r *race) found() []spread {
	var out []spread
	for _, l := range r.lanes {
		out = append(append(out, l.best), l.earlier...)
	}
	slices.SortStableFunc(out, func(a, b spread) int { return cmp.Compare(a.length, b.length) })
	return out
}

// disjoint reports, by exact booleans, whether no two things of a layout overlap.
func disjoint(cat *catalog, things []thing, at spread) bool {
	placed := make([]geom.Region, len(things))
	for i, t := range things {
		placed[i] = cat.shapes[t.poses[at.pose[i]].shape].region(at.x[i], at.y[i])
		for j := range i {
			if overlap(placed[i], placed[j]) {
				return false
			}
		}
	}
	return true
}

func placement(t thing, s spread, i int) Placement {
	p := t.poses[s.pose[i]]
	return Placement{Piece: t.piece, TurnDeg: p.deg, XMM: s.x[i] - p.dx, YMM: s.y[i] - p.dy}
}

// first returns a first layout of things on the strip.
func (s Strip) first(cat *catalog, things []thing) (*board, error) {
	b := newBoard(cat, things, len(things), math.Inf(1), s.HeightMM, tolerance(things))
	long := 0.0
	for i := range things {
		w := b.narrowest(i)
		if math.IsInf(w, 1) {
			return nil, fmt.Errorf("%w: piece %d (%s) is higher than the strip in every turn allowed", ErrProblem, things[i].piece, s.Pieces[things[i].piece].Name)
		}
		long += w
	}
	b.length = long * 1.001
	u := newBuilder(b)
	for _, i := range b.bySize() {
		if !u.lay(i) {
			return nil, fmt.Errorf("%w: piece %d found no place", ErrProblem, things[i].piece)
		}
	}
	b.length = b.reach()
	b.measure()
	return b, nil
}

// narrowest returns the least length thing i takes in a pose that fits the box.
func (b *board) narrowest(i int) float64 {
	least := math.Inf(1)
	for p := range b.things[i].poses {
		if b.fitting(i, p) {
			least = math.Min(least, b.cat.shapes[b.things[i].poses[p].shape].width)
		}
	}
	return least
}

// tolerance returns the depth that counts as none while the search runs: a millionth of
// the size of a piece, no less than half a grid step.
func tolerance(things []thing) float64 {
	area := 0.0
	for _, t := range things {
		area += t.size
	}
	return max(geom.Grid/2, 3e-6*math.Sqrt(area/float64(max(1, len(things)))))
}

func newRace(b *board, seed uint64, limit int) *race {
	area, widest := 0.0, 0.0
	for i := range b.movable {
		area += b.things[i].size
		widest = math.Max(widest, b.narrowest(i))
	}
	r := &race{limit: limit, spent: func() float64 { return 0 }}
	rnd := random(seed)
	for range lanes {
		r.lanes = append(r.lanes, newLane(b.clone(), rnd.next(), math.Max(widest, area/b.width)))
	}
	return r
}

// run lets the lanes search in stretches until the budget is spent.
func (r *race) run(ctx context.Context) spread {
	for ctx.Err() == nil {
		done := 1.0
		if r.limit > 0 {
			done = float64(r.lanes[0].sought) / float64(r.limit) * float64(len(r.lanes))
		}
		if r.spent != nil {
			done = math.Max(done, r.spent())
		}
		best := r.leader()
		if r.told != nil {
			r.told(math.Min(done, 1), best.best.length)
		}
		if done >= 1 || best.best.length <= best.least*(1+1e-9) {
			break
		}
		r.plan(done)
		r.stretch(ctx)
	}
	return r.leader().best
}

func (r *race) leader() *lane {
	best := r.lanes[0]
	for _, l := range r.lanes {
		if l.best.length < best.best.length {
			best = l
		}
	}
	return best
}

// Chosen by trial: the share of the budget that explores, and how much length is taken
// off at a time, falling from the first to the last.
const (
	exploring     = 0.8
	shrinkExplore = 0.01
	shrinkLeast   = 0.001
	shrinkFirst   = 0.0008
	shrinkLast    = 0.00002
)

// plan sets how the lanes go on at a share of the budget.
func (r *race) plan(done float64) {
	lead := r.leader()
	for _, l := range r.lanes {
		if done < exploring {
			if l.best.length*(1-shrinkLeast) > lead.best.length {
				l.best = lead.best
				l.shrink = lead.shrink
				l.explore()
			}
			continue
		}
		t := (done - exploring) / (1 - exploring)
		l.shrink = shrinkFirst * math.Pow(shrinkLast/shrinkFirst, t)
		if !l.compress {
			l.compress = true
			l.best = lead.best
			l.cut()
		} else if lead.best.length < l.best.length {
			l.best = lead.best
		}
	}
}

// stretch runs every lane for a stretch, as many at once as threads allow.
func (r *race) stretch(ctx context.Context) {
	work := func(l *lane) {
		for end := l.sought + stretch; l.sought < end && ctx.Err() == nil; {
			l.step()
		}
	}
	if r.threads == 1 {
		for _, l := range r.lanes {
			work(l)
		}
		return
	}
	var wg sync.WaitGroup
	for _, l := range r.lanes {
		wg.Go(func() { work(l) })
	}
	wg.Wait()
}
