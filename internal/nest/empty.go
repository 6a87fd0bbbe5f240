package nest

import (
	"cmp"
	"slices"
	"sync"
)

// Chosen: the share of the iterations that may go into emptying sheets, and how many may
// go into one try to squeeze a piece in.
const (
	emptying    = 0.6
	squeezeMost = 600
)

// empty moves pieces from the sheet least filled to the others, and pieces left over to
// any, where the overlap they bring can be searched away. A sheet emptied is closed.
func (s *solver) empty() {
	s.left = s.squeezeAll(s.left, nil)
	for len(s.bins) > 1 && s.goesOn(emptying) {
		from := s.sparest()
		before := len(from.things)
		kept := s.squeezeAll(from.things, from)
		if len(kept) == before {
			return
		}
		s.keepOnly(from, kept)
		if len(kept) > 0 {
			return
		}
		s.stock[from.kind].used--
		s.bins = slices.DeleteFunc(s.bins, func(b *bin) bool { return b == from })
		s.renumber()
	}
}

// goesOn reports whether less than a share of the budget is spent.
func (s *solver) goesOn(share float64) bool { return s.ctx.Err() == nil && s.done() < share }

// done returns the share of the budget that is spent.
func (s *solver) done() float64 {
	d := 1.0
	if s.p.Iterations > 0 {
		d = float64(s.sought) / float64(s.p.Iterations)
	}
	if s.p.Spent != nil {
		d = max(d, s.p.Spent())
	}
	return min(d, 1)
}

// sparest returns the sheet to empty: of those to be bought the one that carries least.
func (s *solver) sparest() *bin {
	return slices.MinFunc(s.bins, func(a, b *bin) int {
		if p, q := s.stock[a.kind].owned, s.stock[b.kind].owned; p != q {
			if q {
				return -1
			}
			return 1
		}
		return cmp.Compare(sizes(a.things), sizes(b.things))
	})
}

// squeezeAll tries to bring things onto sheets other than one and returns those that stay.
func (s *solver) squeezeAll(list []thing, but *bin) []thing {
	var kept []thing
	failed := map[int]bool{}
	for _, t := range list {
		if failed[t.poses[0].shape] || !s.squeeze(t, but) {
			failed[t.poses[0].shape] = true
			kept = append(kept, t)
		}
	}
	return kept
}

func (s *solver) squeeze(t thing, but *bin) bool {
	for _, b := range s.bins {
		if b == but || !s.goesOn(emptying) || sizes(b.things)+t.size > s.stock[b.kind].area {
			continue
		}
		if s.squeezeOn(t, b) {
			return true
		}
	}
	return false
}

// squeezeOn tries from as many random places as there are lanes, side by side; the first
// lane that succeeds counts.
func (s *solver) squeezeOn(t thing, b *bin) bool {
	trial := &bin{kind: b.kind, things: append(slices.Clone(b.things), t)}
	trial.spread = spread{b.spread.length, append(slices.Clone(b.spread.pose), 0), append(slices.Clone(b.spread.x), 0), append(slices.Clone(b.spread.y), 0)}
	if !s.startPose(trial) {
		return false
	}
	boards, counts, won := make([]*board, lanes), make([]int, lanes), make([]bool, lanes)
	var wg sync.WaitGroup
	for k := range lanes {
		seed := s.rnd.next()
		work := func() { boards[k], counts[k], won[k] = s.separate(trial, seed) }
		if s.p.Threads == 1 {
			work()
		} else {
			wg.Go(work)
		}
	}
	wg.Wait()
	for _, n := range counts {
		s.sought += n
	}
	k := slices.Index(won, true)
	if k < 0 {
		return false
	}
	b.things, b.spread = trial.things, boards[k].spread()
	return true
}

// startPose gives the last thing of a bin a pose that is no larger than the sheet.
func (s *solver) startPose(trial *bin) bool {
	last := len(trial.things) - 1
	b := s.board(trial.things, trial.kind)
	for p := range trial.things[last].poses {
		if b.fitting(last, p) {
			trial.spread.pose[last] = int32(p)
			return true
		}
	}
	return false
}

// separate searches the overlap of a bin away, its last thing thrown anywhere at first.
func (s *solver) separate(trial *bin, seed uint64) (*board, int, bool) {
	b := s.restore(trial)
	k := seeker{b: b, rnd: random(seed), effort: effortExplore}
	last := b.movable - 1
	b.x[last], b.y[last] = k.rnd.unit()*b.length, k.rnd.unit()*b.width
	b.clamp()
	b.measure()
	n := 0
	for n < squeezeMost && s.ctx.Err() == nil {
		n += k.round() + 1
		if b.total() == 0 {
			return b, n, b.settle(400)
		}
		b.learn()
	}
	return b, n, false
}

// keepOnly leaves only some things of a bin where they lie.
func (s *solver) keepOnly(b *bin, kept []thing) {
	old := *b
	b.things, b.spread = kept, spread{length: old.spread.length}
	for i, t := range old.things {
		if slices.ContainsFunc(kept, func(k thing) bool { return k.piece == t.piece }) {
			b.spread.pose = append(b.spread.pose, old.spread.pose[i])
			b.spread.x, b.spread.y = append(b.spread.x, old.spread.x[i]), append(b.spread.y, old.spread.y[i])
		}
	}
}

// renumber numbers the sheets of every kind from 1 in the order they were opened.
func (s *solver) renumber() {
	n := make([]int, len(s.stock))
	for _, b := range s.bins {
		n[b.kind]++
		b.number = n[b.kind]
	}
}
